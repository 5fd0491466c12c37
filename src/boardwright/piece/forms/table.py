"""A table, bench or stool: legs, aprons, stretchers, a top that can move, drawers in the front apron."""

from __future__ import annotations

from boardwright.core.poses import Box, Vec
from boardwright.design.schema import TableKeys
from boardwright.piece.drafts import Draft
from boardwright.piece.forms.apron_drawers import put_drawers
from boardwright.piece.forms.legs import Leg, put_legs
from boardwright.piece.forms.rails import SIDES, put_aprons, put_stretchers
from boardwright.piece.forms.table_plan import TablePlan, plan_table
from boardwright.piece.forms.top import fix_top, put_top
from boardwright.piece.joints.sloping import frame
from boardwright.piece.setout import SetOut


def table(out: SetOut, keys: TableKeys) -> Box | None:
    """Set out a table; gives its outside, or None when its sizes make no table."""
    plan = plan_table(out, keys)
    if plan is None:
        return None
    drawers = keys.aprons.drawers if keys.aprons else None
    if drawers is not None and not plan.upright:
        out.find(
            "table.joint",
            "there can be no drawer between splayed legs",
            "table.aprons.drawers",
            found="legs that are splayed",
            expected="legs that stand plumb",
            source="common practice: a drawer needs walls that stand plumb",
            remedy="leave out `splay`, or the drawers",
        )
        drawers = None
    top = put_top(out, plan, keys.top)
    legs = put_legs(out, plan)
    aprons = put_aprons(out, plan, legs, SIDES if drawers is None else SIDES[1:])
    if drawers is not None:
        put_drawers(out, plan, legs, aprons, drawers)
    if keys.stretchers is not None:
        put_stretchers(out, plan, legs, keys.stretchers)
    if top is not None:
        fix_top(out, plan, top, aprons, keys.top.fixed if keys.top else None, drawers is not None)
    return _outside(plan, legs)


def _outside(plan: TablePlan, legs: list[Leg]) -> Box:
    """Round the top and the feet."""
    points: list[Vec] = [plan.frame.low, plan.frame.high]
    if plan.top is not None:
        points += [plan.top.low, plan.top.high]
    points += [_foot(leg.draft, leg) for leg in legs]
    low = [min(p[i] for p in points) for i in range(3)]
    high = [max(p[i] for p in points) for i in range(3)]
    return Box((low[0], low[1], 0.0), (high[0], high[1], high[2]))


def _foot(draft: Draft, leg: Leg) -> Vec:
    """The outer corner of a foot on the floor [mm]."""
    pose = frame(draft)
    x, y = draft.face(0, leg.right), draft.face(1, leg.rear)
    top = pose.point((x, y, draft.high[2]))
    way = pose.z
    k = -top[2] / way[2]
    return (top[0] + way[0] * k, top[1] + way[1] * k, 0.0)
