"""Angles at which the ends of sloping sides are sawn: hoppers, tapered boxes, splayed frames."""

from __future__ import annotations

from math import asin, atan, cos, degrees, hypot, radians, sin, tan

from boardwright.formulas.limits import Limit, Limits

_SLOPE = Limit(0, 89, "degrees")
_SIDES = Limit(3, 64, "")

LIMITS: Limits = {
    "compound_mitre_gauge": {"s": _SLOPE, "n": _SIDES},
    "compound_mitre_tilt": {"s": _SLOPE, "n": _SIDES},
    "compound_butt_tilt": {"s": _SLOPE, "n": _SIDES},
    "plane_gauge": {"m": Limit(-100, 100, "")},
    "plane_tilt": {"m": Limit(-100, 100, ""), "k": Limit(-100, 100, "")},
}


def compound_mitre_gauge(s: float, n: int) -> float:
    """Angle of the cut across the face of a sloping side, from square to its lower edge.

    It is the same for a mitred and a butted corner: both ends run along the same corner line.

    Args:
        s: slope of the side, out of plumb [degrees].
        n: number of equal sides [sides].

    Returns:
        Mitre gauge or table of the saw, from square [degrees].

    Limits:
        Regular frames of 3 sides or more; slopes below 90 degrees.

    Source:
        tan g = sin s tan(180/n): solid geometry; for 4 sides it is the mitre of the tables for sloping crown
        moulding (from memory).

    Example:
        A moulding that leans 38 degrees from the wall, in a square corner; the tables print 31.62.

        >>> round(compound_mitre_gauge(38, 4), 2)
        31.62
    """
    return degrees(atan(sin(radians(s)) * tan(radians(180 / n))))


def compound_mitre_tilt(s: float, n: int) -> float:
    """Tilt of the blade for the mitred end of a sloping side, from square to its face.

    Args:
        s: slope of the side, out of plumb [degrees].
        n: number of equal sides [sides].

    Returns:
        Tilt of the blade, from square [degrees].

    Limits:
        Regular frames of 3 sides or more; slopes below 90 degrees.

    Source:
        sin b = cos s sin(180/n): solid geometry; for 4 sides it is the bevel of the tables for sloping crown
        moulding (from memory).

    Example:
        A moulding that leans 38 degrees from the wall, in a square corner; the tables print 33.86.

        >>> round(compound_mitre_tilt(38, 4), 2)
        33.86
    """
    return degrees(asin(cos(radians(s)) * sin(radians(180 / n))))


def compound_butt_tilt(s: float, n: int) -> float:
    """Tilt of the blade for the end of a sloping side that butts against the face of the next.

    Args:
        s: slope of the side, out of plumb [degrees].
        n: number of equal sides [sides].

    Returns:
        Tilt of the blade, from square; below 0 it leans the other way [degrees].

    Limits:
        Regular frames of 3 sides or more; slopes below 90 degrees.

    Source:
        sin b = sin2 s + cos2 s cos(360/n), the angle between the faces of two neighbours: solid geometry; for 4
        sides sin b = sin2 s.

    Example:
        Four sides at 45 degrees meet at 120 degrees, as faces of a cube corner cut so do: the blade tilts 30.

        >>> round(compound_butt_tilt(45, 4), 2)
        30.0
    """
    c = cos(radians(s)) ** 2 * cos(radians(360 / n))
    return degrees(asin(sin(radians(s)) ** 2 + c))


def plane_gauge(m: float) -> float:
    """Mitre gauge that cuts an end along a plane.

    Args:
        m: how far the plane runs along the board for each mm of its width [mm per mm].

    Returns:
        Mitre gauge or table of the saw, from square [degrees].

    Limits:
        Any plane but one along the board.

    Source:
        tan g = m: the line in which the plane cuts the face.

    Example:
        The mitre of a moulding that leans 38 degrees runs sin 38 over its width; the tables print 31.62.

        >>> round(plane_gauge(sin(radians(38))), 2)
        31.62
    """
    return degrees(atan(m))


def plane_tilt(m: float, k: float) -> float:
    """Tilt of the blade that cuts an end along a plane, the mitre gauge set to it.

    Args:
        m: how far the plane runs along the board for each mm of its width [mm per mm].
        k: the same for each mm of its thickness [mm per mm].

    Returns:
        Tilt of the blade, from square to the face [degrees].

    Limits:
        Any plane but one along the board.

    Source:
        tan b = k / sqrt(1 + m2): the angle between the plane and the thickness of the board, seen along the cut.

    Example:
        The mitre of a moulding that leans 38 degrees runs sin 38 over its width and cos 38 over its thickness; the
        tables print 33.86.

        >>> round(plane_tilt(sin(radians(38)), cos(radians(38))), 2)
        33.86
    """
    return degrees(atan(k / hypot(1.0, m)))
