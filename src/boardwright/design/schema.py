"""The design file as strict models. Unknown keys are refused; lengths stay as written until the set-out.

An optional key is None when the file does not give it; the trade's default is put in, and explained, when the
piece is set out. The tables of keys in `docs/design-file.md` are made from the texts here.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Any, Literal

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Field, PlainValidator


@dataclass(frozen=True, slots=True)
class Length:
    """A length as written in the file: text or number."""

    raw: str | int | float


def _length(value: Any) -> Length:
    if isinstance(value, Length):
        return value
    if isinstance(value, bool) or not isinstance(value, (str, int, float)):
        raise ValueError("a length is expected, such as `3/4`, `19 mm` or `case.width / 2`")
    return Length(value)


LengthText = Annotated[Length, PlainValidator(_length)]


def _file_name(value: str) -> str:
    if not value.strip() or "\0" in value:
        raise ValueError("the name of a file")
    return value


FileName = Annotated[str, AfterValidator(_file_name)]


class Keys(BaseModel):
    """Base of every mapping in the file."""

    model_config = ConfigDict(extra="forbid", frozen=True, arbitrary_types_allowed=True)


def optional(meaning: str, left_out: str, *, value: Any = None, **limits: Any) -> Any:
    """A key that may be left out.

    Args:
        meaning: what it says.
        left_out: what is taken without it, and where that comes from; `{key}` stands for a figure of the
            tables, `{key.high}` for the upper end of its range, `{moisture:key}` for a row of moisture.
        value: what the record holds without it.
        limits: as pydantic takes them, e.g. `ge`, `min_length`.
    """
    return Field(value, description=meaning, json_schema_extra={"left_out": left_out}, **limits)


class WoodMoisture(Keys):
    """Moisture content of the wood [%]."""

    now: float | None = optional(
        "on the day the parts are cut", "the average of the region's row", ge=0, le=30
    )
    driest: float | None = optional(
        "at the driest time where the piece will live",
        "the low end of the region's row, or `now` where that is lower",
        ge=0,
        le=30,
    )
    wettest: float | None = optional(
        "at the wettest time where the piece will live",
        "the high end of the region's row, or `now` where that is higher",
        ge=0,
        le=30,
    )


class StockEntry(Keys):
    """A wood or a sheet from the shop."""

    wood: str | None = optional("key of a row of the species table", "none; `sheet` is given instead")
    sheet: str | None = optional("family of a row of the sheet table", "none; `wood` is given instead")
    thickness: LengthText = Field(description="planed thickness of a wood; thickness a sheet is sold as")
    measured: LengthText | None = optional(
        "thickness as measured, when it differs",
        "a wood: `thickness`; a sheet: the actual thickness in its row of the sheet table, with a "
        "note that says so",
    )
    sawn: Literal["flat", "quarter", "rift"] | None = optional(
        "how the boards were sawn", "`flat`; a sheet has none (common practice)"
    )
    sheet_length: LengthText | None = optional(
        "length of the sheet as bought, along its grain",
        "of the sizes in its row of the sheet table, the one nearest to 96 x 48 in, or 2440 x 1220 mm"
        " in a plan in mm",
    )
    sheet_width: LengthText | None = optional("width of the sheet as bought", "as `sheet_length`")
    grain: Literal["along", "free"] | None = optional(
        "`free` lets parts be turned on the sheet", "`along` where the sheet's row has a grain, else `free`"
    )


class JointKeys(Keys):
    """How two parts are joined. A plain word, such as `dado`, stands for `{kind: dado}`."""

    kind: Literal["butt", "rabbet", "dado", "tongue"] = Field(description="kind of joint")
    depth: LengthText | None = optional(
        "depth of the dado, rabbet or tongue",
        "rabbet: {rabbet_depth_share} of the thickness it is cut in; dado and tongue: "
        "{dado_depth_share} of it; the dado of a drawer back: 1/4 of the side (common practice); "
        "where a part between two spaces may be cut from both faces, at most half of what {dado_web} "
        "between them leaves; settled down",
    )
    width: LengthText | None = optional(
        "tongue: its thickness", "{tongue_thickness_share} of the thickness of the part that goes in"
    )
    stopped: LengthText | None = optional(
        "dado: how far it stops short of the front edge", "0: it runs through to the front"
    )
    fasten: Literal["screws", "dowels", "none"] | None = optional(
        "what holds it beside the glue",
        "butt: `dowels` into solid wood, `screws` into a sheet; every other kind: `none` (common practice)",
    )
    count: int | None = optional(
        "how many screws or dowels",
        "by length: the outer ones 38 mm (1 1/2 in) from the ends, or a quarter of a short joint, and"
        " at most 200 mm (8 in) between screws, 96 mm (3 3/4 in) between dowels (common practice)",
        ge=1,
        le=40,
    )
    screw: int | None = optional(
        "screw number (gauge)",
        "the thickest up to No. 8 whose axis keeps 2.5 shank diameters to the edge (NDS commentary, "
        "from memory) and that holds without breaking through",
        ge=2,
        le=16,
    )
    screw_length: LengthText | None = optional(
        "length of the screw",
        "the shortest on sale that is twice the part under the head and grips three shank diameters, "
        "with 3 mm (1/8 in) of wood beyond its tip (common practice)",
    )
    glue: bool | None = optional("glued or not", "`true`")


def _joint(value: Any) -> Any:
    return {"kind": value} if isinstance(value, str) else value


JointSpec = Annotated[JointKeys, BeforeValidator(_joint)]


class Sides(Keys):
    """The two sides of the case."""

    stock: str | None = optional("stock", "`case.stock`")


class Deck(Keys):
    """The top or the bottom of the case."""

    kind: Literal["full", "rails", "none"] | None = optional(
        "a whole board, two rails (front and rear), or nothing", "`full` (common practice)"
    )
    stock: str | None = optional("stock", "`case.stock`")
    joint: JointSpec | None = optional(
        "how it meets the sides",
        "`rabbet`; `dado` for a bottom that stands above the floor between sides that run through "
        "(common practice)",
    )
    rail_width: LengthText | None = optional("width of the rails", "{web_frame_width}")
    up: LengthText | None = optional(
        "bottom only: height of its underside above the floor", "0: it lies at the floor"
    )


class Back(Keys):
    """The back of the case."""

    set: Literal["rabbet", "groove", "surface", "none"] | None = optional(
        "how it is set", "`rabbet` (common practice)"
    )
    stock: str | None = optional(
        "stock",
        "the stock nearest to 1/4 in (6 mm), sheets first, from 0.6 to 1.5 times that; else "
        "`case.stock` (common practice)",
    )
    depth: LengthText | None = optional(
        "how far it laps into the sides",
        "rabbet: {back_rabbet_width}; groove: {panel_groove_depth}; at most half of the thinnest part"
        " around it; settled down",
    )
    inset: LengthText | None = optional(
        "groove: from the rear edge to the groove", "3/8 in (9.5 mm) (common practice)"
    )
    fasten: Literal["screws", "none"] | None = optional(
        "screws, or glue alone",
        "rabbet: a sheet is glued, a solid back is screwed; surface: screwed, a sheet is glued too; a"
        " back in a groove stays dry (common practice)",
    )


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


class Shelves(Keys):
    """Fixed shelves that part a space evenly."""

    count: int = Field(ge=1, le=40, description="how many")
    stock: str | None = optional("stock", "`case.stock`")
    joint: JointSpec | None = optional("how they meet the sides", "`dado` (common practice)")


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
    between: Literal["none", "rail", "shelf", "divider"] | None = optional(
        "what parts them: rows take `none`, `rail` or `shelf`, columns take `divider`",
        "`none` between rows that all hold drawers, else `shelf`; `divider` between columns (common "
        "practice)",
    )
    stock: str | None = optional("stock of the shelves, rails or dividers between", "`case.stock`")
    joint: JointSpec | None = optional("how those meet the case", "`dado` (common practice)")
    drawer: Drawer | None = optional("one drawer", "no drawer")
    drawers: DrawerStack | None = optional("a stack of drawers", "no stack of drawers")
    shelves: Shelves | None = optional("fixed shelves", "no shelves")
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
    inside: Room | None = optional("the tree of spaces", "one open space")


class CutKeys(Keys):
    """A cut on a loose part, in the part's own frame (length from its end, width from its edge)."""

    kind: Literal["groove", "rabbet", "notch", "hole"] = Field(description="kind of cut")
    side: Literal["face", "back", "edge", "far_edge", "end", "far_end"] | None = optional(
        "side it is cut into", "none; a groove, a rabbet and a hole need it"
    )
    along: Literal["length", "width", "thickness"] | None = optional(
        "groove: which way it runs", "none; a groove needs it"
    )
    edge: Literal["face", "back", "edge", "far_edge", "end", "far_end"] | None = optional(
        "rabbet, notch: the edge it is measured from", "none; a rabbet and a notch need it"
    )
    end: Literal["end", "far_end"] | None = optional(
        "notch: the end it is measured from", "none; a notch needs it"
    )
    at: LengthText | None = optional(
        "groove: from the reference edge or end to its near wall", "none; a groove needs it"
    )
    length: LengthText | None = optional("notch: along the grain", "none; a notch needs it")
    width: LengthText | None = optional(
        "width of the groove, rabbet or notch", "none; a groove, a rabbet and a notch need it"
    )
    depth: LengthText | None = optional("depth", "a hole goes through; a groove and a rabbet need it")
    start: LengthText | None = optional("where it starts", "the near end")
    stop: LengthText | None = optional("where it stops", "the far end")
    from_end: LengthText | None = optional("hole: centre from the reference end", "none; a hole needs it")
    from_edge: LengthText | None = optional("hole: centre from the reference edge", "none; a hole needs it")
    diameter: LengthText | None = optional("hole: diameter", "none; a hole needs it")
    countersink: LengthText | None = optional("hole: diameter of the countersink", "no countersink")


