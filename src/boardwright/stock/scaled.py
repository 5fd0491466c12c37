"""The question as the engine works on it: whole numbers, kerf taken in, one direction of first cut.

A part with kerf on it of size + kerf, in a stock of size + kerf, is the same question without a kerf: the
last part needs no cut behind it, and a remainder narrower than the kerf vanishes in it. So from here on there
is no kerf. Sizes are called `a` (the direction in which the first stage stacks its sections) and `b` (the
other), so that rip first and crosscut first are one case.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import gcd

from boardwright.stock.instance import Axis, Instance, Item, StockSize
from boardwright.stock.units import to_units

FINEST = 4000
"""Most steps of the grid along a stock. Above it sizes are rounded in the safe direction."""
FINEST_LINE = 400_000
"""The same for bars, whose other side is one step."""


@dataclass(frozen=True, slots=True)
class Shape:
    """One way to lay one item: its sizes on the grid."""

    item: int
    turned: bool
    a: int
    b: int


@dataclass(frozen=True, slots=True)
class Room:
    """A stock on the grid: what is left after trimming."""

    stock: int
    a: int
    b: int
    cost: float
    count: int | None


@dataclass(frozen=True, slots=True)
class Scaled:
    """A question for one direction of first cut.

    Attributes:
        first: the first cut.
        counts: copies wanted of each item; 0 for one that fits no stock.
        shapes: all ways to lay all items that fit somewhere.
        by_item: the same, by item.
        rooms: the stocks that take at least one item.
        sections: stage 1 makes sections that are cut again in two more stages, else in one.
        exact: the grid lost nothing.
    """

    first: Axis
    counts: tuple[int, ...]
    shapes: tuple[Shape, ...]
    by_item: tuple[tuple[Shape, ...], ...]
    rooms: tuple[Room, ...]
    sections: bool
    exact: bool


def enlarged(item: Item, kerf: int) -> tuple[int, int]:
    """Length and width of an item with the kerf on it (units)."""
    return to_units(item.length) + kerf, to_units(item.width) + kerf


def roomy(stock: StockSize, kerf: int) -> tuple[int, int]:
    """Length and width of a trimmed stock with the kerf on it (units)."""
    length = to_units(stock.length) - 2 * to_units(stock.trim_length)
    width = to_units(stock.width) - 2 * to_units(stock.trim_width)
    return length + kerf, width + kerf


def layings(item: Item, kerf: int) -> list[tuple[int, int, bool]]:
    """Ways to lay an item: size along the stock and across it (units), and whether it is turned."""
    length, width = enlarged(item, kerf)
    if item.turnable and length != width:
        return [(length, width, False), (width, length, True)]
    return [(length, width, False)]


def scale(instance: Instance, first: Axis, finest: int = FINEST, down: bool = False) -> Scaled:
    """The question on a grid.

    Args:
        instance: the question.
        first: direction of the first cut.
        finest: most steps of the grid along a stock.
        down: where the grid is too coarse, make parts smaller (for bounds), not larger (for layouts).

    Returns:
        The question in whole numbers.
    """
    kerf = to_units(instance.kerf)
    rooms = [roomy(s, kerf) for s in instance.stocks]
    ways = [
        [w for w in layings(item, kerf) if any(w[0] <= r[0] and w[1] <= r[1] for r in rooms)]
        if item.count
        else []
        for item in instance.items
    ]
    flat = [w for way in ways for w in way]
    steps, exact = [], True
    common = [gcd(*(w[side] for w in flat)) if flat else 1 for side in (0, 1)]
    if all(r[1] == common[1] for r in rooms):
        finest = FINEST_LINE
    for side, step in enumerate(common):
        longest = max((r[side] for r in rooms), default=1)
        if longest // step > finest:
            step, exact = -(-longest // finest), False
        steps.append(step)
    order = (1, 0) if first == "rip" else (0, 1)

    def shape(i: int, way: tuple[int, int, bool]) -> Shape:
        size = [way[side] // steps[side] if down else -(-way[side] // steps[side]) for side in order]
        return Shape(i, way[2], size[0], size[1])

    by_item = tuple(tuple(shape(i, w) for w in way) for i, way in enumerate(ways))
    scaled_rooms = tuple(
        Room(n, r[order[0]] // steps[order[0]], r[order[1]] // steps[order[1]], s.cost, s.count)
        for n, (r, s) in enumerate(zip(rooms, instance.stocks, strict=True))
        if s.count != 0 and any(w[0] <= r[0] and w[1] <= r[1] for w in flat)
    )
    counts = tuple(item.count if way else 0 for item, way in zip(instance.items, ways, strict=True))
    shapes = tuple(s for way in by_item for s in way)
    return Scaled(first, counts, shapes, by_item, scaled_rooms, instance.stages != 2, exact)
