"""Keys for a case and the tree of spaces inside it."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from boardwright.design.keys.base import Keys, LengthText, optional
from boardwright.design.keys.bases import CaseBase
from boardwright.design.keys.covers import Cover
from boardwright.design.keys.doors import Door, DoorPair, FixedSpec
from boardwright.design.keys.drawers import Drawer, DrawerStack, Tray, TrayStack
from boardwright.design.keys.face_frames import FaceFrame
from boardwright.design.keys.joints import JointSpec
from boardwright.design.keys.lids import Lid
from boardwright.design.keys.wall_cleats import WallCleat


class Sides(Keys):
    """The two sides of the case."""

    stock: str | None = optional("stock", "`case.stock`")


class Deck(Keys):
    """The top or the bottom of the case."""

    kind: Literal["full", "rails", "none", "lid"] | None = optional(
        "a whole board, two rails (front and rear), nothing, or (top only) a lid on hinges",
        "`full`; a top with `lid`: `lid` (common practice)",
    )
    stock: str | None = optional("stock", "`case.stock`")
    joint: JointSpec | None = optional(
        "how it meets the sides",
        "`rabbet`; `dado` for a bottom that stands above the floor between sides that run through "
        "(common practice)",
    )
    rail_width: LengthText | None = optional("width of the rails", "{web_frame_width}")
    lid: Lid | None = optional("top only: the lid", "as each of its keys says")
    up: LengthText | None = optional(
        "bottom only: height of its underside above the floor", "0: it lies at the floor"
    )


class Back(Keys):
    """The back of the case."""

    set: Literal["rabbet", "groove", "surface", "shiplap", "tongued", "none"] | None = optional(
        "how it is set; `shiplap` and `tongued`: of several boards in a rabbet, each free to move",
        "`rabbet` (common practice)",
    )
    stock: str | None = optional(
        "stock",
        "the stock nearest to 1/4 in (6 mm), sheets first, from 0.6 to 1.5 times that; else "
        "`case.stock` (common practice); of boards: the wood nearest to 1/2 in (12.7 mm) in the same way",
    )
    board_width: LengthText | None = optional(
        "shiplap, tongued: width of its boards, at most; the last one takes what is left over",
        "4 in (101.6 mm) (common practice)",
    )
    depth: LengthText | None = optional(
        "how far it laps into the sides",
        "rabbet: {back_rabbet_width}; groove: {panel_groove_depth}; at most half of the thinnest part around it; "
        "shiplap and tongued: {back_rabbet_width.high}, at most two thirds of it; settled down",
    )
    inset: LengthText | None = optional(
        "groove: from the rear edge to the groove", "3/8 in (9.5 mm) (common practice)"
    )
    fasten: Literal["screws", "none"] | None = optional(
        "screws, or glue alone",
        "rabbet: a sheet is glued, a solid back is screwed; surface: screwed, a sheet is glued too; a"
        " back in a groove stays dry; each board of a back is screwed at its ends, in the middle of its width "
        "(common practice)",
    )


class Shelves(Keys):
    """Shelves that part a space evenly: fixed, or on pins in rows of holes."""

    count: int = Field(ge=1, le=40, description="how many")
    kind: Literal["fixed", "pins"] | None = optional("fixed, or on pins", "`fixed` (common practice)")
    stock: str | None = optional("stock", "`case.stock`")
    joint: JointSpec | None = optional("fixed: how they meet the sides", "`dado` (common practice)")
    pin: LengthText | None = optional(
        "pins: diameter of the holes",
        "in inches {shelf_pin_diameter_in}; in millimetres {system_hole_diameter}",
    )
    pitch: LengthText | None = optional(
        "pins: from hole to hole", "in inches {shelf_pin_pitch_in}; in millimetres {system_hole_pitch}"
    )
    first: LengthText | None = optional(
        "pins: from the floor of the space to the first hole", "{shelf_pin_end}"
    )
    last: LengthText | None = optional(
        "pins: no hole nearer to the ceiling of the space than this", "{shelf_pin_end}"
    )
    setback: LengthText | None = optional(
        "pins: from the front and the rear of the shelf to the rows", "{system_hole_setback}"
    )
    clearance: LengthText | None = optional(
        "pins: shorter than the space, at each end", "{shelf_pin_clearance}"
    )


class Room(Keys):
    """A space of the case: rows, columns, or what it holds."""

    size: LengthText | None = optional(
        "fixed clear height (in rows) or width (in columns)", "a share of what the fixed ones leave"
    )
    share: float | None = optional("share of what the fixed ones leave", "1", gt=0)
    rows: list[Room] | None = optional("spaces from top to bottom", "not parted into rows", min_length=1)
    columns: list[Room] | None = optional(
        "spaces from left to right", "not parted into columns", min_length=1
    )
    between: Literal["none", "rail", "web_frame", "shelf", "divider"] | None = optional(
        "what parts them: rows take `none`, `rail`, `web_frame` or `shelf`, columns take `divider`",
        "`none` between rows that all hold drawers, `web_frame` where one runs over a centre guide, else `shelf`; "
        "`divider` between columns (common practice)",
    )
    dust: bool | None = optional("web frames with a dust panel", "`false`: open frames")
    stock: str | None = optional("stock of the shelves, rails or dividers between", "`case.stock`")
    joint: JointSpec | None = optional("how those meet the case", "`dado` (common practice)")
    drawer: Drawer | None = optional("one drawer", "no drawer")
    drawers: DrawerStack | None = optional("a stack of drawers", "no stack of drawers")
    tray: Tray | None = optional("one tray", "no tray")
    trays: TrayStack | None = optional("trays one over the other", "no trays")
    shelves: Shelves | None = optional("fixed shelves", "no shelves")
    door: Door | None = optional("a door before it", "no door")
    doors: DoorPair | None = optional("a pair of doors before it", "no doors")
    panel: FixedSpec | None = optional("a fixed front before it: `fixed`, or its keys", "no fixed front")
    open: bool | None = optional("nothing in it", "`true` when nothing else is given")


class Case(Keys):
    """A case: two sides, top, bottom, back, and what is inside."""

    width: LengthText = Field(description="outside width")
    height: LengthText = Field(description="outside height")
    depth: LengthText = Field(description="outside depth, back included")
    stock: str | None = optional("stock of every part that names none", "the first stock of the file")
    through: Literal["sides", "top_and_bottom"] | None = optional(
        "which parts run through", "`sides` (common practice)"
    )
    sides: Sides | None = optional("the sides", "as each of its keys says")
    top: Deck | None = optional("the top", "as each of its keys says")
    bottom: Deck | None = optional("the bottom", "as each of its keys says")
    back: Back | None = optional("the back", "as each of its keys says")
    face_frame: FaceFrame | None = optional("a frame before it; `depth` includes it", "no face frame")
    base: CaseBase | None = optional("what it stands on; `height` includes it", "it stands on its sides")
    cover: Cover | None = optional("a board over the top; `height` includes it", "none")
    wall_cleat: WallCleat | None = optional("a pair of cleats to hang it on a wall", "none")
    inside: Room | None = optional("the tree of spaces", "one open space")


Room.model_rebuild()
