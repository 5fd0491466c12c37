"""A face frame: flush, its openings filled by doors and drawers, fillers beside drawers.

Architectural Woodwork Standards, 1st ed. 2009, p. 285 cl. 4.4.25.4: at least 3/4 in thick, stiles with upright grain.
"""

from itertools import product

import pytest
from shape import misfits

from bench import IN, codes, inches, piece_of, size
from boardwright.pipeline import check_text

CASE = """
boardwright: 1
title: Cupboard
units: in
work_to: 1/32
stock:
  cherry: {wood: cherry_black, thickness: 3/4}
  half: {wood: cherry_black, thickness: 1/2}
  ply: {sheet: hardwood_plywood, thickness: 1/4, measured: 0.2}
  board: {sheet: hardwood_plywood, thickness: 3/4, measured: 0.72}
case:
  width: 40
  height: 34
  depth: 18
  stock: %s
  bottom: {up: 3}
  face_frame: %s
  inside:
    %s
"""
FRONT = "front: {stock: cherry}"
INSIDES = (
    f"drawers: {{count: 3, drawer: {{runs_on: runners, {FRONT}}}}}",
    f"drawers: {{count: 3, between: rail, drawer: {{runs_on: runners, {FRONT}}}}}",
    f"drawers: {{count: 3, between: shelf, drawer: {{{FRONT}}}}}",
    f"drawers: {{count: 2, drawer: {{runs_on: slides, {FRONT}}}}}",
    "doors: {frame: {}, set: overlay}",
    "doors: {frame: {}, set: overlay, hinges: butt}",
    f"columns: [{{drawers: {{count: 4, between: rail, drawer: {{{FRONT}}}}}}}, "
    "{door: {frame: {}}, shelves: {count: 2}}]",
    "rows: [{open: true}, {shelves: {count: 2}}]",
    "trays: {count: 3}",
)
FRAMES = (
    "{}",
    "{overhang: 1/4, stile_width: 2}",
    "{joint: {kind: butt, fasten: pocket_screws}}",
    "{joint: half_lap}",
)


@pytest.mark.parametrize(("stock", "inside"), list(product(("cherry", "board"), INSIDES)))
@pytest.mark.parametrize("frame", FRAMES[:2])
def test_everything_fits_behind_a_frame(stock: str, inside: str, frame: str) -> None:
    result = check_text(CASE % (stock, frame, inside))
    assert misfits(result.findings) == []


@pytest.mark.parametrize("door", ["", "set: half_overlay", "set: overlay", "frame: {}", "stock: board"])
@pytest.mark.parametrize("stock", ["cherry", "board"])
def test_fillers_start_behind_the_doors_and_their_battens(stock: str, door: str) -> None:
    """Drawers behind doors of a face frame: no filler stands where a door or its battens are."""
    inside = f"rows: [{{door: {{{door}}}, drawer: {{runs_on: slides, {FRONT}}}}}, {{shelves: {{count: 1}}}}]"
    result = check_text(CASE % (stock, "{overhang: 3/16}", inside))
    found = [f.text() for f in result.findings if f.code in ("fit.collision", "door.hits", "drawer.hits")]
    assert found == []
    assert result.piece is not None
    back = max(p.box.high[1] for p in result.piece.parts if p.group == "door.1")
    fillers = [p for p in result.piece.parts if p.name == "filler"]
    assert fillers
    assert all(p.box.low[1] >= back - 1e-6 for p in fillers)


@pytest.mark.parametrize("frame", FRAMES)
def test_frames_of_every_joint(frame: str) -> None:
    assert codes(CASE % ("cherry", frame, INSIDES[6])) == []


def test_the_depth_of_the_case_holds_the_frame() -> None:
    piece = piece_of(CASE % ("cherry", "{}", "open: true"))
    assert inches(piece.outside.size(0), piece.outside.size(1), piece.outside.size(2)) == [40, 18, 34]
    assert size(piece, "case.face_frame.stile.1") == [31, 1.5, 0.75]
    assert piece.part("case.face_frame.stile.1").pose.x[2] == pytest.approx(1) or (
        piece.part("case.face_frame.stile.1").pose.x[2] == pytest.approx(-1)
    )


def test_openings_are_those_of_the_frame() -> None:
    piece = piece_of(CASE % ("cherry", "{}", "columns: [{size: 12, open: true}, {open: true}]"))
    stile, mullion = (piece.part(i).box for i in ("case.face_frame.stile.1", "inside.face.1"))
    divider = piece.part("inside.divider.1").box
    assert inches(mullion.low[0] - stile.high[0], mullion.size(0)) == [12, 1.5]
    assert inches(divider.low[0] - mullion.low[0], mullion.high[0] - divider.high[0]) == [3 / 8, 3 / 8]


def test_a_shelf_lies_flush_with_its_rail() -> None:
    piece = piece_of(CASE % ("cherry", "{}", "{between: shelf, rows: [{open: true}, {open: true}]}"))
    assert piece.part("inside.face.1").box.high[2] == pytest.approx(piece.part("inside.shelf.1").box.high[2])


def test_a_door_fits_its_opening() -> None:
    """Gaps of 1/16 in (common practice)."""
    piece = piece_of(CASE % ("board", "{}", "door: {made: slab, stock: board}"))
    slab = piece.part("door.1.slab").box
    stile, rail = piece.part("case.face_frame.stile.1").box, piece.part("case.face_frame.rail.2").box
    assert inches(slab.low[0] - stile.high[0], rail.low[2] - slab.high[2])[0] == pytest.approx(1 / 16)
    assert slab.low[1] == pytest.approx(stile.low[1])


def test_fillers_bring_the_walls_to_the_opening() -> None:
    piece = piece_of(CASE % ("cherry", "{}", f"drawer: {{runs_on: runners, {FRONT}}}"))
    filler = piece.part("inside.filler.1.1").box
    assert inches(filler.size(0)) == [0.75]
    assert filler.high[0] == pytest.approx(1.5 * IN)


def test_a_frame_without_an_opening_is_refused() -> None:
    assert codes(CASE % ("cherry", "{stile_width: 20}", "open: true")) == ["frame.no-room"]
