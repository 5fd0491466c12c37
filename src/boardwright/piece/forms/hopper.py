"""Sides that slope, or more or fewer than four of them: each lies square in a frame of its own, turned to its place.

All ends are cut along planes: of a mitre along the one that halves the corner, of a butted corner along the faces
of the side that runs through.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import asin, cos, degrees, hypot, pi, radians, sin, tan

from boardwright.core.poses import Box, Pose, Vec, cross, scaled
from boardwright.design.schema import BoxKeys
from boardwright.formulas.compound import plane_gauge, plane_tilt
from boardwright.piece.cuts import Bevel
from boardwright.piece.forms.box_panel import Wall, bottom, bottom_stock
from boardwright.piece.forms.planes import between, corner, level
from boardwright.piece.joints.sloping import Plane, cut_to, outline, stretch
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

LEAST_SIDE = 25.0
"""Least length of a side at its inner face [mm]."""
NAMES = ("front", "right", "rear", "left")
GEOMETRY = "solid geometry of sloping sides"


@dataclass(frozen=True, slots=True)
class Slant:
    """What is asked of the sides.

    Attributes:
        count: of sides. thickness: [mm].
        slopes: of each, out of plumb [degrees].
        level: upper and lower edges lie level.
        butted: even sides run through, the others stand between them.
    """

    count: int
    thickness: float
    slopes: tuple[float, ...]
    level: bool
    butted: bool


def hopper(out: SetOut, keys: BoxKeys, width: float, depth: float, height: float, stock: Stock) -> Box | None:
    """Set out sides that slope or are no four; gives the outside, or None when the sizes make no box."""
    slant = _asked(out, keys, stock)
    panel = bottom_stock(out, keys)
    plumb = max(slant.slopes) == 0
    how = out.sizer.choose(
        "box.bottom.set",
        keys.bottom.set if keys.bottom else None,
        "groove" if plumb else "inside",
        "in a groove between plumb sides; between sloping ones its edges are bevelled to them",
        "box.bottom.set",
    )
    if how == "groove" and not plumb:
        _refuse(out, "box.bottom.set", "a bottom in a groove", "sides that slope", "inside", "planted")
        how = "inside"
    if how == "planted" and not plumb and not slant.level:
        _refuse(
            out,
            "box.bottom.set",
            "a bottom under the sides",
            "sides that slope, their edges square",
            "inside",
        )
        how = "inside"
    z0 = panel.thickness if how == "planted" else 0.0
    tops = _edges(out, slant, z0, height)
    faces = _faces(slant, width, depth, tops[1].at)
    inner = [f.beyond(-slant.thickness) for f in faces]
    if not _has_inside(out, slant, inner, tops, width):
        return None
    walls = _sides(out, slant, stock, faces, inner, tops, keys)
    _corners(out, slant, walls, tops)
    _angles(out, slant, walls)
    bottom(out, keys, walls, how, panel, z0, tops[1].at)
    rings = [corner(faces[i - 1], faces[i], z) for z in tops for i in range(slant.count)]
    low = [min(p[k] for p in rings) for k in (0, 1)]
    high = [max(p[k] for p in rings) for k in (0, 1)]
    return Box((low[0], low[1], 0.0), (high[0], high[1], tops[1].at))


def _asked(out: SetOut, keys: BoxKeys, stock: Stock) -> Slant:
    n = keys.sides or 4
    front = keys.slope or 0.0
    ends = front if keys.slope_ends is None else keys.slope_ends
    if n != 4 and keys.slope_ends is not None and keys.slope_ends != front:
        _refuse(out, "box.slope_ends", "two slopes", f"{n} sides", "slope")
        ends = front
    slopes = tuple(front if n != 4 or i % 2 == 0 else ends for i in range(n))
    for key, slope in (("slope", front), ("slope_ends", ends)):
        if n == 4 or key == "slope":
            given = getattr(keys, key)
            word = f"{slope:g} degrees"
            out.sizer.choose(
                f"box.{key}", None if given is None else word, word, "plumb, or as `slope`", f"box.{key}"
            )
    kind = keys.corner.kind if keys.corner else "mitre"
    if kind not in ("mitre", "butt") or (kind == "butt" and n != 4):
        _refuse(
            out,
            "box.corner",
            f"a {kind} corner",
            f"{n} sloping sides",
            "mitre",
            *(("butt",) if n == 4 else ()),
        )
        kind = "mitre"
    out.sizer.choose(
        "box.corner", kind if keys.corner else None, kind, "sloping or many sides are mitred", "box.corner"
    )
    _glued_alone(out, keys, f"{n} sloping sides" if front or ends else f"{n} sides")
    edges = out.sizer.choose("box.edges", keys.edges, "level", "the edges lie level", "box.edges")
    if edges == "square" and (kind == "butt" or len(set(slopes)) > 1):
        what = "a butted corner" if kind == "butt" else "sides of two slopes"
        _refuse(out, "box.edges", "square edges", what, "level")
        edges = "level"
    return Slant(n, stock.thickness, slopes, edges == "level", kind == "butt")


def _glued_alone(out: SetOut, keys: BoxKeys, where: str) -> None:
    """Findings for what sloping or many sides cannot have: thin walls, trays, a sawn lid, held corners."""
    for name in ("dividers", "trays", "lid"):
        if getattr(keys, name) is not None:
            out.find(
                "box.cannot-be-there",
                f"there can be no {name} at {where}",
                f"box.{name}",
                found=where,
                expected="four plumb sides",
                source="common practice",
                remedy="leave it out, or let four sides stand plumb",
            )
    corner = keys.corner
    if corner is not None and {corner.with_, corner.fasten} - {None, "none"}:
        out.find(
            "box.cannot-be-there",
            f"the corners of {where} are glued alone",
            "box.corner",
            found=" and ".join(w for w in (corner.with_, corner.fasten) if w),
            expected="`with: none` and `fasten: none`",
            source="common practice",
            remedy="leave `with` and `fasten` out",
        )


def _refuse(out: SetOut, path: str, what: str, where: str, *could: str) -> None:
    out.find(
        "box.cannot-be-there",
        f"there can be no {what.removeprefix('a ')} at {where}",
        path,
        found=what,
        expected=" or ".join(f"`{c}`" for c in could),
        source="common practice",
        remedy=f"use `{could[0]}`",
    )


def _edges(out: SetOut, slant: Slant, z0: float, height: float) -> tuple[Plane, Plane]:
    """Level planes at the lower and the upper edge of the sides.

    Sides with square edges are as wide as the step allows; these planes then pass through their outer arrises.
    """
    settled = out.sizer.settled
    if slant.level:
        return level(z0), level(z0 + settled(height - z0, "down"))
    s = radians(slant.slopes[0])
    wide = settled((height - z0 - slant.thickness * sin(s)) / cos(s), "down")
    return level(z0), level(z0 + wide * cos(s))


def _faces(slant: Slant, width: float, depth: float, top: float) -> list[Plane]:
    """The outer faces, from the front round by the right; `width` and `depth` are the mouth's.

    The mouth stands with its left and its front at 0.
    """
    out = []
    n = slant.count
    rim = [-pi / 2 + pi * (2 * i + 1) / n for i in range(n)]
    middle = [-min(way(a) for a in rim) * width / 2 / cos(pi / n) for way in (cos, sin)]
    if n == 4:
        middle = [width / 2, depth / 2]
    for i, slope in enumerate(slant.slopes):
        turn = 2 * pi * i / n - pi / 2
        u = (round(cos(turn), 12), round(sin(turn), 12))
        reach = (depth if n == 4 and i % 2 == 0 else width) / 2
        at = (middle[0] + u[0] * reach, middle[1] + u[1] * reach, top)
        s = radians(slope)
        out.append(Plane.through(at, (u[0] * cos(s), u[1] * cos(s), -sin(s))))
    return out


def _has_inside(
    out: SetOut, slant: Slant, inner: list[Plane], tops: tuple[Plane, Plane], width: float
) -> bool:
    """False, with a finding, when a side has no length left at its lower edge or its height is nothing."""
    least = 0.0
    for i in range(slant.count):
        k = (i + 1) % slant.count
        a, b = corner(inner[i - 1], inner[i], tops[0]), corner(inner[i], inner[k], tops[0])
        along = cross((0.0, 0.0, 1.0), inner[i].normal)
        run = sum((q - p) * w for p, q, w in zip(a, b, along, strict=True)) / hypot(along[0], along[1])
        least = run if i == 0 else min(least, run)
    if least >= LEAST_SIDE and tops[1].at - tops[0].at >= LEAST_SIDE:
        return True
    out.find(
        "box.no-room",
        "the sides leave no inside at the bottom",
        "box",
        found=f"a side {out.about(least)} long at its inner lower edge, {out.about(tops[1].at - tops[0].at)} high",
        expected=f"at least {out.up(LEAST_SIDE)}",
        remedy=f"make the box {out.up(max(LEAST_SIDE - least, 0.0) / tan(pi / slant.count))} wider and deeper, "
        "or let the sides slope less",
    )
    return False


def _sides(
    out: SetOut,
    slant: Slant,
    stock: Stock,
    faces: list[Plane],
    inner: list[Plane],
    tops: tuple[Plane, Plane],
    keys: BoxKeys,
) -> list[Wall]:
    walls = []
    for i, face in enumerate(faces):
        name = _name(slant, i)
        called = {"front": "front", "rear": "back"}.get(name, "side")
        box = Box((0.0, 0.0, -slant.thickness), (1.0, 1.0, 0.0))
        draft = out.add(f"box.{name}", f"box {called}", stock, box, (0, 1), show=((2, True),), path="box")
        k = (i + 1) % slant.count
        draft.tilt = _pose(face, corner(faces[i - 1], face, tops[0]), corner(face, faces[k], tops[0]))
        if slant.level:
            stretch(out, draft, 1, tops[0], tops[1], even=False)
        else:
            draft.high[1] = (tops[1].at - tops[0].at) / cos(radians(slant.slopes[i]))
        ends = _ends(slant, i, faces, inner)
        stretch(out, draft, 0, ends[0], ends[1])
        for high in (False, True):
            neighbour = _name(slant, k if high else (i - 1) % slant.count)
            cut_to(draft, 0, high, ends[high], f"box.{neighbour}")
            if slant.level:
                cut_to(draft, 1, high, tops[high])
        walls.append(Wall(draft, 2, False, face, inner[i]))
    return walls


def _name(slant: Slant, i: int) -> str:
    return NAMES[i] if slant.count == 4 else f"side.{i + 1}"


def _pose(face: Plane, left: Vec, right: Vec) -> Pose:
    """The frame of a side: x along its lower edge, y up the slope, z out of its face; origin amid that edge."""
    middle = scaled((left[0] + right[0], left[1] + right[1], left[2] + right[2]), 0.5)
    x = cross((0.0, 0.0, 1.0), face.normal)
    x = scaled(x, 1 / hypot(x[0], x[1]))
    return Pose(middle, x, cross(face.normal, x), face.normal)


def _ends(slant: Slant, i: int, faces: list[Plane], inner: list[Plane]) -> tuple[Plane, Plane]:
    """The planes of a side's two ends."""
    before, after = i - 1, (i + 1) % slant.count
    if not slant.butted:
        return between(faces[before], faces[i]), between(faces[i], faces[after])
    planes = faces if i % 2 == 0 else inner
    return planes[before], planes[after]


