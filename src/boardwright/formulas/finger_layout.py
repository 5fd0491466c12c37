"""Where the fingers of a finger joint stand, so that the layout closes. Lengths in mm."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.steps import settle
from boardwright.formulas.limits import Limit, Limits

LEAST = 3
"""Fewest fingers of both boards together: one of the one board between two of the other."""

LIMITS: Limits = {"finger_layout": {"width": Limit(0, None, "mm"), "pitch": Limit(0, None, "mm")}}


@dataclass(frozen=True, slots=True)
class FingerLayout:
    """A layout across the width of a joint.

    Attributes:
        marks: all edges from one side to the other, both ends included [mm]; the first and the last finger belong
            to one board, and so every other.
        pitch: width of a finger between the outer two [mm].
        left: what the outer two are wider together [mm].
        exact: the widths next below and above at which all fingers come out alike [mm].
    """

    marks: tuple[float, ...]
    pitch: float
    left: float
    exact: tuple[float, float]

    @property
    def outer(self) -> tuple[tuple[float, float], ...]:
        """Fingers of the board that has the first and the last: from, to [mm]."""
        return tuple((self.marks[i], self.marks[i + 1]) for i in range(0, len(self.marks) - 1, 2))

    @property
    def inner(self) -> tuple[tuple[float, float], ...]:
        """Fingers of the other board, between them: from, to [mm]."""
        return tuple((self.marks[i], self.marks[i + 1]) for i in range(1, len(self.marks) - 1, 2))


def finger_layout(width: float, pitch: float, step: float) -> FingerLayout:
    """Lay out an odd number of fingers, as many as the width takes, so that one board has both outer ones.

    What is left of the width is shared out between the outer two.

    Args:
        width: of the joint [mm].
        pitch: width of one finger, as the cutter cuts it [mm].
        step: finest printed step; the low outer finger grows by whole steps, the high one by the rest [mm].

    Returns:
        The layout, from the low edge [mm].

    Limits:
        A width that takes three fingers; ValueError below.

    Source:
        Odd number of fingers, the width a multiple of one (common practice).

    Example:
        Six wide with fingers of 2: three of them, nothing left.

        >>> finger_layout(6, 2, 0.5).marks
        (0.0, 2.0, 4.0, 6)
    """
    count = int((width + 1e-6) / pitch)
    count -= 1 - count % 2
    if count < LEAST:
        raise ValueError(f"{LEAST} fingers do not fit")
    left = max(0.0, width - count * pitch)
    start = settle(left / 2, step, "down")
    marks = [0.0, *(start + pitch * i for i in range(1, count)), width]
    return FingerLayout(tuple(marks), pitch, left, (count * pitch, (count + 2) * pitch))
