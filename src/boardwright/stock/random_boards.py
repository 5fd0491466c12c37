"""Random boards of a grade, and how much of what is wanted comes out of them.

Widths and lengths are drawn so that the mean surface measure is that of the grade, defects so that they take the
grade's share of the face. How both are spread is not published: even over whole feet, and evenly to both sides of the
mean width (common practice). A board is cut as hands do it: crosscut where it pays most, then ripped beside defects.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import exp
from random import Random

from boardwright.core.lengths import INCH
from boardwright.tables.records import Grade

FOOT = 12 * INCH
LONGEST = 16
"""Longest boards [ft]: hardwood is sold 4 to 16 ft long."""
DEFECT_LENGTH, DEFECT_WIDTH = (2.0, 12.0), (1.0, 3.5)
"""Least and greatest size of a defect [in]: knots and splits with what is cut away around them (common practice)."""
TILT = 0.6
"""How far long pieces go before short ones: they are the hardest to find room for."""
PAYS = 0.6
"""Share of a section that must come out in pieces; else the saw goes on past the next defect."""


@dataclass(frozen=True, slots=True)
class RandomBoard:
    """A board: length, width [mm], and its defects: from where to where along it and across it [mm]."""

    length: float
    width: float
    defects: tuple[tuple[float, float, float, float], ...]


@dataclass(slots=True)
class Need:
    """What is still wanted of one size.

    Attributes:
        length: of each piece [mm].
        width: of each piece; of strips: the widest [mm].
        left: pieces; of strips: the width that they must still come to when jointed [mm].
        strips: they may have any width from `least` to `width`.
        least: narrowest strip [mm].
        joint: what jointing takes off a strip [mm].
    """

    length: float
    width: float
    left: float
    strips: bool = False
    least: float = 0.0
    joint: float = 0.0


@dataclass(frozen=True, slots=True)
class Saw:
    """What cutting takes: saw cut, each end and each edge of a board [mm]."""

    kerf: float
    end: float
    edge: float


def draw_board(random: Random, grade: Grade, shortest: float = 0.0) -> RandomBoard:
    """A board of a grade, at least as long as asked for [mm]."""
    low = max(round(grade.min_length / FOOT), min(LONGEST, -int(-shortest // FOOT)))
    feet = random.randint(low, LONGEST)
    mean_feet = (round(grade.min_length / FOOT) + LONGEST) / 2
    mean = grade.surface_measure * 12 / mean_feet
    least = grade.min_width / INCH
    width = round(random.triangular(least, 2 * mean - least, mean) * 8) / 8 * INCH
    length = feet * FOOT
    size = sum(DEFECT_LENGTH) / 2 * sum(DEFECT_WIDTH) / 2 * INCH**2
    defects = []
    for _ in range(_poisson(random, grade.defect_share * length * width / size)):
        long, wide = random.uniform(*DEFECT_LENGTH) * INCH, random.uniform(*DEFECT_WIDTH) * INCH
        x, y = random.uniform(0, length - long), random.uniform(0, max(0.0, width - wide))
        defects.append((x, x + long, y, y + wide))
    return RandomBoard(length, width, tuple(sorted(defects)))


def _poisson(random: Random, mean: float) -> int:
    limit, n, product = exp(-mean), 0, random.random()
    while product > limit:
        product *= random.random()
        n += 1
    return n


def cut_board(board: RandomBoard, needs: Sequence[Need], saw: Saw) -> float:
    """Cut what is wanted out of a board.

    Args:
        board: the board.
        needs: what is wanted; what comes out is taken off `left`.
        saw: what cutting takes.

    Returns:
        Area of the pieces that came out [mm2].
    """
    x, end, area = saw.end, board.length - saw.end, 0.0
    while x < end:
        lengths = sorted({n.length for n in needs if n.left > 0 and x + n.length <= end + 1e-6}, reverse=True)
        if not lengths:
            break
        best, most, share, longest = 0.0, 0.0, 0.0, lengths[0]
        for length in lengths:
            got = _section(board, x, length, needs, saw, take=False)
            worth = got / (length * board.width) * (length / longest) ** TILT
            if worth > most + 1e-9:
                best, most, share = length, worth, got / (length * board.width)
        ahead = [d[1] for d in board.defects if d[0] <= x + min(lengths) and d[1] > x]
        if share < PAYS and ahead and min(ahead) - x < min(lengths):
            x = min(ahead)
            continue
        if not best:
            break
        area += _section(board, x, best, needs, saw, take=True)
        x += best + saw.kerf
    return area


def _section(
    board: RandomBoard, x: float, length: float, needs: Sequence[Need], saw: Saw, take: bool
) -> float:
    """Area of what comes out of a section [mm2]; with `take` it is taken off what is wanted."""
    blocked = sorted((d[2], d[3]) for d in board.defects if d[0] < x + length and d[1] > x)
    fitting = [n for n in needs if n.left > 0 and n.length <= length + 1e-6]
    fitting.sort(key=lambda n: (-n.length, not n.strips, -n.width))
    left = {id(n): n.left for n in fitting}
    area, low = 0.0, saw.edge
    for start, stop in [*blocked, (board.width - saw.edge, board.width)]:
        room = start - low
        for need in fitting:
            along = max(1, int((length + saw.kerf + 1e-6) // (need.length + saw.kerf)))
            while left[id(need)] > 0:
                wide = min(need.width, room) if need.strips else need.width
                if need.strips:
                    wide = min(wide, max(need.least, left[id(need)] + need.joint))
                if wide > room + 1e-6 or wide < need.least:
                    break
                one = wide - need.joint if need.strips else 1.0
                many = min(along, -int(-left[id(need)] // one)) if one > 0 else 0
                if many <= 0:
                    break
                left[id(need)] -= many * one
                area += many * need.length * (wide - need.joint)
                room -= wide + saw.kerf
        low = max(low, stop)
    if take:
        for need in fitting:
            need.left = left[id(need)]
    return area
