"""Sliding dovetail: a tongue wider at its tip slides along a slot of the same shape."""

from __future__ import annotations

import re

from boardwright.piece.cuts import DovetailSlot, DovetailTongue
from boardwright.piece.drafts import Corner, Draft, Meeting
from boardwright.piece.joints.corner import tool_of
from boardwright.piece.joints.faces import facet, plane, unit
from boardwright.piece.joints.fastening import not_here
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.records import Contact
from boardwright.piece.setout import SetOut

DEPTH_SHARE = 1 / 3
"""Depth of the slot for a thickness of 1 (common practice)."""
NECK_SHARE = 0.5
"""Thickness of the tongue at its neck for a thickness of 1 of its part (common practice)."""
SLOPE = "1:6"
"""Between the 9 and 10 degrees of common cutters (common practice)."""


def why_not(first: Draft, second: Draft, meet: Meeting) -> str:
    """What stands against a sliding dovetail; "" for nothing."""
    lo, hi = second.low[meet.across], second.high[meet.across]
    if lo < first.low[meet.across] + 1e-6 or hi > first.high[meet.across] - 1e-6:
        return f"the {second.name} lies flush with the end of the {first.name}, with no wood beyond the slot"
    if second.thickness_axis != meet.across:
        return f"the {second.name} lies with a face on the {first.name}, and has no end or edge to cut the tongue on"
    low, high = abs(meet.box.low[meet.along] - first.low[meet.along]), abs(
        meet.box.high[meet.along] - first.high[meet.along]
    )
    if min(low, high) > 1e-6:
        return f"the {second.name} reaches neither edge of the {first.name}, so that it cannot be slid in"
    whole = (second.low[meet.along], second.high[meet.along])
    if abs(whole[0] - meet.box.low[meet.along]) > 1e-6 or abs(whole[1] - meet.box.high[meet.along]) > 1e-6:
        return f"the {second.name} stands out beside the {first.name}"
    return ""


def sliding_dovetail(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    """Cut the slot across the first part and the tongue along the end of the second."""
    not_here(out, first, second, want)
    keys, sizer, path = want.keys, out.sizer, want.path
    thick, deep = second.size(meet.across), first.size(meet.axis)
    depth = sizer.size(
        f"{want.name}.depth",
        [(f"{path}.depth", keys.depth if keys else None)],
        DEPTH_SHARE * deep,
        rule="a third of the thickness",
        total=f"{out.text(deep)} / 3",
        direction="down",
        least=sizer.step,
    )
    depth = out.at_most(depth, deep - sizer.step, "the slot", f"{path}.depth", deep)
    word = sizer.choose(
        f"{want.name}.slope", keys.slope if keys else None, SLOPE, "as common cutters cut it", f"{path}.slope"
    )
    over, run_text = re.split(":", word)
    slope = float(over) / float(run_text)
    tool = tool_of(
        out, f"{path}.cutter", keys.cutter if keys else None, sizer.step, f"{want.name}.cutter", "any cutter"
    )
    most = sizer.settled(thick - 2 * depth * slope, "down")
    neck = sizer.size(
        f"{want.name}.width",
        [(f"{path}.width", keys.width if keys else None)],
        min(max(NECK_SHARE * thick, tool), most),
        rule="half of the thickness at the neck",
        total=f"{out.text(thick)} / 2",
        direction="down",
        least=sizer.step,
    )
    if neck > most + 1e-6 or most < sizer.step:
        out.find(
            "joint.no-room",
            f"the tongue is wider at its tip than the {second.name} is thick",
            path,
            found=f"{out.about(neck + 2 * depth * slope)} in {out.about(thick)}",
            expected=f"a neck of at most {out.about(max(most, 0.0))}",
            source="common practice",
            remedy="make the slot shallower, or the part thicker",
            parts=(first.id, second.id),
        )
        return
    lo = second.low[meet.across]
    near = lo + sizer.settled((thick - neck) / 2)
    mouth = (near, near + neck)
    start, end = meet.box.low[meet.along], meet.box.high[meet.along]
    at_low, at_high = abs(start - first.low[meet.along]) < 1e-6, abs(end - first.high[meet.along]) < 1e-6
    stop = _stop(out, want, end - start) if at_low and at_high else 0.0
    if stop:
        second.shape_end(Corner(meet.axis, not meet.high, depth, meet.along, False, stop, holds=first.id))
    second.grow(meet.axis, not meet.high, depth)
    grown = depth * slope
    second.cuts.append(
        DovetailTongue(
            second.side(meet.axis, not meet.high),
            second.index(meet.along),
            depth,
            mouth[0] - grown - second.low[meet.across],
            second.high[meet.across] - mouth[1] - grown,
            slope,
            first.id,
        )
    )
    first.cuts.append(
        DovetailSlot(
            first.side(meet.axis, meet.high),
            first.index(meet.along),
            mouth[0],
            neck,
            depth,
            slope,
            start + stop,
            end,
            second.id,
        )
    )
    ways = []
    if at_low and not stop:
        ways.append(unit(meet.along, False))
    if at_high:
        ways.append(unit(meet.along, True))
    out.joint(
        "sliding_dovetail",
        first,
        second,
        _contacts(first, second, meet, mouth, depth, grown, (start + stop, end), want.glue),
        ways,
        f"sliding dovetail {out.text(neck)} wide at its neck, {out.text(depth)} deep, {word.replace(':', ' : ')}"
        f"{', stopped' if stop else ''}{', glued' if want.glue else ', dry'}",
        glued=want.glue,
        place=out.design.place(want.path),
    )


def _stop(out: SetOut, want: JointSettings, run: float) -> float:
    """How far the slot stops short of the front edge [mm]."""
    keys = want.keys
    if keys is None or keys.stopped is None:
        return 0.0
    stop = out.sizer.size(f"{want.name}.stopped", [(f"{want.path}.stopped", keys.stopped)], 0.0)
    return out.at_most(stop, run / 2, "the slot is stopped too far from its end: it", f"{want.path}.stopped", run)


def _contacts(
    first: Draft,
    second: Draft,
    meet: Meeting,
    mouth: tuple[float, float],
    depth: float,
    grown: float,
    run: tuple[float, float],
    glued: bool,
) -> list[Contact]:
    face = first.face(meet.axis, meet.high)
    seat = face - depth if meet.high else face + depth
    wide = (mouth[0] - grown, mouth[1] + grown)
    out = [plane(meet.axis, seat, {meet.across: wide, meet.along: run}, meet.high, glued=glued)]
    whole = (second.low[meet.across], second.high[meet.across])
    for a, b in ((whole[0], mouth[0]), (mouth[1], whole[1])):
        if b - a > 1e-6:
            out.append(plane(meet.axis, face, {meet.across: (a, b), meet.along: run}, meet.high, glued=False))
    for neck, tip, high in ((mouth[0], wide[0], True), (mouth[1], wide[1], False)):
        corners = []
        for at, across, along in (
            (face, neck, run[0]),
            (face, neck, run[1]),
            (seat, tip, run[1]),
            (seat, tip, run[0]),
        ):
            v = [0.0, 0.0, 0.0]
            v[meet.axis], v[meet.across], v[meet.along] = at, across, along
            corners.append((v[0], v[1], v[2]))
        ring = tuple(corners)
        contact = facet(ring, glued=glued)
        if (contact.normal[meet.across] > 0) != high:
            contact = facet(tuple(reversed(ring)), glued=glued)
        out.append(contact)
    return out
