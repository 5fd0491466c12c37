"""Parts as convex bodies: exact for all that flat faces bound, so that boxes cut aslant need no solids.

The boxes of a part are cut again at the box around each slanting thing that is taken away; what is left of each of
those small boxes falls into bodies that are convex, as good as always. Two convex bodies, one of them moving, keep
apart when they do on one of a few axes: the normals of their faces, and what is square to an edge of each (separating
axes; Gottschalk, Lin and Manocha, SIGGRAPH 1996, from memory). More axes than these change nothing, so all bodies of a
piece are measured on the axes of all of them at once.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np

from boardwright.core.poses import Box, Pose, Vec, rounded, scaled
from boardwright.piece.cuts import Hole
from boardwright.piece.records import Part
from boardwright.solids.cells import every_two
from boardwright.solids.frames import Form, form_of
from boardwright.solids.hulls import PLAY, each_once, of_solid, times_between
from boardwright.solids.primitives import Body, reach_of, shifted
from boardwright.solids.taken import taken

FULL = 1e-6
"""Share of its hull that a body may lack and still be convex."""
TOUCHING = 1e-6
"""Bodies that share no more than this in some direction only touch, as numbers go [mm]."""
MANY = 12
"""A body with more faces than this is round: its hull can only tell what it does not meet."""


@dataclass(frozen=True, slots=True, eq=False)
class Convex:
    """Convex bodies in the frame of their part.

    Attributes:
        points: corners of all of them, one body after the other, (n, 3) float [mm].
        counts: how many corners each has. whole: False for one that only goes round what is there.
        normals: directions square to their faces, each once, either way, (k, 3) float.
        edges: directions of their edges, likewise.
    """

    points: Any
    counts: tuple[int, ...]
    whole: tuple[bool, ...]
    normals: Any
    edges: Any


Cell = tuple[Box, tuple[Body, ...]]
"""A small box of a part, and what else is taken away that reaches into it."""


@lru_cache(maxsize=8192)
def bodies_of(form: Form) -> Convex:
    """The convex bodies that make up a form, its holes filled."""
    found: list[Convex] = []
    shifts: list[Vec] = []
    for cell, away in _cells(form):
        moved = tuple(shifted(b, scaled(cell.low, -1.0)) for b in away)
        found.append(_left_of(rounded((cell.size(0), cell.size(1), cell.size(2)), 6), moved))
        shifts.append(cell.low)
    moves = np.repeat(np.array(shifts).reshape(-1, 3), [len(f.points) for f in found], axis=0)
    return Convex(
        np.concatenate([_NOWHERE, *(f.points for f in found)]) + moves,
        tuple(n for f in found for n in f.counts),
        tuple(w for f in found for w in f.whole),
        each_once(np.concatenate([_NOWHERE, *(f.normals for f in found)])),
        each_once(np.concatenate([_NOWHERE, *(f.edges for f in found)])),
    )


_NOWHERE = np.zeros((0, 3))


def _cells(form: Form) -> list[Cell]:
    """The small boxes of a form, its holes filled."""
    away = [b for c in form.cuts if not isinstance(c, Hole) for b in taken(c, form.size)]
    cells: list[Cell] = [(Box((0.0, 0.0, 0.0), form.size), ())]
    for body in sorted(away, key=lambda b: not isinstance(b, Box)):
        reach = reach_of(body)
        parted: list[Cell] = []
        for cell in cells:
            if _apart(cell[0], reach):
                parted.append(cell)
                continue
            parted += [(left, cell[1]) for left in less(cell[0], reach)]
            if not isinstance(body, Box):
                parted.append((_common(cell[0], reach), (*cell[1], body)))
        cells = parted
    return cells


def _apart(one: Box, two: Box) -> bool:
    a, b, c, d = one.low, one.high, two.low, two.high
    return c[0] >= b[0] or d[0] <= a[0] or c[1] >= b[1] or d[1] <= a[1] or c[2] >= b[2] or d[2] <= a[2]


def less(box: Box, gone: Box) -> list[Box]:
    """What is left of a box when another is taken away: at most six boxes."""
    if _apart(box, gone):
        return [box]
    out = []
    low, high = list(box.low), list(box.high)
    for k in range(3):
        if gone.low[k] > low[k]:
            top = [*high[:k], gone.low[k], *high[k + 1 :]]
            out.append(Box((low[0], low[1], low[2]), (top[0], top[1], top[2])))
            low[k] = gone.low[k]
        if gone.high[k] < high[k]:
            foot = [*low[:k], gone.high[k], *low[k + 1 :]]
            out.append(Box((foot[0], foot[1], foot[2]), (high[0], high[1], high[2])))
            high[k] = gone.high[k]
    return out


def _common(one: Box, two: Box) -> Box:
    """The box that two boxes share."""
    x, y, z = (max(a, b) for a, b in zip(one.low, two.low, strict=True))
    far_x, far_y, far_z = (min(a, b) for a, b in zip(one.high, two.high, strict=True))
    return Box((x, y, z), (far_x, far_y, far_z))


_CORNERS = np.array([[i & 1, i >> 1 & 1, i >> 2] for i in range(8)], dtype=float)


@lru_cache(maxsize=16384)
def _left_of(size: Vec, away: tuple[Body, ...]) -> Convex:
    """What is left of a small box at the origin when bodies are taken away, as convex bodies."""
    from manifold3d import Manifold, OpType

    from boardwright.solids.mesh import body_solid

    if not away:
        return Convex(_CORNERS * size, (8,), (True,), _NOWHERE, _NOWHERE)
    left = Manifold.batch_boolean([Manifold.cube(list(size)), *map(body_solid, away)], OpType.Subtract)
    points, whole, normals = [_NOWHERE], [], [_NOWHERE]
    edges = [_NOWHERE]
    for solid in left.decompose():
        volume = solid.volume()
        if volume < FULL:
            continue
        around = solid.hull()
        corners, faces, _ = of_solid(around)
        points.append(corners)
        flat = len(faces) <= MANY
        whole.append(flat and volume > (1 - FULL) * around.volume() - FULL)
        if flat:
            first, second = np.triu_indices(len(faces), 1)
            normals.append(faces)
            edges.append(np.cross(faces[first], faces[second]))
    return Convex(
        np.concatenate(points),
        tuple(len(p) for p in points[1:]),
        tuple(whole),
        each_once(np.concatenate(normals)),
        each_once(np.concatenate(edges)),
    )


@dataclass(frozen=True, slots=True, eq=False)
class Bodies:
    """The convex bodies of several parts, in the piece.

    Attributes:
        owner: index of the part of each body. whole: whether it is exactly what is there.
        starts, counts: number of the first body of each part, and how many it has, (parts,) int.
        axes: all directions that may separate two of them, (k, 3) float.
        low, high: where each reaches on those axes, (bodies, k) float [mm].
        faces: how many of the axes are normals of faces; they come first.
    """

    owner: Any
    whole: Any
    starts: Any
    counts: Any
    axes: Any
    low: Any
    high: Any
    faces: int

    @staticmethod
    def of(parts: Sequence[Part]) -> Bodies:
        """The bodies of parts, in their order."""
        return _bodies(tuple((form_of(p), p.pose) for p in parts))

    def meet(self, pairs: Any, d: Vec) -> tuple[Any, Any]:
        """Which parts meet which, the first moved along a direction.

        Args:
            pairs: the pairs of parts that are asked for, (parts, parts) bool.
            d: unit vector.

        Returns:
            Which meet for certain, and of which only the solids can tell, each (parts, parts) bool.
        """
        one, two = every_two(np.argwhere(pairs), self.starts, self.counts)
        ahead = self._ahead(one, two, d)
        far = np.full(np.count_nonzero(ahead), np.inf)
        met = self._on(_Met(one[ahead], two[ahead], -far, far), d, slice(0, 3))
        sure = self._parts(self._met(met.some(self._longest(met)), d), pairs.shape, whole=True)
        met = self._met(met.some(~sure[self.owner[met.one], self.owner[met.two]] | met.resting), d)
        sure |= self._parts(met, pairs.shape, whole=True)
        unknown = self._parts(met, pairs.shape, whole=False) & ~sure
        unknown |= self._parts(met.some(met.resting), pairs.shape)
        return sure & ~unknown, unknown

    def rest(self, pairs: Any) -> Any:
        """Which parts may share room as they stand, (parts, parts) bool: else they are apart, or only touch."""
        one, two = every_two(np.argwhere(pairs), self.starts, self.counts)
        for some in (slice(0, 3), slice(3, self.faces), slice(self.faces, None)):
            low, high = self.low[:, some], self.high[:, some]
            gap = np.maximum(low[one] - high[two], low[two] - high[one])
            met = (gap < -TOUCHING).all(axis=1)
            one, two = one[met], two[met]
        out = np.zeros(pairs.shape, dtype=bool)
        out[self.owner[one], self.owner[two]] = True
        return out

    def _ahead(self, one: Any, two: Any, d: Vec) -> Any:
        """Whether the boxes around bodies are in each other's way along an axis, (pairs,) bool."""
        axis = max(range(3), key=lambda k: abs(d[k]))
        out = np.ones(len(one), dtype=bool)
        if abs(d[axis]) < 1 - 1e-9:
            return out
        for k in range(3):
            if k != axis or d[axis] > 0:
                out &= self.high[two, k] > self.low[one, k] + PLAY
            if k != axis or d[axis] < 0:
                out &= self.high[one, k] > self.low[two, k] + PLAY
        return out

    def _met(self, met: _Met, d: Vec) -> _Met:
        """Those that still meet by all axes."""
        return self._on(self._on(met, d, slice(3, self.faces)), d, slice(self.faces, None))

    def _on(self, met: _Met, d: Vec, some: slice) -> _Met:
        """Those that still meet by some of the axes, from where to where."""
        low, high = self.low[:, some], self.high[:, some]
        pace = self.axes[some] @ np.array(d)
        start, end = times_between(low[met.one], high[met.one], low[met.two], high[met.two], pace)
        both = _Met(met.one, met.two, np.maximum(met.start, start), np.minimum(met.end, end))
        return both.some(both.end > np.maximum(both.start, 0.0) + 1e-9)

    def _longest(self, met: _Met) -> Any:
        """Of each two parts the two bodies that overlap longest, by their numbers in `met`."""
        order = np.lexsort((met.start - met.end, self.owner[met.two], self.owner[met.one]))
        pairs = np.stack([self.owner[met.one[order]], self.owner[met.two[order]]])
        new = (np.diff(pairs, axis=1, prepend=-1) != 0).any(axis=0)
        return order[new]

    def _parts(self, met: _Met, shape: tuple[int, ...], whole: bool | None = None) -> Any:
        """The parts of bodies that meet: of all, or of those that are whole, or are not, (parts, parts) bool."""
        both = self.whole[met.one] & self.whole[met.two]
        asked = slice(None) if whole is None else both == whole
        out = np.zeros(shape, dtype=bool)
        out[self.owner[met.one[asked]], self.owner[met.two[asked]]] = True
        return out


