"""Shelves on pins, web frames, wall cleats, knobs and pulls.

Rows of holes: a private page on the 32 mm system (5 mm, 32 mm apart, 37 mm from the front). Web frame members 3/4 x 2
to 2 1/2 in, dust panel 1/8 to 1/4 in in a groove 1/4 in deep, shelf pins 10 to 13 mm deep, knob 1 to 1 1/2 in, two
pulls on drawers wider than 24 in: common practice.
"""

import math
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shape import misfits

from bench import IN, codes, grooves, holes, inches, piece_of
from boardwright.core.poses import Vec
from boardwright.piece.cuts import Bevel, Hole
from boardwright.piece.records import Part
from boardwright.pipeline import check_text

IN_INCHES = """
boardwright: 1
title: Cabinet
units: in
work_to: 1/32
stock:
  cherry: {wood: cherry_black, thickness: 3/4}
  half: {wood: cherry_black, thickness: 1/2}
  ply: {sheet: hardwood_plywood, thickness: 1/4, measured: 0.2}
case:
  width: %s
  height: %s
  depth: %s
  stock: cherry
%s
"""
IN_MM = """
boardwright: 1
title: Cabinet
units: mm
work_to: 0.5
stock:
  ply: {sheet: birch_plywood, thickness: 18, measured: 18}
  thin: {sheet: birch_plywood, thickness: 6.5, measured: 6.4}
case:
  width: %s
  height: %s
  depth: %s
  stock: ply
%s
"""


def inside(keys: str) -> str:
    return f"  inside:\n    {keys}"


def clean(text: str) -> None:
    assert misfits(check_text(text).findings) == []


def spots(part: Part, what: str) -> list[Vec]:
    """Where the holes for something are, in the piece [mm]."""
    out = []
    for h in (c for c in holes(part) if c.for_ == what):
        at = [0.0, 0.0, 0.0]
        for axis, value in zip((i for i in range(3) if i != h.side.axis), h.at, strict=True):
            at[axis] = value
        at[h.side.axis] = part.size[h.side.axis] if h.side.high else 0.0
        out.append(part.pose.point((at[0], at[1], at[2])))
    return out


def test_rows_of_the_32_mm_system() -> None:
    piece = piece_of(IN_MM % (800, 900, 350, inside("shelves: {count: 2, kind: pins}")))
    side = piece.part("case.side.left")
    found = spots(side, "shelf pin")
    assert {round(y, 3) for _, y, _ in found if y < 100} == {37}
    heights = sorted({round(z, 3) for _, _, z in found})
    assert {round(b - a, 3) for a, b in pairwise(heights)} == {32}
    assert {h.diameter for h in holes(side) if h.for_ == "shelf pin"} == {5}
    assert all(10 <= h.depth <= 13 for h in holes(side) if h.for_ == "shelf pin")


def test_a_shelf_lies_on_four_pins_with_room_at_its_ends() -> None:
    piece = piece_of(IN_INCHES % (30, 36, 12, inside("shelves: {count: 2, kind: pins}")))
    pins = [h for h in piece.hardware if h.id.startswith("inside.shelf.1.pin")]
    shelf = piece.part("inside.shelf.1").box
    assert len(pins) == 4
    assert all(h.box.high[2] == pytest.approx(shelf.low[2]) for h in pins)
    assert inches(shelf.low[0], 30 * IN - shelf.high[0]) == [0.75 + 1 / 16] * 2


@settings(max_examples=20, deadline=None)
@given(
    width=st.integers(12, 48), height=st.integers(16, 70), depth=st.integers(8, 24), count=st.integers(1, 4)
)
def test_pins_in_cases_of_any_size(width: int, height: int, depth: int, count: int) -> None:
    keys = inside(f"columns: [{{shelves: {{count: {count}, kind: pins}}}}, {{open: true}}]")
    assert set(codes(IN_INCHES % (width, height, depth, keys))) <= {"space.pins-too-few", "space.too-small"}


WEBS = (
    "drawers: {count: 3, between: web_frame, dust: true, drawer: {runs_on: runners}}",
    "drawers: {count: 3, between: web_frame, drawer: {runs_on: runners}}",
    "{between: web_frame, dust: true, rows: [{drawer: {runs_on: runners}}, {open: true}]}",
)


