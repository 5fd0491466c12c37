"""Dovetails, through and half-blind: tails on one board, pins on the other, laid out to close."""

from __future__ import annotations

from boardwright.core.poses import Vec
from boardwright.formulas.dovetail_layout import DovetailLayout, dovetail_layout
from boardwright.piece.cuts import Pins, Tails
from boardwright.piece.drafts import Draft, Meeting
from boardwright.piece.joints.corner import CornerOfTwo, tool_of, why_no_corner
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.fastening import not_here
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.records import Contact
from boardwright.piece.setout import SetOut

TOOL = 3.175
"""Narrowest chisel in common use [mm]: 1/8 in (common practice)."""
PIN_SHARE = 0.35
"""Usual width of a pin at its narrow side, for a thickness of 1 of the tail board (common practice)."""
HALF_PIN = 6.35
"""Least half pin [mm]: 1/4 in (common practice), or half of the thickness where that is less."""
LAP_SHARE = 0.25
"""Lap in front of half-blind tails for a thickness of 1: 3/16 in on a 3/4 in front ("Making a single-lap dovetail",
a woodworking magazine, 2003)."""
LEAST_LAP = 2.38
"""Least lap [mm]: 3/32 in (the same)."""


def why_not(first: Draft, second: Draft, meet: Meeting) -> str:
    """What stands against dovetails; "" for nothing."""
    return why_no_corner(first, second, meet, "dovetails")


