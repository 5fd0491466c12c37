"""Keys for what is in the shop: stock, boards, moisture, saw."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from boardwright.design.keys.base import Keys, LengthText, optional
from boardwright.design.keys.shop import ClampEntry, GlueTimes, Machines, Precision


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
    boards: list[BoardEntry] | None = optional(
        "boards on hand", "boards of the usual sizes, as many as it takes (table of boards, common practice)"
    )


class BoardEntry(Keys):
    """A board on hand."""

    stock: str = Field(description="stock")
    length: LengthText = Field(description="length")
    width: LengthText = Field(description="width")
    count: int = optional("how many", "1", value=1, ge=1, le=500)


Shop.model_rebuild()
