"""Allowances of the shop, parts trimmed later, blanks, matched parts, test pieces: sums done by hand.

The allowances are common practice: 1/8 in on a piece of a blank, saw cuts of 1/8 in, 1 in on the length.
"""

from __future__ import annotations

from itertools import pairwise

import pytest
from stock_pieces import panel, stocked

from boardwright.core.findings import Severity
from boardwright.stock.records import PlacedPiece, Result, RoughPart

INCH = 25.4
HEAD = """
boardwright: 1
title: Boards
units: in
stock:
  oak: {wood: oak_white, thickness: 3/4}
parts:
"""


def boards(*sizes: tuple[str, str], more: str = "") -> str:
    """A loose part for each length and width, named a, b, c ..., and more lines."""
    rows = [
        f"  {name}: {{stock: oak, length: {length}, width: {width}, along: x, across: y, at: [0, 0, {10 * n}]}}"
        for n, (name, (length, width)) in enumerate(zip("abcdefgh", sizes, strict=False))
    ]
    return HEAD + "\n".join(rows) + "\n" + more


def one(text: str) -> RoughPart:
    return stocked(text).value.rough[0]


def placed(result: Result) -> list[PlacedPiece]:
    return [p for lot in result.value.lots for b in lot.layouts for p in b.placed]


def codes(result: Result) -> list[str]:
    return [f.code for f in result.findings]


def test_allowances_of_the_shop_are_for_each_side() -> None:
    """By hand: 38 + 2 x 1/4 + 2 x 2 (snipe) = 42 1/2; 5 + 2 x 3/16 = 5 3/8."""
    shop = "  allowances: {end: 1/4, snipe: 2, edge: 3/16}"
    part = one(panel("38", "5", shop))
    assert part.length_sum == "38 + 1/2 + 4 = 42 1/2"
    assert part.width_sum == "5 + 3/8 = 5 3/8"


def test_the_face_allowance_says_which_lumber_gives_the_thickness() -> None:
    """By hand: 3/4 + 2 x 1/8 = 1 is just 4/4; 3/4 + 2 x 5/32 = 1 1/16 needs 5/4."""
    part = one(panel("38", "5", "  allowances: {face: 1/8}"))
    assert (part.lumber, part.thickness_sum) == ("4/4", "3/4 + 1/4 = 1; bought 1 in")
    assert one(panel("38", "5", "  allowances: {face: 5/32}")).lumber == "5/4"


def test_a_long_board_has_more_planed_off() -> None:
    """1/8 in all for a flat short board, 1/4 for a long one (common practice): 13/16 and 1/4 is over 1 in."""
    thick = panel("80", "5").replace("thickness: 3/4", "thickness: 13/16")
    assert one(thick).thickness_sum.startswith("13/16 + 1/4 = 1 1/16")
    assert one(thick).lumber == "5/4"


def test_strips_keep_some_thickness_for_flattening_where_the_lumber_has_it() -> None:
    """By hand: 1 rough less 1/8 is 7/8; 3/4 + 1/16 = 13/16 is less, so strips are planed to 13/16."""
    part = one(panel("38", "18"))
    assert part.planed == pytest.approx(13 / 16 * INCH)
    assert part.thickness_text == "4/4, 1 in rough, planed to 13/16, the panel flattened to 3/4"


def test_a_part_trimmed_later_gets_what_the_file_says() -> None:
    more = "rough: [{parts: a, trim_later: {length: 3/4, width: 1/4}}]"
    part = one(boards(("20", "5"), more=more))
    assert part.length_sum == "20 + 1 + 3/4 = 21 3/4"
    assert part.width_sum == "5 + 1/4 + 1/4 = 5 1/2"


def test_short_parts_are_milled_in_one_blank_and_cut_apart() -> None:
    """By hand: 4 of 5 + 1/8 with 3 saw cuts of 1/8 and 1 over is 21 7/8; 2 in each blank would reach 12 in too
    late (11 3/8), 3 and 1 leave one alone: so all four are in one."""
    result = stocked(boards(*[("5", "4")] * 4))
    (blank,) = result.value.blanks
    assert blank.why == "short"
    assert blank.length == pytest.approx(21.875 * INCH)
    assert blank.sum == "4 × 5 1/8 + 3 × 1/8 + 1 = 21 7/8"
    own = sorted(placed(result), key=lambda p: p.x)
    assert [round((b.x - a.x) / INCH, 4) for a, b in pairwise(own)] == [5.25] * 3
    assert {p.blank for p in own} == {blank.id}


