"""Screws and nails: sizes, holes, and what they hold in side grain. G: ovendry mass on the volume at 12 %."""

from __future__ import annotations

from math import radians, tan

from boardwright.formulas.limits import Limit, Limits

_MPA_PER_PSI = 4.4482216152605 / 25.4**2
_GRAVITY = Limit(0.29, 0.74, "-")

LIMITS: Limits = {
    "shank_diameter": {"N": Limit(0, 24, "-")},
    "pilot_diameter": {"share": Limit(0.7, 0.9, "-")},
    "screw_withdrawal_ultimate": {"G": _GRAVITY, "D": Limit(2.0, 9.5, "mm")},
    "screw_withdrawal_allowable": {"G": _GRAVITY, "D": Limit(2.0, 9.5, "mm")},
    "nail_withdrawal_ultimate": {"G": _GRAVITY},
    "screw_lateral_hardwood": {"G": Limit(0.33, 0.74, "-")},
    "screw_lateral_softwood": {"G": Limit(0.29, 0.52, "-")},
}


def shank_diameter(N: float) -> float:
    """Shank diameter of a wood screw.

    Args:
        N: gauge number [-].

    Returns:
        Shank diameter [mm].

    Limits:
        Numbers 0 to 24.

    Source:
        ASME B18.6.1 (rule from memory); reproduces Wood Handbook FPL-GTR-282 (2021), table 8-9.

    Example:
        >>> [round(shank_diameter(N), 2) for N in (4, 8, 10, 14, 24)]
        [2.84, 4.17, 4.83, 6.15, 9.45]
    """
    return 25.4 * (0.060 + 0.013 * N)


def pilot_diameter(root: float, share: float) -> float:
    """Diameter of the hole for a screw's thread.

    Args:
        root: root diameter of the thread [mm].
        share: of the root diameter: 0.9 in wood over 0.6 specific gravity, 0.7 below [-].

    Returns:
        Diameter of the hole, before the nearest drill is chosen [mm].

    Limits:
        Shares 0.7 to 0.9; the charts that drive more easily are one or two 64ths larger.

    Source:
        National Design Specification for Wood Construction, commentary 11.1.2, wood screws.

    Example:
        No. 8, root 0.112 in: charts of this rule print 5/64 and 3/32 in.

        >>> [round(pilot_diameter(0.112 * 25.4, share) / 25.4 * 64) for share in (0.7, 0.9)]
        [5, 6]
    """
    return root * share


def flat_head_height(head: float, shank: float, angle: float) -> float:
    """Height of the head of a flat-head screw, as a cone from its rim to its shank.

    Args:
        head: diameter of the head, to a sharp rim [mm].
        shank: diameter of the shank [mm].
        angle: included angle of the cone [degrees].

    Returns:
        Height [mm].

    Limits:
        Sharp rims; heads as made are a little lower.

    Source:
        Geometry; head heights of ASME B18.6.1 (from memory): No. 6 0.083, No. 8 0.100, No. 10 0.116 in.

    Example:
        >>> heads = (0.279, 0.138), (0.332, 0.164), (0.385, 0.190)
        >>> [round(flat_head_height(h, d, 82), 3) for h, d in heads]
        [0.081, 0.097, 0.112]
    """
    return (head - shank) / 2 / tan(radians(angle / 2))


def screw_withdrawal_ultimate(G: float, D: float, L: float) -> float:
    """Force that pulls a wood screw out of side grain.

    Args:
        G: specific gravity [-].
        D: shank diameter [mm].
        L: length of thread in the wood [mm].

    Returns:
        Mean ultimate load [N].

    Limits:
        Dry wood, side grain, pilot 70 % of the root (softwood) or 90 % (hardwood), gauges of table 8-8.

    Source:
        Wood Handbook FPL-GTR-282 (2021), eq. 8-10, p. 8-10; 15,700 in lb and in.

    Example:
        The two unit systems of the source agree: 15,700 lb for G 1, D 1 in, L 1 in, to its four figures.

        >>> round(screw_withdrawal_ultimate(1, 25.4, 25.4) / 4.4482216 / 15700, 3)
        1.0
    """
    return 108.25 * G**2 * D * L


