"""Screws and dowels: which, how many, where, and the holes they need in both parts."""

from __future__ import annotations

import math

from boardwright.core.lengths import Printer
from boardwright.core.poses import Vec
from boardwright.piece.drafts import Bore, Draft, Meeting
from boardwright.piece.joints.faces import unit
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.records import Fastener
from boardwright.piece.setout import SetOut
from boardwright.tables.records import Dowel, Screw

SPACING = 200.0
"""Between fasteners along a joint, at most [mm]: 6 to 8 in, common practice."""
FROM_EDGE = 38.0
"""First fastener from the edge [mm]: 1 to 1 1/2 in, common practice."""
DOWEL_SPACING = 96.0
"""Between dowels, at most [mm]: 2 to 4 in, multiples of 32 mm, common practice."""
EDGE_DIAMETERS = 2.5
"""From the axis of a screw to the edge of the wood, in shank diameters (NDS commentary, from memory)."""
GRIPS = ((6, 3.0), (6, 2.0), (0, 3.0), (0, 2.0))
"""Least gauge and least grip in shank diameters, in the order they are tried: a stout screw with a short grip holds
better than a thin one with a long grip (common practice)."""
LEFT_BEYOND_TIP = 3.0
"""Wood left beyond the tip of a screw [mm]: 1/8 in, common practice."""


def choose_screw(
    out: SetOut, want_gauge: int | None, want_length: float | None, edge: float, held: float, room: float
) -> tuple[Screw, float] | None:
    """A screw for a joint.

    Args:
        out: the bench.
        want_gauge: the gauge asked for, or None.
        want_length: the length asked for [mm], or None.
        edge: from the screw's axis to the nearest edge of the part that takes the thread [mm].
        held: thickness under the head [mm].
        room: wood that the tip has behind the held part [mm].

    Returns:
        Screw and length [mm], or None when no length on sale holds without breaking through.
    """
    screws = sorted(out.tables.screws.values(), key=lambda s: s.gauge)
    if want_gauge is not None and any(s.gauge == want_gauge for s in screws):
        ladder = [s for s in screws if s.gauge == want_gauge]
    else:
        fitting = [s for s in screws if s.gauge <= 8 and EDGE_DIAMETERS * s.shank <= edge + 1e-6]
        ladder = sorted(fitting or screws[:1], key=lambda s: -s.gauge)
    if want_length is not None:
        return ladder[0], want_length
    for least, diameters in GRIPS:
        for screw in (s for s in ladder if s.gauge >= least):
            lengths = [x for x in screw.lengths if x <= held + room - LEFT_BEYOND_TIP + 1e-6]
            grip = [x for x in lengths if x >= held + diameters * screw.shank - 1e-6]
            good = [x for x in grip if x >= 2 * held - 1e-6]
            if good:
                return screw, good[0]
            if grip:
                return screw, grip[-1]
    return None


