"""Keys for drawers and what they run on."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from boardwright.design.keys.base import Keys, LengthText, optional
from boardwright.design.keys.joints import JointSpec


class Bars(Keys):
    """Side-hung wooden bars that run in grooves of the drawer sides."""

    stock: str | None = optional(
        "stock",
        "the wood of the file with the highest specific gravity; the thicker of two alike (common practice)",
    )
    height: LengthText | None = optional(
        "height of the bar's section", "{bar_groove_height.high} less {bar_height_clearance} of play"
    )
    groove: LengthText | None = optional(
        "depth of the groove in the drawer side",
        "{bar_groove_depth}, at most half of the side, and 1/8 in (3 mm) short of the joint of "
        "the drawer back; settled down",
    )


class Runners(Keys):
    """Runners under the drawer sides, with kickers over them and, where wanted, guides beside them."""

    stock: str | None = optional(
        "stock",
        "the wood of the file with the highest specific gravity; the thicker of two alike (common practice)",
    )
    width: LengthText | None = optional("width of the runner", "{runner_width}")
    thickness: LengthText | None = optional(
        "height of the runner", "{runner_thickness}, at most the thickness of its stock"
    )
    guide: LengthText | None = optional(
        "thickness of guide strips; 0 when the case sides guide",
        "0: the walls of the opening guide the drawer",
    )


class Slides(Keys):
    """Bought ball-bearing slides."""

    kind: str | None = optional(
        "key of a row of the slide table", "the longest of the plan's unit system that the depth takes"
    )
    length: LengthText | None = optional(
        "length of the slide", "the longest of the plan's unit system that the depth takes"
    )
    side: LengthText | None = optional(
        "room it takes on each side",
        "the least side space in the slide's row, at least the reveal of a one-piece inset front; settled up",
    )


class DrawerFront(Keys):
    """The front of a drawer."""

    set: Literal["inset", "overlay"] | None = optional(
        "inside the opening, or over the case", "`inset` (common practice)"
    )
    made: Literal["one_piece", "applied"] | None = optional(
        "the box's own front, or a front screwed on the box",
        "`applied` on slides and where it overlays, else `one_piece` (common practice)",
    )
    stock: str | None = optional("stock", "`case.stock`")
    reveal: LengthText | None = optional(
        "inset: gap to the opening on each side",
        "solid wood: {drawer_front_gap_inset}; a sheet: {drawer_front_gap_sheet}; settled up",
    )
    gap: LengthText | None = optional("overlay: gap between two fronts", "{overlay_front_gap}")
    joint: JointSpec | None = optional(
        "how the sides meet it",
        "`rabbet`, or `dado` where the front reaches beyond the side by more than its thickness; "
        "on an applied front this is the joint of the box's own front (common practice)",
    )


class DrawerSides(Keys):
    """The sides of a drawer."""

    stock: str | None = optional(
        "stock",
        "the stock nearest to {drawer_side_thickness}, from 0.6 to 1.5 times that; else the stock of "
        "the front",
    )


class DrawerBack(Keys):
    """The back of a drawer."""

    stock: str | None = optional("stock", "the stock of the sides")
    joint: JointSpec | None = optional("how it meets the sides", "`dado` (common practice)")


class DrawerBottom(Keys):
    """The bottom of a drawer."""

    set: Literal["groove", "rabbet", "planted"] | None = optional(
        "how it is held", "`groove` (common practice)"
    )
    stock: str | None = optional(
        "stock",
        "the stock nearest to {drawer_bottom_thickness}, sheets first, from 0.6 to 1.5 times that; "
        "else the stock of the sides",
    )
    up: LengthText | None = optional(
        "groove: height over the lower edge of the sides", "{drawer_bottom_groove_up}"
    )
    depth: LengthText | None = optional(
        "depth of the groove or rabbet",
        "{drawer_bottom_groove_depth}, at most half of the thinnest wall; settled down",
    )
    back: Literal["captured", "under"] | None = optional(
        "groove: held in the back too, or passing under it",
        "solid wood: `under`; a sheet: `captured` (common practice)",
    )


class Drawer(Keys):
    """A drawer. Every key may also stand under the top key `drawers` for all drawers at once."""

    front: DrawerFront | None = optional("its front", "as each of its keys says")
    sides: DrawerSides | None = optional("its sides", "as each of its keys says")
    back: DrawerBack | None = optional("its back", "as each of its keys says")
    bottom: DrawerBottom | None = optional("its bottom", "as each of its keys says")
    runs_on: Literal["bars", "runners", "slides"] | None = optional(
        "what carries it", "`bars` (common practice)"
    )
    bars: Bars | None = optional("the bars", "as each of its keys says")
    runners: Runners | None = optional("the runners", "as each of its keys says")
    slides: Slides | None = optional("the slides", "as each of its keys says")
    side_clearance: LengthText | None = optional(
        "from the box to the case, each side",
        "bars: half of {bar_width_total}; runners: half of {drawer_side_total}; slides: "
        "`slides.side`; at least the reveal of a one-piece inset front; settled up",
    )
    height_clearance: LengthText | None = optional(
        "running room over the box at the wettest time of the year",
        "solid sides: {drawer_height_base}; sheet sides: {drawer_height_plywood}",
    )
    rear_clearance: LengthText | None = optional(
        "from the box to the back of the case", "{drawer_depth_behind}, settled up; slides set their own"
    )
    box_height: LengthText | None = optional(
        "height of the sides",
        "the opening less what the drawer runs on and `height_clearance`, and less the swelling of "
        "solid sides or a solid back to the wettest time (Wood Handbook FPL-GTR-190 eq. 13-2); settled down",
    )


class DrawerStack(Keys):
    """A stack of drawers in one space, top to bottom."""

    count: int = Field(ge=1, le=40, description="how many")
    grow: LengthText | None = optional(
        "how much higher each opening is than the one over it", "0: openings of one height"
    )
    heights: list[LengthText] | None = optional(
        "height of each opening instead of `grow`", "openings of one height, or as `grow` says"
    )
    between: Literal["none", "rail", "shelf"] | None = optional(
        "what parts two openings", "`none` (common practice)"
    )
    drawer: Drawer | None = optional("keys for the drawers of this stack", "as the top key `drawers` says")
