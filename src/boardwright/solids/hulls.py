"""What can be told of two solids from their hulls: where one that moves cannot meet the other."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np

from boardwright.core.poses import Vec
from boardwright.solids.frames import Form

PLAY = 1e-3
"""Bodies that share less than this in any direction only touch [mm]."""
MOST = 40
"""Directions of a kind that are tried: of curved parts there are many, and few more tell more."""


@dataclass(frozen=True, slots=True, eq=False)
class Hull:
    """The hull of a solid in its own frame.

    Attributes:
        points: its corners, (n, 3) float [mm].
        normals: directions square to its sides, each once, either way, (k, 3) float.
        edges: directions of its edges, each once, either way, (m, 3) float.
    """

    points: Any
    normals: Any
    edges: Any


@lru_cache(maxsize=4096)
def hull(form: Form) -> Hull:
    """The hull of a form."""
    from boardwright.solids.mesh import shape

    points, normals, edges = of_solid(shape(form.size, form.cuts).hull())
    return Hull(points, normals[:MOST], edges[:MOST])


def of_solid(convex: Any) -> tuple[Any, Any, Any]:
    """The corners of a convex solid, the normals of its faces and its edges, each direction once."""
    mesh = convex.to_mesh64()
    points = np.asarray(mesh.vert_properties, dtype=float)[:, :3]
    triangles = points[np.asarray(mesh.tri_verts)]
    edges = np.roll(triangles, -1, axis=1) - triangles
    normals = np.cross(edges[:, 0], edges[:, 1])
    return points, each_once(normals), each_once(edges.reshape(-1, 3))


def each_once(ways: Any) -> Any:
    """Directions as unit vectors, each once, either way: from (n, 3) to (k, 3) float."""
    if not len(ways):
        return ways
    sizes = np.linalg.norm(ways, axis=1)
    unit = ways[sizes > 1e-6] / sizes[sizes > 1e-6, None]
    leading = np.take_along_axis(unit, np.abs(unit).argmax(axis=1)[:, None], axis=1)
    index: dict[tuple[float, ...], int] = {}
    for i, way in enumerate(np.round(unit * np.sign(leading), 6).tolist()):
        index.setdefault(tuple(way), i)
    return unit[list(index.values())]


def corners_at(boxes: Any) -> Any:
    """Corners of boxes, from (n, 2, 3) to (n, 8, 3) float [mm]."""
    return np.stack([boxes[:, [b & 1, b >> 1 & 1, b >> 2], [0, 1, 2]] for b in range(8)], axis=1)


def spans_along(moving: Any, standing: Any, axes: Any, d: Vec, play: float = PLAY) -> tuple[Any, Any]:
    """From where to where convex bodies overlap others while they move along a direction, as far as axes can tell.

    Args:
        moving: corners of bodies, (n, p, 3) float [mm].
        standing: corners of bodies, (m, q, 3) float [mm].
        axes: unit vectors that may separate them, (k, 3) float.
        d: unit vector.
        play: less overlap than this is none [mm].

    Returns:
        As `spans_between`.
    """
    one, two = moving @ axes.T, standing @ axes.T
    ranges = one.min(1), one.max(1), two.min(1), two.max(1)
    return spans_between(*ranges, axes @ np.array(d), play)


def spans_between(
    low: Any, high: Any, other_low: Any, other_high: Any, pace: Any, play: float = PLAY
) -> tuple[Any, Any]:
    """From where to where ranges on several axes all overlap others while they move.

    Args:
        low: of what moves, (n, k) float [mm].
        high: likewise.
        other_low: of what stands, (m, k) float [mm].
        other_high: likewise.
        pace: how fast it moves on each axis, (k,) float.
        play: less overlap than this is none [mm].

    Returns:
        How far the first has gone when the overlap begins and when it ends, each (n, m) float [mm]; where it never
        comes about, the end lies before the start.
    """
    pairs = low[:, None], high[:, None], other_low[None], other_high[None]
    return times_between(*pairs, pace, play)


def times_between(
    low: Any, high: Any, other_low: Any, other_high: Any, pace: Any, play: float = PLAY
) -> tuple[Any, Any]:
    """The same for pairs of ranges that stand beside each other, each (..., k) float [mm]."""
    near, far = other_low - high + play, other_high - low - play
    across = np.abs(pace) < 1e-9
    ahead = np.where(across, 1.0, pace)
    begins, ends = near / ahead, far / ahead
    start = np.where(across, -np.inf, np.minimum(begins, ends)).max(-1, initial=-np.inf)
    end = np.where(across, np.inf, np.maximum(begins, ends)).min(-1, initial=np.inf)
    end[(across & ((near >= 0) | (far <= 0))).any(-1)] = -np.inf
    return start, end
