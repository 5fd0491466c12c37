"""Bending a board over saw kerfs in its back."""

from __future__ import annotations

from math import atan, ceil, sqrt

from boardwright.formulas.limits import Limit, Limits

LIMITS: Limits = {
    "kerfs_to_close": {"angle": Limit(0, 6.3, "radians")},
    "flat_depth": {"R": Limit(1, None, "mm")},
    "spacing_for_flat": {"R": Limit(1, None, "mm")},
}


def kerfs_to_close(angle: float, kerf: float, depth: float) -> int:
    """How many kerfs just close when a board is bent.

    Args:
        angle: through which it is bent [rad].
        kerf: width of the saw cut [mm].
        depth: of the saw cut [mm].

    Returns:
        Whole kerfs [-].

    Limits:
        Kerfs that close at the back; a web that bends without breaking.

    Source:
        Each kerf turns by its width over its depth: geometry; magazine question on kerf bending.

    Example:
        90 degrees, 1/8 in kerf, 11/16 in deep: printed 8.6, so 9.

        >>> kerfs_to_close(1.5708, 0.125, 0.6875)
        9
    """
    return ceil(angle / atan(kerf / depth) - 1e-9)


def flat_depth(s: float, R: float) -> float:
    """How far the flats between kerfs stand inside the curve.

    Args:
        s: spacing of the kerfs [mm].
        R: radius of the face [mm].

    Returns:
        Greatest distance from flat to curve [mm].

    Limits:
        Spacing up to half of the radius.

    Source:
        Rise of a short arc, s^2/(8 R): geometry.

    Example:
        2.18 in on a radius of 12 in: printed 0.050 in.

        >>> round(flat_depth(2.18, 12), 3)
        0.05
    """
    return s**2 / (8 * R)


def spacing_for_flat(most: float, R: float) -> float:
    """Spacing of kerfs at which the flats are no deeper than wanted.

    Args:
        most: depth of the flats that may be [mm].
        R: radius of the face [mm].

    Returns:
        Spacing [mm].

    Limits:
        As `flat_depth`.

    Source:
        `flat_depth` turned round.

    Example:
        0.004 in on 12 in: printed 0.62 in.

        >>> round(spacing_for_flat(0.004, 12), 2)
        0.62
    """
    return sqrt(8 * R * most)
