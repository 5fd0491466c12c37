"""Trays and centre guides: sums worked by hand, free ways, hand holes, what is refused.

The case is 20 x 16 outside of 3/4 stock: 18 1/2 wide inside. Ledger trays keep half of 1/8 in at each side (common
practice).
"""

from dataclasses import replace

import pytest

from bench import IN, codes, grooves, holes, inches, piece_of, rabbets, size
from boardwright.piece.cuts import Curve, Hole
from boardwright.pipeline import check_text
from boardwright.solids.cells import cells
from boardwright.solids.travel import hits

STOCK = """
boardwright: 1
title: Trays
units: in
wood_moisture: {now: 8, driest: 6, wettest: 12}
stock:
  ply: {sheet: hardwood_plywood, thickness: 3/4, measured: 3/4}
  half: {sheet: hardwood_plywood, thickness: 1/2, measured: 1/2}
  thin: {sheet: hardwood_plywood, thickness: 1/4, measured: 1/4}
  maple: {wood: maple_sugar, thickness: 3/4}
  slip: {wood: maple_sugar, thickness: 3/8}
"""


def case(inside: str, more: str = "", stock: str = "ply", height: str = "7 1/2") -> str:
    return f"""{STOCK}
case:
  width: 20
  height: {height}
  depth: 16
  stock: {stock}
  back: {{set: none}}
  inside: {inside}
drawers:
  sides: {{stock: half}}
  bottom: {{stock: thin}}
{more}
"""


def box(trays: str, more: str = "") -> str:
    return f"""{STOCK}
box:
  width: 16
  depth: 10
  height: 8
  stock: maple
  bottom: {{stock: thin}}
  trays: {trays}
drawers:
  sides: {{stock: slip}}
  bottom: {{stock: thin}}
{more}
"""


@pytest.mark.parametrize("runs_on", ["bars", "full_extension_bars", "runners", "slides"])
def test_a_tray_runs_on_whatever_a_drawer_runs_on(runs_on: str) -> None:
    piece = piece_of(case(f"{{tray: {{runs_on: {runs_on}}}}}"))
    [motion] = piece.motions
    assert (motion.kind, motion.runs_on, motion.direction) == ("tray", runs_on, (0.0, -1.0, 0.0))
    side, front = piece.part("tray.1.left"), piece.part("tray.1.front")
    # a low front, half of the sides, between them in rabbets half of 1/2 deep; it starts where the case does
    assert size(piece, side.id)[1] / 2 == pytest.approx(size(piece, front.id)[1], abs=1 / 32)
    assert inches(front.box.low[1], side.box.low[1]) == [0.0, 0.0]
    assert inches(side.box.high[0] - front.box.low[0]) == [0.25]
    [step] = [r for r in rabbets(side) if r.holds == front.id]
    # the rabbet stops at the top of the low front
    assert inches(step.end - step.start) == size(piece, front.id)[1:2]
    assert piece.part("tray.1.bottom").name == "tray bottom"


def test_the_front_is_as_high_as_it_is_asked_to_be() -> None:
    piece = piece_of(case("{tray: {front_height: 1 1/2}}"))
    assert size(piece, "tray.1.front")[1] == 1.5
    # bottom 3/8 up and 1/4 thick, and 12 mm over it: 1.097, so 1 is refused
    assert codes(case("{tray: {front_height: 1}}")) == ["size.too-small"]


def test_trays_in_a_stack_are_alike_and_numbered_beside_drawers() -> None:
    piece = piece_of(case("{rows: [{trays: {count: 3}}, {drawer: {}}]}", height="20"))
    assert [m.id for m in piece.motions] == ["tray.1", "tray.2", "tray.3", "drawer.1"]
    assert len({piece.part(f"tray.{n}.left").letter for n in (1, 2, 3)}) == 1
    assert codes(case("{trays: {count: 3, heights: [2, 2]}}")) == ["space.heights-count"]


