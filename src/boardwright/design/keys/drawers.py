"""Keys for drawers and what they run on."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field

from boardwright.design.keys.base import Keys, LengthText, optional
from boardwright.design.keys.joints import JointSpec
from boardwright.design.keys.pulls import PullSpec


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


class FullExtensionBars(Keys):
    """Wooden bars that float between case and drawer and let the drawer out over its whole depth, or nearly."""

    stock: str | None = optional(
        "stock",
        "the wood of the file with the highest specific gravity that is thick enough; the thicker of two alike "
        "(common practice)",
    )
    height: LengthText | None = optional(
        "height of the bar's section",
        "a sixteenth of the depth of the space, at least 3/4 in (19 mm), at most a third of the drawer side (common "
        "practice), less {bar_height_clearance} of play; at least 5 shank diameters, an even number of steps",
    )
    groove: LengthText | None = optional(
        "depth of the groove in the drawer side",
        "as near {bar_groove_depth} as leaves wood for the tip of a screw on sale; at most half of the side, and "
        "1/8 in (3 mm) short of the joint of the drawer back",
    )
    case_groove: LengthText | None = optional(
        "depth of the groove in the case",
        "as `groove`; at most half of the wall, of a divider as much less as the groove in its other face needs",
    )
    length: LengthText | None = optional(
        "length of the bar", "from behind the front's joint to the back of the case, settled down"
    )
    web: LengthText | None = optional(
        "least wood between the two slots",
        "3/4 in (19 mm) (common practice); more where the travel needs less slot",
    )
    block: LengthText | None = optional(
        "length of the block that is glued into the open end of each slot",
        "1/2 in (12.7 mm) (common practice)",
    )
    overlap: float | None = optional(
        "least share of the bar's length that stays in each groove at full pull",
        "{bar_overlap_share}",
        gt=0,
        lt=1,
    )
    screw: int | None = optional("screw number (gauge)", "4 (common practice)", ge=2, le=10)
    screw_length: LengthText | None = optional(
        "length of both screws",
        "3/4 in, or the nearest on sale that grips 1 1/2 shank diameters and leaves 1/16 in (1.5 mm) of wood beyond "
        "its tip when it is driven home (common practice)",
    )
    load: float | None = optional(
        "what is put in the drawer: pounds in a file in inches, kilograms in one in millimetres",
        "its inside filled: {drawer_load_clothing}",
        ge=0,
        le=500,
    )


class CentreGuide(Keys):
    """A strip under the drawer bottom that runs in a grooved runner, beside what `runners` puts in."""

    stock: str | None = optional(
        "stock",
        "the wood of the file with the highest specific gravity; the thicker of two alike (common practice)",
    )
    width: LengthText | None = optional("width of the strip", "{runner_thickness}; settled down")
    runner_width: LengthText | None = optional(
        "width of the runner",
        "`width`, its clearance, and 9/16 in (15 mm) on both sides of it (common practice)",
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
        "on an applied front this is the joint of the box's own front (common practice); with `finger`, `dovetail` or "
        "`half_blind` a one-piece front ends flush with the sides",
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
        "solid wood, and any bottom over a centre guide or with a sliding dovetail: `under`; else a sheet: `captured` "
        "(common practice)",
    )


class Drawer(Keys):
    """A drawer. Every key may also stand under the top key `drawers` for all drawers at once."""

    front: DrawerFront | None = optional("its front", "as each of its keys says")
    sides: DrawerSides | None = optional("its sides", "as each of its keys says")
    pull: PullSpec | None = optional("a knob or pull", "nothing is drilled")
    back: DrawerBack | None = optional("its back", "as each of its keys says")
    bottom: DrawerBottom | None = optional("its bottom", "as each of its keys says")
    runs_on: Literal["bars", "full_extension_bars", "runners", "centre_guide", "slides"] | None = optional(
        "what carries it; `centre_guide`: runners, and a guide under the middle of the bottom",
        "`bars` (common practice)",
    )
    bars: Bars | None = optional("the bars", "as each of its keys says")
    full_extension_bars: FullExtensionBars | None = optional(
        "the full-extension bars", "as each of its keys says"
    )
    centre_guide: CentreGuide | None = optional("the guide under the bottom", "as each of its keys says")
    runners: Runners | None = optional("the runners", "as each of its keys says")
    slides: Slides | None = optional("the slides", "as each of its keys says")
    side_clearance: LengthText | None = optional(
        "from the box to the case, each side",
        "bars of both kinds: half of {bar_width_total}; runners: half of {drawer_side_total}; slides: "
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
    between: Literal["none", "rail", "web_frame", "shelf"] | None = optional(
        "what parts two openings", "`none`; under drawers with a centre guide `web_frame` (common practice)"
    )
    dust: bool | None = optional("web frames with a dust panel", "`false`: open frames")
    drawer: Drawer | None = optional("keys for the drawers of this stack", "as the top key `drawers` says")


class TraySlides(Slides):
    """Bought slides of a tray, or `sideways` for a tray that slides on two ledgers."""

    way: Literal["out", "sideways"] | None = optional(
        "`sideways`: no bought slides; it slides along two ledgers. The word alone stands for `{way: sideways}`",
        "`out`: pulled out to the front",
    )


def _sideways(value: Any) -> Any:
    return {"way": value} if isinstance(value, str) else value


class Ledgers(Keys):
    """Strips on two walls that a lift-out or sideways tray rests on."""

    stock: str | None = optional(
        "stock",
        "the wood of the file with the highest specific gravity; the thicker of two alike (common practice)",
    )
    width: LengthText | None = optional(
        "how far they stand out from the wall", "half of {runner_thickness}; settled down"
    )
    height: LengthText | None = optional(
        "their height", "{runner_thickness}, at most the thickness of the stock"
    )


class Grip(Keys):
    """A hand hole or a hollow in the two ends of a tray, or in the low front of one that runs out."""

    shape: Literal["slot", "curve"] | None = optional(
        "a slot through, or a hollow in the upper edge",
        "`slot`; `curve` with less than 2 3/8 in (60 mm) over the bottom (common practice)",
    )
    width: LengthText | None = optional(
        "width", "3 3/4 in (95 mm), at most half of the part (common practice)"
    )
    height: LengthText | None = optional(
        "height of the slot, or depth of the hollow",
        "1 1/4 in (32 mm), at most a third of the part (common practice)",
    )


class Tray(Drawer):
    """A tray: made like a drawer, with a low front. Its keys are those of a drawer, and these."""

    slides: Annotated[TraySlides, BeforeValidator(_sideways)] | None = optional(
        "the bought slides; `sideways` for a tray that slides along two ledgers", "as each of its keys says"
    )
    front_height: LengthText | None = optional(
        "height of the front of a tray that runs out",
        "half of the sides, at least over the bottom by 1/2 in (12 mm) (common practice)",
    )
    lift_out: bool | None = optional(
        "`true`: it rests on ledgers and is lifted out",
        "`false`: it runs out; in a `box` `true`, unless it slides sideways",
    )
    ledgers: Ledgers | None = optional(
        "what a lift-out or sideways tray rests on", "as each of its keys says"
    )
    length: LengthText | None = optional(
        "sideways: length of the tray along the ledgers", "half of the room (common practice)"
    )
    grip: Grip | None = optional("hand holes", "none")


class TrayStack(Keys):
    """Trays one over the other in one space, top to bottom."""

    count: int = Field(ge=1, le=40, description="how many")
    heights: list[LengthText] | None = optional("height of the room of each", "rooms of one height")
    between: Literal["none", "rail", "shelf"] | None = optional(
        "what parts two rooms", "`none` (common practice)"
    )
    tray: Tray | None = optional("keys for the trays of this stack", "as the top key `drawers` says")
