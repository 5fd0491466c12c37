"""Pocket screws: leaning holes in the second part, from a face that is not seen, and screws into the first.

The stepped drill leaves a counterbore for the head; its collar is set by the thickness of the part that is drilled,
so that a screw of the usual length stops short of the far side of a part as thick. Such screws cut their own way
into the first part.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from boardwright.core.lengths import Printer
from boardwright.core.poses import Vec
from boardwright.piece.drafts import Bore, Draft, Meeting
from boardwright.piece.joints.fastening.spots import LEFT_BEYOND_TIP, places, spot
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.records import Fastener
from boardwright.piece.setout import SetOut
from boardwright.tables.records import Screw

BY_THICKNESS = (
    (12.7, "pocket_screw_1_2"),
    (19.05, "pocket_screw_3_4"),
    (25.4, "pocket_screw_1"),
    (38.1, "pocket_screw_1_1_2"),
)
"""Thickness of the stock [mm], and the figure that is the length of its pocket screw."""
THINNER = 1.6
"""Stock so much under the thickness of a row still takes its screw [mm]: 1/16 in, common practice."""
THICKEST = 45.0
"""Thickest stock that is drilled for pocket screws [mm]: 1 3/4 in, common practice."""
GAUGE = 8
"""Pocket screws as sold are No. 6 to 8; the holes here are for No. 8 (common practice)."""
GRIP = 8.4
"""Least grip of a pocket screw in the first part [mm]: two shank diameters, common practice."""


@dataclass(frozen=True, slots=True)
class Setting:
    """How pockets are drilled into a part.

    Attributes:
        back: from the end of the part to where the axis enters its face, along it [mm].
        exit: from that face to where the axis comes out of the end [mm].
        sunk: depth of the counterbore on its axis, square to the face [mm].
        wood: from the counterbore's bottom to the end, along the axis [mm].
        angle: between axis and face [degrees].
        usual: length of the screw for stock of that thickness [mm].
    """

    back: float
    exit: float
    sunk: float
    wood: float
    angle: float
    usual: float


def _rows(out: SetOut) -> list[tuple[float, float]]:
    """Thickness of the stock and usual length of its screw [mm], the thinnest first."""
    return [(thickness, out.tables.figure(key).value) for thickness, key in BY_THICKNESS]


def setting(out: SetOut, thickness: float) -> Setting | None:
    """How pockets are drilled into stock of a thickness [mm]; None for stock too thin or too thick."""
    rows = [row for row in _rows(out) if row[0] <= thickness + THINNER]
    if not rows or thickness > THICKEST:
        return None
    angle = out.tables.figure("pocket_angle").value
    sine, cosine = math.sin(math.radians(angle)), math.cos(math.radians(angle))
    back = out.sizer.settled(thickness / 2 * cosine / sine)
    comes_out = back * sine / cosine
    nominal, length = rows[-1]
    wood = length - (nominal - LEFT_BEYOND_TIP) / cosine
    sunk = out.sizer.settled(comes_out - wood * sine, "down")
    if length - (comes_out - sunk) / sine < GRIP:
        sunk = out.sizer.settled(comes_out - wood * sine, "up")
    return Setting(back, comes_out, sunk, (comes_out - sunk) / sine, angle, length)


def pocket_screws(
    out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings, run: tuple[float, float]
) -> tuple[str, ...]:
    """Pocket screws from the second part into the first."""
    room = first.size(meet.axis)
    how = setting(out, second.size(meet.across))
    screw = out.tables.screw(want.screw or GAUGE)
    length = _length(out, want, how, room) if how and screw else None
    if how is None or screw is None or length is None or second.size(meet.axis) < 2 * how.back:
        _none_fits(out, first, second, meet, want, how)
        return ()
    edge = out.tables.figure("pocket_edge").value
    spots = places(out, run, want.count, out.tables.figure("pocket_spacing").value, edge)
    high = _from_high(first, second, meet)
    name = _name(out, first, length)
    return tuple(
        _drive(out, first, second, meet, how, high, along, screw, length, name, want.path) for along in spots
    )


def _length(out: SetOut, want: JointSettings, how: Setting, room: float) -> float | None:
    """The usual one, or a shorter one that stops inside the first part [mm]; None when none holds."""
    if want.screw_length is not None:
        return want.screw_length
    square = math.cos(math.radians(how.angle))
    most = min(how.usual, how.wood + (room - LEFT_BEYOND_TIP) / square)
    good = [length for _, length in _rows(out) if how.wood + GRIP - 1e-6 <= length <= most + 0.1]
    return max(good, default=None)


def _from_high(first: Draft, second: Draft, meet: Meeting) -> bool:
    """Which face of the second part the pockets are in.

    The one that is not seen; else the underside, or the face towards the middle of the first part.
    """
    shows = [(meet.across, side) in second.show for side in (False, True)]
    if shows[0] != shows[1]:
        return shows[0]
    if meet.across == 2:
        return False
    middle = (first.low[meet.across] + first.high[meet.across]) / 2
    return (second.low[meet.across] + second.high[meet.across]) / 2 <= middle + 1e-6


def _name(out: SetOut, first: Draft, length: float) -> str:
    fine = first.stock.kind == "wood" and first.stock.hardwood
    size = Printer("in", 25.4 / 64).text(length)
    if out.design.units == "mm":
        size = f"{length:.0f} mm ({size})"
    return f"{size} pocket screw, {'fine' if fine else 'coarse'} thread"


def _drive(
    out: SetOut,
    first: Draft,
    second: Draft,
    meet: Meeting,
    how: Setting,
    high: bool,
    along: float,
    screw: Screw,
    length: float,
    name: str,
    path: str,
) -> str:
    sine, cosine = math.sin(math.radians(how.angle)), math.cos(math.radians(how.angle))
    away, into = (1.0 if meet.high else -1.0), (-1.0 if high else 1.0)
    face = second.face(meet.across, high)
    mouth = spot(
        meet.axis, first.face(meet.axis, meet.high) + away * how.back, meet.across, face, meet.along, along
    )
    way = [0.0, 0.0, 0.0]
    way[meet.axis], way[meet.across] = -away * cosine, into * sine
    over = (screw.clearance_drill / 2 * sine / cosine + 0.5) * sine
    second.cuts.append(
        Bore(
            meet.across,
            high,
            mouth,
            screw.clearance_drill,
            out.sizer.settled(how.exit + over, "up"),
            purpose="clearance",
            for_=name,
            counterbore=out.tables.figure("pocket_bore").value,
            counterbore_depth=how.sunk,
            lean=-away * (90.0 - how.angle),
            lean_axis=meet.axis,
        )
    )
    head = [m + w * how.sunk / sine for m, w in zip(mouth, way, strict=True)]
    id = f"pocket_screw.{len(out.fasteners) + 1}"
    at: Vec = (head[0], head[1], head[2])
    out.fasteners.append(
        Fastener(
            id,
            "pocket screw",
            name,
            "pocket_screw",
            at,
            (way[0], way[1], way[2]),
            length,
            screw.shank,
            out.tables.figure("pocket_bore").value,
            second.id,
            first.id,
            place=out.design.place(path),
        )
    )
    return id


def _none_fits(
    out: SetOut, first: Draft, second: Draft, meet: Meeting, want: JointSettings, how: Setting | None
) -> None:
    thickness, room = second.size(meet.across), first.size(meet.axis)
    thinnest = _rows(out)[0][0] - THINNER
    if how is None:
        expected = f"stock {out.up(thinnest)} to {out.down(THICKEST)} thick"
        remedy = f"use stock of such a thickness for the {second.name}, or fasten it in another way"
    else:
        expected = (
            f"a {second.name} at least {out.up(2 * how.back)} long, and wood for two shank diameters and "
            f"{out.about(LEFT_BEYOND_TIP)} beyond the tip of the shortest screw that holds"
        )
        remedy = f"make the {first.name} thicker, or fasten it in another way"
    out.find(
        "fastener.none-fits",
        f"no pocket screw holds the {second.name} to the {first.name}",
        want.path,
        found=f"the {second.name} {out.about(thickness)} thick and {out.about(second.size(meet.axis))} long, "
        f"the {first.name} {out.about(room)} to drive into",
        expected=expected,
        source="common practice",
        remedy=remedy,
        parts=(first.id, second.id),
    )
