"""Parts from sheets: any first cut, parts turned where the item allows it."""

from __future__ import annotations

from collections.abc import Callable

from boardwright.stock.engine import solve
from boardwright.stock.instance import Instance
from boardwright.stock.solution import Answer


def lay_out_sheets(
    instance: Instance,
    seed: int = 0,
    effort: float = 1.0,
    stop: Callable[[], bool] = lambda: False,
    progress: Callable[[str], None] = lambda _: None,
) -> Answer:
    """Lay parts out on sheets at least cost.

    Args:
        instance: the question; it must have no `problems`.
        seed: of the random numbers.
        effort: how long to try (see `engine.solve`).
        stop: asked now and then; when it says True, the best answer so far is taken.
        progress: told of every better answer.

    Returns:
        The answer, with bounds.
    """
    return solve(instance, "strips and sections, chosen from many patterns", seed, effort, stop, progress)