def dovetail(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    """Through dovetails; the tails are on the second part unless the file says otherwise."""
    keys = want.keys
    on = out.sizer.choose(
        f"{want.name}.tails_on",
        keys.tails_on if keys else None,
        "second",
        "the part that goes in has the tails",
        f"{want.path}.tails_on",
    )
    corner = CornerOfTwo.of(first, second, meet)
    whole = abs(first.size(meet.along) - second.size(meet.along)) < 1e-6
    if on == "first" and not whole:
        out.find(
            "joint.tails-on-wide",
            f"the {first.name} is wider than the {second.name} and cannot have the tails",
            f"{want.path}.tails_on" if keys and keys.tails_on else want.path,
            found=f"{out.about(first.size(meet.along))} against {out.about(second.size(meet.along))}",
            expected="two parts of one width",
            source="common practice",
            remedy="`tails_on: second`, or make both equally wide",
            parts=(first.id, second.id),
        )
        on = "second"
    _make(out, corner, meet, want, corner.deep if on == "second" else corner.thick, on == "second", 0.0)


def half_blind(out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings) -> None:
    """Half-blind dovetails: the first part has the pins and hides the ends of the tails behind its lap."""
    corner = CornerOfTwo.of(first, second, meet)
    keys = want.keys
    lap = out.sizer.size(
        f"{want.name}.lap",
        [(f"{want.path}.lap", keys.lap if keys else None)],
        max(LAP_SHARE * corner.deep, LEAST_LAP),
        rule="a quarter of the thickness, at least 3/32 in (2.4 mm)",
        source='"Making a single-lap dovetail", a woodworking magazine, 2003',
        total=f"{out.text(corner.deep)} / 4",
        direction="up",
        least=out.sizer.step,
    )
    lap = out.at_most(lap, corner.deep - out.sizer.step, "the lap", f"{want.path}.lap", corner.deep)
    _make(out, corner, meet, want, corner.deep - lap, True, lap)


def _make(
    out: SetOut,
    corner: CornerOfTwo,
    meet: Meeting,
    want: JointSettings,
    depth: float,
    on_second: bool,
    lap: float,
) -> None:
    """Lay out, cut both boards, keep the joint. `depth` is the length of the tails [mm]."""
    first, second = corner.first, corner.second
    not_here(out, first, second, want)
    slope = _slope(out, corner, want, on_second)
    layout = _layout(out, corner, want, depth, slope, on_second)
    if layout is None:
        return
    tips = [(corner.run[0] + a, corner.run[0] + b) for a, b in layout.tails]
    roots = [(corner.run[0] + a, corner.run[0] + b) for a, b in layout.roots]
    pins = tuple((corner.run[0] + a, corner.run[0] + b) for a, b in layout.pins)
    end = first.side(corner.across, corner.end_high), first.index(corner.along)
    other = second.side(corner.axis, not corner.high), second.index(corner.along)
    second.grow(corner.axis, not corner.high, corner.deep if not on_second else depth)
    if on_second:
        second.cuts.append(Tails(*other, depth, pins, slope, first.id))
        side = first.side(corner.axis, corner.high)
        first.cuts.append(Pins(*end, corner.thick, side, depth, tuple(roots), slope, second.id))
        ways: list[Vec] = [unit(corner.across, corner.end_high)]
        contacts = _tails_on_second(corner, layout, depth, lap, want.glue)
    else:
        first.cuts.append(Tails(*end, depth, pins, slope, second.id))
        side = second.side(corner.across, not corner.end_high)
        second.cuts.append(Pins(*other, corner.deep, side, depth, tuple(roots), slope, first.id))
        ways = [meet.away]
        contacts = _tails_on_first(corner, layout, depth, want.glue)
    name = "half-blind dovetails" if lap else "through dovetails"
    held = f", lap {out.text(lap)}" if lap else ""
    count = f"{len(tips)} tail{'s' if len(tips) > 1 else ''} on the {second.name if on_second else first.name}"
    out.joint(
        "half_blind" if lap else "dovetail",
        first,
        second,
        contacts,
        ways,
        f"{name}, {count}, 1 : {1 / slope:.3g}{held}{', glued' if want.glue else ', dry'}",
        glued=want.glue,
        place=out.design.place(want.path),
    )


def _slope(out: SetOut, corner: CornerOfTwo, want: JointSettings, on_second: bool) -> float:
    board = corner.second if on_second else corner.first
    usual = "1:8" if board.stock.hardwood or board.stock.kind == "sheet" else "1:6"
    keys = want.keys
    word = out.sizer.choose(
        f"{want.name}.slope",
        keys.slope if keys else None,
        usual,
        "1:8 in hardwood, 1:6 in softwood",
        f"{want.path}.slope",
    )
    over, run = word.split(":")
    return float(over) / float(run)


def _layout(
    out: SetOut, corner: CornerOfTwo, want: JointSettings, depth: float, slope: float, on_second: bool
) -> DovetailLayout | None:
    keys, path, name, sizer = want.keys, want.path, want.name, out.sizer
    board = corner.thick if on_second else corner.deep
    tool = tool_of(
        out, f"{path}.cutter", keys.cutter if keys else None, TOOL, f"{name}.cutter", "the narrowest chisel, 1/8 in"
    )
    pin = sizer.size(
        f"{name}.pin",
        [(f"{path}.pin", keys.pin if keys else None)],
        max(PIN_SHARE * board, tool),
        rule=f"{PIN_SHARE:g} of the tail board's thickness at the narrow side, no narrower than the tool",
        total=f"{PIN_SHARE:g} × {out.text(board)}",
        least=sizer.step,
    )
    half = sizer.size(
        f"{name}.half_pin",
        [(f"{path}.half_pin", keys.half_pin if keys else None)],
        max(min(HALF_PIN, board / 2), tool),
        rule="1/4 in (6 mm), or half of the tail board's thickness where that is less",
        least=sizer.step,
    )
    width = corner.run[1] - corner.run[0]
    try:
        layout = dovetail_layout(
            width,
            depth,
            slope,
            pin,
            half,
            tool,
            sizer.step,
            tails=keys.tails if keys else None,
            graduated=bool(keys and keys.spacing == "graduated"),
            hide=corner.grooves(),
        )
    except ValueError as least:
        out.find(
            "joint.no-room",
            f"the corner of the {corner.first.name} and the {corner.second.name} is too narrow for its dovetails",
            path,
            found=out.about(width),
            expected=f"at least {out.up(float(str(least)))}, for a tool of {out.about(tool)}",
            source="common practice",
            remedy="ask for fewer tails, narrower pins or a narrower tool, or use another joint",
            parts=(corner.first.id, corner.second.id),
        )
        return None
    sizer.explain(
        f"{name}.tail",
        layout.tails[0][1] - layout.tails[0][0],
        f"({out.text(width)} less {len(layout.pins)} pins) / {len(layout.tails)}",
        "what the pins leave, shared out among the tails; the half pins take what is left over",
        "common practice",
    )
    return layout


def _flank(
    c: CornerOfTwo, tip: Vec, root: Vec, way_axis: int, reach: tuple[float, float], toward_high: bool, glued: bool
) -> Contact:
    """The face between a tail and a pin: from tip to root, carried along an axis."""
    corners = []
    for end, at in ((tip, reach[0]), (tip, reach[1]), (root, reach[1]), (root, reach[0])):
        v = list(end)
        v[way_axis] = at
        corners.append((v[0], v[1], v[2]))
    return c.toward(corners, c.way(c.along, toward_high), glued=glued)


def _tails_on_second(
    c: CornerOfTwo, layout: DovetailLayout, depth: float, lap: float, glued: bool
) -> list[Contact]:
    out: list[Contact] = []
    base = c.run[0]
    for (a, b), (ra, rb) in zip(layout.tails, layout.roots, strict=True):
        for tip, root, high in ((a, ra, True), (b, rb, False)):
            tip_at, root_at = c.point(depth, c.lo, base + tip), c.point(0.0, c.lo, base + root)
            out.append(_flank(c, tip_at, root_at, c.across, (c.lo, c.hi), high, glued))
        face = [
            c.point(0.0, c.inner, base + ra),
            c.point(0.0, c.inner, base + rb),
            c.point(depth, c.inner, base + b),
            c.point(depth, c.inner, base + a),
        ]
        out.append(c.toward(face, c.way(c.across, c.end_high), glued=glued))
        if lap:
            span = {c.across: (c.lo, c.hi), c.along: (base + a, base + b)}
            out.append(plane(c.axis, c.into(depth), span, c.high, glued=glued))
    for a, b in _between_roots(layout):
        span = {c.across: (c.lo, c.hi), c.along: (base + a, base + b)}
        out.append(plane(c.axis, c.face, span, c.high, glued=glued))
    return out


def _tails_on_first(c: CornerOfTwo, layout: DovetailLayout, depth: float, glued: bool) -> list[Contact]:
    """As above, with the boards exchanged: tails stand out along `across`, pins along `axis`."""
    out: list[Contact] = []
    base = c.run[0]
    tip_at = c.inner + depth if c.end_high else c.inner - depth
    reach = (min(c.face, c.into(c.deep)), max(c.face, c.into(c.deep)))
    for (a, b), (ra, rb) in zip(layout.tails, layout.roots, strict=True):
        for tip, root, high in ((a, ra, False), (b, rb, True)):
            tip_point, root_point = c.point(0.0, tip_at, base + tip), c.point(0.0, c.inner, base + root)
            out.append(_flank(c, tip_point, root_point, c.axis, reach, high, glued))
        face = [
            c.point(0.0, c.inner, base + ra),
            c.point(0.0, c.inner, base + rb),
            c.point(0.0, tip_at, base + b),
            c.point(0.0, tip_at, base + a),
        ]
        out.append(c.toward(face, c.way(c.axis, c.high), glued=glued))
    for a, b in _between_roots(layout):
        span = {c.axis: reach, c.along: (base + a, base + b)}
        out.append(plane(c.across, c.inner, span, c.end_high, glued=glued))
    return out


def _between_roots(layout: DovetailLayout) -> list[tuple[float, float]]:
    """From, to of each pin at its wide side [mm]."""
    ends = [0.0, *(v for root in layout.roots for v in root), layout.width]
    return [(ends[i], ends[i + 1]) for i in range(0, len(ends), 2)]
