"""Bridle joint: an open mortise and a tenon as wide as the part; at a corner, or a fork over a part that runs on."""

from __future__ import annotations

from boardwright.piece.cuts import Tenon
from boardwright.piece.drafts import Channel, Draft, Meeting
from boardwright.piece.joints import cutters
from boardwright.piece.joints.areas import EPS, Range, common, extent, faces_left
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.fastening import not_here
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.records import Contact
from boardwright.piece.setout import SetOut

WALL = 3.0
"""Least wood left beside the open mortise [mm]: 1/8 in, common practice."""


def why_not(first: Draft, second: Draft, meet: Meeting) -> str:
    """What stands against a bridle joint; "" for nothing."""
    if second.length_axis != meet.axis:
        return f"the {second.name} does not meet the {first.name} with its end"
    if first.length_axis == meet.axis:
        return f"the {second.name} meets the end of the {first.name}, and they run on in one line"
    run, across = first.length_axis, 3 - meet.axis - first.length_axis
    if second.low[run] < first.low[run] - EPS or second.high[run] > first.high[run] + EPS:
        return f"the {second.name} reaches beyond the end of the {first.name}"
    if second.size(across) > second.size(run) + EPS or first.size(across) > first.size(meet.axis) + EPS:
        return f"the {second.name} and the {first.name} do not lie in one plane, with edges that meet"
    mine, its = extent(second, across), extent(first, across)
    if _corner(first, second) is None:
        if mine[0] > its[0] + EPS or mine[1] < its[1] - EPS:
            return f"the {second.name} is thinner than the {first.name}, and cannot fork over it"
    else:
        third = (mine[1] - mine[0]) / 3
        if mine[0] + third < its[0] + WALL - EPS or mine[1] - third > its[1] - WALL + EPS:
            return f"the {first.name} has too little wood beside the middle third of the {second.name}"
    return ""


def _corner(first: Draft, second: Draft) -> bool | None:
    """At which end of the first part the second lies flush: True for the high one; None for neither."""
    run = first.length_axis
    for high in (False, True):
        if abs(first.face(run, high) - second.face(run, high)) < EPS:
            return high
    return None


def bridle(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    """At a corner, open the end of the first part for a tenon of the second; else fork the second over the first."""
    not_here(out, first, second, want)
    across = 3 - meet.axis - first.length_axis
    at_high = _corner(first, second)
    middle = _middle(out, second if at_high is not None else first, across, want)
    if middle is None or not _walls(out, first, second, across, middle, want):
        return
    second.grow(meet.axis, not meet.high, first.size(meet.axis))
    if at_high is None:
        contacts = _tee(first, second, meet, across, middle, want)
        ways = [meet.away]
    else:
        contacts = _at_corner(first, second, meet, across, middle, at_high, want)
        ways = [meet.away, unit(first.length_axis, at_high)]
    out.joint(
        "bridle",
        first,
        second,
        contacts,
        ways,
        f"{'tee' if at_high is None else 'corner'} bridle, tenon {out.text(middle[1] - middle[0])} thick, "
        f"{out.text(first.size(meet.axis))} long{', glued' if want.glue else ', dry'}",
        glued=want.glue,
        place=out.design.place(want.path),
    )


def _middle(out: SetOut, part: Draft, across: int, want: JointSettings) -> Range | None:
    """From where to where the tenon of a part lies in its thickness [mm]."""
    figure = out.tables.figure("bridle_share")
    whole = part.size(across)
    thick = out.sizer.size(
        f"{want.name}.thickness",
        [(f"{want.path}.thickness", want.keys.thickness if want.keys else None)],
        cutters.nearest(out, whole * figure.value, whole / 2),
        rule=f"tenon {figure.value:.3g} of the thickness, to the nearest chisel or cutter",
        source=figure.reason,
        total=f"{figure.value:.3g} × {out.text(whole)}",
        least=out.sizer.step,
    )
    thick = out.at_most(thick, whole * 0.6, "the open mortise", f"{want.path}.thickness", whole)
    low = part.low[across] + out.sizer.settled((whole - thick) / 2)
    return low, low + thick


def _walls(out: SetOut, first: Draft, second: Draft, across: int, middle: Range, want: JointSettings) -> bool:
    """True when wood is left on both sides of the tenon in both parts; else a finding says how much there is."""
    left = min(min(middle[0] - part.low[across], part.high[across] - middle[1]) for part in (first, second))
    if left >= min(WALL, second.size(across) / 4) - EPS:
        return True
    out.find(
        "joint.no-wood-beyond",
        f"too little wood is left beside the tenon between the {first.name} and the {second.name}",
        f"{want.path}.thickness",
        found=out.about(max(left, 0.0)),
        expected=f"at least {out.up(WALL)} on each side",
        source="common practice",
        remedy="make the tenon thinner, or use thicker stock",
        parts=(first.id, second.id),
    )
    return False


def _at_corner(
    first: Draft, second: Draft, meet: Meeting, across: int, middle: Range, at_high: bool, want: JointSettings
) -> list[Contact]:
    run, glue = first.length_axis, want.glue
    reach = first.size(meet.axis)
    second.cuts.append(
        Tenon(
            second.side(meet.axis, not meet.high),
            second.index(run),
            reach,
            middle[0] - second.low[across],
            second.high[across] - middle[1],
            ((second.low[run], second.high[run], reach),),
            holds=first.id,
        )
    )
    first.cuts.append(
        Channel(run, at_high, meet.axis, middle[0], middle[1], second.size(run), holds=second.id)
    )
    through, wide = extent(first, meet.axis), extent(second, run)
    inner = second.face(run, not at_high)
    cheek = {meet.axis: through, run: wide}
    taken = [(middle, wide)]
    return [
        plane(across, middle[0], cheek, True, glued=glue),
        plane(across, middle[1], cheek, False, glued=glue),
        plane(run, inner, {meet.axis: through, across: middle}, at_high, glued=False),
        *faces_left(first, second, meet.axis, meet.high, across, run, glued=False, taken=taken),
    ]


def _tee(
    first: Draft, second: Draft, meet: Meeting, across: int, middle: Range, want: JointSettings
) -> list[Contact]:
    run, glue = first.length_axis, want.glue
    wide = extent(second, run)
    shared = common(extent(first, across), extent(second, across))
    for high, depth in ((False, middle[0] - first.low[across]), (True, first.high[across] - middle[1])):
        first.cuts.append(Channel(across, high, meet.axis, wide[0], wide[1], depth, holds=second.id))
    reach = first.size(meet.axis)
    second.cuts.append(Channel(meet.axis, not meet.high, run, middle[0], middle[1], reach, holds=first.id))
    through = extent(first, meet.axis)
    cheek = {meet.axis: through, run: wide}
    contacts = [
        plane(across, middle[0], cheek, False, glued=glue),
        plane(across, middle[1], cheek, True, glued=glue),
        plane(
            meet.axis, first.face(meet.axis, meet.high), {across: middle, run: wide}, meet.high, glued=False
        ),
    ]
    for side in ((shared[0], middle[0]), (middle[1], shared[1])):
        for at, low_side in ((wide[0], True), (wide[1], False)):
            contacts.append(plane(run, at, {meet.axis: through, across: side}, low_side, glued=False))
    return contacts
