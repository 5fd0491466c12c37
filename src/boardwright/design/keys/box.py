"""Keys for a box: square, many-sided, or with sides that slope."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from boardwright.design.keys.base import Keys, LengthText, optional
from boardwright.design.keys.doors import HingeSpec
from boardwright.design.keys.drawers import TrayStack
from boardwright.design.keys.joints import JointSpec


class BoxBottom(Keys):
    """The bottom of a box."""

    set: Literal["groove", "planted", "inside", "none"] | None = optional(
        "in a groove, under the sides, between them, or no bottom",
        "`groove`; where the sides slope `inside`, its edges bevelled to them (common practice)",
    )
    stock: str | None = optional(
        "stock",
        "the stock nearest to {drawer_bottom_thickness}, sheets first, from 0.6 to 1.5 times that; else `box.stock`",
    )
    up: LengthText | None = optional(
        "height of its underside over the lower edge of the sides",
        "groove: {drawer_bottom_groove_up}; inside: 0",
    )
    depth: LengthText | None = optional(
        "depth of the groove", "{drawer_bottom_groove_depth}, at most half of the sides; settled down"
    )


class BoxDividers(Keys):
    """Thin walls inside a box with four plumb sides."""

    across: int | None = optional("how many run from front to back", "0", ge=0, le=20)
    along: int | None = optional("how many run from left to right", "0", ge=0, le=20)
    stock: str | None = optional("stock", "the stock of the bottom")
    height: LengthText | None = optional(
        "height",
        "three quarters of the room over the bottom, at most up to trays or the stay of a lid; settled down",
    )
    joint: JointSpec | None = optional("how they meet the sides", "`dado` (common practice)")


class BoxLid(Keys):
    """A lid."""

    made: Literal["sawn"] = Field(
        description="`sawn`: the box is glued up whole with its top, then sawn apart all round"
    )
    at: LengthText = Field(description="height of the lower part: the kerf lies above it")
    stock: str | None = optional("stock of the top", "the stock of the bottom")
    hinges: HingeSpec | None = optional(
        "hinges at the back: `butt` or `continuous`", "none: the lid is lifted off"
    )
    opens: float | None = optional("with hinges: how far it opens, in degrees", "{lid_turn}", ge=30, le=180)
    stay: bool | None = optional("with hinges: a stay that holds it open", "`false`")


class BoxKeys(Keys):
    """A box, open at the top: four sides or more, plumb or sloping, and a bottom."""

    width: LengthText = Field(
        description="outside width, at the mouth where the sides slope; of many sides from flat to flat"
    )
    depth: LengthText | None = optional("outside depth, likewise", "as `width`")
    height: LengthText = Field(description="outside height")
    stock: str | None = optional("stock of the sides", "the first stock of the file")
    sides: int | None = optional("how many sides", "4", ge=3, le=16)
    slope: float | None = optional(
        "degrees out of plumb, wider at the top; of four sides front and back", "0: plumb", ge=0, le=60
    )
    slope_ends: float | None = optional(
        "of four sides left and right, when it differs", "as `slope`", ge=0, le=60
    )
    corner: JointSpec | None = optional(
        "how two sides meet; sloping or many sides are mitred, and four sloping ones may be butted",
        "`rabbet`; sloping or many sides: mitred (common practice)",
    )
    edges: Literal["level", "square"] | None = optional(
        "sloping sides: upper and lower edges bevelled level, or left square to the faces",
        "`level` (common practice)",
    )
    bottom: BoxBottom | None = optional("the bottom", "as each of its keys says")
    dividers: BoxDividers | None = optional("thin walls inside", "none")
    trays: TrayStack | None = optional(
        "of four plumb sides: trays on ledgers, with rooms of given `heights` from the rim down", "no trays"
    )
    lid: BoxLid | None = optional("a lid", "no lid: it is open at the top")
