"""The most valuable pattern for one stock, when every item has a value."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from boardwright.stock.patterns import Pattern, Section, pattern
from boardwright.stock.scaled import Scaled, Shape

MOST_EXTENTS = 48
"""Most section extents that are tried for three stages, unless all are asked for."""


class Pricer:
    """Dynamic programmes over strips for one question and one set of values.

    The copies of an item are limited within a strip but not between strips, so a pattern may hold more of it
    than is wanted and its value is never below that of the best pattern. With three stages only some extents
    of sections are tried unless `every` is set; the value is such a bound only when they all are.
    """

    def __init__(
        self,
        question: Scaled,
        values: Sequence[int],
        remaining: Sequence[int],
        room: tuple[int, int],
        every: bool = False,
    ) -> None:
        self.question = question
        self.a, self.b = room
        self.shapes = [
            s
            for s in question.shapes
            if remaining[s.item] > 0 and values[s.item] > 0 and s.a <= self.a and s.b <= self.b
        ]
        self.empty = not self.shapes
        if self.empty:
            return
        if question.sections:
            self._three(values, remaining, every)
        else:
            self._two(values, remaining)

    def _levels(self, values: Sequence[int], remaining: Sequence[int], along_a: bool) -> None:
        """Best strips; parts in the order in which the steps name them."""
        from boardwright.stock.kernels.knapsack import strip_levels

        self.shapes.sort(key=lambda s: (s.b, s.item, s.a) if along_a else (s.a, s.item, s.b))
        parts = [
            (s.a if along_a else s.b, s.b if along_a else s.a, values[s.item], remaining[s.item])
            for s in self.shapes
        ]
        found = strip_levels(np.array(parts, np.int64), self.a if along_a else self.b)
        self.levels, self.strips, self.steps, self.better = found

    def _two(self, values: Sequence[int], remaining: Sequence[int]) -> None:
        """Sections are strips along b: one for every extent that a part has."""
        from boardwright.stock.kernels.knapsack import stack

        self._levels(values, remaining, along_a=False)
        self.extents = self.levels[:, 0]
        self.best, self.last = stack(self.extents, self.strips[:, self.b], self.a)

    def _three(self, values: Sequence[int], remaining: Sequence[int], every: bool) -> None:
        """Strips along a for every extent of a section, stacked along b; then the sections."""
        from boardwright.stock.kernels.knapsack import changes, stack, stacks

        self._levels(values, remaining, along_a=True)
        self.extents = changes(self.strips) if every else self._likely()
        worth, self.inner = stacks(self.levels[:, 0], self.strips, self.extents, self.b)
        self.best, self.last = stack(self.extents, worth, self.a)

    def _likely(self) -> np.ndarray:
        """Extents that a part has, and the whole; thinned out evenly when there are many."""
        own = sorted({s.a for s in self.shapes})
        if len(own) > MOST_EXTENTS:
            own = [own[n * (len(own) - 1) // (MOST_EXTENTS - 1)] for n in range(MOST_EXTENTS)]
        return np.array(sorted({*own, self.a}), np.int64)

    def value(self, a: int) -> int:
        """Value of the best pattern for a stock of this extent in direction a and the whole of b."""
        return 0 if self.empty else int(self.best[min(a, self.a)])

    def sections(self, a: int) -> list[Section]:
        """Sections of the best pattern for extent a."""
        found: list[Section] = []
        left = min(a, self.a)
        while not self.empty and self.last[left] >= 0:
            n = int(self.last[left])
            found.append(self._section(n))
            left -= int(self.extents[n])
        return found

    def every_section(self) -> list[Section]:
        """The best section of every extent."""
        return [] if self.empty else [self._section(n) for n in range(len(self.extents))]

    def _section(self, n: int) -> Section:
        if not self.question.sections:
            return tuple((s,) for s in self._strip(n, self.b))
        found = []
        left = self.b
        while self.inner[n, left] >= 0:
            level = int(self.inner[n, left])
            found.append(tuple(self._strip(level, int(self.extents[n]))))
            left -= int(self.levels[level, 0])
        return tuple(found)

    def _strip(self, level: int, length: int) -> list[Shape]:
        """Parts of the best strip of a level, in a steady order."""
        found: list[Shape] = []
        for step in range(int(self.levels[level, 1]) - 1, -1, -1):
            if self.better[step, length]:
                part, take = (int(x) for x in self.steps[step])
                found += [self.shapes[part]] * take
                size = self.shapes[part].a if self.question.sections else self.shapes[part].b
                length -= take * size
        return found[::-1]


def fill(question: Scaled, values: Sequence[int], wanted: Sequence[int], room: tuple[int, int]) -> Pattern:
    """A good pattern that holds no more of anything than is wanted.

    The best pattern without that limit is found; its section with the densest value is kept as far as copies
    last; then the rest of the stock is filled in the same way.

    Args:
        question: the question.
        values: of each item.
        wanted: copies of each item, at most.
        room: the stock's extents (grid).

    Returns:
        The pattern.
    """
    remaining = list(wanted)
    kept: list[Section] = []
    a, b = room
    while a > 0 and any(remaining):
        sections = Pricer(question, values, remaining, (a, b)).sections(a)
        choices = [c for s in sections if (c := _within(s, remaining))]
        if not choices:
            break
        best = max(choices, key=lambda s: (_density(s, values), -_extent(s)))
        kept.append(best)
        a -= _extent(best)
        for strip in best:
            for part in strip:
                remaining[part.item] -= 1
    return pattern(question, kept)


def _within(section: Section, remaining: Sequence[int]) -> Section:
    left = list(remaining)
    strips = []
    for strip in section:
        parts = []
        for part in strip:
            if left[part.item] > 0:
                left[part.item] -= 1
                parts.append(part)
        if parts:
            strips.append(tuple(parts))
    return tuple(strips)


def _extent(section: Section) -> int:
    return max(sum(p.a for p in strip) for strip in section)


def _density(section: Section, values: Sequence[int]) -> float:
    return sum(values[p.item] for strip in section for p in strip) / _extent(section)
