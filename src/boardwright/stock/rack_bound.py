"""What no layout can cost less than, where only so many of some stocks are there.

The search's own bounds take no account of how few there are. This one shares the items out among the stocks by area,
each stock used or not, no item on a stock that is too small for it, and no more copies of an item on a stock than
would fit with nothing else on it. Every real layout is such a sharing out, so none costs less than the cheapest.
"""

from __future__ import annotations

from math import ceil, floor
from typing import Any

from boardwright.stock.instance import Instance, Item, StockSize
from boardwright.stock.scaled import layings, roomy
from boardwright.stock.units import UNITS_PER_MM

EFFORT = 1.0
"""Deterministic seconds of the solver; a bound that it has not proven by then is lower, not wrong."""
COST_STEP = 1e-6
"""Costs are rounded to this where stocks are made."""


def rack_bound(instance: Instance) -> float:
    """Least that any layout of all items can cost.

    Args:
        instance: the question; some of its stocks are there in any number.

    Returns:
        A bound, in the units of the stocks' costs; 0 where the items cannot even be shared out.
    """
    from ortools.sat.python import cp_model

    kerf = round(instance.kerf * UNITS_PER_MM)
    model = cp_model.CpModel()
    total = sum(item.count for item in instance.items)
    used = []
    on: list[list[Any]] = [[] for _ in instance.items]
    for stock in instance.stocks:
        length, width = roomy(stock, kerf)
        use = model.new_int_var(0, total if stock.count is None else min(stock.count, total), "")
        used.append(use)
        areas = []
        for n, item in enumerate(instance.items):
            most = _alone(item, stock, kerf)
            if most == 0 or item.count == 0:
                continue
            copies = model.new_int_var(0, item.count, "")
            model.add(copies <= most * use)
            on[n].append(copies)
            a, b, _ = layings(item, kerf)[0]
            areas.append(floor(a / UNITS_PER_MM * (b / UNITS_PER_MM)) * copies)
        if areas:
            model.add(
                sum(areas) <= ceil(length / UNITS_PER_MM * (width / UNITS_PER_MM) - _lost(stock, kerf)) * use
            )
    for n, item in enumerate(instance.items):
        if item.count:
            model.add(sum(on[n]) == item.count)
    costs = [floor(s.cost / COST_STEP + 1e-3) for s in instance.stocks]
    model.minimize(sum(c * use for c, use in zip(costs, used, strict=True)))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 0
    solver.parameters.max_deterministic_time = EFFORT
    status = solver.solve(model)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return 0.0
    return float(ceil(solver.best_objective_bound - 1e-6) * COST_STEP)


def _lost(stock: StockSize, kerf: int) -> float:
    """Area that defects take for certain [mm2]: a saw's cut may lie on their near edges; those that overlap once."""
    saw = kerf / UNITS_PER_MM
    x0, y0 = stock.trim_length, stock.trim_width
    x1, y1 = stock.length - x0, stock.width - y0
    lost = 0.0
    seen: list[tuple[float, float, float, float]] = []
    for d in stock.defects:
        box = (max(d.x0 + saw, x0), max(d.y0 + saw, y0), min(d.x1, x1), min(d.y1, y1))
        if box[0] >= box[2] or box[1] >= box[3]:
            continue
        if any(box[0] < b[2] and b[0] < box[2] and box[1] < b[3] and b[1] < box[3] for b in seen):
            continue
        seen.append(box)
        lost += (box[2] - box[0]) * (box[3] - box[1])
    return lost


def _alone(item: Item, stock: StockSize, kerf: int) -> int:
    """Most copies of an item on a stock with nothing else: exact unless it may be turned, then by area."""
    length, width = roomy(stock, kerf)
    ways = layings(item, kerf)
    counts = [(length // a) * (width // b) for a, b, _ in ways]
    if len(ways) == 1:
        return counts[0]
    return (length * width) // (ways[0][0] * ways[0][1]) if any(counts) else 0
