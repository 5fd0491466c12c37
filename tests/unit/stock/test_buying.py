"""The tally and the buying list, against printed tallies and sums done by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest
from stock_pieces import BEECH_CASE, MDF_SHELVES, RACK, panel, stocked, stocked_file

from boardwright.core.lengths import Printer
from boardwright.pipeline import check_text
from boardwright.stock.edging import edging
from boardwright.stock.records import BuyLine, Result
from boardwright.stock.tally import tally_of

INCH = 25.4
FOOT = 12 * INCH
EXAMPLE = "examples/ribbon-chest.yaml"


def lines(result: Result, group: str) -> list[BuyLine]:
    return [b for b in result.value.buy if b.group == group]


@pytest.mark.parametrize(
    ("thick", "width", "feet", "printed"),
    [
        (1, 6.5, 8, 4),
        (1, 8, 12, 8),
        (1, 10, 13, 11),
        (1, 6.4375, 10.75, 5),
        (2, 6.25, 8, 8),
        (0.75, 8, 12, 8),
    ],
)
def test_boards_are_tallied_as_hardwood_lumber_is(
    thick: float, width: float, feet: float, printed: float
) -> None:
    """NHLA rules book (2015), p. 7 para. 16 and 18, with examples printed by the association.

    Under 1 in counts as 1 in: NHLA rules, measurement and tally (from memory).
    """
    board = (feet * FOOT, width * INCH)
    assert tally_of([board], [board], thick * INCH, True).bought_board_feet == printed


def test_a_board_foot_is_144_cubic_inches() -> None:
    """0.00235974 m3: exact from 144 cubic inches."""
    board = (FOOT, FOOT)
    what = tally_of([board], [board], INCH, True)
    assert what.net_board_feet == pytest.approx(1)
    assert what.net_volume == pytest.approx(0.00235974, rel=1e-5)


def test_waste_is_told_both_ways() -> None:
    """FAS yields at least 83 1/3 % (NHLA grade chart): 16 2/3 % is lost, 20 % is bought over net."""
    what = tally_of([(10 * FOOT, FOOT)], [(12 * FOOT, FOOT)], INCH, True)
    assert what.lost_share == pytest.approx(1 / 6)
    assert what.added_share == pytest.approx(1 / 5)


def test_lumber_is_asked_for_with_the_chance_that_it_suffices() -> None:
    """By hand: one piece of 39 x 5 1/4 in comes from any FAS board, the least of which is 6 in x 8 ft: 4 board feet."""
    (line,) = lines(stocked(panel("38", "5")), "lumber")
    assert line.item == "4/4 black cherry, FAS"
    feet = int(line.quantity.split()[0])
    assert 4 <= feet <= 12
    assert line.detail.startswith("8 ft and longer; enough in ")
    assert "most of it is left over" in line.detail
    wide = lines(stocked(panel("38", "30")), "lumber")[0].detail
    assert "% lost, " in wide
    assert "% over net" in wide


def test_more_is_asked_for_when_more_is_wanted_and_of_a_lower_grade() -> None:
    small, large = (lines(stocked(panel("38", w)), "lumber")[0] for w in ("5", "30"))
    assert int(small.quantity.split()[0]) < int(large.quantity.split()[0])
    common = lines(stocked(panel("38", "30", "  grade: 2a_common")), "lumber")[0]
    assert common.item.endswith("No. 2A Common")
    assert int(common.quantity.split()[0]) > int(large.quantity.split()[0])


def test_how_it_was_reckoned_is_told_once() -> None:
    told = [b.source for b in stocked_file(EXAMPLE).value.buy if b.group == "lumber"]
    assert len(told) == 2
    assert told[0]
    assert not told[1]
    assert all("trade buys" not in b.detail for b in stocked_file(EXAMPLE).value.buy)


def test_boards_on_hand_are_tallied_too() -> None:
    """By hand: three strips of 39 x 6 5/16 in, two on a board of 8 in x 8 ft: 5 1/3 ft2, counts 5."""
    (line,) = lines(stocked(panel("38", "18", RACK)), "lumber")
    assert line.quantity == "10 board feet, on hand"


def test_metric_lumber_is_bought_by_volume() -> None:
    (line,) = lines(stocked(BEECH_CASE), "lumber")
    assert line.quantity.endswith(" m³")
    assert line.item == "25 mm European beech, FAS"
    assert " m and longer" in line.detail


FINISHED = panel("38", "5").replace("shop:", "finish: {kind: oil_paint, coats: 3}\nshop:")


def test_finish_is_bought_by_area_coats_and_coverage() -> None:
    """US Army TM 43-0139, table 3-2: oil paint covers 500 to 600 ft2 a gallon (128 fl oz) on new wood, each coat.

    By hand: 2 x (38 x 5 + 5 x 3/4 + 38 x 3/4) in2 = 444.5 in2 = 3.087 ft2; 3 coats are 9.26 ft2: 1.98 to 2.37 fl oz.
    """
    (line,) = lines(stocked(FINISHED), "finish")
    assert (line.item, line.quantity) == ("oil paint", "1 to 3 fl oz")
    assert line.detail == "3 coats on 3 ft²"
    (rags,) = lines(stocked(FINISHED), "consumables")
    assert "never in a heap" in rags.detail


def test_without_a_finish_the_area_of_a_coat_is_told() -> None:
    (line,) = lines(stocked(panel("38", "5")), "finish")
    assert line.quantity == "for 3 ft² a coat"


GLAZED = """
boardwright: 1
title: Panes
units: mm
stock:
  glass: {sheet: glass, thickness: 4, measured: 4}
