"""Costs and numbers of stocks below which no answer can go.

All bounds have one form. Give every item a value so that no pattern on a stock can hold more than a known
value; then the whole value that is wanted, divided by what a stock can hold, bounds the stocks from below.
All of it is in whole numbers and fractions, so that no rounding can make a bound too high.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction
from functools import partial
from math import ceil, gcd

from boardwright.stock.instance import Axis, Instance
from boardwright.stock.master import COST_STEPS, cost_steps
from boardwright.stock.pricing import Pricer
from boardwright.stock.scaled import FINEST, Scaled, layings, roomy, scale
from boardwright.stock.units import to_units

VALUE_STEPS = 1_000_000
"""The most valuable item has about this value in whole numbers."""
FINEST_THREE = 400
"""Finest grid for the bound of three stages, which needs a table over both sizes."""
MOST_THRESHOLDS = 12
"""Most sizes that are tried as the limit of what counts as small."""


def rounded(instance: Instance, cost: Fraction) -> float:
    """The least cost that a sum of stocks can have and that is not below `cost`."""
    steps = [cost_steps(s.cost) for s in instance.stocks]
    step = gcd(*steps) or 1
    return ceil(cost * COST_STEPS / step) * step / COST_STEPS


def _spread(instance: Instance, total: int, most: Sequence[int]) -> tuple[Fraction, int]:
    """Bounds on cost and on stocks, when the items are worth `total` and stock s holds at most `most[s]`."""
    useful = [(s.cost, m) for s, m in zip(instance.stocks, most, strict=True) if m > 0]
    if total <= 0 or not useful:
        return Fraction(0), 0
    cost = min(Fraction(cost_steps(c), COST_STEPS) / m for c, m in useful)
    return cost * total, ceil(Fraction(total, max(m for _, m in useful)))


Measure = tuple[int, Callable[[int], int]]
"""Most that the sizes along one line can add up to, and the measure of a size."""


def _measures(length: int, sizes: Sequence[int]) -> Iterator[Measure]:
    """Dual feasible functions of sizes along a line of a given length.

    Source:
        Fekete and Schepers, New classes of fast lower bounds for bin packing problems, Mathematical
        Programming 91 (2001) 11-31: the functions u(k) and U(epsilon) (from memory).
    """
    yield length, int
    for k in (1, 2, 3, 4, 5):
        yield k * length, partial(_stepped, length, k)
    small = sorted({x for x in sizes if 2 * x <= length} | {length - x + 1 for x in sizes if 2 * x > length})
    small = [x for x in small if 2 * x <= length]
    if len(small) > MOST_THRESHOLDS:
        small = [small[n * (len(small) - 1) // (MOST_THRESHOLDS - 1)] for n in range(MOST_THRESHOLDS)]
    for limit in small:
        yield length, partial(_sharpened, length, limit)


def _stepped(length: int, k: int, x: int) -> int:
    """u(k), times k and the length."""
    return x * k if (k + 1) * x % length == 0 else (k + 1) * x // length * length


def _sharpened(length: int, limit: int, x: int) -> int:
    """U(epsilon), times the length, with epsilon = limit / length."""
    if x < limit:
        return 0
    return length if x > length - limit else x


def size_bound(instance: Instance, wanted: Sequence[int]) -> tuple[Fraction, int]:
    """Bounds from the sizes alone, true for any cutting: areas, and parts too large to share a stock.

    Args:
        instance: the question.
        wanted: copies of each item that fit somewhere.

    Returns:
        Bounds on the cost and on the number of stocks.
    """
    kerf = to_units(instance.kerf)
    rooms = [roomy(s, kerf) for s in instance.stocks]
    ways = [(n, layings(item, kerf)) for item, n in zip(instance.items, wanted, strict=True) if n]
    if not ways:
        return Fraction(0), 0
    areas = sum(n * way[0][0] * way[0][1] for n, way in ways)
    best_cost, best_bins = _spread(instance, areas, [r[0] * r[1] for r in rooms])
    longest, widest = max(r[0] for r in rooms), max(r[1] for r in rooms)
    across = list(_measures(widest, [w for _, way in ways for _, w, _ in way]))
    for most_l, along in _measures(longest, [x for _, way in ways for x, _, _ in way]):
        for most_w, over in across:
            total = sum(
                n * min(along(x) * over(w) for x, w, _ in way if x <= longest and w <= widest)
                for n, way in ways
            )
            cost, bins = _spread(instance, total, [most_l * most_w] * len(rooms))
            best_cost, best_bins = max(best_cost, cost), max(best_bins, bins)
    return best_cost, best_bins


def value_bound(
    instance: Instance, ways: Sequence[Axis], wanted: Sequence[int], values: Sequence[float]
) -> tuple[Fraction, int]:
    """Bounds from values of the items, as the linear choice of patterns gives them.

    Args:
        instance: the question, of two or three stages.
        ways: the first cuts that are allowed.
        wanted: copies of each item that fit somewhere.
        values: of one copy of each item; any values give a true bound.

    Returns:
        Bounds on the cost and on the number of stocks.
    """
    top = max(values, default=0.0)
    if instance.stages is None or top <= 0:
        return Fraction(0), 0
    whole = [int(v / top * VALUE_STEPS) for v in values]
    most = [0] * len(instance.stocks)
    finest = FINEST_THREE if instance.stages == 3 else FINEST
    questions = [scale(instance, way, finest, down=True) for way in ways]
    lost = {s.item for q in questions for s in q.shapes if s.a == 0 or s.b == 0}
    whole = [0 if i in lost else v for i, v in enumerate(whole)]
    for question in questions:
        held = _held(question, wanted, whole, len(most))
        most = [max(m, h) for m, h in zip(most, held, strict=True)]
    return _spread(instance, sum(n * v for n, v in zip(wanted, whole, strict=True)), most)


def _held(question: Scaled, wanted: Sequence[int], whole: Sequence[int], stocks: int) -> list[int]:
    """Most value that each stock can hold; 0 for one that takes nothing."""
    known: dict[tuple[int, int], int] = {}
    held = [0] * stocks
    for room in question.rooms:
        if (room.a, room.b) not in known:
            priced = Pricer(question, whole, wanted, (room.a, room.b), every=True)
            known[room.a, room.b] = priced.value(room.a)
        held[room.stock] = known[room.a, room.b]
    return held
