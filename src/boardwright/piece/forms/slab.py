"""A slab: a board or sheet, and what keeps a board flat across its grain: battens in slots, or end boards."""

from __future__ import annotations

from boardwright.core.poses import Box, Vec
from boardwright.design.schema import JointKeys
from boardwright.formulas.placing import end_distance_unloaded
from boardwright.piece.drafts import Channel, Draft
from boardwright.piece.forms.frame_lay import Lay, Span
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.fastening.screws import choose_screw, drive, no_screw
from boardwright.piece.joints.fastening.spots import SPACING, places
from boardwright.piece.joints.make import make_joint
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

FROM_EDGE = 25.0
"""A batten stops so far short of the edges of the slab [mm]: 1 in, common practice."""
EDGE_DIAMETERS = 2.5
"""A screw stands so many of its diameters from an edge: `choose_screw` picks by it."""
FROM_GROOVE = 4.7625
"""A screw stands at least so far beside a groove in the part that takes it [mm]: 3/16 in, common practice."""


def slab(out: SetOut, id: str, name: str, box: Box, lay: Lay, stock: Stock, group: str, path: str) -> Draft:
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
            Span(part.low[lay.cross], part.high[lay.cross]),
            span,
            Span(part.low[lay.thick], part.high[lay.thick]),
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
        width: of them [mm].
        stock: of them.
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
    at = out.sizer.settled(batten.size(lay.through) / 2)
    hold_free(out, part, batten, lay.thick, lay.face_high, lay.cross, at, path)


def hold_free(
    out: SetOut,
    part: Draft,
    strip: Draft,
    thick: int,
    towards: bool,
    run_axis: int,
    at: float,
    path: str,
    *,
    from_low: bool = False,
) -> None:
    """Screw a strip to a part so that either can move along it: one screw fast, the others in slots, no glue.

    Args:
        out: the bench.
        part: takes the thread.
        strip: lies under the heads.
        thick: the axis of the screws.
        towards: True when the part lies at the high side of the strip.
        run_axis: along which the screws stand in a row, and one of the two moves.
        at: of that row, from the low side of the strip on the axis left [mm]; a third of it off where a groove of
            the part lies over it.
        path: where the file asks for it.
        from_low: True to hold it fast at the low end of the row, not in the middle.
    """
    other = 3 - thick - run_axis
    on = (max(strip.low[other], part.low[other]), min(strip.high[other], part.high[other]))
    if not on[0] + FROM_GROOVE <= strip.low[other] + at <= on[1] - FROM_GROOVE:
        at = out.sizer.settled((on[0] + on[1]) / 2 - strip.low[other])
    run = (strip.low[run_axis], strip.high[run_axis])
    count = max(3, len(places(out, run, None, SPACING)) | 1)
    rows = (at, out.sizer.settled(at * 2 / 3), out.sizer.settled(at * 4 / 3))
    at, deep, crossed = min(
        ((r, *_grooves(part, thick, run_axis, strip.low[other] + r)) for r in rows), key=lambda row: row[1]
    )
    held, room = strip.size(thick), part.size(thick) - deep
    edge = min((on[1] - on[0]) / 2, 20.0)
    if part.stock.kind == "wood" and part.length_axis == other:
        row = strip.low[other] + at
        to_end = min(row - part.low[other], part.high[other] - row)
        edge = min(edge, to_end * EDGE_DIAMETERS / end_distance_unloaded(1.0, True))
    chosen = choose_screw(out, None, None, edge, held, room)
    if chosen is None:
        no_screw(out, strip, part, path, held, room, edge)
        return
    swing = max(_moves(out, part, run_axis), _moves(out, strip, run_axis))
    spots = [_beside(out, s, run[0], crossed) for s in places(out, run, count, SPACING)]
    centre = spots[0 if from_low else len(spots) // 2]
    ids = []
    for spot in spots:
        slot = out.sizer.settled(2 * swing * abs(spot - centre), "up") if spot != centre else 0.0
        v = [0.0, 0.0, 0.0]
        v[run_axis], v[other], v[thick] = spot, strip.low[other] + at, strip.face(thick, not towards)
        head: Vec = (v[0], v[1], v[2])
        ids.append(
            drive(
                out,
                strip,
                part,
                thick,
                towards,
                head,
                *chosen,
                held,
                slot=slot,
                slot_axis=run_axis,
                path=path,
            )
        )
    face = {run_axis: run, other: on}
    out.joint(
        "screwed",
        part,
        strip,
        [plane(thick, part.face(thick, not towards), face, not towards, glued=False)],
        [unit(thick, not towards)],
        f"{len(ids)} screws, the {'first' if from_low else 'middle'} one fast, the others in slots; no glue",
        glued=False,
        floats=(run_axis,),
        fasteners=tuple(ids),
        place=strip.place,
    )


def _grooves(part: Draft, axis: int, run_axis: int, row: float) -> tuple[float, list[tuple[float, float]]]:
    """The deepest groove along a row of screws into a face of a part, and the spans that others across it take [mm]."""
    deep, crossed = 0.0, []
    for c in part.cuts:
        if not isinstance(c, Channel) or c.axis != axis:
            continue
        if c.along == run_axis:
            deep = max(deep, c.depth if c.lo - FROM_GROOVE < row < c.hi + FROM_GROOVE else 0.0)
        elif (c.start is None or c.start < row) and (c.end is None or row < c.end):
            crossed.append((c.lo - FROM_GROOVE, c.hi + FROM_GROOVE))
    return deep, crossed


def _beside(out: SetOut, spot: float, datum: float, crossed: list[tuple[float, float]]) -> float:
    """A spot moved out of a groove, to the nearer side of it [mm]; on the step from a datum."""
    for low, high in crossed:
        if low < spot < high:
            if spot - low < high - spot:
                return datum + out.sizer.settled(low - datum, "down")
            return datum + out.sizer.settled(high - datum, "up")
    return spot


def _moves(out: SetOut, part: Draft, axis: int) -> float:
    """Largest share by which a part changes along an axis over the year."""
    if part.stock.kind != "wood" or axis == part.length_axis:
        return 0.0
    m = out.moisture
    return part.stock.across * max(m.wettest - m.now, m.now - m.driest, 0.0)
