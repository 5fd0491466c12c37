"""Butt and continuous hinges: how many, how long, where; the gains of their leaves."""

from __future__ import annotations

import math

from boardwright.core.findings import Severity
from boardwright.core.poses import Vec
from boardwright.design.schema import Hinges
from boardwright.formulas.hinges import gain_depth
from boardwright.formulas.screws import flat_head_height
from boardwright.piece.cuts import Bevel
from boardwright.piece.drafts import Draft
from boardwright.piece.forms.hinge_line import HingeLine
from boardwright.piece.joints.fastening.spots import LEFT_BEYOND_TIP
from boardwright.piece.joints.sloping import cut_to, cuts_along, edges_at, frame, side_plane
from boardwright.piece.records import Hardware
from boardwright.piece.setout import SetOut
from boardwright.tables.records import Screw

LEAST_BEHIND = 3.0
"""Wood behind the edge of a leaf [mm]: 1/8 in, common practice."""
LEAST_LEAF = 9.5
"""A narrower leaf takes no screws [mm]: 3/8 in, common practice."""
GAUGES = ((38.1, 4), (50.8, 5), (1e9, 6))
"""Screws of hinges up to a length [mm]: No. 4 to No. 6, common practice."""
SCREW_LENGTHS = (19.05, 15.875, 12.7)
"""Screws of hinges, longest first [mm]: 1/2 to 3/4 in, common practice."""
TIP = 1.5875
"""Wood that stays beyond the tip of a screw whose length is given [mm]: 1/16 in, common practice."""
SHORT_HINGE = 50.8
HEAD_PROUD = 0.25
"""A head so much higher than its leaf still lies flush, by its rim [mm]."""


def pin_out(out: SetOut) -> float:
    """How far the middle of the pin stands before the face [mm]."""
    return out.tables.figure("butt_hinge_pin").value


def hang(
    out: SetOut,
    id: str,
    kind: str,
    keys: Hinges | None,
    path: str,
    line: HingeLine,
    group: str,
    rails: tuple[float, float] | None = None,
) -> bool:
    """Hang a door or lid on butt hinges, or on one along the whole edge; False, with a finding, when it cannot be.

    Args:
        out: the bench.
        id: of the door or lid.
        kind: `butt` or `continuous`.
        keys: what the file says of the hinges.
        path: where that stands.
        line: the pin.
        group: moving group of the hinges in pictures.
        rails: inner edges of the low and the high rail of a framed door [mm]; hinges end in line with them.
    """
    leaf = _leaf(out, id, kind, keys, path, line)
    if leaf is None:
        return False
    knuckle = out.tables.figure(f"{kind}_hinge_knuckle").value
    depth = max(out.sizer.settled(gain_depth(knuckle, line.gap), "up"), 0.0)
    out.sizer.explain(
        f"{id}.hinges.gain",
        depth,
        f"half of a knuckle of {out.about(knuckle)}, less half of the gap of {out.text(line.gap)}",
        "leaves are let in so that the hinge shuts to the gap; try the hinge in hand on waste",
        out.tables.figure(f"{kind}_hinge_knuckle").reason,
    )
    spots = [_whole(out, line)] if kind == "continuous" else _spots(out, id, keys, path, line, rails)
    length = spots[0][1] - spots[0][0]
    screw = _screw(out, id, kind, keys, path, line, length, depth)
    if screw is None:
        return False
    name = _name(out, kind, length, leaf, *screw)
    for i, (a, b) in enumerate(spots):
        line.gains(a, b, leaf, depth, out.sizer.step)
        _strips_back(out, line, (a, b), leaf, depth)
        out.hardware.append(
            Hardware(
                f"{id}.hinge.{i + 1}",
                name,
                f"{kind}_hinge",
                line.room(a, b, leaf, min(knuckle, line.gap + 2 * depth)),
                group,
                place=out.design.place(path),
                screw_key=screw[0].key,
                screw_length=screw[1],
                screws=_per_leaf(out, kind, length),
            )
        )
    return True


def _strips_back(out: SetOut, line: HingeLine, span: tuple[float, float], leaf: float, depth: float) -> None:
    """Cut splines and keys of mitred corners back to the bottom of the gains that are cut over their ends."""
    part = line.moving
    edge = side_plane(part, line.across, not line.from_low)
    for strip in [d for d in out.drafts.values() if d.tilt is not None and d.group == part.group]:
        for cut in [c for c in strip.cuts if isinstance(c, Bevel) and c.holds == part.id]:
            axis, high = strip.axes[cut.side.axis], cut.side.high
            if cuts_along(strip, cut, edge) and _lies_under(
                line, edges_at(strip, axis, edge), strip, span, leaf
            ):
                strip.cuts.remove(cut)
                cut_to(strip, axis, high, edge.beyond(-depth), part.id)


