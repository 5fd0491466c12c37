"""Choosing patterns: the linear programme that values the items, and the whole-number choice."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from math import floor, gcd, inf
from threading import Thread
from typing import Any

import numpy as np

from boardwright.stock.patterns import Pattern
from boardwright.stock.scaled import Room

COST_STEPS = 100_000_000
"""Costs are taken to this part of a unit."""
LARGEST = 1_000_000
"""Largest cost of a stock in the whole-number choice."""
LOOK_EVERY = 0.02
"""Seconds between two questions whether to stop, while CP-SAT works."""


@dataclass(frozen=True, slots=True)
class Column:
    """A pattern on a stock, for one direction of first cut."""

    way: int
    what: Pattern
    room: Room


def cost_steps(cost: float) -> int:
    """A cost in whole steps, down (but not for the last bit of a float), so that bounds stay true."""
    return floor(cost * COST_STEPS + 1e-3)


def cost_step(rooms: Sequence[Room]) -> float:
    """The least difference between two costs of sums of stocks."""
    return gcd(*(cost_steps(r.cost) for r in rooms)) / COST_STEPS


def whole_costs(rooms: Sequence[Room]) -> dict[int, int]:
    """Costs of the stocks as small whole numbers, by stock; rounded up only when they are very unlike."""
    steps = {r.stock: cost_steps(r.cost) for r in rooms}
    step = gcd(*steps.values()) or 1
    whole = {stock: cost // step for stock, cost in steps.items()}
    dearest = max(whole.values())
    if dearest <= LARGEST:
        return whole
    return {stock: -(-cost * LARGEST // dearest) for stock, cost in whole.items()}


class LinearChoice:
    """The cheapest choice of patterns when each may be used in part; patterns come, demand goes.

    Limited counts of stocks are kept by paying for copies that are missing. The solver is told what changed
    and goes on from its last answer.
    """

    def __init__(self, wanted: Sequence[int], rooms: Sequence[Room]) -> None:
        from ortools.math_opt.python import mathopt

        self._model = mathopt.Model()
        self._rows = [self._model.add_linear_constraint(lb=float(n)) for n in wanted]
        self._limits = {
            r.stock: self._model.add_linear_constraint(ub=float(r.count))
            for r in rooms
            if r.count is not None
        }
        self.columns: list[Column] = []
        self._uses: list[Any] = []
        self._held: list[tuple[int, ...]] = []
        self._open: list[bool] = []
        self._counts = {r.stock: r.count for r in rooms if r.count is not None}
        dearest = max(r.cost for r in rooms) or 1.0
        self._missing = []
        for row in self._rows:
            missing = self._model.add_variable(lb=0.0)
            self._missing.append(missing)
            self._model.objective.set_linear_coefficient(missing, 10 * dearest)
            row.set_coefficient(missing, 1.0)
        self._solver = mathopt.IncrementalSolver(self._model, mathopt.SolverType.GLOP)
        self._result: Any = None
        self._asked = mathopt.ModelSolveParameters(
            variable_values_filter=mathopt.VariableFilter(skip_zero_values=True),
            reduced_costs_filter=mathopt.VariableFilter(filtered_items=[]),
        )
        self.cost = 0.0
        """Of the choice that was found last, with what was paid for copies that are missing."""

    def add(self, column: Column) -> None:
        """Offer a pattern."""
        x = self._model.add_variable(lb=0.0)
        self._model.objective.set_linear_coefficient(x, column.room.cost)
        for row, n in zip(self._rows, column.what.counts, strict=True):
            if n:
                row.set_coefficient(x, float(n))
        if column.room.stock in self._limits:
            self._limits[column.room.stock].set_coefficient(x, 1.0)
        self.columns.append(column)
        self._uses.append(x)
        self._held.append(column.what.counts)
        self._open.append(True)

    def narrow(self, wanted: Sequence[int], used: Mapping[int, int]) -> None:
        """Want less (or all again), and offer only patterns that hold no more than that.

        Args:
            wanted: copies of each item.
            used: stocks of limited count that are used up already, by stock.
        """
        for row, n in zip(self._rows, wanted, strict=True):
            row.lower_bound = float(n)
        if self._held:
            fits: list[bool] = np.all(np.array(self._held) <= np.array(wanted), axis=1).tolist()
            for k in [k for k, (f, o) in enumerate(zip(fits, self._open, strict=True)) if f != o]:
                self._open[k] = fits[k]
                self._uses[k].upper_bound = inf if fits[k] else 0.0
        for stock, limit in self._limits.items():
            limit.upper_bound = float(self._counts[stock] - used.get(stock, 0))

    def solve(self) -> list[float]:
        """Values of one copy of each item, in units of cost; all 0 when the solver gives up."""
        from ortools.math_opt.python import mathopt

        self._result = self._solved() or self._solved(anew=True)
        if not self._result or self._result.termination.reason != mathopt.TerminationReason.OPTIMAL:
            return [0.0] * len(self._rows)
        self.cost = self._result.objective_value()
        return [max(0.0, v) for v in self._result.dual_values(self._rows)]

    def _solved(self, anew: bool = False) -> Any:
        """What the solver finds, going on from its last answer or anew; None when it breaks down."""
        from ortools.math_opt.python import mathopt

        if anew:
            self._solver = mathopt.IncrementalSolver(self._model, mathopt.SolverType.GLOP)
        try:
            return self._solver.solve(model_params=self._asked)
        except Exception:  # a numerical breakdown comes as whatever its bindings make of it
            return None

    def uses(self) -> list[float]:
        """How often each column is used, after `solve`; never when the solver gave up."""
        if not self._result or not self._result.has_primal_feasible_solution():
            return [0.0] * len(self._uses)
        values = self._result.variable_values()
        return [values.get(x, 0.0) for x in self._uses]


def choose(
    columns: Sequence[Column],
    wanted: Sequence[int],
    rooms: Sequence[Room],
    sizes: Sequence[int],
    start: Sequence[int],
    seed: int,
    effort: float,
    least: int,
    stop: Callable[[], bool],
    target: float = inf,
) -> tuple[list[int], bool]:
    """A whole-number choice of patterns that holds every copy, at least cost, then of fewest stocks.

    Args:
        columns: the patterns to choose from.
        wanted: copies of each item.
        rooms: the stocks.
        sizes: areas of the items, to weigh copies that must be left out when counts are limited.
        start: how often each column is used in a choice that is known.
        seed: of the search.
        effort: limit of the search, in the solver's deterministic seconds.
        least: no choice has fewer stocks than this.
        stop: ends the search when it says True.
        target: most that the stocks may cost; the first choice that keeps to it will do.

    Returns:
        How often each column is used (as at the start when nothing was found), and whether no choice of these
        columns is better, or, with a target, none keeps to it.
    """
    from ortools.sat.python import cp_model

    model = cp_model.CpModel()
    total = sum(wanted)
    costs = whole_costs(rooms)
    uses = []
    for n, column in enumerate(columns):
        most = max(
            (-(-wanted[i] // c) for i, c in enumerate(column.what.counts) if c and wanted[i]), default=0
        )
        limit = most if column.room.count is None else min(most, column.room.count)
        uses.append(model.new_int_var(0, max(limit, start[n]), f"x{n}"))
        model.add_hint(uses[n], start[n])
    pairs = list(zip(columns, uses, strict=True))
    terms = [(costs[c.room.stock] * (total + 1) + 1) * use for c, use in pairs]
    limited = any(r.count is not None for r in rooms)
    for item, n in enumerate(wanted):
        held = [c.what.counts[item] * use for c, use in pairs if c.what.counts[item]]
        if limited and n:
            missing = model.new_int_var(0, n, "")
            held.append(missing)
            price = max(1, max(costs.values())) * (total + 1) * (1 + 9 * sizes[item] // max(sizes))
            terms.append(price * (total + 1) * missing)
        if n:
            model.add(sum(held) >= n)
    for room in rooms:
        if room.count is not None:
            model.add(sum(use for c, use in pairs if c.room.stock == room.stock) <= room.count)
    if not limited:
        model.add(sum(uses) >= least)
    if target < inf:
        most = floor(target * COST_STEPS + 1) * costs[rooms[0].stock] // max(1, cost_steps(rooms[0].cost))
        model.add(sum(costs[c.room.stock] * use for c, use in pairs) <= most)
    else:
        model.minimize(sum(terms))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.linearization_level = 2
    solver.parameters.random_seed = seed
    solver.parameters.max_deterministic_time = effort
    status = solve_model(solver, model, stop)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return list(start), status == cp_model.INFEASIBLE
    return [solver.value(use) for use in uses], status == cp_model.OPTIMAL


def solve_model(solver: Any, model: Any, stop: Callable[[], bool]) -> Any:
    """Solve a model of CP-SAT, and ask `stop` while it works.

    Args:
        solver: with its limits set.
        model: the model.
        stop: ends the search when it says True.

    Returns:
        The solver's status.
    """
    found: list[Any] = []
    work = Thread(target=lambda: found.append(solver.solve(model)))
    work.start()
    while work.is_alive():
        work.join(LOOK_EVERY)
        if stop():
            solver.stop_search()
    return found[0]
