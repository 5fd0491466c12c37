"""The beam search over parts, compiled.

A node is a partial layout; only its frontier matters for what may follow: the stock in hand, where its last
section begins and how far it reaches, and likewise its last strip and the parts in it. A child puts one more
part in: into the strip, into a new strip, into a new section, or, when none of these takes any part, into a
new stock. All nodes of one level hold equally many parts. The best of them by a guide go on.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numba import njit

SECTION, EXTENT, STRIP, HEIGHT, REACH, ROOM = range(6)
FRONTIER = 6
"""Entries of a frontier: start and extent of the section (a), start and height of the strip (b), extent of
the parts in the strip (a), the stock."""
IN_STRIP, NEW_STRIP, NEW_SECTION, NEW_STOCK = range(4)
"""Kinds of step; NEW_STOCK + r opens a stock of size r."""


class Question(NamedTuple):
    """What is to be laid out, as arrays.

    Attributes:
        shapes: item, a, b of each way to lay an item.
        areas: of the items.
        rooms: a, b, count of each size of stock.
        costs: of each size of stock.
        codes: a random number for each item, then for each size, to tell sets apart.
        strips: parts may lie side by side in a strip (three stages).
    """

    shapes: np.ndarray
    areas: np.ndarray
    rooms: np.ndarray
    costs: np.ndarray
    codes: np.ndarray
    strips: bool


class Bank(NamedTuple):
    """Nodes of two levels, used in turn, and the heap in which the next level is gathered.

    Attributes:
        frontier: see FRONTIER.
        counts: copies of each item that are still to be placed.
        used: stocks of each size that are opened.
        paid: cost of the stocks that are full.
        placed: area of the parts, and sum of its squares.
        code: of the set of parts and stocks.
        heap_key: guide values, largest first.
        heap_slot: where the node stands.
        fresh: frontier of the nodes that are gathered.
        origin: parent, shape and kind of step of the nodes that are gathered.
        seen: hash table of the nodes of this level.
        trace: parent, shape and kind of step of every node, by level.
    """

    frontier: np.ndarray
    counts: np.ndarray
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
def _mixed(code, section, extent, strip, height, reach, room):
    """A code of a set of parts together with a frontier; never 0."""
    h = code * np.uint64(0x9E3779B97F4A7C15)
    for x in (section, extent, strip, height, reach, room):
        h = (h ^ np.uint64(x)) * np.uint64(0xBF58476D1CE4E5B9)
        h ^= h >> np.uint64(29)
    return h | np.uint64(1)


@njit(cache=True)
def _guide(which, behind, worth, area, squares, parts):
    """How unpromising a node is: waste so far, against the size of the parts that are placed."""
    share = (behind - worth) / behind
    if which == 0:
        return (0.1 + share) / (area / parts)
    if which == 1:
        return share / (area / parts)
    if which == 2:
        return (0.1 + share) / (squares / parts)
    return behind / worth


@njit(cache=True)
def _keep(bank, held, width, key, code, frontier, origin):
    """Put a node among the best of the next level; how many there are then comes back."""
    if held == width and key >= bank.heap_key[0]:
        return held
    if _known(bank.seen, code):
        return held
    if held < width:
        place = held
        bank.heap_key[held] = key
        bank.heap_slot[held] = place
        held += 1
        _rise(bank.heap_key, bank.heap_slot, held - 1)
    else:
        place = bank.heap_slot[0]
        bank.heap_key[0] = key
        _sink(bank.heap_key, bank.heap_slot, held)
    for j in range(FRONTIER):
        bank.fresh[place, j] = frontier[j]
    for j in range(3):
        bank.origin[place, j] = origin[j]
    return held


@njit(cache=True)
def _settle(question, bank, level, held):
    """Write the gathered nodes as the next level."""
    now, then = level % 2, (level + 1) % 2
    for j in range(held):
        i, s, kind = bank.origin[j, 0], bank.origin[j, 1], bank.origin[j, 2]
        item = question.shapes[s, 0]
        bank.frontier[then, j] = bank.fresh[j]
        bank.counts[then, j] = bank.counts[now, i]
        bank.counts[then, j, item] -= 1
        bank.used[then, j] = bank.used[now, i]
        bank.paid[then, j] = bank.paid[now, i]
        area = float(question.areas[item])
        bank.placed[then, j, 0] = bank.placed[now, i, 0] + area
        bank.placed[then, j, 1] = bank.placed[now, i, 1] + area * area
        bank.code[then, j] = bank.code[now, i] + question.codes[item]
        if kind >= NEW_STOCK:
            room = kind - NEW_STOCK
            bank.used[then, j, room] += 1
            bank.code[then, j] += question.codes[question.areas.shape[0] + room]
            if level > 0:
                bank.paid[then, j] += question.costs[bank.frontier[now, i, ROOM]]
        bank.trace[level, j] = bank.origin[j]


@njit(cache=True)
def advance(question, bank, level, last, alive, width, which, limit, whole):
    """Go on from one level of the beam to another.

    Args:
        question: what is laid out.
        bank: the nodes; those of the first level are in place.
        level: parts that are placed.
        last: parts that are to be placed.
        alive: nodes of this level.
        width: most nodes of a level.
        which: the guide.
        limit: nodes that must come to cost more than this are dropped.
        whole: least cost of the area of all parts.

    Returns:
        The level that was reached, how many nodes it has, and whether any of them led further.
    """
    shapes, rooms, costs = question.shapes, question.rooms, question.costs
    rate = whole[0] / whole[1]
    frontier, origin = np.zeros(FRONTIER, np.int64), np.zeros(3, np.int64)
    while level < last:
        now = level % 2
        held = 0
        bank.seen[:] = 0
        for i in range(alive):
            section, extent, strip, height, reach, room = bank.frontier[now, i]
            paid = bank.paid[now, i]
            fits = False
            for opening in range(2):
                if opening == 1 and fits:
                    break
                if opening == 0 and level == 0:
                    continue
                for s in range(shapes.shape[0]):
                    item, a, b = shapes[s, 0], shapes[s, 1], shapes[s, 2]
                    if bank.counts[now, i, item] == 0:
                        continue
                    area = bank.placed[now, i, 0] + question.areas[item]
                    squares = bank.placed[now, i, 1] + float(question.areas[item]) ** 2
                    for step in range(3 if opening == 0 else rooms.shape[0]):
                        kind, r, before = step, room, paid
                        if opening == 1:
                            kind, r = NEW_STOCK + step, step
                            if bank.used[now, i, r] >= rooms[r, 2]:
                                continue
                            if level > 0:
                                before = paid + costs[room]
                            frontier[0], frontier[1], frontier[2], frontier[3], frontier[4] = 0, a, 0, b, a
                        elif step == IN_STRIP:
                            if not question.strips:
                                continue
                            frontier[0], frontier[1] = section, max(extent, reach + a)
                            frontier[2], frontier[3], frontier[4] = strip, max(height, b), reach + a
                        elif step == NEW_STRIP:
                            frontier[0], frontier[1] = section, max(extent, a)
                            frontier[2], frontier[3], frontier[4] = strip + height, b, a
                        else:
                            frontier[0], frontier[1] = section + extent, a
                            frontier[2], frontier[3], frontier[4] = 0, b, a
                        if frontier[0] + frontier[1] > rooms[r, 0] or frontier[2] + frontier[3] > rooms[r, 1]:
                            continue
                        fits = fits or opening == 0
                        frontier[5] = r
                        taken = (
                            float(frontier[0]) * rooms[r, 1]
                            + float(frontier[1]) * frontier[2]
                            + float(frontier[4]) * frontier[3]
                        )
                        behind = before + costs[r] * taken / (float(rooms[r, 0]) * rooms[r, 1])
                        if behind + whole[0] - rate * area > limit:
                            continue
                        key = _guide(which, behind, rate * area, area, squares, level + 1)
                        if held == width and key >= bank.heap_key[0]:
                            continue
                        code = bank.code[now, i] + question.codes[item]
                        if opening == 1:
                            code += question.codes[question.areas.shape[0] + r]
                        if question.strips:
                            code = _mixed(
                                code, frontier[0], frontier[1], frontier[2], frontier[3], frontier[4], r
                            )
                        else:
                            top = frontier[2] + frontier[3]
                            code = _mixed(code, frontier[0], frontier[1], top, 0, 0, r)
                        origin[0], origin[1], origin[2] = i, s, kind
                        held = _keep(bank, held, width, key, code, frontier, origin)
        if held == 0:
            return level, alive, False
        _settle(question, bank, level, held)
        alive = held
        level += 1
    return level, alive, True
