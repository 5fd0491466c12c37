"""A spline in a mitre: a groove in both faces, and a strip that lies half in each."""

from __future__ import annotations

from boardwright.core.poses import Pose, Vec, cross, dot, scaled
from boardwright.piece.drafts import Draft
from boardwright.piece.joints.areas import Range, Rect
from boardwright.piece.joints.loose_strips import strip, strip_stock
from boardwright.piece.joints.mitre_corner import MitreCorner, Point
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.joints.sloping import cut_to, outline, side_plane
from boardwright.piece.joints.splines import SHORT
from boardwright.piece.records import Contact, Stock
from boardwright.piece.setout import SetOut

NEAR_INNER = 1 / 3
"""A spline on edge lies so far along the mitre from its inner corner, where the groove can be deep: common practice."""
CLEAR = 3.0
"""A spline starts so far beyond the groove or rabbet of a panel [mm]: 1/8 in, common practice."""
DEEPEST = 0.6
"""Deepest groove, of the wood there is square to the mitre: common practice."""


def splined(
    out: SetOut, first: Draft, second: Draft, corner: MitreCorner, want: JointSettings, *, flat: bool
) -> tuple[str, list[Rect]]:
    """Groove both mitred faces and put a spline in; gives its words and where the groove lies in the mitre."""
    across = corner.span[1] - corner.span[0] if flat else corner.length
    found = strip_stock(out, second, want, across / 2)
    if found is None:
        return "", []
    stock, thick = found
    room = min(corner.sides) if flat else corner.length * (1 - NEAR_INNER)
    depth = _depth(out, want, room * DEEPEST, corner)
    reach = depth - out.sizer.settled(SHORT, "up")
    low, high = corner.span
    if flat:
        near = low + out.sizer.settled((high - low - thick) / 2)
        _flat(out, first, second, corner, want, stock, (near, near + thick), depth, reach)
        slot: Rect = ((0.0, corner.length), (near, near + thick))
    else:
        start = corner.length * NEAR_INNER - thick / 2
        _on_edge(out, first, second, corner, want, stock, (start, start + thick), depth, reach)
        slot = ((start, start + thick), (low, high))
    return f", spline {out.text(thick)} thick, {out.text(depth)} into each", [slot]


def _depth(out: SetOut, want: JointSettings, most: float, corner: MitreCorner) -> float:
    figure = out.tables.figure("spline_depth")
    given = want.keys.depth if want.keys else None
    depth = out.sizer.size(
        f"{want.name}.depth",
        [(f"{want.path}.depth", given)],
        figure.value if given is not None else min(figure.value, most),
        rule="spline in a mitre, how far it stands in each part",
        source=figure.reason,
        direction="down",
        least=2 * out.sizer.step,
    )
    return out.at_most(depth, most, "the groove for the spline", f"{want.path}.depth", min(corner.sides))


def _flat(
    out: SetOut,
    first: Draft,
    second: Draft,
    corner: MitreCorner,
    want: JointSettings,
    stock: Stock,
    span: Range,
    depth: float,
    reach: float,
) -> None:
    """The spline lies in the middle of the thickness, and runs out from the inner corner or the panel's."""
    for is_second, part in ((False, first), (True, second)):
        corner.slot(part, is_second, _across(corner, is_second, depth), span)
    start = out.sizer.settled((want.taken + CLEAR) / min(map(abs, corner.way)), "up") if want.taken else 0.0
    first_end = corner.along(start)
    length = out.sizer.settled(corner.length - start, "up")
    pose = Pose(
        corner.point(first_end, span[0]),
        corner.vector(corner.way),
        corner.vector(corner.normal),
        _third(corner),
    )
    up = pose.z[corner.square] > 0
    thick = span[1] - span[0]
    spline = strip(
        out, second, "spline", stock, (0.0, -reach, 0.0 if up else -thick), (length, reach, thick if up else 0.0),
        (1, 0), pose, want.path,
    )  # fmt: skip
    for part, axis, high in ((first, corner.axis, corner.axis_high), (second, corner.run, corner.run_high)):
        cut_to(spline, 0, True, side_plane(part, axis, high), part.id)
    for is_second, part in ((False, first), (True, second)):
        sign = 1.0 if is_second else -1.0
        face = [
            first_end,
            corner.along(start, sign * reach),
            _at_outer(corner, is_second, sign * reach),
            corner.outer,
        ]
        contacts = []
        for at, way in ((span[0], 1.0), (span[1], -1.0)):
            square = [0.0, 0.0, 0.0]
            square[corner.square] = way
            contacts.append(
                outline(
                    [corner.point(p, at) for p in face], (square[0], square[1], square[2]), glued=want.glue
                )
            )
        _joined(out, part, spline, corner, is_second, contacts, depth, want)


