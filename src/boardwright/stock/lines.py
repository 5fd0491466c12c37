"""Whole choices of patterns along bars: all patterns that a better answer may use, and an exact choice of them.

A pattern whose worth, by the values of the linear choice, falls short of its bar's cost by more than the
distance from that choice to the next better whole answer is in no such answer (reduced-cost fixing). What is
left is often few enough to choose from exactly; when no choice is better, the best answer is proven.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from math import ceil
from random import Random

import numpy as np

from boardwright.stock.bounds import rounded
from boardwright.stock.master import COST_STEPS, Column, choose, cost_steps
from boardwright.stock.patterns import Pattern, pattern
from boardwright.stock.pricing import Pricer
from boardwright.stock.scaled import Scaled
from boardwright.stock.search import Search

MOST_FILLS = 1500
"""Most patterns of one size of bar that are chosen from."""
MOST_LIFTS = 20
"""Most times that the bound is raised by one step."""
MOST_EFFORT = 4.0
"""Longest exact choice, in the solver's deterministic seconds."""
REST_EFFORT = 0.3
"""The same for what remains when some patterns are taken."""
MENDS, MEND_PIECES, MEND_EFFORT = 80, (16, 36), 0.05
"""How often in a row some bars of the best answer are cut again in vain, how many pieces are on them at most (least
and most), and the limit of each choice, as REST_EFFORT."""

MEND_UP_TO = 250
"""Most pieces of a question in which that pays; among more, taking patterns again by chance finds better answers."""


def is_line(search: Search) -> bool:
    """Whether all parts are as wide as the stocks, of which there is no lack: a question of lengths only."""
    question = search.questions[0]
    if any(r.count is not None for r in question.rooms):
        return False
    return len(search.ways) == 1 and all(r.a == 1 for r in question.rooms) and not question.sections


def choose_exactly(search: Search, values: Sequence[int], step: float) -> None:
    """Choose from all patterns that an answer as cheap as the bound may use; raise the bound when there is none.

    Args:
        search: what is known; every copy has a place in its best answer.
        values: of one copy of each item, in whole numbers, from the linear choice; any values are right.
        step: least difference between two costs.
    """
    for _ in range(MOST_LIFTS):
        target = rounded(search.instance, search.cost_bound)
        if search.done() or search.best_key[0]:
            return
        columns, complete = _columns(search.questions[0], values, target)
        found, settled = _chosen(search, search.questions[0], columns, target, MOST_EFFORT)
        search.offer(found)
        if found or not (complete and settled):
            return
        bins = len(search.best) if len(search.rooms) == 1 and search.best_key[1] <= target + step else 0
        search.bound((Fraction(cost_steps(target + step), COST_STEPS), bins))


def _chosen(
    search: Search, question: Scaled, columns: list[Column], target: float, effort: float
) -> tuple[list[Column], bool]:
    """A choice of columns for all that a question wants that costs no more than the target.

    Returns:
        The columns, none when no choice was found; and whether that is known for sure.
    """
    missing = [i for i, n in enumerate(question.counts) if n and not any(c.what.counts[i] for c in columns)]
    if missing:
        return [], True
    uses, settled = choose(
        columns,
        question.counts,
        question.rooms,
        search.sizes(),
        [0] * len(columns),
        search.seed,
        min(effort, search.effort),
        0,
        search.stop,
        target,
    )
    return [c for c, n in zip(columns, uses, strict=True) for _ in range(n)], settled


def finish_exactly(
    search: Search,
    taken: Sequence[Column],
    remaining: tuple[int, ...],
    values: Sequence[int],
    target: float,
    effort: float = REST_EFFORT,
) -> None:
    """Choose bars for what remains when some patterns are taken, so that all costs no more than the target."""
    if search.best_key and not search.best_key[0]:
        rest = replace(search.questions[0], counts=remaining)
        target -= sum(c.room.cost for c in taken)
        columns, _ = _columns(rest, values, target)
        found, _ = _chosen(search, rest, columns, target, effort)
        for column in found:
            search.add(0, column.what)
        if found:
            search.offer([*taken, *found])


def mend_bars(search: Search, values: Sequence[int], random: Random, step: float) -> None:
    """Cut the pieces of some bars of the best answer from cheaper ones, some times.

    Args:
        search: what is known; every copy has a place in its best answer.
        values: of one copy of each item, in whole numbers.
        random: chooses the bars.
        step: least difference between two costs.
    """
    tries = 0 if sum(search.wanted) <= MEND_UP_TO else MENDS
    while tries < MENDS and not search.done():
        before = search.best_key[1]
        most = random.randint(*MEND_PIECES)
        order = random.sample(range(len(search.best)), len(search.best))
        again: set[int] = set()
        pieces = 0
        for n in order:
            pieces += sum(search.best[n].what.counts)
            if pieces > most and again:
                break
            again.add(n)
        kept = [c for n, c in enumerate(search.best) if n not in again]
        held = [sum(c.what.counts[i] for c in kept) for i in range(len(search.wanted))]
        needed = tuple(max(0, w - h) for w, h in zip(search.wanted, held, strict=True))
        finish_exactly(search, kept, needed, values, before - step, MEND_EFFORT)
        tries = tries + 1 if search.best_key[1] == before else 0


def _columns(question: Scaled, values: Sequence[int], target: float) -> tuple[list[Column], bool]:
    """Patterns that an answer of the target cost may use, the most worthy ones; and whether these are all."""
    worth = {}
    for room in question.rooms:
        worth[room.stock] = Pricer(question, values, question.counts, (room.a, room.b)).value(room.a)
    costs = {r.stock: Fraction(cost_steps(r.cost), COST_STEPS) for r in question.rooms}
    unit = min((costs[stock] / w for stock, w in worth.items() if w), default=Fraction(0))
    if not unit:
        return [], False
    linear = unit * sum(v * n for v, n in zip(values, question.counts, strict=True))
    slack = max(Fraction(0), Fraction(target) - linear)
    for halving in range(6):
        columns: list[Column] = []
        complete = True
        for room in question.rooms:
            least = ceil((costs[room.stock] - slack / 2**halving) / unit)
            found, every = _fills(question, values, room.b, max(0, least))
            complete = complete and every
            columns += [Column(0, what, room) for what in found]
        if complete:
            break
    return columns, complete and halving == 0


def _fills(question: Scaled, values: Sequence[int], capacity: int, least: int) -> tuple[list[Pattern], bool]:
    """Patterns along one bar that are worth enough, and whether these are all."""
    from boardwright.stock.kernels.lines import worthy

    shapes = sorted((s for s in question.shapes if question.counts[s.item]), key=lambda s: (-s.b, s.item))
    sizes = np.array([s.b for s in shapes], np.int64)
    worth = np.array([values[s.item] for s in shapes], np.int64)
    copies = np.array([question.counts[s.item] for s in shapes], np.int64)
    rows, every = worthy(sizes, worth, copies, capacity, least, MOST_FILLS)
    found = []
    for row in rows:
        parts = [shapes[k] for k in np.nonzero(row)[0] for _ in range(int(row[k]))]
        found.append(pattern(question, [tuple((p,) for p in parts)]))
    return found, every
