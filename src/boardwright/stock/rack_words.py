"""What the plan says of the rack: names of boards and offcuts, what is bought besides, what is odd about it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from boardwright.core.findings import Finding, Place, Severity
from boardwright.core.lengths import INCH, Printer
from boardwright.core.rack import Defect, Rack, RackPiece
from boardwright.piece.records import Piece
from boardwright.stock.clear import clear_pieces
from boardwright.stock.on_rack import WORTH, OnRack
from boardwright.stock.records import BoardLayout, Leftover, Lot, Tally
from boardwright.stock.solution import Answer
from boardwright.stock.units import to_units
from boardwright.stock.wording import percent, sold

WORTH_NAMING = (12 * INCH, 3 * INCH)
"""Least length and width of a leftover that is worth a name [mm]: the 12 in and 3 in rule of the trade."""
WETTER = 2.0
"""Boards whose moisture differs from what the piece is figured with by more than this are pointed out [%]
(common practice)."""
THICKER = 0.25
"""The same for the measured thickness of a sheet [mm]: half a step of a sliding fit (own choice)."""


def on_the_rack(
    layouts: Sequence[BoardLayout],
    rack: Sequence[OnRack],
    kind: RackPiece | None,
    title: str,
    marks: Mapping[str, tuple[Defect, ...]],
) -> tuple[BoardLayout, ...]:
    """Layouts with what each board is on the rack, and names for its offcuts.

    Args:
        layouts: of a lot.
        rack: pieces that were to be had.
        kind: what a board of the lot is when it is bought.
        title: of the lot.
        marks: defects of boards on hand, by the id of their size.
    """
    named = {on.whole.id: on.piece for on in rack}
    out = []
    for board in layouts:
        piece = named.get(board.size)
        if piece is not None:
            size = board.title.rpartition(": ")[2]
            left = _named(board.leftovers, piece, f"{piece.name}-")
            at = f"{title}, {piece.name} of the rack: {size}"
            board = replace(board, title=at, leftovers=left, piece=piece)
        elif kind is not None:
            own = replace(kind, length=board.length, width=board.width, defects=marks.get(board.size, ()))
            board = replace(board, leftovers=_named(board.leftovers, own, "leftover "), piece=own)
        out.append(board)
    return tuple(out)


def _named(leftovers: Sequence[Leftover], piece: RackPiece, head: str) -> tuple[Leftover, ...]:
    """Leftovers numbered after a head; one with defects must have a clear piece in it that is worth a name."""
    out = []
    number = 0
    for left in leftovers:
        keep = left.name and _clear_enough(left, defects_in(left, piece))
        number += bool(keep)
        out.append(replace(left, name=f"{head}{number}" if keep else ""))
    return tuple(out)


def _clear_enough(left: Leftover, marks: Sequence[Defect]) -> bool:
    if not marks:
        return True
    boxes = [(to_units(d.x), to_units(d.y), to_units(d.x + d.length), to_units(d.y + d.width)) for d in marks]
    room = (0, 0, to_units(left.length), to_units(left.width))
    least = (to_units(WORTH_NAMING[0]), to_units(WORTH_NAMING[1]))
    return bool(clear_pieces(room, boxes, 0, least).pieces)


def defects_in(left: Leftover, piece: RackPiece) -> tuple[Defect, ...]:
    """The defects of a board as far as they lie in a leftover, from the leftover's own corner."""
    found = []
    for d in piece.defects:
        x0, y0 = max(d.x, left.x), max(d.y, left.y)
        x1, y1 = min(d.x + d.length, left.x + left.length), min(d.y + d.width, left.y + left.width)
        if x1 - x0 > 1e-6 and y1 - y0 > 1e-6:
            found.append(Defect(x0 - left.x, y0 - left.y, x1 - x0, y1 - y0, d.what))
    return tuple(found)


def rack_text(layouts: Sequence[BoardLayout], answer: Answer, what: Tally) -> str:
    """What a lot comes to when there was a rack: from it, bought, bound and waste in one line."""
    if not layouts:
        return "nothing takes any of it"
    own = sum(1 for b in layouts if b.from_rack)
    bought = len(layouts) - own
    bound = "no layout comes to less"
    if not answer.proven:
        over = percent(answer.cost / answer.lower_bound - 1) if answer.lower_bound > 0 else "an unknown share"
        bound = f"at most {over} over the least there can be"
    return (
        f"{own} from the rack, {bought} bought ({bound}, the rack's wood counted at {WORTH:g} of what is bought); "
        f"{percent(what.lost_share)} of the face does not end in a part"
    )


