"""What a maker measures on a part: places from the reference end and edge, rows of holes, shoulder to shoulder."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from boardwright.core.poses import Vec
from boardwright.drawings.cut_words.bevels import corners
from boardwright.piece.cuts import (
    Bevel,
    BiscuitSlot,
    Curve,
    Cut,
    DovetailSlot,
    DovetailTongue,
    Fingers,
    Groove,
    Hole,
    Mortise,
    Moulding,
    Notch,
    Pins,
    Rabbet,
    RaisedField,
    Side,
    Tails,
    Taper,
    Tenon,
    VGroove,
)
from boardwright.piece.records import Part
from boardwright.solids.primitives import inward

MIN_ROW = 5
"""From this many holes at one pitch on, the row is dimensioned as pitches."""


@dataclass(frozen=True, slots=True)
class Positions:
    """What is measured from the reference end (x) and the reference edge (y) [mm], in order, each once."""

    x: tuple[float, ...]
    y: tuple[float, ...]
    hole_x: tuple[float, ...]
    rows: tuple[tuple[float, float, int], ...]
    """Rows of holes at one pitch: first, last, count."""
    shoulders: tuple[tuple[float, float], ...] = ()
    """Lengths between shoulders: from, to along the part."""
    worked_out: tuple[float, ...] = ()
    """Those of the places that angles and curves bring about: nothing is settled there."""


@dataclass(slots=True)
class _Found:
    """Places by part axis while they are gathered [mm]."""

    size: Vec
    on: tuple[list[float], list[float], list[float]] = field(default_factory=lambda: ([], [], []))
    holes: list[float] = field(default_factory=list)
    worked_out: list[float] = field(default_factory=list)

    def put(self, axis: int, *values: float) -> None:
        self.on[axis].extend(values)

    def inward(self, side: Side, *depths: float) -> None:
        """Places so far in from a side."""
        self.put(side.axis, *(inward(self.size, side, d) for d in depths))


def positions(part: Part) -> Positions:
    """All positions that the drawing must show; the width of a rabbet at the far side stands in its section."""
    found = _Found(part.size)
    for cut in part.cuts:
        if isinstance(cut, Groove | Rabbet | Notch | BiscuitSlot | Hole):
            _plain(cut, found)
        elif isinstance(cut, Mortise | Tenon | Fingers | Tails | Pins | DovetailSlot | DovetailTongue):
            _fitted(cut, found)
        else:
            _shaped(cut, found)
    shoulders = _shoulders(part)
    far = {b for _, b in shoulders}
    x = [v for v in found.on[0] if not any(abs(v - b) < 1e-6 for b in far)]
    hole_x, rows = _rows(_once(found.holes, part.size[0]))
    xs, ys = _once(x, part.size[0]), _once(found.on[1], part.size[1])
    return Positions(xs, ys, hole_x, rows, shoulders, tuple(found.worked_out))


def _plain(c: Groove | Rabbet | Notch | BiscuitSlot | Hole, found: _Found) -> None:
    if isinstance(c, Groove):
        found.put(3 - c.side.axis - c.along, c.at)
        found.put(c.along, c.start, c.end)
    elif isinstance(c, Rabbet):
        found.put(3 - c.side.axis - c.edge.axis, c.start, c.end)
        if not c.edge.high:
            found.put(c.edge.axis, c.width)
    elif isinstance(c, Notch):
        found.inward(c.end, c.length)
        found.inward(c.edge, c.width)
    elif isinstance(c, BiscuitSlot) and c.lean:
        return
    elif isinstance(c, BiscuitSlot):
        for axis, v in zip([k for k in range(3) if k != c.side.axis], c.at, strict=True):
            if axis == 0:
                found.holes.append(v)
            else:
                found.put(axis, v)
    elif c.marked_through:
        return
    elif c.side.axis == 0:
        found.put(1, c.at[0])
    else:
        found.holes.append(c.at[0])
        if c.side.axis == 2:
            found.put(1, c.at[1])


def _fitted(
    c: Mortise | Tenon | Fingers | Tails | Pins | DovetailSlot | DovetailTongue, found: _Found
) -> None:
    if isinstance(c, Mortise | DovetailSlot):
        third = 3 - c.side.axis - c.along
        found.put(c.along, c.start, c.end)
        found.put(third, c.at)
        return
    found.inward(c.end, c.length)
    if isinstance(c, Tenon):
        for a, b, long in c.steps:
            found.put(c.wide, a, b)
            found.inward(c.end, c.length - long)


def _shaped(c: Cut, found: _Found) -> None:
    if isinstance(c, VGroove):
        found.put(3 - c.side.axis - c.along, c.at)
        found.put(c.along, c.start, c.end)
    elif isinstance(c, Taper):
        found.put(c.end.axis, c.start)
        found.inward(c.side, c.depth)
    elif isinstance(c, Bevel):
        depths = [d for d in corners(c, found.size).values() if d > 0]
        found.inward(c.side, *depths)
        found.worked_out += [inward(found.size, c.side, d) for d in depths]
    elif isinstance(c, RaisedField):
        for edge in c.edges:
            found.inward(edge, c.width)
    elif isinstance(c, Moulding):
        found.put(3 - c.side.axis - c.edge.axis, c.start, c.end)
    elif isinstance(c, Curve):
        for at, depth in (c.points[0], c.points[-1]):
            found.put(c.along, at)
            found.inward(c.side, depth)


def _shoulders(part: Part) -> tuple[tuple[float, float], ...]:
    """Between the shoulders of both ends: what a rail fills between two stiles [mm]."""
    ends = [c for c in part.cuts if isinstance(c, Tenon | DovetailTongue) and c.end.axis == 0]
    low = sorted({c.length for c in ends if not c.end.high})
    high = sorted({part.size[0] - c.length for c in ends if c.end.high})
    return tuple(zip(low, high, strict=False))


def _once(values: Iterable[float], whole: float) -> tuple[float, ...]:
    out: list[float] = []
    for v in sorted(values):
        if 1e-6 < v < whole - 1e-6 and (not out or v - out[-1] > 1e-6):
            out.append(v)
    return tuple(out)


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
