"""The last touches: nothing twice, the cheapest stock for a pattern, the largest leftover on the last."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from boardwright.stock.bounds import rounded
from boardwright.stock.construct import RULES, insert_all, orders
from boardwright.stock.emit import emit
from boardwright.stock.instance import Axis, Instance
from boardwright.stock.master import Column
from boardwright.stock.patterns import clipped
from boardwright.stock.scaled import Room, Scaled
from boardwright.stock.solution import COST_TOLERANCE, NO_STOCK_LEFT, TOO_LARGE, Answer, Bin, Unplaced


def finished(
    instance: Instance,
    ways: Sequence[Axis],
    questions: Sequence[Scaled],
    columns: Sequence[Column],
    bounds: tuple[Fraction, int],
    made: tuple[str, int, int],
) -> Answer:
    """The answer that a choice of patterns comes to.

    Args:
        instance: the question.
        ways: the first cuts that are allowed.
        questions: the question on a grid, one a first cut.
        columns: the patterns that are used; they may hold more than is wanted.
        bounds: on the cost and on the number of stocks.
        made: method, seed, layouts tried.

    Returns:
        The answer.
    """
    chosen = _exact(questions, columns)
    _complete(questions[0], chosen)
    if chosen:
        chosen[-1] = _last(instance, ways, questions, chosen)
    copies = [0] * len(instance.items)
    bins = tuple(emit(instance, ways[c.way], c.what, c.room.stock, copies) for c in chosen)
    unplaced, short = [], False
    for n, item in enumerate(instance.items):
        reason = NO_STOCK_LEFT if questions[0].counts[n] else TOO_LARGE
        unplaced += [Unplaced(item.id, copy, reason) for copy in range(copies[n] + 1, item.count + 1)]
        short = short or (reason == NO_STOCK_LEFT and copies[n] < item.count)
    cost = sum(c.room.cost for c in chosen)
    bound = 0.0 if short else rounded(instance, bounds[0])
    least = 0 if short else bounds[1]
    proven = not short and bound >= cost - COST_TOLERANCE * max(1.0, cost)
    return Answer(bins, tuple(unplaced), cost, bound, least, proven, *made)


def _exact(questions: Sequence[Scaled], columns: Sequence[Column]) -> list[Column]:
    """The patterns without what is too much, fullest first, each on the cheapest stock that takes it."""
    remaining = list(questions[0].counts)
    pending = list(columns)
    result: list[Column] = []
    used: Counter[int] = Counter()
    while pending:
        clips = [clipped(questions[c.way], c.what, remaining) for c in pending]
        areas = [
            _area(questions[c.way], clip.counts) / (c.room.a * c.room.b)
            for c, clip in zip(pending, clips, strict=True)
        ]
        n = max(range(len(pending)), key=lambda k: (areas[k], -k))
        if areas[n] == 0:
            break
        column, what = pending.pop(n), clips[n]
        result.append(Column(column.way, what, column.room))
        remaining = [r - h for r, h in zip(remaining, what.counts, strict=True)]
    used.update(c.room.stock for c in result)
    for n, column in enumerate(result):
        room = _cheapest(questions[column.way], column, used)
        used[column.room.stock] -= 1
        used[room.stock] += 1
        result[n] = Column(column.way, column.what, room)
    return result


def _complete(question: Scaled, chosen: list[Column]) -> None:
    """Put copies that are still missing on stocks that are still free."""
    missing = [n - sum(c.what.counts[i] for c in chosen) for i, n in enumerate(question.counts)]
    used = Counter(c.room.stock for c in chosen)
    free = [r if r.count is None else replace(r, count=r.count - used[r.stock]) for r in question.rooms]
    if any(missing):
        filled, _ = insert_all(question, orders(question, missing)[0], RULES[0], free)
        whole = {r.stock: r for r in question.rooms}
        chosen += [Column(0, what, whole[room.stock]) for what, room in filled]


def _cheapest(question: Scaled, column: Column, used: Counter[int]) -> Room:
    free = [
        r
        for r in question.rooms
        if r.a >= column.what.a and r.b >= column.what.b and (r.count is None or used[r.stock] < r.count)
    ]
    return min([column.room, *free], key=lambda r: (r.cost, r.stock != column.room.stock, r.stock))


def _area(question: Scaled, counts: Sequence[int]) -> int:
    return sum(n * way[0].a * way[0].b for n, way in zip(counts, question.by_item, strict=True) if n)


def _last(
    instance: Instance, ways: Sequence[Axis], questions: Sequence[Scaled], chosen: Sequence[Column]
) -> Column:
    """The last stock laid out again in many ways: the largest leftover wins, then the fewest cuts."""
    last = chosen[-1]
    wanted = last.what.counts
    tries = [last]
    for way, question in enumerate(questions):
        room = next(r for r in question.rooms if r.stock == last.room.stock)
        for order in orders(question, wanted):
            for rule in RULES:
                filled, outside = insert_all(question, order, rule, [room])
                if len(filled) == 1 and not outside:
                    tries.append(Column(way, filled[0][0], room))

    def worth(column: Column) -> tuple[float, int]:
        out = emit(instance, ways[column.way], column.what, column.room.stock, [0] * len(instance.items))
        return -_largest(out), len(out.cuts)

    return min(dict.fromkeys(tries), key=worth)


def _largest(out: Bin) -> float:
    return max(((r.x1 - r.x0) * (r.y1 - r.y0) for r in out.leftovers), default=0.0)
