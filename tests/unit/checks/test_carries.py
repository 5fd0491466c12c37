"""Sag, strength, standing and weight: a design that fires, its near twin that does not, and remedies that are tried."""

import re
import time

import pytest

from boardwright.checks.carries import check, passed
from boardwright.checks.context import Context, context
from boardwright.checks.loads import loads_of
from boardwright.core.findings import Finding, Severity
from boardwright.pipeline import check_text
from boardwright.solids.dry_fit import DryFit

LB, PSF, PSI = 0.45359237, 4.4482216152605 / 304.8**2, 4.4482216152605 / 25.4**2

STOCK = """
boardwright: 1
title: Check
units: in
work_to: 1/64
stock:
  ply: {sheet: hardwood_plywood, thickness: 3/4, measured: 3/4}
  one: {sheet: hardwood_plywood, thickness: 1, measured: 0.965}
  half: {sheet: hardwood_plywood, thickness: 1/2, measured: 1/2}
  thin: {sheet: hardwood_plywood, thickness: 1/4, measured: 1/4}
  mdf: {sheet: mdf, thickness: 3/4, measured: 3/4}
  oak: {wood: oak_red_northern, thickness: 3/4}
  thick_oak: {wood: oak_red_northern, thickness: 1 1/2}
  maple: {wood: maple_sugar, thickness: 1/2}
"""


def site(text: str) -> Context:
    result = check_text(STOCK + text)
    assert result.piece is not None, result.findings
    assert result.design is not None
    return context(result.piece, DryFit((), (), ()), result.tables, loads_of(result.design))


def found(text: str, code: str) -> list[Finding]:
    return [f for f in check(site(text)) if f.code == code]


def margins(text: str, code: str) -> dict[str, tuple[float, float]]:
    c = site(text)
    return {m.parts[0] if m.parts else m.what: (m.value, m.limit) for m in passed(c) if m.check == code}


def shelves(
    width: str, shelf: str = "ply", more: str = "", loads: str = "top: nothing", back: str = "set: none"
) -> str:
    return f"""
case:
  width: {width}
  height: 24
  depth: 12
  stock: ply
  back: {{{back}}}
  inside:
    shelves: {{count: 1, stock: {shelf}{more}}}
loads: {{{loads}}}
"""


def own(density: float, t: float) -> float:
    """Weight of a panel for each area [N/mm2]."""
    return density * 1e-9 * t * 9.81


def longest(E: float, t: float, w: float, creep: float) -> float:
    """Clear span [mm] at which the sag after ten years is 1/384 of it, by the beam formula, worked here."""
    return (E * t**3 / 12 * 384 / (5 * w * (1 + creep) * 384)) ** (1 / 3)


def test_books_on_plywood_sag_over_their_longest_span() -> None:
    # 20 lb a foot on a shelf 12 in deep, 3/4 in, 1.8 million psi, creep 0.8, own weight of 600 kg/m3
    w = 20 * LB * 9.81 / 304.8 / 304.8 + own(600, 19.05)
    most = longest(12400, 19.05, w, 0.8) / 25.4
    under, over = int(most * 16 - 1) / 16, int(most * 16 + 2) / 16
    assert not found(shelves(f"{under + 1.5}"), "strength.sag")
    (finding,) = found(shelves(f"{over + 1.5}"), "strength.sag")
    assert finding.severity is Severity.WARNING
    assert finding.parts == ("inside.shelf.1",)


def test_the_sag_is_that_of_the_beam_formula() -> None:
    values = margins(shelves("31 1/2"), "strength.sag")
    w = 20 * LB * 9.81 / 304.8 / 304.8 + own(600, 19.05)
    L = 30 * 25.4
    assert values["inside.shelf.1"][0] == pytest.approx(
        1.8 * 5 * w * L**4 / (384 * 12400 * 19.05**3 / 12), rel=1e-6
    )
    assert values["inside.shelf.1"][1] == pytest.approx(L / 384)


def test_fiberboard_creeps_more_than_wood() -> None:
    assert not found(shelves("28"), "strength.sag")
    assert found(shelves("28", "mdf"), "strength.sag")


