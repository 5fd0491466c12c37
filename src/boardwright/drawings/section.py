"""Sections through a part: what its solid leaves in a window of a plane. Lengths in mm."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

from boardwright.core.poses import Box, Pose, Vec
from boardwright.drawings.records import Point
from boardwright.piece.records import Part
from boardwright.solids.mesh import box_solid, shape
from boardwright.solids.primitives import OVER

Window = tuple[float, float, float, float]
"""Left, lower, right and upper edge [mm]."""
NEAR = 1e-4
"""Two places nearer than this are one [mm]."""


@dataclass(frozen=True, slots=True)
class Section:
    """What is left of a part in a plane.

    Attributes:
        pieces: of wood, each by its closed outline and those of its holes.
        outline: lines between wood and air; the window's own edges are left out, as the wood runs on there.
        area: of the wood in the window [mm2].
    """

    pieces: tuple[tuple[tuple[Point, ...], ...], ...]
    outline: tuple[tuple[Point, ...], ...]
    area: float


def section(part: Part, across: int, at: float, window: Window) -> Section:
    """The section of a part by a plane.

    Args:
        part: in its own frame.
        across: axis that the plane is square to; the lower of the other two lies to the right, the other up.
        at: where the plane is along that axis [mm].
        window: what to show [mm], within the part's outline or a little wider.
    """
    a, b = (i for i in range(3) if i != across)
    low, high = [0.0] * 3, [0.0] * 3
    low[a], low[b], high[a], high[b] = window
    low[across], high[across] = -OVER, part.size[across] + OVER
    room = box_solid(Box((low[0], low[1], low[2]), (high[0], high[1], high[2])))
    cut = (shape(part.size, part.cuts) ^ room).transform(_facing(a, b, across, at).rows()).slice(0.0)
    pieces = []
    for piece in cut.decompose():
        rings = (_clean([(float(x), float(y)) for x, y in ring]) for ring in piece.to_polygons())
        pieces.append(tuple(r for r in rings if len(r) > 2))
    size = (part.size[a], part.size[b])
    lines = tuple(line for rings in pieces for r in rings for line in _open(r, window, size))
    return Section(tuple(p for p in pieces if p), lines, float(cut.area()))


def _facing(a: int, b: int, across: int, at: float) -> Pose:
    """The pose that lays a plane of the part flat: axis `a` to the right, `b` up, the plane at height 0."""
    axes: list[Vec] = [(0.0, 0.0, 0.0)] * 3
    axes[a], axes[b] = (1.0, 0.0, 0.0), (0.0, 1.0, 0.0)
    axes[across] = (0.0, 0.0, 1.0 if across != 1 else -1.0)
    return Pose((0.0, 0.0, -at * axes[across][2]), axes[0], axes[1], axes[2])


def _clean(ring: list[Point]) -> tuple[Point, ...]:
    """A ring without points that lie on the line of their neighbours or on each other."""
    points = [(round(x, 5) + 0.0, round(y, 5) + 0.0) for x, y in ring]
    points = [p for p, q in zip(points, points[1:] + points[:1], strict=True) if _apart(p, q)]
    out = []
    for before, p, after in zip(points[-1:] + points[:-1], points, points[1:] + points[:1], strict=True):
        turn = (p[0] - before[0]) * (after[1] - p[1]) - (p[1] - before[1]) * (after[0] - p[0])
        if abs(turn) > NEAR * math.dist(before, after):
            out.append(p)
    return tuple(out)


def _apart(p: Point, q: Point) -> bool:
    return abs(p[0] - q[0]) > NEAR or abs(p[1] - q[1]) > NEAR


def _open(ring: tuple[Point, ...], window: Window, size: tuple[float, float]) -> list[tuple[Point, ...]]:
    """The lines of a ring that are no edge of the window inside the part."""

    def inner(p: Point, q: Point) -> bool:
        for k in (0, 1):
            for edge in (window[k], window[k + 2]):
                on = abs(p[k] - edge) < NEAR and abs(q[k] - edge) < NEAR
                if on and NEAR < edge < size[k] - NEAR:
                    return True
        return False

    pairs = list(pairwise((*ring, ring[0])))
    start = next((i for i, pq in enumerate(pairs) if inner(*pq)), None)
    if start is None:
        return [(*ring, ring[0])]
    out: list[tuple[Point, ...]] = []
    line: list[Point] = []
    for p, q in pairs[start:] + pairs[:start]:
        if inner(p, q):
            if line:
                out.append(tuple(line))
            line = []
            continue
        line = line or [p]
        line.append(q)
    return [*out, tuple(line)] if line else out
