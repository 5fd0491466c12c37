"""Dado: the end (or edge) of one part stands in a channel across the face of another. Through or stopped."""

from __future__ import annotations

from boardwright.core.poses import Vec
from boardwright.piece.drafts import Channel, Corner, Draft, Meeting, Step
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.fastening import fasten, held_words
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.setout import SetOut

END_GRAIN_GLUE = "glue on end grain adds little; the cheeks and the seat carry"


LEAST_WALL = 6.0
"""Thinnest wood left standing between the end of a dado and a groove or rabbet beyond it [mm]; where less would be
left the dado runs right out (common practice: so thin a wall breaks away)."""


def _runs_out(first: Draft, meet: Meeting, end: float) -> bool:
    """True when the dado goes on to the far edge of the first part."""
    edge = first.high[meet.along]
    if abs(end - edge) < 1e-6:
        return True
    for cut in first.cuts:
        if isinstance(cut, Step) and (cut.axis, cut.high) == (meet.axis, meet.high):
            wall = edge - cut.width if (cut.edge_axis, cut.edge_high) == (meet.along, True) else None
        elif isinstance(cut, Channel) and (cut.axis, cut.high) == (meet.axis, meet.high):
            wall = cut.lo if 3 - cut.axis - cut.along == meet.along else None
        else:
            continue
        if wall is not None and end - 1e-6 <= wall < end + LEAST_WALL:
            return True
    return False


def why_not(first: Draft, second: Draft, meet: Meeting) -> str:
    """What stands against a dado; "" for nothing."""
    lo, hi = second.low[meet.across], second.high[meet.across]
    if lo < first.low[meet.across] + 1e-6 or hi > first.high[meet.across] - 1e-6:
        return f"the {second.name} lies flush with the end of the {first.name}, with no wood beyond it"
    return ""


def dado(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    """Cut a dado in the first part and let the second grow into it.

    The channel is as wide as the second part is thick, so it is cut to fit the real stock.
    """
    lo, hi = second.low[meet.across], second.high[meet.across]
    start, end = meet.box.low[meet.along], meet.box.high[meet.along]
    at_front = abs(start - second.low[meet.along]) < 1e-6
    stop = _stop(out, first, second, want, end - start) if at_front else 0.0
    if stop:
        second.shape_end(
            Corner(meet.axis, not meet.high, want.depth, meet.along, False, stop, holds=first.id)
        )
    second.grow(meet.axis, not meet.high, want.depth)
    first.cuts.append(
        Channel(
            meet.axis,
            meet.high,
            meet.along,
            lo,
            hi,
            want.depth,
            None if not stop and abs(start - first.low[meet.along]) < 1e-6 else start + stop,
            None if _runs_out(first, meet, end) else end,
            holds=second.id,
        )
    )
    face = first.face(meet.axis, meet.high)
    seat = face - want.depth if meet.high else face + want.depth
    run = (start + stop, end)
    depth_range = (min(face, seat), max(face, seat))
    contacts = [
        plane(meet.axis, seat, {meet.across: (lo, hi), meet.along: run}, meet.high, glued=want.glue),
        plane(meet.across, lo, {meet.axis: depth_range, meet.along: run}, True, glued=want.glue),
        plane(meet.across, hi, {meet.axis: depth_range, meet.along: run}, False, glued=want.glue),
    ]
    directions: list[Vec] = [meet.away]
    if not stop and abs(start - first.low[meet.along]) < 1e-6:
        directions.append(unit(meet.along, False))
    if abs(end - first.high[meet.along]) < 1e-6:
        directions.append(unit(meet.along, True))
    ids = fasten(out, first, second, meet, want, seat, run)
    kind = "stopped dado" if stop else "dado"
    held = f", {held_words(out, ids)}" if ids else ""
    out.joint(
        "dado",
        first,
        second,
        contacts,
        directions,
        f"{kind} {out.text(want.depth)} deep{', glued' if want.glue else ', dry'}{held}",
        glued=want.glue,
        fasteners=ids,
        place=out.design.place(want.path),
    )


def _stop(out: SetOut, first: Draft, second: Draft, want: JointSettings, run: float) -> float:
    """How far the dado stops short of the front edge [mm]; at least half of the joint must be left."""
    if want.stopped <= run / 2 + 1e-6:
        return want.stopped
    out.find(
        "joint.cannot-be-there",
        f"the dado for the {second.name} stops too far from its end",
        f"{want.path}.stopped",
        found=f"{out.about(want.stopped)} of a joint {out.about(run)} long",
        expected=f"at most half of it, {out.down(run / 2)}",
        source="common practice",
        remedy="let it stop nearer to the end, or run it through",
        parts=(first.id, second.id),
    )
    return 0.0
