"""Parts that could go in wrong: every kind is turned in its place, and its mirror twin is tried there.

What is turned and still finds its place, touches where it should and meets its screws and dowels, goes in without a
sign that it is wrong. What is the same when turned cannot be wrong.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import Any

import numpy as np

from boardwright.core.poses import Pose, Vec, add, cross, dot, scaled
from boardwright.piece.cuts import Cut, Fingers, Groove, Hole, Mortise, Notch, Rabbet, Tenon
from boardwright.piece.records import Contact, Fastener, Joint, Part, Piece
from boardwright.solids.assembly import what_matters
from boardwright.solids.blocking import rooms_of
from boardwright.solids.cells import clashes, clipped, common_volume
from boardwright.solids.frames import Form, form_of, relative
from boardwright.solids.primitives import reach_of
from boardwright.solids.sections import TOUCH, touching_area
from boardwright.solids.taken import around, taken
from boardwright.solids.travel import is_boxes
from boardwright.solids.turns import mark_for, turns_of

SAME = 5.0
"""Room in which two solids may differ and count as the same [mm3]."""
FORCED = 0.1
"""How far a part may be too large for its place and still be pushed in [mm]: common practice."""
TOUCHES = 0.9
"""Share of a face that must still touch."""
MEETS = 0.5
"""How far a hole may lie from its fellow and still take the screw or dowel, and how far a cut may lie elsewhere
without being seen [mm]: common practice."""
TRIMMED = ("spline", "key")
"""Strips that are cut off at their ends only once they are glued in: they cannot be turned wrong."""
SQUARE_CUTS = (Groove, Rabbet, Notch, Mortise, Tenon, Fingers, Hole)
"""Cuts that the box around them tells."""

WORDS = {"Moulding": "moulded edge", "VGroove": "V groove", "DovetailSlot": "dovetail channel"}
"""What cuts are called where their own name is not what the trade says."""


@dataclass(frozen=True, slots=True)
class WrongPose:
    """A kind of part that can be put in wrong.

    Attributes:
        letter: of the kind. parts: ids.
        turns: how it can go in, in words: `end for end`, `with its mirror twin B in its place` …
        differs: the cuts that then lie in another place, in words.
        matters: False when only holes differ that nothing goes in.
        mark: what to write on it, and where.
    """

    letter: str
    parts: tuple[str, ...]
    turns: tuple[str, ...]
    differs: str
    matters: bool
    mark: str


def wrong_poses(piece: Piece) -> tuple[WrongPose, ...]:
    """The kinds of parts that can be put in wrong, by letter; the same piece is tried once."""
    return _wrong_poses(what_matters(piece))


@lru_cache(maxsize=16)
def _wrong_poses(piece: Piece) -> tuple[WrongPose, ...]:
    kinds: dict[str, list[Part]] = {}
    for p in piece.parts:
        if p.name not in TRIMMED:
            kinds.setdefault(p.letter or p.id, []).append(p)
    place = _Place.of(piece)
    out = []
    for letter, parts in kinds.items():
        beside = place.beside(parts[0])
        found = [(turn, tried) for turn, tried in _turned(parts[0]) if place.takes(parts[0], tried, beside)]
        twin = next((kinds[t][0] for t in _twins(parts[0], kinds)), None)
        swapped = twin is not None and any(
            place.takes(parts[0], t, beside) for t in _in_place_of(parts[0], twin)
        )
        if not found and not swapped:
            continue
        cuts = [c for _, tried in found for c in _moved_cuts(parts[0], tried)]
        words = [turn for turn, _ in found]
        if twin is not None and swapped:
            words.append(f"with its mirror twin {twin.letter} in its place")
        out.append(
            WrongPose(
                letter,
                tuple(p.id for p in parts),
                tuple(words),
                _named(cuts) or "its shape",
                not cuts or any(not isinstance(c, Hole) or c.purpose == "hardware" for c in cuts),
                mark_for(parts[0], [turn for turn, _ in found]),
            )
        )
    return tuple(sorted(out, key=lambda w: w.letter))


def _turned(part: Part) -> Iterator[tuple[str, Part]]:
    for turn, pose in turns_of(part.size):
        yield turn, replace(part, pose=pose.then(part.pose))


def _twins(part: Part, kinds: dict[str, list[Part]]) -> list[str]:
    """The letter of the mirror twin, once for a pair."""
    own = part.letter
    return [
        t
        for t, (other, *_) in kinds.items()
        if own and own < t and own in (other.mirror_of,) and np.allclose(other.size, part.size, atol=FORCED)
    ]


def _in_place_of(part: Part, twin: Part) -> Iterator[Part]:
    """The twin in the place of a part: as it lies, and turned."""
    there = replace(twin, id=part.id, pose=part.pose)
    yield there
    for _, tried in _turned(there):
        yield tried


@dataclass(frozen=True, slots=True)
class _Place:
    """What stands round a part.

    Attributes:
        parts: by id.
        boxes: of all parts, (n, 2, 3) float [mm]. owner: index of the part of each. order: ids by that index.
        joints, fasteners: of each part.
    """

    parts: dict[str, Part]
    boxes: Any
    owner: Any
    order: tuple[str, ...]
    joints: dict[str, list[Joint]]
    fasteners: dict[str, list[Fastener]]

    @staticmethod
    def of(piece: Piece) -> _Place:
        rooms = [rooms_of(p) for p in piece.parts]
        boxes = np.concatenate([*rooms, np.zeros((0, 2, 3))])
        owner = np.repeat(np.arange(len(rooms)), [len(r) for r in rooms])
        parts = {p.id: p for p in piece.parts}
        joints: dict[str, list[Joint]] = {id: [] for id in parts}
        fasteners: dict[str, list[Fastener]] = {id: [] for id in parts}
        for j in piece.joints:
            if j.first in parts and j.second in parts:
                joints[j.first].append(j)
                joints[j.second].append(j)
        for f in piece.fasteners:
            for id in {f.held, f.into} & set(parts):
                fasteners[id].append(f)
        return _Place(parts, boxes, owner, tuple(parts), joints, fasteners)

    def beside(self, part: Part) -> tuple[Any, Any]:
        """The boxes of other parts that reach into the blank of a part, and their owners."""
        low, high = np.array(part.box.low), np.array(part.box.high)
        near = ((self.boxes[:, 0] < high) & (self.boxes[:, 1] > low)).all(axis=1)
        near &= self.owner != self.order.index(part.id)
        return self.boxes[near], self.owner[near]

    def takes(self, part: Part, tried: Part, beside: tuple[Any, Any]) -> bool:
        """Whether a part goes in otherwise, and is then not as it should be; what is soon told comes first."""
        met = self._met(tried, *beside)
        if any(self._bars(tried, other) for other in met):
            return False
        pose = relative(part.pose, tried.pose)
        moved = bool(_moved_cuts(part, tried))
        if not moved and all(isinstance(c, SQUARE_CUTS) for c in part.cuts):
            return False
        likeness = part.size, _seen(part), _seen(tried), pose
        return (
            self._meets_fasteners(part, tried)
            and (moved or not _same(*likeness))
            and self._touches(part, tried)
            and all(_no_less_room(part, tried, other) for other in met)
            and not _same(*likeness)
        )

    def _met(self, tried: Part, boxes: Any, owner: Any) -> list[Part]:
        """The parts beside whose boxes reach into those of a part as it is tried."""
        met = clashes(rooms_of(tried), boxes, FORCED)[:, 1]
        return [self.parts[self.order[i]] for i in sorted(set(owner[met].tolist()))]

    def _bars(self, tried: Part, other: Part) -> bool:
        """Whether boxes tell for certain that another part is in the way."""
        if is_boxes(tried) and is_boxes(other):
            return True
        sure = common_volume(rooms_of(tried, True), rooms_of(other, True))
        return sure > SAME + _bored(form_of(tried)) + _bored(form_of(other))

    def _touches(self, part: Part, tried: Part) -> bool:
        for joint in self.joints[part.id]:
            one, two = self.parts[joint.first], self.parts[joint.second]
            swapped = (tried, two) if joint.first == part.id else (one, tried)
            for contact in joint.contacts:
                if contact.gap < 1e-9 and self._area(contact, *swapped) < TOUCHES * self._area(
                    contact, one, two
                ):
                    return False
        return True

    def _area(self, contact: Contact, one: Part, two: Part) -> float:
        """Area of a face that touches [mm2], holes filled where boxes tell."""
        if contact.corners or not is_boxes(one) or not is_boxes(two):
            return touching_area(contact, one, two)
        window = np.array([contact.box.low, contact.box.high], dtype=float)
        window[:, contact.axis] += (-TOUCH, TOUCH)
        push = np.array(contact.normal) * -TOUCH
        return common_volume(clipped(rooms_of(two), window) + push, rooms_of(one)) / TOUCH

    def _meets_fasteners(self, part: Part, tried: Part) -> bool:
        for f in self.fasteners[part.id]:
            there = _holes_of(f, tried)
            if not all(any(_fits(hole, other) for other in there) for hole in _holes_of(f, part)):
                return False
        return True


@dataclass(frozen=True, slots=True)
class _Drilled:
    """A hole in the piece: its mouth [mm], the way it goes, and its cut."""

    mouth: Vec
    way: Vec
    hole: Hole


def _holes_of(fastener: Fastener, part: Part) -> list[_Drilled]:
    """The holes of a part that a fastener goes into; those that are marked in place are not there yet."""
    out = []
    for hole in _seen(part):
        if not isinstance(hole, Hole):
            continue
        axis = hole.side.axis
        p = [0.0, 0.0, 0.0]
        p[axis] = part.size[axis] if hole.side.high else 0.0
        for k, v in zip((k for k in range(3) if k != axis), hole.at, strict=True):
            p[k] = v
        way = [0.0, 0.0, 0.0]
        way[axis] = -1.0 if hole.side.high else 1.0
        mouth = part.pose.point((p[0], p[1], p[2]))
        ahead = part.pose.direction((way[0], way[1], way[2]))
        off = add(mouth, scaled(fastener.at, -1.0))
        across = cross(off, fastener.direction)
        far = dot(off, fastener.direction)
        if (
            dot(across, across) < MEETS**2
            and -1.0 - part.size[axis] < far < fastener.length + part.size[axis] + 1.0
        ):
            out.append(_Drilled(mouth, ahead, hole))
    return out


def _fits(right: _Drilled, tried: _Drilled) -> bool:
    """Whether a hole does in the place of another."""
    if abs(right.hole.diameter - tried.hole.diameter) > 0.2:
        return False
    plain = right.hole.through and not right.hole.countersink and not right.hole.counterbore
    if plain and tried.hole.through:
        return abs(dot(right.way, tried.way)) > 1 - 1e-6
    off = add(right.mouth, scaled(tried.mouth, -1.0))
    same = dot(right.way, tried.way) > 1 - 1e-6 and dot(off, off) < MEETS**2
    return same and tried.hole.depth > right.hole.depth - 1.0


def _seen(part: Part) -> tuple[Cut, ...]:
    """The cuts that are there when a part is put in its place."""
    return tuple(c for c in part.cuts if not (isinstance(c, Hole) and c.marked_through))


def _no_less_room(part: Part, tried: Part, other: Part) -> bool:
    """Whether a part as it is tried shares no more room with another than as it should be."""
    shared = _shared(form_of(tried), form_of(other), relative(tried.pose, other.pose))
    return shared <= SAME or shared <= SAME + _shared(
        form_of(part), form_of(other), relative(part.pose, other.pose)
    )


@lru_cache(maxsize=4096)
def _bored(form: Form) -> float:
    """Room that the holes of a part take up, at most [mm3]."""
    boxes = [reach_of(b) for c in form.cuts if isinstance(c, Hole) for b in taken(c, form.size)]
    return sum(b.size(0) * b.size(1) * b.size(2) for b in boxes)


@lru_cache(maxsize=16384)
def _shared(one: Form, two: Form, place: Pose) -> float:
    """Volume that two solids share, the second at a place in the frame of the first [mm3]."""
    from boardwright.solids.mesh import placed, shape, shared_volume

    return shared_volume(shape(one.size, one.cuts), placed(two.size, two.cuts, place))


@lru_cache(maxsize=8192)
def _same(size: Vec, right: tuple[Cut, ...], tried: tuple[Cut, ...], pose: Pose) -> bool:
    from boardwright.solids.mesh import placed, shape

    one, two = shape(size, right), placed(size, tried, pose)
    return float((one - two).volume() + (two - one).volume()) < SAME


def _moved_cuts(part: Part, tried: Part) -> tuple[Cut, ...]:
    """The cuts of a part that have no fellow, and those that have none in it, when it goes in as tried."""
    return _moved(form_of(part), form_of(tried), relative(part.pose, tried.pose))


@lru_cache(maxsize=16384)
def _moved(right: Form, tried: Form, pose: Pose) -> tuple[Cut, ...]:
    cuts, rooms = _reaches(right)
    others, other_rooms = _reaches(tried)
    if not cuts or not others:
        return cuts + others
    ends = other_rooms @ np.array([pose.x, pose.y, pose.z]) + np.array(pose.origin)
    ends = np.stack([ends.min(axis=1), ends.max(axis=1)], axis=1)
    fellows = (np.abs(rooms[:, None] - ends[None, :]) < MEETS).all(axis=(2, 3))
    fellows &= np.array([[type(a) is type(b) for b in others] for a in cuts])
    lone, other_lone = ~fellows.any(axis=1), ~fellows.any(axis=0)
    return tuple(c for c, alone in zip(cuts + others, [*lone, *other_lone], strict=True) if alone)


@lru_cache(maxsize=8192)
def _reaches(form: Form) -> tuple[tuple[Cut, ...], Any]:
    """The cuts of a form that are there when it is put in, and the boxes around them, (n, 2, 3) float [mm]."""
    cuts = tuple(c for c in form.cuts if not (isinstance(c, Hole) and c.marked_through))
    rooms = [around(c, form.size) for c in cuts]
    boxes = np.array([[r.low, r.high] for r in rooms], dtype=float).reshape(-1, 2, 3)
    return cuts, np.clip(boxes, 0.0, np.array(form.size))


def _named(cuts: Iterable[Cut]) -> str:
    """Cuts in words, each kind once."""
    names: dict[str, None] = {}
    for cut in cuts:
        if isinstance(cut, Hole):
            names[f"holes for {cut.for_}" if cut.for_ else "holes"] = None
        elif isinstance(cut, Groove):
            names["groove" if cut.along == 0 else "dado"] = None
        else:
            name = type(cut).__name__
            names[WORDS.get(name, re.sub("(?<=[a-z])(?=[A-Z])", " ", name).lower())] = None
    return ", ".join(names)
