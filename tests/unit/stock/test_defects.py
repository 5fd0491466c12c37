"""Stocks with defects, limits of the cuts, sequences: layouts, and the verifier against every way to spoil one."""

from __future__ import annotations

from dataclasses import replace
from random import Random

import pytest

from boardwright.stock.engine import solve
from boardwright.stock.instance import Instance, Item, Limits, Rectangle, StockSize, problems
from boardwright.stock.solution import Answer, Bin, CutLine, Placed
from boardwright.stock.verify import verify

R = Rectangle

# By hand: a 1000 x 200 board with a knot from 480 to 520, over its whole width. Two legs of 460 x 90 lie one above
# the other before it, two behind it. Kerf 4; crosscuts at 460 and 536 (waste of 72 between them), rips at 90.
KNOTTY = Instance(
    items=(Item("leg", 460, 90, 4),),
    stocks=(StockSize("board", 1000, 200, count=1, defects=(R(480, 0, 520, 200),)),),
    kerf=4.0,
    stages=2,
    first_cut="crosscut",
)
BOARD = R(0, 0, 1000, 200)
CUTS = (
    CutLine("crosscut", 460, BOARD, 1),
    CutLine("crosscut", 536, R(464, 0, 1000, 200), 1),
    CutLine("rip", 90, R(0, 0, 460, 200), 2),
    CutLine("rip", 184, R(0, 94, 460, 200), 2),
    CutLine("rip", 90, R(540, 0, 1000, 200), 2),
    CutLine("rip", 184, R(540, 94, 1000, 200), 2),
)
LEFT = (R(464, 0, 536, 200), R(0, 188, 460, 200), R(540, 188, 1000, 200))
LEGS = tuple(
    Placed("leg", n, x, y, 460, 90) for n, (x, y) in enumerate([(0, 0), (0, 94), (540, 0), (540, 94)], 1)
)
BIN = Bin("board", LEGS, CUTS, LEFT)
ANSWER = Answer((BIN,), (), 1.0, 1.0, 1, True, "by hand", 0, 1)


def spoiled(**changes: object) -> Answer:
    return replace(ANSWER, bins=(replace(BIN, **changes),))  # type: ignore[arg-type]


def test_a_layout_round_a_knot_has_no_faults() -> None:
    assert verify(KNOTTY, ANSWER) == []


def moved(dx: float) -> tuple[Placed, ...]:
    return (*LEGS[:3], replace(LEGS[3], x=LEGS[3].x + dx))


SPOILT = [
    (KNOTTY, spoiled(placed=moved(-21)), "leg copy 4 lies on a defect"),
    (KNOTTY, spoiled(placed=moved(-0.01)), "do not leave every part"),
    (KNOTTY, spoiled(placed=moved(0.01)), "outside the trimmed stock"),
    (KNOTTY, spoiled(placed=(*LEGS[:3], replace(LEGS[3], y=93))), "nearer than the kerf"),
    (KNOTTY, spoiled(placed=LEGS[:3]), "leg copy 4 is missing"),
    (KNOTTY, spoiled(placed=(*LEGS, replace(LEGS[3], copy=5))), "leg copy 5 is more than is wanted"),
    (
        KNOTTY,
        spoiled(placed=(*LEGS[:3], replace(LEGS[3], length=90, width=460, turned=True))),
        "turned across the grain",
    ),
    (replace(KNOTTY, kerf=4.5), ANSWER, "nearer than the kerf"),
    (
        replace(KNOTTY, stocks=(replace(KNOTTY.stocks[0], defects=(R(455, 0, 470, 50),)),)),
        ANSWER,
        "leg copy 1 lies on a defect",
    ),
    (replace(KNOTTY, limits=Limits(through_defects=False)), ANSWER, ""),
    (
        replace(
            KNOTTY,
            limits=Limits(through_defects=False),
            stocks=(replace(KNOTTY.stocks[0], defects=(R(461, 0, 463, 5),)),),
        ),
        ANSWER,
        "goes through a defect",
    ),
    (replace(KNOTTY, limits=Limits(least_section=73)), ANSWER, "nearer than 73 mm"),
    (replace(KNOTTY, limits=Limits(most_section=459)), ANSWER, "more than 459 mm from the one before"),
    (replace(KNOTTY, limits=Limits(least_strip=91)), ANSWER, "nearer than 91 mm"),
    (replace(KNOTTY, limits=Limits(least_waste=13)), ANSWER, "thinner than 13 mm"),
]


@pytest.mark.parametrize(
    ("instance", "answer", "words"), SPOILT, ids=[words or "sound" for *_, words in SPOILT]
)
def test_every_spoilt_layout_is_caught(instance: Instance, answer: Answer, words: str) -> None:
    faults = verify(instance, answer)
    if words:
        assert any(words in fault for fault in faults), faults
    else:
        assert faults == []


def test_a_cut_that_does_not_go_right_across_is_caught() -> None:
    """A pinwheel of four 2 x 1 parts round a hole: no cut goes right across, whatever cuts are listed."""
    items = (Item("slat", 2, 1, 4, turnable=True),)
    instance = Instance(items, (StockSize("s", 3, 3),), 0.0, None)
    at = [(0, 0, 2, 1, False), (2, 0, 1, 2, True), (1, 2, 2, 1, False), (0, 1, 1, 2, True)]
    placed = tuple(Placed("slat", n, *place) for n, place in enumerate(at, 1))
    answer = Answer((Bin("s", placed, (), ()),), (), 1.0, 1.0, 1, True, "", 0, 0)
    assert any("cannot be sawn apart" in fault for fault in verify(instance, answer))


