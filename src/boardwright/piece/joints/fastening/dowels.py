"""Dowels: which, and the holes they need in both parts."""

from __future__ import annotations

from boardwright.piece.drafts import Bore, Draft, Meeting
from boardwright.piece.joints.faces import unit
from boardwright.piece.joints.fastening.spots import DOWEL_SPACING, LEFT_BEYOND_TIP, places, spot
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.records import Fastener
from boardwright.piece.setout import SetOut
from boardwright.tables.records import Dowel

DOWELS_LONG = 4.0
"""Length of a joint with two dowels, in diameters: their middles a quarter of it from its ends."""


def choose_dowel(out: SetOut, thickness: float, length: float) -> Dowel | None:
    """The dowel nearest to a third, and at most half, of the thinner part; of the plan's unit system first.

    Two in a short joint want half of their diameter of wood beside them, and their diameter between them: thinner
    ones are taken where there are any.

    Args:
        out: the bench.
        thickness: of the thinner part [mm].
        length: of the joint [mm].
    """
    metric = out.design.units == "mm"
    fitting = [d for d in out.tables.dowels.values() if d.diameter <= thickness / 2 + 1e-6]
    fitting = [d for d in fitting if d.diameter <= length / DOWELS_LONG + 1e-6] or fitting
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
    dowel = choose_dowel(out, thin, run[1] - run[0])
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
