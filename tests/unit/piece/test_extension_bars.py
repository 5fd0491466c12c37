"""Full-extension bars: sums worked by hand, solids at many openings, screws that are stops, what is refused.

There is no published source for such bars; proportions are common practice, screw sizes ASME B18.6.1 (from memory):
No. 4 shank 0.060 + 0.013 x 4 = 0.112 in, 22 threads to the inch, so a turn is 1/22 = 0.0455 in.
"""

from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bench import IN, codes, grooves, inches, piece_of, size
from boardwright.checks.context import context
from boardwright.checks.extension_bars import pulled
from boardwright.core.poses import Box, Vec
from boardwright.piece.cuts import VGroove
from boardwright.piece.records import Part, Piece
from boardwright.pipeline import check_text
from boardwright.solids.dry_fit import DryFit
from boardwright.solids.mesh import box_solid, part_solid
from boardwright.tables import default_tables

TEXT = """
boardwright: 1
title: Map chest
units: {units}
stock:
  ply: {{sheet: hardwood_plywood, thickness: 3/4 in, measured: {ply}}}
  half: {{sheet: hardwood_plywood, thickness: 1/2 in, measured: {half}}}
  thin: {{sheet: hardwood_plywood, thickness: 1/4 in, measured: 1/4 in}}
  maple: {{wood: maple_sugar, thickness: 3/4 in}}
case:
  width: {width}
  height: {height}
  depth: {depth}
  stock: ply
  back: {{set: none}}
  inside: {inside}
drawers:
  runs_on: full_extension_bars
  sides: {{stock: half}}
  bottom: {{stock: thin}}
  full_extension_bars: {{stock: maple{bars}}}
  {more}
"""


def design(
    *,
    inside: str = "{drawer: {}}",
    bars: str = "",
    more: str = "",
    units: str = "in",
    width: str = "20 in",
    height: str = "8 in",
    depth: str = "20 in",
    ply: str = "3/4 in",
    half: str = "1/2 in",
) -> str:
    return TEXT.format(
        inside=inside,
        bars=bars,
        more=more,
        units=units,
        width=width,
        height=height,
        depth=depth,
        ply=ply,
        half=half,
    )


def test_the_sums_by_hand() -> None:
    piece = piece_of(design())
    bar = piece.part("drawer.1.bar.left")
    # the groove a sixteenth of the 20 deep: 1 1/4, under a third of the sides; bar 1/32 lower, even steps: 1 3/16
    assert size(piece, bar.id)[1] == 1.1875
    # the groove's round end: (1 3/16 + 1/32) / 2 + 3 mm = 0.728, up 3/4; so the bar starts 3/4 + 3/4 in and ends 3/4
    # before the open back: 20 - 1 1/2 - 3/4 = 17 3/4
    assert size(piece, bar.id)[0] == 17.75
    assert inches(bar.box.low[1], bar.box.high[1]) == [1.5, 19.25]
    # slots from both ends: (17 3/4 - 3/4) / 2 = 8 1/2, blocks of 1/2 in them: 8 clear, less 0.112 each
    slots = [g for g in grooves(bar) if g.purpose == "slot"]
    assert sorted(inches(*(g.end - g.start for g in slots))) == [8.5, 8.5]
    assert [g.depth for g in slots] == pytest.approx([bar.size[2]] * 2)  # right through
    # 2 x 8 - 2 x 0.112 = 15.776, on the step 15 3/4
    assert inches(piece.motions[0].travel) == [15.75]
    # heads: 0.225 and a turn of 0.0455 on both sides in a V of 90 degrees: 0.316, half of it up to 3/16: 3/8 and 3/16
    [one, two] = [c for c in bar.cuts if isinstance(c, VGroove)]
    assert one.side.axis == 2
    assert {one.side.high, two.side.high} == {True, False}  # on opposite faces
    assert inches(one.depth * 2) == inches(one.width)
    assert inches(one.width)[0] >= 0.316
    # the bar is as thick as both grooves and the 3/32 beside the drawer, less 1/32, on the step
    [own] = [g for g in grooves(piece.part("drawer.1.left")) if g.purpose == "running"]
    [case] = [g for g in grooves(piece.part("case.side.left")) if g.purpose == "running"]
    assert inches(bar.size[2])[0] == pytest.approx(
        inches(own.depth + case.depth)[0] + 3 / 32 - 1 / 32, abs=1 / 32
    )
    assert inches(own.width, case.width) == [1.21875, 1.21875]  # 1 3/16 + 1/32
    # four screws, two through each bar, into the case and into the drawer
    assert sorted(f.into for f in piece.fasteners if ".bar." in f.held) == [
        "case.side.left", "case.side.right", "drawer.1.left", "drawer.1.right",
    ]  # fmt: skip
    assert all(f.slotted for f in piece.fasteners if ".bar." in f.held)
    # 20 - 3/8 from the front of the case to the rear of the drawer, so 19 5/8 - 15 3/4 stay in
    [opens] = [r.word for r in piece.reasons if r.path == "drawer.1.opens"]
    assert opens.startswith("3 7/8 in")