def split_tally(
    layouts: Sequence[BoardLayout],
    tally: Callable[[Sequence[tuple[float, float]]], Tally],
    whole: Tally,
    asked: bool,
) -> tuple[Tally | None, Tally | None]:
    """What of a lot comes from the rack and what is bought; None, None when there was no rack.

    Args:
        layouts: of the lot.
        tally: what boards of given length and width come to, with all parts of the lot.
        whole: what the lot comes to.
        asked: whether there was a rack.
    """
    if not asked:
        return None, None
    total = _placed(layouts)
    shares = []
    for own in (True, False):
        boards = [b for b in layouts if b.from_rack is own]
        part = tally([(b.length, b.width) for b in boards])
        share = _placed(boards) / total if total else 0.0
        net = whole.net * share
        feet = None if whole.net_board_feet is None else whole.net_board_feet * share
        shares.append(
            replace(
                part, net=net, net_volume=whole.net_volume * share, net_board_feet=feet,
                lost_share=1 - net / part.bought if part.bought else 0.0,
                added_share=part.bought / net - 1 if net else 0.0,
            )
        )  # fmt: skip
    return shares[0], shares[1]


def of_each_size(layouts: Sequence[BoardLayout], printer: Printer) -> tuple[str, ...]:
    """How many boards there are of each size: `2 of 8 × 96 in`."""
    count = Counter((b.width, b.length) for b in layouts)
    return tuple(f"{n} of {sold(printer.units, *size)}" for size, n in sorted(count.items()))


def _placed(layouts: Sequence[BoardLayout]) -> float:
    return sum(p.length * p.width for b in layouts for p in b.placed)


def as_bought(lots: Sequence[Lot], printer: Printer) -> list[Lot]:
    """Lots as the buying list takes them: what comes from the rack apart from what is bought.

    Args:
        lots: as laid out.
        printer: of the plan.
    """
    out = []
    for lot in lots:
        if lot.from_rack is None or lot.bought is None:
            out.append(lot)
            continue
        own = tuple(b for b in lot.layouts if b.from_rack)
        rest = tuple(b for b in lot.layouts if not b.from_rack)
        names = ", ".join(b.piece.name for b in own if b.piece is not None)
        if own:
            there = f"on the rack: {names}"
            size = of_each_size(own, printer)
            tally = lot.from_rack
            out.append(replace(lot, layouts=own, sizes=size, tally=tally, on_hand=True, assumed=there))
        if rest:
            out.append(replace(lot, layouts=rest, sizes=of_each_size(rest, printer), tally=lot.bought))
    return out


def rack_findings(rack: Rack | None, lots: Sequence[Lot], piece: Piece, printer: Printer) -> list[Finding]:
    """What is odd about the pieces of the rack that are used.

    Args:
        rack: of the shop.
        lots: as laid out.
        piece: its moisture, its stocks.
        printer: of the plan.
    """
    if rack is None:
        return []
    found = []
    stocks = {p.stock.id: p.stock for p in piece.parts}
    for lot in lots:
        for board in lot.layouts:
            own = board.piece
            if own is None or not own.name:
                continue
            if (
                own.moisture is not None
                and abs(own.moisture - piece.moisture.now) > WETTER
                and own.kind == "board"
            ):
                found.append(_moisture(own, piece.moisture.now))
            thickness = stocks[lot.stock].thickness
            if own.kind == "sheet" and own.measured and abs(own.measured - thickness) > THICKER:
                found.append(_thickness(own, thickness, lot.stock, printer))
    return found


def _moisture(own: RackPiece, now: float) -> Finding:
    wetter = "wetter" if own.moisture is not None and own.moisture > now else "drier"
    return Finding(
        "rack.moisture", Severity.WARNING, f"{own.name} of the rack is {wetter} than the piece is figured with",
        Place(path=f"rack {own.name}"), f"{own.moisture:g} %", f"{now:g} % within {WETTER:g} %", "common practice",
        "let it settle in the shop and measure again, or give `wood_moisture: {now: ...}` as it is",
    )  # fmt: skip


def _thickness(own: RackPiece, thickness: float, stock: str, printer: Printer) -> Finding:
    measured = printer.auxiliary(own.measured or 0.0)
    return Finding(
        "rack.thickness", Severity.WARNING, f"{own.name} of the rack is not as thick as the piece is figured with",
        Place(path=f"rack {own.name}"), measured,
        f"{printer.auxiliary(thickness)} {printer.units} (`stock.{stock}`)",
        remedy=f"give `measured: {measured.strip('()')}` for `{stock}`, and make the plan again",
    )  # fmt: skip
