"""Keys for a lid that turns on hinges."""

from __future__ import annotations

from typing import Literal

from boardwright.design.keys.base import Keys, LengthText, optional
from boardwright.design.keys.doors import HingeSpec
from boardwright.design.keys.frames import Frame


class Lid(Keys):
    """A lid over a case, hinged at the back."""

    made: Literal["slab", "frame"] | None = optional(
        "boards glued up, or a frame with panels",
        "`frame` when `frame` is given, else `slab` (common practice)",
    )
    ends: Literal["cleats", "breadboard", "none"] | None = optional(
        "slab: what keeps it flat: cleats screwed under it in slots, or a board across each end",
        "`cleats` under solid wood, `none` for a sheet (common practice)",
    )
    end_width: LengthText | None = optional("width of the cleats or end boards", "{door_batten_width}")
    overhang: LengthText | None = optional("how far it stands over at front and sides", "{lid_overhang}")
    frame: Frame | None = optional("the frame", "as each of its keys says")
    glued_edge: Literal["front", "none"] | None = optional(
        "frame: the panel is glued to the front, and moves towards the rear; `none`: it floats all round",
        "`none` (common practice)",
    )
    hinges: HingeSpec | None = optional("the hinges: `butt` or `continuous`", "as each of its keys says")
    opens: float | None = optional("how far it opens, in degrees", "{lid_turn}", ge=30, le=180)
    stay: bool | None = optional("a stay that holds it open", "`true`")
    rail_width: LengthText | None = optional(
        "height of the rail under its rear, which takes the hinges", "{lid_rail}"
    )