def test_a_lift_out_tray_in_a_case_rests_on_ledgers() -> None:
    piece = piece_of(case("{tray: {lift_out: true, box_height: 3}}"))
    tray, ledger = piece.part("tray.1.left"), piece.part("tray.1.ledger.left")
    # 18 1/2 - 2 x 1/16 wide; ledgers 3/8 out from the wall and 3/4 high, and the tray on them
    assert inches(piece.part("tray.1.right").box.high[0] - tray.box.low[0]) == [18.375]
    assert size(piece, ledger.id) == [16.0, 0.75, 0.375]
    assert inches(tray.box.low[2]) == inches(ledger.box.high[2]) == [1.5]
    assert tray.box.low[0] < ledger.box.high[0]  # it rests
    # its front is as high as its sides
    assert size(piece, "tray.1.front")[1] == 3.0
    assert [f.into for f in piece.fasteners if f.held == ledger.id] == ["case.side.left"] * 2


def test_a_case_of_solid_wood_leaves_room_behind_for_its_shrinking() -> None:
    """Sugar maple, flat sawn, 0.00353 per 1 % (Wood Handbook table 13-5): 16 in deep lose 2 x 0.00353 x 16 = 0.113."""
    solid = piece_of(case("{tray: {lift_out: true, box_height: 3}}", stock="maple"))
    sheet = piece_of(case("{tray: {lift_out: true, box_height: 3}}"))
    gone = size(sheet, "tray.1.left")[0] - size(solid, "tray.1.left")[0]
    assert gone == pytest.approx(0.113, abs=1 / 32)
    assert solid.motions[0].rear_clearance / IN >= 1 / 16 + 0.113 - 1e-3


def test_trays_in_a_box_lie_one_over_the_other_and_come_out_upwards() -> None:
    piece = piece_of(box("{count: 2, heights: [2, 2 1/2], tray: {lift_out: true, ledgers: {height: 1/2}}}"))
    one, two = (piece.part(f"tray.{n}.left").box for n in (1, 2))
    # rooms of 2 and 2 1/2 from the rim at 8 down; a tray stands on its ledger
    assert inches(one.low[2], two.low[2]) == [6.5, 4.0]
    assert one.low[2] > two.high[2]
    assert [m.direction for m in piece.motions] == [(0.0, 0.0, 1.0)] * 2
    # 16 - 2 x 3/4 - 2 x 1/16 by 10 - 2 x 3/4 - 2 x 1/16
    wide = [
        piece.part(f"tray.{n}.right").box.high[0] - piece.part(f"tray.{n}.left").box.low[0] for n in (1, 2)
    ]
    assert inches(wide[0], one.size(1)) == [14.375, 8.375]
    # the lower one is narrower by two ledgers of 3/8, so that it passes them; its own stand out 3/4
    assert inches(wide[1]) == [13.625]
    assert size(piece, "tray.2.ledger.left")[1:] == [0.5, 0.75]


def test_the_lower_tray_passes_the_ledgers_over_it_when_the_upper_is_out() -> None:
    piece = piece_of(
        box("{count: 3, heights: [2, 2, 2], tray: {lift_out: true, ledgers: {height: 1/2, width: 1/4}}}")
    )
    for n in (1, 2, 3):
        still = [p for p in piece.parts if p.group == "case" or not p.group.startswith("tray.")]
        assert {f"tray.{k}.ledger.left" for k in (1, 2, 3)} <= {p.id for p in still}
        moving = [p for p in piece.parts if p.group == f"tray.{n}"]
        motion = replace(piece.motions[n - 1], travel=8 * IN)
        alone = replace(piece, parts=(*still, *moving), motions=(motion,))
        assert hits(alone, {p.id: cells(p) for p in alone.parts}) == []


