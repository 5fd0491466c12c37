"""A part as boxes: exact for blanks with box-shaped cuts.

Holes, dovetails, bevels and all else that is no box are taken as filled, and a part that stands askew as boxes
around its boxes.

The dry fit tests these first, and the solids only where boxes cannot tell. The room that a box sweeps along
an axis is a box, so a whole travel is tested at once, not at sample points.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np

from boardwright.core.poses import Box
from boardwright.piece.cuts import Hole
from boardwright.piece.records import Part
from boardwright.solids.frames import Form, form_of
from boardwright.solids.once import once
from boardwright.solids.primitives import reach_of
from boardwright.solids.taken import taken

PLAY = 1e-4
"""Boxes that share no more than this in some direction only touch [mm]."""


@lru_cache(maxsize=8192)
def own_cells(form: Form) -> Any:
    """Boxes that make up a part in its own frame, as (n, 2, 3) float [mm]: low and high corners."""
    size = form.size
    away = [b for c in form.cuts if not isinstance(c, Hole) for b in taken(c, size) if isinstance(b, Box)]
    lines = []
    for axis in range(3):
        marks = {0.0, size[axis]}
        for b in away:
            marks.update(m for m in (b.low[axis], b.high[axis]) if 0.0 < m < size[axis])
        lines.append(np.array(sorted(marks)))
    keep = np.ones([len(line) - 1 for line in lines], dtype=bool)
    for b in away:
        cut = [
            (line[:-1] >= b.low[axis] - 1e-9) & (line[1:] <= b.high[axis] + 1e-9)
            for axis, line in enumerate(lines)
        ]
        keep &= ~(cut[0][:, None, None] & cut[1][None, :, None] & cut[2][None, None, :])
    index = np.argwhere(keep)
    low = np.stack([lines[a][index[:, a]] for a in range(3)], axis=1)
    high = np.stack([lines[a][index[:, a] + 1] for a in range(3)], axis=1)
    return np.stack([low, high], axis=1)


@lru_cache(maxsize=8192)
def own_drilled(form: Form) -> Any:
    """Boxes around what is taken out of a part and is no box, in its own frame, as (n, 2, 3) float [mm]."""
    away = [
        b for c in form.cuts for b in taken(c, form.size) if isinstance(c, Hole) or not isinstance(b, Box)
    ]
    out = [(r.low, r.high) for r in map(reach_of, away)]
    return np.array(out, dtype=float).reshape(-1, 2, 3)


@once()
def cells(part: Part) -> Any:
    """Boxes that make up a part in the piece, as (n, 2, 3) float [mm]."""
    return _moved(part, own_cells(form_of(part)))


@once()
def drilled(part: Part) -> Any:
    """Boxes around what is taken out of a part and is no box, in the piece, as (n, 2, 3) float [mm]."""
    return _moved(part, own_drilled(form_of(part)))


def _moved(part: Part, own: Any) -> Any:
    rotation = np.array([part.pose.x, part.pose.y, part.pose.z]).T
    middle = (own[:, 0] + own[:, 1]) / 2 @ rotation.T + np.array(part.pose.origin)
    half = (own[:, 1] - own[:, 0]) / 2 @ np.abs(rotation).T
    return np.stack([middle - half, middle + half], axis=1)


def swept(boxes: Any, direction: tuple[float, float, float], travel: float) -> Any:
    """Boxes stretched over a travel along an axis, as (n, 2, 3) float [mm]."""
    shift = np.array(direction) * travel
    out = boxes.copy()
    out[:, 0] += np.minimum(shift, 0)
    out[:, 1] += np.maximum(shift, 0)
    return out


def clashes(one: Any, two: Any, play: float = PLAY) -> Any:
    """Pairs of boxes that overlap by more than `play` [mm] in every direction, as (k, 2) int."""
    if not len(one) or not len(two):
        return np.zeros((0, 2), dtype=np.intp)
    near = np.flatnonzero(
        ((two[:, 1] > one[:, 0].min(axis=0)) & (two[:, 0] < one[:, 1].max(axis=0))).all(axis=1)
    )
    met = np.ones((len(one), len(near)), dtype=bool)
    for k in range(3):
        low = np.maximum(one[:, None, 0, k], two[None, near, 0, k])
        met &= np.minimum(one[:, None, 1, k], two[None, near, 1, k]) - low > play
    pairs = np.argwhere(met)
    pairs[:, 1] = near[pairs[:, 1]]
    return pairs


def every_two(pairs: Any, starts: Any, counts: Any) -> tuple[Any, Any]:
    """Everything that the first of two owners has with everything that the second has, of pairs of owners.

    Args:
        pairs: numbers of owners, (k, 2) int.
        starts: number of the first thing of each owner, (owners,) int.
        counts: how many each has, (owners,) int.

    Returns:
        Two numbers of things for each pair of them, two (n,) int.
    """
    of, one = of_each(pairs[:, 0], starts, counts)
    of, two = of_each(pairs[of, 1], starts, counts)
    return one[of], two


def of_each(owners: Any, starts: Any, counts: Any) -> tuple[Any, Any]:
    """Everything that each of some owners has.

    Args:
        owners: their numbers, (k,) int.
        starts: number of the first thing of each owner, (owners,) int.
        counts: how many each has, (owners,) int.

    Returns:
        For each thing the row of `owners` it goes with, and its own number, two (n,) int.
    """
    total = counts[owners]
    of = np.repeat(np.arange(len(owners)), total)
    return of, starts[owners][of] + np.arange(len(of)) - np.repeat(np.cumsum(total) - total, total)


@dataclass(frozen=True, slots=True, eq=False)
class Stack:
    """The boxes of several parts, one after the other.

    Attributes:
        boxes: all of them, (n, 2, 3) float [mm].
        starts: number of the first box of each part, (parts,) int.
        counts: how many it has, (parts,) int.
    """

    boxes: Any
    starts: Any
    counts: Any

    @staticmethod
    def of(rooms: Sequence[Any]) -> Stack:
        """From the boxes of each part, (n, 2, 3) float [mm]."""
        counts = np.array([len(r) for r in rooms], dtype=int)
        return Stack(np.concatenate([*rooms, np.zeros((0, 2, 3))]), np.cumsum(counts) - counts, counts)

    def of_each(self, owners: Any) -> tuple[Any, Any]:
        """For each box of some parts the row of `owners` it goes with, and the box, (n,) int, (n, 2, 3) float."""
        of, box = of_each(owners, self.starts, self.counts)
        return of, self.boxes[box]


def clipped(boxes: Any, window: Any) -> Any:
    """What of some boxes lies inside one box, (2, 3) float, as (k, 2, 3) float [mm]."""
    low, high = np.maximum(boxes[:, 0], window[0]), np.minimum(boxes[:, 1], window[1])
    return np.stack([low, high], axis=1)[(high > low).all(axis=1)]


def common_volume(one: Any, two: Any) -> float:
    """Room that two things made of boxes share [mm3]."""
    low = np.maximum(one[:, None, 0], two[None, :, 0])
    high = np.minimum(one[:, None, 1], two[None, :, 1])
    return float((high - low).clip(min=0.0).prod(axis=2).sum())
