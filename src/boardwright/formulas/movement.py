"""Shrinking and swelling across the grain."""

from __future__ import annotations

from math import cos, radians, sin, sqrt

from boardwright.formulas.limits import Limit, Limits

_PERCENT = "% of moisture"

LIMITS: Limits = {
    "change_of_size": {"M_I": Limit(6, 14, _PERCENT), "M_F": Limit(6, 14, _PERCENT)},
    "change_of_size_by_shrinkage": {"M_I": Limit(0, 30, _PERCENT), "M_F": Limit(0, 30, _PERCENT)},
    "shrinkage_to": {"x": Limit(0, 30, _PERCENT)},
    "coefficient_from_shrinkage": {"S": Limit(0.1, 20, "%")},
    "coefficient_at_angle": {"theta": Limit(0, 90, "degrees")},
    "mitre_opening": {"one": Limit(-0.1, 0.1, "-"), "two": Limit(-0.1, 0.1, "-")},
    "cup": {"difference": Limit(0, 6, "% of moisture")},
}


def change_of_size(D_I: float, C: float, M_I: float, M_F: float) -> float:
    """Change of a board's width or thickness when its moisture changes.

    Args:
        D_I: size at the start [mm].
        C: change per 1 % of moisture: tangential for a flatsawn width, radial for its thickness [1/%].
        M_I: moisture content at the start [%].
        M_F: moisture content at the end [%].

    Returns:
        Change of size, positive when it swells [mm].

    Limits:
        Both moistures 6 to 14 %; outside, `change_of_size_by_shrinkage` is the formula to use.

    Source:
        Wood Handbook FPL-GTR-190 (2010), eq. 13-2, p. 13-17; coefficients in table 13-5.

    Example:
        A flatsawn white fir board, 232 mm wide, from 8 to 11 %, ends 233.7 mm wide.

        >>> round(232 + change_of_size(232, 0.00245, 8, 11), 1)
        233.7
    """
    return D_I * C * (M_F - M_I)


def change_of_size_by_shrinkage(D_I: float, S: float, M_I: float, M_F: float, start: float = 30) -> float:
    """Change of size from the wood's total shrinkage, at any moisture below fibre saturation.

    Args:
        D_I: size at the start [mm].
        S: shrinkage from green to ovendry, tangential or radial [%].
        M_I: moisture content at the start [%].
        M_F: moisture content at the end [%].
        start: moisture content at which shrinkage starts [%].

    Returns:
        Change of size, positive when it swells [mm].

    Limits:
        Neither moisture over 30 %.

    Source:
        Wood Handbook FPL-GTR-190 (2010), eq. 13-3, p. 13-17 (algebra from memory); shrinkage in table 4-3.

    Example:
        The white fir board of `change_of_size`; the source prints 1.7 mm for it.

        >>> round(change_of_size_by_shrinkage(232, 7.0, 8, 11), 1)
        1.7
    """
    return D_I * (M_F - M_I) / (start * 100 / S - start + M_I)


def shrinkage_to(S_0: float, x: float, start: float = 30) -> float:
    """Shrinkage from green to a moisture content.

    Args:
        S_0: shrinkage from green to ovendry [%].
        x: moisture content [%].
        start: moisture content at which shrinkage starts [%].

    Returns:
        Shrinkage, of the green size; 0 at and over `start` [%].

    Limits:
        0 to 30 % of moisture.

    Source:
        Wood Handbook FPL-GTR-282 (2021), eq. 4-9, p. 4-10.

    Example:
        Ovendry, it is the tabulated 9.9 % of sugar maple; green, nothing.

        >>> shrinkage_to(9.9, 0), shrinkage_to(9.9, 30)
        (9.9, 0.0)
    """
    return S_0 * max(0.0, 1 - x / start)


def coefficient_from_shrinkage(S: float, start: float = 30) -> float:
    """Change of size per 1 % of moisture, from total shrinkage, for the size at 10 % of moisture.

    Args:
        S: shrinkage from green to ovendry, tangential or radial [%].
        start: moisture content at which shrinkage starts; 22 for western redcedar, northern white-cedar and
            redwood [%].

    Returns:
        Change per 1 % of moisture [1/%].

    Limits:
        S from 0.1 to 20 %, the range of woods.

    Source:
        Wood Handbook FPL-GTR-190 (2010), table 13-5, footnotes (from memory).

    Example:
        White ash, tangential 7.8 %, and yellow birch, radial 7.3 %; the table prints .00274 and .00256.

        >>> round(coefficient_from_shrinkage(7.8), 5), round(coefficient_from_shrinkage(7.3), 5)
        (0.00274, 0.00256)
    """
    return 1 / (start * 100 / S - start + 10)


def coefficient_at_angle(C_T: float, C_R: float, theta: float) -> float:
    """Change per 1 % of moisture across a face whose growth rings stand at an angle to it.

    Args:
        C_T: tangential change per 1 % of moisture [1/%].
        C_R: radial change per 1 % of moisture [1/%].
        theta: angle between the rings and the face: 0 flatsawn, 90 quartersawn [degrees].

    Returns:
        Change per 1 % of moisture across the face [1/%].

    Limits:
        0 to 90 degrees.

    Source:
        Mechanics of a body with two principal shrinkages (from memory); the coefficients of sugar maple, Wood
        Handbook FPL-GTR-190 (2010), table 13-5.

    Example:
        Flatsawn and quartersawn sugar maple; the table prints .00353 and .00165.

        >>> [round(coefficient_at_angle(0.00353, 0.00165, theta), 5) for theta in (0, 90)]
        [0.00353, 0.00165]
    """
    angle = radians(theta)
    return C_T * cos(angle) ** 2 + C_R * sin(angle) ** 2


def mitre_opening(width: float, one: float, two: float) -> float:
    """Gap at one end of a mitre cut at 45 degrees when its members change in width.

    Each cut turns by half the change of its member; the corner stays square.

    Args:
        width: of the members [mm].
        one: change of width of the first, less that of its length, as a share; negative when it shrinks [-].
        two: of the second [-].

    Returns:
        Gap at the inner corner, positive when the members shrink; at the outer one, negative, when they swell [mm].

    Limits:
        Changes up to a tenth: the turn is taken as a small angle.

    Source:
        Mechanics; case from practice, recomputed: red oak 3 1/2 in wide, 0.00369 per 1 %, from 9 to 6 %, opens by
        0.055 in, members of 1 1/2 in by 0.023 in.

    Example:
        >>> round(mitre_opening(3.5, -0.00369 * 3, -0.00369 * 3), 3)
        0.055
    """
    return -(one + two) / 2 * width * sqrt(2)


def cup(width: float, thickness: float, C: float, difference: float) -> float:
    """Cup of a free board whose two faces differ in moisture.

    The board bends to a radius of its thickness over the difference in swelling of its faces.

    Args:
        width: of the board, across the grain [mm].
        thickness: of it [mm].
        C: change per 1 % of moisture across the grain [1/%].
        difference: of moisture between the two faces [%].

    Returns:
        Height of the middle over the edges; the damper face is the outside of the bend [mm].

    Limits:
        A difference up to 6 %; the cup is small beside the width.

    Source:
        Bending of a strip by unlike swelling (mechanics); case from practice, recomputed: maple 22 in wide and 3/4 in
        thick, 0.00353, 1 %: 0.28 in; hickory 7 x 1/2 in, 0.00315: 0.039 in.

    Example:
        >>> round(cup(22, 0.75, 0.00353, 1), 2), round(cup(7, 0.5, 0.00315, 1), 3)
        (0.28, 0.039)
    """
    return width**2 * C * difference / (8 * thickness)
