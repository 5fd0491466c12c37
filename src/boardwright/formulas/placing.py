"""Spacing of screws and nails loaded across their axis, and their distance from ends and edges.

European code values as printed in a structural handbook of 2025, for the face of the material; `d` is the
outer diameter of the thread, `a` the angle between force and grain.
"""

from __future__ import annotations

from math import cos, radians, sin

from boardwright.formulas.limits import Limit, Limits

_THIN = 5.0
"""Diameter from which screws driven without a hole need more room [mm]."""
_ANGLE = Limit(0, 90, "degrees")
_DIAMETER = Limit(0, 12, "mm")

LIMITS: Limits = {
    "spacing_along_grain": {"d": _DIAMETER, "a": _ANGLE},
    "spacing_across_grain": {"d": _DIAMETER, "a": _ANGLE},
    "end_distance_loaded": {"d": _DIAMETER, "a": _ANGLE},
    "end_distance_unloaded": {"d": _DIAMETER},
    "edge_distance_loaded": {"d": _DIAMETER, "a": _ANGLE},
    "edge_distance_unloaded": {"d": _DIAMETER},
}


def spacing_along_grain(d: float, a: float, bored: bool) -> float:
    """Least spacing of fasteners along the grain.

    Args:
        d: outer diameter of the thread [mm].
        a: angle between force and grain [degrees].
        bored: a hole is bored first [yes or no].

    Returns:
        Least distance, centre of the fastener [mm].

    Limits:
        Diameters to 12 mm; angles 0 to 90 degrees.

    Source:
        EN 1995-1-1 values, structural handbook of 2025 (page read): (4 + cos a) d bored; (5 + 5 cos
        a) d, or (5 + 7 cos a) d from 5 mm, without.

    Example:
        The printed factors along the grain, bored and not: 5 and 10.

        >>> spacing_along_grain(1, 0, True), spacing_along_grain(1, 0, False)
        (5.0, 10.0)
    """
    along = cos(radians(a))
    if bored:
        return (4 + along) * d
    return (5 + (5 if d < _THIN else 7) * along) * d


def spacing_across_grain(d: float, a: float, bored: bool) -> float:
    """Least spacing of fasteners across the grain.

    Args:
        d: outer diameter of the thread [mm].
        a: angle between force and grain [degrees].
        bored: a hole is bored first [yes or no].

    Returns:
        Least distance, centre of the fastener [mm].

    Limits:
        Diameters to 12 mm; angles 0 to 90 degrees.

    Source:
        EN 1995-1-1 values, structural handbook of 2025 (page read): (3 + sin a) d bored; 5 d
        without.

    Example:
        The printed factors for a force along the grain, bored and not: 3 and 5.

        >>> spacing_across_grain(1, 0, True), spacing_across_grain(1, 0, False)
        (3.0, 5.0)
    """
    return (3 + sin(radians(a))) * d if bored else 5.0 * d


def end_distance_loaded(d: float, a: float, bored: bool) -> float:
    """Least distance from an end that the force pulls towards.

    Args:
        d: outer diameter of the thread [mm].
        a: angle between force and grain [degrees].
        bored: a hole is bored first [yes or no].

    Returns:
        Least distance, centre of the fastener [mm].

    Limits:
        Diameters to 12 mm; angles 0 to 90 degrees.

    Source:
        EN 1995-1-1 values, structural handbook of 2025 (page read): (7 + 5 cos a) d bored; (10 + 5
        cos a) d without.

    Example:
        The printed factors along the grain, bored and not: 12 and 15.

        >>> end_distance_loaded(1, 0, True), end_distance_loaded(1, 0, False)
        (12.0, 15.0)
    """
    return ((7 if bored else 10) + 5 * cos(radians(a))) * d


def end_distance_unloaded(d: float, bored: bool) -> float:
    """Least distance from an end that the force does not pull towards.

    Args:
        d: outer diameter of the thread [mm].
        bored: a hole is bored first [yes or no].

    Returns:
        Least distance, centre of the fastener [mm].

    Limits:
        Diameters to 12 mm.

    Source:
        EN 1995-1-1 values, structural handbook of 2025 (page read): 7 d bored; 10 d without.

    Example:
        A screw of 4 mm, bored: 28 mm.

        >>> end_distance_unloaded(4, True)
        28
    """
    return (7 if bored else 10) * d


def edge_distance_loaded(d: float, a: float, bored: bool) -> float:
    """Least distance from an edge that the force pulls towards.

    Args:
        d: outer diameter of the thread [mm].
        a: angle between force and grain [degrees].
        bored: a hole is bored first [yes or no].

    Returns:
        Least distance, centre of the fastener [mm].

    Limits:
        Diameters to 12 mm; angles 0 to 90 degrees.

    Source:
        EN 1995-1-1 values, structural handbook of 2025 (page read): (3 + 2 sin a) d bored, (3 + 4
        sin a) d from 5 mm; (5 + 2 sin a) d, or (5 + 5 sin a) d, without.

    Example:
        The printed factors across the grain below 5 mm, bored and not: 5 and 7.

        >>> edge_distance_loaded(1, 90, True), edge_distance_loaded(1, 90, False)
        (5.0, 7.0)
    """
    across = sin(radians(a))
    if bored:
        return (3 + (2 if d < _THIN else 4) * across) * d
    return (5 + (2 if d < _THIN else 5) * across) * d


def edge_distance_unloaded(d: float, bored: bool) -> float:
    """Least distance from an edge that the force does not pull towards.

    Args:
        d: outer diameter of the thread [mm].
        bored: a hole is bored first [yes or no].

    Returns:
        Least distance, centre of the fastener [mm].

    Limits:
        Diameters to 12 mm.

    Source:
        EN 1995-1-1 values, structural handbook of 2025 (page read): 3 d bored; 5 d without.

    Example:
        A screw of 4 mm, bored: 12 mm.

        >>> edge_distance_unloaded(4, True)
        12
    """
    return (3 if bored else 5) * d
