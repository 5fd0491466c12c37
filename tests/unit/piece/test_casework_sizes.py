"""Bases, covers, wall cleats and web frames in cases of many sizes, in both units: they close, they can be put
together, and what is left for movement is what the wood needs.

Movement: Wood Handbook (FPL-GTR-190) eq. 13-2, change = size x C_T x change of moisture, with C_T of table 13-5.
"""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bench import IN, grooves, holes, piece_of
from boardwright.piece.records import Piece
from boardwright.pipeline import Result, check_text
from boardwright.solids.assembly import assembly_of

TANGENTIAL = {"cherry_black": 0.00248, "oak_white": 0.00365, "maple_sugar": 0.00353, "walnut_black": 0.00274}
"""C_T for 1 % of moisture, flatsawn: Wood Handbook table 13-5."""
DRIER, WETTER = 3.0, 4.0
"""Per cent of moisture from now (8) to driest (5) and wettest (12), as the designs below say."""
DESIGN = """
boardwright: 1
title: Case
units: {units}
work_to: {step}
wood_moisture: {{now: 8, driest: 5, wettest: 12}}
stock:
  solid: {{wood: {wood}, thickness: {t}, measured: {t}}}
  half: {{wood: yellow_poplar, thickness: {half}}}
  post: {{wood: {wood}, thickness: {post}}}
  board: {{sheet: birch_plywood, thickness: {t}, measured: {sheet}}}
  thin: {{sheet: birch_plywood, thickness: {thin}, measured: {thin}}}
  leaf: {{wood: {wood}, thickness: {leaf}}}
case:
  width: {width} mm
  height: {height} mm
  depth: {depth} mm
  stock: {stock}
  {keys}
"""
UNITS = {
    "in": {
        "step": "1/32",
        "t": "3/4",
        "half": "1/2",
        "post": "1 3/4",
        "sheet": "0.72",
        "thin": "0.2",
        "leaf": "1/4",
    },
    "mm": {
        "step": "0.5",
        "t": "20",
        "half": "12",
        "post": "45",
        "sheet": "19.6",
        "thin": "6.4",
        "leaf": "7",
    },
}
STEP = {"in": IN / 32, "mm": 0.5}
THREE_FEET = 3 * 5 * IN + 2.0
"""Two bracket feet, 5 in each (4 to 7 in: common practice), and an arch as long as one [mm]."""
STANDING = (
    "base: {}",
    "base: {corner: mitre}",
    "base: {kind: bracket_feet}",
    "base: {kind: legs, stock: post}",
    "cover: {}",
    "wall_cleat: {}",
    "base: {kind: bracket_feet}\n  cover: {overhang: 20 mm}",
)
ROWS = "inside: {{between: web_frame, dust: {dust}, rows: [{{open: true}}, {{open: true}}, {{open: true}}]}}"
DRAWER = "{runs_on: runners, sides: {stock: half}}"
DRAWERS = f"inside: {{drawers: {{count: 3, between: web_frame, dust: %s, drawer: {DRAWER}}}}}"


def design(
    keys: str,
    units: str = "in",
    stock: str = "solid",
    wood: str = "cherry_black",
    size: tuple[int, int, int] = (800, 900, 450),
) -> str:
    width, height, depth = size
    return DESIGN.format(
        units=units,
        wood=wood,
        stock=stock,
        keys=keys,
        width=width,
        height=height,
        depth=depth,
        **UNITS[units],
    )


def whole(result: Result) -> Piece:
    """The piece, when all of it closes and can be put together."""
    assert [f.text() for f in result.findings if f.code.startswith(("fit.", "assembly.trapped"))] == []
    assert result.piece is not None
    assert assembly_of(result.piece).trapped == ()
    for chain in result.piece.chains:
        assert sum(v for _, v in chain.members) == pytest.approx(chain.whole[1], abs=1e-6)
    return result.piece


UNIT = st.sampled_from(("in", "mm"))
STOCK = st.sampled_from(("solid", "board"))


@settings(max_examples=25, deadline=None)
@given(
    width=st.integers(450, 1150),  # a wider back is larger than its sheet
    height=st.integers(400, 1800),
    depth=st.integers(250, 650),
    keys=st.sampled_from(STANDING),
    units=UNIT,
    stock=STOCK,
)
def test_what_stands_under_over_and_behind_closes(
    width: int, height: int, depth: int, keys: str, units: str, stock: str
) -> None:
    result = check_text(design(keys, units, stock, size=(width, height, depth)))
    short = "bracket_feet" in keys and depth < THREE_FEET
    errors = [f.text() for f in result.findings if f.severity == "error"]
    if short and errors:
        assert [f.code for f in result.findings if f.severity == "error"] == ["case.feet-no-room"]
        return
    assert errors == []
    piece = whole(result)
    low = min(p.box.low[2] for p in piece.parts)
    high = max(p.box.high[2] for p in piece.parts)
    assert (low, high) == (pytest.approx(0, abs=1e-6), pytest.approx(height, abs=STEP[units]))


