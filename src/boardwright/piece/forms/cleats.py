"""Cleats inside the aprons: screws stand in slots, so that the top can move across its grain."""

from __future__ import annotations

from boardwright.core.poses import Box, Vec
from boardwright.design.schema import JointKeys
from boardwright.piece.drafts import Draft
from boardwright.piece.forms.table_plan import TablePlan
from boardwright.piece.forms.under_top import PATH, Apron, screw_up, spread
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.make import make_joint
from boardwright.piece.setout import SetOut

HELD = JointKeys(kind="butt", fasten="none", glue=True)
"""Grain along grain: glue alone holds a cleat (common practice)."""
LEAST_CLEAT = 40.0
"""Least length of a cleat [mm]: 1 1/2 in, common practice."""


def cleats(out: SetOut, plan: TablePlan, top: Draft, aprons: list[Apron]) -> None:
    """Put a cleat at some aprons and screw the top to them."""
    figure = out.tables.figure("cleat_size")
    size = min(out.sizer.settled(figure.value), out.sizer.settled(plan.apron_stock.thickness, "down"))
    for apron in aprons:
        run = apron.run(out)
        length = run[1] - run[0]
        if length < LEAST_CLEAT:
            continue
        stock = apron.draft.stock
        across = stock.thickness if stock.kind == "sheet" else min(size, stock.thickness)
        span = {apron.axis: apron.inside(0.0, across), apron.along: run}
        high = plan.frame.high[2]
        box = Box((span[0][0], span[1][0], high - size), (span[0][1], span[1][1], high))
        there = _there(out, box)
        if there is not None:
            hold_top(out, plan, top, there)
            continue
        cleat = out.add(f"table.cleat.{apron.side}", "cleat", stock, box, (apron.along, 2), path=PATH)
        make_joint(out, "table.top.cleat", HELD, PATH, "butt", cleat, apron.draft)
        hold_top(out, plan, top, cleat)


def _there(out: SetOut, box: Box) -> Draft | None:
    """A strip that already lies where a cleat would, such as the kicker of a drawer."""
    for draft in out.drafts.values():
        shared = draft.box.overlap(box)
        level = abs(draft.high[2] - box.high[2]) < 1e-6
        if level and shared is not None and min(shared.size(i) for i in range(3)) > 1e-6:
            return draft
    return None


def hold_top(out: SetOut, plan: TablePlan, top: Draft, strip: Draft) -> None:
    """Screw the top to a strip that lies under it, through slots as long as the top moves."""
    along = strip.length_axis
    slot = _slot(out, plan)
    middles = spread(
        out, (strip.low[along], strip.high[along]), min(out.sizer.settled(38.0), strip.size(along) / 3)
    )
    ids = []
    for middle in middles:
        at = [0.0, 0.0, strip.low[2]]
        at[along] = middle
        at[1 - along] = strip.low[1 - along] + out.sizer.settled(strip.size(1 - along) / 2)
        place: Vec = (at[0], at[1], at[2])
        ids.append(screw_up(out, strip, top, place, 0.0, slot=slot, slot_axis=1 - plan.grain))
    face = {i: (strip.low[i], strip.high[i]) for i in (0, 1)}
    kept = tuple(i for i in ids if i)
    slots = f"in slots {out.text(slot)} long" if slot else "in round holes"
    out.joint(
        "screwed",
        top,
        strip,
        [plane(2, strip.high[2], face, False, glued=False)],
        [unit(2, False)],
        f"{len(kept)} screws {slots}; no glue",
        glued=False,
        floats=(1 - plan.grain,) if slot else (),
        fasteners=kept,
        place=strip.place,
    )


def _slot(out: SetOut, plan: TablePlan) -> float:
    """Length of a slot from centre to centre [mm]: what the top moves, to either side."""
    move = 2 * max(plan.swells, plan.shrinks)
    return out.sizer.settled(move, "up") if move > 0 else 0.0
