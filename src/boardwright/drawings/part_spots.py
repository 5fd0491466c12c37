"""Where the leader of a cut ends in the view of a face, and from which side it comes."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.curves import curve_line
from boardwright.core.poses import Vec
from boardwright.drawings.cut_words.bevels import corners
from boardwright.piece.cuts import (
    Bevel,
    Curve,
    Cut,
    Fingers,
    Groove,
    Hole,
    Moulding,
    Notch,
    Pins,
    Rabbet,
    RaisedField,
    Side,
    Tails,
    Taper,
    entered,
)
from boardwright.solids.primitives import inward
from boardwright.solids.taken import around


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a leader ends on a part [mm]; from the right or from below; a little in from the end of a long cut."""

    x: float
    y: float
    right: bool = False
    short: bool = False


def spot(c: Cut, size: Vec, near: float) -> Spot:
    """Where the leader of a cut ends.

    Args:
        c: in the part's own frame.
        size: of the part [mm].
        near: how far in from an edge of the part a leader ends that belongs to the edge [mm].
    """
    if isinstance(c, Hole):
        if c.side.axis == 2:
            return Spot(c.at[0], c.at[1])
        if c.side.axis == 1:
            return Spot(c.at[0], inward(size, c.side, near))
        return Spot(inward(size, c.side, 6.0), c.at[0], c.side.high)
    if isinstance(c, Notch):
        return Spot(inward(size, c.end, c.length / 2), inward(size, c.edge, c.width))
    if isinstance(c, Groove | Rabbet):
        return _channel(c, size, near)
    if isinstance(c, Bevel | Taper | Curve | Moulding | RaisedField):
        return _shaped(c, size, near)
    room = around(c, size)
    x = (max(0.0, room.low[0]) + min(size[0], room.high[0])) / 2
    y = (max(0.0, room.low[1]) + min(size[1], room.high[1])) / 2
    if isinstance(c, Fingers | Tails | Pins) and c.wide == 1:
        a, b = c.sockets[min(1, len(c.sockets) - 1)]
        y = (a + b) / 2
    return Spot(x, y, entered(c) is Side.FAR_END or getattr(c, "end", None) is Side.FAR_END)


def _channel(c: Groove | Rabbet, size: Vec, near: float) -> Spot:
    """At the far end of a cut along the grain, at the reference edge of one across it."""
    runs = c.along if isinstance(c, Groove) else 3 - c.side.axis - c.edge.axis
    middle = _middle(c, runs, size)
    if isinstance(c, Rabbet):
        along = c.edge.axis == 1 and c.side.axis != 0
    else:
        along = c.along == 0 or c.side is Side.FAR_END
    if along:
        return Spot(min(c.end, size[0]) if runs == 0 else size[0], middle[1], True, True)
    low = max(0.0, c.start) if runs == 1 else 0.0
    return Spot(middle[0], min(2 * near, size[1] / 4) + low)


def _middle(c: Groove | Rabbet, runs: int, size: Vec) -> tuple[float, float]:
    """The middle of a groove or rabbet, along and across the part [mm]."""
    out = [size[0] / 2, size[1] / 2]
    for axis in (0, 1):
        if axis == runs:
            out[axis] = (max(0.0, c.start) + min(size[axis], c.end)) / 2
        elif axis == c.side.axis:
            out[axis] = inward(size, c.side, c.depth / 2)
        elif isinstance(c, Groove):
            out[axis] = c.at + c.width / 2
        else:
            out[axis] = inward(size, c.edge, c.width / 2)
    return (out[0], out[1])


def _shaped(c: Bevel | Taper | Curve | Moulding | RaisedField, size: Vec, near: float) -> Spot:
    if isinstance(c, RaisedField):
        y = c.width / 2 if Side.EDGE in c.edges else size[1] / 2
        return Spot(size[0] * 0.3, y) if Side.EDGE in c.edges else Spot(c.width / 2, y)
    if isinstance(c, Moulding):
        edge = c.edge if c.edge.axis != 2 else c.side
        if 3 - c.side.axis - c.edge.axis == 2:
            return _at_corner(c, size)
        if edge.axis == 0:
            return Spot(inward(size, edge, c.size / 2), size[1] * 0.35, edge.high)
        return Spot(min(c.end, size[0]), inward(size, edge, c.size / 2), True, True)
    if isinstance(c, Curve):
        line = curve_line(c.shape, c.points)
        middle = (line[0][0] + line[-1][0]) / 2
        x, depth = min(line, key=lambda p: abs(p[0] - middle))
        if c.along == 0:
            return Spot(
                min(max(x, near), size[0] - near), inward(size, c.side, depth) if c.side.axis == 1 else near
            )
        inner = inward(size, c.side, depth) if c.side.axis == 0 else size[0] / 2
        return Spot(inner, min(max(x, near), size[1] - near), c.side is Side.FAR_END)
    if isinstance(c, Taper):
        place = [size[0] / 2, size[1] / 2]
        middle = (c.start + (size[c.end.axis] if c.end.high else 0.0)) / 2
        if c.end.axis < 2:
            place[c.end.axis] = middle
        if c.side.axis < 2:
            place[c.side.axis] = inward(size, c.side, c.depth / 2)
        return Spot(place[0], place[1])
    return _bevelled(c, size, near)


def _at_corner(c: Moulding, size: Vec) -> Spot:
    """A cut through the corner of an end and an edge: beside the edge, on the wood that a mitre leaves there."""
    end, edge = (c.side, c.edge) if c.side.axis == 0 else (c.edge, c.side)
    reach = max((max(p) for p in c.points), default=c.size)
    return Spot(inward(size, end, reach / 2), inward(size, edge, reach / 5), end.high)


def _bevelled(c: Bevel, size: Vec, near: float) -> Spot:
    depths = [max(0.0, d) for d in corners(c, size).values()]
    inner = sum(depths) / len(depths)
    if c.side.axis == 0:
        return Spot(inward(size, c.side, inner), size[1] / 2, c.side.high)
    return Spot(size[0] * 0.7, inward(size, c.side, inner) if c.side.axis == 1 else near)
