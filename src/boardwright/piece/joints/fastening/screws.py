"""Wood screws: which, and the holes they need in both parts."""

from __future__ import annotations

from boardwright.core.lengths import Printer
from boardwright.core.poses import Vec
from boardwright.piece.drafts import Bore, Draft, Meeting
from boardwright.piece.joints.faces import unit
from boardwright.piece.joints.fastening.spots import LEFT_BEYOND_TIP, SPACING, places, spot
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.records import Fastener
from boardwright.piece.setout import SetOut
from boardwright.tables.records import Screw

EDGE_DIAMETERS = 2.5
"""From the axis of a screw to the edge of the wood, in shank diameters (NDS commentary, from memory)."""
GRIPS = ((6, 3.0), (6, 2.0), (0, 3.0), (0, 2.0))
"""Least gauge and least grip in shank diameters, in the order they are tried: a stout screw with a short grip holds
better than a thin one with a long grip (common practice)."""


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
    counterbore: float = 0.0,
    sunk: float = 0.0,
) -> str:
    """Put one screw through the first part into the second, with its holes; gives the fastener's id.

    Args:
        out: the bench.
        first: the part under the head.
        second: the part that takes the thread.
        axis: the piece axis along which it is driven.
        forward: True when it is driven towards the high end of that axis.
        head_at: where it is driven in, on the outside of the first part [mm].
        screw: the screw.
        length: its length [mm].
        through: thickness of the first part that it passes [mm].
        slot: length of a slot instead of a round hole in the first part [mm], along `slot_axis`.
        slot_axis: the piece axis along which the slot runs.
        path: where the file asks for it.
        marked: the pilot is marked in place through the first part.
        counterbore: diameter of a counterbore in the first part instead of a countersink [mm]; 0 for none.
        sunk: depth of the counterbore; the head sits at its bottom [mm].
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
            0.0 if counterbore else screw.head,
            slot,
            slot_axis,
            "clearance",
            name,
            counterbore=counterbore,
            counterbore_depth=sunk,
        )
    )
    enter, head = list(head_at), list(head_at)
    enter[axis] += through if forward else -through
    head[axis] += sunk if forward else -sunk
    if length > through - sunk + 1e-6:
        second.cuts.append(
            Bore(
                axis,
                not forward,
                (enter[0], enter[1], enter[2]),
                pilot,
                out.sizer.settled(length - through + sunk, "up"),
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
            (head[0], head[1], head[2]),
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


def screws(
    out: SetOut,
    first: Draft,
    second: Draft,
    meet: Meeting,
    want: JointSettings,
    seat: float,
    run: tuple[float, float],
) -> tuple[str, ...]:
    """Screws through the first part into the second, along a joint."""
    through = abs(seat - first.face(meet.axis, not meet.high))
    chosen = joint_screw(out, first, second, meet, want, through)
    if chosen is None:
        return ()
    screw, length = chosen
    return tuple(
        drive(
            out,
            first,
            second,
            meet.axis,
            meet.high,
            at,
            screw,
            length,
            through,
            path=want.path,
            marked=want.marked,
        )
        for at in heads(out, first, meet, want, run)
    )


def heads(
    out: SetOut, first: Draft, meet: Meeting, want: JointSettings, run: tuple[float, float]
) -> list[Vec]:
    """Where screws are driven into the outside of the first part, in the middle of the second's thickness [mm]."""
    outside = first.face(meet.axis, not meet.high)
    middle = meet.box.low[meet.across] + out.sizer.settled(meet.box.size(meet.across) / 2)
    return [
        spot(meet.axis, outside, meet.across, middle, meet.along, at)
        for at in places(out, run, want.count, SPACING)
    ]


def joint_screw(
    out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings, held: float
) -> tuple[Screw, float] | None:
    """The screw of a joint and its length [mm]; None, with a finding, when none holds.

    Args:
        out: the bench.
        first: the part under the head.
        second: the part that takes the thread.
        meet: how the two stand.
        want: the joint.
        held: wood under the head [mm].
    """
    edge, room = meet.box.size(meet.across) / 2, second.size(meet.axis)
    chosen = choose_screw(out, want.screw, want.screw_length, edge, held, room)
    if chosen is None:
        no_screw(out, first, second, want.path, held, room, edge)
    return chosen


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
