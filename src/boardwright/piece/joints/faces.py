"""Contact faces of joints, built in one place so that all joints mean the same by them."""

from __future__ import annotations

from dataclasses import replace

from boardwright.core.poses import Box, Vec
from boardwright.piece.records import Contact


def plane(
    axis: int,
    at: float,
    ranges: dict[int, tuple[float, float]],
    second_is_high: bool,
    *,
    glued: bool = True,
    gap: float = 0.0,
    why: str = "",
) -> Contact:
    """A contact face square to an axis.

    Args:
        axis: 0 to 2.
        at: where it lies [mm].
        ranges: its extent on the other two axes [mm].
        second_is_high: True when the part that goes in lies on the high side.
        glued: a glue face or not.
        gap: planned gap [mm].
        why: reason of the gap.
    """
    low, high = [0.0] * 3, [0.0] * 3
    low[axis] = high[axis] = at
    for i, (a, b) in ranges.items():
        low[i], high[i] = a, b
    return Contact(
        Box((low[0], low[1], low[2]), (high[0], high[1], high[2])), axis, second_is_high, glued, gap, why
    )


def facet(corners: tuple[Vec, ...], *, glued: bool = True, why: str = "") -> Contact:
    """A contact face that is square to no axis, or no rectangle.

    Args:
        corners: its outline in one plane, counter-clockwise as seen from the part that goes in [mm].
        glued: a glue face or not.
        why: what it is, where that helps.
    """
    low = [min(p[i] for p in corners) for i in range(3)]
    high = [max(p[i] for p in corners) for i in range(3)]
    face = Contact(
        Box((low[0], low[1], low[2]), (high[0], high[1], high[2])), 0, True, glued, 0.0, why, corners
    )
    normal = face.normal
    axis = max(range(3), key=lambda i: (abs(normal[i]), -i))
    return replace(face, axis=axis, from_first=normal[axis] > 0)


def unit(axis: int, positive: bool) -> Vec:
    """A unit vector along an axis."""
    v = [0.0, 0.0, 0.0]
    v[axis] = 1.0 if positive else -1.0
    return (v[0], v[1], v[2])
