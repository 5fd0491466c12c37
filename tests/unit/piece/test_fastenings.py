"""Every fastening in every place where two parts can meet: it sets out, and the holes of both parts meet.

Published sizes. Biscuits: craft guide on plate joinery, W x L in inches, No. 0 5/8 x 1 7/8, No. 10 3/4 x 2 1/8, No. 20
15/16 x 2 1/4 (trade rounds to 1/16; in mm 15 x 47, 19 x 53, 23 x 56 by a tool guide and from memory); spacing 6 to
10 in, the first 2 to 3 in from the end, no No. 20 in stock of 1/2 in or less: plate joiner manual, p. 9. Pocket
screws: 15 degrees, 3/8 in bore, 1, 1 1/4, 1 1/2, 2 1/2 in screws for 1/2, 3/4, 1, 1 1/2 in stock; loose tenons: a
third of the thickness, as long as both mortises less 1/16 in, mortises 3/4 to 1 1/4 in deep: common practice.
"""

import math
from itertools import pairwise

import pytest

from bench import IN, codes, holes, piece_of, two_parts
from boardwright.core.poses import Vec, add, dot, scaled
from boardwright.piece.cuts import BiscuitSlot, Hole, Mortise
from boardwright.piece.records import Fastener, Part, Piece
from boardwright.pipeline import check_text
from boardwright.tables import default_tables

UPRIGHT, SHELF = "parts.upright", "parts.shelf"
FASTENINGS = ("screws", "plugged_screws", "dowels", "biscuits", "pocket_screws", "loose_tenons", "none")

PLACES = {
    "end to face, from the right": ("along: x, across: y, at: [stock.{s}, 0, 5]", ""),
    "end to face, from the left": ("along: x, across: y, at: [-20, 0, 5]", ""),
    "end to face, at the very top": ("along: x, across: y, at: [stock.{s}, 0, 11 1/4]", ""),
    "end on end grain": ("along: z, across: y, at: [0, 0, 12]", ""),
    "end under end grain": ("along: z, across: y, at: [0, 0, -20]", ""),
    "standing behind": ("along: y, across: x, at: [0, 10, 5]", ""),
    "standing before": ("along: y, across: z, at: [0, -20, 1]", ""),
}
"""How the second part stands; the first is 12 high (z), 10 deep (y), its thickness along x."""


def meeting_parts(place: str, fasten: str, stock: str) -> str:
    stands = PLACES[place][0].format(s=stock)
    return f"""
boardwright: 1
title: Two parts
units: in
stock:
  cherry: {{wood: cherry_black, thickness: 3/4}}
  pine: {{wood: pine_sugar, thickness: 1}}
  ply: {{sheet: hardwood_plywood, thickness: 3/4, measured: 0.72}}
parts:
  upright: {{stock: {stock}, length: 12, width: 10, along: z, across: y, at: [0, 0, 0]}}
  shelf: {{stock: {stock}, length: 20, width: 10, {stands}}}
joints:
  - {{first: upright, second: shelf, kind: butt, fasten: {fasten}}}
"""


def in_piece(part: Part, point: Vec) -> Vec:
    """A point of the part's own frame in the piece [mm]."""
    at = part.pose.origin
    for axis, v in zip((part.pose.x, part.pose.y, part.pose.z), point, strict=True):
        at = add(at, scaled(axis, v))
    return at


def line_of(part: Part, hole: Hole) -> tuple[Vec, Vec]:
    """A point of a hole's axis, and its direction, in the piece."""
    axis = hole.side.axis
    others = [k for k in range(3) if k != axis]
    mouth, way = [0.0] * 3, [0.0] * 3
    mouth[axis] = part.size[axis] if hole.side.high else 0.0
    mouth[others[0]], mouth[others[1]] = hole.at
    way[axis] = (-1.0 if hole.side.high else 1.0) * math.cos(math.radians(hole.lean))
    if hole.lean:
        way[hole.lean_along] = math.sin(math.radians(hole.lean))
    end = in_piece(part, (mouth[0] + way[0], mouth[1] + way[1], mouth[2] + way[2]))
    start = in_piece(part, (mouth[0], mouth[1], mouth[2]))
    return start, add(end, scaled(start, -1.0))