@settings(max_examples=20, deadline=None)
@given(
    width=st.integers(300, 1200),
    height=st.integers(350, 1500),
    depth=st.integers(250, 650),
    dust=st.sampled_from(("true", "false")),
    units=UNIT,
    stock=STOCK,
    drawers=st.booleans(),
)
def test_web_frames_of_any_size_close(
    width: int, height: int, depth: int, dust: str, units: str, stock: str, drawers: bool
) -> None:
    keys = DRAWERS % dust if drawers else ROWS.format(dust=dust)
    result = check_text(design(keys, units, stock, size=(width, height, depth)))
    errors = {f.code for f in result.findings if f.severity == "error"}
    assert errors <= {"wood.cross-grain", "wood.solid-on-sheet"}, (
        "a high solid front on solid sides: the drawer's own matter"
    )
    piece = whole(result)
    assert sum(p.name == "dust panel" for p in piece.parts) == (2 if dust == "true" else 0)


@pytest.mark.parametrize("units", ["in", "mm"])
@pytest.mark.parametrize("wood", sorted(TANGENTIAL))
def test_the_slots_of_a_cover_take_what_it_moves(wood: str, units: str) -> None:
    """A screw in the middle of its slot must have the way to the rear as well as to the front."""
    top = piece_of(design("cover: {}", units, wood=wood)).part("case.top")
    drilled = [(h.at[1], h.slot) for h in holes(top) if h.purpose == "clearance"]
    fast = {at for at, slot in drilled if slot == 0}
    free = {(at, slot) for at, slot in drilled if slot > 0}
    assert len(fast) == 1
    assert free
    for at, slot in free:
        need = 2 * abs(at - min(fast)) * TANGENTIAL[wood] * max(DRIER, WETTER)
        assert need - 1e-6 <= slot < need + 1.01 * STEP[units]


@pytest.mark.parametrize("units", ["in", "mm"])
@pytest.mark.parametrize("wood", sorted(TANGENTIAL))
def test_a_web_frame_leaves_the_sides_room_to_shrink(wood: str, units: str) -> None:
    """Held at the front alone, its runners along the grain: the back comes nearer by all that the sides shrink."""
    piece = piece_of(design(ROWS.format(dust="false"), units, wood=wood))
    rear = piece.part("inside.web_frame.1.rear").box.high[1]
    gap = piece.part("case.back").box.low[1] - rear
    need = piece.part("case.side.left").box.size(1) * TANGENTIAL[wood] * DRIER
    assert need - 1e-6 <= gap < need + 2.01 * STEP[units]


@pytest.mark.parametrize("stock", ["solid", "board"])
def test_only_the_front_of_a_web_frame_is_glued_to_the_sides(stock: str) -> None:
    piece = piece_of(design(ROWS.format(dust="false"), stock=stock))
    joints = [j for j in piece.joints if j.first == "case.side.left" and ".web_frame.1" in j.second]
    assert {j.second: j.glued for j in joints} == {
        "inside.web_frame.1": True,
        "inside.web_frame.1.runner.1": False,
        "inside.web_frame.1.rear": False,
    }


@pytest.mark.parametrize("units", ["in", "mm"])
def test_a_solid_dust_panel_has_room_to_swell(units: str) -> None:
    keys = "back: {set: none}\n  " + ROWS.format(dust="true")
    piece = piece_of(design(keys, units, size=(800, 900, 280)).replace("  thin:", "  # thin:"))
    panel = piece.part("inside.web_frame.1.dust")
    assert panel.stock.kind == "wood"
    front, rear = piece.part("inside.web_frame.1"), piece.part("inside.web_frame.1.rear")
    [one], [other] = grooves(front), grooves(rear)
    clear = rear.box.low[1] - front.box.high[1] + one.depth + other.depth - panel.box.size(1)
    assert clear >= panel.box.size(1) * TANGENTIAL["cherry_black"] * WETTER - 1e-6


def test_a_sheet_case_needs_no_room_behind_its_web_frames() -> None:
    piece = piece_of(design(ROWS.format(dust="false"), stock="board"))
    gap = piece.part("case.back").box.low[1] - piece.part("inside.web_frame.1.rear").box.high[1]
    assert 0 <= gap < 1.01 * STEP["in"]
