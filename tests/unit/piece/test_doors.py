"""Doors: outlines, gaps, hinges, swing.

Published figures, each beside its check: a furniture-making magazine anthology of 2007, pp. 104-105 (butt hinges),
concealed hinge literature, quick-reference page 110 (cup hinges), householder guides 'How many hinges per cabinet
door' by height and by weight, a private page on the 32 mm system (plates), 'How to install a continuous hinge'.
"""

import math
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shape import misfits

from bench import IN, codes, holes, inches, piece_of, rabbets, size
from boardwright.piece.cuts import Bevel, Groove, Rabbet, RaisedField, Side
from boardwright.piece.records import Part, Piece
from boardwright.pipeline import check_text
from boardwright.solids.mesh import part_solid
from boardwright.solids.travel import opened

HEAD = """
boardwright: 1
title: Cupboard
units: in
work_to: 1/32
stock:
  cherry: {wood: cherry_black, thickness: 3/4}
  half: {wood: cherry_black, thickness: 1/2}
  ply: {sheet: hardwood_plywood, thickness: 1/4, measured: 0.2}
  board: {sheet: hardwood_plywood, thickness: 3/4, measured: 0.75}
  pane: {sheet: glass, thickness: 1/8}
case:
  width: %s
  height: %s
  depth: 14
  stock: %s
  inside:
    %s
"""


def cupboard(inside: str, width: str = "24", height: str = "30", stock: str = "cherry") -> str:
    return HEAD % (width, height, stock, inside)


def door(keys: str, **more: str) -> str:
    return cupboard(f"door: {keys}", **more)


def outline(piece: Piece, id: str = "door.1") -> list[tuple[float, float]]:
    boxes = [p.box for p in piece.parts if p.group == id]
    return [(min(b.low[i] for b in boxes) / IN, max(b.high[i] for b in boxes) / IN) for i in range(3)]


MADE = (
    "{made: slab}",
    "{made: slab, stock: board}",
    "{frame: {}}",
    "{frame: {panel: {kind: raised}}}",
    "{frame: {panel: {kind: glass}}}",
    "{frame: {across: 2, up: 2, panel: {kind: glass}}}",
    "{frame: {across: 2, up: 3, panel: {stock: half}}}",
    "{frame: {joint: mitre, up: 2}}",
    "{frame: {joint: {kind: mitre, with: spline}, panel: {kind: raised}}}",
    "{frame: {joint: {kind: mitre, with: spline}, panel: {kind: glass}}}",
    "{frame: {joint: {kind: mitre, with: keys}}}",
    "{frame: {joint: {kind: mitre, with: biscuits}}}",
    "{frame: {joint: {kind: mitre, with: dowels}}}",
    "{frame: {joint: bridle, panel: {kind: raised}}}",
    "{frame: {joint: half_lap, up: 2, panel: {kind: raised}}}",
    "{frame: {joint: {kind: mortise_tenon, through: true}}}",
)
HUNG = (
    "",
    "set: overlay",
    "set: half_overlay",
    "hinges: continuous",
    "set: overlay, hinges: butt",
    "hinges: cup",
)


@pytest.mark.parametrize(("made", "hung"), list(product(MADE, HUNG)))
def test_every_door_fits_and_swings_free(made: str, hung: str) -> None:
    keys = made[:-1] + (f", {hung}" if hung else "") + "}"
    result = check_text(door(keys))
    assert misfits(result.findings) == []
    assert result.piece is not None
    assert [m.turn for m in result.piece.motions] == [90]


@settings(max_examples=25, deadline=None)
@given(
    width=st.integers(10, 40),
    height=st.integers(10, 60),
    made=st.sampled_from(MADE),
    hung=st.sampled_from(HUNG),
    right=st.booleans(),
)
def test_doors_of_any_size(width: int, height: int, made: str, hung: str, right: bool) -> None:
    words = [w for w in (hung, "hinged: right" if right else "") if w]
    keys = made[:-1] + "".join(f", {w}" for w in words) + "}"
    found = codes(door(keys, width=str(width), height=str(height)))
    allowed = {"frame.no-room", "frame.no-field"}
    allowed |= {"door.hinge-no-room"} if "butt" not in hung else set()
    assert set(found) <= allowed, (keys, found)


@pytest.mark.parametrize("units", ["in", "mm"])
def test_a_pair_in_either_unit(units: str) -> None:
    for keys in (
        "{}",
        "{frame: {}, strip: right}",
        "{set: overlay, strip: left}",
        "{hinges: continuous, opens: 110}",
    ):
        piece = piece_of(cupboard(f"doors: {keys}", width="40"), units)
        assert [m.id for m in piece.motions] == ["door.1", "door.2"]