def test_many_short_parts_make_several_blanks_none_too_short() -> None:
    result = stocked(boards(*[("5", "4")] * 8))
    assert len(result.value.blanks) > 1
    assert all(b.length >= 12 * INCH for b in result.value.blanks)
    assert sorted(id for b in result.value.blanks for _, id, _ in b.pieces) == sorted(
        f"parts.{x}" for x in "abcdefgh"
    )


def test_the_machines_of_the_shop_may_take_shorter_pieces() -> None:
    text = boards(("5", "4"), ("5", "4"), more="shop: {machine_least: 4}")
    assert stocked(text).value.blanks == ()


def test_parts_in_sequence_lie_end_to_end_on_one_board() -> None:
    """By hand: 16 1/8 + 20 1/8 + 24 1/8 + 2 x 1/8 + 1 = 61 5/8."""
    more = "rough: [{parts: [c, a, b], matched: sequence}]"
    result = stocked(boards(("16", "5"), ("20", "5"), ("24", "4"), more=more))
    (blank,) = result.value.blanks
    assert [id for _, id, _ in blank.pieces] == ["parts.c", "parts.a", "parts.b"]
    assert blank.length == pytest.approx(61.625 * INCH)
    own = sorted(placed(result), key=lambda p: p.x)
    assert [p.part for p in own] == ["parts.c", "parts.a", "parts.b"]
    assert len(result.value.lots[0].layouts) == 1


def test_strips_of_matched_panels_lie_in_sequence_strip_by_strip() -> None:
    more = "rough: [{parts: [a, b], matched: around}]"
    result = stocked(boards(("20", "14"), ("16", "14"), more=more))
    strips = [[k for _, _, k in b.pieces] for b in result.value.blanks]
    assert strips == [[1, 1], [2, 2], [3, 3]]


def test_a_book_matched_part_is_resawn_from_thicker_lumber() -> None:
    """By hand: 2 x 3/4 + 1/16 + 2 x 1/32 = 1 5/8, + 1/8 = 1 3/4: 8/4 is planned for 1 3/4. Half of 10 1/2 and
    1/16 on both edges is 5 3/8."""
    part = one(boards(("20", "10"), more="rough: [{parts: a, matched: book}]"))
    assert part.lumber == "8/4"
    assert part.thickness_sum == "2 × 3/4 + 1/16 + 2 × 1/32 + 1/8 = 1 3/4; bought 2 in"
    assert part.strip[1] == pytest.approx(5.375 * INCH)
    assert (part.leaves, part.strips) == (2, 1)


def test_spare_parts_are_laid_out_too() -> None:
    result = stocked(boards(("20", "5"), more="rough: [{parts: a, spare: 2}]"))
    assert [p.label for p in placed(result)].count("A spare") == 2
    assert len(placed(result)) == 3


@pytest.mark.parametrize("trim", ["{length: -3}", "{width: 40}"])
def test_a_trim_that_makes_no_sense_is_refused_where_it_stands(trim: str) -> None:
    result = stocked(boards(("20", "5"), more=f"rough: [{{parts: a, trim_later: {trim}}}]"))
    (finding,) = result.findings
    assert finding.code == "stock.shop-value"
    assert finding.place.path.startswith("rough[0].trim_later.")
    assert finding.place.line > 0
    assert result.value.rough[0].length_sum == "20 + 1 = 21"


def test_wishes_that_cannot_be_kept_say_why() -> None:
    more = "rough: [{parts: [a, q], matched: sequence}, {parts: a, spare: 1}]"
    result = stocked(boards(("20", "5"), more=more))
    assert [f.severity for f in result.findings] == [Severity.ERROR, Severity.WARNING]
    assert codes(result) == ["stock.no-such-part", "stock.cannot-match"]


GROOVE = "cuts: [{kind: groove, side: face, along: length, at: 1, width: 1/4, depth: 1/4}]}"
GROOVED = boards(("30", "5")).replace("at: [0, 0, 0]}", f"at: [0, 0, 0], {GROOVE}")


def test_a_thickness_with_joints_gets_a_test_piece() -> None:
    """12 x 3 in (the 12 in and 3 in rule), with the allowances of any part: 13 x 3 1/4."""
    result = stocked(GROOVED)
    (trial,) = result.value.trials
    assert trial.strip == (pytest.approx(13 * INCH), pytest.approx(3.25 * INCH))
    assert trial.blank.startswith("from leftover") or trial.parts[0] in {p.part for p in placed(result)}
    assert stocked(GROOVED + "shop: {test_pieces: 0}").value.trials == ()
    assert stocked(boards(("30", "5"))).value.trials == ()
