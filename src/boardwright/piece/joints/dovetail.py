"""Dovetails, through and half-blind: tails on one board, pins on the other, laid out to close."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.poses import Vec
from boardwright.formulas.dovetail_layout import DovetailLayout, dovetail_layout, least_width
from boardwright.piece.cuts import Pins, Tails
from boardwright.piece.drafts import Draft, Meeting
from boardwright.piece.joints.corner import CornerOfTwo, cut_end, grooves_that_show, why_no_corner
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.fastening import not_here
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.records import Contact
from boardwright.piece.setout import SetOut

PIN_SHARE = 0.35
"""Usual width of a pin at its narrow side, for a thickness of 1 of the tail board (common practice)."""
LAP_SHARE = 0.25
"""Lap of half-blind tails for a thickness of 1: 3/16 in on a 3/4 in front (`dovetail_lap`)."""
LEAST_LAP = {"in": 3.175, "mm": 3.0}
"""Least lap [mm]: 1/8 in or 3 mm (common practice)."""


@dataclass(frozen=True, slots=True)
class Dovetails:
    """A corner with its tails laid out.

    Attributes:
        corner: where the boards meet.
        layout: from the low end of the corner.
        depth: length of the tails [mm].
        slope: run out for each mm of depth.
        on_second: the second board has the tails.
        lap: wood in front of the tails [mm]; 0 for through dovetails.
    """

    corner: CornerOfTwo
    layout: DovetailLayout
    depth: float
    slope: float
    on_second: bool
    lap: float


def why_not(first: Draft, second: Draft, meet: Meeting) -> str:
    """What stands against dovetails; "" for nothing."""
    return why_no_corner(first, second, meet, "dovetails")


def dovetail(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    """Through dovetails."""
    corner = CornerOfTwo.of(first, second, meet)
    usual, rule = _tails_on(first, second)
    keys = want.keys
    given = keys.tails_on if keys else None
    on = out.sizer.choose(f"{want.name}.tails_on", given, usual, rule, f"{want.path}.tails_on")
    _make(out, corner, meet, want, on == "second", 0.0)


def _tails_on(first: Draft, second: Draft) -> tuple[str, str]:
    """Which board has the tails, and why: they hold their board against a pull along its own length."""
    tails = max(first, second, key=lambda d: d.length_axis)
    word = "first" if tails is first and first.length_axis != second.length_axis else "second"
    if tails.length_axis == 2:
        return word, "the upright board has the tails: what hangs on the other cannot draw it off downwards"
    if tails.length_axis == 1:
        return word, "the board from front to back has the tails: a pull to the front cannot open the joint"
    return word, "the part that goes in has the tails"


def half_blind(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    """Half-blind dovetails: the first part has the pins and hides the ends of the tails behind its lap."""
    corner, keys = CornerOfTwo.of(first, second, meet), want.keys
    if keys is not None and keys.tails_on == "first":
        out.find(
            "joint.cannot-be-there",
            f"the {first.name} hides the ends of the tails, and cannot have them itself",
            f"{want.path}.tails_on",
            found="tails_on: first",
            expected="tails on the second part",
            source="common practice",
            remedy="leave `tails_on` out, or use `kind: dovetail`",
            parts=(first.id, second.id),
        )
    lap = out.sizer.size(
        f"{want.name}.lap",
        [(f"{want.path}.lap", keys.lap if keys else None)],
        max(LAP_SHARE * corner.deep, LEAST_LAP[out.design.units]),
        rule="a quarter of the thickness, at least 1/8 in (3 mm)",
        source=out.tables.figure("dovetail_lap").reason,
        total=f"{out.text(corner.deep)} / 4",
        direction="up",
        least=out.sizer.step,
    )
    lap = out.at_most(lap, corner.deep - out.sizer.step, "the lap", f"{want.path}.lap", corner.deep)
    _make(out, corner, meet, want, True, lap)


def _make(
    out: SetOut, corner: CornerOfTwo, meet: Meeting, want: JointSettings, on_second: bool, lap: float
) -> None:
    """Lay out, cut both boards, keep the joint."""
    first, second = corner.first, corner.second
    not_here(out, first, second, want)
    d = _laid_out(out, corner, want, on_second, lap)
    if d is None:
        return
    pins, roots = d.layout.pins, d.layout.roots
    if on_second:
        grooves_that_show(out, corner, want, roots, ((0.0, corner.width),) if lap else pins)
    else:
        grooves_that_show(out, corner, want, pins, roots)
    end = first.side(corner.across, corner.end_high), first.index(corner.along)
    other = second.side(corner.axis, not corner.high), second.index(corner.along)
    if on_second:
        second.grow(corner.axis, not corner.high, d.depth)
        cut_end(out, corner, second, Tails(*other, d.depth, corner.sockets(second, pins), d.slope, first.id))
        side, sockets = first.side(corner.axis, corner.high), corner.sockets(first, roots)
        cut_end(out, corner, first, Pins(*end, corner.thick, side, d.depth, sockets, d.slope, second.id))
    else:
        cut_end(out, corner, first, Tails(*end, d.depth, corner.sockets(first, pins), d.slope, second.id))
        second.grow(corner.axis, not corner.high, corner.deep)
        side, sockets = second.side(corner.across, not corner.end_high), corner.sockets(second, roots)
        cut_end(out, corner, second, Pins(*other, corner.deep, side, d.depth, sockets, d.slope, first.id))
    count = len(d.layout.tails)
    out.joint(
        "half_blind" if lap else "dovetail",
        first,
        second,
        _on_second(d, want.glue) if on_second else _on_first(d, want.glue),
        [unit(corner.across, corner.end_high) if on_second else meet.away],
        f"{'half-blind' if lap else 'through'} dovetails, {count} tail{'s' if count > 1 else ''}"
        f" on the {(second if on_second else first).name}, 1:{1 / d.slope:.3g}"
        f"{f', lap {out.text(lap)}' if lap else ''}{', glued' if want.glue else ', dry'}",
        glued=want.glue,
        place=out.design.place(want.path),
    )


def _slope(out: SetOut, board: Draft, want: JointSettings) -> float:
    hard = board.stock.hardwood or board.stock.kind == "sheet"
    figure = out.tables.figure(f"dovetail_slope_{'hardwood' if hard else 'softwood'}")
    word = out.sizer.choose(
        f"{want.name}.slope",
        want.keys.slope if want.keys else None,
        f"1:{figure.value:g}",
        "the usual slope in hardwood and sheets" if hard else "the usual slope in softwood",
        f"{want.path}.slope",
        figure.reason,
    )
    over, run = word.split(":")
    return float(over) / float(run)


def _laid_out(
    out: SetOut, corner: CornerOfTwo, want: JointSettings, on_second: bool, lap: float
) -> Dovetails | None:
    """Settle slope, tool, pins and half pins, and lay the tails out; None, with a finding, where none fits."""
    keys, path, name, sizer = want.keys, want.path, want.name, out.sizer
    tails, pins = (corner.second, corner.first) if on_second else (corner.first, corner.second)
    board = tails.size(tails.thickness_axis)
    depth, slope = pins.size(pins.thickness_axis) - lap, _slope(out, tails, want)
    least = out.tables.figure("dovetail_pin_hand")
    tool = sizer.size(
        f"{name}.cutter",
        [(f"{path}.cutter", keys.cutter if keys else None)],
        least.value,
        rule="the narrowest tool: a narrow chisel",
        source=least.reason,
        direction="up",
        least=sizer.step,
    )
    pin = sizer.size(
        f"{name}.pin",
        [(f"{path}.pin", keys.pin if keys else None)],
        max(PIN_SHARE * board, tool),
        rule=f"{PIN_SHARE:g} of the tail board's thickness at the narrow side, no narrower than the tool",
        total=f"{PIN_SHARE:g} × {out.text(board)}",
        least=tool,
    )
    figure = out.tables.figure("dovetail_half_pin")
    half = sizer.size(
        f"{name}.half_pin",
        [(f"{path}.half_pin", keys.half_pin if keys else None)],
        max(min(figure.value, board / 2), tool),
        rule="half of the tail board's thickness, at most 1/4 in (6 mm), no narrower than the tool",
        source=figure.reason,
        least=tool,
    )
    ends = (True, True) if on_second else corner.flush
    count = keys.tails if keys else None
    try:
        layout = dovetail_layout(
            corner.width,
            depth,
            slope,
            pin,
            half,
            tool,
            sizer.step,
            tails=count,
            graduated=bool(keys and keys.spacing == "graduated"),
            ends=ends,
            hide=corner.grooves(pins, want),
            least_half=half if keys and keys.half_pin else tool,
        )
    except ValueError:
        few = count or (1 if any(ends) else 2)
        _too_narrow(out, corner, want, least_width(depth, slope, pin, half, tool, few, ends), few)
        return None
    a, b = layout.tails[0]
    sizer.explain(
        f"{name}.tail",
        b - a,
        f"({out.text(corner.width)} less {len(layout.pins)} pins) / {len(layout.tails)}",
        "what the pins leave, shared out among the tails; the half pins take what is left over",
        "common practice",
    )
    return Dovetails(corner, layout, depth, slope, on_second, lap)


def _too_narrow(out: SetOut, corner: CornerOfTwo, want: JointSettings, least: float, tails: int) -> None:
    out.find(
        "joint.no-room",
        f"the corner of the {corner.first.name} and the {corner.second.name} is too narrow for its dovetails",
        want.path,
        found=f"{out.about(corner.width)} for {tails} tail{'s' if tails > 1 else ''}",
        expected=f"at least {out.up(least + out.sizer.step)}",
        source="the sum of its pins and of tails that are no narrower at the root than the tool",
        remedy="ask for fewer tails, narrower pins or a narrower tool, or use another joint",
        parts=(corner.first.id, corner.second.id),
    )


def _carried(ends: tuple[Vec, Vec], axis: int, reach: tuple[float, float]) -> list[Vec]:
    """The rectangle that a line sweeps along an axis."""
    corners = []
    for end, at in ((ends[0], reach[0]), (ends[0], reach[1]), (ends[1], reach[1]), (ends[1], reach[0])):
        v = list(end)
        v[axis] = at
        corners.append((v[0], v[1], v[2]))
    return corners


def _on_second(d: Dovetails, glued: bool) -> list[Contact]:
    """Flanks and inner faces of the tails, the shoulders between them, and their tips at a lap."""
    c, out = d.corner, []
    for (a, b), (ra, rb) in zip(d.layout.tails, d.layout.roots, strict=True):
        for tip, root, high in ((a, ra, True), (b, rb, False)):
            line = c.point(d.depth, c.lo, tip), c.point(0.0, c.lo, root)
            out.append(c.toward(_carried(line, c.across, (c.lo, c.hi)), c.along, high, glued))
        face = [c.point(at, c.inner, v) for at, v in ((0.0, ra), (0.0, rb), (d.depth, b), (d.depth, a))]
        out.append(c.toward(face, c.across, c.end_high, glued))
        if d.lap:
            span = {c.across: (c.lo, c.hi), c.along: (c.run[0] + a, c.run[0] + b)}
            out.append(plane(c.axis, c.into(d.depth), span, c.high, glued=glued))
    for a, b in d.layout.pin_roots:
        span = {c.across: (c.lo, c.hi), c.along: (c.run[0] + a, c.run[0] + b)}
        out.append(plane(c.axis, c.face, span, c.high, glued=glued))
    return out


def _on_first(d: Dovetails, glued: bool) -> list[Contact]:
    """The same with the boards exchanged: tails stand out along `across`, pins along `axis`."""
    c, out = d.corner, []
    outer = c.hi if c.end_high else c.lo
    reach = (min(c.face, c.into(c.deep)), max(c.face, c.into(c.deep)))
    for (a, b), (ra, rb) in zip(d.layout.tails, d.layout.roots, strict=True):
        for tip, root, high in ((a, ra, False), (b, rb, True)):
            if abs(tip - root) > 1e-9:
                line = c.point(0.0, outer, tip), c.point(0.0, c.inner, root)
                out.append(c.toward(_carried(line, c.axis, reach), c.along, high, glued))
        face = [c.point(0.0, at, v) for at, v in ((c.inner, ra), (c.inner, rb), (outer, b), (outer, a))]
        out.append(c.toward(face, c.axis, c.high, glued))
    for a, b in d.layout.pin_roots:
        span = {c.axis: reach, c.along: (c.run[0] + a, c.run[0] + b)}
        out.append(plane(c.across, c.inner, span, c.end_high, glued=glued))
    return out
