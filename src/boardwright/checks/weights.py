"""What the piece weighs, where its middle lies, and how both shift when it is opened and filled."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians, sin

from boardwright.checks.context import Context
from boardwright.checks.loads import GRAVITY, pressure
from boardwright.core.poses import Vec, add, cross, dot, scaled
from boardwright.piece.records import Motion, Part
from boardwright.solids.mesh import weigh

OBSTRUCTION = 3.175
"""Left over a drawer's filling, under what is over it [mm]: 1/8 in, as the clothing-storage rule counts its volume."""
UPRIGHT = 0.3
"""A part stands when its thickness is level to this cosine."""


@dataclass(frozen=True, slots=True)
class Mass:
    """A mass [kg] and its middle [mm]."""

    mass: float
    at: Vec


@dataclass(frozen=True, slots=True)
class Moving:
    """Something that opens.

    Attributes:
        motion: its record. own: its parts, shut. filling: what it holds when full, shut. volume: its room [mm3].
        front: how far its front face stands before the front feet, shut, below 0 behind [mm]; in y of the piece.
    """

    motion: Motion
    own: Mass
    filling: Mass
    volume: float
    front: float


@dataclass(frozen=True, slots=True)
class Weighed:
    """A piece on the scales.

    Attributes:
        still: what does not move. moving: what does.
        foot: the front edge of what stands on the floor, in y of the piece [mm]. rear: its rear edge.
    """

    still: Mass
    moving: tuple[Moving, ...]
    foot: float
    rear: float

    @property
    def mass(self) -> float:
        """Empty [kg]."""
        return self.still.mass + sum(m.own.mass for m in self.moving)


def weighed(c: Context) -> Weighed | None:
    """Put a piece on the scales; None when nothing of it stands on the floor."""
    floor = c.piece.outside.low[2]
    ids = {m.id for m in c.piece.motions}
    feet = [p for p in c.piece.parts if p.box.low[2] < floor + 1 and p.group not in ids]
    if not feet:
        return None
    still = _mass([p for p in c.piece.parts if p.group not in ids])
    moving = tuple(
        _moving(c, m, group)
        for m in c.piece.motions
        if (group := [p for p in c.piece.parts if p.group == m.id])
    )
    return Weighed(still, moving, min(p.box.low[1] for p in feet), max(p.box.high[1] for p in feet))


def _mass(parts: list[Part]) -> Mass:
    w = weigh(parts)
    return Mass(w.mass, w.centre)


def _moving(c: Context, m: Motion, group: list[Part]) -> Moving:
    own = _mass(group)
    front = min(p.box.low[1] for p in group)
    room = _room(m, group) if not m.turn else None
    if room is None:
        return Moving(m, own, Mass(0.0, own.at), 0.0, front)
    low, high = room
    size = [max(0.0, h - k) for k, h in zip(low, high, strict=True)]
    load = pressure(c.tables, c.loads.drawers, size[0], size[1], size[2]) if size[0] * size[1] > 0 else 0.0
    filling = load * size[0] * size[1] / GRAVITY
    if m.load > 0 and "drawers" not in c.loads.given:
        filling = m.load
    middle = scaled(add(low, high), 0.5)
    return Moving(m, own, Mass(filling, middle), size[0] * size[1] * size[2], front)


def _room(m: Motion, group: list[Part]) -> tuple[Vec, Vec] | None:
    """The room inside a drawer: between its walls, from its bottom to the lowest thing over it [mm]."""
    lying = [p for p in group if abs(p.pose.z[2]) > 0.9]
    if not lying:
        return None
    bottom = max(lying, key=lambda p: p.size[0] * p.size[1])
    b = bottom.box
    low, high = list(b.low), list(b.high)
    low[2], high[2] = b.high[2], m.opening.high[2] - OBSTRUCTION
    middle = b.middle()
    for p in group:
        q = p.box
        if abs(p.pose.z[2]) > UPRIGHT or q.high[2] < b.high[2] + 10:
            continue
        axis = 0 if abs(p.pose.z[0]) > abs(p.pose.z[1]) else 1
        if q.high[axis] < middle[axis]:
            low[axis] = max(low[axis], q.high[axis])
        elif q.low[axis] > middle[axis]:
            high[axis] = min(high[axis], q.low[axis])
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def opened(m: Motion, at: Vec) -> Vec:
    """Where a point of something that moves lies when it is open [mm]."""
    if not m.turn:
        return add(at, scaled(m.direction, m.travel))
    arm = add(at, scaled(m.pivot, -1.0))
    k, angle = m.direction, radians(m.turn)
    turned = add(
        add(scaled(arm, cos(angle)), scaled(cross(k, arm), sin(angle))),
        scaled(k, dot(k, arm) * (1 - cos(angle))),
    )
    return add(m.pivot, turned)


def hung(c: Context) -> bool:
    """True for a piece that hangs on a wall."""
    return any(p.name == "wall cleat" for p in c.piece.parts)
