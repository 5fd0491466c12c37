"""Fits in the shop: simulation against closed forms, a design that fires, its near twin, remedies that are tried."""

import re

import numpy as np
import pytest
from scipy.stats import norm

from boardwright.checks.context import Context, context
from boardwright.checks.shop import Shop, shop_of
from boardwright.checks.tolerance import mitres
from boardwright.checks.tolerance.builds import BUILDS, Gap, least
from boardwright.checks.tolerance.fits import Fit
from boardwright.checks.tolerance.shop_fits import all_fits, measure
from boardwright.core.findings import Finding, Severity
from boardwright.pipeline import check_text
from boardwright.solids.dry_fit import DryFit

IN = 25.4

STOCK = """
boardwright: 1
title: Fits
units: in
work_to: 1/64
wood_moisture: {now: 8, driest: 8, wettest: 8}
stock:
  ply: {sheet: hardwood_plywood, thickness: 3/4, measured: 3/4}
  half: {sheet: hardwood_plywood, thickness: 1/2, measured: 1/2}
  quarter: {sheet: hardwood_plywood, thickness: 1/4, measured: 1/4}
  oak: {wood: oak_red_northern, thickness: 3/4}
"""
CHEST = """
case:
  width: 24
  height: 10
  depth: 16
  stock: ply
  inside:
    drawer: {front: {made: applied, stock: ply}, runs_on: RUNS, side_clearance: SIDE}
drawers: {sides: {stock: half}, bottom: {stock: quarter}}
"""


def site(text: str) -> Context:
    result = check_text(STOCK + text)
    assert result.piece is not None, result.findings
    assert result.design is not None
    return context(
        result.piece, DryFit((), (), ()), result.tables, shop=shop_of(result.design, result.tables)
    )


def fired(text: str, code: str) -> list[Finding]:
    c = site(text)
    both = [*measure(c), *mitres.measure(c)]
    return [m.tell() for m in both if m.tell and not m.kept and m.check == code]


def fit_of(text: str, code: str, words: str = "") -> Fit:
    return next(f for f in all_fits(site(text)) if f.check == code and words in f.name)


def shop(**precision: float) -> Shop:
    return Shop({"square": 0.0, **precision})


def test_the_simulated_share_is_the_normal_one():
    # Sum of independent normal errors: normal, variance the sum of variances (JCGM 100:2008, eq. 10 and G.2).
    s = shop(rip=0.4, crosscut=0.3, thickness=0.1)
    g = Gap(
        0.3,
        0.0,
        0.0,
        ((("rip", "", 1.0), 1.0), (("crosscut", "", 2.0), 1.0), (("thickness", "a", 3.0), -2.0)),
        (),
    )
    sigma = np.sqrt(0.4**2 + 0.3**2 + 0.2**2) / 3
    exact = norm.cdf(-0.3 / sigma)
    share = np.mean(least((g,), "wet", s.exact) < 0)
    assert share == pytest.approx(exact, abs=4 * np.sqrt(exact * (1 - exact) / BUILDS))
    assert g.likely(s) == pytest.approx(3 * sigma)
    assert g.worst(s) == pytest.approx(0.4 + 0.3 + 0.2)


def test_sizes_cut_at_one_setting_are_out_together():
    s = shop(rip=0.4)
    four = Gap(0.5, 0.0, 0.0, ((("rip", "", 57.0), -4.0),), ())
    exact = norm.cdf(-0.5 / (4 * 0.4 / 3))
    share = np.mean(least((four,), "wet", s.exact) < 0)
    assert share == pytest.approx(exact, abs=4 * np.sqrt(exact * (1 - exact) / BUILDS))
    assert four.likely(s) == four.worst(s)


