"""What a search for a layout knows so far."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction

from boardwright.stock.bounds import rounded
from boardwright.stock.instance import Axis, Instance
from boardwright.stock.master import Column
from boardwright.stock.patterns import Pattern
from boardwright.stock.scaled import Room, Scaled

REPEATED = 1.5
"""Copies of an item, on average, above which patterns are taken many times and rounding them pays."""
BEAM_START = 200_000
"""Work that starting a small beam counts for."""


@dataclass(slots=True)
class Search:
    """What is known so far."""

    instance: Instance
    ways: tuple[Axis, ...]
    questions: list[Scaled]
    seed: int
    effort: float
    stop: Callable[[], bool]
    progress: Callable[[str], None]
    pool: dict[tuple[int, Pattern, int], Column] = field(default_factory=dict)
    best: list[Column] = field(default_factory=list)
    best_key: tuple[float, ...] = ()
    cost_bound: Fraction = Fraction(0)
    bins_bound: int = 0
    tried: int = 0

    @property
    def wanted(self) -> tuple[int, ...]:
        """Copies of each item."""
        return self.questions[0].counts

    @property
    def rooms(self) -> tuple[Room, ...]:
        """The stocks, for the first of the ways."""
        return self.questions[0].rooms

    @property
    def repeated(self) -> bool:
        """Whether items have so many copies, on average, that patterns are taken many times."""
        return sum(self.wanted) >= REPEATED * sum(n > 0 for n in self.wanted)

    def sizes(self) -> list[int]:
        """Areas of the items (grid)."""
        return [way[0].a * way[0].b if way else 0 for way in self.questions[0].by_item]

    def add(self, way: int, what: Pattern) -> list[Column]:
        """Keep a pattern on the stocks that it fits and that may be worth it; what is new comes back."""
        if not what.sections:
            return []
        fresh = []
        fitting = [r for r in self.questions[way].rooms if r.a >= what.a and r.b >= what.b]
        plenty = [r for r in fitting if r.count is None]
        cheapest = min(plenty, key=lambda r: (r.cost, r.a * r.b, r.stock), default=None)
        for room in fitting:
            cheap = room.count is not None and (cheapest is None or room.cost < cheapest.cost)
            if cheap or room is cheapest:
                key = (way, what, room.stock)
                if key not in self.pool:
                    self.pool[key] = Column(way, what, room)
                    fresh.append(self.pool[key])
        return fresh

    def offer(self, columns: Sequence[Column], ties: bool = False) -> None:
        """Compare a whole choice of patterns with the best so far.

        Less missing, less cost, fewer stocks and more empty space on few of them are better, in this order.

        Args:
            columns: the choice.
            ties: take it when it is as good as the best.
        """
        sizes = self.sizes()
        held = [sum(c.what.counts[i] for c in columns) for i in range(len(self.wanted))]
        missing = sum(size * max(0, n - h) for size, n, h in zip(sizes, self.wanted, held, strict=True))
        gathered = 0
        for column in columns:
            area = sum(size * n for size, n in zip(sizes, column.what.counts, strict=True))
            gathered -= max(0, column.room.a * column.room.b - area) ** 2
        key = (missing, round(sum(c.room.cost for c in columns), 6), len(columns), gathered)
        self.tried += 1
        if not self.best_key or key < self.best_key or (ties and key == self.best_key):
            better = not self.best_key or key[:3] < self.best_key[:3]
            self.best, self.best_key = list(columns), key
            if better and not missing:
                self.progress(f"{len(columns)} used, at least {self.bins_bound} needed")

    def done(self) -> bool:
        """Whether the best choice cannot be bettered, or time is up."""
        if self.stop():
            return True
        if not self.best_key or self.best_key[0] > 0:
            return False
        bound = rounded(self.instance, self.cost_bound)
        return self.best_key[1] <= bound + 1e-9 * max(1.0, bound) and (
            self.best_key[2] <= self.bins_bound or len(self.rooms) == 1
        )

    def bound(self, found: tuple[Fraction, int]) -> None:
        """Keep the better of two bounds."""
        self.cost_bound = max(self.cost_bound, found[0])
        self.bins_bound = max(self.bins_bound, found[1])

    def beam(
        self,
        way: int,
        needed: tuple[int, ...],
        others: Sequence[Column],
        width: int,
        guide: int,
        limit: float,
    ) -> tuple[float, list[Column]]:
        """Lay some copies out by a beam, on stocks that other patterns leave.

        Args:
            way: the first cut.
            needed: copies of each item.
            others: patterns that are used already.
            width: most nodes of a level.
            guide: the guide of the beam.
            limit: most that it may cost.

        Returns:
            The work that was done, and the patterns; none when there is no such layout.
        """
        from boardwright.stock.beam import Beams

        question = self.questions[way]
        used = Counter(c.room.stock for c in others)
        rooms = tuple(
            r if r.count is None else replace(r, count=r.count - used[r.stock]) for r in question.rooms
        )
        found = Beams(replace(question, counts=needed, rooms=rooms), self.seed).run(
            width, guide, limit, self.stop, sampled=0
        )
        whole = {r.stock: r for r in question.rooms}
        columns = [Column(way, what, whole[room.stock]) for what, room in found.whole or []]
        for column in columns:
            self.add(way, column.what)
        return found.work + BEAM_START, columns
