"""The bottom of a box, and the top of its lid: a panel in grooves, under the walls, or between them."""

from __future__ import annotations

from dataclasses import dataclass, replace

from boardwright.core.poses import Box, Vec
from boardwright.design.schema import BoxKeys, JointKeys
from boardwright.piece.drafts import Channel, Corner, Draft, meeting
from boardwright.piece.forms.drawer_settings import usual_stock
from boardwright.piece.forms.planes import corner, level
from boardwright.piece.joints.make import make_joint
from boardwright.piece.joints.sloping import Plane, cut_to, outline
from boardwright.piece.records import Contact, Stock
from boardwright.piece.setout import SetOut

LEAST_OVER = 6.0
"""Wood over or under the groove of a panel [mm]: 1/4 in, common practice."""


@dataclass(frozen=True, slots=True)
class Wall:
    """A side of a box.

    Attributes:
        draft: the part.
        axis, high: its side that faces in, in its own frame.
        outer, inner: its two faces; both normals point out of the box.
    """

    draft: Draft
    axis: int
    high: bool
    outer: Plane
    inner: Plane


def bottom_stock(out: SetOut, keys: BoxKeys) -> Stock:
    """What the bottom is made of."""
    own = out.stock(("box.stock", keys.stock))
    usual = usual_stock(out, out.tables.figure("drawer_bottom_thickness").value, True, own)
    named = keys.bottom.stock if keys.bottom else None
    stock = out.stock(("box.bottom.stock", named)) if named is not None else usual
    out.sizer.choose(
        "box.bottom.stock",
        named and stock.id,
        stock.id,
        "stock nearest to the usual thickness of a bottom",
        "box.bottom.stock",
    )
    return stock


def bottom(
    out: SetOut, keys: BoxKeys, walls: list[Wall], how: str, stock: Stock, z0: float, z1: float
) -> float | None:
    """Put a bottom into the walls, which stand from `z0` to `z1` [mm]; gives the height of its upper side."""
    if how == "none":
        return z0
    if how == "planted":
        planted(out, walls, stock, z0)
        return z0
    t = stock.thickness
    given = keys.bottom.up if keys.bottom else None
    figure = out.tables.figure("drawer_bottom_groove_up")
    rise = _rise(walls) if keys.edges == "square" else 0.0
    lowest = "where the inner faces of the sides begin" if rise else "the lower edge"
    up = out.sizer.size(
        "box.bottom.up",
        [("box.bottom.up", given)],
        figure.value if how == "groove" else rise,
        rule="wood left under the groove" if how == "groove" else f"the bottom lies at {lowest}",
        source=figure.reason if how == "groove" else "common practice",
        least=out.sizer.step if how == "groove" else rise,
        direction="up" if rise else "nearest",
    )
    if up + t > (z1 - z0) / 2 + 1e-6:
        out.find(
            "box.no-room",
            "the bottom has no room in the sides",
            "box.bottom",
            found=f"{out.about(up)} up and {out.about(t)} thick in sides {out.about(z1 - z0)} high",
            expected="at least half of their height left over it",
            remedy=f"make the sides at least {out.up(2 * (up + t))} high, or use a thinner bottom",
        )
        return None
    low = z0 + up
    if how == "inside":
        _inside(out, walls, stock, low)
    else:
        _in_groove(out, keys, walls, stock, low, "box.bottom", "box bottom")
    return low + t


def _rise(walls: list[Wall]) -> float:
    """How much higher the inner face of a sloping side begins, whose edges are left square to it [mm]."""
    return max(w.draft.size(w.axis) * abs(w.inner.normal[2]) for w in walls)


def lid_stock(out: SetOut, keys: BoxKeys) -> Stock:
    """What the top of a lid is made of."""
    named = keys.lid.stock if keys.lid else None
    return out.stock(("box.lid.stock", named)) if named is not None else bottom_stock(out, keys)


def lid_top(out: SetOut, keys: BoxKeys, walls: list[Wall], top: float, group: str) -> None:
    """The panel of a lid, in grooves of its walls, whose upper edge lies at a height [mm]."""
    stock = lid_stock(out, keys)
    low = top - out.sizer.settled(LEAST_OVER, "up") - stock.thickness
    _in_groove(out, keys, walls, stock, low, "box.lid.top", "lid top", group)


