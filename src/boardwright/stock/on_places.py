"""The search for layouts whose places matter: beams, ever wider (see `placed`)."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from math import inf
from random import Random
from typing import Any

from boardwright.stock.bounds import rounded, size_bound
from boardwright.stock.emit_placed import emit_placed
from boardwright.stock.instance import Axis, Instance
from boardwright.stock.placed import Guide, PlacedBeams, PlacedLayout, room_for
from boardwright.stock.scaled import layings, roomy
from boardwright.stock.solution import (
    COST_TOLERANCE,
    NO_CLEAR_ROOM,
    NO_STOCK_LEFT,
    TOO_LARGE,
    Answer,
    Reason,
    Unplaced,
)
from boardwright.stock.units import to_units

PLACED_WORK = 40_000_000
"""Children that are tried at effort 1, roughly."""
NARROW, WIDE = 8, 512
"""Width of the first beams, four times as wide each time, and of the last of them."""
GUIDES = (Guide(0.5, 0.1, 0.02, 0.1, 0.5), Guide(0.8, 0.1, 0.02, 0.1, 0.1))
"""For the first beams; later ones are drawn near these."""
WIDER, WIDEST = 1024, 32768
"""Width of the next beams, twice as wide each time; then from the beginning."""
LATER = 0.5
"""Work of beams that begin with parts of good layouts, for each beam that begins with nothing."""
KEPT = 4
"""Layouts that are kept to begin others with."""
START_WORK = 5_000
"""Work that starting a beam counts for."""


def solve_placed(
    instance: Instance,
    method: str,
    seed: int,
    effort: float,
    stop: Callable[[], bool],
    progress: Callable[[str], None],
) -> Answer:
    """Lay out what is wanted where places matter: see `engine.solve`.

    The search goes on when no fewer stocks can do, for a shorter use of the last one.
    """
    kerf = to_units(instance.kerf)
    rooms = [roomy(s, kerf) for s in instance.stocks if s.count != 0]
    reasons: dict[int, Reason] = {}
    wanted = [0] * len(instance.items)
    for n, item in enumerate(instance.items):
        if not any(w[0] <= r[0] and w[1] <= r[1] for w in layings(item, kerf) for r in rooms):
            reasons[n] = TOO_LARGE
        elif room_for(instance, n):
            wanted[n] = item.count
        else:
            reasons[n] = NO_CLEAR_ROOM
    best, tried = _search(instance, wanted, seed, effort, stop, progress)
    copies = [0] * len(instance.items)
    bins = tuple(emit_placed(instance, s, copies) for s in best.stocks) if best else ()
    unplaced = [
        Unplaced(item.id, copy, reasons.get(n, NO_STOCK_LEFT))
        for n, item in enumerate(instance.items)
        for copy in range(copies[n] + 1, item.count + 1)
    ]
    cost = sum(instance.stocks[s.stock].cost for s in best.stocks) if best else 0.0
    bound, least = size_bound(instance, wanted)
    if any(u.reason == NO_STOCK_LEFT for u in unplaced):
        return Answer(bins, tuple(unplaced), cost, 0.0, 0, False, method, seed, tried)
    lower = rounded(instance, bound)
    proven = lower >= cost - COST_TOLERANCE * max(1.0, cost)
    return Answer(bins, tuple(unplaced), cost, lower, least, proven, method, seed, tried)


def _search(
    instance: Instance,
    wanted: list[int],
    seed: int,
    effort: float,
    stop: Callable[[], bool],
    progress: Callable[[str], None],
) -> tuple[PlacedLayout | None, int]:
    """The best layout, and how many beams were run."""
    if not any(wanted):
        return None, 0
    ways: tuple[Axis, ...] = ("rip", "crosscut") if instance.first_cut == "any" else (instance.first_cut,)
    beams = [PlacedBeams(instance, way, wanted, seed) for way in ways]
    found = _Search(beams, PLACED_WORK * effort, stop, progress)
    width = NARROW
    while width <= WIDE:
        for guide in GUIDES:
            for way in range(len(beams)):
                found.run(way, width, guide)
        width *= 4
    width = WIDER
    random = Random(seed)
    while found.going():
        width = WIDER if width > WIDEST else width
        before = found.left
        found.run(random.randrange(len(beams)), width, _guide(random))
        least = before - (1 + LATER) * (before - found.left)
        while found.going() and found.left > least:
            kept = random.choice(found.kept)
            steps = kept.layout.steps
            guide = _guide(random)
            begun = round(width * random.uniform(0.25, 1.0))
            found.run(kept.way, begun, guide, steps[: random.randrange(len(steps))])
        width *= 2
    return found.best, found.tried


def _guide(random: Random) -> Guide:
    """A guide near those that do well."""
    return Guide(
        random.uniform(0.3, 0.9),
        random.choice((0.05, 0.1, 0.2)),
        0.02,
        random.choice((0.1, 0.3)),
        random.choice((0.1, 0.5)),
    )


@dataclass(frozen=True, slots=True)
class _Kept:
    way: int
    layout: PlacedLayout


@dataclass(slots=True)
class _Search:
    """What is known so far: the best few layouts, the best first."""

    beams: list[PlacedBeams]
    left: float
    stop: Callable[[], bool]
    progress: Callable[[str], None]
    kept: list[_Kept] = field(default_factory=list)
    tried: int = 0

    @property
    def best(self) -> PlacedLayout | None:
        return self.kept[0].layout if self.kept else None

    def going(self) -> bool:
        return bool(self.kept) and self.left > 0 and not self.stop()

    def run(self, way: int, width: int, guide: Guide, start: Any = None) -> None:
        """One beam, unless the time is up."""
        if self.tried and not self.going():
            return
        beam = self.beams[way]
        limit = beam.limit(self.kept[-1].layout.key) if len(self.kept) >= KEPT else inf
        found = beam.run(min(width, beam.widest), guide, limit, self.stop, start)
        self.tried += 1
        if found is None:
            return
        self.left -= found.work + START_WORK
        if any(k.layout.key == found.key for k in self.kept):
            return
        best = self.best
        if not found.key[0] and (best is None or found.key[:3] < best.key[:3]):
            self.progress(f"{found.key[2]} used")
        self.kept = sorted([*self.kept, _Kept(way, found)], key=lambda k: k.layout.key)[:KEPT]
