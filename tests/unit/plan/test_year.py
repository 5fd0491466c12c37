"""The chart of the year beside sums by hand.

Northern red oak, flatsawn: 0.00369 of its width for each 1 % of moisture (Wood Handbook FPL-GTR-190, table 13-5 and
eq. 13-2). An even wave over twelve months has its crest in August: half way between its ends in May, at its least in
February. Lengthwise wood moves 0.00006 (0.1 to 0.2 % from green to ovendry, trade figure).
"""

from functools import cache
from math import cos, pi

import pytest

from boardwright.checks.movement.curves import curves
from boardwright.core.lengths import INCH, Printer
from boardwright.drawings.layout_dims import overlaps, text_box
from boardwright.drawings.records import Drawing, Text
from boardwright.pipeline import check_text
from boardwright.plan.schema import Year, YearFit
from boardwright.plan.year import joined, plan_year

OAK, LENGTH = 0.00369, 0.00006
HEAD = """
boardwright: 1
title: Trial
units: %s
wood_moisture: {now: 8, driest: 6, wettest: 10}
stock:
  oak: {wood: oak_red_northern, thickness: 3/4 in}
  thin: {wood: oak_red_northern, thickness: 1/4 in}
  half: {wood: oak_red_northern, thickness: 1/2 in}
  ply: {sheet: hardwood_plywood, thickness: 3/4 in, measured: 3/4 in}
"""
PANEL = """
parts:
  stile: {stock: oak, length: 20 in, width: 2 in, along: z, across: x, at: [0, 0, 0], cuts: [{kind: groove,
    side: far_edge, along: length, at: 1/4 in, width: 1/4 in, depth: 3/8 in}]}
  panel: {stock: thin, length: 20 in, width: 10 in, along: z, across: x, at: [1 3/4 in, 1/4 in, 0]}
"""
CHEST = """
case:
  {width: 30 in, height: 20 in, depth: 18 in, stock: %s,
   inside: {rows: [{drawer: {sides: {stock: half}}}, {drawer: {sides: {stock: half}}}]}}
"""
CUPBOARD = """
case:
  width: 40 in
  height: 40 in
  depth: 16 in
  stock: oak
  top: {lid: {ends: breadboard, overhang: 1 in}}
  inside: {doors: {frame: {panel: {kind: raised}}}}
"""
WAVE = [8 + 2 * cos(2 * pi * (month - 8) / 12) for month in range(1, 13)]


@cache
def year_of(text: str) -> tuple[Year | None, tuple[Drawing, ...]]:
    result = check_text(text)
    assert result.piece is not None
    piece = result.piece
    printer = Printer("mm" if piece.units == "mm" else "in", piece.step)
    year, drawings = plan_year(piece, curves(piece, result.tables), printer)
    return year, tuple(drawings)


def fits(text: str) -> list[YearFit]:
    year, _ = year_of(text)
    assert year is not None
    return year.fits


def inches(fit: YearFit) -> list[float]:
    return [s.mm / INCH for s in fit.months]


def test_a_panel_in_its_groove_month_by_month() -> None:
    """Its edge is 5 in from its middle; bottom and mouth of the groove are 5/8 and 1 in from that of the stile."""
    room, hold = fits(HEAD % "in" + PANEL)
    assert inches(room) == pytest.approx([1 / 8 - (w - 8) * OAK * (5 + 5 / 8) for w in WAVE], abs=1e-4)
    assert inches(hold) == pytest.approx([1 / 4 + (w - 8) * OAK * (5 + 1) for w in WAVE], abs=1e-4)
    assert room.limits[0].says == "binds"
    assert hold.limits[0].says == "lets go"
    assert [s.mm for s in (room.limits[0].size, hold.limits[0].size)] == [0.0, 0.0]


