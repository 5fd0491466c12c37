"""Strips for the panels of a lot, chosen together with its boards, when that takes less wood than equal strips."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from boardwright.core.findings import Finding, Severity
from boardwright.core.lengths import INCH, Printer
from boardwright.piece.records import Part
from boardwright.stock.blanks import ids_of
from boardwright.stock.choices import Allowances
from boardwright.stock.emit import emit
from boardwright.stock.glue_ups import strip_limit
from boardwright.stock.instance import Instance, StockSize
from boardwright.stock.joint_lines import Joints, joints
from boardwright.stock.lots import Chosen, LotRequest
from boardwright.stock.panel_question import PanelQuestion, Wanted
from boardwright.stock.panels import PanelAnswer, lay_out_panels
from boardwright.stock.patterns import Pattern
from boardwright.stock.rack_words import WORTH_NAMING
from boardwright.stock.records import RoughPart
from boardwright.stock.rough import face
from boardwright.stock.scaled import Shape
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

Key = tuple[str, int]
"""Id of a part and number of a strip; 0 for a panel, whose strips are not known yet."""
Owners = list[list[Key]]
"""What each thing that is wanted stands for, copy by copy."""


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
        question, owners = self._asked(request, panels)
        answer = lay_out_panels(question, effort=EFFORT, stop=self.stop)
        if answer.missing:
            return None
        numbers = {b.id: n for n, b in enumerate(_stocks(request))}
        places = [numbers[b.id] for b in question.boards]
        answer = replace(answer, boards=tuple(sorted(answer.boards, key=lambda d: places[d.board])))
        before = sum(_paid(request, question, b) for b in equal.bins)
        there = request.on_hand or bool(request.rack)
        saves = SAVES if there else SAVES_ASSUMED
        if not equal.unplaced and answer.cost > before * (1 - saves):
            return None
        strips = sum(not k for (_, k), _, _ in _dealt(answer, owners))
        if not there and strips > MORE_STRIPS * sum(p.strips * len(ids_of(p)) for p in panels):
            return None
        return self._taken(request, panels, answer, owners, places)

    def _asked(self, request: LotRequest, panels: Sequence[RoughPart]) -> tuple[PanelQuestion, Owners]:
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
        boards = tuple(b for b in _stocks(request) if not b.defects)
        least, keep = min(self.allow.strip_min, limit.strip), WORTH_NAMING[0] if request.on_hand else None
        joint, step = 2 * self.allow.edge_joint, STEP[self.printer.units]
        question = PanelQuestion(tuple(wanted), boards, request.kerf, least, limit.strip, joint, step, keep)
        return question, owners

    def _taken(
        self,
        request: LotRequest,
        panels: Sequence[RoughPart],
        answer: PanelAnswer,
        owners: Owners,
        places: Sequence[int],
    ) -> Chosen:
        """The answer's strips given to the parts, in an order whose joints keep off grooves and holes."""
        strips: dict[str, list[tuple[float, int]]] = {}
        board: dict[Key, int] = {}
        for (id, k), width, n in _dealt(answer, owners):
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
        return Chosen(new, lambda instance: _answer(instance, new, answer, owners, places), board)

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


def _dealt(answer: PanelAnswer, owners: Owners) -> Iterator[tuple[Key, float, int]]:
    """Every piece of an answer: whose it is, the width of its strip, the number of its board."""
    for n, dealt in enumerate(answer.boards):
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
    if question.keep is None:
        return next(b.cost for b in _stocks(request) if b.id == cut_from.stock_id)
    n = next(i for i, b in enumerate(question.boards) if b.id == cut_from.stock_id)
    return question.paid(n, max(p.x + p.length for p in cut_from.placed) - question.boards[n].trim_length)


def _answer(
    instance: Instance, request: LotRequest, answer: PanelAnswer, owners: Owners, places: Sequence[int]
) -> Answer:
    """The answer as one to the layout question: the same boards, cut the same way."""
    sizes = {(round(i.length, 6), round(i.width, 6)): n for n, i in enumerate(instance.items)}

    def shape(kind: int, copy: int, width: float) -> Shape:
        length, own = _size(request, owners[kind][copy])
        return Shape(sizes[round(length, 6), round(own or width, 6)], False, 0, 0)

    copies = [0] * len(instance.items)
    bins = []
    for dealt in answer.boards:
        sections = tuple(
            tuple(tuple(shape(kind, copy, s.width) for kind, copy in s.pieces) for s in section)
            for section in dealt.sections
        )
        bins.append(emit(instance, "crosscut", Pattern(sections, (), 0, 0), places[dealt.board], copies))
    cost = sum(instance.stocks[places[d.board]].cost for d in answer.boards)
    method = "strips chosen together with the boards"
    return Answer(tuple(bins), (), cost, 0.0, 1, False, method, 0, answer.rounds)


def _size(request: LotRequest, key: Key) -> tuple[float, float]:
    """Length and width of what is cut for a piece: its blank's, or its own; no width for strips of a panel."""
    for blank in request.blanks:
        if blank.pieces[0][1:] == key:
            return blank.length, blank.width
    part = next(p for p in request.parts if key[0] in ids_of(p))
    return part.strip[0], part.strip[1] if key[1] else 0.0
