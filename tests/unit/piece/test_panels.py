"""A panel that floats in four grooved parts: room for the year, contacts that close, grooves that do not show.

Movement: width x coefficient x change of moisture, Wood Handbook FPL-GTR-190 eq. 13-2; black cherry flatsawn 0.00248
for each 1 %, table 13-5. Beside that a panel is 1/32 in short of each groove bottom, and at least 1/8 in of it stays
in the groove (common practice). 1/8 in of movement in each 12 in of width is what a woodworking page allows.
"""

import pytest

from bench import IN, inches
from boardwright.core.findings import Finding
from boardwright.core.poses import Box
from boardwright.design.load import load_text
from boardwright.piece.cuts import Groove, Rabbet
from boardwright.piece.drafts import Draft
from boardwright.piece.finish import finish
from boardwright.piece.joints.panel import Room, Wall, float_panel
from boardwright.piece.records import Part
from boardwright.piece.run import Piece, settle_sizes
from boardwright.piece.setout import SetOut
from boardwright.piece.sizing import Sizer
from boardwright.piece.stocks import read_stocks
from boardwright.piece.surroundings import read_moisture
from boardwright.solids.dry_fit import dry_fit
from boardwright.tables import default_tables

FRAME = """
boardwright: 1
title: Frame
units: in
work_to: 1/32
wood_moisture: {{now: {now}, driest: 6, wettest: 12}}
stock:
  cherry: {{wood: cherry_black, thickness: 3/4}}
  quarter: {{wood: cherry_black, thickness: 1/4}}
  ply: {{sheet: hardwood_plywood, thickness: 1/4, measured: 1/4}}
parts:
  none: {{stock: cherry, length: 1, width: 1, along: x, across: y, at: [0, 0, 0]}}
"""
DEPTH = 3 / 8 * IN


def bench(now: float = 8) -> SetOut:
    design, findings = load_text(FRAME.format(now=now), "frame")
    assert design is not None
    assert not findings
    tables = default_tables()
    sizer = Sizer(design, lambda _: None)
    moisture, _, _ = read_moisture(design, tables)
    stocks, _ = read_stocks(design, tables, sizer, moisture)
    return SetOut(design, tables, sizer, stocks, moisture)


def box(*mm: float) -> Box:
    a = [v * IN for v in mm]
    return Box((a[0], a[1], a[2]), (a[3], a[4], a[5]))


def frame(out: SetOut, wide: float, high: float) -> list[Wall]:
    """Two stiles 2 in wide that run through, and two rails between, in the plane of x and z."""
    stock = out.stocks["cherry"]
    tall = high + 4
    seen = ((2, False), (2, True))
    left = out.add("left", "stile", stock, box(0, 0, 0, 2, 0.75, tall), (2, 0), show=seen)
    right = out.add("right", "stile", stock, box(2 + wide, 0, 0, 4 + wide, 0.75, tall), (2, 0), show=seen)
    low = out.add("low", "rail", stock, box(2, 0, 0, 2 + wide, 0.75, 2), (0, 2))
    top = out.add("top", "rail", stock, box(2, 0, high + 2, 2 + wide, 0.75, tall), (0, 2))
    return [Wall(left, 0, True), Wall(right, 0, False), Wall(low, 2, True), Wall(top, 2, False)]


def panel_in(
    stock: str, wide: float = 12, high: float = 20, now: float = 8, *, through: bool | None = None
) -> tuple[dict[str, Part], tuple[Room, ...], list[Finding]]:
    out = bench(now)
    walls = frame(out, wide, high)
    kind = out.stocks[stock]
    thick = kind.thickness / IN
    near = 0.75 / 2 - thick / 2 if thick < 0.5 else 0.0
    panel = out.add("panel", "panel", kind, box(2, near, 2, 2 + wide, near + thick, 2 + high), (2, 0))
    groove = None if thick < 0.5 else (0.25 * IN, 0.5 * IN)
    rooms = float_panel(
        out, panel, walls, depth=DEPTH, path="parts", name="panel", groove=groove, through=through
    )
    settle_sizes(out)
    parts = finish(list(out.drafts.values()), out.sizer.step)
    _fits(out, parts, panel)
    return {p.id: p for p in parts}, rooms, out.findings


