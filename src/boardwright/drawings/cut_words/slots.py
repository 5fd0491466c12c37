"""Slots in mitres, kept as shaped edges: grooves for splines, slots for keys across a corner."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from boardwright.core.poses import Vec
from boardwright.drawings.cut_words.terms import EPS, FROM, SIDE_WORDS, Printer, Said, places
from boardwright.piece.cuts import Bevel, Cut, Moulding
from boardwright.solids.primitives import inward


@dataclass(frozen=True, slots=True)
class Slot:
    """A slot square to a slanted face: its width, its depth, and how far its near wall lies from the heel [mm]."""

    width: float
    depth: float
    from_heel: float


def slot_of(cut: Moulding) -> Slot | None:
    """The slot that a profile is: up one side of a rectangle, over its bottom and down again; None for any other."""
    if len(cut.points) != 6:
        return None
    near, deep, deep_too, mouth = cut.points[1:5]
    down, over = _less(deep, near), _less(deep_too, deep)
    back = _less(mouth, deep_too)
    square = abs(down[0] * over[0] + down[1] * over[1])
    if square > 1e-4 or math.dist(down, (-back[0], -back[1])) > 1e-4:
        return None
    heel_side = mouth if mouth[0] < near[0] else near
    slope = (near[1] - mouth[1]) / (near[0] - mouth[0]) if abs(near[0] - mouth[0]) > EPS else 0.0
    heel = (0.0, heel_side[1] - slope * heel_side[0])
    return Slot(math.hypot(*over), math.hypot(*down), math.dist(heel, heel_side))


def _less(a: tuple[float, float], b: tuple[float, float]) -> tuple[float, float]:
    return (a[0] - b[0], a[1] - b[1])


def slot_said(cut: Moulding, others: Iterable[Cut], size: Vec, p: Printer) -> Said | None:
    """A shaped edge that is a slot in a mitre, in words; None for one that is a moulding.

    Args:
        cut: in the part's own frame.
        others: all cuts of the part.
        size: of the part [mm].
        p: writes lengths.
    """
    slot = slot_of(cut)
    if slot is not None:
        own = (f"{p.auxiliary(slot.width)} wide", f"{p.auxiliary(slot.depth)} deep")
        heel = f"near wall {p.auxiliary(slot.from_heel)} from the heel at the {SIDE_WORDS[cut.edge]}"
        return Said(
            "slot for a spline", own, f"square to the slanted face at the {SIDE_WORDS[cut.side]}", (), (heel,)
        )
    third = 3 - cut.side.axis - cut.edge.axis
    if third != 2 or (cut.start <= EPS and cut.end >= size[2] - EPS):
        return None
    unseen, seen = places([(2, f"{p.size(cut.start)} to {p.size(cut.end)} from {FROM[2]}")])
    wide = f"{p.size(cut.end - cut.start)} wide"
    if cut.shape == "chamfer":
        own = (wide, f"{p.auxiliary(cut.size / math.sqrt(2))} deep from the corner")
        side = f"across the corner of the {SIDE_WORDS[cut.side]} and the {SIDE_WORDS[cut.edge]}"
        return Said("slot for a key", own, side, (), unseen, seen)
    depth = _below_mitre(cut, others, size)
    if depth is None:
        return None
    side = f"in the mitred face at the {SIDE_WORDS[cut.side]}"
    return Said("groove for a spline", (wide, f"{p.auxiliary(depth)} deep"), side, (), unseen, seen)


def _below_mitre(cut: Moulding, others: Iterable[Cut], size: Vec) -> float | None:
    """How deep the line of a profile lies below the mitre, square to it [mm]; None when there is no mitre."""
    from_edge, down = cut.points[-1] if cut.points else (0.0, 0.0)
    for other in others:
        if isinstance(other, Bevel) and other.side is cut.side and abs(other.over_v) < EPS:
            at = inward(size, cut.edge, from_edge)
            return (down - other.at - other.over_u * at) / math.hypot(1.0, other.over_u)
    return None
