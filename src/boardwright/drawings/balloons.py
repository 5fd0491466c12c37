"""Balloons around a picture: letters in two columns, leaders that do not cross."""

from __future__ import annotations

from boardwright.drawings.marks import BALLOON, balloon, leader
from boardwright.drawings.records import Entity, Point
from boardwright.drawings.spacing import spread

APART = 6.6


def around(
    names: list[tuple[str, list[Point]]], box: tuple[float, float, float, float], gap: float = 7.0
) -> list[Entity]:
    """Balloons to the left and right of a picture, each on the side that it is nearer to.

    Args:
        names: letter, and where its leader may end [mm on paper]; the outermost place on its side is taken.
        box: left, lower, right and upper edge of the picture.
        gap: from the picture to the middle of the balloons.
    """
    room = max(int((box[3] - box[1]) / APART) + 1, (len(names) + 1) // 2)
    left: list[tuple[str, Point]] = []
    right: list[tuple[str, Point]] = []
    costs = []
    for name, places in names:
        nearest_left, nearest_right = min(places), max(places)
        costs.append(
            (nearest_left[0] - box[0] - (box[2] - nearest_right[0]), name, nearest_left, nearest_right)
        )
    costs.sort()
    for cost, name, nearest_left, nearest_right in costs:
        rest = len(costs) - len(left) - len(right)
        if (cost <= 0 and len(left) < room) or rest > room - len(right):
            left.append((name, nearest_left))
        else:
            right.append((name, nearest_right))
    return [*_column(left, box[0] - gap, box[1], box[3]), *_column(right, box[2] + gap, box[1], box[3])]


def _column(spots: list[tuple[str, Point]], x: float, low: float, high: float) -> list[Entity]:
    ys = spread([s[1][1] for s in spots], APART, low, high)
    order = sorted(spots, key=lambda s: (s[1][1], s[1][0], s[0]))
    _uncross(order, x, ys)
    out: list[Entity] = []
    for (_, spot), y in zip(order, ys, strict=True):
        out += leader((x, y), spot, BALLOON)
    for (name, _), y in zip(order, ys, strict=True):
        out += balloon((x, y), name)
    return out


def _uncross(order: list[tuple[str, Point]], x: float, ys: list[float]) -> None:
    """Swap neighbours until no two leaders of a column cross; each swap shortens them together."""
    again = True
    while again:
        again = False
        for i in range(len(order)):
            for j in range(i + 1, len(order)):
                if crossing((x, ys[i]), order[i][1], (x, ys[j]), order[j][1]):
                    order[i], order[j] = order[j], order[i]
                    again = True


def crossing(a: Point, b: Point, c: Point, d: Point) -> bool:
    """True when the segments a-b and c-d cross."""

    def turn(p: Point, q: Point, r: Point) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return turn(a, b, c) * turn(a, b, d) < -1e-9 and turn(c, d, a) * turn(c, d, b) < -1e-9
