"""Lids on cases: they lie, swing, and their panels move.

Butt hinges as of doors: leaf 5/8 in from the pin, pin 1/32 in before the face (a furniture-making magazine anthology
of 2007, pp. 104-105). Movement: Wood Handbook FPL-GTR-190 eq. 13-2, cherry flatsawn 0.00248 for each 1 %, table 13-5.
"""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shape import misfits

from bench import IN, codes, grooves, inches, piece_of, rabbets
from boardwright.pipeline import check_text
from boardwright.solids.travel import opened

CHEST = """
boardwright: 1
title: Chest
units: in
work_to: 1/32
stock:
  cherry: {wood: cherry_black, thickness: 3/4}
  ply: {sheet: hardwood_plywood, thickness: 1/4, measured: 0.2}
case:
  width: %s
  height: %s
  depth: %s
  stock: cherry
  top: {lid: %s}
  back: {set: %s}
  inside:
    rows:
      - {panel: fixed}
      - {size: 6, drawer: {}}
"""


def chest(
    lid: str = "{}", width: str = "36", height: str = "24", depth: str = "18", back: str = "rabbet"
) -> str:
    return CHEST % (width, height, depth, lid, back)


LIDS = (
    "{}",
    "{ends: breadboard}",
    "{hinges: continuous}",
    "{overhang: 0, opens: 110, rail_width: 3, ends: none}",
    "{frame: {}}",
    "{frame: {joint: mitre, up: 2, panel: {kind: raised}}}",
    "{frame: {joint: bridle}, hinges: continuous}",
    "{frame: {panel: {kind: raised}}, glued_edge: front}",
)


@pytest.mark.parametrize("back", ["rabbet", "groove", "surface"])
@pytest.mark.parametrize("lid", LIDS)
def test_every_lid_fits_and_swings_free(lid: str, back: str) -> None:
    result = check_text(chest(lid, back=back))
    assert misfits(result.findings) == []
    assert result.piece is not None
    assert [m.kind for m in result.piece.motions if m.turn] == ["lid"]


@settings(max_examples=15, deadline=None)
@given(
    width=st.integers(12, 48),
    depth=st.integers(10, 24),
    height=st.integers(14, 30),
    lid=st.sampled_from(LIDS),
)
def test_lids_of_any_size(width: int, depth: int, height: int, lid: str) -> None:
    found = set(codes(chest(lid, str(width), str(height), str(depth))))
    assert found <= {"frame.no-field", "frame.no-room", "wood.panel-groove-too-shallow"}


def test_a_lid_may_press_a_little_on_the_sides_it_rests_on() -> None:
    """The hinge rail, 3 in high, shrinks by Wood Handbook eq. 13-2; wood gives more than that (common practice)."""
    lid = "{overhang: 0, opens: 110, rail_width: 3, ends: none}"
    assert "fit.binds-in-year" not in codes(chest(lid, "12", "14", "10"))


def test_the_height_of_the_case_holds_the_lid() -> None:
    piece = piece_of(chest())
    lid, side = piece.part("lid.1.slab").box, piece.part("case.side.left").box
    assert inches(lid.low[2], lid.high[2], side.high[2]) == [23.25, 24, 23.25]
    assert inches(-lid.low[0], lid.high[0], -lid.low[1], lid.high[1]) == [0.5, 36.5, 0.5, 18]


def test_leaves_are_let_into_lid_and_rail() -> None:
    """A knuckle of 3/16 in with no gap: 3/32 in into each, 5/8 less 1/32 in from the rear edge."""
    piece = piece_of(chest())
    for id in ("lid.1.slab", "case.lid.rail"):
        found = [c for c in rabbets(piece.part(id)) if c.purpose == "hinge"]
        assert [inches(c.width, c.depth) for c in found] == [[19 / 32, 3 / 32]] * 2


def test_an_open_lid_stands_behind_the_front() -> None:
    """At 95 degrees it leans back by tan 5 degrees."""
    piece = piece_of(chest())
    motion = next(m for m in piece.motions if m.kind == "lid")
    box = opened(piece.part("lid.1.slab"), motion).box
    assert motion.turn == 95
    assert box.high[2] > piece.part("lid.1.slab").box.high[2] + 17 * IN
    assert box.low[1] >= motion.pivot[1] - 1.0


def test_a_panel_glued_to_the_front_moves_at_the_rear_alone() -> None:
    piece = piece_of(chest("{frame: {panel: {kind: raised}}, glued_edge: front}"))
    panel = piece.part("lid.1.panel.1")
    joints = {j.first: j for j in piece.joints if j.second == panel.id and j.kind == "panel"}
    front, rear = joints["lid.1.stile.1"], joints["lid.1.stile.2"]
    assert front.glued
    assert not rear.glued
    assert {c.gap for c in front.contacts} == {0.0}
    opening = piece.part("lid.1.stile.2").box.low[1] - piece.part("lid.1.stile.1").box.high[1]
    room = max(c.gap for c in rear.contacts)
    assert room >= opening * 0.00248 * 2
    ends = max(c.gap for c in joints["lid.1.rail.1"].contacts)
    assert ends < room


def test_the_rail_takes_the_back() -> None:
    piece = piece_of(chest())
    rail = piece.part("case.lid.rail")
    assert inches(rail.size[1], rail.size[2]) == [2, 0.75]
    assert any(c.holds == "case.back" for c in rabbets(rail))
    assert any(c.holds == "case.back" for c in grooves(piece_of(chest(back="groove")).part("case.lid.rail")))


def test_boards_at_the_back_are_refused() -> None:
    assert "case.lid-back" in codes(chest(back="shiplap"))


def test_cups_and_a_lid_below_are_refused() -> None:
    assert codes(chest("{hinges: cup}")) == ["door.hinge-no-room"]
    assert "case.lid-at-bottom" in codes(chest().replace("top:", "bottom:"))
