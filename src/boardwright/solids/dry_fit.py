"""Dry fit: every pair of parts intersected, every joint pressed together, every drawer pulled all its way."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np

from boardwright.core.poses import Box, Pose
from boardwright.piece.records import Contact, Part, Piece
from boardwright.solids.bodies import Bodies
from boardwright.solids.cells import cells, clashes, clipped, common_volume, drilled
from boardwright.solids.frames import Form, form_of, relative
from boardwright.solids.mesh import box_solid, part_solid, seen, shared_volume
from boardwright.solids.sections import TOUCH, touching_area
from boardwright.solids.travel import Hit, hits, is_boxes

LEAST = 1e-3
"""Room that two parts share from which on they collide [mm3]."""
THIN = 1e-4
"""What is thinner than this only touches [mm]."""
CLEAR = 0.75
"""Share of a face that touches for certain, above which holes in it need not be measured by the solids."""
NEAR = 1.6
"""Two parts without a joint that come nearer than this, and do not touch, leave an unplanned gap [mm]."""


@dataclass(frozen=True, slots=True)
class Overlap:
    """Two parts that share room: volume [mm3] and the box around it [mm]."""

    first: str
    second: str
    volume: float
    box: Box


@dataclass(frozen=True, slots=True)
class Touch:
    """How much of a contact face really touches.

    Attributes:
        joint: id of the joint. contact: the face.
        area: planned [mm2].
        touching: found [mm2]; a little less where holes are drilled at the face, since squares around them
            count as open as long as `CLEAR` of the face is left.
    """

    joint: str
    contact: Contact
    area: float
    touching: float


@dataclass(frozen=True, slots=True)
class DryFit:
    """What the dry fit found."""

    overlaps: tuple[Overlap, ...]
    touches: tuple[Touch, ...]
    hits: tuple[Hit, ...]


def dry_fit(piece: Piece) -> DryFit:
    """Put the piece together dry."""
    rooms = {p.id: cells(p) for p in piece.parts}
    return DryFit(tuple(overlaps(piece, rooms)), tuple(_touches(piece, rooms)), tuple(hits(piece, rooms)))


def overlaps(piece: Piece, rooms: dict[str, Any], but: Collection[frozenset[str]] = ()) -> list[Overlap]:
    """Pairs of parts, and of a bought thing and a part, in one place.

    Args:
        piece: the piece.
        rooms: boxes of every part by its id, as (n, 2, 3) float [mm].
        but: pairs of ids to leave out.
    """
    parts = piece.parts
    if not parts:
        return []
    bounds = np.array([[p.box.low, p.box.high] for p in parts])
    out = []
    near = [(i, j) for i, j in clashes(bounds, bounds).tolist() if i < j]
    near = [(i, j) for i, j in near if frozenset((parts[i].id, parts[j].id)) not in but]
    near = [(i, j) for i, j in near if len(clashes(rooms[parts[i].id], rooms[parts[j].id]))]
    for i, j in _sharing(parts, near):
        one, two = parts[i], parts[j]
        found = shared(one, two)
        if found is not None:
            out.append(Overlap(one.id, two.id, found[0], found[1]))
    out += _hardware_overlaps(piece, bounds)
    return out


def _sharing(parts: Sequence[Part], pairs: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """The pairs of parts that may share room, by the flat faces of both."""
    if not pairs:
        return []
    some = sorted({i for pair in pairs for i in pair})
    if not all(map(is_boxes, parts)):
        some = list(range(len(parts)))  # what is in the way of what is asked of the bodies of all
    asked = np.zeros((len(some), len(some)), dtype=bool)
    at = {i: k for k, i in enumerate(some)}
    for i, j in pairs:
        asked[at[i], at[j]] = True
    found = Bodies.of([parts[i] for i in some]).rest(asked)
    return [(i, j) for i, j in pairs if found[at[i], at[j]]]


def shared(one: Part, two: Part) -> tuple[float, Box] | None:
    """Room that two parts share: its volume [mm3] and the box around it [mm]; None when they share none."""
    frame = one.pose
    volume = _shared(form_of(one), relative(frame, frame), form_of(two), relative(frame, two.pose))
    if volume < LEAST:
        return None
    box = _shared_box(one, two)
    return (volume, box) if min(box.size(k) for k in range(3)) >= THIN else None


@lru_cache(maxsize=65536)
def _shared(one: Form, own: Pose, two: Form, place: Pose) -> float:
    """Volume that two solids share, at their places in the frame of the first [mm3]."""
    return shared_volume(seen(one, own), seen(two, place))


def _shared_box(one: Part, two: Part) -> Box:
    """The box around the room that two parts share [mm]."""
    low_and_high = (part_solid(one) ^ part_solid(two)).bounding_box()
    low, high = low_and_high[:3], low_and_high[3:]
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _hardware_overlaps(piece: Piece, boxes: Any) -> list[Overlap]:
    if not piece.hardware:
        return []
    hard = np.array([[h.box.low, h.box.high] for h in piece.hardware])
    out = []
    for i, j in clashes(hard, boxes):
        thing, part = piece.hardware[i], piece.parts[j]
        volume = shared_volume(box_solid(thing.box), part_solid(part))
        if volume > 1e-2:
            out.append(Overlap(thing.id, part.id, volume, thing.box))
    return out


def _touches(piece: Piece, rooms: dict[str, Any]) -> list[Touch]:
    by_id = {p.id: p for p in piece.parts}
    holes = {p.id: drilled(p) for p in piece.parts}
    out = []
    for joint in piece.joints:
        if joint.first not in by_id or joint.second not in by_id:
            continue
        for contact in joint.contacts:
            if contact.gap > 1e-9:
                continue
            area = contact.area
            if contact.corners:
                found = touching_area(contact, by_id[joint.first], by_id[joint.second])
                out.append(Touch(joint.id, contact, area, found))
                continue
            window = np.array([contact.box.low, contact.box.high], dtype=float)
            window[:, contact.axis] += (-TOUCH, TOUCH)
            push = np.zeros(3)
            push[contact.axis] = -TOUCH if contact.from_first else TOUCH
            pressed = clipped(rooms[joint.second], window) + push
            touching = common_volume(pressed, rooms[joint.first]) / TOUCH
            lost = sum(_mouths(holes[id], window, contact.axis) for id in (joint.first, joint.second))
            one, two = by_id[joint.first], by_id[joint.second]
            if lost and (touching - lost < CLEAR * area or not (is_boxes(one) and is_boxes(two))):
                touching, lost = touching_area(contact, one, two), 0.0
            out.append(Touch(joint.id, contact, area, touching - lost))
    return out


def _mouths(holes: Any, window: Any, axis: int) -> float:
    """Area of the squares around the holes that are drilled at a face [mm2]."""
    found = clipped(holes, window)
    return float(np.delete(found[:, 1] - found[:, 0], axis, axis=1).prod(axis=1).sum())
