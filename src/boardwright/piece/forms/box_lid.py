"""A lid sawn from its box: it lies loose on the rim, or turns on hinges at the back."""

from __future__ import annotations

from boardwright.core.poses import Box
from boardwright.design.schema import BoxLid
from boardwright.piece.forms.box_panel import Wall
from boardwright.piece.forms.hinge_line import HingeLine
from boardwright.piece.forms.hinges import hang, lid_hinges, pin_out
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.records import Hardware, Motion
from boardwright.piece.setout import SetOut

PATH = "box.lid"
STAY = Box((1.0, -40.0, -30.0), (9.0, 40.0, -20.0))
"""Room of a stay on the left side, from the rim in the middle of the side [mm]."""


def set_lid(out: SetOut, keys: BoxLid, walls: list[Wall], upper: list[Wall]) -> None:
    """Lay a lid on its box, or hang it.

    Args:
        out: the bench.
        keys: what the file says.
        walls: front, right, rear and left of the box.
        upper: those of the lid.
    """
    if keys.hinges is None:
        _lay(out, walls, upper)
        return
    kind = lid_hinges(out, keys.hinges.kind, f"{PATH}.hinges", "butt hinges, let into lid and box")
    _, right, rear, left = (w.draft for w in walls)
    low, high = left.high[0], right.low[0]
    line = HingeLine(
        upper[2].draft,
        (rear,),
        0,
        2,
        True,
        rear.high[2],
        0.0,
        1,
        rear.high[1] + pin_out(out),
        low,
        high - low,
    )
    if not hang(out, "lid.1", kind, keys.hinges, f"{PATH}.hinges", line, "lid.1"):
        return
    turn = out.tables.figure("lid_turn")
    opens = keys.opens or turn.value
    out.sizer.choose(
        f"{PATH}.opens",
        f"{opens:g} degrees" if keys.opens else None,
        f"{opens:g} degrees",
        "leans a little past upright",
        f"{PATH}.opens",
        turn.reason,
    )
    front = upper[0].draft
    outside = Box(
        (front.low[0], front.low[1], front.low[2]), (front.high[0], upper[2].draft.high[1], front.high[2])
    )
    out.motions.append(
        Motion(
            "lid.1",
            "lid",
            "lid",
            (-1.0, 0.0, 0.0),
            0.0,
            f"{kind} hinges",
            outside,
            0.0,
            0.0,
            0.0,
            out.design.place(PATH),
            opens,
            line.pivot(),
        )
    )
    if keys.stay:
        middle = (left.low[1] + left.high[1]) / 2
        at = (low, middle, rear.high[2])
        box = Box(
            (at[0] + STAY.low[0], at[1] + STAY.low[1], at[2] + STAY.low[2]),
            (at[0] + STAY.high[0], at[1] + STAY.high[1], at[2] + STAY.high[2]),
        )
        out.hardware.append(Hardware("lid.1.stay", "lid stay", "", box, "case", place=out.design.place(PATH)))


def _lay(out: SetOut, walls: list[Wall], upper: list[Wall]) -> None:
    """Lay the walls of the lid loose on those of the box, along what stands between the corners."""
    front, right, rear, left = (w.draft for w in walls)
    inside = {0: (left.high[0], right.low[0]), 1: (front.high[1], rear.low[1])}
    for under, over in zip(walls, upper, strict=True):
        low, high = under.draft, over.draft
        across = under.axis
        face = {across: (low.low[across], low.high[across]), 1 - across: inside[1 - across]}
        out.joint(
            "rests",
            low,
            high,
            [plane(2, low.high[2], face, True, glued=False)],
            [unit(2, True)],
            "the lid lies on it, loose",
            glued=False,
            place=out.design.place(PATH),
        )
