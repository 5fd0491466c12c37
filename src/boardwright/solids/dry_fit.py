"""Dry fit: every pair of parts intersected, every joint pressed together, every drawer pulled all its way."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np

from boardwright.core.poses import Box, Pose
from boardwright.piece.records import Contact, Part, Piece
from boardwright.solids.bodies import Bodies
from boardwright.solids.cells import PLAY, Stack, cells, clashes, drilled
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
    stack = Stack.of(list(rooms.values()))
    return DryFit(tuple(_overlaps(piece, stack)), tuple(_touches(piece, stack)), tuple(hits(piece, rooms)))


def _overlaps(piece: Piece, rooms: Stack) -> list[Overlap]:
    """Pairs of parts, and of a bought thing and a part, in one place; `rooms` are the boxes of all parts."""
    parts = piece.parts
    if not parts:
        return []
    bounds = np.array([[p.box.low, p.box.high] for p in parts])
    out = []
    near = clashes(bounds, bounds)
    near = near[near[:, 0] < near[:, 1]]
    of, one_box = rooms.of_each(near[:, 0])
    more, two_box = rooms.of_each(near[of, 1])
    deep = np.minimum(one_box[more, 1], two_box[:, 1]) - np.maximum(one_box[more, 0], two_box[:, 0])
    met = (deep > PLAY).all(axis=1)
    near = near[np.unique(of[more][met])]
    for i, j in _sharing(parts, near.tolist()):
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


def _touches(piece: Piece, rooms: Stack) -> list[Touch]:
    """How much of each face of a joint touches: by boxes, and by sections where boxes cannot tell."""
    index = {p.id: i for i, p in enumerate(piece.parts)}
    asked = [
        (j, index[j.first], index[j.second], c)
        for j in piece.joints
        if j.first in index and j.second in index
        for c in j.contacts
        if c.gap <= 1e-9
    ]
    flat = [(one, two, c) for _, one, two, c in asked if not c.corners]
    holes = Stack.of([drilled(p) for p in piece.parts])
    told = iter(zip(*_by_boxes(flat, rooms, holes), strict=True))
    out = []
    for joint, i, j, contact in asked:
        one, two, area = piece.parts[i], piece.parts[j], contact.area
        touching, lost = (0.0, area) if contact.corners else next(told)
        if lost and (touching - lost < CLEAR * area or not (is_boxes(one) and is_boxes(two))):
            touching, lost = touching_area(contact, one, two), 0.0
        out.append(Touch(joint.id, contact, area, touching - lost))
    return out


def _by_boxes(faces: Sequence[tuple[int, int, Contact]], rooms: Stack, holes: Stack) -> tuple[Any, Any]:
    """Area that touches within faces square to an axis, and that of squares around holes there, both lists [mm2].

    Args:
        faces: numbers of the part behind each and of the one its normal points at, and the face.
        rooms: the boxes of all parts.
        holes: boxes around what is drilled into them.
    """
    rows, axis = np.arange(len(faces)), np.array([c.axis for *_, c in faces], dtype=int)
    owners = np.array([(i, j) for i, j, _ in faces], dtype=int).reshape(-1, 2)
    windows = np.array([[c.box.low, c.box.high] for *_, c in faces], dtype=float).reshape(-1, 2, 3)
    windows[rows, 0, axis] -= TOUCH
    windows[rows, 1, axis] += TOUCH
    push = np.zeros((len(faces), 3))
    push[rows, axis] = [-TOUCH if c.from_first else TOUCH for *_, c in faces]
    face, boxes = _within(windows, owners[:, 1], rooms)
    pressed = boxes + push[face][:, None]
    of, behind = rooms.of_each(owners[face, 0])
    deep = np.minimum(pressed[of, 1], behind[:, 1]) - np.maximum(pressed[of, 0], behind[:, 0])
    shared = deep.clip(min=0.0).prod(axis=1)
    touching = np.bincount(face[of], weights=shared, minlength=len(faces)) / TOUCH
    lost = np.zeros(len(faces))
    for part in owners.T:
        face, boxes = _within(windows, part, holes)
        sizes = boxes[:, 1] - boxes[:, 0]
        sizes[np.arange(len(face)), axis[face]] = 1.0
        lost += np.bincount(face, weights=sizes.prod(axis=1), minlength=len(faces))
    return touching.tolist(), lost.tolist()


def _within(windows: Any, owners: Any, stack: Stack) -> tuple[Any, Any]:
    """What of the boxes of each part lies inside its window: number of the window, and the box there."""
    of, boxes = stack.of_each(owners)
    low = np.maximum(boxes[:, 0], windows[of, 0])
    high = np.minimum(boxes[:, 1], windows[of, 1])
    inside = (high > low).all(axis=1)
    return of[inside], np.stack([low[inside], high[inside]], axis=1)
