"""The search for a layout: quick layouts, beams, patterns that are priced, then the best choice of all."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import inf
from random import Random
from typing import TYPE_CHECKING

from boardwright.stock.bar_pricing import is_fine
from boardwright.stock.bounds import size_bound, value_bound
from boardwright.stock.columns import choose_whole, dive, rounds, whole_values
from boardwright.stock.finish import finished
from boardwright.stock.instance import Axis, Instance
from boardwright.stock.lines import choose_exactly, is_line, mend_bars
from boardwright.stock.master import Column, LinearChoice, cost_step
from boardwright.stock.mend import mend
from boardwright.stock.on_places import solve_placed
from boardwright.stock.placed import places_matter
from boardwright.stock.quick import quick
from boardwright.stock.scaled import Room, Scaled, scale
from boardwright.stock.search import Search
from boardwright.stock.solution import Answer

if TYPE_CHECKING:
    from boardwright.stock.beam import Beams

BEAM_WORK = 100_000_000
"""Children that beams look at, at effort 1, roughly."""
NARROW, BEFORE_PRICING = 8, 64
"""Width of the first beams, and of the last ones before patterns are priced."""
MANY, GROWN = 100, 3
"""Where items have few copies whole choices seldom help: patterns before the first, growth before the next."""
DIVES = 20
"""Most times that patterns along bars are taken in turn, at effort 1."""
FEW_SIZES = 5
"""Most sizes of stock of which each is tried alone, too."""
ROUNDS = 60
"""Most rounds of pricing at effort 1."""
MOST_ROUNDS = 600
"""Most rounds of pricing at any effort."""


def solve(
    instance: Instance,
    method: str,
    seed: int = 0,
    effort: float = 1.0,
    stop: Callable[[], bool] = lambda: False,
    progress: Callable[[str], None] = lambda _: None,
) -> Answer:
    """Lay out what is wanted on stock at least cost.

    The same arguments give the same answer on every run, as long as `stop` never says stop.

    Args:
        instance: the question; it must have no `problems`.
        method: what to say of the method.
        seed: of the random numbers.
        effort: how long to try; work grows with it. No clock is read.
        stop: asked now and then; when it says True, the best answer so far is taken.
        progress: told of every better answer.

    Returns:
        The answer, with bounds.
    """
    if places_matter(instance):
        return solve_placed(instance, method, seed, effort, stop, progress)
    ways: tuple[Axis, ...] = ("rip", "crosscut") if instance.first_cut == "any" else (instance.first_cut,)
    search = Search(instance, ways, [scale(instance, way) for way in ways], seed, effort, stop, progress)
    if any(search.wanted) and search.rooms:
        search.bound(size_bound(instance, search.wanted))
        quick(search)
        if not search.done():
            _thorough(search)
    return finished(
        instance,
        ways,
        search.questions,
        search.best,
        (search.cost_bound, search.bins_bound),
        (method, seed, search.tried),
    )


def _thorough(search: Search) -> None:
    """Patterns for the values of the items; beams, ever wider; whole choices of all patterns."""
    if is_line(search):
        _lengths(search)
        return
    beams = _Beams(search)
    width = NARROW
    while width <= BEFORE_PRICING and not search.done():
        beams.round(width)
        width *= 2
    if search.done():
        return
    choice, values = _priced(search)
    if search.repeated and not search.done():
        beams.left -= dive(search, choice)
    random = Random(search.seed)
    known = 0 if search.repeated else MANY
    while not search.done():
        if len(search.pool) > known * (1 if search.repeated else GROWN):
            known = len(search.pool)
            choose_whole(search, values)
        before = beams.left
        if search.done() or not beams.round(width):
            return
        beams.left -= mend(search, random, before - beams.left)
        if search.repeated and not search.done():
            beams.left -= dive(search, choice, random)
        width *= 2


def _priced(search: Search) -> tuple[LinearChoice, list[float]]:
    """The linear choice with patterns that are priced for it; the bound that it gives is kept."""
    choice = LinearChoice(search.wanted, search.rooms)
    most = max(4, min(MOST_ROUNDS, int(ROUNDS * search.effort)))
    if is_line(search) and is_fine(search.questions[0]):
        rounds(search, choice, search.wanted, most, coarse=True)
        dive(search, choice)
    values = rounds(search, choice, search.wanted, most)
    search.bound(value_bound(search.instance, search.ways, search.wanted, values))
    return choice, values


def _lengths(search: Search) -> None:
    """Lengths from bars: priced patterns, taken in turn; then the exact choice; then taken by chance.

    Among bars of several lengths some of the best answer are cut again each time.
    """
    choice, values = _priced(search)
    random: Random | None = None
    left = max(1, int(DIVES * search.effort))
    exact = False
    whole, step = whole_values(values), cost_step(search.rooms)
    while left > 0 and not search.done():
        dive(search, choice, random)
        random = random or Random(search.seed)
        if not exact and not search.done() and not search.best_key[0]:
            exact = True
            choose_exactly(search, whole, step)
        if len(search.rooms) > 1 and not search.done() and not search.best_key[0]:
            mend_bars(search, whole, random, step)
        left -= 1
    if not search.done():
        choose_whole(search, values)


class _Beams:
    """Beams for all first cuts, with every guide in turn; among several sizes of stock also on one size alone.

    A node on a small stock looks better than one on a large stock that is not yet full, so beams over all sizes
    seldom find out that a few large ones do.
    """

    def __init__(self, search: Search) -> None:
        from boardwright.stock.beam import Beams

        self.search = search
        self.ways = [Beams(question, search.seed) for question in search.questions]
        self.alone = [
            [Beams(replace(question, rooms=(room,)), search.seed) for room in _take_all(question)]
            for question in search.questions
        ]
        self.left = BEAM_WORK * search.effort
        self.step = cost_step(search.rooms)

    def limit(self) -> float:
        """Most that a layout may cost to be better than the best."""
        key = self.search.best_key
        return inf if not key or key[0] > 0 else key[1] - (self.step or 1e-9)

    def round(self, width: int) -> bool:
        """One beam for each guide and first cut; whether there is work left for a next one."""
        from boardwright.stock.beam import GUIDES

        for guide in range(GUIDES):
            for way, beams in enumerate(self.ways):
                for each in (beams, *self.alone[way]):
                    if self.left <= 0 or width > each.widest or self.search.done():
                        return False
                    self._run(way, each, width, guide)
        return True

    def _run(self, way: int, beams: Beams, width: int, guide: int) -> None:
        """One beam; what it finds is kept."""
        found = beams.run(width, guide, self.limit(), self.search.stop)
        self.left -= found.work
        for what, _ in found.full:
            self.search.add(way, what)
        if found.whole:
            for what, _ in found.whole:
                self.search.add(way, what)
            self.search.offer([Column(way, what, room) for what, room in found.whole])


def _take_all(question: Scaled) -> list[Room]:
    """Of a few sizes of stock without limit those that take every item that is wanted."""
    if not 1 < len(question.rooms) <= FEW_SIZES:
        return []
    wanted = [by for by, n in zip(question.by_item, question.counts, strict=True) if n]
    return [
        room
        for room in question.rooms
        if room.count is None and all(any(s.a <= room.a and s.b <= room.b for s in by) for by in wanted)
    ]
