"""Finger joint: the ends of two boards interlock with straight fingers."""

from __future__ import annotations

from boardwright.core.findings import Severity
from boardwright.formulas.dovetail_layout import hidden_in
from boardwright.formulas.finger_layout import LEAST, FingerLayout, finger_layout
from boardwright.piece.cuts import Fingers
from boardwright.piece.drafts import Draft, Meeting
from boardwright.piece.joints import cutters
from boardwright.piece.joints.corner import CornerOfTwo, Spans, cut_end, grooves_that_show, why_no_corner
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.fastening import not_here
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.records import Contact
from boardwright.piece.setout import SetOut


def why_not(first: Draft, second: Draft, meet: Meeting) -> str:
    """What stands against a finger joint; "" for nothing."""
    return why_no_corner(first, second, meet, "fingers")


def finger(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    """Cut the fingers of both boards; one of them has the outer two."""
    not_here(out, first, second, want)
    corner = CornerOfTwo.of(first, second, meet)
    pitch = _pitch(out, corner, want)
    try:
        layout = finger_layout(corner.width, pitch, out.sizer.step)
    except ValueError:
        _too_narrow(out, corner, want, pitch)
        return
    starts = _starts(out, corner, want, layout)
    firsts, seconds = (layout.outer, layout.inner) if starts == "first" else (layout.inner, layout.outer)
    if layout.left > out.sizer.step + 1e-6:
        _uneven(out, corner, want, layout, first if starts == "first" else second)
    grooves_that_show(out, corner, want, seconds, firsts)
    sockets = corner.sockets(first, seconds), corner.sockets(second, firsts)
    end = first.side(corner.across, corner.end_high), first.index(corner.along)
    other = second.side(corner.axis, not corner.high), second.index(corner.along)
    cut_end(out, corner, first, Fingers(*end, corner.thick, sockets[0], second.id))
    second.grow(corner.axis, not corner.high, corner.deep)
    cut_end(out, corner, second, Fingers(*other, corner.deep, sockets[1], first.id))
    out.joint(
        "finger",
        first,
        second,
        _contacts(corner, firsts, seconds, want.glue),
        [meet.away, unit(corner.across, corner.end_high)],
        f"finger joint, {len(firsts) + len(seconds)} fingers {out.text(pitch)} wide"
        f"{', glued' if want.glue else ', dry'}",
        glued=want.glue,
        place=out.design.place(want.path),
    )


def _pitch(out: SetOut, corner: CornerOfTwo, want: JointSettings) -> float:
    """Width of a finger [mm]: given, or a common cutter for the thickness, one that closes evenly before others."""
    keys, path, sizer = want.keys, want.path, out.sizer
    thin = min(corner.deep, corner.thick)
    figure = out.tables.figure("finger_width_share")
    low, high = (figure.low or figure.value) * thin, (figure.high or figure.value) * thin
    usual = cutters.nearest(out, figure.value * thin, corner.width / LEAST)
    even = [
        c
        for c in cutters.sizes(out)
        if low - 1e-6 <= c <= high + 1e-6
        and abs(corner.width / c % 2 - 1) < 1e-6
        and c * LEAST <= corner.width + 1e-6
    ]
    return sizer.size(
        f"{want.name}.pitch",
        [(f"{path}.pitch", keys.pitch if keys else None), (f"{path}.cutter", keys.cutter if keys else None)],
        even[0] if even else usual,
        rule="the narrowest common cutter, from half to all of the thinner board, of which an odd number fill the width"
        if even
        else "the common cutter nearest to half of the thinner board",
        source=figure.reason,
        total=f"{out.text(corner.width)} / {corner.width / even[0]:.0f}" if even else f"{out.text(thin)} / 2",
        least=sizer.step,
    )


def _starts(out: SetOut, corner: CornerOfTwo, want: JointSettings, layout: FingerLayout) -> str:
    """Which board has the outer fingers: the first, unless the other way hides a groove that would show."""
    keys, path = want.keys, f"{want.path}.starts"
    given = keys.starts if keys else None
    if not all(corner.flush):
        if given == "second":
            out.find(
                "joint.cannot-be-there",
                f"the {corner.second.name} cannot have the outer fingers",
                path,
                found=f"it is not flush with the {corner.first.name} at both edges",
                expected="two boards of one width",
                source="common practice",
                remedy="`starts: first`, or make both equally wide",
                parts=(corner.first.id, corner.second.id),
            )
        return out.sizer.choose(
            f"{want.name}.starts", None, "first", "the first board, since the edges are not flush", path
        )
    shows = {}
    for word, firsts, seconds in (
        ("first", layout.outer, layout.inner),
        ("second", layout.inner, layout.outer),
    ):
        shows[word] = sum(
            not hidden_in(covers, groove, corner.width)
            for part, covers in ((corner.first, seconds), (corner.second, firsts))
            for groove in corner.grooves(part, want)
        )
    usual = "second" if shows["second"] < shows["first"] else "first"
    rule = (
        "the first board, unless a groove would show"
        if usual == "first"
        else "so that a groove does not show"
    )
    return out.sizer.choose(f"{want.name}.starts", given, usual, rule, path)


def _too_narrow(out: SetOut, corner: CornerOfTwo, want: JointSettings, pitch: float) -> None:
    out.find(
        "joint.no-room",
        f"the corner of the {corner.first.name} and the {corner.second.name} is too narrow for fingers",
        want.path,
        found=f"{out.about(corner.width)} wide, fingers of {out.about(pitch)}",
        expected=f"room for {LEAST}: {out.up(LEAST * pitch)}",
        source="common practice",
        remedy=f"use a cutter of {out.down(corner.width / LEAST)} or less, or another joint",
        parts=(corner.first.id, corner.second.id),
    )


def _uneven(
    out: SetOut, corner: CornerOfTwo, want: JointSettings, layout: FingerLayout, outer: Draft
) -> None:
    below, above = layout.exact
    out.find(
        "joint.fingers-uneven",
        f"the outer fingers of the {outer.name} are wider than the others",
        want.path,
        severity=Severity.NOTE,
        found=f"{out.about(layout.left)} of {out.about(corner.width)} is left over",
        expected=f"a width of {out.about(below)} or {out.about(above)} for fingers that are all alike",
        source="common practice",
        remedy="none needed: the outer two share it; or make the parts as wide as that",
        parts=(corner.first.id, corner.second.id),
    )


def _contacts(c: CornerOfTwo, firsts: Spans, seconds: Spans, glued: bool) -> list[Contact]:
    deep = (min(c.face, c.into(c.deep)), max(c.face, c.into(c.deep)))
    out: list[Contact] = []
    for a, b in seconds:
        low, high = c.run[0] + a, c.run[0] + b
        for at, second_high in ((low, True), (high, False)):
            if c.run[0] + 1e-6 < at < c.run[1] - 1e-6:
                ranges = {c.axis: deep, c.across: (c.lo, c.hi)}
                out.append(plane(c.along, at, ranges, second_high, glued=glued))
        out.append(plane(c.across, c.inner, {c.axis: deep, c.along: (low, high)}, c.end_high, glued=glued))
    for a, b in firsts:
        span = (c.run[0] + a, c.run[0] + b)
        out.append(plane(c.axis, c.face, {c.across: (c.lo, c.hi), c.along: span}, c.high, glued=glued))
    return out
