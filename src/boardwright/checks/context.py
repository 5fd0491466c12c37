"""What every check reads."""

from __future__ import annotations

from dataclasses import dataclass, field

from boardwright.checks.loads import Loads
from boardwright.checks.shop import Shop, usual_shop
from boardwright.checks.way import Way
from boardwright.core.lengths import Printer, settle
from boardwright.piece.records import Part, Piece
from boardwright.piece.sizing import about
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
    loads: Loads = field(default_factory=Loads)
    shop: Shop = field(default_factory=Shop)
    way: Way = field(default_factory=Way)

    def label(self, id: str) -> str:
        """A part or bought thing in words: `side A`."""
        part = self.parts.get(id)
        if part is None:
            return id.replace(".", " ")
        return f"{part.name} {part.letter}"

    def text(self, mm: float) -> str:
        """A size found by computing, with its unit: on the step, else to the nearest caliper reading."""
        return about(self.printer, mm)

    def up(self, mm: float) -> str:
        """A least size, with its unit, on the step above it."""
        return self.printer.text(settle(mm, self.piece.step, "up"))

    def down(self, mm: float) -> str:
        """A greatest size, with its unit, on the step below it."""
        return self.printer.text(settle(mm, self.piece.step, "down"))


def context(
    piece: Piece,
    fit: DryFit,
    tables: Tables,
    loads: Loads | None = None,
    shop: Shop | None = None,
    way: Way | None = None,
) -> Context:
    """Gather what the checks read."""
    printer = Printer("mm" if piece.units == "mm" else "in", piece.step)
    parts = {p.id: p for p in piece.parts}
    return Context(
        piece,
        fit,
        tables,
        printer,
        parts,
        loads or Loads(),
        shop or usual_shop(tables, piece.units),
        way or Way(),
    )
