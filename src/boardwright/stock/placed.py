"""Layouts whose places matter: stocks with defects, limits of the cuts, parts in sequence, stocks in order."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import gcd, inf
from typing import Any, NamedTuple

import numpy as np

from boardwright.stock.instance import Axis, Instance, Limits, StockSize
from boardwright.stock.scaled import layings, roomy
from boardwright.stock.units import to_units

UNBOUND = 1 << 60
LEVEL_WORK = 400_000
"""Children that are tried, roughly, between two looks at `stop`."""
BANK_ENTRIES = 120_000_000
"""Most entries of the table of steps: it bounds the width."""


class Guide(NamedTuple):
    """How promising a node is: its share of waste, with what is likely to be lost of what is open.

    Attributes:
        power: of the mean area of the parts, by which the share is divided.
        strip: lost share of the strip beyond its parts, up to the end of the section.
        section: lost share of the section above its strips.
        closed_strip, closed_section: the same where none of the parts that come next fits there.
    """

    power: float
    strip: float
    section: float
    closed_strip: float
    closed_section: float


@dataclass(frozen=True, slots=True)
class Spot:
    """A part with the kerf on it and its place on the trimmed stock (units)."""

    item: int
    turned: bool
    a: int
    b: int
    at_a: int
    at_b: int


@dataclass(frozen=True, slots=True)
class PlacedStrip:
    """Parts of a strip, and where it ends (units)."""

    spots: tuple[Spot, ...]
    top: int


@dataclass(frozen=True, slots=True)
class PlacedSection:
    """Strips of a section, and where it ends (units)."""

    strips: tuple[PlacedStrip, ...]
    end: int


@dataclass(frozen=True, slots=True)
class PlacedStock:
    """One stock: its number, the first cut, the sections."""

    stock: int
    first: Axis
    sections: tuple[PlacedSection, ...]


@dataclass(frozen=True, slots=True)
class PlacedLayout:
    """Stocks that hold some copies or all.

    Attributes:
        stocks: in the order in which they were opened.
        key: area that is missing, cost, stocks, extent that is used of the last one: less is better.
        work: children that were tried.
        steps: how it came about, one row a part.
    """

    stocks: tuple[PlacedStock, ...]
    key: tuple[float, float, int, float]
    work: int
    steps: Any


def places_matter(instance: Instance) -> bool:
    """Whether a pattern cannot lie on a stock just anywhere, or not in any order."""
    marked = any(s.defects for s in instance.stocks)
    return marked or bool(instance.sequences) or instance.in_order or instance.limits != Limits()


def room_for(instance: Instance, item: int) -> bool:
    """Whether a part has a place on any stock, clear of defects, whatever else is cut from it.

    If it has one, it has one against edges or defects to its left and below it, a cut away from the edges.
    """
    kerf = to_units(instance.kerf)
    for stock in instance.stocks:
        length, width = roomy(stock, kerf)
        marks = defects_of(stock, (0, 1))
        for a, b, _ in layings(instance.items[item], kerf):
            for x in (0, *(max(d[2], kerf) for d in marks)):
                for y in (0, *(max(d[3], kerf) for d in marks)):
                    if x + a > length or y + b > width:
                        continue
                    box = (x, y, x + a - kerf, y + b - kerf)
                    if not any(
                        d[0] < box[2] and d[2] > box[0] and d[1] < box[3] and d[3] > box[1] for d in marks
                    ):
                        return True
    return False


def defects_of(stock: StockSize, order: tuple[int, int]) -> list[tuple[int, int, int, int]]:
    """Defects from the corner of the trimmed stock, in the directions a and b (units)."""
    trim = (to_units(stock.trim_length), to_units(stock.trim_width))
    found = []
    for d in stock.defects:
        low, high = (to_units(d.x0), to_units(d.y0)), (to_units(d.x1), to_units(d.y1))
        i, j = order
        found.append((low[i] - trim[i], low[j] - trim[j], high[i] - trim[i], high[j] - trim[j]))
    return found


class PlacedBeams:
    """Beams over parts with places, for one direction of first cut."""

    def __init__(self, instance: Instance, first: Axis, wanted: Sequence[int], seed: int) -> None:
        self.instance, self.first = instance, first
        self.order = (1, 0) if first == "rip" else (0, 1)
        self.wanted = wanted
        self.total = sum(wanted)
        self._build(seed)

    def _build(self, seed: int) -> None:
        """Everything in whole steps of the finest length that all sizes share."""
        from boardwright.stock.kernels.places import Places

        instance, kerf, limits = self.instance, to_units(self.instance.kerf), self.instance.limits
        rooms = [roomy(s, kerf) for s in instance.stocks]
        marks = [defects_of(s, self.order) for s in instance.stocks]
        sizes = [
            layings(item, kerf) if n else [] for item, n in zip(instance.items, self.wanted, strict=True)
        ]
        kept = [limits.least_section, limits.least_strip, limits.least_waste]
        lengths = [kerf, *(to_units(x) for x in kept)]
        lengths += [x for r in rooms for x in r] + [x for way in sizes for w in way for x in w[:2]]
        lengths += [x for mark in marks for d in mark for x in d]
        self.step = step = gcd(*lengths) or 1
        chains, queue = self._chains()
        ways, first_way = [], [0]
        self.turned: list[bool] = []
        for n, way in enumerate(sizes):
            for w in way:
                ways.append((n, w[self.order[0]] // step, w[self.order[1]] // step))
                self.turned.append(w[2])
            first_way.append(len(ways))
        areas = [float(way[0][0] // step) * (way[0][1] // step) if way else 0.0 for way in sizes]
        sides = [[min((w[o] // step for w in way), default=UNBOUND) for o in self.order] for way in sizes]
        sheets = [
            (r[self.order[0]] // step, r[self.order[1]] // step, self.total if s.count is None else s.count)
            for r, s in zip(rooms, instance.stocks, strict=True)
        ]
        flat = [tuple(x // step for x in d) for mark in marks for d in mark]
        first_defect = np.cumsum([0, *(len(mark) for mark in marks)])
        costs = np.array([s.cost or 1e-9 for s in instance.stocks], np.float64)
        self.dear = np.array([c / (float(a) * b) for c, (a, b, _) in zip(costs, sheets, strict=True)])
        area = sum(n * x for n, x in zip(self.wanted, areas, strict=True))
        self.whole = (area * float(self.dear.min()), area)
        self.alike = len({(s.cost, r) for s, r in zip(instance.stocks, rooms, strict=True)}) == 1
        codes = np.random.default_rng(seed).integers(1, 2**63, len(areas) + len(sheets), dtype=np.uint64)
        self.arrays = Places(
            np.array(chains, np.int64),
            np.array(queue, np.int64),
            np.array(first_way, np.int64),
            np.array(ways, np.int64),
            np.array(areas, np.float64),
            np.array(sides, np.int64).reshape(-1, 2),
            np.array(sheets, np.int64),
            np.array(flat, np.int64).reshape(-1, 4),
            first_defect.astype(np.int64),
            costs,
            codes,
            self._rules(),
        )

    def _rules(self) -> Any:
        from boardwright.stock.kernels.places import Rules

        limits, step = self.instance.limits, self.step
        most = UNBOUND if limits.most_section == inf else to_units(limits.most_section) // step
        least = [to_units(x) // step for x in (limits.least_section, limits.least_strip)]
        return Rules(
            to_units(self.instance.kerf) // step,
            to_units(limits.least_waste) // step,
            least[0],
            most,
            least[1],
            not limits.through_defects,
            limits != Limits(),
            self.instance.stages != 2,
            self.instance.in_order,
        )

    def _chains(self) -> tuple[list[tuple[int, int]], list[int]]:
        """Items in sequence are one chain; every other item is one with its copies."""
        number = {item.id: n for n, item in enumerate(self.instance.items)}
        sequences = [[number[name] for name in sequence] for sequence in self.instance.sequences]
        bound = {n for sequence in sequences for n in sequence}
        sequences += [[n] for n in number.values() if n not in bound]
        chains: list[tuple[int, int]] = []
        queue: list[int] = []
        for sequence in sequences:
            places = [n for n in sequence for _ in range(self.wanted[n])]
            if places:
                chains.append((len(queue), len(places)))
                queue += places
        return chains, queue

    @property
    def widest(self) -> int:
        """Widest beam that is worth its memory."""
        return max(1, BANK_ENTRIES // (7 * self.total + 2 * len(self.arrays.chains)))

    def run(
        self, width: int, guide: Guide, limit: float, stop: Callable[[], bool], start: Any = None
    ) -> PlacedLayout | None:
        """Search with one width and one guide.

        Args:
            width: most nodes of a level.
            guide: how promising a layout is.
            limit: most that a layout may cost, where stocks are alike with the last one counted up to the end
                of its last section.
            stop: asked between levels; when it says True, the beam ends.
            start: steps of a layout with which all layouts begin.

        Returns:
            The best layout of the last level that was reached; None when nothing could be placed.
        """
        from boardwright.stock.kernels.places import advance, new_groups, replay

        bank, groups = self._bank(width), new_groups(width)
        stride = max(1, LEVEL_WORK // (width * len(self.arrays.chains) * 2))
        level, alive, going, work = 0, 1, True, 0
        if start is not None and len(start):
            replay(self.arrays, bank, groups, start)
            level = len(start)
        while level < self.total and going and not (level and stop()):
            level, alive, going, tried = advance(
                self.arrays, bank, groups, level, min(self.total, level + stride), alive, width, guide, limit,
                self.whole, self.dear,
            )  # fmt: skip
            work += tried
        return self._best(bank, level, alive, work) if level else None

    def _bank(self, width: int) -> Any:
        from boardwright.stock.kernels.bank import new_bank
        from boardwright.stock.kernels.places import FRONTIER, STEP

        chains = self.arrays.chains
        counts = (len(chains), len(self.instance.stocks))
        bank = new_bank(self.total, width, FRONTIER, STEP, counts, (), np.int64)
        bank.left[0, 0] = chains[:, 1]
        return bank

    def _best(self, bank: Any, level: int, alive: int, work: int) -> PlacedLayout:
        from boardwright.stock.kernels.places import END, ROOM

        state = level % 2
        last = bank.frontier[state, :alive, ROOM]
        cost = np.round(bank.paid[state, :alive] + self.arrays.costs[last], 6)
        missing = self.whole[1] - bank.placed[state, :alive]
        if level == self.total:
            missing[:] = 0.0
        used = bank.used[state, :alive].sum(axis=1)
        reach = bank.frontier[state, :alive, END] * self.arrays.rooms[last, 1]
        best = min(range(alive), key=lambda n: (missing[n], cost[n], used[n], reach[n], n))
        key = (float(missing[best]), float(cost[best]), int(used[best]), float(reach[best]))
        steps = np.zeros((level, bank.trace.shape[2]), np.int64)
        for depth in range(level - 1, -1, -1):
            steps[depth] = bank.trace[depth, best]
            best = int(steps[depth, 0])
        return PlacedLayout(self._read(steps.tolist()), key, work, steps)

    def limit(self, key: tuple[float, float, int, float]) -> float:
        """Most that a layout may cost to be better than one with this key."""
        if key[0] > 0:
            return inf
        if not self.alike:
            return key[1] * (1 + 1e-9)
        return key[1] - float(self.arrays.costs[0]) + float(self.dear[0]) * key[3] * (1 - 1e-12)

    def _read(self, steps: Sequence[Sequence[int]]) -> tuple[PlacedStock, ...]:
        from boardwright.stock.kernels.places import NEW_SECTION, NEW_STOCK, NEW_STRIP

        stocks: list[tuple[int, list[list[list[Sequence[int]]]]]] = []
        for step in steps:
            kind = step[2]
            if kind >= NEW_STOCK:
                stocks.append((kind - NEW_STOCK, [[[step]]]))
            elif kind == NEW_SECTION:
                stocks[-1][1].append([[step]])
            elif kind == NEW_STRIP:
                stocks[-1][1][-1].append([step])
            else:
                stocks[-1][1][-1][-1].append(step)
        return tuple(
            PlacedStock(stock, self.first, tuple(self._section(section) for section in sections))
            for stock, sections in stocks
        )

    def _section(self, strips: Sequence[Sequence[Sequence[int]]]) -> PlacedSection:
        found = tuple(
            PlacedStrip(tuple(self._spot(step) for step in strip), strip[-1][5] * self.step)
            for strip in strips
        )
        return PlacedSection(found, strips[-1][-1][6] * self.step)

    def _spot(self, step: Sequence[int]) -> Spot:
        item, a, b = (int(x) for x in self.arrays.ways[step[1]])
        k = self.step
        return Spot(item, self.turned[step[1]], a * k, b * k, step[3] * k, step[4] * k)