class LoosePart(Keys):
    """A part that no form covers."""

    stock: str = Field(description="stock")
    length: LengthText = Field(description="with the grain")
    width: LengthText = Field(description="across the grain")
    along: Literal["x", "y", "z"] = Field(description="piece axis of its length: x right, y back, z up")
    across: Literal["x", "y", "z"] = Field(description="piece axis of its width")
    at: list[LengthText] = Field(min_length=3, max_length=3, description="its lowest corner: x, y, z")
    name: str | None = optional("what the plan calls it", "its key, with spaces for `_`")
    cuts: list[CutKeys] | None = optional("its own cuts", "no cuts of its own; joints add theirs")


class LooseJoint(JointKeys):
    """A joint of two named parts."""

    first: str = Field(
        description="part that receives: gets the dado or rabbet, or lies under the screw head"
    )
    second: str = Field(description="part that goes in")


class Shop(Keys):
    """What layouts reckon with."""

    kerf: LengthText | None = optional(
        "width of the saw cut", "{kerf_table_saw}; in a plan in mm the next 0.1 mm up"
    )
    sheet_trim: LengthText | None = optional(
        "taken off each edge of a sheet", "{sheet_edge_trim}; in a plan in mm the nearest whole mm"
    )
    strip_max: LengthText | None = optional(
        "widest strip in a glue-up",
        "6 in, or 150 mm in a plan in mm: wider boards cup more (common practice); with `boards`, the"
        " widest board on hand less its edges",
    )
    boards: list[BoardEntry] | None = optional(
        "boards on hand", "boards of the usual sizes, as many as it takes (table of boards, common practice)"
    )


