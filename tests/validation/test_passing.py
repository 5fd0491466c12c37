"""Openings, corners and ceilings: published problems, a published condition, and searches that know no formula.

Corner problems stand in calculus textbooks (from memory). The rectangle in a rectangle is Carver's condition,
American Mathematical Monthly 64 (1957), p. 114, problem E 1225 (from memory). The cabinet and its ceiling: a maker's
own mistake, its figures recomputed from first principles there, 0.05 in.
"""

from itertools import pairwise
from math import hypot, inf, pi, sqrt

import numpy as np
import pytest
from scipy import ndimage

from boardwright.formulas.passing import (
    height_to_stand_up,
    longest_round_corner,
    longest_round_half_turn,
    opening_needed,
    tallest_that_stands_up,
    tipped_length,
)


def carver(p: float, q: float, a: float, b: float) -> bool:
    """Whether a rectangle p >= q goes into a rectangle a >= b."""
    if p <= a:
        return q <= b
    return q <= b and b >= (2 * p * q * a + (p * p - q * q) * sqrt(p * p + q * q - a * a)) / (p * p + q * q)


def test_the_opening_agrees_with_the_published_condition():
    rng = np.random.default_rng(4)
    seen = {True: 0, False: 0}
    for _ in range(3000):
        p, q = sorted(rng.uniform(0.2, 3, 2), reverse=True)
        a, b = rng.uniform(0.5, 2.5, 2)
        published = carver(p, q, max(a, b), min(a, b))
        assert (opening_needed(p, q, b) <= a) is published, (p, q, a, b)
        tilted = published and p > max(a, b)
        seen[published] += 1
        seen["tilted"] = seen.get("tilted", 0) + tilted
    assert min(seen[True], seen[False]) > 500
    assert seen["tilted"] > 20


@pytest.mark.parametrize(
    ("p", "q", "height"), [(12, 1, 10.2), (5, 3, 5.5), (80, 34, 78), (3, 3, 2), (4, 1, 4.05)]
)
def test_the_opening_agrees_with_a_search_of_all_tilts(p, q, height):
    t = np.linspace(0, pi / 2, 200_001)
    fits = p * np.sin(t) + q * np.cos(t) <= height + 1e-9
    found = np.min((p * np.cos(t) + q * np.sin(t))[fits], initial=inf)
    assert opening_needed(p, q, height) == pytest.approx(found, rel=1e-4)


@pytest.mark.parametrize(
    ("a", "b", "answer"),
    [
        (9, 6, 21.07),  # steel pipe, hallways 9 and 6 ft
        (27, 64, 125),  # corridors of 27 and 64: (9 + 16)^(3/2)
        (8, 8, 8 * 2 * sqrt(2)),  # corridors alike
        (1, 8, 5 * sqrt(5)),  # (1 + 4)^(3/2)
    ],
)
def test_pipe_round_a_corner(a, b, answer):
    assert longest_round_corner(0, a, b) == pytest.approx(answer, abs=0.005)
    assert longest_round_corner(0, b, a) == pytest.approx(answer, abs=0.005)


@pytest.mark.parametrize("width", [0.5, 2, 3.9])
def test_sofa_round_a_corner_of_corridors_alike(width):
    # By symmetry at 45 degrees: 2 (sqrt 2 a - w); the square of one corridor's width is shoved round.
    assert longest_round_corner(width, 4, 4) == pytest.approx(max(4, 2 * (sqrt(2) * 4 - width)))


