"""Figures of movement beside sums by hand.

Northern red oak, flatsawn: 0.00369 of its width for each 1 % of moisture (Wood Handbook FPL-GTR-190, table 13-5);
lengthwise 0.00006 (0.1 to 0.2 % from green to ovendry, trade figure).
"""

import pytest

from boardwright.checks.margins import Margin
from boardwright.pipeline import check_text

IN = 25.4
OAK, LENGTH = 0.00369, 0.00006
HEAD = """
boardwright: 1
title: Trial
units: in
wood_moisture: {now: %g, driest: %g, wettest: %g}
stock:
  oak: {wood: oak_red_northern, thickness: 3/4}
  thin: {wood: oak_red_northern, thickness: 1/4}
parts:
"""


def margins(code: str, text: str) -> list[Margin]:
    return [m for m in check_text(text).passed if m.check == code]


def test_a_mitre_opens_by_half_of_what_both_members_lose() -> None:
    """A case from practice: members 1 1/2 in wide, cut at 9 %, dried to 6 %, open by 0.023 in."""
    text = HEAD % (9, 6, 9) + (
        "  post: {stock: oak, length: 24, width: 1 1/2, along: z, across: x, at: [0, 0, 0]}\n"
        "  head: {stock: oak, length: 20, width: 1 1/2, along: x, across: z, at: [0, 0, 22 1/2]}\n"
        "joints:\n  - {first: post, second: head, kind: mitre}\n"
    )
    [mitre] = margins("wood.mitre-opens", text)
    assert mitre.value / IN == pytest.approx(0.023, abs=0.0006)


def test_a_breadboard_end_stands_out_by_half_of_what_the_top_loses() -> None:
    text = HEAD % (8, 7.5, 8) + (
        "  end: {stock: oak, length: 24, width: 3, along: y, across: x, at: [0, 0, 0]}\n"
        "  top: {stock: oak, length: 40, width: 24, along: x, across: y, at: [3, 0, 0]}\n"
        "joints:\n  - {first: end, second: top, kind: breadboard}\n"
    )
    [step] = margins("wood.breadboard-proud", text)
    assert step.value / IN == pytest.approx(24 * (OAK - LENGTH) * 0.5 / 2, rel=1e-6)


def test_a_panel_closes_its_room_by_half_its_width() -> None:
    """The bottom of the groove lies 5/8 in from the middle of its stile and comes to meet the panel."""
    text = HEAD % (8, 6, 10) + (
        "  stile: {stock: oak, length: 20, width: 2, along: z, across: x, at: [0, 0, 0], cuts: [{kind: groove, "
        "side: far_edge, along: length, at: 1/4, width: 1/4, depth: 3/8}]}\n"
        "  panel: {stock: thin, length: 20, width: 10, along: z, across: x, at: [1 3/4, 1/4, 0]}\n"
    )
    [room] = margins("wood.panel-bottoms", text)
    assert room.value / IN == pytest.approx(1 / 8 - 2 * OAK * (5 + 5 / 8), abs=1e-4)
    [held] = margins("wood.panel-leaves", text)
    # 1/4 in is held from the mouth, 1 in from the middle of the stile
    assert held.value / IN == pytest.approx(1 / 4 - 2 * OAK * (5 + 1), abs=1e-4)


def test_a_glue_line_parts_by_the_difference_of_both() -> None:
    text = HEAD % (8, 7, 9) + (
        "  board: {stock: oak, length: 18, width: 5, along: x, across: y, at: [0, 0, 0]}\n"
        "  batten: {stock: oak, length: 5, width: 1, along: y, across: x, at: [2, 0, 3/4]}\n"
        "joints:\n  - {first: board, second: batten, kind: butt, fasten: none}\n"
    )
    [line] = margins("wood.cross-grain", text)
    assert line.value / IN == pytest.approx(5 * (OAK - LENGTH) * 2, rel=1e-6)


def test_the_lid_of_a_bare_board_cups() -> None:
    """Case from practice: maple 22 in wide and 3/4 in thick, 0.00353, 1 % between the faces: 0.28 in."""
    text = """
boardwright: 1
title: Chest
units: in
stock:
  maple: {wood: maple_sugar, thickness: 3/4}
  ply: {sheet: hardwood_plywood, thickness: 1/4, measured: 0.2}
case:
  {width: 36, height: 20, depth: 21 1/2, stock: maple, top: {lid: {ends: none, overhang: 1/2}}, inside: {open: true}}
"""
    [cup] = [f for f in check_text(text).findings if f.code == "wood.lid-cups"]
    assert "about 0.28" in cup.found
