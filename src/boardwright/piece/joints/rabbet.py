"""Rabbet: a step along the end or edge of one part takes the end or edge of another."""

from __future__ import annotations

from boardwright.piece.drafts import Draft, Meeting, Step
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.fastening import fasten, held_words
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.setout import SetOut

LEAST_STOP = 12.0
"""A rabbet is not stopped nearer than this to the end it runs to [mm]: it goes through (common practice)."""


def why_not(first: Draft, second: Draft, meet: Meeting) -> str:
    """What stands against a rabbet; "" for nothing."""
    beyond = min(
        second.low[meet.across] - first.low[meet.across], first.high[meet.across] - second.high[meet.across]
    )
    if beyond < -1e-6:
        return f"the {second.name} reaches beyond the end of the {first.name}"
    if beyond > second.size(meet.across) + 1e-6:
        return f"the {second.name} stands farther in from the end of the {first.name} than it is thick"
    if second.size(meet.across) + max(beyond, 0.0) > first.size(meet.across) - 1e-6:
        return (
            f"the {second.name} is as thick as the {first.name} is there: a rabbet leaves nothing beside it"
        )
    return ""


def rabbet(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    """Cut a rabbet along the end of the first part; the second grows into it.

    The second part must stand at an end or edge of the first; what the first has beyond it (an overhang) is cut
    away with the step.
    """
    beyond_low = second.low[meet.across] - first.low[meet.across]
    beyond_high = first.high[meet.across] - second.high[meet.across]
    at_high = beyond_high < beyond_low
    beyond = beyond_high if at_high else beyond_low
    width = second.size(meet.across) + beyond
    start, end = meet.box.low[meet.along], meet.box.high[meet.along]
    second.grow(meet.axis, not meet.high, want.depth)
    first.cuts.append(
        Step(
            meet.axis,
            meet.high,
            meet.across,
            at_high,
            width,
            want.depth,
            None if start - first.low[meet.along] < LEAST_STOP else start,
            None if first.high[meet.along] - end < LEAST_STOP else end,
            holds=second.id,
        )
    )
    face = first.face(meet.axis, meet.high)
    seat = face - want.depth if meet.high else face + want.depth
    run = (start, end)
    depth_range = (min(face, seat), max(face, seat))
    lo, hi = second.low[meet.across], second.high[meet.across]
    wall = lo if at_high else hi
    contacts = [
        plane(meet.axis, seat, {meet.across: (lo, hi), meet.along: run}, meet.high, glued=want.glue),
        plane(meet.across, wall, {meet.axis: depth_range, meet.along: run}, at_high, glued=want.glue),
    ]
    ids = fasten(out, first, second, meet, want, seat, run)
    held = f", {held_words(out, ids)}" if ids else ""
    out.joint(
        "rabbet",
        first,
        second,
        contacts,
        [meet.away, unit(meet.across, at_high)],
        f"rabbet {out.text(width)} wide, {out.text(want.depth)} deep{', glued' if want.glue else ', dry'}{held}",
        glued=want.glue,
        fasteners=ids,
        place=out.design.place(want.path),
    )
