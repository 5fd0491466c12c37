"""The piece at another moisture: every part swollen or shrunk, and set where its joints then hold it.

A part changes along its own three axes; its cuts change with it, so its pose carries the change: the axes of such a
pose are a little longer or shorter than one. Where joints hold parts that move differently, each gives way alike (the
least sum of squares over all joints); what floats stays centred in what holds it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from boardwright.core.poses import AXES, Box, Pose, Vec, add, dot, scaled
from boardwright.piece.records import Fastener, Joint, Motion, Part, Piece

HELD, RESTS, FLOATS, STANDS = 1.0, 1e-2, 1e-3, 1e-6
"""Weights of what sets a part: a face or glue that holds it, what it runs on, what it floats in, where it stood."""


ON = 0.5
"""A drawer stands on those of its parts whose feet are no higher over what is under them than the lowest and this
[mm]."""


@dataclass(frozen=True, slots=True)
class _Tie:
    """Two points of two parts that stay together along a direction, with a weight; -1 for the ground."""

    one: int
    two: int
    at: Vec
    way: Vec
    weight: float


@dataclass(frozen=True, slots=True)
class Movement:
    """How a piece moves for each per cent of moisture.

    Attributes:
        piece: as cut.
        strain: of each part round its middle, (n, 3, 3) float [1/%].
        middle: where the middle of each part is, (n, 3) float [mm].
        moved: how far each middle moves, (n, 3) float [mm/%].
    """

    piece: Piece
    strain: Any
    middle: Any
    moved: Any

    def at(self, percent: float) -> Piece:
        """The same parts at a moisture [%], in other poses: their axes carry what they have swollen or shrunk."""
        change = percent - self.piece.moisture.now
        if not self.piece.parts or abs(change) < 1e-9:
            return self.piece
        parts = tuple(replace(p, pose=self._pose(i, p, change)) for i, p in enumerate(self.piece.parts))
        return replace(
            self.piece, parts=parts, motions=tuple(self._hinged(m, change) for m in self.piece.motions)
        )

    def shift(self, part: int, at: Vec, change: float) -> Any:
        """How far a point of a part moves for a change of moisture [%], (3,) float [mm]."""
        return change * (self.strain[part] @ (np.array(at) - self.middle[part]) + self.moved[part])

    def _pose(self, i: int, part: Part, change: float) -> Pose:
        own = part.pose
        x, y, z = (_vec(np.array(a) + change * self.strain[i] @ np.array(a)) for a in (own.x, own.y, own.z))
        return Pose(_vec(np.array(own.origin) + self.shift(i, own.origin, change)), x, y, z)

    def _hinged(self, motion: Motion, change: float) -> Motion:
        """A door or lid whose hinges move with the part they are let into."""
        groups = [p.group for p in self.piece.parts]
        still = _still(self.piece, groups, motion)
        if not motion.turn or not still:
            return motion
        near = _nearest(self.piece, still, _hinge(self.piece, groups, motion))
        return replace(motion, pivot=add(motion.pivot, _vec(self.shift(near, motion.pivot, change))))


def movement(piece: Piece) -> Movement:
    """Find how a piece moves: least squares over all ties."""
    axes = np.array([[p.pose.x, p.pose.y, p.pose.z] for p in piece.parts]).reshape(-1, 3, 3)
    rates = np.array([p.stock.rates for p in piece.parts]).reshape(-1, 3)
    strain = np.einsum("nk,nki,nkj->nij", rates, axes, axes)
    middle = np.array([p.pose.point(scaled(p.size, 0.5)) for p in piece.parts]).reshape(-1, 3)
    return Movement(piece, strain, middle, _moved(list(_ties(piece)), strain, middle))


def at_moisture(piece: Piece, percent: float) -> Piece:
    """The piece when all its wood has settled at a moisture.

    Args:
        piece: as cut, at `piece.moisture.now`.
        percent: moisture content [%].

    Returns:
        The same parts in other poses: their axes carry what they have swollen or shrunk.
    """
    return movement(piece).at(percent)


def grown(part: Part, percent: float, now: float) -> Vec:
    """Length, width and thickness of a part at a moisture [mm]; `now` is the moisture it was cut at."""
    by = [1 + rate * (percent - now) for rate in part.stock.rates]
    return (part.size[0] * by[0], part.size[1] * by[1], part.size[2] * by[2])


def stretched(part: Part, by: Vec) -> Part:
    """A part made longer, wider and thicker round its own middle by factors."""
    own = (part.pose.x, part.pose.y, part.pose.z)
    x, y, z = (scaled(a, f) for a, f in zip(own, by, strict=True))
    origin = part.pose.origin
    for axis, size, factor in zip(own, part.size, by, strict=True):
        origin = add(origin, scaled(axis, size * (1 - factor) / 2))
    return replace(part, pose=Pose(origin, x, y, z))


def _vec(a: Any) -> Vec:
    return (float(a[0]), float(a[1]), float(a[2]))


def _moved(ties: list[_Tie], strain: Any, middle: Any) -> Any:
    """How far the middle of each part moves, (n, 3) float [mm/%]."""
    n = len(middle)
    if not n:
        return np.zeros((0, 3))
    at, way = np.array([t.at for t in ties]), np.array([t.way for t in ties])
    weight = np.array([t.weight for t in ties])
    ends = np.array([[t.one, t.two] for t in ties]) % (n + 1)
    strain = np.concatenate([strain, np.zeros((1, 3, 3))])
    middle = np.concatenate([middle, np.zeros((1, 3))])
    one, two = ((strain[e] @ (at - middle[e])[:, :, None])[:, :, 0] for e in ends.T)
    pull = (weight * ((one - two) * way).sum(axis=1))[:, None] * way
    block = weight[:, None, None] * way[:, :, None] * way[:, None, :]
    normal, right = np.zeros((n + 1, n + 1, 3, 3)), np.zeros((n + 1, 3))
    for i, a in ((0, 1.0), (1, -1.0)):
        np.add.at(right, ends[:, i], -a * pull)
        for j, b in ((0, 1.0), (1, -1.0)):
            np.add.at(normal, (ends[:, i], ends[:, j]), a * b * block)
    return _settled(normal[:n, :n], right[:n])


def _settled(normal: Any, right: Any) -> Any:
    """Solve the sums of squares, part by part: always the part with the fewest ties to those that are left.

    (A solver of all numbers at once would start threads, and waiting for each other costs them far more than this.)

    Args:
        normal: the matrix, a block for each two parts, (n, n, 3, 3) float; it is used up.
        right: the right side, (n, 3) float; likewise.
    """
    ties = [set(np.flatnonzero(row).tolist()) - {i} for i, row in enumerate(normal.any(axis=(2, 3)))]
    left = set(range(len(right)))
    gone = []
    while left:
        i = min(left, key=lambda k: (len(ties[k]), k))
        left.remove(i)
        near = sorted(ties[i])
        inverse = np.linalg.inv(normal[i, i])
        alone, gives = inverse @ right[i], inverse @ normal[i, near]
        across = normal[near, i]
        normal[np.ix_(near, near)] -= across[:, None] @ gives[None]
        right[near] -= across @ alone
        gone.append((i, near, gives, alone))
        for j in near:
            ties[j] = (ties[j] | ties[i]) - {i, j}
    out = np.zeros(right.shape)
    for i, near, gives, alone in reversed(gone):
        out[i] = alone - (gives @ out[near][:, :, None]).sum(axis=0)[:, 0]
    return out


def _ties(piece: Piece) -> Iterator[_Tie]:
    index = {p.id: i for i, p in enumerate(piece.parts)}
    screws = {f.id: f for f in piece.fasteners}
    sliding = {m.id: m for m in piece.motions if not m.turn}
    groups = [p.group for p in piece.parts]
    for i, part in enumerate(piece.parts):
        middle = part.pose.point(scaled(part.size, 0.5))
        yield from (_Tie(i, -1, middle, a, STANDS) for a in AXES)
    hung: set[str] = set()
    for joint in piece.joints:
        if joint.first not in index or joint.second not in index or not joint.contacts:
            continue
        one, two = index[joint.first], index[joint.second]
        apart = groups[one] != groups[two]
        motion = (sliding.get(groups[one]) or sliding.get(groups[two])) if apart else None
        if apart:
            hung |= {groups[one], groups[two]}
        yield from _of_joint(joint, one, two, [screws[f] for f in joint.fasteners if f in screws], motion)
    for motion in piece.motions:
        if motion.turn or motion.id not in hung:
            yield from _of_motion(piece, motion, groups)


def _of_joint(
    joint: Joint, one: int, two: int, screws: list[Fastener], motion: Motion | None
) -> Iterator[_Tie]:
    """What a joint holds: its faces always; along them what is glued or screwed fast; weakly the rest."""
    for c in joint.contacts:
        middle = c.box.middle()
        if c.gap < 1e-9:
            yield _Tie(one, two, middle, c.normal, HELD)
        if c.glued and joint.glued:
            for i, a in enumerate(AXES):
                if i not in joint.floats and abs(dot(a, c.normal)) < 0.9:
                    yield _Tie(one, two, middle, a, HELD)
    low = [min(c.box.low[i] for c in joint.contacts) for i in range(3)]
    high = [max(c.box.high[i] for c in joint.contacts) for i in range(3)]
    middle = Box((low[0], low[1], low[2]), (high[0], high[1], high[2])).middle()
    if motion is not None:
        middle = _at_mouth(middle, motion)
    fast = [f for f in screws if not f.slotted and f.kind != "plug"]
    if fast and motion is None:
        spot = scaled(
            (sum(f.at[0] for f in fast), sum(f.at[1] for f in fast), sum(f.at[2] for f in fast)),
            1 / len(fast),
        )
        yield from (_Tie(one, two, spot, a, HELD) for a in AXES)
    for a in AXES:
        runs = motion is not None and abs(dot(a, motion.direction)) > 0.9
        yield _Tie(one, two, middle, a, RESTS if runs else FLOATS)


def _at_mouth(at: Vec, motion: Motion) -> Vec:
    """The point of a line along a drawer's way at the mouth of its opening: there front and case stay flush."""
    out = list(at)
    axis = max(range(3), key=lambda i: abs(motion.direction[i]))
    out[axis] = motion.opening.high[axis] if motion.direction[axis] > 0 else motion.opening.low[axis]
    return (out[0], out[1], out[2])


