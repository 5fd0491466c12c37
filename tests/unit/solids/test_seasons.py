"""The piece at another moisture: sizes by the published coefficients, joints still closed, what floats centred."""

import sys
from dataclasses import replace
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent))

from boardwright.core.poses import Box
from boardwright.piece.records import Moisture, Part, Piece
from boardwright.pipeline import check_file, check_text
from boardwright.solids.dry_fit import dry_fit
from boardwright.solids.mesh import volume
from boardwright.solids.seasons import at_moisture, grown
from boardwright.solids.year_fit import year_fit

EXAMPLES = sorted((Path(__file__).parents[3] / "examples").glob("*.yaml"))
HEAD = """
boardwright: 1
title: Frame
units: in
wood_moisture: {now: 8, driest: 6, wettest: 12}
stock:
  oak: {wood: oak_red_northern, thickness: 3/4}
  ply: {sheet: birch_plywood, thickness: 12 mm, measured: 12 mm}
"""
BOARD = HEAD + "parts:\n  board: {stock: STOCK, length: 30, width: 12, along: x, across: y, at: [0, 0, 0]}\n"


def piece(text: str) -> Piece:
    found = check_text(text).piece
    assert found is not None
    return found


def sizes(part: Part) -> tuple[float, float, float]:
    box = part.box
    return (box.size(0), box.size(1), box.size(2))


@pytest.mark.parametrize("percent", [6.0, 12.0])
def test_a_board_grows_by_its_coefficients(percent: float):
    # Wood Handbook table 13-5, northern red oak: tangential 0.00369, radial 0.00158; length by the trade's 0.1 to
    # 0.2 % from green to ovendry
    whole = piece(BOARD.replace("STOCK", "oak"))
    [part] = at_moisture(whole, percent).parts
    length, width, thickness = sizes(part)
    change = percent - 8
    assert width == pytest.approx(304.8 * (1 + 0.00369 * change))
    assert thickness == pytest.approx(19.05 * (1 + 0.00158 * change))
    assert abs(length / 762 - 1) <= 0.0002 * abs(change)
    assert sizes(part) == pytest.approx(grown(whole.parts[0], percent, 8))


def test_a_sheet_hardly_moves():
    # plywood sheathing: 0.2 % or less from 30 to 90 % of humidity, which changes wood by some 14 %
    [part] = at_moisture(piece(BOARD.replace("STOCK", "ply")), 12).parts
    assert 0 < sizes(part)[1] / 304.8 - 1 <= 0.002 * 4 / 14


def test_at_the_moisture_of_cutting_it_is_the_same_piece():
    whole = piece(BOARD.replace("STOCK", "oak"))
    assert at_moisture(whole, 8) is whole


def test_what_swells_and_shrinks_again_is_the_same():
    whole = check_file(EXAMPLES[-1]).piece
    assert whole is not None
    there = at_moisture(whole, 10)
    back = at_moisture(replace(there, moisture=replace(whole.moisture, now=10.0)), 8)
    for one, two in zip(whole.parts, back.parts, strict=True):
        assert two.box.low == pytest.approx(one.box.low, abs=0.02)
        assert two.box.high == pytest.approx(one.box.high, abs=0.02)


CASE = HEAD + "case: {width: 30, height: 20, depth: 16, stock: oak, back: {set: none}}\n"


def test_a_case_shrinks_in_depth_and_keeps_its_width_and_its_corners():
    whole = piece(CASE)
    dry = at_moisture(whole, 6)
    left, right = (dry.part(f"case.side.{s}").box for s in ("left", "right"))
    top = dry.part("case.top").box
    lost = 16 * 25.4 * 0.00369 * 2
    assert left.size(1) == pytest.approx(16 * 25.4 - lost)
    assert top.size(1) == pytest.approx(left.size(1))
    assert top.low[1] == pytest.approx(left.low[1], abs=1e-6)
    assert right.high[0] - left.low[0] == pytest.approx(762, abs=0.3)
    assert not dry_fit(replace(dry, joints=())).overlaps or all(
        min(o.box.size(i) for i in range(3)) < 0.1 for o in dry_fit(replace(dry, joints=())).overlaps
    )


def test_solids_follow_the_poses():
    [part] = at_moisture(piece(BOARD.replace("STOCK", "oak")), 12).parts
    from boardwright.solids.mesh import part_solid

    assert part_solid(part).volume() == pytest.approx(
        volume(part) * (1 + 0.00369 * 4) * (1 + 0.00158 * 4), rel=3e-4
    )


FRAME = (
    HEAD
    + """
case:
  width: 24
  height: 30
  depth: 12
  stock: ply
  inside:
    door: {made: frame, set: inset, stock: oak, frame: {panel: {kind: flat, stock: thin}}}
"""
).replace("  ply:", "  thin: {wood: oak_red_northern, thickness: 1/2}\n  ply:")


def test_a_panel_stays_centred_between_its_stiles():
    whole = piece(FRAME)
    panel = next(p for p in whole.parts if "panel" in p.id)
    stiles = [p for p in whole.parts if "stile" in p.id]
    wet = at_moisture(whole, 12)
    box, low, high = wet.part(panel.id).box, wet.part(stiles[0].id).box, wet.part(stiles[1].id).box
    assert box.size(0) == pytest.approx(panel.box.size(0) * (1 + 0.00369 * 4))
    assert (box.low[0] + box.high[0]) / 2 == pytest.approx((low.low[0] + high.high[0]) / 2, abs=0.01)
    assert not [s for s in year_fit(whole, dry_fit(whole)) if s.fit.overlaps]


@pytest.mark.parametrize(("gap", "binds"), [(0.5, True), (3.6, True), (4.6, False)])
def test_two_boards_side_by_side_bind_when_the_gap_is_less_than_they_swell(gap: float, binds: bool):
    # 2 x 300 mm of northern red oak from 8 to 12 %: 0.00369 x 4 x 300 = 4.4 mm each, half of it to either side,
    # between boards whose middles stand still
    text = HEAD.replace("units: in", "units: mm").replace("3/4", "19") + (
        "parts:\n  a: {stock: oak, length: 600, width: 300, along: x, across: y, at: [0, 0, 0]}\n"
        "  b: {stock: oak, length: 600, width: 300, along: x, across: y, at: [0, Y, 0]}\n"
    ).replace("Y", f"{300 + gap}")
    whole = piece(text)
    found = [o for s in year_fit(whole, dry_fit(whole)) for o in s.fit.overlaps]
    assert bool(found) is binds


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: p.stem)
def test_the_examples_stand_the_year(path: Path):
    whole = check_file(path).piece
    assert whole is not None
    for s in year_fit(whole, dry_fit(whole)):
        assert not s.fit.overlaps
        assert not s.fit.hits


def test_a_door_needs_the_room_that_it_swells():
    """A slab 22 1/2 in wide: from 8 to 12 % red oak gains 22.5 x 0.00369 x 4 = 0.33 in at the edge that opens."""
    text = FRAME.replace("made: frame", "made: slab").replace(
        ", frame: {panel: {kind: flat, stock: thin}}", ""
    )
    found = check_text(text.replace("set: inset,", "set: inset, gap: 1/16,"))
    assert "door.swells" in {f.code for f in found.findings}
    roomy = check_text(text)
    assert not {"door.swells", "fit.binds-in-year"} & {f.code for f in roomy.findings}


def test_nothing_is_nothing():
    empty = Piece("none", "in", 0.5, Box((0, 0, 0), (0, 0, 0)), Moisture(8, 6, 10))
    assert at_moisture(empty, 6) is empty
