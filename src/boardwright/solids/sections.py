"""On how much of a face two parts touch.

Each is cut a little behind the face, and the two sections are laid on each other within it. A section is kept by the
form and its plane, so that all joints on one face share it.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from boardwright.core.poses import Pose, Vec, dot, rounded, square_to
from boardwright.piece.cuts import Hole
from boardwright.piece.records import Contact, Part
from boardwright.solids.frames import Form, form_of, relative, undrilled
from boardwright.solids.primitives import reach_of
from boardwright.solids.taken import taken

TOUCH = 0.02
"""How far two parts are pressed into each other to measure the area they touch on [mm]."""


def touching_area(contact: Contact, first: Part, second: Part) -> float:
    """Area on which two parts touch within a face [mm2].

    Args:
        contact: the face.
        first: the part behind it.
        second: the part that lies where its normal points.
    """
    corners = contact.corners or _corners(contact)
    own = tuple(rounded(first.pose.inverse_point(p), 9) for p in corners)
    normal = rounded(first.pose.inverse_direction(contact.normal), 9)
    return _touching(form_of(first), form_of(second), relative(first.pose, second.pose), normal, own)


@lru_cache(maxsize=65536)
def _touching(one: Form, two: Form, place: Pose, normal: Vec, corners: tuple[Vec, ...]) -> float:
    from manifold3d import CrossSection, FillRule

    x, y = square_to(normal)
    window = CrossSection([[(dot(x, p), dot(y, p)) for p in corners]], FillRule.NonZero)
    far = dot(normal, corners[0])
    near = _section(one, normal, round(far - TOUCH / 2, 6))
    way = rounded(place.inverse_direction(normal), 9)
    own_x, own_y = (place.direction(v) for v in square_to(way))
    rows = [[dot(v, own_x), dot(v, own_y), dot(v, place.origin)] for v in (x, y)]
    beyond = _section(two, way, round(far - dot(normal, place.origin) + TOUCH / 2, 6))
    return float((near ^ window ^ beyond.transform(rows)).area())


@lru_cache(maxsize=16384)
def _section(form: Form, normal: Vec, far: float) -> Any:
    """What a plane cuts out of a solid, on the two axes of `square_to` its normal; holes are cut out of the flat.

    (In the solid a hole costs far more than all else.)
    """
    from boardwright.solids.mesh import body_solid, shape

    x, y = square_to(normal)
    turn = [[*x, 0.0], [*y, 0.0], [*normal, 0.0]]
    whole = undrilled(form)
    left = shape(whole.size, whole.cuts).transform(turn).slice(far)
    for hole in (c for c in form.cuts if isinstance(c, Hole)):
        for body in taken(hole, form.size):
            box = reach_of(body)
            ends = [normal[k] * v[k] for k in range(3) for v in (box.low, box.high)]
            least = sum(min(ends[2 * k : 2 * k + 2]) for k in range(3))
            most = sum(max(ends[2 * k : 2 * k + 2]) for k in range(3))
            if least < far < most:
                left -= body_solid(body).transform(turn).slice(far)
    return left


def _corners(contact: Contact) -> tuple[Vec, ...]:
    """The corners of a rectangle."""
    a, b = (k for k in range(3) if k != contact.axis)
    low, high = contact.box.low, contact.box.high
    out = []
    for u, v in ((low[a], low[b]), (high[a], low[b]), (high[a], high[b]), (low[a], high[b])):
        p = list(low)
        p[a], p[b] = u, v
        out.append((p[0], p[1], p[2]))
    return tuple(out)
