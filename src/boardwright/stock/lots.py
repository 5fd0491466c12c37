"""One lot laid out: every piece of one wood and thickness, or of one sheet, on boards or sheets."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from boardwright.core.findings import Finding, Severity
from boardwright.core.lengths import INCH, Printer
from boardwright.piece.records import Stock
from boardwright.stock.boards import board_instance, lay_out_boards
from boardwright.stock.instance import Instance, Item, StockSize, problems
from boardwright.stock.records import (
    BoardLayout,
    Leftover,
    Lot,
    PlacedPiece,
    RoughPart,
    Tally,
    rectangle_area,
)
from boardwright.stock.sheets import lay_out_sheets
from boardwright.stock.solution import NO_STOCK_LEFT, Answer, Bin
from boardwright.stock.verify import verify
from boardwright.stock.wording import counted, percent, sold

EFFORT = 0.15
"""How long each lot is tried; about a second for the pieces of a chest of drawers."""
WORTH_NAMING = (12 * INCH, 3 * INCH)
"""Least length and width of a leftover that is worth a name [mm]: the 12 in and 3 in rule of the trade."""

Wanted = tuple[RoughPart, str, int]
"""A piece to be cut: for which kind of part, for which part, which strip of it."""


@dataclass(frozen=True, slots=True)
class LotRequest:
    """What is to be laid out.

    Attributes:
        id, title: of the lot.
        stock: wood or sheet.
        parts: kinds of parts that are cut from it.
        sizes: boards or sheets that can be had.
        kerf: of the saw [mm].
        on_hand: the sizes are the shop's own.
        assumed: what was assumed about them.
    """

    id: str
    title: str
    stock: Stock
    parts: tuple[RoughPart, ...]
    sizes: tuple[StockSize, ...]
    kerf: float
    on_hand: bool
    assumed: str


def lay_out(
    request: LotRequest,
    tally: Callable[[Sequence[tuple[float, float]]], Tally],
    printer: Printer,
    stop: Callable[[], bool],
    progress: Callable[[str], None] = lambda _: None,
) -> tuple[Lot, list[Finding]]:
    """Lay a lot out, check it, and say what it comes to.

    Args:
        request: what is to be laid out.
        tally: what boards or sheets of given length and width come to.
        printer: prints sizes of the plan.
        stop: when it says True, the best layout so far is taken.
        progress: told of every better layout.

    Returns:
        The lot; errors where a piece fits nowhere, or the check found a fault.
    """
    instance, queues = _question(request)
    lay = lay_out_boards if request.stock.kind == "wood" else lay_out_sheets
    faults = problems(instance)
    if faults:
        answer = Answer((), (), 0.0, 0.0, 0, False, "", 0, 0)
    else:
        answer = lay(
            instance, effort=EFFORT, stop=stop, progress=lambda text: progress(f"{request.title}: {text}")
        )
        faults = verify(instance, answer)
    layouts = _layouts(request, answer, queues, printer)
    findings = [_invalid(request, faults)] if faults else []
    findings += _unplaced(request, queues, answer, printer)
    what = tally([(b.length, b.width) for b in layouts])
    lot = Lot(
        request.id,
        request.stock.id,
        request.stock.kind,
        request.title,
        _sizes(layouts, printer),
        request.kerf,
        layouts,
        answer.bins_bound,
        answer.lower_bound,
        answer.proven,
        not faults,
        what,
        request.on_hand,
        request.assumed,
        _text(request, answer, what),
    )
    return lot, findings


def _question(request: LotRequest) -> tuple[Instance, dict[str, list[Wanted]]]:
    """The question for the layout engine, equal sizes as one item; and the pieces of each item in order."""
    groups: dict[tuple[float, float], list[Wanted]] = {}
    for part in request.parts:
        pieces = [(part, id, strip) for id in part.parts for strip in range(1, part.strips + 1)]
        groups.setdefault(part.strip, []).extend(pieces)
    turnable = request.stock.kind == "sheet" and not request.stock.grain
    queues = {" ".join(dict.fromkeys(w[0].letter for w in g)): g for g in groups.values()}
    items = tuple(Item(name, *g[0][0].strip, len(g), turnable) for name, g in queues.items())
    if request.stock.kind == "wood":
        return board_instance(items, request.sizes, request.kerf), queues
    return Instance(items, request.sizes, request.kerf), queues


def _layouts(
    request: LotRequest, answer: Answer, queues: dict[str, list[Wanted]], printer: Printer
) -> tuple[BoardLayout, ...]:
    """The boards with the pieces' names; what stays in the queues is on none of them."""
    sizes = {s.id: s for s in request.sizes}
    noun = "board" if request.stock.kind == "wood" else "sheet"
    layouts = []
    for n, cut_from in enumerate(answer.bins, 1):
        size = sizes[cut_from.stock_id]
        placed = _named(cut_from, queues)
        shown = sold(printer.units, size.width, size.length)
        used = sum(p.length * p.width for p in placed) / (size.length * size.width)
        layouts.append(
            BoardLayout(
                f"{request.id}.{n}", f"{request.title}, {noun} {n}: {shown}", size.id, size.length,
                size.width, size.trim_length, size.trim_width, placed, cut_from.cuts,
                _leftovers(cut_from), used,
            )
        )  # fmt: skip
    return tuple(layouts)


