"""Each joint on two parts: cuts on both, growth, holes, refusals. Numbers worked by hand beside each test.

Proportions: dado a third of the thickness, rabbet a half, tongue a third (common practice; trade handbooks
give 1/4 to 1/2 for a dado). Screw sizes: shank 0.060 + 0.013 N in, ASME B18.6.1 (from memory); pilot in hard
wood about 90 % of the root. Dowel pins: 1/3 to 1/2 of the thickness, a third of the length in the face (trade
Q&A on dowels).
"""

import pytest

from bench import IN, codes, grooves, holes, inches, notches, piece_of, places, rabbets, size, two_parts

UPRIGHT, SHELF = "parts.upright", "parts.shelf"


def test_dado_is_a_third_deep_and_the_shelf_grows_into_it() -> None:
    piece = piece_of(two_parts("kind: dado"))
    # 3/4 / 3 = 1/4; the shelf 20 + 1/4
    assert size(piece, SHELF) == [20.25, 10.0, 0.75]
    assert size(piece, UPRIGHT) == [12.0, 10.0, 0.75]
    [groove] = grooves(piece.part(UPRIGHT))
    assert inches(groove.width, groove.depth, groove.start, groove.end) == [0.75, 0.25, 0.0, 10.0]
    assert places(groove, 12 * IN) == {5.0, 6.25}  # 12 - 5 - 3/4
    assert groove.holds == SHELF
    assert not piece.part(SHELF).cuts
    [joint] = piece.joints
    # out to the right, or along the through dado either way; never up or down
    assert set(joint.directions) == {(1.0, 0.0, 0.0), (0.0, -1.0, 0.0), (0.0, 1.0, 0.0)}
    # seat 10 x 3/4 and two cheeks 10 x 1/4
    areas = sorted(round(_area(c) / IN**2, 6) for c in joint.contacts)
    assert areas == [2.5, 2.5, 7.5]


def _area(contact) -> float:  # type: ignore[no-untyped-def]
    a, b = (contact.box.size(i) for i in range(3) if i != contact.axis)
    return float(a * b)


def test_given_depth_is_kept_and_the_box_outside_stays() -> None:
    piece = piece_of(two_parts("kind: dado, depth: 3/16"))
    assert size(piece, SHELF)[0] == 20.1875  # 20 + 3/16
    # the far end has not moved: 3/4 + 20
    assert inches(piece.part(SHELF).box.high[0]) == [20.75]


def test_stopped_dado_stops_short_of_the_front_and_the_shelf_is_notched() -> None:
    piece = piece_of(two_parts("kind: dado, stopped: 1/2"))
    [groove] = grooves(piece.part(UPRIGHT))
    assert inches(groove.end - groove.start) == [9.5]  # 10 - 1/2
    [notch] = notches(piece.part(SHELF))
    assert inches(notch.length, notch.width) == [0.25, 0.5]  # as deep as the dado, as long as the stop
    # it can no longer be drawn out over the front
    assert (0.0, -1.0, 0.0) not in piece.joints[0].directions


def test_rabbet_is_half_deep_and_as_wide_as_the_shelf_is_thick() -> None:
    piece = piece_of(two_parts("kind: rabbet", at="11 1/4"))
    [rabbet] = rabbets(piece.part(UPRIGHT))
    assert inches(rabbet.width, rabbet.depth) == [0.75, 0.375]
    assert size(piece, SHELF)[0] == 20.375  # 20 + 3/8
    assert set(piece.joints[0].directions) == {(1.0, 0.0, 0.0), (0.0, 0.0, 1.0)}


def test_rabbet_takes_away_what_stands_beyond_the_shelf() -> None:
    # underside at 11: top at 11 3/4, so 1/4 of the upright would stand over it; the step is 3/4 + 1/4 wide
    piece = piece_of(two_parts("kind: rabbet", at="11"))
    [rabbet] = rabbets(piece.part(UPRIGHT))
    assert inches(rabbet.width) == [1.0]