@dataclass(frozen=True, slots=True, eq=False)
class _Met:
    """Pairs of bodies, the first moving, and from where to where they overlap, each (pairs,); [mm]."""

    one: Any
    two: Any
    start: Any
    end: Any

    def some(self, which: Any) -> _Met:
        """Some of them."""
        return _Met(self.one[which], self.two[which], self.start[which], self.end[which])

    @property
    def resting(self) -> Any:
        """Whether they overlap as they stand."""
        return (self.start < 0) & (self.end > 0)


@lru_cache(maxsize=8)
def _bodies(parts: tuple[tuple[Form, Pose], ...]) -> Bodies:
    """The bodies of parts in their places."""
    found = [bodies_of(form) for form, _ in parts]
    frames = [np.array([pose.x, pose.y, pose.z]) for _, pose in parts]
    points = [
        f.points @ m + np.array(pose.origin) for f, m, (_, pose) in zip(found, frames, parts, strict=True)
    ]
    normals = [f.normals @ m for f, m in zip(found, frames, strict=True) if len(f.normals)]
    edges = [*frames, *(f.edges @ m for f, m in zip(found, frames, strict=True) if len(f.edges))]
    sizes = [n for f in found for n in f.counts]
    counts = np.array([len(f.counts) for f in found])
    whole = np.array([w for f in found for w in f.whole], dtype=bool)
    faces = each_once(np.concatenate([np.eye(3), *frames, *normals]))
    ways = each_once(np.concatenate(edges))
    first, second = np.triu_indices(len(ways), 1)
    axes = each_once(np.concatenate([faces, np.cross(ways[first], ways[second])]))
    reach = np.concatenate(points) @ axes.T
    corner = np.cumsum([0, *sizes[:-1]])
    low, high = np.minimum.reduceat(reach, corner), np.maximum.reduceat(reach, corner)
    owner = np.repeat(np.arange(len(parts)), counts)
    return Bodies(owner, whole, np.cumsum(counts) - counts, counts, axes, low, high, len(faces))
