"""The door to OCCT: exact solids, STEP files, and exact hidden lines for drawings. Lengths in mm."""

from __future__ import annotations

import itertools
import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from typing import Any

from boardwright.core.curves import Run
from boardwright.core.poses import Box, Pose, Vec, cross, dot
from boardwright.piece.cuts import Cut
from boardwright.piece.records import Part
from boardwright.solids.primitives import Body, Ring, Round, Sweep
from boardwright.solids.taken import taken

Shape = Any
"""An OCCT `TopoDS_Shape`; nothing outside `solids` looks into it."""
Point2 = tuple[float, float]

SAGITTA = 0.05
"""How far a drawn chord may lie from its curve [mm]."""
STEP_TIME = "2000-01-01T00:00:00"
"""Time stamp written into every STEP file, so that the same piece gives the same bytes."""


@dataclass(frozen=True, slots=True)
class View:
    """An orthographic view.

    Attributes:
        name: e.g. `front`.
        eye: unit vector from the object towards the eye.
        up: unit vector that points up on the paper, square to `eye`.
    """

    name: str
    eye: Vec
    up: Vec

    @property
    def right(self) -> Vec:
        """Unit vector that points right on the paper."""
        return cross(self.up, self.eye)

    def flat(self, p: Vec) -> Point2:
        """A point of space as it lies in the view [mm]."""
        return (dot(p, self.right), dot(p, self.up))

    def nearness(self, p: Vec) -> float:
        """How near to the eye a point lies; larger is nearer [mm]."""
        return dot(p, self.eye)


def view_from(name: str, eye: Vec, up: Vec = (0.0, 0.0, 1.0)) -> View:
    """A view from any direction; `up` is made square to it.

    Args:
        name: what it is called.
        eye: direction from the object to the eye, any length above 0.
        up: roughly upwards, not along `eye`.
    """
    size = dot(eye, eye) ** 0.5
    e = (eye[0] / size, eye[1] / size, eye[2] / size)
    k = dot(up, e)
    u = (up[0] - k * e[0], up[1] - k * e[1], up[2] - k * e[2])
    size = dot(u, u) ** 0.5
    return View(name, e, (u[0] / size, u[1] / size, u[2] / size))


FRONT = view_from("front", (0.0, -1.0, 0.0))
BACK = view_from("back", (0.0, 1.0, 0.0))
LEFT = view_from("left", (-1.0, 0.0, 0.0))
RIGHT = view_from("right", (1.0, 0.0, 0.0))
TOP = view_from("top", (0.0, 0.0, 1.0), (0.0, 1.0, 0.0))
BOTTOM = view_from("bottom", (0.0, 0.0, -1.0), (0.0, -1.0, 0.0))
PICTORIAL = view_from("pictorial", (0.55, -1.0, 0.5))
"""From the front, the right and above; the front is the least foreshortened."""


@dataclass(frozen=True, slots=True)
class ProjectedEdge:
    """An edge, or a piece of one, as it lies in a view.

    Attributes:
        points: polyline [mm].
        hidden: True when something stands before it.
        part_index: which of the shapes it belongs to.
    """

    points: tuple[Point2, ...]
    hidden: bool
    part_index: int


def part_shape(part: Part) -> Shape:
    """A part in its own frame: the blank less every cut. Parts of one size and cuts share one solid."""
    return _cut_blank(part.size, part.cuts)


@lru_cache(maxsize=512)
def _cut_blank(size: Vec, cuts: tuple[Cut, ...]) -> Shape:
    from OCP.BRepAlgoAPI import BRepAlgoAPI_Cut
    from OCP.collections import List_TopoDS_Shape
    from OCP.ShapeUpgrade import ShapeUpgrade_UnifySameDomain

    blank = _body(Box((0.0, 0.0, 0.0), size))
    tools = [_body(b) for c in cuts for b in taken(c, size)]
    if not tools:
        return blank
    first, rest = List_TopoDS_Shape(), List_TopoDS_Shape()
    first.Append(blank)
    for t in tools:
        rest.Append(t)
    cut = BRepAlgoAPI_Cut()
    cut.SetArguments(first)
    cut.SetTools(rest)
    cut.Build()
    joined = ShapeUpgrade_UnifySameDomain(cut.Shape(), True, True, False)
    joined.Build()
    return joined.Shape()


