"""Strength at another moisture content, and at an angle to the grain."""

from __future__ import annotations

from math import cos, radians, sin

from boardwright.formulas.limits import Limit, Limits

LIMITS: Limits = {
    "property_at_moisture": {"M": Limit(0, 28, "% of moisture")},
    "property_by_rate": {"M_1": Limit(0, 25, "% of moisture"), "M_2": Limit(0, 25, "% of moisture")},
    "strength_at_angle": {"theta": Limit(0, 90, "degrees")},
}


def property_at_moisture(P_12: float, P_g: float, M: float, M_p: float = 25) -> float:
    """Strength or stiffness of clear wood at a moisture content.

    Args:
        P_12: property at 12 % [MPa].
        P_g: property of green wood [MPa].
        M: moisture content [%].
        M_p: moisture content from which the property changes; 21 to 28 by species, 25 when not known [%].

    Returns:
        Property at M, in the unit of the others [MPa].

    Limits:
        M below M_p, about 21 degrees C; not for tension across the grain or work to greatest load.

    Source:
        Wood Handbook FPL-GTR-282 (2021), eq. 5-3 and table 5-13, p. 5-34.

    Example:
        White ash at 8 %, 103 MPa at 12 % and 66 green, M_p 24: printed 119.5.

        >>> round(property_at_moisture(103, 66, 8, 24), 1)
        119.5
    """
    return float(P_12 * (P_12 / P_g) ** ((12 - M) / (M_p - 12)))


def property_by_rate(P_1: float, p: float, M_1: float, M_2: float) -> float:
    """Property at another moisture content from its change per 1 %.

    Args:
        P_1: property at M_1 [MPa].
        p: change per 1 % of moisture [%].
        M_1: first moisture content [%].
        M_2: second moisture content [%].

    Returns:
        Property at M_2 [MPa].

    Limits:
        Moisture below about 25 %.

    Source:
        ANC-18, Design of Wood Aircraft Structures (1951), strength and moisture table (transcription read).

    Example:
        Douglas-fir in bending from 12 to 20 %, 3.7 % per 1 %: printed factor 0.749, rounded there from 0.748.

        >>> round(property_by_rate(1, 3.7, 12, 20), 3)
        0.748
    """
    return float(P_1 * (1 + p / 100) ** (M_1 - M_2))


def strength_at_angle(P: float, Q: float, theta: float) -> float:
    """Strength at an angle to the grain.

    Args:
        P: strength along the grain [MPa].
        Q: strength across the grain [MPa].
        theta: angle between load and grain [degrees].

    Returns:
        Strength at the angle [MPa].

    Limits:
        0 to 90 degrees.

    Source:
        Wood Handbook FPL-GTR-282 (2021), eq. 8-16, p. 8-13.

    Example:
        At 45 degrees it is 2 P Q / (P + Q): for 30 and 4, worked by hand, 240/34 = 7.059.

        >>> round(strength_at_angle(30, 4, 45), 3)
        7.059
    """
    angle = radians(theta)
    return P * Q / (P * sin(angle) ** 2 + Q * cos(angle) ** 2)
