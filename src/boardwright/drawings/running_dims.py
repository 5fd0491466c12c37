"""Running dimensions: many places from one origin on one line, their texts turned (ISO 129-1, from memory)."""

from __future__ import annotations

from collections.abc import Sequence

from boardwright.drawings.layout_dims import SIZE
from boardwright.drawings.records import Circle, Entity, Line, Text
from boardwright.drawings.spacing import spread

APART = 3.0
"""Between two texts [mm]."""
GAP, STRAIGHT, JOG = 0.8, 2.4, 3.4
"""From the view to a line, to where it bends, and from there to the text [mm]."""


def room(count: int) -> float:
    """Width that so many places need [mm]."""
    return APART * count


def running(places: Sequence[tuple[float, str]], y: float, low: float, high: float) -> list[Entity]:
    """Places over a view, each with a line and its text; the origin has a ring.

    Args:
        places: where each is on paper [mm], and what it says; the first is the origin.
        y: upper edge of the view [mm].
        low: leftmost place for a text [mm].
        high: rightmost place for a text [mm].
    """
    ordered = sorted(places)
    stand = spread([x for x, _ in ordered], APART, low, high)
    first, second = y + STRAIGHT, y + STRAIGHT + JOG
    out: list[Entity] = [Circle((places[0][0], first), 0.6, "thin")]
    for (x, said), at in zip(ordered, stand, strict=True):
        bend = ((x, y + GAP), (x, first), (at, second), (at, second + 0.6))
        out.append(Line(bend, "thin"))
        out.append(Text((at + SIZE / 2, second + 1.1), said, SIZE, "left", 90.0))
    return out
