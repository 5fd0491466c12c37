"""The buying list, by kind of supplier: short lines that a maker takes along."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from math import ceil

from boardwright.core.findings import Finding
from boardwright.core.lengths import Printer
from boardwright.piece.records import Piece, Stock
from boardwright.stock.buying_finish import chosen_finish, face_area, surface_lines
from boardwright.stock.buying_small import fasteners, glue_lines, glued_area, hardware
from boardwright.stock.choices import Allowances
from boardwright.stock.costs import Amounts, amounts, priced
from boardwright.stock.edging import edging_lines
from boardwright.stock.needs import Purchases
from boardwright.stock.purchase import PILES
from boardwright.stock.records import BuyLine, Lot, RoughPart, ShopChoices
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
Line = tuple[BuyLine, tuple[str, ...], Amounts]


def buying_list(
    piece: Piece,
    lots: Sequence[Lot],
    rough: Sequence[RoughPart],
    purchases: Mapping[str, Purchases],
    choices: ShopChoices,
    allow: Allowances,
    tables: Tables,
    printer: Printer,
) -> tuple[tuple[BuyLine, ...], list[Finding]]:
    """Everything that is bought for a piece.

    Args:
        piece: fasteners, hardware, stocks, faces.
        lots: boards and sheets.
        rough: rough sizes, for glue-ups.
        purchases: of each lot that is bought, how much of which grade to ask for.
        choices: finish, prices.
        allow: the saw cut.
        tables: glue, slides, finishes, figures.
        printer: prints sizes of the plan.

    Returns:
        Lines by group, and findings.
    """
    stocks = {p.stock.id: p.stock for p in piece.parts}
    lines: list[Line] = []
    told = False
    for lot in (x for x in lots if x.kind == "wood" and x.layouts):
        found = purchases.get(lot.id)
        line = _on_hand(lot) if lot.on_hand else _lumber(lot, found or AS_LAID, printer, told)
        told = told or found is not None
        feet = float(found.ask.board_feet) if found and found.ask else lot.tally.bought_board_feet or 0.0
        volume = found.ask.volume if found and found.ask else lot.tally.bought_volume
        if lot.on_hand:
            feet = volume = 0.0
        lines.append((line, (lot.stock, line.item), amounts(line, lot, feet, volume)))
    for lot in (x for x in lots if x.kind == "sheet" and x.layouts):
        line = _sheets(lot, stocks[lot.stock], rough, printer)
        much = amounts(line, lot, 0.0, 0.0)
        lines.append((line, (lot.stock, line.item), dict.fromkeys(much, 0.0) if lot.on_hand else much))
    joints = glued_area(piece.joints, ())
    finish, findings = chosen_finish(choices, tables)
    small = [
        *edging_lines(piece, tables, allow.kerf, printer),
        *fasteners(piece),
        *hardware(piece, tables),
        *glue_lines(glued_area(piece.joints, rough), tables),
        *surface_lines(face_area(piece, joints), finish, choices.coats, tables, printer),
    ]
    lines += [(line, (line.item,), amounts(line, None, 0.0, 0.0)) for line in small]
    bought, more = priced(lines, choices)
    return tuple(bought), [*findings, *more]


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


def _sheets(lot: Lot, stock: Stock, rough: Sequence[RoughPart], printer: Printer) -> BuyLine:
    if "glass" in stock.table_key and not lot.on_hand:
        panes = [r for r in rough if r.lot == lot.id]
        sizes = [f"{r.count} of {printer.size(r.strip[1])} × {printer.size(r.strip[0])}" for r in panes]
        count = counted(sum(r.count for r in panes), "pane")
        detail = f"{', '.join(sizes)} {printer.units}, cut to size, edges ground"
        return BuyLine("sheets", lot.title, count, detail, stock.source)
    measured = f" (measured {printer.text(stock.thickness)})" if stock.measured else ""
    item = f"{lot.title}{measured}"
    if stock.sheet_size and not lot.on_hand:
        item += f", {sold(printer.units, stock.sheet_size[1], stock.sheet_size[0])}"
    what = lot.tally
    quantity = counted(what.count, "sheet") + (", on hand" if lot.on_hand else "")
    loss = _loss(what.lost_share, what.added_share)
    detail = f"{', '.join(lot.sizes)}; {loss}" if lot.on_hand else loss
    return BuyLine("sheets", item, quantity, detail, stock.source)
