"""A part as boxes: exact for blanks with box-shaped cuts, with holes taken as filled.

The dry fit tests these first, and the solids only where boxes cannot tell. The room that a box sweeps along
an axis is a box, so a whole travel is tested at once, not at sample points.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any

import numpy as np

from boardwright.core.poses import Box, Vec
from boardwright.piece.cuts import Cut, Hole
from boardwright.piece.records import Part
from boardwright.solids.primitives import Body, Trough, bodies


@lru_cache(maxsize=4096)
def own_cells(size: tuple[float, float, float], cuts: tuple[Cut, ...]) -> Any:
    """Boxes that make up a part in its own frame, as (n, 2, 3) float [mm]: low and high corners."""
    taken = [b for c in cuts if not isinstance(c, Hole) for b in bodies(c, size) if isinstance(b, Box)]
    lines = []
    for axis in range(3):
        marks = {0.0, size[axis]}
        for b in taken:
            marks.update(m for m in (b.low[axis], b.high[axis]) if 0.0 < m < size[axis])
        lines.append(np.array(sorted(marks)))
    keep = np.ones([len(line) - 1 for line in lines], dtype=bool)
    for b in taken:
        cut = [
            (line[:-1] >= b.low[axis] - 1e-9) & (line[1:] <= b.high[axis] + 1e-9)
            for axis, line in enumerate(lines)
        ]
        keep &= ~(cut[0][:, None, None] & cut[1][None, :, None] & cut[2][None, None, :])
    index = np.argwhere(keep)
    low = np.stack([lines[a][index[:, a]] for a in range(3)], axis=1)
    high = np.stack([lines[a][index[:, a] + 1] for a in range(3)], axis=1)
    return np.stack([low, high], axis=1)


def _around(body: Body) -> tuple[Vec, Vec]:
    """Lowest and highest corner of a body [mm]."""
    if isinstance(body, Box):
        return body.low, body.high
    if isinstance(body, Trough):
        points = np.array(body.corners())
        return tuple(points.min(axis=0)), tuple(points.max(axis=0))
    r = max(body.r0, body.r1)
    low, high = [v - r for v in body.base], [v + r for v in body.base]
    end = body.base[body.axis] + body.sign * body.length
    low[body.axis], high[body.axis] = min(body.base[body.axis], end), max(body.base[body.axis], end)
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])


@lru_cache(maxsize=4096)
def own_drilled(size: tuple[float, float, float], cuts: tuple[Cut, ...]) -> Any:
    """Boxes around what is drilled out of a part, in its own frame, as (n, 2, 3) float [mm]."""
    out = [_around(b) for c in cuts if isinstance(c, Hole) for b in bodies(c, size)]
    return np.array(out, dtype=float).reshape(-1, 2, 3)


def cells(part: Part) -> Any:
    """Boxes that make up a part in the piece, as (n, 2, 3) float [mm]."""
    return _moved(part, own_cells(part.size, part.cuts))


def drilled(part: Part) -> Any:
    """Boxes around what is drilled out of a part, in the piece, as (n, 2, 3) float [mm]."""
    return _moved(part, own_drilled(part.size, part.cuts))


def _moved(part: Part, own: Any) -> Any:
    rotation = np.array([part.pose.x, part.pose.y, part.pose.z]).T
    moved = own @ rotation.T + np.array(part.pose.origin)
    return np.stack([moved.min(axis=1), moved.max(axis=1)], axis=1)


def swept(boxes: Any, direction: tuple[float, float, float], travel: float) -> Any:
    """Boxes stretched over a travel along an axis, as (n, 2, 3) float [mm]."""
    shift = np.array(direction) * travel
    out = boxes.copy()
    out[:, 0] += np.minimum(shift, 0)
    out[:, 1] += np.maximum(shift, 0)
    return out


def clashes(one: Any, two: Any, play: float = 1e-4) -> Any:
    """Pairs of boxes that overlap by more than `play` [mm] in every direction, as (k, 2) int."""
    low = np.maximum(one[:, None, 0], two[None, :, 0])
    high = np.minimum(one[:, None, 1], two[None, :, 1])
    return np.argwhere(((high - low) > play).all(axis=2))


def clipped(boxes: Any, window: Any) -> Any:
    """What of some boxes lies inside one box, (2, 3) float, as (k, 2, 3) float [mm]."""
    low, high = np.maximum(boxes[:, 0], window[0]), np.minimum(boxes[:, 1], window[1])
    return np.stack([low, high], axis=1)[(high > low).all(axis=1)]


def common_volume(one: Any, two: Any) -> float:
    """Room that two things made of boxes share [mm3]."""
    low = np.maximum(one[:, None, 0], two[None, :, 0])
    high = np.minimum(one[:, None, 1], two[None, :, 1])
    return float((high - low).clip(min=0.0).prod(axis=2).sum())
