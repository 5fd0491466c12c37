"""The words that all cuts share: sides, where sizes start, stops, slopes and angles."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Protocol

from boardwright.piece.cuts import Side

SIDE_WORDS = {
    Side.FACE: "face",
    Side.BACK: "back face",
    Side.EDGE: "reference edge",
    Side.FAR_EDGE: "far edge",
    Side.END: "reference end",
    Side.FAR_END: "far end",
}
FROM = ("the reference end", "the reference edge", "the back face")
"""Where sizes along each part axis start."""
EPS = 1e-6
MOST_SPANS = 10
"""So many equal stretches are told one by one."""


class Printer(Protocol):
    """Writes lengths (see `core.lengths.Printer`)."""

    @property
    def units(self) -> str:
        """`in` or `mm`."""

    def size(self, mm: float) -> str:
        """A length [mm] without its unit."""

    def auxiliary(self, mm: float) -> str:
        """A length [mm] without its unit; in parentheses and rounded when it is not on the step."""

    def tool(self, mm: float) -> str:
        """The diameter of a drill or head [mm], as such tools are sold."""


class PlanPrinter(Printer, Protocol):
    """Knows the step of the plan too."""

    @property
    def step(self) -> float:
        """The finest step of the plan [mm]."""


@dataclass(frozen=True, slots=True)
class Said:
    """A cut in pieces of a sentence.

    Attributes:
        name: what it is, e.g. `dado`.
        sizes: its own sizes, each with its word.
        further: what else tells it: slopes, angles, `through`.
        side: where it is cut.
        unseen: places and stops that stand in the words because no view measures them.
        seen: places that the views measure; only the work list says them.
        link: how the part that it holds is said: `for B`, `into B`.
        notes: whole sentences for the work list.
    """

    name: str
    sizes: tuple[str, ...]
    side: str
    further: tuple[str, ...] = ()
    unseen: tuple[str, ...] = ()
    seen: tuple[str, ...] = ()
    link: str = "for"
    notes: tuple[str, ...] = ()

    def key(self, times: int = 1, held: Iterable[str] = ()) -> str:
        """The line in the key of a drawing.

        Args:
            times: how many such cuts there are.
            held: letters of the parts that they hold.
        """
        head = f"{times} × {self.name}" if times > 1 else self.name
        first = " ".join(w for w in (head.strip(), " × ".join(self.sizes)) if w)
        where = [f"{first} {self.side}"] if not self.further else [first, *self.further, self.side]
        return ", ".join(w for w in (*where, *self.unseen, self._held(held)) if w)

    def work(self, held: Iterable[str] = ()) -> str:
        """Sentences for the work list.

        Args:
            held: letters of the parts that it holds.
        """
        head = f"{self.name[0].upper()}{self.name[1:]} {self.side}".strip()
        sizes = ", ".join(
            r for r in (*self.sizes, *self.further, *self.seen, *self.unseen, self._held(held)) if r
        )
        return " ".join([f"{head}: {sizes}." if sizes else f"{head}.", *self.notes])

    def _held(self, held: Iterable[str]) -> str:
        letters = ", ".join(sorted(set(held), key=lambda s: (len(s), s)))
        return f"{self.link} {letters}" if letters else ""


def degrees_text(angle: float) -> str:
    """An angle to a hundredth of a degree, as it is set: `22.5°`, `31.62°`.

    Args:
        angle: [degrees].
    """
    return f"{abs(angle):.2f}".rstrip("0").rstrip(".") + "°"


def slope_text(slope: float) -> str:
    """The slope of a dovetail: as a ratio with its angle, `1:8 (7.1°)`, or the angle alone where the ratio is odd.

    Args:
        slope: widening for each mm of depth.
    """
    angle = math.degrees(math.atan(slope))
    ratio = 1 / slope
    if abs(ratio - round(ratio, 1)) < 0.005 and abs(angle - round(angle)) > 0.005:
        return f"1:{round(ratio, 1):g} ({angle:.1f}°)"
    return degrees_text(angle)


def stops(start: float, end: float, axis: int, whole: float, p: Printer) -> str:
    """Where a cut stops short of the ends of the part: `stops 12 off the reference end`; "" when it runs through.

    Args:
        start: from where it runs [mm].
        end: to where [mm].
        axis: part axis it runs along.
        whole: size of the part along it [mm].
        p: writes lengths.
    """
    low, high = start > EPS, end < whole - EPS
    origin = FROM[axis]
    if low and high:
        return f"from {p.size(start)} to {p.size(end)} off {origin}"
    if low:
        return f"starts {p.size(start)} off {origin}"
    return f"stops {p.size(end)} off {origin}" if high else ""


def places(values: Sequence[tuple[int, str]]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Places sorted into those that no view measures, through the thickness, and those that one does.

    Args:
        values: part axis, and what is said.
    """
    return (
        tuple(said for axis, said in values if axis == 2 and said),
        tuple(said for axis, said in values if axis != 2 and said),
    )


def spans_text(spans: Sequence[tuple[float, float]], p: Printer) -> str:
    """Stretches from the same origin: `1/2 to 1; 1 1/2 to 2`; many equal ones by their pitch.

    Args:
        spans: in rising order [mm].
        p: writes lengths.
    """
    each = [f"{p.auxiliary(a)} to {p.auxiliary(b)}" for a, b in spans]
    pitch = equal_pitch(spans)
    if len(spans) > MOST_SPANS and pitch:
        return f"{each[0]} and on every {p.size(pitch)}, the last {each[-1]}"
    return "; ".join(each)


def equal_pitch(spans: Sequence[tuple[float, float]]) -> float:
    """From start to start of equal stretches [mm]; 0 when they are not equal."""
    wide = {round(b - a, 4) for a, b in spans}
    apart = {round(q[0] - p[0], 4) for p, q in pairwise(spans)}
    return spans[1][0] - spans[0][0] if len(wide) == 1 and len(apart) == 1 else 0.0


def between(spans: Iterable[tuple[float, float]], whole: float) -> list[tuple[float, float]]:
    """What is left between stretches of 0..whole [mm]."""
    out, at = [], 0.0
    for a, b in sorted(spans):
        if a - at > EPS:
            out.append((at, a))
        at = max(at, b)
    if whole - at > EPS:
        out.append((at, whole))
    return out
