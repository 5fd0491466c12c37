"""Keys for loose parts, their cuts and joints."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from boardwright.design.keys.base import Keys, LengthText, optional
from boardwright.design.keys.joints import JointKeys


class CutKeys(Keys):
    """A cut on a loose part, in the part's own frame (length from its end, width from its edge)."""

    kind: Literal["groove", "rabbet", "notch", "hole"] = Field(description="kind of cut")
    side: Literal["face", "back", "edge", "far_edge", "end", "far_end"] | None = optional(
        "side it is cut into", "none; a groove, a rabbet and a hole need it"
    )
    along: Literal["length", "width", "thickness"] | None = optional(
        "groove: which way it runs", "none; a groove needs it"
    )
    edge: Literal["face", "back", "edge", "far_edge", "end", "far_end"] | None = optional(
        "rabbet, notch: the edge it is measured from", "none; a rabbet and a notch need it"
    )
    end: Literal["end", "far_end"] | None = optional(
        "notch: the end it is measured from", "none; a notch needs it"
    )
    at: LengthText | None = optional(
        "groove: from the reference edge or end to its near wall", "none; a groove needs it"
    )
    length: LengthText | None = optional("notch: along the grain", "none; a notch needs it")
    width: LengthText | None = optional(
        "width of the groove, rabbet or notch", "none; a groove, a rabbet and a notch need it"
    )
    depth: LengthText | None = optional("depth", "a hole goes through; a groove and a rabbet need it")
    start: LengthText | None = optional("where it starts", "the near end")
    stop: LengthText | None = optional("where it stops", "the far end")
    from_end: LengthText | None = optional("hole: centre from the reference end", "none; a hole needs it")
    from_edge: LengthText | None = optional("hole: centre from the reference edge", "none; a hole needs it")
    diameter: LengthText | None = optional("hole: diameter", "none; a hole needs it")
    countersink: LengthText | None = optional("hole: diameter of the countersink", "no countersink")


class LoosePart(Keys):
    """A part that no form covers."""

    stock: str = Field(description="stock")
    length: LengthText = Field(description="with the grain")
    width: LengthText = Field(description="across the grain")
    along: Literal["x", "y", "z"] = Field(description="piece axis of its length: x right, y back, z up")
    across: Literal["x", "y", "z"] = Field(description="piece axis of its width")
    at: list[LengthText] = Field(min_length=3, max_length=3, description="its lowest corner: x, y, z")
    name: str | None = optional("what the plan calls it", "its key, with spaces for `_`")
    cuts: list[CutKeys] | None = optional("its own cuts", "no cuts of its own; joints add theirs")


class LooseJoint(JointKeys):
    """A joint of two named parts."""

    first: str = Field(
        description="part that receives: gets the dado or rabbet, or lies under the screw head"
    )
    second: str = Field(description="part that goes in")
