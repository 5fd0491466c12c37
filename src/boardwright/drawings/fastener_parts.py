"""Screws, dowels, biscuits, loose tenons and plugs as shapes for pictures: rods and flat pieces, without threads."""

from __future__ import annotations

from boardwright.core.poses import Pose, Vec, add, cross, dot, scaled, square_to
from boardwright.piece.cuts import Curve, Cut, Moulding, Side
from boardwright.piece.records import Fastener, Part, Stock

METAL = Stock("fastener", "sheet", "", "", 1.0, 1.0, False, 0.0, grain=False)
"""What they are made of matters to no picture."""


def fastener_parts(fastener: Fastener) -> list[Part]:
    """A fastener as parts without letters: its rod, or its flat body, and the head of a screw.

    Args:
        fastener: from the piece.
    """
    f = fastener
    if dot(f.wide, f.wide) > 1e-9:
        return [_flat(f)]
    rod = _rod(f.id, f.at, f.direction, f.length, f.diameter)
    if f.head <= f.diameter or f.kind in ("dowel", "plug", "peg"):
        return [rod]
    return [
        rod,
        _rod(
            f"{f.id}, head",
            add(f.at, scaled(f.direction, -f.diameter / 2)),
            f.direction,
            f.diameter / 2,
            f.head,
        ),
    ]


def _rod(id: str, at: Vec, way: Vec, length: float, thick: float) -> Part:
    """A round rod from a point on: a square one with its four edges rounded over to the middle."""
    y, z = square_to(way)
    corner = add(at, add(scaled(y, -thick / 2), scaled(z, -thick / 2)))
    edges = [(side, edge) for side in (Side.FACE, Side.BACK) for edge in (Side.EDGE, Side.FAR_EDGE)]
    cuts: tuple[Cut, ...] = tuple(Moulding(s, e, "round-over", thick / 2, (), 0.0, length) for s, e in edges)
    return Part(id, "", METAL, (length, thick, thick), Pose(corner, way, y, z), cuts)


def _flat(f: Fastener) -> Part:
    """A flat piece; a biscuit with both its edges round."""
    size = dot(f.wide, f.wide) ** 0.5
    along = scaled(f.wide, 1 / size)
    third = cross(along, f.direction)
    corner = add(f.at, add(scaled(f.wide, -0.5), scaled(third, -f.diameter / 2)))
    cuts: tuple[Cut, ...] = ()
    if f.kind == "biscuit":
        deep = f.length * 0.45
        half = ((0.0, deep), (size / 2, 0.0), (size, deep))
        cuts = (Curve(Side.EDGE, 0, "arc", half), Curve(Side.FAR_EDGE, 0, "arc", half))
    return Part(f.id, "", METAL, (size, f.length, f.diameter), Pose(corner, along, f.direction, third), cuts)
