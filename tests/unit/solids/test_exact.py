"""OCCT against plain arithmetic: volumes whose sums stand beside them, projections of known solids."""

import itertools
import math

import pytest

from boardwright.core.poses import Box, Pose
from boardwright.piece.cuts import Groove, Hole, Notch, Rabbet, Side
from boardwright.piece.records import Part, Stock
from boardwright.solids import exact
from boardwright.solids.shaded import inside_point, seen_faces, silhouette

WOOD = Stock("wood", "wood", "cherry", "", 19.0, 25.0, False, 560.0)


def part(*cuts, size=(600.0, 300.0, 20.0), pose=None):
    return Part("p", "part", WOOD, size, pose or Pose(), cuts)


BLANK = 600 * 300 * 20


@pytest.mark.parametrize(
    ("cut", "gone"),
    [
        (Groove(Side.FACE, 1, 100.0, 18.0, 6.0, 0.0, 300.0), 18 * 6 * 300),
        (Groove(Side.BACK, 0, 20.0, 6.0, 5.0, 50.0, 550.0), 6 * 5 * 500),
        (Groove(Side.EDGE, 0, 7.0, 6.0, 10.0, 0.0, 600.0), 6 * 10 * 600),
        (Rabbet(Side.FACE, Side.FAR_EDGE, 9.0, 6.0, 0.0, 600.0), 9 * 6 * 600),
        (Notch(Side.END, Side.EDGE, 20.0, 40.0), 20 * 40 * 20),
        (Hole(Side.FACE, (300.0, 150.0), 8.0, 10.0), math.pi * 4**2 * 10),
        (Hole(Side.END, (150.0, 10.0), 8.0, 25.0), math.pi * 4**2 * 25),
        (Hole(Side.FACE, (300.0, 150.0), 5.0, 20.0, True, slot=12.0), math.pi * 2.5**2 * 20 + 12 * 5 * 20),
        # a countersink of 10 at 90 degrees in a hole of 4: a frustum 3 high, radii 5 and 2, less its cylinder
        (
            Hole(Side.FACE, (300.0, 150.0), 4.0, 20.0, True, 10.0, 90.0),
            math.pi * 2**2 * 20 + math.pi * 3 / 3 * (25 + 10 + 4) - math.pi * 4 * 3,
        ),
    ],
)
def test_volume_is_the_blank_less_the_cut(cut, gone):
    assert exact.volume(exact.part_shape(part(cut))) == pytest.approx(BLANK - gone, rel=1e-9)


def test_placing_keeps_the_volume_and_cutting_off_takes_its_share():
    pose = Pose((10.0, 20.0, 30.0), (0, 0, 1), (0, 1, 0), (-1, 0, 0))
    shape = exact.placed(exact.part_shape(part(pose=pose)), pose)
    assert exact.volume(shape) == pytest.approx(BLANK)
    assert exact.volume(exact.beyond(shape, 2, 30.0 + 150.0)) == pytest.approx(BLANK / 4)


def test_step_is_read_back_with_its_volumes_and_names(tmp_path, capfd):
    p = part(Groove(Side.FACE, 1, 100.0, 18.0, 6.0, 0.0, 300.0))
    shape = exact.part_shape(p)
    named = [("A side", shape), ("A side", exact.placed(shape, Pose((0.0, 0.0, 500.0)))),
             ("B block", exact.box_shape(Box((0.0, 0.0, 40.0), (10.0, 20.0, 70.0))))]  # fmt: skip
    first, second = tmp_path / "1" / "chest.step", tmp_path / "2" / "chest.step"
    for path in (first, second):
        path.parent.mkdir()
        exact.write_step(named, path, "chest")
    found = exact.read_step_volumes(first)
    assert sorted(found) == pytest.approx(sorted([BLANK - 32400, BLANK - 32400, 6000]))
    text = first.read_text()
    assert all(f"PRODUCT('{n}'" in text for n in ("A side", "B block", "chest"))
    assert "SI_UNIT(.MILLI.,.METRE.)" in text
    assert text == second.read_text()
    assert capfd.readouterr().out == ""


