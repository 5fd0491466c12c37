"""Marks that drawings share: balloons, grain arrows, end-grain rings, break lines, projection sign."""

from __future__ import annotations

import math

from boardwright.drawings.fonts import text_width
from boardwright.drawings.records import Circle, Entity, Fill, Line, Point, Text

BALLOON = 2.25
"""Radius of a balloon with one figure or letter [mm]."""
DOT = 0.45


def balloon(at: Point, text: str, size: float = 2.2) -> list[Entity]:
    """A figure or letter in a ring on a white ground."""
    radius = max(BALLOON, text_width(text, size, True) / 2 + 0.9)
    return [Circle(at, radius, "border"), Text((at[0], at[1] - size / 2), text, size, bold=True)]


def leader(start: Point, end: Point, radius: float = BALLOON) -> list[Entity]:
    """A thin line from the rim of a balloon at `start` to a dot at `end`."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    size = math.hypot(dx, dy)
    if size <= radius:
        return [dot(end)]
    rim = (start[0] + dx / size * radius, start[1] + dy / size * radius)
    return [Line((rim, end), "thin"), dot(end)]


def dot(at: Point, radius: float = DOT) -> Fill:
    """A filled dot."""
    ring = tuple(
        (at[0] + radius * math.cos(k * math.pi / 8), at[1] + radius * math.sin(k * math.pi / 8))
        for k in range(16)
    )
    return Fill(ring, 1.0)


def arrow(tip: Point, way: Point, length: float = 2.2, half: float = 0.32) -> Fill:
    """A slim filled arrowhead at `tip` that points along the unit vector `way`."""
    x, y = tip[0] - way[0] * length, tip[1] - way[1] * length
    return Fill((tip, (x - way[1] * half, y + way[0] * half), (x + way[1] * half, y - way[0] * half)), 1.0)


def grain_arrow(middle: Point, length: float, turn: bool = False) -> list[Entity]:
    """A double-headed arrow along the grain: level, or upright when `turn`."""
    h = length / 2
    a, b = ((0.0, -h), (0.0, h)) if turn else ((-h, 0.0), (h, 0.0))
    way = (0.0, 1.0) if turn else (1.0, 0.0)
    p, q = (middle[0] + a[0], middle[1] + a[1]), (middle[0] + b[0], middle[1] + b[1])
    return [Line((p, q), "thin"), arrow(p, (-way[0], -way[1]), 2.6, 0.5), arrow(q, way, 2.6, 0.5)]


def datum(at: Point, way: Point) -> Fill:
    """A filled triangle that stands on a reference end or edge at `at`, on the side `way` (unit vector)."""
    base = (at[0] + way[0] * 2.2, at[1] + way[1] * 2.2)
    side = (way[1] * 1.25, way[0] * 1.25)
    return Fill((at, (base[0] + side[0], base[1] + side[1]), (base[0] - side[0], base[1] - side[1])), 1.0)


def end_grain(box: tuple[float, float, float, float]) -> list[Entity]:
    """Growth rings in a rectangle (left, lower, right, upper): arcs around a heart beyond its left side."""
    x0, y0, x1, y1 = box
    w, h = x1 - x0, y1 - y0
    if w < 2.2 or h < 2.2:
        return []
    out: list[Entity] = []
    cx, cy = x0 - 0.35 * h, (y0 + y1) / 2
    step = max(0.9, w / 4)
    r = x0 - cx + step / 2
    while r < math.hypot(x1 - cx, h / 2):
        arc: list[Point] = []
        for k in range(-120, 121):
            t = k * math.pi / 240
            p = (cx + r * math.cos(t), cy + r * math.sin(t))
            if x0 < p[0] < x1 and y0 < p[1] < y1:
                arc.append(p)
            elif len(arc) > 1:
                out.append(Line(tuple(arc), "thin"))
                arc = []
        if len(arc) > 1:
            out.append(Line(tuple(arc), "thin"))
        r += step
    return out


def break_line(x: float, low: float, high: float) -> Line:
    """An upright break line with a zigzag, a little longer than the view (ISO 128-2, from memory)."""
    m = (low + high) / 2
    z = min(1.2, (high - low) / 3)
    return Line(
        ((x, low - 1), (x, m - z), (x - 0.8, m - z / 2), (x + 0.8, m + z / 2), (x, m + z), (x, high + 1)),
        "thin",
    )


def third_angle(at: Point, size: float = 3.4) -> list[Entity]:
    """The sign of third-angle projection (ISO 5456-2), its left lower corner at `at`."""
    x, y = at
    r = size / 2
    cy = y + r
    rings: list[Entity] = [Circle((x + r, cy), r, "thin"), Circle((x + r, cy), r / 2, "thin")]
    left, right = x + size + 1.2, x + size + 1.2 + size * 1.1
    cone = Line(((left, cy - r / 2), (right, cy - r), (right, cy + r), (left, cy + r / 2)), "thin", True)
    axis = Line(((x - 0.8, cy), (right + 0.8, cy)), "centre")
    return [*rings, cone, axis]
