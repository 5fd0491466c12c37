"""Where planes meet: corners of sloping sides."""

from __future__ import annotations

from boardwright.core.poses import Vec, add, cross, dot, scaled
from boardwright.piece.joints.sloping import Plane

LEVEL: Vec = (0.0, 0.0, 1.0)


def level(z: float) -> Plane:
    """The level plane at a height [mm]; its normal points up."""
    return Plane(LEVEL, z)


def corner(a: Plane, b: Plane, c: Plane) -> Vec:
    """The point that three planes share [mm]."""
    bc, ca, ab = cross(b.normal, c.normal), cross(c.normal, a.normal), cross(a.normal, b.normal)
    top = add(add(scaled(bc, a.at), scaled(ca, b.at)), scaled(ab, c.at))
    return scaled(top, 1 / dot(a.normal, bc))


def between(a: Plane, b: Plane) -> Plane:
    """The plane that halves the corner of two faces whose normals point out; its normal points from b to a."""
    n = add(a.normal, scaled(b.normal, -1.0))
    size = dot(n, n) ** 0.5
    return Plane(scaled(n, 1 / size), (a.at - b.at) / size)
