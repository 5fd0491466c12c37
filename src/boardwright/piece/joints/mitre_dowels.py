"""Dowels across a mitre, square to its face."""

from __future__ import annotations

from math import atan2, degrees

from boardwright.core.poses import add, scaled
from boardwright.piece.drafts import Bore, Draft
from boardwright.piece.joints.fastening import LEFT_BEYOND_TIP, places
from boardwright.piece.joints.fastening.dowels import dowel_name
from boardwright.piece.joints.fastening.spots import DOWEL_SPACING
from boardwright.piece.joints.mitre_corner import MitreCorner, Point
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.records import Fastener
from boardwright.piece.setout import SetOut
from boardwright.tables.records import Dowel

FLAT_PLACES = (1 / 3, 2 / 3)
"""Where dowels stand along the mitre of a frame, from the inner corner: common practice."""
EDGE_PLACE = 1 / 4
"""Where dowels and biscuits stand across the mitre of a case, from the inner corner: there the wood is deep (common
practice)."""


def dowelled(
    out: SetOut, first: Draft, second: Draft, corner: MitreCorner, want: JointSettings, *, flat: bool
) -> tuple[str, tuple[str, ...]]:
    """Bore both mitred faces for dowels and keep them; gives their words and ids."""
    spots = _spots(out, corner, want, flat=flat)
    thin = corner.span[1] - corner.span[0] if flat else min(corner.sides)
    room = min(corner.room(p) for p, _ in spots) - LEFT_BEYOND_TIP
    spare = out.tables.figure("dowel_hole_extra").value
    best = _choose(out, thin, room - spare)
    if best is None:
        out.find(
            "fastener.none-fits",
            f"no dowel on sale fits the mitre of the {first.name} and the {second.name}",
            want.path,
            found=f"{out.about(max(room, 0.0))} of wood square to its face, {out.about(thin)} thick",
            expected="half of a dowel in each, of at most half the thickness",
            source="common practice",
            remedy="use `with: spline` or `with: keys`",
            parts=(first.id, second.id),
        )
        return "", ()
    ids = []
    for place, at in spots:
        for is_second, part in ((False, first), (True, second)):
            _bore(
                part,
                corner,
                place,
                at,
                best.diameter,
                best.length / 2 + spare,
                dowel_name(out, best),
                is_second,
            )
        id = f"dowel.{len(out.fasteners) + 1}"
        ids.append(id)
        normal = corner.plane.normal
        out.fasteners.append(
            Fastener(
                id,
                "dowel",
                dowel_name(out, best),
                best.key,
                add(corner.point(place, at), scaled(normal, -best.length / 2)),
                normal,
                best.length,
                best.diameter,
                best.diameter,
                first.id,
                second.id,
                False,
                out.design.place(want.path),
            )
        )
    return f", {len(ids)} dowel{'s' * (len(ids) > 1)} square to it", tuple(ids)


def _choose(out: SetOut, thin: float, room: float) -> Dowel | None:
    """The dowel nearest to 0.4 of the thickness, and at most half of it, of which half goes into each part."""
    metric = out.design.units == "mm"
    fitting = [
        d for d in out.tables.dowels.values() if d.diameter <= thin / 2 + 1e-6 and d.length / 2 <= room + 1e-6
    ]
    own = [d for d in fitting if (abs(d.diameter - round(d.diameter)) < 1e-6) == metric] or fitting
    return min(own, key=lambda d: (abs(d.diameter - thin * 0.4), d.diameter, -d.length), default=None)


def _spots(out: SetOut, corner: MitreCorner, want: JointSettings, *, flat: bool) -> list[tuple[Point, float]]:
    """Places on the mitre, and how far up the axis square to the corner [mm]."""
    settled = out.sizer.settled
    low, high = corner.span

    def place(share: float) -> Point:
        return corner.along(settled(corner.sides[0] * share) / abs(corner.way[0]))

    if not flat:
        return [(place(EDGE_PLACE), at) for at in places(out, corner.span, want.count, DOWEL_SPACING)]
    n = want.count or len(FLAT_PLACES)
    shares = FLAT_PLACES if n == len(FLAT_PLACES) else [(2 * i + 1) / (2 * n) for i in range(n)]
    return [(place(share), low + settled((high - low) / 2)) for share in shares]


def _bore(
    part: Draft,
    corner: MitreCorner,
    p: Point,
    at: float,
    diameter: float,
    depth: float,
    name: str,
    second: bool,
) -> None:
    """A leaning hole from the side of the blank in which the line of the dowel comes out of it."""
    sign = 1.0 if second else -1.0
    end, inner = (0, 1) if second else (1, 0)
    axes = (corner.axis, corner.run)
    highs = (corner.axis_high, corner.run_high)
    n = corner.normal
    for i, level, high in (
        (end, part.face(axes[end], highs[end]), highs[end]),
        (inner, corner.inner[inner], not highs[inner]),
    ):
        k = (level - p[i]) / n[i]
        q = (p[0] + k * n[0], p[1] + k * n[1])
        other = 1 - i
        if (q[other] - corner.inner[other]) * (q[other] - corner.outer[other]) <= 1e-6:
            way = (sign * n[0], sign * n[1])
            part.cuts.append(
                Bore(
                    axes[i],
                    high,
                    corner.point(q, at),
                    diameter,
                    depth * abs(way[i]) + abs(level - p[i]),
                    purpose="dowel",
                    for_=name,
                    lean=degrees(atan2(way[other], abs(way[i]))),
                    lean_axis=axes[other],
                )
            )
            return