def test_a_drawer_in_its_opening_month_by_month() -> None:
    """What stands over a drawer's upright part is lost by what the part swells, from its foot on which it stands."""
    text = HEAD % "in" + CHEST % "ply"
    room = next(f for f in fits(text) if f.what.startswith("Room over"))
    piece = check_text(text).piece
    assert piece is not None
    high = next(p for p in piece.parts if p.letter == room.letters[0]).size[1] / INCH
    now = room.as_cut.mm / INCH
    assert inches(room) == pytest.approx([now - (w - 8) * OAK * high for w in WAVE], abs=1e-4)


def test_the_months_are_those_of_the_wave() -> None:
    year, _ = year_of(HEAD % "in" + PANEL)
    assert year is not None
    assert year.moisture == pytest.approx(WAVE, abs=0.005)
    # Wood Handbook FPL-GTR-190, table 4-2 at 70 F: 6.2 % at 30 % and 10.1 % at 55 % relative humidity
    assert year.humidity[1] == pytest.approx(30, abs=2)
    assert year.humidity[7] == pytest.approx(55, abs=2)


def test_the_least_is_that_of_the_findings() -> None:
    """`check` figures the same fits: their least values stand among the margins."""
    text = HEAD % "in" + CUPBOARD
    kept = [m.value for m in check_text(text).passed if m.check in ("wood.panel-bottoms", "door.swells")]
    for fit in fits(text):
        if fit.what.startswith(("Room for", "Gap")):
            least = min(s.mm for s in fit.months)
            assert min(abs(least - v) for v in kept) < 1e-3


def test_like_fits_share_a_chart() -> None:
    behind = [f for f in fits(HEAD % "in" + CHEST % "oak") if f.what.startswith("Room behind")]
    assert [f.what for f in behind] == ["Room behind drawers 1 and 2"]


def test_every_kind_of_fit_has_its_chart() -> None:
    heads = " ".join(f.what for f in fits(HEAD % "in" + CUPBOARD))
    for kind in (
        "Gap of doors 1 and 2",
        "Room for panel",
        "Hold of panel",
        "Slots in",
        "past end board",
        "Overhang",
    ):
        assert kind in heads


def test_buttons_follow_the_top() -> None:
    """The top carries a button by its screw; leg and apron, which swell the other way, take a little off."""
    text = HEAD % "in" + (
        "  leg: {wood: oak_red_northern, thickness: 1 3/4 in}\n"
        "table: {width: 60 in, depth: 30 in, height: 29 in, stock: oak, legs: {stock: leg}}"
    )
    room = next(f for f in fits(text) if f.what.startswith("Room for button"))
    piece = check_text(text).piece
    assert piece is not None
    screw = next(f for f in piece.fasteners if f.held == "table.button.front.1")
    away = piece.part("table.top").box.middle()[1] / INCH - screw.at[1] / INCH
    moves = (max(inches(room)) - min(inches(room))) / 4
    assert OAK * (away - 1) < moves < OAK * away


@pytest.mark.parametrize("text", [CHEST % "oak", CUPBOARD, PANEL])
@pytest.mark.parametrize("units", ["in", "mm"])
def test_no_text_lies_on_another(text: str, units: str) -> None:
    _, drawings = year_of(HEAD % units + text)
    for d in drawings:
        assert overlaps(d) == [], d.title
        for left, lower, right, upper in (text_box(e) for e in d.entities if isinstance(e, Text)):
            assert min(left, lower) >= 0
            assert right <= d.width
            assert upper <= d.height


def test_there_is_no_year_without_moving_fits() -> None:
    sheets = (
        HEAD % "in" + "case: {width: 30 in, height: 20 in, depth: 18 in, stock: ply, inside: {open: true}}"
    )
    assert year_of(sheets) == (None, ())


def test_names_in_words() -> None:
    assert joined(["drawer 1"]) == "drawer 1"
    assert joined(["drawer 1", "drawer 2", "drawer 3"]) == "drawers 1 to 3"
    assert joined(["bar N", "bar P", "bar N"]) == "bars N and P"
    assert joined(["lid", "door 1"]) == "lid, door 1"
