"""Laws of layouts on random questions."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from boardwright.stock.engine import solve
from boardwright.stock.instance import Instance, Item, StockSize, problems
from boardwright.stock.verify import verify

steady = settings(
    max_examples=25,
    deadline=None,
    derandomize=True,
    suppress_health_check=[HealthCheck.too_slow],
    database=None,
)
LIGHT = 0.1


@st.composite
def questions(draw: st.DrawFn, trimmed: bool = True) -> Instance:
    """Up to eight kinds of part, up to three stocks; sixteenths of an inch or whole millimetres."""
    unit = draw(st.sampled_from([1.0, 25.4 / 16]))
    whole = st.integers
    items = tuple(
        Item(
            f"i{n}",
            draw(whole(20, 700)) * unit,
            draw(whole(20, 400)) * unit,
            draw(whole(1, 4)),
            draw(st.booleans()),
        )
        for n in range(draw(whole(1, 8)))
    )
    stocks = tuple(
        StockSize(
            f"s{n}",
            draw(whole(400, 1200)) * unit,
            draw(whole(200, 600)) * unit,
            draw(st.sampled_from([None, None, 1, 3])),
            float(draw(whole(1, 60))),
            draw(whole(0, 12)) * unit if trimmed else 0.0,
            draw(whole(0, 12)) * unit if trimmed else 0.0,
        )
        for n in range(draw(whole(1, 3)))
    )
    kerf = draw(whole(0, 5)) * unit
    return Instance(
        items,
        stocks,
        kerf,
        draw(st.sampled_from([2, 3, None])),
        draw(st.sampled_from(["rip", "crosscut", "any"])),
    )


@steady
@given(questions())
def test_answers_are_sound_and_the_same_on_every_run(instance: Instance) -> None:
    assert problems(instance) == []
    answer = solve(instance, "test", seed=3, effort=LIGHT)
    assert verify(instance, answer) == []
    assert answer.bins_bound <= len(answer.bins)
    assert answer.lower_bound <= answer.cost * (1 + 1e-9)
    assert solve(instance, "test", seed=3, effort=LIGHT) == answer


@steady
@given(questions(trimmed=False))
def test_a_kerf_is_the_same_as_larger_parts_in_larger_stock(instance: Instance) -> None:
    k = instance.kerf
    twin = replace(
        instance,
        items=tuple(replace(i, length=i.length + k, width=i.width + k) for i in instance.items),
        stocks=tuple(replace(s, length=s.length + k, width=s.width + k) for s in instance.stocks),
        kerf=0.0,
    )
    one, two = solve(instance, "test", effort=LIGHT), solve(twin, "test", effort=LIGHT)
    assert len(one.bins) == len(two.bins)
    assert one.cost == two.cost
    assert len(one.unplaced) == len(two.unplaced)


@steady
@given(questions())
def test_stopping_at_once_still_gives_a_sound_answer(instance: Instance) -> None:
    answer = solve(instance, "test", stop=lambda: True)
    assert verify(instance, answer) == []
