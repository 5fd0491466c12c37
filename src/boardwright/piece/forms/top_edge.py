"""The upper edge of a table top, worked to a shape all round."""

from __future__ import annotations

from boardwright.core.curves import edge_line
from boardwright.design.schema import TopEdge
from boardwright.piece.cuts import Moulding
from boardwright.piece.drafts import Draft
from boardwright.piece.forms.table_plan import TablePlan
from boardwright.piece.setout import SetOut

PATH = "table.top.edge"
SHARE = {"chamfer": 0.25, "round_over": 0.25, "cove": 0.5, "ogee": 0.5}
"""Size of a shaped edge by the thickness of the top: common practice."""


def shape_edge(out: SetOut, plan: TablePlan, top: Draft, keys: TopEdge) -> None:
    """Work the upper edge of a top to a shape: along its four sides, or round its rim.

    Args:
        out: the bench.
        plan: sizes of the table.
        top: on the bench.
        keys: what the file says of the edge.
    """
    if plan.round and abs(top.size(0) - top.size(1)) > 1e-6:
        out.find(
            "table.no-room",
            "the rim of an ellipse is not shaped",
            PATH,
            found=f"a top {out.about(top.size(0))} × {out.about(top.size(1))}",
            expected="a circle, or four straight sides",
            remedy="make it as deep as it is wide, or leave out `edge`",
        )
        return
    thick = top.size(2)
    size = out.sizer.size(
        f"{PATH}.size",
        [(f"{PATH}.size", keys.size)],
        thick * SHARE[keys.kind],
        rule=f"{'half' if SHARE[keys.kind] == 0.5 else 'a quarter'} of the thickness of the top",
        source="common practice",
        direction="down",
        least=out.sizer.step,
    )
    word = keys.kind.replace("_", "-")
    line = edge_line(word, size)
    wide, deep = max(p[0] for p in line), max(p[1] for p in line)
    if deep > thick + 1e-6 or wide > _room(plan, top) + 1e-6:
        most = out.sizer.settled(size * min(thick / deep, _room(plan, top) / wide), "down")
        out.find(
            "table.no-room",
            "the shaped edge of the top takes more than there is",
            f"{PATH}.size",
            found=f"{out.about(wide)} in from the edge, {out.about(deep)} deep",
            expected=f"at most {out.down(_room(plan, top))} in, {out.down(thick)} deep",
            source="common practice",
            remedy=f"make it {out.down(most)} or less",
        )
        return
    if plan.round:
        edge = top.side(top.width_axis, False)
        run = (top.low[top.length_axis], top.high[top.length_axis])
        top.cuts.append(Moulding(top.side(2, True), edge, word, size, (), *run, rim=True))
        return
    for axis in (top.length_axis, top.width_axis):
        run = (top.low[1 - axis], top.high[1 - axis])
        for high in (False, True):
            top.cuts.append(Moulding(top.side(2, True), top.side(axis, high), word, size, (), *run))


def _room(plan: TablePlan, top: Draft) -> float:
    """How far in a shaped edge may reach [mm]: a third of the shorter side."""
    return min(top.size(0), top.size(1)) / 3
