"""What stands inside a box keeps clear of the stay of its lid; strips beside rails find wood or are refused."""

from __future__ import annotations

import pytest

from boardwright.pipeline import Result, check_text

BOX = """
boardwright: 1
title: Pencil box
units: mm
work_to: 0.5
stock: {{oak: {{wood: oak_white, thickness: 16 mm}}, thin: {{sheet: birch_plywood, thickness: 4, measured: 4}}}}
box:
  width: 300
  depth: 220
  height: 160
  stock: oak
  lid: {{made: sawn, at: 120, hinges: {{}}, stay: true}}
  {inside}
"""
CASE = """
boardwright: 1
title: Drawers under rails
units: mm
work_to: 0.5
stock:
  oak: {{wood: oak_white, thickness: 18}}
  panel: {{sheet: birch_plywood, thickness: 18, measured: 17.7}}
case:
  width: 306.5
  height: 416
  depth: 509
  stock: {stock}
  through: top_and_bottom
  top: {{kind: rails, joint: {{kind: {joint}}}}}
  back: {{set: none}}
  inside: {{drawers: {{count: 2, between: none}}}}
drawers: {{runs_on: runners}}
"""


def codes(result: Result) -> list[str]:
    return [
        f.code
        for f in result.findings
        if f.code.startswith(("fit.", "box.", "drawer.")) and f.severity == "error"
    ]


def walls(result: Result) -> dict[str, float]:
    assert result.piece is not None
    return {p.id: p.size[1] for p in result.piece.parts if p.name == "divider"}


@pytest.mark.parametrize("inside", ["{along: 1}", "{across: 1, along: 1}", "{along: 2}"])
def test_thin_walls_end_under_the_stay_of_the_lid(inside: str) -> None:
    # the stay hangs from 20 to 30 mm under the rim at 120; the bottom lies 9.5 up, 4 thick: 120 - 30 - 13.5
    result = check_text(BOX.format(inside=f"dividers: {inside}"))
    assert codes(result) == []
    assert set(walls(result).values()) == {76.5}


def test_walls_from_front_to_back_stand_clear_of_it_anyway() -> None:
    # three quarters of 120 - 13.5 = 79.875, on the step 79.5
    result = check_text(BOX.format(inside="dividers: {across: 2}"))
    assert codes(result) == []
    assert set(walls(result).values()) == {79.5}


@pytest.mark.parametrize(("height", "found"), [("76.5", []), ("77", ["box.no-room"])])
def test_a_height_that_meets_the_stay_is_refused_once(height: str, found: list[str]) -> None:
    result = check_text(BOX.format(inside=f"dividers: {{along: 1, height: {height}}}"))
    assert codes(result) == found
    told = " ".join(f.remedy for f in result.findings if f.code == "box.no-room")
    assert ("76.5 mm high or less" in told) == bool(found)


def test_ledgers_of_trays_meet_the_stay_and_are_refused_once() -> None:
    inside = "trays: {count: 1, heights: [45]}"
    assert codes(check_text(BOX.format(inside=inside))) == ["box.no-room"]
    assert codes(check_text(BOX.format(inside=inside).replace(", stay: true", ""))) == []


def test_trays_of_a_box_are_lifted_out_over_its_thin_walls() -> None:
    keys = BOX.replace(", stay: true", "").format(
        inside="trays: {count: 1, heights: [45]}\n  dividers: {along: 1}"
    )
    result = check_text(keys)
    assert codes(result) == []
    # 106.5 over the bottom, less 45 for the tray and 3 mm under it
    assert set(walls(result).values()) == {58.5}


@pytest.mark.parametrize("joint", ["butt", "rabbet", "finger", "dovetail", "half_blind"])
@pytest.mark.parametrize("stock", ["oak", "panel"])
def test_a_kicker_finds_wood_beside_it_or_is_refused(stock: str, joint: str) -> None:
    """A side whose end is cut to fingers or tails has no face between its front and its rear rail."""
    found = codes(check_text(CASE.format(stock=stock, joint=joint)))
    assert "fit.open-joint" not in found
    assert "fit.collision" not in found
    if joint == "finger":
        assert "drawer.strip-loose" in found


FRAMED = """
boardwright: 1
title: Framed drawers
units: mm
work_to: 0.5
stock:
  oak: {{wood: oak_white, thickness: 19}}
  panel: {{sheet: birch_plywood, thickness: 18, measured: 17.7}}
case:
  width: 450
  height: 330
  depth: 400
  stock: panel
  face_frame: {{stock: oak{frame}}}
  top: {{kind: {top}}}
  bottom: {{kind: {bottom}}}
  inside: {{drawers: {{count: 2}}}}
drawers: {{runs_on: runners, sides: {{stock: panel}}}}
"""


@pytest.mark.parametrize("frame", ["", ", rail_width: 22", ", rail_width: 50"])
@pytest.mark.parametrize("top", ["full", "rails"])
@pytest.mark.parametrize("bottom", ["full", "rails"])
def test_strips_behind_a_face_frame_end_at_the_top_and_the_bottom(bottom: str, top: str, frame: str) -> None:
    result = check_text(FRAMED.format(frame=frame, top=top, bottom=bottom))
    assert not {"fit.collision", "fit.open-joint"} & set(codes(result))


@pytest.mark.parametrize("kind", ["plinth", "bracket_feet"])
@pytest.mark.parametrize("thick", ["3/4", "7/8", "1"])
def test_screws_of_a_base_stand_seven_diameters_from_the_end_of_a_solid_bottom(thick: str, kind: str) -> None:
    """EN 1995-1-1 wants 7 diameters to an end; the strips of the ends lie near it, so that thin screws are taken."""
    result = check_text(
        f"""
boardwright: 1
title: Low cupboard
units: in
stock: {{oak: {{wood: oak_white, thickness: {thick}}}}}
case: {{width: 30, height: 30, depth: 16, stock: oak, back: {{set: none}}, base: {{kind: {kind}}}}}
"""
    )
    assert "fastener.end" not in {f.code for f in result.findings}
    assert "fastener.none-fits" not in {f.code for f in result.findings}
