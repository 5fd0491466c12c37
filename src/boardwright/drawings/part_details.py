"""Enlarged sections of grooves, dados and rabbets, dimensioned: what is too small in the views."""

from __future__ import annotations

import itertools
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Literal

from boardwright.core.poses import Box
from boardwright.drawings.fonts import text_width
from boardwright.drawings.layout_dims import SIZE, Ask, Edge, stacked, text_box, texts
from boardwright.drawings.marks import balloon
from boardwright.drawings.part_features import Feature, Printer
from boardwright.drawings.records import Dimension, Entity, Fill, Line, Point, Text
from boardwright.drawings.scales import scale_text, scales
from boardwright.drawings.section import section
from boardwright.drawings.svg import dimension_line, extension_lines
from boardwright.piece.cuts import Groove, Rabbet
from boardwright.piece.records import Part
from boardwright.solids.taken import taken

MARGIN = 7.0
"""Wood shown on either side of a cut [mm on paper]."""
NEAR = 22.0
"""A reference edge this near is shown [mm on paper]."""
WIDEST, HIGHEST = 13.0, 20.0
"""The largest cut, and the largest thickness, before the next smaller scale is taken [mm on paper]."""
OFFSET = 5.0


@dataclass(frozen=True, slots=True)
class Block:
    """Entities with the box they need, its lower left corner at the origin [mm on paper]."""

    entities: tuple[Entity, ...]
    width: float
    height: float


def details(part: Part, found: list[Feature], printer: Printer) -> list[Block]:
    """One detail for each section of a groove or rabbet, with the numbers of all features that have it."""
    groups: dict[tuple[object, ...], list[Feature]] = {}
    for f in found:
        cut = f.cuts[0]
        if isinstance(cut, Groove | Rabbet):
            groups.setdefault(_profile(part, cut), []).append(f)
    return [_detail(part, g, printer) for g in groups.values()]


def _profile(part: Part, cut: Groove | Rabbet) -> tuple[object, ...]:
    """What tells one section from another: a groove near its reference edge shows where it is."""
    sizes = (round(cut.width, 4), round(cut.depth, 4))
    if isinstance(cut, Rabbet):
        return ("rabbet", cut.side, cut.edge, sizes)
    near = round(cut.at, 4) if cut.at <= NEAR else -1.0
    return ("groove", cut.side, cut.along, sizes, near)


def _axes(cut: Groove | Rabbet) -> tuple[int, int]:
    """The axis that the section is square to, and the axis that the cut's width lies along."""
    if isinstance(cut, Groove):
        return cut.along, 3 - cut.along - cut.side.axis
    return 3 - cut.side.axis - cut.edge.axis, cut.edge.axis


def _span(cut: Groove | Rabbet, part: Part) -> tuple[float, float]:
    """From where to where the cut is wide [mm]."""
    if isinstance(cut, Groove):
        return cut.at, cut.at + cut.width
    whole = part.size[cut.edge.axis]
    return (whole - cut.width, whole) if cut.edge.high else (0.0, cut.width)


def _detail(part: Part, group: list[Feature], printer: Printer) -> Block:
    cut = group[0].cuts[0]
    assert isinstance(cut, Groove | Rabbet)
    across, wide = _axes(cut)
    deep = cut.side.axis
    low, high = _span(cut, part)
    reduction = next(
        (
            s
            for s in scales(printer.units)
            if (high - low) / s <= WIDEST and _depth_window(part, cut, s)[2] <= HIGHEST
        ),
        scales(printer.units)[-1],
    )
    d0, d1, _ = _depth_window(part, cut, reduction)
    left = 0.0 if low / reduction <= NEAR else low - MARGIN * reduction
    right = min(part.size[wide], high + MARGIN * reduction)
    if isinstance(cut, Rabbet) and cut.edge.high:
        left = max(0.0, low - 1.6 * MARGIN * reduction)
    if isinstance(cut, Rabbet) and not cut.edge.high:
        right = min(part.size[wide], high + 1.6 * MARGIN * reduction)
    level = wide < deep
    window = (left, d0, right, d1) if level else (d0, left, d1, right)
    at = clearest(part, across, max(cut.start, 0.0), min(cut.end, part.size[across]))
    cutaway = section(part, across, at, window)

    def flat(p: Point) -> Point:
        return ((p[0] - window[0]) / reduction, (p[1] - window[1]) / reduction)

    entities: list[Entity] = []
    for c in cutaway.cells:
        corners = ((c[0], c[1]), (c[2], c[1]), (c[2], c[3]), (c[0], c[3]))
        entities.append(Fill(tuple(flat(p) for p in corners), 0.75, _hue(part)))
    entities += [Line((flat(p), flat(q))) for p, q in cutaway.outline]
    entities += _dimensions(part, cut, (low, high), window, level, flat, printer)
    return _framed(entities, [f.number for f in group], scale_text(reduction))


