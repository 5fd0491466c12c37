"""Volume and centre of a form without its solid, where boxes and plain holes are all that is taken away.

A hole that lies clear of all other cuts takes the same from every part: it is measured once, at the origin. (A solid
with many holes takes long to work out: each is a facetted ring in the faces it goes through.)
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np

from boardwright.core.poses import Box, Vec, add, rounded, scaled
from boardwright.piece.cuts import Hole
from boardwright.solids.frames import Form
from boardwright.solids.primitives import Body, reach_of, shifted
from boardwright.solids.taken import taken


@dataclass(frozen=True, slots=True)
class Room:
    """Volume [mm3] and its centre [mm]."""

    volume: float
    centre: Vec


@lru_cache(maxsize=8192)
def room_of(form: Form) -> Room:
    """Volume and centre of a form in its own frame."""
    holes = [taken(c, form.size) for c in form.cuts if isinstance(c, Hole)]
    others = [b for c in form.cuts if not isinstance(c, Hole) for b in taken(c, form.size)]
    bored = [(bodies, reach) for bodies in holes if (reach := _within(bodies, form.size)) is not None]
    if not all(isinstance(b, Box) for b in others) or not _clear([r for _, r in bored], others):
        return _of_solid(form)
    from boardwright.solids.cells import own_cells

    boxes = own_cells(form)
    whole = (boxes[:, 1] - boxes[:, 0]).prod(axis=1)
    volume, moment = float(whole.sum()), whole @ boxes.mean(axis=1)
    for bodies, reach in bored:
        there = tuple(shifted(b, scaled(reach.low, -1.0)) for b in bodies)
        gone = _hole(there, rounded((reach.size(0), reach.size(1), reach.size(2)), 6))
        volume -= gone.volume
        moment = moment - gone.volume * np.array(add(gone.centre, reach.low))
    return _room(volume, moment)


def _within(bodies: tuple[Body, ...], size: Vec) -> Box | None:
    """The box around what a hole takes of a blank; None when it takes nothing."""
    rooms = [reach_of(b) for b in bodies]
    x, y, z = (max(0.0, min((r.low[k] for r in rooms), default=0.0)) for k in range(3))
    far_x, far_y, far_z = (min(size[k], max((r.high[k] for r in rooms), default=0.0)) for k in range(3))
    return Box((x, y, z), (far_x, far_y, far_z)) if x < far_x and y < far_y and z < far_z else None


def _clear(holes: list[Box], others: list[Body]) -> bool:
    """Whether holes reach neither into each other nor into other cuts."""
    if not holes:
        return True
    own = np.array([[h.low, h.high] for h in holes])
    every = np.array([[b.low, b.high] for b in (*holes, *map(reach_of, others))])
    met = ((own[:, None, 0] < every[None, :, 1]) & (every[None, :, 0] < own[:, None, 1])).all(axis=2)
    return int(met.sum()) == len(holes)


@lru_cache(maxsize=8192)
def _hole(bodies: tuple[Body, ...], size: Vec) -> Room:
    """What a hole takes of a box at the origin."""
    from manifold3d import Manifold, OpType

    from boardwright.solids.mesh import body_solid

    drill = Manifold.batch_boolean([body_solid(b) for b in bodies], OpType.Add)
    return _measured(drill ^ Manifold.cube(list(size)))


def _of_solid(form: Form) -> Room:
    from boardwright.solids.mesh import shape

    return _measured(shape(form.size, form.cuts))


def _measured(solid: Any) -> Room:
    """Volume and centre of a solid, less the last digits: they hang on the order in which solids were made."""
    mesh = solid.to_mesh64()
    points = np.asarray(mesh.vert_properties, dtype=float)[:, :3]
    a, b, c = (points[np.asarray(mesh.tri_verts)[:, i]] for i in range(3))
    six = np.einsum("ij,ij->i", a, np.cross(b, c))
    found = _room(float(six.sum() / 6), ((a + b + c) * six[:, None]).sum(axis=0) / 24)
    return Room(round(found.volume, 4), rounded(found.centre, 6))


def _room(volume: float, moment: Any) -> Room:
    if volume <= 0:
        return Room(0.0, (0.0, 0.0, 0.0))
    x, y, z = (float(v) for v in moment / volume)
    return Room(volume, (x, y, z))
