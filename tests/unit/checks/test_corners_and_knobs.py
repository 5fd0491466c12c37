"""Corners with fingers, frames of doors, dowels under shelves, knobs, drawers under a top: worked by hand."""

from math import hypot, pi

import pytest

from boardwright.pipeline import check_text

STOCK = """
boardwright: 1
title: Case
units: in
stock:
  oak: {{wood: oak_white, thickness: 3/4}}
  ply: {{sheet: hardwood_plywood, thickness: 1/4, measured: 0.2}}
"""
OPEN = (
    STOCK
    + """
case:
  width: 24
  height: 40
  depth: 12
  stock: oak
  top: {{joint: {{kind: {0}, {1}}}}}
  bottom: {{joint: {{kind: {0}, {1}}}}}
  back: {{set: none}}
  inside: {{shelves: {{count: 1, kind: pins}}}}
"""
)


def margin(text, code):
    result = check_text(text)
    found = [m for m in result.passed if m.check == code]
    assert found, [f.text() for f in result.findings]
    return found[0]


def test_corner_with_fingers():
    # White oak, shear 13.8 MPa (Wood Handbook table 5-3b, 2,000 psi): 15 fingers of 3/4 in in 12 in have 14
    # cheeks of 3/4 x 3/4 in; each reaches the shear strength at its corners at S b h r/3, r half its diagonal. Half of
    # the allowed share of a tested joint, minutes.
    n = margin(OPEN.format("finger", "pitch: 3/4"), "strength.racking")
    side = 19.05
    mean = 14 * 13.8 * side * side * hypot(side, side) / 6 / 1000
    assert n.limit == pytest.approx(mean * (1 - 1.645 * 0.16) / 2.1 / 2 * 1.6, rel=0.01)
    # push 50 lb over 40 in shared by four corners, the worst 1.05 of the mean
    assert n.value == pytest.approx(222.4 * 1.016 / 4 * 1.05, rel=0.01)


def test_many_fine_fingers_are_as_strong_as_their_wood():
    fine, coarse = (margin(OPEN.format("finger", f"pitch: {p}"), "strength.racking") for p in ("3/16", "3/4"))
    # 105 MPa on a quarter of 12 in of 3/4 in wood, in bending
    wood = 105 * 304.8 / 4 * 19.05**2 / 6 / 1000
    assert fine.limit == pytest.approx(wood * (1 - 1.645 * 0.16) / 2.1 * 1.6, rel=0.01)
    assert fine.limit > coarse.limit


def test_shelf_on_dowels():
    # Two dowels of hard maple, 16.1 MPa: pi/4 d^2 S, fifth percentile over 2.1.
    inside = "inside: {shelves: {count: 2, joint: {kind: butt, fasten: dowels, count: 2}}}"
    case = f"case: {{width: 24, height: 30, depth: 12, stock: oak, back: {{stock: ply}}, {inside}}}"
    text = STOCK.format() + case + "\nloads: {shelves: 60}\n"
    m = margin(text, "strength.dowels")
    d = next(f.diameter for f in check_text(text).piece.fasteners if f.kind == "dowel")
    assert m.limit == pytest.approx(2 * pi / 4 * d**2 * 16.1 * (1 - 1.645 * 0.14) / 2.1, rel=0.01)


CUPBOARD = (
    STOCK
    + "case: {{width: 20, height: 24, depth: 10, stock: oak, inside: {{door: {{knob: {{hole: {}}}}}}}}}\n"
)


def test_screw_of_a_knob():
    # 3/4 in of wood and 1/4 in of thread: 1 in. 30 lb on the ring of a head of 9.5 mm round a hole of 3/16 in.
    length = margin(CUPBOARD.format("3/16"), "fastener.knob-screw")
    assert (length.value, length.limit) == pytest.approx((6.35, 6.35))
    assert "1 in long" in length.what
    head = margin(CUPBOARD.format("3/16"), "strength.knob")
    assert head.value == pytest.approx(30 * 0.45359 * 9.81 / (pi / 4 * (9.5**2 - 4.7625**2)), rel=1e-3)
    # white oak, 7.4 MPa across the grain (1,070 psi)
    assert head.limit == pytest.approx(7.4 * 1.75 / 1.67, rel=0.01)