def test_the_leaf_of_a_continuous_hinge_lies_over_splines_cut_back_to_it() -> None:
    """Both lie in one gain: the spline ends where the floor of the gain does, at the stile's own depth."""
    piece = piece_of(door("{frame: {joint: {kind: mitre, with: spline}}, hinges: continuous}"))
    stile = piece.part("door.1.stile.1")
    gain = next(c.depth for c in stile.cuts if isinstance(c, Rabbet) and c.purpose == "hinge")
    splines = [p for p in piece.parts if p.name == "spline"]
    lowest = [part_solid(p).bounding_box()[0] for p in splines]
    edge = stile.box.low[0]
    assert sorted(x - edge for x in lowest)[:2] == pytest.approx([gain, gain], abs=1e-6)


def test_a_mitred_frame_has_rails_of_one_width() -> None:
    """Its mitres are 45 degrees all round (common practice)."""
    piece = piece_of(door("{frame: {joint: mitre}}"))
    widths = {piece.part(f"door.1.{name}").size[1] / IN for name in ("rail.1", "rail.2", "stile.1")}
    assert sorted(widths) == pytest.approx([2.25] * len(widths))


def test_gap_of_an_inset_door() -> None:
    """1/16 in in the neutral season (common practice)."""
    piece = piece_of(door("{made: slab, stock: board}"))
    assert outline(piece)[0] == pytest.approx((3 / 4 + 1 / 16, 24 - 3 / 4 - 1 / 16))
    assert outline(piece)[1] == pytest.approx((0, 3 / 4))


@pytest.mark.parametrize(("keys", "lap"), [("{set: overlay}", 11 / 16), ("{set: half_overlay}", 5 / 16)])
def test_overlay_on_a_three_quarter_side(keys: str, lap: float) -> None:
    """Full overlay 11/16, half overlay 5/16 on 3/4 in sides with 1/8 in gaps (common practice)."""
    x = outline(piece_of(door(keys)))[0]
    assert x == pytest.approx((3 / 4 - lap, 24 - 3 / 4 + lap))


def test_gap_between_a_pair_of_overlay_doors() -> None:
    """1/8 in (common practice); of solid slabs what both swell towards each other, 8 % to 10 %, and 1/64 in more."""
    piece = piece_of(cupboard("doors: {set: overlay, stock: board}", width="40"))
    assert outline(piece, "door.2")[0][0] - outline(piece)[0][1] == pytest.approx(1 / 8)
    solid = piece_of(cupboard("doors: {set: overlay}", width="40"))
    left, right = outline(solid)[0], outline(solid, "door.2")[0]
    swell = (left[1] - left[0] + right[1] - right[0]) * 0.00248 * 2
    assert 1 / 64 - 0.001 <= right[0] - left[1] - swell <= 1 / 64 + 1 / 16


def test_a_wide_slab_has_room_to_swell() -> None:
    """Wood Handbook FPL-GTR-190 eq. 13-2 and table 13-5: cherry, flatsawn, 0.00248 for each 1 %; 8 % to 10 %.

    Its hinges hold one edge where it is: the other swells towards its wall by all of it.
    """
    piece = piece_of(door("{made: slab}", width="36"))
    x = outline(piece)[0]
    gap, swell = (36 - 1.5 - (x[1] - x[0])) / 2, (x[1] - x[0]) * 0.00248 * 2
    assert 1 / 64 - 0.001 <= gap - swell <= 1 / 64 + 1 / 32


GAIN = "hinge"


def gains(part: Part) -> list[tuple[float, float, float]]:
    """Width, depth and length of the gains of a part [in]."""
    return [
        (round(c.width / IN, 5), round(c.depth / IN, 5), round((c.end - c.start) / IN, 5))
        for c in rabbets(part)
        if c.purpose == GAIN
    ]


@pytest.mark.parametrize(
    ("height", "count", "length"), [("12", 2, 1.5), ("22", 2, 2), ("30", 2, 2.5), ("44", 3, 3), ("66", 4, 3)]
)
def test_butt_hinges(height: str, count: int, length: float) -> None:
    """Leaf 5/8 in from the pin, pin 1/32 in before the face, two under 36 in (anthology, pp. 104-105).

    So 19/32 in of the leaf lie on the wood. Lengths by height 1 1/2, 2, 2 1/2, 3 in, and one more hinge for each
    30 in of a tall door (common practice). A knuckle of 3/16 in less a gap of 1/16 in is two gains of 1/16 in.
    """
    piece = piece_of(door("{made: slab, stock: board}", height=height))
    for part in (piece.part("door.1.slab"), piece.part("case.side.left")):
        assert gains(part) == [(19 / 32, 1 / 16, length)] * count
    assert sum(h.name.startswith("butt hinge") for h in piece.hardware) == count


