"""Wide parts that are glued up of strips."""

from __future__ import annotations

from math import ceil

from boardwright.checks.context import Context
from boardwright.piece.records import Part

STRIP = {"in": 152.4, "mm": 150.0}
"""Widest strip where the shop says nothing [mm]: wider boards cup more (common practice)."""


def widest_board(c: Context) -> float:
    """The widest board that there is [mm]."""
    if c.shop.boards is not None:
        return c.shop.boards
    return max((b.width for b in c.tables.standard_boards(c.piece.units)), default=STRIP[c.piece.units])


def strips(c: Context, p: Part) -> int:
    """Of how many strips a part is glued up; 1 where one board gives it."""
    edges = c.tables.figure("board_width_allowance").value
    if p.stock.kind != "wood" or p.size[1] + edges <= widest_board(c) + 1e-6:
        return 1
    return max(2, ceil(p.size[1] / min(STRIP[c.piece.units], widest_board(c)) - 1e-9))


def strip_width(c: Context, p: Part) -> float:
    """Width of a strip of a part [mm]."""
    return p.size[1] / strips(c, p)


def rough_width(c: Context, p: Part) -> float:
    """Width of a glued-up part in the clamps [mm]."""
    return p.size[1] + c.tables.figure("panel_width_oversize").value
