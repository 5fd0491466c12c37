"""What the stock stage found, as it stands in the plan: layouts, their drawings, the buying list."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from boardwright.core.lengths import Printer, settle
from boardwright.core.rack import Defect
from boardwright.drawings.records import Drawing
from boardwright.drawings.sheet_layout import Laid, Left, SawCut, layout_drawing
from boardwright.plan.parts import size
from boardwright.plan.pictures import PAGE
from boardwright.plan.schema import (
    Buy,
    Layout,
    LayoutSummary,
    LengthBars,
    LengthLayout,
    LengthPiece,
    Offcut,
    Placed,
    RackDefect,
    RackPiece,
    SawCuts,
    Size,
    Strip,
)
from boardwright.stock.rack_words import defects_in
from boardwright.stock.records import BoardLayout, Leftover, Lot, RoughPart, StockResult
from boardwright.stock.saw_order import Sawing, sawings
from boardwright.stock.solution import CutLine

HUES = {"wood": "light wood", "sheet": "sheet"}


def buy_lines(stock: StockResult) -> list[Buy]:
    """The buying list."""
    return [
        Buy.model_validate(
            {
                "group": b.group,
                "item": b.item,
                "quantity": b.quantity,
                "detail": b.detail,
                "source": b.source,
                "cost": b.cost,
            }
        )
        for b in stock.buy
    ]


def layouts(stock: StockResult, printer: Printer) -> tuple[list[Layout], list[LayoutSummary], list[Drawing]]:
    """Every board and sheet, what each kind comes to, and the drawings."""
    out: list[Layout] = []
    summaries: list[LayoutSummary] = []
    pictures: list[Drawing] = []
    for lot in (x for x in stock.lots if not x.to_size):
        for board in lot.layouts:
            out.append(_layout(lot, board, printer))
            pictures.append(_drawing(lot, board, printer))
        summaries.append(
            LayoutSummary(
                stock=lot.title,
                count=len(lot.layouts),
                bound=lot.bound,
                waste_share=round(lot.tally.lost_share, 6),
                verified=lot.verified,
                text=lot.text,
            )
        )
    return out, summaries, pictures


def length_layouts(stock: StockResult, printer: Printer) -> list[LengthLayout]:
    """What is cut from bars."""
    return [
        LengthLayout(
            title=lot.title,
            length=_tool(printer, lot.length),
            count=lot.count,
            bound=lot.bound,
            verified=lot.verified,
            bars=[
                LengthBars(
                    count=b.count,
                    pieces=[LengthPiece(letter=letter, length=_tool(printer, mm)) for letter, mm in b.pieces],
                    left=_tool(printer, b.left),
                )
                for b in lot.bars
            ],
        )
        for lot in stock.lengths
    ]


class _AsSold:
    """Prints stock as sold, which need not lie on the step: `2440 mm` in an inch plan; what is left is rounded down."""

    def __init__(self, printer: Printer) -> None:
        self._printer = printer
        self.units = printer.units

    def size(self, mm: float) -> str:
        """A length [mm] without its unit, or with the other unit where that is how it is sold."""
        p = self._printer
        if p.on_step(mm):
            return p.size(mm)
        if p.units == "in" and abs(mm - round(mm)) < 1e-6:
            return f"{round(mm)} mm"
        if p.units == "mm" and abs(mm / 25.4 * 8 - round(mm / 25.4 * 8)) < 1e-6:
            return f"{mm / 25.4:g} in"
        return p.size(settle(mm, p.step, "down"))

    def auxiliary(self, mm: float) -> str:
        """As `size`."""
        return self.size(mm)

    def tool(self, mm: float) -> str:
        """As the plan's own printer."""
        return self._printer.tool(mm)


def _layout(lot: Lot, board: BoardLayout, printer: Printer) -> Layout:
    return Layout(
        id=board.id,
        stock=lot.title,
        title=board.title,
        length=_tool(printer, board.length),
        width=_tool(printer, board.width),
        kerf=Size(mm=round(lot.kerf, 6), text=printer.tool(lot.kerf)),
        placed=[
            Placed(letter=p.letter, label=p.label, x=p.x, y=p.y, length=p.length, width=p.width)
            for p in board.placed
        ],
        cutting=[_sawing(s, printer) for s in sawings(board, lot.kerf)],
        used_share=round(board.used_share, 6),
        drawing=f"layout-{board.id}",
        rack=_rack_piece(board),
        offcuts=_offcuts(board, printer.step),
    )


def _sawing(s: Sawing, printer: Printer) -> SawCuts:
    sold = _AsSold(printer)
    setting = s.setting if printer.on_step(s.setting) else settle(s.setting, printer.step, "up")
    numbers = str(s.first) if s.times == 1 else f"{s.first}–{s.last}"
    pieces = list(dict.fromkeys(f"{sold.size(length)} × {sold.size(width)}" for length, width in s.pieces))
    return SawCuts.model_validate(
        {
            "numbers": numbers,
            "saw": s.axis,
            "times": s.times,
            "setting": size(printer, setting),
            "piece": pieces[0] if len(pieces) == 1 else f"{pieces[0]} and {len(pieces) - 1} more",
            "gives": ", ".join(
                label if n == 1 else f"{n} × {label}" for label, n in Counter(s.gives).items()
            ),
        }
    )


