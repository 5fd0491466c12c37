"""Sheets of parts with fitted and shaped cuts: readable, every place said, sections as large as they are by hand."""

import math
import random
from itertools import pairwise

import pytest
from cut_samples import IN_INCHES, IN_METRIC, LETTERS, B, E, F, part

from boardwright.core.lengths import INCH, Printer
from boardwright.drawings.layout_dims import outside, overlaps, struck, texts
from boardwright.drawings.part_curves import offsets
from boardwright.drawings.part_positions import positions
from boardwright.drawings.part_sheet import part_drawing
from boardwright.drawings.records import Dimension
from boardwright.drawings.section import section
from boardwright.piece.cuts import (
    Bevel,
    Curve,
    DovetailSlot,
    DovetailTongue,
    Fingers,
    Groove,
    Hole,
    Mortise,
    Moulding,
    Pins,
    RaisedField,
    Side,
    Tails,
    Taper,
    Tenon,
    VGroove,
)

IN, MM = Printer("in", INCH / 32), Printer("mm", 0.5)
SHEETS = [(p, IN) for p in IN_INCHES] + [(p, MM) for p in IN_METRIC]
NAMES = [f"{p.name}-{printer.units}" for p, printer in SHEETS]


def named(name):
    return next(p for p in IN_INCHES if p.name == name)


@pytest.mark.parametrize(("sample", "printer"), SHEETS, ids=NAMES)
def test_no_text_overlaps_is_struck_or_runs_out(sample, printer):
    d = part_drawing(sample, printer, 170.0, 100.0, LETTERS)
    assert (overlaps(d), struck(d), outside(d)) == ([], [], [])


@pytest.mark.parametrize(("sample", "printer"), SHEETS, ids=NAMES)
def test_every_place_is_on_paper(sample, printer):
    d = part_drawing(sample, printer, 170.0, 100.0, LETTERS)
    said = [t.text for t in texts(d.entities)]
    p = positions(sample)
    for v in (*p.x, *p.y, *p.hole_x):
        assert printer.size(v) in said or printer.auxiliary(v) in said
    for a, b in p.shoulders:
        assert printer.size(b - a) in said


@pytest.mark.parametrize(("sample", "printer"), SHEETS, ids=NAMES)
def test_every_span_of_an_end_is_dimensioned_from_the_reference_edge(sample, printer):
    said = [t.text for t in texts(part_drawing(sample, printer, 170.0, 100.0, LETTERS).entities)]
    for cut in sample.cuts:
        if isinstance(cut, Fingers | Tails | Pins) and len(cut.sockets) < 20:
            for v in (v for span in cut.sockets for v in span):
                assert printer.auxiliary(v) in said or v in (0.0, sample.size[cut.wide])


def test_a_rail_is_dimensioned_from_shoulder_to_shoulder():
    # 26 long with a tenon of 1 1/4 at each end leaves 23 1/2
    assert [round((b - a) / INCH, 6) for a, b in positions(named("rail")).shoulders] == [23.5]
    d = part_drawing(named("rail"), IN)
    [between] = [e for e in d.entities if isinstance(e, Dimension) and e.text == "23 1/2"]
    [whole] = [e for e in d.entities if isinstance(e, Dimension) and e.text == "26"]
    share = (between.second[0] - between.first[0]) / (whole.second[0] - whole.first[0])
    assert share == pytest.approx(23.5 / 26)


def test_cuts_in_both_faces_show_both():
    assert "back face" in [t.text for t in texts(part_drawing(named("drawer side"), IN).entities)]
    assert "back face" not in [t.text for t in texts(part_drawing(named("rail"), IN).entities)]


WHOLE = 80.0 * 20.0


def area(*cuts, across=0, at=50.0, size=(100.0, 80.0, 20.0)):
    """Area of a section of a board of 100 x 80 x 20 mm [mm2]."""
    a, b = (size[i] for i in range(3) if i != across)
    return section(part("board", size, *cuts), across, at, (0.0, 0.0, a, b)).area


