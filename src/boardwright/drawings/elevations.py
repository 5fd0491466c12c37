"""Front, side section and top view of the piece with its main sizes, all at one scale."""

from __future__ import annotations

from boardwright.core.poses import Box, Vec
from boardwright.drawings.cut_words import Printer
from boardwright.drawings.layout_dims import Ask, Edge, stacked
from boardwright.drawings.part_details import bounds, shift
from boardwright.drawings.pictures import Picture, Plane, on_paper, picture
from boardwright.drawings.records import Drawing, Entity, Line
from boardwright.drawings.scales import fitting, scale_text, scales
from boardwright.piece.records import Part, Piece, Space
from boardwright.solids.exact import FRONT, RIGHT, TOP, Shape, View, beyond, part_shape, placed

PAD = 1.0
ROOM = (128.0, 140.0)
"""Largest view on paper, without its dimensions [mm]."""
PAGE_HIGH, TITLE_HIGH = 240.0, 12.0
"""Height of a page's text, and of the title over a drawing [mm]."""


def front_side_top(piece: Piece, printer: Printer, width: float = 180.0) -> list[Drawing]:
    """Three drawings of the piece: from the front, cut through and seen from the right, from above.

    They are drawn at the largest standard scale at which each fits, or at the next smaller one where that saves a page.

    Args:
        piece: every size known.
        printer: writes lengths.
        width: of each drawing on paper [mm].
    """
    out = piece.outside
    largest = fitting(
        printer.units,
        max(out.size(0), out.size(1)),
        max(out.size(2), out.size(1)),
        min(ROOM[0], width - 52),
        ROOM[1],
    )
    shapes = [placed(part_shape(p), p.pose) for p in piece.parts]
    views = _Views(piece, shapes)
    known = scales(printer.units)
    tries = known[known.index(largest) :][:2]
    sheets = [_Sheet(views, printer, 1 / reduction, width).drawings() for reduction in tries]
    return min(sheets, key=_pages)


def _pages(drawings: list[Drawing]) -> int:
    """How many pages drawings take, one after the other."""
    pages, used = 0, PAGE_HIGH
    for d in drawings:
        high = d.height + TITLE_HIGH
        if used + high > PAGE_HIGH:
            pages, used = pages + 1, 0.0
        used += high
    return pages


class _Views:
    """What is seen of a piece from three sides, at true size."""

    def __init__(self, piece: Piece, shapes: list[Shape]) -> None:
        self.piece = piece
        self.leaves = [s for s in piece.spaces if s.holds not in ("rows", "columns")]
        self.at = self._plane()
        self.front = picture(shapes, FRONT)
        self.side = self._section(shapes)
        self.top = picture(shapes, TOP)

    def _plane(self) -> float:
        """Where the section is: through the middle of the space furthest to the right, clear of uprights."""
        if not self.leaves:
            return self.piece.outside.middle()[0]
        last = max(self.leaves, key=lambda s: (round(s.box.middle()[0], 3), s.box.size(0)))
        return last.box.middle()[0]

    def _section(self, shapes: list[Shape]) -> Picture:
        """The piece cut through, seen from the right."""
        kept = [
            (s, p) for s, p in zip(shapes, self.piece.parts, strict=True) if p.box.low[0] < self.at - 1e-6
        ]
        left = [beyond(s, 0, self.at) if p.box.high[0] > self.at else s for s, p in kept]
        hues = tuple("sheet" if p.stock.kind == "sheet" else "light wood" for _, p in kept)
        return picture(left, RIGHT, Plane(self.at, hues))


