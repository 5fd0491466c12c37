"""Keys for what is in the shop: stock, boards, moisture, saw."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from boardwright.design.keys.base import Keys, LengthText, optional
from boardwright.design.keys.shop import ClampEntry, GlueTimes, Machines, Precision

Sawn = Literal["flat", "quarter", "rift", "mixed"]


class WoodMoisture(Keys):
    """Moisture content of the wood [%]."""

    now: float | None = optional(
        "on the day the parts are cut, as a meter shows it",
        "by `place.air.today`; else the average of the city's year or of the region's row",
        ge=0,
        le=30,
    )
    driest: float | None = optional(
        "at the driest time where the piece will live",
        "as `place` says, else the low end of the region's row, or `now` where that is lower",
        ge=0,
        le=30,
    )
    wettest: float | None = optional(
        "at the wettest time where the piece will live",
        "as `place` says, else the high end of the region's row, or `now` where that is higher",
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
    sawn: Sawn | None = optional(
        "how the boards were sawn; `mixed` is figured as `flat`, which moves most",
        "`flat`; a sheet has none (common practice)",
    )
    rings: float | None = optional(
        "angle between the growth rings, seen on the end, and the face [degrees]: 0 flat, 90 quarter",
        "0 for `flat`, 45 for `rift`, 90 for `quarter`",
        ge=0,
        le=90,
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


class AllowanceKeys(Keys):
    """What the shop adds to finished sizes and takes off boards."""

    face: LengthText | None = optional(
        "taken off each face, rough to planed",
        "half of {planing_allowance}, half of {planing_allowance.high} for a part over 6 ft; and lumber that is "
        "planned to give the thickness (table of lumber)",
    )
    edge: LengthText | None = optional("left on each edge of a rough part", "half of {rough_width_allowance}")
    end: LengthText | None = optional("left on each end of a rough part", "half of {rough_length_allowance}")
    snipe: LengthText | None = optional(
        "more on each end, where the planer cuts too deep", "0: a spare piece is fed before and after"
    )
    panel_edge: LengthText | None = optional(
        "left on each edge of a glued-up panel", "half of {panel_width_oversize}"
    )
    panel_end: LengthText | None = optional(
        "left on each end of a glued-up panel", "half of {panel_length_oversize}"
    )
    joint: LengthText | None = optional(
        "taken off each edge of a strip by the last jointing", "{edge_joint_allowance}"
    )
    flatten: LengthText | None = optional(
        "left on the thickness of strips, to flatten the panel", "{panel_flattening}, where the lumber has it"
    )
    apart: LengthText | None = optional(
        "left on each piece of a blank that is cut apart after milling", "{ganged_length_allowance}"
    )
    end_trim: LengthText | None = optional("taken off each end of a board, for checks", "{end_trim}")
    board_edge: LengthText | None = optional(
        "taken off each edge of a board, to joint one and rip the other", "half of {board_width_allowance}"
    )
    sapwood: LengthText | None = optional("ripped off each edge of a board besides, as sapwood", "0")


class TrimLater(Keys):
    """What a part gets over, to be trimmed to what stands already."""

    length: LengthText | None = optional("in length", "0")
    width: LengthText | None = optional("in width", "0")


class RoughKeys(Keys):
    """What is wanted of some parts when they are taken from boards."""

    parts: str | list[str] = Field(
        description="names of parts, as in the file or as on the plan, the start of such a name, or letters"
    )
    matched: Literal["sequence", "book", "around"] | None = optional(
        "`sequence`: from one board, end to end, as they stand; `around`: the same, round the corners of a box; "
        "`book`: of two leaves of one board",
        "the grain of each part is its own",
    )
    trim_later: TrimLater | None = optional("what they get over", "nothing over")
    spare: int | None = optional("more of them than are used", "0", ge=0, le=50)


class FinishKeys(Keys):
    """The finish."""

    kind: str = Field(description="key of a row of the table of finishes")
    coats: int | None = optional("how many", "as its row says", ge=1, le=20)


class PriceKeys(Keys):
    """What something costs."""

    price: float = Field(ge=0, le=1e6, description="price of one")
    per: Literal[
        "board foot",
        "cubic metre",
        "square metre",
        "sheet",
        "metre",
        "foot",
        "piece",
        "hundred",
        "litre",
        "kilogram",
    ] = Field(description="of what")


class Shop(Keys):
    """What the shop has, and how exactly it works."""

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
    precision: Precision | None = optional("how exactly sizes come out", "as each of its keys says")
    joint_play: LengthText | None = optional(
        "how much wider a dado or groove is cut than what goes into it", "{dado_fit}"
    )
    machines: Machines | None = optional("what its machines take", "as each of its keys says")
    clamps: list[ClampEntry] | None = optional("long clamps", "{clamp_count}, which take {clamp_longest}")
    glue: str | None = optional("key of a row of the table of glues", "`pva_yellow`")
    glue_times: GlueTimes | None = optional("how long gluing up takes", "as each of its keys says")
    strip_min: LengthText | None = optional("narrowest strip in a glue-up", "2 in, or 50 mm in a plan in mm")
    allowances: AllowanceKeys | None = optional(
        "over finished sizes, and off boards", "as each of its keys says"
    )
    bark_sides: Literal["alternate", "same", "any"] | None = optional(
        "how strips of a panel are turned: bark side up and down in turn, all to the show face, or as they look best",
        "`alternate`: the cups of single strips then work against each other (common practice)",
    )
    grade: Literal["fas", "selects", "1_common", "2a_common"] | None = optional(
        "grade of lumber that is bought", "`fas` (table of grades)"
    )
    prices: dict[str, PriceKeys] | None = optional(
        "prices, by the name of a stock or of a line of the buying list", "no costs are worked out"
    )
    sheets: list[SheetEntry] | None = optional(
        "other sizes of sheet that can be bought, each with its price; layouts then take what costs least",
        "the one size of the stock",
    )
    machine_least: LengthText | None = optional(
        "shortest piece for the jointer and the planer; shorter parts are milled in one blank",
        "12 in, or 300 mm in a plan in mm (woodworking magazine, November 2007, p. 55); the machine's manual "
        "comes first",
    )
    test_pieces: int | None = optional(
        "pieces for trying set-ups, of each thickness of wood with joints; from what is left of boards where that "
        "does",
        "1 (common practice)",
        ge=0,
        le=20,
    )
    boards: list[BoardEntry] | None = optional(
        "boards on hand", "boards of the usual sizes, as many as it takes (table of boards, common practice)"
    )


class DefectEntry(Keys):
    """A knot, a check, wane or a stain of a board: a rectangle of its face."""

    at: list[LengthText] = Field(
        min_length=2, max_length=2, description="its near corner: from the left end, and from the near edge"
    )
    length: LengthText = Field(description="length along the board")
    width: LengthText = Field(description="width across it")
    what: str | None = optional("what it is, such as `knot`", "nothing is said")


class BoardEntry(Keys):
    """A board on hand."""

    stock: str = Field(description="stock")
    length: LengthText = Field(description="length")
    width: LengthText = Field(description="width")
    count: int = optional("how many", "1", value=1, ge=1, le=500)
    defects: list[DefectEntry] | None = optional(
        "what no part may be cut from; where `count` is more than 1, at the same places on each",
        "none: clear",
    )


class SheetEntry(Keys):
    """A size of sheet that can be bought besides the stock's own, which has its price in `prices`."""

    stock: str = Field(description="stock, a sheet with a price per sheet or per square metre")
    length: LengthText = Field(description="length, along its grain")
    width: LengthText = Field(description="width")
    price: float = Field(ge=0, le=1e6, description="price of one")


Shop.model_rebuild()
