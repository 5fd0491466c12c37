"""Which part is in the way of which, direction by direction.

For each direction a directed graph: an arrow from part i to part j says that i, moved along it as far as can be,
meets j. (A directional blocking graph: Wilson and Latombe, Artificial Intelligence 71, 1994, from memory.)
Boxes decide where they can, all pairs at once; the solids only where boxes cannot tell.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np

from boardwright.core.poses import AXES, Box, Pose, Vec, rounded, scaled, square_to
from boardwright.piece.cuts import Hole
from boardwright.piece.records import Joint, Part
from boardwright.solids.bodies import Bodies, less
from boardwright.solids.frames import Form, form_of, relative, undrilled
from boardwright.solids.hulls import PLAY, corners_at, hull, spans_along, spans_between
from boardwright.solids.once import once
from boardwright.solids.primitives import reach_of
from boardwright.solids.taken import taken
from boardwright.solids.travel import is_boxes

LEAST = 0.05
"""Room that two solids must share, beyond what they share at rest, to have met [mm3]."""
SLIVER = 0.05
"""Area that the shadows of two solids may share and still lie beside each other [mm2]."""
COLLIDE = 50.0
"""Parts that share more than this as they stand collide: the dry fit says so, neither blocks the other [mm3]."""
FIRST = (0.3, 1.0, 2.0, 4.0)
"""Where solids are tried first, beyond the place where their boxes meet [mm]."""
STEP = 5.0
"""Between two later places [mm]."""

UP, FRONT, RIGHT = AXES[2], scaled(AXES[1], -1.0), AXES[0]


@dataclass(frozen=True, slots=True)
class Blocking:
    """What is in the way of what.

    Attributes:
        directions: unit vectors; one with an even index and the next are opposite.
        rows: for each direction, for each part: a number whose bit j is 1 when the part, moved along it, meets
            part j.
    """

    directions: tuple[Vec, ...]
    rows: tuple[tuple[int, ...], ...]


def blocking(parts: Sequence[Part], joints: Sequence[Joint] = ()) -> Blocking:
    """What is in the way of what, along the axes and along every direction in which a joint comes apart.

    Args:
        parts: the parts, as they stand together.
        joints: their directions that are not along an axis are tried too.
    """
    directions = _directions(joints)
    if not parts:
        return Blocking(directions, tuple(() for _ in directions))
    whole = _Stack.of([rooms_of(p) for p in parts])
    loose = np.array([not is_boxes(p) for p in parts])
    sure = _Stack.of([rooms_of(p, True) for p in parts]) if loose.any() else whole
    resting = whole.resting()
    unsure = loose[:, None] | loose[None, :]
    bodies = Bodies.of(parts) if loose.any() else None
    rows = []
    for d in directions[::2]:
        met = whole.met(d)
        certain = met if sure is whole else sure.met(d)
        open_ = met & resting & ~unsure
        if bodies is not None:
            asked = met & unsure & (~certain | resting)
            np.fill_diagonal(asked, False)
            found, unknown = bodies.meet(asked, d)
            met = (met & ~asked) | found | unknown
            open_ |= unknown
        for i, j in np.argwhere(open_):
            met[i, j] = i != j and _solids_meet(parts[i], parts[j], d)
        np.fill_diagonal(met, False)
        rows += [_numbers(met), _numbers(met.T)]
    return Blocking(directions, tuple(rows))


def _directions(joints: Sequence[Joint]) -> tuple[Vec, ...]:
    skew: dict[Vec, None] = {}
    for joint in joints:
        for d in joint.directions:
            if max(abs(v) for v in d) > 1 - 1e-9:
                continue
            plain = rounded(d, 6)
            if plain not in skew and rounded(scaled(d, -1.0), 6) not in skew:
                skew[plain] = None
    out: list[Vec] = []
    for d in (UP, FRONT, RIGHT, *sorted(skew)):
        size = math.sqrt(d[0] ** 2 + d[1] ** 2 + d[2] ** 2)
        unit = scaled(d, 1 / size)
        out += [rounded(unit, 12), rounded(scaled(unit, -1.0), 12)]
    return tuple(out)


def _numbers(met: Any) -> tuple[int, ...]:
    packed = np.packbits(met, axis=1, bitorder="little")
    return tuple(int.from_bytes(row.tobytes(), "little") for row in packed)


@dataclass(frozen=True, slots=True)
class _Stack:
    """The boxes of all parts, one after the other.

    Attributes:
        boxes: all of them, (n, 2, 3) float [mm].
        starts: index of the first box of each part, (parts,) int.
        over: for each axis, whether two boxes overlap on it, (n, n) bool.
    """

    boxes: Any
    starts: Any
    over: tuple[Any, Any, Any]

    @staticmethod
    def of(rooms: list[Any]) -> _Stack:
        none = np.array([[[np.inf] * 3, [-np.inf] * 3]])
        rooms = [r if len(r) else none for r in rooms]
        boxes = np.concatenate(rooms)
        lows, highs = boxes[:, 0] + PLAY / 2, boxes[:, 1] - PLAY / 2
        x, y, z = (
            (highs[:, None, k] > lows[None, :, k]) & (highs[None, :, k] > lows[:, None, k]) for k in range(3)
        )
        starts = np.cumsum([0, *(len(r) for r in rooms[:-1])])
        return _Stack(boxes, starts, (x, y, z))

    def _parts(self, boxes: Any) -> Any:
        """From boxes to the parts they belong to, (parts, parts) bool."""
        return np.logical_or.reduceat(np.logical_or.reduceat(boxes, self.starts, 0), self.starts, 1)

    def resting(self) -> Any:
        """Which parts share room as they stand, (parts, parts) bool."""
        out = self._parts(self.over[0] & self.over[1] & self.over[2])
        np.fill_diagonal(out, False)
        return out

    def met(self, d: Vec) -> Any:
        """Which part meets which, the first moved along a direction, (parts, parts) bool."""
        axis = max(range(3), key=lambda k: abs(d[k]))
        if abs(d[axis]) < 1 - 1e-9:
            start, end = spans(self.boxes, self.boxes, d)
            return self._parts(end > np.maximum(start, 0.0) + 1e-9)
        one, two = (k for k in range(3) if k != axis)
        low, high = self.boxes[:, 0, axis], self.boxes[:, 1, axis]
        if d[axis] > 0:
            ahead = high[None, :] > low[:, None] + PLAY
        else:
            ahead = low[None, :] < high[:, None] - PLAY
        return self._parts(self.over[one] & self.over[two] & ahead)


def spans(moving: Any, standing: Any, d: Vec) -> tuple[Any, Any]:
    """From where to where boxes overlap others while they move along a direction.

    Args:
        moving: boxes, (n, 2, 3) float [mm].
        standing: boxes, (m, 2, 3) float [mm].
        d: unit vector.

    Returns:
        How far the first has gone when the overlap begins and when it ends, each (n, m) float [mm]; where it never
        comes about, the end lies before the start.
    """
    return spans_between(moving[:, 0], moving[:, 1], standing[:, 0], standing[:, 1], np.array(d))


@lru_cache(maxsize=8192)
def _own_boxes(form: Form, sure: bool) -> Any:
    """Few boxes that make up a part in its own frame, holes filled, as (n, 2, 3) float [mm].

    What a cut takes away that is no box stays when `sure` is False, and else goes with the box around it. (Few,
    because all boxes of a piece are held against all: the grid of `cells` has several times as many.)
    """
    left = [Box((0.0, 0.0, 0.0), form.size)]
    for body in (b for c in form.cuts if not isinstance(c, Hole) for b in taken(c, form.size)):
        if sure or isinstance(body, Box):
            gone = reach_of(body)
            left = [piece for box in left for piece in less(box, gone)]
    return np.array([[b.low, b.high] for b in left], dtype=float).reshape(-1, 2, 3)


@once()
def rooms_of(part: Part, sure: bool = False) -> Any:
    """Boxes in the piece, as (n, 2, 3) float [mm]: around all of a part, or, if `sure`, of what is part for certain."""
    axes = np.array([part.pose.x, part.pose.y, part.pose.z])
    if sure and (np.abs(axes).max(axis=1) < 1 - 1e-9).any():
        return np.zeros((0, 2, 3))
    moved = _own_boxes(form_of(part), sure) @ axes + np.array(part.pose.origin)
    return np.stack([moved.min(axis=1), moved.max(axis=1)], axis=1)


def _solids_meet(one: Part, two: Part, d: Vec) -> bool:
    """Whether a part moved along a direction meets another."""
    own = rounded(one.pose.inverse_direction(d), 9)
    drilled = is_boxes(one) and is_boxes(two)
    return _meet(form_of(one), form_of(two), relative(one.pose, two.pose), own, drilled)


@lru_cache(maxsize=65536)
def _meet(moving: Form, standing: Form, place: Pose, d: Vec, drilled: bool) -> bool:
    """Whether a solid in its own frame, moved along a direction, meets another: by boxes, then by solids.

    Holes are filled unless `drilled`: boxes could tell all else.
    """
    start, end = _askew_spans(moving, standing, place, d, sure=False)
    begins = np.maximum(start, 0.0)
    meets = end > begins + 1e-9
    if not meets.any():
        return False
    certain, until = _askew_spans(moving, standing, place, d, sure=True)
    if not ((certain < 0) & (until > 0)).any() and (until > np.maximum(certain, 0.0) + 1e-9).any():
        return True
    first, last = round(float(begins[meets].min()), 4), round(float(end[meets].max()), 4)
    if not drilled:
        moving, standing = undrilled(moving), undrilled(standing)
    return _solids_met(moving, standing, place, d, first, last)


def _askew_spans(one: Form, two: Form, place: Pose, d: Vec, sure: bool) -> tuple[Any, Any]:
    """As `spans`, for boxes that stand askew to each other: exact for two convex bodies (separating axes)."""
    frame = np.array([place.x, place.y, place.z])
    moving = _own_corners(one, sure)
    standing = _own_corners(two, sure) @ frame + np.array(place.origin)
    return spans_along(moving, standing, _axes(place.x, place.y, place.z), d)


@lru_cache(maxsize=8192)
def _own_corners(form: Form, sure: bool) -> Any:
    """Corners of the boxes of `_own_boxes`, as (n, 8, 3) float [mm]."""
    return corners_at(_own_boxes(form, sure))


@lru_cache(maxsize=4096)
def _axes(x: Vec, y: Vec, z: Vec) -> Any:
    """Directions that separate boxes of two frames: their sides, and what is square to an edge of each."""
    own, other = np.eye(3), np.array([x, y, z])
    across = np.cross(own[:, None], other[None, :]).reshape(9, 3)
    sizes = np.linalg.norm(across, axis=1)
    skew = sizes > 1e-6
    axes = np.concatenate([own, other, across[skew] / sizes[skew, None]])
    return axes[[not any(abs(a @ b) > 1 - 1e-12 for b in axes[:i]) for i, a in enumerate(axes)]]


def _solids_met(moving: Form, standing: Form, place: Pose, d: Vec, first: float, last: float) -> bool:
    """Whether a solid moved along a direction shares room with another between two places on its way [mm]."""
    from boardwright.solids.mesh import placed, shape

    begin, end = _hull_span(moving, standing, place, d)
    if end < max(begin, 0.0):
        return False
    one, two = shape(moving.size, moving.cuts), placed(standing.size, standing.cuts, place)
    if _shadows_part(one, two, d):
        return False
    most = LEAST
    if first <= 0 and begin < 0:
        rest = float((one ^ two).volume())
        if rest > COLLIDE:
            return False
        most += rest
    count = max(1, math.ceil((last - first - FIRST[-1]) / STEP))
    later = (first + FIRST[-1] + (last - first - FIRST[-1]) * i / count for i in range(1, count + 1))
    tried = [first + t for t in FIRST if first + t < last] + [t for t in later if t > first + FIRST[-1]]
    return any(
        float((one.translate(list(scaled(d, t))) ^ two).volume()) > most for t in tried if begin < t < end
    )


def _hull_span(moving: Form, standing: Form, place: Pose, d: Vec) -> tuple[float, float]:
    """From where to where on its way the hull of a solid reaches into that of another, or nearly so [mm]."""
    one, two = hull(moving), hull(standing)
    if not len(one.points) or not len(two.points):
        return 0.0, -1.0
    frame = np.array([place.x, place.y, place.z])
    edges = np.concatenate([one.edges, two.edges @ frame])
    across = np.cross(edges, np.array(d))
    sizes = np.linalg.norm(across, axis=1)
    skew = sizes > 1e-6
    axes = np.concatenate([one.normals, two.normals @ frame, across[skew] / sizes[skew, None]])
    points = two.points @ frame + np.array(place.origin)
    start, end = spans_along(one.points[None], points[None], axes, d, play=-1e-6)
    return float(start[0, 0]), float(end[0, 0])


def _shadows_part(one: Any, two: Any, d: Vec) -> bool:
    """True when two solids, seen along a direction, lie beside each other: they never meet along it."""
    x, y = square_to(d)
    turn = [[*x, 0.0], [*y, 0.0], [*d, 0.0]]
    shadows = [solid.transform(turn).project() for solid in (one, two)]
    return float((shadows[0] ^ shadows[1]).area()) < SLIVER