class _Sheet:
    """Writes the views of one piece at one scale."""

    def __init__(self, views: _Views, printer: Printer, k: float, width: float) -> None:
        self.views, self.printer, self.k, self.width = views, printer, k, width
        self.piece, self.leaves, self.at = views.piece, views.leaves, views.at

    def drawings(self) -> list[Drawing]:
        """From the front, cut through and seen from the right, from above."""
        return [
            self._drawing("front", "Front", self.views.front, self.front_asks()),
            self._drawing("side", "Section, seen from the right", self.views.side, self.side_asks()),
            self._drawing("top", "From above", self.views.top, self.top_asks()),
        ]

    def ask(self, view: View, a: Vec, b: Vec, value: float, side: Edge) -> Ask:
        """A dimension between two points of the piece, as it will lie on paper."""
        p, q = view.flat(a), view.flat(b)
        k = self.k
        return Ask((p[0] * k, p[1] * k), (q[0] * k, q[1] * k), self.printer.auxiliary(value), side)

    def front_asks(self) -> list[Ask]:
        """Overall width and height, width at the floor, heights in the outermost columns, widths.

        Heights are those of the fronts, or of the spaces where there are none; widths those of overlay fronts, else
        of the spaces.
        """
        low, high = self.piece.outside.low, self.piece.outside.high
        asks = [
            self.ask(FRONT, (low[0], low[1], low[2]), (high[0], low[1], low[2]), high[0] - low[0], "below"),
            self.ask(FRONT, (low[0], low[1], low[2]), (low[0], low[1], high[2]), high[2] - low[2], "left"),
        ]
        foot = self._foot(0)
        if foot:
            asks.insert(
                0, self.ask(FRONT, (foot[0], 0, low[2]), (foot[1], 0, low[2]), foot[1] - foot[0], "below")
            )
        fronts = [f.box for f in self._fronts()]
        spaces = [s.box for s in self.leaves]
        right = _column(fronts or spaces, 0, 2)
        left = _column([_mirrored(b) for b in fronts or spaces], 0, 2)
        for box in right:
            asks.append(
                self.ask(FRONT, (high[0], 0, box.low[2]), (high[0], 0, box.high[2]), box.size(2), "right")
            )
        if [b.low[2] for b in left] != [b.low[2] for b in right]:
            for box in left:
                asks.append(
                    self.ask(FRONT, (low[0], 0, box.low[2]), (low[0], 0, box.high[2]), box.size(2), "left")
                )
        covers = [b for b in fronts if b.low[1] < -1e-6]
        for box in _column(covers or spaces, 2, 0):
            if abs(box.size(0) - (high[0] - low[0])) < 1e-3:
                continue
            asks.append(
                self.ask(FRONT, (box.low[0], 0, high[2]), (box.high[0], 0, high[2]), box.size(0), "above")
            )
        return asks

    def _foot(self, axis: int) -> tuple[float, float] | None:
        """From where to where stands on the floor what is overhung by the rest; None where nothing overhangs it."""
        out = self.piece.outside
        stand = [p.box for p in self.piece.parts if p.box.low[2] < out.low[2] + 1e-3]
        low, high = min(b.low[axis] for b in stand), max(b.high[axis] for b in stand)
        return (low, high) if high - low < out.size(axis) - 1e-3 else None

    def _fronts(self) -> list[Part]:
        """The front of each moving group: the part that stands foremost in it, the larger of two."""
        out = []
        for m in self.piece.motions:
            mine = [p for p in self.piece.parts if p.group == m.id]
            if mine:
                out.append(min(mine, key=lambda p: (round(p.box.low[1], 3), -p.box.size(0) * p.box.size(2))))
        return out

    def side_asks(self) -> list[Ask]:
        """Overall depth and height, depth at the floor, clear heights of the spaces that are cut through."""
        low, high = self.piece.outside.low, self.piece.outside.high
        asks = [
            self.ask(RIGHT, (0, low[1], low[2]), (0, high[1], low[2]), high[1] - low[1], "below"),
            self.ask(RIGHT, (0, low[1], low[2]), (0, low[1], high[2]), high[2] - low[2], "left"),
        ]
        foot = self._foot(1)
        if foot:
            asks.insert(
                0, self.ask(RIGHT, (0, foot[0], low[2]), (0, foot[1], low[2]), foot[1] - foot[0], "below")
            )
        cut = [s for s in self.leaves if s.box.low[0] < self.at < s.box.high[0]]
        for s in _stacked_spaces(cut):
            asks.append(
                self.ask(
                    RIGHT, (0, high[1], s.box.low[2]), (0, high[1], s.box.high[2]), s.box.size(2), "right"
                )
            )
        return asks

    def top_asks(self) -> list[Ask]:
        """Overall width and depth."""
        low, high = self.piece.outside.low, self.piece.outside.high
        return [
            self.ask(TOP, (low[0], low[1], 0), (high[0], low[1], 0), high[0] - low[0], "below"),
            self.ask(TOP, (low[0], low[1], 0), (low[0], high[1], 0), high[1] - low[1], "left"),
        ]

    def _drawing(self, id: str, title: str, shown: Picture, asks: list[Ask]) -> Drawing:
        """One view with its dimensions."""
        entities: list[Entity] = on_paper(shown.entities, self.k, 0.0, 0.0)
        lines = [e for e in entities if isinstance(e, Line)]
        x0, y0, x1, y1 = bounds(list(lines))
        entities += stacked(asks, (x0, y0, x1, y1))
        x0, y0, x1, y1 = bounds(entities)
        dx = (self.width - (x1 - x0)) / 2 - x0
        moved = tuple(shift(e, dx, PAD - y0) for e in entities)
        height = round(y1 - y0 + 2 * PAD, 3)
        return Drawing(id, title, scale_text(round(1 / self.k, 6)), self.width, height, moved)


def _column(boxes: list[Box], along: int, across: int) -> list[Box]:
    """Boxes that stand in one line with the last one along an axis, each extent across once, in order."""
    if not boxes:
        return []
    last = max(boxes, key=lambda b: (round(b.middle()[along], 3), b.size(across)))
    at = last.middle()[along]
    seen: dict[tuple[float, float], Box] = {}
    for b in boxes:
        if b.low[along] < at < b.high[along]:
            seen.setdefault((round(b.low[across], 3), round(b.high[across], 3)), b)
    return [seen[key] for key in sorted(seen)]


def _mirrored(box: Box) -> Box:
    """A box seen in a mirror that exchanges left and right."""
    return Box((-box.high[0], box.low[1], box.low[2]), (-box.low[0], box.high[1], box.high[2]))


def _stacked_spaces(spaces: list[Space]) -> list[Space]:
    seen: dict[tuple[float, float], Space] = {}
    for s in spaces:
        seen.setdefault((round(s.box.low[2], 3), round(s.box.high[2], 3)), s)
    return [seen[key] for key in sorted(seen)]
