"""The weight that a person should lift, by the revised lifting equation."""

from __future__ import annotations

from boardwright.formulas.limits import Limit, Limits

LOAD_CONSTANT = 51 * 0.45359237
"""Load constant of the equation [kg]: 51 lb, printed as 23 kg."""

LIMITS: Limits = {
    "recommended_weight": {
        "H": Limit(None, 635, "mm"),
        "V": Limit(0, 1778, "mm"),
        "D": Limit(0, 1778, "mm"),
        "A": Limit(0, 135, "degrees"),
    },
}


def recommended_weight(
    H: float, V: float, D: float, A: float = 0.0, frequency: float = 1.0, coupling: float = 1.0
) -> float:
    """Weight that nearly all healthy people can lift by hand.

    Args:
        H: hands in front of the ankles [mm].
        V: hands over the floor at the start [mm].
        D: how far it is lifted [mm].
        A: turn of the body [degrees].
        frequency: multiplier, 1 for a lift now and then [-].
        coupling: multiplier of the grip: 1 good, 0.95 fair, 0.90 poor [-].

    Returns:
        Recommended weight limit [kg].

    Limits:
        Two-handed, smooth lifting; 0 where the hands are farther out than 25 in or higher than 70 in.

    Source:
        NIOSH 94-110, Applications Manual for the Revised NIOSH Lifting Equation.

    Example:
        H 15, V 30, D 30 in: 51 x 10/15 x 1 x 0.88 = 29.9 lb.

        >>> round(recommended_weight(15 * 25.4, 30 * 25.4, 30 * 25.4) / 0.45359237, 1)
        29.9
    """
    if H > 25 * 25.4 or V > 70 * 25.4 or D > 70 * 25.4:
        return 0.0
    horizontal = min(1.0, 10 * 25.4 / H) if H > 0 else 1.0
    vertical = 1 - 0.0075 * abs(V / 25.4 - 30)
    distance = min(1.0, 0.82 + 1.8 * 25.4 / D) if D > 0 else 1.0
    return LOAD_CONSTANT * horizontal * vertical * distance * (1 - 0.0032 * A) * frequency * coupling
