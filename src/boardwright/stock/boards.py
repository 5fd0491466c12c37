"""Rough parts from boards: crosscut to sections, ripped to strips, crosscut to parts; or ripped first."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from boardwright.stock.engine import solve
from boardwright.stock.instance import FirstCut, Instance, Item, StockSize
from boardwright.stock.solution import Answer


def board_instance(
    items: Sequence[Item], boards: Sequence[StockSize], kerf: float, first_cut: FirstCut = "any"
) -> Instance:
    """The question of cutting rough parts from boards.

    Every part keeps its grain along the board. The cost of a board is its face area [m2], so that the least
    wood is bought. An area is a size that is had in the yard, so the trim counts in it.

    Args:
        items: rough parts.
        boards: standard sizes (count None) or boards on the rack (count 1); their `cost` is not read.
        kerf: width of the saw's cut [mm].
        first_cut: whether boards are crosscut or ripped first.

    Returns:
        The question, of three stages.
    """
    fixed = tuple(replace(item, turnable=False) for item in items)
    priced = tuple(replace(b, cost=round(b.length * b.width / 1e6, 6)) for b in boards)
    return Instance(fixed, priced, kerf, 3, first_cut)


def lay_out_boards(
    instance: Instance,
    seed: int = 0,
    effort: float = 1.0,
    stop: Callable[[], bool] = lambda: False,
    progress: Callable[[str], None] = lambda _: None,
) -> Answer:
    """Lay rough parts out on boards: least cost first, then fewest boards.

    Args:
        instance: the question, as from `board_instance`.
        seed: of the random numbers.
        effort: how long to try (see `engine.solve`).
        stop: asked now and then; when it says True, the best answer so far is taken.
        progress: told of every better answer.

    Returns:
        The answer, with bounds.
    """
    return solve(instance, "crosscuts and rips, chosen from many patterns", seed, effort, stop, progress)
