"""Parts laid on what is on the rack: which of its pieces a lot can use, and their layouts made whole again."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import ceil

from boardwright.core.rack import Defect, RackPiece
from boardwright.piece.records import Stock
from boardwright.stock.clear import Clearing, Split, clear_pieces, halves, overlap
from boardwright.stock.instance import Axis, Instance, Rectangle, StockSize
from boardwright.stock.rack_bound import rack_bound
from boardwright.stock.saw_order import in_order
from boardwright.stock.slicing import Box
from boardwright.stock.solution import COST_TOLERANCE, Answer, Bin, CutLine
from boardwright.stock.units import to_mm, to_units
from boardwright.stock.verify import bin_faults
from boardwright.tables.bundle import NOMINAL_MATCH, Tables
from boardwright.tables.records import LumberClass

WORTH = 0.125
"""A square metre of the rack counts as much as this of one that is bought, so that the rack is used first."""
OPENED = 0.05
"""Each piece of the rack that is cut counts as so much more of its area [m2], so that few are opened."""
MOST = 60
"""Most pieces of the rack that are tried for one lot: half of them the smallest, to use them up, half the largest."""


@dataclass(frozen=True, slots=True)
class OnRack:
    """A piece of the rack as parts are laid on it.

    Attributes:
        piece: of the rack.
        whole: it, as a size of stock.
        clearing: how it is cut clear of its defects first; None when it has none.
    """

    piece: RackPiece
    whole: StockSize
    clearing: Clearing | None = None

    @property
    def sizes(self) -> tuple[StockSize, ...]:
        """What parts are laid on: the piece, or its clear pieces."""
        if self.clearing is None:
            return (self.whole,)
        return tuple(
            _priced(f"{self.whole.id} clear {n}", to_mm(box[2] - box[0]), to_mm(box[3] - box[1]))
            for n, box in enumerate(self.clearing.pieces, 1)
        )


def _priced(id: str, length: float, width: float, trims: tuple[float, float] = (0.0, 0.0)) -> StockSize:
    return StockSize(id, length, width, 1, round(WORTH * (length * width / 1e6 + OPENED), 6), *trims)


def serves(piece: RackPiece, stock: Stock, lumber: LumberClass | None, planed: float, tables: Tables) -> bool:
    """Whether parts of a stock can be cut from a piece of the rack.

    Args:
        piece: of the rack.
        stock: of the parts.
        lumber: thickness that would be bought for them; None for sheets.
        planed: thickness that boards for them are planed to [mm].
        tables: thickness classes, families of sheets.

    Returns:
        True for the same wood in the same class (or the class of the other system that is bought for the same
        thickness), and for the same sheet in the same nominal thickness.
    """
    if piece.kind != ("board" if stock.kind == "wood" else "sheet"):
        return False
    if piece.kind == "sheet":
        row = tables.sheets.get(stock.table_key)
        family = row.family if row else stock.table_key
        return piece.material == family and abs(piece.thickness - stock.nominal) <= NOMINAL_MATCH
    if piece.material != stock.table_key or lumber is None:
        return False
    own = tables.lumber.get(piece.lumber)
    if own is None or own.system == lumber.system:
        return own is not None and own.key == lumber.key
    return tables.class_for(planed, own.system) == own


def usable(
    pieces: Sequence[RackPiece],
    trims: tuple[float, float],
    least: tuple[float, float],
    kerf: float,
) -> tuple[OnRack, ...]:
    """Pieces of the rack as sizes of stock; those that take not even the smallest part are left out.

    Args:
        pieces: that serve.
        trims: taken off each end and each edge [mm]; the ends of an offcut were cut already, and so were the
            edges of an offcut of a sheet.
        least: length and width of the smallest part [mm].
        kerf: the saw's cut [mm].
    """

    def trimmed(piece: RackPiece) -> tuple[RackPiece, float, float]:
        end = 0.0 if piece.cut_from else trims[0]
        return piece, end, 0.0 if piece.cut_from and piece.kind == "sheet" else trims[1]

    def takes(piece: RackPiece, end: float, edge: float) -> bool:
        room = (piece.length - 2 * end, piece.width - 2 * edge)
        return room[0] >= least[0] - 1e-6 and room[1] >= least[1] - 1e-6

    found = []
    for piece, end, edge in _few([p for p in map(trimmed, pieces) if takes(*p)]):
        whole = _priced(f"rack {piece.name}", piece.length, piece.width, (end, edge))
        room = _room(whole)
        marks = [m for m in (_box(d) for d in piece.defects) if overlap(m, room)]
        if not marks:
            found.append(OnRack(piece, whole))
            continue
        clearing = clear_pieces(room, marks, to_units(kerf), (to_units(least[0]), to_units(least[1])))
        if clearing.pieces:
            found.append(OnRack(piece, whole, clearing))
    return tuple(found)


def _few(there: Sequence[tuple[RackPiece, float, float]]) -> list[tuple[RackPiece, float, float]]:
    """No more pieces than are tried, in the order in which they came."""
    order = sorted(range(len(there)), key=lambda n: (there[n][0].length * there[n][0].width, n))
    kept = order if len(order) <= MOST else order[: MOST // 2] + order[-MOST // 2 :]
    return [there[n] for n in sorted(kept)]


def _room(size: StockSize) -> Box:
    end, edge = to_units(size.trim_length), to_units(size.trim_width)
    return end, edge, to_units(size.length) - end, to_units(size.width) - edge


def _box(d: Defect) -> Box:
    return to_units(d.x), to_units(d.y), to_units(d.x + d.length), to_units(d.y + d.width)


def with_rack(instance: Instance, rack: Sequence[OnRack]) -> Instance:
    """The question with the rack's pieces before what can be bought."""
    own = tuple(size for on in rack for size in on.sizes)
    return replace(instance, stocks=(*own, *instance.stocks)) if own else instance


