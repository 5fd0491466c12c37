"""Chisels and straight cutters as sold: what the width of a mortise or a socket is rounded to."""

from __future__ import annotations

from boardwright.piece.setout import SetOut

INCHES = (1 / 8, 3 / 16, 1 / 4, 5 / 16, 3 / 8, 7 / 16, 1 / 2, 5 / 8, 3 / 4, 7 / 8, 1.0, 1.25, 1.5)
"""Widths of mortise chisels, bench chisels and straight cutters [in]: common practice."""
MILLIMETRES = (3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 14.0, 16.0, 18.0, 20.0, 22.0, 25.0, 32.0, 40.0)
"""The same in metric sets [mm]: common practice."""


def sizes(out: SetOut) -> list[float]:
    """Widths on sale in the units of the plan that lie on its step, narrowest first [mm]."""
    widths = MILLIMETRES if out.design.units == "mm" else tuple(w * 25.4 for w in INCHES)
    return [w for w in widths if abs(out.sizer.settled(w) - w) < 1e-6]


def nearest(out: SetOut, width: float, most: float = float("inf")) -> float:
    """The width on sale nearest to one, the wider of two equally near; the width itself where none is on the step [mm].

    Args:
        out: the bench.
        width: that is wanted [mm].
        most: the widest that may be taken [mm].
    """
    fitting = [w for w in sizes(out) if w <= most + 1e-6]
    return min(fitting, key=lambda w: (round(abs(w - width), 6), -w)) if fitting else min(width, most)