def _body(body: Body) -> Shape:
    from OCP.BRepPrimAPI import BRepPrimAPI_MakeBox, BRepPrimAPI_MakeCone, BRepPrimAPI_MakeCylinder
    from OCP.gp import gp_Ax2, gp_Dir, gp_Pnt

    if isinstance(body, Round):
        frame = gp_Ax2(gp_Pnt(*body.base), gp_Dir(*body.way))
        if abs(body.r0 - body.r1) < 1e-9:
            return BRepPrimAPI_MakeCylinder(frame, body.r0, body.length).Shape()
        return BRepPrimAPI_MakeCone(frame, body.r0, body.r1, body.length).Shape()
    if isinstance(body, Sweep):
        return _sweep(body)
    if isinstance(body, Ring):
        return _ring(body)
    return BRepPrimAPI_MakeBox(gp_Pnt(*body.low), gp_Pnt(*body.high)).Shape()


def _sweep(body: Sweep) -> Shape:
    from OCP.BRepPrimAPI import BRepPrimAPI_MakePrism
    from OCP.gp import gp_Vec

    return BRepPrimAPI_MakePrism(_outlined(body.points, body.curved), gp_Vec(*body.way)).Shape()


def _ring(body: Ring) -> Shape:
    from OCP.BRepPrimAPI import BRepPrimAPI_MakeRevol
    from OCP.gp import gp_Ax1, gp_Dir, gp_Pnt

    across = (body.axis + 1) % 3
    points = []
    for radius, height in body.outline:
        p = list(body.centre)
        p[across] += radius
        p[body.axis] += height
        points.append((p[0], p[1], p[2]))
    way = [float(i == body.axis) for i in range(3)]
    turned = gp_Ax1(gp_Pnt(*body.centre), gp_Dir(*way))
    return BRepPrimAPI_MakeRevol(_outlined(tuple(points), body.curved), turned).Shape()


def _outlined(outline: tuple[Vec, ...], curved: tuple[Run, ...]) -> Any:
    """The flat face within an outline, of which some pieces are curves."""
    from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeEdge, BRepBuilderAPI_MakeFace, BRepBuilderAPI_MakeWire
    from OCP.gp import gp_Pnt

    points = [gp_Pnt(*p) for p in outline]
    starts = {first: (last, kind) for first, last, kind in curved}
    line = BRepBuilderAPI_MakeWire()
    i = 0
    while i < len(points):
        if i in starts:
            last, kind = starts[i]
            line.Add(BRepBuilderAPI_MakeEdge(_curved(points[i : last + 1], kind)).Edge())
            i = last
        else:
            line.Add(BRepBuilderAPI_MakeEdge(points[i], points[(i + 1) % len(points)]).Edge())
            i += 1
    return BRepBuilderAPI_MakeFace(line.Wire()).Face()


