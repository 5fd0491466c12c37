"""Joints at faces that are square to no axis: splayed legs, tapered legs, sloping sides."""

from __future__ import annotations

from dataclasses import dataclass
from math import atan2, degrees

from boardwright.core.poses import Pose, Vec, add, cross, dot, scaled
from boardwright.piece.cuts import Bevel, Taper
from boardwright.piece.drafts import Bore, Draft
from boardwright.piece.joints.faces import facet
from boardwright.piece.joints.fastening.dowels import choose_dowel, dowel_name
from boardwright.piece.joints.fastening.spots import DOWEL_SPACING, places
from boardwright.piece.records import Contact, Fastener
from boardwright.piece.setout import SetOut

SQUARE = Pose()
APART = 2.5
"""Wood left between the dowels of two rails that meet in a leg [mm]: common practice."""
LEAST_IN = 5.0
"""Least of a dowel in a leg [mm]: 3/16 in, common practice."""


@dataclass(frozen=True, slots=True)
class Plane:
    """A plane in the piece: all points p with normal . p = at [mm]; the normal is a unit vector."""

    normal: Vec
    at: float

    @classmethod
    def through(cls, point: Vec, normal: Vec) -> Plane:
        """The plane through a point, square to a direction."""
        n = scaled(normal, 1 / dot(normal, normal) ** 0.5)
        return cls(n, dot(n, point))

    def beyond(self, by: float) -> Plane:
        """The plane moved along its normal [mm]."""
        return Plane(self.normal, self.at + by)


def frame(draft: Draft) -> Pose:
    """From the frame in which a draft lies square to the piece."""
    return draft.tilt or SQUARE


def side_plane(draft: Draft, axis: int, high: bool) -> Plane:
    """The plane of a side of a draft; its normal points out of the part."""
    out, at = [0.0, 0.0, 0.0], [0.0, 0.0, 0.0]
    out[axis] = 1.0 if high else -1.0
    at[axis] = draft.face(axis, high)
    pose = frame(draft)
    return Plane.through(pose.point((at[0], at[1], at[2])), pose.direction((out[0], out[1], out[2])))


def _in_frame(draft: Draft, plane: Plane) -> tuple[Vec, float]:
    pose = frame(draft)
    return pose.inverse_direction(plane.normal), plane.at - dot(plane.normal, pose.origin)


def edges_at(draft: Draft, axis: int, plane: Plane) -> list[Vec]:
    """Where the four edges of a draft along an axis pass a plane, in its own frame, in turn round it [mm]."""
    n, at = _in_frame(draft, plane)
    u, v = (i for i in range(3) if i != axis)
    out: list[Vec] = []
    for pu, pv in (
        (draft.low[u], draft.low[v]),
        (draft.high[u], draft.low[v]),
        (draft.high[u], draft.high[v]),
        (draft.low[u], draft.high[v]),
    ):
        p = [0.0, 0.0, 0.0]
        p[u], p[v] = pu, pv
        p[axis] = (at - n[u] * pu - n[v] * pv) / n[axis]
        out.append((p[0], p[1], p[2]))
    return out


def cut_to(draft: Draft, axis: int, high: bool, plane: Plane, holds: str = "") -> None:
    """Cut a side of a draft off along a plane."""
    n, at = _in_frame(draft, plane)
    side = draft.side(axis, high)
    u, v = (draft.axes[i] for i in range(3) if i != side.axis)
    slopes = (-n[u] / n[axis], -n[v] / n[axis])
    place = at / n[axis]
    level = max(abs(s) for s in slopes) < 1e-9
    if level and abs(place - draft.face(axis, high)) < 1e-6:
        return
    draft.cuts.append(Bevel(side, place, slopes[0], slopes[1], holds))


def cuts_along(draft: Draft, cut: Bevel, plane: Plane) -> bool:
    """Whether a bevel of a draft lies in a plane."""
    n, at = _in_frame(draft, plane)
    axis = draft.axes[cut.side.axis]
    if abs(n[axis]) < 1e-6:
        return False
    u, v = (draft.axes[i] for i in range(3) if i != cut.side.axis)
    wanted = (at / n[axis], -n[u] / n[axis], -n[v] / n[axis])
    found = (cut.at, cut.over_u, cut.over_v)
    return all(abs(a - b) < 1e-6 for a, b in zip(wanted, found, strict=True))


