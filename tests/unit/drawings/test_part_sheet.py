"""Part sheets: every size of every cut is on paper, at its true place, and no text lies on another."""

import random
import re
from dataclasses import replace

import pytest
from drawing_samples import CHEST_SIDE, DRAWER_SIDE, IN, LETTERS, MM, PARTS, PINNED, RAIL, SHELF, STRIP, WOOD

from boardwright.core.poses import Pose
from boardwright.drawings.layout_dims import outside, overlaps, struck, texts
from boardwright.drawings.part_features import features
from boardwright.drawings.part_foot import wrapped
from boardwright.drawings.part_positions import positions
from boardwright.drawings.part_sheet import part_drawing
from boardwright.drawings.part_spots import spot
from boardwright.drawings.records import Dimension, Line
from boardwright.drawings.scales import INCH, METRIC
from boardwright.drawings.section import section
from boardwright.piece.cuts import Groove, Hole, Moulding, Notch, Rabbet, Side
from boardwright.piece.records import Part


@pytest.mark.parametrize(("part", "printer"), PARTS)
def test_no_text_overlaps_is_struck_or_runs_out(part, printer):
    d = part_drawing(part, printer, letters=LETTERS)
    assert overlaps(d) == []
    assert struck(d) == []
    assert outside(d) == []
    assert d.width == 180
    assert min(t.size for t in texts(d.entities)) >= 2.2


@pytest.mark.parametrize(("part", "printer"), PARTS)
def test_every_position_is_dimensioned(part, printer):
    d = part_drawing(part, printer)
    said = {e.text for e in d.entities if isinstance(e, Dimension)}
    p = positions(part)
    for v in (*p.x, *p.y, *p.hole_x, *part.size):
        assert printer.size(v) in said


@pytest.mark.parametrize(("part", "printer"), [(DRAWER_SIDE, MM), (SHELF, MM), (CHEST_SIDE, IN)])
def test_dimensions_lie_at_true_scale(part, printer):
    d = part_drawing(part, printer)
    k = 1 / float(d.scale.split(":")[1])
    wanted = {printer.size(v): v for v in (*positions(part).x, part.size[0])}
    lines = [e for e in d.entities if isinstance(e, Dimension) and not e.vertical and e.text in wanted]
    long = [e for e in lines if e.text == printer.size(part.size[0])]
    assert len(long) == 1
    for e in lines:
        if e.first[0] == long[0].first[0] and e.line_at >= long[0].second[1]:
            assert e.second[0] - e.first[0] == pytest.approx(wanted[e.text] * k, abs=1e-6)


def test_outline_ends_where_the_length_is_measured():
    for part, printer in ((CHEST_SIDE, IN), (SHELF, MM), (STRIP, MM)):
        d = part_drawing(part, printer)
        whole = next(
            e for e in d.entities if isinstance(e, Dimension) and e.text == printer.size(part.size[0])
        )
        across = next(
            e
            for e in d.entities
            if isinstance(e, Dimension) and e.vertical and e.text == printer.size(part.size[1])
        )
        low, high = sorted((across.first[1], across.second[1]))
        points = [p for e in d.entities if isinstance(e, Line) and e.style == "visible" for p in e.points]
        xs = {round(x, 4) for x, y in points if low - 1e-3 <= y <= high + 1e-3}
        assert round(whole.first[0], 4) in xs
        assert round(whole.second[0], 4) in xs
        assert not [x for x in xs if whole.second[0] + 1e-3 < x < whole.second[0] + 5]


def test_a_long_thin_part_is_broken_and_keeps_its_true_sizes():
    d = part_drawing(STRIP, MM)
    whole = next(e for e in d.entities if isinstance(e, Dimension) and e.text == "1500")
    assert d.scale == "1:1"
    assert whole.second[0] - whole.first[0] < 180


def test_scales_are_of_the_standard_lists():
    for part, printer in PARTS:
        n = float(part_drawing(part, printer).scale.split(":")[1])
        assert n in (INCH if printer.units == "in" else METRIC)


def test_key_groups_equal_cuts_and_names_what_they_hold():
    words = [f.words for f in features(CHEST_SIDE, IN, LETTERS)]
    assert (
        words[0] == "2 × dado 3/4 wide × 1/4 deep in the face, stops 17 5/8 off the reference edge, for C, E"
    )
    assert words[1] == "rabbet 1/4 wide × 3/8 deep along the far edge, cut into the face, for G"
    assert words[3] == (
        "6 × Ø 3/16 through from the back face, countersunk Ø 3/8 at 82°, for No. 8 x 1 1/4 screw"
    )
    assert len(words) == 5


