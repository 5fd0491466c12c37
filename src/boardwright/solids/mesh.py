"""Parts as solids in manifold3d: built once for each shape, moved to their places, intersected, weighed."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from boardwright.core.poses import Box, Pose, Vec, square_to
from boardwright.piece.cuts import Cut
from boardwright.piece.records import Part
from boardwright.solids.frames import Form, form_of
from boardwright.solids.measured import room_of
from boardwright.solids.primitives import Body, Ring, Round, Sweep
from boardwright.solids.taken import taken

SEGMENTS = 48
"""Facets of a full circle."""
SAGITTA = 0.01
"""How far a facet of a large ring may lie from its circle [mm]."""


@lru_cache(maxsize=8192)
def body_solid(body: Body) -> Any:
    """The solid of a plain body."""
    from manifold3d import Manifold

    if isinstance(body, Box):
        size = [body.size(i) for i in range(3)]
        return Manifold.cube(size).translate(list(body.low))
    if isinstance(body, Ring):
        return _ring(body)
    return sweep_solid(body) if isinstance(body, Sweep) else _round(body)


def _round(body: Round) -> Any:
    from manifold3d import Manifold

    solid = Manifold.cylinder(body.length, body.r0, body.r1, SEGMENTS)
    x, y = square_to(body.way)
    rows = [[x[i], y[i], body.way[i], body.base[i]] for i in range(3)]
    return solid.transform(rows)


def _ring(body: Ring) -> Any:
    """An outline turned round an axis, in as many facets as keep within `SAGITTA` of the circle."""
    from manifold3d import CrossSection

    largest = max(r for r, _ in body.outline)
    facets = max(SEGMENTS, 4 * math.ceil(math.pi / math.acos(1 - SAGITTA / largest) / 4))
    solid = CrossSection([list(body.outline)]).revolve(facets)
    x, y, z = ((body.axis + k) % 3 for k in (1, 2, 3))
    rows = [[float(i == x), float(i == y), float(i == z), body.centre[i]] for i in range(3)]
    return solid.transform(rows)


def sweep_solid(body: Sweep) -> Any:
    """The solid of a sweep: its two ends and a quadrilateral for each side of its outline."""
    import numpy as np
    from manifold3d import Manifold, Mesh64, triangulate

    near = np.array(body.points)
    normal = np.cross(near - near[0], np.roll(near, -1, axis=0) - near[0]).sum(axis=0)
    if normal @ np.array(body.way) < 0:
        near, normal = near[::-1], -normal
    unit = normal / np.linalg.norm(normal)
    x, y = square_to((float(unit[0]), float(unit[1]), float(unit[2])))
    n = len(near)
    ends = np.asarray(triangulate([np.column_stack([near @ x, near @ y])]), dtype=np.uint64)
    a = np.arange(n, dtype=np.uint64)
    b = np.roll(a, -1)
    sides = np.concatenate([np.column_stack([a, b, b + n]), np.column_stack([a, b + n, a + n])])
    corners = np.concatenate([ends[:, ::-1], ends + n, sides])
    return Manifold(Mesh64(np.concatenate([near, near + np.array(body.way)]), corners))


@lru_cache(maxsize=4096)
def shape(size: tuple[float, float, float], cuts: tuple[Cut, ...]) -> Any:
    """A part's solid in its own frame.

    Args:
        size: length, width, thickness of the blank [mm].
        cuts: what is taken away.

    Returns:
        A manifold3d solid; do not change it.
    """
    from manifold3d import Manifold, OpType

    blank = Manifold.cube(list(size))
    away = [body_solid(b) for cut in cuts for b in taken(cut, size)]
    return Manifold.batch_boolean([blank, *away], OpType.Subtract) if away else blank


@lru_cache(maxsize=4096)
def placed(size: tuple[float, float, float], cuts: tuple[Cut, ...], pose: Pose) -> Any:
    """A part's solid in the piece."""
    return shape(size, cuts).transform(pose.rows())


def seen(form: Form, place: Pose) -> Any:
    """The solid of a form at a place."""
    return shape(form.size, form.cuts) if place == HERE else placed(form.size, form.cuts, place)


HERE = Pose((0.0, 0.0, 0.0), (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
"""Where a part stands in its own frame."""


def part_solid(part: Part) -> Any:
    """The solid of a part, in the piece."""
    return placed(part.size, part.cuts, part.pose)


def box_solid(box: Box) -> Any:
    """The solid of a box in the piece."""
    return body_solid(box)


def volume(part: Part) -> float:
    """Volume of a part [mm3]."""
    return room_of(form_of(part)).volume


def centroid(part: Part) -> Vec:
    """Centre of gravity of a part of even density, in the piece [mm]."""
    return part.pose.point(room_of(form_of(part)).centre)


def shared_volume(one: Any, two: Any) -> float:
    """Volume that two solids share [mm3]."""
    return float((one ^ two).volume())


@dataclass(frozen=True, slots=True)
class Weight:
    """Mass [kg] and centre of gravity [mm] of several parts."""

    mass: float
    centre: Vec


def weigh(parts: Iterable[Part]) -> Weight:
    """Mass and centre of gravity of parts, each of its stock's density."""
    mass = 0.0
    sums = [0.0, 0.0, 0.0]
    for part in parts:
        m = volume(part) * 1e-9 * part.stock.density
        c = centroid(part)
        mass += m
        for i in range(3):
            sums[i] += m * c[i]
    if mass == 0:
        return Weight(0.0, (0.0, 0.0, 0.0))
    return Weight(mass, (sums[0] / mass, sums[1] / mass, sums[2] / mass))


def meshes(part: Part) -> tuple[Any, Any]:
    """Triangles of a part in the piece: points (n, 3) float [mm] and corners (m, 3) int."""
    mesh = part_solid(part).to_mesh64()
    return mesh.vert_properties[:, :3], mesh.tri_verts
