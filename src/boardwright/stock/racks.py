"""Boards and sheets that can be had: what the shop has on hand, else the usual sizes."""

from __future__ import annotations

from dataclasses import replace

from boardwright.core.findings import Finding, Severity
from boardwright.core.lengths import Printer
from boardwright.core.rack import Defect, Rack, RackPiece
from boardwright.piece.records import Part, Piece, Stock
from boardwright.stock.choices import Allowances
from boardwright.stock.instance import Rectangle, StockSize
from boardwright.stock.lots import LotRequest
from boardwright.stock.on_rack import MOST, serves, usable
from boardwright.stock.records import RoughPart, ShopChoices
from boardwright.stock.rough import board_thickness
from boardwright.stock.sheet_sizes import sheet_sizes, unused_sizes
from boardwright.tables.bundle import Tables
from boardwright.tables.records import LumberClass


def sizes_for(
    part: Part,
    tables: Tables,
    allow: Allowances,
    racks: dict[str, tuple[StockSize, ...]],
    choices: ShopChoices,
    printer: Printer,
) -> tuple[tuple[StockSize, ...], bool, str]:
    """Boards or sheets that a part can be cut from; whether they are on hand; what is assumed about them."""
    stock = part.stock
    needed, usual = (tables.class_for(t, printer.units) for t in (board_thickness(part), stock.thickness))
    if stock.id in racks and (stock.kind == "sheet" or needed == usual):
        return racks[stock.id], True, "on hand as the file says, thick enough for the parts"
    if stock.kind == "wood":
        rows = tables.standard_boards(printer.units)
        trims = (allow.end_trim, allow.edge_trim)
        sizes = [StockSize(b.key, b.length, b.width, None, 1.0, *trims) for b in rows]
        wide = ", ".join(dict.fromkeys(printer.size(b.width) for b in rows))
        long = ", ".join(dict.fromkeys(printer.size(b.length) for b in rows))
        assumed = f"boards assumed {wide} {printer.units} wide, {long} {printer.units} long (common practice)"
        return tuple(sizes), False, assumed
    if stock.sheet_size is None:
        return (), False, "no size of sheet is known"
    sold = sheet_sizes(stock, choices, allow.sheet_trim, printer.units)
    return sold, False, f"sheets trimmed {printer.text(allow.sheet_trim)} at each edge"


def racks_of(
    piece: Piece, choices: ShopChoices, allow: Allowances, printer: Printer
) -> tuple[dict[str, tuple[StockSize, ...]], list[Finding]]:
    """Boards on hand of each stock, trimmed as they will be; findings for those that are of no use."""
    stocks = {p.stock.id: p.stock for p in piece.parts}
    racks: dict[str, list[StockSize]] = {}
    findings = unused_sizes(stocks, choices, allow.sheet_trim)
    for n, (id, length, width, count) in enumerate(choices.boards):
        place = choices.place(f"shop.boards[{n}]")
        if id not in stocks:
            findings.append(
                Finding(
                    "stock.board-unused", Severity.WARNING,
                    f"no part is made of `{id}`, so its board is not used", place, id,
                    "one of " + ", ".join(stocks), remedy="correct the name, or take the board out",
                )
            )  # fmt: skip
            continue
        wood = stocks[id].kind == "wood"
        trims = (allow.end_trim, allow.edge_trim) if wood else (allow.sheet_trim, allow.sheet_trim)
        rack = racks.setdefault(id, [])
        if length <= 2 * trims[0] or width <= 2 * trims[1]:
            s = printer.text
            findings.append(
                Finding(
                    "stock.board-too-small", Severity.WARNING,
                    f"a board of `{id}` has nothing left after trimming", place,
                    f"{s(length)} long, {s(width)} wide",
                    f"more than {s(2 * trims[0])} long and {s(2 * trims[1])} wide", "common practice",
                    "take it out of the list, or correct its size",
                )
            )  # fmt: skip
            continue
        marks, more = _on_the_face(n, choices, length, width, printer)
        findings += more
        id = f"on hand {n + 1}"
        rack.append(StockSize(id, length, width, count, length * width / 1e6, *trims, marks))
    return {id: tuple(rack) for id, rack in racks.items()}, findings