@pytest.mark.parametrize(
    ("cut", "gone"),
    [
        (Groove(F, 0, 30, 6, 8, 0, 100), 6 * 8),
        (Mortise(E, 0, 7, 6, 25, 20, 80), 6 * 25),
        # a trapezoid: 10 at the mouth, 10 + 2 x 8 tan 14 at the bottom
        (
            DovetailSlot(F, 0, 30, 10, 8, math.tan(math.radians(14)), 0, 100),
            8 * (10 + 8 * math.tan(math.radians(14))),
        ),
        (VGroove(F, 0, 40, 12, 6, 0, 100), 12 * 6 / 2),
        (Moulding(F, E, "chamfer", 5, (), 0, 100), 5 * 5 / 2),
        # a square less a quarter circle, and a quarter circle
        (Moulding(F, E, "round-over", 6, (), 0, 100), 36 - math.pi * 36 / 4),
        (Moulding(F, E, "cove", 6, (), 0, 100), math.pi * 36 / 4),
        # an ogee takes a quarter circle, a square, and a square less a quarter circle, all of half its size
        (Moulding(F, E, "ogee", 12, (), 0, 100), 36 * math.pi / 4 + 36 + (36 - 36 * math.pi / 4)),
        # along one edge: 10 x 14 flat, and a slope from 14 to 2 deep over 20
        (RaisedField(F, 30, 10, 6, 2, (E,)), 10 * 14 + 20 * (14 + 2) / 2),
        # 12 of a taper of 12 over 60 at 3/4 of the way from 40 to 100: at 50 it is 1/6 of 12
        (Taper(E, Side.FAR_END, 40, 12), 2 * 20),
    ],
)
def test_sections_are_as_large_as_by_hand(cut, gone):
    assert WHOLE - area(cut) == pytest.approx(gone, rel=2e-3)


def test_sections_of_ends_are_as_large_as_by_hand():
    # seen on the face, 3 sockets of 10 at the tip, 1:8, 16 deep: each widens by 2 a side, at an edge on one
    tails = Tails(Side.FAR_END, 1, 16, ((0, 10), (35, 45), (70, 80)), 1 / 8)
    gone = 16 * (10 + 12) / 2 * 2 + 16 * (10 + 14) / 2
    assert area(tails, across=2, at=10) == pytest.approx(100 * 80 - gone)
    # seen at the end: the same sockets entered from the back face, 16 deep of 20
    pins = Pins(Side.FAR_END, 1, 12, B, 16, ((5, 35), (45, 75)), 1 / 8)
    assert area(pins, at=95) == pytest.approx(WHOLE - 2 * 16 * (30 + 34) / 2)
    # a tongue 10 long: 2 off both sides at its tip and 2 + 10/8 at its shoulder
    tongue = DovetailTongue(Side.FAR_END, 1, 10, 2, 2, 1 / 8)
    assert area(tongue, across=1, at=40) == pytest.approx(100 * 20 - 2 * 10 * (2 + 3.25) / 2)


def test_a_hole_in_a_section_is_no_wood_and_its_ring_runs_the_other_way():
    drilled = part("board", (100.0, 80.0, 20.0), Hole(F, (50.0, 40.0), 10.0, 20.0, True))
    shown = section(drilled, 2, 10.0, (0.0, 0.0, 100.0, 80.0))
    assert shown.area == pytest.approx(8000 - math.pi * 25, rel=1e-3)
    [rings] = shown.pieces
    signs = [
        sum(p[0] * q[1] - q[0] * p[1] for p, q in zip(r, (*r[1:], r[0]), strict=True)) > 0 for r in rings
    ]
    assert signs == [True, False]


