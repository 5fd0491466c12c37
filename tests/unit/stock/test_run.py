"""The stock stage as a whole: laws that hold for any piece, and what is said when it cannot be done."""

from __future__ import annotations

import json
from collections import Counter
from dataclasses import asdict, replace

import pytest
from stock_pieces import BEECH_CASE, MDF_SHELVES, RACK, RANDOM_RACK, panel, stocked, stocked_file

from boardwright.core.findings import Severity
from boardwright.pipeline import check_file, check_text
from boardwright.stock import lots
from boardwright.stock.blanks import ids_of, strips_of
from boardwright.stock.records import BoardLayout, Result, ShopChoices
from boardwright.stock.run import run_stock

INCH = 25.4
EXAMPLE = "examples/ribbon-chest.yaml"
PIECES = {
    "sheet": MDF_SHELVES,
    "mm": BEECH_CASE,
    "panel": panel("38", "18"),
    "rack": panel("38", "18", RACK),
    "random rack": panel("38", "18", RANDOM_RACK),
}


@pytest.fixture(scope="module", params=["chest", *PIECES])
def done(request: pytest.FixtureRequest) -> Result:
    return stocked_file(EXAMPLE) if request.param == "chest" else stocked(PIECES[request.param])


def errors(result: Result) -> list[str]:
    return [f.code for f in result.findings if f.severity is Severity.ERROR]


def test_every_strip_of_every_part_lies_on_one_board(done: Result) -> None:
    placed = Counter((p.part, p.strip) for lot in done.value.lots for b in lot.layouts for p in b.placed)
    laid_out = [*done.value.rough, *(t for t in done.value.trials if not t.blank)]
    wanted = Counter((id, n) for r in laid_out for id in r.parts for n in range(1, strips_of(r, id) + 1))
    assert placed == wanted
    assert errors(done) == []


def test_every_lot_passed_its_check(done: Result) -> None:
    for lot in done.value.lots:
        assert lot.verified
        assert lot.bound <= len(lot.layouts)
        assert lot.cost_bound <= lot.tally.bought + 1e-6


def apart(board: BoardLayout, kerf: float) -> bool:
    """Pieces lie inside the trimmed board, each two a saw cut apart; it uses none of the check's code."""
    for n, p in enumerate(board.placed):
        if p.x < board.trim_length - 1e-6 or p.x + p.length > board.length - board.trim_length + 1e-6:
            return False
        if p.y < board.trim_width - 1e-6 or p.y + p.width > board.width - board.trim_width + 1e-6:
            return False
        for q in board.placed[n + 1 :]:
            along = max(q.x - p.x - p.length, p.x - q.x - q.length)
            across = max(q.y - p.y - p.width, p.y - q.y - q.width)
            if max(along, across) < kerf - 1e-6:
                return False
    return True


def test_pieces_are_a_saw_cut_apart(done: Result) -> None:
    assert all(apart(b, lot.kerf) for lot in done.value.lots for b in lot.layouts)


def test_pieces_on_boards_are_as_large_as_the_rough_list_says(done: Result) -> None:
    rough = {r.letter: r for r in (*done.value.rough, *done.value.trials)}
    for lot in done.value.lots:
        for p in (p for b in lot.layouts for p in b.placed):
            size = (p.width, p.length) if p.turned else (p.length, p.width)
            part = rough[p.letter]
            strip = part.strip
            if part.panels:
                strip = (strip[0], part.panels[ids_of(part).index(p.part)][p.strip - 1])
            assert size == pytest.approx(strip)
            assert lot.kind == "sheet" or not p.turned


def test_rough_wood_holds_the_finished_part_and_its_allowances(done: Result) -> None:
    for r in done.value.rough:
        if r.rough is None:
            assert r.strip == (r.finished[0], r.finished[1])
            continue
        length, width, thickness = r.rough
        assert length > r.finished[0]
        assert r.strips * r.strip[0] * r.strip[1] >= length * width - 1e-6
        assert width * thickness >= r.finished[1] * r.finished[2]


def test_less_is_in_the_parts_than_in_the_boards(done: Result) -> None:
    for lot in done.value.lots:
        assert 0 < lot.tally.net < lot.tally.bought
        for b in lot.layouts:
            assert 0 < b.used_share < 1


def test_the_result_is_plain_data(done: Result) -> None:
    assert json.loads(json.dumps(asdict(done.value)))["rough"]


def test_the_same_piece_gives_the_same_result() -> None:
    assert stocked(BEECH_CASE) == stocked(BEECH_CASE)


