"""Finger joint: the ends of two boards interlock with straight fingers."""

from __future__ import annotations

from boardwright.core.findings import Severity
from boardwright.formulas.finger_layout import LEAST, finger_layout
from boardwright.piece.cuts import Fingers
from boardwright.piece.drafts import Draft, Meeting
from boardwright.piece.joints.corner import CornerOfTwo, why_no_corner
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.fastening import not_here
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.records import Contact
from boardwright.piece.setout import SetOut

CUTTERS = {
    "in": (3.175, 4.7625, 6.35, 7.9375, 9.525, 12.7, 15.875, 19.05),
    "mm": (3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 18.0, 20.0),
}
"""Common widths of cutters [mm]: 1/8 to 3/4 in, or 3 to 20 mm (common practice)."""
SHARE = 0.6
"""Usual width of a finger for a thickness of 1: a half to the whole (common practice)."""


def why_not(first: Draft, second: Draft, meet: Meeting) -> str:
    """What stands against a finger joint; "" for nothing."""
    return why_no_corner(first, second, meet, "fingers")


def finger(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    """Cut the fingers of both boards; the first has the outer two."""
    not_here(out, first, second, want)
    corner = CornerOfTwo.of(first, second, meet)
    width = corner.run[1] - corner.run[0]
    pitch = _pitch(out, corner, want, width)
    try:
        layout = finger_layout(width, pitch, out.sizer.step)
    except ValueError:
        out.find(
            "joint.no-room",
            f"the corner of the {first.name} and the {second.name} is too narrow for fingers",
            want.path,
            found=f"{out.about(width)} wide, fingers of {out.about(pitch)}",
            expected=f"room for {LEAST}: {out.up(LEAST * pitch)}",
            source="common practice",
            remedy=f"use a cutter of {out.down(width / LEAST)} or less, or another joint",
            parts=(first.id, second.id),
        )
        return
    if layout.left > out.sizer.step + 1e-6:
        out.find(
            "joint.fingers-uneven",
            f"the outer fingers of the {first.name} are wider than the others",
            want.path,
            severity=Severity.NOTE,
            found=f"{out.about(layout.left)} of {out.about(width)} is left over",
            expected=f"a width of {out.about(layout.exact[0])} or {out.about(layout.exact[1])} for even fingers",
            source="common practice",
            remedy="none needed: the outer two share it; or make the parts as wide as that",
            parts=(first.id, second.id),
        )
    fingers = [(corner.run[0] + a, corner.run[0] + b) for a, b in layout.fingers]
    sockets = [(corner.run[0] + a, corner.run[0] + b) for a, b in layout.sockets]
    first.cuts.append(
        Fingers(
            first.side(corner.across, corner.end_high),
            first.index(corner.along),
            corner.thick,
            tuple(sockets),
            second.id,
        )
    )
    second.grow(corner.axis, not corner.high, corner.deep)
    second.cuts.append(
        Fingers(
            second.side(corner.axis, not corner.high),
            second.index(corner.along),
            corner.deep,
            tuple(fingers),
            first.id,
        )
    )
    out.joint(
        "finger",
        first,
        second,
        _contacts(corner, fingers, sockets, want.glue),
        [meet.away, unit(corner.across, corner.end_high)],
        f"{len(fingers)} and {len(sockets)} fingers {out.text(pitch)} wide{', glued' if want.glue else ', dry'}",
        glued=want.glue,
        place=out.design.place(want.path),
    )


def _pitch(out: SetOut, corner: CornerOfTwo, want: JointSettings, width: float) -> float:
    keys, path = want.keys, want.path
    cutters = CUTTERS[out.design.units]
    thin = min(corner.deep, corner.thick)
    fitting = [c for c in cutters if LEAST * c <= width + 1e-6] or [cutters[0]]
    usual = min(fitting, key=lambda c: (abs(c - SHARE * thin), c))
    return max(
        out.sizer.size(
            f"{want.name}.pitch",
            [(f"{path}.pitch", keys.pitch if keys else None), (f"{path}.cutter", keys.cutter if keys else None)],
            usual,
            rule="width of the common cutter nearest to 0.6 of the thinner board",
            total=f"0.6 × {out.text(thin)}",
            least=out.sizer.step,
        ),
        out.sizer.step,
    )


def _contacts(
    c: CornerOfTwo, fingers: list[tuple[float, float]], sockets: list[tuple[float, float]], glued: bool
) -> list[Contact]:
    deep = (min(c.face, c.into(c.deep)), max(c.face, c.into(c.deep)))
    out: list[Contact] = []
    for a, b in sockets:
        for at, second_high in ((a, True), (b, False)):
            out.append(plane(c.along, at, {c.axis: deep, c.across: (c.lo, c.hi)}, second_high, glued=glued))
        out.append(plane(c.across, c.inner, {c.axis: deep, c.along: (a, b)}, c.end_high, glued=glued))
    for a, b in fingers:
        out.append(plane(c.axis, c.face, {c.across: (c.lo, c.hi), c.along: (a, b)}, c.high, glued=glued))
    return out
