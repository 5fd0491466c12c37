"""Mortise and tenon: blind, through, haunched at a corner, a stub in a groove, several side by side, pegged."""

from __future__ import annotations

from boardwright.piece.cuts import Mortise, Tenon
from boardwright.piece.drafts import Draft, Meeting
from boardwright.piece.joints.areas import EPS, Range, common, extent, faces_left
from boardwright.piece.joints.faces import plane
from boardwright.piece.joints.fastening import not_here
from boardwright.piece.joints.pegged import pegs
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.joints.tenon_plan import Plan, lay_out, within_grooves
from boardwright.piece.joints.tenon_sizes import (
    FLAT,
    WALL,
    Reach,
    Slot,
    Stand,
    count_of,
    groove_at,
    reach_of,
    stand,
    thickness_of,
)
from boardwright.piece.records import Contact
from boardwright.piece.setout import SetOut


def why_not(first: Draft, second: Draft, meet: Meeting) -> str:
    """What stands against a mortise and tenon; "" for nothing."""
    how = stand(first, meet)
    if first.length_axis == meet.axis and first.stock.kind == "wood":
        return f"the mortise would be in the end grain of the {first.name}"
    if second.length_axis != meet.axis and second.stock.kind == "wood":
        return f"the tenon would stand across the grain of the {second.name}, and break off"
    if second.low[how.wide] < first.low[how.wide] - EPS or second.high[how.wide] > first.high[how.wide] + EPS:
        return f"the {second.name} reaches beyond the end of the {first.name}"
    if all(abs(second.face(how.wide, h) - first.face(how.wide, h)) < EPS for h in (False, True)):
        return f"the {second.name} is as wide as the {first.name} is long, with no wood beyond the mortise"
    flush = any(abs(second.face(how.wide, h) - first.face(how.wide, h)) < EPS for h in (False, True))
    if flush and second.size(how.thick) > FLAT * second.size(how.wide):
        return f"the {second.name} lies flat, flush with the end of the {first.name}: a mortise would break out of it"
    low, high = extent(second, how.thick)
    third = (high - low) / 3
    if low + third < first.low[how.thick] + WALL - EPS or high - third > first.high[how.thick] - WALL + EPS:
        return f"the {first.name} has too little wood beside the middle third of the {second.name}"
    return ""


