"""The beam search over parts on stocks with defects, with places and limits of the cuts, compiled.

A node is a partial layout, as in `kernels.beam`, but each step also says where its part lies and where its strip
and its section end, so that nothing lies on a defect and all cuts keep the limits. Sizes have the kerf on them:
the saw takes the last `kerf` steps of every extent. Parts stand in chains; the next of a chain can be put in.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numba import njit

from boardwright.stock.kernels.bank import mixed, place_of

SECTION, END, STRIP, TOP, REACH, ROOM, LIFTED = range(7)
FRONTIER = 7
"""Entries of a frontier: start and end of the section (a), start and top of the strip (b), end of the parts in
the strip (a), the stock, whether a part lies at the top of the strip."""
PARENT, WAY, KIND, AT_A, AT_B, STRIP_TOP, SECTION_END, CHAIN = range(8)
STEP = 8
"""Entries of a step: parent, way to lay the part, kind, place of the part, top of the strip, end of the section, the
chain that it is taken from."""
IN_STRIP, NEW_STRIP, NEW_SECTION, NEW_STOCK = range(4)
UNBOUND = 1 << 60
TRIES = 12
"""Most places that are tried for one part or one cut."""


class Rules(NamedTuple):
    """Limits of the cuts, on the grid.

    Attributes:
        kerf, waste, least_section, most_section, least_strip: as in the question.
        clear: cuts must not pass through defects.
        bound: any limit is set at all.
        strips: parts may lie side by side in a strip (three stages).
        in_order: stocks are used in order.
    """

    kerf: int
    waste: int
    least_section: int
    most_section: int
    least_strip: int
    clear: bool
    bound: bool
    strips: bool
    in_order: bool


class Places(NamedTuple):
    """What is to be laid out, as arrays.

    Attributes:
        chains: first place in the queue and length of each chain.
        queue: items, chain by chain.
        first_way: of each item, its first way to lie, and the end of the last item's.
        ways: item, a, b of each way.
        areas: of the items.
        sides: least a and least b of each item.
        rooms: a, b, count of each stock.
        defects: a0, b0, a1, b1, stock by stock.
        first_defect: of each stock, and the end of the last stock's.
        costs: of each stock.
        codes: a random number for each item, then for each stock.
        rules: limits of the cuts.
    """

    chains: np.ndarray
    queue: np.ndarray
    first_way: np.ndarray
    ways: np.ndarray
    areas: np.ndarray
    sides: np.ndarray
    rooms: np.ndarray
    defects: np.ndarray
    first_defect: np.ndarray
    costs: np.ndarray
    codes: np.ndarray
    rules: Rules


class Groups(NamedTuple):
    """Nodes of a level by the parts that are placed; of one group, those that others cover are dropped.

    Attributes:
        group: code of the set of parts (and stocks) of the nodes that are gathered.
        head, following: of nodes with one group, the last that was kept, by a hash of the group, and the one before.
        kept: where the nodes that are kept stand, the most promising first.
    """

    group: np.ndarray
    head: np.ndarray
    following: np.ndarray
    kept: np.ndarray


def new_groups(width: int) -> Groups:
    """Empty groups for levels of so many nodes."""
    return Groups(
        np.zeros(width, np.uint64),
        np.zeros(1 << (2 * width - 1).bit_length(), np.int64),
        np.zeros(width, np.int64),
        np.zeros(width, np.int64),
    )


@njit(cache=True, forceinline=True)
def _hit(q, room, a0, b0, a1, b1):
    """The first defect that a rectangle, or a line, lies on; -1 when there is none."""
    for n in range(q.first_defect[room], q.first_defect[room + 1]):
        if q.defects[n, 0] < a1 and q.defects[n, 2] > a0 and q.defects[n, 1] < b1 and q.defects[n, 3] > b0:
            return n
    return -1


@njit(cache=True, forceinline=True)
def _thin(rules, gap):
    """Whether a gap beside a part is waste that is too thin to be cut off."""
    return (gap > rules.kerf and gap - rules.kerf < rules.waste) or (
        0 < gap <= rules.kerf and rules.waste > 0
    )


@njit(cache=True, forceinline=True)
def _along(q, room, reach, a, at_b, b, strip, top):
    """The first place in a strip from `reach` on for a part whose place across the strip is known, or -1."""
    k = q.rules.kerf
    limit = q.rooms[room, 0]
    least = reach + k + q.rules.waste
    p = reach
    for _ in range(TRIES):
        if p + a > limit:
            return -1
        n = _hit(q, room, p, at_b, p + a - k, at_b + b - k)
        if n >= 0:
            p = max(q.defects[n, 2], least)
            continue
        if q.rules.clear:
            if p > reach:
                n = _hit(q, room, p - k, strip, p, top - k)
                if n >= 0:
                    p = q.defects[n, 2] + k
                    continue
            if p + a < limit:
                n = _hit(q, room, p + a - k, strip, p + a, top - k)
                if n >= 0:
                    p = max(q.defects[n, 2] + k - a, least)
                    continue
        return p
    return -1


@njit(cache=True, forceinline=True)
def _top(q, bank, level, node, walk, room, section, end, strip, low):
    """The least top of a strip, not below `low`, at which it can be cut off and all its parts be freed, or -1.

    Parts of the strip so far are those of the node when `walk` is set.
    """
    rules = q.rules
    k, whole = rules.kerf, q.rooms[room, 1]
    t = low
    for _ in range(TRIES):
        t = max(t, strip + rules.least_strip + k if rules.least_strip > 0 else t)
        if t > low and _thin(rules, t - low):
            t = low + k + rules.waste
        if _thin(rules, whole - t):
            t = whole
        if t > whole or (t > low and _thin(rules, t - low)):
            return -1
        if rules.clear and t < whole:
            n = _hit(q, room, section, t - k, end, t)
            if n >= 0:
                t = q.defects[n, 3] + k
                continue
        raised = False
        depth, i = level - 1, node
        while walk and depth >= 0:
            a, b = q.ways[bank.trace[depth, i, WAY], 1], q.ways[bank.trace[depth, i, WAY], 2]
            gap = t - bank.trace[depth, i, AT_B] - b
            if bank.trace[depth, i, AT_B] != strip and gap > 0:
                return -1
            if _thin(rules, gap):
                t, raised = bank.trace[depth, i, AT_B] + b + k + rules.waste, True
                break
            if (
                rules.clear
                and _hit(
                    q, room, bank.trace[depth, i, AT_A] + a - k, strip, bank.trace[depth, i, AT_A] + a, t - k
                )
                >= 0
            ):
                return -1
            if (
                rules.clear
                and _hit(q, room, bank.trace[depth, i, AT_A] - k, strip, bank.trace[depth, i, AT_A], t - k)
                >= 0
            ):
                return -1
            if rules.clear and gap > 0:
                y = bank.trace[depth, i, AT_B] + b
                if (
                    _hit(q, room, bank.trace[depth, i, AT_A], y - k, bank.trace[depth, i, AT_A] + a - k, y)
                    >= 0
                ):
                    return -1
            if bank.trace[depth, i, KIND] != IN_STRIP:
                break
            i = bank.trace[depth, i, PARENT]
            depth -= 1
        if not raised:
            return t
    return -1


@njit(cache=True, forceinline=True)
def _end(q, bank, level, node, kind, room, section, end, reach, top):
    """The least end of a section at which it can be cut off, not before its parts end, or -1."""
    rules = q.rules
    k, whole = rules.kerf, q.rooms[room, 0]
    x = max(end, reach)
    for _ in range(TRIES):
        if rules.least_section > 0:
            x = max(x, section + rules.least_section + k)
        if _thin(rules, x - reach):
            x = reach + k + rules.waste
        if _thin(rules, whole - x):
            x = whole
        if x > whole or x - section - k > rules.most_section or _thin(rules, x - reach):
            return -1
        if rules.clear:
            if x < whole:
                n = _hit(q, room, x - k, 0, x, q.rooms[room, 1])
                if n >= 0:
                    x = q.defects[n, 2] + k
                    continue
            if top < q.rooms[room, 1] and _hit(q, room, section, top - k, x - k, top) >= 0:
                return -1
        if x == end and kind < NEW_SECTION:
            return x
        moved = False
        depth, i = level - 1, node
        inside = kind == IN_STRIP
        while kind < NEW_SECTION and depth >= 0:
            if not inside:
                e = bank.trace[depth, i, AT_A] + q.ways[bank.trace[depth, i, WAY], 1]
                if _thin(rules, x - e):
                    x, moved = e + k + rules.waste, True
                    break
                t = bank.trace[depth, i, STRIP_TOP]
                if rules.clear and t < q.rooms[room, 1] and _hit(q, room, section, t - k, x - k, t) >= 0:
                    return -1
            if bank.trace[depth, i, KIND] >= NEW_SECTION:
                break
            inside = bank.trace[depth, i, KIND] == IN_STRIP
            i = bank.trace[depth, i, PARENT]
            depth -= 1
        if not moved:
            return x
    return -1


@njit(cache=True, forceinline=True)
def _begin(bank, now, i, kind):
    """Section, its end, strip, its top and the reach in it, where a step of some kind begins."""
    f = bank.frontier
    if kind == IN_STRIP:
        return f[now, i, SECTION], f[now, i, END], f[now, i, STRIP], f[now, i, TOP], f[now, i, REACH]
    if kind == NEW_STRIP:
        return f[now, i, SECTION], f[now, i, END], f[now, i, TOP], f[now, i, TOP], f[now, i, SECTION]
    if kind == NEW_SECTION:
        return f[now, i, END], f[now, i, END], 0, 0, f[now, i, END]
    return 0, 0, 0, 0, 0


@njit(cache=True, forceinline=True)
def _attempt(q, bank, level, node, kind, room, a, b, lift):
    """Put a part in: its place, its section and strip, whether it lies at the top; the first is -1 when it cannot.

    Where a defect keeps it from the bottom left, it may be put higher: to the top of its strip when `lift` is 1,
    above a defect, in a new strip, when `lift` is more.
    """
    rules = q.rules
    k = rules.kerf
    none = (-1, 0, 0, 0, 0, 0, 0)
    section, end, strip, top, reach = _begin(bank, level % 2, node, kind)
    lifted = bank.frontier[level % 2, node, LIFTED] if kind == IN_STRIP else 0
    at_b = strip
    if lift:
        if (lift == 1) != (kind == IN_STRIP) or _hit(q, room, reach, strip, reach + a - k, strip + b - k) < 0:
            return none
        if kind == IN_STRIP:
            at_b = top - b
            if at_b - strip < k + rules.waste:
                return none
        else:
            n = q.first_defect[room] + lift - 2
            if q.defects[n, 3] <= strip or q.defects[n, 3] + b > q.rooms[room, 1]:
                return none
            at_b = max(q.defects[n, 3], strip + k + rules.waste)
            top = _top(q, bank, level, node, False, room, section, max(end, reach + a), strip, at_b + b)
            if top != at_b + b:
                return none
        lifted = 1
    elif kind != IN_STRIP:
        top = _top(q, bank, level, node, False, room, section, max(end, reach + a), strip, strip + b)
    elif strip + b > top or _thin(rules, top - strip - b):
        if lifted:
            return none
        top = _top(q, bank, level, node, True, room, section, end, strip, max(top, strip + b))
        if top >= 0 and _thin(rules, top - strip - b):
            return none
    if top < 0:
        return none
    p = _along(q, room, reach, a, at_b, b, strip, top)
    if p < 0:
        return none
    if rules.clear:
        if at_b > strip and _hit(q, room, p, at_b - k, p + a - k, at_b) >= 0:
            return none
        if at_b + b < top and _hit(q, room, p, at_b + b - k, p + a - k, at_b + b) >= 0:
            return none
    if not rules.bound:
        end = max(end, p + a)
    elif kind != IN_STRIP or p + a > end or _thin(rules, end - p - a):
        end = _end(q, bank, level, node, kind, room, section, end, p + a, top)
        if end < 0:
            return none
    return p, at_b, section, end, strip, top, lifted


@njit(cache=True, forceinline=True)
def _least(q, left, side):
    """Least side of the parts that come next, the least but one, and whose chain the least is of."""
    first, second, chain = UNBOUND, UNBOUND, -1
    for c in range(q.chains.shape[0]):
        if left[c] == 0:
            continue
        item = q.queue[q.chains[c, 0] + q.chains[c, 1] - left[c]]
        x = q.sides[item, side - 1]
        if x < first:
            first, second, chain = x, first, c
        elif x < second:
            second = x
    return first, second, chain


@njit(cache=True, forceinline=True)
def _behind(section, end, strip, top, reach, wide, next_a, next_b, guide):
    """Area of a stock that is used from the start of the section, and what the guide adds for what is open."""
    used = float(end - section) * strip + float(reach - section) * (top - strip)
    in_strip = guide.strip if next_a <= end - reach else guide.closed_strip
    above = guide.section if next_b <= wide - top else guide.closed_section
    return used, in_strip * float(end - reach) * (top - strip) + above * float(end - section) * (wide - top)


@njit(cache=True, forceinline=True)
def _used_at(row, b):
    """How far a frontier takes a stock (a) at a height (b)."""
    if b < row[STRIP]:
        return row[END]
    return row[REACH] if b < row[TOP] else row[SECTION]


@njit(cache=True, forceinline=True)
def _covers(q, one, two):
    """Whether whatever can follow a frontier with the same parts can follow another, as far as areas say."""
    if one[ROOM] != two[ROOM]:
        return one[ROOM] < two[ROOM]
    if one[END] > two[END] or one[SECTION] > two[SECTION] or one[LIFTED] > two[LIFTED]:
        return False
    if _used_at(one, 0) > _used_at(two, 0) or _used_at(one, two[STRIP]) > _used_at(two, two[STRIP]):
        return False
    return two[TOP] >= q.rooms[two[ROOM], 1] or _used_at(one, two[TOP]) <= two[SECTION]


@njit(cache=True)
def _choose(q, bank, groups, held):
    """The gathered nodes without those that another covers, the most promising first; how many there are."""
    order = np.argsort(bank.heap_key[:held], kind="mergesort")
    groups.head[:] = -1
    mask = np.uint64(groups.head.shape[0] - 1)
    count = 0
    for n in range(held):
        slot = bank.heap_slot[order[n]]
        group = groups.group[slot]
        place = (group ^ (group >> np.uint64(31))) & mask
        other = groups.head[place]
        covered = False
        while other >= 0:
            if groups.group[other] == group and _covers(q, bank.fresh[other], bank.fresh[slot]):
                covered = True
                break
            other = groups.following[other]
        if covered:
            continue
        groups.following[slot] = groups.head[place]
        groups.head[place] = slot
        groups.kept[count] = slot
        count += 1
    return count


@njit(cache=True)
def _settle(q, bank, groups, level, count):
    """Write the nodes that are kept as the next level."""
    now, then = level % 2, (level + 1) % 2
    for j in range(count):
        n = groups.kept[j]
        step = bank.origin[n]
        i, kind = step[PARENT], step[KIND]
        item = q.ways[step[WAY], 0]
        bank.frontier[then, j] = bank.fresh[n]
        bank.left[then, j] = bank.left[now, i]
        bank.left[then, j, step[CHAIN]] -= 1
        bank.used[then, j] = bank.used[now, i]
        bank.paid[then, j] = bank.paid[now, i]
        area = q.areas[item]
        bank.placed[then, j] = bank.placed[now, i] + area
        bank.code[then, j] = bank.code[now, i] + q.codes[item]
        if kind >= NEW_STOCK:
            room = kind - NEW_STOCK
            bank.used[then, j, room] += 1
            if not q.rules.in_order:
                bank.code[then, j] += q.codes[q.areas.shape[0] + room]
            if level > 0:
                bank.paid[then, j] += q.costs[bank.frontier[now, i, ROOM]]
        bank.trace[level, j] = step


@njit(cache=True, forceinline=True)
def _note(rows, n, c0, c1, c2, c3, c4, c5, c6):
    """Write the first seven entries of a row."""
    rows[n, 0], rows[n, 1], rows[n, 2], rows[n, 3] = c0, c1, c2, c3
    rows[n, 4], rows[n, 5], rows[n, 6] = c4, c5, c6


@njit(cache=True)
def replay(q, bank, groups, steps):
    """Put the parts of known steps in, one after another; each level has one node."""
    for level in range(steps.shape[0]):
        step, now = steps[level], level % 2
        kind = step[KIND]
        row = bank.fresh[0]
        row[ROOM] = kind - NEW_STOCK if kind >= NEW_STOCK else bank.frontier[now, 0, ROOM]
        begun = _begin(bank, now, 0, kind)
        row[SECTION], row[STRIP] = begun[SECTION], begun[STRIP]
        row[END], row[TOP] = step[SECTION_END], step[STRIP_TOP]
        row[REACH] = step[AT_A] + q.ways[step[WAY], 1]
        above = step[AT_B] > row[STRIP]
        row[LIFTED] = 1 if above or (kind == IN_STRIP and bank.frontier[now, 0, LIFTED] > 0) else 0
        bank.origin[0] = step
        bank.origin[0, PARENT] = 0
        groups.kept[0] = 0
        _settle(q, bank, groups, level, 1)


@njit(cache=True)
def advance(q, bank, groups, level, last, alive, width, guide, limit, whole, dear):
    """Go on from one level of the beam to another: see `kernels.beam.advance`.

    Returns:
        The level that was reached, how many nodes it has, whether any of them led further, and how many children
        were tried.
    """
    rate = whole[0] / whole[1]
    tried = 0
    while level < last:
        now = level % 2
        held = 0
        parts = level + 1
        bank.seen[:] = 0
        for i in range(alive):
            in_hand = bank.frontier[now, i, ROOM] if level > 0 else -1
            fits = False
            following = 0
            least_a = _least(q, bank.left[now, i], 1)
            least_b = _least(q, bank.left[now, i], 2)
            for opening in range(2):
                if (opening == 1 and fits) or (opening == 0 and level == 0):
                    continue
                paid = bank.paid[now, i]
                first = IN_STRIP if opening == 0 and q.rules.strips else NEW_STRIP
                stop = NEW_STOCK
                if opening == 1:
                    first, stop = NEW_STOCK, NEW_STOCK + q.rooms.shape[0]
                    if level > 0:
                        paid += q.costs[in_hand]
                    following = max(in_hand, 0)
                    while following < q.rooms.shape[0] and (
                        bank.used[now, i, following] >= q.rooms[following, 2]
                    ):
                        following += 1
                for c in range(q.chains.shape[0]):
                    if bank.left[now, i, c] == 0:
                        continue
                    item = q.queue[q.chains[c, 0] + q.chains[c, 1] - bank.left[now, i, c]]
                    area = bank.placed[now, i] + q.areas[item]
                    large = (parts / area) ** guide.power
                    next_a = least_a[0] if least_a[2] != c else least_a[1]
                    next_b = least_b[0] if least_b[2] != c else least_b[1]
                    if bank.left[now, i, c] > 1:
                        after = q.queue[q.chains[c, 0] + q.chains[c, 1] - bank.left[now, i, c] + 1]
                        next_a, next_b = min(next_a, q.sides[after, 0]), min(next_b, q.sides[after, 1])
                    for way in range(q.first_way[item], q.first_way[item + 1]):
                        a, b = q.ways[way, 1], q.ways[way, 2]
                        for kind in range(first, stop):
                            room = in_hand
                            if kind >= NEW_STOCK:
                                room = kind - NEW_STOCK
                                if bank.used[now, i, room] >= q.rooms[room, 2]:
                                    continue
                                if q.rules.in_order and room != following:
                                    continue
                            wide = float(q.rooms[room, 1])
                            section, end, strip, top, reach = _begin(bank, now, i, kind)
                            if section + a > q.rooms[room, 0] or strip + b > q.rooms[room, 1]:
                                continue
                            base = paid + dear[room] * section * wide
                            behind, open_ = _behind(
                                section,
                                max(end, reach + a),
                                strip,
                                max(top, strip + b),
                                reach + a,
                                wide,
                                next_a,
                                next_b,
                                guide,
                            )
                            if base + dear[room] * behind + whole[0] - rate * area > limit:
                                continue
                            seen_as = base + dear[room] * (behind + open_)
                            if held == width and (1 - rate * area / seen_as) * large >= bank.heap_key[0]:
                                fits = True
                                continue
                            lifts = 1
                            k = q.rules.kerf
                            if _hit(q, room, reach, strip, reach + a - k, strip + b - k) >= 0:
                                lifts = 2 + q.first_defect[room + 1] - q.first_defect[room]
                            for lift in range(lifts):
                                tried += 1
                                found = _attempt(q, bank, level, i, kind, room, a, b, lift)
                                p, at_b, section, end, strip, top, lifted = found
                                if p < 0:
                                    continue
                                fits = True
                                behind, open_ = _behind(
                                    section, end, strip, top, p + a, wide, next_a, next_b, guide
                                )
                                if base + dear[room] * behind + whole[0] - rate * area > limit:
                                    continue
                                seen_as = base + dear[room] * (behind + open_)
                                key = (1 - rate * area / seen_as) * large
                                if held == width and key >= bank.heap_key[0]:
                                    continue
                                group = bank.code[now, i] + q.codes[item]
                                if kind >= NEW_STOCK and not q.rules.in_order:
                                    group += q.codes[q.areas.shape[0] + room]
                                code = mixed(group, section, end, strip, top, p + a, 2 * room + lifted)
                                slot = place_of(bank, held, width, key, code)
                                if slot < 0:
                                    continue
                                held = max(held, slot + 1) if held < width else held
                                groups.group[slot] = group
                                _note(bank.fresh, slot, section, end, strip, top, p + a, room, lifted)
                                bank.origin[slot, 7] = c
                                _note(bank.origin, slot, i, way, kind, p, at_b, top, end)
        if held == 0:
            return level, alive, False, tried
        alive = _choose(q, bank, groups, held)
        _settle(q, bank, groups, level, alive)
        level += 1
    return level, alive, True, tried
