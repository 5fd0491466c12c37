"""Air indoors from the air outdoors: what heating and living do to it."""

from __future__ import annotations

from math import exp

from boardwright.formulas.limits import Limit, Limits

LIMITS: Limits = {
    "saturation_pressure": {"T": Limit(-40, 60, "degrees C")},
    "vapour_excess": {"T": Limit(-40, 60, "degrees C")},
    "indoor_humidity": {
        "T_out": Limit(-40, 60, "degrees C"),
        "RH_out": Limit(0, 100, "%"),
        "T_in": Limit(0, 60, "degrees C"),
    },
}


def saturation_pressure(T: float) -> float:
    """Vapour pressure of saturated air.

    Args:
        T: temperature [degrees C].

    Returns:
        Pressure; over ice below freezing [Pa].

    Limits:
        -40 to 60 degrees C.

    Source:
        ISO 13788 (2012), eq. E.7 and E.8 (from memory).

    Example:
        Steam tables print 2337 Pa at 20 and 611 Pa at 0 degrees C.

        >>> round(saturation_pressure(20)), round(saturation_pressure(0), -1)
        (2337, 610.0)
    """
    if T < 0:
        return 610.5 * exp(21.875 * T / (265.5 + T))
    return 610.5 * exp(17.269 * T / (237.3 + T))


def vapour_excess(T: float, p: float) -> float:
    """How much more vapour living puts into the air indoors than there is outdoors.

    Args:
        T: temperature outdoors [degrees C].
        p: excess at freezing and below [Pa].

    Returns:
        Excess of vapour pressure, which falls evenly to nothing at 20 degrees C, when windows stand open [Pa].

    Limits:
        -40 to 60 degrees C.

    Source:
        ISO 13788 (2012), annex A, humidity classes (from memory): at most 270 Pa in stores, 540 Pa in offices and
        dwellings.

    Example:
        >>> vapour_excess(-5, 540), vapour_excess(20, 540), vapour_excess(10, 540)
        (540.0, 0.0, 270.0)
    """
    return p * min(1.0, max(0.0, 1 - T / 20))


def indoor_humidity(T_out: float, RH_out: float, T_in: float, p: float = 405.0) -> float:
    """Relative humidity indoors.

    Args:
        T_out: temperature outdoors [degrees C].
        RH_out: relative humidity outdoors [%].
        T_in: temperature indoors [degrees C].
        p: excess of vapour at freezing; 405 Pa is the middle of the class of offices and dwellings [Pa].

    Returns:
        Relative humidity indoors, at most 100 [%].

    Limits:
        -40 to 60 degrees C, 0 to 100 %.

    Source:
        ISO 13788 (2012), annex A, and the gas law (from memory).

    Example:
        Saturated air of freezing, heated to 20 degrees C, with nothing added: 611/2337 by the steam tables.

        >>> round(indoor_humidity(0, 100, 20, 0))
        26
    """
    inside = saturation_pressure(T_out) * RH_out / 100 + vapour_excess(T_out, p)
    return min(100.0, 100 * inside / saturation_pressure(T_in))
