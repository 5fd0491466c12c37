"""Density, specific gravity, and how much water wood can hold. `G_b` is ovendry mass on the green volume."""

from __future__ import annotations

from boardwright.formulas.limits import Limit, Limits
from boardwright.formulas.movement import shrinkage_to

_BELOW_SATURATION = Limit(0, 30, "% of moisture")
_WOODS = Limit(0.1, 1.3, "-")

LIMITS: Limits = {
    "density": {"x": Limit(0, None, "% of moisture"), "G_x": _WOODS},
    "specific_gravity_at": {"x": _BELOW_SATURATION, "G_b": _WOODS},
    "specific_gravity_estimated": {"x": _BELOW_SATURATION, "G_b": _WOODS},
    "density_from_ovendry": {"x": Limit(0, None, "% of moisture"), "rho_0": Limit(100, 1300, "kg/m3")},
    "specific_gravity_rebased": {"G": _WOODS},
    "greatest_moisture": {"G_b": _WOODS},
    "sinking_moisture": {"G_b": Limit(0.1, 1.0, "-")},
}


def density(G_x: float, x: float) -> float:
    """Density of wood at a moisture content.

    Args:
        G_x: specific gravity, ovendry mass on the volume at this moisture [-].
        x: moisture content [%].

    Returns:
        Density, water included [kg/m3].

    Limits:
        Any moisture; G_x must be on the volume at that moisture (over 30 %, on the green volume).

    Source:
        Wood Handbook FPL-GTR-282 (2021), eq. 4-14, p. 4-12; table 4-6a.

    Example:
        >>> round(density(0.60, 12)), round(density(0.40, 100)), round(density(0.605, 12))
        (672, 800, 678)
    """
    return 1000 * G_x * (1 + x / 100)


def specific_gravity_at(G_b: float, S_0: float, x: float) -> float:
    """Specific gravity on the volume at a moisture content, when the shrinkage is known.

    Args:
        G_b: specific gravity on the green volume [-].
        S_0: volumetric shrinkage, green to ovendry [%].
        x: moisture content [%].

    Returns:
        Specific gravity on the volume at this moisture [-].

    Limits:
        0 to 30 % of moisture; over 30 the volume no longer changes.

    Source:
        Wood Handbook FPL-GTR-282 (2021), eq. 4-11, p. 4-11.

    Example:
        White ash, 0.55 green, 13.3 % (table 4-3), is printed as 0.605 at 12 %, and 0.60 in table 5-3a.

        >>> round(specific_gravity_at(0.55, 13.3, 12), 2)
        0.6
    """
    return G_b / (1 - shrinkage_to(S_0, x) / 100)


def specific_gravity_estimated(G_b: float, x: float) -> float:
    """Specific gravity on the volume at a moisture content, when the shrinkage is not known.

    Args:
        G_b: specific gravity on the green volume [-].
        x: moisture content [%].

    Returns:
        Specific gravity on the volume at this moisture [-].

    Limits:
        0 to 30 % of moisture; shrinkage taken as 26.5 G_b.

    Source:
        Wood Handbook FPL-GTR-282 (2021), eq. 4-12 and 4-13, p. 4-12.

    Example:
        The source prints 0.605 for white ash, 0.55 green, at 12 %; its own equation gives 0.603.

        >>> abs(specific_gravity_estimated(0.55, 12) - 0.605) <= 0.005 * 0.605
        True
    """
    return G_b / (1 - 0.265 * G_b * max(0.0, 1 - x / 30))


def density_from_ovendry(rho_0: float, x: float) -> float:
    """Density at a moisture content from the ovendry density, when the shrinkage is not known.

    Args:
        rho_0: ovendry density [kg/m3].
        x: moisture content [%].

    Returns:
        Density, water included [kg/m3].

    Limits:
        Any moisture; over 30 % the volume is the green one.

    Source:
        Wood Handbook FPL-GTR-282 (2021), eq. 4-15 and 4-16, p. 4-13; table 4-6a.

    Example:
        Wood of 0.40 on the green volume is 447.43 kg/m3 ovendry (eq. 4-13); printed 800 at 100 %.

        >>> round(density_from_ovendry(447.43, 100))
        800
    """
    S_0 = 26.5 * rho_0 / (1000 + 0.265 * rho_0)
    return rho_0 * (1 + x / 100) * (100 - S_0) / (100 - shrinkage_to(S_0, x))


def specific_gravity_rebased(G: float, S: float, S_new: float) -> float:
    """Specific gravity on the volume at another moisture content.

    Args:
        G: specific gravity on the volume at the first moisture [-].
        S: volumetric shrinkage from green to the first moisture [%].
        S_new: volumetric shrinkage from green to the other moisture [%].

    Returns:
        Specific gravity on the volume at the other moisture [-].

    Limits:
        Moisture below 30 % at both.

    Source:
        Wood Handbook FPL-GTR-282 (2021), eq. 4-10, p. 4-11.

    Example:
        White ash from green, 0.55, to 12 %, where it has shrunk 0.6 x 13.3 %; table 5-3a prints 0.60.

        >>> round(specific_gravity_rebased(0.55, 0, 0.6 * 13.3), 2)
        0.6
    """
    return G * (100 - S) / (100 - S_new)


def greatest_moisture(G_b: float) -> float:
    """Moisture content of wood whose cells are full of water.

    Args:
        G_b: specific gravity on the green volume [-].

    Returns:
        Moisture content [%].

    Limits:
        G_b from 0.1 to 1.3.

    Source:
        Wood Handbook FPL-GTR-282 (2021), eq. 4-3, p. 4-3.

    Example:
        The text prints 267 % for 0.30 and 44 % for 0.90; the equation gives 268.4 and 46.2.

        >>> abs(greatest_moisture(0.30) - 267) < 2, abs(greatest_moisture(0.90) - 44) < 2.5
        (True, True)
    """
    return 100 * (1.54 - G_b) / (1.54 * G_b)


def sinking_moisture(G_b: float) -> float:
    """Moisture content at which wood sinks in water.

    Args:
        G_b: specific gravity on the green volume [-].

    Returns:
        Moisture content [%].

    Limits:
        G_b up to 1; heavier wood sinks at any moisture.

    Source:
        Wood Handbook FPL-GTR-282 (2021), eq. 4-4, p. 4-3.

    Example:
        Table 4-6a: wood of 0.50 weighs 1000 kg/m3, as water does, at 100 %.

        >>> sinking_moisture(0.50), density(0.50, 100)
        (100.0, 1000.0)
    """
    return 100 * (1 - G_b) / G_b
