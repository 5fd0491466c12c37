"""Cuts: named shop features with their own numbers, in the part's own frame.

A part's blank is the box x 0..length (along the grain), y 0..width, z 0..thickness [mm]. Its six sides:

| side | lies at | trade name |
|---|---|---|
| `face` | z = thickness | the face |
| `back` | z = 0 | the other face |
| `edge` | y = 0 | the reference edge |
| `far_edge` | y = width | the other edge |
| `end` | x = 0 | the reference end |
| `far_end` | x = length | the other end |

Solids, drawings, set-ups and strength all read these same records; none of them is ever a bare solid.
"""

from __future__ import annotations

from enum import StrEnum


class Side(StrEnum):
    """One of the six sides of a part."""

    FACE = "face"
    BACK = "back"
    EDGE = "edge"
    FAR_EDGE = "far_edge"
    END = "end"
    FAR_END = "far_end"

    @property
    def axis(self) -> int:
        """The part axis it is square to: 0 length, 1 width, 2 thickness."""
        return {"end": 0, "far_end": 0, "edge": 1, "far_edge": 1, "back": 2, "face": 2}[self.value]

    @property
    def high(self) -> bool:
        """True for the side at the far end of its axis."""
        return self.value in ("face", "far_edge", "far_end")

    @classmethod
    def of(cls, axis: int, high: bool) -> Side:
        """The side square to an axis, at its low or high end."""
        return ((cls.END, cls.FAR_END), (cls.EDGE, cls.FAR_EDGE), (cls.BACK, cls.FACE))[axis][high]