def _lies_under(
    line: HingeLine, ends: list[Vec], strip: Draft, span: tuple[float, float], leaf: float
) -> bool:
    """Whether the end of a strip, at the edge of a door, lies under a leaf."""
    points = [frame(strip).point(p) for p in ends]
    along = [p[line.along] for p in points]
    near = max(line.outward * p[line.out_axis] for p in points)
    return (
        max(along) > span[0] + 1e-6
        and min(along) < span[1] - 1e-6
        and near > line.outward * line.end(leaf) + 1e-6
    )


def _leaf(out: SetOut, id: str, kind: str, keys: Hinges | None, path: str, line: HingeLine) -> float | None:
    """Width of a leaf, as wide as the thinner part lets it be."""
    figure = out.tables.figure(f"{kind}_hinge_leaf")
    most = min(line.reach(line.moving), max(line.reach(p) for p in line.still)) - LEAST_BEHIND
    leaf = out.sizer.size(
        f"{id}.hinges.leaf",
        [(f"{path}.leaf", keys.leaf if keys else None)],
        min(figure.value, most),
        rule="usual leaf, from the middle of the pin"
        if figure.value <= most
        else f"{out.about(LEAST_BEHIND)} of wood stay behind the leaf",
        source=figure.reason if figure.value <= most else "common practice",
        direction="down",
        settle_it=False,
    )
    if leaf > most + 1e-6 or leaf < LEAST_LEAF - 1e-6:
        out.find(
            "door.hinge-no-room",
            f"the wood is too thin for the leaves of the {kind} hinges of {id.replace('.', ' ')}",
            path,
            found=f"a leaf {out.about(max(leaf, 0.0))} wide on wood that takes {out.about(max(most, 0.0))}",
            expected=f"a leaf of at least {out.up(LEAST_LEAF)}, with {out.up(LEAST_BEHIND)} of wood behind it",
            source="common practice",
            remedy="use thicker stock, a smaller `leaf`, or `kind: cup` for a door",
        )
        return None
    return leaf


def _whole(out: SetOut, line: HingeLine) -> tuple[float, float]:
    """A continuous hinge is a little shorter than the edge."""
    short = out.tables.figure("continuous_hinge_short").value
    at = line.low + out.sizer.settled(short / 2, "up")
    return at, at + out.sizer.settled(line.length - short, "down")


def _length(out: SetOut, id: str, keys: Hinges | None, path: str, line: HingeLine) -> float:
    size = next((n for n in (12, 24, 36) if line.length <= n * 25.4 + 1e-6), 48)
    figure = out.tables.figure(f"butt_hinge_length_{size}")
    return out.sizer.size(
        f"{id}.hinges.length",
        [(f"{path}.length", keys.length if keys else None)],
        figure.value,
        rule=f"usual hinge for an edge {out.text(line.length)} long",
        source=figure.reason,
        least=12.0,
    )


def _count(out: SetOut, id: str, keys: Hinges | None, path: str, length: float) -> int:
    two, more = out.tables.figure("butt_hinge_two_under"), out.tables.figure("hinge_one_more")
    usual = 2 if length < two.value else max(3, math.ceil(length / more.value - 1e-6) + 1)
    given = keys.count if keys is not None else None
    count = out.sizer.choose(
        f"{id}.hinges.count",
        None if given is None else str(given),
        str(usual),
        f"two under {out.about(two.value)}, then one more for each {out.about(more.value)}",
        f"{path}.count",
        two.reason,
    )
    return int(count)


def _spots(
    out: SetOut,
    id: str,
    keys: Hinges | None,
    path: str,
    line: HingeLine,
    rails: tuple[float, float] | None,
) -> list[tuple[float, float]]:
    """From where to where each hinge lies along the edge [mm]."""
    settled = out.sizer.settled
    length = _length(out, id, keys, path, line)
    count = _count(out, id, keys, path, line.length)
    if count * length > line.length:
        length = settled(line.length / (count + 1), "down")
    free = line.length - count * length
    inset = min(length, settled(free / 4))
    first, last = line.low + inset, line.low + line.length - inset - length
    if rails is not None and rails[1] - rails[0] > (count + 1) * length:
        first, last = rails[0], rails[1] - length
    out.sizer.explain(
        f"{id}.hinges.first",
        first - line.low,
        "in line with the inner edge of the rail" if rails is not None else "a hinge's length from the end",
        "from the low end to the first hinge",
        "The Technique of Furniture Making, 'Fitting doors'" if rails is not None else "common practice",
    )
    starts = [line.low + settled(first - line.low + (last - first) * i / (count - 1)) for i in range(count)]
    return [(a, a + length) for a in starts]


def _per_leaf(out: SetOut, kind: str, length: float) -> int:
    """Screws in one leaf: two in butt hinges to 2 in, else three (common practice); a row of a continuous hinge."""
    if kind == "butt":
        return 2 if length <= SHORT_HINGE + 1e-6 else 3
    pitch = out.tables.figure("continuous_hinge_pitch").value
    return math.floor((length - pitch) / pitch + 1e-6) + 1


