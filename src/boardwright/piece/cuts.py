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

from dataclasses import dataclass
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


@dataclass(frozen=True, slots=True)
class Groove:
    """A channel with two walls and a bottom: a groove along the grain, a dado across it.

    Attributes:
        side: the side it is cut into.
        along: part axis it runs along (0, 1 or 2), never the axis of `side`.
        at: from the low end of the third axis to the channel's near wall [mm].
        width: wall to wall [mm].
        depth: from `side` to the bottom [mm].
        start, end: from where to where it runs along `along`, from the low end [mm]; an end inside the
            part is a stopped end.
        holds: id of the part that sits in it, or "".
        purpose: one of `joint`, `running` (something slides in it), `panel`.
    """

    side: Side
    along: int
    at: float
    width: float
    depth: float
    start: float
    end: float
    holds: str = ""
    purpose: str = "joint"


@dataclass(frozen=True, slots=True)
class Rabbet:
    """A step along an edge or end, open on two sides.

    Attributes:
        side: the side the depth is measured from (the depth goes into it) and in which the width is seen.
        edge: the side that the width is measured from; square to `side`.
        width: from `edge` inward [mm].
        depth: from `side` inward [mm].
        start, end: from where to where along the third axis, from its low end [mm].
        holds: id of the part that sits in it, or "".
        purpose: `joint`, `tongue` (what is left is the feature), `panel`.
    """

    side: Side
    edge: Side
    width: float
    depth: float
    start: float
    end: float
    holds: str = ""
    purpose: str = "joint"


@dataclass(frozen=True, slots=True)
class Notch:
    """A corner taken out through the whole thickness.

    Attributes:
        end: `end` or `far_end`.
        edge: `edge` or `far_edge`.
        length: along the grain, from `end` [mm].
        width: across the grain, from `edge` [mm].
        holds: id of the part that passes there, or "".
    """

    end: Side
    edge: Side
    length: float
    width: float
    holds: str = ""


@dataclass(frozen=True, slots=True)
class Hole:
    """A drilled hole, square to its side; a slot when `slot` is not 0.

    Attributes:
        side: the side it is drilled from.
        at: its centre in the two part axes other than the side's axis, lower axis first, from their low
            ends [mm].
        diameter: [mm].
        depth: from `side` [mm]; at least the part's size along that axis when it goes through.
        through: True when it goes right through.
        countersink: diameter of the countersink at the side [mm]; 0 for none.
        countersink_angle: included angle [degrees].
        slot: length of a slot, from centre to centre of its two ends [mm]; 0 for a round hole.
        slot_along: part axis the slot runs along.
        purpose: `clearance`, `pilot`, `dowel` or `hardware`.
        for_: what goes in it, e.g. `No. 8 x 1 1/4 screw`.
        marked_through: id (in the plan: letter) of the part through whose hole it is marked in place; such a hole is
            not measured. "" for one that is.
    """

    side: Side
    at: tuple[float, float]
    diameter: float
    depth: float
    through: bool = False
    countersink: float = 0.0
    countersink_angle: float = 82.0
    slot: float = 0.0
    slot_along: int = 0
    purpose: str = "hardware"
    for_: str = ""
    marked_through: str = ""


Cut = Groove | Rabbet | Notch | Hole