def joined(instance: Instance, answer: Answer, rack: Sequence[OnRack]) -> tuple[Answer, list[str]]:
    """The answer with the clear pieces of each board of the rack joined to that board again.

    Args:
        instance: the question, as from `with_rack`.
        answer: to it.
        rack: the pieces.

    Returns:
        The answer, boards of the rack first; and what the check of the joined boards finds wrong.
    """
    if not rack:
        return answer, []
    bins = {b.stock_id: b for b in answer.bins}
    whole: list[Bin] = []
    faults: list[str] = []
    mine: set[str] = set()
    for on in rack:
        cut = [bins.get(s.id) for s in on.sizes]
        mine.update(s.id for s in on.sizes)
        if not any(cut):
            continue
        if on.clearing:
            made = in_order(_join(on, cut, to_units(instance.kerf)), instance.kerf)
        else:
            [made] = [c for c in cut if c is not None]
        whole.append(made)
        faults += [f"{on.whole.id}: {fault}" for fault in _faults(instance, on, made)]
    bought = [b for b in answer.bins if b.stock_id not in mine]
    most = max(len(on.sizes) for on in rack)
    least = answer.lower_bound if answer.unplaced else max(answer.lower_bound, rack_bound(instance))
    slack = COST_TOLERANCE * max(1.0, answer.cost)
    if least > answer.cost + slack:
        faults.append(f"the bound {least:g} is above the cost {answer.cost:g}")
    return replace(
        answer,
        bins=(*whole, *bought),
        bins_bound=ceil(answer.bins_bound / most),
        lower_bound=least,
        proven=not answer.unplaced and least >= answer.cost - slack,
    ), faults


def _faults(instance: Instance, on: OnRack, made: Bin) -> list[str]:
    """The check of one board of the rack: as any board, and nothing on a defect."""
    free = replace(instance, stages=None, first_cut="any") if on.clearing else instance
    faults = list(bin_faults(free, on.whole, made))
    marks = [_box(d) for d in on.piece.defects]
    for p in made.placed:
        box = (to_units(p.x), to_units(p.y), to_units(p.x + p.length), to_units(p.y + p.width))
        if any(overlap(box, mark) for mark in marks):
            faults.append(f"{p.item_id} copy {p.copy} lies on a defect")
    return faults