def test_tongue_in_the_middle_has_two_shoulders() -> None:
    piece = piece_of(two_parts("kind: tongue"))
    [groove] = grooves(piece.part(UPRIGHT))
    # tongue 3/4 / 3 = 1/4, in the middle of the shelf: 5 + 1/4 up
    assert inches(groove.width, groove.depth) == [0.25, 0.25]
    assert places(groove, 12 * IN) == {5.25, 6.5}  # 12 - 5 1/4 - 1/4
    shoulders = rabbets(piece.part(SHELF))
    assert [inches(r.width, r.depth) for r in shoulders] == [[0.25, 0.25]] * 2
    assert size(piece, SHELF)[0] == 20.25


def test_tongue_at_the_end_has_one_shoulder_and_leaves_wood_beyond_the_groove() -> None:
    piece = piece_of(two_parts("kind: tongue", at="11 1/4"))
    [groove] = grooves(piece.part(UPRIGHT))
    # the tongue on the lower side of the shelf: 11 1/4 to 11 1/2, so 1/2 of wood above it
    assert places(groove, 12 * IN) == {11.25, 0.5}
    [shoulder] = rabbets(piece.part(SHELF))
    assert inches(shoulder.width, shoulder.depth) == [0.25, 0.5]


def test_butt_in_solid_wood_is_dowelled() -> None:
    piece = piece_of(two_parts("kind: butt"))
    # pins 5/16 x 1 1/2 in 3/4 wood; a third of 1 1/2 = 1/2 in the face, 1 in the end; each hole at least 1 mm
    # deeper
    into, end = holes(piece.part(UPRIGHT)), holes(piece.part(SHELF))
    assert len(into) == len(end) == len(piece.fasteners) == 3
    for hole, least in [(h, 0.5) for h in into] + [(h, 1.0) for h in end]:
        assert inches(hole.diameter) == [0.3125]
        assert least * IN + 1.0 <= hole.depth < least * IN + 1.0 + IN / 32
        assert not hole.through
    # same places on both: 1 1/2, 5, 8 1/2 along the joint, mid-thickness (5 + 3/8 up; 3/8 in)
    along = sorted(round(f.at[1] / IN, 6) for f in piece.fasteners)
    assert along == [1.5, 5.0, 8.5]
    assert {round(f.at[2] / IN, 6) for f in piece.fasteners} == {5.375}
    assert {inches(h.at[1])[0] for h in end} == {0.375}
    # pin starts 1/2 inside the upright and ends 1 inside the shelf: x from 1/4 to 1 3/4
    assert {(inches(f.at[0])[0], inches(f.tip[0])[0]) for f in piece.fasteners} == {(0.25, 1.75)}
    assert size(piece, SHELF)[0] == 20.0


def test_butt_in_sheet_goods_is_screwed() -> None:
    piece = piece_of(two_parts("kind: butt", upright="ply", shelf="ply"))
    # 3/8 to the edge: 2.5 x shank <= 3/8 -> No. 6 (0.138 x 2.5 = 0.345; No. 7: 0.3775); twice 3/4 = 1 1/2
    # long
    assert {f.name for f in piece.fasteners} == {"No. 6 x 1 1/2 in flat-head wood screw"}
    clearance, pilot = holes(piece.part(UPRIGHT)), holes(piece.part(SHELF))
    assert len(clearance) == len(pilot) == len(piece.fasteners) > 0
    for hole in clearance:
        assert hole.through
        assert 0.138 <= hole.diameter / IN < 0.138 + 1 / 64  # next 64th over the shank
        assert inches(hole.countersink) == [0.279]
    for hole in pilot:
        assert hole.diameter / IN < 0.094  # below the root
        assert inches(hole.depth) == [0.75]  # 1 1/2 - 3/4


def test_count_and_screw_of_the_file_are_kept() -> None:
    piece = piece_of(
        two_parts(
            "kind: butt, fasten: screws, count: 4, screw: 5, screw_length: 1 1/4", upright="ply", shelf="ply"
        )
    )
    assert len(piece.fasteners) == 4
    assert {f.name for f in piece.fasteners} == {"No. 5 x 1 1/4 in flat-head wood screw"}


def test_screws_in_a_dado_go_through_what_is_left() -> None:
    piece = piece_of(two_parts("kind: dado, fasten: screws", upright="ply", shelf="ply"))
    # 3/4 - 1/4 = 1/2 under the head, twice that = 1 long; 1 - 1/2 = 1/2 in the shelf
    assert {f.name for f in piece.fasteners} == {"No. 6 x 1 in flat-head wood screw"}
    assert {inches(h.depth)[0] for h in holes(piece.part(SHELF))} == {0.5}


