"""Breadboard end: a board across the end of a top keeps it flat, and lets it move.

A tongue along the whole end, and tenons in it; glued at the middle only, and pegged, the outer pegs in slots.
"""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.formulas.movement import change_of_size
from boardwright.piece.cuts import Mortise, Tenon
from boardwright.piece.drafts import Channel, Draft, Meeting
from boardwright.piece.joints.areas import EPS, Range, common, extent, faces_left
from boardwright.piece.joints.faces import plane
from boardwright.piece.joints.fastening import not_here
from boardwright.piece.joints.fastening.spots import spot
from boardwright.piece.joints.pegs import Hole, add_peg, peg_diameter
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.joints.tenon_sizes import WALL, Stand, thickness_of
from boardwright.piece.records import Contact
from boardwright.piece.setout import SetOut

FROM_EDGE = 25.4
"""From the edge of the top to the nearest tenon [mm]: 1 in, common practice."""
FROM_SHOULDER = 19.05
"""From the shoulder to the middle of a peg [mm]: 3/4 in, common practice; at most half of the tenon."""


def why_not(first: Draft, second: Draft, meet: Meeting) -> str:
    """What stands against a breadboard end; "" for nothing."""
    if second.length_axis != meet.axis:
        return f"the {second.name} does not meet the {first.name} with its end"
    if first.length_axis != second.width_axis or first.width_axis != meet.axis:
        return f"the {first.name} does not lie across the end of the {second.name}, in one plane with it"
    wide, thick = first.length_axis, first.thickness_axis
    if second.low[wide] < first.low[wide] - EPS or second.high[wide] > first.high[wide] + EPS:
        return f"the {second.name} is wider than the {first.name} is long"
    low, high = extent(second, thick)
    third = (high - low) / 3
    if low + third < first.low[thick] + WALL - EPS or high - third > first.high[thick] - WALL + EPS:
        return f"the {first.name} has too little wood beside the middle third of the {second.name}"
    return ""


GLUED_MOVES = 1.0
"""The glued middle is so short that the top moves no more there over the year [mm]: 1/32 in, common practice."""


@dataclass(frozen=True, slots=True)
class Sizes:
    """Sizes of a breadboard joint [mm].

    Attributes:
        thick: from where to where tongue and tenons lie in the thickness.
        tongue, tenon: how far they stand out of the end.
        deeper: how much deeper the groove and the mortises are.
        tenons: from where to where each lies across the top.
        room: what an outer mortise is longer on each side, and half of the slot of an outer peg.
        glued: over how much of the middle it is glued.
    """

    thick: Range
    tongue: float
    tenon: float
    deeper: float
    tenons: list[Range]
    room: list[float]
    glued: Range


