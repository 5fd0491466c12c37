"""Parts drawn apart: what goes on is moved off along its path, what stands already is drawn lighter."""

from __future__ import annotations

from collections.abc import Mapping, Sequence, Set
from dataclasses import replace

from boardwright.core.poses import Vec, add, scaled
from boardwright.drawings.pictorial import drawing_of
from boardwright.drawings.pictures import picture, seen_stretches
from boardwright.drawings.records import Drawing, Line
from boardwright.piece.records import Joint, Part
from boardwright.solids.exact import PICTORIAL, View, part_shape, placed

PLAIN = "light wood"
"""The ground of parts; what is drawn faint is a pale grey."""
NOT_MOVED: Vec = (0.0, 0.0, 0.0)


def apart(
    parts: Sequence[Part],
    shifts: Mapping[str, Vec],
    faint: Set[str] = frozenset(),
    joints: Sequence[Joint] = (),
    *,
    id: str = "apart",
    title: str = "",
    width: float = 180.0,
    height: float = 120.0,
    view: View = PICTORIAL,
) -> Drawing:
    """Parts moved off their places, with dashed lines along their paths; some drawn lighter than the others.

    Args:
        parts: all that are to be seen; a part without a letter gets no balloon.
        shifts: by part id, how far it is moved off its place, in the piece [mm]; the others stand still.
        faint: ids of the parts that are drawn in a pale grey.
        joints: whose faces the paths run between; a part in none of them has its path from its middle.
        id: steady name of the drawing.
        title: what stands over it.
        width: of the drawing on paper [mm].
        height: that it may have [mm]; it takes what it needs.
        view: where the parts are seen from.
    """
    moves = [shifts.get(p.id, NOT_MOVED) for p in parts]
    shapes = [placed(part_shape(p), p.pose.moved(m)) for p, m in zip(parts, moves, strict=True)]
    hues = ["" if p.id in faint else PLAIN for p in parts]
    shown = picture(shapes, view, hues=hues)
    paths = [Line(e, "centre") for path in _paths(parts, shifts, joints) for e in seen_stretches(path, shown)]
    return drawing_of(id, title, parts, shown, paths, width, height)


def _paths(
    parts: Sequence[Part], shifts: Mapping[str, Vec], joints: Sequence[Joint]
) -> list[tuple[Vec, Vec]]:
    """From where something belongs to where it is drawn: of a joint its largest face, else the middle of a part."""
    out: list[tuple[Vec, Vec]] = []
    joined: set[str] = set()
    for joint in joints:
        joined |= {joint.first, joint.second}
        one, two = shifts.get(joint.first, NOT_MOVED), shifts.get(joint.second, NOT_MOVED)
        if joint.contacts and one != two:
            middle = max(joint.contacts, key=lambda c: c.area).box.middle()
            out.append((add(middle, one), add(middle, two)))
    for part in parts:
        move = shifts.get(part.id, NOT_MOVED)
        if part.id not in joined and move != NOT_MOVED:
            middle = part.box.middle()
            out.append((middle, add(middle, move)))
    return out


def beside(
    parts: Sequence[Part], shifts: Mapping[str, Vec], view: View = PICTORIAL, gap: float = 0.12
) -> list[Part]:
    """The same parts once more, where they belong, to the right of where they are drawn apart; without letters.

    Args:
        parts: that are drawn apart.
        shifts: by part id, how far each is moved off its place [mm].
        view: where they are seen from.
        gap: between the two, as a share of their width in the view.
    """
    apart_x = [x for p in parts for x in _across(p, shifts.get(p.id, NOT_MOVED), view)]
    here_x = [x for p in parts for x in _across(p, NOT_MOVED, view)]
    off = max(apart_x) - min(here_x) + gap * (max(apart_x) - min(apart_x))
    by = scaled(view.right, off)
    return [replace(p, id=f"{p.id}, in place", letter="", pose=p.pose.moved(by)) for p in parts]


def _across(part: Part, move: Vec, view: View) -> list[float]:
    """How far to the right each corner of a part lies in a view [mm]."""
    corners = [
        (x * part.size[0], y * part.size[1], z * part.size[2]) for x in (0, 1) for y in (0, 1) for z in (0, 1)
    ]
    return [view.flat(add(part.pose.point(c), move))[0] for c in corners]
