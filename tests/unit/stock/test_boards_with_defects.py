"""Boards on hand with defects, as the design file gives them: parts and strips of glue-ups keep off them."""

from __future__ import annotations

from random import Random

import pytest
from stock_pieces import MDF_SHELVES, panel, stocked

from boardwright.core.lengths import INCH
from boardwright.stock.clear import overlap
from boardwright.stock.clear_sections import clear_sections, sections_of
from boardwright.stock.instance import Rectangle, StockSize
from boardwright.stock.records import BoardLayout

KNOTTY = """
  boards:
    - stock: cherry
      length: 72
      width: 6
      defects:
        - {at: [14, 2], length: 2, width: 1 1/2, what: knot}
        - {at: [40, 0], length: 3, width: 2, what: wane}
"""

GLUED = """
  boards:
    - stock: cherry
      length: 96
      width: 6 1/8
      defects: [{at: [44, 2], length: 3, width: 1, what: knot}]
    - stock: cherry
      length: 92
      width: 7 1/2
      defects: [{at: [20, 0], length: 9, width: 1, what: wane}, {at: [88, 0], length: 4, width: 7 1/2, what: check}]
    - {stock: cherry, length: 47, width: 5 1/4}
"""


def clear_of_defects(layout: BoardLayout) -> bool:
    """Whether no piece shares an area with a defect; measured here, by no code of the search or its check."""
    assert layout.piece is not None
    return all(
        p.x >= d.x + d.length - 1e-6
        or d.x >= p.x + p.length - 1e-6
        or p.y >= d.y + d.width - 1e-6
        or d.y >= p.y + p.width - 1e-6
        for p in layout.placed
        for d in layout.piece.defects
    )


def test_a_part_keeps_off_the_defects_of_a_board_on_hand() -> None:
    """By hand: a part of 20 in, 21 rough and 5 1/4 wide: from 16 to 40 or from 43 on, the near end being short."""
    result = stocked(panel("20", "5", KNOTTY))
    assert [f.code for f in result.findings if f.severity.value == "error"] == []
    [lot] = result.value.lots
    [layout] = lot.layouts
    assert lot.verified
    assert lot.on_hand
    assert layout.piece is not None
    assert not layout.from_rack
    assert [(d.x, d.what) for d in layout.piece.defects] == [(14 * INCH, "knot"), (40 * INCH, "wane")]
    assert clear_of_defects(layout)
    [laid] = layout.placed
    assert 16 * INCH - 1e-6 <= laid.x <= 19 * INCH or laid.x >= 43 * INCH - 1e-6


def test_a_board_with_a_check_right_through_does_not_give_a_long_part() -> None:
    """By hand: 72 in checked across its middle leaves 34 1/2 in each way: no part of 40 in."""
    rack = "\n  boards:\n    - {stock: cherry, length: 72, width: 6, defects: [{at: [36, 0], length: 1, width: 6}]}\n"
    assert "stock.does-not-fit" in [f.code for f in stocked(panel("40", "5", rack)).findings]
    clear = rack.replace(", defects: [{at: [36, 0], length: 1, width: 6}]", "")
    assert "stock.does-not-fit" not in [f.code for f in stocked(panel("40", "5", clear)).findings]


def test_strips_of_a_glue_up_are_chosen_from_boards_with_defects() -> None:
    """By hand: 18 in of panel, 18 1/2 rough, 39 in long: the three boards have 2 + 2 + 1 clear lengths of 39 in.

    Their widths, less trim and defects, come to 5 5/8, 5 5/8, 7 or 6, 7 and 4 3/4; equal strips would be 4 3/4.
    """
    result = stocked(panel("38", "18", GLUED))
    [lot] = result.value.lots
    assert lot.verified
    assert all(clear_of_defects(b) for b in lot.layouts)
    [part] = result.value.rough
    assert part.panels
    assert any(b.piece is not None and b.piece.defects for b in lot.layouts)
    widths = [w for own in part.panels for w in own]
    assert sum(widths) - len(widths) * INCH / 8 >= 18.5 * INCH - 1e-6
    assert sorted(p.width for b in lot.layouts for p in b.placed) == pytest.approx(sorted(widths))


def test_a_part_keeps_off_the_damaged_corner_of_a_sheet_on_hand() -> None:
    """By hand: three of 40 x 30 and a corner of 12 x 12: from 12 to 96 there is room for two on each sheet."""
    rack = "\nshop:\n  boards:\n"
    rack += "    - {stock: board, length: 96, width: 31, count: 2, defects: [{at: [0, 0], length: 12, width: 12}]}\n"
    [lot] = stocked(MDF_SHELVES + rack).value.lots
    assert lot.verified
    assert sum(len(b.placed) for b in lot.layouts) == 3
    assert len(lot.layouts) == 2
    assert all(clear_of_defects(b) and b.piece is not None and b.piece.defects for b in lot.layouts)


def test_a_defect_beyond_the_board_is_pointed_out() -> None:
    rack = "\n  boards:\n    - {stock: cherry, length: 72, width: 6, defects: [{at: [70, 0], length: 5, width: 6}]}\n"
    found = stocked(panel("40", "5", rack)).findings
    assert [f.code for f in found] == ["stock.defect-outside"]


@pytest.mark.parametrize(
    ("defect", "wanted"),
    [
        ((300, 40, 340, 60), ((0, 0, 300, 100), (340, 0, 1000, 100))),
        ((450, 0, 550, 5), ((0, 5, 1000, 100),)),
        ((450, 95, 550, 100), ((0, 0, 1000, 95),)),
        ((0, 0, 20, 100), ((20, 0, 1000, 100),)),
    ],
)
def test_sections_are_cut_clear(
    defect: tuple[int, int, int, int], wanted: tuple[tuple[int, int, int, int], ...]
) -> None:
    """By eye: crosscut at a knot in the middle, ripped along a bad edge, a bad end cut off."""
    assert sections_of((0, 0, 1000, 100), [defect], 3, (100, 30)) == wanted


@pytest.mark.parametrize("seed", range(30))
def test_clear_sections_are_clear_and_a_saw_cut_apart(seed: int) -> None:
    random = Random(seed)
    marks = tuple(
        Rectangle(
            x := random.uniform(0, 2300), y := random.uniform(0, 180), x + random.uniform(5, 150), y + 30
        )
        for _ in range(random.randint(1, 7))
    )
    board = StockSize("b", 2400, 200, 1, 1.0, 38, 6, marks)
    found = clear_sections([board], 3, (200, 50))
    assert sum(s.size.cost for s in found) == pytest.approx(1.0 if found else 0.0)
    end = 0
    for s in found:
        x0, y0 = s.x / 1e6 + 38, s.y / 1e6 + 6
        box = (x0, y0, x0 + s.size.length, y0 + s.size.width)
        assert box[2] <= 2400 - 38 + 1e-6
        assert box[3] <= 200 - 6 + 1e-6
        assert not any(overlap(box, (m.x0 + 1e-6, m.y0 + 1e-6, m.x1 - 1e-6, m.y1 - 1e-6)) for m in marks)
        assert s.x >= end
        end = s.x + round(s.size.length * 1e6) + 3_000_000
