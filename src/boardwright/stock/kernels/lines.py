"""Patterns along a bar, compiled."""

from __future__ import annotations

import numpy as np
from numba import njit


@njit(cache=True)
def best_after(sizes, values, copies, capacity):
    """Best value of the things from each one on, for every capacity."""
    n = sizes.shape[0]
    best = np.zeros((n + 1, capacity + 1), np.int64)
    for i in range(n - 1, -1, -1):
        best[i] = best[i + 1]
        left, take = copies[i], 1
        while left > 0:
            take = min(take, left)
            room, gain = take * sizes[i], take * values[i]
            for c in range(capacity, room - 1, -1):
                found = best[i, c - room] + gain
                if found > best[i, c]:
                    best[i, c] = found
            left -= take
            take *= 2
    return best


@njit(cache=True)
def worthy(sizes, values, copies, capacity, least, most_found):
    """All fills of a bar that are worth at least so much, and to which nothing more can be added.

    Args:
        sizes: of the things, falling.
        values: of one copy.
        copies: of each at most.
        capacity: of the bar.
        least: value that counts.
        most_found: more are not listed.

    Returns:
        Copies of each thing, a row for each fill, and whether these are all.
    """
    n = sizes.shape[0]
    best = best_after(sizes, values, copies, capacity)
    found = np.zeros((most_found, n), np.int16)
    number = 0
    take = np.full(n + 1, -1, np.int64)
    left, worth = np.zeros(n + 1, np.int64), np.zeros(n + 1, np.int64)
    left[0] = capacity
    i = 0
    while i >= 0:
        if i == n:
            more = False
            for k in range(n):
                more = more or (take[k] < copies[k] and sizes[k] <= left[n])
            if not more and worth[n] >= least:
                if number == most_found:
                    return found, False
                for k in range(n):
                    found[number, k] = take[k]
                number += 1
            i -= 1
            continue
        if take[i] == -1:
            take[i] = min(copies[i], left[i] // sizes[i])
        elif take[i] == 0:
            take[i] = -1
            i -= 1
            continue
        else:
            take[i] -= 1
        left[i + 1] = left[i] - take[i] * sizes[i]
        worth[i + 1] = worth[i] + take[i] * values[i]
        if worth[i + 1] + best[i + 1, left[i + 1]] >= least:
            i += 1
            if i < n:
                take[i] = -1
    return found[:number], True
