"""What of the buying list the rack has already: hardware and the like."""

from __future__ import annotations

import re
from dataclasses import replace

from boardwright.core.rack import Rack, Supply
from boardwright.stock.records import BuyLine

_WHOLE = re.compile(r"\d+")


def less_supply(line: BuyLine, rack: Rack) -> BuyLine:
    """A line of hardware or the like, less what the shop has; glue is by weight, and is only pointed out.

    Args:
        line: of the buying list.
        rack: its supplies.
    """
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
