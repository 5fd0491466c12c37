"""What the search for an order of building reads: parts by their number, joints, fasteners, what is in the way."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any

import numpy as np

from boardwright.core.poses import Vec, dot
from boardwright.piece.records import Joint, Part, Piece
from boardwright.solids.blocking import Blocking, blocking, rooms_of
from boardwright.solids.driver_reach import PINS, Reach, along, reaches

TOUCH = 0.05
"""Parts that are no farther apart than this touch [mm]."""


@dataclass(frozen=True, slots=True)
class Bench:
    """What the search reads, by the index of parts.

    Attributes:
        piece: the piece. block: what is in the way of what. reach: of each driver, as `piece.fasteners`.
        held: for each fastener its two parts.
        joints: for each joint its two parts.
        of_part: for each part its joints.
        links: for each part its joints, the other part as a number, and True where it is the second itself.
        near: for each part, as a number, the parts it is joined to. touching: the same and those it touches.
        groups: for the parts of each moving group, as a number, the way it opens; None for what turns.
        pins: for each direction and part, as a number, the parts that pins hold to it.
        slides: for each joint and direction, how far faces slide on each other when it closes along it [mm].
        strange: for each joint and direction, whether the second part does not leave the first that way.
        boxes: of all parts, (n, 2, 3) float [mm]. owner: index of the part of each, (n,) int.
        kept: what has been found once.
    """

    piece: Piece
    block: Blocking
    reach: tuple[Reach, ...]
    held: tuple[tuple[int, int] | None, ...]
    joints: tuple[tuple[int, int] | None, ...]
    of_part: tuple[tuple[int, ...], ...]
    links: tuple[tuple[tuple[int, int, bool], ...], ...]
    near: tuple[int, ...]
    touching: tuple[int, ...]
    groups: dict[int, Vec | None]
    pins: tuple[tuple[int, ...], ...]
    slides: tuple[tuple[float, ...], ...]
    strange: tuple[tuple[bool, ...], ...]
    boxes: Any
    owner: Any
    kept: dict[Any, Any] = field(default_factory=dict)

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
    held = tuple(
        None if _is_stop(parts, index, f.held, f.into) else pair(f.held, f.into) for f in piece.fasteners
    )
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
    moving = {m.id: None if m.turn else m.direction for m in piece.motions}
    groups: dict[str, int] = {}
    for i, p in enumerate(parts):
        if p.group in moving:
            groups[p.group] = groups.get(p.group, 0) | 1 << i
    rooms = [rooms_of(p) for p in parts]
    return Bench(
        piece,
        block,
        tuple(reaches(parts, piece.fasteners)),
        held,
        joints,
        tuple(tuple(n) for n in of_part),
        tuple(tuple(_link(joints[n], i, n) for n in own) for i, own in enumerate(of_part)),
        tuple(near),
        tuple(n | t for n, t in zip(near, _touching(rooms), strict=True)),
        {number: moving[id] for id, number in groups.items()},
        tuple(tuple(row) for row in pins),
        tuple(tuple(_slide(j, d) for d in block.directions) for j in piece.joints),
        tuple(tuple(_strange(j, d) for d in block.directions) for j in piece.joints),
        np.concatenate([*rooms, np.zeros((0, 2, 3))]),
        np.repeat(np.arange(len(parts)), [len(r) for r in rooms]),
    )


def bits(number: int) -> Iterator[int]:
    """Indices of the bits that are 1, lowest first."""
    while number:
        low = number & -number
        yield low.bit_length() - 1
        number ^= low


def names(b: Bench, parts: int) -> tuple[str, ...]:
    """What parts are called, sorted."""
    found: tuple[str, ...] | None = b.kept.get(("names", parts))
    if found is None:
        found = b.kept["names", parts] = tuple(sorted(b.piece.parts[i].name for i in bits(parts)))
    return found


def closure(rows: list[int], start: int, known: dict[int, int] | None = None) -> int:
    """All that moves when some parts are moved: those, what they meet, what that meets.

    Args:
        rows: for each part, as a number, what it meets.
        start: the parts that are moved, as a number.
        known: closures of single parts in the same rows, by their numbers; grows.
    """
    seen = front = start
    while front:
        low = front & -front
        front ^= low
        if known and low in known:
            seen |= known[low]
            front &= ~known[low]
            continue
        new = rows[low.bit_length() - 1] & ~seen
        seen |= new
        front |= new
    if known is not None and start & (start - 1) == 0:
        known[start] = seen
    return seen


def hanging(near: tuple[int, ...], together: int) -> list[int]:
    """The pieces that some parts fall into when lifted, as numbers.

    Args:
        near: for each part, as a number, the parts that hold to it.
        together: the parts, as a number.
    """
    rows = [n & together for n in near]
    out = []
    left = together
    while left:
        one = closure(rows, left & -left)
        out.append(one)
        left &= ~one
    return out


def _touching(rooms: list[Any]) -> list[int]:
    """For each part, as a number, the parts it touches."""
    if not rooms:
        return []
    boxes = np.concatenate(rooms)
    met = np.ones((len(boxes), len(boxes)), dtype=bool)
    for k in range(3):
        met &= boxes[:, None, 0, k] < boxes[None, :, 1, k] + TOUCH
        met &= boxes[None, :, 0, k] < boxes[:, None, 1, k] + TOUCH
    starts = np.cumsum([0, *(len(r) for r in rooms[:-1])])
    parts = np.logical_or.reduceat(np.logical_or.reduceat(met, starts, 0), starts, 1)
    return [sum(1 << int(j) for j in np.flatnonzero(row) if j != i) for i, row in enumerate(parts)]


def bulk(b: Bench, parts: int) -> int:
    """Volume of the blanks of parts, rounded [cm3]: the lighter side is moved."""
    found: int | None = b.kept.get(("bulk", parts))
    if found is None:
        sizes = (b.piece.parts[i].size for i in bits(parts))
        found = b.kept["bulk", parts] = round(sum(x * y * z for x, y, z in sizes) / 1000)
    return found


def crossing(b: Bench, together: int, moved: int) -> list[tuple[int, bool]]:
    """Joints between what moves and what stays: index, and True when it is the second part that moves."""
    rest = together & ~moved
    return [(n, second) for i in bits(moved) for n, other, second in b.links[i] if other & rest]


def _link(two: tuple[int, int] | None, i: int, n: int) -> tuple[int, int, bool]:
    """A joint as seen from one of its parts."""
    first, second = two or (i, i)
    return n, 1 << (second if first == i else first), second == i


def _slide(joint: Joint, way: Vec) -> float:
    far = 0.0
    for contact in joint.contacts:
        if abs(dot(contact.normal, way)) < 0.5:
            far = max(far, sum(abs(way[k]) * contact.box.size(k) for k in range(3)))
    return far


def _strange(joint: Joint, way: Vec) -> bool:
    """True off the joint's own directions; a dry joint of one flat face may also slide on it."""
    if not joint.directions or any(dot(way, own) > 1 - 1e-6 for own in joint.directions):
        return False
    normals = [c.normal for c in joint.contacts]
    flat = bool(normals) and all(abs(dot(n, normals[0])) > 1 - 1e-6 for n in normals)
    return joint.glued or not flat or abs(dot(normals[0], way)) > 1e-6


def _is_stop(parts: Sequence[Part], index: dict[str, int], held: str, into: str) -> bool:
    """Whether a fastener joins parts that move past each other: a stop, driven when all stands and is pulled out."""
    if held not in index or into not in index:
        return False
    return parts[index[held]].group != parts[index[into]].group