def _screw(
    out: SetOut,
    id: str,
    kind: str,
    keys: Hinges | None,
    path: str,
    line: HingeLine,
    length: float,
    depth: float,
) -> tuple[Screw, float] | None:
    """The screws of a hinge: those that hold in both parts and do not come out behind."""
    size = length if kind == "butt" else 0.0
    gauge = next(g for most, g in GAUGES if size <= most + 1e-6)
    screw = out.tables.screw(keys.screw if keys is not None and keys.screw is not None else gauge)
    thin = min(p.size(line.across) for p in (line.moving, line.still[-1]))
    plate = out.sizer.read(f"{path}.plate") if keys is not None and keys.plate is not None else None
    if screw is not None and plate is not None:
        _plate(out, id, path, plate, screw)
    if screw is not None and keys is not None and keys.screw_length is not None:
        given = out.sizer.read(f"{path}.screw_length") or SCREW_LENGTHS[-1]
        _too_long(out, id, path, given, thin - depth + (plate or 0.0))
        return screw, given
    fitting = [x for x in SCREW_LENGTHS if x <= thin - depth - LEFT_BEYOND_TIP + 1e-6]
    if screw is None or not fitting:
        out.find(
            "door.hinge-no-room",
            f"the screws of the hinges of {id.replace('.', ' ')} come out behind",
            path,
            found=f"wood {out.about(thin - depth)} thick under the leaf",
            expected=f"at least {out.up(SCREW_LENGTHS[-1] + LEFT_BEYOND_TIP)}",
            source="common practice",
            remedy="use thicker stock",
        )
        return None
    return screw, fitting[0]


def _plate(out: SetOut, id: str, path: str, plate: float, screw: Screw) -> None:
    """A leaf thinner than the heads of its screws: they stand proud, and the hinge does not shut."""
    high = flat_head_height(screw.head, screw.shank, screw.countersink)
    if high <= plate + HEAD_PROUD:
        return
    flat = [
        s.gauge
        for s in out.tables.screws.values()
        if flat_head_height(s.head, s.shank, s.countersink) <= plate + HEAD_PROUD
    ]
    out.find(
        "door.hinge-head",
        f"the heads of the hinge screws of {id.replace('.', ' ')} are deeper than the leaf",
        path,
        severity=Severity.WARNING,
        found=f"No. {screw.gauge} with a head {out.about(high)} high in a leaf {out.about(plate)} thick",
        expected="a head no higher than the leaf: it would stand proud, or press the leaf off the wood",
        source="height of the head's cone; common practice",
        remedy=(f"use No. {max(flat)} screws (`screw: {max(flat)}`), or " if flat else "use ")
        + "the screws that come with the hinge",
    )


def _too_long(out: SetOut, id: str, path: str, given: float, wood: float) -> None:
    """Hinge screws longer than the leaf, where its thickness is known, and the wood behind it."""
    if given <= wood - TIP + 1e-6:
        return
    fitting = [x for x in SCREW_LENGTHS if x <= wood - TIP + 1e-6]
    out.find(
        "door.hinge-screws",
        f"the screws of the hinges of {id.replace('.', ' ')} are longer than the wood",
        f"{path}.screw_length",
        found=f"{out.about(given)} long, for {out.about(wood)} of wood and leaf",
        expected=f"at most {out.down(wood - TIP)}: {out.about(TIP)} of wood beyond the tip",
        source="common practice; magazine question on screws that come out of a side",
        remedy=(f"use screws {out.about(fitting[0])} long" if fitting else "use thicker stock")
        + ", or file the points off and try one on waste",
    )


def _name(out: SetOut, kind: str, length: float, leaf: float, screw: Screw, long: float) -> str:
    """A hinge as bought: length, width when open, and its screws."""
    p = out.sizer.printer
    screws = f"No. {screw.gauge} × {p.text(long)}"
    if out.design.units == "mm":
        screws = f"{screw.shank:.1f} × {long:.0f} mm"
    if kind == "continuous":
        both = 2 * _per_leaf(out, kind, length)
        return f"continuous hinge {p.size(length)} × {out.about(2 * leaf)} open, {both} screws {screws}"
    return f"butt hinge {p.size(length)} × {out.about(2 * leaf)} open, with screws {screws}"


def lid_hinges(out: SetOut, given: str | None, path: str, rule: str) -> str:
    """Which hinges a lid hangs on: `butt` or `continuous`; a finding for cup hinges.

    Args:
        out: the bench.
        given: the kind that the file asks for.
        path: of the hinges in the file.
        rule: why butt hinges are the usual ones, in words.
    """
    kind = out.sizer.choose(f"{path}.kind", given, "butt", rule, f"{path}.kind")
    if kind != "cup":
        return kind
    out.find(
        "door.hinge-no-room",
        "cup hinges cannot hold a lid",
        path,
        found="cup",
        expected="`butt` or `continuous`",
        source="common practice",
        remedy="use `butt`",
    )
    return "butt"
