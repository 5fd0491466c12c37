"""The tally and the buying list, against printed tallies and sums done by hand."""

from __future__ import annotations

import pytest
from stock_pieces import BEECH_CASE, MDF_SHELVES, RACK, panel, stocked, stocked_file

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


def test_lumber_is_bought_in_board_feet_of_its_rough_thickness() -> None:
    """By hand: one piece of 39 x 5 1/4 in; the smallest board, 6 in x 8 ft, takes it: 4 board feet."""
    (line,) = lines(stocked(panel("38", "5")), "lumber")
    assert (line.item, line.quantity) == ("4/4 black cherry", "4 board feet")
    assert "1 board: 1 of 6 × 96 in" in line.detail
    assert "common practice" in line.detail


def test_boards_on_hand_are_tallied_too() -> None:
    """By hand: three strips of 39 x 6 5/16 in, two on a board of 8 in x 8 ft: 5 1/3 ft2, counts 5."""
    (line,) = lines(stocked(panel("38", "18", RACK)), "lumber")
    assert line.quantity == "10 board feet, on hand"


def test_metric_lumber_is_bought_by_volume() -> None:
    result = stocked(BEECH_CASE)
    (line,) = lines(result, "lumber")
    (lot,) = [x for x in result.value.lots if x.kind == "wood"]
    volume = sum(b.length * b.width * 25 for b in lot.layouts) / 1e9
    assert line.quantity == f"{volume:.3f} m³"
    assert line.item == "25 mm European beech"


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
