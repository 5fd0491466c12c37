"""Glass in a rabbet behind a frame, held by wooden beads."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.poses import Box
from boardwright.design.schema import FramePanel
from boardwright.piece.drafts import Draft, Step
from boardwright.piece.forms.frame_lay import Lay, Opening, Span
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.panel import Wall
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

LEAST_FRONT = 6.0
"""Wood of the frame before the glass [mm]: 1/4 in, common practice."""


@dataclass(frozen=True, slots=True)
class GlassPlan:
    """Glass of a frame.

    Attributes:
        stock: the glass. beads: what holds it.
        lap: width of the rabbet. play: between glass and wood. bead: height of the beads [mm].
        pane: from where to where the glass lies in the thickness. behind: the same of the beads [mm].
    """

    stock: Stock
    beads: Stock
    lap: float
    play: float
    bead: float
    pane: Span
    behind: Span


def glass_plan(
    out: SetOut, id: str, panel: FramePanel | None, path: str, stock: Stock, box: Box, lay: Lay
) -> GlassPlan | None:
    """Settle the rabbets; None, with a finding, without glass or room for it."""
    sheets = [s for s in out.stocks.values() if s.table_key.startswith("glass")]
    named = panel.stock if panel else None
    if named is None and not sheets:
        out.find(
            "frame.no-glass",
            "the file has no glass for the frame",
            path,
            found="no sheet of glass under `stock`",
            expected="a sheet of glass",
            remedy="add one, such as `pane: {sheet: glass, thickness: 3 mm}`",
        )
        return None
    glass = out.stock((f"{path}.stock", named)) if named is not None else sheets[0]
    lap_figure, play_figure, bead_figure = (
        out.tables.figure(k) for k in ("glass_rabbet", "glass_play", "glass_bead")
    )
    settled = out.sizer.settled
    lap = settled(lap_figure.value)
    out.sizer.explain(
        f"{id}.glass.rabbet", lap, "", "lap of glass and beads over the frame", lap_figure.reason
    )
    play = settled(play_figure.value)
    out.sizer.explain(f"{id}.glass.play", play, "", "room round the glass", play_figure.reason)
    bead = out.sizer.size(
        f"{id}.glass.bead",
        [(f"{path}.bead", panel.bead if panel else None)],
        bead_figure.value,
        rule="height of the beads",
        source=bead_figure.reason,
        least=out.sizer.step,
    )
    thick = box.size(lay.thick)
    front = thick - bead - glass.thickness
    if front < LEAST_FRONT - 1e-6:
        out.find(
            "frame.panel-too-thick",
            "the glass and its beads are too thick for their frame",
            path,
            found=f"{out.about(glass.thickness)} of glass and {out.about(bead)} of beads in a frame "
            f"{out.about(thick)} thick",
            expected=f"{out.up(LEAST_FRONT)} of wood before the glass",
            source="common practice",
            remedy="use thinner glass, lower beads, or a thicker frame",
        )
        return None
    return GlassPlan(
        glass,
        stock,
        lap,
        play,
        bead,
        lay.behind(box, front, front + glass.thickness),
        lay.behind(box, front + glass.thickness, thick),
    )


def put_glass(
    out: SetOut,
    plan: GlassPlan,
    opening: Opening,
    walls: list[Wall],
    lay: Lay,
    id: str,
    group: str,
    path: str,
) -> None:
    """Rabbet the parts round an opening, and put the glass and its beads in."""
    whole = {
        lay.cross: Span(opening.cross.low - plan.lap, opening.cross.high + plan.lap),
        lay.through: Span(opening.through.low - plan.lap, opening.through.high + plan.lap),
    }
    depth = plan.pane.size + plan.bead
    pane = out.add(
        id,
        "glass",
        plan.stock,
        lay.box(
            _short(out, whole[lay.cross], plan.play), _short(out, whole[lay.through], plan.play), plan.pane
        ),
        (lay.through, lay.cross),
        group=group,
        show=((lay.thick, lay.face_high),),
        path=path,
    )
    for wall in walls:
        along = lay.cross + lay.through - wall.axis
        wall.part.cuts.append(
            Step(
                lay.thick,
                not lay.face_high,
                wall.axis,
                wall.high,
                plan.lap,
                depth,
                whole[along].low,
                whole[along].high,
                holds=pane.id,
                purpose="panel",
            )
        )
        _seat(out, plan, pane, wall, lay, opening)
    _beads(out, plan, opening, walls, whole, pane, lay, id, group, path)


def _short(out: SetOut, span: Span, play: float) -> Span:
    size = out.sizer.settled(span.size - 2 * play, "down")
    low = span.low + play
    return Span(low, low + size)


def _seat(out: SetOut, plan: GlassPlan, pane: Draft, wall: Wall, lay: Lay, opening: Opening) -> None:
    """The glass lies against the bottom of the rabbet."""
    along = lay.cross + lay.through - wall.axis
    face = wall.part.face(wall.axis, wall.high)
    lap = (pane.low[wall.axis], face) if wall.high else (face, pane.high[wall.axis])
    run = opening.through if along == lay.through else opening.cross
    front = plan.pane.high if lay.face_high else plan.pane.low
    out.joint(
        "panel",
        wall.part,
        pane,
        [
            plane(
                lay.thick, front, {wall.axis: lap, along: (run.low, run.high)}, not lay.face_high, glued=False
            )
        ],
        [unit(lay.thick, not lay.face_high)],
        f"glass in a rabbet {out.text(plan.lap)} wide, {out.text(plan.pane.size + plan.bead)} deep, dry",
        glued=False,
        floats=(lay.cross, lay.through),
        place=pane.place,
    )


def _beads(
    out: SetOut,
    plan: GlassPlan,
    opening: Opening,
    walls: list[Wall],
    whole: dict[int, Span],
    pane: Draft,
    lay: Lay,
    id: str,
    group: str,
    path: str,
) -> None:
    """Two beads along the stiles, two between them; held by brads, so that the glass can be changed."""
    for i, wall in enumerate(walls):
        along = lay.cross + lay.through - wall.axis
        face = wall.part.face(wall.axis, wall.high)
        seat = face - plan.lap if wall.high else face + plan.lap
        run = whole[along] if along == lay.through else opening.cross
        spans = {wall.axis: Span(min(face, seat), max(face, seat)), along: run}
        bead = out.add(
            f"{id}.bead.{i + 1}",
            "bead",
            plan.beads,
            lay.box(spans[lay.cross], spans[lay.through], plan.behind),
            (along, wall.axis),
            group=group,
            show=((lay.thick, not lay.face_high),),
            path=path,
        )
        rows = opening.through if along == lay.through else opening.cross
        reach = (rows.low, rows.high)
        lap = (
            max(spans[wall.axis].low, pane.low[wall.axis]),
            min(spans[wall.axis].high, pane.high[wall.axis]),
        )
        behind = plan.behind.high if lay.face_high else plan.behind.low
        out.joint(
            "bead",
            wall.part,
            bead,
            [
                plane(
                    wall.axis,
                    seat,
                    {lay.thick: (plan.behind.low, plan.behind.high), along: reach},
                    wall.high,
                    glued=False,
                )
            ],
            [unit(lay.thick, not lay.face_high)],
            "bead held by brads, no glue",
            glued=False,
            place=bead.place,
        )
        out.joint(
            "bead",
            pane,
            bead,
            [plane(lay.thick, behind, {wall.axis: lap, along: reach}, not lay.face_high, glued=False)],
            [unit(lay.thick, not lay.face_high)],
            "bead against the glass",
            glued=False,
            place=bead.place,
        )
