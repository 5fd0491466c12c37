"""Pictures of the whole piece, elevations and layouts."""

import itertools

import pytest
from drawing_samples import IN, MM, chest, inches

from boardwright.drawings.balloons import crossing
from boardwright.drawings.elevations import front_side_top
from boardwright.drawings.layout_dims import outside, overlaps, struck, texts
from boardwright.drawings.pictorial import assembled, exploded, offsets
from boardwright.drawings.pictures import picture
from boardwright.drawings.records import Circle, Dimension, Line, Text
from boardwright.drawings.sheet_layout import Laid, Left, SawCut, layout_drawing
from boardwright.solids.exact import FRONT, PICTORIAL, part_shape, placed


def all_clear(d):
    return overlaps(d) == [] and struck(d) == [] and outside(d) == []


def test_assembled_and_exploded_name_every_letter_once():
    c = chest()
    d = exploded(c.parts, c.motions, c.joints)
    assert all_clear(d)
    assert sorted(t.text for t in texts(d.entities)) == sorted({p.letter for p in c.parts})
    seen = [t.text for t in texts(assembled(c.parts).entities)]
    assert len(seen) == len(set(seen))
    assert set(seen) == {"A", "B", "C", "D", "G", "J"}


def test_leaders_do_not_cross():
    c = chest()
    for d in (assembled(c.parts), exploded(c.parts, c.motions, c.joints)):
        rims = [e.at for e in d.entities if isinstance(e, Circle)]
        leaders = [
            e.points
            for e in d.entities
            if isinstance(e, Line)
            and any(
                abs((e.points[0][0] - r[0]) ** 2 + (e.points[0][1] - r[1]) ** 2 - 2.25**2) < 1e-3
                for r in rims
            )
        ]
        assert len(leaders) == len(rims)
        assert not any(crossing(*a, *b) for a, b in itertools.combinations(leaders, 2))


def test_parts_come_apart_only_along_their_joints():
    c = chest()
    moves = dict(zip((p.id for p in c.parts), offsets(c.parts, c.motions, c.joints), strict=True))
    assert moves["top"][2] > 0
    assert moves["top"][:2] == (0, 0)
    assert moves["right"][1] == 0
    assert moves["drawer.1.front"][1] < -400


def test_seen_area_of_a_front_is_the_sum_of_its_seen_faces():
    """Nothing is seen twice: the tones of a closed block of parts cover its front once, 600 x 500 at most."""
    c = chest()
    shown = picture([placed(part_shape(p), p.pose) for p in c.parts], FRONT)
    area = sum(f.area for f in shown.faces)
    gap_under = (600 - 2 * 18) * 40
    assert area <= 600 * 500 - gap_under + 1
    assert area > 0.97 * (600 * 500 - gap_under)


def test_nearest_face_wins():
    c = chest()
    shown = picture([placed(part_shape(p), p.pose) for p in c.parts], PICTORIAL)
    names = {c.parts[f.part_index].id for f in shown.faces}
    assert "drawer.1.side" not in names
    assert {"top", "right", "drawer.1.front"} <= names


def test_elevations_carry_the_main_sizes():
    front, side, top = front_side_top(chest(), MM)
    assert all(all_clear(d) for d in (front, side, top))
    said = [{e.text for e in d.entities if isinstance(e, Dimension)} for d in (front, side, top)]
    assert {"600", "500", "564", "198", "200"} <= said[0]
    assert {"400", "500", "202", "204"} <= said[1]
    assert said[2] == {"600", "400"}
    assert len({d.scale for d in (front, side, top)}) == 1


def layout(cuts=True):
    placed_ = [
        Laid("A", "981 × 450", 10, 10, 981, 450),
        Laid("D", "940 × 300", 995, 10, 940, 300),
        Laid("H", "401 × 60", 995, 314, 401, 60),
        Laid("K", "300 × 25", 995, 378, 300, 25),
        Laid("M", "40 × 40", 1300, 378, 40, 40),
    ]
    left = [Left(1939, 10, 490, 1200, True), Left(10, 464, 981, 746), Left(995, 422, 940, 788)]
    saw = [SawCut((1937, 0), (1937, 1220)), SawCut((993, 0), (993, 1220)), SawCut((0, 462), (993, 462)),
           SawCut((993, 312), (1937, 312)), SawCut((993, 376), (1937, 376))]  # fmt: skip
    return layout_drawing("sheet-1", "Sheet 1", 2440, 1220, placed_, MM, left, saw if cuts else (), "sheet")


@pytest.mark.parametrize("cuts", [True, False])
def test_layout_is_clear_and_complete(cuts):
    d = layout(cuts)
    assert all_clear(d)
    said = {t.text for t in texts(d.entities)}
    assert {"A", "D", "H", "K", "M", "2440", "1220", "981 × 450", "keep 490 × 1200"} <= said
    assert ({"1", "2", "3", "4", "5"} <= said) == cuts
    assert d.scale == "1:20"


def test_narrow_strip_gets_a_balloon():
    strip = Laid("F", "30 × 1", 0, 0, *inches(30, 1))
    d = layout_drawing("board-1", "Board 1", *inches(96, 8), [strip], IN)
    assert all_clear(d)
    assert [t.text for t in d.entities if isinstance(t, Text) and t.bold] == ["F"]
    assert any(isinstance(e, Circle) for e in d.entities)
