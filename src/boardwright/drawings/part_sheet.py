"""The sheet of one part: three aligned views, all sizes from one end and one edge, details, a key."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Literal

from boardwright.drawings.cut_words import PlanPrinter
from boardwright.drawings.fonts import text_width
from boardwright.drawings.layout_dims import SIZE, Ask, Edge, stacked
from boardwright.drawings.lines import drawn_once
from boardwright.drawings.marks import balloon, break_line, datum, end_grain, grain_arrow, leader, third_angle
from boardwright.drawings.part_curves import tables
from boardwright.drawings.part_details import Block, bounds, sections, shift
from boardwright.drawings.part_ends import ends
from boardwright.drawings.part_features import Feature, features
from boardwright.drawings.part_foot import foot_of, key_and_details, rows_of_details
from boardwright.drawings.part_positions import positions
from boardwright.drawings.part_spots import spot
from boardwright.drawings.records import Drawing, Entity, Line, Point, Text
from boardwright.drawings.scales import scale_text, scales
from boardwright.drawings.spacing import spread
from boardwright.piece.cuts import Bevel, Curve, Cut, Hole, Mortise, Moulding, Side, Taper, entered
from boardwright.piece.records import Part
from boardwright.solids.exact import ProjectedEdge, View, part_shape, projected_edges
from boardwright.solids.primitives import reach_of
from boardwright.solids.taken import taken

GAP = 11.0
"""Between two views, room for balloons [mm]."""
LONG_AND_THIN = 9.0
"""A part longer than this many widths is drawn broken."""
BREAK_GAP = 2.4
VIEWS = 140.0
"""Height that the views may always have [mm]."""
WHOLE = 214.0
"""Height that a sheet may take of its page [mm]."""
LEAST_LONG = 45.0
"""A part is not drawn shorter than this only to save height [mm]."""
MOST = 5
"""Up to so many equal grooves each get their number in the view."""
FOOT_GAP = 5.0
"""Between the views and what stands under them [mm]."""
KEY_WIDE = 62.0
"""Least width of the key of the cuts beside the views [mm]."""
ASIDE = 9.0
"""Between the views and details beside them [mm]."""
PAD = 1.0
"""Clear margin around everything [mm]."""


@dataclass(frozen=True, slots=True)
class _Lines:
    """Projected edges of the three views, true size [mm]."""

    face: list[ProjectedEdge]
    edge: list[ProjectedEdge]
    end: list[ProjectedEdge]
    seen: Side
    other: list[ProjectedEdge]
    """The other face, where there are cuts in both; else empty."""


def part_drawing(
    part: Part,
    printer: PlanPrinter,
    width: float = 180.0,
    height: float = 120.0,
    letters: Mapping[str, str] | None = None,
    toward: Mapping[str, str] | None = None,
) -> Drawing:
    """The sheet of a part at the largest standard scale at which it keeps within the height.

    Seen is the face, or the back face when the grooves are there; the view of the reference edge stands
    beside it, that of the far end to its right, in third-angle projection. Sizes start from the reference
    end (x = 0) and the reference edge (y = 0).

    Args:
        part: the part; its `letter` names the drawing.
        printer: writes lengths.
        width: of the drawing on paper [mm].
        height: that it should not pass [mm]; a part that would get too small to read gets more.
        letters: letter of every part id, for what a cut holds.
        toward: where each side of the part points in the piece, in words, by `Side` value.
    """
    found = features(part, printer, letters or {})
    lines = _project(part)
    blocks = [*sections(part, found, printer), *ends(part, found, printer), *tables(found, printer)]
    inside = width - 2 * PAD

    def foot(key: list[Feature], details: list[Block], room: float) -> Block:
        return foot_of(key, details, room, lines.seen, toward or {})

    def arranged(reduction: float) -> list[_Sheet]:
        views = _Views(part, printer, found, lines, reduction).draw()
        x0, _, x1, _ = bounds(views)
        room = inside - (x1 - x0) - ASIDE
        slim = [b for b in blocks if b.width <= room]
        out = [_under(views, foot(found, blocks, inside))]
        for count in range(1, len(slim) + 1):
            column = slim[:count]
            rest = [b for b in blocks if b not in column]
            out.append(_beside(views, rows_of_details(column, room), foot(found, rest, inside)))
            if room >= KEY_WIDE:
                out.append(_beside(views, key_and_details(found, column, room), foot([], rest, inside)))
        return out

    reduction, sheet = _at_best_scale(part, printer, arranged, inside, height - 2 * PAD)
    scale = scale_text(reduction)
    title = f"{part.letter} {part.name}".strip()
    return Drawing(
        f"part-{part.letter or part.id}",
        title,
        scale,
        width,
        round(sheet.high + 2 * PAD, 3),
        (
            *(shift(e, PAD + (inside - sheet.wide) / 2, PAD) for e in sheet.above),
            *(shift(e, PAD, PAD) for e in sheet.foot),
            *_sign(width, scale),
        ),
    )


@dataclass(frozen=True, slots=True)
class _Sheet:
    """The drawing of a part at one scale, its lower left corner at the origin.

    Attributes:
        above: views, and details that stand beside them; as wide as `wide` [mm].
        foot: what stands under them, over the whole width.
        wide: of what is above [mm].
        views_high: height of the views [mm].
        high: of everything [mm].
    """

    above: tuple[Entity, ...]
    foot: tuple[Entity, ...]
    wide: float
    views_high: float
    high: float


def _under(views: list[Entity], foot: Block) -> _Sheet:
    """Everything else under the views."""
    x0, y0, x1, y1 = bounds(views)
    above = tuple(shift(e, -x0, foot.height + FOOT_GAP - y0) for e in views)
    return _Sheet(above, foot.entities, x1 - x0, y1 - y0, y1 - y0 + FOOT_GAP + foot.height)


def _beside(views: list[Entity], column: Block, foot: Block) -> _Sheet:
    """A column to the right of the views, the foot under both."""
    x0, y0, x1, y1 = bounds(views)
    c0, d0, c1, d1 = bounds(list(column.entities))
    high = max(y1 - y0, d1 - d0)
    up = foot.height + FOOT_GAP
    above = [shift(e, -x0, up + high - y1) for e in views]
    above += [shift(e, x1 - x0 + ASIDE - c0, up + high - d1) for e in column.entities]
    return _Sheet(tuple(above), foot.entities, x1 - x0 + ASIDE + c1 - c0, y1 - y0, high + up)


def _at_best_scale(
    part: Part, printer: PlanPrinter, arranged: Callable[[float], list[_Sheet]], wide: float, high: float
) -> tuple[float, _Sheet]:
    """The largest scale at which a sheet keeps within the height.

    If the part would be too small to read at it, the largest that the page takes, in its lowest arrangement.
    """
    largest: tuple[float, _Sheet] | None = None
    for reduction in scales(printer.units):
        if largest is not None and max(part.size) / reduction < LEAST_LONG:
            break
        sheets = arranged(reduction)
        last = largest is None and reduction == scales(printer.units)[-1]
        fits = [s for s in sheets if s.wide <= wide and s.views_high <= VIEWS and s.high <= WHOLE]
        if not fits and not last:
            continue
        lowest = min(fits or sheets, key=lambda s: s.high)
        if lowest.high <= high:
            return reduction, lowest
        largest = largest or (reduction, lowest)
    assert largest is not None
    return largest


def _project(part: Part) -> _Lines:
    shape = part_shape(part)
    seen, both = _faces(part)
    z = -1.0 if seen is Side.BACK else 1.0
    views = [
        View("face", (0.0, 0.0, z), (0.0, z, 0.0)),
        View("edge", (0.0, -1.0, 0.0), (0.0, 0.0, 1.0)),
        View("end", (1.0, 0.0, 0.0), (0.0, z, 0.0)),
    ]
    drawn = [drawn_once(projected_edges([shape], v)) for v in views]
    other: list[ProjectedEdge] = []
    if both:
        view = View("other face", (0.0, 0.0, -z), (0.0, -z, 0.0))
        other = drawn_once(projected_edges([shape], view, hidden=False))
    return _Lines(drawn[0], drawn[1], drawn[2], seen, other)


def _faces(part: Part) -> tuple[Side, bool]:
    """The face that is seen, the one with more cuts; and whether the other one has cuts to be seen too."""
    weights = {Side.FACE: 0, Side.BACK: 0}
    for c in part.cuts:
        side = entered(c)
        through = isinstance(c, Mortise) and c.through
        if side in weights and not through and not isinstance(c, Bevel | Curve | Moulding | Taper):
            weights[side] += 1 if isinstance(c, Hole) else 3
    seen = Side.BACK if weights[Side.BACK] > weights[Side.FACE] else Side.FACE
    return seen, min(weights.values()) >= 3


def _sign(width: float, scale: str) -> list[Entity]:
    return [*third_angle((width - 10.5, 1.2)), Text((width - 13.0, 1.8), scale, SIZE, "right")]


class _Views:
    """The three views of a part at one scale, the lower left corner of the face view at the origin."""

    def __init__(
        self, part: Part, printer: PlanPrinter, found: list[Feature], lines: _Lines, reduction: float
    ) -> None:
        self.part, self.printer, self.found, self.lines = part, printer, found, lines
        self.k = 1 / reduction
        length, width, thickness = part.size
        self.down = lines.seen is Side.FACE
        self.marks = positions(part)
        self.cut_out = self._break()
        self.long = self.x(length)
        self.wide = width * self.k
        self.thick = thickness * self.k
        self.edge_y = -GAP - self.thick if self.down else self.wide + GAP
        self.end_x = self.long + GAP

    def _break(self) -> tuple[float, float]:
        """What is left out of a long thin part: from, to along its length [mm]."""
        length, width, _ = self.part.size
        if length / width <= LONG_AND_THIN or length * self.k < 40:
            return (length, length)
        m = self.marks
        stops = sorted({0.0, length, *m.x, *(b for _, b in m.shoulders), *m.hole_x, *(r[1] for r in m.rows)})
        if m.rows:
            stops = sorted(
                {*stops, *(r[0] + (r[1] - r[0]) * n / (r[2] - 1) for r in m.rows for n in range(r[2]))}
            )
        slanting = [r for c in self.part.cuts for r in _slants(c, length)]
        free = [(a, b) for a, b in itertools.pairwise(stops) if not any(p < b and a < q for p, q in slanting)]
        low, high = max(free, key=lambda s: s[1] - s[0], default=(0.0, 0.0))
        spare = 12.0 / self.k + width * 0.8
        out = min(high - low - 2 * spare, length - LONG_AND_THIN * 0.8 * width)
        if out < 0.2 * length:
            return (length, length)
        middle = (low + high) / 2
        return (middle - out / 2, middle + out / 2)

    def x(self, v: float) -> float:
        """A position along the part, on paper [mm]."""
        low, high = self.cut_out
        if v <= low or low == high:
            return v * self.k
        return (v - (high - low)) * self.k + BREAK_GAP if v >= high else low * self.k

    def y(self, v: float) -> float:
        """A position across the part, on paper [mm]."""
        return v * self.k if self.down else (self.part.size[1] - v) * self.k

    def z(self, v: float) -> float:
        """A position through the part, on paper in the edge view [mm]."""
        return self.edge_y + v * self.k

    def draw(self) -> list[Entity]:
        """All entities of the views."""
        out: list[Entity] = []
        z_end = self.end_x + (self.thick if self.down else 0.0)
        out += end_grain(self._end_box()) if self.part.stock.kind == "wood" else []
        out += self._edges(self.lines.face, self._clipped, 0.0 if self.down else self.wide)
        out += self._edges(self.lines.edge, self._clipped, self.edge_y)
        out += [
            Line(
                tuple(
                    (z_end + p[0] * self.k, p[1] * self.k + (0 if self.down else self.wide)) for p in e.points
                ),
                "hidden" if e.hidden else "visible",
            )
            for e in self.lines.end
        ]
        out += self._breaks()
        out += self._dimensions()
        numbers = self._balloons()
        leaders = [e.points for e in numbers if isinstance(e, Line)]
        out += self._grain(leaders)
        out += numbers
        out += self._datums(leaders)
        return [*out, *self._other(out)]

    def _end_box(self) -> tuple[float, float, float, float]:
        """Where the end-grain mark stands in the end view: the longest stretch that no cut reaches."""
        size = self.part.size
        rooms = [reach_of(b) for c in self.part.cuts for b in taken(c, size)]
        cuts = [x for x in rooms if x.low[1] > 0 or x.high[1] < size[1]]
        stops = sorted(
            {0.0, size[1], *(min(max(v, 0.0), size[1]) for x in cuts for v in (x.low[1], x.high[1]))}
        )
        free = [
            (a, b)
            for a, b in itertools.pairwise(stops)
            if not any(x.low[1] < (a + b) / 2 < x.high[1] for x in cuts)
        ]
        low, high = max(free, key=lambda f: f[1] - f[0], default=(0.0, 0.0))
        middle = (self.y(low) + self.y(high)) / 2
        half = min((high - low) * self.k / 2 - 0.4, self.thick * 1.6)
        return (self.end_x + 0.2, middle - half, self.end_x + self.thick - 0.2, middle + half)

    def _edges(
        self,
        edges: list[ProjectedEdge],
        clip: Callable[[tuple[Point, ...]], list[tuple[Point, ...]]],
        up: float,
    ) -> list[Entity]:
        """The lines of a view on paper."""
        out: list[Entity] = []
        for e in edges:
            for points in clip(e.points):
                line = tuple((self.x(p[0]), p[1] * self.k + up) for p in points)
                out.append(Line(line, "hidden" if e.hidden else "visible"))
        return out

    def _clipped(self, points: tuple[Point, ...]) -> list[tuple[Point, ...]]:
        """A polyline without what lies in the part that is left out; curves never lie there."""
        low, high = self.cut_out
        if high - low < 1e-6 or max(p[0] for p in points) <= low or min(p[0] for p in points) >= high:
            return [points]
        a, b = sorted((points[0], points[-1]))
        out: list[tuple[Point, ...]] = []
        if a[0] < low:
            out.append((a, (low, a[1])))
        if b[0] > high:
            out.append(((high, b[1]), b))
        return out

    def _breaks(self) -> list[Entity]:
        low, high = self.cut_out
        if high - low < 1e-6:
            return []
        spans = ((0.0, self.wide), (self.edge_y, self.edge_y + self.thick))
        return [break_line(self.x(v), a, b) for v in (low, high) for a, b in spans]

    def _grain(self, leaders: list[tuple[Point, ...]]) -> list[Entity]:
        """The grain arrow where the face view is emptiest, with the name of the face where there is room."""
        if not self.part.stock.grain:
            return []
        name = "face" if self.down else "back face"
        long = min(16.0, self.long * 0.4)
        spots = [(self.long * u / 20, self.wide * v / 12) for v in range(1, 12) for u in range(2, 19)]
        spots.sort(key=lambda s: abs(s[0] / self.long - 0.5) + abs(s[1] / self.wide - 0.45))
        busy = [
            *self._busy(self.lines.face),
            *(box for line in leaders for box in _pieces(line[0], line[-1])),
        ]
        half = max(long, text_width(name, SIZE)) / 2 + 1.0
        for up, named in ((4.2, True), (0.9, False)):
            for x, y in spots:
                box = (x - half, y - 0.9, x + half, y + up)
                inside = (
                    box[0] > 0.5 and box[2] < self.long - 0.5 and box[1] > 0.4 and box[3] < self.wide - 0.4
                )
                if inside and not any(_meets(box, b) for b in busy):
                    words: list[Entity] = [Text((x, y + 1.2), name, SIZE)] if named else []
                    return [*grain_arrow((x, y), long), *words]
        return grain_arrow((self.long / 2, self.wide * 0.62), long)

    def _busy(self, edges: list[ProjectedEdge]) -> list[tuple[float, float, float, float]]:
        out = []
        up = 0.0 if self.down else self.wide
        for e in edges:
            for points in self._clipped(e.points):
                xs = [self.x(p[0]) for p in points]
                ys = [p[1] * self.k + up for p in points]
                out.append((min(xs) - 0.2, min(ys) - 0.2, max(xs) + 0.2, max(ys) + 0.2))
        low, high = self.cut_out
        if high - low > 1e-6:
            out.append((self.x(low) - 1.5, 0.0, self.x(high) + 1.5, self.wide))
        return out

    def _datums(self, leaders: list[tuple[Point, ...]]) -> list[Entity]:
        """The triangles on the reference end and edge, clear of the leaders."""
        y = self.y(0.0)
        way = -1.0 if self.down else 1.0
        spots = [self.long * u / 24 for u in range(1, 24)]
        xs = [x for line in leaders for x in (min(p[0] for p in line), max(p[0] for p in line))]
        pairs = list(zip(xs[::2], xs[1::2], strict=True))
        x = next((s for s in spots if all(not a - 4.2 < s < b + 4.2 for a, b in pairs)), spots[0])
        return [datum((x, y), (0.0, way)), datum((0.0, self.wide / 2), (-1.0, 0.0))]

    def _dimensions(self) -> list[Entity]:
        p, size = self.printer, self.part.size
        m = self.marks
        far: Edge = "above" if self.down else "below"
        near: Edge = "below" if self.down else "above"
        top = self.wide if self.down else 0.0
        edge_out = self.edge_y if self.down else self.edge_y + self.thick
        main = [Ask((0.0, top), (self.x(v), top), self._said(v), far) for v in (*m.x, size[0])]
        main += [Ask((self.x(a), top), (self.x(b), top), p.size(b - a), far) for a, b in m.shoulders]
        free: Literal["before", "after"] = "before" if self.down else "after"
        zero = (0.0, self.y(0.0))
        main += [Ask(zero, (0.0, self.y(v)), self._said(v), "left", free) for v in (*m.y, size[1])]
        box = (0.0, 0.0, self.long, self.wide)
        out: list[Entity] = list(stacked(main, box))
        holes = [Ask((0.0, edge_out), (self.x(v), edge_out), p.size(v), near) for v in m.hole_x]
        for a, b, n in m.rows:
            text = f"{n - 1} × {p.size((b - a) / (n - 1))} = {p.size(b - a)}"
            holes.append(Ask((self.x(a), edge_out), (self.x(b), edge_out), text, near))
        low_z, high_z = (self.long, self.edge_y), (self.long, self.edge_y + self.thick)
        holes.append(Ask(low_z, high_z, p.size(size[2]), "right", free))
        edge_box = (0.0, self.edge_y, self.long, self.edge_y + self.thick)
        out += stacked(holes, edge_box, 7.0)
        return out

    def _said(self, v: float) -> str:
        """A place: as it is settled, or rounded where an angle brings it about."""
        derived = any(abs(v - w) < 1e-6 for w in self.marks.worked_out)
        return self.printer.auxiliary(v) if derived else self.printer.size(v)

    def _other(self, out: list[Entity]) -> list[Entity]:
        """The other face beyond the view of the edge and its dimensions, where the height allows it."""
        _, y0, _, y1 = bounds(out)
        room = self.wide + GAP
        if not self.lines.other or y1 - y0 + room > VIEWS:
            return []
        low = y0 - room + 2.0 if self.down else y1 + GAP - 2.0
        name = "back face" if self.down else "face"
        lines = self._edges(self.lines.other, self._clipped, low + (self.wide if self.down else 0.0))
        breaks: list[Entity] = []
        if self.cut_out[1] - self.cut_out[0] > 1e-6:
            breaks = [break_line(self.x(v), low, low + self.wide) for v in self.cut_out]
        note = Text((self.long, low + self.wide + 1.6), name, SIZE, "right")
        return [*lines, *breaks, note]

    def _balloons(self) -> list[Entity]:
        """Numbers of the features: along the grain to the right, the others beside the edge view."""
        right: list[tuple[Point, str]] = []
        beside: list[tuple[Point, str]] = []
        for f in self.found:
            each = f.cuts if not isinstance(f.cuts[0], Hole) and len(f.cuts) <= MOST else (_nearest(f.cuts),)
            for cut in each:
                at = spot(cut, self.part.size, 1 / self.k)
                back = min(3.0, self.long * 0.05) if at.short else 0.0
                end = (self.x(at.x) - back, self.y(at.y))
                (right if at.right else beside).append((end, str(f.number)))
        out: list[Entity] = []
        row = -GAP / 2 if self.down else self.wide + GAP / 2
        first = 2.4
        xs = spread([s[0] + 2.5 for s, _ in beside], 5.6, first, self.long - 2.0)
        order = sorted(range(len(beside)), key=lambda i: beside[i][0][0])
        for x, i in zip(xs, order, strict=True):
            end, name = beside[i]
            out += [*leader((x, row), end), *balloon((x, row), name)]
        ys = spread(
            [s[1] for s, _ in right], 5.6, min(2.4, self.wide / 2), max(self.wide - 2.4, self.wide / 2)
        )
        order = sorted(range(len(right)), key=lambda i: right[i][0][1])
        for y, i in zip(ys, order, strict=True):
            end, name = right[i]
            out += [*leader((self.long + GAP / 2, y), end), *balloon((self.long + GAP / 2, y), name)]
        return out


def _nearest(cuts: tuple[Cut, ...]) -> Cut:
    """The hole nearest to the reference edge, then to the reference end; of other cuts the first."""
    holes = [c for c in cuts if isinstance(c, Hole)]
    return min(holes, key=lambda h: (h.at[1] if h.side.axis == 2 else 0.0, h.at[0])) if holes else cuts[0]


def _slants(c: Cut, length: float) -> list[tuple[float, float]]:
    """From where to where along the part a cut has lines that are not straight along it [mm]."""
    if isinstance(c, Curve) and c.along == 0:
        return [(c.points[0][0], c.points[-1][0])]
    if isinstance(c, Taper) and c.end.axis == 0:
        return [(c.start, length) if c.end.high else (0.0, c.start)]
    if isinstance(c, Bevel) and c.side.axis != 0 and abs(c.over_u) > 1e-9:
        return [(0.0, length)]
    return []


def _pieces(a: Point, b: Point, count: int = 24) -> list[tuple[float, float, float, float]]:
    """Boxes of equal pieces of a straight line."""
    stops = [(a[0] + (b[0] - a[0]) * n / count, a[1] + (b[1] - a[1]) * n / count) for n in range(count + 1)]
    return [
        (min(p[0], q[0]), min(p[1], q[1]), max(p[0], q[0]), max(p[1], q[1]))
        for p, q in itertools.pairwise(stops)
    ]


def _meets(a: tuple[float, float, float, float], b: tuple[float, float, float, float]) -> bool:
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]
