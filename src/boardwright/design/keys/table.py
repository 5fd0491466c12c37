"""Keys for a table, bench or stool: legs, aprons, stretchers, a top, drawers in the apron."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from boardwright.design.keys.base import Keys, LengthText, optional
from boardwright.design.keys.drawers import Drawer
from boardwright.design.keys.joints import JointSpec


class TopEdge(Keys):
    """The upper edge of a top, worked to a shape all round."""

    kind: Literal["chamfer", "round_over", "cove", "ogee"] = Field(description="shape of the edge")
    size: LengthText | None = optional(
        "leg of the chamfer, radius, or reach of the ogee",
        "a quarter of the thickness; `cove`, `ogee` half of it; settled down (common practice)",
    )


class TableTop(Keys):
    """The top of a table, or the seat of a bench or stool."""

    kind: Literal["board", "none"] | None = optional("a board, or no top", "`board`")
    shape: Literal["straight", "round"] | None = optional(
        "four straight sides; or round: a circle, and an ellipse where width and depth differ", "`straight`"
    )
    stock: str | None = optional("stock", "`table.stock`")
    edge: TopEdge | None = optional("its upper edge, shaped all round", "square")
    overhang: LengthText | None = optional(
        "how far it reaches beyond the legs, all round; round: beyond their outer corners", "{table_overhang}"
    )
    left: LengthText | None = optional("its overhang at the left", "`overhang`")
    right: LengthText | None = optional("its overhang at the right", "`overhang`")
    front: LengthText | None = optional("its overhang at the front", "`overhang`")
    rear: LengthText | None = optional("its overhang at the rear", "`overhang`")
    fixed: Literal["buttons", "slotted_screws", "clips", "z_clips", "none"] | None = optional(
        "how it is held so that it can move: wooden buttons in grooves of the aprons, screws in slots of cleats, or "
        "figure-eight clips in the upper edge of the aprons, or Z-shaped clips in a groove of the aprons",
        "`buttons`; over a drawer `slotted_screws` (common practice)",
    )


class LegTaper(Keys):
    """Legs that get thinner towards the foot."""

    faces: Literal["inner", "all"] | None = optional(
        "the two faces that look in, or all four", "`inner` (common practice)"
    )
    foot: LengthText | None = optional("thickness left at the foot", "{leg_foot_share} of the leg")
    below: LengthText | None = optional("where it starts, below the apron", "{leg_taper_below}")


class LegSplay(Keys):
    """Legs that stand out at the foot."""

    ends: float | None = optional("degrees to the left and right, seen from the front", "0", ge=0, le=25)
    front: float | None = optional("degrees to the front and rear, seen from the side", "0", ge=0, le=25)


class Legs(Keys):
    """The legs of a table: square, tapered, splayed, or both."""

    stock: str | None = optional(
        "stock", "the wood nearest to {leg_thickness}, from 0.6 to 1.5 times that; else `table.stock`"
    )
    thickness: LengthText | None = optional("from front to back", "the thickness of its stock")
    width: LengthText | None = optional("from left to right", "as `thickness`")
    taper: LegTaper | None = optional("tapered legs; `{}` for the usual taper", "not tapered")
    splay: LegSplay | None = optional("splayed legs", "upright")


class ApronDrawers(Keys):
    """Drawers side by side in the front apron."""

    count: int | None = optional("how many", "1", ge=1, le=8)
    drawer: Drawer | None = optional("keys for these drawers", "as the top key `drawers` says")
    joint: JointSpec | None = optional(
        "how the rails over and under them meet the legs",
        "the lower `mortise_tenon`; the upper `butt`: a mortise would break out of the top of the leg (common "
        "practice)",
    )
    rail: LengthText | None = optional(
        "width, front to back, of the rails over and under them",
        "{web_frame_width}, at most what the leg takes",
    )


class Aprons(Keys):
    """The aprons between the legs, under the top."""

    stock: str | None = optional("stock", "`table.stock`")
    height: LengthText | None = optional(
        "height", "{apron_height}; with drawers {apron_drawer_height}; at most a third of the table's height"
    )
    setback: LengthText | None = optional(
        "from the outer face of the legs; 0 is flush", "{apron_setback}; with drawers 0"
    )
    joint: JointSpec | None = optional(
        "how they meet the legs; splayed legs take `butt` with dowels square to the shoulder",
        "`mortise_tenon`; of splayed legs `butt` (common practice)",
    )
    drawers: ApronDrawers | None = optional(
        "drawers in the front; `{}` for one", "a front apron without a drawer"
    )


class Stretchers(Keys):
    """Rails low between the legs."""

    kind: Literal["box", "h", "ends"] | None = optional(
        "four round the legs; one at each end and one between these two; or one at each end",
        "`box`",
    )
    stock: str | None = optional("stock", "the stock of the aprons")
    height: LengthText | None = optional("height of the rail", "{stretcher_height}")
    up: LengthText | None = optional("from the floor to its underside", "{stretcher_up}")
    joint: JointSpec | None = optional("how they meet the legs", "as the aprons")


class TableKeys(Keys):
    """A table, bench or stool. Without aprons' and legs' own keys it has those of the trade."""

    width: LengthText = Field(description="of the top, left to right")
    depth: LengthText = Field(description="of the top, front to back")
    height: LengthText | None = optional("from the floor to the upper side of the top", "{table_height}")
    stock: str | None = optional("stock of every part that names none", "the first stock of the file")
    top: TableTop | None = optional("the top", "as each of its keys says")
    legs: Legs | None = optional("the legs", "as each of its keys says")
    aprons: Aprons | None = optional("the aprons", "as each of its keys says")
    stretchers: Stretchers | None = optional("rails low between the legs", "none")
