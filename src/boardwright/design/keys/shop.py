"""Keys for how exactly the shop works."""

from __future__ import annotations

from boardwright.design.keys.base import Keys, LengthText, optional


class Precision(Keys):
    """How far sizes come out from what is set, plus or minus, nearly always (three standard deviations)."""

    thickness: LengthText | None = optional("planed thickness, within a batch", "{precision_thickness}")
    rip: LengthText | None = optional("width ripped to the fence", "{precision_rip}")
    crosscut: LengthText | None = optional("length cut against a stop", "{precision_crosscut}")
    groove_width: LengthText | None = optional(
        "width of a dado, groove or tongue", "{precision_groove_width}"
    )
    groove_depth: LengthText | None = optional(
        "depth of a dado, groove or rabbet", "{precision_groove_depth}"
    )
    groove_place: LengthText | None = optional(
        "place of a dado, groove or shoulder", "{precision_groove_place}"
    )
    square: LengthText | None = optional(
        "out of square of a crosscut, in each 12 in, or in each 300 mm in a plan in mm", "{precision_square}"
    )
