"""Dry fit: every pair of parts intersected, every joint pressed together, every drawer pulled through its travel."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np

from boardwright.core.poses import Box, Vec
from boardwright.piece.records import Contact, Joint, Motion, Part, Piece
from boardwright.solids.cells import cells, clashes, swept
from boardwright.solids.mesh import box_solid, part_solid, shared_volume

TOUCH = 0.02
"""How far two parts are pressed into each other to measure the area they touch on [mm]."""
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
        area: planned [mm2]. touching: found [mm2].
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


def dry_fit(piece: Piece) -> DryFit:
    """Put the piece together dry."""
    return DryFit(tuple(_overlaps(piece)), tuple(_touches(piece)), tuple(_hits(piece)))


def _corners(parts: tuple[Part, ...]) -> Any:
    return np.array([[p.box.low, p.box.high] for p in parts]).reshape(-1, 2, 3)


def _overlaps(piece: Piece) -> list[Overlap]:
    parts = piece.parts
    if len(parts) < 2:
        return []
    boxes = _corners(parts)
    out = []
    for i, j in clashes(boxes, boxes):
        if i >= j:
            continue
        found = _shared(parts[i].size, parts[i].cuts, parts[i].pose, parts[j].size, parts[j].cuts, parts[j].pose)
        if found is not None:
            out.append(Overlap(parts[i].id, parts[j].id, found[0], found[1]))
    out += _hardware_overlaps(piece, boxes)
    return out


@lru_cache(maxsize=65536)
def _shared(size1: Any, cuts1: Any, pose1: Any, size2: Any, cuts2: Any, pose2: Any) -> tuple[float, Box] | None:
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


def _touches(piece: Piece) -> list[Touch]:
    by_id = {p.id: p for p in piece.parts}
    out = []
    for joint in piece.joints:
        if joint.first not in by_id or joint.second not in by_id:
            continue
        for contact in joint.contacts:
            if contact.gap > 1e-9:
                continue
            out.append(_touch(joint, contact, by_id[joint.first], by_id[joint.second]))
    return out


def _touch(joint: Joint, contact: Contact, first: Part, second: Part) -> Touch:
    sides = [contact.box.size(i) for i in range(3) if i != contact.axis]
    area = sides[0] * sides[1]
    touching = _pressed(
        first.size, first.cuts, first.pose, second.size, second.cuts, second.pose, contact.box, contact.axis,
        contact.from_first,
    )
    return Touch(joint.id, contact, area, touching)


@lru_cache(maxsize=65536)
def _pressed(
    size1: Any, cuts1: Any, pose1: Any, size2: Any, cuts2: Any, pose2: Any, face: Box, axis: int, second_high: bool
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


def _hits(piece: Piece) -> list[Hit]:
    out: list[Hit] = []
    if not piece.motions:
        return out
    things = [(p.id, p.group, cells(p)) for p in piece.parts]
    bought = [(h.id, h.group, np.array([[h.box.low, h.box.high]], dtype=float)) for h in piece.hardware]
    for motion in piece.motions:
        moving = [t for t in things if t[1] == motion.id]
        still = [t for t in things if t[1] != motion.id]
        standing = [t for t in bought if t[1] != motion.id]
        for group, obstacles in ((moving, still), (moving, standing), ([t for t in bought if t[1] == motion.id], still)):
            out += _meetings(motion, group, obstacles)
    return out


_Thing = tuple[str, str, Any]
"""Something that takes room: its id, its group, and the boxes that make it up."""


def _meetings(motion: Motion, moving: list[_Thing], standing: list[_Thing]) -> list[Hit]:
    """What moving things meet on their way, each pair once, where it first meets."""
    if not moving or not standing:
        return []
    obstacles = np.concatenate([boxes for _, _, boxes in standing])
    owner = np.repeat(np.arange(len(standing)), [len(boxes) for _, _, boxes in standing])
    out = []
    for id, _, own in moving:
        found: dict[int, float] = {}
        for a, b in clashes(swept(own, motion.direction, motion.travel), obstacles):
            at = _meets(own[a], obstacles[b], motion.direction)
            k = int(owner[b])
            found[k] = min(found.get(k, at), at)
        out += [Hit(motion.id, id, standing[k][0], at) for k, at in sorted(found.items())]
    return out


def _meets(box: Any, obstacle: Any, direction: Vec) -> float:
    """How far a box has gone along an axis when it first meets an obstacle [mm]."""
    axis = max(range(3), key=lambda i: abs(direction[i]))
    if direction[axis] < 0:
        return max(0.0, float(box[0][axis] - obstacle[1][axis]))
    return max(0.0, float(obstacle[0][axis] - box[1][axis]))
