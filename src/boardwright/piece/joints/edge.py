"""Edge joint: boards edge to edge in one plane; plain, tongued, with a spline, or with something set across."""

from __future__ import annotations

from dataclasses import replace

from boardwright.piece.drafts import Channel, Draft, Meeting, Step
from boardwright.piece.joints.faces import plane
from boardwright.piece.joints.fastening import fasten, held_words
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.joints.splines import add_spline, spline_of
from boardwright.piece.records import Contact
from boardwright.piece.setout import SetOut

FASTENED = ("biscuits", "dowels")
"""What `with` may name that is set across the joint."""


def why_not(first: Draft, second: Draft, meet: Meeting) -> str:
    """What stands against an edge joint; "" for nothing."""
    if meet.axis in (first.thickness_axis, second.thickness_axis):
        return f"the {second.name} and the {first.name} do not lie in one plane"
    if first.thickness_axis != second.thickness_axis:
        return f"the {second.name} stands across the {first.name}"
    for part in (first, second):
        if part.stock.kind == "wood" and part.width_axis != meet.axis:
            return f"the {part.name} is met at its end grain"
    return ""


def edge(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    """Join two edges."""
    how = (want.keys.with_ if want.keys is not None else None) or "none"
    if how == "tongue":
        _tongued(out, first, second, meet, replace(want, depth=_depth(out, first, second, meet, want)))
    elif how == "spline":
        _splined(out, first, second, meet, replace(want, depth=_depth(out, first, second, meet, want)))
    else:
        if how == "keys":
            _no_keys(out, first, second, want)
        _plain(out, first, second, meet, replace(want, fasten=how) if how in FASTENED else want)


def _no_keys(out: SetOut, first: Draft, second: Draft, want: JointSettings) -> None:
    out.find(
        "fastener.not-here",
        "keys do not hold an edge joint",
        f"{want.path}.with",
        found=f"the {first.name} and the {second.name} in one plane",
        expected="a mitre, whose corner they cross",
        source="common practice",
        remedy="use `with: spline`, or leave `with` out",
        parts=(first.id, second.id),
    )


def _depth(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> float:
    """How deep a groove in an edge is [mm]."""
    figure = out.tables.figure("tongue_length")
    depth = out.sizer.size(
        f"{want.name}.depth",
        [(f"{want.path}.depth", want.keys.depth if want.keys else None)],
        figure.value,
        rule="tongue or spline of an edge joint, how far it stands in an edge",
        source=figure.reason,
        direction="down",
        least=out.sizer.step,
    )
    narrow = min(first.size(meet.axis), second.size(meet.axis))
    return out.at_most(depth, narrow / 3, "the groove in the edge", f"{want.path}.depth", narrow)


def _run(out: SetOut, meet: Meeting, want: JointSettings) -> tuple[float, float]:
    """From where to where a groove runs: the whole joint, or short of both its ends [mm]."""
    low, high = meet.box.low[meet.along], meet.box.high[meet.along]
    stop = 0.0
    if want.keys is not None and want.keys.stopped is not None:
        stop = out.sizer.size(f"{want.name}.stopped", [(f"{want.path}.stopped", want.keys.stopped)], 0.0)
        stop = out.at_most(
            stop, (high - low) / 4, "the stop of the groove", f"{want.path}.stopped", high - low
        )
    return low + stop, high - stop


def _centred(out: SetOut, meet: Meeting, width: float, what: str, want: JointSettings) -> tuple[float, float]:
    """From where to where something so wide lies in the middle of the thickness [mm]."""
    lo, hi = meet.box.low[meet.across], meet.box.high[meet.across]
    width = (
        out.at_most(width, (hi - lo) / 2, what, f"{want.path}.width", hi - lo)
        if width > (hi - lo) / 2
        else width
    )
    near = lo + out.sizer.settled((hi - lo - width) / 2)
    return near, near + width


def _faces(
    first: Draft, meet: Meeting, want: JointSettings, gone: tuple[float, float] | None
) -> list[Contact]:
    """The edges that touch, beside what is taken out of their middle."""
    face = first.face(meet.axis, meet.high)
    run = (meet.box.low[meet.along], meet.box.high[meet.along])
    lo, hi = meet.box.low[meet.across], meet.box.high[meet.across]
    strips = ((lo, hi),) if gone is None else ((lo, gone[0]), (gone[1], hi))
    return [
        plane(meet.axis, face, {meet.across: strip, meet.along: run}, meet.high, glued=want.glue)
        for strip in strips
        if strip[1] - strip[0] > 1e-6
    ]


def _plain(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    run = (meet.box.low[meet.along], meet.box.high[meet.along])
    ids = fasten(out, first, second, meet, want, first.face(meet.axis, meet.high), run)
    held = held_words(out, ids)
    _keep(out, first, second, meet, want, _faces(first, meet, want, None), held, ids)


def _keep(
    out: SetOut,
    first: Draft,
    second: Draft,
    meet: Meeting,
    want: JointSettings,
    contacts: list[Contact],
    held: str,
    ids: tuple[str, ...] = (),
) -> None:
    out.joint(
        "edge",
        first,
        second,
        contacts,
        [meet.away],
        f"edge joint{', ' + held if held else ''}{', glued' if want.glue else ', dry'}",
        glued=want.glue,
        fasteners=ids,
        place=out.design.place(want.path),
    )


def _splined(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    thick = meet.box.size(meet.across)
    stock, width = spline_of(out, second, want, thick)
    lows = _centred(out, meet, width, "the groove for the spline", want)
    run = _run(out, meet, want)
    add_spline(out, first, second, meet, want, stock, lows, run)
    held = f"spline {out.text(lows[1] - lows[0])} thick, {out.text(want.depth)} into each"
    _keep(out, first, second, meet, want, _faces(first, meet, want, lows), held)


def _tongued(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    """A groove in the first edge, and a tongue on the second."""
    thick = meet.box.size(meet.across)
    share = out.tables.figure("tongue_thickness_share")
    width = out.sizer.size(
        f"{want.name}.width",
        [(f"{want.path}.width", want.keys.width if want.keys else None)],
        thick * share.value,
        rule=f"tongue {share.value:.3g} of the thickness",
        source=share.reason,
        total=f"{share.value:.3g} × {out.text(thick)}",
        least=out.sizer.step,
    )
    a, b = _centred(out, meet, width, "the tongue", want)
    second.grow(meet.axis, not meet.high, want.depth)
    for high, amount in ((False, a - second.low[meet.across]), (True, second.high[meet.across] - b)):
        second.shape_end(
            Step(
                meet.across,
                high,
                meet.axis,
                not meet.high,
                want.depth,
                amount,
                holds=first.id,
                purpose="tongue",
            )
        )
    first.cuts.append(Channel(meet.axis, meet.high, meet.along, a, b, want.depth, holds=second.id))
    face = first.face(meet.axis, meet.high)
    seat = face - want.depth if meet.high else face + want.depth
    deep = (min(face, seat), max(face, seat))
    run = (meet.box.low[meet.along], meet.box.high[meet.along])
    contacts = [
        plane(meet.axis, seat, {meet.across: (a, b), meet.along: run}, meet.high, glued=want.glue),
        plane(meet.across, a, {meet.axis: deep, meet.along: run}, True, glued=want.glue),
        plane(meet.across, b, {meet.axis: deep, meet.along: run}, False, glued=want.glue),
        *_faces(first, meet, want, (a, b)),
    ]
    _keep(
        out,
        first,
        second,
        meet,
        want,
        contacts,
        f"tongue {out.text(b - a)} thick, {out.text(want.depth)} long",
    )