def test_each_remedy_brings_it_within_its_limit() -> None:
    (finding,) = found(shelves("44"), "strength.sag")
    assert "hardwood plywood 1 in" in finding.remedy
    assert not found(shelves("44", "one"), "strength.sag")
    most = int(re.search(r"no more than (\d+) lb", finding.remedy)[1])  # type: ignore[index]
    assert not found(shelves("44", loads=f"top: nothing, shelves: {most}"), "strength.sag")
    assert found(shelves("44", loads=f"top: nothing, shelves: {most + 2}"), "strength.sag")
    assert "under the middle" in finding.remedy
    halves = (
        shelves("44")
        .replace("shelves:", "columns: [{shelves:")
        .replace("stock: ply}", "stock: ply}}, {shelves: {count: 1}}]")
    )
    assert not found(halves, "strength.sag")


def test_what_it_carries_counts() -> None:
    for loads, fires in (
        ("nothing", False),
        ("household", False),
        ("books", True),
        ("tools", True),
        ("100", True),
    ):
        assert bool(found(shelves("39", loads=f"top: nothing, shelves: {loads}"), "strength.sag")) is fires, (
            loads
        )


LOOSE = """
parts:
  left: {{stock: oak, length: 12, width: 12, along: z, across: y, at: [0, 0, 0]}}
  right: {{stock: oak, length: 12, width: 12, along: z, across: y, at: [43.25, 0, 0]}}
  rail: {{stock: oak, length: 20, width: 12, along: z, across: y, at: [50, 0, 0]}}
  shelf: {{stock: oak, length: 44, width: 12, along: x, across: y, at: [0, 0, 12]}}
  edge: {{stock: oak, length: 42 1/2, width: {high}, along: x, across: z, at: [3/4, -3/4, 12 + 3/4 - {high}]}}
joints:
  - {{kind: butt, first: shelf, second: left}}
  - {{kind: butt, first: shelf, second: right}}
{edge}
loads: {{top: books}}
"""
EDGE = "  - {kind: butt, first: shelf, second: edge, fasten: none}\n"


def test_an_edge_strip_counts_when_it_is_joined() -> None:
    joined = found(LOOSE.format(high="2", edge=EDGE), "strength.sag")
    apart = found(LOOSE.format(high="2", edge=""), "strength.sag")
    assert [f.parts for f in apart] == [("parts.shelf",)]
    assert not joined


def test_a_shelf_on_pins_spans_from_side_to_side() -> None:
    assert found(shelves("42", more=", kind: pins"), "strength.sag")
    assert not found(shelves("30", more=", kind: pins"), "strength.sag")


DRAWER = """
case:
  width: {width}
  height: 14
  depth: 20
  stock: ply
  back: {{set: none}}
  inside:
    drawer: {{runs_on: bars, sides: {{stock: half}}, bottom: {{stock: {bottom}}}}}
loads: {{drawers: {load}, top: nothing}}
"""


def test_a_drawer_bottom_sags_by_its_load_and_stock() -> None:
    code = "strength.sag"
    assert found(DRAWER.format(width=36, bottom="thin", load="tools"), code)
    assert not found(DRAWER.format(width=36, bottom="half", load="tools"), code)
    assert not found(DRAWER.format(width=36, bottom="thin", load="clothes"), code)
    assert not found(DRAWER.format(width=12, bottom="thin", load="tools"), code)


def test_a_panel_under_a_drawer_on_bars_carries_nothing() -> None:
    assert "case.bottom" not in margins(
        DRAWER.format(width=36, bottom="half", load="clothes"), "strength.sag"
    )


def test_bending_and_its_remedy() -> None:
    # 30 in clear, 12 x 3/4 in: M = W L/8; allowed 33.7 (1 - 1.645 x 0.16)/2.1 = 11.82 N/mm2
    S = 304.8 * 19.05**2 / 6
    W = 33.7 * (1 - 1.645 * 0.16) / 2.1 * 8 * S / (30 * 25.4)
    most = int(
        (W / 762 / 304.8 - own(600, 19.05)) * 30.5 * 25.4 * 304.8 / 9.81 / LB
    )  # 1/4 in of it in each dado
    code = "strength.bending"
    assert not found(shelves("31 1/2", loads=f"shelves: {most - 3}"), code)
    (finding,) = found(shelves("31 1/2", loads=f"shelves: {most + 5}"), code)
    assert finding.severity is Severity.WARNING
    (worse,) = found(shelves("31 1/2", loads=f"shelves: {3 * most}"), code)
    assert worse.severity is Severity.ERROR


