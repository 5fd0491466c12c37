"""Keys for what a case stands on."""

from __future__ import annotations

from typing import Literal

from boardwright.design.keys.base import Keys, LengthText, optional
from boardwright.design.keys.joints import JointSpec


class CaseBase(Keys):
    """What stands under a case. `case.height` includes it."""

    kind: Literal["plinth", "bracket_feet", "legs"] | None = optional(
        "a frame set back under the case, four bracket feet, or four square legs",
        "`plinth` (common practice)",
    )
    stock: str | None = optional(
        "stock", "`case.stock`; of legs the thickest wood of the file (common practice)"
    )
    height: LengthText | None = optional(
        "its height", "plinth: {plinth_height}; bracket feet: {bracket_foot_height}; legs: {base_leg_height}"
    )
    setback: LengthText | None = optional(
        "how far its front stands behind the front of the case; a plinth only at the front",
        "plinth: {plinth_setback}; others: 0",
    )
    width: LengthText | None = optional("bracket feet: length of each bracket", "{bracket_foot_width}")
    corner: JointSpec | None = optional(
        "how two members meet at a front corner: plinth `butt` or `mitre`; bracket feet are mitred",
        "plinth: `butt` (common practice)",
    )
