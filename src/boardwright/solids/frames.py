"""Parts seen from each other: what two solids are to each other depends on their forms and on this alone.

Whatever is found about a pair is kept by the two forms and the place of one in the frame of the other, so that it is
found once for all pairs that are alike, and again only where a changed size changes the pair.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from boardwright.core.poses import Pose, Vec, dot, rounded, scaled
from boardwright.piece.cuts import Cut, Hole
from boardwright.piece.records import Part
from boardwright.solids.once import once


@dataclass(frozen=True, slots=True, eq=False)
class Form:
    """What a solid follows from; one record for all that are equal, so that it is quickly told from others.

    Attributes:
        size: length, width, thickness of the blank [mm].
        cuts: what is taken away.
    """

    size: Vec
    cuts: tuple[Cut, ...]


@lru_cache(maxsize=16384)
def form(size: Vec, cuts: tuple[Cut, ...]) -> Form:
    """The record of a form."""
    return Form(size, cuts)


def form_of(part: Part) -> Form:
    """The form of a part."""
    return _form(part.cuts, part.size)


@once()
def _form(cuts: tuple[Cut, ...], size: Vec) -> Form:
    return form(size, cuts)


@lru_cache(maxsize=16384)
def undrilled(whole: Form) -> Form:
    """A form less its holes."""
    return form(whole.size, tuple(c for c in whole.cuts if not isinstance(c, Hole)))


def relative(frame: Pose, other: Pose) -> Pose:
    """A pose as seen from another's frame, rounded so that alike places are equal."""
    seen = square(frame)
    return Pose(
        rounded(seen.inverse_point(other.origin), 9),
        rounded(seen.inverse_direction(other.x), 9),
        rounded(seen.inverse_direction(other.y), 9),
        rounded(seen.inverse_direction(other.z), 9),
    )


def square(frame: Pose) -> Pose:
    """A frame with axes of length 1: those of a part in another season carry its swelling."""
    squares = [dot(axis, axis) for axis in (frame.x, frame.y, frame.z)]
    if all(abs(s - 1) < 1e-9 for s in squares):
        return frame
    x, y, z = (scaled(a, s**-0.5) for a, s in zip((frame.x, frame.y, frame.z), squares, strict=True))
    return Pose(frame.origin, x, y, z)