class BoardEntry(Keys):
    """A board on hand."""

    stock: str = Field(description="stock")
    length: LengthText = Field(description="length")
    width: LengthText = Field(description="width")
    count: int = optional("how many", "1", value=1, ge=1, le=500)


class DesignFile(Keys):
    """The whole file."""

    boardwright: int = Field(ge=1, description="format version of the file; this is version 1")
    title: str = Field(min_length=1, description="name of the piece")
    about: str | None = optional("a sentence or two for the cover", "nothing on the cover")
    maker: str | None = optional("who publishes the plan", "nobody is named")
    version: str | int | float | None = optional("version of the plan", "1")
    units: Literal["in", "mm"] = Field(description="units of bare numbers and of the plan")
    work_to: str | int | float | None = optional("finest step that is printed", "1/32 in, or 0.5 mm")
    region: str | None = optional(
        "row of the moisture table: where the piece will live", "`interior_most`: {moisture:interior_most}"
    )
    wood_moisture: WoodMoisture | None = optional(
        "moisture, when it is known better", "as the region's row says"
    )
    sizes: dict[str, LengthText] | None = optional("named sizes", "no names of your own")
    stock: dict[str, StockEntry] = Field(min_length=1, description="what is in the shop, by name")
    shop: Shop | None = optional("kerf, trim, boards", "as each of its keys says")
    case: Case | None = optional("a case", "no case; `parts` are given instead")
    drawers: Drawer | None = optional("keys for every drawer", "as each key says")
    parts: dict[str, LoosePart] | None = optional("loose parts, by name", "no loose parts")
    joints: list[LooseJoint] | None = optional("joints of named parts", "no joints but those of the forms")
    tables: list[FileName] | None = optional(
        "files with your own table rows, beside this file", "the tables of the package alone"
    )


Room.model_rebuild()
Shop.model_rebuild()
