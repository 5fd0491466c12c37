"""Whether a driver comes at a screw: a cylinder straight back from its head must be clear of wood."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from boardwright.core.poses import Vec, dot, scaled
from boardwright.piece.records import Fastener, Part
from boardwright.solids.blocking import rooms_of
from boardwright.solids.primitives import Round, reach_of
from boardwright.solids.travel import is_boxes

AROUND = 4.0
"""How much wider than the head the room for the driver is [mm]: common practice."""
DRIVER = 150.0
"""Room behind the head for a driver in the hand [mm]: common practice."""
STUBBY = 60.0
"""Room behind the head for a stubby or right-angle driver [mm]: common practice."""
DRIVEN = ("screw", "pocket screw", "nail")
"""Fasteners that a tool drives, and that hold until they are taken out."""
PINS = ("dowel", "biscuit", "loose tenon")
"""Fasteners that sit in both parts, and let them part along their axis only."""


@dataclass(frozen=True, slots=True)
class Reach:
    """What stands in the way of a driver.

    Attributes:
        driver, stubby: numbers whose bit i is 1 when part i stands in the room for a driver, for a stubby one.
    """

    driver: int
    stubby: int


def reaches(parts: Sequence[Part], fasteners: Sequence[Fastener]) -> list[Reach]:
    """What stands in the way of the driver of each fastener that is driven; the part under the head never does."""
    if not fasteners:
        return []
    rooms = [rooms_of(p) for p in parts]
    boxes = np.concatenate(rooms)
    owner = np.repeat(np.arange(len(parts)), [len(r) for r in rooms])
    return [
        Reach(*(_standing(parts, boxes, owner, f, far) for far in (DRIVER, STUBBY)))
        if f.kind in DRIVEN
        else Reach(0, 0)
        for f in fasteners
    ]


def _standing(parts: Sequence[Part], boxes: Any, owner: Any, fastener: Fastener, far: float) -> int:
    back = scaled(fastener.direction, -1.0)
    radius = (fastener.head + AROUND) / 2
    found = 0
    for i in sorted(set(owner[_in_cylinder(boxes, fastener.at, back, radius, far)].tolist())):
        part = parts[i]
        if part.id == fastener.held:
            continue
        plain = is_boxes(part) and max(abs(v) for v in back) > 1 - 1e-9
        if plain or _solid_in(part, fastener.at, back, radius, far):
            found |= 1 << i
    return found


def _in_cylinder(boxes: Any, base: Vec, way: Vec, radius: float, length: float) -> Any:
    """Which boxes a cylinder along an axis reaches into; of a skew one, the box around it, (n,) bool."""
    around = reach_of(Round(base, way, length, radius, radius))
    low, high = np.array(around.low) + 1e-3, np.array(around.high) - 1e-3
    inside = ((boxes[:, 0] < high) & (boxes[:, 1] > low)).all(axis=1)
    axis = max(range(3), key=lambda k: abs(way[k]))
    if abs(way[axis]) < 1 - 1e-9:
        return inside
    gaps = np.maximum(np.maximum(boxes[:, 0] - base, base - boxes[:, 1]), 0.0)
    gaps[:, axis] = 0.0
    return inside & ((gaps**2).sum(axis=1) < (radius - 1e-3) ** 2)


def _solid_in(part: Part, base: Vec, way: Vec, radius: float, length: float) -> bool:
    from manifold3d import Manifold

    from boardwright.core.poses import square_to
    from boardwright.solids.mesh import part_solid, shared_volume

    x, y = square_to(way)
    rows = [[x[i], y[i], way[i], base[i]] for i in range(3)]
    cylinder = Manifold.cylinder(length, radius, radius, 24).transform(rows)
    return shared_volume(cylinder, part_solid(part)) > 0.05


def along(fastener: Fastener, d: Vec) -> bool:
    """True when a direction is along the axis of a fastener, either way."""
    return abs(dot(fastener.direction, d)) > 1 - 1e-6
