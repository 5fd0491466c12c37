"""Ways round one corner: a part that slides out of its joint and then goes another way.

A button under a table top is drawn out of its groove and then lowered; drawn on and on, it would meet the rail across.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from boardwright.core.poses import Vec, scaled
from boardwright.solids.bench import Bench
from boardwright.solids.blocking import rooms_of, spans
from boardwright.solids.driver_reach import PINS

BESIDE = 3.0
"""Boxes of two parts no farther from each other than this guide one another while a joint closes [mm]."""
SPARE = 0.5
"""How far beyond its joint a part is drawn before it turns [mm]."""


@dataclass(frozen=True, slots=True)
class CornerWay:
    """A way out of a joint and what is met on it.

    Attributes:
        direction: index into `Bench.block.directions`, out of the joint.
        far: how far [mm].
        met: as a number, the parts in the way up to there.
    """

    direction: int
    far: float
    met: int


def corner_ways(b: Bench, i: int) -> tuple[CornerWay, ...]:
    """The ways round one corner of a part that no dowel holds, by boxes only; found once.

    Args:
        b: the bench.
        i: index of the part.
    """
    key = ("corner", i)
    if key not in b.kept:
        b.kept[key] = tuple(_found(b, i))
    ways: tuple[CornerWay, ...] = b.kept[key]
    return ways


def _found(b: Bench, i: int) -> list[CornerWay]:
    for f, two in zip(b.piece.fasteners, b.held, strict=True):
        if two and i in two and f.kind in PINS:
            return []
    own = rooms_of(b.piece.parts[i])
    out = []
    for d, others in _ways_out(b, i).items():
        way = b.block.directions[d]
        far = max(guided(own, rooms_of(b.piece.parts[k]), way) for k in others) + SPARE
        # What is in nobody's way however far the part is drawn, its boxes do not meet either.
        out.append(CornerWay(d, far, _met(b, i, own, way, far) & b.block.rows[d][i]))
    return out


def ways_on(b: Bench, i: int, first: CornerWay) -> tuple[tuple[int, int], ...]:
    """Where a part goes on from the corner: for each direction its index and, as a number, the parts in the way."""
    key = ("on", i, first.direction)
    if key not in b.kept:
        drawn = rooms_of(b.piece.parts[i]) + np.array(scaled(b.block.directions[first.direction], first.far))
        b.kept[key] = tuple(
            (d, _met(b, i, drawn, b.block.directions[d], np.inf))
            for d in range(6)
            if d not in (first.direction, first.direction ^ 1)
        )
    ways: tuple[tuple[int, int], ...] = b.kept[key]
    return ways


def _ways_out(b: Bench, i: int) -> dict[int, list[int]]:
    """The directions along the axes in which some joint of a part lets it go, and the parts at those joints."""
    found: dict[int, list[int]] = {}
    for n in b.of_part[i]:
        first, second = b.joints[n] or (i, i)
        for own in b.piece.joints[n].directions:
            way = own if second == i else scaled(own, -1.0)
            for d in range(6):
                if max(abs(x - y) for x, y in zip(way, b.block.directions[d], strict=True)) < 1e-6:
                    found.setdefault(d, []).append(first if second == i else second)
    return found


def _met(b: Bench, i: int, own: Any, way: Vec, far: float) -> int:
    """As a number, the parts that boxes meet on a way."""
    start, end = spans(own, b.boxes, way)
    hit = ((end > np.maximum(start, 0.0) + 1e-9) & (start < far)).any(axis=0)
    return sum(1 << int(k) for k in np.unique(b.owner[hit]) if k != i)


def guided(own: Any, other: Any, way: Vec, near: float = BESIDE) -> float:
    """How far boxes go before none of them stands beside one that guided it [mm].

    Args:
        own: boxes that move, (n, 2, 3) float [mm].
        other: boxes that stand, (m, 2, 3) float [mm].
        way: unit vector in which they move.
        near: how far from each other boxes still guide [mm].
    """
    apart = np.maximum(own[:, None, 0] - other[None, :, 1], other[None, :, 0] - own[:, None, 1])
    beside = (apart < near).all(axis=2)
    d = np.array(way)
    least = np.where(d > 0, own[:, 0], own[:, 1]) @ d
    most = np.where(d > 0, other[:, 1], other[:, 0]) @ d
    ahead = np.where(beside, most[None, :] - least[:, None], 0.0)
    return max(0.0, float(ahead.max()))
