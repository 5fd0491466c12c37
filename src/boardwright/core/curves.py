"""Curves as points: arcs through three points, smooth curves through many, the usual shapes of edges. Lengths in mm."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

Point = tuple[float, float]
Run = tuple[int, int, str]
"""First and last point of a piece of a line that is one curve: an `arc`, an `ellipse` (half of one, its top in the
middle of the points), or a `cubic` with points at even steps."""

PIECES = 30
"""Straight pieces between two given points of a spline, and of a quarter circle; a multiple of 3, so that a cubic has
points at its thirds."""


def arc(first: Point, middle: Point, last: Point, sagitta: float = 0.01) -> tuple[Point, ...]:
    """Points on the circle through three points, from the first over the middle to the last.

    Args:
        first: where it starts [mm].
        middle: a point on the way, not in one line with the others [mm].
        last: where it ends [mm].
        sagitta: how far a chord may lie from the circle [mm].

    Raises:
        ValueError: the three points lie in one line.
    """
    (ax, ay), (bx, by), (cx, cy) = first, middle, last
    twice = 2 * (ax * (by - cy) + bx * (cy - ay) + cx * (ay - by))
    if abs(twice) < 1e-9:
        raise ValueError("three points in one line make no arc")
    a2, b2, c2 = ax * ax + ay * ay, bx * bx + by * by, cx * cx + cy * cy
    ux = (a2 * (by - cy) + b2 * (cy - ay) + c2 * (ay - by)) / twice
    uy = (a2 * (cx - bx) + b2 * (ax - cx) + c2 * (bx - ax)) / twice
    r = math.hypot(ax - ux, ay - uy)
    start, via, end = (math.atan2(y - uy, x - ux) for x, y in (first, middle, last))
    turn = (end - start) % (2 * math.pi)
    if (via - start) % (2 * math.pi) > turn:
        turn -= 2 * math.pi
    most = 2 * math.acos(max(-1.0, 1 - sagitta / r))
    count = max(2, math.ceil(abs(turn) / most))
    inner = [
        (ux + r * math.cos(start + turn * i / count), uy + r * math.sin(start + turn * i / count))
        for i in range(1, count)
    ]
    return (first, *inner, last)


def natural_spline(points: Sequence[Point], pieces: int = PIECES) -> tuple[Point, ...]:
    """Points on the natural cubic spline through given points: bending is zero at both ends, as of a thin batten.

    The equations are the usual ones (Burden and Faires, Numerical Analysis, section on cubic splines, from memory).

    Args:
        points: at least two, by growing x [mm].
        pieces: straight pieces between two given points.

    Raises:
        ValueError: fewer than two points, or x does not grow.
    """
    n = len(points)
    if n < 2 or any(b[0] <= a[0] for a, b in pairwise(points)):
        raise ValueError("a spline needs points one after the other along the part")
    xs, ys = [p[0] for p in points], [p[1] for p in points]
    bend = _bending(xs, ys)
    out: list[Point] = []
    for i in range(n - 1):
        h = xs[i + 1] - xs[i]
        for k in range(pieces):
            t = k / pieces
            a, b = 1 - t, t
            y = a * ys[i] + b * ys[i + 1]
            y += ((a**3 - a) * bend[i] + (b**3 - b) * bend[i + 1]) * h * h / 6
            out.append((xs[i] + t * h, y))
    return (*out, points[-1])


def _bending(xs: Sequence[float], ys: Sequence[float]) -> list[float]:
    """Second derivatives at the given points; zero at both ends."""
    n = len(xs)
    upper, right = [0.0] * n, [0.0] * n
    for i in range(1, n - 1):
        before, after = xs[i] - xs[i - 1], xs[i + 1] - xs[i]
        load = 6 * ((ys[i + 1] - ys[i]) / after - (ys[i] - ys[i - 1]) / before)
        pivot = 2 * (before + after) - before * upper[i - 1]
        upper[i] = after / pivot
        right[i] = (load - before * right[i - 1]) / pivot
    bend = [0.0] * n
    for i in range(n - 2, 0, -1):
        bend[i] = right[i] - upper[i] * bend[i + 1]
    return bend


def half_ellipse(first: Point, middle: Point, last: Point, sagitta: float = 0.01) -> tuple[Point, ...]:
    """Points on half an ellipse whose one axis runs from the first to the last point, at even turns of its circle.

    Args:
        first: end of the axis [mm].
        middle: end of the other axis, over the middle of the first [mm].
        last: the other end of the axis [mm].
        sagitta: how far a chord may lie from the curve [mm].

    Raises:
        ValueError: the three points make no half of an ellipse.
    """
    a, b = (last[0] - first[0]) / 2, middle[1] - first[1]
    x, y = (first[0] + last[0]) / 2, first[1]
    if a <= 0 or abs(last[1] - y) > 1e-6 or abs(middle[0] - x) > 1e-6 or abs(b) < 1e-9:
        raise ValueError(
            "half an ellipse takes both ends of an axis, and the end of the other over its middle"
        )
    most = 2 * math.acos(max(-1.0, 1 - sagitta / max(a, abs(b))))
    count = 2 * math.ceil(math.pi / most / 2)
    turns = [math.pi * i / count for i in range(1, count)]
    return (first, *((x - a * math.cos(t), y + b * math.sin(t)) for t in turns), last)


def curve_line(shape: str, points: Sequence[Point]) -> tuple[Point, ...]:
    """The line that a curved side follows.

    Args:
        shape: `arc`, `ellipse`, `spline` or `line`.
        points: that it runs through [mm]; three of an arc, and of half an ellipse.

    Raises:
        ValueError: the points make no such curve.
    """
    if shape == "arc":
        return arc(points[0], points[1], points[2])
    if shape == "ellipse":
        return half_ellipse(points[0], points[1], points[2])
    return natural_spline(points) if shape == "spline" else tuple(points)


def curve_runs(shape: str, points: Sequence[Point]) -> tuple[Run, ...]:
    """Which points of `curve_line` lie on one curve."""
    last = len(curve_line(shape, points)) - 1
    if shape == "arc":
        return ((0, last, "arc"),)
    if shape == "ellipse":
        return ((0, last, "ellipse"),)
    if shape == "spline":
        return tuple((i, i + PIECES, "cubic") for i in range(0, last, PIECES))
    return ()


def chamfer(size: float) -> tuple[Point, ...]:
    """What a chamfer of 45 degrees leaves: from the edge, from the side [mm]."""
    return ((size, 0.0), (0.0, size))


def round_over(radius: float) -> tuple[Point, ...]:
    """What a round-over leaves: a quarter circle that runs into both sides [mm]."""
    turns = [math.pi / 2 * i / PIECES for i in range(PIECES + 1)]
    return tuple((radius * (1 - math.sin(t)), radius * (1 - math.cos(t))) for t in turns)


def cove(radius: float) -> tuple[Point, ...]:
    """What a cove leaves: a quarter circle about the corner [mm]."""
    turns = [math.pi / 2 * i / PIECES for i in range(PIECES + 1)]
    return tuple((radius * math.cos(t), radius * math.sin(t)) for t in turns)


def ogee(size: float) -> tuple[Point, ...]:
    """What an ogee leaves: a hollow and a round of half the size each, running into each other level [mm].

    From the side it starts as the hollow, a quarter circle square to the side, and ends as the round, a quarter circle
    that runs out square to the edge.
    """
    r = size / 2
    turns = [math.pi / 2 * i / PIECES for i in range(PIECES + 1)]
    hollow = [(size - r * (1 - math.cos(t)), r * math.sin(t)) for t in turns]
    rounded = [(r * (1 - math.sin(t)), size - r * math.cos(t)) for t in turns]
    return (*hollow, *rounded[1:])


_EDGES = {"chamfer": chamfer, "round-over": round_over, "cove": cove, "ogee": ogee}


def edge_line(shape: str, size: float) -> tuple[Point, ...]:
    """The line that a shaped edge leaves, from the side to the edge: from the edge, from the side [mm].

    Args:
        shape: `chamfer`, `round-over`, `cove` or `ogee`; empty for any other.
        size: leg, radius or reach [mm].
    """
    return _EDGES[shape](size) if shape in _EDGES else ()


def edge_runs(shape: str) -> tuple[Run, ...]:
    """Which points of `edge_line` lie on one curve."""
    arcs = {"round-over": 1, "cove": 1, "ogee": 2}.get(shape, 0)
    return tuple((i * PIECES, (i + 1) * PIECES, "arc") for i in range(arcs))
