"""Which part of each flat face is seen in a view: exact regions, for light tones in pictures. Lengths in mm.

Two flat faces of solids that do not run into each other never cross, so of any two that overlap in a view one
lies before the other over the whole overlap. A face is seen where no face before it lies.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from boardwright.core.poses import Vec, dot
from boardwright.solids.exact import Point2, Shape, View, each_of

MIN_AREA = 0.5
"""Smaller slivers are not drawn [mm2]."""


@dataclass(frozen=True, slots=True)
class SeenFace:
    """A connected region that is seen of one flat face.

    Attributes:
        rings: outline and holes in the view [mm]; holes run the other way round.
        normal: outward, in the frame of the shapes.
        point: a point of its plane, in the frame of the shapes [mm].
        area: seen area in the view [mm2].
        part_index: which of the shapes it belongs to.
    """

    rings: tuple[tuple[Point2, ...], ...]
    normal: Vec
    point: Vec
    area: float
    part_index: int

    def nearness(self, p: Point2, view: View) -> float:
        """Nearness of the face's plane to the eye at a point of the view [mm]."""
        return _nearness(self.normal, self.point, p, view)

    def holds(self, p: Point2) -> bool:
        """True when a point of the view lies in the seen region."""
        return any(x0 < p[0] < x1 for x0, x1 in level_spans(self.rings, p[1]))


def _nearness(normal: Vec, point: Vec, p: Point2, view: View) -> float:
    start = tuple(p[0] * view.right[i] + p[1] * view.up[i] for i in range(3))
    gap = dot(normal, (point[0] - start[0], point[1] - start[1], point[2] - start[2]))
    return gap / dot(normal, view.eye)


@dataclass(slots=True)
class _Face:
    region: Any
    box: tuple[float, float, float, float]
    normal: Vec
    point: Vec
    part_index: int
    near: tuple[float, float]
    """Least and greatest nearness to the eye over its outline [mm]."""

    def nearness(self, p: Point2, view: View) -> float:
        return _nearness(self.normal, self.point, p, view)


def seen_faces(shapes: Sequence[Shape], view: View) -> list[SeenFace]:
    """The seen regions of all flat faces, in the order of the shapes; shapes must not run into each other."""
    faces = [f for i, s in enumerate(shapes) for f in _faces_towards(s, i, view)]
    out = []
    for k, f in enumerate(faces):
        seen = f.region
        for m, g in enumerate(faces):
            if m == k or g.near[1] <= f.near[0] + 1e-6:
                continue
            if _boxes_meet(f.box, g.box) and _before(g, f, view):
                seen = seen - g.region
        for piece in seen.decompose():
            area = piece.area()
            if area >= MIN_AREA:
                rings = piece.simplify(1e-3).to_polygons()
                flat = tuple(tuple((float(x), float(y)) for x, y in ring) for ring in rings)
                out.append(SeenFace(flat, f.normal, f.point, area, f.part_index))
    return out


def _boxes_meet(a: tuple[float, float, float, float], b: tuple[float, float, float, float]) -> bool:
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


def _before(g: _Face, f: _Face, view: View) -> bool:
    """True when g lies before f where they overlap."""
    shared = f.region ^ g.region
    if shared.area() < 1e-3:
        return False
    p = inside_point([[(float(x), float(y)) for x, y in ring] for ring in shared.to_polygons()])
    return g.nearness(p, view) > f.nearness(p, view) + 1e-6


def inside_point(rings: Sequence[Sequence[Point2]]) -> Point2:
    """A point well inside a region given by its outlines and holes [mm]."""
    ys = sorted({round(y, 6) for ring in rings for _, y in ring})
    best = (-1.0, (0.0, 0.0))
    for low, high in itertools.pairwise(ys):
        y = (low + high) / 2
        for x0, x1 in level_spans(rings, y):
            room = min(x1 - x0, high - low)
            if room > best[0]:
                best = (room, ((x0 + x1) / 2, y))
    return best[1]


