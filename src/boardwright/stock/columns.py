"""Patterns for the values that the linear choice gives, and whole choices of patterns."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from fractions import Fraction
from math import inf
from random import Random

from boardwright.stock.bar_pricing import coarse_fills, fills, is_fine
from boardwright.stock.bounds import rounded, value_bound
from boardwright.stock.lines import finish_exactly, is_line
from boardwright.stock.master import Column, LinearChoice, choose, cost_step
from boardwright.stock.patterns import Pattern, pattern
from boardwright.stock.pricing import Pricer, fill
from boardwright.stock.scaled import Scaled
from boardwright.stock.search import Search

BOUND_EVERY = 8
"""Rounds of pricing between two looks at the bound."""
DIVE_ROUNDS = 6
"""Most rounds of pricing after each pattern that is taken."""
TOP = 1_000_000
"""The most valuable item has this value in whole numbers."""
TAILS = (320, 160, 80, 40)
"""Numbers of parts that remain at which beams lay them out."""
REST = (100, 50)
"""Numbers of pieces that remain at which bars for them are chosen exactly."""
TAIL_WIDTH = 64
MOST_COLUMNS = 1500
"""Most patterns in the whole-number choice."""
MOST_CHOICE = 0.3
"""Longest whole-number choice, in the solver's deterministic seconds."""


def rounds(
    search: Search, choice: LinearChoice, wanted: Sequence[int], most: int, coarse: bool = False
) -> list[float]:
    """Price patterns and offer them, round by round; the values of the items come back.

    With all that is wanted in the choice, they end as soon as they cannot raise the bound any more.

    Args:
        search: what is known; new patterns go to its pool.
        choice: the linear choice.
        wanted: copies of each item.
        most: rounds.
        coarse: bars with a fine grid are looked at on a coarse one only.
    """
    for column in list(search.pool.values())[len(choice.columns) :]:
        choice.add(column)
    values = choice.solve()
    all_wanted = tuple(wanted) == search.wanted
    line = is_line(search)
    for number in range(most):
        if search.stop():
            break
        whole = whole_values(values)
        fresh = []
        if line:
            costs = {r.stock: r.cost * TOP / (max(values) or 1.0) for r in search.rooms}
            for what in coarse_fills(search.questions[0], whole, wanted, costs):
                fresh += search.add(0, what)
        if not fresh and not (coarse and line and is_fine(search.questions[0])):
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
        if all_wanted and _settled(search, choice, values, number):
            break
    return values


def _settled(search: Search, choice: LinearChoice, values: Sequence[float], number: int) -> bool:
    """Whether the linear choice, rounded up, is no dearer than the bound, which is worked out now and then.

    Then more rounds cannot raise the bound. Where items have many copies they still go on up to the time when
    the bound is looked at: their patterns are worth having.
    """
    if number % BOUND_EVERY == BOUND_EVERY - 1:
        search.bound(value_bound(search.instance, search.ways, search.wanted, values))
    elif search.repeated:
        return False
    least = rounded(search.instance, Fraction(max(0.0, choice.cost * (1 - 1e-9))))
    return search.done() or least <= rounded(search.instance, search.cost_bound)


def whole_values(values: Sequence[float]) -> list[int]:
    """Values in whole numbers, the greatest of them TOP."""
    top = max(values) or 1.0
    return [round(v / top * TOP) for v in values]


def _priced(
    question: Scaled, values: Sequence[int], wanted: Sequence[int], room: tuple[int, int], number: int
) -> list[Pattern]:
    if room[0] == 1:
        return fills(question, values, wanted, room[1])
    best = pattern(question, Pricer(question, values, wanted, room).sections(room[0]))
    if all(n <= w for n, w in zip(best.counts, wanted, strict=True)) or number % 3 == 2:
        return [best]
    return [best, fill(question, values, wanted, room)]


def dive(search: Search, choice: LinearChoice, random: Random | None = None) -> float:
    """Take the patterns that the linear choice uses most, want the rest only, price again, and so on.

    What remains is now and then laid out by beams, too: they are better at a few odd parts.

    Args:
        search: what is known.
        choice: the linear choice; it wants everything again afterwards.
        random: takes patterns by chance, the more used the likelier; None takes the most used one.

    Returns:
        The work that the beams did.
    """
    remaining = list(search.wanted)
    taken: list[Column] = []
    used: Counter[int] = Counter()
    tails = [n for n in (REST if is_line(search) else TAILS) if n < sum(remaining)]
    work = 0.0
    while any(remaining) and not search.stop():
        choice.narrow(remaining, used)
        choice.solve()
        values = rounds(search, choice, remaining, DIVE_ROUNDS, coarse=True)
        shares = choice.uses()
        proper = [n for n, x in enumerate(shares) if x > 1e-6 and _within(choice.columns[n], remaining)]
        if not proper:
            break
        whole = [n for n in proper if shares[n] >= 1]
        if random is not None and not whole:
            whole = random.choices(proper, [shares[n] ** 2 for n in proper])
        for n in whole or [max(proper, key=lambda n: (shares[n], -n))]:
            for _ in range(max(1, int(shares[n] + 1e-6))):
                if _within(choice.columns[n], remaining):
                    taken.append(choice.columns[n])
                    used[choice.columns[n].room.stock] += 1
                    held = choice.columns[n].what.counts
                    remaining = [r - h for r, h in zip(remaining, held, strict=True)]
        if tails and sum(remaining) <= tails[0] and any(remaining):
            tails = [n for n in tails if n < sum(remaining)]
            if is_line(search):
                high = rounded(search.instance, search.cost_bound)
                target = high if len(tails) else search.best_key[1] - cost_step(search.rooms)
                finish_exactly(search, taken, tuple(remaining), whole_values(values), target)
            else:
                work += _tail(search, taken, tuple(remaining))
    search.offer(taken)
    choice.narrow(search.wanted, {})
    return work


def _tail(search: Search, taken: Sequence[Column], remaining: tuple[int, ...]) -> float:
    """Lay the rest out by beams, below the best answer so far."""
    key = search.best_key
    spent = sum(c.room.cost for c in taken)
    work = 0.0
    for guide in range(2):
        for way in range(len(search.ways)):
            limit = inf if not key or key[0] > 0 else key[1] - spent
            found, columns = search.beam(way, remaining, taken, TAIL_WIDTH, guide, limit)
            work += found
            if columns:
                search.offer([*taken, *columns], ties=True)
    return work


def _within(column: Column, remaining: Sequence[int]) -> bool:
    return all(n <= r for n, r in zip(column.what.counts, remaining, strict=True))


def choose_whole(search: Search, values: Sequence[float]) -> None:
    """Choose among the patterns of the pool, those that lose least by the values of the items."""
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
    uses, _ = choose(
        columns,
        search.wanted,
        search.rooms,
        search.sizes(),
        start,
        search.seed,
        min(MOST_CHOICE if search.repeated else MOST_CHOICE / 3, 0.6 * search.effort),
        search.bins_bound,
        search.stop,
    )
    search.offer([c for c, n in zip(columns, uses, strict=True) for _ in range(n)])
