"""Half lap: half of the thickness of each part is cut away where they lie over each other.

At an end, along the way, or where they cross; two thin parts on edge cross in slots half their width deep.
"""

from __future__ import annotations

from boardwright.piece.drafts import Channel, Crossing, Draft, Meeting, Step
from boardwright.piece.joints.areas import EPS, Range, common, extent
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.fastening import not_here
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.records import Contact
from boardwright.piece.setout import SetOut

LEAST = 1.5
"""Thinnest wood left under a lap [mm]: 1/16 in, common practice."""


def why_not(first: Draft, second: Draft, meet: Meeting) -> str:
    """What stands against a half lap; "" for nothing."""
    if second.length_axis != meet.axis:
        return f"the {second.name} does not meet the {first.name} with its end"
    if first.length_axis == meet.axis:
        return f"the {second.name} meets the end of the {first.name}, and they run on in one line"
    run, over = first.length_axis, 3 - meet.axis - first.length_axis
    if second.low[run] < first.low[run] - EPS or second.high[run] > first.high[run] + EPS:
        return f"the {second.name} reaches beyond the end of the {first.name}"
    low, high = common(extent(first, over), extent(second, over))
    if high - low < 2 * LEAST - EPS:
        return f"the {second.name} and the {first.name} do not lie over each other"
    for part in (first, second):
        if part.thickness_axis != over:
            return f"the {part.name} stands on edge: half of its thickness cannot be lapped"
    return ""


def half_lap(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    """Lap the end of the second part over the first."""
    second.grow(meet.axis, not meet.high, first.size(meet.axis))
    _lap(out, first, second, want)


def cross(out: SetOut, first: Draft, second: Draft, crossing: Crossing, want: JointSettings) -> None:
    """Lap two parts that are drawn through each other."""
    for part, axis in ((first, second.length_axis), (second, first.length_axis)):
        other = second if part is first else first
        if crossing.box.size(axis) < part.size(axis) - EPS:
            out.find(
                "joint.cannot-be-there",
                f"there can be no half lap between the {first.name} and the {second.name}",
                want.path,
                found=f"the {other.name} ends inside the {part.name}",
                expected="two parts that cross, or the end of one against a side of the other",
                source="common practice",
                remedy=f"make the {other.name} {out.up(part.size(axis) - crossing.box.size(axis))} longer, "
                "or let it end at the face",
                parts=(first.id, second.id),
            )
            return
    _lap(out, first, second, want)


def _lap(out: SetOut, first: Draft, second: Draft, want: JointSettings) -> None:
    """Cut both where they share room: the first from the side nearer to the second, its high one if neither is."""
    not_here(out, first, second, want)
    over = 3 - first.length_axis - second.length_axis
    shared = common(extent(first, over), extent(second, over))
    up = first.high[over] - shared[1] <= shared[0] - first.low[over] + EPS
    bed = _bed(out, first, second, want, over, up)
    if bed is None:
        return
    depths = abs(first.face(over, up) - bed), abs(second.face(over, not up) - bed)
    contacts = [_seat(first, second, over, bed, up, glued=want.glue)]
    ends = 0
    for part, other, high, depth in ((first, second, up, depths[0]), (second, first, not up, depths[1])):
        walls = _cut(part, other, over, high, depth)
        ends += len(walls) == 1
        deep = (bed, shared[1]) if high else (shared[0], bed)
        contacts += [_wall(first, second, part, {over: deep}, low_side) for low_side in walls]
    where = {0: "crossing", 1: "tee", 2: "corner"}[ends]
    slots = over not in (first.thickness_axis, second.thickness_axis)
    kind = "half lap on edge, slots" if slots else f"half lap, {where},"
    out.joint(
        "half_lap",
        first,
        second,
        contacts,
        [unit(over, up)],
        f"{kind} {out.text(depths[0])} deep and {out.text(depths[1])} deep{', glued' if want.glue else ', dry'}",
        glued=want.glue,
        place=out.design.place(want.path),
    )


def _bed(out: SetOut, first: Draft, second: Draft, want: JointSettings, over: int, up: bool) -> float | None:
    """Where the two lie on each other, on the axis across both [mm]; None, with a finding, when there is no room."""
    low, high = common(extent(first, over), extent(second, over))
    share = out.tables.figure("half_lap_share")
    face = first.face(over, up)
    beyond = abs(face - (high if up else low))
    depth = out.sizer.size(
        f"{want.name}.depth",
        [(f"{want.path}.depth", want.keys.depth if want.keys else None)],
        beyond + (high - low) * share.value,
        rule="each part gives half of what they share",
        source=share.reason,
        total=f"half of {out.text(high - low)}",
        least=out.sizer.step,
    )
    least, most = beyond + LEAST, beyond + (high - low) - LEAST
    if least - EPS <= depth <= most + EPS:
        return face - depth if up else face + depth
    out.find(
        "joint.too-deep",
        f"the lap leaves too little of the {first.name} or of the {second.name}",
        f"{want.path}.depth",
        found=f"{out.about(depth)} into the {first.name}",
        expected=f"{out.up(least)} to {out.down(most)}",
        source="common practice",
        remedy=f"make it {out.down((least + most) / 2)}, half of each",
        parts=(first.id, second.id),
    )
    return None


def _seat(first: Draft, second: Draft, over: int, bed: float, up: bool, *, glued: bool) -> Contact:
    area = {i: common(extent(first, i), extent(second, i)) for i in range(3) if i != over}
    return plane(over, bed, area, up, glued=glued)


def _cut(part: Draft, other: Draft, over: int, high: bool, depth: float) -> list[bool]:
    """Cut a part for another that passes over it; gives the walls left: True for the one at the low side.

    A step at an end, else a channel across.
    """
    run = part.length_axis
    a, b = common(extent(part, run), extent(other, run))
    walls = [
        low for low, left in ((True, a > part.low[run] + EPS), (False, b < part.high[run] - EPS)) if left
    ]
    if len(walls) == 2:
        part.cuts.append(Channel(over, high, other.length_axis, a, b, depth, holds=other.id))
    else:
        at_high = walls == [True]
        part.cuts.append(Step(over, high, run, at_high, b - a, depth, holds=other.id))
    return walls


def _wall(first: Draft, second: Draft, part: Draft, deep: dict[int, Range], low_side: bool) -> Contact:
    """A wall of the lap of a part, which the other part touches with its side."""
    other = second if part is first else first
    run = part.length_axis
    at = common(extent(part, run), extent(other, run))[0 if low_side else 1]
    across = common(extent(first, other.length_axis), extent(second, other.length_axis))
    second_is_high = low_side if part is first else not low_side
    return plane(run, at, {**deep, other.length_axis: across}, second_is_high, glued=False)
