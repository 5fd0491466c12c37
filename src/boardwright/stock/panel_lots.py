"""Strips for the panels of a lot, chosen together with its boards, when that takes less wood than equal strips."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from boardwright.core.findings import Finding, Severity
from boardwright.core.lengths import INCH, Printer
from boardwright.piece.records import Part
from boardwright.stock.blanks import ids_of
from boardwright.stock.choices import Allowances
from boardwright.stock.clear_sections import ClearSection, clear_sections
from boardwright.stock.glue_ups import strip_limit
from boardwright.stock.instance import StockSize
from boardwright.stock.joint_lines import Joints, joints
from boardwright.stock.lots import Chosen, LotRequest
from boardwright.stock.panel_boards import CutBoard, Key, Owners, as_answer, on_boards
from boardwright.stock.panel_question import PanelQuestion, Wanted, paid
from boardwright.stock.panels import lay_out_panels
from boardwright.stock.rack_words import WORTH_NAMING
from boardwright.stock.records import RoughPart
from boardwright.stock.rough import face
from boardwright.stock.solution import Answer, Bin

STEP = {"in": INCH / 16, "mm": 1.0}
"""Widths of strips are whole steps [mm]; the fence is not set finer for rough strips (common practice)."""
EFFORT = 0.03
SAVES, SAVES_ASSUMED = 0.01, 0.04
"""Share of the wood that other strips than equal ones must save, of boards on hand and of assumed ones."""
MORE_STRIPS = 1.2
"""Most strips against equal ones, from boards that are only assumed: each is a joint more."""
CLEAR = {"in": INCH / 4, "mm": 6.0}
"""Distance from a joint to a groove or hole that is enough [mm] (common practice)."""


@dataclass(slots=True)
class StripChooser:
    """Chooses strips for lots; keeps the parts that were changed, by letter."""

    kinds: Mapping[str, Sequence[Part]]
    allow: Allowances
    printer: Printer
    stop: Callable[[], bool]
    changed: dict[str, RoughPart] = field(default_factory=dict)

    def __call__(self, request: LotRequest, equal: Answer) -> Chosen | None:
        """Other strips for the panels of a lot, when they are better than an answer with equal strips."""
        in_blanks = {letter for b in request.blanks for letter, _, _ in b.pieces}
        panels = [p for p in request.parts if p.strips > 1 and p.letter not in in_blanks]
        if request.stock.kind != "wood" or not panels or not request.sizes:
            return None
        question, owners, sections = self._asked(request, panels)
        answer = lay_out_panels(question, effort=EFFORT, stop=self.stop)
        if answer.missing:
            return None
        boards = on_boards(question, answer, sections, _stocks(request))
        before = sum(_paid(request, question, b) for b in equal.bins)
        there = request.on_hand or bool(request.rack)
        saves = SAVES if there else SAVES_ASSUMED
        if not equal.unplaced and sum(b.cost for b in boards) > before * (1 - saves):
            return None
        strips = sum(not k for (_, k), _, _ in _dealt(boards, owners))
        if not there and strips > MORE_STRIPS * sum(p.strips * len(ids_of(p)) for p in panels):
            return None
        return self._taken(request, panels, boards, owners, answer.rounds)

    def _asked(
        self, request: LotRequest, panels: Sequence[RoughPart]
    ) -> tuple[PanelQuestion, Owners, list[ClearSection]]:
        wanted: list[Wanted] = []
        owners: Owners = []
        glued = {p.letter for p in panels}
        inside = {(id, k) for b in request.blanks for _, id, k in b.pieces}
        for part in request.parts:
            ids = ids_of(part)
            if part.letter in glued and part.rough is not None:
                wanted.append(Wanted(part.letter, part.strip[0], part.rough[1], len(ids), True))
                owners.append([(id, 0) for id in ids])
                continue
            keys = [(id, k) for id in ids for k in range(1, part.strips + 1) if (id, k) not in inside]
            if keys:
                wanted.append(Wanted(part.letter, *part.strip, len(keys)))
                owners.append(keys)
        for blank in request.blanks:
            wanted.append(Wanted(blank.id, blank.length, blank.width, 1))
            owners.append([(blank.pieces[0][1], blank.pieces[0][2])])
        limit = strip_limit(request.sizes, request.on_hand, self.allow, self.printer)
        least, keep = min(self.allow.strip_min, limit.strip), WORTH_NAMING[0] if request.on_hand else None
        small = min(w.length for w in wanted), min(least if w.panel else w.width for w in wanted)
        sections = clear_sections(_stocks(request), request.kerf, small)
        boards = tuple(s.size for s in sections)
        joint, step = 2 * self.allow.edge_joint, STEP[self.printer.units]
        question = PanelQuestion(tuple(wanted), boards, request.kerf, least, limit.strip, joint, step, keep)
        return question, owners, sections

    def _taken(
        self,
        request: LotRequest,
        panels: Sequence[RoughPart],
        boards: Sequence[CutBoard],
        owners: Owners,
        rounds: int,
    ) -> Chosen:
        """The boards' strips given to the parts, in an order whose joints keep off grooves and holes."""
        strips: dict[str, list[tuple[float, int]]] = {}
        board: dict[Key, int] = {}
        for (id, k), width, n in _dealt(boards, owners):
            if k:
                board[id, k] = n
            else:
                strips.setdefault(id, []).append((width, n))
        for part in panels:
            placed = {id: self._ordered(part, strips[id]) for id in ids_of(part)}
            words = []
            for id, how in placed.items():
                rest = list(strips[id])
                for k, width in enumerate(how.widths, 1):
                    board[id, k] = rest.pop(next(i for i, (w, _) in enumerate(rest) if w == width))[1]
                words.append(self._words(how, [board[id, k] for k in range(1, len(how.widths) + 1)]))
            widths = [how.widths for how in placed.values()]
            self.changed[part.letter] = replace(
                part,
                strips=max(map(len, widths)),
                strip=(part.strip[0], max(w for own in widths for w in own)),
                strip_sum=self._sum(widths[0]),
                panels=tuple(widths),
                joints=tuple(words),
            )
        new = replace(request, parts=tuple(self.changed.get(p.letter, p) for p in request.parts))
        return Chosen(new, lambda instance: as_answer(instance, new, boards, owners, rounds), board)

    def _ordered(self, part: RoughPart, strips: Sequence[tuple[float, int]]) -> Joints:
        one = self.kinds[part.letter][0]
        widths = [w for w, _ in strips]
        return joints(one, face(one)[0], widths, self.allow.edge_joint, CLEAR[self.printer.units])

    def _sum(self, widths: Sequence[float]) -> str:
        """How strips come to the width of a panel."""
        s = self.printer.size
        less = 2 * self.allow.edge_joint
        total = sum(widths) - less * len(widths)
        return f"{' + '.join(s(w) for w in widths)} - {len(widths)} × {s(less)} = {s(total)}"

    def _words(self, how: Joints, boards: Sequence[int]) -> str:
        """Strips of one panel, from its reference edge, and the boards they come from."""
        named = sorted({b + 1 for b in boards})
        of = f"board {named[0]}" if len(named) == 1 else f"boards {', '.join(map(str, named))}"
        return f"{' + '.join(self.printer.size(w) for w in how.widths)}, of {of}"


