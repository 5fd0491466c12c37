"""Channels, steps, notches and holes: cuts that take boxes and rounds away."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.piece.cuts.sides import Side


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
        counterbore: diameter of a wider hole at the side [mm]; 0 for none. counterbore_depth: of it [mm].
        lean: how far the hole leans from square towards the high end of `lean_along` [degrees].
        lean_along: part axis it leans along.
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
    counterbore: float = 0.0
    counterbore_depth: float = 0.0
    lean: float = 0.0
    lean_along: int = 0
