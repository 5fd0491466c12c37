"""Dry fit: every pair of parts intersected, every joint pressed together, every drawer pulled all its way."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np

from boardwright.core.poses import Box, Pose, Vec, add, scaled
from boardwright.piece.cuts import Cut
from boardwright.piece.records import Contact, Part, Piece
from boardwright.solids.cells import cells, clashes, clipped, common_volume, drilled
from boardwright.solids.mesh import box_solid, part_solid, shared_volume
from boardwright.solids.primitives import Sweep
from boardwright.solids.travel import Hit, hits, is_boxes

TOUCH = 0.02
"""How far two parts are pressed into each other to measure the area they touch on [mm]."""
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
    for i, j in clashes(bounds, bounds):
        one, two = parts[i], parts[j]
        if i >= j or frozenset((one.id, two.id)) in but or not len(clashes(rooms[one.id], rooms[two.id])):
            continue
        found = shared(one, two)
        if found is not None:
            out.append(Overlap(one.id, two.id, found[0], found[1]))
    out += _hardware_overlaps(piece, bounds)
    return out


def shared(one: Part, two: Part) -> tuple[float, Box] | None:
    """Room that two parts share: its volume [mm3] and the box around it [mm]; None when they share none."""
    return _shared(*_key(one), *_key(two))


@lru_cache(maxsize=65536)
def _shared(
    size1: Any, cuts1: Any, pose1: Any, size2: Any, cuts2: Any, pose2: Any
) -> tuple[float, Box] | None:
    from boardwright.solids.mesh import placed

    common = placed(size1, cuts1, pose1) ^ placed(size2, cuts2, pose2)
    volume = float(common.volume())
    if volume < 1e-3:
        return None
    low = common.bounding_box()[:3]
    high = common.bounding_box()[3:]
    if min(h - lo for lo, h in zip(low, high, strict=True)) < 1e-4:
        return None
    return volume, Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


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
                found = _pressed_askew(*_key(by_id[joint.first]), *_key(by_id[joint.second]), contact.corners)
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
                touching, lost = _measured(contact, one, two), 0.0
            out.append(Touch(joint.id, contact, area, touching - lost))
    return out


def _mouths(holes: Any, window: Any, axis: int) -> float:
    """Area of the squares around the holes that are drilled at a face [mm2]."""
    found = clipped(holes, window)
    return float(np.delete(found[:, 1] - found[:, 0], axis, axis=1).prod(axis=1).sum())


def _measured(contact: Contact, first: Part, second: Part) -> float:
    return _pressed(*_key(first), *_key(second), contact.box, contact.axis, contact.from_first)


def _key(part: Part) -> tuple[Vec, tuple[Cut, ...], Pose]:
    """What the solid of a part follows from."""
    return part.size, part.cuts, part.pose


@lru_cache(maxsize=65536)
def _pressed(
    size1: Any,
    cuts1: Any,
    pose1: Any,
    size2: Any,
    cuts2: Any,
    pose2: Any,
    face: Box,
    axis: int,
    second_high: bool,
) -> float:
    """Area that touches [mm2]: the second part is pressed a little into the first, within the face only."""
    from boardwright.solids.mesh import placed

    one, two = placed(size1, cuts1, pose1), placed(size2, cuts2, pose2)
    low, high = list(face.low), list(face.high)
    low[axis] -= TOUCH
    high[axis] += TOUCH
    window = box_solid(Box((low[0], low[1], low[2]), (high[0], high[1], high[2])))
    push: list[float] = [0.0, 0.0, 0.0]
    push[axis] = -TOUCH if second_high else TOUCH
    return _pushed(two ^ window, push, one)


@lru_cache(maxsize=16384)
def _pressed_askew(
    size1: Any, cuts1: Any, pose1: Any, size2: Any, cuts2: Any, pose2: Any, corners: tuple[Vec, ...]
) -> float:
    """Area that touches on a face with corners [mm2]: pressed along its normal, in a thin prism over the face only."""
    from boardwright.solids.mesh import placed, sweep_solid

    one, two = placed(size1, cuts1, pose1), placed(size2, cuts2, pose2)
    normal = facet_normal(corners)
    base = tuple(add(p, scaled(normal, -TOUCH)) for p in _inset(corners))
    window = sweep_solid(Sweep(base, scaled(normal, 2 * TOUCH)))
    push = list(scaled(normal, -TOUCH))
    return _pushed(two ^ window, push, one)


def _inset(corners: tuple[Vec, ...]) -> tuple[Vec, ...]:
    """A face a millionth smaller, so that no side of its prism lies in a face of the parts: sloping ones clash."""
    middle = scaled(
        (sum(p[0] for p in corners), sum(p[1] for p in corners), sum(p[2] for p in corners)), 1 / len(corners)
    )
    return tuple(add(middle, scaled(add(p, scaled(middle, -1.0)), 1 - 1e-6)) for p in corners)


def _pushed(piece: Any, push: list[float], one: Any) -> float:
    """Area on which a piece of a part touches another [mm2], by the room they share when it is pushed a little.

    The piece is worked out first: as one sum with the push, faces that lie in each other are taken wrongly.
    """
    piece.num_tri()
    return float((piece.translate(push) ^ one).volume()) / TOUCH


def facet_normal(corners: tuple[Vec, ...]) -> Vec:
    """Unit vector square to a face, from the first part to the second."""
    return Contact(Box(corners[0], corners[0]), 0, True, corners=corners).normal
