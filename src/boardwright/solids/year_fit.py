"""The piece at the driest and the wettest time: what meets then that did not meet when it was built.

Boxes tell first, those of all parts at once: only what comes together with the year, and did not meet on the day of
cutting, is tried with the solids.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from boardwright.core.poses import AXES, Box, Pose, Vec, dot, scaled
from boardwright.piece.records import Joint, Moisture, Motion, Part, Piece
from boardwright.solids.cells import cells, every_two
from boardwright.solids.dry_fit import DryFit, Overlap, shared
from boardwright.solids.seasons import Movement, movement, stretched
from boardwright.solids.travel import LEAST, STEP, TURN, Blanks, Hit, is_boxes, near_turns, turned_rows

GIVES = 0.1
"""Wood gives so far at each of its faces before anything binds [mm]: common practice."""
PRESSES = 0.25
"""Two parts of one assembly, or one that rests on another, press on each other by so much more before it is worth a
word [mm]: common practice."""
RESTS = 0.05
"""What lies no farther from a part than this rests on it [mm]."""


@dataclass(frozen=True, slots=True)
class Season:
    """The dry fit at one time of the year.

    Attributes:
        name: `driest` or `wettest`, or of a month.
        percent: moisture of the wood [%].
        fit: what meets there, beyond what meets on the day of cutting; its touches are empty.
    """

    name: str
    percent: float
    fit: DryFit


@dataclass(frozen=True, slots=True)
class Rooms:
    """The boxes of all parts.

    Attributes:
        moves: how the piece moves.
        boxes: on the day of cutting, (n, 2, 3) float [mm]. owner: index of the part of each, (n,) int.
        starts, counts: the boxes of each part, (parts,) int.
        sweeps: how far each part slides, (parts, 3) float [mm].
        groups: number of the moving group of each part, (parts,) int.
    """

    moves: Movement
    boxes: Any
    owner: Any
    starts: Any
    counts: Any
    sweeps: Any
    groups: Any

    def at(self, change: float) -> Any:
        """The boxes when the moisture has changed [%], (n, 2, 3) float [mm]."""
        m = self.moves
        middle, half = self.boxes.mean(axis=1), (self.boxes[:, 1] - self.boxes[:, 0]) / 2
        out = middle - m.middle[self.owner]
        middle = middle + change * (np.einsum("nij,nj->ni", m.strain[self.owner], out) + m.moved[self.owner])
        half = half * (1 + change * np.einsum("nii->ni", m.strain)[self.owner])
        return np.stack([middle - half, middle + half], axis=1)

    def pairs(self, then: Any, but: Any, slide: bool) -> Any:
        """Pairs of boxes of two parts that meet, and did not as cut, (k, 2) int.

        Args:
            then: the boxes at another moisture, (n, 2, 3) float [mm].
            but: pairs of parts to leave out, (parts, parts) bool.
            slide: True to pull the first of each pair along its way past the second.
        """
        one, two = every_two(np.argwhere(self._near(then, slide) & ~but), self.starts, self.counts)
        new = _deep(*(self._rows(then, i, slide and k == 0) for k, i in enumerate((one, two)))) > 2 * GIVES
        one, two = one[new], two[new]
        new = _deep(*(self._rows(self.boxes, i, slide and k == 0) for k, i in enumerate((one, two)))) <= 1e-4
        return np.stack([one[new], two[new]], axis=1)

    def _rows(self, boxes: Any, index: Any, slide: bool) -> Any:
        out = boxes[index]
        return _swept(out, self.sweeps[self.owner[index]]) if slide else out

    def _near(self, boxes: Any, slide: bool) -> Any:
        """Whether the outlines of two parts meet, (parts, parts) bool."""
        if not len(self.starts):
            return np.zeros((0, 0), dtype=bool)
        low = np.minimum.reduceat(boxes[:, 0], self.starts)
        high = np.maximum.reduceat(boxes[:, 1], self.starts)
        whole = np.stack([low, high], axis=1)
        moving = _swept(whole, self.sweeps) if slide else whole
        deep = np.minimum(moving[:, None, 1], whole[None, :, 1]) - np.maximum(
            moving[:, None, 0], whole[None, :, 0]
        )
        meet = (deep > 2 * GIVES).all(axis=2)
        if slide:
            return meet & self.sweeps.any(axis=1)[:, None] & (self.groups[:, None] != self.groups[None])
        return np.triu(meet, 1)


def _deep(one: Any, two: Any) -> Any:
    """How deep boxes lie in others in the direction in which it is least; negative apart, (k,) float [mm]."""
    return (np.minimum(one[:, 1], two[:, 1]) - np.maximum(one[:, 0], two[:, 0])).min(axis=1)


def _swept(boxes: Any, by: Any) -> Any:
    """Boxes stretched over their ways, (n, 2, 3) float [mm]."""
    return np.stack([boxes[:, 0] + np.minimum(by, 0), boxes[:, 1] + np.maximum(by, 0)], axis=1)


def rooms_of(moves: Movement) -> Rooms:
    """Gather the boxes of a piece."""
    parts = moves.piece.parts
    each = [cells(p) for p in parts]
    counts = np.array([len(b) for b in each], dtype=int)
    slides = {m.id: scaled(m.direction, m.travel) for m in moves.piece.motions if not m.turn}
    names = {g: i for i, g in enumerate(sorted({p.group for p in parts}))}
    return Rooms(
        moves,
        np.concatenate(each) if each else np.zeros((0, 2, 3)),
        np.repeat(np.arange(len(parts)), counts),
        np.cumsum(counts) - counts,
        counts,
        np.array([slides.get(p.group, (0.0, 0.0, 0.0)) for p in parts], dtype=float).reshape(-1, 3),
        np.array([names[p.group] for p in parts], dtype=int),
    )


def year_fit(piece: Piece, first: DryFit) -> tuple[Season, ...]:
    """The dry fit at both ends of the year.

    Args:
        piece: as cut.
        first: its dry fit on the day of cutting.
    """
    return seasons(movement(piece), first, ends(piece.moisture))


def ends(m: Moisture) -> list[tuple[str, float]]:
    """The driest and the wettest time with their moisture [%], unless it is that of the day of cutting."""
    return [(n, p) for n, p in (("driest", m.driest), ("wettest", m.wettest)) if abs(p - m.now) > 1e-9]


def seasons(moves: Movement, first: DryFit, times: Iterable[tuple[str, float]]) -> tuple[Season, ...]:
    """The dry fit at some moistures.

    Args:
        moves: how the piece moves.
        first: its dry fit on the day of cutting.
        times: what each time is called, and the moisture of the wood [%].
    """
    rooms = rooms_of(moves)
    piece = moves.piece
    met = {frozenset((o.first, o.second)) for o in first.overlaps}
    met |= {frozenset((j.first, j.second)) for j in piece.joints if _holds(j)}
    hit = {frozenset((h.part, h.obstacle)) for h in first.hits}
    return tuple(
        Season(name, percent, _fit(rooms, percent - piece.moisture.now, met, hit)) for name, percent in times
    )


def _fit(rooms: Rooms, change: float, met: set[frozenset[str]], hit: set[frozenset[str]]) -> DryFit:
    """What meets at a change of moisture, but for pairs that were met or hit as cut."""
    piece, boxes = rooms.moves.piece, rooms.at(change)
    index = {p.id: i for i, p in enumerate(piece.parts)}
    but = np.zeros((len(index), len(index)), dtype=bool)
    _mark(but, met, index)
    rest = rooms.pairs(boxes, but, slide=False)
    _mark(but, hit, index)
    slid = rooms.pairs(boxes, but, slide=True)
    if not len(rest) and not len(slid) and not any(m.turn for m in piece.motions):
        return DryFit((), (), ())
    then = rooms.moves.at(piece.moisture.now + change)
    binds = _overlaps(rooms, then, rest)
    _mark(but, {frozenset((o.first, o.second)) for o in binds}, index)
    ways = [*_slides(rooms, then, boxes, slid), *_turns(piece, then)]
    free = [h for h in ways if not but[index[h.part], index[h.obstacle]]]
    return DryFit(tuple(binds), (), tuple(free))


def _mark(table: Any, pairs: set[frozenset[str]], index: dict[str, int]) -> None:
    """Set the two places of each pair of parts."""
    for pair in pairs:
        rows = [index[id] for id in pair if id in index]
        if len(rows) == 2:
            table[rows[0], rows[1]] = table[rows[1], rows[0]] = True


def _overlaps(rooms: Rooms, then: Piece, pairs: Any) -> list[Overlap]:
    """What presses on each other at rest."""
    planned = _planned(then.joints) if len(pairs) else set()
    out = []
    for i, j in _parts(rooms, pairs):
        one, two = then.parts[i], then.parts[j]
        found = shared(one, two)
        if found is None:
            continue
        axis = min(range(3), key=lambda k: found[1].size(k))
        deep = found[1].size(axis) - 2 * GIVES
        if (frozenset((one.id, two.id)), axis) in planned:
            continue
        before = [rooms.moves.piece.parts[k].box for k in (i, j)]
        rests = one.group == two.group or abs(_apart(before[0], before[1], axis)) < RESTS
        if deep > (PRESSES if rests else 0.0):
            out.append(Overlap(one.id, two.id, found[0], found[1]))
    return out


def _apart(one: Box, two: Box, axis: int) -> float:
    """From one box to another along an axis, negative where they overlap [mm]."""
    return max(one.low[axis], two.low[axis]) - min(one.high[axis], two.high[axis])


def _slides(rooms: Rooms, then: Piece, boxes: Any, pairs: Any) -> Iterator[Hit]:
    """What a drawer or tray meets on its way, doors and lids open."""
    motions = {m.id: m for m in then.motions}
    doors = {m.id for m in then.motions if m.turn}
    for i, j in _parts(rooms, pairs):
        one, two = then.parts[i], then.parts[j]
        if two.group in doors:
            continue
        motion = motions[one.group]
        own = pairs[(rooms.owner[pairs] == (i, j)).all(axis=1)]
        deep = _deep(_swept(boxes[own[:, 0]], rooms.sweeps[i]), boxes[own[:, 1]]).max() - 2 * GIVES
        before = [rooms.moves.piece.parts[k].box for k in (i, j)]
        across = [k for k in range(3) if abs(motion.direction[k]) < 0.1]
        if deep < PRESSES and any(abs(_apart(before[0], before[1], k)) < RESTS for k in across):
            continue
        at: float | None = min(_meets(boxes[a], boxes[b], motion.direction) for a, b in own)
        if not (is_boxes(rooms.moves.piece.parts[i]) and is_boxes(rooms.moves.piece.parts[j])):
            at = _first(_given(one), _given(two), motion, at or 0.0)
        if at is not None:
            yield Hit(motion.id, one.id, two.id, at)


def _parts(rooms: Rooms, pairs: Any) -> list[tuple[int, int]]:
    """The pairs of parts of pairs of boxes, in order."""
    return sorted({(int(a), int(b)) for a, b in rooms.owner[pairs]})


def _meets(box: Any, obstacle: Any, direction: Vec) -> float:
    """How far a box has gone when it first meets an obstacle [mm]."""
    axis = max(range(3), key=lambda i: abs(direction[i]))
    way = box[0][axis] - obstacle[1][axis] if direction[axis] < 0 else obstacle[0][axis] - box[1][axis]
    return max(0.0, float(way))


def _first(one: Part, two: Part, motion: Motion, start: float) -> float | None:
    """How far a solid has gone when it first shares room with another [mm]; None when it never does."""
    from boardwright.solids.mesh import part_solid

    moving, standing = part_solid(one), part_solid(two)
    count = max(1, int(np.ceil((motion.travel - start) / STEP)))
    for i in range(count + 1):
        at = start + (motion.travel - start) * i / count
        if (moving.translate(list(scaled(motion.direction, at))) ^ standing).volume() > LEAST:
            return at
    return None


def _turns(piece: Piece, then: Piece) -> Iterator[Hit]:
    """What a door or lid meets while it turns: blanks first, at angles at which they did not meet as cut."""
    from boardwright.solids.mesh import part_solid

    doors = any(m.turn for m in piece.motions)
    blanks = [_blank(_given(p)) for p in then.parts] if doors else []
    for before, motion in zip(piece.motions, then.motions, strict=True):
        if not motion.turn:
            continue
        angles = np.linspace(0.0, motion.turn, max(1, int(np.ceil(motion.turn / TURN))) + 1)
        first, last = (
            np.array([turned_rows(m.direction, m.pivot, a) for a in angles]) for m in (before, motion)
        )
        still = [i for i, p in enumerate(piece.parts) if p.group != motion.id]
        last_blanks = Blanks.of([blanks[i] for i in still])
        first_blanks = Blanks.of([piece.parts[i] for i in still])
        for i, part in enumerate(piece.parts):
            if part.group != motion.id:
                continue
            new = near_turns(blanks[i], last_blanks, last)
            rows = np.flatnonzero(new.any(axis=1))
            if not len(rows):
                continue
            new[rows] &= ~near_turns(part, first_blanks.some(rows), first)
            for k, t in _firsts(new):
                if _presses(piece, then, i, still[k]):
                    continue
                one, two = (part_solid(_given(then.parts[n])) for n in (i, still[k]))
                if (one.transform(last[t].tolist()) ^ two).volume() > LEAST:
                    yield Hit(motion.id, part.id, piece.parts[still[k]].id, float(angles[t]))


def _presses(piece: Piece, then: Piece, i: int, j: int) -> bool:
    """True when a door or lid, closed, presses no harder than wood gives on what it rests on."""
    shared = then.parts[i].box.overlap(then.parts[j].box)
    if shared is None:
        return False
    axis = min(range(3), key=shared.size)
    rests = abs(_apart(piece.parts[i].box, piece.parts[j].box, axis)) < RESTS
    return rests and shared.size(axis) - 2 * GIVES < PRESSES


def _firsts(new: Any) -> Iterator[tuple[int, int]]:
    """Of each row the first column that is true."""
    for k in np.flatnonzero(new.any(axis=1)):
        yield int(k), int(new[k].argmax())


def _planned(joints: Sequence[Joint]) -> set[tuple[frozenset[str], int]]:
    """Pairs of parts and the piece axes along which they touch by plan."""
    return {
        (frozenset((j.first, j.second)), axis)
        for j in joints
        for c in j.contacts
        if c.gap < 1e-9
        for axis in range(3)
        if abs(dot(AXES[axis], c.normal)) > 0.5
    }


def _holds(joint: Joint) -> bool:
    """True when a joint holds its parts in every direction: they press on each other, and the glue takes it."""
    return joint.glued or not joint.floats


def _lengths(pose: Pose) -> Vec:
    """Lengths of the axes of a pose, 1 as cut."""
    x, y, z = (dot(a, a) ** 0.5 for a in (pose.x, pose.y, pose.z))
    return (x, y, z)


def _given(part: Part) -> Part:
    """A part less what it gives at each face."""
    by = [
        max(1 - 2 * GIVES / (size * f), 0.5) for size, f in zip(part.size, _lengths(part.pose), strict=True)
    ]
    return stretched(part, (by[0], by[1], by[2]))


def _blank(part: Part) -> Part:
    """The blank of a part whose axes carry what it has swollen, with its own size and axes of one."""
    f = _lengths(part.pose)
    x, y, z = (scaled(a, 1 / by) for a, by in zip((part.pose.x, part.pose.y, part.pose.z), f, strict=True))
    size = (part.size[0] * f[0], part.size[1] * f[1], part.size[2] * f[2])
    return replace(part, size=size, cuts=(), pose=Pose(part.pose.origin, x, y, z))