def test_the_tighter_of_two_ends_counts():
    # A gap that tapers by T, normal with deviation t: its least is size - |T| / 2; the share below 0 is
    # 2 (1 - F(2 size / t)).
    s = Shop({"square": 0.001, "crosscut": 0.0})
    g = Gap(0.2, 0.0, 0.0, ((("crosscut", "", 9.0), 1.0),), ((("crosscut", "", 9.0), 600.0),))
    exact = 2 * norm.sf(2 * 0.2 / (600 * 0.001 / 3))
    share = np.mean(least((g,), "wet", s.exact) < 0)
    assert share == pytest.approx(exact, abs=4 * np.sqrt(exact * (1 - exact) / BUILDS))


def test_the_same_builds_on_every_run():
    text = CHEST.replace("RUNS", "runners").replace("SIDE", "1/64")
    one, two = ([m.value for m in measure(site(text))] for _ in range(2))
    assert one == two


def test_the_chain_of_a_drawer_in_its_case():
    # Opening: the crosscut of the bottom less the depths of its two dados; box: both sides, less the depths of their
    # two rabbets or dados, and the crosscut of what stands between them. Written out from the joints of the chest.
    text = CHEST.replace("RUNS", "runners").replace("SIDE", "1/64")
    fit = fit_of(text, "tolerance.drawer", "width")
    kinds = [sorted(s[0] for s, n in g.errors for _ in range(round(abs(n)))) for g in fit.gaps]
    assert sorted(["crosscut"] * 2 + ["groove_depth"] * 4 + ["thickness"] * 2) in kinds
    g = fit.gaps[0]
    s = site(text).shop
    likely = IN * np.sqrt((1 + 1 + 2**2 + 2**2) / 64**2 + 2 * 0.005**2)
    assert g.likely(s) == pytest.approx(likely)
    assert g.worst(s) > IN * (6 / 64 + 2 * 0.005)


ROUGH = "shop: {precision: {crosscut: 1/16}}\n"


PRECISE = "shop: {precision: {crosscut: 0.004, groove_depth: 0.004, square: 0.001}}\n"


def test_a_drawer_on_runners():
    # 1/32 in at both sides together is what a drawer fitted by hand has: cut to a list it binds now and then.
    text = CHEST.replace("RUNS", "runners").replace("SIDE", "1/64")
    found = fired(text, "tolerance.drawer")
    assert any("binds" in f.message and f.severity is Severity.NOTE for f in found)
    assert "as measured" in found[0].remedy
    assert not fired(text + PRECISE, "tolerance.drawer")


def test_the_clearance_advised_for_a_drawer_is_enough():
    text = CHEST.replace("RUNS", "bars") + ROUGH
    (found,) = (f for f in fired(text.replace("SIDE", "1/64"), "tolerance.drawer") if "width" in f.message)
    assert found.severity is Severity.WARNING
    side = re.search(r"leave (\S+) in at each side", found.remedy)[1]
    assert not fired(text.replace("SIDE", side), "tolerance.drawer")


def test_slides_bind_by_their_thickness_and_rattle_by_their_room():
    text = CHEST.replace("RUNS", "slides").replace("depth: 16", "depth: 18")
    planned = {
        side: fit_of(text.replace("SIDE", side), "tolerance.drawer", "width") for side in ("1/2", "33/64")
    }
    for fit in planned.values():
        assert fit.binds_under == pytest.approx(2 * 12.7)
        assert fit.rattles_over == pytest.approx(2 * 12.7 + IN / 16)
    assert any("binds" in f.message for f in fired(text.replace("SIDE", "1/2"), "tolerance.drawer"))


def test_fits_of_one_kind_are_told_together():
    # Every drawer of the case, in width and in height, in one finding; the margins name the worst.
    text = CHEST.replace("RUNS", "bars").replace("SIDE", "1/64") + ROUGH
    text = text.replace("\n    drawer: {", "\n    drawers: {count: 2, drawer: {").replace("1/64}", "1/64}}")
    (found,) = fired(text, "tolerance.drawer")
    assert "(and 1 alike)" in found.message
    margins = [m for m in measure(site(text)) if m.check == "tolerance.drawer"]
    assert len(margins) == 2
    assert [m.tell is not None for m in margins if not m.kept] == [True]


