"""The top of a table, and how it is held so that it can move."""

from __future__ import annotations

from boardwright.core.poses import Box
from boardwright.design.schema import TableTop
from boardwright.piece.cuts import Curve
from boardwright.piece.drafts import Draft, meeting
from boardwright.piece.forms.buttons import buttons
from boardwright.piece.forms.cleats import cleats
from boardwright.piece.forms.clips import clips
from boardwright.piece.forms.table_plan import TablePlan
from boardwright.piece.forms.top_edge import shape_edge
from boardwright.piece.forms.under_top import Apron
from boardwright.piece.forms.z_clips import z_clips
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.setout import SetOut

INWARD = {"front": True, "rear": False, "left": True, "right": False}


def put_top(out: SetOut, plan: TablePlan, keys: TableTop | None) -> Draft | None:
    """Put the top on the bench; its grain runs along its longer side."""
    if plan.top is None:
        return None
    g = plan.grain
    top = out.add(
        "table.top",
        "top",
        plan.top_stock,
        Box(plan.top.low, plan.top.high),
        (g, 1 - g),
        show=((2, True), (0, False), (0, True), (1, False), (1, True)),
        path="table.top",
    )
    if plan.round:
        _rounded(top)
    if keys is not None and keys.edge is not None:
        shape_edge(out, plan, top, keys.edge)
    return top


def _rounded(top: Draft) -> None:
    """Saw a top round: half a circle or half an ellipse from each of its long sides."""
    along, across = top.length_axis, top.width_axis
    a, b = top.size(along) / 2, top.size(across) / 2
    points = ((top.low[along], b), (top.low[along] + a, 0.0), (top.high[along], b))
    shape = "arc" if abs(a - b) < 1e-6 else "ellipse"
    for high in (False, True):
        top.cuts.append(Curve(top.side(across, high), top.index(along), shape, points))


def fix_top(
    out: SetOut, plan: TablePlan, top: Draft, aprons: dict[str, Draft], asked: str | None, drawers: bool
) -> None:
    """Hold the top at every apron that stands plumb."""
    usual = "slotted_screws" if drawers else "buttons"
    rule = "buttons would stand in the way of the drawers" if drawers else "wooden buttons let the top move"
    how = out.sizer.choose("table.top.fixed", asked, usual, rule, "table.top.fixed")
    if how in ("buttons", "z_clips") and drawers:
        what = how.replace("z_clips", "Z-shaped clips")
        out.find(
            "table.joint",
            f"{what} cannot hold a top over a drawer",
            "table.top.fixed",
            found=how,
            expected="`slotted_screws` or `clips`",
            source="common practice: they hang lower than the rail over a drawer",
            remedy="use `slotted_screws`",
        )
        how = "slotted_screws"
    at = [
        Apron(side, draft, 1 if side in ("front", "rear") else 0, INWARD[side])
        for side, draft in aprons.items()
        if draft.tilt is None
    ]
    if how == "none" or not at:
        _lay(out, top)
        return
    if plan.swells + plan.shrinks > 0:
        m = out.moisture
        out.sizer.explain(
            "table.top.moves",
            plan.swells + plan.shrinks,
            f"half the top, between {m.driest:g} % and {m.wettest:g} % moisture",
            "room that its fixings leave it",
            "change of width: Wood Handbook FPL-GTR-190 eq. 13-2",
        )
    {"buttons": buttons, "slotted_screws": cleats, "clips": clips, "z_clips": z_clips}[how](
        out, plan, top, at
    )


def _lay(out: SetOut, top: Draft) -> None:
    """Lay the top loose on the parts under it that stand plumb."""
    for part in list(out.drafts.values()):
        meet = meeting(part, top) if part.tilt is None and part is not top else None
        if meet is None or (meet.axis, meet.high) != (2, True):
            continue
        face = {i: (meet.box.low[i], meet.box.high[i]) for i in (0, 1)}
        out.joint(
            "rests",
            part,
            top,
            [plane(2, top.low[2], face, True, glued=False)],
            [unit(2, True)],
            "the top lies on it, loose",
            glued=False,
            floats=(0, 1),
            place=top.place,
        )
