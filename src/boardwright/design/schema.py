"""The design file as strict models. Unknown keys are refused; lengths stay as written until the piece is set out.

Every optional key is None when the file does not give it; the trade's default is put in, and explained, when the
piece is set out. `docs/design-file.md` is made from the texts here.
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


class WoodMoisture(Keys):
    """Moisture content of the wood [%]."""

    now: float | None = Field(None, ge=0, le=30, description="on the day the parts are cut")
    driest: float | None = Field(
        None, ge=0, le=30, description="at the driest time where the piece will live"
    )
    wettest: float | None = Field(
        None, ge=0, le=30, description="at the wettest time where the piece will live"
    )


class StockEntry(Keys):
    """A wood or a sheet from the shop."""

    wood: str | None = Field(None, description="key of a row of the species table")
    sheet: str | None = Field(None, description="family of a row of the sheet table")
    thickness: LengthText = Field(description="planed thickness of a wood; thickness a sheet is sold as")
    measured: LengthText | None = Field(None, description="thickness as measured, when it differs")
    sawn: Literal["flat", "quarter", "rift"] | None = Field(None, description="how the boards were sawn")
    sheet_length: LengthText | None = Field(
        None, description="length of the sheet as bought, along its grain"
    )
    sheet_width: LengthText | None = Field(None, description="width of the sheet as bought")
    grain: Literal["along", "free"] | None = Field(
        None,
        description="`free` lets parts be turned on the sheet; default `along` where the sheet has a grain",
    )


class JointKeys(Keys):
    """How two parts are joined. A plain word, such as `dado`, stands for `{kind: dado}`."""

    kind: Literal["butt", "rabbet", "dado", "tongue"] = Field(description="kind of joint")
    depth: LengthText | None = Field(None, description="depth of the dado, rabbet or tongue")
    width: LengthText | None = Field(None, description="tongue: its thickness")
    stopped: LengthText | None = Field(None, description="dado: how far it stops short of the front edge")
    fasten: Literal["screws", "dowels", "none"] | None = Field(
        None, description="what holds it beside the glue"
    )
    count: int | None = Field(None, ge=1, le=40, description="how many screws or dowels")
    screw: int | None = Field(None, ge=2, le=16, description="screw number (gauge)")
    screw_length: LengthText | None = Field(None, description="length of the screw")
    glue: bool | None = Field(None, description="glued or not")


def _joint(value: Any) -> Any:
    return {"kind": value} if isinstance(value, str) else value


JointSpec = Annotated[JointKeys, BeforeValidator(_joint)]


class Sides(Keys):
    """The two sides of the case."""

    stock: str | None = Field(None, description="stock")


class Deck(Keys):
    """The top or the bottom of the case."""

    kind: Literal["full", "rails", "none"] | None = Field(
        None, description="a whole board, two rails (front and rear), or nothing"
    )
    stock: str | None = Field(None, description="stock")
    joint: JointSpec | None = Field(None, description="how it meets the sides")
    rail_width: LengthText | None = Field(None, description="width of the rails")
    up: LengthText | None = Field(None, description="bottom only: height of its underside above the floor")


class Back(Keys):
    """The back of the case."""

    set: Literal["rabbet", "groove", "surface", "none"] | None = Field(None, description="how it is set")
    stock: str | None = Field(None, description="stock")
    depth: LengthText | None = Field(None, description="how far it laps into the sides")
    inset: LengthText | None = Field(None, description="groove: from the rear edge to the groove")
    fasten: Literal["screws", "none"] | None = Field(None, description="screws, or glue alone")


class Bars(Keys):
    """Side-hung wooden bars that run in grooves of the drawer sides."""

    stock: str | None = Field(None, description="stock")
    height: LengthText | None = Field(None, description="height of the bar's section")
    groove: LengthText | None = Field(None, description="depth of the groove in the drawer side")


class Runners(Keys):
    """Runners under the drawer sides, with kickers over them and, where wanted, guides beside them."""

    stock: str | None = Field(None, description="stock")
    width: LengthText | None = Field(None, description="width of the runner")
    thickness: LengthText | None = Field(None, description="height of the runner")
    guide: LengthText | None = Field(
        None, description="thickness of guide strips; 0 when the case sides guide"
    )


class Slides(Keys):
    """Bought ball-bearing slides."""

    kind: str | None = Field(None, description="key of a row of the slide table")
    length: LengthText | None = Field(None, description="length of the slide")
    side: LengthText | None = Field(None, description="room it takes on each side")


class DrawerFront(Keys):
    """The front of a drawer."""

    set: Literal["inset", "overlay"] | None = Field(None, description="inside the opening, or over the case")
    made: Literal["one_piece", "applied"] | None = Field(
        None, description="the box's own front, or a front screwed on the box"
    )
    stock: str | None = Field(None, description="stock")
    reveal: LengthText | None = Field(None, description="inset: gap to the opening on each side")
    gap: LengthText | None = Field(None, description="overlay: gap between two fronts")
    joint: JointSpec | None = Field(None, description="how the sides meet it")


class DrawerSides(Keys):
    """The sides of a drawer."""

    stock: str | None = Field(None, description="stock")


class DrawerBack(Keys):
    """The back of a drawer."""

    stock: str | None = Field(None, description="stock")
    joint: JointSpec | None = Field(None, description="how it meets the sides")


class DrawerBottom(Keys):
    """The bottom of a drawer."""

    set: Literal["groove", "rabbet", "planted"] | None = Field(None, description="how it is held")
    stock: str | None = Field(None, description="stock")
    up: LengthText | None = Field(None, description="groove: height over the lower edge of the sides")
    depth: LengthText | None = Field(None, description="depth of the groove or rabbet")
    back: Literal["captured", "under"] | None = Field(
        None, description="groove: held in the back too, or passing under it"
    )


class Drawer(Keys):
    """A drawer. Every key may also stand under the top key `drawers` for all drawers at once."""

    front: DrawerFront | None = Field(None, description="its front")
    sides: DrawerSides | None = Field(None, description="its sides")
    back: DrawerBack | None = Field(None, description="its back")
    bottom: DrawerBottom | None = Field(None, description="its bottom")
    runs_on: Literal["bars", "runners", "slides"] | None = Field(None, description="what carries it")
    bars: Bars | None = Field(None, description="the bars")
    runners: Runners | None = Field(None, description="the runners")
    slides: Slides | None = Field(None, description="the slides")
    side_clearance: LengthText | None = Field(None, description="from the box to the case, each side")
    height_clearance: LengthText | None = Field(
        None, description="running room over the box at the wettest time of the year"
    )
    rear_clearance: LengthText | None = Field(None, description="from the box to the back of the case")
    box_height: LengthText | None = Field(None, description="height of the sides; default from the opening")


class DrawerStack(Keys):
    """A stack of drawers in one space, top to bottom."""

    count: int = Field(ge=1, le=40, description="how many")
    grow: LengthText | None = Field(None, description="how much higher each opening is than the one over it")
    heights: list[LengthText] | None = Field(None, description="height of each opening instead of `grow`")
    between: Literal["none", "rail", "shelf"] | None = Field(None, description="what parts two openings")
    drawer: Drawer | None = Field(None, description="keys for the drawers of this stack")


class Shelves(Keys):
    """Fixed shelves that part a space evenly."""

    count: int = Field(ge=1, le=40, description="how many")
    stock: str | None = Field(None, description="stock")
    joint: JointSpec | None = Field(None, description="how they meet the sides")


class Room(Keys):
    """A space of the case: rows, columns, or what it holds."""

    size: LengthText | None = Field(None, description="fixed clear height (in rows) or width (in columns)")
    share: float | None = Field(None, gt=0, description="share of what the fixed ones leave; default 1")
    rows: list[Room] | None = Field(None, min_length=1, description="spaces from top to bottom")
    columns: list[Room] | None = Field(None, min_length=1, description="spaces from left to right")
    between: Literal["none", "rail", "shelf", "divider"] | None = Field(
        None, description="what parts them: rows take `none`, `rail` or `shelf`, columns take `divider`"
    )
    stock: str | None = Field(None, description="stock of the shelves, rails or dividers between")
    joint: JointSpec | None = Field(None, description="how those meet the case")
    drawer: Drawer | None = Field(None, description="one drawer")
    drawers: DrawerStack | None = Field(None, description="a stack of drawers")
    shelves: Shelves | None = Field(None, description="fixed shelves")
    open: bool | None = Field(None, description="nothing in it")


class Case(Keys):
    """A case: two sides, top, bottom, back, and what is inside."""

    width: LengthText = Field(description="outside width")
    height: LengthText = Field(description="outside height")
    depth: LengthText = Field(description="outside depth, back included")
    stock: str | None = Field(None, description="stock of every part that names none")
    through: Literal["sides", "top_and_bottom"] | None = Field(None, description="which parts run through")
    sides: Sides | None = Field(None, description="the sides")
    top: Deck | None = Field(None, description="the top")
    bottom: Deck | None = Field(None, description="the bottom")
    back: Back | None = Field(None, description="the back")
    inside: Room | None = Field(None, description="the tree of spaces")


class CutKeys(Keys):
    """A cut on a loose part, in the part's own frame (length from its end, width from its edge)."""

    kind: Literal["groove", "rabbet", "notch", "hole"] = Field(description="kind of cut")
    side: Literal["face", "back", "edge", "far_edge", "end", "far_end"] | None = Field(
        None, description="side it is cut into"
    )
    along: Literal["length", "width", "thickness"] | None = Field(
        None, description="groove: which way it runs"
    )
    edge: Literal["face", "back", "edge", "far_edge", "end", "far_end"] | None = Field(
        None, description="rabbet, notch: the edge it is measured from"
    )
    end: Literal["end", "far_end"] | None = Field(None, description="notch: the end it is measured from")
    at: LengthText | None = Field(None, description="groove: from the reference edge or end to its near wall")
    length: LengthText | None = Field(None, description="notch: along the grain")
    width: LengthText | None = Field(None, description="width of the groove, rabbet or notch")
    depth: LengthText | None = Field(None, description="depth; a hole without it goes through")
    start: LengthText | None = Field(None, description="where it starts; default at the near end")
    stop: LengthText | None = Field(None, description="where it stops; default at the far end")
    from_end: LengthText | None = Field(None, description="hole: centre from the reference end")
    from_edge: LengthText | None = Field(None, description="hole: centre from the reference edge")
    diameter: LengthText | None = Field(None, description="hole: diameter")
    countersink: LengthText | None = Field(None, description="hole: diameter of the countersink")


