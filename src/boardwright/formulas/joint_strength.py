"""What joints carry: nails across, dowels pulled out, tenons bent; legs that buckle."""

from __future__ import annotations

from math import pi

from boardwright.formulas.limits import Limit, Limits

_POUND = 4.4482216152605
_INCH = 25.4
_PSI = _POUND / _INCH**2
_NAIL_HARD = ((0.475, 50.04), (0.565, 69.50), (0.74, 94.52))
_NAIL_SOFT = ((0.425, 50.04), (0.475, 62.55), (0.52, 76.45))

LIMITS: Limits = {
    "nail_lateral_hardwood": {"G": Limit(0.33, 0.74, "-")},
    "nail_lateral_softwood": {"G": Limit(0.29, 0.52, "-")},
    "dowel_withdrawal": {"D": Limit(6.35, 12.7, "mm"), "L": Limit(6.0, 38.0, "mm")},
    "tenon_moment": {"L": Limit(12.0, 64.0, "mm"), "D": Limit(25.0, 127.0, "mm")},
    "buckling_load": {"L": Limit(1.0, None, "mm")},
}


def _step(G: float, steps: tuple[tuple[float, float], ...]) -> float:
    return next((K for top, K in steps if top >= G), steps[-1][1])


def nail_lateral_hardwood(G: float, D: float) -> float:
    """Load across a nail in hardwood at a slip of 0.38 mm.

    Args:
        G: specific gravity [-].
        D: diameter of the nail [mm].

    Returns:
        Load at the proportional limit [N].

    Limits:
        G 0.33 to 0.74; side grain; the point goes in 10 D in dense wood, 14 D in light wood.

    Source:
        Wood Handbook FPL-GTR-282 (2021), eq. 8-2 and table 8-4, p. 8-6.

    Example:
        The source's constants in lb and in, for 1 in: 1,440, 2,000 and 2,720.

        >>> [round(nail_lateral_hardwood(G, 25.4) / 4.4482216, -1) for G in (0.40, 0.52, 0.65)]
        [1440.0, 2000.0, 2720.0]
    """
    return float(_step(G, _NAIL_HARD) * D**1.5)


def nail_lateral_softwood(G: float, D: float) -> float:
    """Load across a nail in softwood at a slip of 0.38 mm.

    Args:
        G: specific gravity [-].
        D: diameter of the nail [mm].

    Returns:
        Load at the proportional limit [N].

    Limits:
        G 0.29 to 0.52; side grain; the point goes in 10 D in dense wood, 14 D in light wood.

    Source:
        Wood Handbook FPL-GTR-282 (2021), eq. 8-2 and table 8-4, p. 8-6.

    Example:
        The source's constants in lb and in, for 1 in: 1,440, 1,800 and 2,200.

        >>> [round(nail_lateral_softwood(G, 25.4) / 4.4482216, -1) for G in (0.35, 0.45, 0.50)]
        [1440.0, 1800.0, 2200.0]
    """
    return float(_step(G, _NAIL_SOFT) * D**1.5)


def dowel_withdrawal(D: float, L: float, S1: float, S2: float) -> float:
    """Mean force that pulls a plain glued dowel out of side grain.

    Args:
        D: diameter of the dowel [mm].
        L: length in the wood [mm].
        S1: shear strength of the wood along the grain [MPa].
        S2: shear strength of the dowel along the grain [MPa].

    Returns:
        Mean ultimate force [N].

    Limits:
        Polyvinyl acetate well spread, a hole of the dowel's size; to dowels of 1/2 in, 1 1/2 in deep. It is said to be
        on the low side where S1 + S2 < 25 MPa.

    Source:
        Furniture research of the Forest Products Journal, F = 0.834 D L^0.89 (0.95 S1 + S2), lb, in, psi (from memory).

    Example:
        3/8 in, 1 in deep, sugar maple in soft maple, 2,330 and 1,850 psi, by hand: 0.834 x 0.375 x 4087.5 = 1278 lb.

        >>> round(dowel_withdrawal(0.375 * 25.4, 25.4, 1850 * 0.00689476, 2330 * 0.00689476) / 4.4482216)
        1278
    """
    shear = (0.95 * S1 + S2) / _PSI
    return float(0.834 * D / _INCH * (L / _INCH) ** 0.89 * shear * _POUND)


def tenon_moment(D: float, d: float, L: float, S: float) -> float:
    """Mean bending moment in the plane of the frame that breaks a glued mortise and tenon.

    Args:
        D: width of the rail, with its shoulders [mm].
        d: width of the tenon [mm].
        L: length of the tenon [mm].
        S: shear strength of the wood along the grain [MPa].

    Returns:
        Mean ultimate moment [N mm].

    Limits:
        Close fit, well glued, shoulders that bear; tenons 1/2 to 2 1/2 in long, rails to 5 in.

    Source:
        Forest Products Journal 55(12), 2005, M = S (0.25 D + 0.78 d) L^0.8, lb and in (from memory).

    Example:
        Rail 2 in, tenon 1 in wide and 1 in long, 2,000 psi, by hand: 2000 x (0.5 + 0.78) = 2560 lb in.

        >>> round(tenon_moment(50.8, 25.4, 25.4, 2000 * 0.00689476) / 4.4482216 / 25.4)
        2560
    """
    inches = 0.25 * D / _INCH + 0.78 * d / _INCH
    return float(S / _PSI * inches * (L / _INCH) ** 0.8 * _POUND * _INCH)


def buckling_load(E: float, I: float, L: float, K: float) -> float:  # noqa: E741
    """Load under which a slender straight leg bends out.

    Args:
        E: modulus of elasticity [MPa].
        I: least second moment of area [mm4].
        L: free length [mm].
        K: effective length over free length: 1 both ends hinged, 0.5 both held, 2 one end held, the other free [-].

    Returns:
        Load [N].

    Limits:
        Slender legs: stress under the load below half of the crushing strength.

    Source:
        Mechanics, Euler; Wood Handbook FPL-GTR-282 (2021), chapter 9, long columns (form from memory).

    Example:
        Four times the load with both ends held, a quarter with one end free.

        >>> [buckling_load(1, 1, 1, K) / buckling_load(1, 1, 1, 1) for K in (0.5, 2)]
        [4.0, 0.25]
    """
    return pi**2 * E * I / (K * L) ** 2