def test_the_outline_of_a_section_leaves_out_where_the_wood_runs_on():
    board = part("board", (100.0, 80.0, 20.0), Groove(F, 0, 30, 6, 8, 0, 100))
    lines = section(board, 0, 50.0, (20.0, 0.0, 50.0, 20.0)).outline
    edges = {frozenset(pq) for line in lines for pq in pairwise(line)}
    # the back face, the face on both sides of the groove, its two walls and its bottom
    assert edges == {
        frozenset(pair)
        for pair in (
            ((20, 0), (50, 0)), ((20, 20), (30, 20)), ((36, 20), (50, 20)),
            ((30, 20), (30, 12)), ((36, 20), (36, 12)), ((30, 12), (36, 12)),
        )
    }  # fmt: skip


def test_offsets_of_an_arc_lie_on_its_circle():
    # chord 26 in, rise 1 1/2: r = (13^2 + 1.5^2) / 3
    arc = Curve(E, 0, "arc", tuple((x * INCH, d * INCH) for x, d in ((2, 0), (15, 1.5), (28, 0))))
    r = (13**2 + 1.5**2) / 3
    found = offsets(arc, IN)
    assert found[0] == pytest.approx((2 * INCH, 0.0))
    assert found[-1] == pytest.approx((28 * INCH, 0.0))
    for x, depth in found:
        exact = 1.5 - r + math.sqrt(r * r - (x / INCH - 15) ** 2)
        assert abs(depth / INCH - exact) <= 1 / 64 + 1e-3
        assert IN.on_step(depth)


def random_cuts(rng, length, width, thick):
    """Up to four cuts of any kind, of the sizes that furniture has, on a board of a given size [mm]."""
    end = rng.choice((Side.END, Side.FAR_END))
    edge = rng.choice((E, Side.FAR_EDGE))
    face = rng.choice((F, B))
    at, over = float(rng.randint(20, int(length) - 60)), float(rng.randint(8, int(width) - 14))
    third = thick / 3
    pitch = width / 5
    sockets = tuple((i * pitch, i * pitch + pitch / 3) for i in range(5))
    choices = (
        Mortise(edge, 0, third, third, min(25.0, width / 2), at, at + 35),
        Mortise(face, 0, over, 6.0, thick / 2, at, at + 30),
        Tenon(end, 1, 20.0, third, third, ((width * 0.2, width * 0.8, 20.0),)),
        Fingers(end, 1, 12.0, sockets),
        Tails(end, 1, thick, sockets, 1 / 8),
        Pins(end, 1, 12.0, face, thick * 0.75, sockets, 1 / 6),
        DovetailSlot(face, 1, at, 10.0, thick / 3, 1 / 6, 0.0, width),
        DovetailTongue(end, 1, 8.0, 1.0, 1.0, 1 / 6),
        Bevel(end, 0.0, rng.choice((0.0, 0.5, 1.0)), rng.choice((0.0, 0.7))),
        Taper(edge, end, length / 2, width / 5),
        Moulding(face, edge, rng.choice(("chamfer", "round-over", "cove", "ogee")), 5.0, (), 0.0, length),
        RaisedField(
            face, min(25.0, width / 4), 6.0, thick / 2, 1.0, (Side.END, Side.FAR_END, E, Side.FAR_EDGE)
        ),
        Curve(edge, 0, "arc", ((0.0, 0.0), (length / 2, width / 4), (length, 0.0))),
        VGroove(face, 0, over, 8.0, 4.0, 0.0, length),
        Groove(face, 0, over, 6.0, 5.0, 0.0, length),
        Hole(face, (at, over), 5.0, thick, True, counterbore=10.0, counterbore_depth=4.0),
    )
    return tuple(rng.sample(choices, rng.randint(1, 4)))


@pytest.mark.parametrize("seed", range(40))
def test_random_parts_stay_readable(seed):
    rng = random.Random(seed)
    size = (
        rng.choice((150.0, 450.0, 1200.0)),
        rng.choice((40.0, 100.0, 300.0)),
        rng.choice((12.0, 19.0, 38.0)),
    )
    board = part("board", size, *random_cuts(rng, *size))
    for printer in (MM, IN):
        d = part_drawing(board, printer, 170.0, 100.0)
        assert (overlaps(d), struck(d), outside(d)) == ([], [], []), board