def _named(cut_from: Bin, queues: dict[str, list[Wanted]]) -> tuple[PlacedPiece, ...]:
    """Pieces from the near edge up.

    Copies of an item are alike, so they are named as they lie: strips of one part come from one board as far
    as can be.
    """
    placed = []
    for p in sorted(cut_from.placed, key=lambda p: (p.y, p.x)):
        part, id, strip = queues[p.item_id].pop(0)
        label = f"{part.letter} {strip}/{part.strips}" if part.strips > 1 else part.letter
        placed.append(
            PlacedPiece(part.letter, id, strip, part.strips, label, p.x, p.y, p.length, p.width, p.turned)
        )
    return tuple(placed)


def _leftovers(cut_from: Bin) -> tuple[Leftover, ...]:
    out = []
    named = 0
    for r in sorted(cut_from.leftovers, key=lambda r: (-rectangle_area(r), r.x0, r.y0)):
        length, width = r.x1 - r.x0, r.y1 - r.y0
        keep = length >= WORTH_NAMING[0] - 1e-6 and width >= WORTH_NAMING[1] - 1e-6
        named += keep
        out.append(Leftover(f"leftover {named}" if keep else "", r.x0, r.y0, length, width))
    return tuple(out)


def _sizes(layouts: Sequence[BoardLayout], printer: Printer) -> tuple[str, ...]:
    count = Counter((b.width, b.length) for b in layouts)
    return tuple(f"{n} of {sold(printer.units, *size)}" for size, n in sorted(count.items()))


def _text(request: LotRequest, answer: Answer, what: Tally) -> str:
    noun = "board" if request.stock.kind == "wood" else "sheet"
    if not answer.bins:
        return f"no {noun} takes any of it"
    fewest = "no layout needs fewer"
    if len(answer.bins) > answer.bins_bound:
        fewest = f"at least {answer.bins_bound} are needed"
    area = ""
    if not answer.proven and answer.lower_bound > 0:
        over = percent(answer.cost / answer.lower_bound - 1)
        area = f", and at most {over} more area than the least there can be"
    elif len(request.sizes) > 1:
        area = ", nor less area" if len(answer.bins) == answer.bins_bound else ", but no less area"
    return (
        f"{counted(len(answer.bins), noun)} ({fewest}{area}); {percent(what.lost_share)} of the face "
        f"does not end in a part, which is {percent(what.added_share)} over net"
    )


def _invalid(request: LotRequest, faults: Sequence[str]) -> Finding:
    return Finding(
        "stock.layout-invalid",
        Severity.ERROR,
        f"the layout of {request.title} did not pass its check",
        found="; ".join(faults[:5]),
        expected="pieces that lie apart by the kerf, inside the stock, and can be sawn apart",
        remedy="do not cut from this layout; please report it with the design file",
    )


def _unplaced(
    request: LotRequest, queues: dict[str, list[Wanted]], answer: Answer, printer: Printer
) -> list[Finding]:
    """One error for each kind of part that is not wholly laid out."""
    reasons = {u.item_id: u.reason for u in answer.unplaced}
    left: dict[str, list[tuple[Wanted, str]]] = {}
    for item, pieces in queues.items():
        for piece in pieces:
            left.setdefault(piece[0].letter, []).append((piece, item))
    out = []
    for found in left.values():
        (part, _, _), item = found[0]
        ids = [wanted[1] for wanted, _ in found]
        out.append(_does_not_fit(request, part, ids, reasons.get(item, ""), printer))
    return out


def _does_not_fit(
    request: LotRequest, part: RoughPart, ids: list[str], reason: str, printer: Printer
) -> Finding:
    noun = "board" if request.stock.kind == "wood" else "sheet"
    s = printer.size
    longest = max(request.sizes, key=lambda b: (b.length, b.width), default=None)
    length, width = part.strip
    ends = 2 * (longest.trim_length if longest else 0.0)
    edges = 2 * (longest.trim_width if longest else 0.0)
    needed = f"{s(length + ends)} long and {s(width + edges)} wide ({printer.units})"
    if longest is None:
        needed += ", after trimming,"
    rooms = dict.fromkeys(
        f"{s(b.length - 2 * b.trim_length)} × {s(b.width - 2 * b.trim_width)}" for b in request.sizes
    )
    if reason == NO_STOCK_LEFT:
        remedy = (
            f"put more under `shop.boards`: {counted(len(ids), 'piece')} of this part "
            f"{'need' if len(ids) > 1 else 'needs'} room on a {noun} {needed} or more"
        )
    else:
        remedy = f"name a {noun} {needed} or more under `shop.boards`, or make the part smaller"
    return Finding(
        "stock.does-not-fit",
        Severity.ERROR,
        f"{counted(len(ids), 'piece')} of part {part.letter} ({part.name}) "
        f"{'fit' if len(ids) > 1 else 'fits'} on no {noun} of {request.title}",
        found=f"{s(length)} × {s(width)} {printer.units}" + (f", {reason}" if reason else ""),
        expected=f"within {'; '.join(rooms)} {printer.units} after trimming"
        if rooms
        else f"a {noun} large enough to trim",
        source="`shop.boards`" if request.on_hand else request.assumed,
        remedy=remedy,
        parts=tuple(dict.fromkeys(ids)),
    )
