"""The buying list: lumber, sheets, screws, dowels and the like, slides, glue."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from math import ceil, floor

from boardwright.core.lengths import Printer
from boardwright.formulas.gluing import glue_mass
from boardwright.piece.records import Joint, Piece, Stock
from boardwright.stock.records import BuyLine, Lot, RoughPart
from boardwright.stock.wording import counted, percent, sold
from boardwright.tables.bundle import Tables

SPARE = 0.10
"""Fasteners bought over what is used (common practice)."""
ROUND_TO = 5
"""Fasteners are counted up to the next whole five (common practice)."""
MUCH_GLUE = 100.0
"""From here glue is rounded outwards to 10 g, below to 1 g [g]."""


def buying_list(
    piece: Piece, lots: Sequence[Lot], glue_area: float, tables: Tables, printer: Printer
) -> tuple[BuyLine, ...]:
    """Everything that is bought for a piece.

    Args:
        piece: fasteners, hardware, stocks.
        lots: boards and sheets.
        glue_area: faces that are glued, one side counted [mm2].
        tables: glue, slides, figures.
        printer: prints sizes of the plan.

    Returns:
        Lines by group: lumber, sheets, fasteners, hardware, glue.
    """
    stocks = {p.stock.id: p.stock for p in piece.parts}
    lines = [_lumber(lot, tables) for lot in lots if lot.kind == "wood" and lot.layouts]
    lines += [_sheets(lot, stocks[lot.stock], printer) for lot in lots if lot.kind == "sheet" and lot.layouts]
    lines += _fasteners(piece)
    lines += _hardware(piece, tables)
    lines += _glue(glue_area, tables)
    return tuple(lines)


def _lumber(lot: Lot, tables: Tables) -> BuyLine:
    what = lot.tally
    if what.bought_board_feet is not None and what.net_board_feet is not None:
        quantity = counted(round(what.bought_board_feet), "board foot", "board feet")
        net = f"{what.net_board_feet:.1f} board feet in the finished parts"
        source = (
            "NHLA rules: surface measure of each board to the whole foot, times its thickness, "
            "under 1 in counted as 1 in"
        )
    else:
        quantity = f"{what.bought_volume:.3f} m³"
        net = f"{what.bought:.2f} m² of face; finished parts {what.net_volume:.3f} m³ ({what.net:.2f} m²)"
        source = "volume by the sawn thickness"
    usual = tables.figure("over_net_fas")
    range_text = f"{usual.low:g} to {usual.value:g}" if usual.low is not None else f"{usual.value:g}"
    detail = "; ".join(
        [
            f"{counted(what.count, 'board')}: {', '.join(lot.sizes)}",
            net,
            f"{percent(what.added_share)} over net (the trade buys {range_text} % over, best grade; "
            f"{usual.reason}); knots and other defects are not in it",
            lot.assumed,
        ]
    )
    return BuyLine("lumber", lot.title, f"{quantity}, on hand" if lot.on_hand else quantity, detail, source)


def _sheets(lot: Lot, stock: Stock, printer: Printer) -> BuyLine:
    item = f"{lot.title}{_measured(stock, printer)}"
    if stock.sheet_size and not lot.on_hand:
        item += f", {sold(printer.units, stock.sheet_size[1], stock.sheet_size[0])}"
    what = lot.tally
    quantity = counted(what.count, "sheet") + (", on hand" if lot.on_hand else "")
    detail = "; ".join(
        [
            ", ".join(lot.sizes),
            f"{what.net:.2f} m² in the finished parts, {percent(what.added_share)} over net",
            lot.assumed,
        ]
    )
    return BuyLine("sheets", item, quantity, detail, stock.source)


def _measured(stock: Stock, printer: Printer) -> str:
    return f" (measured {printer.text(stock.thickness)})" if stock.measured else ""


def _fasteners(piece: Piece) -> list[BuyLine]:
    kinds = ("screw", "pocket screw", "plug", "dowel", "biscuit", "loose tenon", "peg")
    count = Counter((kinds.index(f.kind), f.name) for f in piece.fasteners)
    lines = []
    for (_, name), used in sorted(count.items()):
        buy = ceil(round(used * (1 + SPARE), 6) / ROUND_TO) * ROUND_TO
        detail = f"{used} are used; {percent(SPARE)} spare, up to the next {ROUND_TO}"
        lines.append(BuyLine("fasteners", name, str(buy), detail, "common practice"))
    return lines


def _hardware(piece: Piece, tables: Tables) -> list[BuyLine]:
    count: dict[tuple[str, str], float] = {}
    for h in piece.hardware:
        count[h.name, h.table_key] = count.get((h.name, h.table_key), 0.0) + h.count_as
    lines = []
    for (name, key), n in sorted(count.items()):
        whole = ceil(n - 1e-6)
        if key in tables.slides:
            pairs = ceil(whole / 2)
            detail = "one at each side of a drawer; the sheet that comes with it holds its screw places"
            lines.append(BuyLine("hardware", name, counted(pairs, "pair"), detail, tables.slides[key].source))
        else:
            lines.append(BuyLine("hardware", name, str(whole)))
    return lines


def _glue(area: float, tables: Tables) -> list[BuyLine]:
    glue = tables.glues["pva_yellow"]
    if area <= 0 or glue.spread_min is None or glue.spread_max is None:
        return []
    least, most = glue_mass(area, glue.spread_min), glue_mass(area, glue.spread_max)
    step = 10 if least >= MUCH_GLUE else 1
    low, high = floor(least / step) * step, ceil(most / step) * step
    spread = f"one face spread at {glue.spread_min:g} to {glue.spread_max:g} g/m²"
    detail = f"{area / 1e6:.2f} m² of joints and glue-ups, {spread}"
    source = f"{glue.source} ({glue.provenance})"
    return [BuyLine("glue", glue.name, f"{low} to {high} g", detail, source)]


def glued_area(joints: Sequence[Joint], rough: Sequence[RoughPart]) -> float:
    """Faces that are glued, one side counted [mm2].

    Args:
        joints: of the piece; a contact with a planned gap is not glued.
        rough: rough sizes; edges between strips count at their rough thickness.
    """
    area = 0.0
    for contact in (c for j in joints if j.glued for c in j.contacts):
        if contact.glued and contact.gap <= 0:
            area += contact.area
    for part in rough:
        if part.rough is not None:
            lines = sum(len(own) - 1 for own in part.panels[: part.count])
            lines = lines if part.panels else part.count * (part.strips * part.leaves - 1)
            area += lines * part.strip[0] * part.rough[2]
    return area
