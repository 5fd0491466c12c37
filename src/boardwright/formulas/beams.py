"""Sag and stress of shelves, bars and other beams."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.formulas.limits import Limit, Limits

LIMITS: Limits = {
    "deflection_mdf_shelf": {"W": Limit(0, 200, "kg")},
    "longest_shelf": {"w": Limit(0, 0.0024, "N/mm2")},
    "size_effect": {"h": Limit(25, None, "mm")},
}


@dataclass(frozen=True, slots=True)
class Loading:
    """How a beam is loaded and held: the constants for bending and for shear deflection."""

    kb: float
    ks: float


LOADINGS = {
    "uniform": Loading(5 / 384, 1 / 8),
    "uniform, clamped": Loading(1 / 384, 1 / 8),
    "midspan point": Loading(1 / 48, 1 / 4),
    "midspan point, clamped": Loading(1 / 192, 1 / 4),
    "quarter points": Loading(11 / 768, 1 / 8),
    "uniform, cantilever": Loading(1 / 8, 1 / 2),
    "end point, cantilever": Loading(1 / 3, 1),
}
"""Wood Handbook FPL-GTR-282 (2021), table 9-1, p. 9-3; simply supported unless the name says otherwise."""


def second_moment(b: float, h: float) -> float:
    """Second moment of area of a rectangle.

    Args:
        b: width across the load [mm].
        h: depth along the load [mm].

    Returns:
        Second moment of area [mm4].

    Limits:
        None.

    Source:
        Mechanics; checked with BS 5268-2:2002, section properties of birch-faced plywood.

    Example:
        18 mm plywood counted as 17.1 mm, a metre wide: the standard prints 417e3 mm4.

        >>> round(second_moment(1000, 17.1) / 1e3)
        417
    """
    return b * h**3 / 12


def deflection(
    W: float,
    L: float,
    E: float,
    I: float,  # noqa: E741
    GA: float,
    kb: float,
    ks: float,
) -> float:
    """Deflection of a straight beam, bending and shear.

    Args:
        W: total load [N].
        L: span [mm].
        E: modulus of elasticity [MPa].
        I: second moment of area [mm4].
        GA: shear modulus times 5/6 of the area; infinity for a tabulated E, which includes shear [N].
        kb: constant for bending, see `LOADINGS` [-].
        ks: constant for shear, see `LOADINGS` [-].

    Returns:
        Greatest deflection [mm].

    Limits:
        Small deflections; spans of at least 5 depths.

    Source:
        Wood Handbook FPL-GTR-282 (2021), eq. 9-2 to 9-4, table 9-1, p. 9-2 and 9-3; shelf table of
        Architectural Woodwork Standards, 1st ed. (2009), p. 279.

    Example:
        Plywood of 950,000 psi, 3/4 in, 40 psf: 40 in is printed as the longest that sags no more than L/144.

        >>> def ratio(L):
        ...     W = 0.0019152 * L * 300
        ...     return L / deflection(W, L, 6550, second_moment(300, 19.05), float("inf"), 5 / 384, 1 / 8)
        >>> ratio(40 * 25.4) >= 144 > ratio(41 * 25.4)
        True
    """
    return kb * W * L**3 / (E * I) + ks * W * L / GA


def deflection_mdf_shelf(W: float, L: float, E: float, b: float, t: float) -> float:
    """First sag of a shelf under a load spread evenly, as the fiberboard trade writes it.

    Args:
        W: mass on the shelf [kg].
        L: span [mm].
        E: modulus of elasticity [MPa].
        b: width of the shelf [mm].
        t: thickness [mm].

    Returns:
        Sag at the middle, before creep [mm].

    Limits:
        Simply supported; creep adds up to half again.

    Source:
        Trade association guide to medium-density fiberboard, shelf formula (page read).

    Example:
        Its shelf of 800 mm, 300 x 18 mm, E 2500, 20 kg. The guide prints a curve only; worked by hand from
        its formula: 5 x 20 x 800^3 x 9.81 / (32 x 2500 x 300 x 18^3) = 3.588.

        >>> round(deflection_mdf_shelf(20, 800, 2500, 300, 18), 3)
        3.588
    """
    return 5 * W * L**3 / (32 * E * b * t**3) * 9.81


def longest_shelf(E: float, t: float, w: float, ratio: float) -> float:
    """Longest shelf that sags no more than a share of its length under an even load.

    Args:
        E: modulus of elasticity, shear deflection included [MPa].
        t: thickness [mm].
        w: load on the area [N/mm2].
        ratio: span over allowed sag [-].

    Returns:
        Longest span, simply supported [mm].

    Limits:
        Loads to 50 psf (0.0024 N/mm2), the range of the table.

    Source:
        Architectural Woodwork Standards, 1st ed. (2009), p. 253 cl. 1.2.21 and table of p. 279 cl. 4.4.14.10.

    Example:
        Northern red oak, 1,820,000 psi, 3/4 in, 40 psf, L/144: the table prints 49 in.

        >>> int(longest_shelf(12548, 19.05, 0.0019152, 144) / 25.4)
        49
    """
    return float((384 * E * t**3 / 12 / (5 * w * ratio)) ** (1 / 3))


def long_term(first: float, creep: float) -> float:
    """Sag after years of load.

    Args:
        first: sag when the load is put on [mm].
        creep: share added in time, a figure of the material and the climate [-].

    Returns:
        Sag in the long run [mm].

    Limits:
        A heated room, load well below the strength.

    Source:
        European timber code form, u = u_inst (1 + k_def) (from memory); fiberboard trade guide: up to half
        again.

    Example:
        The guide's half again, on 2 mm.

        >>> long_term(2, 0.5)
        3.0
    """
    return first * (1 + creep)


def bending_stress(M: float, b: float, h: float) -> float:
    """Greatest stress of a rectangular beam in bending.

    Args:
        M: bending moment [N mm].
        b: width [mm].
        h: depth [mm].

    Returns:
        Stress at the outer fibres [MPa].

    Limits:
        Stress within the proportional limit.

    Source:
        Mechanics, M/S; BS 5268-2:2002, section properties of birch-faced plywood.

    Example:
        18 mm plywood counted as 17.1 mm, a metre wide: printed section modulus 48.7e3 mm3, so 48.7e3 N mm
        give 1 MPa.

        >>> round(bending_stress(48.7e3, 1000, 17.1), 2)
        1.0
    """
    return 6 * M / (b * h**2)


def size_effect(R_2: float, h: float, L: float, a_over_L: float, m: float = 18) -> float:
    """Bending strength of a beam of another size than the standard test piece.

    Args:
        R_2: bending strength of the 2 in deep test piece, 28 in span, centre load [MPa].
        h: depth [mm].
        L: span [mm].
        a_over_L: distance between two equal loads over the span; 0 for one load [-].
        m: exponent [-].

    Returns:
        Bending strength of this beam, in the unit of R_2 [MPa].

    Limits:
        Depths of 25 mm and over; clear, straight-grained beams.

    Source:
        Wood Handbook FPL-GTR-282 (2021), eq. 9-18 (form recalled; reproduces the printed example).

    Example:
        10 in deep, 216 in span, loads at the third points, 10,000 psi: printed 7,330.

        >>> round(size_effect(10000, 254, 216 * 25.4, 1 / 3), -1)
        7330.0
    """
    ratio = 56 / ((h / 25.4) * (L / 25.4) * (1 + m * a_over_L))
    return float(R_2 * ratio ** (1 / m))
