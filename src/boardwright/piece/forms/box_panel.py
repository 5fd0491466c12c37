"""The bottom of a box, and the top of its lid: a panel in grooves, under the walls, or between them."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.poses import Box, Vec
from boardwright.design.schema import BoxKeys, JointKeys
from boardwright.piece.drafts import Channel, Draft, meeting
from boardwright.piece.forms.drawer_settings import usual_stock
from boardwright.piece.forms.planes import corner, level
from boardwright.piece.joints.make import make_joint
from boardwright.piece.joints.sloping import Plane, cut_to, outline
from boardwright.piece.records import Stock
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
    up = out.sizer.size(
        "box.bottom.up",
        [("box.bottom.up", given)],
        figure.value if how == "groove" else 0.0,
        rule="wood left under the groove" if how == "groove" else "the bottom lies at the lower edge",
        source=figure.reason if how == "groove" else "common practice",
        least=out.sizer.step if how == "groove" else 0.0,
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


def lid_top(out: SetOut, keys: BoxKeys, walls: list[Wall], zs: tuple[float, float]) -> None:
    """The panel of a lid, in grooves of its walls."""
    assert keys.lid is not None
    named = keys.lid.stock
    stock = out.stock(("box.lid.stock", named)) if named is not None else bottom_stock(out, keys)
    over = out.sizer.settled(LEAST_OVER, "up")
    low = zs[1] - over - stock.thickness
    if low - zs[0] < LEAST_OVER:
        out.find(
            "box.no-room",
            "the lid is too low for its top",
            "box.lid.at",
            found=f"sides {out.about(zs[1] - zs[0])} high, the top {out.about(stock.thickness)} thick",
            expected=f"{out.up(LEAST_OVER)} of wood over and under the groove",
            source="common practice",
            remedy=f"make the lid at least {out.up(2 * LEAST_OVER + stock.thickness)} high, or use a thinner top",
        )
        return
    _in_groove(out, keys, walls, stock, low, "box.lid.top", "lid top")


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
    out: SetOut, stock: Stock, planes: list[Plane], z: float, id: str, name: str, path: str
) -> tuple[Draft, list[Vec], list[Vec]]:
    """A level panel between planes; its corners at its lower and its upper side [mm]."""
    t = stock.thickness
    rings = [_ring(planes, z), _ring(planes, z + t)]
    plain = len(planes) == 4 and all(abs(p.normal[2]) < 1e-9 for p in planes)
    lows, highs = _around(out, rings[0] + rings[1], "down" if plain else "up")
    along = 0 if highs[0] - lows[0] >= highs[1] - lows[1] - 1e-6 else 1
    box = Box((lows[0], lows[1], z), (highs[0], highs[1], z + t))
    draft = out.add(id, name, stock, box, (along, 1 - along), show=((2, True),), path=path)
    if plain:
        square = [(lows[0], lows[1]), (highs[0], lows[1]), (highs[0], highs[1]), (lows[0], highs[1])]
        return draft, [(x, y, z) for x, y in square], [(x, y, z + t) for x, y in square]
    for plane in planes:
        axis = 0 if abs(plane.normal[0]) > abs(plane.normal[1]) + 1e-9 else 1
        cut_to(draft, axis, plane.normal[axis] > 0, plane)
    return draft, rings[0], rings[1]


def _in_groove(
    out: SetOut, keys: BoxKeys, walls: list[Wall], stock: Stock, low: float, id: str, name: str
) -> None:
    thin = min(w.draft.size(w.axis) for w in walls)
    figure = out.tables.figure("drawer_bottom_groove_depth")
    given = keys.bottom.depth if keys.bottom else None
    depth = out.sizer.size(
        "box.bottom.depth",
        [("box.bottom.depth", given)],
        min(figure.value, thin / 2),
        rule="depth of the groove for a panel; at most half of the sides",
        source=figure.reason,
        direction="down",
        least=out.sizer.step,
    )
    depth = out.at_most(depth, thin / 2, "the groove for the bottom", "box.bottom.depth", thin)
    short = out.sizer.settled(_free(out, walls, stock), "up")
    reach = max(depth - short, out.sizer.step)
    planes = [w.inner.beyond(reach) for w in walls]
    panel, under, over = _panel(out, stock, planes, low, id, name, "box.bottom" if keys.bottom else "box")
    t = stock.thickness
    mitred = any(w.draft.tilt is not None for w in walls) or (
        keys.corner is not None and keys.corner.kind == "mitre"
    )
    inner = (_ring([w.inner for w in walls], low), _ring([w.inner for w in walls], low + t))
    for i, wall in enumerate(walls):
        k = (i + 1) % len(walls)
        d = wall.draft
        along = d.length_axis
        ends = (None, None) if mitred else (panel.low[along], panel.high[along])
        d.cuts.append(
            Channel(wall.axis, wall.high, along, low, low + t, depth, *ends, holds=panel.id, purpose="panel")
        )
        faces = [
            outline([inner[0][i], inner[0][k], under[k], under[i]], (0.0, 0.0, 1.0), glued=False),
            outline([inner[1][i], inner[1][k], over[k], over[i]], (0.0, 0.0, -1.0), glued=False),
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


def _free(out: SetOut, walls: list[Wall], stock: Stock) -> float:
    """Room left at each edge in its groove [mm]: a sheet's, or what solid wood swells to the wettest time."""
    figure = out.tables.figure("drawer_bottom_short")
    if stock.kind == "sheet":
        return figure.value
    across = min(abs(walls[0].inner.at + walls[len(walls) // 2].inner.at), 3000.0)
    swell = max(0.0, stock.across * (out.moisture.wettest - out.moisture.now)) * across
    return float(max(figure.value, swell / 2))


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
        out.joint(
            "planted",
            wall.draft,
            panel,
            [outline([under[i], under[k], over[k], over[i]], inward)],
            [inward],
            "between the sides, glued",
            place=panel.place,
        )
