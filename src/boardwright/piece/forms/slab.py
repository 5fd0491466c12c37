"""A slab: a board or sheet, and what keeps a board flat across its grain: battens in slots, or end boards."""

from __future__ import annotations

from boardwright.core.poses import Box, Vec
from boardwright.design.schema import JointKeys
from boardwright.piece.drafts import Draft
from boardwright.piece.forms.frame_lay import Lay, Span
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.fastening.screws import choose_screw, drive, no_screw
from boardwright.piece.joints.fastening.spots import SPACING, places
from boardwright.piece.joints.make import make_joint
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

FROM_EDGE = 25.0
"""A batten stops so far short of the edges of the slab [mm]: 1 in, common practice."""


def slab(
    out: SetOut, id: str, name: str, box: Box, lay: Lay, stock: Stock, group: str, path: str
) -> Draft:
    """A board with its grain along the stiles that it has none of."""
    faces = (lay.thick, lay.face_high), (lay.thick, not lay.face_high)
    edges = tuple((a, h) for a in (lay.cross, lay.through) for h in (False, True))
    return out.add(
        id, name, stock, box, (lay.through, lay.cross), group=group, show=(*faces, *edges), path=path
    )


def end_boards(out: SetOut, part: Draft, lay: Lay, width: float, stock: Stock, path: str) -> list[Draft]:
    """Take a board's width off each end of a slab, and put a breadboard end there."""
    made = []
    for high in (False, True):
        axis = lay.through
        end = part.face(axis, high)
        if high:
            part.high[axis] -= width
        else:
            part.low[axis] += width
        span = Span(end - width, end) if high else Span(end, end + width)
        box = lay.box(
            Span(part.low[lay.cross], part.high[lay.cross]), span, Span(part.low[lay.thick], part.high[lay.thick])
        )
        board = out.add(
            f"{part.id}.end.{2 if high else 1}",
            "end board",
            stock,
            box,
            (lay.cross, lay.through),
            group=part.group,
            show=((lay.thick, lay.face_high),),
            path=path,
        )
        made.append(board)
    for board in made:
        make_joint(out, f"{part.id}.end", JointKeys(kind="breadboard"), path, "breadboard", board, part)
    return made


def battens(
    out: SetOut,
    part: Draft,
    lay: Lay,
    spots: list[float],
    across: Span,
    width: float,
    stock: Stock,
    name: str,
    path: str,
) -> list[Draft]:
    """Screw battens across the back of a slab; all screws but the middle one stand in slots.

    Args:
        out: the bench.
        part: the slab.
        lay: how it lies.
        spots: low edges of the battens along the grain of the slab [mm].
        across: from where to where they reach [mm].
        width, stock: of them.
        name: what they are called.
        path: where the file asks for them.
    """
    made = []
    back = part.face(lay.thick, not lay.face_high)
    t = stock.thickness
    thick = Span(back - t, back) if lay.face_high else Span(back, back + t)
    for i, at in enumerate(spots):
        batten = out.add(
            f"{part.id}.batten.{i + 1}",
            name,
            stock,
            lay.box(across, Span(at, at + width), thick),
            (lay.cross, lay.through),
            group=part.group,
            path=path,
        )
        _hold(out, part, batten, lay, path)
        made.append(batten)
    return made


def _hold(out: SetOut, part: Draft, batten: Draft, lay: Lay, path: str) -> None:
    """Screws through a batten into the slab: fast in the middle, in slots elsewhere."""
    run = (batten.low[lay.cross], batten.high[lay.cross])
    count = max(3, len(places(out, run, None, SPACING)) | 1)
    held, room = batten.size(lay.thick), part.size(lay.thick)
    edge = min(batten.size(lay.through) / 2, 20.0)
    chosen = choose_screw(out, None, None, edge, held, room)
    if chosen is None:
        no_screw(out, batten, part, path, held, room, edge)
        return
    m = out.moisture
    rate = part.stock.across if part.stock.kind == "wood" else 0.0
    swing = rate * max(m.wettest - m.now, m.now - m.driest, 0.0)
    middle = batten.low[lay.through] + out.sizer.settled(batten.size(lay.through) / 2)
    outside = batten.face(lay.thick, not lay.face_high)
    ids = []
    spots = places(out, run, count, SPACING)
    centre = spots[len(spots) // 2]
    for at in spots:
        slot = out.sizer.settled(2 * swing * abs(at - centre), "up") if at != centre else 0.0
        v = [0.0, 0.0, 0.0]
        v[lay.cross], v[lay.through], v[lay.thick] = at, middle, outside
        head: Vec = (v[0], v[1], v[2])
        ids.append(
            drive(
                out,
                batten,
                part,
                lay.thick,
                lay.face_high,
                head,
                *chosen,
                held,
                slot=slot,
                slot_axis=lay.cross,
                path=path,
            )
        )
    face = {lay.cross: run, lay.through: (batten.low[lay.through], batten.high[lay.through])}
    back = part.face(lay.thick, not lay.face_high)
    out.joint(
        "screwed",
        part,
        batten,
        [plane(lay.thick, back, face, not lay.face_high, glued=False)],
        [unit(lay.thick, not lay.face_high)],
        f"{len(ids)} screws, the middle one fast, the others in slots; no glue",
        glued=False,
        floats=(lay.cross,),
        fasteners=tuple(ids),
        place=batten.place,
    )
