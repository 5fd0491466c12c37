"""How deep the leaves of a hinge are let in, and the gap it shuts to."""

from __future__ import annotations

from boardwright.formulas.limits import Limit, Limits

LIMITS: Limits = {"gain_depth": {"gap": Limit(0, None, "mm")}}


def gain_depth(knuckle: float, gap: float) -> float:
    """Depth of the gain of each leaf, for a hinge that shuts to a gap.

    Args:
        knuckle: thickness of the barrel [mm].
        gap: wanted between the two parts [mm].

    Returns:
        Depth in each part [mm].

    Limits:
        Both leaves let in alike; leaves no thicker than half of the barrel.

    Source:
        Geometry: barrel = gap + 2 depths; magazine page on lid hinges.

    Example:
        A barrel of 0.190 in and no gap: printed just under half of it, 0.093 to 0.095.

        >>> round(gain_depth(0.190, 0), 3)
        0.095
    """
    return max(0.0, (knuckle - gap) / 2)


def gap_shut(knuckle: float, one: float, two: float) -> float:
    """Gap at the hinged edge when the parts are shut.

    Args:
        knuckle: thickness of the barrel [mm].
        one: depth of one gain [mm].
        two: depth of the other [mm].

    Returns:
        The gap; negative where wood meets wood first, the hinge binds and the far edge stands open [mm].

    Limits:
        Leaves that lie on the bottom of their gains.

    Source:
        Geometry; magazine page on lid hinges.

    Example:
        0.190 in, gains of 0.060 and of 0.110: printed 0.070 of gap, and 0.030 over.

        >>> round(gap_shut(0.190, 0.060, 0.060), 3), round(gap_shut(0.190, 0.110, 0.110), 3)
        (0.07, -0.03)
    """
    return knuckle - one - two