def moves(length: float, width: float, inside, start, end, size: float, cells: int, turns: int) -> bool:
    """Whether a rectangle gets from one place to another, by a search over all places and turns on a grid.

    Args:
        length, width: of the rectangle. size: of the square that is searched. cells, turns: of the grid.
        inside: tells which points (n,) x, y lie within the walls.
        start, end: centre and turn [rad].
    """
    xs = (np.arange(cells) + 0.5) * size / cells
    angles = np.arange(turns) * pi / turns
    free = np.zeros((turns, cells, cells), dtype=bool)
    u = np.linspace(-0.5, 0.5, 2 * cells // 3)
    edge = np.concatenate(
        [np.stack([u * length, s * np.full_like(u, width / 2)]) for s in (-1, 1)]
        + [np.stack([s * np.full_like(u, length / 2), u * width]) for s in (-1, 1)],
        axis=1,
    )
    gx, gy = np.meshgrid(xs, xs, indexing="ij")
    for k, angle in enumerate(angles):
        c, s = np.cos(angle), np.sin(angle)
        ok = np.ones((cells, cells), dtype=bool)
        for ex, ey in (np.array([[c, -s], [s, c]]) @ edge).T:
            ok &= inside(gx + ex, gy + ey)
        free[k] = ok
    wrapped = np.concatenate([free, free[:1]])  # a rectangle turned by 180 degrees is itself
    label, _ = ndimage.label(wrapped, ndimage.generate_binary_structure(3, 3))
    same: dict[int, int] = {}

    def root(n: int) -> int:
        while same.get(n, n) != n:
            n = same[n]
        return n

    for one, two in {(int(i), int(j)) for i, j in zip(label[0].flat, label[-1].flat, strict=True) if i and j}:
        same[max(root(one), root(two))] = min(root(one), root(two))

    def at(place):
        x, y, angle = place
        k = round(angle / (pi / turns)) % turns
        return int(label[k, int(x / size * cells), int(y / size * cells)])

    one, two = at(start), at(end)
    assert min(one, two) > 0, "the start or the end itself is no place"
    return root(one) == root(two)


@pytest.mark.parametrize(
    ("width", "a", "b"),
    [(0.2, 1, 1), (0.5, 1, 1), (0.6, 1, 1.5), (0.9, 1, 1), (0.95, 1, 1.6)],
)
def test_the_corner_agrees_with_a_search_of_all_movements(width, a, b):
    # The grid is 0.05 wide: 6 % shorter must pass, 10 % longer must not.
    size = 5.0

    def inside(x, y):
        e = 1e-9
        return (x >= -e) & (y >= -e) & (((x <= a + e) & (y <= size)) | ((y <= b + e) & (x <= size)))

    def passes(length: float) -> bool:
        start = (a / 2, size - length / 2 - 0.1, pi / 2)
        end = (size - length / 2 - 0.1, b / 2, 0.0)
        return moves(length, width * 0.97, inside, start, end, size, 100, 60)

    longest = longest_round_corner(width, a, b)
    assert passes(longest * 0.94)
    if longest < 3:
        assert not passes(longest * 1.1)


def test_the_half_turn_lets_nothing_through_that_a_search_does_not():
    # Flights 1 wide beside each other, a landing 1.2 deep: both sides of the answer, with the grid's play.
    flight, landing, well, width = 1.0, 1.2, 0.1, 0.5
    size = 3.6
    far = 2 * flight + well

    def inside(x, y):
        room = (x >= 0) & (x <= far) & (y >= 0) & (y <= size)
        return room & ~((x > flight) & (x < flight + well) & (y > landing))

    longest = longest_round_half_turn(width, flight, landing, well)

    def passes(length: float) -> bool:
        y = size - length / 2 - 0.1
        return moves(length, width * 0.97, inside, (0.5, y, pi / 2), (far - 0.5, y, pi / 2), size, 100, 60)

    assert longest > 1.5
    assert passes(longest * 0.94)
    assert not passes(longest * 1.35)


def test_tipping_agrees_with_a_search():
    t = np.linspace(0, pi / 2, 200_001)
    for length, thick, height in [(12, 1, 10.2), (84, 16, 80), (84, 40, 60), (60, 20, 20)]:
        high, flat = length * np.sin(t) + thick * np.cos(t), length * np.cos(t) + thick * np.sin(t)
        found = float(np.min(flat[high <= height + 1e-9]))
        assert tipped_length(length, thick, height) == pytest.approx(found, rel=1e-4)
    assert tipped_length(60, 20, 19) == inf


def test_cabinet_that_cannot_be_stood_up():
    # 94 in tall, 24 in deep, ceiling 96 in: 97.02 in, no; at most 92.95 in; without a loose base of 4 in 93.15 in.
    assert height_to_stand_up(94, 24) == pytest.approx(97.02, abs=0.05)
    assert tallest_that_stands_up(96, 24) == pytest.approx(92.95, abs=0.05)
    assert height_to_stand_up(90, 24) == pytest.approx(93.15, abs=0.05)
    assert opening_needed(24, 30, 80) <= 32  # it passes the door lying down


def test_more_room_lets_more_through():
    for low, high in pairwise(np.linspace(2, 6, 9)):
        assert longest_round_corner(1, low, 3) <= longest_round_corner(1, high, 3)
        assert opening_needed(5, 2, low) >= opening_needed(5, 2, high)
    assert opening_needed(5, 2, hypot(5, 2)) == 2