def test_a_sideways_tray_slides_on_ledgers_in_front_and_behind() -> None:
    piece = piece_of(box("{count: 1, heights: [2 1/2], tray: {slides: sideways, length: 6}}"))
    front, back = (piece.part(f"tray.1.ledger.{w}") for w in ("front", "back"))
    assert size(piece, front.id)[0] == size(piece, back.id)[0] == 14.5
    assert inches(front.box.low[1], back.box.high[1]) == [0.75, 9.25]
    assert {f.into for f in piece.fasteners if f.held == front.id} == {"box.front"}
    [motion] = piece.motions
    # 14 1/2 of room, 6 of tray, 1/16 at both ends
    assert motion.direction == (1.0, 0.0, 0.0)
    assert inches(motion.travel) == [8.375]
    assert codes(box("{count: 1, heights: [2 1/2], tray: {slides: sideways, length: 14}}")) == [
        "drawer.no-ledgers"
    ]
    assert codes(case("{tray: {slides: sideways}}")) == ["drawer.no-ledgers"]


def test_hand_holes() -> None:
    piece = piece_of(case("{tray: {lift_out: true, box_height: 4, grip: {width: 4, height: 1}}}"))
    for name in ("left", "right"):
        [slot] = [h for h in holes(piece.part(f"tray.1.{name}")) if h.slot > 0]
        assert isinstance(slot, Hole)
        assert slot.through
        # 4 long in all: 3 between the centres of its ends; in the middle of a side 15 15/16 long
        assert inches(slot.diameter, slot.slot) == [1.0, 3.0]
        assert inches(slot.at[0])[0] == pytest.approx(15.9375 / 2, abs=1 / 32)
    hollow = piece_of(case("{tray: {grip: {shape: curve, width: 4, height: 1/2}, front_height: 2}}"))
    [curve] = [c for c in hollow.part("tray.1.front").cuts if isinstance(c, Curve)]
    assert inches(curve.points[1][1]) == [0.5]
    assert inches(curve.points[2][0] - curve.points[0][0]) == [4.0]
    assert not [c for c in hollow.part("tray.1.left").cuts if isinstance(c, Curve)]


def guided(drawer: str = "{}", top: str = "full", bottom: str = "full") -> str:
    return (
        case(f"{{drawer: {drawer}}}", "  runs_on: centre_guide\n", stock="maple")
        .replace(
            "  back: {set: none}\n",
            f"  back: {{set: none}}\n  top: {{kind: {top}}}\n  bottom: {{kind: {bottom}}}\n",
        )
        .replace("sides: {stock: half}", "sides: {stock: slip}")
    )


def test_a_centre_guide_runs_in_its_runner() -> None:
    piece = piece_of(guided())
    runner, strip = piece.part("drawer.1.centre_runner"), piece.part("drawer.1.centre_strip")
    # bottom 3/8 up: runner 3/8 - 1/16 = 5/16 high, its groove 3/16 deep (1/8 of wood under it), strip 3/8 - 1/8 - 1/16
    assert inches(runner.box.size(2), strip.box.size(2)) == [0.3125, 0.1875]
    [groove] = grooves(runner)
    assert inches(groove.depth) == [0.1875]
    # strip 3/4 and 1/32 of room in the groove
    assert inches(strip.box.size(0), groove.width) == [0.75, 0.78125]
    assert inches(runner.box.low[0] + runner.box.high[0]) == inches(strip.box.low[0] + strip.box.high[0])
    assert strip.box.low[2] < runner.box.high[2] - 3.0  # 1/8 in and more of it in the groove
    assert strip.group == "drawer.1"
    # the floor is solid wood whose grain runs across it: one screw fixed, the other in a slot
    assert sorted(f.slotted for f in piece.fasteners if f.held == runner.id) == [False, True]


def test_a_drawer_narrower_than_the_runner_takes_no_centre_guide() -> None:
    narrow = guided().replace("width: 20", "width: 4")
    assert "drawer.no-room-for-guide" in codes(narrow)
    assert "drawer.no-room-for-guide" not in codes(
        narrow.replace(
            "runs_on: centre_guide",
            "runs_on: centre_guide\n  centre_guide: {width: 3/8, runner_width: 1 1/8}",
        )
    )


