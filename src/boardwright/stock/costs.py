"""Costs of the buying list, where prices are given."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from boardwright.core.findings import Finding, Severity
from boardwright.stock.records import BuyLine, Lot, ShopChoices

Amounts = dict[str, float]
"""How much of each unit a line is."""


def amounts(line: BuyLine, lot: Lot | None, board_feet: float, volume: float) -> Amounts:
    """How much a line is, by the units that things are sold in.

    Args:
        line: of the buying list.
        lot: when it is lumber or sheets.
        board_feet: of lumber that is bought [bd ft].
        volume: the same [m3].
    """
    if lot is not None and lot.kind == "wood":
        return {"board foot": board_feet, "cubic metre": volume}
    if lot is not None:
        return {
            "sheet": float(lot.tally.count),
            "piece": float(lot.tally.count),
            "square metre": lot.tally.bought,
        }
    found = re.search(r"(\d+(?:\.\d+)?)(?: to (\d+(?:\.\d+)?))? ?(g|mL|fl oz)?", line.quantity)
    if found is None:
        return {}
    most = float(found[2] or found[1])
    if found[3] == "g":
        return {"kilogram": most / 1000}
    if found[3]:
        return {"litre": most / (1000 if found[3] == "mL" else 33.814)}
    return {"piece": most, "hundred": most / 100}


def priced(
    lines: Sequence[tuple[BuyLine, tuple[str, ...], Amounts]], choices: ShopChoices
) -> tuple[list[BuyLine], list[Finding]]:
    """The lines with their costs and a total; findings for prices that fit no line.

    Args:
        lines: each with the names that a price may be given under, and how much it is.
        choices: the prices.
    """
    prices = {name: (price, per) for name, price, per in choices.prices}
    out: list[BuyLine] = []
    findings: list[Finding] = []
    total, unpriced, used = 0.0, 0, set[str]()
    for line, names, much in lines:
        name = next((n for n in names if n in prices), "")
        cost = ""
        if name:
            used.add(name)
            price, per = prices[name]
            if per in much:
                total += price * much[per]
                cost = f"{price * much[per]:.2f}"
            else:
                findings.append(_wrong_unit(choices, name, per, much))
        unpriced += not cost
        out.append(replace(line, cost=cost))
    findings += [_unused(choices, n, lines) for n in prices if n not in used]
    if prices:
        more = (
            f"{unpriced} lines have no price" if unpriced > 1 else "1 line has no price" if unpriced else ""
        )
        out.append(BuyLine("total", "all lines with a price", "", more, "", f"{total:.2f}"))
    return out, findings


def _wrong_unit(choices: ShopChoices, name: str, per: str, much: Amounts) -> Finding:
    return Finding(
        "stock.price-unit", Severity.WARNING, f"the price of `{name}` is per {per}, which it is not counted in",
        choices.place("shop.prices"), per, "one of " + ", ".join(much) if much else "no price for this line",
        remedy="give the price per one of these",
    )  # fmt: skip


def _unused(
    choices: ShopChoices, name: str, lines: Sequence[tuple[BuyLine, tuple[str, ...], Amounts]]
) -> Finding:
    known = list(dict.fromkeys(names[0] for _, names, _ in lines))
    return Finding(
        "stock.price-unused", Severity.WARNING, f"nothing on the buying list is `{name}`",
        choices.place("shop.prices"), name, "one of " + ", ".join(known), remedy="correct the name, or take it out",
    )  # fmt: skip
