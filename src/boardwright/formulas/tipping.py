"""Moments about the front feet: what keeps a piece standing, and what tips it."""

from __future__ import annotations

from math import atan, cos, sin

from boardwright.formulas.limits import Limit, Limits

LIMITS: Limits = {"lean": {"block": Limit(0, None, "mm"), "depth": Limit(1, None, "mm")}}


def lean(block: float, depth: float) -> float:
    """Angle by which a piece leans forward when its rear is raised.

    Args:
        block: height of what lies under the rear [mm].
        depth: from the front feet to the block [mm].

    Returns:
        Angle [rad].

    Limits:
        Feet that do not sink.

    Source:
        Geometry; worked example of the test with a block of 0.43 in under a piece 18 in deep: 1.37 degrees.

    Example:
        >>> from math import degrees
        >>> round(degrees(lean(0.43, 18)), 2)
        1.37
    """
    return atan(block / depth)


def righting(force: float, behind: float, height: float, angle: float = 0.0) -> float:
    """Moment about the front feet of a weight: above 0 it keeps the piece standing, below it tips it.

    Args:
        force: weight [N].
        behind: its distance behind the front feet, below 0 in front of them [mm].
        height: over the floor [mm].
        angle: by which the piece leans forward [rad].

    Returns:
        Moment [N mm].

    Limits:
        A stiff piece on stiff feet.

    Source:
        Mechanics; the sum over all weights is the tipping check of the furniture standards.

    Example:
        Case of 100 lb, 9 in behind; five drawers of 26.5 lb, 12 in out from 9: 900 + 5 x 26.5 x (9 - 12), in lb in.

        >>> righting(100, 9, 24) + 5 * righting(26.5, 9 - 12, 24)
        502.5
    """
    return force * (behind * cos(angle) - height * sin(angle))