def test_a_row_of_holes_is_dimensioned_as_pitches():
    assert positions(PINNED).rows == ((200.0, 808.0, 20),)
    said = {e.text for e in part_drawing(PINNED, MM).entities if isinstance(e, Dimension)}
    assert "19 × 32 = 608" in said


def test_edge_and_end_holes_say_where_they_are_in_the_thickness():
    words = [f.words for f in features(RAIL, MM, {})]
    assert "2 × Ø 4.5 through from the far edge, countersunk Ø 9 at 82°, 9.5 from the back face" in words
    assert "Ø 8 × 25 deep from the reference end, 9.5 from the back face" in words


def random_part(rng):
    """A board with up to five cuts of any kind, of the sizes that furniture has."""
    length, width = rng.choice((200.0, 450.0, 800.0, 1200.0)), rng.choice((40.0, 100.0, 250.0, 450.0))
    thick = rng.choice((12.0, 19.0))
    cuts = []
    for _ in range(rng.randint(1, 5)):
        side = rng.choice((Side.FACE, Side.BACK))
        at, over = float(rng.randint(10, int(length) - 40)), float(rng.randint(5, int(width) - 12))
        edge = rng.choice((Side.EDGE, Side.FAR_EDGE, Side.END, Side.FAR_END))
        cuts.append(
            rng.choice(
                (
                    Groove(side, 1, at, 18.0, 5.0, 0.0, rng.choice((width, width - 5))),
                    Groove(side, 0, over, 6.0, 5.0, rng.choice((0.0, 20.0)), length),
                    Rabbet(side, edge, 8.0, 5.0, 0.0, width if edge.axis == 0 else length),
                    Notch(
                        rng.choice((Side.END, Side.FAR_END)),
                        rng.choice((Side.EDGE, Side.FAR_EDGE)),
                        20.0,
                        12.0,
                    ),
                    Hole(side, (at, over), 4.5, thick, True, 9.0),
                    Hole(Side.EDGE, (at, thick / 2), 6.0, 20.0),
                )
            )
        )
    return Part("x", "board", WOOD, (length, width, thick), Pose(), tuple(dict.fromkeys(cuts)), "X")


def test_random_parts_stay_readable():
    rng = random.Random(20)
    for _ in range(25):
        part = random_part(rng)
        for printer in (MM, IN):
            d = part_drawing(part, printer)
            assert (overlaps(d), struck(d), outside(d)) == ([], [], []), part


def test_the_same_part_gives_the_same_drawing():
    assert part_drawing(CHEST_SIDE, IN) == part_drawing(CHEST_SIDE, IN)


def test_a_mixed_number_stays_in_one_line():
    """21 at the end of one line and 5/8 at the start of the next would be read as 21."""
    words = (
        "groove 1/4 wide × 3/8 deep in the face, stops 21 5/8 off the end, for No. 4 x 1 3/4 in wood screw"
    )
    for width in range(12, 90):
        rows = wrapped(words, float(width))
        assert " ".join(rows) == words
        assert not any(re.search(r"(No\.|[x×])$", row) for row in rows)
        assert not re.search(r"(^| )\d+\n\d+/\d+", "\n".join(rows))


def test_a_section_keeps_corners_close_to_where_the_solid_is_split():
    """A dado has two square corners at its mouth and two at its floor, wherever it is cut through."""
    part = replace(
        SHELF, size=(590.55, 508.0, 19.05), cuts=(Groove(Side.FACE, 1, 317.5, 19.05, 6.35, 0.0, 508.0),)
    )
    mouth = {(317.5, 19.05), (336.55, 19.05), (317.5, 12.7), (336.55, 12.7)}
    for at in (*(16.0 + k / 100 for k in range(60)), 100.0, 300.0):
        [piece] = section(part, 1, at, (303.5, 0.0, 350.55, 19.05)).pieces
        assert mouth <= {(round(x, 3), round(y, 3)) for x, y in piece[0]}


def test_a_slot_across_a_corner_is_pointed_at_on_its_own_corner():
    size = (680.0, 57.0, 22.0)
    for end, x in ((Side.END, 17.5), (Side.FAR_END, 662.5)):
        cut = Moulding(end, Side.EDGE, "chamfer", 35.0, (), 9.5, 12.5)
        found = spot(cut, size, 3.0)
        assert (found.x, found.y) == (x, 7.0)
