"""The design file as strict models. Unknown keys are refused; lengths stay as written until the set-out.

An optional key is None when the file does not give it; the trade's default is put in, and explained, when the
piece is set out. The tables of keys in `docs/design-file.md` are made from the texts here.
"""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from boardwright.design.keys.base import FileName, Keys, Length, LengthText, optional
from boardwright.design.keys.bases import CaseBase
from boardwright.design.keys.box import BoxBottom, BoxDividers, BoxKeys, BoxLid
from boardwright.design.keys.case import Back, Case, Deck, Room, Shelves, Sides
from boardwright.design.keys.covers import Cover
from boardwright.design.keys.cuts import (
    BevelKeys,
    CurveKeys,
    CutKeys,
    DovetailSlotKeys,
    DovetailTongueKeys,
    EdgeKeys,
    GrooveKeys,
    HoleKeys,
    MortiseKeys,
    NotchKeys,
    RabbetKeys,
    RaisedFieldKeys,
    SocketKeys,
    TaperKeys,
    TenonKeys,
    VGrooveKeys,
)
from boardwright.design.keys.delivery import CorridorCorner, Delivery, DoorOpening, StairTurn, Vehicle
from boardwright.design.keys.doors import Door, DoorKeys, DoorPair, FixedPanel, Hinges, Knob
from boardwright.design.keys.drawers import (
    Bars,
    CentreGuide,
    Drawer,
    DrawerBack,
    DrawerBottom,
    DrawerFront,
    DrawerSides,
    DrawerStack,
    FullExtensionBars,
    Grip,
    Ledgers,
    Runners,
    Slides,
    Tray,
    TraySlides,
    TrayStack,
)
from boardwright.design.keys.face_frames import FaceFrame
from boardwright.design.keys.frames import Frame, FramePanel
from boardwright.design.keys.joints import JointKeys, JointSpec
from boardwright.design.keys.lids import Lid
from boardwright.design.keys.loads import Loads
from boardwright.design.keys.parts import LooseJoint, LoosePart, PlaceKeys, Places
from boardwright.design.keys.place import Air, Surroundings, YearOfAir
from boardwright.design.keys.pulls import Pull
from boardwright.design.keys.shop import ClampEntry, GlueTimes, Machines, Precision
from boardwright.design.keys.stock import (
    AllowanceKeys,
    BoardEntry,
    DefectEntry,
    FinishKeys,
    PriceKeys,
    RoughKeys,
    SheetEntry,
    Shop,
    StockEntry,
    TrimLater,
    WoodMoisture,
)
from boardwright.design.keys.table import (
    ApronDrawers,
    Aprons,
    Legs,
    LegSplay,
    LegTaper,
    Stretchers,
    TableKeys,
    TableTop,
    TopEdge,
)
from boardwright.design.keys.wall_cleats import WallCleat

__all__ = [
    "Air",
    "AllowanceKeys",
    "ApronDrawers",
    "Aprons",
    "Back",
    "Bars",
    "BevelKeys",
    "BoardEntry",
    "BoxBottom",
    "BoxDividers",
    "BoxKeys",
    "BoxLid",
    "Case",
    "CaseBase",
    "CentreGuide",
    "ClampEntry",
    "CorridorCorner",
    "Cover",
    "CurveKeys",
    "CutKeys",
    "Deck",
    "DefectEntry",
    "Delivery",
    "DesignFile",
    "Door",
    "DoorKeys",
    "DoorOpening",
    "DoorPair",
    "DovetailSlotKeys",
    "DovetailTongueKeys",
    "Drawer",
    "DrawerBack",
    "DrawerBottom",
    "DrawerFront",
    "DrawerSides",
    "DrawerStack",
    "EdgeKeys",
    "FaceFrame",
    "FileName",
    "FinishKeys",
    "FixedPanel",
    "Frame",
    "FramePanel",
    "FullExtensionBars",
    "GlueTimes",
    "Grip",
    "GrooveKeys",
    "Hinges",
    "HoleKeys",
    "JointKeys",
    "JointSpec",
    "Keys",
    "Knob",
    "Ledgers",
    "LegSplay",
    "LegTaper",
    "Legs",
    "Length",
    "LengthText",
    "Lid",
    "Loads",
    "LooseJoint",
    "LoosePart",
    "Machines",
    "MortiseKeys",
    "NotchKeys",
    "PlaceKeys",
    "Places",
    "Precision",
    "PriceKeys",
    "Pull",
    "RabbetKeys",
    "RaisedFieldKeys",
    "Room",
    "RoughKeys",
    "Runners",
    "SheetEntry",
    "Shelves",
    "Shop",
    "Sides",
    "Slides",
    "SocketKeys",
    "StairTurn",
    "StockEntry",
    "Stretchers",
    "Surroundings",
    "TableKeys",
    "TableTop",
    "TaperKeys",
    "TenonKeys",
    "TopEdge",
    "Tray",
    "TraySlides",
    "TrayStack",
    "TrimLater",
    "VGrooveKeys",
    "Vehicle",
    "WallCleat",
    "WoodMoisture",
    "YearOfAir",
    "optional",
]


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
    place: Surroundings | None = optional(
        "a city, or the air indoors, in place of a region", "as `region` says"
    )
    wood_moisture: WoodMoisture | None = optional(
        "moisture, when it is known better", "as the place or the region's row says"
    )
    sizes: dict[str, LengthText] | None = optional("named sizes", "no names of your own")
    stock: dict[str, StockEntry] = Field(min_length=1, description="what is in the shop, by name")
    loads: Loads | None = optional("what the piece carries, and who lifts it", "as each of its keys says")
    delivery: Delivery | None = optional("the way from the shop to the place", "as each of its keys says")
    shop: Shop | None = optional(
        "kerf, trim, boards, precision, machines, clamps, glue", "as each of its keys says"
    )
    rough: list[RoughKeys] | None = optional(
        "what is wanted of some parts when they are taken from boards", "every part on its own"
    )
    finish: FinishKeys | None = optional(
        "the finish", "none is chosen; the buying list gives the area of a coat"
    )
    case: Case | None = optional("a case", "no case; a `table`, a `box` or `parts` are given instead")
    table: TableKeys | None = optional("a table, bench or stool", "no table")
    box: BoxKeys | None = optional("a box", "no box")
    drawers: Drawer | None = optional("keys for every drawer", "as each key says")
    parts: dict[str, LoosePart] | None = optional("loose parts, by name", "no loose parts")
    joints: list[LooseJoint] | None = optional("joints of named parts", "no joints but those of the forms")
    tables: list[FileName] | None = optional(
        "files with your own table rows, beside this file", "the tables of the package alone"
    )
