"""Scales for drawings."""

from __future__ import annotations

METRIC = (1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0)
"""ISO 5455:1979, recommended reduction scales."""
INCH = (1.0, 2.0, 4.0, 8.0, 12.0, 16.0, 24.0, 32.0, 48.0)
"""Common practice in inch drawings."""


def scales(units: str) -> tuple[float, ...]:
    """Reductions to try, the largest drawing first.

    Args:
        units: `in` or `mm`.
    """
    return INCH if units == "in" else METRIC


def scale_text(reduction: float) -> str:
    """How a scale is printed, e.g. `1:8`; an enlargement as `2:1`."""
    return f"1:{reduction:g}" if reduction >= 1 else f"{1 / reduction:g}:1"


def fitting(units: str, wide: float, high: float, room_wide: float, room_high: float) -> float:
    """The largest scale at which something fits.

    Args:
        units: `in` or `mm`.
        wide: true width [mm].
        high: true height [mm].
        room_wide: width on paper [mm].
        room_high: height on paper [mm].
    """
    for s in scales(units):
        if wide / s <= room_wide and high / s <= room_high:
            return s
    return scales(units)[-1]
