"""Parts on the rack's boards: which serve, how defects are cut clear, what is bought, what is left."""

from __future__ import annotations

from dataclasses import replace

import pytest
from stock_pieces import MDF_SHELVES, panel

from boardwright.core.arithmetic import Resolver
from boardwright.core.findings import has_errors
from boardwright.core.lengths import INCH
from boardwright.core.rack import Defect, Rack, RackPiece
from boardwright.pipeline import check_text
from boardwright.stock.clear import clear_pieces, halves, overlap
from boardwright.stock.instance import Instance, Item, StockSize
from boardwright.stock.on_rack import serves, usable
from boardwright.stock.rack_bound import rack_bound
from boardwright.stock.rack_words import defects_in
from boardwright.stock.records import Result
from boardwright.stock.run import run_stock, shop_choices

KERF = 3.0


def board(
    name: str, length: float, width: float, *marks: Defect, lumber: str = "4_4", **more: object
) -> RackPiece:
    """A cherry board; sizes in inches."""
    return replace(
        RackPiece(name, "board", "cherry_black", INCH, length * INCH, width * INCH, lumber, defects=marks),
        **more,
    )


def knot(x: float, y: float, length: float, width: float) -> Defect:
    return Defect(x * INCH, y * INCH, length * INCH, width * INCH, "knot")


def stocked(text: str, *pieces: RackPiece, rack: bool = True) -> Result:
    """The stock stage of a design with a rack."""
    read = check_text(text)
    assert read.design is not None
    assert read.piece is not None, [f.text() for f in read.findings]
    choices = shop_choices(read.design, Resolver(read.design.lengths, read.design.file.units).value)
    there = Rack(tuple(pieces)) if rack else None
    return run_stock(read.piece, read.tables, replace(choices, rack=there))


# ---- defects are cut clear


def test_a_knot_in_the_middle_leaves_two_ends_and_two_strips() -> None:
    room, mark = (0, 0, 1000, 100), (480, 40, 520, 60)
    found = clear_pieces(room, [mark], 4, (30, 10))
    assert found.splits[0].piece == room
    assert not any(overlap(p, mark) for p in found.pieces)
    assert (0, 0, 480, 100) in found.pieces
    assert (520, 0, 1000, 100) in found.pieces


def test_a_knot_at_the_edge_is_ripped_off() -> None:
    """Ripping 6 of 100 off keeps 0.94 of the board; crosscutting keeps 0.99 of it, but in two halves."""
    found = clear_pieces((0, 0, 1000, 100), [(495, 0, 505, 6)], 4, (30, 10))
    assert found.pieces == ((0, 6, 1000, 100),)


def test_nothing_clear_is_large_enough() -> None:
    assert clear_pieces((0, 0, 100, 100), [(45, 0, 55, 100)], 4, (60, 50)).pieces == ()


def test_the_cuts_make_the_clear_pieces() -> None:
    room = (0, 0, 4000, 300)
    marks = [(500, 100, 600, 150), (1500, 0, 1520, 300), (2600, 200, 2900, 300), (3990, 0, 4000, 300)]
    found = clear_pieces(room, marks, 4, (100, 40))
    there = {room}
    for split in found.splits:
        there.remove(split.piece)
        there |= {h for h in halves(split.piece, split.along, split.position, 4) if h is not None}
    assert set(found.pieces) <= there
    assert len(found.pieces) >= 4
    assert not any(overlap(p, m) for p in found.pieces for m in marks)


# ---- what serves


@pytest.mark.parametrize(
    ("lumber", "thickness", "material", "is_used"),
    [
        ("4_4", 25.4, "cherry_black", True),
        ("8_4", 50.8, "cherry_black", False),
        ("4_4", 25.4, "maple_sugar", False),
        ("25_mm", 25.0, "cherry_black", True),  # planes to 20 mm, and the next thinner, 22 mm, not to 3/4 in
        ("22_mm", 22.0, "cherry_black", False),
        ("38_mm", 38.0, "cherry_black", False),
    ],
)
def test_a_board_serves_for_its_own_class(
    lumber: str, thickness: float, material: str, is_used: bool
) -> None:
    read = check_text(panel("30", "5"))
    assert read.piece is not None
    piece = RackPiece("B1", "board", material, thickness, 2000, 200, lumber)
    wanted = read.tables.class_for(0.75 * INCH, "in")
    assert serves(piece, read.piece.parts[0].stock, wanted, 0.75 * INCH, read.tables) is is_used


def test_a_plan_in_millimetres_takes_boards_sold_in_quarters() -> None:
    """3/4 in is 19.05 mm: 25 mm would be bought for it, and 4/4 planes to 3/4 in."""
    text = panel("30", "5").replace("units: in", "units: mm").replace("thickness: 3/4", "thickness: 3/4 in")
    text = text.replace("length: 30", "length: 760").replace("width: 5", "width: 125").replace("1/8", "3")
    [lot] = stocked(text, board("B1", 60, 8)).value.lots
    assert [b.from_rack for b in lot.layouts] == [True]


