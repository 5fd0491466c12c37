"""Biscuits across a mitre: slots square to the mitred faces."""

from __future__ import annotations

from math import atan2, degrees

from boardwright.piece.cuts import BiscuitSlot
from boardwright.piece.drafts import Draft
from boardwright.piece.joints.areas import Rect
from boardwright.piece.joints.faces import unit
from boardwright.piece.joints.fastening.across import put_leaning
from boardwright.piece.joints.fastening.biscuits import Biscuit, biscuit_places, choose_biscuit, too_many
from boardwright.piece.joints.mitre_corner import MitreCorner, Point
from boardwright.piece.joints.mitre_dowels import EDGE_PLACE
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.setout import SetOut


def biscuited(
    out: SetOut, first: Draft, second: Draft, corner: MitreCorner, want: JointSettings, *, flat: bool
) -> tuple[str, tuple[str, ...], list[Rect]]:
    """Cut both mitred faces for biscuits and keep them; gives words, ids, and where the slots lie in the mitre."""
    low, high = corner.span
    if flat:
        thin, run = high - low, corner.length
        share = 1 / 2
    else:
        thin, run = min(corner.sides), high - low
        share = EDGE_PLACE
    spot = corner.along(out.sizer.settled(corner.sides[0] * share) / abs(corner.way[0]))
    one = choose_biscuit(out, first, second, want, (thin, corner.room(spot), run))
    if one is None:
        return "", (), []
    if not flat:
        places = biscuit_places(out, first, second, want, one, corner.span)
    elif want.count is not None and want.count > 1:
        too_many(out, first, second, want, one, 1, run)
        places = []
    else:
        places = [low + out.sizer.settled((high - low) / 2)]
    ids, slots = [], []
    for at in places:
        _slot(first, corner, spot, at, one, second.id, flat=flat, second=False)
        _slot(second, corner, spot, at, one, first.id, flat=flat, second=True)
        along = corner.vector(corner.way) if flat else unit(corner.square, True)
        size = (one.width, one.length, one.thickness)
        ids.append(
            put_leaning(
                out, "biscuit", one.name, (first, second), corner.point(spot, at), corner.plane.normal, along,
                size, one.width / 2, want.path,
            )
        )  # fmt: skip
        slots.append(_rect(corner, spot, at, one, flat=flat))
    if not ids:
        return "", (), []
    many = f"{len(places)} No. {one.number} biscuits" if len(places) > 1 else f"No. {one.number} biscuit"
    return f", {many}", tuple(ids), slots


def _slot(
    part: Draft,
    corner: MitreCorner,
    p: Point,
    at: float,
    one: Biscuit,
    other: str,
    *,
    flat: bool,
    second: bool,
) -> None:
    """A slot square into the mitred end of a part."""
    sign = 1.0 if second else -1.0
    end, aside = (0, 1) if second else (1, 0)
    axes, highs = (corner.axis, corner.run), (corner.axis_high, corner.run_high)
    n = corner.normal
    side = part.side(axes[end], highs[end])
    lean_along = part.index(axes[aside])
    middle = corner.point(p, at)
    where = [middle[axis] for k, axis in enumerate(part.axes) if k != side.axis]
    part.cuts.append(
        BiscuitSlot(
            side,
            lean_along if flat else part.index(corner.square),
            (where[0], where[1]),
            one.thickness,
            one.depth,
            one.radius,
            one.name,
            other,
            degrees(atan2(sign * n[aside], abs(n[end]))),
            lean_along,
            abs(part.face(axes[end], highs[end]) - p[end]),
        )
    )


def _rect(corner: MitreCorner, p: Point, at: float, one: Biscuit, *, flat: bool) -> Rect:
    """Where a slot lies in the mitre: from and to along it from the inner corner, and on the axis square to it."""
    t = ((p[0] - corner.inner[0]) ** 2 + (p[1] - corner.inner[1]) ** 2) ** 0.5
    long, thick = one.cut / 2, one.thickness / 2
    u, v = (long, thick) if flat else (thick, long)
    return ((t - u, t + u), (at - v, at + v))
