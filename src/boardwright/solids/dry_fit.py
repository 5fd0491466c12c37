"""Dry fit: every pair of parts intersected, every joint pressed together, every drawer pulled all its way."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np

from boardwright.core.poses import Box, Vec
from boardwright.piece.records import Contact, Motion, Part, Piece
from boardwright.solids.cells import cells, clashes, clipped, common_volume, drilled, swept
from boardwright.solids.mesh import box_solid, part_solid, shared_volume

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
class Hit:
    """Something that a moving group hits on its way."""

    motion: str
    part: str
    obstacle: str
    opening: float
    """How far it has opened when it hits [mm]."""


@dataclass(frozen=True, slots=True)
class DryFit:
    """What the dry fit found."""

    overlaps: tuple[Overlap, ...]
    touches: tuple[Touch, ...]
    hits: tuple[Hit, ...]


@dataclass(frozen=True, slots=True)
class _Room:
    """The room that a part (its holes filled) or a bought thing takes: boxes as (n, 2, 3) float [mm]."""

    id: str
    group: str
    boxes: Any


def dry_fit(piece: Piece) -> DryFit:
    """Put the piece together dry."""
    rooms = {p.id: _Room(p.id, p.group, cells(p)) for p in piece.parts}
    return DryFit(tuple(_overlaps(piece, rooms)), tuple(_touches(piece, rooms)), tuple(_hits(piece, rooms)))


def _overlaps(piece: Piece, rooms: dict[str, _Room]) -> list[Overlap]:
    parts = piece.parts
    if not parts:
        return []
    bounds = np.array([[p.box.low, p.box.high] for p in parts])
    out = []
    for i, j in clashes(bounds, bounds):
        one, two = parts[i], parts[j]
        if i >= j or not len(clashes(rooms[one.id].boxes, rooms[two.id].boxes)):
            continue
        found = _shared(one.size, one.cuts, one.pose, two.size, two.cuts, two.pose)
        if found is not None:
            out.append(Overlap(one.id, two.id, found[0], found[1]))
    out += _hardware_overlaps(piece, bounds)
    return out


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


def _touches(piece: Piece, rooms: dict[str, _Room]) -> list[Touch]:
    by_id = {p.id: p for p in piece.parts}
    holes = {p.id: drilled(p) for p in piece.parts}
    out = []
    for joint in piece.joints:
        if joint.first not in by_id or joint.second not in by_id:
            continue
        for contact in joint.contacts:
            if contact.gap > 1e-9:
                continue
            sides = [contact.box.size(i) for i in range(3) if i != contact.axis]
            area = sides[0] * sides[1]
            window = np.array([contact.box.low, contact.box.high], dtype=float)
            window[:, contact.axis] += (-TOUCH, TOUCH)
            push = np.zeros(3)
            push[contact.axis] = -TOUCH if contact.from_first else TOUCH
            pressed = clipped(rooms[joint.second].boxes, window) + push
            touching = common_volume(pressed, rooms[joint.first].boxes) / TOUCH
            lost = sum(_mouths(holes[id], window, contact.axis) for id in (joint.first, joint.second))
            if lost and touching - lost < CLEAR * area:
                touching, lost = _measured(contact, by_id[joint.first], by_id[joint.second]), 0.0
            out.append(Touch(joint.id, contact, area, touching - lost))
    return out


def _mouths(holes: Any, window: Any, axis: int) -> float:
    """Area of the squares around the holes that are drilled at a face [mm2]."""
    found = clipped(holes, window)
    return float(np.delete(found[:, 1] - found[:, 0], axis, axis=1).prod(axis=1).sum())


def _measured(contact: Contact, first: Part, second: Part) -> float:
    return _pressed(
        first.size,
        first.cuts,
        first.pose,
        second.size,
        second.cuts,
        second.pose,
        contact.box,
        contact.axis,
        contact.from_first,
    )


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
    return float(((two ^ window).translate(push) ^ one).volume()) / TOUCH


def _hits(piece: Piece, rooms: dict[str, _Room]) -> list[Hit]:
    bought = [_Room(h.id, h.group, np.array([[h.box.low, h.box.high]], dtype=float)) for h in piece.hardware]
    out: list[Hit] = []
    for motion in piece.motions:
        moving = [r for r in rooms.values() if r.group == motion.id]
        still = [r for r in rooms.values() if r.group != motion.id]
        standing = [r for r in bought if r.group != motion.id]
        carried = [r for r in bought if r.group == motion.id]
        for group, obstacles in ((moving, still), (moving, standing), (carried, still)):
            out += _meetings(motion, group, obstacles)
    return out


def _meetings(motion: Motion, moving: list[_Room], standing: list[_Room]) -> list[Hit]:
    """What moving things meet on their way, each pair once, where it first meets."""
    if not moving or not standing:
        return []
    obstacles = np.concatenate([r.boxes for r in standing])
    owner = np.repeat(np.arange(len(standing)), [len(r.boxes) for r in standing])
    out = []
    for thing in moving:
        found: dict[int, float] = {}
        for a, b in clashes(swept(thing.boxes, motion.direction, motion.travel), obstacles):
            at = _meets(thing.boxes[a], obstacles[b], motion.direction)
            k = int(owner[b])
            found[k] = min(found.get(k, at), at)
        out += [Hit(motion.id, thing.id, standing[k].id, at) for k, at in sorted(found.items())]
    return out


def _meets(box: Any, obstacle: Any, direction: Vec) -> float:
    """How far a box has gone along an axis when it first meets an obstacle [mm]."""
    axis = max(range(3), key=lambda i: abs(direction[i]))
    if direction[axis] < 0:
        return max(0.0, float(box[0][axis] - obstacle[1][axis]))
    return max(0.0, float(obstacle[0][axis] - box[1][axis]))