def places(out: SetOut, run: tuple[float, float], count: int | None, spacing: float) -> list[float]:
    """Where fasteners stand along a joint: symmetric, settled from its low end [mm]."""
    length = run[1] - run[0]
    edge = min(FROM_EDGE, length / 4)
    n = count or max(1 if length < 40 else 2, math.ceil((length - 2 * edge) / spacing) + 1)
    settled = out.sizer.settled
    if n == 1:
        return [run[0] + settled(length / 2)]
    first = settled(edge)
    pitch = (length - 2 * first) / (n - 1)
    half = [run[0] + settled(first + i * pitch) for i in range(n // 2)]
    middle = [run[0] + settled(length / 2)] if n % 2 else []
    rest = [run[0] + settled(first + i * pitch) for i in range(n - n // 2, n)]
    return half + middle + rest


def spot(axis: int, at: float, across: int, a: float, along: int, b: float) -> Vec:
    """A point from its three coordinates on named axes [mm]."""
    v = [0.0, 0.0, 0.0]
    v[axis], v[across], v[along] = at, a, b
    return (v[0], v[1], v[2])


def screw_name(out: SetOut, screw: Screw, length: float) -> str:
    """A screw as bought, by its number and inches; in a plan in millimetres its size in those comes first."""
    number = f"No. {screw.gauge} x {Printer('in', 25.4 / 64).text(length)}"
    if out.design.units == "mm":
        number = f"{screw.shank:.1f} x {length:.0f} mm ({number})"
    return f"{number} flat-head wood screw"


def drive(
    out: SetOut,
    first: Draft,
    second: Draft,
    axis: int,
    forward: bool,
    head_at: Vec,
    screw: Screw,
    length: float,
    through: float,
    *,
    slot: float = 0.0,
    slot_axis: int = 0,
    path: str = "",
    marked: bool = False,
) -> str:
    """Put one screw through the first part into the second, with its holes; gives the fastener's id.

    Args:
        out: the bench.
        first: the part under the head.
        second: the part that takes the thread.
        axis: the piece axis along which it is driven.
        forward: True when it is driven towards the high end of that axis.
        head_at: where its head sits, on the outside of the first part [mm].
        screw: the screw.
        length: its length [mm].
        through: thickness of the first part that it passes [mm].
        slot: length of a slot instead of a round hole in the first part [mm], along `slot_axis`.
        slot_axis: the piece axis along which the slot runs.
        path: where the file asks for it.
        marked: the pilot is marked in place through the first part.
    """
    name = screw_name(out, screw, length)
    hard = second.stock.hardwood
    pilot = screw.pilot_hard if hard else screw.pilot_soft
    first.cuts.append(
        Bore(
            axis,
            not forward,
            head_at,
            screw.clearance_drill,
            through,
            True,
            screw.head,
            slot,
            slot_axis,
            "clearance",
            name,
        )
    )
    enter = list(head_at)
    enter[axis] += through if forward else -through
    if length > through + 1e-6:
        second.cuts.append(
            Bore(
                axis,
                not forward,
                (enter[0], enter[1], enter[2]),
                pilot,
                out.sizer.settled(length - through, "up"),
                False,
                0.0,
                0.0,
                0,
                "pilot",
                name,
                first.id,
                marked,
            )
        )
    id = f"screw.{len(out.fasteners) + 1}"
    out.fasteners.append(
        Fastener(
            id,
            "screw",
            name,
            f"screw_{screw.gauge}",
            head_at,
            unit(axis, forward),
            length,
            screw.shank,
            screw.head,
            first.id,
            second.id,
            slot > 0,
            out.design.place(path) if path else second.place,
        )
    )
    return id


def fasten(
    out: SetOut,
    first: Draft,
    second: Draft,
    meet: Meeting,
    want: JointSettings,
    seat: float,
    run: tuple[float, float],
) -> tuple[str, ...]:
    """Screws through the first part into the second, along a joint; nothing when the joint asks for none."""
    if want.fasten != "screws":
        return ()
    head = first.face(meet.axis, not meet.high)
    through = abs(seat - head)
    edge = meet.box.size(meet.across) / 2
    chosen = choose_screw(out, want.screw, want.screw_length, edge, through, second.size(meet.axis))
    if chosen is None:
        no_screw(out, first, second, want.path, through, second.size(meet.axis), edge)
        return ()
    screw, length = chosen
    middle = meet.box.low[meet.across] + out.sizer.settled(meet.box.size(meet.across) / 2)
    return tuple(
        drive(
            out,
            first,
            second,
            meet.axis,
            meet.high,
            spot(meet.axis, head, meet.across, middle, meet.along, at),
            screw,
            length,
            through,
            path=want.path,
            marked=want.marked,
        )
        for at in places(out, run, want.count, SPACING)
    )


def no_screw(
    out: SetOut, first: Draft, second: Draft, path: str, held: float, room: float, edge: float
) -> None:
    """A finding: no screw on sale holds here without breaking through. The lengths are those of `choose_screw`."""
    out.find(
        "fastener.none-fits",
        f"no screw on sale holds the {first.name} to the {second.name} without breaking through",
        path,
        found=f"{out.about(held)} to go through, {out.about(room)} to drive into, "
        f"its axis {out.about(edge)} from an edge",
        expected=f"a grip of two shank diameters, {out.about(LEFT_BEYOND_TIP)} of wood beyond the tip, "
        f"and {EDGE_DIAMETERS:g} shank diameters to the edge",
        source="common practice",
        remedy=f"make the {second.name} thicker or the {first.name} thinner, or fasten it in another way",
        parts=(first.id, second.id),
    )


def choose_dowel(out: SetOut, thickness: float) -> Dowel | None:
    """The dowel nearest to a third, and at most half, of the thinner part; of the plan's unit system first."""
    metric = out.design.units == "mm"
    fitting = [d for d in out.tables.dowels.values() if d.diameter <= thickness / 2 + 1e-6]
    own = [d for d in fitting if (abs(d.diameter - round(d.diameter)) < 1e-6) == metric] or fitting
    return min(own, key=lambda d: (abs(d.diameter - thickness * 0.4), d.diameter, d.length)) if own else None


def dowel_name(out: SetOut, dowel: Dowel) -> str:
    """A dowel as bought."""
    return f"{out.text(dowel.diameter)} x {out.sizer.printer.text(dowel.length)} dowel pin"


def dowels(
    out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings, run: tuple[float, float]
) -> tuple[str, ...]:
    """Dowels across a butt joint.

    A third of each stands in the face, two thirds in the end, no deeper than the part allows.
    """
    thin = meet.box.size(meet.across)
    dowel = choose_dowel(out, thin)
    if dowel is None:
        out.find(
            "fastener.none-fits",
            f"no dowel on sale fits the {second.name}",
            want.path,
            found=f"{out.about(thin)} thick",
            expected="a dowel of at most half the thickness",
            source="common practice",
            remedy=f"use stock {out.up(2 * min(d.diameter for d in out.tables.dowels.values()))} thick or more, "
            "or a rabbet or dado",
            parts=(first.id, second.id),
        )
        return ()
    settled = out.sizer.settled
    spare = out.tables.figure("dowel_hole_extra").value
    room = first.size(meet.axis) - LEFT_BEYOND_TIP - spare
    in_first = max(settled(min(dowel.length / 3, room), "down"), out.sizer.step)
    in_second = dowel.length - in_first
    if in_second + spare > second.size(meet.axis) / 2 - LEFT_BEYOND_TIP / 2:
        out.find(
            "fastener.none-fits",
            f"no dowel on sale fits the {second.name}",
            want.path,
            found=f"{out.about(second.size(meet.axis))} long, dowels {out.about(in_second)} into each end",
            expected="wood between the dowels of its two ends",
            source="common practice",
            remedy="make it longer, or use a rabbet or dado",
            parts=(first.id, second.id),
        )
        return ()
    middle = meet.box.low[meet.across] + settled(thin / 2)
    face = first.face(meet.axis, meet.high)
    ids = []
    for at in places(out, run, want.count, DOWEL_SPACING):
        point = spot(meet.axis, face, meet.across, middle, meet.along, at)
        deep_first = settled(in_first + spare, "up")
        deep_second = settled(in_second + spare, "up")
        first.cuts.append(
            Bore(
                meet.axis,
                meet.high,
                point,
                dowel.diameter,
                deep_first,
                purpose="dowel",
                for_=dowel_name(out, dowel),
            )
        )
        second.cuts.append(
            Bore(
                meet.axis,
                not meet.high,
                point,
                dowel.diameter,
                deep_second,
                purpose="dowel",
                for_=dowel_name(out, dowel),
            )
        )
        start = list(point)
        start[meet.axis] -= in_first if meet.high else -in_first
        id = f"dowel.{len(out.fasteners) + 1}"
        ids.append(id)
        out.fasteners.append(
            Fastener(
                id,
                "dowel",
                dowel_name(out, dowel),
                dowel.key,
                (start[0], start[1], start[2]),
                unit(meet.axis, meet.high),
                dowel.length,
                dowel.diameter,
                dowel.diameter,
                first.id,
                second.id,
                False,
                out.design.place(want.path),
            )
        )
    return tuple(ids)
