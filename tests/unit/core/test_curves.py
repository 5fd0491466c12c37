"""Curves against closed forms and a textbook example."""

from __future__ import annotations

import itertools
import math

import pytest

from boardwright.core.curves import (
    PIECES,
    arc,
    chamfer,
    cove,
    curve_runs,
    edge_line,
    edge_runs,
    natural_spline,
    ogee,
    round_over,
)


def area(line: tuple[tuple[float, float], ...]) -> float:
    """Of what a line along an edge takes away, corner included [mm2] (shoelace)."""
    ring = [(0.0, 0.0), *line]
    return abs(sum(p[0] * q[1] - q[0] * p[1] for p, q in zip(ring, [*ring[1:], ring[0]], strict=True))) / 2


def test_the_natural_spline_of_the_textbook() -> None:
    """Burden and Faires, Numerical Analysis, natural cubic spline through (1, 2), (2, 3), (3, 5) (from memory).

    2 + 3/4 (x-1) + 1/4 (x-1)^3, then 3 + 3/2 (x-2) + 3/4 (x-2)^2 - 1/4 (x-2)^3.
    """
    for x, y in natural_spline(((1.0, 2.0), (2.0, 3.0), (3.0, 5.0))):
        t = x - 1 if x <= 2 else x - 2
        first, second = 2 + 3 / 4 * t + t**3 / 4, 3 + 3 / 2 * t + 3 / 4 * t**2 - t**3 / 4
        assert y == pytest.approx(first if x <= 2 else second, abs=1e-12)


def test_a_spline_through_points_in_one_line_is_that_line() -> None:
    assert all(y == pytest.approx(x / 2) for x, y in natural_spline(((0.0, 0.0), (3.0, 1.5), (10.0, 5.0))))


@pytest.mark.parametrize("points", [((0.0, 0.0),), ((1.0, 0.0), (1.0, 2.0)), ((2.0, 0.0), (1.0, 2.0))])
def test_points_that_do_not_follow_each_other_make_no_spline(points: tuple[tuple[float, float], ...]) -> None:
    with pytest.raises(ValueError, match="one after the other"):
        natural_spline(points)


@pytest.mark.parametrize("middle", [(60.0, 80.0), (60.0, -80.0), (-100.0, 0.0)])
def test_an_arc_keeps_to_its_circle_and_takes_the_way_over_the_middle(middle: tuple[float, float]) -> None:
    line = arc((100.0, 0.0), middle, (0.0, 100.0) if middle[0] > 0 else (-60.0, 80.0))
    assert all(math.hypot(x, y) == pytest.approx(100, abs=1e-9) for x, y in line)
    assert min(math.dist(p, middle) for p in line) < 5


def test_no_chord_of_an_arc_leaves_its_circle_by_more_than_the_sagitta() -> None:
    line = arc((0.0, 0.0), (150.0, 40.0), (300.0, 0.0), 0.01)
    r = (150**2 + 40**2) / 80  # chord and rise, by Pythagoras
    for (ax, ay), (bx, by) in itertools.pairwise(line):
        assert r - math.hypot((ax + bx) / 2 - 150, (ay + by) / 2 - (40 - r)) <= 0.0100001


def test_three_points_in_one_line_make_no_arc() -> None:
    with pytest.raises(ValueError, match="no arc"):
        arc((0.0, 0.0), (1.0, 1.0), (2.0, 2.0))


def test_shapes_of_edges_take_their_closed_form_areas() -> None:
    assert area(chamfer(6.0)) == pytest.approx(18)
    assert area(round_over(6.0)) == pytest.approx(36 - math.pi * 9, rel=2e-2)
    assert area(cove(6.0)) == pytest.approx(math.pi * 9, rel=1e-3)
    # a hollow of a quarter circle, then a square less a quarter circle, side by side: r2 pi/4 + 2 r2 - r2 pi/4
    assert area(ogee(6.0)) == pytest.approx(18, rel=1e-9)


def test_runs_name_the_points_of_one_curve() -> None:
    assert edge_runs("ogee") == ((0, PIECES, "arc"), (PIECES, 2 * PIECES, "arc"))
    assert len(edge_line("ogee", 5.0)) == 2 * PIECES + 1
    assert edge_runs("chamfer") == ()
    assert edge_line("profile", 5.0) == ()
    points = ((0.0, 0.0), (50.0, 9.0), (80.0, 0.0))
    assert curve_runs("spline", points) == ((0, PIECES, "cubic"), (PIECES, 2 * PIECES, "cubic"))
    assert curve_runs("line", points) == ()