def test_more_room_behind_lets_the_drawer_clear_the_front() -> None:
    piece = piece_of(design(more="rear_clearance: 4 1/4"))
    [opens] = [r.word for r in piece.reasons if r.path == "drawer.1.opens"]
    assert opens == "clears the front fully"
    rear = piece.part("drawer.1.left").box.high[1]
    assert inches(rear) == [15.75]
    assert piece.motions[0].travel >= rear - 1e-6
    # and with a step less it does not
    assert "drawer.not-fully-out" in {
        f.code for f in check_text(design(more="rear_clearance: 4 7/32")).findings
    }


def moved(part: Part, by: float):  # type: ignore[no-untyped-def]
    return part_solid(part).translate([0.0, -by, 0.0])


def shank(at: Vec, direction: Vec, length: float, radius: float):  # type: ignore[no-untyped-def]
    """A square pin inside the shank of a screw along x."""
    x = sorted((at[0], at[0] + direction[0] * length))
    r = radius * 0.7
    return box_solid(Box((x[0], at[1] - r, at[2] - r), (x[1], at[1] + r, at[2] + r)))


@pytest.mark.parametrize("more", ["rear_clearance: 4 1/4", "front: {set: overlay}", "back: {joint: butt}"])
def test_nothing_meets_at_any_opening_and_the_screws_stop_it_at_the_last(more: str) -> None:
    """Solids of bars, blocks, drawer and case, the bar let out by one share and the drawer by another."""
    piece = piece_of(design(more=more))
    groups = {g: [p for p in piece.parts if p.group == g] for g in ("case", "drawer.1", "drawer.1.bars")}
    for bar in pulled(context(piece, DryFit((), (), ()), default_tables()), piece.motions[0]):
        for u, v in product((0.0, 0.13, 0.5, 0.87, 1.0), repeat=2):
            out, off = u * bar.case_travel, v * bar.drawer_travel
            runs = [moved(p, out) for p in groups["drawer.1.bars"]]
            for part in groups["case"]:
                assert all((r ^ part_solid(part)).volume() < 1e-3 for r in runs), (part.id, u, v)
            for part in groups["drawer.1"]:
                assert all((r ^ moved(part, out + off)).volume() < 1e-3 for r in runs), (part.id, u, v)
            assert stopped(piece, bar.bar, out, off) == []
        assert stopped(piece, bar.bar, bar.case_travel + 1.0, 0.0) == ["case"]
        assert stopped(piece, bar.bar, 0.0, bar.drawer_travel + 1.0) == ["drawer"]
        assert bar.travel >= piece.motions[0].travel - 1e-6 >= bar.travel - piece.step - 1e-6


def stopped(piece: Piece, bar: Part, out: float, off: float) -> list[str]:
    """Which screws meet wood of the bar when it has come out so far, and the drawer off it [mm]."""
    wood = [moved(p, out) for p in piece.parts if p.id == bar.id or p.id.startswith(f"{bar.id}.")]
    found = []
    for f in (f for f in piece.fasteners if f.held == bar.id):
        into_case = f.into.startswith("case")
        at = (f.at[0], f.at[1] - (0.0 if into_case else out + off), f.at[2])
        if any((shank(at, f.direction, f.length, f.diameter / 2) ^ w).volume() > 1e-3 for w in wood):
            found.append("case" if into_case else "drawer")
    return found


