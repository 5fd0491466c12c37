"""Groove and tongue: a tongue on the end of one part stands in a narrower channel of the other."""

from __future__ import annotations

from boardwright.piece.drafts import Channel, Draft, Meeting, Step
from boardwright.piece.joints.faces import plane
from boardwright.piece.joints.fastening import not_here
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.setout import SetOut


def tongue(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    """Cut a channel in the first part and a tongue on the second.

    At an end of the first part the tongue has one shoulder, on the side of that end, so that wood is left beyond
    the channel; elsewhere it has two. One that is asked for elsewhere lies on the low side: a shelf keeps its top.
    """
    not_here(out, first, second, want)
    lo, hi = second.low[meet.across], second.high[meet.across]
    width = min(want.width, hi - lo)
    asked = want.keys.shoulders if want.keys is not None else None
    near_low = lo - first.low[meet.across] < (hi - lo)
    near_high = first.high[meet.across] - hi < (hi - lo)
    if asked != "two" and (near_low or (asked == "one" and not near_high)):
        a, b = hi - width, hi
    elif asked != "two" and near_high:
        a, b = lo, lo + width
    else:
        a = lo + out.sizer.settled((hi - lo - width) / 2)
        b = a + width
    if a <= first.low[meet.across] + 1e-6 or b >= first.high[meet.across] - 1e-6:
        out.find(
            "joint.no-wood-beyond",
            f"the groove for the tongue of the {second.name} has no wood beyond it",
            want.path,
            found=f"tongue {out.about(width)} thick, flush with the end of the {first.name}",
            expected="wood on both sides of the groove",
            source="common practice",
            remedy=f"make the tongue {out.text(out.sizer.settled((hi - lo) / 3))} thick, or use `rabbet`",
            parts=(first.id, second.id),
        )
        return
    start, end = meet.box.low[meet.along], meet.box.high[meet.along]
    second.grow(meet.axis, not meet.high, want.depth)
    if a > lo + 1e-6:
        second.shape_end(
            Step(
                meet.across,
                False,
                meet.axis,
                not meet.high,
                want.depth,
                a - lo,
                holds=first.id,
                purpose="tongue",
            )
        )
    if b < hi - 1e-6:
        second.shape_end(
            Step(
                meet.across,
                True,
                meet.axis,
                not meet.high,
                want.depth,
                hi - b,
                holds=first.id,
                purpose="tongue",
            )
        )
    first.cuts.append(
        Channel(
            meet.axis,
            meet.high,
            meet.along,
            a,
            b,
            want.depth,
            None if abs(start - first.low[meet.along]) < 1e-6 else start,
            None if abs(end - first.high[meet.along]) < 1e-6 else end,
            holds=second.id,
        )
    )
    face = first.face(meet.axis, meet.high)
    seat = face - want.depth if meet.high else face + want.depth
    depth_range = (min(face, seat), max(face, seat))
    run = (start, end)
    contacts = [
        plane(meet.axis, seat, {meet.across: (a, b), meet.along: run}, meet.high, glued=want.glue),
        plane(meet.across, a, {meet.axis: depth_range, meet.along: run}, True, glued=want.glue),
        plane(meet.across, b, {meet.axis: depth_range, meet.along: run}, False, glued=want.glue),
    ]
    for s0, s1 in ((lo, a), (b, hi)):
        if s1 - s0 > 1e-6:
            contacts.append(
                plane(meet.axis, face, {meet.across: (s0, s1), meet.along: run}, meet.high, glued=want.glue)
            )
    out.joint(
        "tongue",
        first,
        second,
        contacts,
        [meet.away],
        f"tongue {out.text(b - a)} thick in a groove {out.text(want.depth)} deep"
        f"{', glued' if want.glue else ', dry'}",
        glued=want.glue,
        place=out.design.place(want.path),
    )
