"""A part as boxes: exact for blanks with box-shaped cuts, with holes taken as filled.

Used where a part moves: the room that a box sweeps along an axis is a box, so a whole travel is tested at once,
not at sample points.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any

import numpy as np

from boardwright.core.poses import Box
from boardwright.piece.cuts import Cut, Hole
from boardwright.piece.records import Part
from boardwright.solids.primitives import bodies


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
            (line[:-1] >= b.low[axis] - 1e-9) & (line[1:] <= b.high[axis] + 1e-9) for axis, line in enumerate(lines)
        ]
        keep &= ~(cut[0][:, None, None] & cut[1][None, :, None] & cut[2][None, None, :])
    index = np.argwhere(keep)
    low = np.stack([lines[a][index[:, a]] for a in range(3)], axis=1)
    high = np.stack([lines[a][index[:, a] + 1] for a in range(3)], axis=1)
    return np.stack([low, high], axis=1)


def cells(part: Part) -> Any:
    """Boxes that make up a part in the piece, as (n, 2, 3) float [mm]."""
    own = own_cells(part.size, part.cuts)
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
