"""Choosing patterns: the linear programme that values the items, and the whole-number choice."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import floor, gcd
from typing import Any

from boardwright.stock.patterns import Pattern
from boardwright.stock.scaled import Room

COST_STEPS = 100_000_000
"""Costs are taken to this part of a unit."""
LARGEST = 1_000_000
"""Largest cost of a stock in the whole-number choice."""


@dataclass(frozen=True, slots=True)
class Column:
    """A pattern on a stock, for one direction of first cut."""

    way: int
    what: Pattern
    room: Room


def cost_steps(cost: float) -> int:
    """A cost in whole steps, down (but not for the last bit of a float), so that bounds stay true."""
    return floor(cost * COST_STEPS + 1e-3)


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

    Limited counts of stocks are kept by paying for copies that are missing.
    """

    def __init__(self, wanted: Sequence[int], rooms: Sequence[Room]) -> None:
        from ortools.linear_solver import pywraplp

        self._solver = pywraplp.Solver.CreateSolver("GLOP")
        self._infinity = self._solver.infinity()
        self._objective = self._solver.Objective()
        self._objective.SetMinimization()
        self._rows = [self._solver.Constraint(float(n), self._infinity) for n in wanted]
        self._limits = {
            r.stock: self._solver.Constraint(-self._infinity, float(r.count))
            for r in rooms
            if r.count is not None
        }
        self.columns: list[Column] = []
        self._uses: list[Any] = []
        dearest = max(r.cost for r in rooms) or 1.0
        for row in self._rows:
            missing = self._solver.NumVar(0, self._infinity, "")
            self._objective.SetCoefficient(missing, 10 * dearest)
            row.SetCoefficient(missing, 1.0)

    def add(self, column: Column) -> None:
        """Offer a pattern."""
        x = self._solver.NumVar(0, self._infinity, "")
        self._objective.SetCoefficient(x, column.room.cost)
        for row, n in zip(self._rows, column.what.counts, strict=True):
            if n:
                row.SetCoefficient(x, float(n))
        if column.room.stock in self._limits:
            self._limits[column.room.stock].SetCoefficient(x, 1.0)
        self.columns.append(column)
        self._uses.append(x)

    def narrow(self, wanted: Sequence[int], used: Mapping[int, int]) -> None:
        """Want less, and offer no pattern any more that holds more than that.

        Args:
            wanted: copies of each item.
            used: stocks of limited count that are used up already, by stock.
        """
        for row, n in zip(self._rows, wanted, strict=True):
            row.SetBounds(float(n), self._infinity)
        for column, x in zip(self.columns, self._uses, strict=True):
            if any(n > w for n, w in zip(column.what.counts, wanted, strict=True)):
                x.SetBounds(0.0, 0.0)
            if column.room.count is not None:
                self._limits[column.room.stock].SetBounds(
                    -self._infinity, float(column.room.count - used.get(column.room.stock, 0))
                )

    def solve(self) -> list[float]:
        """Values of one copy of each item, in units of cost; all 0 when the solver gives up."""
        if self._solver.Solve() != self._solver.OPTIMAL:
            return [0.0] * len(self._rows)
        return [max(0.0, row.dual_value()) for row in self._rows]

    def uses(self) -> list[float]:
        """How often each column is used, after `solve`."""
        return [x.solution_value() for x in self._uses]


def choose(
    columns: Sequence[Column],
    wanted: Sequence[int],
    rooms: Sequence[Room],
    sizes: Sequence[int],
    start: Sequence[int],
    seed: int,
    effort: float,
    least: int,
) -> list[int]:
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

    Returns:
        How often each column is used.
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
    model.minimize(sum(terms))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = seed
    solver.parameters.max_deterministic_time = effort
    status = solver.solve(model)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return list(start)
    return [solver.value(use) for use in uses]
