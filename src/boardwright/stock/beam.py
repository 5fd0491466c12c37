"""Whole layouts by a beam search over parts (see `kernels.beam`)."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from boardwright.stock.patterns import Pattern, Section, pattern
from boardwright.stock.scaled import Room, Scaled

GUIDES = 4
LEVEL_WORK = 4_000_000
"""Children that are looked at, roughly, between two looks at `stop`."""
BANK_ENTRIES = 60_000_000
"""Most entries of the table of steps: it bounds the width."""
SAMPLED = 6
"""Nodes of the last level whose full stocks are read as patterns."""

Filled = list[tuple[Pattern, Room]]


@dataclass(frozen=True, slots=True)
class Found:
    """What one beam came to.

    Attributes:
        whole: the stocks of the best whole layout; None when no node reached the end below the limit.
        full: full stocks of other nodes.
        work: children that were looked at, roughly.
    """

    whole: Filled | None
    full: Filled
    work: int


class Beams:
    """Beams for one direction of first cut."""

    def __init__(self, question: Scaled, seed: int) -> None:
        from boardwright.stock.kernels.beam import Question

        self.question = question
        self.total = sum(question.counts)
        areas = [way[0].a * way[0].b if way else 0 for way in question.by_item]
        plenty = self.total
        rooms = [(r.a, r.b, plenty if r.count is None else min(r.count, plenty)) for r in question.rooms]
        costs = [r.cost or 1e-9 for r in question.rooms]
        wanted = {i for i, n in enumerate(question.counts) if n}
        self.shapes = [s for s in question.shapes if s.item in wanted]
        area = float(sum(n * x for n, x in zip(question.counts, areas, strict=True)))
        rate = min(c / (r[0] * r[1]) for c, r in zip(costs, rooms, strict=True))
        self.whole = (area * rate, area)
        self.dear = np.array([c / (r[0] * r[1]) for c, r in zip(costs, rooms, strict=True)])
        codes = np.random.default_rng(seed).integers(1, 2**63, len(areas) + len(rooms), dtype=np.uint64)
        self.arrays = Question(
            np.array([(s.item, s.a, s.b) for s in self.shapes], np.int64),
            np.array(areas, np.int64),
            np.array(rooms, np.int64),
            np.array(costs, np.float64),
            codes,
            question.sections,
        )

    @property
    def widest(self) -> int:
        """Widest beam that is worth its memory."""
        return max(1, BANK_ENTRIES // (3 * self.total + 2 * len(self.question.counts)))

    def run(
        self, width: int, guide: int, limit: float, stop: Callable[[], bool], sampled: int = SAMPLED
    ) -> Found:
        """Search with one width and one guide.

        Args:
            width: most nodes of a level.
            guide: which guide, from 0 to GUIDES - 1.
            limit: most that a layout may cost.
            stop: asked between levels; when it says True, the beam ends.
            sampled: of how many more nodes the full stocks are read.

        Returns:
            What was found.
        """
        from boardwright.stock.kernels.beam import advance

        bank = self._bank(width)
        per_level = width * len(self.shapes) * 4
        stride = max(1, LEVEL_WORK // per_level)
        level, alive, going, work = 0, 1, True, 0
        slack = limit + 1e-9 * max(1.0, limit)
        while level < self.total and going and not (level and stop()):
            start, last = level, min(self.total, level + stride)
            level, alive, going = advance(
                self.arrays, bank, level, last, alive, width, guide, slack, self.whole, self.dear
            )
            work += (level - start + 1) * per_level
        return self._found(bank, level, alive, work, sampled)

    def _bank(self, width: int) -> Any:
        from boardwright.stock.kernels.bank import new_bank
        from boardwright.stock.kernels.beam import FRONTIER

        counts = (len(self.question.counts), len(self.question.rooms))
        bank = new_bank(self.total, width, FRONTIER, 3, counts, (2,), np.int32)
        bank.left[0, 0] = self.question.counts
        return bank

    def _found(self, bank: Any, level: int, alive: int, work: int, sampled: int) -> Found:
        """Read the layouts of some nodes back."""
        nodes = sorted({n * alive // sampled for n in range(sampled)})
        if level == self.total:
            state = level % 2
            paid = bank.paid[state, :alive]
            last = self.arrays.costs[bank.frontier[state, :alive, 5]]
            reach = bank.frontier[state, :alive, :2].sum(axis=1)
            best = min(range(alive), key=lambda n: (round(paid[n] + last[n], 6), reach[n], n))
            nodes = [best, *(n for n in nodes if n != best)]
        layouts = [self._layout(bank, level, n) for n in nodes]
        whole = layouts.pop(0) if level == self.total else None
        return Found(whole, [filled for layout in layouts for filled in layout[:-1]], work)

    def _layout(self, bank: Any, level: int, node: int) -> Filled:
        steps = []
        for depth in range(level - 1, -1, -1):
            parent, shape, kind = (int(x) for x in bank.trace[depth, node])
            steps.append((shape, kind))
            node = parent
        stocks: list[tuple[list[list[list[Any]]], Room]] = []
        for shape, kind in reversed(steps):
            part = self.shapes[shape]
            if kind >= 3:
                stocks.append(([[[part]]], self.question.rooms[kind - 3]))
            elif kind == 2:
                stocks[-1][0].append([[part]])
            elif kind == 1:
                stocks[-1][0][-1].append([part])
            else:
                stocks[-1][0][-1][-1].append(part)
        return [(self._pattern(sections), room) for sections, room in stocks]

    def _pattern(self, sections: Sequence[Sequence[Sequence[Any]]]) -> Pattern:
        tidy: list[Section] = [tuple(tuple(strip) for strip in section) for section in sections]
        return pattern(self.question, tidy)