def test_a_dado_across_the_middle_weakens_it() -> None:
    text = """
parts:
  left: {{stock: oak, length: 12, width: 12, along: z, across: y, at: [0, 0, 0]}}
  right: {{stock: oak, length: 12, width: 12, along: z, across: y, at: [43.25, 0, 0]}}
  shelf: {{stock: oak, length: 44, width: 12, along: x, across: y, at: [0, 0, 12]{cuts}}}
joints:
  - {{kind: butt, first: shelf, second: left}}
  - {{kind: butt, first: shelf, second: right}}
loads: {{top: 100}}
"""
    cut = ", cuts: [{kind: groove, side: face, along: width, at: 21 5/8, width: 3/4, depth: 3/8}]"
    whole = margins(text.format(cuts=""), "strength.bending")["parts.shelf"][0]
    weak = margins(text.format(cuts=cut), "strength.bending")["parts.shelf"][0]
    assert weak == pytest.approx(
        4 * whole, rel=1e-3
    )  # half of the thickness: a quarter of the section modulus


def test_shear_of_a_short_shelf() -> None:
    assert found(shelves("8", "oak", loads="shelves: 20000"), "strength.shear")
    assert not found(shelves("8", "oak", loads="shelves: 2000"), "strength.shear")


def test_screws_that_carry_a_shelf() -> None:
    on_screws = ", joint: {kind: butt, fasten: screws, count: 2}"
    code = "strength.screws"

    def oak(load: int, joint: str = on_screws) -> str:
        return shelves("24", "oak", joint, f"shelves: {load}").replace("stock: ply\n", "stock: oak\n")

    # No. 6, 0.138 in: 44.13 x 3.505^2 / 1.6 x 0.67 = 227 N a screw in end grain of oak (0.63); 3/4 in of it are in
    # the shelf, which wants 7 diameters: 0.776. The shelf weighs about 7 lb itself.
    load = 2 * 2 * 44.13 * 3.505**2 / 1.6 * 0.67 * 0.75 / (7 * 0.138) / 9.81 / LB - 7
    assert not found(oak(int(load * 0.9)), code)
    (finding,) = found(oak(int(load * 1.1)), code)
    count = int(re.search(r"use (\d+) screws", finding.remedy)[1])  # type: ignore[index]
    assert not found(oak(int(load * 1.1), on_screws.replace("count: 2", f"count: {count}")), code)
    assert not found(oak(int(load * 1.1), ", joint: dado"), code)


CABINET = """
case:
  width: 16
  height: 20
  depth: {depth}
  stock: half
  back: {{stock: thin}}
  inside:
    drawers: {{count: {count}}}
drawers:
  front: {{set: overlay}}
  sides: {{stock: half}}
  bottom: {{stock: thin}}
  runs_on: slides
"""


def test_drawers_open_tip_a_light_case() -> None:
    code = "stability.tips"
    (finding,) = found(CABINET.format(depth=14, count=3), code)
    assert "no more than 2 of 3" in finding.remedy
    on_bars = (
        CABINET.format(depth=14, count=3).replace("slides", "bars").replace("{set: overlay}", "{set: inset}")
    )
    assert not found(on_bars, code)  # bars leave a third of the drawer in the case


def test_the_feet_that_are_advised_keep_it_standing() -> None:
    from boardwright.checks.margins import site_of
    from boardwright.checks.tipping import moment

    c = site(CABINET.format(depth=14, count=3))
    w = site_of(c).weighed
    assert w is not None
    everything = frozenset(m.id for m in c.piece.motions)
    (finding,) = [f for f in check(c) if f.code == "stability.tips"]
    text = re.search(r"feet (?:(\d+) )?(?:(\d+)/(\d+) )?in forward", finding.remedy)
    assert text is not None
    inches = int(text[1] or 0) + (int(text[2]) / int(text[3]) if text[2] else 0)
    from dataclasses import replace

    def stands(forward: float) -> bool:
        moved = replace(w, foot=w.foot - forward)
        return all(moment(moved, full, everything) >= 0 for full in (False, True))

    assert stands(inches * 25.4)
    assert not stands(inches * 25.4 - 1.0)


def test_a_piece_on_the_wall_does_not_tip() -> None:
    hung = """
case: {width: 24, height: 32, depth: 10, stock: ply, back: {stock: thin}, WALL inside: {shelves: {count: 1}}}
"""
    assert found(hung.replace("WALL", ""), "stability.anchor")
    assert not found(hung.replace("WALL", "wall_cleat: {},"), "stability.anchor")