def mortise_tenon(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    """Mortise the first part, and leave a tenon on the end of the second."""
    not_here(out, first, second, want)
    how = stand(first, meet)
    slot = groove_at(first, second, how)
    _no_blind_wedges(out, first, second, want)
    n, axis = count_of(second, how, want)
    thick = thickness_of(out, second, how, want, n if axis == how.thick else 1, slot)
    plan = lay_out(out, first, second, how, want, n, axis, thick, slot)
    if plan is None:
        return
    reach = reach_of(out, first, second, how, want, plan.holes, slot)
    if reach is None:
        return
    if reach.stub:
        plan = Plan([within_grooves(second, how)], plan.thicks)
    haunch = _haunch(out, how, want, plan, reach, slot, axis)
    second.grow(how.axis, not how.high, reach.length)
    _cut_tenon(first, second, how, plan, reach, haunch, axis)
    if not reach.stub:
        _cut_mortises(first, second, how, plan, reach, haunch, slot)
    contacts = _contacts(first, second, how, want, plan, reach, haunch, slot)
    held = () if reach.stub else pegs(out, first, second, how, want, plan.wides, plan.thicks, reach.length)
    out.joint(
        "mortise_tenon",
        first,
        second,
        contacts,
        [meet.away],
        _summary(out, want, plan, reach, haunch, thick, len(held)),
        glued=want.glue,
        fasteners=held,
        place=out.design.place(want.path),
    )


def _no_blind_wedges(out: SetOut, first: Draft, second: Draft, want: JointSettings) -> None:
    """A finding when wedges are asked for in a tenon that is to be blind."""
    if want.keys is None or want.keys.through is not False or want.keys.wedges is None:
        return
    out.find(
        "joint.cannot-be-there",
        f"wedges cannot be driven into the blind tenon of the {second.name}",
        f"{want.path}.wedges",
        found="`through: false`",
        expected="a through tenon, whose end can be reached",
        source="common practice",
        remedy="use `through: true`, or leave `wedges` out",
        parts=(first.id, second.id),
    )


def _haunch(
    out: SetOut, how: Stand, want: JointSettings, plan: Plan, reach: Reach, slot: Slot | None, axis: int
) -> float:
    """Length of the haunch [mm]; 0 for none."""
    asked = want.keys.haunch if want.keys is not None else None
    if plan.beyond is None or reach.stub or (asked is None and (axis == how.thick and len(plan.thicks) > 1)):
        if asked is not None and (given := out.sizer.read(f"{want.path}.haunch")):
            out.find(
                "joint.cannot-be-there",
                "there can be no haunch there",
                f"{want.path}.haunch",
                found=f"{out.about(given)}, away from a corner" if not reach.stub else "a stub tenon",
                expected="a tenon at a corner, flush with the end of the part that it goes into",
                source="common practice",
                remedy="leave `haunch` out",
            )
        return 0.0
    default = slot.depth if slot is not None else reach.length / 3
    haunch = out.sizer.size(
        f"{want.name}.haunch",
        [(f"{want.path}.haunch", asked)],
        default,
        rule="the haunch fills the groove" if slot is not None else "haunch a third of the tenon",
        total=out.text(default) if slot is not None else f"{out.text(reach.length)} / 3",
    )
    return (
        out.at_most(haunch, reach.length / 2, "the haunch", f"{want.path}.haunch", reach.length)
        if haunch
        else 0.0
    )


def _cut_tenon(
    first: Draft, second: Draft, how: Stand, plan: Plan, reach: Reach, haunch: float, axis: int
) -> None:
    side_by_side = axis == how.thick and len(plan.thicks) > 1
    across, other = (how.thick, how.wide) if side_by_side else (how.wide, how.thick)
    spans, shoulder = (plan.thicks, plan.wides) if side_by_side else (plan.wides, plan.thicks)
    steps = [(a, b, reach.length) for a, b in spans]
    if haunch > EPS and plan.beyond is not None:
        steps.append((*plan.beyond, haunch))
    second.cuts.append(
        Tenon(
            second.side(how.axis, not how.high),
            second.index(across),
            reach.length,
            shoulder[0][0] - second.low[other],
            second.high[other] - shoulder[0][1],
            tuple(sorted(steps)),
            holds=first.id,
        )
    )


def _cut_mortises(
    first: Draft, second: Draft, how: Stand, plan: Plan, reach: Reach, haunch: float, slot: Slot | None
) -> None:
    side, along = first.side(how.axis, how.high), first.index(how.wide)
    depth = first.size(how.axis) if reach.through else reach.length + reach.deeper
    for thick in plan.thicks:
        width = thick[1] - thick[0]
        for wide in plan.wides:
            first.cuts.append(
                Mortise(side, along, thick[0], width, depth, wide[0], wide[1], reach.through, holds=second.id)
            )
        if haunch > EPS and plan.beyond is not None and not _filled(slot, thick, haunch):
            a, b = plan.beyond
            first.cuts.append(Mortise(side, along, thick[0], width, haunch, a, b, holds=second.id))


def _filled(slot: Slot | None, thick: Range, haunch: float) -> bool:
    """True when the groove that is there takes the haunch."""
    return (
        slot is not None
        and slot.low <= thick[0] + EPS
        and slot.high >= thick[1] - EPS
        and slot.depth >= haunch - EPS
    )


def _contacts(
    first: Draft,
    second: Draft,
    how: Stand,
    want: JointSettings,
    plan: Plan,
    reach: Reach,
    haunch: float,
    slot: Slot | None,
) -> list[Contact]:
    face = first.face(how.axis, how.high)
    tip = how.inward(face, reach.length)
    glue = want.glue
    out: list[Contact] = []
    for thick in plan.thicks:
        fits = slot is None or (abs(slot.low - thick[0]) < EPS and abs(slot.high - thick[1]) < EPS)
        open_to = 0.0 if fits or slot is None else slot.depth
        for wide in plan.wides:
            cheek = {how.axis: how.depth(face, open_to, reach.length), how.wide: wide}
            out += [
                plane(how.thick, thick[0], cheek, True, glued=glue),
                plane(how.thick, thick[1], cheek, False, glued=glue),
            ]
            out += _ends(how, plan, reach, haunch, slot, wide, thick, face)
            gap = reach.deeper if not reach.stub or slot is None else slot.depth - reach.length
            if not reach.through:
                area = {how.wide: wide, how.thick: thick}
                why = "room for glue at the bottom" if gap > EPS else ""
                out.append(plane(how.axis, tip, area, how.high, glued=False, gap=max(gap, 0.0), why=why))
        if haunch > EPS and plan.beyond is not None:
            deep = {how.axis: how.depth(face, open_to, haunch), how.wide: plan.beyond}
            if haunch > open_to + EPS:
                out += [
                    plane(how.thick, thick[0], deep, True, glued=glue),
                    plane(how.thick, thick[1], deep, False, glued=glue),
                ]
            seat = {how.wide: plan.beyond, how.thick: thick}
            gap = max(slot.depth - haunch, 0.0) if slot is not None else 0.0
            out.append(plane(how.axis, how.inward(face, haunch), seat, how.high, glued=False, gap=gap))
    whole = [(common(w, extent(second, how.wide)), t) for w in plan.wides for t in plan.thicks]
    if plan.beyond is not None and haunch > EPS:
        whole += [(plan.beyond, t) for t in plan.thicks]
    return out + faces_left(first, second, how.axis, how.high, how.wide, how.thick, glued=False, taken=whole)


def _ends(
    how: Stand,
    plan: Plan,
    reach: Reach,
    haunch: float,
    slot: Slot | None,
    wide: Range,
    thick: Range,
    face: float,
) -> list[Contact]:
    """The edges of a tenon against the ends of its mortise."""
    if reach.stub:
        return []
    out: list[Contact] = []
    for at, low in ((wide[0], True), (wide[1], False)):
        corner = plan.beyond is not None and abs(at - plan.beyond[0 if plan.at_high else 1]) < EPS
        start = max(slot.depth if slot is not None else 0.0, haunch if corner else 0.0)
        if reach.length > start + EPS:
            area = {how.axis: how.depth(face, start, reach.length), how.thick: thick}
            out.append(plane(how.wide, at, area, low, glued=False))
    return out


KERF_SHORT = 3.2
"""Kerfs for wedges stop so far short of the shoulder [mm]: 1/8 in, common practice."""
FLARE = 1.6
"""A mortise for a wedged tenon is wider at each end on its far side by this [mm]: 1/16 in, common practice."""


def _summary(
    out: SetOut, want: JointSettings, plan: Plan, reach: Reach, haunch: float, thick: float, pegged: int
) -> str:
    n = len(plan.wides) * len(plan.thicks)
    words = ["stub tenon in the groove" if reach.stub else "mortise and tenon"]
    if n > 1:
        words.append(f"{n} tenons {'side by side' if len(plan.thicks) > 1 else 'one above the other'}")
    words += [f"{out.text(thick)} thick", f"{out.text(reach.length)} long"]
    if reach.through:
        words.append("through")
    if haunch > EPS:
        words.append("haunched")
    keys = want.keys
    if keys is not None and keys.wedges and reach.through:
        words.append(_wedged(out, keys.wedges))
    if pegged:
        drawn = ""
        if keys is not None and keys.drawbore is not None:
            drawn = f", drawbored {out.text(out.sizer.explained.get(f'{want.name}.drawbore', 0.0))}"
        words.append(f"{pegged} peg{'s' * (pegged > 1)}{drawn}")
    words.append("glued" if want.glue else "dry")
    return ", ".join(words)


def _wedged(out: SetOut, n: int) -> str:
    slope = round(out.tables.figure("wedge_slope").value)
    short, flare = (out.text(out.sizer.settled(v)) for v in (KERF_SHORT, FLARE))
    return (
        f"{n} wedge{'s' * (n > 1)} 1:{slope} in kerfs that stop {short} short of the shoulder, "
        f"mortise flared {flare} at each end of its far side"
    )
