"""From a cut to the plain bodies it takes away, in the part's own frame. Both kernels read these."""

from __future__ import annotations

import math
from dataclasses import dataclass

from boardwright.core.poses import Box, Vec
from boardwright.piece.cuts import Cut, Groove, Hole, Notch, Rabbet, Side

OVER = 1.0
"""How far a body is carried beyond an open side, so that no skin is left [mm]."""


@dataclass(frozen=True, slots=True)
class Round:
    """A cylinder or a cone frustum.

    Attributes:
        base: centre of its first end [mm].
        axis: part axis it runs along.
        sign: +1 or -1 along that axis.
        length: [mm].
        r0, r1: radius at the base and at the far end [mm].
    """

    base: Vec
    axis: int
    sign: int
    length: float
    r0: float
    r1: float


@dataclass(frozen=True, slots=True)
class Trough:
    """The straight part of a countersunk slot: a bar of trapezoid section.

    Attributes:
        base: middle of its wide mouth [mm].
        axis, sign: the way it goes into the wood.
        depth: [mm].
        along: part axis it runs along. length: [mm].
        w0, w1: half its width at the mouth and at the bottom [mm].
    """

    base: Vec
    axis: int
    sign: int
    depth: float
    along: int
    length: float
    w0: float
    w1: float

    def corners(self) -> list[Vec]:
        """Its eight corners: four at one end of the slot, then four at the other; each mouth, mouth, bottom, bottom."""
        across = 3 - self.axis - self.along
        out = []
        for end in (-self.length / 2, self.length / 2):
            for deep, wide in (
                (0.0, -self.w0),
                (0.0, self.w0),
                (self.depth, self.w1),
                (self.depth, -self.w1),
            ):
                v = list(self.base)
                v[self.along] += end
                v[self.axis] += self.sign * deep
                v[across] += wide
                out.append((v[0], v[1], v[2]))
        return out


Body = Box | Round | Trough


def _span(size: Vec, axis: int, start: float, end: float) -> tuple[float, float]:
    low = start - OVER if start <= 1e-6 else start
    high = end + OVER if end >= size[axis] - 1e-6 else end
    return low, high


def _into(size: Vec, side: Side, depth: float) -> tuple[float, float]:
    s = size[side.axis]
    if side.high:
        return (s - depth if depth < s - 1e-6 else -OVER), s + OVER
    return -OVER, (depth if depth < s - 1e-6 else s + OVER)


def _box(ranges: dict[int, tuple[float, float]]) -> Box:
    return Box(
        (ranges[0][0], ranges[1][0], ranges[2][0]),
        (ranges[0][1], ranges[1][1], ranges[2][1]),
    )


def bodies(cut: Cut, size: tuple[float, float, float]) -> list[Body]:
    """The bodies that a cut takes away from a blank of a given size.

    Args:
        cut: in the part's own frame.
        size: length, width, thickness of the blank [mm].

    Returns:
        Boxes and rounds; open sides are passed by `OVER`.
    """
    if isinstance(cut, Groove):
        third = 3 - cut.side.axis - cut.along
        return [
            _box(
                {
                    cut.side.axis: _into(size, cut.side, cut.depth),
                    cut.along: _span(size, cut.along, cut.start, cut.end),
                    third: _span(size, third, cut.at, cut.at + cut.width),
                }
            )
        ]
    if isinstance(cut, Rabbet):
        third = 3 - cut.side.axis - cut.edge.axis
        return [
            _box(
                {
                    cut.side.axis: _into(size, cut.side, cut.depth),
                    cut.edge.axis: _into(size, cut.edge, cut.width),
                    third: _span(size, third, cut.start, cut.end),
                }
            )
        ]
    if isinstance(cut, Notch):
        return [
            _box(
                {
                    0: _into(size, cut.end, cut.length),
                    1: _into(size, cut.edge, cut.width),
                    2: (-OVER, size[2] + OVER),
                }
            )
        ]
    return _hole(cut, size)


def _hole(cut: Hole, size: tuple[float, float, float]) -> list[Body]:
    axis = cut.side.axis
    a, b = (i for i in range(3) if i != axis)
    sign = -1 if cut.side.high else 1
    surface = size[axis] if cut.side.high else 0.0
    depth = size[axis] + OVER if cut.through else cut.depth
    r = cut.diameter / 2

    def point(along: float, ca: float, cb: float) -> Vec:
        v = [0.0, 0.0, 0.0]
        v[axis], v[a], v[b] = along, ca, cb
        return (v[0], v[1], v[2])

    centres = [cut.at]
    out: list[Body] = []
    if cut.slot > 0:
        shift = cut.slot / 2
        da, db = (shift, 0.0) if cut.slot_along == a else (0.0, shift)
        centres = [(cut.at[0] - da, cut.at[1] - db), (cut.at[0] + da, cut.at[1] + db)]
        ranges = {
            axis: _into(size, cut.side, depth),
            a: (cut.at[0] - (da or r), cut.at[0] + (da or r)),
            b: (cut.at[1] - (db or r), cut.at[1] + (db or r)),
        }
        out.append(_box(ranges))
    for ca, cb in centres:
        out.append(Round(point(surface - sign * OVER, ca, cb), axis, sign, depth + OVER, r, r))
        if cut.countersink > cut.diameter:
            top = cut.countersink / 2
            slope = math.tan(math.radians(cut.countersink_angle / 2))
            out.append(Round(point(surface, ca, cb), axis, sign, (top - r) / slope, top, r))
    if cut.slot > 0 and cut.countersink > cut.diameter:
        deep = (cut.countersink - cut.diameter) / 2 / math.tan(math.radians(cut.countersink_angle / 2))
        out.append(
            Trough(
                point(surface, *cut.at), axis, sign, deep, cut.slot_along, cut.slot, cut.countersink / 2, r
            )
        )
    return out


def is_planar(cuts: tuple[Cut, ...]) -> bool:
    """True when every body taken away is a box."""
    return not any(isinstance(c, Hole) for c in cuts)
