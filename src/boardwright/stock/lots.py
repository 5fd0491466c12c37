"""One lot laid out: every piece of one wood and thickness, or of one sheet, on boards or sheets."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from boardwright.core.findings import Finding, Severity
from boardwright.core.lengths import Printer
from boardwright.core.rack import Defect, RackPiece
from boardwright.piece.records import Stock
from boardwright.stock.blanks import ids_of, members, strips_of
from boardwright.stock.boards import board_instance, lay_out_boards
from boardwright.stock.instance import Instance, Item, StockSize, problems
from boardwright.stock.on_rack import OnRack, rack_first, with_rack
from boardwright.stock.rack_words import WORTH_NAMING, of_each_size, on_the_rack, rack_text, split_tally
from boardwright.stock.records import (
    Blank,
    BoardLayout,
    Leftover,
    Lot,
    PlacedPiece,
    RoughPart,
    Tally,
    rectangle_area,
)
from boardwright.stock.saw_order import in_order
from boardwright.stock.sheets import lay_out_sheets
from boardwright.stock.solution import NO_STOCK_LEFT, Answer, Bin
from boardwright.stock.verify import verify
from boardwright.stock.wording import counted, percent, sold

EFFORT = 0.15
"""How long each lot is tried; about a second for the pieces of a chest of drawers."""

Wanted = tuple[RoughPart, str, int]
"""A piece to be cut: for which kind of part, for which part, which strip of it."""
Cut = tuple[Wanted, ...]
"""What is cut from a board in one: a piece alone, or those of a blank from its near end."""


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
        rack: pieces of the rack that are used first; `kind` is what they are, and what is bought.
        blanks: pieces that are cut in one.
        marks: defects of boards on hand, by the id of their size.
    """

    id: str
    title: str
    stock: Stock
    parts: tuple[RoughPart, ...]
    sizes: tuple[StockSize, ...]
    kerf: float
    on_hand: bool
    assumed: str
    rack: tuple[OnRack, ...] = ()
    kind: RackPiece | None = None
    blanks: tuple[Blank, ...] = ()
    marks: Mapping[str, tuple[Defect, ...]] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Chosen:
    """Strips chosen together with the boards.

    Attributes:
        request: with the widths of the strips.
        lay: the layout that goes with them.
        board: id of a part and number of a strip, and the number of the board in the layout.
    """

    request: LotRequest
    lay: Callable[[Instance], Answer]
    board: dict[tuple[str, int], int]

    def place(self, cut: Cut) -> int:
        """Number of the board that something is cut from."""
        return self.board[cut[0][1], cut[0][2]]


def lay_out(
    request: LotRequest,
    tally: Callable[[Sequence[tuple[float, float]]], Tally],
    printer: Printer,
    stop: Callable[[], bool],
    choose: Callable[[LotRequest, Answer], Chosen | None] = lambda _request, _answer: None,
    effort: float = EFFORT,
    progress: Callable[[str], None] = lambda _: None,
) -> tuple[Lot, list[Finding]]:
    """Lay a lot out, check it, and say what it comes to.

    Args:
        request: what is to be laid out.
        tally: what boards or sheets of given length and width come to.
        printer: prints sizes of the plan.
        stop: when it says True, the best layout so far is taken.
        effort: how long to try.
        choose: other strips for the panels, and their layout, when that is better than an answer with equal strips.
        progress: told of every better layout.

    Returns:
        The lot; errors where a piece fits nowhere, or the check found a fault.
    """
    instance, queues = _question(request)
    instance = with_rack(instance, request.rack)
    lay = lay_out_boards if request.stock.kind == "wood" else lay_out_sheets
    faults = problems(instance)
    if faults:
        answer = Answer((), (), 0.0, 0.0, 0, False, "", 0, 0)
    else:
        answer = lay(
            instance, effort=effort, stop=stop, progress=lambda text: progress(f"{request.title}: {text}")
        )
        chosen = choose(request, answer)
        if chosen is not None:
            request = chosen.request
            instance, queues = _question(request)
            instance = with_rack(instance, request.rack)
            answer = chosen.lay(instance)
            queues = {name: sorted(cuts, key=chosen.place) for name, cuts in queues.items()}
        answer = _in_order(answer, request)
        faults = verify(instance, answer)
        answer, more = rack_first(instance, answer, request.rack)
        faults += more
    layouts = on_the_rack(
        _layouts(request, answer, queues, printer), request.rack, request.kind, request.title, request.marks
    )
    findings = [_invalid(request, faults)] if faults else []
    findings += _unplaced(request, queues, answer, printer)
    what = tally([(b.length, b.width) for b in layouts])
    lot = Lot(
        request.id,
        request.stock.id,
        request.stock.kind,
        request.title,
        of_each_size(layouts, printer),
        request.kerf,
        layouts,
        answer.bins_bound,
        answer.lower_bound,
        answer.proven,
        not faults,
        what,
        request.on_hand,
        request.assumed,
        rack_text(layouts, answer, what) if request.rack else _text(request, answer, what),
        *split_tally(layouts, tally, what, bool(request.rack)),
        request.kind,
    )
    return lot, findings


