"""Machines, clamps and glue: a design that fires, its near twin that does not, and remedies that are tried."""

import re
from itertools import pairwise

import pytest

from boardwright.checks.context import Context, context
from boardwright.checks.making.open_time import glue_ups, stages
from boardwright.checks.shop import shop_of
from boardwright.checks.workshop import look
from boardwright.core.findings import Finding, Severity
from boardwright.pipeline import check_text
from boardwright.solids.dry_fit import DryFit

HEAD = """
boardwright: 1
title: Making
units: in
stock:
  oak: {wood: oak_white, thickness: THICK}
  ply: {sheet: hardwood_plywood, thickness: 3/4, measured: 3/4}
"""
PART = (
    HEAD + "parts:\n  one: {stock: oak, length: LONG, width: WIDE, along: x, across: y, at: [0, 0, 0]CUTS}\n"
)
GROOVE = ", cuts: [{kind: groove, side: face, along: ALONG, at: 1/2, width: 1/4, depth: 1/4}]"


def part(long: str = "24", wide: str = "5", thick: str = "3/4", cuts: str = "", shop: str = "") -> str:
    text = PART.replace("LONG", long).replace("WIDE", wide).replace("THICK", thick).replace("CUTS", cuts)
    return text + (f"shop: {shop}\n" if shop else "")


def site(text: str) -> Context:
    result = check_text(text)
    assert result.piece is not None, result.findings
    assert result.design is not None
    return context(
        result.piece, DryFit((), (), ()), result.tables, shop=shop_of(result.design, result.tables)
    )


def fired(text: str, code: str) -> list[Finding]:
    return [f for f in look(site(text))[0] if f.code == code]


def test_a_plain_part_has_nothing_to_say():
    findings, kept = look(site(part()))
    assert findings == []
    assert {m.check for m in kept} >= {
        "making.thin",
        "making.short",
        "making.narrow",
        "making.wide-for-planer",
    }


TWINS = [
    ("making.thin", {"thick": "7/32"}, {"thick": "1/4"}),
    ("making.short", {"long": "5 31/32"}, {"long": "6"}),
    ("making.narrow", {"wide": "1 31/32"}, {"wide": "2"}),
    (
        "making.small-at-router",
        {"long": "11 31/32", "cuts": GROOVE.replace("ALONG", "length")},
        {"long": "12", "cuts": GROOVE.replace("ALONG", "length")},
    ),
    (
        "making.small-at-router",
        {"wide": "2 31/32", "cuts": GROOVE.replace("ALONG", "width")},
        {"wide": "3", "cuts": GROOVE.replace("ALONG", "width")},
    ),
    ("making.small-at-router", {"long": "9", "cuts": GROOVE.replace("ALONG", "length")}, {"long": "9"}),
    ("making.wide-for-jointer", {"wide": "7", "shop": "{machines: {jointer_width: 6}}"}, {"wide": "7"}),
    ("making.wide-for-planer", {"wide": "13 1/32"}, {"wide": "13"}),
    ("making.wide-for-saw", {"wide": "30 1/32"}, {"wide": "30"}),
    ("making.thick-for-saw", {"thick": "3 1/4"}, {"thick": "3 1/8"}),
    (
        "making.long-for-clamps",
        {"wide": "24", "shop": "{clamps: [{length: 24 15/32, count: 12}]}"},
        {"wide": "24", "shop": "{clamps: [{length: 24 1/2, count: 12}]}"},
    ),
    (
        "making.few-clamps",
        {"long": "60", "wide": "20", "shop": "{clamps: [{length: 36, count: 8}]}"},
        {"long": "60", "wide": "20", "shop": "{clamps: [{length: 36, count: 9}]}"},
    ),
]


@pytest.mark.parametrize(("code", "fires", "silent"), TWINS)
def test_it_fires_and_its_twin_does_not(code, fires, silent):
    assert fired(part(**fires), code)
    assert not fired(part(**silent), code)


def test_a_limit_of_the_file_warns_and_an_assumed_one_is_a_note():
    (note,) = fired(part(wide="16"), "making.wide-for-planer")
    (warning,) = fired(part(wide="16", shop="{machines: {planer_width: 15}}"), "making.wide-for-planer")
    assert (note.severity, warning.severity) == (Severity.NOTE, Severity.WARNING)
    assert not fired(part(wide="16", shop="{machines: {planer_width: 20}}"), "making.wide-for-planer")


def test_nothing_says_that_an_operation_is_safe_and_the_manual_comes_first():
    texts = [f.text() for code, fires, _ in TWINS for f in fired(part(**fires), code)]
    assert not any(re.search(r"\bsafe", t) for t in texts)
    assert all("manual comes first" in t for t in texts if "clamps" not in t)


def test_strips_as_narrow_as_advised_go_over_the_jointer():
    shop = "{machines: {jointer_width: 6}STRIP}"
    (found,) = fired(part(wide="8", shop=shop.replace("STRIP", "")), "making.wide-for-jointer")
    strip = re.search(r"strips (\S+) in wide or less", found.remedy)[1]
    assert not fired(
        part(wide="8", shop=shop.replace("STRIP", f", strip_max: {strip}")), "making.wide-for-jointer"
    )


