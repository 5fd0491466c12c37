"""What a set of placed parts looks like in a view: exact lines and light tones, as entities on paper."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from boardwright.core.poses import Vec, add, dot, scaled
from boardwright.drawings.lines import drawn_once
from boardwright.drawings.records import Entity, Fill, Line, Point
from boardwright.solids.exact import Shape, View, projected_edges
from boardwright.solids.shaded import SeenFace, inside_point, level_spans, seen_faces, silhouette

Frame = tuple[float, float, float, float]
LIGHT: Vec = (0.30, -0.52, 0.80)
"""From where light comes: over the left shoulder of someone who looks at the front."""
PAPER, SHADE = 0.015, 0.17
HUED = 0.75
"""How much of its ground a shape with a hue has in full light."""


@dataclass(frozen=True, slots=True)
class Picture:
    """A view of placed parts.

    Attributes:
        view: where they are seen from.
        faces: what is seen of each flat face.
        entities: tones, then lines, true size [mm] from the view's origin.
        box: left, lower, right, upper edge of the lines [mm].
    """

    view: View
    faces: tuple[SeenFace, ...]
    entities: tuple[Entity, ...]
    box: Frame


@dataclass(frozen=True, slots=True)
class Plane:
    """A plane square to the view at which shapes were cut: nearness to the eye [mm], a hue for each shape."""

    at: float
    hues: tuple[str, ...]


def picture(
    shapes: Sequence[Shape], view: View, plane: Plane | None = None, hues: Sequence[str] = ()
) -> Picture:
    """The view of shapes placed in the piece: light tones, thin edges, a wide outline around the whole.

    Args:
        shapes: none may run into another.
        view: where they are seen from.
        plane: where they were cut, if they were: cut faces get the hue of their material and wide outlines.
        hues: ground of each shape; "" or none for grey.
    """
    faces = seen_faces(shapes, view)
    tones: list[Entity] = []
    wide: list[Entity] = [Line(ring, "visible", True) for ring in silhouette(faces)]
    for f in faces:
        ring = one_ring(f.rings)
        if plane and abs(f.nearness(ring[0], view) - plane.at) < 1e-3:
            tones.append(Fill(ring, 1.0, plane.hues[f.part_index]))
            wide += [Line(r, "visible", True) for r in f.rings]
        else:
            tone = PAPER + (SHADE - PAPER) * (1 - max(0.0, dot(f.normal, LIGHT)))
            hue = hues[f.part_index] if hues else ""
            tones.append(Fill(ring, round(HUED + tone if hue else tone, 3), hue))
    edges = drawn_once(projected_edges(shapes, view, hidden=False))
    thin: list[Entity] = [Line(e.points, "thin") for e in edges]
    xs = [p[0] for e in edges for p in e.points]
    ys = [p[1] for e in edges for p in e.points]
    return Picture(view, tuple(faces), (*tones, *thin, *wide), (min(xs), min(ys), max(xs), max(ys)))


def spots(face: SeenFace, clear: float) -> list[Point]:
    """Where a leader may end on a face: its best inner point, and some near its left and right ends.

    Args:
        face: what is seen of it.
        clear: least distance from an outline [mm]; the best inner point may have less.

    Returns:
        Points of the view [mm].
    """
    out = [inside_point(face.rings)]
    low = min(p[1] for r in face.rings for p in r)
    high = max(p[1] for r in face.rings for p in r)
    for share in (0.5, 0.3, 0.7):
        y = low + (high - low) * share
        for x0, x1 in level_spans(face.rings, y):
            tries = [(x0 + (x1 - x0) * t, y) for t in (0.12, 0.3, 0.7, 0.88)]
            out += [p for p in tries if _room(p, face) >= clear]
    return out


def _room(p: Point, face: SeenFace) -> float:
    """Distance from a point to the nearest outline of a face [mm]."""
    best = math.inf
    for ring in face.rings:
        for a, b in zip(ring, (*ring[1:], ring[0]), strict=True):
            dx, dy = b[0] - a[0], b[1] - a[1]
            size = dx * dx + dy * dy
            t = 0.0 if size == 0 else max(0.0, min(1.0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / size))
            best = min(best, math.hypot(a[0] + t * dx - p[0], a[1] + t * dy - p[1]))
    return best


def seen_stretches(path: tuple[Vec, Vec], shown: Picture, steps: int = 240) -> list[tuple[Point, Point]]:
    """The stretches of a straight path in space that no face hides, in the view [mm].

    Args:
        path: from, to, in the piece.
        shown: what stands there.
        steps: how finely it is looked at.
    """
    a, b = path
    view = shown.view
    boxed = [(f, _box(f)) for f in shown.faces]
    seen = []
    for n in range(steps + 1):
        q = add(a, scaled(add(b, scaled(a, -1.0)), n / steps))
        flat = view.flat(q)
        near = [f for f, b in boxed if b[0] < flat[0] < b[2] and b[1] < flat[1] < b[3]]
        over = (f for f in near if f.holds(flat))
        seen.append((flat, all(f.nearness(flat, view) < view.nearness(q) + 1e-6 for f in over)))
    out: list[tuple[Point, Point]] = []
    start: Point | None = None
    last: Point = seen[0][0]
    for flat, free in [*seen, (last, False)]:
        if free and start is None:
            start = flat
        if not free and start is not None:
            if start != last:
                out.append((start, last))
            start = None
        last = flat
    return out


def _box(face: SeenFace) -> Frame:
    xs = [p[0] for r in face.rings for p in r]
    ys = [p[1] for r in face.rings for p in r]
    return (min(xs), min(ys), max(xs), max(ys))


def one_ring(rings: tuple[tuple[Point, ...], ...]) -> tuple[Point, ...]:
    """Outlines and holes as one closed line: it goes out to each ring and comes back the same way."""
    path = list(rings[0])
    for ring in rings[1:]:
        i, j = min(
            ((i, j) for i in range(len(path)) for j in range(len(ring))),
            key=lambda ij: math.dist(path[ij[0]], ring[ij[1]]),
        )
        path[i:i] = [path[i], *ring[j:], *ring[: j + 1]]
    return tuple(path)


def on_paper(entities: Sequence[Entity], k: float, dx: float, dy: float) -> list[Entity]:
    """Lines and tones of a picture scaled and moved to the paper.

    Args:
        entities: true size [mm].
        k: paper mm per true mm.
        dx: where the view's origin comes to lie on paper, from the left [mm].
        dy: the same from below [mm].
    """
    out: list[Entity] = []
    for e in entities:
        if isinstance(e, Fill):
            out.append(Fill(tuple((p[0] * k + dx, p[1] * k + dy) for p in e.points), e.tone, e.hue))
        elif isinstance(e, Line):
            out.append(Line(tuple((p[0] * k + dx, p[1] * k + dy) for p in e.points), e.style, e.closed))
    return out
