"""Equilibrium moisture content of wood in air."""

from __future__ import annotations

from boardwright.formulas.limits import Limit, Limits

LIMITS: Limits = {
    "equilibrium_moisture": {"T": Limit(-1.1, 93.3, "degrees C"), "RH": Limit(5, 95, "%")},
    "equilibrium_moisture_fahrenheit": {"T": Limit(30, 200, "degrees F"), "RH": Limit(5, 95, "%")},
    "humidity_for": {"T": Limit(-1.1, 93.3, "degrees C"), "EMC": Limit(0.8, 24.4, "%")},
}


def _sorption(W: float, K: float, K1: float, K2: float, h: float) -> float:
    """The sorption equation that both sets of coefficients share."""
    Kh = K * h
    bound = (K1 * Kh + 2 * K1 * K2 * Kh**2) / (1 + K1 * Kh + K1 * K2 * Kh**2)
    return 1800 / W * (Kh / (1 - Kh) + bound)


def equilibrium_moisture(T: float, RH: float) -> float:
    """Moisture content that wood settles at in air of a temperature and humidity.

    Args:
        T: temperature [degrees C].
        RH: relative humidity [%].

    Returns:
        Equilibrium moisture content [%].

    Limits:
        -1.1 to 93.3 degrees C, 5 to 95 %: the range of the printed table that it reproduces.

    Source:
        Wood Handbook FPL-GTR-282 (2021), eq. 4-5, p. 4-3; table 4-2 of FPL-GTR-190 (2010), p. 4-4.

    Example:
        >>> [round(equilibrium_moisture(21.1, RH), 1) for RH in (30, 40, 50, 65, 80)]
        [6.2, 7.7, 9.2, 12.0, 16.0]
    """
    W = 349 + 1.29 * T + 0.0135 * T**2
    K = 0.805 + 0.000736 * T - 0.00000273 * T**2
    K1 = 6.27 - 0.00938 * T - 0.000303 * T**2
    K2 = 1.91 + 0.0407 * T - 0.000293 * T**2
    return _sorption(W, K, K1, K2, RH / 100)


def equilibrium_moisture_fahrenheit(T: float, RH: float) -> float:
    """The same with the coefficients for degrees Fahrenheit, a fit of their own.

    Args:
        T: temperature [degrees F].
        RH: relative humidity [%].

    Returns:
        Equilibrium moisture content [%].

    Limits:
        30 to 200 degrees F, 5 to 95 %: the range of the printed table that it reproduces.

    Source:
        Wood Handbook FPL-GTR-190 (2010), eq. 4-5 in degrees F (coefficients from memory); table 4-2, p. 4-4.

    Example:
        >>> [round(equilibrium_moisture_fahrenheit(70, RH), 1) for RH in (30, 40, 50, 65, 80)]
        [6.2, 7.7, 9.2, 12.0, 16.0]
    """
    W = 330 + 0.452 * T + 0.00415 * T**2
    K = 0.791 + 0.000463 * T - 0.000000844 * T**2
    K1 = 6.34 + 0.000775 * T - 0.0000935 * T**2
    K2 = 1.09 + 0.0284 * T - 0.0000904 * T**2
    return _sorption(W, K, K1, K2, RH / 100)


def humidity_for(T: float, EMC: float) -> float:
    """Relative humidity in which wood settles at a moisture content.

    Found by halving the range from 0 to 100 %, since the equation cannot be turned round.

    Args:
        T: temperature [degrees C].
        EMC: equilibrium moisture content [%].

    Returns:
        Relative humidity; 0 or 100 when no air is dry or damp enough [%].

    Limits:
        As `equilibrium_moisture`.

    Source:
        Wood Handbook FPL-GTR-282 (2021), eq. 4-5, p. 4-3, solved for the humidity; table 4-2 of FPL-GTR-190
        (2010), p. 4-4.

    Example:
        >>> [round(humidity_for(21.1, EMC)) for EMC in (6.2, 7.7, 12.0, 16.0)]
        [30, 40, 65, 80]
    """
    low, high = 0.0, 100.0
    for _ in range(60):
        middle = (low + high) / 2
        if equilibrium_moisture(T, middle) < EMC:
            low = middle
        else:
            high = middle
    return (low + high) / 2