class LoosePart(Keys):
    """A part that no form covers."""

    stock: str = Field(description="stock")
    length: LengthText = Field(description="with the grain")
    width: LengthText = Field(description="across the grain")
    along: Literal["x", "y", "z"] = Field(description="piece axis of its length: x right, y back, z up")
    across: Literal["x", "y", "z"] = Field(description="piece axis of its width")
    at: list[LengthText] = Field(min_length=3, max_length=3, description="its lowest corner: x, y, z")
    name: str | None = Field(None, description="what the plan calls it; default its key")
    cuts: list[CutKeys] | None = Field(None, description="its own cuts")


class LooseJoint(JointKeys):
    """A joint of two named parts."""

    first: str = Field(
        description="part that receives: gets the dado or rabbet, or lies under the screw head"
    )
    second: str = Field(description="part that goes in")


class Shop(Keys):
    """What layouts reckon with."""

    kerf: LengthText | None = Field(None, description="width of the saw cut")
    sheet_trim: LengthText | None = Field(None, description="taken off each edge of a sheet")
    strip_max: LengthText | None = Field(None, description="widest strip in a glue-up")
    boards: list[BoardEntry] | None = Field(None, description="boards on hand; default standard boards")


class BoardEntry(Keys):
    """A board on hand."""

    stock: str = Field(description="stock")
    length: LengthText = Field(description="length")
    width: LengthText = Field(description="width")
    count: int = Field(1, ge=1, le=500, description="how many")


