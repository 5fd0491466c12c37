"""Butt joint: two faces meet; glue, and what is asked for across or through them."""

from __future__ import annotations

from boardwright.piece.drafts import Draft, Meeting
from boardwright.piece.joints.faces import plane
from boardwright.piece.joints.fastening import fasten, held_words
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.setout import SetOut


def butt(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    """Join two parts face to face; the first lies under the screw heads."""
    face = first.face(meet.axis, meet.high)
    run = (meet.box.low[meet.along], meet.box.high[meet.along])
    spread = (meet.box.low[meet.across], meet.box.high[meet.across])
    contacts = [plane(meet.axis, face, {meet.across: spread, meet.along: run}, meet.high, glued=want.glue)]
    ids = fasten(out, first, second, meet, want, face, run)
    held = held_words(out, ids) or "no fasteners"
    out.joint(
        "butt",
        first,
        second,
        contacts,
        [meet.away],
        f"butt joint, {held}{', glued' if want.glue else ', dry'}",
        glued=want.glue,
        fasteners=ids,
        place=out.design.place(want.path),
    )