def test_hinges_end_in_line_with_the_rails() -> None:
    """'The Technique of Furniture Making', 'Fitting doors': in line with the inner edges of the rails."""
    piece = piece_of(door("{frame: {}}"))
    stile, low, high = (piece.part(f"door.1.{p}").box for p in ("stile.1", "rail.1", "rail.2"))
    cuts = sorted((c.start, c.end) for c in rabbets(piece.part("door.1.stile.1")) if c.purpose == GAIN)
    ends = {round(v, 3) for pair in cuts for v in pair}
    assert {round(low.high[2] - stile.low[2], 3), round(high.low[2] - stile.low[2], 3)} <= ends


def test_a_continuous_hinge() -> None:
    """1/16 to 1/8 in shorter than the door ('How to install a continuous hinge').

    Screws 2 in apart, the first 1 in from the end: floor((L - 2) / 2) + 1 in each leaf.
    """
    piece = piece_of(door("{made: slab, stock: board, hinges: continuous}"))
    height = size(piece, "door.1.slab")[0]
    [(_, _, length)] = gains(piece.part("door.1.slab"))
    assert 1 / 16 <= height - length <= 1 / 8
    [hinge] = [h for h in piece.hardware if h.id.startswith("door.1.hinge")]
    assert f" {2 * (math.floor((length - 2) / 2) + 1)} screws" in hinge.name


def cup_holes(piece: Piece) -> list[tuple[float, float, float, float]]:
    """Diameter, depth, from the hinged edge, from the lower end, of the holes in the back of a door [mm]."""
    part = piece.part("door.1.slab")
    edge = part.box.low[0]
    out = []
    for h in holes(part):
        if h.for_ == "cup hinge":
            at = [0.0, 0.0, part.size[2]]
            at[0], at[1] = h.at
            x, _, z = part.pose.point((at[0], at[1], at[2]))
            out.append((h.diameter, h.depth, round(x - edge, 3), round(z - part.box.low[2], 3)))
    return sorted(out)


def test_cup_hinges() -> None:
    """35 mm bore, 13 mm deep, 3 to 8 mm from the edge, its middle 17.5 mm more; 8 mm holes 45 mm apart, 9.5 mm
    farther from the edge (concealed hinge literature, p. 110). Middle 4 in from the end ('Hinge boring')."""
    piece = piece_of(door("{made: slab, stock: board, set: overlay}", width="14"))
    found = cup_holes(piece)
    cups, dowels = found[4:], found[:4]
    assert [(d, depth, x) for d, depth, x, _ in cups] == [(35, 13, 22.5)] * 2
    assert cups[0][3] == pytest.approx(4 * IN)
    assert {(d, x) for d, _, x, _ in dowels} == {(8, 32.0)}
    assert sorted(round(z - cups[0][3], 3) for _, _, _, z in dowels)[:2] == [-22.5, 22.5]


@pytest.mark.parametrize(("keys", "more"), [("set: overlay", 0.0), ("hinges: cup", 0.75 * IN)])
def test_plates_stand_in_the_rows_of_the_32_mm_system(keys: str, more: float) -> None:
    """5 mm, 32 mm apart, 37 mm from the front, and by the door's thickness more when it is inset (32 mm page)."""
    piece = piece_of(door(f"{{made: slab, stock: board, {keys}}}"))
    part = piece.part("case.side.left")
    found = []
    for h in (h for h in holes(part) if h.for_ == "hinge plate"):
        _, y, z = part.pose.point((h.at[0], h.at[1], 0.0))
        assert h.diameter == 5
        found.append((round(y - more, 3), z))
    assert {y for y, _ in found} == {37}
    zs = sorted(z for _, z in found)
    assert zs[1] - zs[0] == pytest.approx(32)


@pytest.mark.parametrize(
    ("height", "count"), [("39", 2), ("42", 3), ("58", 3), ("62", 4), ("78", 4), ("83", 5)]
)
def test_cup_hinges_by_height(height: str, count: int) -> None:
    """Under 40, 60, 80, 85 in: 2, 3, 4, 5 (householder guide, by height). The door is light."""
    text = cupboard("door: {set: overlay, frame: {stile_width: 2 1/4}}", width="8", height=height)
    assert sum(h.name.startswith("cup hinge") for h in piece_of(text).hardware) == count