@pytest.mark.parametrize("keys", WEBS)
@pytest.mark.parametrize("frame", ["", "  face_frame: {}\n"])
def test_web_frames_fit(keys: str, frame: str) -> None:
    clean(IN_INCHES % (30, 36, 18, frame + inside(keys)))


def test_a_web_frame_and_its_dust_panel() -> None:
    piece = piece_of(IN_INCHES % (30, 36, 18, inside(WEBS[0])))
    front, runner = piece.part("inside.web_frame.1"), piece.part("inside.web_frame.1.runner.1")
    assert inches(front.size[1], front.size[2]) == [2, 0.75]
    [groove] = grooves(front)
    assert inches(groove.depth) == [1 / 4]
    assert groove.width == pytest.approx(0.2 * IN)
    glued = {j.second for j in piece.joints if j.first == "case.side.left" and j.kind == "dado" and j.glued}
    assert front.id in glued
    assert runner.id not in glued
    assert not any(p.name == "runner" for p in piece.parts), "the frame itself carries the drawers"


def test_the_dado_of_a_web_frame_is_one() -> None:
    piece = piece_of(
        IN_INCHES % (30, 36, 18, inside("{between: web_frame, rows: [{open: true}, {open: true}]}"))
    )
    assert len(grooves(piece.part("case.side.left"))) == 1


@pytest.mark.parametrize("angle", [30, 45])
@pytest.mark.parametrize("text", [IN_INCHES % (24, 30, 12, "%s"), IN_MM % (600, 800, 330, "%s")])
def test_wall_cleats_hook_into_each_other(text: str, angle: int) -> None:
    text = text % f"  wall_cleat: {{angle: {angle}}}"
    clean(text)
    piece = piece_of(text)
    own, wall = piece.part("case.hanging_cleat"), piece.part("case.wall_cleat")
    for part in (own, wall):
        [bevel] = [c for c in part.cuts if isinstance(c, Bevel)]
        lean = max(abs(bevel.over_u), abs(bevel.over_v))
        assert math.degrees(math.atan(lean)) == pytest.approx(angle)
    shared = own.box.overlap(wall.box)
    assert shared is not None
    assert shared.size(2) == pytest.approx(own.size[2] * math.tan(math.radians(angle)))
    [face] = next(j for j in piece.joints if j.kind == "cleat").contacts
    assert face.normal[1] > 0, "the case cleat reaches down between the wall cleat and the wall"
    assert face.normal[2] > 0


def test_a_back_stands_before_the_wall_cleats() -> None:
    piece = piece_of(IN_INCHES % (24, 30, 12, "  wall_cleat: {}"))
    assert inches(12 * IN - piece.part("case.back").box.high[1])[0] == pytest.approx(0.75, abs=1e-4)


def through(part: Part) -> list[Hole]:
    return [h for h in holes(part) if h.for_ in ("knob", "pull")]


@pytest.mark.parametrize(
    ("width", "pull", "count"),
    [("20", "knob", 1), ("32", "knob", 2), ("20", "{kind: pull}", 2), ("32", "{kind: pull, count: 1}", 2)],
)
def test_holes_of_knobs_and_pulls(width: str, pull: str, count: int) -> None:
    for runs_on in ("bars", "slides"):
        keys = inside(f"drawer: {{runs_on: {runs_on}, pull: {pull}}}")
        piece = piece_of(IN_INCHES % (width, 8, 18, keys), allow=("wood.cross-grain",))
        fronts = [p for p in piece.parts if p.name in ("drawer front", "drawer box front")]
        assert [len(through(p)) for p in fronts] == [count] * len(fronts)
        assert len({round(x, 3) for p in fronts for x, _, _ in spots(p, through(p)[0].for_)}) == count


def test_the_screws_of_a_pull_are_3_in_apart() -> None:
    piece = piece_of(IN_INCHES % (20, 8, 18, inside("drawer: {pull: pull}")), allow=("wood.cross-grain",))
    xs = sorted(x for x, _, _ in spots(piece.part("drawer.1.front"), "pull"))
    assert inches(xs[1] - xs[0]) == [3]
    assert sum(xs) / 2 == pytest.approx(10 * IN)