def test_a_captured_bottom_has_its_back_notched_over_the_runner() -> None:
    piece = piece_of(guided("{bottom: {back: captured}}"))
    back, runner = piece.part("drawer.1.back"), piece.part("drawer.1.centre_runner")
    [notch] = [g for g in grooves(back) if g.holds == runner.id]
    assert notch.width > runner.box.size(0)
    assert notch.depth > runner.box.size(2) - (back.box.low[2] - runner.box.low[2])


def test_on_rails_there_are_runners_kickers_and_a_guide() -> None:
    piece = piece_of(guided(top="rails", bottom="rails"))
    names = [p.name for p in piece.parts]
    assert sum("runner" in n.split(" / ") or "kicker" in n.split(" / ") for n in names) == 4
    runner = piece.part("drawer.1.centre_runner")
    assert {f.into for f in piece.fasteners if f.held == runner.id} == {
        "case.bottom.front",
        "case.bottom.rear",
    }
    assert codes(guided(bottom="none")) != []


def test_a_rail_over_a_drawer_is_given_kickers() -> None:
    piece = piece_of(
        case(
            "{between: rail, rows: [{open: true}, {drawer: {runs_on: runners}}]}", stock="maple", height="14"
        ).replace("sides: {stock: half}", "sides: {stock: slip}")
    )
    kickers = [p for p in piece.parts if p.name == "kicker"]
    assert len(kickers) == 2
    assert kickers[0].box.low[2] == pytest.approx(piece.motions[0].opening.high[2])


LIDDED = """
boardwright: 1
title: Chest with a tray
units: in
stock:
  cherry: {wood: cherry_black, thickness: 3/4}
  half: {wood: maple_sugar, thickness: 1/2}
  thin: {sheet: hardwood_plywood, thickness: 1/4, measured: 0.2}
case:
  width: 36
  height: 22
  depth: 18
  top: {lid: %s}
  inside: {rows: [{panel: fixed, %s}, {panel: fixed, open: true}]}
"""


@pytest.mark.parametrize(
    "lid",
    ["{}", "{stay: false}", "{ends: breadboard, hinges: continuous}", "{frame: {panel: {kind: raised}}}"],
)
@pytest.mark.parametrize(
    "trays",
    [
        "tray: {lift_out: true, grip: {}, box_height: 2 1/2}, size: 5",
        "trays: {count: 2, tray: {lift_out: true}}, size: 9",
    ],
)
def test_trays_are_lifted_out_of_the_well_under_a_lid(lid: str, trays: str) -> None:
    """Up, with the lid open: clear of its rail, its stay and what hangs under it; a hollow to lift a low one by."""
    result = check_text(LIDDED % (lid, trays))
    assert [f.text() for f in result.findings if f.severity != "note"] == []
    piece = result.piece
    assert piece is not None
    ways = [m for m in piece.motions if m.kind == "tray"]
    assert [m.direction for m in ways] == [(0.0, 0.0, 1.0)] * len(ways)
    rail, rear = piece.part("case.lid.rail").box, piece.part("tray.1.back").box
    assert rear.high[1] <= rail.low[1] - IN / 32
    if "grip" in trays:
        assert any(isinstance(c, Curve) for c in piece.part("tray.1.left").cuts)


def test_a_tray_that_runs_out_has_no_way_under_a_lid() -> None:
    assert codes(LIDDED % ("{}", "tray: {}, size: 6")) == ["case.lid-no-well"]


@pytest.mark.parametrize("dust", ["", ", dust: true"])
def test_a_centre_guide_stands_on_the_rails_of_a_web_frame(dust: str) -> None:
    """Each runner lies on the front and the rear rail under its drawer; the lowest on the bottom (common practice)."""
    drawers = f"{{drawers: {{count: 3, between: web_frame{dust}, drawer: {{runs_on: centre_guide}}}}}}"
    piece = piece_of(case(drawers, height="20"))
    for n in (1, 2):
        under = {j.first for j in piece.joints if j.second == f"drawer.{n}.centre_runner"}
        assert len(under) == 2
        assert {piece.part(i).name for i in under} == {"web frame rail"}