def clearest(part: Part, axis: int, low: float, high: float) -> float:
    """Where along a cut the fewest other cuts run in, as near to its middle as may be [mm]."""
    spans = [
        (b.low[axis], b.high[axis]) for c in part.cuts for b in taken(c, part.size) if isinstance(b, Box)
    ]
    stops = sorted({low, high, *(v for s in spans for v in s if low < v < high)})
    middles = [(low + high) / 2, *((a + b) / 2 for a, b in itertools.pairwise(stops))]
    return min(middles, key=lambda m: (sum(a < m < b for a, b in spans), abs(m - (low + high) / 2)))


def _hue(part: Part) -> str:
    return "sheet" if part.stock.kind == "sheet" else "light wood"


def _depth_window(part: Part, cut: Groove | Rabbet, reduction: float) -> tuple[float, float, float]:
    """What is shown along the cut's depth: from, to [mm], and its height on paper [mm]."""
    whole = part.size[cut.side.axis]
    shown = whole
    if whole / reduction > 24.0:
        shown = min(whole, cut.depth + MARGIN * reduction)
    d0, d1 = (whole - shown, whole) if cut.side.high else (0.0, shown)
    return d0, d1, shown / reduction


def _dimensions(
    part: Part,
    cut: Groove | Rabbet,
    span: tuple[float, float],
    window: tuple[float, float, float, float],
    level: bool,
    flat: Callable[[Point], Point],
    printer: Printer,
) -> list[Dimension]:
    deep = cut.side.axis
    whole = part.size[deep]
    surface = whole if cut.side.high else 0.0
    bottom = surface - cut.depth if cut.side.high else cut.depth
    low, high = span

    def spot(w: float, d: float) -> Point:
        return flat((w, d) if level else (d, w))

    near: Edge = "above" if cut.side.high else "below"
    far: Edge = "below" if cut.side.high else "above"
    if not level:
        near, far = ("right", "left") if cut.side.high else ("left", "right")
    after: Edge = "right" if level else "above"
    left, right = (window[0], window[2]) if level else (window[1], window[3])
    end = right
    if isinstance(cut, Rabbet) and not cut.edge.high:
        after, end = ("left" if level else "below"), left
    away: Literal["before", "after"] = "after" if near in ("below", "left") else "before"
    clear: Literal["before", "after"] = "after" if after in ("left", "below") else "before"
    asks = [
        Ask(spot(low, surface), spot(high, surface), printer.size(cut.width), near, clear),
        Ask(spot(end, bottom), spot(end, surface), printer.size(cut.depth), after, away),
    ]
    if isinstance(cut, Groove) and left == 0.0 and cut.at > 1e-6:
        shown = (window[3] - window[1]) if level else (window[2] - window[0])
        d, where = (whole - surface, far) if shown >= whole - 1e-6 else (surface, near)
        asks.append(Ask(spot(0.0, d), spot(low, d), printer.size(cut.at), where))
    a, b = flat((window[0], window[1])), flat((window[2], window[3]))
    return stacked(asks, (a[0], a[1], b[0], b[1]), OFFSET, 6.0)


def _framed(entities: list[Entity], numbers: list[int], scale: str) -> Block:
    """The detail moved to the origin, its numbers and scale over it."""
    x0, y0, x1, y1 = bounds(entities)
    label: list[Entity] = []
    for i, n in enumerate(numbers):
        label += balloon((x0 + 2.4 + 5.2 * i, y1 + 4.0), str(n))
    x = x0 + 0.8 + 5.2 * len(numbers)
    label.append(Text((x, y1 + 4.0 - SIZE / 2), scale, SIZE, "left"))
    wide = max(x1, x + text_width(scale, SIZE)) - x0
    moved = tuple(shift(e, -x0, -y0) for e in [*entities, *label])
    return Block(moved, wide, y1 - y0 + 6.6)


def bounds(entities: list[Entity]) -> tuple[float, float, float, float]:
    """The box around entities with their texts [mm]."""
    xs: list[float] = []
    ys: list[float] = []
    for e in entities:
        points: list[Point] = []
        if isinstance(e, Line | Fill):
            points = list(e.points)
        elif isinstance(e, Dimension):
            points = [*dimension_line(e)[0], *(p for ab in extension_lines(e) for p in ab)]
        elif not isinstance(e, Text):
            points = [(e.at[0] - e.radius, e.at[1] - e.radius), (e.at[0] + e.radius, e.at[1] + e.radius)]
        xs += [p[0] for p in points]
        ys += [p[1] for p in points]
    for t in texts(entities):
        x0, y0, x1, y1 = text_box(t)
        xs += [x0, x1]
        ys += [y0, y1]
    return min(xs), min(ys), max(xs), max(ys)


def shift(e: Entity, dx: float, dy: float) -> Entity:
    """An entity moved on the paper [mm]."""

    def moved(p: Point) -> Point:
        return (p[0] + dx, p[1] + dy)

    if isinstance(e, Line | Fill):
        return replace(e, points=tuple(moved(p) for p in e.points))
    if isinstance(e, Dimension):
        return replace(
            e,
            first=moved(e.first),
            second=moved(e.second),
            line_at=e.line_at + (dx if e.vertical else dy),
            text_at=moved(e.text_at),
        )
    return replace(e, at=moved(e.at))