def _curved(points: Sequence[Any], kind: str) -> Any:
    """An arc through points on a circle, half an ellipse, or the cubic through points at even steps of it."""
    from OCP.collections import Array1_gp_Pnt
    from OCP.GC import GC_MakeArcOfCircle
    from OCP.Geom import Geom_BezierCurve
    from OCP.gp import gp_Pnt

    last = len(points) - 1
    if kind == "arc":
        return GC_MakeArcOfCircle(points[0], points[last // 2], points[last]).Value()
    if kind == "ellipse":
        return _half_ellipse(points[0], points[last // 2], points[last])
    a, b, c, d = (p.XYZ() for p in (points[0], points[last // 3], points[2 * last // 3], points[last]))
    near = a.Multiplied(-5).Added(b.Multiplied(18)).Added(c.Multiplied(-9)).Added(d.Multiplied(2)).Divided(6)
    far = a.Multiplied(2).Added(b.Multiplied(-9)).Added(c.Multiplied(18)).Added(d.Multiplied(-5)).Divided(6)
    poles = Array1_gp_Pnt(1, 4)
    for i, pole in enumerate((a, near, far, d), 1):
        poles.SetValue(i, gp_Pnt(pole))
    return Geom_BezierCurve(poles)


def _half_ellipse(first: Any, top: Any, last: Any) -> Any:
    """Half an ellipse from one end of an axis over the end of the other to its far end."""
    from OCP.GC import GC_MakeArcOfEllipse
    from OCP.gp import gp_Ax2, gp_Dir, gp_Elips, gp_Pnt

    middle = gp_Pnt(first.XYZ().Added(last.XYZ()).Divided(2))
    axis, other = first.XYZ().Subtracted(middle.XYZ()), top.XYZ().Subtracted(middle.XYZ())
    square = gp_Dir(axis.Crossed(other))
    long, a, b = (axis, axis.Modulus(), other.Modulus())
    if b > a:
        long, a, b = other, b, a
    frame = gp_Ax2(middle, square, gp_Dir(long))
    return GC_MakeArcOfEllipse(gp_Elips(frame, a, b), first, last, True).Value()


def placed(shape: Shape, pose: Pose) -> Shape:
    """A shape moved from its own frame to the piece."""
    from OCP.gp import gp_Trsf
    from OCP.TopLoc import TopLoc_Location

    t = gp_Trsf()
    t.SetValues(*(v for row in pose.rows() for v in row))
    return shape.Moved(TopLoc_Location(t))


def box_shape(box: Box) -> Shape:
    """A plain box, e.g. the room that a bought part takes."""
    return _body(box)


def beyond(shape: Shape, axis: int, at: float) -> Shape:
    """What is left of a shape when everything on the high side of a plane is taken away.

    Args:
        shape: placed in the piece.
        axis: axis of the piece that the plane is square to, 0 to 2.
        at: where the plane is [mm].
    """
    from OCP.BRepAlgoAPI import BRepAlgoAPI_Cut

    far = 1e5
    low, high = [-far, -far, -far], [far, far, far]
    low[axis] = at
    tool = _body(Box((low[0], low[1], low[2]), (high[0], high[1], high[2])))
    return BRepAlgoAPI_Cut(shape, tool).Shape()


def volume(shape: Shape) -> float:
    """Volume of a shape [mm3]."""
    from OCP.BRepGProp import BRepGProp
    from OCP.GProp import GProp_GProps

    props = GProp_GProps()
    BRepGProp.VolumeProperties_s(shape, props)
    return float(props.Mass())


def write_step(named_shapes: Sequence[tuple[str, Shape]], path: Path, title: str = "piece") -> None:
    """Write one STEP assembly (AP214, millimetres).

    Args:
        named_shapes: name (letter and name) and placed shape of every part.
        path: file to write.
        title: name of the whole.
    """
    from OCP.Interface import Interface_Static
    from OCP.STEPCAFControl import STEPCAFControl_Writer
    from OCP.TCollection import TCollection_ExtendedString
    from OCP.TDataStd import TDataStd_Name
    from OCP.TDocStd import TDocStd_Document
    from OCP.XCAFDoc import XCAFDoc_DocumentTool

    _quiet()
    doc = TDocStd_Document(TCollection_ExtendedString("BinXCAF"))
    tool = XCAFDoc_DocumentTool.ShapeTool_s(doc.Main())
    root = tool.NewShape()
    TDataStd_Name.Set_s(root, TCollection_ExtendedString(title, True))
    for name, shape in named_shapes:
        label = tool.AddComponent(root, shape, False)
        kind = type(label)()
        tool.GetReferredShape_s(label, kind)
        for one in (label, kind):
            TDataStd_Name.Set_s(one, TCollection_ExtendedString(name, True))
    tool.UpdateAssemblies()
    writer = STEPCAFControl_Writer()
    Interface_Static.SetCVal_s("write.step.schema", "AP214IS")
    Interface_Static.SetCVal_s("write.step.unit", "MM")
    writer.SetNameMode(True)
    writer.Transfer(doc)
    if "Done" not in str(writer.Write(str(path))):
        raise OSError(f"the STEP file could not be written: {path}")
    text = path.read_text(encoding="utf-8")
    head = re.compile(r"(FILE_NAME\()'(?:[^']|'')*'\s*,\s*'[^']*'", re.S)
    text = head.sub(lambda m: f"{m[1]}'{path.name}','{STEP_TIME}'", text, count=1)
    counter = itertools.count(1)
    uses = re.compile(r"(NEXT_ASSEMBLY_USAGE_OCCURRENCE\()'\d+'")
    path.write_text(_unwrapped(uses.sub(lambda m: f"{m[1]}'{next(counter)}'", text)), encoding="utf-8")


def _unwrapped(text: str) -> str:
    """A STEP file with one record a line: the writer's line breaks depend on what it wrote before.

    Blanks between tokens mean nothing, and a line break inside a string is no part of it (ISO 10303-21,
    from memory).
    """
    tokens = re.compile(r"'(?:[^']|'')*'|\s+|;")

    def plain(m: re.Match[str]) -> str:
        found = m[0]
        if found[0] == "'":
            return found.replace("\r", "").replace("\n", "")
        return ";\n" if found == ";" else ""

    return tokens.sub(plain, text)


def _quiet() -> None:
    """Keep OCCT's progress notes off the terminal."""
    from OCP.Message import Message, Message_PrinterOStream

    Message.DefaultMessenger_s().RemovePrinters(Message_PrinterOStream.get_type_descriptor_s())


def read_step_volumes(path: Path) -> list[float]:
    """Volumes of all solids in a STEP file, in the order of the file [mm3].

    Raises:
        ValueError: the file cannot be read as STEP.
    """
    from OCP.STEPControl import STEPControl_Reader

    _quiet()
    reader = STEPControl_Reader()
    if "Done" not in str(reader.ReadFile(str(path))):
        raise ValueError(f"{path} cannot be read as STEP")
    reader.TransferRoots()
    return [volume(s) for s in each_of(reader.OneShape(), "SOLID")]


def each_of(shape: Shape, kind: str) -> list[Shape]:
    """Every solid, face, wire or edge in a shape; `kind` is the OCCT word in capitals."""
    from OCP import TopAbs
    from OCP.TopExp import TopExp_Explorer

    out = []
    walk = TopExp_Explorer(shape, getattr(TopAbs.TopAbs_ShapeEnum, f"TopAbs_{kind}"))
    while walk.More():
        out.append(walk.Current())
        walk.Next()
    return out


def projected_edges(shapes: Sequence[Shape], view: View, hidden: bool = True) -> list[ProjectedEdge]:
    """Exact visible and hidden lines of shapes in a view; smooth seams are left out.

    Args:
        shapes: all in one frame.
        view: where they are seen from.
        hidden: False to leave the hidden lines out.

    Returns:
        Polylines in the view [mm], shape by shape, visible ones first.
    """
    from OCP.gp import gp_Ax2, gp_Dir, gp_Pnt
    from OCP.HLRAlgo import HLRAlgo_Projector
    from OCP.HLRBRep import HLRBRep_Algo, HLRBRep_HLRToShape

    algo = HLRBRep_Algo()
    for s in shapes:
        algo.Add(s)
    algo.Projector(HLRAlgo_Projector(gp_Ax2(gp_Pnt(0, 0, 0), gp_Dir(*view.eye), gp_Dir(*view.right))))
    algo.Update()
    algo.Hide()
    found = HLRBRep_HLRToShape(algo)
    out: list[ProjectedEdge] = []
    for i, s in enumerate(shapes):
        takes = [(found.VCompound, False), (found.OutLineVCompound, False)]
        if hidden:
            takes += [(found.HCompound, True), (found.OutLineHCompound, True)]
        for take, is_hidden in takes:
            lines = take(s)
            if lines is not None and not lines.IsNull():
                out += [ProjectedEdge(p, is_hidden, i) for p in _polylines(lines)]
    return out


def _polylines(lines: Shape) -> list[tuple[Point2, ...]]:
    from OCP.BRepAdaptor import BRepAdaptor_Curve
    from OCP.BRepLib import BRepLib
    from OCP.GCPnts import GCPnts_QuasiUniformDeflection
    from OCP.GeomAbs import GeomAbs_CurveType
    from OCP.TopoDS import TopoDS

    BRepLib.BuildCurves3d_s(lines)
    out = []
    for e in each_of(lines, "EDGE"):
        curve = BRepAdaptor_Curve(TopoDS.Edge(e))
        if curve.GetType() == GeomAbs_CurveType.GeomAbs_Line:
            points = [curve.Value(curve.FirstParameter()), curve.Value(curve.LastParameter())]
        else:
            walk = GCPnts_QuasiUniformDeflection(curve, SAGITTA)
            points = [walk.Value(i) for i in range(1, walk.NbPoints() + 1)]
        flat = tuple((round(p.X(), 6) + 0.0, round(p.Y(), 6) + 0.0) for p in points)
        if any(abs(p[0] - flat[0][0]) + abs(p[1] - flat[0][1]) > 1e-4 for p in flat[1:]):
            out.append(flat)
    return out