def test_a_tall_piece_is_anchored() -> None:
    assert found(shelves("24").replace("height: 24", "height: 30 1/4"), "stability.anchor")
    assert not found(shelves("24").replace("height: 24", "height: 30"), "stability.anchor")


def test_a_piece_that_tips_is_told_once_to_be_anchored() -> None:
    text = CHEST.format(height=36, depth=18, load="clothes")
    (finding,) = found(text, "stability.clothing-rule")
    assert "anchor it to the wall" in finding.remedy
    assert not found(text, "stability.anchor")
    assert found(CHEST.format(height=36, depth=18, load="5"), "stability.anchor")


CHEST = """
case:
  width: 32
  height: {height}
  depth: {depth}
  stock: oak
  bottom: {{up: 3}}
  back: {{stock: thin}}
  inside:
    drawers: {{count: 4}}
drawers:
  sides: {{stock: maple}}
  bottom: {{stock: thin}}
loads: {{drawers: {load}}}
"""


def test_the_clothing_rule_by_scope_and_load() -> None:
    code = "stability.clothing-rule"
    (finding,) = found(CHEST.format(height=36, depth=18, load="clothes"), code)
    assert finding.severity is Severity.WARNING
    assert "16 CFR 1261" in finding.source
    assert "no certification" in finding.source
    assert not found(CHEST.format(height=36, depth=18, load="tools"), code)  # no clothing storage
    assert not found(CHEST.format(height="26 7/8", depth=18, load="clothes"), code)  # under 27 in
    unsaid = CHEST.format(height=36, depth=18, load="clothes").replace("loads: {drawers: clothes}\n", "")
    assert [f.severity for f in found(unsaid, code)] == [Severity.NOTE]


def test_nothing_is_called_safe() -> None:
    for text in (
        CHEST.format(height=36, depth=18, load="clothes"),
        CABINET.format(depth=14, count=3),
        shelves("44"),
    ):
        for f in check(site(text)):
            assert not re.search(r"\b(un)?safe", f.text())


def test_one_person_lifts_less_than_two() -> None:
    code = "weight.lift"
    assert [f.severity for f in found(shelves("36", loads="lifts: one person"), code)] == [Severity.WARNING]
    assert not found(shelves("36", loads="lifts: two persons"), code)


def test_a_load_that_is_no_load_is_refused() -> None:
    for value in ("bricks", "-3", "0", "true"):
        result = check_text(STOCK + shelves("24", loads=f"shelves: {value}"))
        assert [f.code for f in result.findings] == ["file.wrong-value"], value


def test_pounds_and_kilograms() -> None:
    inches = site(shelves("24", loads="shelves: 100"))
    assert inches.loads.shelves == pytest.approx(45.359237)
    result = check_text(STOCK + shelves("24", loads="shelves: 100"), units="mm")
    assert result.design is not None
    assert loads_of(result.design).shelves == pytest.approx(45.359237)  # the file is in inches


def test_what_passes_is_listed_with_its_margin() -> None:
    c = site(CHEST.format(height=36, depth=18, load="clothes"))
    margins = passed(c)
    assert {"strength.sag", "strength.bending", "stability.tips"} <= {m.check for m in margins}
    assert all(m.kept and m.unit for m in margins)
    codes = {f.code for f in check(c)}
    assert "stability.clothing-rule" in codes


def test_it_is_quick() -> None:
    c = site(CHEST.format(height=36, depth=18, load="clothes"))
    list(check(c))
    best = min(_time(c) for _ in range(5))
    assert best < 0.03  # 10 ms for 33 parts, with remedies tried


def _time(c: Context) -> float:
    start = time.process_time()
    list(check(c))
    return time.process_time() - start


