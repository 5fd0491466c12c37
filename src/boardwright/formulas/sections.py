"""Cross-sections of several rectangles, and strips that share a load."""

from __future__ import annotations

from boardwright.formulas.limits import Limits

LIMITS: Limits = {}


def section_stiffness(E: list[float], b: list[float], low: list[float], high: list[float]) -> float:
    """Bending stiffness of rectangles that bend as one beam about their common neutral axis.

    Args:
        E: modulus of elasticity of each [MPa].
        b: width of each [mm].
        low: lower edge of each, from one datum [mm].
        high: upper edge of each, from the same datum [mm].

    Returns:
        Sum of E I about the common axis [N mm2].

    Limits:
        Glued together without slip; all bend in one plane.

    Source:
        Mechanics: transformed section. Ends of the range: a beam of one piece, and Wood Handbook FPL-GTR-282
        (2021), chapter 9, built-up beams (form from memory).

    Example:
        Two halves glued one upon the other are the whole beam, 8 times as stiff as one half, 4 times as two loose.

        >>> section_stiffness([1, 1], [12, 12], [0, 1], [1, 2]) / section_stiffness([1], [12], [0], [1])
        8.0
    """
    areas = [e * w * (h - k) for e, w, k, h in zip(E, b, low, high, strict=True)]
    total = sum(areas)
    if total <= 0:
        return 0.0
    middles = [(k + h) / 2 for k, h in zip(low, high, strict=True)]
    axis = sum(a * m for a, m in zip(areas, middles, strict=True)) / total
    return sum(
        a * ((h - k) ** 2 / 12 + (m - axis) ** 2)
        for a, m, k, h in zip(areas, middles, low, high, strict=True)
    )


def neutral_axis(E: list[float], b: list[float], low: list[float], high: list[float]) -> float:
    """Height of the neutral axis of rectangles that bend as one beam.

    Args:
        E: modulus of elasticity of each [MPa].
        b: width of each [mm].
        low: lower edge of each, from one datum [mm].
        high: upper edge of each, from the same datum [mm].

    Returns:
        Height of the axis over the datum [mm].

    Limits:
        Glued together without slip.

    Source:
        Mechanics: transformed section.

    Example:
        A tee of two equal rectangles, 6 x 2 upright under 6 x 2 flat, worked by hand: (12 x 3 + 12 x 7)/24 = 5.

        >>> neutral_axis([1, 1], [2, 6], [0, 6], [6, 8])
        5.0
    """
    areas = [e * w * (h - k) for e, w, k, h in zip(E, b, low, high, strict=True)]
    return sum(a * (k + h) / 2 for a, k, h in zip(areas, low, high, strict=True)) / sum(areas)


def shared_sag(along: float, across: float) -> float:
    """Sag of a panel held on all four sides, from those of its strips, each with the whole load.

    Args:
        along: sag of a strip one way [mm].
        across: sag of a strip the other way [mm].

    Returns:
        Sag at the middle [mm].

    Limits:
        Four sides held, load even, small sag. The panel's stiffness in twist is left out, so that the figure
        is on the large side.

    Source:
        Method of crossed strips (Grashof, Rankine); checked with the plate solution of Navier and Timoshenko.

    Example:
        Equal strips share the load in halves. A square plate sags 0.00406 w a^4/D; strips 5/384 w a^4/D each.

        >>> shared_sag(5 / 384, 5 / 384) / 0.00406 > 1
        True
    """
    return along * across / (along + across) if along + across > 0 else 0.0
