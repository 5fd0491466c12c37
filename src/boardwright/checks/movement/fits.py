"""A fit that the year changes: a room or a hold between two parts, figured at any moisture."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field, replace
from functools import partial

import numpy as np

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin
from boardwright.core.findings import Finding, Place
from boardwright.core.poses import Vec
from boardwright.piece.records import Moisture, Part, Piece
from boardwright.solids.seasons import Movement, movement

SOURCE = "movement: Wood Handbook FPL-GTR-190 eq. 13-2"
STILL = 0.05
"""A fit that changes less over the year is none that moves [mm]."""


@dataclass(frozen=True, slots=True)
class Moving:
    """A fit that the year changes; all in [mm] and [mm/%].

    Attributes:
        code: of the finding beyond its limit.
        parts: ids of the two parts.
        what: what it is, e.g. `room in the groove`.
        now: on the day of cutting. slope: for each per cent of moisture.
        least: the least that must be left.
        both: True for what closes whichever way the wood moves, such as a slot with its screw in the middle.
        place: where the file asked for it.
        tell: makes the finding, from the year, the fit, its worst value and the moisture [%] of that.
    """

    code: str
    parts: tuple[str, str]
    what: str
    now: float
    slope: float
    least: float
    place: Place = field(default_factory=Place)
    both: bool = False
    tell: Callable[[Year, Moving, float, float], Finding] | None = field(
        default=None, compare=False, repr=False
    )

    def at(self, change: float) -> float:
        """What is left when the moisture has changed [%] since the day of cutting [mm]."""
        by = self.slope * change
        return self.now - abs(by) if self.both else self.now + by

    def worst(self, m: Moisture) -> tuple[float, float]:
        """The least that is left through the year [mm], and the moisture of that time [%]."""
        return min((self.at(end - m.now), end) for end in (m.driest, m.wettest))

    @property
    def key(self) -> tuple[str, tuple[str, str], str]:
        """What it is called when the same fit is looked for in a changed piece."""
        return (self.code, self.parts, self.what)


@dataclass(frozen=True, slots=True)
class Year:
    """What the checks of movement read: the context, and how the piece moves."""

    c: Context
    moves: Movement
    index: dict[str, int]

    @property
    def moisture(self) -> Moisture:
        """Of the piece."""
        return self.c.piece.moisture

    @property
    def swing(self) -> float:
        """From the driest to the wettest time [%]."""
        return self.moisture.wettest - self.moisture.driest

    def slope(self, one: str, at: Vec, two: str, there: Vec, way: Vec) -> float:
        """How the way from a point of one part to a point of another grows along a direction [mm/%]."""
        first = self.moves.shift(self.index[one], at, 1.0)
        second = self.moves.shift(self.index[two], there, 1.0)
        return float((second - first) @ np.array(way))


def year_of(c: Context) -> Year:
    """Look at a piece through the year."""
    return Year(c, movement(c.piece), {p.id: i for i, p in enumerate(c.piece.parts)})


Fits = Callable[[Year], Iterable[Moving]]


def margin(year: Year, m: Moving) -> Margin:
    """A fit as a figure beside its limit, at the time of the year when it is least."""
    worst, when = m.worst(year.moisture)
    tell = None if m.tell is None else partial(m.tell, year, m, worst, when)
    return Margin(m.code, m.parts, f"{m.what}, at {when:.3g} %", worst, m.least, "mm", least=True, tell=tell)


def tried(year: Year, fits: Fits, m: Moving, change: Callable[[Piece], Piece]) -> bool:
    """Whether a fit keeps its limit when the piece is changed so."""
    piece = change(year.c.piece)
    other = year_of(replace(year.c, piece=piece, parts={p.id: p for p in piece.parts}))
    same = [f for f in fits(other) if f.key == m.key]
    return all(f.worst(other.moisture)[0] >= f.least - 1e-6 for f in same)


def quartersawn(ids: Iterable[str]) -> Callable[[Piece], Piece]:
    """The change that makes some parts of quartersawn boards."""
    wanted = set(ids)

    def turn(part: Part) -> Part:
        if part.id not in wanted or part.stock.kind != "wood":
            return part
        return replace(part, stock=replace(part.stock, sawn="quarter", rings=None))

    return lambda piece: replace(piece, parts=tuple(turn(p) for p in piece.parts))


def cut_at(percent: float) -> Callable[[Piece], Piece]:
    """The change that has the parts cut at another moisture."""
    return lambda piece: replace(piece, moisture=replace(piece.moisture, now=percent))


def ways_out(year: Year, fits: Fits, m: Moving, more: str) -> str:
    """Remedies that were tried: more room, quartersawn boards, wood at another moisture when it is cut."""
    out = [more]
    flat = [
        id for id in m.parts if year.c.parts[id].stock.kind == "wood" and year.c.parts[id].stock.angle < 60
    ]
    if flat and tried(year, fits, m, quartersawn(flat)):
        out.append(f"use quartersawn boards for {' and '.join(year.c.label(i) for i in flat)}")
    mo = year.moisture
    if not m.both:
        for percent in _steps(mo, m.worst(mo)[1]):
            if tried(year, fits, m, cut_at(percent)):
                out.append(f"cut it when the wood is at {percent:g} % instead of {mo.now:g} %")
                break
    return ", or ".join(out)


def _steps(m: Moisture, toward: float) -> list[float]:
    """Whole and half per cents from the day of cutting towards an end of the year."""
    step = 0.5 if toward > m.now else -0.5
    count = int(abs(toward - m.now) / 0.5 + 1e-9)
    return [m.now + step * i for i in range(1, count + 1)]
