"""The cuts of a part as numbered features, in words, and the positions that a maker measures."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields, replace
from typing import Any, Protocol

from boardwright.drawings.fitted_words import SIDE_WORDS, fitted_words
from boardwright.piece.cuts import BiscuitSlot, Cut, Groove, Hole, Notch, Rabbet, Side, holds
from boardwright.piece.records import Part


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


@dataclass(frozen=True, slots=True)
class Feature:
    """Equal cuts of a part under one number.

    Attributes:
        number: as in the balloon, from 1.
        cuts: all of one kind and one section.
        words: one line for the key.
    """

    number: int
    cuts: tuple[Cut, ...]
    words: str


def features(part: Part, printer: Printer, letters: Mapping[str, str]) -> list[Feature]:
    """The part's cuts grouped and numbered, in the order in which they stand in the part.

    Args:
        part: the part.
        printer: writes lengths.
        letters: letter of every part id, for what a cut holds.
    """
    groups: dict[Cut, list[Cut]] = {}
    for cut in part.cuts:
        groups.setdefault(_kind(cut), []).append(cut)
    out = []
    for n, cuts in enumerate(groups.values(), 1):
        out.append(Feature(n, tuple(cuts), _words(cuts, part, printer, letters)))
    return out


def _kind(cut: Cut) -> Cut:
    """The cut without what may differ inside a group, free of the noise of sums."""
    if isinstance(cut, Groove):
        cut = replace(cut, at=0.0, holds="", purpose="")
    elif isinstance(cut, Rabbet):
        cut = replace(cut, holds="", purpose="")
    elif isinstance(cut, Notch):
        cut = replace(cut, holds="")
    elif isinstance(cut, BiscuitSlot):
        third = 3 - cut.side.axis - cut.along
        apart = [round(v, 4) if k == third else 0.0 for k, v in _places(cut)]
        cut = replace(cut, at=(apart[0], apart[1]))
    elif isinstance(cut, Hole):
        cut = replace(cut, at=(0.0, round(cut.at[1], 4) if cut.side.axis != 2 else 0.0))
    noisy: dict[str, Any] = {
        f.name: round(v, 4) for f in fields(cut) if isinstance(v := getattr(cut, f.name), float)
    }
    return replace(cut, **noisy)


def _places(cut: BiscuitSlot) -> list[tuple[int, float]]:
    """The two part axes on which a slot for a biscuit is placed, and where."""
    return list(zip([k for k in range(3) if k != cut.side.axis], cut.at, strict=True))


def _words(cuts: list[Cut], part: Part, printer: Printer, letters: Mapping[str, str]) -> str:
    first = cuts[0]
    times = f"{len(cuts)} × " if len(cuts) > 1 else ""
    if isinstance(first, Hole):
        return times + _hole_words(first, part, printer, letters)
    held = sorted({letters[holds(c)] for c in cuts if holds(c) in letters})
    what = f", for {', '.join(held)}" if held else ""
    if isinstance(first, Groove):
        return times + _groove_words(first, part, printer) + what
    if isinstance(first, Rabbet):
        text = f"rabbet {printer.size(first.width)} wide × {printer.size(first.depth)} deep"
        along = f" along the {SIDE_WORDS[first.edge]}, cut into the {SIDE_WORDS[first.side]}"
        return times + text + along + _stops(first.start, first.end, _third(first), part, printer) + what
    if not isinstance(first, Notch):
        return times + fitted_words(first, part.size, printer) + what
    text = f"notch {printer.size(first.length)} long × {printer.size(first.width)} wide"
    return f"{times}{text} at the {SIDE_WORDS[first.end]} and {SIDE_WORDS[first.edge]}{what}"


def _third(cut: Rabbet) -> int:
    return 3 - cut.side.axis - cut.edge.axis


def _groove_words(g: Groove, part: Part, printer: Printer) -> str:
    name = "groove" if g.along == 0 else "dado" if g.side.axis == 2 else "slot"
    if g.side.axis == 0:
        name = "groove"
    text = f"{name} {printer.size(g.width)} wide × {printer.size(g.depth)} deep in the {SIDE_WORDS[g.side]}"
    if 3 - g.side.axis - g.along == 2:
        text += f", {printer.size(g.at)} from the back face"
    return text + _stops(g.start, g.end, g.along, part, printer)


def _stops(start: float, end: float, axis: int, part: Part, printer: Printer) -> str:
    low = start > 1e-6
    high = end < part.size[axis] - 1e-6
    origin = ("reference end", "reference edge", "back face")[axis]
    if low and high:
        return f", from {printer.size(start)} to {printer.size(end)} off the {origin}"
    if low:
        return f", starts {printer.size(start)} off the {origin}"
    return f", stops {printer.size(end)} off the {origin}" if high else ""


def _hole_words(h: Hole, part: Part, printer: Printer, letters: Mapping[str, str]) -> str:
    text = f"Ø {printer.tool(h.diameter)}"
    if h.slot > 0:
        way = ("along the grain", "across the grain", "through the thickness")[h.slot_along]
        text = f"slot {printer.tool(h.diameter)} × {printer.size(h.slot)} between centres, {way},"
    text += " through" if h.through else f" × {printer.size(h.depth)} deep"
    text += f" from the {SIDE_WORDS[h.side]}"
    if h.countersink > 0:
        text += f", countersunk Ø {printer.tool(h.countersink)} at {h.countersink_angle:g}°"
    if h.counterbore > 0:
        text += f", counterbored Ø {printer.tool(h.counterbore)} × {printer.size(h.counterbore_depth)} deep"
    if h.lean:
        toward = SIDE_WORDS[Side.of(h.lean_along, h.lean > 0)]
        text += f", {90 - abs(h.lean):g}° to the {SIDE_WORDS[h.side]}, towards the {toward}"
    if h.side.axis != 2 and not h.marked_through:
        text += f", {printer.size(h.at[1])} from the back face"
    if h.for_:
        text += f", for {h.for_}"
    if h.marked_through:
        text += f"; marked in place through {letters.get(h.marked_through, 'its mate')}"
    return text


@dataclass(frozen=True, slots=True)
class Positions:
    """What is measured from the reference end (x) and the reference edge (y) [mm], in order, each once."""

    x: tuple[float, ...]
    y: tuple[float, ...]
    hole_x: tuple[float, ...]
    rows: tuple[tuple[float, float, int], ...]
    """Rows of holes at one pitch: first, last, count."""


def positions(part: Part) -> Positions:
    """All positions that the drawing must show; the width of a rabbet at the far side stands in its section."""
    length, width, _ = part.size
    x: list[float] = []
    y: list[float] = []
    holes: list[float] = []
    for c in part.cuts:
        if isinstance(c, Groove):
            if 3 - c.side.axis - c.along == 0:
                x.append(c.at)
            if 3 - c.side.axis - c.along == 1:
                y.append(c.at)
            _ends(c.along, c.start, c.end, x, y)
        elif isinstance(c, Rabbet):
            _ends(_third(c), c.start, c.end, x, y)
            if not c.edge.high and c.edge.axis < 2:
                (x, y)[c.edge.axis].append(c.width)
        elif isinstance(c, Notch):
            x.append(length - c.length if c.end.high else c.length)
            y.append(width - c.width if c.edge.high else c.width)
        elif isinstance(c, BiscuitSlot):
            for axis, v in _places(c):
                if axis < 2:
                    (x, y)[axis].append(v)
        elif not isinstance(c, Hole) or c.marked_through:
            continue
        elif c.side.axis == 0:
            y.append(c.at[0])
        else:
            holes.append(c.at[0])
            if c.side.axis == 2:
                y.append(c.at[1])
    hole_x, rows = _rows(_once(holes, length))
    return Positions(_once(x, length), _once(y, width), hole_x, rows)


def _ends(axis: int, start: float, end: float, x: list[float], y: list[float]) -> None:
    for v in (start, end):
        if axis == 0:
            x.append(v)
        elif axis == 1:
            y.append(v)


def _once(values: Iterable[float], whole: float) -> tuple[float, ...]:
    out: list[float] = []
    for v in sorted(values):
        if 1e-6 < v < whole - 1e-6 and (not out or v - out[-1] > 1e-6):
            out.append(v)
    return tuple(out)


MIN_ROW = 5
"""From this many holes at one pitch on, the row is dimensioned as pitches."""


def _rows(xs: tuple[float, ...]) -> tuple[tuple[float, ...], tuple[tuple[float, float, int], ...]]:
    """Positions with the holes of equal pitch taken out into rows, first hole of each row kept."""
    single: list[float] = []
    rows: list[tuple[float, float, int]] = []
    i = 0
    while i < len(xs):
        j = i + 1
        while j + 1 < len(xs) and abs((xs[j + 1] - xs[j]) - (xs[i + 1] - xs[i])) < 1e-6:
            j += 1
        single.append(xs[i])
        if j - i + 1 >= MIN_ROW and j < len(xs):
            rows.append((xs[i], xs[j], j - i + 1))
            i = j + 1
        else:
            i += 1
    return tuple(single), tuple(rows)
