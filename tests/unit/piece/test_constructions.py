"""Constructions that could stand in their own way: each closes dry, or is refused by its own finding.

What is asked is geometry: no two parts share room, and the faces of every joint touch.
"""

import pytest

from boardwright.pipeline import Result, check_text

STOCK = """
boardwright: 1
title: A case
units: mm
work_to: 0.5
stock:
  board: {sheet: birch_plywood, thickness: 18, measured: 17.7}
  side: {sheet: birch_plywood, thickness: 12, measured: 11.9}
  thin: {sheet: birch_plywood, thickness: 6.5, measured: 6.3}
"""
SHARED = ("fit.collision", "fit.open-joint", "drawer.hits")


def _check(rest: str) -> Result:
    result = check_text(STOCK + rest)
    assert result.piece is not None
    assert [f.text() for f in result.findings if f.code in SHARED] == []
    return result


def _codes(result: Result) -> set[str]:
    return {f.code for f in result.findings}


def _joined(result: Result, part: str) -> set[str]:
    assert result.piece is not None
    return {j.first for j in result.piece.joints if j.second == part}


@pytest.mark.parametrize("joint", ["dado", "tongue", "butt", "{kind: dado, stopped: 12}"])
@pytest.mark.parametrize("through", ["sides", "top_and_bottom"])
def test_a_divider_stands_between_both_rails_of_top_and_bottom(joint: str, through: str) -> None:
    result = _check(
        f"""case:
  {{width: 700, height: 500, depth: 400, through: {through}, top: {{kind: rails}}, bottom: {{kind: rails}},
   back: {{set: groove}}, inside: {{columns: [{{open: true}}, {{open: true}}], joint: {joint}}}}}
"""
    )
    rails = {f"case.{deck}.{end}" for deck in ("top", "bottom") for end in ("front", "rear")}
    assert _joined(result, "inside.divider.1") == rails


def test_a_rabbet_between_two_spaces_is_refused() -> None:
    result = _check(
        "case: {width: 700, height: 500, depth: 400, "
        "inside: {columns: [{open: true}, {open: true}], joint: rabbet}}\n"
    )
    assert "joint.not-at-an-end" in _codes(result)


def test_shoulders_of_a_tongue_close_where_the_length_is_settled_on_the_step() -> None:
    """Between sheets of 17.7 mm a clear width is not on 0.5 mm; the shelf gets shorter, not its shoulders."""
    result = _check(
        "case: {width: 731, height: 500, depth: 400, inside: {columns: "
        "[{open: true}, {shelves: {count: 2, joint: tongue}}, {open: true}]}}\n"
    )
    assert result.piece is not None
    shelf = result.piece.part("inside.column2.shelf.1")
    assert shelf.size[0] % 0.5 == pytest.approx(0.0)
    between = [result.piece.part(f"inside.divider.{n}").box for n in (1, 2)]
    clear = between[1].low[0] - between[0].high[0]
    assert clear % 0.5 != pytest.approx(0.0)
    tongues = {c.edge: c.width for c in shelf.cuts if getattr(c, "purpose", "") == "tongue"}
    assert shelf.size[0] - sum(tongues.values()) == pytest.approx(clear)


def test_the_groove_for_a_bar_stays_clear_of_the_joint_of_the_back() -> None:
    drawers = "drawers: {back: {joint: {kind: dado, depth: 5}}, sides: {stock: side}, bars: {groove: 6}}\n"
    case = "case: {width: 400, height: 300, depth: 450, inside: {drawer: {}}}\n"
    result = _check(case + drawers)
    assert "drawer.groove-too-deep" in _codes(result)
    result = _check(case + drawers.replace("groove: 6", ""))
    assert "drawer.groove-too-deep" not in _codes(result)


def test_a_box_higher_than_its_opening_is_refused() -> None:
    result = _check(
        "case: {width: 400, height: 300, depth: 450, inside: {drawers: {count: 2}}}\n"
        "drawers: {box_height: 200}\n"
    )
    assert "drawer.box-too-high" in _codes(result)


@pytest.mark.parametrize("made", ["one_piece", "applied"])
@pytest.mark.parametrize("joint", ["rabbet", "tongue", "butt"])
def test_walls_on_a_planted_bottom_are_joined_where_they_stand(made: str, joint: str) -> None:
    result = _check(
        "case: {width: 400, height: 300, depth: 450, inside: {drawer: {}}}\n"
        f"drawers: {{front: {{made: {made}, joint: {joint}}}, bottom: {{set: planted, stock: thin}}}}\n"
    )
    assert result.piece is not None
    side = result.piece.part("drawer.1.left").box
    own = [j for j in result.piece.joints if "drawer.1.left" in (j.first, j.second)]
    joints = [j for j in own if "front" in j.first + j.second]
    assert joints
    for contact in joints[0].contacts:
        assert contact.box.low[2] >= side.low[2] - 1e-6
        assert contact.box.high[2] <= side.high[2] + 1e-6


def test_sides_stand_in_dados_of_an_overlay_front_that_reaches_far_beyond_them() -> None:
    result = _check(
        "case: {width: 400, height: 300, depth: 450, inside: {drawer: {}}}\n"
        "drawers: {front: {set: overlay, made: one_piece}, runs_on: slides, sides: {stock: side}}\n"
    )
    assert "joint.not-at-an-end" not in _codes(result)
    assert result.piece is not None
    assert {j.kind for j in result.piece.joints if j.first == "drawer.1.front"} >= {"dado"}


def test_runners_end_at_the_rear_rail_and_are_never_thicker_than_their_stock() -> None:
    result = _check(
        "case: {width: 400, height: 300, depth: 450, bottom: {kind: rails, up: 60}, inside: {drawer: {}}}\n"
        "drawers: {runs_on: runners, runners: {stock: side}}\n"
    )
    assert "stock.thickness-not-given" not in _codes(result)
    assert result.piece is not None
    runner, rail = result.piece.part("drawer.1.runner.left").box, result.piece.part("case.bottom.rear").box
    assert 0.0 <= rail.low[1] - runner.high[1] < 0.5


@pytest.mark.parametrize(
    "keys", ["case: {back: {set: groove, depth: 15}, ", "drawers: {bottom: {depth: 11}}\ncase: {"]
)
def test_a_groove_too_deep_for_its_part_is_said(keys: str) -> None:
    result = _check(keys + "width: 400, height: 300, depth: 450, inside: {drawer: {}}}\n")
    assert "joint.too-deep" in _codes(result)


def test_a_divider_under_a_rail_leaves_the_room_behind_the_rail_free() -> None:
    result = _check(
        "case: {width: 700, height: 700, depth: 450, inside: {between: rail, rows: "
        "[{columns: [{drawer: {}}, {drawer: {}}, {drawer: {}}]}, {columns: [{drawer: {}}, {drawer: {}}]}]}}\n"
        "drawers: {runs_on: runners, runners: {stock: board}}\n"
    )
    assert result.piece is not None
    assert any(".runner." in p.id for p in result.piece.parts)


def test_a_dado_stopped_too_far_and_dowels_longer_than_their_part_are_refused() -> None:
    result = _check(
        "case: {width: 700, height: 500, depth: 100, "
        "inside: {columns: [{open: true}, {open: true}], joint: {kind: dado, stopped: 60}}}\n"
    )
    assert "joint.cannot-be-there" in _codes(result)
    result = _check(
        "case: {width: 700, height: 500, depth: 300, inside: {columns: "
        "[{size: 20, shelves: {count: 1, joint: {kind: butt, fasten: dowels}}}, {open: true}]}}\n"
    )
    assert "fastener.none-fits" in _codes(result)
