"""Dimensions laid in stacks beside a view, and the check that no text lies on another."""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from boardwright.drawings.fonts import text_width
from boardwright.drawings.records import Circle, Dimension, Drawing, Entity, Line, Point, Text
from boardwright.drawings.styles import ARROWS_INSIDE, TAIL
from boardwright.drawings.svg import dimension_line, dimension_text, extension_lines

Edge = Literal["above", "below", "left", "right"]
SIZE = 2.2
"""Letter height of dimensions and notes [mm]; no text on a drawing is smaller."""
FIRST, STEP = 8.0, 5.6
"""From the view to the first dimension line, and from line to line [mm]."""
LIFT = 0.9
"""From a dimension line up to its text [mm]."""
DESCENT = 0.3
"""How far letters reach below their line, as a share of the letter height (g, p and the fraction bar)."""


@dataclass(frozen=True, slots=True)
class Ask:
    """A dimension that is wanted: two points on the paper [mm], what it says, on which side of the view."""

    first: Point
    second: Point
    text: str
    side: Edge
    outside: Literal["before", "after"] = "before"
    """Where the text stands when it does not fit: left of or below both points, or right of or above them."""


@dataclass(frozen=True, slots=True)
class _Set:
    low: float
    high: float
    level: int


def stacked(
    asks: Sequence[Ask], box: tuple[float, float, float, float], first: float = FIRST, step: float = STEP
) -> list[Dimension]:
    """Dimension lines in stacks around a view: the shortest nearest, none on another.

    A text that does not fit between its arrows stands outside them, where no extension line passes.

    Args:
        asks: what is wanted; the same one twice is drawn once.
        box: left, lower, right and upper edge of the view [mm].
        first: from the view to the first line [mm].
        step: from line to line [mm].
    """
    out: list[Dimension] = []
    for side in ("above", "below", "left", "right"):
        mine = list(dict.fromkeys(a for a in asks if a.side == side))
        out += _one_side(mine, side, box, first, step)
    return out


def _one_side(
    asks: list[Ask], side: str, box: tuple[float, float, float, float], first: float, step: float
) -> list[Dimension]:
    vertical = side in ("left", "right")
    k = 1 if vertical else 0
    way = 1.0 if side in ("above", "right") else -1.0
    start = {"left": box[0], "below": box[1], "right": box[2], "above": box[3]}[side]
    asks = sorted(asks, key=lambda a: (round(abs(a.second[k] - a.first[k]), 3), min(a.first[k], a.second[k])))
    taken: list[_Set] = []
    out = []
    for n, a in enumerate(asks):
        low, high = sorted((a.first[k], a.second[k]))
        passing = [p for b in asks[n + 1 :] for p in (b.first[k], b.second[k])]
        middle = _text_middle(a, low, high, passing)
        half = text_width(a.text, SIZE) / 2 + 0.8
        spare = 0.0 if high - low >= ARROWS_INSIDE else TAIL
        reach = (min(low - spare, middle - half), max(high + spare, middle + half))
        level = 0
        while any(t.level == level and t.low < reach[1] - 1e-6 and reach[0] + 1e-6 < t.high for t in taken):
            level += 1
        level = max([level, *(t.level + 1 for t in taken if t.low < high - 1e-6 and low + 1e-6 < t.high)])
        taken.append(_Set(reach[0], reach[1], level))
        line = start + way * (first + step * level)
        at = line - LIFT - SIZE / 2 if vertical else line + LIFT + SIZE / 2
        text_at = (at, middle) if vertical else (middle, at)
        out.append(Dimension(a.first, a.second, line, vertical, a.text, text_at, SIZE))
    return out


def _text_middle(ask: Ask, low: float, high: float, passing: list[float]) -> float:
    """Where the middle of the text stands along its line."""
    width = text_width(ask.text, SIZE)
    half = width / 2 + 0.3
    clear = high - low if high - low < ARROWS_INSIDE else high - low - 2 * 2.2
    if width + 0.6 <= clear:
        for share in (0.5, 0.35, 0.65, 0.25, 0.75):
            m = low + (high - low) * share
            if low + half <= m <= high - half and not any(m - half < p < m + half for p in passing):
                return m
        return (low + high) / 2
    before, after = low - 2.6 - half, high + 2.6 + half
    places = (after, before) if ask.outside == "after" else (before, after)
    return next((m for m in places if not any(m - half < p < m + half for p in passing)), places[0])


