"""Where a lying panel is held: what carries it, how far it spans between, and what stiffens it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

from boardwright.checks.context import Context
from boardwright.core.poses import Box
from boardwright.piece.records import Contact, Joint, Part

LEVEL = 0.99
"""A part lies when its thickness stands upright to this cosine."""
ACROSS = 0.5
"""Share of a panel's width, as far as it is held at all, that a support must take up."""
RUNS = 0.9
"""Share of the span that a stiffening strip must take up."""
NEAR = 3.0
"""A support at an edge lies within so many thicknesses of it."""
TOUCH = 1.0
"""One part lies on another when their faces are so near, and so much of them is shared [mm]."""
LEAST = 25.0
"""Shorter spans bend nothing [mm]."""


@dataclass(frozen=True, slots=True)
class Hold:
    """A line across a panel that carries it: from `low` to `high` along the span [mm], and the parts that do it."""

    low: float
    high: float
    parts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Span:
    """One way in which a panel spans.

    Attributes:
        axis: piece axis along which it spans, 0 or 1.
        length: the longest clear way between two supports [mm].
        width: of the panel across the span [mm].
        between: the two supports.
        strips: parts glued to it that run along the span and hang on nothing else.
    """

    axis: int
    length: float
    width: float
    between: tuple[Hold, Hold]
    strips: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Panel:
    """A lying part with its spans, one for each way in which it is held on two lines."""

    part: Part
    spans: tuple[Span, ...]
    clear: float
    joints: tuple[Joint, ...]


def lies(part: Part) -> bool:
    """True for a part whose thickness stands upright, and that is no stick."""
    return abs(part.pose.z[2]) > LEVEL and part.size[2] < min(part.size[:2])


def joints_by_part(c: Context) -> dict[str, list[Joint]]:
    """The joints of each part."""
    found: dict[str, list[Joint]] = {id: [] for id in c.parts}
    for j in c.piece.joints:
        for id in (j.first, j.second):
            if id in found:
                found[id].append(j)
    return found


def panels(c: Context, only: str | None = None) -> list[Panel]:
    """Every lying part that spans; or one alone, by its id."""
    by_part = joints_by_part(c)
    floor = c.piece.outside.low[2]
    boxes = [p.box for p in c.piece.parts]
    out: list[Panel] = []
    for part in c.piece.parts:
        if only not in (None, part.id) or not lies(part) or part.box.low[2] < floor + 1:
            continue
        strips = tuple(id for id in _others(part, by_part[part.id]) if _stiffens(c, part, id, by_part))
        joined = [(j, o) for j, o in _neighbours(c, part, by_part[part.id]) if o.id not in strips]
        held = [*joined, *_under(c, part, {part.id, *strips, *(o.id for _, o in joined)})]
        spans = [s for axis in (0, 1) if (s := _span(c, part, axis, held, strips)) is not None]
        if spans:
            out.append(Panel(part, tuple(spans), clear_over(boxes, part), tuple(j for j, _ in held)))
    return out


def _others(part: Part, joints: Iterable[Joint]) -> list[str]:
    return list(dict.fromkeys(j.second if j.first == part.id else j.first for j in joints))


def _neighbours(c: Context, part: Part, joints: Iterable[Joint]) -> list[tuple[Joint, Part]]:
    found = []
    for j in joints:
        other = c.parts.get(j.second if j.first == part.id else j.first)
        if other is not None and j.contacts:
            found.append((j, other))
    return found


def _under(c: Context, part: Part, apart: set[str]) -> list[tuple[Joint, Part]]:
    """What a panel lies on without a joint of its own, as a top that buttons or clips hold lies on its aprons."""
    box, found = part.box, []
    for other in c.piece.parts:
        b = other.box
        if abs(b.high[2] - box.low[2]) > TOUCH or other.id in apart or other.group != part.group:
            continue
        shared = b.overlap(box)
        if shared is None or min(shared.size(0), shared.size(1)) < TOUCH:
            continue
        found.append((Joint("", "rests", other.id, part.id, (Contact(shared, 2, True, glued=False),)), other))
    return found