def _corners(out: SetOut, slant: Slant, walls: list[Wall], tops: tuple[Plane, Plane]) -> None:
    for i, wall in enumerate(walls):
        k = (i + 1) % slant.count
        other = walls[k]
        through, stands = (wall, other) if not slant.butted or i % 2 == 0 else (other, wall)
        plane = through.inner if slant.butted else between(wall.outer, other.outer)
        edges = tops if slant.level else (_edge(stands, False), _edge(stands, True))
        ring = [
            corner(stands.outer, plane, edges[0]),
            corner(stands.inner, plane, edges[0]),
            corner(stands.inner, plane, edges[1]),
            corner(stands.outer, plane, edges[1]),
        ]
        x, y, z = plane.normal
        way: Vec = (-x, -y, -z)
        out.joint(
            "butt" if slant.butted else "mitre",
            through.draft,
            stands.draft,
            [outline(ring, way)],
            [way],
            "butted corner, glued" if slant.butted else "mitred corner, glued",
            place=through.draft.place,
        )


def _edge(wall: Wall, high: bool) -> Plane:
    """The plane of an edge that is square to its face."""
    d = wall.draft
    pose = d.tilt or Pose()
    return Plane.through(pose.point((0.0, d.high[1] if high else d.low[1], 0.0)), pose.y)


def _angles(out: SetOut, slant: Slant, walls: list[Wall]) -> None:
    """Explain the two saw settings of each kind of end."""
    for wall in walls[: 2 if slant.count == 4 else 1]:
        ends = [c for c in wall.draft.cuts if isinstance(c, Bevel) and c.side.axis == 0]
        gauge = abs(plane_gauge(ends[0].over_u)) if ends else 0.0
        tilt = abs(plane_tilt(ends[0].over_u, ends[0].over_v)) if ends else 0.0
        for name, angle, what in (
            ("mitre_gauge", gauge, "of the cut across the face, from square"),
            ("blade_tilt", tilt, "of the blade, from square to the face"),
        ):
            out.sizer.choose(f"{wall.draft.id}.{name}", None, f"{angle:.2f} degrees", what, "", GEOMETRY)
        if slant.level and max(slant.slopes) > 0:
            slope = asin(-wall.outer.normal[2])
            word = f"{degrees(slope):.2f} degrees"
            out.sizer.choose(
                f"{wall.draft.id}.edge_tilt", None, word, "of the blade for level edges", "", GEOMETRY
            )
