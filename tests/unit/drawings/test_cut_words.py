"""Cuts in words: the saw as it is set, dovetails as they are laid out, and one wording for drawing and work list."""

import math

import pytest
from cut_samples import IN_INCHES, LETTERS, part

from boardwright.core.lengths import INCH, Printer
from boardwright.drawings.cut_words import said, words_for_work
from boardwright.drawings.cut_words.bevels import corners, saw_setting
from boardwright.drawings.cut_words.shaped import arc_radius, field_angle
from boardwright.drawings.cut_words.terms import between, equal_pitch, slope_text, spans_text
from boardwright.drawings.part_features import features
from boardwright.formulas.compound import compound_mitre_gauge, compound_mitre_tilt
from boardwright.piece.cuts import Bevel, Curve, Moulding, RaisedField, Side
from boardwright.plan.words import work_lines

IN = Printer("in", INCH / 32)


def keys(name):
    return [f.words for f in features(named(name), IN, LETTERS)]


def named(name):
    return next(p for p in IN_INCHES if p.name == name)


@pytest.mark.parametrize("slope", [0.0, 5.0, 15.0, 38.0, 60.0])
@pytest.mark.parametrize("sides", [3, 4, 6, 8])
def test_the_saw_is_set_as_the_closed_form_of_the_compound_mitre_says(slope, sides):
    # a mitred side lies in the plane through the corner; over its width it runs sin(s) tan(180/n), over its
    # thickness cos(s) tan(180/n) (solid geometry): the closed form is that of the tables for sloping mouldings
    s, half = math.radians(slope), math.tan(math.pi / sides)
    saw = saw_setting(Bevel(Side.END, 0.0, math.sin(s) * half, math.cos(s) * half))
    assert saw.gauge == pytest.approx(compound_mitre_gauge(slope, sides), abs=1e-9)
    assert saw.blade == pytest.approx(compound_mitre_tilt(slope, sides), abs=1e-9)


def test_crown_moulding_is_cut_as_the_tables_print_it():
    # tables for sloping mouldings, 38 degrees from the wall, square corner: mitre 31.62, bevel 33.86 (from memory)
    s = math.radians(38)
    words = said(Bevel(Side.END, 0.0, math.sin(s), math.cos(s)), (500.0, 90.0, 15.0), IN, {})
    assert words.name == "compound mitre"
    assert words.further == ("mitre gauge 31.62°", "blade 33.86°")


def test_a_plane_cut_by_the_saw_is_the_plane_of_the_bevel():
    # turn a blade that stands square by the tilt and the gauge: its normal must be that of the plane
    cut = Bevel(Side.END, 0.0, 0.31, -0.52)
    saw = saw_setting(cut)
    g, b = math.radians(saw.gauge), math.radians(saw.blade)
    normal = (math.cos(b) * math.cos(g), -math.cos(b) * math.sin(g), -math.sin(b))
    plane = (1.0, -cut.over_u, -cut.over_v)
    size = math.dist(plane, (0, 0, 0))
    assert normal == pytest.approx([v / size for v in plane])


def test_a_bevel_says_where_its_long_point_is():
    assert keys("mitred")[0] == (
        "mitre, 45°, at the reference end, long point at the reference edge, 2 1/4 off at the far edge, against C"
    )
    assert keys("bevelled")[1] == (
        "bevel, blade 45°, at the far end, long point at the back face, 3/4 off at the face, against C"
    )
    far = corners(Bevel(Side.FAR_END, 2.0, 0.5, 0.0), (100.0, 40.0, 20.0))
    assert far[(Side.FAR_EDGE, Side.FACE)] == far[(Side.FAR_EDGE, Side.BACK)] == 22.0
    assert far[(Side.EDGE, Side.FACE)] == 2.0


def test_tails_and_pins_are_laid_out_from_the_reference_edge():
    # 4 tails in 8 in with pins of 1/4: (8 - 5 x 1/4) / 4 = 1 11/16 wide
    text = work_lines(named("tails"), IN, LETTERS)[0]
    assert "slope 1:8 (7.1°)" in text
    assert (
        "at the tip they stand from 1/4 to 1 15/16; 2 3/16 to 3 7/8; 4 1/8 to 5 13/16; 6 1/16 to 7 3/4"
        in text
    )
    assert text.endswith("for the pins of D. Base line 3/4 from the reference end.")
    pins = work_lines(named("pins"), IN, LETTERS)[0]
    assert pins.startswith("5 half-blind pins at the reference end, sockets cut into the back face: ")
    assert "a lap of 1/4 stays" in pins


@pytest.mark.parametrize(
    ("slope", "text"),
    [
        (1 / 8, "1:8 (7.1°)"),
        (1 / 6, "1:6 (9.5°)"),
        (1 / 7.5, "1:7.5 (7.6°)"),
        (math.tan(math.radians(14)), "14°"),
    ],
)
def test_slopes(slope, text):
    assert slope_text(slope) == text


