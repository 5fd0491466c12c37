"""All drawings of a plan, in the order in which they are printed."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from boardwright.core.lengths import Printer
from boardwright.drawings.elevations import front_side_top
from boardwright.drawings.part_sheet import part_drawing
from boardwright.drawings.pictorial import assembled, exploded
from boardwright.drawings.record import to_record
from boardwright.drawings.records import Drawing
from boardwright.drawings.step_picture import step_picture
from boardwright.piece.records import Piece
from boardwright.plan.parts import kinds
from boardwright.plan.places import toward
from boardwright.plan.schema import BuildStep, DrawingRecord

PAGE = 170.0
"""Widest drawing that both Letter and A4 take without being made smaller [mm]."""
STEP_WIDE, STEP_HIGH = 76.0, 58.0
"""Room for the picture of a step, of which two stand side by side [mm]."""
HALF = 100.0
"""Height of a part sheet of which two stand on a page [mm]."""


def pictures(
    piece: Piece,
    printer: Printer,
    letters: Mapping[str, str],
    layouts: list[Drawing],
    steps: list[BuildStep],
    charts: list[Drawing],
    say: Callable[[str], None],
) -> list[DrawingRecord]:
    """Views of the piece, layouts, a sheet for each letter, steps, and charts of the year."""
    say("drawing the piece")
    out = [assembled(piece.parts, piece.hardware, piece.name, PAGE)]
    if len(piece.parts) > 1:
        out.append(exploded(piece.parts, piece.motions, piece.joints, "Taken apart", PAGE, 200.0))
    out += front_side_top(piece, printer, PAGE)
    out += layouts
    for letter, same in kinds(piece).items():
        say(f"drawing part {letter}")
        out.append(part_drawing(same[0], printer, PAGE, HALF, letters, toward(same)))
    for step in steps:
        say(f"drawing step {step.number}")
        out.append(step_drawing(piece, step))
    out += charts
    return [DrawingRecord.model_validate(to_record(d)) for d in out]


def step_drawing(piece: Piece, step: BuildStep) -> Drawing:
    """The picture of a step."""
    by_id = {p.id: p for p in piece.parts}
    standing = [by_id[i] for i in step.onto]
    units = [[by_id[i] for i in unit] for unit in step.units]
    way = (step.direction[0], step.direction[1], step.direction[2])
    return step_picture(step.drawing, standing, units, way, step.travel.mm, STEP_WIDE, STEP_HIGH)
