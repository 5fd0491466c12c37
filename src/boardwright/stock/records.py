"""What the stock stage takes and gives: choices of the shop, rough sizes, layouts, the buying list.

Lengths are millimetres, areas square millimetres unless said otherwise. All of it is plain data:
`dataclasses.asdict` makes it ready for JSON.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from boardwright.core.findings import Finding, Place
from boardwright.core.rack import Defect, Rack, RackPiece
from boardwright.stock.instance import Rectangle
from boardwright.stock.solution import CutLine

Triple = tuple[float, float, float]
"""Length with the grain, width, thickness [mm]."""


Match = Literal["", "sequence", "book", "around"]
"""Parts of one board, end to end as they stand in the piece; of two leaves of one board; end to end round a box."""


@dataclass(frozen=True, slots=True)
class PartWish:
    """What is wanted of some parts when they are taken from boards.

    Attributes:
        path: where it stands in the file, e.g. `rough[0]`.
        parts: names of parts, as in the file or as on the plan, or letters.
        matched: how their grain goes on from one to the next.
        longer, wider: what they get over, to be trimmed later [mm].
        spare: more of them than are used.
    """

    path: str
    parts: tuple[str, ...]
    matched: Match = ""
    longer: float = 0.0
    wider: float = 0.0
    spare: int = 0


@dataclass(frozen=True, slots=True)
class ShopChoices:
    """What the design file says of the shop; None where it says nothing.

    Attributes:
        kerf: width of the saw's cut [mm].
        sheet_trim: taken off each edge of a sheet [mm].
        strip_max: widest strip in a glue-up [mm].
        boards: boards (or sheets) on hand: stock, length [mm], width [mm], how many.
        defects: those of each of `boards`, in its order; empty when all are clear.
        allowances: those the shop gives, by key of `shop.allowances` [mm].
        strip_min: narrowest strip in a glue-up [mm].
        machine_least: shortest piece for the jointer and the planer [mm].
        test_pieces: pieces for trying set-ups, of each thickness with joints.
        grade: key of the grade of lumber that is bought.
        finish: key of the finish, or "". coats: how many, when the file says.
        prices: name of a stock or of a line, price, of what.
        sheets: sizes of sheet that can be bought besides: stock, length [mm], width [mm], price of one.
        bark_sides: how strips of a panel are turned: `alternate`, `same` or `any`.
        wishes: what is wanted of some parts.
        places: path of a key (`shop.kerf`, `shop.boards[0]`) and where it stands in the file.
        rack: what is on the shop's rack; None when no rack was named.
    """

    kerf: float | None = None
    sheet_trim: float | None = None
    strip_max: float | None = None
    boards: tuple[tuple[str, float, float, int], ...] = ()
    allowances: tuple[tuple[str, float], ...] = ()
    strip_min: float | None = None
    machine_least: float | None = None
    test_pieces: int | None = None
    bark_sides: str = "alternate"
    grade: str = "fas"
    finish: str = ""
    coats: int | None = None
    prices: tuple[tuple[str, float, str], ...] = ()
    wishes: tuple[PartWish, ...] = ()
    places: tuple[tuple[str, Place], ...] = ()
    rack: Rack | None = None
    sheets: tuple[tuple[str, float, float, float], ...] = ()
    defects: tuple[tuple[Defect, ...], ...] = ()

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
        thickness_sum: how the thickness that is bought came about, e.g. `3/4 + 1/8 = 7/8`; "" for a sheet part.
        planed: thickness that its pieces are planed to; strips of a glue-up keep some for flattening.
        leaves: leaves that each piece is resawn into; 1 when it is not resawn.
        spare: more of it than are used.
        blank: how it is cut in one piece with others; "" when it is cut alone.
        panels: widths of the strips of each part (spare ones last), as they are cut, from the reference edge; empty
            when all are as `strip` says.
        joints: where the joints of each panel lie, in words.
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
    thickness_sum: str = ""
    planed: float = 0.0
    leaves: int = 1
    spare: int = 0
    blank: str = ""
    panels: tuple[tuple[float, ...], ...] = ()
    joints: tuple[str, ...] = ()

    @property
    def count(self) -> int:
        """How many are made."""
        return len(self.parts)


@dataclass(frozen=True, slots=True)
class Blank:
    """A piece that is cut from a board and milled whole, then cut apart.

    Attributes:
        id: e.g. `cherry.4_4 blank 1`.
        lot: id of the lot it is cut from.
        length, width: as it is cut from the board [mm].
        pieces: rough pieces in it from its near end: letter, id of the part, number of the strip.
        why: `short`, or how they are matched.
        sum: how the length came about.
    """

    id: str
    lot: str
    length: float
    width: float
    pieces: tuple[tuple[str, str, int], ...]
    why: str
    sum: str


@dataclass(frozen=True, slots=True)
class PlacedPiece:
    """A rough piece on a board or sheet.

    Attributes:
        blank: id of the blank it is cut from after milling; "" when it is cut alone.
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
    blank: str = ""


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
        piece: what it is on the rack; its name is "" when it is bought. None before that is known.
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
    piece: RackPiece | None = None

    @property
    def from_rack(self) -> bool:
        """True when it is on the rack already."""
        return self.piece is not None and self.piece.name != ""


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
        cost_bound: least cost that could do, as far as is proven: face area [m2] where no prices of sizes are given.
        proven: no less area can do.
        verified: the layouts passed the check that knows no solver.
        tally: what it comes to.
        on_hand: cut from boards that the file says are there.
        assumed: what was assumed about the boards or sheets.
        text: count, bound and waste in one line.
        from_rack, bought: what comes from the rack and what is bought, where both were to be had.
        sold: what it is on a rack, before it has a name and a size; None before that is known.
        to_size: it is bought cut to size, so there is nothing to lay out.
    """

    id: str
    stock: str
    kind: str
    title: str
    sizes: tuple[str, ...]
    kerf: float
    layouts: tuple[BoardLayout, ...]
    bound: int
    cost_bound: float
    proven: bool
    verified: bool
    tally: Tally
    on_hand: bool
    assumed: str
    text: str
    from_rack: Tally | None = None
    bought: Tally | None = None
    sold: RackPiece | None = None
    to_size: bool = False


@dataclass(frozen=True, slots=True)
class BuyLine:
    """One line of the buying list.

    Attributes:
        group: kind of supplier: `lumber`, `sheets`, `lengths`, `fasteners`, `hardware`, `glue`, `finish`, `abrasives`,
            `consumables`; `total` for the sum of the costs.
        item: what it is. quantity: as bought.
        detail: what it is for, in a few words. source: where the figure comes from.
        cost: when a price is given.
        supply: name of a supply of the rack. taken: how much of it is used instead of being bought.
    """

    group: str
    item: str
    quantity: str
    detail: str = ""
    source: str = ""
    cost: str = ""
    supply: str = ""
    taken: int = 0


@dataclass(frozen=True, slots=True)
class BarCuts:
    """Bars that are cut alike.

    Attributes:
        count: how many.
        pieces: letter of the part that each piece is for, and its length [mm], as they are cut off.
        left: what is left of each [mm].
    """

    count: int
    pieces: tuple[tuple[str, float], ...]
    left: float


@dataclass(frozen=True, slots=True)
class BarLot:
    """All bars of one kind: edging or the like, sold by the length.

    Attributes:
        title: what it is.
        length: of one as bought [mm].
        bars: those that are cut alike together, the fullest first.
        bound: fewest that could do, as far as is proven.
        verified: the cuts passed the check that knows no solver.
    """

    title: str
    length: float
    bars: tuple[BarCuts, ...]
    bound: int
    verified: bool

    @property
    def count(self) -> int:
        """How many are bought."""
        return sum(b.count for b in self.bars)


@dataclass(frozen=True, slots=True)
class StockResult:
    """Everything about stock that the plan needs.

    Attributes:
        rough: one a letter, in the order of the letters.
        lots: layouts, wood first.
        buy: the buying list.
        rules: allowances and rules that were used, one line each.
        glue_area: faces that are glued, one side counted [mm2].
        cost: what the buying list comes to by the rack's prices; "" when it has none.
        blanks: pieces that are milled whole and then cut apart.
        trials: pieces for trying set-ups, one entry a thickness; those with a `blank` come from what is left.
        lengths: what is cut from bars.
    """

    rough: tuple[RoughPart, ...]
    lots: tuple[Lot, ...]
    buy: tuple[BuyLine, ...]
    rules: tuple[str, ...]
    glue_area: float
    cost: str = ""
    blanks: tuple[Blank, ...] = ()
    trials: tuple[RoughPart, ...] = ()
    lengths: tuple[BarLot, ...] = ()


@dataclass(frozen=True, slots=True)
class Result:
    """The stage's value and its findings."""

    value: StockResult
    findings: list[Finding]


def rectangle_area(r: Rectangle) -> float:
    """Area of a rectangle [mm2]."""
    return (r.x1 - r.x0) * (r.y1 - r.y0)
