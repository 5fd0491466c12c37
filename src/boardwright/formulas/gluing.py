"""Clamps and glue for an area."""

from __future__ import annotations

from math import ceil

from boardwright.formulas.limits import Limit, Limits

LIMITS: Limits = {
    "clamp_force": {"p": Limit(0.07, 1.75, "N/mm2")},
    "glue_mass": {"spread": Limit(100, 400, "g/m2")},
}


def clamp_force(p: float, length: float, width: float) -> float:
    """Force to press a joint.

    Args:
        p: pressure on the joint [N/mm2].
        length: of the glued face [mm].
        width: of the glued face [mm].

    Returns:
        Force of all clamps together [N].

    Limits:
        Pressures of 10 to 250 psi (0.07 to 1.75 N/mm2), vacuum veneering to dense hardwood.

    Source:
        Pressure times area; woodworking magazine page on clamping.

    Example:
        An edge of 1 x 25 in at 150 psi: printed 3,750 lb.

        >>> round(clamp_force(150 * 0.00689476, 25 * 25.4, 25.4) / 4.44822)
        3750
    """
    return p * length * width


def clamps_for_force(force: float, each: float) -> int:
    """Number of clamps that make a force.

    Args:
        force: force wanted [N].
        each: force of one clamp [N].

    Returns:
        Whole clamps [-].

    Limits:
        None.

    Source:
        Woodworking magazine page on clamping.

    Example:
        3,750 lb: printed nine clamps at 420 lb, or eight at 470.

        >>> clamps_for_force(3750, 420), clamps_for_force(3750, 470)
        (9, 8)
    """
    return ceil(force / each - 1e-9)


def largest_clamp_spacing(w: float, d: float) -> float:
    """Spacing of clamps at which their pressure still covers the whole joint.

    Args:
        w: width of the pad or caul along the joint [mm].
        d: distance from the pad to the nearest glue line [mm].

    Returns:
        Spacing, centre to centre [mm].

    Limits:
        Pressure that spreads 45 degrees to each side.

    Source:
        University author in the trade press, on the spread of pressure; the sum is geometry.

    Example:
        Outer boards of 4 in, pads of 1 in: worked by hand, 1 + 2 x 4 = 9 in.

        >>> largest_clamp_spacing(1, 4)
        9
    """
    return w + 2 * d


def clamps_for_length(L: float, spacing: float, end: float) -> int:
    """Number of clamps along a joint.

    Args:
        L: length of the joint [mm].
        spacing: largest spacing [mm].
        end: distance of the first and the last clamp from the ends [mm].

    Returns:
        Whole clamps [-].

    Limits:
        None.

    Source:
        Geometry: the spaces between the end clamps, rounded up, and one more.

    Example:
        48 in, spaced 9, first at 4 1/2: worked by hand, (48 - 9)/9 = 4.33, so 5 spaces and 6 clamps.

        >>> clamps_for_length(48, 9, 4.5)
        6
    """
    return max(1, ceil((L - 2 * end) / spacing - 1e-9) + 1)


def glue_mass(area: float, spread: float) -> float:
    """Glue that an area takes.

    Args:
        area: area to spread, each face counted [mm2].
        spread: mass on the area [g/m2].

    Returns:
        Mass of glue [g].

    Limits:
        100 to 400 g/m2.

    Source:
        Spread is given in lb per 1000 ft2 in glue sheets: 50 lb is about 245 g/m2 (from memory).

    Example:
        1000 ft2 at 244 g/m2: 50 lb.

        >>> round(glue_mass(1000 * 304.8**2, 244.1) / 453.59)
        50
    """
    return area * spread / 1e6