parts:
  one: {stock: glass, length: 600, width: 300, along: x, across: y, at: [0, 0, 0]}
  two: {stock: glass, length: 600, width: 300, along: x, across: y, at: [0, 0, 100]}
"""


def test_glass_is_ordered_cut_to_size() -> None:
    (line,) = lines(stocked(GLAZED), "sheets")
    assert line.quantity == "2 panes"
    assert line.detail.startswith("2 of 300 × 600 mm")


PRICED = """
  boards: [{stock: cherry, length: 96, width: 8, count: 6}]
  prices: {cherry: {price: 9, per: board foot}}
"""


def test_costs_are_price_times_amount_and_what_is_on_hand_costs_nothing() -> None:
    result = stocked(panel("38", "5", "  prices: {cherry: {price: 9.50, per: board foot}}"))
    (line,) = lines(result, "lumber")
    assert line.cost == f"{9.5 * int(line.quantity.split()[0]):.2f}"
    (total,) = lines(result, "total")
    assert total.cost == line.cost
    (line,) = lines(stocked(panel("38", "5", PRICED)), "lumber")
    assert line.cost == "0.00"


def test_edging_is_cut_from_sold_lengths() -> None:
    """By hand: two edges of 40 in and 2 over each come from one of 96 in; a third needs another."""
    read = check_text(MDF_SHELVES)
    assert read.piece is not None
    parts = tuple(replace(p, show=("edge",)) for p in read.piece.parts)
    piece = replace(read.piece, parts=parts)
    ((line, lot),) = edging(piece, read.tables, INCH / 8, Printer("in", INCH / 32))
    assert line.quantity == "2 of 96 in"
    assert line.detail == "3 edges seen, 10 ft in all"
    assert [(b.count, [round(x / INCH, 6) for _, x in b.pieces]) for b in lot.bars] == [
        (1, [42, 42]),
        (1, [42]),
    ]
    assert [round(b.left / INCH, 6) for b in lot.bars] == [11.75, 53.875]
    assert (lot.bound, lot.verified) == (2, True)


def test_sheets_are_counted_with_their_size() -> None:
    """By hand: three parts of 40 x 30 in lie across one sheet, 90 1/4 in with two saw cuts."""
    (line,) = lines(stocked(MDF_SHELVES), "sheets")
    assert line.item.endswith("3/4 in, 49 × 97 in")
    assert line.quantity == "1 sheet"


def test_a_measured_sheet_says_so() -> None:
    (line,) = lines(stocked_file(EXAMPLE), "sheets")
    assert "birch plywood 6.5 mm (measured 0.252 in)" in line.item


def test_slides_are_bought_in_pairs() -> None:
    (line,) = lines(stocked(BEECH_CASE), "hardware")
    assert line.quantity == "2 pairs"


def test_screws_have_a_tenth_to_spare() -> None:
    result = stocked_file(EXAMPLE)
    for line in lines(result, "fasteners"):
        used = int(line.detail.split()[0])
        assert used * 1.1 <= int(line.quantity) < used * 1.1 + 5
        assert int(line.quantity) % 5 == 0


def test_glue_goes_on_the_edges_of_strips() -> None:
    """By hand: 3 glue lines, 39 in long, 1 in thick: 75,484 mm2; at 150 and 250 g/m2, 11.3 and 18.9 g."""
    result = stocked(panel("38", "18"))
    assert result.value.glue_area == pytest.approx(3 * 39 * INCH**2)
    (line,) = lines(result, "glue")
    assert line.quantity == "11 to 19 g"
    assert lines(stocked(panel("38", "5")), "glue") == []