def breadboard(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    """Join a board across the end of a top: the first part is that board, the second the top."""
    not_here(out, first, second, want)
    how = Stand(meet.axis, meet.high, first.length_axis, first.thickness_axis)
    sizes = _sizes(out, first, second, how, want)
    second.grow(how.axis, not how.high, sizes.tenon)
    _cut(first, second, how, sizes)
    contacts = _contacts(first, second, how, sizes, glue=want.glue)
    pegged = want.keys is None or want.keys.pinned is not False
    ids = _pegs(out, first, second, how, sizes, want) if pegged else ()
    moves = max(sizes.room)
    n, middle = len(sizes.tenons), sizes.tenons[len(sizes.tenons) // 2]
    words = [
        f"breadboard end, tongue {out.text(sizes.thick[1] - sizes.thick[0])} thick",
        f"{out.text(sizes.tongue)} long",
        f"{n} tenon{'s' * (n > 1)} {out.text(middle[1] - middle[0])} wide",
        f"{out.text(sizes.tenon)} long",
    ]
    if moves > EPS:
        words.append(f"outer mortises up to {out.text(2 * moves)} longer for movement")
    if ids:
        words.append(f"{len(ids)} pegs" + (", the outer ones in slots" if moves > EPS else ""))
    words.append(
        f"glued over {out.text(sizes.glued[1] - sizes.glued[0])} at the middle only" if want.glue else "dry"
    )
    out.joint(
        "breadboard",
        first,
        second,
        contacts,
        [meet.away],
        ", ".join(words),
        glued=want.glue,
        floats=(how.wide,),
        fasteners=ids,
        place=out.design.place(want.path),
    )


def _sizes(out: SetOut, first: Draft, second: Draft, how: Stand, want: JointSettings) -> Sizes:
    settled, figure, keys = out.sizer.settled, out.tables.figure, want.keys
    thick = thickness_of(out, second, how, want, 1, None)
    low, high = extent(second, how.thick)
    near = low + settled((high - low - thick) / 2)
    deeper = max(settled(figure("mortise_deeper").value), out.sizer.step)
    most = first.size(how.axis) - WALL - deeper
    tenon = out.sizer.size(
        f"{want.name}.length",
        [(f"{want.path}.length", keys.length if keys else None)],
        min(figure("breadboard_tenon_length").value, first.size(how.axis) * 2 / 3),
        rule="tenon of a breadboard end, at most two thirds of its width",
        source=figure("breadboard_tenon_length").reason,
        direction="down",
        least=2 * out.sizer.step,
    )
    tenon = out.at_most(
        tenon, most, "the mortise of the breadboard end", f"{want.path}.length", first.size(how.axis)
    )
    tongue = out.sizer.size(
        f"{want.name}.depth",
        [(f"{want.path}.depth", keys.depth if keys else None)],
        min(figure("breadboard_tongue_length").value, tenon / 2),
        rule="tongue of a breadboard end",
        source=figure("breadboard_tongue_length").reason,
        direction="down",
        least=out.sizer.step,
    )
    tongue = out.at_most(tongue, tenon, "the tongue", f"{want.path}.depth", tenon)
    tenons = _tenons(out, second, how, want)
    a, b = extent(second, how.wide)
    swing = abs(second.stock.across - first.stock.lengthwise) * (out.moisture.wettest - out.moisture.driest)
    most = GLUED_MOVES / swing if swing > 0 else b - a
    half = settled(min(figure("breadboard_glue_length").value, b - a, most) / 2, "down")
    middle = a + settled((b - a) / 2)
    glued = (max(a, middle - half), min(b, middle + half))
    room = [_room(out, second, how, t) if i != len(tenons) // 2 else 0.0 for i, t in enumerate(tenons)]
    return Sizes((near, near + thick), tongue, tenon, deeper, tenons, room, glued)


def _tenons(out: SetOut, second: Draft, how: Stand, want: JointSettings) -> list[Range]:
    """Tenons spread evenly, an odd number, one of them at the middle [mm]."""
    settled, figure = out.sizer.settled, out.tables.figure
    a, b = extent(second, how.wide)
    whole = b - a
    each, pitch = figure("breadboard_tenon_width").value, figure("breadboard_tenon_pitch").value
    n = want.keys.tenons if want.keys is not None and want.keys.tenons is not None else None
    if n is None:
        n = max(3, round((whole - each) / pitch) + 1)
        n += 1 - n % 2
    elif n % 2 == 0:
        out.find(
            "joint.cannot-be-there",
            "a breadboard end needs a tenon at its middle, where it is glued",
            f"{want.path}.tenons",
            found=str(n),
            expected="an odd number",
            source="common practice",
            remedy=f"use {n + 1}",
            parts=(second.id,),
        )
        n += 1
    each = out.sizer.size(
        f"{want.name}.width",
        [(f"{want.path}.width", want.keys.width if want.keys else None)],
        min(each, whole / (2 * n)),
        rule="tenon of a breadboard end; with as much between them in a narrow top",
        source=figure("breadboard_tenon_width").reason,
        direction="down",
        least=out.sizer.step,
    )
    each = out.at_most(each, whole / (n + 1), "the tenon", f"{want.path}.width", whole)
    edge = min(settled(FROM_EDGE), settled(whole / 12))
    starts = [a + edge + settled(i * (whole - 2 * edge - each) / max(n - 1, 1)) for i in range(n)]
    if n == 1:
        starts = [a + settled((whole - each) / 2)]
    return [(s, s + each) for s in starts]


def _room(out: SetOut, second: Draft, how: Stand, tenon: Range) -> float:
    """How far the top carries a tenon out or in over the year, on the step above it [mm]."""
    a, b = extent(second, how.wide)
    middle = (a + b) / 2
    far = max(abs(tenon[0] - middle), abs(tenon[1] - middle))
    m, rate = out.moisture, second.stock.across
    moves = max(
        abs(change_of_size(far, rate, m.now, m.wettest)),
        abs(change_of_size(far, rate, m.now, m.driest)),
    )
    return out.sizer.settled(moves, "up")


def _cut(first: Draft, second: Draft, how: Stand, sizes: Sizes) -> None:
    steps, at = [], second.low[how.wide]
    for a, b in sizes.tenons:
        steps += [(at, a, sizes.tongue), (a, b, sizes.tenon)]
        at = b
    steps.append((at, second.high[how.wide], sizes.tongue))
    second.cuts.append(
        Tenon(
            second.side(how.axis, not how.high),
            second.index(how.wide),
            sizes.tenon,
            sizes.thick[0] - second.low[how.thick],
            second.high[how.thick] - sizes.thick[1],
            tuple(s for s in steps if s[1] - s[0] > EPS),
            holds=first.id,
        )
    )
    first.cuts.append(
        Channel(how.axis, how.high, how.wide, *sizes.thick, sizes.tongue + sizes.deeper, holds=second.id)
    )
    side, along = first.side(how.axis, how.high), first.index(how.wide)
    width = sizes.thick[1] - sizes.thick[0]
    for (a, b), room in zip(sizes.tenons, sizes.room, strict=True):
        depth = sizes.tenon + sizes.deeper
        low, high = max(a - room, first.low[how.wide]), min(b + room, first.high[how.wide])
        first.cuts.append(Mortise(side, along, sizes.thick[0], width, depth, low, high, holds=second.id))


def _contacts(first: Draft, second: Draft, how: Stand, sizes: Sizes, *, glue: bool) -> list[Contact]:
    face = first.face(how.axis, how.high)
    middle = sizes.tenons[len(sizes.tenons) // 2]
    out: list[Contact] = []
    shallow, deep = how.depth(face, 0.0, sizes.tongue), how.depth(face, sizes.tongue, sizes.tenon)
    a, b = common(extent(first, how.wide), extent(second, how.wide))
    pieces = [(a, sizes.glued[0]), sizes.glued, (sizes.glued[1], b)]
    areas = [(shallow, p, p == sizes.glued) for p in pieces if p[1] - p[0] > EPS]
    areas += [(deep, t, False) for t in sizes.tenons if t != middle]
    at_middle = common(middle, sizes.glued)
    rest = [(middle[0], at_middle[0]), (at_middle[1], middle[1])]
    areas += [(deep, at_middle, True), *((deep, r, False) for r in rest if r[1] - r[0] > EPS)]
    for depth, wide, glued in areas:
        for at, low in ((sizes.thick[0], True), (sizes.thick[1], False)):
            out.append(plane(how.thick, at, {how.axis: depth, how.wide: wide}, low, glued=glue and glued))
    start = sizes.tongue + sizes.deeper
    if sizes.tenon > start + EPS:
        depth = how.depth(face, start, sizes.tenon)
        for at, low in ((middle[0], True), (middle[1], False)):
            out.append(plane(how.wide, at, {how.axis: depth, how.thick: sizes.thick}, low, glued=False))
    return out + faces_left(first, second, how.axis, how.high, how.wide, how.thick, glued=False)


def _pegs(
    out: SetOut, first: Draft, second: Draft, how: Stand, sizes: Sizes, want: JointSettings
) -> tuple[str, ...]:
    settled = out.sizer.settled
    diameter = peg_diameter(out, first.size(how.thick))
    deep = settled(min(FROM_SHOULDER, sizes.tenon / 2), "up")
    face, side = first.face(how.axis, how.high), first.high[how.thick]
    if deep + diameter > sizes.tenon + EPS or any(
        b - a < 2 * diameter + 2 * r for (a, b), r in zip(sizes.tenons, sizes.room, strict=True)
    ):
        out.find(
            "fastener.none-fits",
            f"no peg fits the tenons of the {second.name}",
            want.path,
            found=f"tenons {out.about(sizes.tenons[0][1] - sizes.tenons[0][0])} wide and {out.about(sizes.tenon)} long",
            expected=f"at least {out.up(2 * diameter + 2 * max(sizes.room))} wide and {out.up(2 * diameter)} long",
            source="common practice",
            remedy="use fewer and wider tenons, longer ones, or `pinned: false`",
            parts=(first.id, second.id),
        )
        return ()
    ids = []
    for (a, b), room in zip(sizes.tenons, sizes.room, strict=True):
        at = spot(how.axis, how.inward(face, deep), how.thick, side, how.wide, a + settled((b - a) / 2))
        hole = Hole(at, at, diameter, 2 * room)
        ids.append(add_peg(out, first, second, how.thick, hole, want.path, slot_axis=how.wide))
    return tuple(ids)
