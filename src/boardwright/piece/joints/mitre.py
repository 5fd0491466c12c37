"""Mitre: both parts are cut along the line from the inner to the outer corner.

Flat, as in a frame, or on edge, as in a case or box; plain, with dowels, biscuits or a spline in both faces, or with
keys across the corner.
"""

from __future__ import annotations

from math import atan2, degrees

from boardwright.piece.drafts import Crossing, Draft, Meeting
from boardwright.piece.joints.areas import EPS, Rect, common, extent, left_over
from boardwright.piece.joints.faces import unit
from boardwright.piece.joints.mitre_biscuits import biscuited
from boardwright.piece.joints.mitre_corner import MitreCorner
from boardwright.piece.joints.mitre_dowels import dowelled
from boardwright.piece.joints.mitre_keys import keyed
from boardwright.piece.joints.mitre_spline import splined
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.joints.sloping import cut_to, outline
from boardwright.piece.records import Contact
from boardwright.piece.setout import SetOut

COULD = ("none", "spline", "keys", "dowels", "biscuits")


def _axes(first: Draft, second: Draft, axis: int) -> tuple[int, int]:
    """The axis that the first part runs along to the corner, and the one square to both."""
    third = 3 - axis - first.length_axis if first.length_axis != axis else first.width_axis
    if first.length_axis == second.length_axis:
        third = first.length_axis
    return 3 - axis - third, third


def why_not(first: Draft, second: Draft, meet: Meeting) -> str:
    """What stands against a mitre; "" for nothing."""
    if first.length_axis == meet.axis or (
        second.length_axis != meet.axis and first.length_axis != second.length_axis
    ):
        return f"the {second.name} and the {first.name} do not meet in a corner of their ends or edges"
    run, square = _axes(first, second, meet.axis)
    if first.length_axis == second.length_axis and meet.axis not in (first.thickness_axis, first.width_axis):
        return f"the {second.name} and the {first.name} run on in one line"
    if first.index(square) != second.index(square):
        return (
            f"one of the two lies flat, and the other stands on edge: the {second.name} and the {first.name}"
        )
    if _outer(first, second, run) is None:
        return f"the {second.name} stands in from the end of the {first.name}: it is no corner"
    return ""


def _outer(first: Draft, second: Draft, run: int) -> bool | None:
    """At which end of the first part the corner lies: True for the high one; None for neither.

    The second part lies flush with that end, or beyond it by at most its own size.
    """
    for high in (False, True):
        outer, inner = second.face(run, high), second.face(run, not high)
        end = first.face(run, high)
        beyond, inside = (outer - end, end - inner) if high else (end - outer, inner - end)
        if beyond >= -EPS and inside >= -EPS:
            return high
    return None


