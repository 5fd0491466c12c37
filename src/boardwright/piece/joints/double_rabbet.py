"""Double rabbet: a rabbet along the end of the first part takes what a rabbet leaves of the end of the second."""

from __future__ import annotations

from boardwright.piece.drafts import Draft, Meeting, Step
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.fastening import not_here
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.setout import SetOut


def double_rabbet(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    """Rabbet both parts into each other at a corner; the tongue of the second lies at its outer face.

    What the first part has beyond the second is cut away with its rabbet.
    """
    not_here(out, first, second, want)
    across, axis = meet.across, meet.axis
    lo, hi = second.low[across], second.high[across]
    thick = hi - lo
    depth = want.depth
    width = out.sizer.size(
        f"{want.name}.width",
        [(f"{want.path}.width", want.keys.width if want.keys else None)],
        thick / 2,
        rule="half of the thickness is left at the end",
        total=f"{out.text(thick)} / 2",
        least=out.sizer.step,
    )
    width = out.at_most(width, thick - out.sizer.step, "what is left of the end", f"{want.path}.width", thick)
    beyond_low, beyond_high = lo - first.low[across], first.high[across] - hi
    at_high = beyond_high < beyond_low
    wall = hi - width if at_high else lo + width
    second.grow(axis, not meet.high, depth)
    run = (meet.box.low[meet.along], meet.box.high[meet.along])
    first.cuts.append(
        Step(
            axis,
            meet.high,
            across,
            at_high,
            width + (beyond_high if at_high else beyond_low),
            depth,
            None if abs(run[0] - first.low[meet.along]) < 1e-6 else run[0],
            None if abs(run[1] - first.high[meet.along]) < 1e-6 else run[1],
            holds=second.id,
        )
    )
    second.shape_end(
        Step(across, not at_high, axis, not meet.high, depth, thick - width, holds=first.id, purpose="tongue")
    )
    face = first.face(axis, meet.high)
    seat = face - depth if meet.high else face + depth
    deep = (min(face, seat), max(face, seat))
    outer = (wall, hi) if at_high else (lo, wall)
    inner = (lo, wall) if at_high else (wall, hi)
    glued = want.glue
    out.joint(
        "double_rabbet",
        first,
        second,
        [
            plane(axis, seat, {across: outer, meet.along: run}, meet.high, glued=glued),
            plane(across, wall, {axis: deep, meet.along: run}, at_high, glued=glued),
            plane(axis, face, {across: inner, meet.along: run}, meet.high, glued=glued),
        ],
        [meet.away, unit(across, at_high)],
        f"double rabbet, {out.text(depth)} deep, {out.text(width)} left of the end{', glued' if glued else ', dry'}",
        glued=glued,
        place=out.design.place(want.path),
    )
