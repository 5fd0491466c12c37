"""An answer at any time: stopped early it is whole and sound, left longer it is never worse, and it repeats."""

from __future__ import annotations

from collections.abc import Callable
from random import Random

import pytest

from boardwright.stock.instance import Instance, Item, StockSize
from boardwright.stock.sheets import lay_out_sheets
from boardwright.stock.solution import Answer
from boardwright.stock.verify import verify


def forty_parts(seed: int) -> Instance:
    """Forty parts of any size, on sheets of 2440 x 1220 mm, kerf 3.2 mm."""
    random = Random(seed)
    items = tuple(
        Item(f"p{n}", random.randint(200, 1200), random.randint(100, 600), turnable=bool(n % 2))
        for n in range(40)
    )
    return Instance(items, (StockSize("sheet", 2440, 1220),), 3.2)


def stopped(instance: Instance, questions: int) -> tuple[Answer, list[str]]:
    """The answer when stop is said at the so-manyth question, and what was told on the way."""
    told: list[str] = []
    asked = iter(range(questions))
    stop: Callable[[], bool] = lambda: next(asked, None) is None  # noqa: E731
    return lay_out_sheets(instance, effort=0.3, stop=stop, progress=told.append), told


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_an_answer_is_whole_whenever_it_is_stopped_and_better_later(seed: int) -> None:
    instance = forty_parts(seed)
    before = 99
    for questions in (0, 1, 10, 100, 1000):
        answer, told = stopped(instance, questions)
        assert verify(instance, answer) == []
        assert answer.unplaced == ()
        assert len(answer.bins) <= before
        assert told
        before = len(answer.bins)


def test_every_step_of_progress_is_better_than_the_one_before() -> None:
    _, told = stopped(forty_parts(4), 10**9)
    used = [int(text.split()[0]) for text in told]
    assert used == sorted(set(used), reverse=True)


def test_the_same_seed_and_effort_give_the_same_answer() -> None:
    instance = forty_parts(5)
    first, again = (lay_out_sheets(instance, seed=3, effort=0.1) for _ in range(2))
    assert first == again
    assert len(first.bins) <= first.bins_bound + 1
