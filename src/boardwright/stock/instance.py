"""What is to be cut, from what, and how: the question that a layout answers.

Sheets, boards and bars are one thing here: a rectangle with a grain. A bar is a board whose parts are all as
wide as it is. Lengths run along the grain of the stock, widths across it.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from math import inf
from typing import Literal

Axis = Literal["rip", "crosscut"]
"""A rip runs along the stock and divides its width; a crosscut runs across it and divides its length."""
FirstCut = Literal["rip", "crosscut", "any"]
Stages = Literal[2, 3]


@dataclass(frozen=True, slots=True)
class Rectangle:
    """A rectangle on a stock, from its lower left corner [mm]: x along the length, y across."""

    x0: float
    y0: float
    x1: float
    y1: float


@dataclass(frozen=True, slots=True)
class Limits:
    """What a saw or cutter asks for beyond the stages; the defaults ask for nothing.

    Attributes:
        least_section, most_section: extent of a piece between two cuts of the first stage, or between the
            stock's edge and the first of them [mm].
        least_strip: the same for the second stage [mm].
        least_waste: thinnest piece of waste that can be cut off [mm].
        through_defects: cuts may pass through a defect, as they may in wood; those that trim the stock
            always may.
    """

    least_section: float = 0.0
    most_section: float = inf
    least_strip: float = 0.0
    least_waste: float = 0.0
    through_defects: bool = True


@dataclass(frozen=True, slots=True)
class Item:
    """A rectangle that is wanted.

    Attributes:
        id: name, unique among the items.
        length: along the grain [mm].
        width: across the grain [mm].
        count: copies wanted.
        turnable: may lie with its length across the stock (no grain to follow).
    """

    id: str
    length: float
    width: float
    count: int = 1
    turnable: bool = False


@dataclass(frozen=True, slots=True)
class StockSize:
    """A size of sheet, board or bar that can be had.

    Attributes:
        id: name, unique among the stocks.
        length: along the grain [mm].
        width: across the grain [mm].
        count: how many there are; None when any number can be bought.
        cost: price or whatever else is to be kept small, for one of it.
        trim_length: taken off each end before anything else is cut, the saw's own cut included [mm].
        trim_width: taken off each edge, likewise [mm].
        defects: no part may lie on one of these; from the corner of the untrimmed stock [mm]. They are the
            same on each of `count`.
    """

    id: str
    length: float
    width: float
    count: int | None = None
    cost: float = 1.0
    trim_length: float = 0.0
    trim_width: float = 0.0
    defects: tuple[Rectangle, ...] = ()


@dataclass(frozen=True, slots=True)
class Instance:
    """A question of layout. Every cut goes right across the piece in hand (guillotine).

    Attributes:
        items: what is wanted.
        stocks: what can be had.
        kerf: width of the saw's cut [mm].
        stages: how often the direction of cutting may change, counted from the first cut: 2 is strips, then
            parts; 3 is sections, strips, parts; None is no limit. Trimming the stock, and trimming one part
            out of a piece that holds nothing else, are not counted.
        first_cut: direction of the first stage.
        limits: what else is asked of the cuts.
        sequences: ids of items that must come off in this order, when each piece is cut up, from the lower
            left, before the next; an item is in one sequence at most.
        in_order: stocks are used in the order in which they stand here.
    """

    items: tuple[Item, ...]
    stocks: tuple[StockSize, ...]
    kerf: float = 0.0
    stages: Stages | None = 3
    first_cut: FirstCut = "any"
    limits: Limits = Limits()
    sequences: tuple[tuple[str, ...], ...] = ()
    in_order: bool = False


def problems(instance: Instance) -> list[str]:
    """What is wrong with a question itself.

    Args:
        instance: the question.

    Returns:
        One sentence a problem, in a steady order; empty when it can be worked on.
    """
    found: list[str] = []
    for what, ids in (("item", [i.id for i in instance.items]), ("stock", [s.id for s in instance.stocks])):
        found += [
            f"{what} {name} is named {ids.count(name)} times"
            for name in dict.fromkeys(ids)
            if ids.count(name) > 1
        ]
    for item in instance.items:
        if item.length <= 0 or item.width <= 0:
            found.append(f"item {item.id} is {item.length} x {item.width} mm; both must be above 0")
        if item.count < 0:
            found.append(f"item {item.id} is wanted {item.count} times")
    for stock in instance.stocks:
        if stock.length <= 2 * stock.trim_length or stock.width <= 2 * stock.trim_width:
            found.append(f"stock {stock.id} has nothing left after trimming")
        if any(d.x1 <= d.x0 or d.y1 <= d.y0 for d in stock.defects):
            found.append(f"stock {stock.id} has a defect without area")
        if stock.trim_length < 0 or stock.trim_width < 0 or stock.cost < 0 or (stock.count or 0) < 0:
            found.append(f"stock {stock.id} has a trim, cost or count below 0")
    if instance.kerf < 0:
        found.append(f"the kerf is {instance.kerf} mm; it cannot be below 0")
    known = {item.id for item in instance.items}
    named = Counter(name for sequence in instance.sequences for name in sequence)
    found += [f"sequence names {name}, which is no item" for name in named if name not in known]
    found += [f"item {name} stands {n} times in sequences" for name, n in named.items() if n > 1]
    limits = instance.limits
    least = min(limits.least_section, limits.most_section, limits.least_strip, limits.least_waste)
    if least < 0 or limits.most_section < limits.least_section:
        found.append("the limits of the cuts are below 0, or the least section is above the greatest")
    return found