def _rack_piece(board: BoardLayout) -> RackPiece | None:
    own = board.piece
    if own is None:
        return None
    return RackPiece(
        name=own.name,
        kind=own.kind,
        material=own.material,
        thickness=round(own.thickness, 6),
        lumber=own.lumber,
        defects=_marks(own.defects),
    )


def _marks(defects: Sequence[Defect]) -> list[RackDefect]:
    return [
        RackDefect(
            x=round(d.x, 6), y=round(d.y, 6), length=round(d.length, 6), width=round(d.width, 6), what=d.what
        )
        for d in defects
    ]  # fmt: skip


def _offcuts(board: BoardLayout, step: float) -> list[Offcut]:
    """Leftovers that are kept, to the step below; those of a bought board are named when they go on the rack."""
    return [
        Offcut(
            name=w.name if board.from_rack else "",
            x=round(w.x, 6),
            y=round(w.y, 6),
            length=round(settle(w.length, step, "down"), 6),
            width=round(settle(w.width, step, "down"), 6),
            defects=_marks(defects_in(w, board.piece)) if board.piece else [],
        )
        for w in board.leftovers
        if w.name
    ]


def _tool(printer: Printer, mm: float) -> Size:
    return Size(mm=round(mm, 6), text=_AsSold(printer).size(mm))


def _drawing(lot: Lot, board: BoardLayout, printer: Printer) -> Drawing:
    return layout_drawing(
        f"layout-{board.id}",
        board.title,
        board.length,
        board.width,
        [
            Laid(
                p.label,
                f"{printer.size(p.width if p.turned else p.length)} × "
                f"{printer.size(p.length if p.turned else p.width)}",
                p.x,
                p.y,
                p.length,
                p.width,
            )
            for p in board.placed
        ],
        _AsSold(printer),
        [_left(w, board) for w in board.leftovers],
        [_cut(c, lot.kerf, board) for c in board.cuts if c.stage > 0],
        HUES[lot.kind],
        paper=PAGE,
        defects=_defects(board),
    )


def _left(w: Leftover, board: BoardLayout) -> Left:
    return Left(w.x, w.y, w.length, w.width, bool(w.name), w.name if board.from_rack else "")


def _defects(board: BoardLayout) -> list[Left]:
    """Defects as far as they lie on the face."""
    return [Left(d.x, d.y, d.length, d.width) for d in board.piece.defects] if board.piece else []


def _cut(cut: CutLine, kerf: float, board: BoardLayout) -> SawCut:
    """The middle of the saw's cut across the piece in hand, drawn through the trim to the edges of the board."""
    at = cut.position + kerf / 2
    r = cut.piece
    if cut.axis == "rip":
        x0, x1 = _to_edges(r.x0, r.x1, board.length, board.trim_length)
        return SawCut((x0, at), (x1, at))
    y0, y1 = _to_edges(r.y0, r.y1, board.width, board.trim_width)
    return SawCut((at, y0), (at, y1))


def _to_edges(low: float, high: float, size: float, trim: float) -> tuple[float, float]:
    return (0.0 if low <= trim + 0.01 else low, size if high >= size - trim - 0.01 else high)


def strips(rough: RoughPart, printer: Printer) -> list[Strip]:
    """Strips of a glue-up; none when the part is one board, or its copies are glued up of other strips each."""
    if rough.strips < 2:
        return []
    if not rough.panels:
        return [Strip(width=size(printer, rough.strip[1]), count=rough.strips)]
    if len({tuple(sorted(own)) for own in rough.panels}) > 1:
        return []
    count = Counter(rough.panels[0])
    return [Strip(width=size(printer, w), count=n) for w, n in sorted(count.items(), reverse=True)]


def preparation(rough: RoughPart, printer: Printer) -> list[str]:
    """What comes before the cuts, in words."""
    if rough.rough is None:
        return ["Cut to size from the sheet; take the grain as drawn."]
    lines = []
    first = f"From {rough.thickness_text}" if rough.thickness_text else "Mill to thickness"
    if rough.panels:
        one = f"Glue up from strips {printer.size(rough.strip[0])} long, rough, of these widths from the reference edge"
        lines.append(f"{one}: {'; '.join(rough.joints)}. {first}.")
    elif rough.strips > 1:
        lines.append(
            f"Glue up from {rough.strips} strips, each {printer.size(rough.strip[1])} wide and "
            f"{printer.size(rough.strip[0])} long, rough ({rough.strip_sum}); {first[:1].lower() + first[1:]}."
        )
    elif rough.leaves > 1:
        lines.append(
            f"{first}; rough length {rough.length_sum}, rough width {rough.strip_sum}. Open the leaves like a book, "
            "sawn faces up, and glue them edge to edge."
        )
    else:
        lines.append(f"{first}; rough length {rough.length_sum}, rough width {rough.width_sum}.")
    if rough.blank:
        lines.append(f"Cut {rough.blank}. Mill the blank whole, then crosscut it.")
    if rough.spare:
        lines.append(f"Cut {rough.spare} more, to spare.")
    if rough.ripped_from:
        lines.append(f"{rough.ripped_from[:1].upper()}{rough.ripped_from[1:]}.")
    return lines
