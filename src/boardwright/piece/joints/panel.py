"""A panel that floats in grooves: of a frame, a door, a lid, a bottom, a back.

A solid panel swells and shrinks across its grain, so it is cut short of the bottoms of its grooves by what it swells
from the day it is made to the wettest time, and the grooves are deep enough to hold it in the driest. Along the
grain, and for sheets, a small gap is enough.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from boardwright.piece.drafts import Channel, Draft, Step
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.records import Contact
from boardwright.piece.setout import SetOut

LEAST_HELD = 3.0
"""Least of a panel that stays in its groove at each side in the driest time [mm]: 1/8 in, common practice."""


@dataclass(frozen=True, slots=True)
class Wall:
    """A part with a groove for the panel, and the side of it that faces in."""

    part: Draft
    axis: int
    high: bool


@dataclass(frozen=True, slots=True)
class Room:
    """What a panel needs at each of two opposite sides [mm].

    Attributes:
        gap: from its edge to the bottom of the groove on the day it is made.
        held: what stands in the groove then.
        dry: what stands in it in the driest time.
    """

    gap: float
    held: float
    dry: float


def room_for(out: SetOut, panel: Draft, axis: int, between: float, depth: float, share: float = 0.5) -> Room:
    """The room that a panel needs along an axis.

    Args:
        out: the bench.
        panel: for its stock and how its grain lies.
        axis: a piece axis in the plane of the panel.
        between: clear size of the opening along it [mm].
        depth: of the grooves [mm].
        share: of its whole movement that it makes at this side; 1 when its other edge is held.
    """
    stock = panel.stock
    spare = out.tables.figure("drawer_bottom_short").value
    swell = shrink = 0.0
    if stock.kind == "wood":
        rate = stock.across if axis == panel.width_axis else stock.lengthwise
        swell = max(0.0, rate * (out.moisture.wettest - out.moisture.now)) * between * share
        shrink = max(0.0, rate * (out.moisture.now - out.moisture.driest)) * between * share
    gap = out.sizer.settled(spare + swell, "up")
    held = depth - gap
    return Room(gap, held, held - shrink)


def float_panel(
    out: SetOut,
    panel: Draft,
    walls: Sequence[Wall],
    *,
    depth: float,
    path: str,
    name: str,
    groove: tuple[float, float] | None = None,
    through: bool | None = None,
    held: Wall | None = None,
) -> tuple[Room, ...]:
    """Groove the parts round a panel, and let it grow into the grooves, dry.

    Args:
        out: the bench.
        panel: it fills the opening between the walls when this is called, and no more.
        walls: the parts round it; a side without one (open, or a panel that passes under a back) stays as it is.
        depth: of the grooves [mm].
        path: where the file asks for it.
        name: what the panel is called, for people.
        groove: from where to where the grooves lie on the axis of the panel's thickness [mm]; None for the whole
            panel. What stands over them is cut away round the edge, as deep in as the grooves are, so that its
            shoulders never bind.
        through: grooves run through the ends of the walls; None to stop them in a wall that goes on beyond the
            panel with an end that is seen.
        held: the wall to which its edge is glued; the panel then makes its whole movement at the opposite one.

    Returns:
        The room at each wall, in their order.
    """
    across = panel.thickness_axis
    low, high = groove or (panel.low[across], panel.high[across])
    opening = panel.box
    rooms = tuple(
        Room(0.0, depth, depth)
        if w is held
        else room_for(
            out,
            panel,
            w.axis,
            opening.size(w.axis),
            depth,
            1.0 if held is not None and w.axis == held.axis else 0.5,
        )
        for w in walls
    )
    _check(out, panel, walls, rooms, depth, path, name)
    for wall, room in zip(walls, rooms, strict=True):
        panel.grow(wall.axis, not wall.high, max(room.held, 0.0))
    for wall in walls:
        for face, amount in ((False, low - panel.low[across]), (True, panel.high[across] - high)):
            if amount > 1e-6:
                panel.shape_end(
                    Step(
                        across,
                        face,
                        wall.axis,
                        not wall.high,
                        depth,
                        amount,
                        holds=wall.part.id,
                        purpose="tongue",
                    )
                )
    for wall, room in zip(walls, rooms, strict=True):
        _house(out, panel, wall, room, depth, (low, high), path, name, through, wall is held)
    return rooms


def _house(
    out: SetOut,
    panel: Draft,
    wall: Wall,
    room: Room,
    depth: float,
    groove: tuple[float, float],
    path: str,
    name: str,
    through: bool | None,
    glued: bool,
) -> None:
    """The groove in one wall, and the joint there."""
    part, axis, across = wall.part, wall.axis, panel.thickness_axis
    along = 3 - axis - across
    start, end = _ends(part, panel, along, depth, through)
    low, high = groove
    part.cuts.append(
        Channel(axis, wall.high, along, low, high, depth, start, end, holds=panel.id, purpose="panel")
    )
    face = part.face(axis, wall.high)
    toward = -1.0 if wall.high else 1.0
    edge = panel.face(axis, not wall.high)
    short = max(0.0, toward * (face + toward * room.held - edge))
    lap = sorted((face, face + toward * max(room.held - short, 0.0)))
    seen = part.seen()
    run = (max(seen.low[along], panel.low[along]), min(seen.high[along], panel.high[along]))
    contacts: list[Contact] = [
        plane(across, low, {axis: (lap[0], lap[1]), along: run}, True, glued=glued),
        plane(across, high, {axis: (lap[0], lap[1]), along: run}, False, glued=glued),
        plane(
            axis,
            face + toward * depth,
            {across: groove, along: run},
            wall.high,
            glued=glued,
            gap=room.gap + short,
            why=f"room for the {name} to move" if room.gap + short else "",
        ),
    ]
    out.joint(
        "panel",
        part,
        panel,
        contacts,
        [unit(axis, wall.high)],
        f"{name} in a groove {out.text(high - low)} wide, {out.text(depth)} deep, "
        + ("glued at this edge" if glued else f"{out.text(room.gap)} of room, dry"),
        glued=glued,
        floats=() if glued else (axis, along),
        place=out.design.place(path),
    )


def _ends(
    part: Draft, panel: Draft, along: int, depth: float, through: bool | None
) -> tuple[float | None, float | None]:
    """Where a groove starts and ends [mm]; None where it runs through."""
    if through:
        return None, None
    opening = panel.seen()
    start, end = opening.low[along] - depth, opening.high[along] + depth
    stops = [
        (through is False or (along, high) in part.show) and beyond > 1e-6
        for high, beyond in ((False, start - part.low[along]), (True, part.high[along] - end))
    ]
    return start if stops[0] else None, end if stops[1] else None


def _check(
    out: SetOut,
    panel: Draft,
    walls: Sequence[Wall],
    rooms: Sequence[Room],
    depth: float,
    path: str,
    name: str,
) -> None:
    """A finding when the grooves are too shallow to hold the panel the whole year."""
    if not rooms:
        return
    worst = min(rooms, key=lambda r: r.dry)
    if worst.dry >= LEAST_HELD - 1e-6:
        return
    needed = depth + LEAST_HELD - worst.dry
    out.find(
        "wood.panel-groove-too-shallow",
        f"the {name} has no room to move in its grooves"
        if worst.held < LEAST_HELD
        else f"the {name} shrinks out of its grooves",
        path,
        found=f"grooves {out.about(depth)} deep; {out.about(worst.gap)} of room at each side, "
        f"{out.about(max(worst.dry, 0.0))} held in the driest time",
        expected=f"{out.up(LEAST_HELD)} held in the driest time",
        source="change of width: Wood Handbook FPL-GTR-190 eq. 13-2",
        remedy=f"make the grooves {out.up(needed)} deep, or use a sheet",
        parts=(panel.id, *(w.part.id for w in walls)),
    )
