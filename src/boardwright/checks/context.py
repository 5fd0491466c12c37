"""What every check reads."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.lengths import Printer
from boardwright.piece.records import Part, Piece
from boardwright.solids.dry_fit import DryFit
from boardwright.tables.bundle import Tables


@dataclass(frozen=True, slots=True)
class Context:
    """A piece, its dry fit and the tables."""

    piece: Piece
    fit: DryFit
    tables: Tables
    printer: Printer
    parts: dict[str, Part]

    def label(self, id: str) -> str:
        """A part or bought thing in words: `side A`."""
        part = self.parts.get(id)
        if part is None:
            return id.replace(".", " ")
        return f"{part.name} {part.letter}"

    def text(self, mm: float) -> str:
        """A size found by computing, to the step [with unit]."""
        step = self.piece.step / 4
        return self.printer.text(round(mm / step) * step) if abs(mm) >= step else f"{mm / 25.4:.3f} in" if self.piece.units == "in" else f"{mm:.2f} mm"


def context(piece: Piece, fit: DryFit, tables: Tables) -> Context:
    """Gather what the checks read."""
    printer = Printer("mm" if piece.units == "mm" else "in", piece.step)
    return Context(piece, fit, tables, printer, {p.id: p for p in piece.parts})
