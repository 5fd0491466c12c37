"""What the stock stage takes and gives: choices of the shop, rough sizes, layouts, the buying list.

Lengths are millimetres, areas square millimetres unless said otherwise. All of it is plain data:
`dataclasses.asdict` makes it ready for JSON.
"""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.findings import Finding, Place
from boardwright.stock.instance import Rectangle
from boardwright.stock.solution import CutLine

Triple = tuple[float, float, float]
"""Length with the grain, width, thickness [mm]."""


@dataclass(frozen=True, slots=True)
class ShopChoices:
    """What the design file says of the shop; None where it says nothing.

    Attributes:
        kerf: width of the saw's cut [mm].
        sheet_trim: taken off each edge of a sheet [mm].
        strip_max: widest strip in a glue-up [mm].
        boards: boards (or sheets) on hand: stock, length [mm], width [mm], how many.
        places: path of a key (`shop.kerf`, `shop.boards[0]`) and where it stands in the file.
    """

    kerf: float | None = None
    sheet_trim: float | None = None
    strip_max: float | None = None
    boards: tuple[tuple[str, float, float, int], ...] = ()
    places: tuple[tuple[str, Place], ...] = ()

    def place(self, path: str) -> Place:
        """Where a path stands in the file; the path alone when that is not known."""
        return dict(self.places).get(path, Place(path=path))


@dataclass(frozen=True, slots=True)
class RoughPart:
    """One kind of part (one letter): what is cut for it before it is milled.

    Attributes:
        letter, name, stock: as on the piece; `stock` is the stock's id.
        parts: ids of the parts, as many as are made.
        finished: its size.
        lumber: thickness that is bought, e.g. `4/4` or `25 mm`; "" for a sheet.
        lot: id of the lot it is cut from.
        rough: size of the rough blank (of the whole panel when it is glued up); None for a sheet part, which
            is cut to size.
        length_sum, width_sum: how the rough size came about, e.g. `38 + 1 = 39`; "" for a sheet part.
        thickness_text: how the thickness is got, e.g. `4/4, 1 rough, planed to 3/4`.
        strips: strips it is glued up of; 1 when it is one board.
        strip: length and width of one piece as it is cut.
        strip_sum: how the width of a strip came about; "" when it is one board.
        ripped_from: `ripped from 1/2 stock …` when it is thinner or narrower than its stock; else "".
    """

    letter: str
    name: str
    stock: str
    parts: tuple[str, ...]
    finished: Triple
    lumber: str
    lot: str
    rough: Triple | None
    length_sum: str
    width_sum: str
    thickness_text: str
    strips: int
    strip: tuple[float, float]
    strip_sum: str = ""
    ripped_from: str = ""

    @property
    def count(self) -> int:
        """How many are made."""
        return len(self.parts)


@dataclass(frozen=True, slots=True)
class PlacedPiece:
    """A rough piece on a board or sheet.

    Attributes:
        letter, part: whose it is: letter and id of the part.
        strip, strips: which strip of how many.
        label: what stands on it, e.g. `A` or `A 2/3`.
        x, y: its near corner, from the corner of the untrimmed stock [mm].
        length, width: along and across the stock [mm].
        turned: lies with its length across the stock.
    """

    letter: str
    part: str
    strip: int
    strips: int
    label: str
    x: float
    y: float
    length: float
    width: float
    turned: bool


@dataclass(frozen=True, slots=True)
class Leftover:
    """What is left of a board or sheet. `name` is "" when it is too small to name."""

    name: str
    x: float
    y: float
    length: float
    width: float


@dataclass(frozen=True, slots=True)
class BoardLayout:
    """One board or sheet and what is cut from it.

    Attributes:
        id: e.g. `cherry.4_4.1`.
        title: e.g. `black cherry 4/4, board 1: 8 × 96 in`.
        size: which size or board on hand it is.
        length, width: as bought [mm]. trim_length, trim_width: taken off each end and edge [mm].
        placed: pieces, in rows from the near edge.
        cuts: in an order in which they can be made.
        leftovers: the largest first.
        used_share: share of its face that goes into rough pieces, 0 to 1.
    """

    id: str
    title: str
    size: str
    length: float
    width: float
    trim_length: float
    trim_width: float
    placed: tuple[PlacedPiece, ...]
    cuts: tuple[CutLine, ...]
    leftovers: tuple[Leftover, ...]
    used_share: float


@dataclass(frozen=True, slots=True)
class Tally:
    """Wood or sheet that is in the finished parts, and that is bought for them.

    Attributes:
        count: boards or sheets.
        net, bought: face areas, of the finished parts and of the boards or sheets [m2].
        net_volume, bought_volume: the same, by the rough thickness (sheets: as measured) [m3].
        net_board_feet: of the finished parts, by the rough thickness [bd ft]; None for sheets and in mm.
        bought_board_feet: by the tally of hardwood lumber, board by board [bd ft]; likewise.
        lost_share: part of what is bought that does not end in a part, 0 to 1.
        added_share: what is bought over net, as a part of net.
    """

    count: int
    net: float
    bought: float
    net_volume: float
    bought_volume: float
    net_board_feet: float | None
    bought_board_feet: float | None
    lost_share: float
    added_share: float


@dataclass(frozen=True, slots=True)
class Lot:
    """All boards of one wood and thickness, or all sheets of one stock.

    Attributes:
        id: e.g. `cherry.4_4`, `bottom`.
        stock, kind: id of the stock; `wood` or `sheet`.
        title: e.g. `black cherry 4/4`.
        sizes: how many of each size, e.g. `2 of 8 × 96 in`.
        kerf: of the saw [mm].
        layouts: one a board or sheet.
        bound: fewest boards or sheets that could do, as far as is proven.
        area_bound: least face area that could do, as far as is proven [m2].
        proven: no less area can do.
        verified: the layouts passed the check that knows no solver.
        tally: what it comes to.
        on_hand: cut from boards that the file says are there.
        assumed: what was assumed about the boards or sheets.
        text: count, bound and waste in one line.
    """

    id: str
    stock: str
    kind: str
    title: str
    sizes: tuple[str, ...]
    kerf: float
    layouts: tuple[BoardLayout, ...]
    bound: int
    area_bound: float
    proven: bool
    verified: bool
    tally: Tally
    on_hand: bool
    assumed: str
    text: str


@dataclass(frozen=True, slots=True)
class BuyLine:
    """One line of the buying list. `group` is `lumber`, `sheets`, `fasteners`, `hardware` or `glue`."""

    group: str
    item: str
    quantity: str
    detail: str = ""
    source: str = ""


@dataclass(frozen=True, slots=True)
class StockResult:
    """Everything about stock that the plan needs.

    Attributes:
        rough: one a letter, in the order of the letters.
        lots: layouts, wood first.
        buy: the buying list.
        rules: allowances and rules that were used, one line each.
        glue_area: faces that are glued, one side counted [mm2].
    """

    rough: tuple[RoughPart, ...]
    lots: tuple[Lot, ...]
    buy: tuple[BuyLine, ...]
    rules: tuple[str, ...]
    glue_area: float


@dataclass(frozen=True, slots=True)
class Result:
    """The stage's value and its findings."""

    value: StockResult
    findings: list[Finding]


def rectangle_area(r: Rectangle) -> float:
    """Area of a rectangle [mm2]."""
    return (r.x1 - r.x0) * (r.y1 - r.y0)
