"""The four legs of a table: square, tapered, splayed; their feet and tops cut level."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians, sin

from boardwright.core.poses import Box, Pose, Vec, add, scaled
from boardwright.piece.cuts import Taper
from boardwright.piece.drafts import Draft
from boardwright.piece.forms.planes import level
from boardwright.piece.forms.table_plan import TablePlan
from boardwright.piece.joints.sloping import Plane, cut_to, frame, side_plane, stretch
from boardwright.piece.setout import SetOut


@dataclass(frozen=True, slots=True)
class Leg:
    """A leg, and which corner it stands at: at the right, at the rear."""

    draft: Draft
    right: bool
    rear: bool

    def outward(self, axis: int) -> bool:
        """True when its outer side on an axis is its high side."""
        return self.right if axis == 0 else self.rear


def lean(ends: float, front: float, right: bool, rear: bool) -> Pose:
    """How a leg at a corner leans: first to the front or rear, then with its end frame to the left or right.

    Args:
        ends: splay to the left and right [degrees].
        front: splay to the front and rear, in the plane of the end frame [degrees].
        right: at the right.
        rear: at the rear.
    """
    a, b = radians(ends), radians(front)
    sa, sb = sin(a) * (-1.0 if right else 1.0), sin(b) * (-1.0 if rear else 1.0)
    ca, cb = cos(a), cos(b)

    def sideways(v: Vec) -> Vec:
        return (ca * v[0] + sa * v[2], v[1], -sa * v[0] + ca * v[2])

    return Pose((0.0, 0.0, 0.0), sideways((1.0, 0.0, 0.0)), sideways((0.0, cb, -sb)), sideways((0.0, sb, cb)))


def about(point: Vec, turn: Pose) -> Pose:
    """A turn round a point of the piece."""
    return Pose(add(point, scaled(turn.direction(point), -1.0)), turn.x, turn.y, turn.z)


def put_legs(out: SetOut, plan: TablePlan) -> list[Leg]:
    """Put the legs on the bench: front left, front right, rear left, rear right."""
    made = []
    for rear in (False, True):
        for right in (False, True):
            made.append(_leg(out, plan, right, rear))
    return made


def _leg(out: SetOut, plan: TablePlan, right: bool, rear: bool) -> Leg:
    f, (wide, thick) = plan.frame, plan.leg
    x = (f.high[0] - wide, f.high[0]) if right else (f.low[0], f.low[0] + wide)
    y = (f.high[1] - thick, f.high[1]) if rear else (f.low[1], f.low[1] + thick)
    draft = out.add(
        f"table.leg.{'rear' if rear else 'front'}.{'right' if right else 'left'}",
        "leg",
        plan.leg_stock,
        Box((x[0], y[0], 0.0), (x[1], y[1], f.high[2])),
        (2, 0),
        show=((0, right), (1, rear), (0, not right), (1, not rear)),
        path="table.legs",
    )
    leg = Leg(draft, right, rear)
    if not plan.upright:
        top: Vec = (x[right], y[rear], f.high[2])
        draft.tilt = about(top, lean(*plan.splay, right, rear))
        floor, ceiling = level(0.0), level(f.high[2])
        stretch(out, draft, 2, floor, ceiling, even=False)
        cut_to(draft, 2, False, floor)
        cut_to(draft, 2, True, ceiling)
    if plan.taper is not None:
        for axis in (0, 1):
            _taper(plan, leg, axis)
    return leg


def _depths(plan: TablePlan, axis: int) -> tuple[float, float]:
    """What a taper takes off the inner and the outer face at the foot [mm]."""
    assert plan.taper is not None
    off = plan.leg[axis] - plan.taper.foot
    return (off, 0.0) if plan.taper.faces == "inner" else (off / 2, off / 2)


def _taper(plan: TablePlan, leg: Leg, axis: int) -> None:
    assert plan.taper is not None
    d = leg.draft
    for depth, high in zip(_depths(plan, axis), (not leg.outward(axis), leg.outward(axis)), strict=True):
        if depth > 1e-9:
            start = max(plan.taper.start, d.low[2])
            d.cuts.append(Taper(d.side(axis, high), d.side(2, False), start, depth))


def inner_face(plan: TablePlan, leg: Leg, axis: int, under: float) -> Plane:
    """The inner face of a leg that parts meet whose upper edge lies at a height in the leg's frame [mm].

    Its normal points away from the leg.
    """
    d = leg.draft
    high = not leg.outward(axis)
    if plan.taper is None or under > plan.taper.start + 1e-6:
        return side_plane(d, axis, high)
    fall = _depths(plan, axis)[0] / (plan.taper.start - d.low[2])
    point, normal = [0.0, 0.0, plan.taper.start], [0.0, 0.0, -fall]
    point[axis] = d.face(axis, high)
    normal[axis] = 1.0 if high else -1.0
    pose = frame(d)
    return Plane.through(
        pose.point((point[0], point[1], point[2])), pose.direction((normal[0], normal[1], normal[2]))
    )


def middle_at(plan: TablePlan, leg: Leg, z: float) -> Vec:
    """The middle of a leg at a height over the floor, in the piece [mm]."""
    pose = frame(leg.draft)
    own = z
    for _ in range(3):
        point = pose.point((_middle(plan, leg, 0, own), _middle(plan, leg, 1, own), own))
        own += (z - point[2]) / pose.z[2]
    return pose.point((_middle(plan, leg, 0, own), _middle(plan, leg, 1, own), own))


def _middle(plan: TablePlan, leg: Leg, axis: int, z: float) -> float:
    """Where the middle of a leg lies on an axis at a height, both in the leg's own frame [mm]."""
    d = leg.draft
    middle = (d.low[axis] + d.high[axis]) / 2
    if plan.taper is None or z > plan.taper.start:
        return middle
    inner, outer = _depths(plan, axis)
    share = (plan.taper.start - z) / (plan.taper.start - d.low[2])
    return middle + (inner - outer) / 2 * share * (1.0 if leg.outward(axis) else -1.0)
