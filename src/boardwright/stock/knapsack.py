"""The knapsack by dynamic programming, on whole numbers."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

Table = npt.NDArray[np.int64]


def bundles(copies: int) -> Iterator[int]:
    """Bundle sizes 1, 2, 4, ... and a rest, of which any number up to `copies` can be made."""
    size = 1
    while copies > 0:
        take = min(size, copies)
        yield take
        copies -= take
        size *= 2


@dataclass(slots=True)
class Knapsack:
    """Best value for every size up to a capacity, while things are added.

    Attributes:
        best: best value by size; with rows, one knapsack a row, of things with equal sizes but other values.
        steps: what was added: which thing, how many at once, its size, and where taking it is better.
    """

    best: Table
    steps: list[tuple[int, int, int, npt.NDArray[np.bool_]]]

    @classmethod
    def empty(cls, capacity: int, rows: int | None = None) -> Knapsack:
        """With nothing in it yet."""
        shape = (capacity + 1,) if rows is None else (rows, capacity + 1)
        return cls(np.zeros(shape, dtype=np.int64), [])

    def add(self, thing: int, size: int, value: int | Table, copies: int) -> None:
        """Offer up to `copies` of a thing.

        Args:
            thing: its number, which comes back when the best choice is read.
            size: its size, above 0.
            value: its value; one a row (column vector) when there are rows.
            copies: how many there are.
        """
        capacity = self.best.shape[-1] - 1
        for bundle in bundles(min(copies, capacity // size)):
            room = bundle * size
            taken = self.best[..., :-room] + bundle * value
            better = taken > self.best[..., room:]
            if better.any():
                self.best[..., room:] = np.maximum(self.best[..., room:], taken)
                self.steps.append((thing, bundle, room, better))

    def chosen(self, capacity: int, row: int | None = None, steps: int | None = None) -> list[int]:
        """Things of the best choice for a capacity, of the first `steps` steps only, in a steady order."""
        result: list[int] = []
        for thing, bundle, room, better in reversed(self.steps[:steps]):
            where = better if row is None else better[row]
            if capacity >= room and where[capacity - room]:
                result += [thing] * bundle
                capacity -= room
        return result[::-1]


@dataclass(frozen=True, slots=True)
class Level:
    """Best strips that are at most so wide: their width, values by length, and steps of the knapsack."""

    width: int
    best: Table
    steps: int


def levels(parts: Sequence[tuple[int, int, int, int]], capacity: int) -> tuple[Knapsack, list[Level]]:
    """Best strips for every width that a part has.

    Args:
        parts: size along the strip, size across it, value, copies.
        capacity: length of the longest strip.

    Returns:
        The knapsack, in which things are numbers of parts, and its levels by rising width.
    """
    sack = Knapsack.empty(capacity)
    result: list[Level] = []
    by_width = sorted(range(len(parts)), key=lambda n: (parts[n][1], n))
    for place, n in enumerate(by_width):
        along, across, value, copies = parts[n]
        if value > 0:
            sack.add(n, along, value, copies)
        last = place + 1 == len(by_width) or parts[by_width[place + 1]][1] != across
        if last and (not result or len(sack.steps) > result[-1].steps):
            result.append(Level(across, sack.best.copy(), len(sack.steps)))
    return sack, result
