"""A question that makes no sense is told so, all at once."""

from __future__ import annotations

from boardwright.stock.instance import Instance, Item, StockSize, problems


def test_all_problems_of_a_question_are_found_at_once() -> None:
    items = (Item("rail", 600, 0), Item("leg", 700, 60, -1), Item("leg", 700, 60))
    stocks = (StockSize("board", 20, 150, trim_length=10), StockSize("sheet", 2440, 1220, cost=-1.0))
    assert problems(Instance(items, stocks, kerf=-3.0)) == [
        "item leg is named 2 times",
        "item rail is 600 x 0 mm; both must be above 0",
        "item leg is wanted -1 times",
        "stock board has nothing left after trimming",
        "stock sheet has a trim, cost or count below 0",
        "the kerf is -3.0 mm; it cannot be below 0",
    ]


def test_a_sensible_question_has_none() -> None:
    assert problems(Instance((Item("leg", 700, 60),), (StockSize("board", 2400, 150),), kerf=3.0)) == []
