"""What the buying list costs by the rack's prices, and what of it the rack has already."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import ROUND_HALF_UP, Decimal
from math import ceil

from boardwright.core.lengths import INCH
from boardwright.core.rack import Price, Rack, RackPiece, Supply
from boardwright.stock.records import BuyLine, Lot

BOARD_FOOT = 144 * INCH**3 / 1e9
"""A board foot, 144 cubic inches [m3]."""
CENT = Decimal("0.01")
_NUMBER = re.compile(r"\d+(?:\.\d+)?")
_WHOLE = re.compile(r"\d+")


@dataclass(frozen=True, slots=True)
class Costs:
    """The buying list with its prices.

    Attributes:
        lines: of the list.
        text: what it comes to, e.g. `214.60 USD; without a price: …`; "" when the rack has no price.
    """

    lines: tuple[BuyLine, ...]
    text: str


def with_costs(lines: Sequence[BuyLine], lots: Sequence[Lot], rack: Rack | None) -> Costs:
    """Take off what is on the rack, and say what the rest costs.

    Args:
        lines: of the buying list.
        lots: what is bought and what is on hand, as the lines were made from them.
        rack: supplies and prices; None when there is none.
    """
    if rack is None:
        return Costs(tuple(lines), "")
    lines = [_less_supply(line, rack) for line in lines]
    if not rack.prices:
        return Costs(tuple(lines), "")
    out: list[BuyLine] = []
    sums: dict[str, Decimal] = {}
    missing: list[str] = []
    for line in lines:
        if line.quantity.endswith("on hand") or line.quantity.startswith("0"):
            out.append(line)
            continue
        cost, words, currency = _cost(line, lots, rack)
        if cost is None:
            missing.append(line.item)
            out.append(line)
            continue
        sums[currency] = sums.get(currency, Decimal(0)) + cost
        out.append(replace(line, detail="; ".join(t for t in (line.detail, words) if t)))
    total = " and ".join(f"{cost} {currency}".strip() for currency, cost in sums.items()) or "nothing"
    if missing:
        total += f"; without a price: {', '.join(missing)}"
    return Costs(tuple(out), total)


def _less_supply(line: BuyLine, rack: Rack) -> BuyLine:
    """A line of hardware or the like, less what the shop has; glue is by weight, and is only pointed out."""
    own = next((s for s in rack.supplies if _plain(s.name) == _plain(line.item)), None)
    if own is None or own.quantity <= 0 or line.group in ("lumber", "sheets"):
        return line
    number = _WHOLE.match(line.quantity)
    if line.group == "glue" or number is None or not _same_unit(line, own):
        return replace(
            line, detail=f"{line.detail}; {own.quantity:g} {own.unit} on the rack".removeprefix("; ")
        )
    need, there = int(number.group()), int(own.quantity)
    mine = min(need, there)
    detail = f"{line.detail}; {need} less {there} on the rack".removeprefix("; ")
    quantity = f"{need - mine}{line.quantity[number.end() :]}"
    return replace(line, quantity=quantity, detail=detail, supply=own.name, taken=mine)


def _plain(name: str) -> str:
    """A name without what people write in two ways."""
    return " ".join(name.lower().replace("×", "x").split())


def _same_unit(line: BuyLine, own: Supply) -> bool:
    """Whether a line and a supply count the same: pieces, or pairs."""
    unit = line.quantity.lstrip("0123456789").strip() or "piece"
    return unit.removesuffix("s") == own.unit.removesuffix("s")


def _cost(line: BuyLine, lots: Sequence[Lot], rack: Rack) -> tuple[Decimal | None, str, str]:
    """What a line costs, how that comes about, and in what currency; None when there is no price for it."""
    lot = next((x for x in lots if not x.on_hand and x.layouts and line.item.startswith(x.title)), None)
    if line.group in ("lumber", "sheets"):
        piece = lot.layouts[0].piece if lot else None
        if lot is None or piece is None:
            return None, "", ""
        price = rack.latest_price(piece.material, piece.thickness)
        many = _amount(line, lot, piece, price) if price else None
    else:
        price = rack.latest_price(line.item, None)
        number = _WHOLE.match(line.quantity)
        many = (
            int(number.group())
            if number and price and price.unit == "piece" and line.group != "glue"
            else None
        )
    if price is None or many is None:
        return None, "", ""
    cost = (price.amount * Decimal(str(many))).quantize(CENT, ROUND_HALF_UP)
    return cost, _words(price, many, cost), price.currency


def _amount(line: BuyLine, lot: Lot, piece: RackPiece, price: Price) -> float | None:
    """How many of the price's unit are bought: board feet as the line asks for them, or by its volume."""
    what = lot.bought or lot.tally
    if price.unit == "board foot" and piece.kind == "board":
        asked = float(_NUMBER.findall(line.quantity)[0])
        return asked if "board f" in line.quantity else ceil(asked / BOARD_FOOT * 10 - 1e-6) / 10
    if price.unit == "square metre":
        return ceil(what.bought * 100 - 1e-6) / 100
    if price.unit == "sheet" and piece.kind == "board":
        return None
    return what.count if price.unit in ("sheet", "piece") else None


def _words(price: Price, many: float, cost: Decimal) -> str:
    plural = {"board foot": "board feet", "square metre": "square metres"}.get(price.unit, f"{price.unit}s")
    unit = f"{many:g} {price.unit if many == 1 else plural}"
    where = f", {price.seller}" if price.seller else ""
    money = f"{cost} {price.currency}".strip()
    return f"{unit} at {price.amount} {price.currency}".rstrip() + f" come to {money} ({price.day}{where})"
