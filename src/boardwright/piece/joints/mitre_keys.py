"""Keys across the outer corner of a mitre: slots through both parts, and a three-cornered key in each."""

from __future__ import annotations

from boardwright.core.poses import Pose, Vec, cross
from boardwright.piece.cuts import Moulding
from boardwright.piece.drafts import Draft
from boardwright.piece.joints.areas import Range, Rect
from boardwright.piece.joints.loose_strips import strip, strip_stock
from boardwright.piece.joints.mitre_corner import MitreCorner, Point
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.joints.sloping import cut_to, outline, side_plane
from boardwright.piece.records import Contact, Stock
from boardwright.piece.setout import SetOut

DEPTH_SHARE = 0.6
"""Depth of the slot for a key, of the way from the outer to the inner corner square to it: common practice."""
DEEPEST = 25.4
"""Deepest slot for a key by the rule [mm]: 1 in, common practice."""
CLEAR = 0.5
"""Between a key and the corner of a panel that stands in grooves behind it, at least [mm]."""
PITCH = 76.2
"""Between keys along the corner of a case, at most [mm]: 3 in, common practice."""
ROOT = 2**0.5


def keyed(
    out: SetOut, first: Draft, second: Draft, corner: MitreCorner, want: JointSettings, *, flat: bool
) -> tuple[str, list[Rect]]:
    """Slot the outer corner and put keys in; gives their words and where the slots lie in the mitre."""
    low, high = corner.span
    found = strip_stock(out, second, want, min((high - low) / 2, *corner.sides))
    if found is None:
        return "", []
    stock, thick = found
    across = sum(corner.sides) / ROOT
    room = across - want.taken * ROOT - (CLEAR if want.taken else 0.0)
    depth = out.sizer.size(
        f"{want.name}.depth",
        [(f"{want.path}.depth", want.keys.depth if want.keys else None)],
        min(across * DEPTH_SHARE, DEEPEST, room),
        rule="slot for a key, from the outer corner"
        + (", short of the corner of the panel" if room < across * DEPTH_SHARE else ""),
        direction="down",
        least=2 * out.sizer.step,
    )
    depth = out.at_most(
        depth,
        min(across - 3.0, room, min(corner.sides) * ROOT),
        "the slot for a key",
        f"{want.path}.depth",
        across,
    )
    n = want.count or (1 if flat else max(2, round((high - low) / PITCH)))
    settled = out.sizer.settled
    slots: list[Rect] = []
    for i in range(n):
        near = low + settled((high - low) * (2 * i + 1) / (2 * n) - thick / 2)
        start = _key(out, first, second, corner, want, stock, (near, near + thick), depth)
        slots.append(((start, corner.length), (near, near + thick)))
    return f", {n} key{'s' * (n > 1)} {out.text(thick)} thick, {out.text(depth)} deep", slots


def _key(
    out: SetOut,
    first: Draft,
    second: Draft,
    corner: MitreCorner,
    want: JointSettings,
    stock: Stock,
    span: Range,
    depth: float,
) -> float:
    """Make a slot and its key; gives where the slot begins along the mitre, from the inner corner [mm]."""
    leg = depth * ROOT
    for part, on, at, across, side in (
        (first, corner.run, corner.run_high, corner.axis, corner.axis_high),
        (second, corner.axis, corner.axis_high, corner.run, corner.run_high),
    ):
        size = leg + abs(part.face(on, at) - corner.outer[0 if part is second else 1])
        part.cuts.append(
            Moulding(part.side(on, at), part.side(across, side), "chamfer", size, (), span[0], span[1])
        )
    sa, sr = (1.0 if corner.axis_high else -1.0), (1.0 if corner.run_high else -1.0)
    out_way = corner.vector((sa / ROOT, sr / ROOT))
    side_way = corner.vector((sa / ROOT, -sr / ROOT))
    third = cross(side_way, out_way)
    up = third[corner.square] > 0
    o = corner.outer
    middle = corner.point((o[0] - sa * depth / ROOT, o[1] - sr * depth / ROOT), span[0])
    thick = span[1] - span[0]
    key = strip(
        out, second, "key", stock, (-depth, 0.0, 0.0 if up else -thick), (depth, depth, thick if up else 0.0),
        (0, 1), Pose(middle, side_way, out_way, third), want.path,
    )  # fmt: skip
    cut_to(key, 0, True, side_plane(first, corner.axis, corner.axis_high), first.id)
    cut_to(key, 0, False, side_plane(second, corner.run, corner.run_high), second.id)
    leg_ends: tuple[Point, Point] = ((o[0], o[1] - sr * leg), (o[0] - sa * leg, o[1]))
    m = _on_mitre(corner, leg_ends)
    for part, tip in zip((first, second), leg_ends, strict=True):
        out.joint(
            "key",
            part,
            key,
            _contacts(corner, [o, tip, m], span, out_way, glued=want.glue),
            [out_way],
            f"key across the corner, slot {out.text(depth)} deep{', glued' if want.glue else ', dry'}",
            glued=want.glue,
            place=out.design.place(want.path),
        )
    return float(((m[0] - corner.inner[0]) ** 2 + (m[1] - corner.inner[1]) ** 2) ** 0.5)


def _on_mitre(corner: MitreCorner, ends: tuple[Point, Point]) -> Point:
    """Where the bottom of a slot passes the mitre."""
    (pa, pr), (qa, qr) = ends
    da, dr = qa - pa, qr - pr
    wa, wr = corner.way
    u = ((corner.inner[0] - pa) * wr - (corner.inner[1] - pr) * wa) / (da * wr - dr * wa)
    return (pa + u * da, pr + u * dr)


def _contacts(
    corner: MitreCorner, face: list[Point], span: Range, out_way: Vec, *, glued: bool
) -> list[Contact]:
    """The two cheeks of a key in one part, and its bottom."""
    found = []
    for at, way in ((span[0], 1.0), (span[1], -1.0)):
        square = [0.0, 0.0, 0.0]
        square[corner.square] = way
        found.append(
            outline([corner.point(p, at) for p in face], (square[0], square[1], square[2]), glued=glued)
        )
    _, tip, m = face
    bottom = [corner.point(p, at) for p, at in ((tip, span[0]), (tip, span[1]), (m, span[1]), (m, span[0]))]
    found.append(outline(bottom, out_way, glued=glued))
    return found
