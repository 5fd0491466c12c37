"""The best division of one stock by cuts of any number of stages, copies without limit, compiled."""

from __future__ import annotations

import numpy as np
from numba import njit


@njit(cache=True)
def sums(sizes, capacity):
    """All sums of sizes up to a capacity, with repeats, and the capacity; and the last of them by length."""
    made = np.zeros(capacity + 1, np.bool_)
    made[0] = True
    for size in sizes:
        for c in range(size, capacity + 1):
            if made[c - size]:
                made[c] = True
    made[capacity] = True
    points = np.nonzero(made)[0]
    below = np.zeros(capacity + 1, np.int64)
    at = 0
    for c in range(capacity + 1):
        if made[c] and c > 0:
            at += 1
        below[c] = at
    return points, below


@njit(cache=True)
def free_values(shapes, values, a, b):
    """Best value of every rectangle whose sides are sums of part sizes.

    Source:
        Beasley, Algorithms for unconstrained two-dimensional guillotine cutting, Journal of the Operational
        Research Society 36 (1985) 297-306: the recursion over discretisation points (from memory).

    Args:
        shapes: a and b of each way to lay a part.
        values: of each way.
        a: the stock's extent in direction a.
        b: the same in direction b.

    Returns:
        The points along a and b, the values, and what makes them: 0 nothing, n > 0 part n - 1, n < 0 a cut
        at point -n along a, or at point -n - (number of points) along b.
    """
    along, below_a = sums(shapes[:, 0], a)
    across, below_b = sums(shapes[:, 1], b)
    rows, columns = along.shape[0], across.shape[0]
    best = np.zeros((rows, columns), np.int64)
    made = np.zeros((rows, columns), np.int32)
    for p in range(1, rows):
        row = best[p]
        for n in range(shapes.shape[0]):
            if shapes[n, 0] <= along[p]:
                for q in range(below_b[shapes[n, 1]], columns):
                    if values[n] > row[q]:
                        row[q] = values[n]
                        made[p, q] = n + 1
        for q in range(1, columns):
            if best[p - 1, q] > row[q]:
                row[q], made[p, q] = best[p - 1, q], made[p - 1, q]
        for left in range(1, p):
            if 2 * along[left] > along[p]:
                break
            low, high = best[left], best[below_a[along[p] - along[left]]]
            for q in range(1, columns):
                if low[q] + high[q] > row[q]:
                    row[q] = low[q] + high[q]
                    made[p, q] = -left
        for q in range(1, columns):
            if row[q - 1] > row[q]:
                row[q], made[p, q] = row[q - 1], made[p, q - 1]
            for left in range(1, q):
                if 2 * across[left] > across[q]:
                    break
                found = row[left] + row[below_b[across[q] - across[left]]]
                if found > row[q]:
                    row[q] = found
                    made[p, q] = -left - rows
    return along, across, best, made