def test_as_many_clamps_as_advised_are_enough():
    shop = "{clamps: [{length: 36, count: COUNT}]}"
    (found,) = fired(part(long="60", wide="20", shop=shop.replace("COUNT", "4")), "making.few-clamps")
    count = re.search(r"have (\d+) clamps", found.remedy)[1]
    assert not fired(part(long="60", wide="20", shop=shop.replace("COUNT", count)), "making.few-clamps")


CASE = (
    HEAD.replace("THICK", "3/4")
    + """
case:
  width: 30
  height: 48
  depth: 12
  stock: ply
  back: {set: none}
  inside:
    shelves: {count: COUNT}
"""
)


def test_more_joints_than_the_glue_gives_time_for():
    # Three cross parts: 6 joints, 6 min, 4 clamps at 0.75 min: 9 of 10 min. Two more: 10 joints, 5 clamps: 13.75 min.
    assert not fired(CASE.replace("COUNT", "1"), "making.open-time")
    (found,) = fired(CASE.replace("COUNT", "3"), "making.open-time")
    assert found.severity is Severity.NOTE
    assert "13.8 min" in found.found
    assert "2 goes" in found.remedy


def test_a_glue_as_slow_as_advised_is_enough():
    text = CASE.replace("COUNT", "3")
    (found,) = fired(text, "making.open-time")
    assert "polyurethane" in found.remedy
    assert not fired(text + "shop: {glue: polyurethane}\n", "making.open-time")
    least = re.search(r"gives (\d+) min or more", found.remedy)[1]
    assert not fired(text + f"shop: {{glue_times: {{open: {least}}}}}\n", "making.open-time")


def test_one_step_that_takes_too_long_is_a_warning():
    (found,) = fired(CASE.replace("COUNT", "12"), "making.open-time")
    assert found.severity is Severity.WARNING
    assert "goes" not in found.remedy


def test_a_part_too_small_in_three_ways_is_told_once():
    text = part(long="4", wide="1", thick="3/16")
    (found,) = (f for f in look(site(text))[0] if f.code.startswith("making."))
    assert found.code == "making.short"
    assert found.found == "4 in long, 1 in wide, 3/16 in thick"
    assert "carrier board" in found.remedy


def test_a_wide_part_runs_along_the_rip_fence():
    assert fired(part(long="5", wide="11 31/32"), "making.short")
    assert not fired(part(long="5", wide="12"), "making.short")


def test_panels_too_wide_for_the_clamps_are_told_together():
    text = part(wide="24", shop="{clamps: [{length: 20, count: 12}]}")
    two = text.replace(
        "parts:\n", "parts:\n  two: {stock: oak, length: 30, width: 26, along: x, across: y, at: [0, 0, 5]}\n"
    )
    (found,) = fired(two, "making.long-for-clamps")
    assert found.parts == ("parts.two", "parts.one")
    wide = re.search(r"2 pieces of it, (\d+) (\d+)/(\d+) in wide", found.remedy)
    assert int(wide[1]) + int(wide[2]) / int(wide[3]) <= 20


MITRED = (
    HEAD.replace("THICK", "3/4")
    + """
case:
  width: 24
  height: 24
  depth: 12
  stock: ply
  back: {set: none}
  inside:
    door: {frame: {joint: {kind: mitre, with: keys, count: 3}, stock: oak, panel: {kind: flat, stock: ply}}}
shop: {glue_times: {open: 10}}
"""
)


def test_keys_do_not_count_in_a_glue_up():
    found = glue_ups(site(MITRED))
    assert found
    assert not any(".key" in id for up in found for step in up.steps for id in step.adds)


def test_every_go_of_a_split_keeps_the_time_and_no_two_of_them_could_be_one():
    c = site(CASE.replace("COUNT", "1"))
    joints = [1, 1, 2, 3, 1, 5, 1, 1, 4, 2]
    split = stages(c, joints, 10.0)
    assert [n for go in split for n in go] == list(range(len(joints)))
    sums = [sum(joints[n] for n in go) for go in split]
    assert all(s * 1.0 + max(4, -(-s // 2)) * 0.75 <= 10 for s in sums)
    for one, two in pairwise(split):
        more = sum(joints[n] for n in one) + joints[two[0]]
        assert more * 1.0 + max(4, -(-more // 2)) * 0.75 > 10


def test_a_panel_of_any_width_is_told_in_how_many_pieces_it_goes() -> None:
    """Clamps take 48 in, a glue-up is 1/2 in wider than its panel: 100000 / 47 1/2 = 2105.3, so 2106."""
    text = """
boardwright: 1
title: Rack
units: in
stock: {pine: {wood: pine_sugar, thickness: 3/4}}
parts:
  shelf: {stock: pine, length: 30, width: 100000, along: x, across: y, at: [0, 0, 0]}
"""
    [found] = [f for f in check_text(text).findings if f.code == "making.long-for-clamps"]
    assert "2106 pieces" in found.remedy
