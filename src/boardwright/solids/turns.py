"""The turns that leave a blank where it is, in words, and the marks that tell them."""

from __future__ import annotations

from functools import lru_cache

from boardwright.core.poses import Pose, Vec, dot, scaled
from boardwright.piece.cuts import Side
from boardwright.piece.records import Part

SQUARE = 0.1
"""Width and thickness that differ by less make a square section [mm]."""


END_FOR_END = "end for end"
OVER = "turned over"
BOTH = "turned over and end for end"
QUARTER = "a quarter turn about its length"
QUARTER_BOTH = "a quarter turn about its length and end for end"


@lru_cache(maxsize=1024)
def turns_of(size: Vec) -> tuple[tuple[str, Pose], ...]:
    """The turns that leave a blank where it is, in its own frame."""
    length, width, thickness = size
    x, y, z = (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)
    left, down, under = scaled(x, -1.0), scaled(y, -1.0), scaled(z, -1.0)
    out = [
        (END_FOR_END, Pose((length, width, 0.0), left, down, z)),
        (OVER, Pose((0.0, width, thickness), x, down, under)),
        (BOTH, Pose((length, 0.0, thickness), left, y, under)),
    ]
    if abs(width - thickness) < SQUARE:
        out += [
            (QUARTER, Pose((0.0, width, 0.0), x, z, down)),
            (QUARTER, Pose((0.0, 0.0, thickness), x, under, y)),
            (QUARTER_BOTH, Pose((length, 0.0, 0.0), left, z, y)),
            (QUARTER_BOTH, Pose((length, width, thickness), left, under, down)),
        ]
    return tuple(out)


FACING = (
    ("front", (0.0, -1.0, 0.0)),
    ("up", (0.0, 0.0, 1.0)),
    ("left", (-1.0, 0.0, 0.0)),
    ("right", (1.0, 0.0, 0.0)),
    ("down", (0.0, 0.0, -1.0)),
    ("back", (0.0, 1.0, 0.0)),
)
"""Marks and the way in which the marked side then looks, in the order in which they are liked."""
ADJECTIVES = {"up": "upper", "down": "lower"}
KEPT: dict[str, tuple[int, ...]] = {
    END_FOR_END: (2,),
    OVER: (0,),
    BOTH: (1,),
    QUARTER: (0,),
    QUARTER_BOTH: (),
}
"""For each turn the axes of the sides that it leaves where they are."""


def mark_for(part: Part, turns: list[str]) -> str:
    """The mark that tells all turns: on a side that each of them moves."""
    kept = {axis for turn in turns for axis in KEPT[turn]}
    sides = [(word, side) for word, way in FACING for side in Side if dot(_normal(part, side), way) > 0.7]
    if not turns:
        return f"write {_own_side(part)} on its inner face"
    for word, side in sides:
        if side.axis not in kept:
            return f"write `{word}` on its {ADJECTIVES.get(word, word)} {_called(side)}"
    word, side = next((w, s) for w, s in sides if s.axis == 2)
    arrow = next(w for w, s in sides if s.axis == 0)
    return f"write `{word}` on its {ADJECTIVES.get(word, word)} {_called(side)}, with an arrow that points {arrow}"


def _own_side(part: Part) -> str:
    for word in ("left", "right", "front", "back"):
        if part.id.endswith(word):
            return f"`{word}`"
    return f"`{part.letter}`"


def _normal(part: Part, side: Side) -> Vec:
    axis = (part.pose.x, part.pose.y, part.pose.z)[side.axis]
    return axis if side.high else scaled(axis, -1.0)


def _called(side: Side) -> str:
    return ("end", "edge", "face")[side.axis]
