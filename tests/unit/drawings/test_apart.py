"""Parts drawn apart, and fasteners as shapes: true sizes, paths along the way they go, pale what stands."""

import math
from dataclasses import replace

import pytest
from cut_samples import part

from boardwright.core.poses import Pose, add, cross, dot, scaled
from boardwright.drawings.apart import apart, beside
from boardwright.drawings.fastener_parts import fastener_parts
from boardwright.drawings.layout_dims import outside, overlaps
from boardwright.drawings.records import Fill, Line
from boardwright.piece.records import Fastener
from boardwright.solids import exact, mesh
from boardwright.solids.exact import FRONT, PICTORIAL

LOW = part("low", (200.0, 100.0, 20.0))
HIGH = replace(part("high", (200.0, 100.0, 20.0)), pose=Pose((0.0, 0.0, 20.0)))


def reach(drawing, style):
    ys = [p[1] for e in drawing.entities if isinstance(e, Line) and e.style == style for p in e.points]
    return max(ys) - min(ys)


def test_a_part_is_moved_as_far_as_it_is_shifted():
    # from the front the two are 40 high together; drawn 60 apart they are 100 high, as wide as before
    together = apart([LOW, HIGH], {}, view=FRONT, height=1000.0)
    parted = apart([LOW, HIGH], {"high": (0.0, 0.0, 60.0)}, view=FRONT, height=1000.0)
    assert reach(parted, "visible") / reach(together, "visible") == pytest.approx(100 / 40)


def test_its_path_is_a_dashed_line_between_the_two():
    parted = apart([LOW, HIGH], {"high": (0.0, 0.0, 60.0)}, view=FRONT, height=1000.0)
    [path] = [e for e in parted.entities if isinstance(e, Line) and e.style == "centre"]
    assert path.points[0][0] == pytest.approx(path.points[1][0])
    # the path runs 60 from middle to middle; the part hides the upper 10 of it
    assert reach(parted, "centre") / reach(parted, "visible") == pytest.approx(50 / 100, abs=0.01)
    assert not [e for e in apart([LOW, HIGH], {}).entities if isinstance(e, Line) and e.style == "centre"]


def test_what_stands_is_grey():
    drawn = apart([LOW, HIGH], {"high": (0.0, 0.0, 60.0)}, {"low"})
    hues = [e.hue for e in drawn.entities if isinstance(e, Fill) and e.tone < 1]
    assert hues.count("") == hues.count("light wood") == 3
    assert (overlaps(drawn), outside(drawn)) == ([], [])


def test_the_same_parts_in_place_stand_to_the_right_and_do_not_run_into_them():
    shifts = {"high": (0.0, 0.0, 60.0)}
    here = beside([LOW, HIGH], shifts)
    assert [p.letter for p in here] == ["", ""]
    right = [PICTORIAL.flat(p.pose.origin)[0] for p in here]
    left = [PICTORIAL.flat(p.box.high)[0] for p in (LOW, HIGH)]
    assert min(right) > max(left)
    one, two = (
        add(p.pose.origin, scaled(q.pose.origin, -1.0)) for p, q in zip(here, (LOW, HIGH), strict=True)
    )
    assert one == pytest.approx(two)


@pytest.mark.parametrize("way", [(1.0, 0.0, 0.0), (0.0, 0.0, -1.0), (0.6, 0.0, 0.8)])
def test_a_dowel_is_a_cylinder_where_the_fastener_is(way):
    dowel = Fastener("d", "dowel", "", "", (10.0, 20.0, 30.0), way, 40.0, 8.0, 8.0, "a", "b")
    [rod] = fastener_parts(dowel)
    assert exact.volume(exact.part_shape(rod)) == pytest.approx(math.pi * 16 * 40, rel=1e-6)
    middle = add(dowel.at, scaled(way, 20.0))
    assert mesh.centroid(rod) == pytest.approx(middle, abs=1e-3)


def test_a_screw_has_a_head_and_a_biscuit_lies_flat():
    screw = Fastener("s", "screw", "", "", (0.0, 0.0, 0.0), (1.0, 0.0, 0.0), 32.0, 4.0, 8.0, "a", "b")
    assert [p.size for p in fastener_parts(screw)] == [(32.0, 4.0, 4.0), (2.0, 8.0, 8.0)]
    flat = Fastener(
        "b",
        "biscuit",
        "",
        "",
        (0.0, 0.0, -12.0),
        (0.0, 0.0, 1.0),
        24.0,
        4.0,
        4.0,
        "a",
        "b",
        wide=(56.0, 0.0, 0.0),
    )
    [biscuit] = fastener_parts(flat)
    assert biscuit.size == (56.0, 24.0, 4.0)
    assert mesh.centroid(biscuit) == pytest.approx((0.0, 0.0, 0.0), abs=1e-6)
    assert dot(cross(biscuit.pose.x, biscuit.pose.y), biscuit.pose.z) == pytest.approx(1.0)
