"""Lengths from bars and mouldings: a bar is a board whose parts are all as wide as it is."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from boardwright.stock.engine import solve
from boardwright.stock.instance import Instance, Item, StockSize
from boardwright.stock.solution import Answer

SECTION = 1.0
"""Width that stands for the section of a bar [mm]; nothing is ever ripped."""


@dataclass(frozen=True, slots=True)
class Bar:
    """A bar or moulding that can be had.

    Attributes:
        id: name.
        length: [mm].
        count: how many there are; None when any number can be bought.
        cost: price of one.
        trim: taken off each end, the saw's own cut included [mm].
    """

    id: str
    length: float
    count: int | None = None
    cost: float = 1.0
    trim: float = 0.0


def length_instance(wanted: Sequence[tuple[str, float, int]], bars: Sequence[Bar], kerf: float) -> Instance:
    """The question of cutting lengths from bars.

    Args:
        wanted: name, length [mm] and count of each piece.
        bars: the bars.
        kerf: width of the saw's cut [mm].

    Returns:
        The question.
    """
    items = tuple(Item(name, length, SECTION, count) for name, length, count in wanted)
    stocks = tuple(StockSize(b.id, b.length, SECTION, b.count, b.cost, b.trim) for b in bars)
    return Instance(items, stocks, kerf, 2, "rip")


def lay_out_lengths(
    instance: Instance,
    seed: int = 0,
    effort: float = 1.0,
    stop: Callable[[], bool] = lambda: False,
    progress: Callable[[str], None] = lambda _: None,
) -> Answer:
    """Cut lengths from bars at least cost; the bound is that of the linear choice of patterns, rounded up.

    Args:
        instance: the question, as from `length_instance`.
        seed: of the random numbers.
        effort: how long to try (see `engine.solve`).
        stop: asked now and then; when it says True, the best answer so far is taken.
        progress: told of every better answer.

    Returns:
        The answer, with bounds.
    """
    return solve(instance, "patterns along a bar, priced and chosen", seed, effort, stop, progress)
