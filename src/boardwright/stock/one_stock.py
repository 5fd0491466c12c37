"""The most valuable set of parts from one stock: what to cut from a sheet or an offcut that is at hand."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from boardwright.stock.emit import emit
from boardwright.stock.free import FreeTable
from boardwright.stock.instance import Axis, Instance
from boardwright.stock.level_model import best_levels
from boardwright.stock.patterns import Pattern, clipped
from boardwright.stock.pricing import Pricer, fill
from boardwright.stock.scaled import FINEST, Scaled, scale
from boardwright.stock.section_choice import best_sections
from boardwright.stock.solution import Bin

STEPS = 60
"""Most steps in which values are corrected, at effort 1."""


@dataclass(frozen=True, slots=True)
class Filled:
    """One stock and what is cut from it.

    Attributes:
        bin: the stock; None when nothing fits.
        value: of all the parts.
        bound: no division, with copies and stages as asked, is worth more.
    """

    bin: Bin | None
    value: int
    bound: int


@dataclass(slots=True)
class _Best:
    value: int = 0
    way: int = 0
    what: Pattern | None = None

    def offer(self, values: Sequence[int], way: int, what: Pattern) -> None:
        worth = _worth(values, what)
        if worth > self.value:
            self.value, self.way, self.what = worth, way, what


def fill_one(
    instance: Instance,
    values: Mapping[str, int] | None = None,
    seed: int = 0,
    effort: float = 1.0,
    stop: Callable[[], bool] = lambda: False,
) -> Filled:
    """Choose the most valuable parts that the first stock of the question can give.

    Args:
        instance: the question; no more copies than it wants are cut, and only its first stock is used.
        values: of one copy of each item, by id; without it, a part is worth its area on the grid.
        seed: of the exact search.
        effort: how long to try.
        stop: asked now and then; when it says True, the best so far is taken.

    Returns:
        The stock with its parts, and a bound.
    """
    ways: tuple[Axis, ...] = ("rip", "crosscut") if instance.first_cut == "any" else (instance.first_cut,)
    best, bound = _Best(), 0
    for way, first in enumerate(ways):
        question = scale(instance, first, finest=4 * FINEST)
        if not question.rooms:
            continue
        worth = [
            values[item.id] if values is not None else (by[0].a * by[0].b if by else 0)
            for item, by in zip(instance.items, question.by_item, strict=True)
        ]
        most = _correct(question, worth, way, best, max(4, int(STEPS * effort)), stop)
        if instance.stages is None:
            most = _any_stages(question, worth, way, best, most)
        room = question.rooms[0]
        if instance.stages == 2 and best.value < most:
            best.offer(worth, way, best_sections(question, worth, (room.a, room.b), seed, stop))
        if instance.stages == 2 and best.value < most:
            what, most = best_levels(
                question, worth, (room.a, room.b), (best.value, most), seed, 4.0 * effort, stop
            )
            if what is not None:
                best.offer(worth, way, what)
        bound = max(bound, most)
    if best.what is None:
        return Filled(None, 0, bound)
    made = emit(instance, ways[best.way], best.what, 0, [0] * len(instance.items))
    return Filled(made, best.value, max(bound, best.value))


def _worth(values: Sequence[int], what: Pattern) -> int:
    return sum(v * n for v, n in zip(values, what.counts, strict=True))


def _any_stages(question: Scaled, values: Sequence[int], way: int, best: _Best, most: int) -> int:
    """With any number of stages a pattern may be worth more than those of three; the bound comes back."""
    room = question.rooms[0]
    table = FreeTable(question, values, (room.a, room.b))
    what = table.pattern()
    if all(n <= w for n, w in zip(what.counts, question.counts, strict=True)):
        best.offer(values, way, what)
    area = sum(v * n for v, n in zip(values, question.counts, strict=True))
    return min(table.value, area)


def _correct(
    question: Scaled,
    values: Sequence[int],
    way: int,
    best: _Best,
    steps: int,
    stop: Callable[[], bool],
) -> int:
    """Fill the stock again and again; parts of which too many are taken lose value for the next time.

    What they lose is added to the bound for every copy that is wanted (Lagrangian relaxation), which keeps it
    true for patterns of two and three stages.

    Returns:
        The least bound.
    """
    room = question.rooms[0]
    size = (room.a, room.b)
    lost = [0.0] * len(values)
    bound = sum(v * n for v, n in zip(values, question.counts, strict=True))
    pace = 2.0
    for _ in range(steps):
        worth = [max(0, round(SHARPER * (v - x))) for v, x in zip(values, lost, strict=True)]
        priced = Pricer(question, worth, question.counts, size, every=True)
        sections = priced.sections(room.a)
        what = _joined(question, sections)
        given = sum(
            (SHARPER * v - w) * n for v, w, n in zip(values, worth, question.counts, strict=True) if w or v
        )
        bound = min(bound, (priced.value(room.a) + given) // SHARPER)
        best.offer(values, way, clipped(question, what, question.counts))
        best.offer(values, way, fill(question, worth, question.counts, size))
        over = [n - w for n, w in zip(what.counts, question.counts, strict=True)]
        norm = sum(x * x for x, y in zip(over, lost, strict=True) if x > 0 or y > 0)
        if best.value >= bound or norm == 0 or stop():
            break
        pace *= 0.95
        stride = pace * max(1.0, (priced.value(room.a) + given) / SHARPER - best.value) / norm
        lost = [min(float(v), max(0.0, x + stride * o)) for v, x, o in zip(values, lost, over, strict=True)]
    return bound


SHARPER = 64
"""Values are taken to this part of a unit while they are corrected."""


def _joined(question: Scaled, sections: Sequence[object]) -> Pattern:
    from boardwright.stock.patterns import pattern

    return pattern(question, sections)  # type: ignore[arg-type]
