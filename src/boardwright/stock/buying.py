"""The buying list, by kind of supplier: short lines that a maker takes along."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from math import ceil

from boardwright.core.findings import Finding
from boardwright.core.lengths import Printer
from boardwright.piece.records import Piece, Stock
from boardwright.stock.buying_finish import chosen_finish, face_area, surface_lines
from boardwright.stock.buying_small import fasteners, glue_lines, glued_area, hardware
from boardwright.stock.costs import Bought, Costs, costed, length_amounts, lumber_amounts, sheet_amounts
from boardwright.stock.needs import Purchases
from boardwright.stock.purchase import PILES
from boardwright.stock.records import BarLot, BuyLine, Lot, RoughPart, ShopChoices
from boardwright.stock.sheet_sizes import sheets_price
from boardwright.stock.wording import counted, percent, sold
from boardwright.tables.bundle import Tables

SIMULATED = (
    f"{PILES} piles of random boards of the grade cut in trial; board feet by the hardwood tally (NHLA: surface "
    "measure to the whole foot, times the thickness)"
)
MOSTLY = 0.75
"""Share that is lost from which it is only said that most is left over."""
AS_LAID = Purchases(None, ())
"""Nothing was tried: what the layouts take is bought."""


def buying_list(
    piece: Piece,
    lots: Sequence[Lot],
    rough: Sequence[RoughPart],
    purchases: Mapping[str, Purchases],
    edging: Sequence[tuple[BuyLine, BarLot]],
    choices: ShopChoices,
    tables: Tables,
    printer: Printer,
) -> tuple[Costs, list[Finding]]:
    """Everything that is bought for a piece, less what is on the rack, with its costs.

    Args:
        piece: fasteners, hardware, stocks, faces.
        lots: boards and sheets, what is on hand apart from what is bought.
        rough: rough sizes, for glue-ups.
        purchases: of each lot that is bought, how much of which grade to ask for.
        edging: with its cuts.
        choices: finish, prices, the rack.
        tables: glue, slides, finishes, figures.
        printer: prints sizes of the plan.

    Returns:
        Lines by group with what they come to, and findings.
    """
    stocks = {p.stock.id: p.stock for p in piece.parts}
    lines: list[Bought] = []
    told = False
    for lot in (x for x in lots if x.kind == "wood" and x.layouts):
        found = purchases.get(lot.id)
        line = _on_hand(lot) if lot.on_hand else _lumber(lot, found or AS_LAID, printer, told)
        told = told or found is not None
        ask = found.ask if found else None
        feet = ask.board_feet if ask else lot.tally.bought_board_feet
        volume = ask.volume if ask else lot.tally.bought_volume
        much = lumber_amounts(lot, feet if printer.units == "in" else None, volume)
        lines.append(Bought(line, (lot.stock, line.item), much, lot))
    for lot in (x for x in lots if x.kind == "sheet" and (x.layouts or x.to_size)):
        line = (
            _panes(lot, rough, stocks[lot.stock], printer) if lot.to_size else _sheets(lot, stocks, printer)
        )
        much = sheet_amounts(lot.tally.count, lot.tally.bought)
        whole = None if lot.on_hand else sheets_price(stocks[lot.stock], choices, lot.layouts)
        lines.append(Bought(line, (lot.stock, line.item), much, lot, whole))
    for line, bars in edging:
        lines.append(Bought(line, (line.item,), length_amounts(bars.count, bars.length)))
    joints = glued_area(piece.joints, ())
    finish, findings = chosen_finish(choices, tables)
    small = [
        *fasteners(piece),
        *hardware(piece, tables),
        *glue_lines(glued_area(piece.joints, rough), tables),
        *surface_lines(face_area(piece, joints), finish, choices.coats, tables, printer),
    ]
    lines += [Bought(line, (line.item,)) for line in small]
    costs = costed(lines, choices)
    return costs, [*findings, *costs.findings]


def _on_hand(lot: Lot) -> BuyLine:
    what = lot.tally
    if what.bought_board_feet is not None:
        quantity = counted(round(what.bought_board_feet), "board foot", "board feet")
    else:
        quantity = f"{what.bought_volume:.3f} m³"
    loss = _loss(what.lost_share, what.added_share)
    return BuyLine(
        "lumber",
        lot.title,
        f"{quantity}, on hand",
        "; ".join(
            t for t in (f"{counted(what.count, 'board')}: {', '.join(lot.sizes)}", loss, lot.assumed) if t
        ),
    )


def _lumber(lot: Lot, found: Purchases, printer: Printer, told: bool) -> BuyLine:
    """Lumber to ask for: how much of which grade, how long, and the chance that it suffices."""
    ask = found.ask
    what = lot.tally
    in_feet = what.bought_board_feet is not None
    if ask is None:
        feet = counted(round(what.bought_board_feet or 0), "board foot", "board feet")
        quantity = feet if in_feet else f"{what.bought_volume:.3f} m³"
        detail = f"as laid out: {counted(what.count, 'board')}: {', '.join(lot.sizes)}"
        return BuyLine("lumber", lot.title, quantity, detail, lot.assumed)
    size = _amount(in_feet)
    others = [
        f"{size(p.board_feet, p.volume)} of {p.grade}{', wide parts glued up' if 'Common' in p.grade else ''}"
        for p in found.others
    ]
    detail = "; ".join(
        [
            f"{_feet(ask.shortest, printer)} and longer",
            f"enough in {round(10 * ask.chance)} of 10 piles",
            _loss(ask.lost_share, ask.added_share),
            *(["or " + ", ".join(others)] if others else []),
        ]
    )
    return BuyLine(
        "lumber",
        f"{lot.title}, {ask.grade}",
        size(ask.board_feet, ask.volume),
        detail,
        "" if told else SIMULATED,
    )


def _feet(mm: float, printer: Printer) -> str:
    """A length of boards: whole feet, or metres up to the next 0.1."""
    return f"{round(mm / 304.8)} ft" if printer.units == "in" else f"{ceil(mm / 100 - 1e-6) / 10:g} m"


def _loss(lost: float, added: float) -> str:
    """The loss both ways, as a share of what is bought and over net; a little of a large board is not worth figures."""
    if lost > MOSTLY:
        return "most of it is left over"
    return f"{percent(lost)} lost, {percent(added)} over net"


def _amount(in_feet: bool) -> Callable[[int, float], str]:
    if in_feet:
        return lambda feet, _: counted(feet, "board foot", "board feet")
    return lambda _, volume: f"{volume:.3f} m³"


def _panes(lot: Lot, rough: Sequence[RoughPart], stock: Stock, printer: Printer) -> BuyLine:
    own = [r for r in rough if r.lot == lot.id]
    sizes = [f"{r.count + r.spare} of {printer.size(r.strip[1])} × {printer.size(r.strip[0])}" for r in own]
    detail = f"{', '.join(sizes)} {printer.units}, cut to size, edges ground"
    return BuyLine("sheets", lot.title, counted(lot.tally.count, "pane"), detail, stock.source)


def _sheets(lot: Lot, stocks: Mapping[str, Stock], printer: Printer) -> BuyLine:
    stock = stocks[lot.stock]
    measured = f" (measured {printer.text(stock.thickness)})" if stock.measured else ""
    item = f"{lot.title}{measured}"
    own_size = {(b.length, b.width) for b in lot.layouts} == {stock.sheet_size}
    if stock.sheet_size and own_size and not lot.on_hand:
        item += f", {sold(printer.units, stock.sheet_size[1], stock.sheet_size[0])}"
    what = lot.tally
    quantity = counted(what.count, "sheet") + (", on hand" if lot.on_hand else "")
    loss = _loss(what.lost_share, what.added_share)
    detail = loss if own_size and not lot.on_hand else f"{', '.join(lot.sizes)}; {loss}"
    return BuyLine("sheets", item, quantity, detail, stock.source)