def _in_order(answer: Answer, request: LotRequest) -> Answer:
    """The cuts of each board in the order of their settings."""
    return replace(answer, bins=tuple(in_order(b, request.kerf) for b in answer.bins))


def _question(request: LotRequest) -> tuple[Instance, dict[str, list[Cut]]]:
    """The question for the layout engine, equal sizes as one item; and what is cut for each item, in order."""
    groups: dict[tuple[float, float], list[Cut]] = {}
    pieces = {(w[1], w[2]): w for w in members(request.parts)}
    for blank in request.blanks:
        cut = tuple(pieces.pop((id, strip)) for _, id, strip in blank.pieces)
        groups.setdefault((blank.length, blank.width), []).append(cut)
    for wanted in pieces.values():
        part, id, strip = wanted
        size = part.strip
        if part.panels:
            size = (part.strip[0], part.panels[ids_of(part).index(id)][strip - 1])
        groups.setdefault(size, []).append((wanted,))
    turnable = request.stock.kind == "sheet" and not request.stock.grain
    named: dict[str, tuple[tuple[float, float], list[Cut]]] = {}
    for size, cuts in groups.items():
        name = " ".join(dict.fromkeys(w[0].letter for cut in cuts for w in cut))
        named[name if name not in named else f"{name} {len(named) + 1}"] = (size, cuts)
    items = tuple(
        Item(name, *size, len(cuts), turnable and all(len(cut) == 1 for cut in cuts))
        for name, (size, cuts) in named.items()
    )
    queues = {name: cuts for name, (_, cuts) in named.items()}
    if request.stock.kind == "wood":
        return board_instance(items, request.sizes, request.kerf), queues
    return Instance(items, request.sizes, request.kerf), queues


def _layouts(
    request: LotRequest, answer: Answer, queues: dict[str, list[Cut]], printer: Printer
) -> tuple[BoardLayout, ...]:
    """The boards with the pieces' names; what stays in the queues is on none of them."""
    sizes = {s.id: s for s in (*request.sizes, *(on.whole for on in request.rack))}
    noun = "board" if request.stock.kind == "wood" else "sheet"
    layouts = []
    for n, cut_from in enumerate(answer.bins, 1):
        size = sizes[cut_from.stock_id]
        placed = _named(request, cut_from, queues)
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


def _named(request: LotRequest, cut_from: Bin, queues: dict[str, list[Cut]]) -> tuple[PlacedPiece, ...]:
    """Pieces from the near edge up.

    Copies of an item are alike, so they are named as they lie: strips of one part come from one board as far
    as can be.
    """
    names = {(id, strip): b.id for b in request.blanks for _, id, strip in b.pieces}
    placed = []
    for p in sorted(cut_from.placed, key=lambda p: (p.y, p.x)):
        x = p.x
        cut = queues[p.item_id].pop(0)
        for part, id, strip in cut:
            strips = strips_of(part, id)
            label = f"{part.letter} {strip} of {strips}" if strips > 1 else part.letter
            if id not in part.parts and part.parts:
                label += " spare"
            size = (p.length, p.width) if len(cut) == 1 else part.strip
            placed.append(
                PlacedPiece(
                    part.letter, id, strip, strips, label, x, p.y, *size, p.turned,
                    names.get((id, strip), ""),
                )
            )  # fmt: skip
            x += size[0] + request.kerf
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


def _text(request: LotRequest, answer: Answer, what: Tally) -> str:
    noun = "board" if request.stock.kind == "wood" else "sheet"
    if not answer.bins:
        return f"no {noun} takes any of it"
    fewest = "no layout needs fewer"
    if len(answer.bins) > answer.bins_bound:
        fewest = f"at least {answer.bins_bound} {'is' if answer.bins_bound == 1 else 'are'} needed"
    area = ""
    by_price = any(abs(s.cost - s.length * s.width / 1e6) > 1e-6 for s in request.sizes)
    kept = "cost" if by_price and request.stock.kind == "sheet" else "area"
    if not answer.proven and answer.lower_bound > 0:
        over = percent(answer.cost / answer.lower_bound - 1)
        area = f", and at most {over} more {kept} than the least there can be"
    elif answer.proven and len(request.sizes) > 1:
        area = f", nor less {kept}" if len(answer.bins) == answer.bins_bound else f", but no less {kept}"
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
    request: LotRequest, queues: dict[str, list[Cut]], answer: Answer, printer: Printer
) -> list[Finding]:
    """One error for each kind of part that is not wholly laid out."""
    reasons = {u.item_id: u.reason for u in answer.unplaced}
    left: dict[str, list[tuple[Wanted, str]]] = {}
    for item, cuts in queues.items():
        for piece in (piece for cut in cuts for piece in cut):
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
