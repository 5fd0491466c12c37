"""A board with defects as clear sections: crosscut beside defects, and ripped beside those that leave a clear edge.

A section can then be ripped to strips of any width, and these crosscut, in the three turns that any board is cut in.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from boardwright.stock.clear import LARGER, overlap
from boardwright.stock.instance import StockSize
from boardwright.stock.slicing import Box
from boardwright.stock.units import to_mm, to_units


@dataclass(frozen=True, slots=True)
class ClearSection:
    """A clear piece of a board, or all of it.

    Attributes:
        stock: number of the board's size in the layout question.
        x, y: its corner on the trimmed board (units).
        size: it alone, as a size of stock without defects.
    """

    stock: int
    x: int
    y: int
    size: StockSize


def clear_sections(
    stocks: Sequence[StockSize], kerf: float, least: tuple[float, float]
) -> list[ClearSection]:
    """Every size of stock without its defects, in the same order.

    Args:
        stocks: boards.
        kerf: the saw's cut [mm].
        least: length and width of the smallest piece that is wanted [mm].

    Returns:
        Clear boards as they are; the sections of others, each with a share of the cost by its length.
    """
    found = []
    for n, stock in enumerate(stocks):
        if not stock.defects:
            found.append(ClearSection(n, 0, 0, stock))
            continue
        corner = to_units(stock.trim_length), to_units(stock.trim_width)
        room = (*corner, to_units(stock.length) - corner[0], to_units(stock.width) - corner[1])
        marks = [(to_units(d.x0), to_units(d.y0), to_units(d.x1), to_units(d.y1)) for d in stock.defects]
        small = (to_units(least[0]), to_units(least[1]))
        boxes = sections_of(room, [m for m in marks if overlap(m, room)], to_units(kerf), small)
        whole = sum(b[2] - b[0] for b in boxes)
        for k, (x0, y0, x1, y1) in enumerate(boxes, 1):
            own = replace(
                stock, id=f"{stock.id}, section {k}", length=to_mm(x1 - x0), width=to_mm(y1 - y0),
                cost=stock.cost * (x1 - x0) / whole, trim_length=0.0, trim_width=0.0, defects=(),
            )  # fmt: skip
            found.append(ClearSection(n, x0 - corner[0], y0 - corner[1], own))
    return found


def sections_of(room: Box, defects: Sequence[Box], kerf: int, least: tuple[int, int]) -> tuple[Box, ...]:
    """The best clear sections of a board, from its near end; large ones are worth more than their area.

    Args:
        room: the trimmed board (units).
        defects: rectangles on it (units).
        kerf: the saw's cut (units).
        least: length and width of the smallest piece (units); smaller sections are worth nothing.
    """
    ends = sorted({min(max(x, room[0]), room[2]) for d in defects for x in (d[0], d[2])} | {room[2]})
    known: dict[int, tuple[float, tuple[Box, ...]]] = {room[2]: (0.0, ())}

    def best(start: int) -> tuple[float, tuple[Box, ...]]:
        if start not in known:
            known[start] = _best(start)
        return known[start]

    def _best(start: int) -> tuple[float, tuple[Box, ...]]:
        ahead = [x for x in ends if x > start]
        top = best(ahead[0])
        for end in ahead:
            y0, y1 = _widest((start, room[1], end, room[3]), defects)
            if end - start >= least[0] and y1 - y0 >= least[1]:
                worth, rest = best(min(end + kerf, room[2]))
                worth += (float(end - start) * (y1 - y0)) ** LARGER
                if worth > top[0] * (1 + 1e-9):
                    top = worth, ((start, y0, end, y1), *rest)
        return top

    return best(room[0])[1]


def _widest(box: Box, defects: Sequence[Box]) -> tuple[int, int]:
    """The widest part of a piece, right along it, that no defect touches: from, to."""
    marks = sorted((d[1], d[3]) for d in defects if overlap(d, box))
    low, top = box[1], (box[1], box[1])
    for y0, y1 in (*marks, (box[3], box[3])):
        if y0 - low > top[1] - top[0]:
            top = low, y0
        low = max(low, y1)
    return top
