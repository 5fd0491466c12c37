"""Drawer lock: the groove-and-tongue joint of a one-piece front that covers the ends of the sides.

The end of the front has a slot; the end of the side goes into it, and a short tongue of the front goes into a
groove across the inside of the side.
"""

from __future__ import annotations

from boardwright.piece.drafts import Channel, Draft, Meeting, Step
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.setout import SetOut


def lock(out: SetOut, front: Draft, side: Draft, meet: Meeting, want: JointSettings) -> None:
    """Cut the drawer lock: `front` is met at its back face by the front end of `side`.

    `want.width` is the thickness of the front's tongue and of the side's end; `want.depth` is how far the tongue
    stands in the side.
    """
    axis, across = meet.axis, meet.across
    tongue = min(want.width, out.sizer.settled(front.size(axis) / 3, "down"))
    lo, hi = side.low[across], side.high[across]
    at_high = front.high[across] - hi < lo - front.low[across]
    inner = lo if at_high else hi
    end_of_front = front.face(across, at_high)
    slot_depth = abs(end_of_front - inner)
    back = front.face(axis, meet.high)
    toward = 1.0 if meet.high else -1.0
    depth = min(want.depth, out.sizer.settled((hi - lo) / 2, "down"))
    side.grow(axis, not meet.high, 2 * tongue)
    slot = sorted((back - toward * tongue, back - toward * 2 * tongue))
    front.cuts.append(Channel(across, at_high, meet.along, slot[0], slot[1], slot_depth, holds=side.id))
    front.cuts.append(
        Step(axis, meet.high, across, at_high, slot_depth - depth, tongue, holds=side.id, purpose="tongue")
    )
    channel = sorted((back, back - toward * tongue))
    side.cuts.append(Channel(across, not at_high, meet.along, channel[0], channel[1], depth, holds=front.id))
    run = (meet.box.low[meet.along], meet.box.high[meet.along])
    into = sorted((inner, inner + (depth if at_high else -depth)))
    contacts = [
        plane(axis, slot[0], {across: (lo, hi), meet.along: run}, True, glued=want.glue),
        plane(
            axis, channel[0], {across: (into[0], into[1]), meet.along: run}, not meet.high, glued=want.glue
        ),
        plane(axis, channel[1], {across: (into[0], into[1]), meet.along: run}, meet.high, glued=want.glue),
        plane(across, inner, {axis: (slot[0], slot[1]), meet.along: run}, at_high, glued=want.glue),
    ]
    if not meet.high:
        contacts[0] = plane(axis, slot[1], {across: (lo, hi), meet.along: run}, False, glued=want.glue)
    out.joint(
        "lock",
        front,
        side,
        contacts,
        [unit(across, at_high)],
        f"drawer lock, tongue {out.text(tongue)} thick, {out.text(depth)} into the side"
        f"{', glued' if want.glue else ', dry'}",
        glued=want.glue,
        place=out.design.place(want.path),
    )
