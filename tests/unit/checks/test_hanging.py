"""Wall cleat and hinge screws, worked by hand."""

import pytest

from boardwright.checks.context import context
from boardwright.checks.hanging import hung_case, measure
from boardwright.checks.loads import loads_of
from boardwright.checks.margins import site_of
from boardwright.pipeline import check_text
from boardwright.solids.dry_fit import DryFit

CASE = """
boardwright: 1
title: Case
units: in
stock:
  oak: {wood: oak_red_northern, thickness: 3/4}
  ply: {sheet: hardwood_plywood, thickness: 3/4, measured: 3/4}
  thin: {sheet: hardwood_plywood, thickness: 1/4, measured: 1/4}
"""
WALL = (
    CASE
    + """
case:
  width: 36
  height: 16
  depth: 12
  stock: ply
  back: {stock: thin}
  wall_cleat: {}
  inside: {shelves: {count: 1}}
loads: {shelves: 60, drawers: nothing, top: nothing}
"""
)
DOOR = CASE + "case: {width: 20, height: 18, depth: 10, stock: oak, inside: {door: {frame: {}}}}\n"


def site(text):
    result = check_text(text)
    assert result.piece is not None, [f.text() for f in result.findings]
    assert result.design is not None
    return context(result.piece, DryFit((), (), ()), result.tables, loads_of(result.design))


def test_screws_of_a_wall_cleat():
    c = site(WALL)
    hung = hung_case(c)
    assert hung is not None
    [margin] = [m for m in measure(c, site_of(c)) if m.check == "strength.cleat"]
    # No. 10, 0.190 in: across 3,360 D^2/1.6 = 75.8 lb; out of 0.42 wood 2,850 x 0.42^2 x 0.190 x 1 1/2 = 143 lb
    across, out = 3360 * 0.190**2 / 1.6, 2850 * 0.42**2 * 0.190 * 1.5
    pounds = hung.load / 4.4482216
    assert 60 < pounds < 120
    assert margin.value == pytest.approx(pounds / across + pounds * hung.ahead / hung.arm / out, rel=2e-3)
    assert margin.limit == 4  # 34 1/4 in of cleat, studs 16 in apart: two are sure to be behind it
    # half of it stands in 12 in of depth; the shelf's middle is nearer to the front
    assert 5 < hung.ahead / 25.4 < 7.5


def test_screws_of_the_upper_hinge():
    c = site(DOOR)
    [margin] = [m for m in measure(c, site_of(c)) if m.check == "strength.hinges"]
    hinges = [h for h in c.piece.hardware if ".hinge." in h.id]
    apart = (hinges[1].box.middle()[2] - hinges[0].box.middle()[2]) / 25.4
    door = [p for p in c.piece.parts if p.group.startswith("door")]
    pounds = sum(p.size[0] * p.size[1] * p.size[2] * 1e-9 * p.stock.density for p in door) / 0.45359237
    # door 18 1/2 in wide, its middle 9 1/4 in out; blanks weigh a little more than the door
    assert margin.value / 4.4482216 == pytest.approx((pounds * 9.2 + 65 * 10) / apart, rel=0.02)
    gauge = {"4": 0.112, "5": 0.125, "6": 0.138}[hinges[0].screw_key]
    each = 2850 * c.parts["door.1.stile.1"].stock.specific_gravity ** 2 * gauge
    thread = hinges[0].screw_length / 25.4 * 2 / 3
    assert margin.limit / 4.4482216 == pytest.approx(each * thread * 1.6 * hinges[0].screws, rel=1e-3)