def _ring(planes: list[Plane], z: float) -> list[Vec]:
    """Corners in which planes round a box meet at a height, each the start of its own side."""
    return [corner(planes[i - 1], planes[i], level(z)) for i in range(len(planes))]


def _around(out: SetOut, corners: list[Vec], direction: str) -> tuple[list[float], list[float]]:
    """The box round some corners, its length and width on the step, in the middle of what is asked."""
    lows, highs = [], []
    for axis in (0, 1):
        a, b = min(c[axis] for c in corners), max(c[axis] for c in corners)
        size = out.sizer.settled(b - a, "up" if direction == "up" else "down")
        lows.append((a + b - size) / 2)
        highs.append((a + b + size) / 2)
    return lows, highs


def _panel(
    out: SetOut,
    stock: Stock,
    planes: list[Plane],
    z: float,
    id: str,
    name: str,
    path: str,
    group: str = "case",
) -> tuple[Draft, list[Vec], list[Vec]]:
    """A level panel between planes; its corners at its lower and its upper side [mm]."""
    t = stock.thickness
    rings = [_ring(planes, z), _ring(planes, z + t)]
    plain = len(planes) == 4 and all(abs(p.normal[2]) < 1e-9 for p in planes)
    lows, highs = _around(out, rings[0] + rings[1], "down" if plain else "up")
    along = 0 if highs[0] - lows[0] >= highs[1] - lows[1] - 1e-6 else 1
    box = Box((lows[0], lows[1], z), (highs[0], highs[1], z + t))
    draft = out.add(id, name, stock, box, (along, 1 - along), show=((2, True),), path=path, group=group)
    if plain:
        square = [(lows[0], lows[1]), (highs[0], lows[1]), (highs[0], highs[1]), (lows[0], highs[1])]
        return draft, [(x, y, z) for x, y in square], [(x, y, z + t) for x, y in square]
    for plane in planes:
        axis = 0 if abs(plane.normal[0]) > abs(plane.normal[1]) + 1e-9 else 1
        cut_to(draft, axis, plane.normal[axis] > 0, plane)
    return draft, rings[0], rings[1]


def panel_groove(out: SetOut, keys: BoxKeys, thin: float) -> float:
    """Depth of the grooves for bottom and lid in walls of a thickness [mm]."""
    figure = out.tables.figure("drawer_bottom_groove_depth")
    depth = out.sizer.size(
        "box.bottom.depth",
        [("box.bottom.depth", keys.bottom.depth if keys.bottom else None)],
        min(figure.value, thin / 2),
        rule="depth of the groove for a panel; at most half of the sides",
        source=figure.reason,
        direction="down",
        least=out.sizer.step,
    )
    return out.at_most(depth, thin / 2, "the groove for the bottom", "box.bottom.depth", thin)


def _in_groove(
    out: SetOut,
    keys: BoxKeys,
    walls: list[Wall],
    stock: Stock,
    low: float,
    id: str,
    name: str,
    group: str = "case",
) -> None:
    depth = panel_groove(out, keys, min(w.draft.size(w.axis) for w in walls))
    short = out.sizer.settled(_free(out, walls, stock), "up")
    reach = max(depth - short, out.sizer.step)
    planes = [w.inner.beyond(reach) for w in walls]
    path = "box.bottom" if keys.bottom else "box"
    panel, under, over = _panel(out, stock, planes, low, id, name, path, group)
    t = stock.thickness
    mitred = any(w.draft.tilt is not None for w in walls) or (
        keys.corner is not None and keys.corner.kind == "mitre"
    )
    inner = (_ring([w.inner for w in walls], low), _ring([w.inner for w in walls], low + t))
    splined = keys.corner is not None and keys.corner.with_ == "spline"
    if splined:
        _notch(panel, inner[0])
    for i, wall in enumerate(walls):
        k = (i + 1) % len(walls)
        d = wall.draft
        along = d.length_axis
        start, end = (None, None) if mitred else (panel.low[along], panel.high[along])
        d.cuts.append(
            Channel(wall.axis, wall.high, along, low, low + t, depth, start, end, panel.id, "panel")
        )
        faces = [
            _rim(inner[0][i], inner[0][k], under[k], under[i], True, splined),
            _rim(inner[1][i], inner[1][k], over[k], over[i], False, splined),
        ]
        x, y, z = wall.inner.normal
        out.joint(
            "panel",
            d,
            panel,
            faces,
            [(-x, -y, -z)],
            f"groove {out.text(t)} wide, {out.text(depth)} deep, dry",
            glued=False,
            floats=(0 if abs(x) > abs(y) else 1,),
            place=panel.place,
        )