def test_hole_as_wide_as_the_head():
    found = [f for f in check_text(CUPBOARD.format("3/8 + 1/64")).findings if f.code == "strength.knob"]
    assert len(found) == 1
    assert "washer 1/2 in wide" in found[0].remedy


DOOR = STOCK + (
    "case: {{width: 24, height: 40, depth: 12, stock: oak, inside: {{door: {{gap: 3/32, frame: "
    "{{stile_width: 2 1/4, bottom_rail_width: 2 1/4, {}panel: {{kind: flat, stock: ply}}}}}}}}}}\n"
)


def test_joints_of_a_door_frame():
    # Door 22 5/16 in wide; 65 lb 10 in out and half of the door on the free stile; stiles 20 1/16 in apart; four
    # joints, 1.2 of the mean.
    text = DOOR.format("joint: {kind: half_lap}, ")
    result = check_text(text)
    m = margin(text, "strength.door-frame")
    assert result.piece is not None
    door = [p for p in result.piece.parts if p.group.startswith("door")]
    mass = sum(p.stock.density * 1e-9 * p.size[0] * p.size[1] * p.size[2] for p in door)
    shear = 9.81 * (65 * 0.45359237 * 10 / 22.3125 + mass / 2)
    assert m.value == pytest.approx(shear * (22.3125 - 2.25) * 0.0254 / 4 * 1.2, rel=0.01)
    # half lap: a square of 2 1/4 in of long-grain glue at 13.8 MPa in torsion, halved
    whole = 13.8 * 57.15**2 * hypot(57.15, 57.15) / 6 / 1000
    assert m.limit == pytest.approx(whole * (1 - 1.645 * 0.16) / 2.1 / 2 * 1.6, rel=0.01)


def test_a_slab_has_no_frame():
    slab = (
        STOCK.format()
        + "case: {width: 24, height: 40, depth: 12, stock: oak, inside: {door: {made: slab}}}\n"
    )
    assert "strength.door-frame" not in {m.check for m in check_text(slab).passed}


BENCH = """
boardwright: 1
title: Bench
units: in
stock:
  ply: {{sheet: hardwood_plywood, thickness: 3/4, measured: 3/4}}
  half: {{sheet: hardwood_plywood, thickness: 1/2, measured: 1/2}}
  thin: {{sheet: hardwood_plywood, thickness: 1/4, measured: 1/4}}
case: {{width: 24, height: 30, depth: 22, stock: ply, back: {{stock: thin}}, inside: {{drawers: {{count: 2}}}}}}
drawers: {{runs_on: slides, slides: {{length: 18}}, sides: {{stock: half}}, bottom: {{stock: thin}}}}
parts: {{top: {{stock: ply, length: 26, width: {0} + 22, along: x, across: y, at: [-1, -{0}, 30]}}}}
joints: [{{kind: butt, first: case.top, second: top, fasten: screws}}]
"""


def test_drawers_under_a_bench_top():
    # Travel 18, front and front of the box 1 1/4, top 3 in over: 13 3/4 in of the inside come out.
    m = margin(BENCH.format(3), "drawer.under-overhang")
    assert m.value / 25.4 == pytest.approx(18 - 1.25 - 3)
    assert not [k for k in check_text(BENCH.format(2)).passed if k.check == "drawer.under-overhang"]
    [finding] = [f for f in check_text(BENCH.format(5)).findings if f.code == "drawer.under-overhang"]
    most = finding.remedy.removeprefix("let it reach ").split(" in over")[0]
    whole, _, part = most.partition(" ")
    num, _, den = part.partition("/")
    reach = float(whole) + (float(num) / float(den) if num else 0.0)
    assert [k for k in check_text(BENCH.format(reach)).passed if k.check == "drawer.under-overhang"]