def _stiffens(c: Context, part: Part, id: str, by_part: dict[str, list[Joint]]) -> bool:
    """True for a strip glued to the panel alone."""
    other = c.parts.get(id)
    if other is None or any(part.id not in (j.first, j.second) for j in by_part[id]):
        return False
    mine = [j for j in by_part[id] if j.glued]
    return bool(mine) and other.box.low[2] > c.piece.outside.low[2] + 1


def _span(
    c: Context, part: Part, axis: int, held: list[tuple[Joint, Part]], strips: tuple[str, ...]
) -> Span | None:
    """The longest way between two supports along an axis; None when there are not two."""
    cross = 1 - axis
    box = part.box
    width = box.size(cross)
    pieces = []
    for j, other in held:
        low, high, a, b = _reach(j, box, axis, cross)
        pieces.append((low, high, a, b, other))
    pieces.sort(key=lambda p: (p[0], p[1], p[4].id))
    groups: list[list[tuple[float, float, float, float, Part]]] = []
    for p in pieces:
        if p[1] - p[0] > min(box.size(axis) / 2, max(part.size[2] * NEAR, 2 * (p[3] - p[2]))):
            continue  # it runs along the span
        if groups and p[0] <= max(q[1] for q in groups[-1]) + part.size[2]:
            groups[-1].append(p)
        else:
            groups.append([p])
    reach = max((p[3] for p in pieces), default=0.0) - min((p[2] for p in pieces), default=0.0)
    holds = [h for g in groups if (h := _hold(part, g, axis, min(width, reach))) is not None]
    if len(holds) < 2:
        return None
    gaps = [(b.low - a.high, a, b) for a, b in pairwise(holds)]
    length, one, two = max(gaps, key=lambda g: g[0])
    if length < LEAST:
        return None
    along = tuple(
        id
        for id in strips
        if min(c.parts[id].box.high[axis], two.low) - max(c.parts[id].box.low[axis], one.high)
        >= RUNS * length
    )
    return Span(axis, length, width, (one, two), along)


def _reach(j: Joint, box: object, axis: int, cross: int) -> tuple[float, float, float, float]:
    """What of a panel a joint takes up in plan: from and to along the span, and across it."""
    low = min(k.box.low[axis] for k in j.contacts)
    high = max(k.box.high[axis] for k in j.contacts)
    return low, high, min(k.box.low[cross] for k in j.contacts), max(k.box.high[cross] for k in j.contacts)


def _hold(
    part: Part, group: list[tuple[float, float, float, float, Part]], axis: int, width: float
) -> Hold | None:
    """A line of support: enough of the panel's width lies on it, and it stands under it or at an edge."""
    box = part.box
    edge = NEAR * part.size[2]
    at_edge = (
        min(p[0] for p in group) < box.low[axis] + edge or max(p[1] for p in group) > box.high[axis] - edge
    )
    below = [p for p in group if p[4].box.low[2] < box.low[2] - 0.5]
    good = group if at_edge else below
    if not good:
        return None
    covered, reached = 0.0, float("-inf")
    for a, b in sorted((p[2], p[3]) for p in good):
        covered += max(0.0, b - max(a, reached))
        reached = max(reached, b)
    if covered < ACROSS * width:
        return None
    ids = tuple(dict.fromkeys(p[4].id for p in good))
    return Hold(min(p[0] for p in good), max(p[1] for p in good), ids)


def clear_over(boxes: list[Box], part: Part) -> float:
    """Clear room over the middle of a panel [mm]; infinity when nothing stands over it."""
    box = part.box
    x, y = (box.low[0] + box.high[0]) / 2, (box.low[1] + box.high[1]) / 2
    over = [
        b.low[2] - box.high[2]
        for b in boxes
        if b.low[0] < x < b.high[0] and b.low[1] < y < b.high[1] and b.low[2] > box.high[2] - 1e-6
    ]
    return min(over, default=float("inf"))