def _third(corner: MitreCorner) -> Vec:
    return cross(corner.vector(corner.way), corner.vector(corner.normal))


def _at_outer(corner: MitreCorner, second: bool, off: float) -> Point:
    """Where a line beside the mitre meets the outer face of a part."""
    i = 1 if second else 0
    p, way = corner.along(0.0, off), corner.way
    t = (corner.outer[i] - p[i]) / way[i]
    return (p[0] + t * way[0], p[1] + t * way[1])


def _across(corner: MitreCorner, second: bool, depth: float) -> list[Point]:
    """The bottom of a groove along the whole mitre, from beyond the outer face of a part to its inner side."""
    i = 1 if second else 0
    off = depth if second else -depth
    p, way = corner.along(0.0, off), corner.way
    outer = _at_outer(corner, second, off)
    more = min(1.0, abs(corner.outer[1 - i] - outer[1 - i]) / 2 * abs(way[i] / way[1 - i]))
    beyond = (outer[0] + way[0] * more / abs(way[i]), outer[1] + way[1] * more / abs(way[i]))
    t = (corner.inner[i] - p[i]) / way[i]
    inside = (p[0] + t * way[0], p[1] + t * way[1])
    start = (beyond[0], corner.outer[1]) if not second else (corner.outer[0], beyond[1])
    return [start, beyond, inside]


def _on_edge(
    out: SetOut,
    first: Draft,
    second: Draft,
    corner: MitreCorner,
    want: JointSettings,
    stock: Stock,
    place: Range,
    depth: float,
    reach: float,
) -> None:
    """The spline runs along the whole joint, nearer to its inner corner."""
    for is_second, part in ((False, first), (True, second)):
        sign = 1.0 if is_second else -1.0
        near, far = corner.along(place[0]), corner.along(place[1])
        line = [far, corner.along(place[1], sign * depth), corner.along(place[0], sign * depth), near]
        if is_second:
            line = [(corner.outer[0], far[1]), *line, (near[0], corner.inner[1])]
        else:
            line = [(far[0], corner.outer[1]), *line, (corner.inner[0], near[1])]
        corner.slot(part, is_second, line, corner.span)
    low, high = corner.span[0], corner.span[1] - want.back
    length = high - low
    x = [0.0, 0.0, 0.0]
    x[corner.square] = 1.0
    y = corner.vector(corner.normal)
    along = (x[0], x[1], x[2])
    z = cross(along, y)
    sense = dot(z, corner.vector(corner.way))
    pose = Pose(corner.point(corner.along(place[0] if sense > 0 else place[1]), corner.span[0]), along, y, z)
    thick = place[1] - place[0]
    spline = strip(
        out, second, "spline", stock, (0.0, -reach, 0.0), (length, reach, thick), (1, 0), pose, want.path
    )
    for is_second, part in ((False, first), (True, second)):
        sign = 1.0 if is_second else -1.0
        contacts = []
        for t, way in ((place[0], 1.0), (place[1], -1.0)):
            p, q = corner.along(t), corner.along(t, sign * reach)
            face = [corner.point(p, low), corner.point(p, high), corner.point(q, high), corner.point(q, low)]
            contacts.append(outline(face, scaled(corner.vector(corner.way), way), glued=want.glue))
        _joined(out, part, spline, corner, is_second, contacts, depth, want)


def _joined(
    out: SetOut,
    part: Draft,
    spline: Draft,
    corner: MitreCorner,
    second: bool,
    contacts: list[Contact],
    depth: float,
    want: JointSettings,
) -> None:
    way = scaled(corner.plane.normal, -1.0 if second else 1.0)
    out.joint(
        "spline",
        part,
        spline,
        contacts,
        [way],
        f"spline in a groove {out.text(depth)} deep{', glued' if want.glue else ', dry'}",
        glued=want.glue,
        place=out.design.place(want.path),
    )