def test_no_glue_is_said() -> None:
    piece = piece_of(two_parts("kind: dado, glue: no"))
    assert not piece.joints[0].glued
    assert piece.joints[0].summary.endswith("dry")


@pytest.mark.parametrize(
    ("joint", "at", "code"),
    [
        ("kind: dado", "11 1/4", "joint.no-wood-beyond"),  # flush with the end: nothing over the shelf
        ("kind: dado", "0", "joint.no-wood-beyond"),
        ("kind: rabbet", "5", "joint.not-at-an-end"),
        (
            "kind: rabbet",
            "10 1/2 - 1/32",
            "joint.not-at-an-end",
        ),  # 12 - 11 7/32 = 25/32 over it, more than 3/4
        ("kind: dado, depth: 3/4", "5", "joint.too-deep"),
        ("kind: butt", "12", "joint.apart"),  # stands over the upright, beside no face of it
    ],
)
def test_refused(joint: str, at: str, code: str) -> None:
    assert code in codes(two_parts(joint, at))


def test_a_rabbet_may_have_as_much_beyond_it_as_the_part_is_thick() -> None:
    # near twin of the refusal above: underside at 10 1/2, top at 11 1/4, 3/4 over it
    assert not codes(two_parts("kind: rabbet", at="10 1/2"))


def test_tongue_as_thick_as_the_part_at_an_end_is_refused() -> None:
    assert "joint.no-wood-beyond" in codes(two_parts("kind: tongue, width: 3/4", at="11 1/4"))


def test_no_dowel_fits_a_thin_sheet() -> None:
    # the thinnest pin is 1/4; half of 0.2 is 0.1
    assert "fastener.none-fits" in codes(two_parts("kind: butt, fasten: dowels", shelf="thin"))


LOCK = """
boardwright: 1
title: One drawer
units: in
work_to: 1/32
stock:
  ply: {sheet: hardwood_plywood, thickness: 3/4, measured: 3/4}
  half: {sheet: hardwood_plywood, thickness: 1/2, measured: 1/2}
  thin: {sheet: hardwood_plywood, thickness: 1/4, measured: 1/4}
case:
  width: 21 1/2
  height: 10
  depth: 18
  stock: ply
  back: {set: none}
  inside: {drawer: {}}
drawers:
  front: {stock: ply, made: one_piece, joint: {kind: tongue, depth: 1/4, width: 1/4}}
  sides: {stock: half}
  bottom: {stock: thin}
  runs_on: runners
  runners: {stock: half}
"""


def test_drawer_lock() -> None:
    # groove and tongue joint of a drawer front (trade handbooks: front 3/4, side 1/2): tongue 3/4 / 3 = 1/4,
    # the side's end in a slot of the front, 1/4 to 1/2 from its back; so the side grows 1/2 into the front
    piece = piece_of(LOCK)
    front, side = piece.part("drawer.1.front"), piece.part("drawer.1.left")
    # back of the front at y = 3/4; the side starts 1/2 before it
    assert inches(side.box.low[1]) == [0.25]
    slots = [g for g in grooves(front) if g.holds.startswith("drawer.1.") and g.purpose == "joint"]
    assert len(slots) == 2
    # the front is as wide as the box: opening 20 less 2 x 3/32 = 19 13/16; slot as deep as the side, 1/2
    assert {tuple(inches(g.width, g.depth)) for g in slots} == {(0.25, 0.5)}
    tongues = [r for r in rabbets(front) if r.purpose == "tongue"]
    # the tongue reaches 1/4 into the side: 1/2 - 1/4 of it is taken off
    assert {tuple(inches(r.width, r.depth)) for r in tongues} == {(0.25, 0.25)}
    [groove] = [g for g in grooves(side) if g.holds == front.id]
    assert inches(groove.width, groove.depth) == [0.25, 0.25]
    # drawn off sideways only
    [left] = [j for j in piece.joints if j.kind == "lock" and j.second == side.id]
    assert left.directions == ((-1.0, 0.0, 0.0),)