def _notch(panel: Draft, inner: list[Vec]) -> None:
    """Take the corners of a panel out of the corners of the walls, where splines stand."""
    for x_high in (False, True):
        for y_high in (False, True):
            x = abs(panel.face(0, x_high) - (max if x_high else min)(p[0] for p in inner))
            y = abs(panel.face(1, y_high) - (max if y_high else min)(p[1] for p in inner))
            panel.cuts.append(Corner(0, x_high, x, 1, y_high, y))


def _rim(a: Vec, b: Vec, c: Vec, d: Vec, rests: bool, notched: bool) -> Contact:
    """A strip of the panel in the groove of a wall: a to b along the inner face, c to d along its own edge.

    Args:
        a: its first corner [mm].
        b: the next [mm].
        c: the next, at its own edge [mm].
        d: the last [mm].
        rests: it lies on the wall of the groove, else under it.
        notched: the panel's corners are cut out, so that the strip ends where the inner face does.
    """
    if notched:
        along = 0 if abs(a[1] - b[1]) < 1e-6 else 1
        c, d = (
            ((b[0], c[1], c[2]), (a[0], d[1], d[2]))
            if along == 0
            else ((c[0], b[1], c[2]), (d[0], a[1], d[2]))
        )
    return outline([a, b, c, d], (0.0, 0.0, 1.0 if rests else -1.0), glued=False)


def _free(out: SetOut, walls: list[Wall], stock: Stock) -> float:
    """Room left at each edge in its groove [mm]: a sheet's, and what solid wood swells to the wettest time."""
    figure = out.tables.figure("drawer_bottom_short")
    if stock.kind == "sheet":
        return figure.value
    across = min(abs(walls[0].inner.at + walls[len(walls) // 2].inner.at), 3000.0)
    swell = max(0.0, stock.across * (out.moisture.wettest - out.moisture.now)) * across
    return float(figure.value + swell / 2)


SCREWED = JointKeys(kind="butt", fasten="screws", glue=True)


def planted(out: SetOut, walls: list[Wall], stock: Stock, z: float) -> None:
    """A bottom under the walls: screwed to plumb ones, glued to sloping ones."""
    t = stock.thickness
    panel, _, over = _panel(out, stock, [w.outer for w in walls], z - t, "box.bottom", "box bottom", "box")
    if all(w.draft.tilt is None for w in walls):
        for wall in walls:
            if meeting(panel, wall.draft) is not None:
                make_joint(out, "box.bottom.joint", SCREWED, "box.bottom", "butt", panel, wall.draft)
        return
    inner = _ring([w.inner for w in walls], z)
    for i, wall in enumerate(walls):
        k = (i + 1) % len(walls)
        face = outline([over[i], over[k], inner[k], inner[i]], (0.0, 0.0, 1.0))
        out.joint(
            "planted",
            panel,
            wall.draft,
            [face],
            [(0.0, 0.0, 1.0)],
            "under the sides, glued",
            place=panel.place,
        )


def _inside(out: SetOut, walls: list[Wall], stock: Stock, low: float) -> None:
    planes = [w.inner for w in walls]
    panel, under, over = _panel(out, stock, planes, low, "box.bottom", "box bottom", "box")
    for i, wall in enumerate(walls):
        k = (i + 1) % len(walls)
        x, y, z = wall.inner.normal
        inward: Vec = (-x, -y, -z)
        face = outline([under[i], under[k], over[k], over[i]], inward)
        gap = wall.inner.at - sum(n * v for n, v in zip((x, y, z), under[i], strict=True))
        if gap > 1e-6:
            face = replace(face, gap=gap, why="cut down to the step")
        out.joint(
            "planted",
            wall.draft,
            panel,
            [face],
            [inward],
            "between the sides, glued",
            place=panel.place,
        )
