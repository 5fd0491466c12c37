"""The most valuable patterns along a bar, looked for on a coarse grid first.

A bar whose lengths share no round step has a grid of many thousand steps, and the dynamic programme looks at all of
them for every piece. On a coarse grid pieces are rounded up, so its patterns are sound; those of them that are worth
more than their bar serve the linear choice as well. Only when there are none is the fine grid asked.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from boardwright.stock.patterns import Pattern, pattern
from boardwright.stock.pricing import Pricer
from boardwright.stock.scaled import Scaled, Shape

COARSE, FINE = 3000, 20_000
"""Most steps of the coarse grid along a bar, and steps from which on a grid is fine."""
SUCCESSIVE, SUCCESSIVE_WORTH = 8, 0.98
"""Bars that are filled one after another in a round of pricing, and what each must be worth against the first."""
WORTH_MORE = 1.0001
"""A pattern that is found on the coarse grid must be worth so much more than its bar."""


def is_fine(question: Scaled) -> bool:
    """Whether a question of bars has so fine a grid that the coarse one pays."""
    return max(r.b for r in question.rooms) >= FINE


def _coarser(question: Scaled) -> Scaled:
    """A question of bars on the coarse grid, pieces rounded up."""
    step = -(-max(r.b for r in question.rooms) // COARSE)

    def shape(fine: Shape) -> Shape:
        return replace(fine, b=-(-fine.b // step))

    return replace(
        question,
        shapes=tuple(shape(s) for s in question.shapes),
        by_item=tuple(tuple(shape(s) for s in own) for own in question.by_item),
        rooms=tuple(replace(r, b=r.b // step) for r in question.rooms),
        exact=False,
    )


def fills(question: Scaled, values: Sequence[int], wanted: Sequence[int], length: int) -> list[Pattern]:
    """The best pattern along a bar, then those for the copies that it leaves, as far as they are worth it.

    Args:
        question: of bars.
        values: of one copy of each item.
        wanted: copies of each item, at most.
        length: of the bar (grid).

    Returns:
        The patterns, no two with the same copy.
    """
    found: list[Pattern] = []
    for what in _in_turn(question, values, wanted, length):
        if len(found) > SUCCESSIVE or (
            found and worth(what, values) < SUCCESSIVE_WORTH * worth(found[0], values)
        ):
            break
        found.append(what)
    return found


def coarse_fills(
    question: Scaled, values: Sequence[int], wanted: Sequence[int], costs: Mapping[int, float]
) -> list[Pattern]:
    """Patterns of the fine grid, found on a coarse one, that are worth more than their bar.

    Args:
        question: of bars.
        values: of one copy of each item.
        wanted: copies of each item, at most.
        costs: of each bar, in the unit of the values.

    Returns:
        The patterns, for each bar no two with the same copy; none when the grid is coarse already.
    """
    found: list[Pattern] = []
    if is_fine(question):
        coarse = _coarser(question)
        for room in coarse.rooms:
            for what in _in_turn(coarse, values, wanted, room.b):
                if worth(what, values) < WORTH_MORE * costs[room.stock]:
                    break
                found.append(_finer(question, what))
    return found


def _in_turn(
    question: Scaled, values: Sequence[int], wanted: Sequence[int], length: int
) -> Iterator[Pattern]:
    """The best pattern along a bar, then the best one for the copies that are left, and so on."""
    left = list(wanted)
    while any(left):
        what = pattern(question, Pricer(question, values, left, (1, length)).sections(1))
        if not what.sections:
            return
        yield what
        left = [w - n for w, n in zip(left, what.counts, strict=True)]


def worth(what: Pattern, values: Sequence[int]) -> int:
    """Value of all that a pattern holds."""
    return sum(v * n for v, n in zip(values, what.counts, strict=True))


def _finer(question: Scaled, coarse: Pattern) -> Pattern:
    """A pattern of the coarse grid on the fine one."""
    own = {(s.item, s.turned): s for s in question.shapes}
    return pattern(
        question,
        [tuple(tuple(own[p.item, p.turned] for p in strip) for strip in part) for part in coarse.sections],
    )