def stretch(out: SetOut, draft: Draft, axis: int, low: Plane, high: Plane, *, even: bool = True) -> None:
    """Make a draft just long enough to be cut along two planes, its blank on the step.

    Args:
        out: the bench.
        draft: its sides on the other two axes are settled.
        axis: that is stretched.
        low: the plane at its low end.
        high: the plane at its high end.
        even: what the step adds is shared by both ends, so that the part stays even; else it is at the high end.
    """
    a = min(p[axis] for p in edges_at(draft, axis, low))
    b = max(p[axis] for p in edges_at(draft, axis, high))
    size = out.sizer.settled(b - a, "up")
    more = (size - (b - a)) / 2 if even else 0.0
    draft.low[axis] = a - more
    draft.high[axis] = a - more + size


def shoulder(second: Draft, axis: int, plane: Plane, *, glued: bool = True) -> Contact:
    """The face in which the end of a part lies against a plane whose normal points into that part."""
    pose = frame(second)
    corners = [pose.point(p) for p in edges_at(second, axis, plane)]
    return outline(corners, plane.normal, glued=glued)


def outline(corners: list[Vec], normal: Vec, *, glued: bool = True, why: str = "") -> Contact:
    """A contact from its corners, turned so that they run counter-clockwise round a normal."""
    turn = cross(add(corners[1], scaled(corners[0], -1.0)), add(corners[2], scaled(corners[0], -1.0)))
    if dot(turn, normal) < 0:
        corners = corners[::-1]
    return facet(tuple(corners), glued=glued, why=why)


@dataclass(frozen=True, slots=True)
class End:
    """A side of a part that meets another: the draft, and whether a third may meet it from a side beside."""

    draft: Draft
    axis: int
    high: bool
    shared: bool = True


def sloping_butt(out: SetOut, first: End, second: End, plane: Plane, fasten: str, path: str) -> None:
    """Glue the end of a part to a sloping face, with dowels square to the side of the blank it is worked from.

    So all rails that meet a leg from one side go into it the same way, also where the leg is tapered.

    Args:
        out: the bench.
        first: the part with the face, and the side of its blank that the face is worked from.
        second: the part that meets it; its end is already cut along the plane.
        plane: the face; its normal points into the second part.
        fasten: `dowels` or `none`.
        path: where the file asks for it.
    """
    contact = shoulder(second.draft, second.axis, plane)
    way = side_plane(first.draft, first.axis, first.high).normal
    ids = _dowels(out, first, second, plane, way, path) if fasten == "dowels" else ()
    held = f"{len(ids)} dowels" if ids else "no fasteners"
    out.joint(
        "butt",
        first.draft,
        second.draft,
        [contact],
        [way],
        f"butt joint, sloping shoulder, {held}, glued",
        fasteners=ids,
        place=out.design.place(path),
    )


