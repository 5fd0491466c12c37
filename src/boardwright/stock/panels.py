"""Panels and boards decided together: which strips of which width from which boards.

Divisions of boards are priced for a linear choice, whose values give a bound; a whole choice of them is made, and its
strips are dealt out to the panels. Then part of the choice is made anew, with divisions priced for that part.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations
from math import inf
from random import Random

from boardwright.stock.panel_columns import Division, LinearDivisions, Pricer, choose_divisions
from boardwright.stock.panel_deal import Dealt, cost_of, deal
from boardwright.stock.panel_question import PanelQuestion

ROUNDS = 40
"""Most rounds of pricing for one linear choice."""
DIVE_ROUNDS = 6
"""Most rounds of pricing for each board that is taken."""
TRIES = 200
"""Times that part of the boards are taken anew, at effort 1."""
DEALS = 3
"""Choices that are dealt out, each with more over than the last."""
EASE = 2
"""Steps of width that each further copy of a panel gets over, so that strips can be dealt out."""
WHOLE_FIRST, WHOLE_AGAIN, WHOLE_MOST = 8, 3, 3000
"""Times after which all known divisions are chosen from, growth before the next, most divisions in that."""
PROPER_EACH = 6
"""Divisions of each board that hold no more than is wanted, before each choice from all."""
NEAR = 0.005
"""An answer this near to the bound is not made better."""
SHORT = 1e-6


@dataclass(frozen=True, slots=True)
class PanelAnswer:
    """Boards with their strips dealt out to panels.

    Attributes:
        boards: as cut.
        cost: of the boards.
        bound: of the linear programme; no choice of crosscut, rip, crosscut costs less.
        missing: what is not all there; empty when the answer is whole.
        rounds: how often divisions were priced.
    """

    boards: tuple[Dealt, ...]
    cost: float
    bound: float
    missing: tuple[str, ...]
    rounds: int


def lay_out_panels(
    question: PanelQuestion,
    seed: int = 0,
    effort: float = 1.0,
    stop: Callable[[], bool] = lambda: False,
) -> PanelAnswer:
    """Choose strips and boards together, at least cost.

    Args:
        question: the question.
        seed: of the random numbers.
        effort: how long to try; no clock is read.
        stop: asked now and then; when it says True, the best so far is taken.

    Returns:
        The answer, with its bound; the same on every run as long as `stop` never says stop.
    """
    pricer = Pricer(question)
    if not question.boards or pricer.widest == 0:
        return PanelAnswer((), 0.0, 0.0, tuple(w.id for w in question.wanted), 0)
    return _Search(question, pricer, seed, effort, stop).run()


class _Search:
    """What is known so far."""

    def __init__(
        self,
        question: PanelQuestion,
        pricer: Pricer,
        seed: int,
        effort: float,
        stop: Callable[[], bool],
    ) -> None:
        self.question, self.pricer, self.effort, self.stop = question, pricer, effort, stop
        self.kind = Pricer(question, kindly=True)
        self.random = Random(seed)
        self.need = pricer.grid.need.tolist()
        self.pool: dict[Division, None] = {}
        self.bound = 0.0
        self.priced = 0

    def run(self) -> PanelAnswer:
        """Bound first; then boards taken one after another, again and again."""
        none = [0] * len(self.question.boards)
        values, saved, choice = self.linear(self.need, none, ROUNDS)
        if choice.missing <= SHORT:
            self.bound = self.dual(values)
        best = self.settled([], by_chance=False) or _Settled([], (), 0.0, ("",))
        again = WHOLE_FIRST
        for n in range(round(TRIES * self.effort)):
            if self.stop() or self.near(best):
                break
            if n == again:
                best = self.better(best, self.whole(best, values, saved))
                again *= WHOLE_AGAIN
                continue
            count = round(len(best.chosen) * self.random.uniform(0.3, 1.0))
            kept = self.random.sample(best.chosen, max(0, len(best.chosen) - max(2, count)))
            best = self.better(
                best, self.settled(kept, by_chance=True, below=inf if best.missing else best.cost)
            )
        dealt, short = deal(self.question, self.pricer.grid, best.chosen, self.stop, gathered=True)
        cost = sum(cost_of(self.question, d) for d in dealt)
        if not any(short) and not best.missing and cost <= best.cost + 1e-9:
            best = _Settled(best.chosen, dealt, cost, ())
        bound = 0.0 if best.missing else min(self.bound, best.cost)
        return PanelAnswer(best.dealt, best.cost, bound, best.missing, self.priced)

    def dive(self, need: Sequence[int], kept: Sequence[Division], by_chance: bool) -> list[Division]:
        """Boards one after another, each as the linear choice for what is left uses it most; some are kept."""
        used = [sum(d.board == n for d in kept) for n in range(len(self.question.boards))]
        left = [max(0, n - sum(d.held[k] for d in kept)) for k, n in enumerate(need)]
        chosen = list(kept)
        while any(left) and not self.stop():
            _, _, choice = self.linear(left, used, DIVE_ROUNDS)
            last = self.ending(left, used)
            ranked = sorted(
                ((x, n) for n, x in enumerate(choice.uses) if x > SHORT), key=lambda r: (-r[0], r[1])
            )
            if not ranked:
                break
            if last is not None and last.cost <= self.least(choice) + 1e-9:
                chosen.append(self.pricer.trimmed(last, left))
                break
            sure = [r for r in ranked if r[0] >= 1 - SHORT]
            pick = ranked[self.random.randrange(min(3, len(ranked)))] if by_chance and not sure else ranked[0]
            for _, n in sure or [pick]:
                division = choice.divisions[n]
                if used[division.board] == self.count(division.board):
                    continue
                division = self.pricer.trimmed(division, left)
                chosen.append(division)
                used[division.board] += 1
                left = [max(0, w - h) for w, h in zip(left, division.held, strict=True)]
        return chosen

    def near(self, best: _Settled) -> bool:
        """Whether an answer is so near to the bound that it is not made better."""
        return not best.missing and best.cost <= self.bound * (1 + NEAR)

    def better(self, best: _Settled, other: _Settled | None) -> _Settled:
        """The better of two answers; the first when they are as good."""
        if other is None or (len(other.missing), other.cost) >= (len(best.missing), best.cost - 1e-9):
            return best
        return other

    def whole(self, best: _Settled, values: Sequence[float], saved: Sequence[float]) -> _Settled | None:
        """The cheapest choice of whole divisions out of all that are known, and of those with sections left out."""
        self.fill(values)
        spare = (best.cost if not best.missing else 2 * self.bound) - self.bound
        worth: dict[Division, float] = {}
        for division in dict.fromkeys([*best.chosen, *self.pool]):
            for some in self.parts_of(division):
                dear = (
                    some.cost + saved[some.board] - sum(v * h for v, h in zip(values, some.held, strict=True))
                )
                if some.sections and dear <= spare:
                    worth[some] = dear
        few = sorted(worth, key=lambda d: worth[d])[:WHOLE_MOST]
        few += [d for d in best.chosen if d.sections and d not in few]
        counts = [None if b.count is None else b.count for b in self.question.boards]

        def choose(need: Sequence[int]) -> list[Division]:
            return few and choose_divisions(few, need, counts, best.chosen, self.stop)

        return self.dealt(choose, inf if best.missing else best.cost)

    def fill(self, values: Sequence[float]) -> None:
        """Add divisions that hold no more than is wanted, for values near those of the linear choice."""
        for n in range(len(self.question.boards)):
            if self.pricer.grid.rooms[n][0] < 0:
                continue
            for _ in range(PROPER_EACH):
                near = [v * self.random.uniform(0.7, 1.3) for v in values]
                division = self.pricer.proper(n, near, self.need)
                if division.sections:
                    self.keep(division)

    def parts_of(self, division: Division) -> Iterator[Division]:
        """A division, and what is left of it without some of its sections."""
        yield division
        for count in range(1, min(len(division.sections), 5)):
            for sections in combinations(division.sections, count):
                yield self.pricer.made(division.board, sections)

    def least(self, choice: LinearDivisions) -> float:
        """What the divisions that a linear choice uses cost, each taken whole."""
        return sum(d.cost for d, x in zip(choice.divisions, choice.uses, strict=True) if x > SHORT)

    def ending(self, left: Sequence[int], used: Sequence[int]) -> Division | None:
        """The cheapest known division that holds all that is left."""
        ends = [
            d
            for d in self.pool
            if used[d.board] < self.count(d.board) and all(h >= w for h, w in zip(d.held, left, strict=True))
        ]
        return min(ends, key=lambda d: d.cost, default=None)

    def count(self, board: int) -> float:
        """How many there are of a board."""
        count = self.question.boards[board].count
        return inf if count is None else count

    def settled(self, kept: Sequence[Division], by_chance: bool, below: float = inf) -> _Settled | None:
        """Boards one after another, for less; see `dive` and `dealt`."""
        return self.dealt(lambda need: self.dive(need, kept, by_chance), below)

    def dealt(self, choose: Callable[[Sequence[int]], list[Division]], below: float) -> _Settled | None:
        """A choice that costs less and can be dealt out; where strips fall short, more is asked for."""
        slack = [EASE * (w.count - 1) if w.panel else 0 for w in self.question.wanted]
        found: list[_Settled] = []
        for _ in range(DEALS):
            need = [n + s for n, s in zip(self.need, [*slack, *[0] * len(slack)], strict=True)]
            chosen = choose(need)
            if sum(d.cost for d in chosen) >= below - 1e-9:
                break
            dealt, short = deal(self.question, self.pricer.grid, chosen, self.stop)
            missing = tuple(w.id for w, n in zip(self.question.wanted, short, strict=True) if n)
            cost = sum(cost_of(self.question, d) for d in dealt)
            found.append(_Settled(chosen, dealt, cost, missing))
            if not missing or not chosen or self.stop():
                break
            slack = [s + n for s, n in zip(slack, short, strict=True)]
        return min(found, key=lambda f: (len(f.missing), f.cost), default=None)

    def linear(
        self, need: Sequence[int], used: Sequence[int], rounds: int
    ) -> tuple[list[float], list[float], LinearDivisions]:
        """Price divisions until none is worth its board.

        Args:
            need: what is wanted.
            used: how many of each board are used already.
            rounds: most rounds.

        Returns:
            Values of what is wanted, what one more of each board would save, and the choice.
        """
        boards = self.question.boards
        counts = [None if b.count is None else b.count - n for b, n in zip(boards, used, strict=True)]
        choice = LinearDivisions(self.question, need, counts, any(used))
        for division in self.pool:
            if counts[division.board] != 0:
                choice.add(self.pricer.trimmed(division, need) if any(used) else division)
        values, saved = choice.solve()
        for _ in range(rounds):
            self.pricer.price(values)
            self.priced += 1
            fresh = 0
            for n, board in enumerate(boards):
                if counts[n] != 0 and self.pricer.value(n)[0] > saved[n] + 1e-7 * board.cost:
                    fresh += self.keep(self.pricer.division(n), choice)
            if not fresh or self.stop():
                break
            values, saved = choice.solve()
        return values, saved, choice

    def keep(self, division: Division, choice: LinearDivisions | None = None) -> int:
        """Keep a division; 1 when it is new."""
        if division in self.pool:
            return 0
        self.pool[division] = None
        if choice is not None:
            choice.add(division)
        return 1

    def dual(self, values: Sequence[float]) -> float:
        """No use of boards, in part or whole, costs less: sizes are rounded in favour of what is wanted."""
        self.kind.price(values)
        boards = list(enumerate(self.question.boards))
        plenty = [self.kind.value(n)[1] for n, b in boards if b.count is None]
        scale = max([1.0, *plenty])
        self.kind.price([v / scale for v in values])
        worth = sum(v * n for v, n in zip(values, self.kind.grid.need.tolist(), strict=True)) / scale
        for n, board in boards:
            if board.count is not None:
                worth -= board.count * max(0.0, self.kind.value(n)[0])
        return max(0.0, float(worth))


@dataclass(frozen=True, slots=True)
class _Settled:
    """A choice, dealt out: divisions, boards as cut, their cost, what is missing."""

    chosen: list[Division]
    dealt: tuple[Dealt, ...]
    cost: float
    missing: tuple[str, ...]