def test_bars_in_both_faces_of_a_divider_share_its_wood() -> None:
    piece = piece_of(
        design(inside="{columns: [{drawer: {}}, {drawer: {}}]}", width="34 in", ply="0.72 in", half="0.47 in")
    )
    [divider] = [p for p in piece.parts if p.name == "divider"]
    assert len([g for g in grooves(divider) if g.purpose == "running"]) == 2
    screws = [f for f in piece.fasteners if f.into == divider.id and ".bar." in f.held]
    assert len(screws) == 2
    # staggered: axes further apart along the divider than two shanks and 2 mm of wood
    assert abs(screws[0].at[1] - screws[1].at[1]) > 2 * screws[0].diameter / 2 + 2
    # driven home, by a turn of 1/22 in, each tip leaves 1.5 mm before the other groove (common practice: 1/16 in)
    for f, other in zip(screws, reversed(screws), strict=True):
        [groove] = [g for g in grooves(divider) if g.holds == other.held]
        face = divider.box.high[0] if f.direction[0] > 0 else divider.box.low[0]
        room = abs(face - f.tip[0]) - groove.depth
        assert room - IN / 22 >= 1.5 - 1e-6


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"depth": "5 in"}, "drawer.no-room-for-bars"),  # too short for two slots
        ({"height": "3 in", "bars": ", height: 1 1/4"}, "drawer.no-room-for-bars"),  # sides too low
        ({"bars": ", screw_length: 1 1/4"}, "drawer.no-room-for-bars"),  # comes through
        ({"bars": ", groove: 3/8"}, "drawer.no-room-for-bars"),  # more than half of the side
        ({"bars": ", height: 1/4"}, "size.too-small"),  # no edge distance for the screw
        ({"half": "1/4 in"}, "drawer.no-room-for-bars"),  # no wood behind the groove
        ({"more": "back: {joint: mitre}"}, "drawer.no-room-for-bars"),  # it fills the ends of the grooves
    ],
)
def test_refused(changes: dict[str, str], code: str) -> None:
    assert code in codes(design(**changes))


def test_a_face_in_the_way_of_a_bar_is_found() -> None:
    """A loose board stands right before the case where a bar comes out; the drawer's own way beside it is free."""
    text = design(more="rear_clearance: 4 1/4") + (
        "parts:\n  post: {stock: maple, length: 6, width: 5/8, along: z, across: x, at: [1/8, -1, 1]}\n"
    )
    hits = [f for f in check_text(text).findings if f.code == "drawer.hits"]
    assert any("a bar of drawer 1 hits" in f.message for f in hits), [f.text() for f in hits]


@settings(max_examples=25, deadline=None, derandomize=True)
@given(
    st.sampled_from(["in", "mm"]),
    st.integers(300, 900),
    st.integers(120, 400),
    st.integers(300, 620),
    st.floats(17.5, 19.2),
    st.floats(11.8, 15.2),
    st.integers(10, 150),
    st.sampled_from(["one_piece", "applied"]),
    st.booleans(),
)
def test_sizes_of_every_kind(
    units: str, wide: int, high: int, deep: int, ply: float, half: float, behind: int, made: str, two: bool
) -> None:
    inside = "{columns: [{drawer: {}}, {drawer: {}}]}" if two else "{drawer: {}}"
    result = check_text(
        design(
            inside=inside,
            units=units,
            width=f"{wide * (2 if two else 1)} mm",
            height=f"{high} mm",
            depth=f"{deep} mm",
            ply=f"{ply:.2f} mm",
            half=f"{half:.2f} mm",
            more=f"rear_clearance: {behind} mm\n  front: {{made: {made}}}",
        )
    )
    found = {f.code for f in result.findings}
    assert not {c for c in found if c.startswith(("fit.", "joint.", "fastener."))}, found
    assert "drawer.hits" not in found
    if "drawer.no-room-for-bars" in found or result.piece is None:
        return
    piece = result.piece
    for m in piece.motions:
        bars = pulled(context(piece, DryFit((), (), ()), default_tables()), m)
        assert len(bars) == 2
        for bar in bars:
            slots = bar.front_slot + bar.rear_slot - 2 * 0.112 * IN
            assert m.travel <= bar.travel + 1e-6 <= slots + 2e-6
            assert slots - bar.travel <= 2 * piece.step + 1e-6
            third = bar.bar.size[0] / 3 - 2 * piece.step
            assert min(bar.in_case, bar.in_drawer) >= third
        clears = m.travel >= piece.part(f"{m.id}.left").box.high[1] - 1e-6
        [opens] = [r.word for r in piece.reasons if r.path == f"{m.id}.opens"]
        assert (opens == "clears the front fully") == clears
