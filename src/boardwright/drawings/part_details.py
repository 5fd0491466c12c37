"""Enlarged sections of the cuts of a part, dimensioned: what is too small in the views."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from boardwright.drawings.cut_words import Printer
from boardwright.drawings.fonts import text_width
from boardwright.drawings.layout_dims import SIZE, Ask, Edge, stacked, text_box, texts
from boardwright.drawings.marks import balloon
from boardwright.drawings.part_features import Feature
from boardwright.drawings.part_profiles import NEAR, Profile, profile_of
from boardwright.drawings.pictures import one_ring
from boardwright.drawings.records import Dimension, Entity, Fill, Line, Point, Text
from boardwright.drawings.scales import scale_text, scales
from boardwright.drawings.section import Window, section
from boardwright.drawings.svg import dimension_line, extension_lines
from boardwright.piece.records import Part
from boardwright.solids.taken import around

MARGIN = 7.0
"""Wood shown on either side of a cut [mm on paper]."""
WIDEST, HIGHEST = 13.0, 20.0
"""The largest cut, and the largest thickness, before the next smaller scale is taken [mm on paper]."""
FIELD, TALL = 40.0, 36.0
"""The same for the bevel round a raised field, and for the thickness at what is deeper than it is wide."""
OFFSET = 5.0
TWICE = 0.5
"""Twice the true size, for what is fine."""


@dataclass(frozen=True, slots=True)
class Block:
    """Entities with the box they need, its lower left corner at the origin [mm on paper]."""

    entities: tuple[Entity, ...]
    width: float
    height: float


def sections(part: Part, found: list[Feature], printer: Printer) -> list[Block]:
    """One detail for each section of a cut that runs along, with the numbers of all features that have it."""
    groups: dict[tuple[object, ...], list[tuple[Profile, int]]] = {}
    for f in found:
        profile = profile_of(f.cuts[0], part.size)
        if profile is not None:
            groups.setdefault(profile.key, []).append((profile, f.number))
    return [_detail(part, alike, printer) for alike in groups.values()]


def _detail(part: Part, alike: list[tuple[Profile, int]], printer: Printer) -> Block:
    cut = alike[0][0]
    mirrored = "mirrored at the other" if any(other.corner != cut.corner for other, _ in alike) else ""
    note = ", ".join(words for words in (cut.note, mirrored) if words)
    reduction = _scale(part, cut, printer)
    d0, d1, _ = _depth_window(part, cut, reduction)
    whole = part.size[cut.wide]
    low, high = cut.bottom or (cut.low, cut.high)
    left = 0.0 if low / reduction <= NEAR else low - MARGIN * reduction
    right = min(whole, high + MARGIN * reduction)
    if cut.corner is not None and cut.corner.high:
        left = max(0.0, low - 1.6 * MARGIN * reduction)
    if cut.corner is not None and not cut.corner.high:
        right = min(whole, high + 1.6 * MARGIN * reduction)
    level = cut.wide < cut.side.axis
    window = (left, d0, right, d1) if level else (d0, left, d1, right)
    at = clearest(part, cut.along, max(cut.start, 0.0), min(cut.end, part.size[cut.along]))

    def flat(p: Point) -> Point:
        return ((p[0] - window[0]) / reduction, (p[1] - window[1]) / reduction)

    entities = cut_away(part, cut.along, at, window, flat)
    entities += _dimensions(part, cut, window, level, flat, printer)
    return framed(entities, [number for _, number in alike], label(reduction, note))


def _scale(part: Part, cut: Profile, printer: Printer) -> float:
    """The largest scale at which the cut and the thickness shown keep within their limits."""
    widest = FIELD if cut.kind == "field" else WIDEST
    highest = TALL if cut.depth > 2 * (cut.high - cut.low) else HIGHEST
    low, high = cut.bottom or (cut.low, cut.high)
    tries = ((TWICE,) if cut.fine else ()) + scales(printer.units)
    fits = (s for s in tries if (high - low) / s <= widest and _depth_window(part, cut, s)[2] <= highest)
    return next(fits, tries[-1])


def cut_away(
    part: Part, across: int, at: float, window: Window, flat: Callable[[Point], Point]
) -> list[Entity]:
    """A section on paper: the wood as a tone, its outline over it.

    Args:
        part: in its own frame.
        across: axis that the section is square to.
        at: where it is along that axis [mm].
        window: what is shown of it [mm].
        flat: from the section to the paper.
    """
    shown = section(part, across, at, window)
    fills: list[Entity] = [
        Fill(tuple(flat(p) for p in one_ring(rings)), 0.75, _hue(part)) for rings in shown.pieces
    ]
    return [*fills, *(Line(tuple(flat(p) for p in line)) for line in shown.outline)]


def label(reduction: float, note: str = "") -> str:
    """What stands over a detail: its scale, and its angle."""
    return f"{scale_text(reduction)}, {note}" if note else scale_text(reduction)


def clearest(part: Part, axis: int, low: float, high: float) -> float:
    """Where along a cut the fewest other cuts run in, as near to its middle as may be [mm]."""
    rooms = [around(c, part.size) for c in part.cuts]
    spans = [(b.low[axis], b.high[axis]) for b in rooms]
    stops = sorted({low, high, *(v for s in spans for v in s if low < v < high)})
    middles = [(low + high) / 2, *((a + b) / 2 for a, b in itertools.pairwise(stops))]
    return min(middles, key=lambda m: (sum(a < m < b for a, b in spans), abs(m - (low + high) / 2)))


def _hue(part: Part) -> str:
    return "sheet" if part.stock.kind == "sheet" else "light wood"


def _depth_window(part: Part, cut: Profile, reduction: float) -> tuple[float, float, float]:
    """What is shown along the cut's depth: from, to [mm], and its height on paper [mm]."""
    whole = part.size[cut.side.axis]
    shown = whole
    if whole / reduction > 24.0 and not cut.tongue and not cut.through:
        shown = min(whole, cut.depth + MARGIN * reduction)
    d0, d1 = (whole - shown, whole) if cut.side.high else (0.0, shown)
    return d0, d1, shown / reduction


