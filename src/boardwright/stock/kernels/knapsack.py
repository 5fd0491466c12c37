"""Knapsacks by dynamic programming on whole numbers, compiled."""

from __future__ import annotations

import numpy as np
from numba import njit


@njit(cache=True)
def bundles(copies):
    """How many bundles of 1, 2, 4, ... and a rest make every number up to `copies`."""
    number, size = 0, 1
    while copies > 0:
        copies -= min(size, copies)
        size *= 2
        number += 1
    return number


@njit(cache=True)
def strip_levels(parts, capacity):
    """Best strips for every width that a part has.

    Args:
        parts: size along the strip, size across it, value, copies; by rising size across.
        capacity: length of the longest strip.

    Returns:
        For each level its width and how many steps come before its end; values by level and length; for each
        step the part and how many at once; for each step and length whether taking it is better.
    """
    n = parts.shape[0]
    steps = 0
    for p in range(n):
        steps += bundles(min(parts[p, 3], capacity // parts[p, 0]))
    best = np.zeros(capacity + 1, np.int64)
    values = np.zeros((n, capacity + 1), np.int64)
    levels = np.zeros((n, 2), np.int64)
    step = np.zeros((steps, 2), np.int64)
    better = np.zeros((steps, capacity + 1), np.bool_)
    done, made, last = 0, 0, 0
    for p in range(n):
        along, across, value, copies = parts[p]
        copies = min(copies, capacity // along)
        size = 1
        while copies > 0:
            take = min(size, copies)
            room, gain, any_better = take * along, take * value, False
            for c in range(capacity, room - 1, -1):
                if best[c - room] + gain > best[c]:
                    best[c] = best[c - room] + gain
                    better[done, c] = True
                    any_better = True
            if any_better:
                step[done, 0], step[done, 1] = p, take
                done += 1
            copies -= take
            size *= 2
        if (p + 1 == n or parts[p + 1, 1] != across) and done > last:
            levels[made, 0], levels[made, 1] = across, done
            values[made] = best
            made += 1
            last = done
    return levels[:made], values[:made], step[:done], better[:done]


@njit(cache=True)
def stack(sizes, values, capacity):
    """Best stack of things, any number of each: value and last thing (-1: none) for every capacity."""
    best = np.zeros(capacity + 1, np.int64)
    last = np.full(capacity + 1, -1, np.int32)
    for n in range(sizes.shape[0]):
        for c in range(sizes[n], capacity + 1):
            if best[c - sizes[n]] + values[n] > best[c]:
                best[c] = best[c - sizes[n]] + values[n]
                last[c] = n
    return best, last


@njit(cache=True)
def stacks(widths, values, extents, capacity):
    """Best stack of strips for every extent of a section.

    Args:
        widths: of the levels.
        values: of the levels, by length.
        extents: lengths of strips, one a section.
        capacity: what the widths of a section may add up to.

    Returns:
        The value of each section, and its last level by capacity (-1: none).
    """
    result = np.zeros(extents.shape[0], np.int64)
    last = np.full((extents.shape[0], capacity + 1), -1, np.int16)
    best = np.zeros(capacity + 1, np.int64)
    for e in range(extents.shape[0]):
        best[:] = 0
        before = 0
        for n in range(widths.shape[0]):
            value = values[n, extents[e]]
            if value <= before:
                continue
            before = value
            for c in range(widths[n], capacity + 1):
                if best[c - widths[n]] + value > best[c]:
                    best[c] = best[c - widths[n]] + value
                    last[e, c] = n
        result[e] = best[capacity]
    return result, last


@njit(cache=True)
def changes(values):
    """Lengths at which any level gains value."""
    found = np.zeros(values.shape[1], np.bool_)
    for n in range(values.shape[0]):
        for c in range(1, values.shape[1]):
            if values[n, c] > values[n, c - 1]:
                found[c] = True
    return np.nonzero(found)[0]