def test_a_file_that_is_not_step_is_refused(tmp_path):
    (tmp_path / "no.step").write_text("not a STEP file")
    with pytest.raises(ValueError, match="cannot be read as STEP"):
        exact.read_step_volumes(tmp_path / "no.step")


def spans(edges, hidden):
    return sorted(
        tuple(sorted((round(p[0], 3), round(p[1], 3)) for p in e.points)) for e in edges if e.hidden is hidden
    )


def test_a_box_from_the_front_is_its_rectangle():
    edges = exact.projected_edges([exact.box_shape(Box((0.0, 0.0, 0.0), (40.0, 30.0, 20.0)))], exact.FRONT)
    seen = set(spans(edges, False))
    assert seen == {((0, 0), (40, 0)), ((0, 0), (0, 20)), ((40, 0), (40, 20)), ((0, 20), (40, 20))}


def test_a_box_in_a_pictorial_view_shows_nine_of_its_twelve_edges():
    edges = exact.projected_edges(
        [exact.box_shape(Box((0.0, 0.0, 0.0), (40.0, 30.0, 20.0)))], exact.PICTORIAL
    )
    assert len(spans(edges, False)) == 9
    assert len(spans(edges, True)) == 3


def test_what_stands_behind_is_hidden():
    near = exact.box_shape(Box((0.0, 0.0, 0.0), (100.0, 10.0, 100.0)))
    far = exact.box_shape(Box((20.0, 50.0, 20.0), (60.0, 60.0, 60.0)))
    edges = exact.projected_edges([near, far], exact.FRONT)
    assert {e.part_index for e in edges if not e.hidden} == {0}
    assert any(e.part_index == 1 and e.hidden for e in edges)
    assert not any(e.hidden for e in exact.projected_edges([near, far], exact.FRONT, hidden=False))


def test_round_edges_keep_to_their_circle():
    shape = exact.part_shape(part(Hole(Side.FACE, (300.0, 150.0), 40.0, 20.0, True)))
    points = [p for e in exact.projected_edges([shape], exact.TOP) if len(e.points) > 2 for p in e.points]
    assert points
    assert all(math.dist(p, (300, 150)) == pytest.approx(20, abs=1e-6) for p in points)
    ring = next(e.points for e in exact.projected_edges([shape], exact.TOP) if len(e.points) > 2)
    chord = max(math.dist(a, b) for a, b in itertools.pairwise(ring))
    assert 20 - math.sqrt(400 - chord**2 / 4) <= exact.SAGITTA + 1e-6


def test_seen_faces_cover_what_is_seen_and_nothing_twice():
    near = exact.box_shape(Box((0.0, 0.0, 0.0), (100.0, 10.0, 100.0)))
    far = exact.box_shape(Box((50.0, 50.0, 0.0), (150.0, 60.0, 100.0)))
    faces = seen_faces([near, far], exact.FRONT)
    assert sorted((f.part_index, round(f.area, 3)) for f in faces) == [(0, 10000.0), (1, 5000.0)]
    assert all(f.normal == pytest.approx((0, -1, 0)) for f in faces)
    outline = silhouette(faces)
    assert len(outline) == 1
    assert {(round(x), round(y)) for x, y in outline[0]} == {(0, 0), (150, 0), (150, 100), (0, 100)}


def test_an_inside_point_is_inside_a_ring_with_a_hole():
    outer = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)]
    hole = [(1.0, 1.0), (1.0, 9.0), (9.0, 9.0), (9.0, 1.0)]
    x, y = inside_point([outer, hole])
    assert 0 < x < 10
    assert 0 < y < 10
    assert not (1 < x < 9 and 1 < y < 9)
