"""The search for layouts whose places matter: beams, ever wider (see `placed`)."""

from __future__ import annotations

from collections.abc import Callable
from math import inf

from boardwright.stock.bounds import rounded, size_bound
from boardwright.stock.emit_placed import emit_placed
from boardwright.stock.instance import Axis, Instance
from boardwright.stock.placed import PlacedBeams, PlacedLayout, room_for
from boardwright.stock.scaled import layings, roomy
from boardwright.stock.solution import COST_TOLERANCE, NO_STOCK_LEFT, TOO_LARGE, Answer, Unplaced
from boardwright.stock.units import to_units

PLACED_WORK = 40_000_000
"""Children that are tried at effort 1, roughly."""
NARROW = 8
"""Width of the first beams."""
GUIDES = 4


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
    reasons = {}
    wanted = [0] * len(instance.items)
    for n, item in enumerate(instance.items):
        if not any(w[0] <= r[0] and w[1] <= r[1] for w in layings(item, kerf) for r in rooms):
            reasons[n] = TOO_LARGE
        elif room_for(instance, n):
            wanted[n] = item.count
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
    best: PlacedLayout | None = None
    left, tried, width = PLACED_WORK * effort, 0, NARROW
    while width <= min(b.widest for b in beams):
        for guide in range(GUIDES):
            for beam in beams:
                if tried and (left <= 0 or stop()):
                    return best, tried
                found = beam.run(width, guide, beam.limit(best.key) if best else inf, stop)
                tried += 1
                if found is None:
                    continue
                left -= found.work
                if best is None or found.key < best.key:
                    if not found.key[0] and (best is None or found.key[:3] != best.key[:3]):
                        progress(f"{found.key[2]} used")
                    best = found
        width *= 2
    return best, tried
