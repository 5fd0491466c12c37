"""Where fasteners stand along a joint."""

from __future__ import annotations

import math

from boardwright.core.poses import Vec
from boardwright.piece.setout import SetOut

SPACING = 200.0
"""Between fasteners along a joint, at most [mm]: 6 to 8 in, common practice."""
FROM_EDGE = 38.0
"""First fastener from the edge [mm]: 1 to 1 1/2 in, common practice."""
SHORTEST = 25.0
"""A joint shorter than this has one fastener [mm]: 1 in, common practice."""
DOWEL_SPACING = 96.0
"""Between dowels, at most [mm]: 2 to 4 in, multiples of 32 mm, common practice."""
LEFT_BEYOND_TIP = 3.0
"""Wood left beyond the tip of a screw [mm]: 1/8 in, common practice."""


def places(
    out: SetOut,
    run: tuple[float, float],
    count: int | None,
    spacing: float,
    from_edge: float = FROM_EDGE,
) -> list[float]:
    """Where fasteners stand along a joint: symmetric, settled from its low end [mm].

    Args:
        out: the bench.
        run: from where to where the joint runs [mm].
        count: how many; None for by length.
        spacing: from one to the next, at most [mm].
        from_edge: of the outer ones; at most a quarter of the joint [mm].
    """
    length = run[1] - run[0]
    edge = min(from_edge, length / 4)
    n = count or (1 if length < SHORTEST else math.ceil((length - 2 * edge) / spacing) + 1)
    settled = out.sizer.settled
    if n == 1:
        return [run[0] + settled(length / 2)]
    first = settled(edge)
    pitch = (length - 2 * first) / (n - 1)
    half = [run[0] + settled(first + i * pitch) for i in range(n // 2)]
    middle = [run[0] + settled(length / 2)] if n % 2 else []
    rest = [run[0] + settled(first + i * pitch) for i in range(n - n // 2, n)]
    return half + middle + rest


def spot(axis: int, at: float, across: int, a: float, along: int, b: float) -> Vec:
    """A point from its three coordinates on named axes [mm]."""
    v = [0.0, 0.0, 0.0]
    v[axis], v[across], v[along] = at, a, b
    return (v[0], v[1], v[2])
