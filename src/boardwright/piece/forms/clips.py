"""Figure-eight clips: one disc lies in a recess of the apron's upper edge, the other under the top; they can swing."""

from __future__ import annotations

from boardwright.core.poses import Box, Vec
from boardwright.piece.drafts import Bore, Draft
from boardwright.piece.forms.table_plan import TablePlan
from boardwright.piece.forms.under_top import PATH, Apron, spread
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.fastening.screws import choose_screw, no_screw, screw_name
from boardwright.piece.records import Fastener, Hardware
from boardwright.piece.setout import SetOut
from boardwright.tables.records import Screw

NAME = "figure-eight clip"


def clips(out: SetOut, plan: TablePlan, top: Draft, aprons: list[Apron]) -> None:
    """Hold the top with clips at some aprons."""
    tables = out.tables
    wide = tables.figure("clip_diameter").value + tables.figure("clip_play").value
    for apron in aprons:
        _at_apron(out, plan, top, apron, out.sizer.settled(wide, "up"))


def _at_apron(out: SetOut, plan: TablePlan, top: Draft, apron: Apron, wide: float) -> None:
    tables, settled = out.tables, out.sizer.settled
    thick = settled(tables.figure("clip_thickness").value, "up")
    in_from = settled(apron.draft.size(apron.axis) / 2, "down")
    chosen = choose_screw(out, None, None, in_from, thick, top.size(2))
    if chosen is None:
        no_screw(out, apron.draft, top, PATH, thick, top.size(2), in_from)
        return
    screw, length = chosen
    reach = tables.figure("clip_pitch").value
    high = plan.frame.high[2]
    own = apron.inside(-in_from, -in_from)[0]
    far = apron.inside(reach - in_from, reach - in_from)[0]
    ids = []
    radius = tables.figure("clip_diameter").value / 2
    for i, middle in enumerate(spread(out, apron.run(out), wide)):
        id = f"table.clip.{apron.side}.{i + 1}"
        room = {
            apron.axis: apron.inside(0.0, reach - in_from + radius),
            apron.along: (middle - radius, middle + radius),
        }
        box = Box((room[0][0], room[1][0], high - thick), (room[0][1], room[1][1], high))
        out.hardware.append(Hardware(id, NAME, "figure_eight", box, "case", place=out.design.place(PATH)))
        apron.draft.cuts.append(
            Bore(2, True, _spot(apron, own, middle, high), wide, thick, purpose="hardware", for_=NAME)
        )
        down = _spot(apron, own, middle, high)
        ids.append(clip_screw(out, id, apron.draft, down, high - thick, False, screw, length, thick))
        up = _spot(apron, far, middle, high)
        ids.append(clip_screw(out, id, top, up, high - thick, True, screw, length, thick))
    face = {apron.axis: lies(apron.draft, apron.axis), apron.along: lies(apron.draft, apron.along)}
    out.joint(
        "screwed",
        apron.draft,
        top,
        [plane(2, high, face, True, glued=False)],
        [unit(2, True)],
        f"{len(ids) // 2} figure-eight clips in recesses {out.text(wide)} wide and {out.text(thick)} deep; no glue",
        glued=False,
        floats=(0, 1),
        fasteners=tuple(ids),
        place=out.design.place(PATH),
    )


def lies(draft: Draft, axis: int) -> tuple[float, float]:
    """From where to where a part is seen along an axis [mm]."""
    seen = draft.seen()
    return seen.low[axis], seen.high[axis]


def _spot(apron: Apron, across: float, along: float, z: float) -> Vec:
    v = [0.0, 0.0, z]
    v[apron.axis], v[apron.along] = across, along
    return (v[0], v[1], v[2])


def clip_screw(
    out: SetOut,
    clip: str,
    into: Draft,
    at: Vec,
    head: float,
    up: bool,
    screw: Screw,
    length: float,
    thick: float,
) -> str:
    """A screw through a clip, with its pilot; gives its id."""
    name = screw_name(out, screw, length)
    pilot = screw.pilot_hard if into.stock.hardwood else screw.pilot_soft
    deep = out.sizer.settled(length - thick, "up") if up else out.sizer.settled(length, "up")
    into.cuts.append(Bore(2, not up, at, pilot, deep, purpose="pilot", for_=name, mate=clip, marked=True))
    id = f"screw.{len(out.fasteners) + 1}"
    start = at[2] - thick if up else at[2]
    out.fasteners.append(
        Fastener(
            id,
            "screw",
            name,
            f"screw_{screw.gauge}",
            (at[0], at[1], start),
            unit(2, up),
            length,
            screw.shank,
            screw.head,
            clip,
            into.id,
            True,
            out.design.place(PATH),
        )
    )
    return id
