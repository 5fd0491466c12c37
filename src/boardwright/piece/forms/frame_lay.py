"""How a frame lies in the piece, and its openings."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.poses import Box
from boardwright.piece.drafts import Draft
from boardwright.piece.setout import SetOut


@dataclass(frozen=True, slots=True)
class Span:
    """From where to where along an axis [mm]."""

    low: float
    high: float

    @property
    def size(self) -> float:
        """Its length [mm]."""
        return self.high - self.low


@dataclass(frozen=True, slots=True)
class Lay:
    """Which way a frame or slab lies.

    Attributes:
        cross: the axis its rails run along. through: the axis its stiles run along.
        face_high: True when its face is at the high end of the axis of its thickness.
    """

    cross: int
    through: int
    face_high: bool

    @property
    def thick(self) -> int:
        """The axis of its thickness."""
        return 3 - self.cross - self.through

    def box(self, cross: Span, through: Span, thick: Span) -> Box:
        """A box from its spans."""
        low, high = [0.0] * 3, [0.0] * 3
        for axis, span in ((self.cross, cross), (self.through, through), (self.thick, thick)):
            low[axis], high[axis] = span.low, span.high
        return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))

    def behind(self, box: Box, near: float, far: float) -> Span:
        """A span of the thickness, by how far behind the face it begins and ends [mm]."""
        if self.face_high:
            return Span(box.high[self.thick] - far, box.high[self.thick] - near)
        return Span(box.low[self.thick] + near, box.low[self.thick] + far)


DOOR = Lay(0, 2, False)
"""Stiles stand, and the face looks to the front."""
LID = Lay(1, 0, True)
"""The long parts run from left to right, and the face looks up."""


@dataclass(frozen=True, slots=True)
class Opening:
    """An opening of a frame: its spans, and the parts at its low and high end along each."""

    cross: Span
    through: Span
    at_cross: tuple[Draft, Draft]
    at_through: tuple[Draft, Draft]


def cells(out: SetOut, whole: Span, count: int, between: float) -> list[Span]:
    """A span parted evenly, with members of one width between; their places lie on the step."""
    pitch = (whole.size - (count - 1) * between) / count + between
    starts = [whole.low + out.sizer.settled(i * pitch) for i in range(count)]
    ends = [s - between for s in starts[1:]] + [whole.high]
    return [Span(a, b) for a, b in zip(starts, ends, strict=True)]
