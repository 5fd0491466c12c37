"""Rough sizes and glue-ups, against sums done by hand with the trade's allowances.

All of these allowances are common practice: a rough part 1/4 in over in width and 1 in in length, a glued-up
panel 1/2 in and 1 in, 1/16 in an edge for jointing, 4 to 5 boards in one glue-up with PVA.
"""

from __future__ import annotations

import pytest
from stock_pieces import BEECH_CASE, RACK, panel, stocked

from boardwright.stock.records import RoughPart

INCH = 25.4


def one(text: str) -> RoughPart:
    return stocked(text).value.rough[0]


def inches(*sizes: float) -> tuple[float, ...]:
    return tuple(pytest.approx(s * INCH) for s in sizes)


def test_a_narrow_part_gets_a_quarter_in_width_and_an_inch_in_length() -> None:
    part = one(panel("38", "5"))
    assert part.rough == inches(39, 5.25, 1)
    assert part.length_sum == "38 + 1 = 39"
    assert part.width_sum == "5 + 1/4 = 5 1/4"
    assert (part.strips, part.strip) == (1, inches(39, 5.25))


def test_three_quarter_parts_come_from_four_quarter_lumber() -> None:
    """4/4 is planned to finish at 3/4 (common practice)."""
    part = one(panel("38", "5"))
    assert part.lumber == "4/4"
    assert part.thickness_text == "4/4, 1 in rough, planed to 3/4"


def test_an_eighteen_inch_panel_is_four_strips() -> None:
    """By hand: 18 1/2 in 3 strips is 6 1/6 and the jointing, over 6 in; in 4 it is 4 5/8 + 1/8 = 4 3/4."""
    part = one(panel("38", "18"))
    assert part.strips == 4
    assert part.strip == inches(39, 4.75)
    assert part.rough == inches(39, 18.5, 1)
    assert part.strip_sum == "(18 + 1/2 + 4 × 2 × 1/16) / 4 = 4 3/4"


@pytest.mark.parametrize("width", ["9", "11 3/8", "11 13/32", "17 1/8", "23", "30 5/32"])
def test_strips_are_the_fewest_and_make_the_panel_after_jointing(width: str) -> None:
    part = one(panel("20", width))
    assert part.rough is not None
    wanted = part.finished[1] + INCH / 2
    assert part.strip[1] <= 6 * INCH + 1e-6
    assert part.strips * (part.strip[1] - INCH / 8) >= wanted - 1e-6
    assert part.strips == 2 or (part.strips - 1) * (6 * INCH - INCH / 8) < wanted


def test_the_shop_says_how_wide_a_strip_may_be() -> None:
    """By hand: 18 1/2 in strips to 3 in: (3 - 1/8) × 6 = 17 1/4 is too little, × 7 = 20 1/8 is enough."""
    assert one(panel("38", "18", "  strip_max: 3")).strips == 7


def test_boards_on_hand_say_how_wide_a_strip_may_be() -> None:
    """An 8 in board gives 7 1/2 in: 18 1/2 in 2 strips is too much, 3 strips are 6 1/6 + 1/8, up to 1/32."""
    part = one(panel("38", "18", RACK))
    assert part.strips == 3
    assert part.strip == inches(39, 6 + 10 / 32)


def test_more_than_five_boards_are_glued_in_two_stages() -> None:
    notes = [f for f in stocked(panel("38", "30")).findings if f.code == "stock.glue-up-stages"]
    assert len(notes) == 1
    assert "6 strips" in notes[0].found
    assert "4 to 5 boards" in notes[0].expected
    assert notes[0].remedy.startswith("glue 3 and 3 strips first")
    assert not [f for f in stocked(panel("38", "24")).findings if f.code == "stock.glue-up-stages"]


def test_parts_under_twelve_inches_are_gathered_in_one_blank() -> None:
    """The 12 in and 3 in rule: woodworking magazine, November 2007, p. 55. By hand: 11 + 1 is already 12."""
    notes = [f for f in stocked(panel("11", "5")).findings if f.code == "stock.short-parts"]
    assert len(notes) == 1
    assert "blank 12 in long" in notes[0].remedy
    assert not [f for f in stocked(panel("12", "5")).findings if f.code == "stock.short-parts"]


def test_bars_are_ripped_from_their_stock() -> None:
    text = """
boardwright: 1
title: Bars
units: in
stock:
  maple: {wood: maple_sugar, thickness: 1/2}
  cherry: {wood: cherry_black, thickness: 3/4}
  ply: {sheet: birch_plywood, thickness: 6.5 mm}
case:
  {width: 24, height: 30, depth: 18, stock: cherry, back: {stock: ply}, inside: {drawers: {count: 3}}}
drawers:
  {runs_on: bars, bars: {stock: maple}, sides: {stock: maple}, bottom: {stock: ply}, front: {stock: cherry}}
"""
    result = stocked(text).value
    bars = [r for r in result.rough if r.name == "bar"]
    assert bars
    for bar in bars:
        assert bar.finished[2] < INCH / 2
        assert bar.ripped_from.startswith("ripped from 1/2 stock")
        assert bar.strip[1] == pytest.approx(max(bar.finished[1:]) + INCH / 4)
        assert bar.lot == "maple.3_4"


def test_in_millimetres_everything_is_on_whole_millimetres() -> None:
    """1 in is 25 mm and 1/4 in is 6 mm to the nearest mm; 20 mm finishes from 25 mm, sawn less 5 mm."""
    result = stocked(BEECH_CASE).value
    wood = [r for r in result.rough if r.rough is not None]
    assert wood
    for part in wood:
        assert part.lumber == "25 mm"
        assert part.strip[0] == pytest.approx(part.finished[0] + 25)
        if part.strips == 1:
            assert part.strip[1] == pytest.approx(part.finished[1] + 6)
        else:
            assert part.strip[1] <= 150
            assert part.strips * (part.strip[1] - 4) >= part.finished[1] + 13 - 1e-6


def test_a_part_that_one_board_gives_is_not_glued_up() -> None:
    """7 in finished is 7 1/4 in rough, and boards assumed are up to 9 in wide: one board (common practice)."""
    assert one(panel("20", "7")).strips == 1