def level_spans(rings: Sequence[Sequence[Point2]], y: float) -> list[tuple[float, float]]:
    """Where a level line at y runs inside a region: from, to [mm], in rising order."""
    cuts = sorted(
        a[0] + (b[0] - a[0]) * (y - a[1]) / (b[1] - a[1])
        for ring in rings
        for a, b in zip(ring, [*ring[1:], ring[0]], strict=True)
        if (a[1] > y) != (b[1] > y)
    )
    return list(zip(cuts[::2], cuts[1::2], strict=False))


def silhouette(faces: Sequence[SeenFace]) -> list[tuple[Point2, ...]]:
    """The outline of everything that is seen, and of the holes in it [mm]."""
    from manifold3d import CrossSection, FillRule, JoinType

    whole = CrossSection([list(r) for f in faces for r in f.rings], FillRule.Positive)
    closed = whole.offset(0.02, JoinType.Miter).offset(-0.02, JoinType.Miter).simplify(0.01)
    return [tuple((float(x), float(y)) for x, y in ring) for ring in closed.to_polygons()]


def _faces_towards(shape: Shape, index: int, view: View) -> list[_Face]:
    from manifold3d import CrossSection, FillRule
    from OCP.BRepAdaptor import BRepAdaptor_Surface
    from OCP.GeomAbs import GeomAbs_SurfaceType
    from OCP.TopAbs import TopAbs_Orientation
    from OCP.TopoDS import TopoDS

    out = []
    for face in map(TopoDS.Face, each_of(shape, "FACE")):
        surface = BRepAdaptor_Surface(face)
        if surface.GetType() != GeomAbs_SurfaceType.GeomAbs_Plane:
            continue
        axis = surface.Plane().Axis().Direction()
        turn = -1.0 if face.Orientation() == TopAbs_Orientation.TopAbs_REVERSED else 1.0
        if not surface.Plane().Direct():
            turn = -turn
        normal = (turn * axis.X(), turn * axis.Y(), turn * axis.Z())
        if dot(normal, view.eye) < 1e-6:
            continue
        at = surface.Plane().Location()
        rings = [r for r in (_ring(w, face, view) for w in each_of(face, "WIRE")) if r]
        if not rings:
            continue
        region = CrossSection(rings, FillRule.EvenOdd)
        low_x, low_y, high_x, high_y = region.bounds()
        point = (at.X(), at.Y(), at.Z())
        depths = [_nearness(normal, point, p, view) for ring in rings for p in ring]
        box = (low_x, low_y, high_x, high_y)
        out.append(_Face(region, box, normal, point, index, (min(depths), max(depths))))
    return out


def _ring(wire: Shape, face: Shape, view: View) -> list[Point2]:
    """The outline of a wire in the view; round holes give none, so that they take the tone of their face."""
    from OCP.BRepAdaptor import BRepAdaptor_Curve
    from OCP.BRepTools import BRepTools_WireExplorer
    from OCP.GCPnts import GCPnts_QuasiUniformDeflection
    from OCP.GeomAbs import GeomAbs_CurveType
    from OCP.TopAbs import TopAbs_Orientation
    from OCP.TopoDS import TopoDS

    points: list[Point2] = []
    lines = 0
    walk = BRepTools_WireExplorer(TopoDS.Wire(wire), face)
    while walk.More():
        edge = walk.Current()
        curve = BRepAdaptor_Curve(edge)
        if curve.GetType() == GeomAbs_CurveType.GeomAbs_Line:
            lines += 1
            found = [curve.Value(curve.FirstParameter()), curve.Value(curve.LastParameter())]
        else:
            chords = GCPnts_QuasiUniformDeflection(curve, 0.2)
            found = [chords.Value(i) for i in range(1, chords.NbPoints() + 1)]
        if edge.Orientation() == TopAbs_Orientation.TopAbs_REVERSED:
            found.reverse()
        points += [view.flat((p.X(), p.Y(), p.Z())) for p in found[:-1]]
        walk.Next()
    return points if lines > 1 else []