def off(point: Vec, line: tuple[Vec, Vec]) -> float:
    """How far a point lies from a line [mm]."""
    start, way = line
    gap = add(point, scaled(start, -1.0))
    return math.dist(gap, scaled(way, dot(gap, way)))


def own_holes(piece: Piece, id: str, f: Fastener) -> list[Hole]:
    """The holes of a part whose axis a fastener lies on."""
    part = piece.part(id)
    return [h for h in holes(part) if max(off(f.at, line_of(part, h)), off(f.tip, line_of(part, h))) < 1e-6]


@pytest.mark.parametrize("stock", ["cherry", "pine", "ply"])
@pytest.mark.parametrize("place", PLACES)
@pytest.mark.parametrize("fasten", FASTENINGS)
def test_every_fastening_in_every_place(fasten: str, place: str, stock: str) -> None:
    result = check_text(meeting_parts(place, fasten, stock))
    found = {f.code for f in result.findings if f.severity == "error"}
    assert not {c for c in found if c.startswith(("fit.", "size.", "joint."))}
    assert not found - {"fastener.none-fits", "wood.cross-grain"}
    piece = result.piece
    assert piece is not None
    if "fastener.none-fits" in found:
        assert not piece.fasteners
        return
    assert (fasten == "none") == (not piece.fasteners)
    for f in piece.fasteners:
        if f.kind in ("screw", "dowel"):
            assert len(own_holes(piece, f.held, f)) == 1
            assert len(own_holes(piece, f.into, f)) == 1
        elif f.kind == "pocket screw":
            assert len(own_holes(piece, f.held, f)) == 1
        elif f.kind in ("biscuit", "loose tenon"):
            _pockets_meet(piece, f)


def _pockets_meet(piece: Piece, f: Fastener) -> None:
    """The middle of a flat fastener, on the joint, is the middle of one pocket of either part."""
    middle = {id: [_mouth(piece.part(id), c) for c in piece.part(id).cuts] for id in (f.held, f.into)}
    for places in middle.values():
        assert sum(1 for m in places if m and off(m, (f.at, f.direction)) < 1e-6) == 1


def _mouth(part: Part, cut: object) -> Vec | None:
    if isinstance(cut, Mortise):
        third = 3 - cut.side.axis - cut.along
        where = {cut.along: (cut.start + cut.end) / 2, third: cut.at + cut.width / 2}
    elif isinstance(cut, BiscuitSlot):
        where = dict(zip([k for k in range(3) if k != cut.side.axis], cut.at, strict=True))
    else:
        return None
    where[cut.side.axis] = part.size[cut.side.axis] if cut.side.high else 0.0
    return in_piece(part, (where[0], where[1], where[2]))


@pytest.mark.parametrize(
    ("number", "width", "length"), [(0, 5 / 8, 1.875), (10, 3 / 4, 2.125), (20, 15 / 16, 2.25)]
)
def test_biscuits_are_of_the_published_sizes(number: int, width: float, length: float) -> None:
    piece = piece_of(two_parts(f"kind: butt, fasten: biscuits, biscuit: {number}"))
    one = piece.fasteners[0]
    assert one.name == f"No. {number} biscuit"
    # the guide gives sixteenths, up to 1 mm over the sizes in mm
    assert one.length / IN == pytest.approx(width, abs=1 / IN)
    assert math.hypot(*one.wide) / IN == pytest.approx(length, abs=1.2 / IN)
    assert one.diameter / IN == pytest.approx(5 / 32, abs=0.002)
    [slot, *_] = [c for c in piece.part(SHELF).cuts if isinstance(c, BiscuitSlot)]
    # room for half of the biscuit, and the chord of the cutter is longer than it
    assert one.length / 2 < slot.depth < one.length / 2 + 1.6
    assert 2 * math.sqrt(2 * slot.radius * slot.depth - slot.depth**2) > math.hypot(*one.wide)


def test_biscuits_are_spaced_as_the_manual_says() -> None:
    piece = piece_of(EDGES.format(joint="kind: edge, with: biscuits"))
    along = sorted(f.at[0] / IN for f in piece.fasteners)
    assert 2 <= along[0] <= 3
    assert 2 <= 30 - along[-1] <= 3
    assert all(6 - 1 / 32 <= b - a <= 10 for a, b in pairwise(along))


