"""What boards and sheets come to: face area, volume, board feet, and the waste both ways."""

from __future__ import annotations

from collections.abc import Sequence

from boardwright.core.lengths import INCH
from boardwright.formulas.lumber import board_feet, tally
from boardwright.stock.records import Tally

FOOT = 12 * INCH


def tally_of(
    parts: Sequence[tuple[float, float]],
    stocks: Sequence[tuple[float, float]],
    thickness: float,
    in_board_feet: bool,
) -> Tally:
    """What is in the parts and what is bought.

    Args:
        parts: finished length and width of every part, as it lies in the board [mm].
        stocks: length and width of every board or sheet [mm].
        thickness: rough thickness of the boards, or thickness of the sheets [mm].
        in_board_feet: for wood in an inch plan; softwood too goes by the tally of hardwood boards.

    Returns:
        Areas, volumes and shares; board feet net by volume, bought by the tally of boards.
    """
    net = sum(length * width for length, width in parts) / 1e6
    bought = sum(length * width for length, width in stocks) / 1e6
    thick = thickness / INCH
    net_feet = sum(board_feet(thick, w / INCH, le / FOOT) for le, w in parts)
    bought_feet = tally([(thick, w / INCH, le / FOOT) for le, w in stocks])
    return Tally(
        len(stocks),
        net,
        bought,
        net * thickness / 1000,
        bought * thickness / 1000,
        net_feet if in_board_feet else None,
        float(bought_feet) if in_board_feet else None,
        1 - net / bought if bought else 0.0,
        bought / net - 1 if net else 0.0,
    )
