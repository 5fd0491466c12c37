"""What the beam searches keep of their nodes, compiled: two levels, the heap of the next one, what was met before."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numba import njit


class Bank(NamedTuple):
    """Nodes of two levels, used in turn, and the heap in which the next level is gathered.

    Attributes:
        frontier: what may follow depends on, see FRONTIER of each search.
        left: copies of each item, or parts of each chain, that are still to be placed.
        used: stocks of each size that are opened.
        paid: cost of the stocks that are full.
        placed: area of the parts; the plain search keeps the sum of its squares, too.
        code: of the set of parts and stocks.
        heap_key: guide values, largest first.
        heap_slot: where the node stands.
        fresh: frontier of the nodes that are gathered.
        origin: step of the nodes that are gathered, its parent first.
        seen: hash table of the nodes of this level.
        trace: step of every node, by level.
    """

    frontier: np.ndarray
    left: np.ndarray
    used: np.ndarray
    paid: np.ndarray
    placed: np.ndarray
    code: np.ndarray
    heap_key: np.ndarray
    heap_slot: np.ndarray
    fresh: np.ndarray
    origin: np.ndarray
    seen: np.ndarray
    trace: np.ndarray


def new_bank(
    levels: int,
    width: int,
    frontier: int,
    step: int,
    counts: tuple[int, int],
    placed: tuple[int, ...],
    kind: type,
) -> Bank:
    """An empty bank.

    Args:
        levels: parts to be placed.
        width: most nodes of a level.
        frontier: entries of a frontier.
        step: entries of a step.
        counts: how many items (or chains) and sizes of stock there are.
        placed: shape of what is kept of the parts' areas of one node.
        kind: whole numbers of the table of steps.
    """
    return Bank(
        np.zeros((2, width, frontier), np.int64),
        np.zeros((2, width, counts[0]), np.int16),
        np.zeros((2, width, counts[1]), np.int16),
        np.zeros((2, width), np.float64),
        np.zeros((2, width, *placed), np.float64),
        np.zeros((2, width), np.uint64),
        np.zeros(width, np.float64),
        np.zeros(width, np.int64),
        np.zeros((width, frontier), np.int64),
        np.zeros((width, step), np.int64),
        np.zeros(1 << (4 * width - 1).bit_length(), np.uint64),
        np.zeros((levels, width, step), kind),
    )


@njit(cache=True)
def _sink(key, slot, size):
    """Restore the heap after its top was replaced."""
    i = 0
    while 2 * i + 1 < size:
        c = 2 * i + 1
        if c + 1 < size and key[c + 1] > key[c]:
            c += 1
        if key[c] <= key[i]:
            return
        key[c], key[i] = key[i], key[c]
        slot[c], slot[i] = slot[i], slot[c]
        i = c


@njit(cache=True)
def _rise(key, slot, i):
    """Restore the heap after an entry was put at its end."""
    while i > 0:
        p = (i - 1) // 2
        if key[p] >= key[i]:
            return
        key[p], key[i] = key[i], key[p]
        slot[p], slot[i] = slot[i], slot[p]
        i = p


@njit(cache=True)
def _known(seen, code):
    """Whether a code was met on this level; it is noted when it was not (8 tries, then it counts as new)."""
    mask = np.uint64(seen.shape[0] - 1)
    place = code & mask
    for _ in range(8):
        if seen[place] == code:
            return True
        if seen[place] == 0:
            seen[place] = code
            return False
        place = (place + np.uint64(1)) & mask
    return False


@njit(cache=True)
def mixed(code, section, extent, strip, height, reach, room):
    """A code of a set of parts together with a frontier; never 0."""
    h = code * np.uint64(0x9E3779B97F4A7C15)
    for x in (section, extent, strip, height, reach, room):
        h = (h ^ np.uint64(x)) * np.uint64(0xBF58476D1CE4E5B9)
        h ^= h >> np.uint64(29)
    return h | np.uint64(1)


@njit(cache=True)
def place_of(bank, held, width, key, code):
    """Where to keep a node of the next level; -1 when it is not among the best, or known already."""
    if _known(bank.seen, code):
        return -1
    if held < width:
        bank.heap_key[held] = key
        bank.heap_slot[held] = held
        _rise(bank.heap_key, bank.heap_slot, held)
        return held
    place = bank.heap_slot[0]
    bank.heap_key[0] = key
    _sink(bank.heap_key, bank.heap_slot, held)
    return place
