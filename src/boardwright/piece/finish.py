"""From drafts to parts: cuts in the part's own frame, and one letter for all identical parts.

Of the four ways to lay a board (turned end for end, turned over, both), the one is taken whose sizes from the
reference end, edge and face lie on the step; then the one with its reference end at the bottom, left or front of
the piece and its reference edge at the front or bottom, so that left and right parts are measured alike; then the one
with most cuts on the face. Parts of one shape get one letter and are all laid as the first of them. A part that equals
another only as its mirror image gets its own letter, and says so.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, fields, replace
from functools import lru_cache
from operator import attrgetter
from typing import Any

from boardwright.core.letters import letter
from boardwright.core.poses import AXES, Pose, cross, scaled
from boardwright.piece.cuts import Bevel, Curve, Cut, Groove, Hole, Notch, Rabbet, Side
from boardwright.piece.drafts import Bore, Channel, Corner, Draft, DraftCut, Step
from boardwright.piece.laying import laid
from boardwright.piece.records import Part

Signs = tuple[int, int, int]
TURNS: tuple[Signs, ...] = ((1, 1, 1), (1, -1, -1), (-1, 1, -1), (-1, -1, 1))
MIRROR: Signs = (-1, 1, 1)


class _Frame:
    """One way to lay a draft: which piece axis each part axis follows, and its sign."""

    def __init__(self, draft: Draft, signs: Signs, step: float, quarter: bool = False) -> None:
        self.draft = draft
        self.step = step
        across, through = draft.width_axis, draft.thickness_axis
        self.axes = (draft.length_axis, through, across) if quarter else (draft.length_axis, across, through)
        self.signs = signs
        self.size = tuple(draft.size(a) for a in self.axes)

    def side(self, axis: int, high: bool) -> Side:
        k = self.axes.index(axis)
        return Side.of(k, high if self.signs[k] > 0 else not high)

    def at(self, axis: int, value: float) -> float:
        k = self.axes.index(axis)
        d = self.draft
        return value - d.low[axis] if self.signs[k] > 0 else d.high[axis] - value

    def span(self, axis: int, start: float | None, end: float | None) -> tuple[float, float]:
        d = self.draft
        a = self.at(axis, d.low[axis] if start is None else start)
        b = self.at(axis, d.high[axis] if end is None else end)
        return (a, b) if a <= b else (b, a)

    def turned_side(self, side: Side) -> Side:
        """A side of the draft, as the part so laid has it."""
        return self.side(self.draft.axes[side.axis], side.high)

    def turned_axis(self, axis: int) -> int:
        """An axis of the draft, as the part so laid has it."""
        return self.axes.index(self.draft.axes[axis])

    def place(self, axis: int, value: float) -> float:
        """A place on an axis of the draft, from the low end of the part so laid [mm]."""
        return self.at(self.draft.axes[axis], value)

    def along(self, axis: int) -> int:
        """+1 when the part so laid has an axis of the draft the same way round, else -1."""
        return self.signs[self.turned_axis(axis)]

    def extent(self, axis: int) -> float:
        """Size of the blank along an axis of the draft [mm]."""
        return self.draft.size(self.draft.axes[axis])

    def pose(self) -> Pose:
        d = self.draft
        directions = [scaled(AXES[a], float(s)) for a, s in zip(self.axes, self.signs, strict=True)]
        origin: list[float] = [0.0, 0.0, 0.0]
        for a, s in zip(self.axes, self.signs, strict=True):
            origin[a] = d.low[a] if s > 0 else d.high[a]
        pose = Pose((origin[0], origin[1], origin[2]), directions[0], directions[1], directions[2])
        return pose.then(d.tilt) if d.tilt is not None else pose

    def cut(self, c: DraftCut) -> Cut:
        if isinstance(c, Channel):
            third = 3 - c.axis - c.along
            lo, hi = self.span(third, c.lo, c.hi)
            start, end = self.span(c.along, c.start, c.end)
            start, end = max(start, 0.0), min(end, self.draft.size(c.along))
            return Groove(
                self.side(c.axis, c.high),
                self.axes.index(c.along),
                lo,
                hi - lo,
                c.depth,
                start,
                end,
                c.holds,
                c.purpose,
            )
        if isinstance(c, Step):
            third = 3 - c.axis - c.edge_axis
            start, end = self.span(third, c.start, c.end)
            start, end = max(start, 0.0), min(end, self.draft.size(third))
            return Rabbet(
                self.side(c.axis, c.high),
                self.side(c.edge_axis, c.edge_high),
                c.width,
                c.depth,
                start,
                end,
                c.holds,
                c.purpose,
            )
        if isinstance(c, Corner):
            return self._corner(c)
        return self._bore(c) if isinstance(c, Bore) else laid(c, self)

    def _corner(self, c: Corner) -> Cut:
        pairs = [
            (self.side(c.a_axis, c.a_high), c.a_size),
            (self.side(c.b_axis, c.b_high), c.b_size),
        ]
        pairs.sort(key=lambda p: p[0].axis)
        (one, one_size), (two, two_size) = pairs
        if (one.axis, two.axis) == (0, 1):
            return Notch(one, two, one_size, two_size, c.holds)
        third = 3 - one.axis - two.axis
        return Rabbet(two, one, one_size, two_size, 0.0, self.size[third], c.holds)

    def _bore(self, c: Bore) -> Cut:
        side = self.side(c.axis, c.high)
        others = [a for k, a in enumerate(self.axes) if k != side.axis]
        at = tuple(self.at(a, c.at[a]) for a in others)
        slot_along = self.axes.index(c.slot_axis) if c.slot > 0 else 0
        depth = self.size[side.axis] if c.through else c.depth
        return Hole(
            side,
            (at[0], at[1]),
            c.diameter,
            depth,
            c.through,
            c.countersink,
            82.0,
            c.slot,
            slot_along,
            c.purpose,
            c.for_,
            c.mate if c.marked or (c.purpose == "pilot" and self._between_steps(at)) else "",
            c.counterbore,
            c.counterbore_depth,
            c.lean * self.signs[self.axes.index(c.lean_axis)] if c.lean else 0.0,
            self.axes.index(c.lean_axis) if c.lean else 0,
        )

    def _between_steps(self, at: tuple[float, ...]) -> bool:
        return any(abs(v / self.step - round(v / self.step)) > 1e-4 for v in at)


_GRAIN = 0.00137
"""Two sizes in the same grain are the same [mm]; no multiple of a shop step lies near the edge of a grain."""


def _r(value: float) -> int:
    return round(value / _GRAIN)


def shape_key(cut: Cut) -> tuple[Any, ...]:
    """What makes two cuts the same shape.

    Everything but what they hold and are for, and where a hole is that is marked in place.
    """
    kind: Any = type(cut)
    name = kind.__name__
    if isinstance(cut, Hole) and cut.marked_through:
        return (name, "marked in place", cut.side.value, _r(cut.diameter), _r(cut.depth))
    return (name, *map(_plain, _shape_of(kind)(cut)))


_NO_SHAPE = frozenset({"holds", "purpose", "for_", "marked_through"})


@lru_cache(maxsize=64)
def _shape_of(kind: type[Any]) -> Callable[[Cut], tuple[Any, ...]]:
    """Takes from a cut all fields that are its shape."""
    return attrgetter(*(f.name for f in fields(kind) if f.name not in _NO_SHAPE))


def _plain(value: Any) -> Any:
    """A value of a cut as it is compared: lengths by the grain, sides by their names."""
    kind = type(value)
    if kind is float:
        return round(value / _GRAIN)
    if kind is Side:
        return value.value
    return tuple(map(_plain, value)) if kind is tuple else value


_PLACED = ("at", "start", "end", "sockets", "steps")


def _off_step(cut: Cut, step: float) -> int:
    """How many places of a cut lie between two steps."""
    if isinstance(cut, Notch | Curve | Bevel):
        return 0
    values: list[float] = []
    for name in _PLACED:
        value = getattr(cut, name, ())
        if isinstance(value, float):
            values.append(value)
        elif isinstance(value, tuple):
            values += [v for pair in value for v in (pair[:2] if isinstance(pair, tuple) else (pair,))]
    return sum(1 for v in values if abs(v / step - round(v / step)) > 1e-4)


def _handed(draft: Draft) -> Signs:
    """Signs that make the axes of the draft right-handed."""
    z = cross(AXES[draft.length_axis], AXES[draft.width_axis])
    return (1, 1, 1 if z[draft.thickness_axis] > 0 else -1)


def _times(a: Signs, b: Signs) -> Signs:
    return (a[0] * b[0], a[1] * b[1], a[2] * b[2])


@dataclass(frozen=True, slots=True)
class _Way:
    """One way to lay a part: the key of its shape seen so, its frame and cuts, and how well it reads."""

    key: tuple[Any, ...]
    frame: _Frame
    cuts: tuple[Cut, ...]
    rank: tuple[int, int, int]


def _laid(frame: _Frame, own: list[Cut], off: int) -> _Way:
    cuts = sorted(((shape_key(c), c) for c in own), key=lambda pair: pair[0])
    on_face = sum(1 for _, c in cuts if getattr(c, "side", None) is Side.FACE)
    away = sum(1 for sign in frame.signs[:2] if sign < 0)
    return _Way(tuple(key for key, _ in cuts), frame, tuple(c for _, c in cuts), (off, away, -on_face))


def _square(draft: Draft) -> bool:
    """True for a square leg or post of solid wood, which may also be given a quarter turn."""
    across, through = draft.size(draft.width_axis), draft.size(draft.thickness_axis)
    return draft.stock.kind == "wood" and _r(across) == _r(through)


def _ways(draft: Draft, base: Signs, step: float) -> list[_Way]:
    """The ways to lay a part in which the fewest sizes fall between two steps."""
    frames = [_Frame(draft, _times(base, turn), step) for turn in TURNS]
    if _square(draft):
        frames += [
            _Frame(draft, _times(_times(base, turn), (1, 1, -1)), step, quarter=True) for turn in TURNS
        ]
    cuts = [[frame.cut(c) for c in draft.cuts] for frame in frames]
    off = [sum(_off_step(c, step) for c in own) for own in cuts]
    least = min(off)
    return [_laid(frame, own, least) for frame, own, n in zip(frames, cuts, off, strict=True) if n == least]


def finish(drafts: list[Draft], step: float) -> tuple[Part, ...]:
    """Turn drafts into parts with letters.

    Args:
        drafts: in the order in which letters are given.
        step: finest printed step [mm].
    """
    letters: dict[tuple[Any, ...], str] = {}
    shown: dict[tuple[Any, ...], tuple[Any, ...]] = {}
    laid = []
    for draft in drafts:
        base = _handed(draft)
        ways = _ways(draft, base, step)
        size = ways[0].frame.size
        body = (draft.stock.id, draft.stock.angle, *map(_r, size))
        key = (*body, min(w.key for w in ways))
        mirror_key = (*body, min(w.key for w in _ways(draft, _times(base, MIRROR), step)))
        letters.setdefault(key, letter(len(letters)))
        view = shown.setdefault(key, min(ways, key=lambda w: (w.rank, w.key)).key)
        way = min((w for w in ways if w.key == view), key=lambda w: w.rank)
        laid.append((way, key, mirror_key))
    parts = []
    for way, key, mirror_key in laid:
        draft, frame = way.frame.draft, way.frame
        mirror_of = letters.get(mirror_key, "") if mirror_key != key else ""
        show = tuple(sorted(frame.side(a, h).value for a, h in draft.show))
        parts.append(
            Part(
                draft.id,
                draft.name,
                draft.stock,
                (frame.size[0], frame.size[1], frame.size[2]),
                frame.pose(),
                way.cuts,
                letters[key],
                draft.group,
                show,
                mirror_of,
                draft.place,
            )
        )
    return _same_names(tuple(parts))


def _same_names(parts: tuple[Part, ...]) -> tuple[Part, ...]:
    """Parts of one letter carry the same name."""
    names: dict[str, list[str]] = {}
    for p in parts:
        if p.name not in names.setdefault(p.letter, []):
            names[p.letter].append(p.name)
    return tuple(replace(p, name=" / ".join(names[p.letter])) for p in parts)