def _dowels(out: SetOut, first: End, second: End, plane: Plane, way: Vec, path: str) -> tuple[str, ...]:
    across, along = sorted((i for i in range(3) if i != second.axis), key=lambda i: (second.draft.size(i), i))
    thin = second.draft.size(across)
    run = (second.draft.low[along], second.draft.high[along])
    dowel = choose_dowel(out, thin, run[1] - run[0])
    settled = out.sizer.settled
    spare = out.tables.figure("dowel_hole_extra").value
    spots = [
        _on_step(out, first, _on_end(second, plane, along, at, across), plane)
        for at in places(out, run, None, DOWEL_SPACING)
    ]
    wood = min(_wood_behind(first, p) for p in spots)
    most = wood / 2 - (dowel.diameter / 2 if dowel else 0.0) - APART if first.shared else wood - APART
    in_first = settled(min(dowel.length / 3, most - spare), "down") if dowel else 0.0
    if (
        dowel is None
        or in_first < LEAST_IN
        or dowel.length - in_first + spare > second.draft.size(second.axis) / 2
    ):
        out.find(
            "fastener.none-fits",
            f"no dowel on sale fits the {second.draft.name}",
            path,
            found=f"{out.about(thin)} thick, {out.about(second.draft.size(second.axis))} long, "
            f"{out.about(wood)} of the {first.draft.name} behind it",
            expected=f"a dowel of at most half the thickness, {out.up(LEAST_IN)} of it in the {first.draft.name} "
            "clear of the dowels of other rails, and wood between those of the two ends",
            source="common practice",
            remedy="use thicker stock or a longer part, or `fasten: none`",
            parts=(first.draft.id, second.draft.id),
        )
        return ()
    name = dowel_name(out, dowel)
    ids = []
    for point in spots:
        back = scaled(way, -1.0)
        _drill(first, point, back, dowel.diameter, settled(in_first + spare, "up"), name)
        deep = settled(dowel.length - in_first + spare, "up")
        _drill(second, point, way, dowel.diameter, deep, name, first.draft.id)
        id = f"dowel.{len(out.fasteners) + 1}"
        ids.append(id)
        out.fasteners.append(
            Fastener(
                id,
                "dowel",
                name,
                dowel.key,
                add(point, scaled(back, in_first)),
                way,
                dowel.length,
                dowel.diameter,
                dowel.diameter,
                first.draft.id,
                second.draft.id,
                False,
                out.design.place(path),
            )
        )
    return tuple(ids)


def _wood_behind(first: End, point: Vec) -> float:
    """Wood behind a point of a face, as far as the other side, which a leg may have tapered [mm]."""
    d = first.draft
    q = frame(d).inverse_point(point)
    away = sum(
        c.depth * max(0.0, c.start - q[2]) / (c.start - d.low[2])
        for c in d.cuts
        if isinstance(c, Taper) and c.side is d.side(first.axis, not first.high)
    )
    return abs(q[first.axis] - d.face(first.axis, not first.high)) - away


def _on_end(second: End, plane: Plane, along: int, at: float, across: int) -> Vec:
    """The point of a sloping end at a place along it, in the middle of its thickness, in the piece [mm]."""
    n, where = _in_frame(second.draft, plane)
    p = [0.0, 0.0, 0.0]
    p[along] = at
    p[across] = (second.draft.low[across] + second.draft.high[across]) / 2
    p[second.axis] = (where - n[along] * p[along] - n[across] * p[across]) / n[second.axis]
    return frame(second.draft).point((p[0], p[1], p[2]))


def _on_step(out: SetOut, first: End, point: Vec, plane: Plane) -> Vec:
    """The point of a face nearest to another whose places on the part lie on the step [mm]."""
    pose = frame(first.draft)
    q = list(pose.inverse_point(point))
    n, where = _in_frame(first.draft, plane)
    others = [i for i in range(3) if i != first.axis]
    for i in others:
        q[i] = first.draft.low[i] + out.sizer.settled(q[i] - first.draft.low[i])
    q[first.axis] = (where - sum(n[i] * q[i] for i in others)) / n[first.axis]
    return pose.point((q[0], q[1], q[2]))


def _drill(end: End, point: Vec, way: Vec, diameter: float, depth: float, name: str, mate: str = "") -> None:
    """A hole from a point of a sloping face into a part, as it is measured from the side of the blank."""
    draft, axis = end.draft, end.axis
    pose = frame(draft)
    q, w = pose.inverse_point(point), pose.inverse_direction(way)
    side = draft.face(axis, end.high)
    at = add(q, scaled(w, (side - q[axis]) / w[axis]))
    others = [i for i in range(3) if i != axis]
    lean_axis = max(others, key=lambda i: (abs(w[i]), -i))
    lean = degrees(atan2(w[lean_axis], abs(w[axis])))
    if abs(lean) < 1e-9:
        lean, lean_axis = 0.0, 0
    deep = depth * abs(w[axis]) + abs(side - q[axis])
    draft.cuts.append(
        Bore(
            axis,
            end.high,
            at,
            diameter,
            deep,
            purpose="dowel",
            for_=name,
            mate=mate,
            marked=bool(mate),
            lean=lean,
            lean_axis=lean_axis,
        )
    )