def test_parts_out_of_sequence_are_caught() -> None:
    """Four fronts of one item each, cut from left to right and upwards; the second and third change places."""
    items = tuple(Item(f"front {n}", 460, 90) for n in range(1, 5))
    names = tuple(i.id for i in items)
    instance = replace(KNOTTY, items=items, sequences=(names,))
    legs = tuple(replace(p, item_id=name, copy=1) for p, name in zip(LEGS, names, strict=True))
    assert verify(instance, spoiled(placed=legs)) == []
    swapped = (legs[0], replace(legs[2], item_id="front 2"), replace(legs[1], item_id="front 3"), legs[3])
    faults = verify(instance, spoiled(placed=swapped))
    assert any("comes off after" in fault for fault in faults), faults


def test_stocks_out_of_order_are_caught() -> None:
    first = StockSize("first", 1000, 200, count=1)
    instance = replace(KNOTTY, stocks=(first, replace(KNOTTY.stocks[0], count=1)), in_order=True)
    assert any("not used in order" in fault for fault in verify(instance, ANSWER))


def test_a_knot_is_worked_round() -> None:
    """By hand: two legs fit before the knot and two behind it, so one board does, and not three before it."""
    answer = solve(KNOTTY, "", effort=0.05)
    assert verify(KNOTTY, answer) == []
    assert (len(answer.bins), answer.unplaced) == (1, ())
    longer = replace(KNOTTY, items=(Item("rail", 481, 90, 1),))
    none = solve(longer, "", effort=0.05)
    assert verify(longer, none) == []
    assert [(u.item_id, u.reason) for u in none.unplaced] == [("rail", "no room for it clear of defects")]


def test_the_same_seed_and_effort_give_the_same_layout() -> None:
    boards = tuple(
        StockSize(f"b{n}", 1200 + 170 * n, 130 + 15 * n, 1, defects=(R(300 + 90 * n, 20, 360 + 90 * n, 70),))
        for n in range(6)
    )
    items = tuple(Item(f"p{n}", 180 + 37 * n, 40 + 9 * (n % 5), 2) for n in range(10))
    instance = Instance(items, boards, 3.2, 3, "any")
    once, again = (solve(instance, "", seed=5, effort=0.02) for _ in range(2))
    assert once == again
    assert verify(instance, once) == []
    assert once.unplaced == ()


GLASS = Limits(100.0, 3500.0, 100.0, 20.0, through_defects=False)


def test_plates_in_order_with_parts_in_sequence_and_all_limits() -> None:
    """Parts by the rules of the glass-cutting challenge of 2018: every rule is checked by the verifier."""
    items = tuple(Item(f"p{n}", 300 + 97 * (n % 7), 250 + 61 * (n % 5), 1, True) for n in range(24))
    marks = tuple(R(400 + 700 * n, 300 + 310 * n, 408 + 700 * n, 309 + 310 * n) for n in range(5))
    plates = tuple(StockSize(f"s{n}", 3000, 1600, 1, defects=marks) for n in range(4))
    sequences = tuple(tuple(f"p{n}" for n in range(k, 24, 3)) for k in range(3))
    instance = Instance(items, plates, 0.0, 3, "crosscut", GLASS, sequences, in_order=True)
    answer = solve(instance, "", effort=0.05)
    assert verify(instance, answer) == []
    assert answer.unplaced == ()


def test_questions_that_contradict_themselves_are_told() -> None:
    stock = replace(KNOTTY.stocks[0], defects=(R(5, 5, 5, 9),))
    bad = replace(KNOTTY, stocks=(stock,), sequences=(("leg", "leg"), ("arm",)), limits=Limits(5, 3))
    told = " ".join(problems(bad))
    for words in ("defect without area", "arm, which is no item", "leg stands 2 times", "limits of the cuts"):
        assert words in told


def _dice(seed: int) -> Instance:
    """Any boards with any defects, limits and sequences."""
    r = Random(seed)
    long, wide = r.randint(600, 2500), r.randint(90, 900)
    items = tuple(
        Item(f"p{n}", r.randint(50, long // 2), r.randint(20, wide // 2), r.randint(1, 3), r.random() < 0.5)
        for n in range(r.randint(1, 9))
    )
    trim = r.choice([0.0, 0.0, 12.5])
    stocks = []
    for n in range(r.randint(1, 6)):
        a, b = r.randint(long // 2, long), r.randint(wide // 2, wide)
        corners = [(r.uniform(0, a - 5), r.uniform(0, b - 5)) for _ in range(r.randint(0, 4))]
        marks = tuple(R(x, y, x + r.uniform(1, 120), y + r.uniform(1, 60)) for x, y in corners)
        stocks.append(StockSize(f"s{n}", a, b, r.choice([1, 2, None]), a * b / 1e4, trim, trim, marks))
    limits = Limits(
        r.choice([0, 60]), 0.7 * long, r.choice([0, 40]), r.choice([0, 8]), through_defects=r.random() < 0.5
    )
    names = [item.id for item in items]
    r.shuffle(names)
    return Instance(
        items,
        tuple(stocks),
        r.choice([0, 3.2, 1.5]),
        r.choice([2, 3, None]),
        r.choice(["rip", "crosscut", "any"]),
        r.choice([Limits(), limits]),
        (tuple(names),) if r.random() < 0.4 else (),
        r.random() < 0.3,
    )


@pytest.mark.parametrize("seed", range(60))
def test_any_boards_defects_and_limits_give_sound_layouts(seed: int) -> None:
    instance = _dice(seed)
    assert problems(instance) == []
    assert verify(instance, solve(instance, "", seed=seed, effort=0.002)) == []
