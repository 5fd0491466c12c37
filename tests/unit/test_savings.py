"""What a little would save: thresholds by hand, bad ranges refused."""

from __future__ import annotations

import pytest

from boardwright.savings import NoSuchSize, savings

SHELVES = """
boardwright: 1
title: Shelf boards
units: mm
sizes:
  deep: 405
  long: 800
stock:
  board: {sheet: birch_plywood, thickness: 18, measured: 18, sheet_length: 2440, sheet_width: 1220}
parts:
""" + "\n".join(
    f"  s{n}: {{stock: board, length: long, width: deep, along: x, across: y, at: [0, 0, {n * 100}]}}"
    for n in range(9)
)


def test_a_shelf_a_little_shallower_saves_a_sheet() -> None:
    """By hand: a sheet of 2440 x 1220, 6 off each edge, is 2428 x 1208 in use.

    Three shelves of 800 and two saw cuts of 3.2 are 2406.4 long; three of 400.5 and two cuts are 1207.9 wide, three of
    401 are 1209.4. So nine need two sheets at 405, one at 400.5.
    """
    found = savings(SHELVES, "shelves.yaml", "sizes.deep=395..410")
    (saving,) = found.found
    assert saving.size == pytest.approx(400.5)
    assert saving.change == pytest.approx(-4.5)
    assert saving.lots == (("birch plywood 18 mm", 2, 1),)
    assert saving.area == pytest.approx(2.44 * 1.22, rel=1e-6)
    assert saving.errors == 0


def test_nothing_is_saved_where_nothing_can_be() -> None:
    assert savings(SHELVES, "shelves.yaml", "sizes.deep=402..410").found == ()


@pytest.mark.parametrize(
    ("within", "says"),
    [
        ("sizes.deep", "write it as"),
        ("sizes.deep=3..x", "sizes.deep"),
        ("sizes.depth=3..4", "such as sizes.deep"),
        ("parts.s1.length=3..4", "not one length"),
        ("sizes.deep=-3..4", "over 0"),
    ],
)
def test_a_range_that_makes_no_sense_is_refused(within: str, says: str) -> None:
    with pytest.raises(NoSuchSize, match=says):
        savings(SHELVES, "shelves.yaml", within)