def _of_motion(piece: Piece, motion: Motion, groups: list[str]) -> Iterator[_Tie]:
    """What holds a door at its hinges, or a drawer that no joint hangs in the case."""
    mine = [i for i, g in enumerate(groups) if g == motion.id]
    still = _still(piece, groups, motion)
    if not mine or not still:
        return
    if motion.turn:
        at = _hinge(piece, groups, motion)
        one, two = _nearest(piece, mine, at), _nearest(piece, still, at)
        yield from (_Tie(one, two, at, a, HELD) for a in AXES)
        return
    feet = []
    for i in mine:
        box = piece.parts[i].box
        foot = box.middle()
        under = (foot[0], foot[1], box.low[2])
        if abs(motion.direction[2]) < 0.9:  # what is lifted out stands on its ledgers
            under = _at_mouth(under, motion)
        two = _nearest(piece, still, under)
        feet.append((i, two, under, _away(piece.parts[two].box, under)))
    lowest = min(away for *_, away in feet)
    for i, two, under, away in feet:
        for a in AXES:
            rests = abs(a[2]) > 0.9 and away < lowest + ON
            runs = rests or (abs(a[2]) < 0.9 and abs(dot(a, motion.direction)) > 0.9)
            yield _Tie(i, two, under, a, RESTS if runs else FLOATS if abs(a[2]) < 0.9 else STANDS)


def _hinge(piece: Piece, groups: list[str], motion: Motion) -> Vec:
    """The point of a hinge's axis beside the middle of what turns on it."""
    boxes = [p.box for p, g in zip(piece.parts, groups, strict=True) if g == motion.id]
    along = [dot(add(b.middle(), scaled(motion.pivot, -1.0)), motion.direction) for b in boxes]
    return add(motion.pivot, scaled(motion.direction, sum(along) / max(len(along), 1)))


def _still(piece: Piece, groups: list[str], motion: Motion) -> list[int]:
    """The parts that do not move."""
    moving = {m.id for m in piece.motions} | {motion.id}
    return [i for i, g in enumerate(groups) if g not in moving]


def _nearest(piece: Piece, among: Iterable[int], at: Vec) -> int:
    """The part whose box lies nearest to a point; the first of several."""
    return min(among, key=lambda i: (round(_away(piece.parts[i].box, at), 6), i))


def _away(box: Box, at: Vec) -> float:
    """How far a point is from a box [mm]."""
    return float(sum(max(box.low[k] - at[k], 0.0, at[k] - box.high[k]) ** 2 for k in range(3)) ** 0.5)