@pytest.mark.parametrize(("thickness", "number"), [("1/2", 0), ("3/4", 20)])
def test_thin_stock_takes_smaller_biscuits(thickness: str, number: int) -> None:
    # 1/2 in: No. 20 is not used (manual); No. 10 would leave 12.7 - 10 = 2.7 mm behind its slot, less than 1/8 in
    text = two_parts("kind: butt, fasten: biscuits").replace(
        "cherry_black, thickness: 3/4", f"cherry_black, thickness: {thickness}"
    )
    piece = piece_of(text)
    assert {f.name for f in piece.fasteners} == {f"No. {number} biscuit"}
    asked = text.replace("fasten: biscuits", "fasten: biscuits, biscuit: 20")
    assert ("fastener.none-fits" in codes(asked)) == (thickness == "1/2")


@pytest.mark.parametrize(
    ("stock", "screw"), [("1/2", "1 in"), ("3/4", "1 1/4 in"), ("1", "1 1/2 in"), ("1 1/2", "2 1/2 in")]
)
def test_pocket_screws_by_thickness(stock: str, screw: str) -> None:
    text = two_parts("kind: butt, fasten: pocket_screws")
    text = text.replace("cherry_black, thickness: 3/4", f"cherry_black, thickness: {stock}")
    piece = piece_of(text)
    assert {f.name for f in piece.fasteners} == {f"{screw} pocket screw, fine thread"}
    t = float(piece.part(SHELF).stock.thickness)
    for f in piece.fasteners:
        assert f.held == SHELF
        assert f.into == UPRIGHT
        # 15 degrees to the face, into the upright
        assert math.degrees(math.asin(abs(f.direction[2]))) == pytest.approx(15, abs=1e-9)
        assert f.direction[0] < 0
        # its axis crosses the joint at mid-thickness, within half a step over tan 15
        out = f.at[2] + (t - f.at[0]) / f.direction[0] * f.direction[2]
        assert out - 5 * IN == pytest.approx(t / 2, abs=IN / 64 * math.tan(math.radians(15)) + 1e-6)
        # the tip stops inside an upright as thick
        assert f.tip[0] >= 2.9  # 1/8 in of common practice, 3 mm, to a tenth
        assert f.tip[0] < t - 2 * f.diameter * math.cos(math.radians(15))
    bores = [h for h in holes(piece.part(SHELF)) if h.lean]
    assert len(bores) == len(piece.fasteners)
    assert {round(h.counterbore / IN, 4) for h in bores} == {0.375}
    assert {90 - abs(h.lean) for h in bores} == {15.0}


def test_pockets_are_drilled_from_the_underside_of_a_shelf() -> None:
    piece = piece_of(two_parts("kind: butt, fasten: pocket_screws"))
    shelf = piece.part(SHELF)
    for h in holes(shelf):
        start, _ = line_of(shelf, h)
        assert start[2] / IN == pytest.approx(5)


def test_coarse_thread_in_sheets() -> None:
    piece = piece_of(two_parts("kind: butt, fasten: pocket_screws", upright="ply", shelf="ply"))
    assert {f.name for f in piece.fasteners} == {"1 1/4 in pocket screw, coarse thread"}


def test_no_pocket_screw_in_a_thin_sheet() -> None:
    assert "fastener.none-fits" in codes(two_parts("kind: butt, fasten: pocket_screws", shelf="thin"))


def test_plugs_cover_screws_reckoned_from_the_counterbore() -> None:
    plain = piece_of(two_parts("kind: butt, fasten: screws", upright="ply", shelf="ply"))
    piece = piece_of(two_parts("kind: butt, fasten: plugged_screws", upright="ply", shelf="ply"))
    screws = [f for f in piece.fasteners if f.kind == "screw"]
    plugs = [f for f in piece.fasteners if f.kind == "plug"]
    assert len(screws) == len(plugs) == len(plain.fasteners)
    # 3/8 plug, 1/4 deep: 1/2 in under the head, so a screw of 1 in where a plain one is twice 3/4 long
    assert {f.name for f in plugs} == {"3/8 in wood plug"}
    assert {(round(f.at[0] / IN, 6), round(f.length / IN, 6)) for f in screws} == {(0.25, 1.0)}
    assert {round(f.length / IN, 6) for f in plain.fasteners} == {1.5}
    bores = holes(piece.part(UPRIGHT))
    assert {
        (round(h.counterbore / IN, 6), round(h.counterbore_depth / IN, 6), h.countersink) for h in bores
    } == {(0.375, 0.25, 0.0)}
    # thread: 1 - 1/2 in the shelf
    assert {round(h.depth / IN, 6) for h in holes(piece.part(SHELF))} == {0.5}


