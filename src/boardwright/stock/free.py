"""The most valuable division of one stock when copies and stages have no limit."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np

from boardwright.stock.patterns import Pattern
from boardwright.stock.scaled import Scaled, Shape


class FreeTable:
    """Best values of all rectangles that come up when one stock is divided (see `kernels.free`)."""

    def __init__(self, question: Scaled, values: Sequence[int], room: tuple[int, int]) -> None:
        from boardwright.stock.kernels.free import free_values

        self.question = question
        a, b = room
        self.shapes = [s for s in question.shapes if s.a <= a and s.b <= b and values[s.item] > 0]
        self.value = 0
        if self.shapes:
            sizes = np.array([(s.a, s.b) for s in self.shapes], np.int64)
            worth = np.array([values[s.item] for s in self.shapes], np.int64)
            self.along, self.across, self.best, self.made = free_values(sizes, worth, a, b)
            self.value = int(self.best[-1, -1])

    def pattern(self) -> Pattern:
        """The best pattern: nested stacks of parts, which may be deeper than sections of strips."""
        counts = [0] * len(self.question.counts)
        sections: Any = ()
        if self.shapes and self.value:
            tree = self._tree(len(self.along) - 1, len(self.across) - 1, counts)
            sections = (tree,) if isinstance(tree, Shape) else _alternating(tree, 0)
            return Pattern(sections, tuple(counts), int(self.along[-1]), int(self.across[-1]))
        return Pattern(sections, tuple(counts), 0, 0)

    def _tree(self, p: int, q: int, counts: list[int]) -> Any:
        """A rectangle: a part, or the side that is divided and what it is divided into; None for nothing."""
        code = int(self.made[p, q])
        if code == 0:
            return None
        if code > 0:
            shape = self.shapes[code - 1]
            counts[shape.item] += 1
            return shape
        side = 0 if -code < len(self.along) else 1
        kids: list[Any] = []
        for half in self._halves(p, q, code):
            tree = self._tree(*half, counts)
            if isinstance(tree, tuple) and tree[0] == side:
                kids += tree[1]
            elif tree is not None:
                kids.append(tree)
        return kids[0] if len(kids) == 1 else (side, kids)

    def _halves(self, p: int, q: int, code: int) -> list[tuple[int, int]]:
        rows = len(self.along)
        if -code < rows:
            rest = np.searchsorted(self.along, self.along[p] - self.along[-code], side="right") - 1
            return [(-code, q), (int(rest), q)]
        low = -code - rows
        rest = np.searchsorted(self.across, self.across[q] - self.across[low], side="right") - 1
        return [(p, low), (p, int(rest))]


def _alternating(tree: Any, side: int) -> Any:
    """Nested stacks whose direction changes at every level; the outermost is along `side`."""
    if isinstance(tree, Shape):
        return tree
    if tree[0] == side:
        return tuple(_alternating(kid, 1 - side) for kid in tree[1])
    return (tuple(_alternating(kid, side) for kid in tree[1]),)
