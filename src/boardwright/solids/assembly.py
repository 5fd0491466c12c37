"""How a piece goes together: in which order, which way, what is driven when; and what cannot go together at all."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from boardwright.core.findings import Place
from boardwright.core.poses import Vec
from boardwright.piece.records import Piece
from boardwright.solids.bench import Bench, bench, bits, crossing, names
from boardwright.solids.blocking import rooms_of
from boardwright.solids.corner_ways import BESIDE, guided
from boardwright.solids.once import once
from boardwright.solids.taking_apart import Split, Tree, come_apart, take_apart

BESIDE_SLIDES = 20.0
"""Boxes of a drawer no farther than this from others are guided by them, with room for slides [mm]."""
WAYS = {
    (1.0, 0.0, 0.0): "right",
    (-1.0, 0.0, 0.0): "left",
    (0.0, 1.0, 0.0): "back",
    (0.0, -1.0, 0.0): "front",
    (0.0, 0.0, 1.0): "up",
    (0.0, 0.0, -1.0): "down",
}
"""Directions along the axes of the piece, in words."""


@dataclass(frozen=True, slots=True)
class AssemblyStep:
    """One step of building: what is put onto what.

    Attributes:
        number: from 1 in the order of building.
        units: what is put on, one after the other in this order, each moved whole: part ids. Several where alike
            parts or subassemblies go on the same way.
        onto: ids of what stands there already.
        direction: unit vector in which they are moved into place.
        travel: how far before its place the first joint or guide begins [mm].
        joints: ids of those that close. fasteners: ids of those that are driven or put in.
        stubby: ids of the screws among them that only a stubby or right-angle driver comes at.
        unreached: ids of the screws among them that no driver comes at.
        glued: True when glue is used.
        count: how many subassemblies are made alike with this step; the ids are those of the first.
        sub: number of the subassembly it belongs to; 0 for the piece.
        approach: unit vector in which they are brought to where the way along `direction` begins: `travel` before
            their place; the same as `direction` when they go straight.
    """

    number: int
    units: tuple[tuple[str, ...], ...]
    onto: tuple[str, ...]
    direction: Vec
    travel: float
    joints: tuple[str, ...]
    fasteners: tuple[str, ...]
    stubby: tuple[str, ...]
    unreached: tuple[str, ...]
    glued: bool
    count: int
    sub: int
    approach: Vec

    @property
    def adds(self) -> tuple[str, ...]:
        """Ids of all parts that are put on."""
        return tuple(i for unit in self.units for i in unit)


@dataclass(frozen=True, slots=True)
class Subassembly:
    """Parts put together before they go into the piece.

    Attributes:
        number: from 1, in the order in which they are begun.
        name: that of the moving thing, e.g. `drawer 1`, else "".
        copies: part ids of each that is made alike, the first being the one that the steps name, in the order in
            which they are put on: parts at the same place answer to each other. They have the same names; where
            sizes differ, so do their letters.
    """

    number: int
    name: str
    copies: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Trap:
    """Parts that cannot be put together.

    Attributes:
        parts: ids of the fewest that hold each other.
        blockers: a part, the part in its way, and where: `left, up`, or what holds them.
        joints: ids of the joints of which each alone, were it one that lets go, would free them; cheapest first.
    """

    parts: tuple[str, ...]
    blockers: tuple[tuple[str, str, str], ...]
    joints: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Assembly:
    """How a piece goes together.

    Attributes:
        order: the steps of building; subassemblies come before the step that uses them.
        subs: the subassemblies.
        trapped: what cannot go together; the order then takes each as if it were one part.
    """

    order: tuple[AssemblyStep, ...]
    subs: tuple[Subassembly, ...]
    trapped: tuple[Trap, ...]


def assembly_of(piece: Piece) -> Assembly:
    """How a piece goes together; the same piece is searched once, wherever in a file it was asked for."""
    return _of_this(_This(piece))


class _This:
    """A piece that is the same as itself alone: it is found again without looking through all of it."""

    __slots__ = ("piece",)

    def __init__(self, piece: Piece) -> None:
        self.piece = piece

    def __hash__(self) -> int:
        return id(self.piece)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _This) and other.piece is self.piece


@lru_cache(maxsize=4)
def _of_this(this: _This) -> Assembly:
    return _assembly(what_matters(this.piece))


@once(16)
def what_matters(piece: Piece) -> Piece:
    """The piece less all that does not bear on how it goes together."""
    nowhere = Place()
    return Piece(
        "",
        piece.units,
        piece.step,
        piece.outside,
        piece.moisture,
        tuple(replace(p, place=nowhere) for p in piece.parts),
        tuple(replace(j, place=nowhere) for j in piece.joints),
        tuple(replace(f, place=nowhere) for f in piece.fasteners),
        motions=tuple(replace(m, place=nowhere) for m in piece.motions),
    )


@lru_cache(maxsize=16)
def _assembly(piece: Piece) -> Assembly:
    b = bench(piece)
    if not piece.parts:
        return Assembly((), (), ())
    tree = take_apart(b, b.everything)
    alike: dict[Way, list[Tree]] = {}
    for sub in _trees(tree):
        if sub is not tree and sub.parts.bit_count() > 1:
            alike.setdefault(_way_of_making(b, sub), []).append(sub)
    writer = _Writer(b, alike, [], [], {})
    writer.write(tree, 1, 0)
    stuck = tuple(_trap(b, t.core) for t in _trees(tree) if t.core.bit_count() > 1)
    return Assembly(tuple(writer.steps), tuple(writer.subs), stuck)


def _trees(tree: Tree) -> Iterator[Tree]:
    """A tree and all below it, in the order of building."""
    for _, sub in reversed(tree.splits):
        yield from _trees(sub)
    yield tree


Way = tuple[object, ...]
"""What subassemblies share that are made alike: names of parts, order, directions."""


def _way_of_making(b: Bench, tree: Tree) -> Way:
    steps = tuple((s.direction, _way_of_making(b, sub)) for s, sub in reversed(tree.splits))
    return tuple(b.piece.parts[i].name for i in bits(tree.core)), steps


def _in_order(tree: Tree) -> Iterator[int]:
    """Indices of parts in the order in which they are put on."""
    yield from bits(tree.core)
    for _, sub in reversed(tree.splits):
        yield from _in_order(sub)


@dataclass(frozen=True, slots=True)
class _Writer:
    """Writes steps in the order of building.

    Attributes:
        b: the bench. alike: the subassemblies by what those share that are made alike.
        steps, subs: what is written. made: number of each by the same.
    """

    b: Bench
    alike: dict[Way, list[Tree]]
    steps: list[AssemblyStep]
    subs: list[Subassembly]
    made: dict[Way, int]

    def write(self, tree: Tree, count: int, sub: int) -> None:
        """The steps of a tree, those of its subassemblies before they are used."""
        standing = tree.core
        for run in self._runs(tree):
            for split, moved in run:
                if split.moved.bit_count() > 1:
                    self._make(moved)
            self.steps.append(self._step([s for s, _ in run], standing, count, sub))
            for split, _ in run:
                standing |= split.moved

    def _make(self, tree: Tree) -> None:
        way = _way_of_making(self.b, tree)
        if way in self.made:
            return
        copies = self.alike[way]
        number = self.made[way] = len(self.made) + 1
        ids = tuple(tuple(self.b.piece.parts[i].id for i in _in_order(c)) for c in copies)
        self.subs.append(Subassembly(number, self._name(copies[0].parts), ids))
        self.write(copies[0], len(copies), number)

    def _name(self, parts: int) -> str:
        group = self.b.piece.parts[next(bits(parts))].group
        return (
            next((m.name for m in self.b.piece.motions if m.id == group), "")
            if parts in self.b.groups
            else ""
        )

    def _ids(self, parts: int) -> tuple[str, ...]:
        return tuple(self.b.piece.parts[i].id for i in bits(parts))

    def _runs(self, tree: Tree) -> list[list[tuple[Split, Tree]]]:
        """What is put on, in the order of building; what is alike and goes on the same way stands together."""
        out: list[list[tuple[Split, Tree]]] = []
        for split, sub in reversed(tree.splits):
            if out and self._goes_with([s for s, _ in out[-1]], split):
                out[-1].append((split, sub))
            else:
                out.append([(split, sub)])
        return out

    def _goes_with(self, run: list[Split], split: Split) -> bool:
        before = run[-1]
        if (before.direction, before.then) != (split.direction, split.then):
            return False
        if any(crossing(self.b, s.moved | split.moved, split.moved) for s in run):
            return False
        both = before.moved in self.b.groups and split.moved in self.b.groups
        return both or names(self.b, before.moved) == names(self.b, split.moved)

    def _step(self, run: list[Split], standing: int, count: int, sub: int) -> AssemblyStep:
        b = self.b
        onto, travel, glued = standing, 0.0, False
        joints: list[str] = []
        driven: list[str] = []
        stubby: list[str] = []
        unreached: list[str] = []
        for split in run:
            whole = standing | split.moved
            closed = sorted({n for n, _ in crossing(b, whole, split.moved)})
            joints += [b.piece.joints[n].id for n in closed]
            glued |= any(b.piece.joints[n].glued for n in closed)
            travel = max(travel, _travel(b, split, standing))
            for f, two, reach in zip(b.piece.fasteners, b.held, b.reach, strict=True):
                if (
                    not two
                    or {split.moved >> i & 1 for i in two} != {0, 1}
                    or any(not whole >> i & 1 for i in two)
                ):
                    continue
                driven.append(f.id)
                if reach.stubby & whole:
                    unreached.append(f.id)
                elif reach.driver & whole:
                    stubby.append(f.id)
            standing = whole
        return AssemblyStep(
            len(self.steps) + 1,
            tuple(self._ids(s.moved) for s in run),
            self._ids(onto),
            _inward(b, run[0].direction),
            travel,
            tuple(joints),
            tuple(driven),
            tuple(stubby),
            tuple(unreached),
            glued,
            count,
            sub,
            _inward(b, run[0].direction if run[0].then < 0 else run[0].then),
        )


def _inward(b: Bench, d: int) -> Vec:
    """The other way of a direction."""
    return b.block.directions[d ^ 1]


def _travel(b: Bench, split: Split, standing: int) -> float:
    """How far the moved parts go before none stands beside what guided it [mm]."""
    if split.then >= 0:
        return split.far
    near = BESIDE
    joined = {b.joints[n] for n, _ in crossing(b, standing | split.moved, split.moved)}
    pairs = sorted({(i, j) if split.moved >> i & 1 else (j, i) for i, j in (two for two in joined if two)})
    if split.moved in b.groups:
        near, pairs = BESIDE_SLIDES, [(i, j) for i in bits(split.moved) for j in bits(standing)]
    rooms = {i: rooms_of(b.piece.parts[i]) for i in sorted({i for pair in pairs for i in pair})}
    far = 0.0
    for first in sorted({i for i, _ in pairs}):
        other = np.concatenate([rooms[j] for i, j in pairs if i == first])
        far = max(far, guided(rooms[first], other, b.block.directions[split.direction], near))
    return far


def _trap(b: Bench, stuck: int) -> Trap:
    """The fewest parts that hold each other, and the joints that would free them."""
    fewest = stuck
    for i in reversed(list(bits(stuck))):
        less = fewest & ~(1 << i)
        if less.bit_count() > 1 and not come_apart(b, less):
            fewest = less
    ids = [p.id for p in b.piece.parts]
    blockers = []
    for i in bits(fewest):
        for j in bits(fewest):
            ways = [
                _way(d) for d, row in zip(b.block.directions, b.block.rows, strict=True) if row[i] >> j & 1
            ]
            pinned = any(row[i] >> j & 1 for row in b.pins)
            if ways or (pinned and i < j):
                blockers.append((ids[i], ids[j], ", ".join([*ways, *(["dowels"] if pinned else [])])))
    freeing = [
        (j.glued, round(sum(c.area for c in j.contacts), 3), j.id)
        for n, j in enumerate(b.piece.joints)
        if (two := b.joints[n]) and all(fewest >> i & 1 for i in two) and come_apart(b, stuck, n)
    ]
    return Trap(
        tuple(ids[i] for i in bits(fewest)), tuple(blockers), tuple(id for _, _, id in sorted(freeing))
    )


def _way(d: Vec) -> str:
    return WAYS.get(d, "aslant")
