"""Keys for frames with panels: of doors, lids, and whatever else is framed."""

from __future__ import annotations

from typing import Literal

from boardwright.design.keys.base import Keys, LengthText, optional
from boardwright.design.keys.joints import JointSpec


class FramePanel(Keys):
    """What stands in the openings of a frame."""

    kind: Literal["flat", "raised", "glass"] | None = optional(
        "a flat panel, one with a raised field, or glass held by wooden beads", "`flat` (common practice)"
    )
    stock: str | None = optional(
        "stock",
        "flat: the stock nearest to {panel_groove_width}, sheets first, from 0.6 to 1.5 times that; raised: the "
        "stock of the frame; glass: the first sheet of glass of the file",
    )
    groove: LengthText | None = optional(
        "depth of the grooves for it",
        "{panel_groove_depth}; {panel_groove_depth.high} for solid panels from {panel_deep_groove_width} wide",
    )
    field_width: LengthText | None = optional(
        "raised: from the edge of the panel to the field", "{raised_field_width}, less in a small panel"
    )
    field_angle: float | None = optional(
        "raised: slope in degrees, instead of `field_width`",
        "as `field_width` and `field_step` give it",
        gt=0,
        le=45,
    )
    field_step: LengthText | None = optional("raised: height of the step at the field", "{raised_field_step}")
    bead: LengthText | None = optional("glass: height of its beads", "{glass_bead}")


class Frame(Keys):
    """A frame: two stiles that run through, rails between them, and panels."""

    stock: str | None = optional("stock", "the stock of the door or lid")
    stile_width: LengthText | None = optional("width of the stiles", "{door_stile_width}")
    rail_width: LengthText | None = optional("width of the rails", "as the stiles")
    bottom_rail_width: LengthText | None = optional(
        "width of the bottom rail of a door",
        "`rail_width` and {door_bottom_rail_extra} more; lids and mitred frames: `rail_width`",
    )
    middle_width: LengthText | None = optional(
        "width of the rails and mullions between openings", "as the stiles"
    )
    across: int | None = optional("openings side by side, parted by mullions", "1", ge=1, le=12)
    up: int | None = optional("openings one over the other, parted by middle rails", "1", ge=1, le=12)
    joint: JointSpec | None = optional(
        "how the rails meet the stiles: `tongue` (a stub in the groove of the panel), `mortise_tenon`, `mitre`, "
        "`bridle` or `half_lap`",
        "`tongue` round a flat sheet, else `mortise_tenon` (common practice)",
    )
    panel: FramePanel | None = optional("the panels", "as each of its keys says")
