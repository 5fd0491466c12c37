"""The most valuable pattern for one stock, when every item has a value."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from boardwright.stock.knapsack import Knapsack, Level, levels
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
        self.values, self.remaining = values, remaining
        self.top = Knapsack.empty(self.a)
        self.extents: list[int] = []
        if self.shapes and question.sections:
            self._three(every)
        elif self.shapes:
            self._two()

    def _parts(self, along_a: bool) -> list[tuple[int, int, int, int]]:
        return [
            (s.a if along_a else s.b, s.b if along_a else s.a, self.values[s.item], self.remaining[s.item])
            for s in self.shapes
        ]

    def _two(self) -> None:
        """Sections are strips along b: one for every extent that a part has."""
        self.inner, self.levels = levels(self._parts(along_a=False), self.b)
        best = 0
        for n, level in enumerate(self.levels):
            value = int(level.best[self.b])
            if value > best:
                best = value
                self.top.add(n, level.width, value, self.a // level.width)

    def _three(self, every: bool) -> None:
        """Strips along a for every extent of a section, stacked along b; then the sections."""
        self.inner, self.levels = levels(self._parts(along_a=True), self.a)
        shortest = min(s.a for s in self.shapes)
        extents = range(shortest, self.a + 1) if every else self._likely()
        self.extents = list(extents)
        columns = np.array(self.extents)
        self.middle = Knapsack.empty(self.b, rows=len(self.extents))
        before = np.zeros(len(self.extents), dtype=np.int64)
        for n, level in enumerate(self.levels):
            values = level.best[columns]
            if (values > before).any():
                self.middle.add(n, level.width, values[:, None], self.b // level.width)
                before = np.maximum(before, values)
        best = 0
        for m, extent in enumerate(self.extents):
            value = int(self.middle.best[m, self.b])
            if value > best:
                best = value
                self.top.add(m, extent, value, self.a // extent)

    def _likely(self) -> list[int]:
        """Extents that a part has, and the whole; thinned out evenly when there are many."""
        own = sorted({s.a for s in self.shapes})
        if len(own) > MOST_EXTENTS:
            own = [own[n * (len(own) - 1) // (MOST_EXTENTS - 1)] for n in range(MOST_EXTENTS)]
        return sorted({*own, self.a})

    def value(self, a: int, b: int) -> int:
        """Value of the best pattern for a stock of this size; b must be the whole b."""
        assert b == self.b
        return int(self.top.best[min(a, self.a)])

    def sections(self, a: int) -> list[Section]:
        """Sections of the best pattern for extent a."""
        return [self._section(n) for n in self.top.chosen(min(a, self.a))]

    def _section(self, n: int) -> Section:
        if not self.question.sections:
            return tuple((s,) for s in self._strip(self.levels[n], self.b))
        found = []
        for level in self.middle.chosen(self.b, row=n):
            strip = self._strip(self.levels[level], self.extents[n])
            if strip:
                found.append(tuple(strip))
        return tuple(found)

    def _strip(self, level: Level, length: int) -> list[Shape]:
        return [self.shapes[n] for n in self.inner.chosen(length, steps=level.steps)]


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
