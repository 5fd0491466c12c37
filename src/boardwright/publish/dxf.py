"""A drawing of the plan as DXF text."""

from __future__ import annotations

from boardwright.drawings.dxf import to_dxf
from boardwright.drawings.record import from_record
from boardwright.plan.schema import DrawingRecord


def dxf_text(drawing: DrawingRecord) -> str:
    """The drawing as DXF [mm]."""
    return to_dxf(from_record(drawing.model_dump(mode="json")))
