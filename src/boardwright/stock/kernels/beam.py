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

from boardwright.stock.kernels.bank import mixed, place_of

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
def _write(row, c0, c1, c2, c3, c4, r):
    row[0], row[1], row[2], row[3], row[4], row[5] = c0, c1, c2, c3, c4, r


@njit(cache=True)
def _settle(question, bank, level, held):
    """Write the gathered nodes as the next level."""
    now, then = level % 2, (level + 1) % 2
    for j in range(held):
        i, s, kind = bank.origin[j, 0], bank.origin[j, 1], bank.origin[j, 2]
        item = question.shapes[s, 0]
        bank.frontier[then, j] = bank.fresh[j]
        bank.left[then, j] = bank.left[now, i]
        bank.left[then, j, item] -= 1
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
def advance(question, bank, level, last, alive, width, which, limit, whole, dear):
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
        whole: least cost of the area of all parts, and that area.
        dear: cost of one step of area of each size of stock.

    Returns:
        The level that was reached, how many nodes it has, and whether any of them led further.
    """
    shapes, rooms, costs, areas = question.shapes, question.rooms, question.costs, question.areas
    rate = whole[0] / whole[1]
    items = areas.shape[0]
    while level < last:
        now = level % 2
        held = 0
        parts = level + 1
        bank.seen[:] = 0
        for i in range(alive):
            section, extent, strip, height, reach, room = bank.frontier[now, i]
            counts, used = bank.left[now, i], bank.used[now, i]
            paid, area_before, squares_before = (
                bank.paid[now, i],
                bank.placed[now, i, 0],
                bank.placed[now, i, 1],
            )
            code_before = bank.code[now, i]
            fits = False
            for opening in range(2):
                if opening == 1 and fits:
                    break
                if opening == 0 and level == 0:
                    continue
                first = IN_STRIP if opening == 0 and question.strips else NEW_STRIP
                end = NEW_STOCK
                if opening == 1:
                    first, end = NEW_STOCK, NEW_STOCK + rooms.shape[0]
                    if level > 0:
                        paid += costs[room]
                for s in range(shapes.shape[0]):
                    item, a, b = shapes[s]
                    if counts[item] == 0:
                        continue
                    for kind in range(first, end):
                        # the frontier of the child: c0 + c1 along a, c2 + c3 along b, c4 in the strip
                        r = room
                        if kind == IN_STRIP:
                            c0, c2, c4 = section, strip, reach + a
                            c1, c3 = max(extent, c4), max(height, b)
                        elif kind == NEW_STRIP:
                            c0, c1, c2, c3, c4 = section, max(extent, a), strip + height, b, a
                        elif kind == NEW_SECTION:
                            c0, c1, c2, c3, c4 = section + extent, a, 0, b, a
                        else:
                            r = kind - NEW_STOCK
                            if used[r] >= rooms[r, 2]:
                                continue
                            c0, c1, c2, c3, c4 = 0, a, 0, b, a
                        wide = rooms[r, 1]
                        if c0 + c1 > rooms[r, 0] or c2 + c3 > wide:
                            continue
                        fits = True
                        behind = paid + dear[r] * float(c0 * wide + c1 * c2 + c4 * c3)
                        area = area_before + areas[item]
                        if behind + whole[0] - rate * area > limit:
                            continue
                        squares = squares_before + float(areas[item] * areas[item])
                        key = _guide(which, behind, rate * area, area, squares, parts)
                        if held == width and key >= bank.heap_key[0]:
                            continue
                        code = code_before + question.codes[item]
                        if kind >= NEW_STOCK:
                            code += question.codes[items + r]
                        if question.strips:
                            code = mixed(code, c0, c1, c2, c3, c4, r)
                        else:
                            code = mixed(code, c0, c1, c2 + c3, 0, 0, r)
                        place = place_of(bank, held, width, key, code)
                        if place >= 0:
                            held = max(held, place + 1) if held < width else held
                            _write(bank.fresh[place], c0, c1, c2, c3, c4, r)
                            bank.origin[place, 0] = i
                            bank.origin[place, 1] = s
                            bank.origin[place, 2] = kind
        if held == 0:
            return level, alive, False
        _settle(question, bank, level, held)
        alive = held
        level += 1
    return level, alive, True