def _fits(out: SetOut, parts: tuple[Part, ...], panel: Draft) -> None:
    piece = Piece("frame", "in", out.sizer.step, panel.box, out.moisture, parts, tuple(out.joints))
    fit = dry_fit(piece)
    assert not fit.overlaps
    pressed = [t for t in fit.touches if t.contact.gap == 0]
    assert pressed
    assert all(t.touching == pytest.approx(t.area, rel=1e-3) for t in pressed)


@pytest.mark.parametrize("now", [6, 8, 10])
@pytest.mark.parametrize("stock", ["cherry", "quarter"])
def test_a_solid_panel_has_the_growth_to_the_wettest_as_room(stock: str, now: float) -> None:
    parts, rooms, findings = panel_in(stock, now=now)
    assert not findings
    # across: 12 in x 0.00248 x (12 - now) / 2 at each side, and 1/32
    swell = 12 * 0.00248 * (12 - now) / 2
    for room in rooms[:2]:
        assert swell + 1 / 32 <= room.gap / IN < swell + 1 / 32 + 1 / 32
    # in the wettest time it does not reach the bottoms: 12 + 2 x 3/8 between them
    width = parts["panel"].size[1] / IN
    assert width == pytest.approx(12 + 2 * (3 / 8 - rooms[0].gap / IN))
    assert width * (1 + 0.00248 * (12 - now)) < 12.75
    # in the driest it stays 1/8 in both grooves
    assert width * (1 - 0.00248 * (now - 6)) > 12 + 2 / 8
    # along the grain 1/32 and hardly anything
    assert [r.gap / IN for r in rooms[2:]] == pytest.approx([1 / 16] * 2)


def test_the_room_is_about_what_a_woodworking_page_allows() -> None:
    # 1/8 in each 12 in of width, both sides together, made at the middle of the year: 12 in, 9 %
    _, rooms, _ = panel_in("quarter", now=9)
    moving = 2 * (rooms[0].gap / IN - 1 / 32)
    assert moving == pytest.approx(1 / 8, abs=1 / 32)


def test_a_sheet_has_a_small_room_all_round() -> None:
    _, rooms, findings = panel_in("ply")
    assert not findings
    assert [r.gap / IN for r in rooms] == pytest.approx([1 / 32] * 4)


def test_a_thick_panel_is_rabbeted_round_and_its_shoulders_never_bind() -> None:
    parts, rooms, _ = panel_in("cherry")
    steps = [c for c in parts["panel"].cuts if isinstance(c, Rabbet)]
    # both faces at each of four sides: 1/4 off, as far in as the groove is deep
    assert len(steps) == 8
    assert {tuple(inches(*sorted((c.width, c.depth)))) for c in steps} == {(0.25, 0.375)}
    # so when the panel has swollen to the bottom of its groove, its shoulder stands at the edge of the stile
    assert rooms[0].held + rooms[0].gap == pytest.approx(DEPTH)


@pytest.mark.parametrize("through", [None, True])
def test_grooves_stop_in_stiles_whose_ends_are_seen(through: bool | None) -> None:
    parts, _, _ = panel_in("ply", through=through)
    [stile] = [c for c in parts["left"].cuts if isinstance(c, Groove)]
    [rail] = [c for c in parts["low"].cuts if isinstance(c, Groove)]
    # opening from 2 to 22 on a stile 24 long, 3/8 further at each end
    expected = [1.625, 22.375] if through is None else [0.0, 24.0]
    assert inches(stile.start, stile.end) == expected
    assert inches(rail.start, rail.end) == [0.0, 12.0]


def test_a_wide_panel_in_shallow_grooves_is_refused_with_the_depth_it_needs() -> None:
    # 30 in x 0.00248 x 4 / 2 = 0.149 and 1/32: 3/16 of room; 3/8 - 3/16 - 30 x 0.00248 x 2 / 2 = 0.113 in the driest
    _, _, findings = panel_in("quarter", wide=30)
    [finding] = findings
    assert finding.code == "wood.panel-groove-too-shallow"
    assert "13/32 in deep" in finding.remedy
