"""The best two-stage pattern for one stock, exactly, when copies are few: a model for CP-SAT.

Source:
    Lodi, Martello and Vigo, Models and bounds for two-dimensional level packing problems, Journal of
    Combinatorial Optimization 8 (2004) 363-379 (from memory): a part opens a section, others fill it.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from boardwright.stock.master import solve_model
from boardwright.stock.patterns import Pattern, pattern
from boardwright.stock.scaled import Scaled, Shape


def best_levels(
    question: Scaled,
    values: Sequence[int],
    room: tuple[int, int],
    known: tuple[int, int],
    seed: int,
    effort: float,
    stop: Callable[[], bool],
) -> tuple[Pattern | None, int]:
    """The most valuable pattern that holds no more of anything than is wanted.

    Args:
        question: of two stages.
        values: of one copy of each item.
        room: the stock's extents (grid).
        known: a value that is reached already, and one that cannot be passed.
        seed: of the solver.
        effort: limit of the search, in the solver's deterministic seconds.
        stop: ends the search when it says True.

    Returns:
        A pattern that is worth more than is known, if there is one; and a value that none can pass.
    """
    from ortools.sat.python import cp_model

    shapes = sorted(
        (s for s in question.shapes if question.counts[s.item] and s.a <= room[0] and s.b <= room[1]),
        key=lambda s: (-s.a, -s.b, s.item),
    )
    model = cp_model.CpModel()
    sections = []
    for n, opens in enumerate(shapes):
        before = None
        for _ in range(min(question.counts[opens.item], room[0] // opens.a)):
            used = model.new_bool_var("")
            holds = [
                model.new_int_var(0, min(question.counts[s.item], room[1] // s.b), "") for s in shapes[n:]
            ]
            pairs = list(zip(shapes[n:], holds, strict=True))
            model.add(sum(s.b * x for s, x in pairs) <= room[1] * used)
            model.add(holds[0] >= used)
            worth = sum(values[s.item] * x for s, x in pairs)
            if before is not None:
                model.add(before >= worth)
            before = worth
            sections.append((opens, used, pairs))
    model.add(sum(opens.a * used for opens, used, _ in sections) <= room[0])
    for item, count in enumerate(question.counts):
        held = [x for _, _, pairs in sections for s, x in pairs if s.item == item]
        if held:
            model.add(sum(held) <= count)
    total = sum(values[s.item] * x for _, _, pairs in sections for s, x in pairs)
    model.add(total >= known[0])
    model.add(total <= known[1])
    model.maximize(total)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.linearization_level = 2
    solver.parameters.random_seed = seed
    solver.parameters.max_deterministic_time = effort
    status = solve_model(solver, model, stop)
    bound = min(known[1], int(solver.best_objective_bound + 1e-6))
    if status == cp_model.INFEASIBLE:
        return None, known[0]
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return None, bound
    strips: list[tuple[tuple[Shape], ...]] = []
    for _, used, pairs in sections:
        if solver.value(used):
            strips.append(tuple((s,) for s, x in pairs for _ in range(solver.value(x))))
    return pattern(question, strips), bound