def joint_findings(
    rough: Sequence[RoughPart], kinds: Mapping[str, Sequence[Part]], allow: Allowances, printer: Printer
) -> list[Finding]:
    """Panels of which a joint cannot be kept off a groove, a hole or a mortise.

    Args:
        rough: rough sizes of the piece.
        kinds: parts by letter.
        allow: what jointing takes off an edge.
        printer: prints sizes of the plan.
    """
    found = []
    for part in rough:
        if part.strips < 2:
            continue
        one = kinds[part.letter][0]
        for widths in dict.fromkeys(part.panels or ((part.strip[1],) * part.strips,)):
            how = joints(one, face(one)[0], widths, allow.edge_joint, CLEAR[printer.units])
            if how.clear is not None and how.clear < 0:
                found.append(
                    Finding(
                        "stock.joint-on-line", Severity.NOTE,
                        f"a joint of part {part.letter} ({part.name}) lies on a groove, a hole or a mortise",
                        found=f"strips {' + '.join(printer.size(w) for w in widths)} {printer.units}",
                        expected=f"{printer.text(CLEAR[printer.units])} or more between them",
                        source="common practice",
                        remedy="rip its strips to other widths, so that no joint lies there, or give "
                        "`shop.strip_max` another size",
                        parts=part.parts,
                    )
                )  # fmt: skip
                break
    return found


def _dealt(boards: Sequence[CutBoard], owners: Owners) -> Iterator[tuple[Key, float, int]]:
    """Every piece: whose it is, the width of its strip, the number of its board."""
    for n, board in enumerate(boards):
        for _, dealt in board.sections:
            for section in dealt.sections:
                for strip in section:
                    for kind, copy in strip.pieces:
                        yield owners[kind][copy], strip.width, n


def _stocks(request: LotRequest) -> tuple[StockSize, ...]:
    """What can be cut, in the order of the layout question: the rack's pieces first; its cost is area [m2]."""
    bought = (replace(b, cost=round(b.length * b.width / 1e6, 6)) for b in request.sizes)
    return (*(on.whole for on in request.rack), *bought)


def _paid(request: LotRequest, question: PanelQuestion, cut_from: Bin) -> float:
    """What is paid for a board of an answer with equal strips."""
    board = next(b for b in _stocks(request) if b.id == cut_from.stock_id)
    used = max(p.x + p.length for p in cut_from.placed) - board.trim_length
    return paid(board, used, question.kerf, question.keep)