def _on_the_face(
    n: int, choices: ShopChoices, length: float, width: float, printer: Printer
) -> tuple[tuple[Rectangle, ...], list[Finding]]:
    """Defects of a board on hand as far as they lie on it; warnings on those that do not wholly."""
    marks: list[Rectangle] = []
    findings: list[Finding] = []
    s = printer.text
    for k, d in enumerate(choices.defects[n] if choices.defects else ()):
        x1, y1 = d.x + d.length, d.y + d.width
        mark = Rectangle(max(d.x, 0.0), max(d.y, 0.0), min(x1, length), min(y1, width))
        if mark.x0 < mark.x1 and mark.y0 < mark.y1:
            marks.append(mark)
            if d.x >= 0 and d.y >= 0 and x1 <= length + 1e-6 and y1 <= width + 1e-6:
                continue
        findings.append(
            Finding(
                "stock.defect-outside", Severity.WARNING,
                f"a defect{f' ({d.what})' if d.what else ''} of a board on hand does not lie wholly on its face",
                choices.place(f"shop.boards[{n}].defects[{k}]"),
                f"{s(d.length)} long, {s(d.width)} wide, at {s(d.x)}, {s(d.y)}",
                f"a rectangle within {s(length)} × {s(width)}", "",
                "correct where it lies, or its size: no part lies on what of it is on the board",
            )
        )  # fmt: skip
    return tuple(marks), findings


def defects_on_hand(choices: ShopChoices) -> dict[str, tuple[Defect, ...]]:
    """Defects of the boards on hand, by the id of their size of stock."""
    return {f"on hand {n + 1}": marks for n, marks in enumerate(choices.defects) if marks}


def from_rack(
    request: LotRequest, rack: Rack | None, tables: Tables, printer: Printer, least_strip: float
) -> LotRequest:
    """A lot with the pieces of the shop's rack that its parts can be cut from.

    Args:
        request: what is to be laid out; boards that the file itself names go before the rack.
        rack: of the shop; None when none was named.
        tables: thickness classes, families of sheets.
        printer: of the plan.
        least_strip: narrowest strip of a glue-up [mm]: a board that gives one serves.
    """
    stock = request.stock
    named = request.parts[0].lumber
    lumber = next((c for c in tables.lumber.values() if c.name == named and c.system == printer.units), None)
    kind = _kind(request, lumber, tables)
    if rack is None or request.on_hand:
        return replace(request, kind=kind)
    trims = next(((s.trim_length, s.trim_width) for s in request.sizes), (0.0, 0.0))
    cut = [(r.strip[0], min(r.strip[1], least_strip) if r.strips > 1 else r.strip[1]) for r in request.parts]
    turnable = stock.kind == "sheet" and not stock.grain
    short, narrow = min(s[0] for s in cut), min(s[1] for s in cut)
    least = (min(short, narrow), min(short, narrow)) if turnable else (short, narrow)
    planed = max(_planed(r, stock) for r in request.parts)
    pieces = [p for p in rack.pieces if serves(p, stock, lumber, planed, tables)]
    found = usable(pieces, trims, least, request.kerf)
    there = "none on the rack that serves; "
    if found:
        of = f" of {len(pieces)}" if len(pieces) > MOST else ""
        there = f"{len(found)}{of} on the rack that serve; "
    return replace(request, rack=found, kind=kind, assumed=there + request.assumed)


def _planed(part: RoughPart, stock: Stock) -> float:
    """Thickness that the boards of a part are planed to [mm]: its stock's, or the part's own where that is more."""
    _, width, thickness = part.finished
    usual = abs(thickness - stock.thickness) <= 1e-6
    return max(stock.thickness, thickness if usual else min(width, thickness))


def _kind(request: LotRequest, lumber: LumberClass | None, tables: Tables) -> RackPiece:
    """What a board or sheet of the lot is on the rack, before it has a name and a size."""
    stock = request.stock
    if stock.kind == "wood":
        rough = request.parts[0].rough
        thickness = lumber.rough if lumber else (rough[2] if rough else stock.nominal)
        return RackPiece("", "board", stock.table_key, thickness, 0, 0, lumber.key if lumber else "")
    row = tables.sheets.get(stock.table_key)
    return RackPiece("", "sheet", row.family if row else stock.table_key, stock.nominal, 0, 0)