def test_sheets_serve_by_family_and_nominal_thickness() -> None:
    read = check_text(MDF_SHELVES)
    assert read.piece is not None
    stock = read.piece.parts[0].stock
    for material, thickness, is_used in (("mdf", 19.0, True), ("mdf", 12.0, False), ("hdf", 19.0, False)):
        piece = RackPiece("S1", "sheet", material, thickness, 2440, 1220)
        assert serves(piece, stock, None, stock.thickness, read.tables) is is_used


def test_offcuts_keep_their_ends() -> None:
    """An end that was sawn is not trimmed for checks again: a part as long as the offcut fits."""
    whole, offcut = board("B1", 31, 8), board("B1-1", 31, 8, cut_from="B1")
    trims, least = (1.5 * INCH, 0.25 * INCH), (31 * INCH, 5 * INCH)
    assert [o.piece.name for o in usable([whole, offcut], trims, least, KERF)] == ["B1-1"]


# ---- layouts


def test_parts_go_on_the_rack_and_nothing_is_bought() -> None:
    result = stocked(panel("30", "5"), board("B7", 60, 8))
    [lot] = result.value.lots
    [layout] = lot.layouts
    assert lot.verified
    assert layout.piece is not None
    assert (layout.piece.name, layout.from_rack) == ("B7", True)
    assert "B7 of the rack" in layout.title
    kept = [w for w in layout.leftovers if w.name]
    assert [w.name for w in kept] == [f"B7-{n}" for n in range(1, len(kept) + 1)]
    lumber = [b for b in result.value.buy if b.group == "lumber"]
    assert [b.quantity.endswith("on hand") for b in lumber] == [True]
    assert "B7" in lumber[0].detail


def test_what_the_rack_has_not_is_bought() -> None:
    result = stocked(panel("90", "30"), board("B1", 96, 7))
    [lot] = result.value.lots
    assert lot.verified
    assert [b.from_rack for b in lot.layouts] == [True] + [False] * (len(lot.layouts) - 1)
    assert len(lot.layouts) > 1
    lumber = [b for b in result.value.buy if b.group == "lumber"]
    assert [b.quantity.endswith("on hand") for b in lumber] == [True, False]
    assert lot.from_rack is not None
    assert lot.bought is not None
    assert lot.from_rack.net + lot.bought.net == pytest.approx(lot.tally.net)
    assert lot.from_rack.bought + lot.bought.bought == pytest.approx(lot.tally.bought)
    assert (lot.from_rack.bought_board_feet or 0) > 0


def test_without_a_rack_the_plan_says_what_is_assumed() -> None:
    [lot] = stocked(panel("30", "5"), rack=False).value.lots
    assert lot.assumed.startswith("boards assumed")
    assert lot.from_rack is None
    [empty] = stocked(panel("30", "5")).value.lots
    assert empty.assumed.startswith("none on the rack that serves; boards assumed")
    assert empty.layouts[0].size == lot.layouts[0].size


def test_the_file_s_own_boards_go_before_the_rack() -> None:
    own = "\n  boards:\n    - {stock: cherry, length: 96, width: 8}\n"
    [lot] = stocked(panel("30", "5", own), board("B1", 60, 8)).value.lots
    assert not any(b.from_rack for b in lot.layouts)
    assert lot.on_hand


def test_no_part_lies_on_a_defect() -> None:
    """A board with knots on both halves and a checked end; a part of 20 in fits clear of each."""
    marks = (knot(28, 3, 5, 2), knot(60, 0, 3, 2), knot(92, 0, 4, 8))
    result = stocked(panel("20", "6"), board("B1", 96, 8, *marks))
    [lot] = result.value.lots
    [layout] = lot.layouts
    assert lot.verified
    assert layout.from_rack
    for p in layout.placed:
        for d in marks:
            apart = (
                p.x >= d.x + d.length or d.x >= p.x + p.length or p.y >= d.y + d.width or d.y >= p.y + p.width
            )
            assert apart


def test_strips_of_a_panel_come_from_knotty_boards() -> None:
    """By hand: 22 1/2 in of panel, 39 in long; a knot in the middle of each board leaves two clear lengths of it.

    Four equal strips are 5 3/4 in wide, and one board gives 5 5/8: its two and two of 6, less 4 x 1/8, are 22 3/4.
    """
    boards = [board(f"B{n}", 96, width, knot(45, 2, 4, 1)) for n, width in ((1, 6.125), (2, 7.5))]
    result = stocked(panel("38", "22"), *boards)
    [lot] = result.value.lots
    assert lot.verified
    assert all(b.from_rack for b in lot.layouts)
    assert result.value.rough[0].panels
    for layout in lot.layouts:
        assert all(p.x + p.length <= 45 * INCH + 1e-6 or p.x >= 49 * INCH - 1e-6 for p in layout.placed)