class DesignFile(Keys):
    """The whole file."""

    boardwright: int = Field(ge=1, description="format version of the file; this is version 1")
    title: str = Field(min_length=1, description="name of the piece")
    about: str | None = Field(None, description="a sentence or two for the cover")
    maker: str | None = Field(None, description="who publishes the plan")
    version: str | int | float | None = Field(None, description="version of the plan; default 1")
    units: Literal["in", "mm"] = Field(description="units of bare numbers and of the plan")
    work_to: str | int | float | None = Field(None, description="finest step that is printed")
    region: str | None = Field(None, description="row of the moisture table: where the piece will live")
    wood_moisture: WoodMoisture | None = Field(None, description="moisture, when it is known better")
    sizes: dict[str, LengthText] | None = Field(None, description="named sizes")
    stock: dict[str, StockEntry] = Field(min_length=1, description="what is in the shop, by name")
    shop: Shop | None = Field(None, description="kerf, trim, boards")
    case: Case | None = Field(None, description="a case")
    drawers: Drawer | None = Field(None, description="keys for every drawer")
    parts: dict[str, LoosePart] | None = Field(None, description="loose parts, by name")
    joints: list[LooseJoint] | None = Field(None, description="joints of named parts")
    tables: list[FileName] | None = Field(
        None, description="files with your own table rows, beside this file"
    )


Room.model_rebuild()
Shop.model_rebuild()
