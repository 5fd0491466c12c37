"""Plain bodies that cuts take away, and the helpers that measure them on a blank. Both kernels read these."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from boardwright.core.curves import Run
from boardwright.core.poses import Box, Vec, add, rounded, scaled
from boardwright.piece.cuts import Side

OVER = 1.0
"""How far a body is carried beyond an open side, so that no skin is left [mm]."""


@dataclass(frozen=True, slots=True)
class Round:
    """A cylinder or a cone frustum.

    Attributes:
        base: centre of its first end [mm].
        way: unit vector from there to the centre of its far end.
        length: [mm].
        r0, r1: radius at the base and at the far end [mm].
    """

    base: Vec
    way: Vec
    length: float
    r0: float
    r1: float


@dataclass(frozen=True, slots=True)
class Sweep:
    """A flat outline carried along a vector.

    Attributes:
        points: the outline, in order round it, all in one plane [mm].
        way: not in that plane [mm].
        curved: pieces of the outline that are curves: first and last index of their points, and `arc` for a piece of a
            circle or `cubic`, with points at even steps.
    """

    points: tuple[Vec, ...]
    way: Vec
    curved: tuple[Run, ...] = ()


@dataclass(frozen=True, slots=True)
class Ring:
    """A flat outline turned once round an axis of the part.

    Attributes:
        centre: on that axis, where heights are measured from [mm].
        axis: 0 to 2.
        outline: in order round it: distance from the axis, height along it [mm].
        curved: as of a `Sweep`.
    """

    centre: Vec
    axis: int
    outline: tuple[tuple[float, float], ...]
    curved: tuple[Run, ...] = ()


Body = Box | Round | Sweep | Ring


def reach_of(body: Body) -> Box:
    """The box around a body [mm]."""
    if isinstance(body, Box):
        return body
    if isinstance(body, Ring):
        radius, heights = max(r for r, _ in body.outline), [h for _, h in body.outline]
        low = [v + (min(heights) if i == body.axis else -radius) for i, v in enumerate(body.centre)]
        high = [v + (max(heights) if i == body.axis else radius) for i, v in enumerate(body.centre)]
    elif isinstance(body, Sweep):
        points = [*body.points, *(add(p, body.way) for p in body.points)]
        low = [min(p[i] for p in points) for i in range(3)]
        high = [max(p[i] for p in points) for i in range(3)]
    else:
        end = add(body.base, scaled(body.way, body.length))
        r = max(body.r0, body.r1)
        out = [r * math.sqrt(max(0.0, 1.0 - w * w)) for w in body.way]
        low = [min(body.base[i], end[i]) - out[i] for i in range(3)]
        high = [max(body.base[i], end[i]) + out[i] for i in range(3)]
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def shifted(body: Body, way: Vec) -> Body:
    """A body moved, its numbers rounded so that alike ones are equal."""
    if isinstance(body, Box):
        return Box(rounded(add(body.low, way), 6), rounded(add(body.high, way), 6))
    if isinstance(body, Round):
        return Round(rounded(add(body.base, way), 6), body.way, round(body.length, 6), body.r0, body.r1)
    if isinstance(body, Ring):
        return Ring(rounded(add(body.centre, way), 6), body.axis, body.outline, body.curved)
    return Sweep(tuple(rounded(add(p, way), 6) for p in body.points), rounded(body.way, 6), ())


def span(size: Vec, axis: int, start: float, end: float) -> tuple[float, float]:
    """From where to where a body reaches along an axis: beyond the blank where the cut is open there [mm]."""
    low = start - OVER if start <= 1e-6 else start
    high = end + OVER if end >= size[axis] - 1e-6 else end
    return low, high


def into(size: Vec, side: Side, depth: float) -> tuple[float, float]:
    """From where to where a body reaches that goes into a side, on the side's axis [mm]."""
    s = size[side.axis]
    if side.high:
        return (s - depth if depth < s - 1e-6 else -OVER), s + OVER
    return -OVER, (depth if depth < s - 1e-6 else s + OVER)


def box(ranges: dict[int, tuple[float, float]]) -> Box:
    """A box from its range on each axis [mm]."""
    return Box(
        (ranges[0][0], ranges[1][0], ranges[2][0]),
        (ranges[0][1], ranges[1][1], ranges[2][1]),
    )


def prism(
    axes: tuple[int, int],
    outline: Iterable[tuple[float, float]],
    reach: tuple[float, float],
    curved: tuple[Run, ...] = (),
) -> Sweep:
    """An outline in a plane of two axes, carried along the third.

    Args:
        axes: the two axes of the outline.
        outline: its points on those axes, in order [mm].
        reach: from where to where on the third axis [mm].
        curved: see `Sweep`.
    """
    third = 3 - axes[0] - axes[1]
    points = []
    for a, b in outline:
        v = [0.0, 0.0, 0.0]
        v[axes[0]], v[axes[1]], v[third] = a, b, reach[0]
        points.append((v[0], v[1], v[2]))
    way = [0.0, 0.0, 0.0]
    way[third] = reach[1] - reach[0]
    return Sweep(tuple(points), (way[0], way[1], way[2]), curved)


def inward(size: Vec, side: Side, depth: float) -> float:
    """Where on its axis a point lies that is so deep in from a side; less than 0 is outside [mm]."""
    return size[side.axis] - depth if side.high else depth
