"""Sizes of sheet that can be bought, weighed by their prices."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from boardwright.core.findings import Finding, Severity
from boardwright.core.lengths import Units
from boardwright.piece.records import Stock
from boardwright.stock.instance import StockSize
from boardwright.stock.records import BoardLayout, ShopChoices
from boardwright.stock.wording import sold

USUAL = "sheet"
"""Id of the size that the stock itself has."""


def sheet_sizes(stock: Stock, choices: ShopChoices, trim: float, units: Units) -> tuple[StockSize, ...]:
    """The stock's own size, and those that the file gives a price for.

    What is kept small is the face area [m2]. Another size counts as the area of the usual sheet that costs as much.

    Args:
        stock: a sheet of known size.
        choices: sizes and prices.
        trim: taken off each edge [mm].
        units: of the plan.
    """
    assert stock.sheet_size is not None
    length, width = stock.sheet_size
    area = length * width / 1e6
    found = [StockSize(USUAL, length, width, None, area, trim, trim)]
    price = _own_price(stock, choices)
    for id, a, b, other in choices.sheets:
        if id == stock.id and price and min(a, b) > 2 * trim and (a, b) != (length, width):
            name = f"sheet {sold(units, b, a)}"
            found.append(StockSize(name, a, b, None, round(other / price * area, 6), trim, trim))
    return tuple({s.id: s for s in found}.values())


def _own_price(stock: Stock, choices: ShopChoices) -> float:
    """What a sheet of the stock's own size costs by the file; 0 when it does not say."""
    area = stock.sheet_size[0] * stock.sheet_size[1] / 1e6 if stock.sheet_size else 0.0
    of_unit = {"sheet": 1.0, "piece": 1.0, "square metre": area}
    return next(
        (price * of_unit.get(per, 0.0) for name, price, per in choices.prices if name == stock.id), 0.0
    )


def sheets_price(stock: Stock, choices: ShopChoices, layouts: Sequence[BoardLayout]) -> float | None:
    """What the sheets of some layouts cost, where the file gives prices of several sizes.

    Args:
        stock: what they are.
        choices: sizes and prices.
        layouts: sheets that are bought.
    """
    own = _own_price(stock, choices)
    others = {(a, b): price for id, a, b, price in choices.sheets if id == stock.id}
    if stock.kind != "sheet" or not own or not others:
        return None
    return sum(others.get((x.length, x.width), own) if x.size != USUAL else own for x in layouts)


def unused_sizes(stocks: Mapping[str, Stock], choices: ShopChoices, trim: float) -> list[Finding]:
    """Warnings for sizes that cannot be weighed: of no sheet of the piece, without a price beside it, or too small.

    Args:
        stocks: of the piece, by id.
        choices: sizes and prices.
        trim: taken off each edge [mm].
    """
    found = []
    for n, (id, length, width, _) in enumerate(choices.sheets):
        stock = stocks.get(id)
        fits = stock is not None and stock.kind == "sheet" and min(length, width) > 2 * trim
        if stock is None or not fits or not _own_price(stock, choices):
            found.append(
                Finding(
                    "stock.size-unused", Severity.WARNING, f"a size of sheet that is given for `{id}` is not used",
                    choices.place(f"shop.sheets[{n}]"), id,
                    "a sheet of this piece with a price per sheet or per square metre, and a size that is left after "
                    "trimming", remedy="give its own size a price under `shop.prices`, or take this one out",
                )
            )  # fmt: skip
    return found
