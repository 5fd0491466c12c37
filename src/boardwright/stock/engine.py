"""The search for a layout: quick layouts, then patterns that are priced, then the best choice of all."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from random import Random

from boardwright.stock.bounds import rounded, size_bound, value_bound
from boardwright.stock.construct import RULES, insert_all, orders, shuffled
from boardwright.stock.finish import finished
from boardwright.stock.instance import Axis, Instance
from boardwright.stock.master import Column, LinearChoice, choose
from boardwright.stock.patterns import Pattern, pattern
from boardwright.stock.pricing import Pricer, fill
from boardwright.stock.scaled import Room, Scaled, scale
from boardwright.stock.solution import Answer

INSERTIONS = 150_000
"""Places that are looked at by quick layouts at effort 1, roughly."""
ROUNDS = 40
"""Most rounds of pricing at effort 1."""
DIVE_ROUNDS = 6
"""Most rounds of pricing after each pattern that is taken."""
MOST_COLUMNS = 1500
"""Most patterns in the whole-number choice."""


@dataclass(slots=True)
class _Search:
    """What is known so far."""

    instance: Instance
    ways: tuple[Axis, ...]
    questions: list[Scaled]
    seed: int
    effort: float
    stop: Callable[[], bool]
    pool: dict[tuple[int, Pattern, int], Column] = field(default_factory=dict)
    best: list[Column] = field(default_factory=list)
    best_key: tuple[float, ...] = ()
    cost_bound: Fraction = Fraction(0)
    bins_bound: int = 0
    tried: int = 0

    @property
    def wanted(self) -> tuple[int, ...]:
        return self.questions[0].counts

    @property
    def rooms(self) -> tuple[Room, ...]:
        return self.questions[0].rooms

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

    def offer(self, columns: Sequence[Column]) -> None:
        """Compare a whole choice of patterns with the best so far."""
        held = [sum(c.what.counts[i] for c in columns) for i in range(len(self.wanted))]
        missing = sum(
            size * max(0, n - h) for size, n, h in zip(self.sizes(), self.wanted, held, strict=True)
        )
        waste = -sum((c.room.a * c.room.b - c.what.a * c.room.b) ** 2 for c in columns)
        key = (missing, round(sum(c.room.cost for c in columns), 6), len(columns), waste)
        self.tried += 1
        if not self.best_key or key < self.best_key:
            self.best, self.best_key = list(columns), key

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


def solve(
    instance: Instance,
    method: str,
    seed: int = 0,
    effort: float = 1.0,
    stop: Callable[[], bool] = lambda: False,
) -> Answer:
    """Lay out what is wanted on stock at least cost.

    The same arguments give the same answer on every run, as long as `stop` never says stop.

    Args:
        instance: the question; it must have no `problems`.
        method: what to say of the method.
        seed: of the random numbers.
        effort: how long to try; work grows with it. No clock is read.
        stop: asked now and then; when it says True, the best answer so far is taken.

    Returns:
        The answer, with bounds.
    """
    ways: tuple[Axis, ...] = ("rip", "crosscut") if instance.first_cut == "any" else (instance.first_cut,)
    search = _Search(instance, ways, [scale(instance, way) for way in ways], seed, effort, stop)
    if any(search.wanted) and search.rooms:
        search.bound(size_bound(instance, search.wanted))
        _quick(search)
        if not search.done():
            _price(search)
    return finished(
        instance,
        ways,
        search.questions,
        search.best,
        (search.cost_bound, search.bins_bound),
        (method, seed, search.tried),
    )


def _room_orders(rooms: Sequence[Room]) -> list[list[Room]]:
    """Orders in which stocks are opened: cheap by area, small first, large first."""
    by_area = sorted(rooms, key=lambda r: (r.cost / (r.a * r.b), -r.a * r.b, r.stock))
    small = sorted(rooms, key=lambda r: (r.a * r.b, r.cost, r.stock))
    result = [by_area]
    for order in (small[::-1], small):
        if order not in result:
            result.append(order)
    return result


def _quick(search: _Search) -> None:
    """Quick layouts in many orders, also disturbed ones."""
    total = sum(search.wanted)
    runs = max(6, min(300, int(INSERTIONS * search.effort / (total * (4 + total / 8)))))
    random = Random(search.seed)
    plans = [
        (way, order, rule, rooms)
        for rule in (0, 4, 1, 5, 2, 6, 3, 7)
        for rooms in range(len(_room_orders(search.rooms)))
        for order in range(6)
        for way in range(len(search.ways))
    ]
    for n in range(runs):
        if n > 0 and search.done():
            return
        way, order, rule, rooms = plans[n % len(plans)]
        question = search.questions[way]
        copies = orders(question, search.wanted)[order]
        if n >= len(plans) or (runs > 12 and n % 2 == 1):
            copies = shuffled(question, copies, random, 0.05 + 0.4 * random.random())
        filled, _ = insert_all(question, copies, RULES[rule], _room_orders(question.rooms)[rooms])
        for what, _room in filled:
            search.add(way, what)
        search.offer([Column(way, what, _cheapest(search, way, what, room)) for what, room in filled])


def _cheapest(search: _Search, way: int, what: Pattern, room: Room) -> Room:
    fitting = [r for r in search.questions[way].rooms if r.count is None and r.a >= what.a and r.b >= what.b]
    return min([room, *fitting], key=lambda r: (r.cost, r.stock != room.stock))


def _price(search: _Search) -> None:
    """Patterns for the values that the linear choice gives, until nothing new comes; then whole choices."""
    choice = LinearChoice(search.wanted, search.rooms)
    for column in search.pool.values():
        choice.add(column)
    values = _rounds(search, choice, search.wanted, max(4, int(ROUNDS * search.effort)))
    search.bound(value_bound(search.instance, search.ways, search.wanted, values))
    if not search.done():
        _dive(search, choice)
    if not search.done():
        _choose(search, values)


def _rounds(search: _Search, choice: LinearChoice, wanted: Sequence[int], most: int) -> list[float]:
    """Price patterns and offer them, round by round; the values of the items come back."""
    values = choice.solve()
    for number in range(most):
        if search.stop():
            break
        fresh = []
        whole = _whole(values)
        for way, question in enumerate(search.questions):
            for a, b in dict.fromkeys((r.a, r.b) for r in question.rooms):
                for what in _priced(question, whole, wanted, (a, b), number):
                    fresh += search.add(way, what)
        search.tried += 1
        if not fresh:
            break
        for column in fresh:
            choice.add(column)
        values = choice.solve()
    return values


def _whole(values: Sequence[float]) -> list[int]:
    top = max(values) or 1.0
    return [round(v / top * 1_000_000) for v in values]


def _priced(
    question: Scaled, values: Sequence[int], wanted: Sequence[int], room: tuple[int, int], number: int
) -> list[Pattern]:
    best = pattern(question, Pricer(question, values, wanted, room).sections(room[0]))
    if all(n <= w for n, w in zip(best.counts, wanted, strict=True)) or number % 3 == 2:
        return [best]
    return [best, fill(question, values, wanted, room)]


def _dive(search: _Search, choice: LinearChoice) -> None:
    """Take the patterns that the linear choice uses most, want the rest only, price again, and so on."""
    remaining = list(search.wanted)
    taken: list[Column] = []
    used: Counter[int] = Counter()
    while any(remaining) and not search.stop():
        choice.narrow(remaining, used)
        choice.solve()
        _rounds(search, choice, remaining, DIVE_ROUNDS)
        shares = choice.uses()
        proper = [n for n, x in enumerate(shares) if x > 1e-6 and _within(choice.columns[n], remaining)]
        if not proper:
            break
        best = max(proper, key=lambda n: (shares[n], -n))
        for n in [n for n in proper if shares[n] >= 1] or [best]:
            for _ in range(max(1, int(shares[n] + 1e-6))):
                if _within(choice.columns[n], remaining):
                    taken.append(choice.columns[n])
                    used[choice.columns[n].room.stock] += 1
                    held = choice.columns[n].what.counts
                    remaining = [r - h for r, h in zip(remaining, held, strict=True)]
    search.offer(taken)


def _within(column: Column, remaining: Sequence[int]) -> bool:
    return all(n <= r for n, r in zip(column.what.counts, remaining, strict=True))


def _choose(search: _Search, values: Sequence[float]) -> None:
    columns = list(search.pool.values())
    if len(columns) > MOST_COLUMNS:
        used = {(c.way, c.what, c.room.stock) for c in search.best}

        def loss(c: Column) -> float:
            worth = sum(v * min(n, w) for v, n, w in zip(values, c.what.counts, search.wanted, strict=True))
            return c.room.cost - worth

        ranked = sorted(range(len(columns)), key=lambda n: (loss(columns[n]), n))
        keep = set(ranked[:MOST_COLUMNS])
        columns = [c for n, c in enumerate(columns) if n in keep or (c.way, c.what, c.room.stock) in used]
    start = [search.best.count(c) for c in columns]
    uses = choose(
        columns,
        search.wanted,
        search.rooms,
        search.sizes(),
        start,
        search.seed,
        0.6 * search.effort,
        search.bins_bound,
    )
    search.offer([c for c, n in zip(columns, uses, strict=True) for _ in range(n)])
