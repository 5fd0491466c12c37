"""How much lumber to ask for, so that it most likely suffices: random boards cut in trial, from a fixed seed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import ceil
from random import Random

from boardwright.core.lengths import INCH
from boardwright.formulas.lumber import piece_tally
from boardwright.stock.random_boards import FOOT, LONGEST, Need, RandomBoard, Saw, cut_board, draw_board
from boardwright.tables.records import Grade

PILES = 50
"""Piles that are cut in trial."""
CHANCE = 0.9
"""Share of the piles that must suffice."""
IN_SIGHT = 4
"""Boards that one chooses the last from (common practice)."""
MOST_BOARDS = 150
"""A pile of more boards than this does not suffice."""


@dataclass(frozen=True, slots=True)
class Purchase:
    """What to ask for of one grade.

    Attributes:
        grade: its name.
        board_feet: enough in `chance` of the piles, by the tally of hardwood lumber [bd ft].
        volume: of the same boards, by the sawn thickness [m3].
        chance: share of the piles that it suffices for.
        likely: enough in half of the piles [bd ft].
        shortest: shortest boards to ask for [mm].
        lost_share: of what is bought, does not end in a part. added_share: over net.
    """

    grade: str
    board_feet: int
    volume: float
    chance: float
    likely: int
    shortest: float
    lost_share: float
    added_share: float


def purchase(
    needs: Sequence[Need], saw: Saw, grade: Grade, thickness: float, net: float, seed: int = 0
) -> Purchase | None:
    """How much of a grade to ask for.

    Args:
        needs: what is wanted.
        saw: what cutting takes.
        grade: the grade.
        thickness: as sawn [mm].
        net: face area of the finished parts [m2].
        seed: of the random numbers.

    Returns:
        What to ask for; None when its boards do not give the parts.
    """
    wanted = [n for n in needs if n.left > 0]
    longest = max((n.length for n in wanted), default=0.0) + 2 * saw.end
    if not wanted or longest > LONGEST * FOOT or net <= 0:
        return None
    shortest = ceil(longest / FOOT - 1e-6) * FOOT
    shortest = max(grade.min_length, min(shortest, LONGEST * FOOT))
    random = Random(seed)
    piles: list[tuple[float, float]] = []
    failed = 0
    for _ in range(PILES):
        got = _pile(random, wanted, saw, grade, thickness, shortest)
        if got is None:
            failed += 1
            if failed > PILES * (1 - CHANCE):
                return None
        else:
            piles.append(got)
    piles.sort()
    feet, area = piles[min(len(piles) - 1, ceil(CHANCE * PILES) - 1)]
    whole = ceil(feet - 1e-9)
    enough = sum(f <= whole + 1e-9 for f, _ in piles) / PILES
    return Purchase(
        grade.name, whole, area * thickness / 1000, enough, ceil(piles[len(piles) // 2][0]), shortest,
        1 - net / area, area / net - 1,
    )  # fmt: skip


def _pile(
    random: Random, wanted: Sequence[Need], saw: Saw, grade: Grade, thickness: float, shortest: float
) -> tuple[float, float] | None:
    """Board feet and area [m2] of the boards that it takes; None when it takes too many.

    They are taken as they come, but the last is the smallest of a few in sight that does.
    """
    needs = [replace(n) for n in wanted]
    feet, area, up = 0.0, 0.0, True
    for _ in range(MOST_BOARDS):
        sight = [draw_board(random, grade, shortest) for _ in range(IN_SIGHT)]
        board = _last(sight, needs, saw) or sight[0]
        cut_board(board, needs, saw)
        feet += piece_tally(max(1.0, thickness / INCH), board.width / INCH, board.length / FOOT, up)
        up = not up
        area += board.length * board.width / 1e6
        if all(n.left <= 1e-6 for n in needs):
            return feet, area
    return None


def _last(sight: Sequence[RandomBoard], needs: Sequence[Need], saw: Saw) -> RandomBoard | None:
    """The smallest board that gives all that is still wanted; None when none does."""
    area = sum(n.length * n.left * (1.0 if n.strips else n.width) for n in needs)
    for board in sorted(sight, key=lambda b: b.length * b.width):
        if board.length * board.width >= area:
            rest = [replace(n) for n in needs]
            cut_board(board, rest, saw)
            if all(n.left <= 1e-6 for n in rest):
                return board
    return None
