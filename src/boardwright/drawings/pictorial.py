"""The piece put together and taken apart, seen from the front, right and above; letters around it."""

from __future__ import annotations

from collections.abc import Sequence

from boardwright.core.poses import Box, Vec, add, scaled
from boardwright.drawings.balloons import around
from boardwright.drawings.part_details import bounds, shift
from boardwright.drawings.pictures import Picture, on_paper, picture, seen_stretches, spots
from boardwright.drawings.records import Drawing, Entity, Line, Point
from boardwright.piece.records import Hardware, Joint, Motion, Part
from boardwright.solids.exact import PICTORIAL, Shape, box_shape, part_shape, placed

PAD = 1.0
SIDES = 13.0
"""Room for balloons on either side [mm on paper]."""
CASE_APART = 0.42
"""How far parts of the case move out, as a share of their distance from its middle."""
DRAWER_APART = 0.3
"""The same for the parts of a drawer."""
DRAWERS_SPREAD = (0.75, 0.45)
"""How far drawers in parts move sideways and up, as shares of their distance from the middle of the piece."""
PULLED = 0.55
"""How far a drawer that stays whole is drawn out, as a share of its depth."""


def assembled(
    parts: Sequence[Part],
    hardware: Sequence[Hardware] = (),
    title: str = "",
    width: float = 180.0,
    height: float = 150.0,
) -> Drawing:
    """The piece as it stands.

    Args:
        parts: of the piece.
        hardware: bought things, drawn as the boxes they take.
        title: what stands over the drawing.
        width: of the drawing on paper [mm].
        height: that it may have [mm]; it takes what it needs.
    """
    shapes = [*_shapes(parts, [(0.0, 0.0, 0.0)] * len(parts)), *(box_shape(h.box) for h in hardware)]
    return drawing_of("assembled", title or "The piece", parts, picture(shapes, PICTORIAL), [], width, height)


def exploded(
    parts: Sequence[Part],
    groups: Sequence[Motion],
    joints: Sequence[Joint],
    title: str = "",
    width: float = 180.0,
    height: float = 180.0,
) -> Drawing:
    """The piece taken apart along its joints; one drawer of each kind in its parts before it.

    Args:
        parts: of the piece.
        groups: what moves; parts of no moving group belong to the case.
        joints: give the directions in which parts come off.
        title: what stands over the drawing.
        width: of the drawing on paper [mm].
        height: that it may have [mm]; it takes what it needs.
    """
    moves = offsets(parts, groups, joints)
    shown = picture(_shapes(parts, moves), PICTORIAL)
    lines = [
        Line(ends, "centre") for path in _paths(parts, groups, moves) for ends in seen_stretches(path, shown)
    ]
    return drawing_of("exploded", title or "Taken apart", parts, shown, lines, width, height)


def _paths(parts: Sequence[Part], groups: Sequence[Motion], moves: Sequence[Vec]) -> list[tuple[Vec, Vec]]:
    """From where each moved part belongs to where it is drawn; one more for each group that is drawn out."""
    moving = {g.id for g in groups}
    out: list[tuple[Vec, Vec]] = []
    done: set[str] = set()
    for part, move in zip(parts, moves, strict=True):
        group = _group_move(part, parts, moves) if part.group in moving else (0.0, 0.0, 0.0)
        own = add(move, scaled(group, -1.0))
        if max(abs(v) for v in own) > 1e-6:
            middle = part.box.middle()
            out.append((add(middle, group), add(middle, move)))
        if part.group in moving and part.group not in done:
            done.add(part.group)
            middle = hull([p.box for p in parts if p.group == part.group]).middle()
            out.append((middle, add(middle, group)))
    return out


def _shapes(parts: Sequence[Part], moves: Sequence[Vec]) -> list[Shape]:
    return [placed(part_shape(p), p.pose.moved(m)) for p, m in zip(parts, moves, strict=True)]


