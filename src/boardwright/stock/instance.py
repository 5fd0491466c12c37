"""What is to be cut, from what, and how: the question that a layout answers.

Sheets, boards and bars are one thing here: a rectangle with a grain. A bar is a board whose parts are all as
wide as it is. Lengths run along the grain of the stock, widths across it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Axis = Literal["rip", "crosscut"]
"""A rip runs along the stock and divides its width; a crosscut runs across it and divides its length."""
FirstCut = Literal["rip", "crosscut", "any"]
Stages = Literal[2, 3]


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
    """

    id: str
    length: float
    width: float
    count: int | None = None
    cost: float = 1.0
    trim_length: float = 0.0
    trim_width: float = 0.0


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
    """

    items: tuple[Item, ...]
    stocks: tuple[StockSize, ...]
    kerf: float = 0.0
    stages: Stages | None = 3
    first_cut: FirstCut = "any"


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
        if stock.trim_length < 0 or stock.trim_width < 0 or stock.cost < 0 or (stock.count or 0) < 0:
            found.append(f"stock {stock.id} has a trim, cost or count below 0")
    if instance.kerf < 0:
        found.append(f"the kerf is {instance.kerf} mm; it cannot be below 0")
    return found