RAILS = """
parts:
  {posts}
  front: {{stock: oak, length: 58 1/2, width: {high}, along: x, across: z, at: [3/4, 0, 24 - {high}]}}
  rear: {{stock: oak, length: 58 1/2, width: {high}, along: x, across: z, at: [3/4, 11 1/4, 24 - {high}]}}
  top: {{stock: ply, length: 58 1/2, width: 12, along: x, across: y, at: [3/4, 0, 24]}}
joints:
  - {{kind: butt, first: left, second: front, fasten: none}}
  - {{kind: butt, first: right, second: front, fasten: none}}
  - {{kind: butt, first: left, second: rear, fasten: none}}
  - {{kind: butt, first: right, second: rear, fasten: none}}
  - {{kind: butt, first: front, second: top, fasten: none}}
  - {{kind: butt, first: rear, second: top, fasten: none}}
loads: {{top: 200}}
"""
POSTS = """left: {stock: oak, length: 24, width: 12, along: z, across: y, at: [0, 0, 0]}
  right: {stock: oak, length: 24, width: 12, along: z, across: y, at: [59 1/4, 0, 0]}"""


def test_the_rails_under_a_top_sag_too() -> None:
    # 200 lb, half on each rail 58 1/2 long: 5 x 100 x 58.5^3/(384 x 1.82e6 x 0.75 h^3/12): 3/4 in high 5.4 in,
    # 3 in high 0.085 in, 0.136 in ten years; a 384th is 0.152
    (finding,) = found(RAILS.format(posts=POSTS, high="3/4"), "strength.sag")
    assert finding.parts[0] == "parts.top"
    assert finding.parts[1] in ("parts.front", "parts.rear")
    assert not found(RAILS.format(posts=POSTS, high="3 1/4"), "strength.sag")


def test_a_cleat_along_an_apron_does_not_sag_alone() -> None:
    table = """
table:
  width: 42
  depth: 15
  height: 31
  aprons: {drawers: {count: 2}}
"""
    legs = STOCK.replace("  maple:", "  leg: {wood: oak_red_northern, thickness: 1 3/4}\n  maple:")
    result = check_text(legs.replace("  ply: {", "  zply: {").replace("thin: {", "ply: {") + table)
    assert not [f for f in result.findings if f.code == "strength.sag"]


def test_a_low_case_that_tips_is_a_note_and_a_tall_one_a_warning() -> None:
    low = found(CABINET.format(depth=14, count=3), "stability.tips")
    tall = found(CABINET.format(depth=14, count=3).replace("height: 20", "height: 28"), "stability.tips")
    assert [f.severity for f in low] == [Severity.NOTE]
    assert [f.severity for f in tall] == [Severity.WARNING]


@pytest.mark.parametrize(("wide", "fires"), [(6, False), (2, True)])
def test_a_top_that_stands_over_is_held_as_far_as_it_is_held(wide: int, fires: bool) -> None:
    # A top 20 in wide on rails that stand 9 1/2 in over all: blocks between them hold it the other way too when they
    # take up half of those, not half of the top.
    text = f"""
parts:
  front: {{stock: thick_oak, length: 40, width: 6, along: x, across: z, at: [2, 1, 0]}}
  rear: {{stock: thick_oak, length: 40, width: 6, along: x, across: z, at: [2, 9, 0]}}
  left: {{stock: thick_oak, length: 6, width: {wide}, along: z, across: y, at: [12, 3, 0]}}
  right: {{stock: thick_oak, length: 6, width: {wide}, along: z, across: y, at: [30, 3, 0]}}
  top: {{stock: oak, length: 44, width: 20, along: x, across: y, at: [0, 0, 6]}}
joints:
  - {{kind: butt, first: front, second: top, fasten: none}}
  - {{kind: butt, first: rear, second: top, fasten: none}}
  - {{kind: butt, first: left, second: top, fasten: none}}
  - {{kind: butt, first: right, second: top, fasten: none}}
"""
    from boardwright.checks.held import panels

    (panel,) = [p for p in panels(site(text)) if p.part.id == "parts.top"]
    assert (len(panel.spans) == 1) is fires


@pytest.mark.parametrize(("load", "fires"), [(60, False), (6000, True)])
def test_a_top_on_buttons_lies_on_its_aprons(load: int, fires: bool) -> None:
    legs = STOCK.replace("  maple:", "  leg: {wood: oak_red_northern, thickness: 1 3/4}\n  maple:")
    text = f"""
table: {{width: 60, depth: 24, height: 29, stock: oak, legs: {{stock: leg}}}}
loads: {{top: {load}}}
"""
    result = check_text(legs + text)
    assert result.piece is not None, result.findings
    codes = {f.code for f in result.findings}
    checked = codes | {m.check for m in result.passed if m.parts == ("table.top",)}
    assert "strength.sag" in checked
    assert bool(codes & {"strength.sag", "strength.bending"}) is fires