def mitre(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    """Let both parts grow to the outer corner, and mitre them."""
    run, square = _axes(first, second, meet.axis)
    high = bool(_outer(first, second, run))
    beyond = abs(second.face(run, high) - first.face(run, high))
    second.grow(meet.axis, not meet.high, first.size(meet.axis))
    first.grow(run, high, beyond)
    _join(out, first, second, _corner(first, second, meet.axis, not meet.high, run, high, square), want)


def cross(out: SetOut, first: Draft, second: Draft, crossing: Crossing, want: JointSettings) -> None:
    """Mitre two parts that are drawn at their full lengths, over each other at the corner."""
    axis, run = second.length_axis, first.length_axis
    ends = [
        next((h for h in (False, True) if abs(first.face(i, h) - second.face(i, h)) < EPS), None)
        for i in (axis, run)
    ]
    if ends[0] is None or ends[1] is None:
        out.find(
            "joint.cannot-be-there",
            f"there can be no mitre between the {first.name} and the {second.name}",
            want.path,
            found="two parts that cross, with wood beyond the corner",
            expected="both end at one outer corner",
            source="common practice",
            remedy="let each end at the outer face of the other, or use `kind: half_lap`",
            parts=(first.id, second.id),
        )
        return
    square = 3 - axis - run
    _join(out, first, second, _corner(first, second, axis, ends[0], run, ends[1], square), want)


def _corner(
    first: Draft, second: Draft, axis: int, axis_high: bool, run: int, run_high: bool, square: int
) -> MitreCorner:
    return MitreCorner(
        axis,
        run,
        square,
        axis_high,
        run_high,
        (first.face(axis, not axis_high), second.face(run, not run_high)),
        (first.face(axis, axis_high), second.face(run, run_high)),
        common(extent(first, square), extent(second, square)),
    )


def _join(out: SetOut, first: Draft, second: Draft, corner: MitreCorner, want: JointSettings) -> None:
    plane = corner.plane
    _whole_blank(out, first, corner.run, corner.run_high)
    _whole_blank(out, second, corner.axis, corner.axis_high)
    cut_to(first, corner.run, corner.run_high, plane, second.id)
    cut_to(second, corner.axis, corner.axis_high, plane, first.id)
    ways = [unit(corner.axis, not corner.axis_high), unit(corner.run, corner.run_high)]
    how = _with(out, first, second, want)
    words = ""
    ids: tuple[str, ...] = ()
    slots: list[Rect] = []
    flat = corner.square == first.thickness_axis
    if how == "spline":
        words, slots = splined(out, first, second, corner, want, flat=flat)
        ways = [plane.normal]
    elif how == "keys":
        words, slots = keyed(out, first, second, corner, want, flat=flat)
    elif how == "dowels":
        words, ids = dowelled(out, first, second, corner, want, flat=flat)
        ways = [plane.normal]
    elif how == "biscuits":
        words, ids, slots = biscuited(out, first, second, corner, want, flat=flat)
        ways = [plane.normal]
    whole = ((0.0, corner.length), corner.span)
    contacts = [_face(corner, rect, glued=want.glue) for rect in left_over(whole, slots)]
    one, two = corner.sides
    tilt = degrees(atan2(two, one))
    angle = (
        ""
        if abs(tilt - 45) < 1e-6
        else f", {tilt:.4g}° off square on the {first.name} and {90 - tilt:.4g}° on the {second.name}"
    )
    out.joint(
        "mitre",
        first,
        second,
        contacts,
        ways,
        f"{'flat mitre' if flat else 'mitre on edge'}{angle}{words}{', glued' if want.glue else ', dry'}",
        glued=want.glue,
        fasteners=ids,
        place=out.design.place(want.path),
    )


def _whole_blank(out: SetOut, part: Draft, axis: int, high: bool) -> None:
    """Let a blank end on the step beyond its outer corner: the mitre takes off what is too long."""
    size = part.size(axis)
    more = out.sizer.settled(size, "up") - size
    if more > EPS:
        part.grow(axis, high, part.grown.get((axis, high), 0.0) + more)


def _face(corner: MitreCorner, rect: Rect, *, glued: bool) -> Contact:
    """A piece of the mitred face: from, to along it from the inner corner, and on the axis square to the corner."""
    (t0, t1), (low, high) = rect
    p, q = corner.along(t0), corner.along(t1)
    face = [corner.point(p, low), corner.point(p, high), corner.point(q, high), corner.point(q, low)]
    return outline(face, corner.plane.normal, glued=glued)


def _with(out: SetOut, first: Draft, second: Draft, want: JointSettings) -> str:
    """What holds the mitre beside the glue: what `with` or `fasten` asks for, if it can be there."""
    asked = want.keys.with_ if want.keys is not None else None
    how, key = (asked, "with") if asked is not None else (want.fasten, "fasten")
    if how in COULD:
        return how
    out.find(
        "fastener.not-here",
        f"{how.replace('_', ' ')} {'does' if how == 'tongue' else 'do'} not hold a mitre",
        f"{want.path}.{key}",
        found=f"a sloping face between the {first.name} and the {second.name}",
        expected="one of " + ", ".join(f"`{c}`" for c in COULD),
        source="common practice",
        remedy="use `with: spline`, `with: keys` or `with: dowels`",
        parts=(first.id, second.id),
    )
    return "none"