def test_only_panels_without_grain_may_be_turned() -> None:
    """By hand: across a sheet, three parts of 40 x 30 in take 90 1/4 in of it; along it, two fill it."""
    (lot,) = stocked(MDF_SHELVES).value.lots
    assert len(lot.layouts) == 1
    assert all(p.turned for p in lot.layouts[0].placed)
    (lot,) = stocked(MDF_SHELVES.replace("mdf", "hardwood_plywood")).value.lots
    assert len(lot.layouts) == 2
    assert not any(p.turned for b in lot.layouts for p in b.placed)


SHEET_PART = """
boardwright: 1
title: Full sheet
units: in
stock:
  board: {sheet: FAMILY, thickness: 3/4}
parts:
  whole: {stock: board, length: 96, width: 48, along: x, across: y, at: [0, 0, 0]}
shop: {sheet_trim: 1/2}
"""


def test_an_oversize_sheet_gives_a_whole_one_after_trimming() -> None:
    """MDF is sold 49 x 97 in, 1 in oversize for trimming (common practice); plywood 48 x 96 in is not."""
    assert errors(stocked(SHEET_PART.replace("FAMILY", "mdf"))) == []
    result = stocked(SHEET_PART.replace("FAMILY", "hardwood_plywood"))
    assert errors(result) == ["stock.does-not-fit"]
    assert result.value.lots[0].layouts == ()


def test_a_part_longer_than_every_board_says_what_board_it_needs() -> None:
    """By hand: 120 + 1 rough, and 2 in at each end, is 125 in; 5 1/4 and 1/4 at each edge is 5 3/4."""
    result = stocked(panel("120", "5"))
    (finding,) = [f for f in result.findings if f.severity is Severity.ERROR]
    assert finding.code == "stock.does-not-fit"
    assert "125 long and 5 3/4 wide" in finding.remedy


def test_a_rack_that_is_too_small_says_how_much_is_missing() -> None:
    """By hand: three strips of 39 x 6 5/16 in; an 8 x 96 in board gives two."""
    rack = "  boards: [{stock: cherry, length: 96, width: 8}]"
    (finding,) = [f for f in stocked(panel("38", "18", rack)).findings if f.severity is Severity.ERROR]
    assert finding.code == "stock.does-not-fit"
    assert finding.message.startswith("1 piece of part A")
    assert "shop.boards" in finding.remedy


def test_a_rack_of_one_board_too_small_to_use_leaves_nothing_to_cut_from() -> None:
    rack = "  boards: [{stock: cherry, length: 3, width: 8}, {stock: walnut, length: 96, width: 8}]"
    codes = [f.code for f in stocked(panel("38", "5", rack)).findings]
    assert codes == ["stock.does-not-fit", "stock.board-too-small", "stock.board-unused"]


def test_impossible_values_of_the_shop_are_found_where_they_stand() -> None:
    text = panel("38", "5", "  sheet_trim: -1\n  strip_max: 1/8").replace("kerf: 1/8", "kerf: 2")
    found = [f for f in stocked(text).findings if f.severity is Severity.ERROR]
    assert [f.code for f in found] == ["stock.shop-value"] * 3
    assert sorted(f.place.path for f in found) == ["shop.kerf", "shop.sheet_trim", "shop.strip_max"]
    assert all(f.place.line > 0 for f in found)


def test_a_layout_that_fails_its_check_is_an_error(monkeypatch: pytest.MonkeyPatch) -> None:
    lay_out = lots.lay_out_boards

    def spoilt(instance, **how):  # type: ignore[no-untyped-def]
        answer = lay_out(instance, **how)
        first = answer.bins[0]
        moved = replace(first.placed[0], x=first.placed[0].x + 1)
        return replace(answer, bins=(replace(first, placed=(moved, *first.placed[1:])), *answer.bins[1:]))

    monkeypatch.setattr(lots, "lay_out_boards", spoilt)
    result = stocked(panel("38", "18"))
    assert errors(result) == ["stock.layout-invalid"]
    assert not result.value.lots[0].verified


def test_stop_is_heeded_and_progress_told() -> None:
    read = check_file(EXAMPLE)
    assert read.piece is not None
    told: list[str] = []
    asked: list[bool] = []

    def stop() -> bool:
        asked.append(True)
        return True

    result = run_stock(read.piece, read.tables, ShopChoices(), told.append, stop)
    assert asked
    assert [text for text in told if text.startswith("laying out ")] == [
        f"laying out {lot.title}" for lot in result.value.lots
    ]
    assert all(any(text.startswith(f"{lot.title}: ") for text in told) for lot in result.value.lots)
    assert errors(result) == []
    assert all(lot.verified for lot in result.value.lots)


def test_a_file_in_inches_printed_in_millimetres_is_bought_in_millimetres() -> None:
    read = check_text(panel("38", "5"), units="mm")
    assert read.piece is not None
    result = run_stock(read.piece, read.tables, ShopChoices())
    assert result.value.rough[0].lumber == "25 mm"
    assert result.value.lots[0].tally.bought_board_feet is None
