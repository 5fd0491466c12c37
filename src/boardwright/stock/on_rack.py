"""Parts laid on what is on the rack: which of its pieces a lot can use, and what they count."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from boardwright.core.rack import Defect, RackPiece
from boardwright.piece.records import Stock
from boardwright.stock.clear import clear_pieces
from boardwright.stock.instance import Instance, Rectangle, StockSize
from boardwright.stock.rack_bound import rack_bound
from boardwright.stock.slicing import Box
from boardwright.stock.solution import COST_TOLERANCE, Answer
from boardwright.stock.units import to_units
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
    """A piece of the rack, and it as a size of stock with its defects."""

    piece: RackPiece
    whole: StockSize


def _stock(piece: RackPiece, end: float, edge: float) -> StockSize:
    """A piece of the rack as a size of stock, trimmed so much at each end and each edge [mm]."""
    cost = round(WORTH * (piece.length * piece.width / 1e6 + OPENED), 6)
    marks = tuple(Rectangle(d.x, d.y, d.x + d.length, d.y + d.width) for d in piece.defects)
    return StockSize(f"rack {piece.name}", piece.length, piece.width, 1, cost, end, edge, marks)


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
        whole = _stock(piece, end, edge)
        boxes = [_box(d) for d in piece.defects]
        small = (to_units(least[0]), to_units(least[1]))
        if clear_pieces(_room(whole), boxes, to_units(kerf), small).pieces:
            found.append(OnRack(piece, whole))
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
    own = tuple(on.whole for on in rack)
    return replace(instance, stocks=(*own, *instance.stocks)) if own else instance


def rack_first(instance: Instance, answer: Answer, rack: Sequence[OnRack]) -> tuple[Answer, list[str]]:
    """The answer with the boards of the rack first, in its order, and with a bound that counts how few there are.

    Args:
        instance: the question, as from `with_rack`.
        answer: to it.
        rack: the pieces.

    Returns:
        The answer; and what is wrong with the bound.
    """
    if not rack:
        return answer, []
    order = {on.whole.id: n for n, on in enumerate(rack)}
    bins = sorted(answer.bins, key=lambda b: order.get(b.stock_id, len(order)))
    least = answer.lower_bound if answer.unplaced else max(answer.lower_bound, rack_bound(instance))
    slack = COST_TOLERANCE * max(1.0, answer.cost)
    above = least > answer.cost + slack
    return replace(
        answer,
        bins=tuple(bins),
        lower_bound=least,
        proven=not answer.unplaced and least >= answer.cost - slack,
    ), [f"the bound {least:g} is above the cost {answer.cost:g}"] if above else []
