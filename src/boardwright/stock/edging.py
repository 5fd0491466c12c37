"""Edging for the edges of sheets that are seen: lengths from sold ones, as bars are cut."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from boardwright.core.lengths import INCH, Printer, settle
from boardwright.piece.records import Part, Piece, Stock
from boardwright.stock.lengths import Bar, lay_out_lengths, length_instance
from boardwright.stock.records import BarCuts, BarLot, BuyLine
from boardwright.stock.verify import verify
from boardwright.stock.wording import counted, plain_name
from boardwright.tables.bundle import Tables

SOLD = {"in": 96 * INCH, "mm": 2400.0}
"""Length that edging and mouldings are sold in [mm] (common practice)."""
FAMILIES = ("plywood", "particleboard", "mdf")
EFFORT = 0.05
_ALONG = {"edge": 0, "far_edge": 0, "end": 1, "far_end": 1}


def edged(part: Part) -> list[float]:
    """Lengths of the edges of a sheet part that are seen [mm]."""
    if part.stock.kind != "sheet" or not any(f in part.stock.table_key for f in FAMILIES):
        return []
    return [part.size[_ALONG[str(side)]] for side in part.show if str(side) in _ALONG]


def edging(piece: Piece, tables: Tables, kerf: float, printer: Printer) -> list[tuple[BuyLine, BarLot]]:
    """Edging to buy and to cut, by the sheet it goes on.

    Args:
        piece: its parts.
        tables: what edging is longer than its edge.
        kerf: of the saw [mm].
        printer: prints sizes of the plan.

    Returns:
        Lines of the buying list, each with its cuts.
    """
    over = settle(tables.figure("edging_over").value, printer.step, "up")
    wanted: dict[str, list[tuple[str, float]]] = {}
    stocks: dict[str, Stock] = {}
    for part in piece.parts:
        for length in edged(part):
            wanted.setdefault(part.stock.id, []).append((part.letter, length + over))
            stocks[part.stock.id] = part.stock
    found = []
    for id, pieces in wanted.items():
        stock, sold = stocks[id], SOLD[printer.units]
        width = f"over {printer.size(stock.thickness)} {printer.units} wide"
        lot = _cut(f"edging for {plain_name(stock.name)}, {width}", pieces, sold, kerf)
        total = sum(length for _, length in pieces)
        shown = f"{total / INCH / 12:.0f} ft" if printer.units == "in" else f"{total / 1000:.1f} m"
        long = sum(length > sold for _, length in pieces)
        more = f", {counted(long, 'piece')} longer than that" if long else ""
        line = BuyLine(
            "lengths", lot.title, f"{lot.count} of {printer.text(sold)}",
            f"{counted(len(pieces), 'edge')} seen, {shown} in all{more}",
            f"{printer.text(over)} over each edge ({tables.figure('edging_over').reason})",
        )  # fmt: skip
        found.append((line, lot))
    return found


def _cut(title: str, pieces: Sequence[tuple[str, float]], sold: float, kerf: float) -> BarLot:
    """Pieces (letter, length) cut from lengths as sold; those that are longer are left out."""
    letters = {f"e{n}": letter for n, (letter, _) in enumerate(pieces)}
    wanted = [(f"e{n}", length, 1) for n, (_, length) in enumerate(pieces) if length <= sold]
    instance = length_instance(wanted, [Bar("bar", sold)], kerf)
    answer = lay_out_lengths(instance, effort=EFFORT)
    alike = Counter(
        tuple(
            sorted(((letters[p.item_id], round(p.length, 6)) for p in b.placed), key=lambda p: (-p[1], p[0]))
        )
        for b in answer.bins
    )
    bars = [
        BarCuts(count, cuts, max(0.0, sold - sum(length + kerf for _, length in cuts)))
        for cuts, count in alike.items()
    ]
    bars.sort(key=lambda b: (b.left, b.pieces))
    return BarLot(title, sold, tuple(bars), answer.bins_bound, not verify(instance, answer))
