"""Z-shaped clips: one leg slides in a groove of the apron, the other is screwed to the top, which can move."""

from __future__ import annotations

from boardwright.core.poses import Box, Vec
from boardwright.piece.drafts import Channel, Draft
from boardwright.piece.forms.buttons import LEAST_HELD, LEAST_WALL
from boardwright.piece.forms.clips import clip_screw, lies
from boardwright.piece.forms.table_plan import TablePlan
from boardwright.piece.forms.under_top import PATH, Apron, spread
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.fastening.screws import choose_screw, no_screw
from boardwright.piece.records import Hardware
from boardwright.piece.setout import SetOut

NAME = "Z-shaped clip"


def z_clips(out: SetOut, plan: TablePlan, top: Draft, aprons: list[Apron]) -> None:
    """Hold the top with clips at some aprons, where the groove for them has room."""
    figure, settled = out.tables.figure, out.sizer.settled
    leg, free = figure("z_clip_leg").value, settled(plan.swells, "up")
    deep = settled(leg, "up") + out.sizer.step
    kerf = settled(figure("kerf_table_saw").value, "up")
    drop = settled(figure("z_clip_drop").value, "down")
    if not _fits(out, plan, leg - free, deep, drop + kerf):
        return
    out.sizer.explain(
        "table.top.clip.held",
        leg - free,
        f"{out.about(leg)} less {out.text(free)} of room for the top",
        f"at least {out.about(LEAST_HELD)} stays in the groove at the driest time",
        figure("z_clip_leg").reason,
    )
    for apron in aprons:
        _at_apron(out, plan, top, apron, (drop, kerf, deep, free))


def _fits(out: SetOut, plan: TablePlan, held: float, deep: float, down: float) -> bool:
    """Whether aprons take the groove and the clips stay in it; a finding when not."""
    stays = held - plan.shrinks
    room = plan.apron_stock.thickness - LEAST_WALL
    if stays >= LEAST_HELD - 1e-6 and deep <= room + 1e-6 and down <= plan.apron - LEAST_WALL + 1e-6:
        return True
    moves = stays < LEAST_HELD - 1e-6
    out.find(
        "table.no-room",
        "the top moves too much for these clips"
        if moves
        else "the aprons have no room for the groove of the clips",
        "table.top.fixed",
        found=f"{out.about(max(stays, 0.0))} of the clip stays in its groove at the driest time"
        if moves
        else f"a groove {out.about(deep)} deep and {out.about(down)} down, in aprons "
        f"{out.about(plan.apron_stock.thickness)} thick and {out.about(plan.apron)} high",
        expected=f"at least {out.up(LEAST_HELD)}"
        if moves
        else f"{out.up(LEAST_WALL)} of wood behind and under it",
        source="common practice",
        remedy="use `buttons`, whose tongues are made as long as the top needs, or quartersawn stock"
        if moves
        else f"make the aprons at least {out.up(deep + LEAST_WALL)} thick and {out.up(down + LEAST_WALL)} high, or fix "
        "the top with `clips`",
    )
    return False


def _at_apron(
    out: SetOut, plan: TablePlan, top: Draft, apron: Apron, groove: tuple[float, float, float, float]
) -> None:
    """The groove along an apron and its clips; `groove`: how far down, width, depth, room for the top [mm]."""
    drop, kerf, deep, free = groove
    figure = out.tables.figure
    wide, thick = figure("z_clip_width").value, figure("z_clip_thickness").value
    reach = figure("z_clip_length").value - figure("z_clip_leg").value
    under = plan.frame.high[2]
    run = apron.run(out)
    middles = spread(out, run, wide)
    chosen = choose_screw(out, None, None, wide / 2, thick, top.size(2))
    if not middles:
        return
    if chosen is None:
        no_screw(out, apron.draft, top, PATH, thick, top.size(2), wide / 2)
        return
    wall = under - drop
    apron.draft.cuts.append(
        Channel(apron.axis, apron.inward, apron.along, wall - kerf, wall, deep, *run, purpose="joint")
    )
    ids = []
    for i, middle in enumerate(middles):
        id = f"table.clip.{apron.side}.{i + 1}"
        span = {
            apron.axis: apron.inside(free, free + reach),
            apron.along: (middle - wide / 2, middle + wide / 2),
        }
        box = Box((span[0][0], span[1][0], wall - thick), (span[0][1], span[1][1], under))
        out.hardware.append(Hardware(id, NAME, "z_clip", box, "case", place=out.design.place(PATH)))
        at = [0.0, 0.0, under]
        at[apron.along], at[apron.axis] = middle, sum(span[apron.axis]) / 2
        spot: Vec = (at[0], at[1], at[2])
        ids.append(clip_screw(out, id, top, spot, under - thick, True, *chosen, thick))
    face = {apron.axis: lies(apron.draft, apron.axis), apron.along: lies(apron.draft, apron.along)}
    out.joint(
        "screwed",
        apron.draft,
        top,
        [plane(2, under, face, True, glued=False)],
        [unit(2, True)],
        f"{len(ids)} Z-shaped clips in a groove {out.text(kerf)} wide and {out.text(deep)} deep; no glue",
        glued=False,
        floats=(0, 1),
        fasteners=tuple(ids),
        place=out.design.place(PATH),
    )
