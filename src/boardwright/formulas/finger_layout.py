"""Where the fingers of a finger joint stand, so that the layout closes. Lengths in mm."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.steps import settle

LEAST = 3
"""Fewest fingers and sockets together: one finger of one board between two of the other."""


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
    def fingers(self) -> tuple[tuple[float, float], ...]:
        """Of the board that has the first and the last: from, to [mm]."""
        return tuple((self.marks[i], self.marks[i + 1]) for i in range(0, len(self.marks) - 1, 2))

    @property
    def sockets(self) -> tuple[tuple[float, float], ...]:
        """Between them, where the fingers of the other board stand: from, to [mm]."""
        return tuple((self.marks[i], self.marks[i + 1]) for i in range(1, len(self.marks) - 1, 2))


def finger_layout(width: float, pitch: float, step: float) -> FingerLayout:
    """Lay out an odd number of fingers and sockets, as many as the width takes.

    So both edges of one board end on a finger (common practice). What is left of the width is shared out between the
    outer two.

    Args:
        width: of the joint [mm].
        pitch: width of one finger, as the cutter cuts it [mm].
        step: finest printed step [mm]; every mark but the last lies on it.

    Raises:
        ValueError: the width takes fewer than three.
    """
    count = int((width + 1e-6) / pitch)
    count -= 1 - count % 2
    if count < LEAST:
        raise ValueError(f"{LEAST} fingers do not fit")
    left = max(0.0, width - count * pitch)
    start = settle(left / 2, step, "down")
    marks = [0.0, *(start + pitch * i for i in range(1, count)), width]
    return FingerLayout(tuple(marks), pitch, left, (count * pitch, (count + 2) * pitch))
