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
    curve_line,
    curve_runs,
    edge_line,
    edge_runs,
    half_ellipse,
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


@pytest.mark.parametrize(("a", "b"), [(50.0, 50.0), (300.0, 120.0), (40.0, 500.0)])
def test_half_an_ellipse(a: float, b: float) -> None:
    """x^2 / a^2 + y^2 / b^2 = 1; its area is pi a b / 2; the sum of the ways to both foci is the longer axis."""
    line = half_ellipse((0.0, 3.0), (a, 3.0 + b), (2 * a, 3.0))
    focus = math.sqrt(abs(a * a - b * b))
    for x, y in line:
        assert ((x - a) / a) ** 2 + ((y - 3.0) / b) ** 2 == pytest.approx(1.0)
        ways = [
            math.hypot(x - a - (f if a > b else 0.0), y - 3.0 - (0.0 if a > b else f))
            for f in (-focus, focus)
        ]
        assert sum(ways) == pytest.approx(2 * max(a, b))
    under = sum((q[0] - p[0]) * (p[1] + q[1] - 6.0) / 2 for p, q in itertools.pairwise(line))
    assert under == pytest.approx(math.pi * a * b / 2, rel=5e-4)
    assert curve_line("ellipse", ((0.0, 3.0), (a, 3.0 + b), (2 * a, 3.0))) == line
    runs = curve_runs("ellipse", ((0.0, 3.0), (a, 3.0 + b), (2 * a, 3.0)))
    assert runs == ((0, len(line) - 1, "ellipse"),)
    assert line[(len(line) - 1) // 2] == pytest.approx((a, 3.0 + b))


def test_what_is_no_half_of_an_ellipse() -> None:
    with pytest.raises(ValueError, match="half an ellipse"):
        half_ellipse((0.0, 0.0), (30.0, 10.0), (50.0, 0.0))
