"""What moving things meet on their way: drawers and trays pulled out, doors and lids turned.

What slides is tested over its whole way at once, by the room its boxes sweep; where a part is more than boxes, the
solids decide, at places so near each other that nothing in furniture slips between.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import product
from typing import Any

import numpy as np

from boardwright.core.poses import AXES, Box, Pose, Vec, add, cross, dot, scaled
from boardwright.piece.cuts import Cut, Hole
from boardwright.piece.records import Motion, Part, Piece
from boardwright.solids.cells import cells, clashes, swept
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


def is_boxes(part: Part) -> bool:
    """True when the boxes of a part are the part, but for its holes."""
    return _boxes(part.size, part.cuts) and all(
        sum(sorted(abs(v) for v in a)[:2]) < 1e-5 for a in (part.pose.x, part.pose.y, part.pose.z)
    )


@lru_cache(maxsize=4096)
def _boxes(size: Vec, cuts: tuple[Cut, ...]) -> bool:
    return all(isinstance(b, Box) for c in cuts if not isinstance(c, Hole) for b in taken(c, size))


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
                exact = _first_meeting(
                    _key(by_id[thing.id]), _key(by_id[other.id]), motion.direction, motion.travel, at
                )
                if exact is None:
                    continue
                at = exact
            out.append(Hit(motion.id, thing.id, other.id, at))
    return out


def _meets(box: Any, obstacle: Any, direction: Vec) -> float:
    """How far a box has gone along an axis when it first meets an obstacle [mm]."""
    axis = max(range(3), key=lambda i: abs(direction[i]))
    if direction[axis] < 0:
        return max(0.0, float(box[0][axis] - obstacle[1][axis]))
    return max(0.0, float(obstacle[0][axis] - box[1][axis]))


Key = tuple[Vec, tuple[Cut, ...], Pose]


def _key(part: Part) -> Key:
    return part.size, part.cuts, part.pose


@lru_cache(maxsize=16384)
def _first_meeting(moving: Key, standing: Key, direction: Vec, travel: float, start: float) -> float | None:
    """How far a solid has gone when it first shares room with another [mm]; None when it never does."""
    from boardwright.solids.mesh import placed

    one, two = placed(*moving), placed(*standing)
    count = max(1, math.ceil((travel - start) / STEP))
    for i in range(count + 1):
        at = start + (travel - start) * i / count
        if (one.translate(list(scaled(direction, at))) ^ two).volume() > LEAST:
            return at
    return None


def _turning(motion: Motion, moving: list[Part], still: list[Part]) -> list[Hit]:
    """What a door or lid meets, first meeting of each pair."""
    out: list[Hit] = []
    for part in moving:
        for other in still:
            at = _first_turn(_key(part), _key(other), motion.direction, motion.pivot, motion.turn)
            if at is not None:
                out.append(Hit(motion.id, part.id, other.id, at))
    return out


@lru_cache(maxsize=16384)
def _first_turn(moving: Key, standing: Key, axis: Vec, pivot: Vec, turn: float) -> float | None:
    from boardwright.solids.mesh import placed

    count = max(1, math.ceil(turn / TURN))
    for i in _near(moving, standing, axis, pivot, turn, count):
        one, two = placed(*moving), placed(*standing)
        angle = turn * i / count
        if (one.transform(turned_rows(axis, pivot, angle)) ^ two).volume() > LEAST:
            return angle
    return None


def _near(moving: Key, standing: Key, axis: Vec, pivot: Vec, turn: float, count: int) -> list[int]:
    """Of the places of a turn, those at which the bounds of a blank come to those of another."""
    two = _corners(standing)
    rows = _all_rows(axis, pivot, turn, count)
    turned = _corners(moving) @ rows[:, :, :3].transpose(0, 2, 1) + rows[:, None, :, 3]
    apart = (turned.min(axis=1) > two.max(axis=0)) | (turned.max(axis=1) < two.min(axis=0))
    return [int(i) for i in np.flatnonzero(~apart.any(axis=1))]


def _corners(key: Key) -> Any:
    """The corners of a blank in its place, as (8, 3) float [mm]."""
    size, _, pose = key
    rows = np.array(pose.rows())
    return np.array(list(product(*((0.0, s) for s in size)))) @ rows[:, :3].T + rows[:, 3]


@lru_cache(maxsize=256)
def _all_rows(axis: Vec, pivot: Vec, turn: float, count: int) -> Any:
    """The matrices of all places of a turn, as (count + 1, 3, 4) float."""
    return np.array([turned_rows(axis, pivot, turn * i / count) for i in range(count + 1)])


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