DOORS = """
case:
  width: 24
  height: 24
  depth: 12
  stock: ply
  inside:
    doors: {made: slab, stock: ply, gap: GAP}
"""


def test_doors():
    assert not fired(DOORS.replace("GAP", "1/32"), "tolerance.door")
    assert fired(DOORS.replace("GAP", "1/32") + ROUGH, "tolerance.door")


def test_the_gap_advised_for_doors_is_enough():
    found = fired(DOORS.replace("GAP", "1/32") + ROUGH, "tolerance.door")
    wide = max(re.search(r"leave (\S+) in at each gap", f.remedy)[1] for f in found)
    assert not fired(DOORS.replace("GAP", wide) + ROUGH, "tolerance.door")


SHELF = """
case:
  width: 24
  height: 24
  depth: 12
  stock: ply
  inside:
    shelves: {count: 1, kind: pins, clearance: ROOM}
"""


def test_loose_shelves():
    assert not fired(SHELF.replace("ROOM", "1/32"), "tolerance.shelf")
    assert fired(SHELF.replace("ROOM", "1/32") + ROUGH, "tolerance.shelf")


def test_the_room_advised_for_a_shelf_is_enough():
    (found,) = fired(SHELF.replace("ROOM", "1/32") + ROUGH, "tolerance.shelf")
    room = re.search(r"leave (\S+) in at each end", found.remedy)[1]
    assert not fired(SHELF.replace("ROOM", room) + ROUGH, "tolerance.shelf")


def test_dados():
    text = CHEST.replace("RUNS", "runners").replace("SIDE", "3/128")
    assert not fired(text, "tolerance.joint")
    tight = fired(text + "shop: {joint_play: 0}\n", "tolerance.joint")
    assert tight
    assert all("is too tight" in f.message for f in tight)
    play = re.search(r"cut the channel (?:about )?(\S+) in wider", tight[0].remedy)[1]
    assert not fired(text + f"shop: {{joint_play: {play}}}\n", "tolerance.joint")
    loose = fired(text + "shop: {joint_play: 0.0115}\n", "tolerance.joint")
    assert loose
    assert all("stands loose" in f.message for f in loose)


def test_half_of_the_dados_bind_where_no_play_is_planned():
    # A gap that is planned as nothing is as often below nothing as over it.
    c = site(CHEST.replace("RUNS", "runners").replace("SIDE", "3/128") + "shop: {joint_play: 0}\n")
    shares = [m.value for m in measure(c) if m.check == "tolerance.joint" and "too tight" in m.what]
    assert shares
    for share in shares:
        assert share == pytest.approx(0.5, abs=4 * 0.5 / BUILDS**0.5)


MITRED = """
case:
  width: 24
  height: 24
  depth: 12
  stock: ply
  inside:
    door: {frame: {joint: {kind: mitre, with: keys}, stock: oak, panel: {kind: flat, stock: quarter}}}
shop: {precision: {square: SQUARE}}
"""


def test_a_mitred_frame():
    # 8 cuts at one setting; the last corner opens by its length times the sine of 8 errors.
    assert not fired(MITRED.replace("SQUARE", "0.005"), "tolerance.mitre")
    (found,) = fired(MITRED.replace("SQUARE", "0.02"), "tolerance.mitre")
    assert "8 cuts" in found.found
    need = float(re.search(r"±(\S+)° or better", found.remedy)[1])
    enough = np.tan(np.radians(need)) * 12
    assert not fired(MITRED.replace("SQUARE", f"{enough - 1e-4:.4f}"), "tolerance.mitre")
    assert fired(MITRED.replace("SQUARE", f"{enough + 3e-4:.4f}"), "tolerance.mitre")
