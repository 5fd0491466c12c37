"""The answer to a question of layout: what lies where, the cuts in order, what is left, what is proven."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from boardwright.stock.instance import Axis, Rectangle

Reason = Literal["larger than every stock", "no room for it clear of defects", "no stock left that takes it"]
TOO_LARGE: Reason = "larger than every stock"
NO_CLEAR_ROOM: Reason = "no room for it clear of defects"
NO_STOCK_LEFT: Reason = "no stock left that takes it"
COST_TOLERANCE = 1e-6
"""Costs are sums of floats: two that differ by less than this part (of 1 at least) are the same."""


@dataclass(frozen=True, slots=True)
class Placed:
    """A part on a stock.

    Attributes:
        item_id: which item.
        copy: which copy of it, from 1.
        x: its near end, from the left end of the untrimmed stock [mm].
        y: its near edge, from the lower edge of the untrimmed stock [mm].
        length: along the stock [mm]; the item's width when it is turned.
        width: across the stock [mm].
        turned: lies with its length across the stock.
    """

    item_id: str
    copy: int
    x: float
    y: float
    length: float
    width: float
    turned: bool = False


@dataclass(frozen=True, slots=True)
class CutLine:
    """One cut, right across the piece in hand.

    Attributes:
        axis: a rip divides the width, a crosscut the length.
        position: where the saw's cut begins: y of a rip, x of a crosscut [mm]. It ends one kerf further on.
        piece: the rectangle that is cut in two.
        stage: 0 trims the stock; 1, 2, ... as in the instance.
        trimming: only takes waste off the one part that the piece holds (or off the stock).
    """

    axis: Axis
    position: float
    piece: Rectangle
    stage: int
    trimming: bool = False


@dataclass(frozen=True, slots=True)
class Bin:
    """One sheet, board or bar and what is cut from it.

    Attributes:
        stock_id: which stock.
        placed: the parts on it.
        cuts: the cuts, in an order in which they can be made.
        leftovers: what is left when all cuts are made, the largest first.
    """

    stock_id: str
    placed: tuple[Placed, ...]
    cuts: tuple[CutLine, ...]
    leftovers: tuple[Rectangle, ...]


@dataclass(frozen=True, slots=True)
class Unplaced:
    """A copy that is on no stock, and why."""

    item_id: str
    copy: int
    reason: Reason


@dataclass(frozen=True, slots=True)
class Answer:
    """An answer, with what is known about its quality.

    Attributes:
        bins: the stocks that are cut, the last one with the most left.
        unplaced: copies that are on none of them.
        cost: of all bins, in the units of the stocks' costs.
        lower_bound: no answer that places as much can cost less.
        bins_bound: no answer that places as much can use fewer stocks.
        proven: the cost is the lowest there can be.
        method: how the answer was found, in a few words.
        seed: of the random numbers.
        iterations: how many layouts were tried.
    """

    bins: tuple[Bin, ...]
    unplaced: tuple[Unplaced, ...]
    cost: float
    lower_bound: float
    bins_bound: int
    proven: bool
    method: str
    seed: int
    iterations: int