@pytest.mark.parametrize(("width", "count"), [("14", 2), ("24", 3), ("38", 4)])
def test_cup_hinges_by_weight(width: str, count: int) -> None:
    """To 11, 20, 33, 49 lb: 2, 3, 4, 5 (householder guide, by weight). The door is under 40 in high."""
    piece = piece_of(door("{made: slab, stock: board, set: overlay}", width=width, height="38"))
    slab = piece.part("door.1.slab")
    pounds = math.prod(slab.size) * 1e-9 * slab.stock.density / 0.45359237
    assert sum(pounds > limit for limit in (11, 20, 33)) + 2 == count
    assert sum(h.name.startswith("cup hinge") for h in piece.hardware) == count


def test_a_narrow_door_has_a_bevelled_edge_that_just_passes() -> None:
    """2 to 3 degrees (common practice); the back corner turns on the pin, so its reach is the root of two squares."""
    text = door("{made: slab, catch: none}", width="6")
    still = "wood_moisture: {now: 8, driest: 8, wettest: 8}\nstock:"
    piece = piece_of(text.replace("stock:", still, 1))
    part = piece.part("door.1.slab")
    [bevel] = [c for c in part.cuts if isinstance(c, Bevel)]
    lean = math.degrees(math.atan(max(abs(bevel.over_u), abs(bevel.over_v))))
    assert 2 - 1e-6 <= lean <= 3 + 1e-6
    motion = piece.motions[0]
    pin, wall = motion.pivot, piece.part("case.side.right").box.low[0]
    thick = part.size[2]
    back = part.box.high[0] - thick * math.tan(math.radians(lean))
    assert math.hypot(back - pin[0], thick - pin[1]) < wall - pin[0]
    assert math.hypot(part.box.high[0] - pin[0], thick - pin[1]) > wall - pin[0] - 0.3


def test_an_open_door_stands_before_the_case() -> None:
    piece = piece_of(door("{made: slab, stock: board}"))
    turned = opened(piece.part("door.1.slab"), piece.motions[0]).box
    assert turned.high[1] <= 1e-6
    assert turned.size(0) == pytest.approx(0.75 * IN, abs=0.01)


BEHIND = "{door: {frame: {}, catch: none%s}, drawers: {count: 2, drawer: {runs_on: %s}}}"


@pytest.mark.parametrize("hung", ["", ", set: overlay", ", hinges: cup", ", opens: 120", ", hinged: right"])
@pytest.mark.parametrize("running", ["bars", "slides", "runners", "full_extension_bars"])
def test_drawers_behind_a_door_pass_it(hung: str, running: str) -> None:
    assert codes(cupboard(f"rows: [{BEHIND % (hung, running)}, {{open: true, size: 6}}]", width="30")) == []


def test_a_filler_keeps_drawers_clear_of_an_inset_door() -> None:
    """By hand: the pin stands 1/32 in out and half of the 1/16 in gap off the side, so that the door, 3/4 in thick
    and open at a right angle, takes 1/32 + 1/32 + 3/4 = 13/16 in of the opening; 3 mm more stay free."""
    piece = piece_of(cupboard(f"rows: [{BEHIND % ('', 'bars')}, {{open: true, size: 6}}]"))
    # from 7 1/2 in, the upper side of the shelf, to 29 1/4 in, the under side of the top
    fillers = [p.box for p in piece.parts if p.name == "filler"]
    assert {(round(b.low[2] / IN, 3), round(b.high[2] / IN, 3)) for b in fillers} == {(7.5, 29.25)}
    assert min(b.low[0] for b in fillers) == pytest.approx(0.75 * IN)
    needed = 13 / 16 * IN + 3.0
    assert needed - 1e-6 <= sum(b.size(0) for b in fillers) < needed + IN / 32
    turned = [opened(p, piece.motions[0]).box.high[0] for p in piece.parts if p.group == "door.1"]
    assert min(p.box.low[0] for p in piece.parts if p.group == "drawer.1") - max(turned) > 3.0


def test_only_the_row_with_a_drawer_is_filled_out() -> None:
    rows = "rows: [{open: true, size: 12}, {drawer: {}}]"
    piece = piece_of(cupboard("{door: {frame: {}}, between: shelf, " + rows + "}"))
    shelf = piece.part("inside.shelf.1").box
    assert inches(shelf.low[0], shelf.high[0]) == [3 / 4 - 1 / 4, 24 - 3 / 4 + 1 / 4]
    assert piece.part("inside.row2.filler.1.1").box.high[2] == pytest.approx(shelf.low[2])