def _dimensions(
    part: Part, cut: Profile, window: Window, level: bool, flat: Callable[[Point], Point], printer: Printer
) -> list[Dimension]:
    deep = cut.side.axis
    whole = part.size[deep]
    surface = whole if cut.side.high else 0.0
    under = whole - surface
    bottom = surface - cut.depth if cut.side.high else cut.depth
    low, high = cut.low, cut.high

    def spot(w: float, d: float) -> Point:
        return flat((w, d) if level else (d, w))

    near: Edge = "above" if cut.side.high else "below"
    far: Edge = "below" if cut.side.high else "above"
    if not level:
        near, far = ("right", "left") if cut.side.high else ("left", "right")
    after: Edge = "right" if level else "above"
    left, right = (window[0], window[2]) if level else (window[1], window[3])
    end = right
    if cut.corner is not None and not cut.corner.high:
        after, end = ("left" if level else "below"), left
    away: Literal["before", "after"] = "after" if near in ("below", "left") else "before"
    clear: Literal["before", "after"] = "after" if after in ("left", "below") else "before"
    say = printer.auxiliary if cut.fine else printer.size
    asks = [Ask(spot(low, surface), spot(high, surface), say(high - low), near, clear)]
    if not cut.through:
        asks.append(Ask(spot(end, bottom), spot(end, surface), say(cut.depth), after, away))
    if cut.bottom is not None:
        text = printer.auxiliary(cut.bottom[1] - cut.bottom[0])
        asks.append(Ask(spot(cut.bottom[0], bottom), spot(cut.bottom[1], bottom), text, far, clear))
    if cut.tongue:
        asks.append(Ask(spot(end, under), spot(end, bottom), printer.size(cut.tongue), after, away))
    if cut.flat:
        one, two = (end, end - cut.flat) if cut.corner is not None and cut.corner.high else (end, cut.flat)
        asks.append(Ask(spot(one, under), spot(two, under), printer.size(cut.flat), far, clear))
    if cut.place is not None and left == 0.0 and cut.place > 1e-6:
        lowest, highest = (window[1], window[3]) if level else (window[0], window[2])
        border = lowest if cut.side.high else highest
        asks.append(Ask(spot(0.0, border), spot(cut.place, border), printer.size(cut.place), far))
    a, b = flat((window[0], window[1])), flat((window[2], window[3]))
    return stacked(asks, (a[0], a[1], b[0], b[1]), OFFSET, 6.0)


def framed(entities: Sequence[Entity], numbers: Sequence[int], scale: str) -> Block:
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


def bounds(entities: Sequence[Entity]) -> tuple[float, float, float, float]:
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