class _Cutter:
    """Numbers the cuts of a board by stages as they follow each other."""

    def __init__(self, full: Box) -> None:
        self.stage: dict[Box, int] = {full: 0}
        self.cuts: list[CutLine] = []
        self.first = -1

    def cut(
        self, piece: Box, along: int, position: int, kerf: int, trimming: bool, trim: bool = False
    ) -> None:
        """Make a cut, and note what stage its halves come from."""
        made_in = self.stage.pop(piece)
        stage = 0 if trim else max(1, made_in)
        if not trim and not trimming:
            if self.first < 0:
                self.first = along
            if (stage % 2 == 1) != (along == self.first):
                stage += 1
        axis: Axis = "crosscut" if along == 0 else "rip"
        self.cuts.append(CutLine(axis, to_mm(position), _rectangle(piece), stage, trimming or trim))
        for half in halves(piece, along, position, kerf):
            if half is not None:
                self.stage[half] = stage


def _rectangle(box: Box) -> Rectangle:
    return Rectangle(to_mm(box[0]), to_mm(box[1]), to_mm(box[2]), to_mm(box[3]))


def _join(on: OnRack, cut: Sequence[Bin | None], kerf: int) -> Bin:
    """The board with the cuts that clear it, then those of each clear piece, moved to its place."""
    assert on.clearing is not None
    full = (0, 0, to_units(on.whole.length), to_units(on.whole.width))
    saw = _Cutter(full)
    _trim(saw, full, _room(on.whole), kerf)
    used = {box: b for box, b in zip(on.clearing.pieces, cut, strict=True) if b is not None}
    for split in _needed(on.clearing.splits, list(used)):
        saw.cut(split.piece, split.along, split.position, kerf, trimming=False)
    placed = []
    for box, b in used.items():
        for c in b.cuts:
            piece = tuple(to_units(v) for v in (c.piece.x0, c.piece.y0, c.piece.x1, c.piece.y1))
            moved = (piece[0] + box[0], piece[1] + box[1], piece[2] + box[0], piece[3] + box[1])
            along = 0 if c.axis == "crosscut" else 1
            saw.cut(moved, along, to_units(c.position) + box[along], kerf, c.trimming)
        placed += [
            replace(p, x=to_mm(to_units(p.x) + box[0]), y=to_mm(to_units(p.y) + box[1])) for p in b.placed
        ]
    parts = {
        (to_units(p.x), to_units(p.y), to_units(p.x) + to_units(p.length), to_units(p.y) + to_units(p.width))
        for p in placed
    }
    left = sorted(
        (box for box in saw.stage if box not in parts),
        key=lambda r: (-(r[2] - r[0]) * (r[3] - r[1]), r),
    )
    return Bin(on.whole.id, tuple(placed), tuple(saw.cuts), tuple(_rectangle(r) for r in left))


def _needed(splits: Sequence[Split], used: Sequence[Box]) -> list[Split]:
    """The cuts that clear a piece that is used; the rest of the board stays as it is."""
    return [s for s in splits if any(overlap(s.piece, box) for box in used)]


def _trim(saw: _Cutter, full: Box, room: Box, kerf: int) -> None:
    """Both edges, then both ends, as far as they are trimmed."""
    piece = full
    for along in (1, 0):
        if room[along] == full[along]:
            continue
        saw.cut(piece, along, room[along] - kerf, kerf, trimming=True, trim=True)
        rest = list(piece)
        rest[along] = room[along]
        piece = (rest[0], rest[1], rest[2], rest[3])
        saw.cut(piece, along, room[along + 2], kerf, trimming=True, trim=True)
        rest[along + 2] = room[along + 2]
        piece = (rest[0], rest[1], rest[2], rest[3])
