"""Measure of rough hardwood lumber, in the inches and feet that its rules are written in."""

from __future__ import annotations

from collections.abc import Sequence
from math import floor

from boardwright.formulas.limits import Limit, Limits

LIMITS: Limits = {
    "board_feet": {"T": Limit(0.25, None, "in")},
    "surface_measure": {"L": Limit(4, 16, "ft")},
    "piece_tally": {"L": Limit(4, 16, "ft"), "T": Limit(0.25, None, "in")},
}


def board_feet(T: float, W: float, L: float) -> float:
    """Board feet of a piece of any size.

    Args:
        T: nominal rough thickness; less than 1 counts as 1 [in].
        W: width [in].
        L: length [ft].

    Returns:
        Board feet, 144 cubic inches each, not rounded [bd ft].

    Limits:
        Thickness from 1/4 in.

    Source:
        Hardwood association's page on measurement; NHLA rules on tally (thin stock: from memory).

    Example:
        Printed by sawmills: 3 in x 8 in x 10 ft is 20; 1 1/2 x 9 x 96 in is 9; 4/4 x 8 in x 8 ft is 5.33.

        >>> board_feet(3, 8, 10), board_feet(1.5, 9, 8), round(board_feet(1, 8, 8), 2)
        (20.0, 9.0, 5.33)
    """
    return max(T, 1.0) * W * L / 12


def surface_measure(W: float, L: float, half_up: bool = True) -> int:
    """Surface measure of a board: its face in square feet, to the nearest whole number.

    Args:
        W: width [in].
        L: length; a part of a foot is dropped [ft].
        half_up: an exact half counts up; a tally alternates [yes or no].

    Returns:
        Surface measure [ft2].

    Limits:
        Standard lengths of 4 to 16 ft.

    Source:
        NHLA rules book (2015), p. 7 para. 16, quoted by the association (exact halves: from memory).

    Example:
        Printed: 6 1/2 in x 8 ft is 4; 8 x 12 is 8; 10 x 13 is 11; 6 7/16 in x 10 ft 9 in is 5.

        >>> [surface_measure(W, L) for W, L in ((6.5, 8), (8, 12), (10, 13), (6.4375, 10.75))]
        [4, 8, 11, 5]
    """
    exact = W * floor(L + 1e-9) / 12
    whole = floor(exact + 1e-9)
    if abs(exact - whole - 0.5) < 1e-9:
        return whole + half_up
    return floor(exact + 0.5)


def piece_tally(T: float, W: float, L: float, half_up: bool = True) -> float:
    """Board feet of a board as lumber is tallied: its surface measure times its thickness.

    Args:
        T: nominal rough thickness; less than 1 counts as 1 [in].
        W: width [in].
        L: length; a part of a foot is dropped [ft].
        half_up: an exact half of the surface measure counts up [yes or no].

    Returns:
        Board feet as tallied [bd ft].

    Limits:
        Standard lengths of 4 to 16 ft, thickness from 1/4 in.

    Source:
        NHLA rules, surface measure tally (2015 rules book, p. 7 para. 18, quoted by the association).

    Example:
        Printed: 2 in x 6 1/4 in x 8 ft is surface measure 4 times 2, 8.

        >>> piece_tally(2, 6.25, 8)
        8
    """
    return surface_measure(W, L, half_up) * max(T, 1)


def tally(boards: Sequence[tuple[float, float, float]]) -> float:
    """Board feet of a pile; exact halves count up and down in turn.

    Args:
        boards: thickness, width and length of each board [in, in, ft].

    Returns:
        Board feet as tallied [bd ft].

    Limits:
        Standard lengths of 4 to 16 ft.

    Source:
        NHLA rules, measurement and tally: halves alternately up and down (from memory).

    Example:
        Two boards of 6 in x 9 ft, 4 1/2 each, make 9 by the rule: one counts 5, the next 4.

        >>> tally([(1, 6, 9), (1, 6, 9)])
        9.0
    """
    total, up = 0.0, True
    for T, W, L in boards:
        total += piece_tally(T, W, L, up)
        if surface_measure(W, L, True) != surface_measure(W, L, False):
            up = not up
    return total