def test_fillers_leave_room_for_the_plates_of_cup_hinges() -> None:
    piece = piece_of(cupboard(BEHIND % (", set: overlay", "bars")))
    filler = piece.part("inside.filler.1.1")
    assert len([c for c in filler.cuts if isinstance(c, Groove) and c.purpose == "hinge plate"]) == 2


def test_battens_of_a_low_door_do_not_meet() -> None:
    piece = piece_of(cupboard("rows: [{size: 6, door: {made: slab}}, {open: true}]"))
    battens = [p for p in piece.parts if p.name == "door batten"]
    assert len(battens) == 1


def test_a_front_behind_a_door_stands_inside() -> None:
    inside = "{door: {frame: {}, catch: none}, columns: [{drawer: {front: {set: overlay}}}, {open: true}]}"
    assert codes(cupboard(inside, width="36")) == []


def test_what_is_inside_starts_behind_an_inset_door() -> None:
    """3/4 in of door and 1/8 in of room (common practice)."""
    shelf = piece_of(cupboard("{door: {frame: {}}, shelves: {count: 1}}")).part("inside.shelf.1")
    assert inches(shelf.box.low[1]) == [7 / 8]
    over = piece_of(cupboard("{door: {frame: {}, set: overlay}, shelves: {count: 1}}")).part("inside.shelf.1")
    assert inches(over.box.low[1]) == [0]


def test_a_strip_covers_the_gap_of_a_pair() -> None:
    piece = piece_of(cupboard("doors: {strip: right}", width="40"))
    strip = piece.part("door.2.strip").box
    left, right = outline(piece)[0], outline(piece, "door.2")[0]
    assert strip.low[0] / IN < left[1] < strip.high[0] / IN
    assert piece.part("door.2.strip").box.high[1] == pytest.approx(0)
    assert right[0] < strip.low[0] / IN + 0.01


def test_a_fixed_panel_swells_upward() -> None:
    """Cherry 0.00248 for each 1 % (FPL-GTR-190 table 13-5), 8 % to 10 %, over 10 in: 0.0496 in."""
    text = cupboard("rows: [{size: 10, panel: fixed}, {open: true}]")
    piece = piece_of(text)
    panel = piece.part("inside.row1.panel")
    assert inches(piece.part("case.top").box.low[2] - panel.box.high[2])[0] == pytest.approx(
        0.0496, abs=1 / 32
    )
    joints = [j for j in piece.joints if panel.id in (j.first, j.second)]
    assert sorted((j.kind, j.glued) for j in joints) == [("butt", True), ("tongue", False), ("tongue", False)]


def test_refusals() -> None:
    assert codes(door("{set: half_overlay, hinges: butt}"))[0] == "door.hinge-no-room"
    assert "door.hinge-no-room" in codes(door("{stock: half, hinges: cup, made: slab}"))
    assert "space.two-contents" in codes(cupboard("{door: {}, panel: fixed}"))


def test_raised_panels_stand_in_their_grooves() -> None:
    piece = piece_of(door("{frame: {panel: {kind: raised}}}"))
    panel, stile = piece.part("door.1.panel.1"), piece.part("door.1.stile.1")
    [field] = [c for c in panel.cuts if isinstance(c, RaisedField)]
    [groove] = [c for c in stile.cuts if isinstance(c, Groove)]
    back = sum(c.depth for c in rabbets(panel) if c.edge in (Side.EDGE,))
    assert field.tongue - back == pytest.approx(groove.width)
    assert field.flat >= groove.depth - 1e-6
    front = panel.box.low[1]
    assert front == pytest.approx(stile.box.low[1])


def test_a_slope_may_be_asked_for_in_degrees() -> None:
    keys = "{frame: {panel: {kind: raised, field_angle: 12, field_step: 1/16}}}"
    [field] = [c for c in piece_of(door(keys)).part("door.1.panel.1").cuts if isinstance(c, RaisedField)]
    rise = 1 / 4 * IN - field.step
    assert math.degrees(math.atan(rise / (field.width - field.flat))) == pytest.approx(12, abs=0.5)


def test_glass_has_room_and_its_density() -> None:
    """EN 572-1: 2500 kg/m3; 1/16 in of room at each edge in a rabbet of 1/4 in (common practice)."""
    piece = piece_of(door("{frame: {panel: {kind: glass}}}"))
    pane = piece.part("door.1.panel.1")
    assert pane.stock.density == 2500
    one, two = (piece.part(f"door.1.stile.{i}").box for i in (1, 2))
    opening = two.low[0] - one.high[0]
    assert inches(pane.size[1] - opening)[0] == pytest.approx(2 * (1 / 4 - 1 / 16))
