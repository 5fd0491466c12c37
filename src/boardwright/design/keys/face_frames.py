"""Keys for a face frame before a case."""

from __future__ import annotations

from boardwright.design.keys.base import Keys, LengthText, optional
from boardwright.design.keys.joints import JointSpec


class FaceFrame(Keys):
    """A frame on the front edges of the case. Doors and drawers inside it fit its openings."""

    stock: str | None = optional(
        "stock", "the wood nearest to {face_frame_thickness}, from 0.6 to 1.5 times that; else `case.stock`"
    )
    stile_width: LengthText | None = optional("width of the two stiles", "{face_frame_width}")
    rail_width: LengthText | None = optional("width of the top rail", "as the stiles")
    bottom_rail_width: LengthText | None = optional(
        "width of the bottom rail",
        "up to the floor of the inside where that is {face_frame_least} or more; else as the stiles",
    )
    middle_width: LengthText | None = optional("width of what parts two openings", "as the stiles")
    overhang: LengthText | None = optional("how far it stands over the sides", "0: flush with them")
    joint: JointSpec | None = optional(
        "how its parts meet, e.g. `{kind: butt, fasten: pocket_screws}`", "`mortise_tenon` (common practice)"
    )
