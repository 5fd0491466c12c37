"""What the buying list costs, by the prices of the design file and those of the rack.

A price in the file goes before one on the rack. Each line is rounded to the cent, and the total is the sum of what
is printed.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import ROUND_HALF_UP, Decimal
from math import ceil

from boardwright.core.findings import Finding, Severity
from boardwright.core.lengths import INCH
from boardwright.core.rack import Price, Rack
from boardwright.stock.own_supplies import less_supply
from boardwright.stock.records import BuyLine, Lot, ShopChoices

Amounts = dict[str, float]
"""How much of each unit a line is."""
BOARD_FOOT = 144 * INCH**3 / 1e9
"""A board foot, 144 cubic inches [m3]."""
FLUID_OUNCES = 33.814
"""US fluid ounces in a litre."""
CENT = Decimal("0.01")
_QUANTITY = re.compile(r"(\d+(?:\.\d+)?)(?: to (\d+(?:\.\d+)?))? ?(g|mL|fl oz)?")
_FREE = re.compile(r"0(?![\d.])")


@dataclass(frozen=True, slots=True)
class Bought:
    """A line of the buying list and what its price is found by.

    Attributes:
        line: as printed, without its cost.
        names: that the design file may give its price under; the first is what it should be called.
        amounts: how much it is; None when its quantity says so.
        lot: the lumber or sheets it is; None for anything else.
        whole: what it costs by the file, where its sizes have different prices.
    """

    line: BuyLine
    names: tuple[str, ...]
    amounts: Amounts | None = None
    lot: Lot | None = None
    whole: float | None = None


@dataclass(frozen=True, slots=True)
class Costs:
    """The buying list with its prices.

    Attributes:
        lines: of the list, and their total when there are prices.
        text: what it comes to, e.g. `214.60 USD; without a price: …`; "" when there are no prices.
        findings: prices that fit no line.
    """

    lines: tuple[BuyLine, ...]
    text: str
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class _Rate:
    """A price of one `per`, from the file (no record of the rack) or from the rack."""

    amount: Decimal
    per: str
    of_rack: Price | None = None

    @property
    def currency(self) -> str:
        return self.of_rack.currency if self.of_rack else ""


def lumber_amounts(lot: Lot, board_feet: float | None, volume: float) -> Amounts:
    """How much lumber is, by the units that it is sold in.

    Args:
        lot: as laid out.
        board_feet: that are asked for [bd ft]; None in a plan in mm, where it follows from the volume.
        volume: the same [m3].
    """
    feet = ceil(volume / BOARD_FOOT * 10 - 1e-6) / 10 if board_feet is None else board_feet
    return {
        "board foot": feet,
        "cubic metre": volume,
        "square metre": _hundredths(lot.tally.bought),
        "piece": float(lot.tally.count),
    }


def sheet_amounts(count: int, area: float) -> Amounts:
    """How much sheets or panes are, by the units that they are sold in; their area [m2]."""
    return {"sheet": float(count), "piece": float(count), "square metre": _hundredths(area)}


def length_amounts(count: int, each: float) -> Amounts:
    """How much bars are, by the units that they are sold in; the length of one [mm]."""
    return {"piece": float(count), "metre": count * each / 1000, "foot": count * each / INCH / 12}


def _hundredths(area: float) -> float:
    return ceil(area * 100 - 1e-6) / 100


def _of_quantity(quantity: str) -> Amounts:
    """What a printed quantity comes to, the most of it when it is a range."""
    found = _QUANTITY.search(quantity)
    if found is None:
        return {}
    most = float(found[2] or found[1])
    if found[3] == "g":
        return {"kilogram": most / 1000}
    if found[3]:
        return {"litre": most / (1000 if found[3] == "mL" else FLUID_OUNCES)}
    return {"piece": most, "hundred": most / 100}


def costed(bought: Sequence[Bought], choices: ShopChoices) -> Costs:
    """Take off what is on the rack, and say what the rest costs.

    Args:
        bought: the lines.
        choices: prices of the file; the rack with its supplies and prices.
    """
    rack = choices.rack or Rack()
    own = {name: _Rate(Decimal(str(price)), per) for name, price, per in choices.prices}
    out: list[BuyLine] = []
    findings: list[Finding] = []
    sums: dict[str, Decimal] = {}
    missing: list[str] = []
    used: set[str] = set()
    for entry in bought:
        line = less_supply(entry.line, rack)
        much = entry.amounts if entry.amounts is not None else _of_quantity(line.quantity)
        free = line.quantity.endswith("on hand") or _FREE.match(line.quantity) is not None
        name = next((n for n in entry.names if n in own), "")
        used.add(name)
        rate = own.get(name) or _of_rack(entry, rack)
        if name and own[name].per not in much:
            findings.append(_wrong_unit(choices, name, own[name].per, much))
        if rate is None or rate.per not in much or (free and rate.of_rack):
            missing += [] if free else [line.item]
            out.append(line)
            continue
        many = 0.0 if free else much[rate.per]
        exact = rate.amount * Decimal(str(many)) if entry.whole is None else Decimal(str(entry.whole))
        cost = exact.quantize(CENT, ROUND_HALF_UP)
        sums[rate.currency] = sums.get(rate.currency, Decimal(0)) + cost
        out.append(_with_cost(line, rate, many, cost))
    findings += [_unused(choices, n, bought) for n in own if n not in used]
    if not own and not rack.prices:
        return Costs(tuple(out), "", ())
    total = " and ".join(f"{cost} {currency}".strip() for currency, cost in sums.items()) or "nothing"
    more = f"{len(missing)} lines have no price" if len(missing) > 1 else "1 line has no price"
    out.append(BuyLine("total", "all lines with a price", "", more if missing else "", "", total))
    text = f"{total}; without a price: {', '.join(missing)}" if missing else total
    return Costs(tuple(out), text, tuple(findings))


def _of_rack(entry: Bought, rack: Rack) -> _Rate | None:
    """The newest price that the rack has for a line."""
    lot = entry.lot
    if lot is None:
        price = rack.latest_price(entry.line.item, None)
    elif lot.sold is not None:
        price = rack.latest_price(lot.sold.material, lot.sold.thickness)
    else:
        price = None
    return _Rate(price.amount, price.unit, price) if price else None


def _with_cost(line: BuyLine, rate: _Rate, many: float, cost: Decimal) -> BuyLine:
    """The line with its cost, and how that comes about where the price is the rack's."""
    money = f"{cost} {rate.currency}".strip()
    if rate.of_rack is None:
        return replace(line, cost=money)
    price = rate.of_rack
    plural = {"board foot": "board feet", "square metre": "square metres"}.get(price.unit, f"{price.unit}s")
    unit = f"{many:g} {price.unit if many == 1 else plural}"
    where = f", {price.seller}" if price.seller else ""
    words = f"{unit} at {price.amount} {price.currency}".rstrip() + f" come to {money} ({price.day}{where})"
    return replace(line, cost=money, detail="; ".join(t for t in (line.detail, words) if t))


def _wrong_unit(choices: ShopChoices, name: str, per: str, much: Amounts) -> Finding:
    return Finding(
        "stock.price-unit", Severity.WARNING, f"the price of `{name}` is per {per}, which it is not counted in",
        choices.place("shop.prices"), per, "one of " + ", ".join(much) if much else "no price for this line",
        remedy="give the price per one of these",
    )  # fmt: skip


def _unused(choices: ShopChoices, name: str, bought: Sequence[Bought]) -> Finding:
    known = list(dict.fromkeys(b.names[0] for b in bought))
    return Finding(
        "stock.price-unused", Severity.WARNING, f"nothing on the buying list is `{name}`",
        choices.place("shop.prices"), name, "one of " + ", ".join(known), remedy="correct the name, or take it out",
    )  # fmt: skip
