"""A step of putting a piece together: what stands, and the new parts apart along the way they go."""

from __future__ import annotations

from collections.abc import Sequence

from boardwright.core.poses import Vec, add, dot, scaled
from boardwright.drawings.balloons import around
from boardwright.drawings.part_details import bounds, shift
from boardwright.drawings.pictures import on_paper, picture, seen_stretches, spots
from boardwright.drawings.records import Drawing, Entity, Line, Point
from boardwright.piece.records import Part
from boardwright.solids.exact import PICTORIAL, View, part_shape, placed, view_from

PAD = 1.0
SIDES = 11.0
"""Room for balloons on either side [mm on paper]."""
LEAST_APART, MOST_APART = 0.22, 0.8
"""How far new parts stand off, as shares of what stands along their way."""
NEW = "light wood"
"""The ground of new parts; what stands is grey."""


def step_picture(
    id: str,
    standing: Sequence[Part],
    units: Sequence[Sequence[Part]],
    direction: Vec,
    travel: float,
    width: float,
    height: float,
) -> Drawing:
    """What stands, and what is put on, drawn back along its way; letters of the new parts around it.

    Args:
        id: of the drawing.
        standing: parts that stand already.
        units: what is put on, each moved whole.
        direction: unit vector in which it moves.
        travel: how far before its place the first joint begins [mm].
        width: of the drawing on paper [mm].
        height: that it may have [mm]; it takes what it needs.
    """
    new = [p for unit in units for p in unit]
    back = scaled(direction, -_apart(standing, new, direction, travel))
    parts = [*standing, *new]
    moves = [(0.0, 0.0, 0.0)] * len(standing) + [back] * len(new)
    shapes = [placed(part_shape(p), p.pose.moved(m)) for p, m in zip(parts, moves, strict=True)]
    view = view_along(direction)
    hues = [""] * len(standing) + [NEW] * len(new)
    shown = picture(shapes, view, hues=hues)
    paths: list[Entity] = []
    for unit in units:
        middle = _middle(unit)
        paths += [Line(ends, "centre") for ends in seen_stretches((middle, add(middle, back)), shown)]
    x0, y0, x1, y1 = shown.box
    k = min((width - 2 * SIDES) / (x1 - x0), (height - 2 * PAD) / (y1 - y0))
    dx = width / 2 - (x0 + x1) / 2 * k
    entities = on_paper([*shown.entities, *paths], k, dx, -y0 * k)
    found: dict[str, list[Point]] = {}
    for face in sorted(shown.faces, key=lambda f: -f.area):
        if face.part_index < len(standing) and standing:
            continue
        held = found.setdefault(parts[face.part_index].letter, [])
        if face.area * k * k > (5.0 if held else 0.4):
            held += [(p[0] * k + dx, (p[1] - y0) * k) for p in spots(face, 1.0 / k)]
    names = [(name, found[name]) for name in sorted(found, key=lambda n: (len(n), n)) if found[name]]
    entities += around(names, (x0 * k + dx, 0.0, x1 * k + dx, (y1 - y0) * k), 6.0)
    _, low, _, high = bounds(entities)
    moved = tuple(shift(e, 0.0, PAD - low) for e in entities)
    return Drawing(id, seen_from(view), "not to scale", width, round(high - low + 2 * PAD, 3), moved)


def view_along(direction: Vec) -> View:
    """A view in which what moves along a direction comes towards the eye's side of the piece.

    It is the usual one from the front, the right and above, or that turned to the other side, to the back or below.
    """
    eye = PICTORIAL.eye
    turned = tuple(-e if abs(d) > 0.5 and d * e > 0 else e for e, d in zip(eye, direction, strict=True))
    return view_from("step", (turned[0], turned[1], turned[2]))


def seen_from(view: View) -> str:
    """From where the view looks, in words."""
    depth = "behind" if view.eye[1] > 0 else "the front"
    side = "right" if (view.eye[0] > 0) == (view.eye[1] < 0) else "left"
    if view.eye[1] > 0:
        side = "right" if view.eye[0] > 0 else "left"
    return f"seen from {depth}, the {side} and {'above' if view.eye[2] > 0 else 'below'}"


def _apart(standing: Sequence[Part], new: Sequence[Part], direction: Vec, travel: float) -> float:
    """How far the new parts are drawn from their place [mm]."""
    reach = _extent(standing or new, direction)
    return min(max(travel * 1.1, LEAST_APART * reach), max(MOST_APART * reach, 0.3 * travel))


def _extent(parts: Sequence[Part], direction: Vec) -> float:
    ends = [dot(corner, direction) for p in parts for corner in (p.box.low, p.box.high)]
    return max(ends) - min(ends)


def _middle(parts: Sequence[Part]) -> Vec:
    low = [min(p.box.low[i] for p in parts) for i in range(3)]
    high = [max(p.box.high[i] for p in parts) for i in range(3)]
    return ((low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2)
