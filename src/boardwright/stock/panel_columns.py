"""Boards divided for panels and pieces: the best division for given values, and the linear choice of divisions."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from boardwright.stock.master import solve_model
from boardwright.stock.panel_question import Grid, PanelQuestion, grid

PROPER, PROPER_ROUNDS = 0.85, 12
"""Share of a section's value that must be wanted; most rounds for one board."""
WORK = 2.0
"""Longest whole choice, in the solver's deterministic seconds."""
COST_STEPS = 100_000
"""Costs are whole parts of the dearest board in a whole choice."""

Strip = tuple[int, tuple[int, ...]]
"""Width of a strip, a saw cut on it (steps), and the kinds of its pieces from its near end."""
Section = tuple[Strip, ...]


@dataclass(frozen=True, slots=True)
class Division:
    """One board divided.

    Attributes:
        board: which board.
        sections: its strips and their pieces.
        held: copies, or steps of width, of each kind; then strips of each kind, 0 for pieces.
        cost: of the board.
    """

    board: int
    sections: tuple[Section, ...]
    held: tuple[int, ...]
    cost: float


class Pricer:
    """Best divisions of all boards for values of the kinds."""

    def __init__(self, question: PanelQuestion, kindly: bool = False) -> None:
        self.question = question
        self.grid: Grid = grid(question, kindly)
        self._costs: dict[int, NDArray[np.float64]] = {}
        self.widest = max((w for x, w in self.grid.rooms if x >= 0), default=0)

    def price(self, values: Sequence[float]) -> None:
        """Work out the best divisions for values: of one copy or one step of width of each kind; then of one strip."""
        from boardwright.stock.kernels import sections as kernel

        g = self.grid
        worth, each = np.array(values, np.float64).reshape(2, -1)
        self._strip, self._piece = kernel.strips(
            g.before, g.claims, worth, each, g.kind, g.least, g.most, g.cut, self.widest
        )
        self._section, self._width = kernel.across(self._strip, g.narrowest)
        self._boards: dict[int, tuple[NDArray[np.float64], NDArray[np.int32]]] = {}
        for x, w in g.rooms:
            if x >= 0 and w > 0 and w not in self._boards:
                self._boards[w] = kernel.along(np.ascontiguousarray(self._section[:, w]), g.between)

    def costs(self, board: int) -> NDArray[np.float64]:
        """What a board costs by the length that is used of it."""
        if board not in self._costs:
            g, q = self.grid, self.question
            used = np.maximum(0.0, (g.lengths * g.unit - g.kerf) * q.step)
            self._costs[board] = np.array([q.paid(board, float(mm)) for mm in used])
        return self._costs[board]

    def value(self, board: int) -> tuple[float, float]:
        """What the best division of a board is worth over its cost, and the most that one is worth for its cost."""
        x, w = self.grid.rooms[board]
        if x < 0 or w <= 0:
            return 0.0, 0.0
        worth, costs = self._boards[w][0][: x + 1], self.costs(board)[: x + 1]
        return float(np.max(worth - costs)), float(np.max(worth / np.maximum(costs, 1e-12)))

    def division(self, board: int) -> Division:
        """The division of a board that is worth most over its cost."""
        g = self.grid
        x, w = g.rooms[board]
        x = int(np.argmax(self._boards[w][0][: x + 1] - self.costs(board)[: x + 1]))
        out = self._sections(x, w)
        return Division(board, tuple(out), self.held(out), float(self.costs(board)[x]))

    def proper(self, board: int, values: Sequence[float], need: Sequence[int]) -> Division:
        """A good division of a board that holds hardly more of anything than is wanted.

        Sections are taken one after another, most valuable first, and valued anew when something is all there. What
        a section would hold too much of counts half as much the next time.

        Args:
            board: which board.
            values: as for `price`.
            need: what is wanted.
        """
        g = self.grid
        worth, left = list(values), list(need)
        x, w = g.rooms[board]
        taken: list[Section] = []
        for _ in range(PROPER_ROUNDS):
            self.price([v if n > 0 else 0.0 for v, n in zip(worth, left, strict=True)])
            found = self._sections(x, w)
            if not found:
                break
            for section in found:
                held = self.held([section])
                full = sum(v * h for v, h in zip(worth, held, strict=True))
                own = sum(v * min(h, max(0, n)) for v, h, n in zip(worth, held, left, strict=True))
                if own < PROPER * full:
                    worth = [v / 2 if h > n else v for v, h, n in zip(worth, held, left, strict=True)]
                    break
                taken.append(section)
                left = [n - h for n, h in zip(left, held, strict=True)]
                at = round((self.length(section) + self.question.kerf) / self.question.step)
                rest = int(g.lengths[x]) - -(-at // g.unit)
                x = int(np.searchsorted(g.lengths, rest, "right")) - 1
                if x < 0:
                    return self.made(board, taken)
        return self.made(board, taken)

    def _sections(self, x: int, w: int) -> list[Section]:
        """The most valuable sections of so much length and width."""
        g = self.grid
        out: list[Section] = []
        last = self._boards[w][1]
        while x >= 0:
            y = int(last[x])
            if y < 0:
                x -= 1
                continue
            out.append(self._divided(y, w))
            x = int(g.between[x, y])
        return out

    def trimmed(self, division: Division, need: Sequence[int]) -> Division:
        """A division without the sections that add nothing to what is wanted."""
        if all(h <= n for h, n in zip(division.held, need, strict=True)):
            return division
        kept = list(division.sections)
        held = list(division.held)
        for section in sorted(division.sections, key=self.length, reverse=True):
            own = self.held([section])
            without = [h - o for h, o in zip(held, own, strict=True)]
            if all(min(h, n) == min(w, n) for h, w, n in zip(held, without, need, strict=True)):
                kept.remove(section)
                held = without
        return self.made(division.board, kept)

    def made(self, board: int, sections: Sequence[Section]) -> Division:
        """A board with some sections."""
        used = sum(self.length(section) + self.question.kerf for section in sections) - self.question.kerf
        cost = self.question.paid(board, used) if sections else 0.0
        return Division(board, tuple(sections), self.held(sections), cost)

    def length(self, section: Section) -> float:
        """Length of a section: of its longest strip [mm]."""
        q = self.question
        return max(sum(q.wanted[k].length for k in kinds) + q.kerf * (len(kinds) - 1) for _, kinds in section)

    def _divided(self, x: int, w: int) -> Section:
        found: list[Strip] = []
        while w > 0:
            s = int(self._width[x, w])
            if s == 0:
                w -= 1
                continue
            found.append((s, self._pieces(x, s)))
            w -= s
        return tuple(found)

    def _pieces(self, x: int, s: int) -> tuple[int, ...]:
        found = []
        while x >= 0:
            kind = int(self._piece[x, s])
            if kind < 0:
                x -= 1
                continue
            found.append(kind)
            x = int(self.grid.before[x, kind])
        return tuple(found)

    def held(self, sections: Sequence[Section]) -> tuple[int, ...]:
        """What sections hold of each kind."""
        g = self.grid
        count = len(g.kind)
        out = [0] * (2 * count)
        for section in sections:
            for s, kinds in section:
                for kind in kinds:
                    out[kind] += s - g.cut if g.kind[kind] else 1
                    out[count + kind] += bool(g.kind[kind])
        return tuple(out)


class LinearDivisions:
    """The cheapest choice of divisions when each may be used in part."""

    def __init__(
        self,
        question: PanelQuestion,
        need: Sequence[int],
        counts: Sequence[int | None],
        clipped: bool = False,
    ) -> None:
        from ortools.math_opt.python import mathopt

        self._model = mathopt.Model()
        self._most = list(need) if clipped else [10**9] * len(need)
        self.divisions: list[Division] = []
        self.cost = 0.0
        self.uses: list[float] = []
        """How often each division is used, after `solve`."""
        self._columns: list[Any] = []
        self._rows = [self._model.add_linear_constraint(lb=float(n)) for n in need]
        self._limits = [None if n is None else self._model.add_linear_constraint(ub=float(n)) for n in counts]
        dear = 50 * max((b.cost for b in question.boards), default=1.0)
        self._missing = []
        for row, n in zip(self._rows, need, strict=True):
            missing = self._model.add_variable(lb=0.0)
            self._model.objective.set_linear_coefficient(missing, dear / max(1, n))
            row.set_coefficient(missing, 1.0)
            self._missing.append((missing, max(1, n)))
        self._solver = mathopt.IncrementalSolver(self._model, mathopt.SolverType.GLOP)
        self.missing = 0.0
        """Shares of what is wanted that are missing, added up."""

    def add(self, division: Division) -> None:
        """Offer a division; when clipped, no more of it counts than is wanted, which is all a whole choice can use."""
        x = self._model.add_variable(lb=0.0)
        self.divisions.append(division)
        self._columns.append(x)
        self._model.objective.set_linear_coefficient(x, division.cost)
        for row, n, most in zip(self._rows, division.held, self._most, strict=True):
            if n and most:
                row.set_coefficient(x, float(min(n, most)))
        limit = self._limits[division.board]
        if limit is not None:
            limit.set_coefficient(x, 1.0)

    def solve(self) -> tuple[list[float], list[float]]:
        """Values of the kinds, and what one more of each board would save."""
        result: Any = self._solver.solve()
        self.cost = result.objective_value()
        values = result.variable_values()
        self.missing = sum(values[x] / n for x, n in self._missing)
        self.uses = [values[x] for x in self._columns]
        duals = result.dual_values()
        return (
            [max(0.0, duals[r]) for r in self._rows],
            [0.0 if r is None else max(0.0, -duals[r]) for r in self._limits],
        )


def choose_divisions(
    divisions: Sequence[Division],
    need: Sequence[int],
    counts: Sequence[int | None],
    known: Sequence[Division],
    stop: Callable[[], bool],
) -> list[Division]:
    """The cheapest whole choice of divisions.

    Args:
        divisions: to choose from.
        need: what is wanted.
        counts: how many there are of each board.
        known: a choice that is known already, to begin with.
        stop: ends the search when it says True.

    Returns:
        The choice; empty when none was found.
    """
    from ortools.sat.python import cp_model

    model = cp_model.CpModel()
    most = [max(need) if counts[d.board] is None else counts[d.board] for d in divisions]
    uses = [model.new_int_var(0, n, "") for n in most]
    for k, n in enumerate(need):
        if n:
            model.add(
                sum(min(n, d.held[k]) * x for d, x in zip(divisions, uses, strict=True) if d.held[k]) >= n
            )
    for board, count in enumerate(counts):
        own = [x for d, x in zip(divisions, uses, strict=True) if d.board == board]
        if own and count is not None:
            model.add(sum(own) <= count)
    dearest = max(d.cost for d in divisions)
    model.minimize(
        sum(round(d.cost / dearest * COST_STEPS) * x for d, x in zip(divisions, uses, strict=True))
    )
    times = Counter(known)
    for d, x in zip(divisions, uses, strict=True):
        model.add_hint(x, times[d])
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 0
    solver.parameters.max_deterministic_time = WORK
    if solve_model(solver, model, stop) not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return []
    return [d for d, x in zip(divisions, uses, strict=True) for _ in range(solver.value(x))]
