"""Panels from boards as an answer to the layout question: the boards, and where each strip lies on them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from boardwright.stock.blanks import ids_of
from boardwright.stock.clear_sections import ClearSection
from boardwright.stock.emit import emit
from boardwright.stock.emit_placed import emit_placed
from boardwright.stock.instance import Instance, StockSize
from boardwright.stock.lots import LotRequest
from boardwright.stock.panel_deal import Dealt, cost_of, used_of
from boardwright.stock.panel_question import PanelQuestion, paid
from boardwright.stock.panels import PanelAnswer
from boardwright.stock.patterns import Pattern
from boardwright.stock.placed import PlacedSection, PlacedStock, PlacedStrip, Spot
from boardwright.stock.scaled import Shape
from boardwright.stock.solution import Answer
from boardwright.stock.units import to_mm, to_units

Key = tuple[str, int]
"""Id of a part and number of a strip; 0 for a panel, whose strips are not known yet."""
Owners = list[list[Key]]
"""What each thing that is wanted stands for, copy by copy."""
ItemOf = Callable[[int, int, float], int]
"""Item of the layout question, by what is wanted, its copy, and the width of its strip."""


@dataclass(frozen=True, slots=True)
class CutBoard:
    """A board as it is cut: number of its size in the layout question, its clear sections, what is paid for it."""

    stock: int
    sections: tuple[tuple[ClearSection, Dealt], ...]
    cost: float


def on_boards(
    question: PanelQuestion,
    answer: PanelAnswer,
    sections: Sequence[ClearSection],
    stocks: Sequence[StockSize],
) -> tuple[CutBoard, ...]:
    """The sections that an answer uses, gathered on their boards.

    Args:
        question: of panels, its boards the clear sections.
        answer: to it.
        sections: where they lie.
        stocks: of the layout question.
    """
    seen: Counter[int] = Counter()
    found: dict[tuple[int, int], list[Dealt]] = {}
    for dealt in sorted(answer.boards, key=lambda d: d.board):
        found.setdefault((sections[dealt.board].stock, seen[dealt.board]), []).append(dealt)
        seen[dealt.board] += 1

    def cost(stock: StockSize, own: Sequence[Dealt]) -> float:
        if not stock.defects:
            return cost_of(question, own[0])
        used = to_mm(sections[own[-1].board].x) + used_of(question, own[-1])
        return paid(stock, used, question.kerf, question.keep)

    return tuple(
        CutBoard(n, tuple((sections[d.board], d) for d in found[n, k]), cost(stocks[n], found[n, k]))
        for n, k in sorted(found)
    )


def as_answer(
    instance: Instance, request: LotRequest, boards: Sequence[CutBoard], owners: Owners, rounds: int
) -> Answer:
    """The boards as an answer to the layout question, cut the same way.

    Args:
        instance: the layout question.
        request: the lot, with the strips that were chosen.
        boards: as they are cut.
        owners: what each thing that is wanted stands for.
        rounds: how often divisions were priced.
    """
    sizes = {(round(i.length, 6), round(i.width, 6)): n for n, i in enumerate(instance.items)}

    def item_of(kind: int, copy: int, width: float) -> int:
        length, own = _size(request, owners[kind][copy])
        return sizes[round(length, 6), round(own or width, 6)]

    copies = [0] * len(instance.items)
    bins = []
    for board in boards:
        if instance.stocks[board.stock].defects:
            bins.append(emit_placed(instance, _placed(instance, board, item_of), copies))
            continue
        [(_, dealt)] = board.sections
        sections = tuple(
            tuple(
                tuple(Shape(item_of(kind, copy, s.width), False, 0, 0) for kind, copy in s.pieces)
                for s in section
            )
            for section in dealt.sections
        )
        bins.append(emit(instance, "crosscut", Pattern(sections, (), 0, 0), board.stock, copies))
    cost = sum(instance.stocks[b.stock].cost for b in boards)
    method = "strips chosen together with the boards"
    return Answer(tuple(bins), (), cost, 0.0, 1, False, method, 0, rounds)


def _placed(instance: Instance, board: CutBoard, item_of: ItemOf) -> PlacedStock:
    """A board with defects: its clear sections with their strips, and what lies before and beside them as waste."""
    kerf = to_units(instance.kerf)
    found: list[PlacedSection] = []
    x = 0
    for clear, dealt in board.sections:
        if clear.x > x:
            found.append(PlacedSection((), clear.x))
            x = clear.x
        for section in dealt.sections:
            strips = [PlacedStrip((), clear.y)] if clear.y else []
            y, end = clear.y, x
            for strip in section:
                spots = []
                at = x
                for kind, copy in strip.pieces:
                    item = item_of(kind, copy, strip.width)
                    long, wide = (
                        to_units(s) + kerf for s in (instance.items[item].length, instance.items[item].width)
                    )
                    spots.append(Spot(item, False, long, wide, at, y))
                    at += long
                y += to_units(strip.width) + kerf
                strips.append(PlacedStrip(tuple(spots), y))
                end = max(end, at)
            found.append(PlacedSection(tuple(strips), end))
            x = end
    return PlacedStock(board.stock, "crosscut", tuple(found))


def _size(request: LotRequest, key: Key) -> tuple[float, float]:
    """Length and width of what is cut for a piece: its blank's, or its own; no width for strips of a panel."""
    for blank in request.blanks:
        if blank.pieces[0][1:] == key:
            return blank.length, blank.width
    part = next(p for p in request.parts if key[0] in ids_of(p))
    return part.strip[0], part.strip[1] if key[1] else 0.0