def screw_withdrawal_allowable(G: float, D: float, L: float) -> float:
    """Design load of a wood screw in withdrawal from side grain.

    Args:
        G: specific gravity [-].
        D: shank diameter [mm].
        L: length of thread in the wood [mm].

    Returns:
        Allowable load [N].

    Limits:
        Dry wood, side grain; no load in withdrawal from end grain.

    Source:
        National Design Specification form, W = 2850 G^2 D lb per inch, on an engineering reference site.

    Example:
        No. 10 in wood of 0.45, one inch of thread: the source cuts 109.65 lb to 109.

        >>> int(screw_withdrawal_allowable(0.45, 0.190 * 25.4, 25.4) / 4.4482216)
        109
    """
    return 2850 * _MPA_PER_PSI * G**2 * D * L


def nail_withdrawal_ultimate(G: float, D: float, L: float) -> float:
    """Force that pulls a smooth nail out of side grain.

    Args:
        G: specific gravity [-].
        D: diameter [mm].
        L: length in the wood that holds the point [mm].

    Returns:
        Mean ultimate load [N].

    Limits:
        Smooth shank, dry wood, side grain, pulled soon after driving.

    Source:
        Wood Handbook FPL-GTR-282 (2021), eq. 8-1, p. 8-2; values of a reader service for 6d nails, 0.113 in.

    Example:
        >>> D = 0.113 * 25.4
        >>> [round(nail_withdrawal_ultimate(G, D, 25.4) / 4.4482216) for G in (0.47, 0.55, 0.63, 0.72)]
        [134, 199, 279, 390]
    """
    return float(54.12 * G**2.5 * D * L)


def _step(G: float, steps: tuple[tuple[float, float], ...]) -> float:
    """The constant of the first step that reaches a specific gravity; the last beyond."""
    return next((K for top, K in steps if top >= G), steps[-1][1])


def screw_lateral_hardwood(G: float, D: float) -> float:
    """Load across a wood screw in hardwood at the proportional limit.

    Args:
        G: specific gravity [-].
        D: shank diameter [mm].

    Returns:
        Load at the proportional limit [N].

    Limits:
        G 0.33 to 0.74; at least 7 D of thread in the main part, both parts of about the same density.

    Source:
        Wood Handbook FPL-GTR-282 (2021), eq. 8-13 and table 8-4, p. 8-6 and 8-11.

    Example:
        The source's constants in lb and in, for a screw of 1 in: 3,360, 4,640 and 6,400.

        >>> [round(screw_lateral_hardwood(G, 25.4) / 4.4482216, -1) for G in (0.40, 0.52, 0.65)]
        [3360.0, 4640.0, 6400.0]
    """
    return _step(G, ((0.475, 23.17), (0.565, 31.99), (0.74, 44.13))) * D**2


def screw_lateral_softwood(G: float, D: float) -> float:
    """Load across a wood screw in softwood at the proportional limit.

    Args:
        G: specific gravity [-].
        D: shank diameter [mm].

    Returns:
        Load at the proportional limit [N].

    Limits:
        G 0.29 to 0.52; at least 7 D of thread in the main part, both parts of about the same density.

    Source:
        Wood Handbook FPL-GTR-282 (2021), eq. 8-13 and table 8-4, p. 8-6 and 8-11.

    Example:
        The source's constants in lb and in, for a screw of 1 in: 3,360, 4,320 and 5,280.

        >>> [round(screw_lateral_softwood(G, 25.4) / 4.4482216, -1) for G in (0.35, 0.45, 0.50)]
        [3360.0, 4320.0, 5280.0]
    """
    return _step(G, ((0.425, 23.17), (0.475, 29.79), (0.52, 36.40))) * D**2
