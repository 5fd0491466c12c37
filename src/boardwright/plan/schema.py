"""The shape of `plan.json`, version 1. Everything that any output prints stands in it.

Lengths are given twice: `mm`, the settled size, and `text`, what is printed. Nothing downstream computes one.
"""

from __future__ import annotations

from typing import Any, Final, Literal

from pydantic import BaseModel, ConfigDict, Field

FORMAT: Final = "boardwright-plan/1"


class Record(BaseModel):
    """Base of every record: extra keys are refused, values do not change."""

    model_config = ConfigDict(extra="forbid", frozen=True)


class Size(Record):
    """A printed length: settled value [mm] and its text in the plan's units."""

    mm: float
    text: str


class Sizes(Record):
    """Length with the grain, width, thickness."""

    length: Size
    width: Size
    thickness: Size


class Instance(Record):
    """One part of the piece: where it is. `pose` is the 3 x 4 matrix from part to piece [mm]."""

    id: str
    group: str
    pose: list[list[float]]


class Strip(Record):
    """One strip of a glue-up, rough."""

    width: Size
    count: int


class PlanPart(Record):
    """One kind of part: all parts of one letter.

    `cuts` are the shop features in the part's own frame, as data (see docs/plan-format.md); `work` says the
    same in words. `preparation` is what comes first: stock, glue-up, milling. `cut_when` tells parts that can
    be cut from the list from those that are fitted to what stands already. `places` says where they go.
    """

    letter: str
    name: str
    count: int
    stock: str
    stock_name: str
    material: Literal["wood", "sheet"]
    finished: Sizes
    rough: Sizes | None
    glue_up: list[Strip] = Field(default_factory=list)
    grain: str
    cut_when: Literal["to list", "measure first"] = "to list"
    toward: dict[str, str] = Field(default_factory=dict)
    """Where each side of the part points in the piece, in words: `{"end": "bottom", "face": "inside", …}`."""
    preparation: list[str] = Field(default_factory=list)
    work: list[str]
    mirror_of: str = ""
    show: list[str] = Field(default_factory=list)
    mass_kg: float
    cuts: list[dict[str, Any]]
    instances: list[Instance]
    places: str = ""
    drawing: str


class PlanJoint(Record):
    """One kind of joint between two letters."""

    kind: str
    first: str
    second: str
    count: int
    summary: str
    glued: bool


class JointGroup(Record):
    """All joints of one kind that are made alike, as the PDF lists them.

    `pairs` says which letters meet, e.g. `C into A, B; D into A, B`.
    """

    name: str
    how: str
    glued: bool
    count: int
    pairs: str


class BuildStep(Record):
    """One step of putting the piece together.

    `units` are moved one after the other, each whole; `onto` stands there already. `direction` is the way they are
    moved, `travel` how far before their place the first joint or guide begins. `sub` is the number of the subassembly
    that the step belongs to, 0 for the piece; `count` of it are made alike.
    """

    number: int
    sub: int = 0
    count: int = 1
    title: str
    lines: list[str]
    units: list[list[str]]
    """Part ids."""
    onto: list[str]
    direction: list[float]
    travel: Size
    glued: bool
    drawing: str = ""


class PlanSubassembly(Record):
    """Parts that are put together before they go into the piece; `copies` are the part ids of each made alike."""

    number: int
    name: str
    letters: list[str]
    copies: list[list[str]]


class Allowance(Record):
    """An allowance or a rule of the shop that rough sizes and layouts are reckoned with."""

    what: str
    text: str
    source: str


class RoughLine(Record):
    """What is cut for one kind of part before it is milled, each size with its sum."""

    letter: str
    name: str
    count: int
    lumber: str
    """What it is cut from, e.g. `4/4 black cherry`."""
    length: str
    """The sum of the rough length, e.g. `38 + 1 = 39`."""
    width: str
    thickness: str
    strips: str = ""
    """The sum of the width of its strips, when it is glued up."""
    note: str = ""
    """The blank it lies in, spare pieces, leaves, how it is ripped."""


class Buy(Record):
    """One line of the buying list."""

    group: Literal[
        "lumber",
        "sheets",
        "lengths",
        "fasteners",
        "hardware",
        "glue",
        "finish",
        "abrasives",
        "consumables",
        "total",
    ]
    item: str
    quantity: str
    """As bought: `23 board feet`, `2 sheets`, `36`."""
    detail: str = ""
    """What it is for, the waste in it, how it was counted."""
    source: str = ""
    cost: str = ""
    """When a price is given."""


class TakenSupply(Record):
    """How much of a supply of the rack is used, instead of being bought."""

    name: str
    quantity: float


class Placed(Record):
    """A rectangle on a board or sheet [mm]: lower left corner, size along the board and across it."""

    letter: str
    label: str
    x: float
    y: float
    length: float
    width: float


class SawCuts(Record):
    """Cuts of a layout that follow each other at one setting of fence or stop."""

    numbers: str
    """As they stand on the drawing, e.g. `3` or `3–5`."""
    saw: Literal["rip", "crosscut"]
    times: int
    setting: Size
    """From the fence or stop to the near side of the saw's cut."""
    piece: str
    """What is in hand: length × width, each size once."""
    gives: str
    """Pieces that are done with these cuts, by their label; empty when none is."""


class RackDefect(Record):
    """A rectangle that no part may touch [mm]: near corner, size along the board and across it."""

    x: float
    y: float
    length: float
    width: float
    what: str = ""


class RackPiece(Record):
    """What a board or sheet is on the rack; `name` is "" when it is bought.

    `material` is a key of the species table or a family of the sheet table, `thickness` as sold [mm], `lumber` the key
    of a board's thickness class.
    """

    name: str
    kind: Literal["board", "sheet"]
    material: str
    thickness: float
    lumber: str = ""
    defects: list[RackDefect] = Field(default_factory=list)


