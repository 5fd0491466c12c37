"""Takes a piece apart, step by step: what comes off in reverse is the order of building.

A set of parts is split in two that can be moved apart along one direction, both are taken apart in turn. What moves
together is the closure of a part in the graph of `blocking`: the part, what it would push, what that would push.
Of all splits the one is taken that a maker would make.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from boardwright.core.poses import dot
from boardwright.solids.bench import Bench, bits, bulk, closure, crossing, hanging, names
from boardwright.solids.corner_ways import corner_ways, ways_on
from boardwright.solids.driver_reach import DRIVEN
from boardwright.solids.frames import relative

WIPE = 60.0
"""Glue faces that slide on each other farther than this while a joint closes are wiped of their glue [mm]: common
practice."""


@dataclass(frozen=True, slots=True)
class Split:
    """One way to part a set of parts.

    Attributes:
        moved: the parts that move, as a number whose bit i stands for part i.
        direction: index into `Bench.block.directions`, in which they come away.
        then: the same of the direction in which they go on after that; -1 when they go straight.
        far: how far they go before they turn [mm].
    """

    moved: int
    direction: int
    then: int = -1
    far: float = 0.0


@dataclass(frozen=True, slots=True)
class Tree:
    """A set of parts and how it comes apart.

    Attributes:
        parts: all of them, as a number.
        core: what is left at the end: one part, or parts that cannot be parted.
        splits: what is taken off, in order, with the tree of what is moved.
    """

    parts: int
    core: int
    splits: tuple[tuple[Split, Tree], ...]


def take_apart(b: Bench, together: int) -> Tree:
    """The tree of a set of parts; of alike sets it is found once.

    Args:
        b: the bench.
        together: the parts, as a number.
    """
    order, key = _likeness(b, together)
    known = b.kept.get(key)
    if known is not None:
        return _renamed(known[1], dict(zip(known[0], order, strict=True)))
    tree = _taken_apart(b, together)
    b.kept[key] = (order, tree)
    return tree


def _taken_apart(b: Bench, together: int) -> Tree:
    left = together
    last: tuple[str, ...] = ()
    splits = []
    while left & (left - 1):
        split = best_split(b, left, last)
        if split is None:
            break
        splits.append((split, take_apart(b, split.moved)))
        left &= ~split.moved
        last = names(b, split.moved)
    return Tree(together, left, tuple(splits))


def _likeness(b: Bench, together: int) -> tuple[tuple[int, ...], tuple[object, ...]]:
    """The parts in a steady order, and a key that alike sets share: same letters at the same places to each other."""
    parts = b.piece.parts

    def kind(i: int) -> tuple[object, ...]:
        p = parts[i]
        return (
            p.letter or p.id,
            *(tuple(round(v, 3) for v in w) for w in (p.pose.x, p.pose.y, p.pose.origin)),
        )

    order = sorted(bits(together), key=kind)
    first = parts[order[0]].pose
    key = tuple((parts[i].letter or parts[i].id, relative(first, parts[i].pose)) for i in order)
    return tuple(order), (first.x, first.y, *key)


def _renamed(tree: Tree, others: dict[int, int]) -> Tree:
    def moved(parts: int) -> int:
        return sum(1 << others[i] for i in bits(parts))

    splits = tuple((replace(s, moved=moved(s.moved)), _renamed(sub, others)) for s, sub in tree.splits)
    return Tree(moved(tree.parts), moved(tree.core), splits)


def best_split(b: Bench, together: int, last: tuple[str, ...] = ()) -> Split | None:
    """The split that a maker would make; None when the parts cannot be parted.

    A screw that no driver comes at holds its two parts together, as long as there is another way.

    Args:
        b: the bench.
        together: the parts, as a number.
        last: what came off just before was called; the same again is liked.
    """
    shut = [0] * len(b.near)
    close = 0
    for two, reach, fastener in zip(b.held, b.reach, b.piece.fasteners, strict=True):
        if not two or fastener.kind not in DRIVEN or not all(together >> i & 1 for i in two):
            continue
        if reach.driver & together:
            close |= 1 << min(two, key=lambda i: (bulk(b, 1 << i), i))
        if reach.stubby & together:
            shut[two[0]] |= 1 << two[1]
            shut[two[1]] |= 1 << two[0]
    found = _best(b, together, last, shut, close)
    return found or (_best(b, together, last, [0] * len(shut), close) if any(shut) else None)


def come_apart(b: Bench, together: int, loosened: int = -1) -> bool:
    """Whether parts can be parted at all, screws taken out.

    Args:
        b: the bench.
        together: the parts, as a number.
        loosened: index of a joint whose two parts are taken not to be in each other's way; -1 for none.
    """
    none = [0] * len(b.near)
    free = b.joints[loosened] if loosened >= 0 else None
    for d in range(len(b.block.directions)):
        rows = _rows(b, together, d, none)
        if free:
            rows[free[0]] &= ~(1 << free[1])
            rows[free[1]] &= ~(1 << free[0])
        if any(closure(rows, 1 << i) != together for i in bits(together)):
            return True
    return False


def _best(b: Bench, together: int, last: tuple[str, ...], shut: list[int], close: int) -> Split | None:
    pieces = hanging(b.near, together)
    found = _wholes(b, together, shut) or _moves(b, together, shut, pieces)
    cuts = {moved: crossing(b, together, moved) for moved in {s.moved for s in found}}
    best: tuple[int, Split] | None = None
    for rank, split in sorted(
        ((_rank(b, together, s, cuts[s.moved], last, close), s) for s in found), key=lambda r: r[0]
    ):
        rest = together & ~split.moved
        falling = len(hanging(b.near, split.moved)) + len(hanging(b.touching, rest)) - max(2, len(pieces))
        if falling <= 0 or rank[0] == 0:
            return split
        if best is None or falling < best[0]:
            best = (falling, split)
    return best[1] if best else None


def _rows(b: Bench, together: int, d: int, shut: list[int]) -> list[int]:
    """For each part, as a number, what must move with it along a direction."""
    return [(x | y | z) & together for x, y, z in zip(b.block.rows[d], b.pins[d], shut, strict=True)]


def _wholes(b: Bench, together: int, shut: list[int]) -> list[Split]:
    """The moving groups that come out whole."""
    inside = [g for g in b.groups if g & together == g and g != together]
    if not inside:
        return []
    out = []
    for d in range(len(b.block.directions)):
        rows = _rows(b, together, d, shut)
        out += [Split(g, d) for g in inside if closure(rows, g) == g]
    return out


def _moves(b: Bench, together: int, shut: list[int], pieces: list[int]) -> list[Split]:
    """Everything that can be moved on its own, always the smaller side of a split."""
    found: dict[Split, None] = {}
    starts = [*(pieces if len(pieces) > 1 else ()), *(1 << i for i in bits(together))]
    for d in range(len(b.block.directions)):
        rows = _rows(b, together, d, shut)
        known: dict[int, int] = {}
        for start in starts:
            moved = closure(rows, start, known)
            rest = together & ~moved
            if not rest:
                continue
            if rest.bit_count() < moved.bit_count():
                found[Split(rest, d ^ 1)] = None
            else:
                found[Split(moved, d)] = None
    straight = {s.moved for s in found if s.moved.bit_count() == 1 and not _strange(b, together, s)}
    for i in bits(together):
        if 1 << i not in straight:
            found.update(dict.fromkeys(_round_corners(b, together, i, shut)))
    return list(found)


def _strange(b: Bench, together: int, split: Split) -> bool:
    """True when some joint that opens is not made to open that way."""
    d = split.direction
    return any(b.strange[n][d if second else d ^ 1] for n, second in crossing(b, together, split.moved))


def _round_corners(b: Bench, together: int, i: int, shut: list[int]) -> list[Split]:
    """How a dry part leaves its joint and then goes another way, where it cannot go straight on."""
    if shut[i] & together or any(b.piece.joints[n].glued for n, _ in crossing(b, together, 1 << i)):
        return []
    rest = together & ~(1 << i)
    return [
        Split(1 << i, w.direction, then, w.far)
        for w in corner_ways(b, i)
        if not w.met & rest
        for then, met in ways_on(b, i, w)
        if not met & rest
    ][:1]


def _rank(
    b: Bench,
    together: int,
    split: Split,
    cut: list[tuple[int, bool]],
    last: tuple[str, ...],
    close: int,
) -> tuple[int, ...]:
    """How much a maker likes a split: the least is the best.

    `cut`: the joints that open. `close`: as a number, the smaller part at each screw that only a stubby driver
    comes at, or none: such a part is put on before the place is closed.
    """
    moved, d = split.moved, split.direction
    whole = moved in b.groups
    broken = not whole and any(g & moved and g & together & ~moved and together & ~g for g in b.groups)
    glued = wiped = strange = False
    slide = 0.0
    for n, second in cut:
        far = b.slides[n][d]
        slide = max(slide, far)
        if b.piece.joints[n].glued:
            glued = True
            wiped |= far > WIPE
        strange |= b.strange[n][d if second else d ^ 1]
    if whole:
        opening = b.groups[moved]
        strange = opening is not None and dot(opening, b.block.directions[d]) < 1 - 1e-6
    again = 0 if last and names(b, moved) == last else 1
    return (
        0 if whole else 1,
        wiped,
        moved & close == moved,
        3 if broken else 1 + glued,
        strange,
        again,
        len(cut),
        round(slide / 10),
        moved.bit_count(),
        0 if whole else bulk(b, moved),
        split.then >= 0,
        d,
        -moved,
    )
