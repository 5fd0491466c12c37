"""A drawing of the plan as SVG text."""

from __future__ import annotations

from boardwright.drawings.record import from_record
from boardwright.drawings.svg import to_svg
from boardwright.plan.schema import DrawingRecord


def svg_text(drawing: DrawingRecord) -> str:
    """The drawing as SVG [mm]."""
    return to_svg(from_record(drawing.model_dump(mode="json")))
