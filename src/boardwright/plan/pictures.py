"""All drawings of a plan, in the order in which they are printed."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from boardwright.core.lengths import Printer
from boardwright.drawings.elevations import front_side_top
from boardwright.drawings.part_sheet import part_drawing
from boardwright.drawings.pictorial import assembled, exploded
from boardwright.drawings.record import to_record
from boardwright.drawings.records import Drawing
from boardwright.piece.records import Piece
from boardwright.plan.parts import kinds
from boardwright.plan.places import toward
from boardwright.plan.schema import DrawingRecord

PAGE = 170.0
"""Widest drawing that both Letter and A4 take without being made smaller [mm]."""
HALF = 100.0
"""Height of a part sheet of which two stand on a page [mm]."""


def pictures(
    piece: Piece,
    printer: Printer,
    letters: Mapping[str, str],
    layouts: list[Drawing],
    say: Callable[[str], None],
) -> list[DrawingRecord]:
    """Views of the piece, layouts, and a sheet for each letter."""
    say("drawing the piece")
    out = [assembled(piece.parts, piece.hardware, piece.name, PAGE)]
    if len(piece.parts) > 1:
        out.append(exploded(piece.parts, piece.motions, piece.joints, "Taken apart", PAGE, 200.0))
    out += front_side_top(piece, printer, PAGE)
    out += layouts
    for letter, same in kinds(piece).items():
        say(f"drawing part {letter}")
        out.append(part_drawing(same[0], printer, PAGE, HALF, letters, toward(same)))
    return [DrawingRecord.model_validate(to_record(d)) for d in out]