def test_tapers_shoulders_fields_and_curves():
    assert keys("leg")[2] == "taper, from 0 at 6 to 5/8 at the far end, 1.59°, on the reference edge"
    assert math.degrees(math.atan(0.625 / 22.5)) == pytest.approx(1.59, abs=0.005)
    assert work_lines(named("rail"), IN, LETTERS)[0] == "Between shoulders: 23 1/2."
    assert keys("rail")[0] == (
        "tenon 3/8 thick × 3 wide × 1 1/4 long at each end, shoulders 3/16 on both faces, "
        "haunch 3/8 long, 3 1/4 to 4 from the reference edge, into A"
    )
    # rise 20 - 8 - 2 over a run of 40 - 5
    field = RaisedField(Side.FACE, 40.0, 5.0, 8.0, 2.0, (Side.EDGE,))
    assert field_angle(field, 20.0) == pytest.approx(math.degrees(math.atan(10 / 35)))
    # r = (c^2 / 4 + h^2) / 2h: chord 26, rise 1 1/2
    assert arc_radius(Curve(Side.EDGE, 0, "arc", ((2, 0), (15, 1.5), (28, 0)))) == pytest.approx(
        (13**2 + 1.5**2) / 3
    )


def test_equal_edges_are_said_together():
    assert keys("top")[0] == "chamfer 3/8 × 45° of the back face, on all four sides"
    assert keys("finger") == ["4 sockets for fingers 1/2 wide × 1/2 deep at each end, for C"]


def test_many_equal_spans_are_said_by_their_pitch():
    spans = [(i * 12.7, i * 12.7 + 6.35) for i in range(30)]
    assert equal_pitch(spans) == pytest.approx(12.7)
    assert spans_text(spans, IN) == "0 to 1/4 and on every 1/2, the last 14 1/2 to 14 3/4"
    assert equal_pitch([(0, 1), (3, 4), (5, 6)]) == 0
    assert between([(0, 10), (30, 40)], 50) == [(10, 30), (40, 50)]


def test_drawing_and_work_list_use_the_same_words():
    for sample in IN_INCHES:
        for cut in sample.cuts:
            words = said(cut, sample.size, IN, LETTERS)
            line = words_for_work([cut], sample.size, IN, LETTERS)
            for piece in (*words.sizes, *words.further, *words.unseen, words.side):
                assert piece.rstrip(",") in line, (sample.name, piece, line)


def test_a_square_end_says_so():
    board = part("board", (100.0, 40.0, 20.0), Bevel(Side.END, 3.0, 0.0, 0.0))
    assert said(board.cuts[0], board.size, Printer("mm", 0.5), {}).key() == (
        "square cut at the reference end, 3 off the reference end"
    )


def test_slots_in_mitres_are_told_by_the_mitre():
    # a mitre of 45 degrees on the far end of a board 57 wide; a groove 9 deep square to it runs 9 root 2 below it
    p = Printer("mm", 0.5)
    mitre = Bevel(Side.FAR_END, 0.0, 1.0, 0.0)
    low = 57.0 + 9.0 * math.sqrt(2)
    groove = Moulding(
        Side.FAR_END, Side.FAR_EDGE, "profile", low, ((58.0, 0.0), (58.0, low - 58.0), (0.0, low)), 8.0, 11.0
    )
    key = Moulding(Side.FAR_END, Side.EDGE, "chamfer", 25.0 * math.sqrt(2), (), 8.0, 11.0)
    board = part("stile", (230.0, 57.0, 19.0), mitre, groove, key)
    assert work_lines(board, p, {})[1:] == [
        "Groove for a spline in the mitred face at the far end: 3 wide, 9 deep, 8 to 11 from the back face.",
        "Slot for a key across the corner of the far end and the reference edge: 3 wide, 25 deep from the corner, "
        "8 to 11 from the back face.",
    ]


def test_a_slot_square_to_a_slanted_face():
    # in a mitre of 45 degrees on edge, 20 thick: heel at (0, 20), mouth from 4 to 7 root 2 along it, 6 deep
    def on(along, down):
        return ((along + down) / math.sqrt(2), 20.0 - (along - down) / math.sqrt(2))

    a, b = 4 * math.sqrt(2), 7 * math.sqrt(2)
    points = ((on(b, 0)[0], 0.0), on(b, 0), on(b, 6), on(a, 6), on(a, 0), (0.0, on(a, 0)[1]))
    cut = Moulding(Side.FAR_END, Side.BACK, "profile", 21.0, points, 0.0, 150.0)
    words = said(cut, (180.0, 150.0, 20.0), Printer("mm", 0.5), {})
    assert words.key() == (
        "slot for a spline (4.2) wide × 6 deep square to the slanted face at the far end, "
        "near wall (5.7) from the heel at the back face"
    )


def test_equal_slots_for_biscuits_stand_in_one_line():
    assert work_lines(named("biscuits"), IN, LETTERS) == [
        "4 slots for No. 20 biscuits in the reference edge: 1/2 deep, middles from the reference end: 3; 9; 15; 21, "
        "middle 3/8 from the back face, for E."
    ]
