"""Whole units for layout arithmetic, so that nothing drifts.

Layouts add and compare many sizes. Inside this folder that is done in whole nanometres: micrometres
would not do, because 1/64 in is 396.875 micrometres, and six pieces that fit a board exactly must
still fit it when they are added up. A millimetre and 1/64 in are both whole numbers of nanometres.
"""

from __future__ import annotations

UNITS_PER_MM = 1_000_000


def to_units(size: float) -> int:
    """A size in whole units.

    Args:
        size: a size [mm].

    Returns:
        The nearest whole number of units [nm].
    """
    return round(size * UNITS_PER_MM)


def to_mm(units: int) -> float:
    """A size in millimetres.

    Args:
        units: a size in whole units [nm].

    Returns:
        The size [mm].
    """
    return units / UNITS_PER_MM