def test_a_thin_part_takes_no_plugs() -> None:
    assert "fastener.none-fits" in codes(two_parts("kind: butt, fasten: plugged_screws", upright="thin"))


def test_a_plug_must_cover_the_head() -> None:
    # No. 16: head 0.060 + 0.013 x 16 = 0.268 shank, about twice that over its head; the widest plug is 1/2 in
    text = two_parts("kind: butt, fasten: plugged_screws, screw: {0}", upright="ply", shelf="ply")
    gauges = sorted(s.gauge for s in default_tables().screws.values() if s.head > 12.7)
    if not gauges:
        pytest.skip("no such screw in the table")
    assert "fastener.none-fits" in codes(text.replace("{0}", str(gauges[0])))


def test_loose_tenons_are_a_third_thick_and_short_of_both_mortises() -> None:
    piece = piece_of(two_parts("kind: butt, fasten: loose_tenons"))
    into, end = ([c for c in piece.part(id).cuts if isinstance(c, Mortise)] for id in (UPRIGHT, SHELF))
    assert len(into) == len(end) == len(piece.fasteners) > 0
    # 3/4: 1/4 thick; 1 deep in the end, 5/8 in the face (1/8 left behind it); 1 + 5/8 - 1/16 long
    assert {round(m.width / IN, 6) for m in into + end} == {0.25}
    assert {round(m.depth / IN, 6) for m in end} == {1.0}
    assert {round(m.depth / IN, 6) for m in into} == {0.625}
    assert [f.length / IN for f in piece.fasteners] == pytest.approx([1.5625] * len(into))
    for f in piece.fasteners:
        assert f.diameter / IN == pytest.approx(0.25)
        # it ends short of the bottom of either mortise
        assert f.at[0] > (0.75 - 0.625) * IN
        assert f.tip[0] < (0.75 + 1.0) * IN


def test_a_rail_has_one_loose_tenon_with_shoulders() -> None:
    text = two_parts("kind: butt, fasten: loose_tenons, length: 1/2").replace("width: 10", "width: 3")
    piece = piece_of(text)
    [tenon] = piece.fasteners
    # 3 wide, 1/4 at each end
    assert math.hypot(*tenon.wide) / IN == pytest.approx(2.5)
    assert tenon.length / IN == pytest.approx(2 * 0.5 - 1 / 16)


def test_no_loose_tenon_in_a_thin_sheet() -> None:
    assert "fastener.none-fits" in codes(two_parts("kind: butt, fasten: loose_tenons", upright="thin"))


@pytest.mark.parametrize("fasten", ["dowels", "biscuits", "pocket_screws", "loose_tenons"])
@pytest.mark.parametrize(
    ("kind", "at"), [("dado", "5"), ("rabbet", "11 1/4"), ("tongue", "5"), ("double_rabbet", "11 1/4")]
)
def test_what_is_set_across_is_refused_where_a_part_is_let_in(fasten: str, kind: str, at: str) -> None:
    assert "fastener.not-here" in codes(two_parts(f"kind: {kind}, fasten: {fasten}", at=at))


EDGES = """
boardwright: 1
title: Two boards
units: in
stock:
  cherry: {{wood: cherry_black, thickness: 3/4}}
  ply: {{sheet: hardwood_plywood, thickness: 1/4, measured: 0.2}}
parts:
  one: {{stock: cherry, length: 30, width: 5, along: x, across: y, at: [0, 0, 0]}}
  two: {{stock: cherry, length: 30, width: 5, along: x, across: y, at: [0, 5, 0]}}
joints:
  - {{first: one, second: two, {joint}}}
"""