def offsets(parts: Sequence[Part], groups: Sequence[Motion], joints: Sequence[Joint]) -> list[Vec]:
    """How far each part is moved in the picture of the piece taken apart, in the piece [mm]."""
    free = _free_axes(parts, joints)
    moving = {g.id: g for g in groups}
    apart = _one_of_each(parts, groups)
    case = hull([p.box for p in parts if p.group not in moving] or [p.box for p in parts])
    whole = hull([p.box for p in parts])
    out = []
    for p in parts:
        group = moving.get(p.group)
        if group is None:
            out.append(_outward(p, case, free[p.id], CASE_APART))
            continue
        own = hull([q.box for q in parts if q.group == p.group])
        axis = max(range(3), key=lambda i: abs(group.direction[i]))
        depth = own.size(axis)
        if p.group not in apart:
            out.append(scaled(group.direction, PULLED * depth))
            continue
        pull = (PULLED + 1.0 + DRAWER_APART) * depth + 0.05 * whole.size(axis)
        out_of = add(own.middle(), scaled(whole.middle(), -1.0))
        spread = (out_of[0] * DRAWERS_SPREAD[0], 0.0, out_of[2] * DRAWERS_SPREAD[1])
        pulled = add(scaled(group.direction, pull), spread)
        out.append(add(pulled, _outward(p, own, free[p.id], DRAWER_APART)))
    return out


def _free_axes(parts: Sequence[Part], joints: Sequence[Joint]) -> dict[str, set[int]]:
    """Axes of the piece along which a part comes off; all three for a part in no joint."""
    free: dict[str, set[int]] = {p.id: set() for p in parts}
    for j in joints:
        axes = {i for d in j.directions for i in range(3) if abs(d[i]) > 0.7}
        for id in (j.first, j.second):
            if id in free:
                free[id] |= axes
    return {id: axes or {0, 1, 2} for id, axes in free.items()}


def _one_of_each(parts: Sequence[Part], groups: Sequence[Motion]) -> set[str]:
    """The first moving group of each set of letters."""
    seen: set[tuple[str, ...]] = set()
    out: set[str] = set()
    for g in groups:
        letters = tuple(sorted(p.letter for p in parts if p.group == g.id))
        if letters not in seen:
            seen.add(letters)
            out.add(g.id)
    return out


def hull(boxes: Sequence[Box]) -> Box:
    """The box around boxes [mm]."""
    low = [min(b.low[i] for b in boxes) for i in range(3)]
    high = [max(b.high[i] for b in boxes) for i in range(3)]
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _outward(part: Part, around_it: Box, axes: set[int], share: float) -> Vec:
    middle, centre = part.box.middle(), around_it.middle()
    move = [0.0, 0.0, 0.0]
    for i in axes:
        away = middle[i] - centre[i]
        if abs(away) > 0.08 * around_it.size(i):
            move[i] = away * share * 2
    return (move[0], move[1], move[2])


def _group_move(part: Part, parts: Sequence[Part], moves: Sequence[Vec]) -> Vec:
    """The move that a part's group makes as a whole: the middle one of its parts, axis by axis."""
    mine = [m for p, m in zip(parts, moves, strict=True) if p.group == part.group]
    x, y, z = (sorted(m[i] for m in mine)[len(mine) // 2] for i in range(3))
    return (x, y, z)


def drawing_of(
    id: str,
    title: str,
    parts: Sequence[Part],
    shown: Picture,
    over: Sequence[Line],
    width: float,
    height: float,
) -> Drawing:
    """The picture at the largest size that fits, the paths over it, letters around it.

    Args:
        id: steady name of the drawing.
        title: what stands over it.
        parts: one for each of the first shapes of the picture; the letter of each gets a balloon, "" none.
        shown: the picture, true size.
        over: lines over it, true size.
        width: of the drawing on paper [mm].
        height: that it may have [mm].
    """
    x0, y0, x1, y1 = shown.box
    k = min((width - 2 * SIDES) / (x1 - x0), (height - 2 * PAD) / (y1 - y0))
    dx = width / 2 - (x0 + x1) / 2 * k
    entities: list[Entity] = on_paper([*shown.entities, *over], k, dx, -y0 * k)
    found: dict[str, list[Point]] = {}
    for face in sorted(shown.faces, key=lambda f: -f.area):
        letter = parts[face.part_index].letter if face.part_index < len(parts) else ""
        held = found.setdefault(letter, [])
        if letter and face.area * k * k > (6.0 if held else 0.5):
            held += [(p[0] * k + dx, (p[1] - y0) * k) for p in spots(face, 1.1 / k)]
    names = [(name, found[name]) for name in sorted(found, key=lambda n: (len(n), n)) if found[name]]
    box = (x0 * k + dx, 0.0, x1 * k + dx, (y1 - y0) * k)
    entities += around(names, box)
    _, low, _, high = bounds(entities)
    moved = tuple(shift(e, 0.0, PAD - low) for e in entities)
    return Drawing(id, title, "not to scale", width, round(high - low + 2 * PAD, 3), moved)