class Offcut(Record):
    """What is left of a board or sheet and worth keeping [mm]: lower left corner, size along it and across it.

    `name` is what is written on it; "" when its board has no name yet. Its defects are from its own corner.
    """

    name: str
    x: float
    y: float
    length: float
    width: float
    defects: list[RackDefect] = Field(default_factory=list)


class Layout(Record):
    """One board or sheet and what is cut from it."""

    id: str
    stock: str
    title: str
    length: Size
    width: Size
    kerf: Size
    placed: list[Placed]
    cutting: list[SawCuts] = Field(default_factory=list)
    """The saw's cuts in order, after the stock is trimmed to its sound wood."""
    used_share: float
    """Share of the face that goes into parts, 0 to 1."""
    drawing: str
    rack: RackPiece | None = None
    offcuts: list[Offcut] = Field(default_factory=list)


class LayoutSummary(Record):
    """What the layouts of one stock come to."""

    stock: str
    count: int
    bound: int
    """Fewest boards or sheets of this kind that could do, as far as is proven."""
    waste_share: float
    verified: bool
    text: str


class LengthPiece(Record):
    """A piece that is cut off a bar, and the letter of the part that it is for."""

    letter: str
    length: Size


class LengthBars(Record):
    """Bars that are cut alike."""

    count: int
    pieces: list[LengthPiece]
    left: Size
    """What is left of each."""


class LengthLayout(Record):
    """What is cut from bars of one kind: edging or the like."""

    title: str
    length: Size
    """Of one as bought."""
    count: int
    bound: int
    """Fewest that could do, as far as is proven."""
    verified: bool
    bars: list[LengthBars]


class Caution(Record):
    """The usual cautions for one machine or kind of work."""

    about: str
    lines: list[str]
    source: str


class PlanFinding(Record):
    """A finding, as in the terminal."""

    code: str
    severity: Literal["error", "warning", "note"]
    message: str
    where: str
    found: str
    expected: str
    source: str
    remedy: str
    count: int = 1


class PlanReason(Record):
    """Why a size is what it is."""

    path: str
    size: Size
    sum: str
    rule: str
    source: str
    given: bool


class ChainMember(Record):
    """One size of a chain; negative when it is taken off."""

    label: str
    size: Size


class PlanChain(Record):
    """Sizes that add up exactly to a whole."""

    name: str
    members: list[ChainMember]
    whole: ChainMember


class YearLimit(Record):
    """A level that a fit should keep, and what it says: `binds`, `lets go`, `least`.

    `beyond` tells on which side of it the fit fails; empty for the least that should be left.
    """

    size: Size
    says: str
    beyond: Literal["", "below", "above"] = ""


class YearFit(Record):
    """A room, a gap or a hold that changes through the year, on the day of cutting and in the twelve months.

    Sizes are computed: their texts are thousandths of an inch or hundredths of a millimetre.
    """

    what: str
    detail: str
    letters: list[str]
    as_cut: Size
    months: list[Size]
    """From January."""
    limits: list[YearLimit]
    drawing: str


class Year(Record):
    """The piece through the year: the moisture of its wood, and what that does to each moving fit."""

    place: str
    """Where the moisture stands for, and its source."""
    cut_at: float
    """Moisture on the day of cutting [%]."""
    moisture: list[float]
    """Of wood that has settled in the air of each month, from January [%]."""
    humidity: list[int]
    """Of air at 21 degrees C in which wood settles there [%]."""
    fits: list[YearFit]
    drawing: str
    """Chart of the moisture."""


class DrawingRecord(Record):
    """A drawing: entities as plain data (see docs/plan-format.md), millimetres on paper, y upwards."""

    id: str
    title: str
    scale: str
    width: float
    height: float
    entities: list[dict[str, Any]]


class Fact(Record):
    """A named fact of the whole piece, e.g. `weight`: `41 kg (90 lb)`."""

    name: str
    text: str


class Plan(Record):
    """The whole plan."""

    format: Literal["boardwright-plan/1"] = FORMAT
    title: str
    about: str = ""
    maker: str = ""
    version: str = "1"
    units: Literal["in", "mm"]
    step: Size
    """The finest step that is printed."""
    outside: dict[Literal["width", "depth", "height"], Size]
    facts: list[Fact]
    parts: list[PlanPart]
    joints: list[PlanJoint]
    joint_groups: list[JointGroup] = Field(default_factory=list)
    steps: list[BuildStep] = Field(default_factory=list)
    """Putting it together, in order; subassemblies before the step that uses them."""
    subassemblies: list[PlanSubassembly] = Field(default_factory=list)
    buy: list[Buy]
    supplies: list[TakenSupply] = Field(default_factory=list)
    layouts: list[Layout]
    layout_summaries: list[LayoutSummary]
    lengths: list[LengthLayout] = Field(default_factory=list)
    """What is cut from bars."""
    drawings: list[DrawingRecord]
    cover: str = ""
    """Id of the drawing on the cover; when empty, the first that is no part's and no layout's."""
    cautions: list[Caution]
    notes: list[str]
    year: Year | None = None
    """Only where something moves so far that it is seen."""
    allowances: list[Allowance] = Field(default_factory=list)
    rough: list[RoughLine] = Field(default_factory=list)
    """Rough sizes of the wood parts and of test pieces, with their sums."""
    findings: list[PlanFinding]
    reasons: list[PlanReason]
    chains: list[PlanChain]
    hardware: list[dict[str, Any]] = Field(default_factory=list)
    """Bought things that take room: name, box in the piece [mm]."""