def test_an_offcut_keeps_the_knots_that_are_in_it() -> None:
    """A part from the near end of a long board: the rest stays whole, with its knot, and goes back so."""
    result = stocked(panel("20", "6"), board("B1", 96, 8, knot(60, 3, 5, 2)))
    [layout] = result.value.lots[0].layouts
    assert layout.piece is not None
    kept = [w for w in layout.leftovers if w.name]
    marks = [(w, d) for w in kept for d in defects_in(w, layout.piece)]
    assert len(marks) <= 1
    for w, d in marks:
        assert (w.x + d.x, w.y + d.y) == pytest.approx((60 * INCH, 3 * INCH))
        assert (d.length, d.width) == pytest.approx((5 * INCH, 2 * INCH))
        assert d.what == "knot"
    left = sum(w.length * w.width for w in kept)
    assert left > 0.5 * 96 * 8 * INCH**2


def test_a_leftover_that_is_all_knots_gets_no_name() -> None:
    marks = (knot(40, 0, 56, 6),)
    result = stocked(panel("30", "5"), board("B1", 96, 8, *marks))
    [layout] = result.value.lots[0].layouts
    assert layout.piece is not None
    for w in layout.leftovers:
        if defects_in(w, layout.piece):
            assert not w.name


def test_a_board_that_is_all_knots_is_left_alone() -> None:
    result = stocked(panel("30", "5"), board("B1", 60, 8, knot(0, 3, 60, 2)))
    assert [b.from_rack for b in result.value.lots[0].layouts] == [False]
    assert not has_errors(result.findings)


def test_wet_boards_are_pointed_out() -> None:
    found = stocked(panel("30", "5"), board("B1", 60, 8, moisture=14.0)).findings
    assert [f.code for f in found if f.code.startswith("rack.")] == ["rack.moisture"]
    dry = stocked(panel("30", "5"), board("B1", 60, 8, moisture=9.0)).findings
    assert not [f for f in dry if f.code.startswith("rack.")]


def test_a_sheet_of_another_thickness_is_pointed_out() -> None:
    sheet = RackPiece("S1", "sheet", "mdf", 19.0, 2440.0, 1220.0, measured=18.2)
    found = stocked(MDF_SHELVES, sheet).findings
    assert [f.code for f in found if f.code.startswith("rack.")] == ["rack.thickness"]


def test_the_same_rack_gives_the_same_plan() -> None:
    pieces = [board(f"B{n}", 40 + n, 6 + n / 4, knot(10 + n, 1, 3, 2)) for n in range(6)]
    one = stocked(panel("38", "22"), *pieces)
    other = stocked(panel("38", "22"), *pieces)
    assert one.value == other.value


# ---- the bound


def test_the_bound_counts_how_few_there_are() -> None:
    """Two parts of 0.5 m2; a board that takes one costs 0.1 and is there once, the rest is bought at 2 for two."""
    cheap = StockSize("cheap", 1000.0, 500.0, 1, 0.1)
    new = StockSize("new", 2000.0, 1000.0, None, 2.0)
    assert rack_bound(Instance((Item("p", 1000.0, 500.0, 2),), (new, cheap))) == pytest.approx(2.0)
    assert rack_bound(Instance((Item("p", 1000.0, 500.0, 5),), (new, cheap))) == pytest.approx(2.1)
    assert rack_bound(Instance((Item("p", 1000.0, 500.0, 1),), (new, cheap))) == pytest.approx(0.1)


def test_the_bound_knows_what_fits_nowhere_on_the_rack() -> None:
    """Five small boards have more area than the part, but it is longer than each of them."""
    small = StockSize("small", 600.0, 500.0, 5, 0.01)
    new = StockSize("new", 2000.0, 1000.0, None, 2.0)
    assert rack_bound(Instance((Item("p", 1000.0, 400.0, 1),), (new, small))) == pytest.approx(2.0)


def test_a_large_rack_is_tried_in_part() -> None:
    """Of 200 boards that take a part and 200 that take none, the 30 smallest and the 30 largest of the first."""
    many = [board(f"B{n}", 40 + n / 4, 8) for n in range(200)] + [board(f"C{n}", 10, 8) for n in range(200)]
    found = usable(many, (2 * INCH, INCH / 4), (30 * INCH, 5 * INCH), KERF)
    assert [o.piece.name for o in found] == [f"B{n}" for n in (*range(30), *range(170, 200))]


# ---- strips of panels


def test_strips_have_the_widths_of_the_racks_boards() -> None:
    """By hand: 5 1/2, 4 3/4 and 5 3/8 in of three boards, less 1/8 in of jointing each, make 15 1/4 in.

    The panel is 14 3/4 in wide and is glued up 1/2 in wider; boards lose 1/4 in at each edge (common practice).
    Three equal strips would be 5 1/4 in wide, and the second board gives none.
    """
    boards = [board("M", 36, 6), board("N", 36, 5.25), board("W", 36, 5.875)]
    result = stocked(panel("30", "14 3/4"), *boards)
    [lot] = result.value.lots
    assert [b.size for b in lot.layouts] == ["rack M", "rack N", "rack W"]
    widths = sorted(p.width / INCH for b in lot.layouts for p in b.placed)
    assert widths == pytest.approx([4.75, 5.375, 5.5])
    assert not has_errors(result.findings)
