"""A good two-stage pattern for one stock: the best choice of sections that are each best for disturbed values.

With the true values alone the sections are too much alike, and compete for the same copies.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from random import Random

from boardwright.stock.master import solve_model
from boardwright.stock.patterns import Pattern, Section, clipped, pattern, section_a
from boardwright.stock.pricing import Pricer
from boardwright.stock.scaled import Scaled

ROUNDS = 60
"""Sets of disturbed values."""
LOST = 0.1
"""Greatest part of its value that an item loses."""
LEFT_OUT = 0.25
"""Chance that an item is left out, in every other set."""
SHARPER = 64
"""Values are taken to this part of a unit."""
EFFORT = 0.5
"""Limit of the choice, in the solver's deterministic seconds."""


def best_sections(
    question: Scaled, values: Sequence[int], room: tuple[int, int], seed: int, stop: Callable[[], bool]
) -> Pattern:
    """Choose sections that are worth most together, with no more copies than are wanted.

    Args:
        question: of two stages.
        values: of one copy of each item.
        room: the stock's extents (grid).
        seed: of the random numbers.
        stop: ends the search when it says True.

    Returns:
        The pattern; it may be empty.
    """
    from ortools.sat.python import cp_model

    pool = _pool(question, values, room, seed)
    held = [Counter(p.item for strip in section for p in strip) for section in pool]
    model = cp_model.CpModel()
    uses = [model.new_int_var(0, room[0] // section_a(section), "") for section in pool]
    model.add(sum(section_a(s) * use for s, use in zip(pool, uses, strict=True)) <= room[0])
    worth = []
    for item, count in enumerate(question.counts):
        cut = model.new_int_var(0, count, "")
        model.add(cut <= sum(h[item] * use for h, use in zip(held, uses, strict=True) if h[item]))
        worth.append(values[item] * cut)
    model.maximize(sum(worth))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.linearization_level = 2
    solver.parameters.random_seed = seed
    solver.parameters.max_deterministic_time = EFFORT
    status = solve_model(solver, model, stop)
    found = status in (cp_model.OPTIMAL, cp_model.FEASIBLE)
    taken = [s for s, use in zip(pool, uses, strict=True) for _ in range(solver.value(use) if found else 0)]
    return clipped(question, pattern(question, taken), question.counts)


def _pool(question: Scaled, values: Sequence[int], room: tuple[int, int], seed: int) -> list[Section]:
    """Sections of every extent, for the values and for disturbed ones."""
    random = Random(seed)
    found: dict[Section, None] = {}
    for number in range(ROUNDS):
        lost = LOST if number else 0.0
        left_out = LEFT_OUT if number % 2 else 0.0
        worth = [round(SHARPER * v * (1 - lost * random.random())) for v in values]
        wanted = [n if random.random() >= left_out else 0 for n in question.counts]
        for section in Pricer(question, worth, wanted, room).every_section():
            found[section] = None
    return list(found)
