"""The order of the saw's cuts and their settings, by hand."""

from __future__ import annotations

import random
from dataclasses import replace

import pytest
from test_verify import ANSWER, BIN, CUTS, DOOR, INSTANCE, SHELF

from boardwright.stock.boards import board_instance, lay_out_boards
from boardwright.stock.instance import Item, Rectangle, StockSize
from boardwright.stock.records import BoardLayout, PlacedPiece
from boardwright.stock.saw_order import by_setting, sawings
from boardwright.stock.solution import CutLine
from boardwright.stock.verify import verify

R = Rectangle


def board(length: float, width: float, cuts: tuple[CutLine, ...], *pieces: PlacedPiece) -> BoardLayout:
    return BoardLayout("b", "board", "size", length, width, 0, 0, pieces, cuts, (), 0.5)


def piece(label: str, x: float, y: float, length: float, width: float) -> PlacedPiece:
    return PlacedPiece(label, label, 1, 1, label, x, y, length, width, False)


# A 1000 x 200 board, kerf 3, crosscut at 500 into two halves (500 and 497); from each an 80 strip is ripped twice.
TWO_HALVES = (
    CutLine("crosscut", 500, R(0, 0, 1000, 200), 1),
    CutLine("rip", 80, R(0, 0, 500, 200), 2),
    CutLine("rip", 163, R(0, 83, 500, 200), 2),
    CutLine("crosscut", 400, R(0, 0, 500, 80), 3),
    CutLine("rip", 80, R(503, 0, 1000, 200), 2),
    CutLine("rip", 163, R(503, 83, 1000, 200), 2),
)


def test_like_settings_come_together() -> None:
    """By hand: one crosscut at 500, all four rips at 80, then the crosscut at 400: three settings, not four."""
    rooms = [R(0, 0, 400, 80), R(0, 83, 500, 163), R(503, 0, 1000, 80), R(503, 83, 1000, 163)]
    ordered = by_setting(TWO_HALVES, rooms, 3)
    assert [(c.axis, c.position) for c in ordered] == [
        ("crosscut", 500), ("rip", 80), ("rip", 163), ("rip", 80), ("rip", 163), ("crosscut", 400),
    ]  # fmt: skip
    pieces = (piece("A", 0, 0, 400, 80), piece("B", 0, 83, 500, 80), piece("C", 503, 0, 497, 80))
    pieces += (piece("D", 503, 83, 497, 80),)
    rows = sawings(board(1000, 200, ordered, *pieces), 3)
    assert [(s.first, s.last, s.axis, s.setting, s.gives) for s in rows] == [
        (1, 1, "crosscut", 500, ()),
        (2, 5, "rip", 80, ("B", "C", "D")),
        (6, 6, "crosscut", 400, ("A",)),
    ]
    assert rows[1].pieces == ((500, 200), (500, 117), (497, 200), (497, 117))
    assert rows[1].times == 4


def test_what_is_kept_is_set_when_the_near_side_is_waste() -> None:
    """The part lies at the far edge: 200 - 97 - 3 = 100 from the fence."""
    cut = CutLine("rip", 97, R(0, 0, 600, 200), 1)
    (row,) = sawings(board(600, 200, (cut,), piece("A", 0, 100, 600, 100)), 3)
    assert (row.setting, row.gives) == (100, ("A",))


def test_trims_come_first_and_carry_no_number() -> None:
    rooms = [R(p.x, p.y, p.x + p.length, p.y + p.width) for p in (DOOR, SHELF)]
    ordered = by_setting(CUTS, rooms, INSTANCE.kerf)
    assert ordered[:4] == CUTS[:4]
    assert not verify(INSTANCE, replace(ANSWER, bins=(replace(BIN, cuts=ordered),)))
    rows = sawings(
        board(1000, 500, ordered, piece("door", 10, 10, 600, 300), piece("shelf", 614, 10, 376, 200)), 4
    )
    assert [(s.first, s.axis, s.setting, s.gives) for s in rows] == [
        (1, "rip", 300, ()), (2, "crosscut", 600, ("door",)), (3, "rip", 200, ("shelf",)),
    ]  # fmt: skip


@pytest.mark.parametrize("seed", range(4))
def test_any_layout_stays_valid_in_the_new_order(seed: int) -> None:
    rng = random.Random(seed)
    items = tuple(
        Item(f"p{n}", rng.randrange(80, 900), rng.randrange(30, 140), rng.randrange(1, 5)) for n in range(8)
    )
    question = board_instance(items, (StockSize("b", 2400, 200, None, 1.0),), 3.2)
    answer = lay_out_boards(question, effort=0.02)
    assert not answer.unplaced
    bins = []
    for b in answer.bins:
        rooms = [R(p.x, p.y, p.x + p.length, p.y + p.width) for p in b.placed]
        ordered = by_setting(b.cuts, rooms, 3.2)
        assert sorted(map(repr, ordered)) == sorted(map(repr, b.cuts))
        bins.append(replace(b, cuts=ordered))
        pieces = [piece(str(n), p.x, p.y, p.length, p.width) for n, p in enumerate(b.placed)]
        rows = sawings(board(2400, 200, ordered, *pieces), 3.2)
        given = [label for row in rows for label in row.gives]
        assert sorted(given) == sorted(p.label for p in pieces)
    assert not verify(question, replace(answer, bins=tuple(bins)))
