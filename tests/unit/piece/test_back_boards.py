"""Backs of several boards: they lap the whole year, never press on each other, and are held so that they move.

Movement: Wood Handbook FPL-GTR-190 eq. 13-2 and table 13-5 (sugar pine flatsawn 0.00194 for each 1 %). Boards 4 in
wide or less, screwed once at each end, 1/8 in of lap left in the driest time: common practice.
"""

from itertools import pairwise

import pytest
from shape import misfits

from bench import IN, codes, grooves, inches, piece_of, rabbets
from boardwright.piece.records import Part, Piece
from boardwright.pipeline import check_text, make_plan

CASE = """
boardwright: 1
title: Hall cupboard
units: in
wood_moisture: {{now: 8, driest: 6, wettest: 12}}
stock:
  cherry: {{wood: cherry_black, thickness: 3/4}}
  pine: {{wood: pine_sugar, thickness: 1/2}}
case:
  width: 30
  height: 40
  depth: 12
  back: {{set: {how}, {more}}}
  {rest}
"""
RATE = 0.00194
HOW = pytest.mark.parametrize("how", ["shiplap", "tongued"])
TOPS = pytest.mark.parametrize("rest", ["", "top: {kind: rails}", "top: {kind: none}"])


def case(how: str, more: str = "", rest: str = "") -> Piece:
    return piece_of(CASE.format(how=how, more=more, rest=rest))


def boards(piece: Piece) -> list[Part]:
    found = [p for p in piece.parts if p.id.startswith("case.back.")]
    return sorted(found, key=lambda p: int(p.id.rpartition(".")[2]))


@HOW
@TOPS
@pytest.mark.parametrize("width", ["", "board_width: 6", "board_width: 2 1/2"])
def test_every_boarded_back_fits(how: str, rest: str, width: str) -> None:
    result = check_text(CASE.format(how=how, more=width, rest=rest))
    assert not misfits(result.findings)
    assert result.piece is not None
    plan, findings = make_plan(result)[:2]
    assert plan is not None
    assert not [f for f in findings if f.severity == "error"]


@HOW
@pytest.mark.parametrize(("rest", "axis"), [("", 0), ("top: {kind: rails}", 2)])
def test_boards_stand_between_top_and_bottom_and_else_lie(how: str, rest: str, axis: int) -> None:
    for board in boards(case(how, rest=rest)):
        assert abs(board.pose.y[axis]) == 1


@HOW
def test_boards_lap_all_year_and_never_press(how: str) -> None:
    all_ = boards(case(how))
    # 4 in boards at most
    assert all(p.size[1] <= 4 * IN + 1e-6 for p in all_)
    # the last takes what is left over: less than a step for each board
    assert {p.size[1] for p in all_[:-1]} == {all_[0].size[1]} or len(
        {round(p.size[1], 6) for p in all_[:-1]}
    ) == 1
    for one, two in pairwise(all_):
        lap = one.box.high[0] - two.box.low[0]
        cut = 3 / 8 * IN
        gap = cut - lap
        # each is held in the middle: a joint takes half of the movement of either board
        moving = (one.size[1] + two.size[1]) / 2 * RATE
        assert gap >= moving * (12 - 8)
        assert lap - moving * (8 - 6) >= 3.0


def test_a_lap_takes_half_of_the_thickness() -> None:
    first, middle, *_, last = boards(case("shiplap"))
    assert [inches(r.width, r.depth) for r in rabbets(first)] == [[0.375, 0.25]]
    assert sorted(inches(*sorted((r.width, r.depth))) for r in rabbets(middle)) == [[0.25, 0.375]] * 2
    # one from each face
    assert len({r.side.value for r in rabbets(middle) if r.side.axis == 2}) == 2
    assert len(rabbets(last)) == 1


def test_a_tongue_takes_a_third_of_the_thickness() -> None:
    first, middle, *_ = boards(case("tongued"))
    [groove] = grooves(first)
    # 1/2 / 3 = 0.167, nearest 1/32: 5/32
    assert inches(groove.width, groove.depth) == [0.15625, 0.375]
    assert len(grooves(middle)) == 1
    assert len(rabbets(middle)) == 2


@HOW
@pytest.mark.parametrize("rest", ["", "top: {kind: rails}"])
def test_each_board_is_screwed_once_at_each_end_in_its_middle(how: str, rest: str) -> None:
    piece = case(how, rest=rest)
    for board in boards(piece):
        screws = [f for f in piece.fasteners if f.held == board.id]
        assert len(screws) == 2
        axis = next(k for k in range(3) if abs(board.pose.y[k]) == 1)
        middle = (board.box.low[axis] + board.box.high[axis]) / 2
        assert all(f.at[axis] == pytest.approx(middle, abs=IN / 64) for f in screws)
        assert len({f.into for f in screws}) == 2


def test_without_screws_they_lie_dry() -> None:
    assert not [f for f in case("shiplap", "fasten: none").fasteners if f.held.startswith("case.back")]


def test_boards_too_wide_for_their_rabbets_are_refused() -> None:
    # 28 in boards: half of 28 x 0.00194 x 4 = 0.109, and half of 28 x 0.00194 x 2 = 0.054, and 1/8 held: over 1/4
    assert "wood.panel-groove-too-shallow" in codes(
        CASE.format(how="shiplap", more="board_width: 28, depth: 1/4", rest="")
    )


@pytest.mark.parametrize(
    ("how", "thickness", "refused"),
    [("tongued", "1/4", True), ("shiplap", "1/4", False), ("tongued", "3/8", False)],
)
def test_thin_boards(how: str, thickness: str, refused: bool) -> None:
    text = CASE.format(how=how, more="", rest="").replace(
        "pine_sugar, thickness: 1/2", f"pine_sugar, thickness: {thickness}"
    )
    assert ("case.back-boards-thin" in codes(text.replace("set: ", "stock: pine, set: "))) == refused
