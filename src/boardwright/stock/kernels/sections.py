"""Best sections of a board, compiled: crosscut, ripped to strips, crosscut to pieces."""

from __future__ import annotations

import numpy as np
from numba import njit


@njit(cache=True)
def strips(before, claims, values, each, panel, least, most, cut, widest):
    """Best value of one strip, for each length and width.

    Args:
        before: index of the greatest length that is left beside a piece of each kind, for each length; -1 when none.
        claims: width of the pieces with a saw cut on it; of no meaning for panels.
        values: of one piece; of a panel: of one step of width.
        each: of one strip of a panel, whatever its width.
        panel: whether a kind is a panel, whose strips may have any width within limits.
        least: narrowest strip of each panel.
        most: widest strip of each panel.
        cut: what a strip of a panel loses of its width: the saw cut, and the jointing of its edges.
        widest: width of the widest board, a saw cut on it.

    Returns:
        Values, and the kind of the piece that was put last; -1 when the length is not filled.
    """
    lengths, kinds = before.shape
    best = np.zeros((lengths, widest + 1), np.float64)
    last = np.full((lengths, widest + 1), -1, np.int16)
    for x in range(lengths):
        for s in range(widest + 1):
            value, kind = 0.0, -1
            if x > 0:
                value = best[x - 1, s]
            for i in range(kinds):
                rest = before[x, i]
                if rest < 0:
                    continue
                if panel[i]:
                    if s < least[i] or s > most[i]:
                        continue
                    own = values[i] * (s - cut) + each[i]
                else:
                    if s < claims[i]:
                        continue
                    own = values[i]
                found = best[rest, s] + own
                if found > value + 1e-9:
                    value, kind = found, i
            best[x, s] = value
            last[x, s] = kind
    return best, last


@njit(cache=True)
def across(strip, narrowest):
    """Best value of a section, for each length and width; and the width of the strip that was put last, or 0."""
    lengths, size = strip.shape
    best = np.zeros((lengths, size), np.float64)
    last = np.zeros((lengths, size), np.int32)
    for x in range(lengths):
        if x > 0 and np.array_equal(strip[x], strip[x - 1]):
            best[x], last[x] = best[x - 1], last[x - 1]
            continue
        for w in range(1, size):
            value, width = best[x, w - 1], 0
            for s in range(narrowest, w + 1):
                if strip[x, s] <= 0.0:
                    continue
                found = best[x, w - s] + strip[x, s]
                if found > value + 1e-9:
                    value, width = found, s
            best[x, w] = value
            last[x, w] = width
    return best, last


@njit(cache=True)
def along(section, between):
    """Best value of a board of one width, for each length; and the section that was put last, or -1.

    Args:
        section: best value of a section of each length.
        between: index of the greatest length that is left of one beside a section of another; -1 when none.
    """
    lengths = section.shape[0]
    best = np.zeros(lengths, np.float64)
    last = np.full(lengths, -1, np.int32)
    for x in range(lengths):
        value, own = 0.0, -1
        if x > 0:
            value = best[x - 1]
        for y in range(x + 1):
            if section[y] <= 0.0 or between[x, y] < 0 or (y > 0 and section[y] == section[y - 1]):
                continue
            found = section[y] + best[between[x, y]]
            if found > value + 1e-9:
                value, own = found, y
        best[x] = value
        last[x] = own
    return best, last
