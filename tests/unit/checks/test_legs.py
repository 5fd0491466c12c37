"""Legs and their joints, worked by hand from the published formulas and the handbook's strengths."""

from math import pi

import pytest

from boardwright.checks.context import context
from boardwright.checks.legs import measure
from boardwright.checks.loads import loads_of
from boardwright.checks.margins import site_of
from boardwright.pipeline import check_text
from boardwright.solids.dry_fit import DryFit

TABLE = """
boardwright: 1
title: Table
units: in
stock:
  cherry: {{wood: cherry_black, thickness: 3/4}}
  leg: {{wood: cherry_black, thickness: {thick}}}
table: {{width: 44, depth: 20, height: 29, legs: {{stock: leg}}, aprons: {{height: 3 1/2{joint}}}}}
"""
PUSH = 50 * 4.4482216
PSI = 4.4482216 / 25.4**2


def figures(thick="1 3/4", joint="", more=""):
    result = check_text(TABLE.format(thick=thick, joint=joint) + more)
    assert result.piece is not None, [f.text() for f in result.findings]
    assert result.design is not None
    c = context(result.piece, DryFit((), (), ()), result.tables, loads_of(result.design))
    found: dict[str, list[tuple[float, float]]] = {}
    for m in measure(c, site_of(c)):
        found.setdefault(m.check, []).append((m.value, m.limit))
    return found, c


def test_a_push_at_the_foot_bends_the_leg():
    # 29 less 3/4 top and 3 1/2 apron: 24 3/4 in free
    [(stress, allowed)] = figures()[0]["strength.leg"]
    assert stress == pytest.approx(6 * PUSH * 24.75 * 25.4 / (1.75 * 25.4) ** 3, rel=1e-3)
    cherry = 12300 * PSI  # Wood Handbook table 5-3b
    assert allowed == pytest.approx(cherry * (1 - 1.645 * 0.16) / 2.1 * 1.6, rel=0.005)


def test_the_leg_buckles_as_a_column_held_at_its_head():
    [(load, limit)] = figures()[0]["strength.leg-slender"]
    side, free = 1.75 * 25.4, 24.75 * 25.4
    E = 1.49e6 * PSI  # Wood Handbook table 5-3b
    euler = pi**2 * E * (1 - 1.645 * 0.22) * side**4 / 12 / (2 * free) ** 2
    assert limit == pytest.approx(euler / 3, rel=0.005)
    # 15 psf on 44 x 20 in is 92 lb; the table weighs about 25
    assert load == pytest.approx(2 / 4 * (92 + 25) * 4.448, rel=0.1)


def test_a_tenon_takes_its_regression():
    figures_, c = figures(joint=", joint: {kind: mortise_tenon, length: 1}")
    values = figures_["strength.joint"]
    rail = c.parts["table.apron.left"]
    tenon = next(k for k in rail.cuts if type(k).__name__ == "Tenon")
    wide = sum(b - a for a, b, n in tenon.steps if n >= tenon.length - 0.5) / 25.4
    broken = 1700 * (0.25 * 3.5 + 0.78 * wide) * 1.0**0.8 * 4.4482216 * 0.0254  # shear of cherry 1,700 psi
    share = (1 - 1.645 * 0.16) / 2.1 * 1.6
    assert any(limit == pytest.approx(broken * share, rel=0.01) for _, limit in values)
    assert all(m == pytest.approx(PUSH * (24.75 + 1.75) * 0.0254, rel=1e-3) for m, _ in values)


def test_dowels_at_their_arm():
    result, c = figures(joint=", joint: {kind: butt, fasten: dowels}")
    (_, limit), *_rest = result["strength.joint"]
    own = [f for f in c.piece.fasteners if f.kind == "dowel" and "apron.front" in f.into + f.held]
    rail = c.parts["table.apron.front"].box
    left = [f for f in own if f.at[0] < 300]
    arm = (max(f.at[2] for f in left) - rail.low[2]) / 25.4
    leg = c.parts["table.leg.front.left"].box
    inside = min(min(abs(f.at[0] - leg.high[0]), abs(f.tip[0] - leg.high[0])) for f in left) / 25.4
    d = left[0].diameter / 25.4
    pull = 0.834 * d * inside**0.89 * (0.95 * 1700 + 2330)  # sugar maple 2,330 psi
    assert limit == pytest.approx(pull * arm * 4.4482216 * 0.0254 * (1 - 1.645 * 0.16) / 2.1 * 1.6, rel=0.01)


def test_stretchers_share_the_push():
    result = check_text(
        TABLE.format(thick="1 3/4", joint="").replace("aprons:", "stretchers: {kind: box}, aprons:")
    )
    checks = {m.check for m in result.passed} | {f.code for f in result.findings}
    assert "strength.leg" in checks
    assert "strength.joint" not in checks


def test_a_case_has_no_legs():
    case = """
boardwright: 1
title: Case
units: in
stock: {cherry: {wood: cherry_black, thickness: 3/4}}
case: {width: 20, height: 40, depth: 12, face_frame: {}, inside: {shelves: {count: 2}}}
"""
    checks = {m.check for m in check_text(case).passed}
    assert not {"strength.leg", "strength.leg-slender", "strength.joint"} & checks
