"""The verifier against layouts drawn by hand, and against every way to spoil one."""

from __future__ import annotations

from dataclasses import replace

import pytest

from boardwright.stock.instance import Instance, Item, Rectangle, StockSize
from boardwright.stock.slicing import separable
from boardwright.stock.solution import (
    NO_STOCK_LEFT,
    TOO_LARGE,
    Answer,
    Bin,
    CutLine,
    Placed,
    Unplaced,
)
from boardwright.stock.verify import verify

# A 1000 x 500 sheet, kerf 4, trimmed 10 all round to 980 x 480 from (10, 10). One rip gives a strip of 300;
# from it a door of 600 x 300 and a shelf of 376 x 200 (600 + 4 + 376 = 980); the shelf is trimmed in width.
INSTANCE = Instance(
    items=(Item("door", 600, 300), Item("shelf", 376, 200)),
    stocks=(StockSize("sheet", 1000, 500, count=2, cost=50.0, trim_length=10, trim_width=10),),
    kerf=4.0,
    stages=2,
    first_cut="rip",
)
R = Rectangle
CUTS = (
    CutLine("rip", 6, R(0, 0, 1000, 500), 0, True),
    CutLine("rip", 490, R(0, 10, 1000, 500), 0, True),
    CutLine("crosscut", 6, R(0, 10, 1000, 490), 0, True),
    CutLine("crosscut", 990, R(10, 10, 1000, 490), 0, True),
    CutLine("rip", 310, R(10, 10, 990, 490), 1),
    CutLine("crosscut", 610, R(10, 10, 990, 310), 2),
    CutLine("rip", 210, R(614, 10, 990, 310), 3, True),
)
LEFT = (
    R(10, 314, 990, 490),
    R(614, 214, 990, 310),
    R(0, 0, 1000, 6),
    R(0, 494, 1000, 500),
    R(0, 10, 6, 490),
    R(994, 10, 1000, 490),
)
DOOR = Placed("door", 1, 10, 10, 600, 300)
SHELF = Placed("shelf", 1, 614, 10, 376, 200)
BIN = Bin("sheet", (DOOR, SHELF), CUTS, LEFT)
ANSWER = Answer((BIN,), (), 50.0, 50.0, 1, True, "by hand", 0, 1)


def spoiled(**changes: object) -> Answer:
    return replace(ANSWER, bins=(replace(BIN, **changes),))  # type: ignore[arg-type]


def test_a_sound_layout_has_no_faults() -> None:
    assert verify(INSTANCE, ANSWER) == []


swapped = (*CUTS[:4], CUTS[5], CUTS[4], CUTS[6])
MUTATIONS = [
    (spoiled(placed=(DOOR, replace(SHELF, x=615))), "outside"),
    (spoiled(placed=(DOOR, replace(SHELF, x=612))), "nearer than the kerf"),
    (spoiled(placed=(DOOR, replace(SHELF, x=613.5))), "nearer than the kerf"),
    (spoiled(placed=(DOOR, replace(SHELF, y=12))), "do not leave every part"),
    (spoiled(placed=(replace(DOOR, x=9), SHELF)), "outside"),
    (spoiled(placed=(DOOR, replace(SHELF, length=200, width=376, turned=True))), "across the grain"),
    (spoiled(placed=(DOOR, replace(SHELF, length=370))), "not as the item"),
    (spoiled(placed=(DOOR,)), "shelf copy 1 is missing"),
    (spoiled(placed=(DOOR, SHELF, replace(SHELF, y=214))), "shelf copy 1 is there 2 times"),
    (spoiled(placed=(DOOR, SHELF, replace(SHELF, copy=2, y=214))), "more than is wanted"),
    (spoiled(cuts=swapped), "not there at that time"),
    (spoiled(cuts=CUTS[:-1]), "do not leave every part"),
    (spoiled(cuts=(*CUTS[:6], replace(CUTS[6], trimming=False))), "of stage 3; 2 are allowed"),
    (spoiled(cuts=(*CUTS[:4], replace(CUTS[4], trimming=True), *CUTS[5:])), "its piece holds more"),
    (spoiled(cuts=(*CUTS[:5], replace(CUTS[5], position=609), CUTS[6])), "not there at that time"),
    (spoiled(leftovers=LEFT[1:]), "leftovers"),
    (spoiled(stock_id="board"), "no such stock"),
    (replace(ANSWER, cost=49.0), "cost is 50, not 49"),
    (replace(ANSWER, lower_bound=51.0), "above the cost"),
    (replace(ANSWER, lower_bound=49.0), "said to be proven"),
    (replace(ANSWER, bins_bound=2), "2 stocks are said to be needed"),
    (replace(ANSWER, bins=(BIN, BIN, BIN), cost=150.0, lower_bound=50.0, proven=False), "there are 2"),
    (replace(ANSWER, unplaced=(Unplaced("shelf", 1, TOO_LARGE),)), "not true"),
]


@pytest.mark.parametrize(("answer", "words"), MUTATIONS, ids=[words for _, words in MUTATIONS])
def test_every_spoiled_layout_is_caught(answer: Answer, words: str) -> None:
    faults = verify(INSTANCE, answer)
    assert any(words in fault for fault in faults), faults


def test_a_part_may_be_left_out_for_a_true_reason_only() -> None:
    instance = replace(INSTANCE, items=(*INSTANCE.items, Item("top", 981, 200), Item("leg", 50, 50)))
    top, leg = Unplaced("top", 1, TOO_LARGE), Unplaced("leg", 1, NO_STOCK_LEFT)
    assert verify(instance, replace(ANSWER, unplaced=(top, leg))) == [
        "leg copy 1 is left out for a reason that is not true: no stock left that takes it"
    ]
    one = replace(instance, stocks=(replace(instance.stocks[0], count=1),))
    assert verify(one, replace(ANSWER, unplaced=(top, leg))) == []


def test_first_cut_and_stages_are_found_from_the_rectangles() -> None:
    assert any("first cut" in f for f in verify(replace(INSTANCE, first_cut="crosscut", stages=2), ANSWER))
    # Two strips of unlike division need the rip first: 2 stages do, but not when the first is a crosscut.
    boxes = [(0, 0, 60, 10), (60, 0, 100, 10), (0, 10, 30, 20), (30, 10, 100, 20)]
    assert separable(boxes, 0, along=1, stages=2)
    assert not separable(boxes, 0, along=0, stages=2)
    assert separable(boxes, 0, along=0, stages=3)


def test_a_pinwheel_cannot_be_sawn_apart() -> None:
    pinwheel = [(0, 0, 2, 1), (2, 0, 3, 2), (1, 2, 3, 3), (0, 1, 1, 3), (1, 1, 2, 2)]
    assert not separable(pinwheel, 0, along=0, stages=None)
    assert separable(pinwheel[:4], 0, along=0, stages=None) is False
    assert separable(pinwheel[:3], 0, along=1, stages=None)
