"""What moving things meet on their way: drawers and trays pulled out, doors and lids turned.

What slides is tested over its whole way at once, by the room its boxes sweep; where a part is more than boxes, the
solids decide, at places so near each other that nothing in furniture slips between.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

import numpy as np

from boardwright.core.poses import AXES, Box, Pose, Vec, add, cross, dot, rounded, scaled
from boardwright.piece.cuts import Hole
from boardwright.piece.records import Motion, Part, Piece
from boardwright.solids.cells import cells, clashes, swept
from boardwright.solids.frames import Form, form_of, relative, square
from boardwright.solids.once import once
from boardwright.solids.taken import taken

STEP = 3.0
"""Between two places at which solids are tried on a straight way [mm]."""
TURN = 3.0
"""Between two places of a door or lid at which solids are tried [degrees]."""
LEAST = 0.05
"""Room that two solids must share to have met [mm3]."""


@dataclass(frozen=True, slots=True)
class Hit:
    """Something that a moving group hits on its way.

    Attributes:
        motion, part, obstacle: ids.
        opening: how far it has opened when it hits [mm], or [degrees] for what turns.
    """

    motion: str
    part: str
    obstacle: str
    opening: float


@dataclass(frozen=True, slots=True)
class _Room:
    """The room that a part (its holes filled) or a bought thing takes: boxes as (n, 2, 3) float [mm].

    `part` is given where its boxes are more than the part itself.
    """

    id: str
    group: str
    boxes: Any
    part: Part | None


def hits(piece: Piece, rooms: dict[str, Any]) -> list[Hit]:
    """Every pair of a moving and another thing that meets, each once, where it first meets.

    Args:
        piece: the piece, shut.
        rooms: boxes of every part by its id, as (n, 2, 3) float [mm].
    """
    if not piece.motions:
        return []
    parts = [_Room(p.id, p.group, rooms[p.id], None if is_boxes(p) else p) for p in piece.parts]
    bought = [
        _Room(h.id, h.group, np.array([[h.box.low, h.box.high]], dtype=float), None) for h in piece.hardware
    ]
    by_id = {p.id: p for p in piece.parts}
    out: list[Hit] = []
    for motion in piece.motions:
        moving = [r for r in parts if r.group == motion.id]
        still = [r for r in parts if r.group != motion.id]
        if motion.turn:
            out += _turning(motion, [by_id[r.id] for r in moving], [by_id[r.id] for r in still])
            continue
        standing = [r for r in bought if r.group != motion.id]
        carried = [r for r in bought if r.group == motion.id]
        met: list[Hit] = []
        for group, obstacles in ((moving, still), (moving, standing), (carried, still)):
            met += _meetings(motion, group, obstacles, by_id)
        out += _past_doors(piece, motion, moving, met)
    return out


def _past_doors(piece: Piece, motion: Motion, moving: list[_Room], met: list[Hit]) -> list[Hit]:
    """What a sliding thing meets when the doors and lids that are in its way are open."""
    groups = {p.id: p.group for p in piece.parts} | {h.id: h.group for h in piece.hardware}
    doors = [m for m in piece.motions if m.turn and any(groups.get(h.obstacle) == m.id for h in met)]
    ids = {m.id for m in doors}
    out = [h for h in met if groups.get(h.obstacle) not in ids]
    for door in doors:
        turned = [opened(p, door) for p in piece.parts if p.group == door.id]
        by_id = {p.id: p for p in (*piece.parts, *turned)}
        rooms = [_Room(p.id, p.group, cells(p), None if is_boxes(p) else p) for p in turned]
        out += _meetings(motion, moving, rooms, by_id)
    return out


def opened(part: Part, motion: Motion) -> Part:
    """A part of a door or lid, open."""
    rows = turned_rows(motion.direction, motion.pivot, motion.turn)
    x, y, z, at = (tuple(_clean(row[i]) for row in rows) for i in range(4))
    outer = Pose((at[0], at[1], at[2]), (x[0], x[1], x[2]), (y[0], y[1], y[2]), (z[0], z[1], z[2]))
    return replace(part, pose=part.pose.then(outer))


def _clean(value: float) -> float:
    """A number without the noise of a quarter turn."""
    return round(value, 12) + 0.0


@once()
def is_boxes(part: Part) -> bool:
    """True when the boxes of a part are the part, but for its holes."""
    return _boxes(form_of(part)) and all(
        max(abs(v) for v in a) > 1 - 1e-9 for a in (part.pose.x, part.pose.y, part.pose.z)
    )


@lru_cache(maxsize=8192)
def _boxes(form: Form) -> bool:
    return all(isinstance(b, Box) for c in form.cuts if not isinstance(c, Hole) for b in taken(c, form.size))


def _meetings(
    motion: Motion, moving: list[_Room], standing: list[_Room], by_id: dict[str, Part]
) -> list[Hit]:
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
        for k, at in sorted(found.items()):
            other = standing[k]
            if (thing.part or other.part) and thing.id in by_id and other.id in by_id:
                exact = _first_meeting(*_pair(by_id[thing.id], by_id[other.id], motion), motion.travel, at)
                if exact is None:
                    continue
                at = exact
            out.append(Hit(motion.id, thing.id, other.id, at))
    return out


def _pair(part: Part, other: Part, motion: Motion) -> tuple[Form, Pose, Form, Pose, Vec]:
    """Two forms with their places, and the way in which the first opens, in the frame of the first."""
    frame = square(part.pose)
    way = rounded(frame.inverse_direction(motion.direction), 9)
    return form_of(part), relative(frame, part.pose), form_of(other), relative(frame, other.pose), way


def _meets(box: Any, obstacle: Any, direction: Vec) -> float:
    """How far a box has gone along an axis when it first meets an obstacle [mm]."""
    axis = max(range(3), key=lambda i: abs(direction[i]))
    if direction[axis] < 0:
        return max(0.0, float(box[0][axis] - obstacle[1][axis]))
    return max(0.0, float(obstacle[0][axis] - box[1][axis]))


@lru_cache(maxsize=16384)
def _first_meeting(
    moving: Form, own: Pose, standing: Form, place: Pose, direction: Vec, travel: float, start: float
) -> float | None:
    """How far a solid has gone when it first shares room with another [mm]; None when it never does.

    The places of both and the direction are those in the frame of the first.
    """
    from boardwright.solids.mesh import seen

    one, two = seen(moving, own), seen(standing, place)
    count = max(1, math.ceil((travel - start) / STEP))
    for i in range(count + 1):
        at = start + (travel - start) * i / count
        if (one.translate(list(scaled(direction, at))) ^ two).volume() > LEAST:
            return at
    return None


def _turning(motion: Motion, moving: list[Part], still: list[Part]) -> list[Hit]:
    """What a door or lid meets, first meeting of each pair."""
    count = max(1, math.ceil(motion.turn / TURN))
    angles = [motion.turn * i / count for i in range(count + 1)]
    turns = np.array([turned_rows(motion.direction, motion.pivot, angle) for angle in angles])
    blanks = Blanks.of(still)
    out: list[Hit] = []
    for part in moving:
        near = near_turns(part, blanks, turns)
        rows = np.flatnonzero(near.any(axis=1))
        pivot = rounded(square(part.pose).inverse_point(motion.pivot), 9) if len(rows) else motion.pivot
        for k in rows:
            tried = tuple(angles[i] for i in np.flatnonzero(near[k]))
            at = _first_turn(*_pair(part, still[k], motion), pivot, tried)
            if at is not None:
                out.append(Hit(motion.id, part.id, still[k].id, at))
    return out


@dataclass(frozen=True, slots=True, eq=False)
class Blanks:
    """The blanks of several parts.

    Attributes:
        frames: their axes, (n, 3, 3) float. sizes: along these, (n, 3) float [mm].
        corners: in the piece, (n, 8, 3) float [mm].
        askew: whether it stands askew to the piece, (n,) bool.
    """

    frames: Any
    sizes: Any
    corners: Any
    askew: Any

    @staticmethod
    def of(parts: Sequence[Part]) -> Blanks:
        """Those of parts, in their order."""
        frames = np.array([[p.pose.x, p.pose.y, p.pose.z] for p in parts], dtype=float).reshape(-1, 3, 3)
        sizes = np.array([p.size for p in parts], dtype=float).reshape(-1, 3)
        origins = np.array([p.pose.origin for p in parts], dtype=float).reshape(-1, 3)
        corners = origins[:, None] + (_ENDS * sizes[:, None]) @ frames
        return Blanks(frames, sizes, corners, (np.abs(frames).max(axis=2) < 1 - 1e-9).any(axis=1))

    def some(self, rows: Any) -> Blanks:
        """Those of some of the parts, by their numbers."""
        return Blanks(self.frames[rows], self.sizes[rows], self.corners[rows], self.askew[rows])


_ENDS = np.array([[i >> k & 1 for k in range(3)] for i in range(8)], dtype=float)


def near_turns(part: Part, still: Blanks, turns: Any) -> Any:
    """Whether the blank of a part, turned, reaches into others by the sides of both, (others, turns) bool."""
    own = np.array([part.pose.x, part.pose.y, part.pose.z]) @ turns[:, :, :3].transpose(0, 2, 1)
    at = turns[:, :, :3] @ np.array(part.pose.origin) + turns[:, :, 3]
    corners = at[:, None] + (_ENDS * part.size) @ own
    low, high = still.corners.min(axis=1), still.corners.max(axis=1)
    swept = (corners.min(axis=(0, 1)) < high) & (corners.max(axis=(0, 1)) > low)
    rows = np.flatnonzero(swept.all(axis=1) | still.askew)
    out = np.zeros((len(still.sizes), len(turns)), dtype=bool)
    if not len(rows):
        return out
    frames, sizes, others = still.frames[rows], still.sizes[rows], still.corners[rows]
    seen = np.einsum("tcj,pkj->ptkc", corners, frames) - (others[:, :1] * frames).sum(2)[:, None, :, None]
    back = np.einsum("pcj,tkj->ptkc", others, own) - (at[:, None] * own).sum(2)[None, :, :, None]
    met: Any = np.ones((len(rows), len(turns)), dtype=bool)
    for found, size in ((seen, sizes[:, None]), (back, np.array(part.size))):
        met &= (np.minimum(found.max(3), size) - np.maximum(found.min(3), 0.0) > 1e-9).all(2)
    out[rows] = met
    return out


@lru_cache(maxsize=16384)
def _first_turn(
    moving: Form, own: Pose, standing: Form, place: Pose, axis: Vec, pivot: Vec, angles: tuple[float, ...]
) -> float | None:
    """The first of some angles at which a turned solid meets another, both at places in its frame."""
    from boardwright.solids.mesh import seen

    one, two = seen(moving, own), seen(standing, place)
    for angle in angles:
        if (one.transform(turned_rows(axis, pivot, angle)) ^ two).volume() > LEAST:
            return angle
    return None


def turned_rows(axis: Vec, pivot: Vec, angle: float) -> list[list[float]]:
    """The 3 x 4 matrix that turns round an axis through a point, counter-clockwise as seen against the axis.

    Args:
        axis: unit vector.
        pivot: a point of the axis [mm].
        angle: [degrees].
    """
    c, s = math.cos(math.radians(angle)), math.sin(math.radians(angle))

    def turned(v: Vec) -> Vec:
        side = cross(axis, v)
        along = scaled(axis, dot(axis, v) * (1 - c))
        return add(add(scaled(v, c), scaled(side, s)), along)

    x, y, z = (turned(a) for a in AXES)
    origin = add(pivot, scaled(turned(pivot), -1.0))
    return Pose(origin, x, y, z).rows()