def text_box(t: Text) -> tuple[float, float, float, float]:
    """Left, lower, right and upper edge of a text, turned or not [mm]."""
    width = text_width(t.text, t.size, t.bold)
    left = {"left": 0.0, "middle": -width / 2, "right": -width}[t.anchor]
    c, s = math.cos(math.radians(t.turn)), math.sin(math.radians(t.turn))
    corners = [(x, y) for x in (left, left + width) for y in (-DESCENT * t.size, t.size)]
    xs = [t.at[0] + x * c - y * s for x, y in corners]
    ys = [t.at[1] + x * s + y * c for x, y in corners]
    return (min(xs), min(ys), max(xs), max(ys))


def texts(entities: Sequence[Entity]) -> list[Text]:
    """All texts, those of dimensions too."""
    out = []
    for e in entities:
        if isinstance(e, Text):
            out.append(e)
        elif isinstance(e, Dimension):
            out.append(dimension_text(e))
    return out


def overlaps(drawing: Drawing, slack: float = 0.05) -> list[tuple[str, str]]:
    """Pairs of texts whose boxes lie on each other.

    Args:
        drawing: any drawing.
        slack: how far boxes may run into each other [mm].
    """
    boxes = [(t.text, text_box(t)) for t in texts(drawing.entities)]
    return [
        (a, b)
        for i, (a, p) in enumerate(boxes)
        for b, q in boxes[i + 1 :]
        if min(p[2], q[2]) - max(p[0], q[0]) > slack and min(p[3], q[3]) - max(p[1], q[1]) > slack
    ]


def outside(drawing: Drawing) -> list[str]:
    """Texts that run over the edge of the drawing."""
    return [
        t.text
        for t in texts(drawing.entities)
        if text_box(t)[0] < -0.01
        or text_box(t)[1] < -0.01
        or text_box(t)[2] > drawing.width + 0.01
        or text_box(t)[3] > drawing.height + 0.01
    ]


def struck(drawing: Drawing) -> list[str]:
    """Texts without a white ground that a line or a dimension runs through."""
    segments: list[tuple[Point, Point]] = []
    for e in drawing.entities:
        if isinstance(e, Line):
            ring = [*e.points, e.points[0]] if e.closed else list(e.points)
            segments += itertools.pairwise(ring)
        elif isinstance(e, Dimension):
            segments += [*extension_lines(e), dimension_line(e)[0]]
    rings = [e for e in drawing.entities if isinstance(e, Circle) and e.style == "border"]
    out = []
    for t in texts(drawing.entities):
        if any(math.hypot(t.at[0] - r.at[0], t.at[1] + t.size / 2 - r.at[1]) < 0.1 for r in rings):
            continue
        x0, y0, x1, y1 = text_box(t)
        core = (x0 + 0.2, y0 + 0.45 * t.size, x1 - 0.2, y1 - 0.2)
        if t.turn:
            core = (x0 + 0.2, y0 + 0.2, x1 - 0.45 * t.size, y1 - 0.2)
        if not t.backed and any(_crosses(a, b, core) for a, b in segments):
            out.append(t.text)
    return out


def _crosses(a: Point, b: Point, box: tuple[float, float, float, float]) -> bool:
    """True when the segment from a to b passes through the box."""
    low, high = 0.0, 1.0
    for k in (0, 1):
        d = b[k] - a[k]
        if abs(d) < 1e-9:
            if not box[k] < a[k] < box[k + 2]:
                return False
            continue
        t0, t1 = sorted(((box[k] - a[k]) / d, (box[k + 2] - a[k]) / d))
        low, high = max(low, t0), min(high, t1)
    return low < high - 1e-9
