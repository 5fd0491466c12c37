"""Takes a piece apart, step by step: what comes off in reverse is the order of building.

A set of parts is split in two that can be moved apart along one direction, both are taken apart in turn. What moves
together is the closure of a part in the graph of `blocking`: the part, what it would push, what that would push.
Of all splits the one is taken that a maker would make.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from boardwright.core.poses import Vec, dot
from boardwright.piece.records import Joint, Piece
from boardwright.solids.blocking import Blocking, blocking, relative
from boardwright.solids.driver_reach import PINS, Reach, along, reaches

WIPE = 60.0
"""Glue faces that slide on each other farther than this while a joint closes are wiped of their glue [mm]: common
practice."""


@dataclass(frozen=True, slots=True)
class Split:
    """One way to part a set of parts.

    Attributes:
        moved: the parts that move, as a number whose bit i stands for part i.
        direction: index into `Bench.block.directions`, in which they come away.
    """

    moved: int
    direction: int


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


@dataclass(frozen=True, slots=True)
class Bench:
    """What the search reads, by the index of parts.

    Attributes:
        piece: the piece. block: what is in the way of what. reach: of each driver, as `piece.fasteners`.
        held: for each fastener its two parts.
        joints: for each joint its two parts.
        of_part: for each part its joints.
        near: for each part, as a number, the parts it is joined to.
        groups: parts of each moving group, as numbers.
        pins: for each direction and part, as a number, the parts that pins hold to it.
        wiped: for each joint and direction, whether its glue is wiped off when it closes along it.
        strange: for each joint and direction, whether the second part does not leave the first that way.
    """

    piece: Piece
    block: Blocking
    reach: tuple[Reach, ...]
    held: tuple[tuple[int, int] | None, ...]
    joints: tuple[tuple[int, int] | None, ...]
    of_part: tuple[tuple[int, ...], ...]
    near: tuple[int, ...]
    groups: tuple[int, ...]
    pins: tuple[tuple[int, ...], ...]
    wiped: tuple[tuple[bool, ...], ...]
    strange: tuple[tuple[bool, ...], ...]
    kept: dict[tuple[object, ...], tuple[tuple[int, ...], Tree]] = field(default_factory=dict)

    @property
    def everything(self) -> int:
        """All parts, as a number."""
        return (1 << len(self.piece.parts)) - 1


def bench(piece: Piece, block: Blocking | None = None) -> Bench:
    """Gather what the search reads.

    Args:
        piece: the piece.
        block: what is in the way of what; found from the solids when None.
    """
    parts = piece.parts
    index = {p.id: i for i, p in enumerate(parts)}

    def pair(one: str, two: str) -> tuple[int, int] | None:
        return (index[one], index[two]) if one in index and two in index and one != two else None

    block = block or blocking(parts, piece.joints)
    held = tuple(pair(f.held, f.into) for f in piece.fasteners)
    joints = tuple(pair(j.first, j.second) for j in piece.joints)
    of_part: list[list[int]] = [[] for _ in parts]
    near = [0] * len(parts)
    for n, two in enumerate(joints):
        for i in two or ():
            of_part[i].append(n)
    for two in (*joints, *held):
        if two:
            near[two[0]] |= 1 << two[1]
            near[two[1]] |= 1 << two[0]
    pins = [[0] * len(parts) for _ in block.directions]
    for f, two in zip(piece.fasteners, held, strict=True):
        if not two or f.kind not in PINS:
            continue
        for row, d in zip(pins, block.directions, strict=True):
            if not along(f, d):
                row[two[0]] |= 1 << two[1]
                row[two[1]] |= 1 << two[0]
    moving = {m.id for m in piece.motions}
    groups: dict[str, int] = {}
    for i, p in enumerate(parts):
        if p.group in moving:
            groups[p.group] = groups.get(p.group, 0) | 1 << i
    return Bench(
        piece,
        block,
        tuple(reaches(parts, piece.fasteners)),
        held,
        joints,
        tuple(tuple(n) for n in of_part),
        tuple(near),
        tuple(groups.values()),
        tuple(tuple(row) for row in pins),
        tuple(tuple(j.glued and _wipe(j, d) > WIPE for d in block.directions) for j in piece.joints),
        tuple(tuple(_strange(j, d) for d in block.directions) for j in piece.joints),
    )


def bits(number: int) -> Iterator[int]:
    """Indices of the bits that are 1, lowest first."""
    while number:
        low = number & -number
        yield low.bit_length() - 1
        number ^= low


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
        last = letters(b, split.moved)
    return Tree(together, left, tuple(splits))


def letters(b: Bench, parts: int) -> tuple[str, ...]:
    """The letters of parts, sorted; the id stands for a part without one."""
    return tuple(sorted(b.piece.parts[i].letter or b.piece.parts[i].id for i in bits(parts)))


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


def _renamed(tree: Tree, names: dict[int, int]) -> Tree:
    def moved(parts: int) -> int:
        return sum(1 << names[i] for i in bits(parts))

    splits = tuple((Split(moved(s.moved), s.direction), _renamed(sub, names)) for s, sub in tree.splits)
    return Tree(moved(tree.parts), moved(tree.core), splits)


def best_split(b: Bench, together: int, last: tuple[str, ...] = ()) -> Split | None:
    """The split that a maker would make; None when the parts cannot be parted.

    A screw that no driver comes at holds its two parts together, as long as there is another way.

    Args:
        b: the bench.
        together: the parts, as a number.
        last: letters of what came off just before; the same again is liked.
    """
    shut = [0] * len(b.near)
    for two, reach, fastener in zip(b.held, b.reach, b.piece.fasteners, strict=True):
        if (
            two
            and fastener.kind not in PINS
            and all(together >> i & 1 for i in two)
            and reach.stubby & together
        ):
            shut[two[0]] |= 1 << two[1]
            shut[two[1]] |= 1 << two[0]
    return _best(b, together, last, shut) or (
        _best(b, together, last, [0] * len(shut)) if any(shut) else None
    )


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


def _best(b: Bench, together: int, last: tuple[str, ...], shut: list[int]) -> Split | None:
    pieces = _hanging(b, together)
    found = _wholes(b, together, shut) or _moves(b, together, shut, pieces)
    best: tuple[int, Split] | None = None
    for rank, split in sorted(((_rank(b, together, s, last), s) for s in found), key=lambda r: r[0]):
        rest = together & ~split.moved
        falling = len(_hanging(b, split.moved)) + len(_hanging(b, rest)) - max(2, len(pieces))
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
        for start in starts:
            moved = closure(rows, start)
            rest = together & ~moved
            if not rest:
                continue
            if rest.bit_count() < moved.bit_count():
                found[Split(rest, d ^ 1)] = None
            else:
                found[Split(moved, d)] = None
    return list(found)


def closure(rows: list[int], start: int) -> int:
    """All that moves when some parts are moved: those, what they meet, what that meets."""
    seen = front = start
    while front:
        low = front & -front
        new = rows[low.bit_length() - 1] & ~seen
        seen |= new
        front = (front ^ low) | new
    return seen


def _hanging(b: Bench, together: int) -> list[int]:
    """The pieces that some parts fall into when lifted: parts hang together by joints and fasteners."""
    out = []
    left = together
    while left:
        one = closure([n & together for n in b.near], left & -left)
        out.append(one)
        left &= ~one
    return out


def _rank(b: Bench, together: int, split: Split, last: tuple[str, ...]) -> tuple[int, ...]:
    """How much a maker likes a split: the least is the best."""
    moved, d = split.moved, split.direction
    cut = crossing(b, together, moved)
    whole = moved in b.groups
    broken = not whole and any(g & moved and g & together & ~moved and together & ~g for g in b.groups)
    glued = any(b.piece.joints[n].glued for n, _ in cut)
    wiped = any(b.wiped[n][d] for n, _ in cut)
    strange = any(b.strange[n][d if second else d ^ 1] for n, second in cut)
    kind = 0 if whole else 3 if broken else 1 + glued
    again = 0 if last and letters(b, moved) == last else 1
    return kind, wiped, strange, again, len(cut), moved.bit_count(), d, -moved


def crossing(b: Bench, together: int, moved: int) -> list[tuple[int, bool]]:
    """Joints between what moves and what stays: index, and True when it is the second part that moves."""
    out = []
    for i in bits(moved):
        for n in b.of_part[i]:
            one, two = b.joints[n] or (i, i)
            other = two if one == i else one
            if together >> other & 1 and not moved >> other & 1:
                out.append((n, two == i))
    return out


def _wipe(joint: Joint, way: Vec) -> float:
    """How far glue faces slide on each other when a joint closes along a direction [mm]."""
    far = 0.0
    for contact in joint.contacts:
        if contact.glued and abs(dot(contact.normal, way)) < 0.5:
            far = max(far, sum(abs(way[k]) * contact.box.size(k) for k in range(3)))
    return far


def _strange(joint: Joint, way: Vec) -> bool:
    return bool(joint.directions) and all(dot(way, own) < 1 - 1e-6 for own in joint.directions)
