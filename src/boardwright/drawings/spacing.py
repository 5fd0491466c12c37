"""Positions kept apart on a line."""

from __future__ import annotations


def spread(wanted: list[float], apart: float, low: float, high: float) -> list[float]:
    """Positions near the wanted ones, in rising order, at least `apart` from each other, from `low` on.

    Args:
        wanted: where each would stand [mm], in any order.
        apart: least distance [mm].
        low: lower limit [mm].
        high: upper limit [mm]; it gives way when there are too many.
    """
    out: list[float] = []
    for w in sorted(wanted):
        out.append(max(w, low, out[-1] + apart if out else low))
    for i in range(len(out) - 1, -1, -1):
        limit = high if i == len(out) - 1 else out[i + 1] - apart
        out[i] = max(min(out[i], limit), low + apart * i)
    return out
