"""Projected lines made ready to draw: each stretch once, nothing hidden under something visible."""

from __future__ import annotations

import math
from collections.abc import Sequence

from boardwright.solids.exact import Point2, ProjectedEdge

Span = tuple[float, float]
NEAR = 1e-3
"""Lines nearer than this are one line, and shorter stretches are dropped [mm]."""


def drawn_once(edges: Sequence[ProjectedEdge]) -> list[ProjectedEdge]:
    """Straight edges joined where they lie on one line; hidden ones only where no visible one lies.

    Args:
        edges: of one view.

    Returns:
        Hidden lines first, then visible ones; curves stay as they are, each once. Part indices are not kept.
    """
    rows: dict[tuple[int, int], tuple[Point2, Point2, list[Span], list[Span]]] = {}
    curves: dict[tuple[Point2, ...], ProjectedEdge] = {}
    for e in edges:
        if len(e.points) > 2:
            key = tuple(sorted((round(x, 2), round(y, 2)) for x, y in e.points))
            if key not in curves or curves[key].hidden:
                curves[key] = e
            continue
        way, at, span = _line(e.points[0], e.points[1])
        row = rows.setdefault(_key(way, at), (way, at, [], []))
        (row[2] if e.hidden else row[3]).append(span)
    out = []
    for way, at, dim, bright in rows.values():
        seen = _joined(bright)
        for hidden, spans in ((True, _less(_joined(dim), seen)), (False, seen)):
            out += [ProjectedEdge((_point(way, at, a), _point(way, at, b)), hidden, 0) for a, b in spans]
    out += curves.values()
    return sorted(out, key=lambda e: not e.hidden)


def _line(p: Point2, q: Point2) -> tuple[Point2, Point2, Span]:
    """Direction, foot of the perpendicular from the origin, and stretch of a straight edge."""
    if (q[0] - p[0], q[1] - p[1]) < (0.0, 0.0) if abs(q[0] - p[0]) > NEAR else q[1] < p[1]:
        p, q = q, p
    size = math.dist(p, q)
    way = ((q[0] - p[0]) / size, (q[1] - p[1]) / size)
    start = p[0] * way[0] + p[1] * way[1]
    return way, (p[0] - start * way[0], p[1] - start * way[1]), (start, start + size)


def _key(way: Point2, at: Point2) -> tuple[int, int]:
    """The same for lines that coincide: angle in 1/100 of a degree, distance in 1/100 mm."""
    angle = round(math.degrees(math.atan2(way[1], way[0])) * 100) % 18000
    return angle, round((at[1] * way[0] - at[0] * way[1]) * 100)


def _point(way: Point2, at: Point2, t: float) -> Point2:
    return (at[0] + way[0] * t, at[1] + way[1] * t)


def _joined(spans: list[Span]) -> list[Span]:
    out: list[Span] = []
    for low, high in sorted(spans):
        if out and low <= out[-1][1] + NEAR:
            out[-1] = (out[-1][0], max(out[-1][1], high))
        else:
            out.append((low, high))
    return out


def _less(spans: list[Span], taken: list[Span]) -> list[Span]:
    """What is left of spans outside other spans."""
    out = []
    for low, high in spans:
        at = low
        for a, b in taken:
            if b <= at or a >= high:
                continue
            if a - at > NEAR:
                out.append((at, a))
            at = max(at, b)
        if high - at > NEAR:
            out.append((at, high))
    return out
