"""Edging for the edges of sheets that are seen: lengths from sold ones, as bars are cut."""

from __future__ import annotations

from boardwright.core.lengths import INCH, Printer, settle
from boardwright.piece.records import Part, Piece
from boardwright.stock.lengths import Bar, lay_out_lengths, length_instance
from boardwright.stock.records import BuyLine
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


def edging_lines(piece: Piece, tables: Tables, kerf: float, printer: Printer) -> list[BuyLine]:
    """Edging to buy, by the sheet it goes on.

    Args:
        piece: its parts.
        tables: what edging is longer than its edge.
        kerf: of the saw [mm].
        printer: prints sizes of the plan.
    """
    over = settle(tables.figure("edging_over").value, printer.step, "up")
    wanted: dict[str, list[float]] = {}
    names: dict[str, tuple[str, float]] = {}
    for part in piece.parts:
        for length in edged(part):
            wanted.setdefault(part.stock.id, []).append(length + over)
            names[part.stock.id] = (plain_name(part.stock.name), part.stock.thickness)
    lines = []
    for id, lengths in wanted.items():
        bar = Bar("edging", SOLD[printer.units])
        short = [x for x in lengths if x <= bar.length]
        pieces = [(f"e{n}", x, 1) for n, x in enumerate(short)]
        answer = lay_out_lengths(length_instance(pieces, [bar], kerf), effort=EFFORT)
        name, thickness = names[id]
        total = sum(lengths)
        shown = f"{total / INCH / 12:.0f} ft" if printer.units == "in" else f"{total / 1000:.1f} m"
        more = (
            f", {counted(len(lengths) - len(short), 'piece')} longer than that"
            if len(short) < len(lengths)
            else ""
        )
        lines.append(
            BuyLine(
                "lengths", f"edging for {name}, over {printer.size(thickness)} {printer.units} wide",
                f"{len(answer.bins)} of {printer.text(bar.length)}",
                f"{counted(len(lengths), 'edge')} seen, {shown} in all{more}",
                f"{printer.text(over)} over each edge ({tables.figure('edging_over').reason})",
            )
        )  # fmt: skip
    return lines
