"""The bottom of a drawer: in grooves, in a rabbet, or planted under the box."""

from __future__ import annotations

from typing import TYPE_CHECKING

from boardwright.core.poses import Box
from boardwright.design.schema import JointKeys
from boardwright.piece.drafts import Channel, Draft, Step
from boardwright.piece.forms.drawer_settings import Layers
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.make import make_joint
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

if TYPE_CHECKING:
    from boardwright.piece.forms.drawer import DrawerParts

SCREWED = JointKeys(kind="butt", fasten="screws", glue=True)


LEAST_HELD = 3.0
"""Wood of a front under the groove, or beside the rabbet, of the bottom [mm]: 1/8 in, common practice."""


def fit_bottom(
    out: SetOut, id: str, parts: DrawerParts, stock: Stock, how: str, layers: Layers, box: Box
) -> None:
    """Set out the bottom of a drawer; the back is raised where the bottom passes under it."""
    if how == "planted":
        _planted(out, id, parts, stock, layers, box)
    else:
        _held(out, id, parts, stock, how, layers, box)


def _walls(parts: DrawerParts) -> list[tuple[Draft, int, bool]]:
    """The parts around the bottom, with the side of each that faces in: left, right, front."""
    front = parts.box_front or parts.front
    return [(parts.left, 0, True), (parts.right, 0, False), (front, 1, True)]


def _held(out: SetOut, id: str, parts: DrawerParts, stock: Stock, how: str, layers: Layers, box: Box) -> None:
    sizer = out.sizer
    t = stock.thickness
    slid = any(
        keys is not None and keys.kind == "sliding_dovetail"
        for keys, _ in (layers.joint("front.joint"), layers.joint("back.joint"))
    )
    guided = [word for _, word in layers.values("runs_on")[:1]] == ["centre_guide"]
    under = how == "groove" and (
        layers.choose(
            out,
            id,
            "bottom.back",
            "under" if stock.kind == "wood" or guided or slid else "captured",
            "a solid bottom passes under the back and can move, one with a guide under it too, and one that goes in "
            "after a sliding dovetail; else a sheet is held all round",
        )
        == "under"
    )
    thin = min(d.size(axis) for d, axis, _ in (*_walls(parts), *([] if under else [(parts.back, 1, False)])))
    figure = out.tables.figure("drawer_bottom_groove_depth")
    depth = sizer.size(
        f"{id}.bottom.depth",
        layers.choices("bottom.depth"),
        min(figure.value, thin / 2),
        rule=f"depth of the {how} for the bottom; at most half of the thinnest wall",
        source=figure.reason,
        direction="down",
        least=sizer.step,
    )
    what = f"the {how} for the bottom of {parts.name}"
    depth = out.at_most(depth, thin / 2, what, layers.path("bottom.depth"), thin)
    up = _groove_up(out, id, layers) if how == "groove" else 0.0
    z0 = box.low[2] + up
    z1 = z0 + t
    if z1 > (box.low[2] + box.high[2]) / 2 + 1e-6:
        out.find(
            "drawer.bottom-too-thick",
            f"the bottom of {parts.name} has no room in its sides",
            layers.path("bottom"),
            found=f"{out.text(up)} up and {out.text(t)} thick in sides {out.text(box.size(2))} high",
            expected=f"at least half of their height, {out.up(box.size(2) / 2)}, left over it",
            source="common practice",
            remedy=f"make the sides {out.up(2 * (up + t))} high or more, or use a thinner bottom",
        )
        return
    walls = _walls(parts)
    if under:
        parts.back.low[2] = z1
    else:
        walls.append((parts.back, 1, False))
    front = parts.box_front or parts.front
    held = z0 if how == "groove" else z1
    reaches = held - front.low[2] >= LEAST_HELD
    if not reaches:
        walls = [w for w in walls if w[0] is not front]
        out.find(
            "drawer.bottom-below-front",
            f"the front of {parts.name} does not reach low enough to hold the bottom",
            layers.path("bottom"),
            found=f"{out.about(max(held - front.low[2], 0.0))} of the front at the bottom's {how}",
            expected=f"at least {out.up(LEAST_HELD)}",
            source="common practice: 1/8 in (3 mm)",
            remedy="set the bottom in a groove" if how == "rabbet" else "set the groove higher (`bottom.up`)",
        )
    panel = _panel(out, id, parts, stock, how, depth, z0, under, reaches)
    for wall, axis, high in walls:
        _receive(out, wall, axis, high, panel, how, depth, z0, z1, id)


def _groove_up(out: SetOut, id: str, layers: Layers) -> float:
    figure = out.tables.figure("drawer_bottom_groove_up")
    return out.sizer.size(
        f"{id}.bottom.up",
        layers.choices("bottom.up"),
        figure.value,
        rule="wood left under the groove",
        source=figure.reason,
        least=out.sizer.step,
    )


def groove_place(out: SetOut, id: str, layers: Layers, stock: Stock, box: Box) -> tuple[float, float]:
    """Where the groove for the bottom will lie in the walls of the box, for a joint that is cut before it: z [mm]."""
    z0 = box.low[2] + _groove_up(out, id, layers)
    return z0, z0 + stock.thickness


def _panel(
    out: SetOut,
    id: str,
    parts: DrawerParts,
    stock: Stock,
    how: str,
    depth: float,
    z0: float,
    under: bool,
    in_front: bool,
) -> Draft:
    figure = out.tables.figure("drawer_bottom_short")
    short = out.sizer.settled(figure.value, "up") if how == "groove" else 0.0
    short = min(short, depth / 2)
    reach = depth - short
    front = parts.box_front or parts.front
    x0, x1 = parts.left.high[0] - reach, parts.right.low[0] + reach
    y0 = front.high[1] - (reach if in_front else 0.0)
    y1 = parts.back.high[1] if under else parts.back.low[1] + reach
    x1 = x0 + out.sizer.settled(x1 - x0, "down")
    y1 = y0 + out.sizer.settled(y1 - y0, "down")
    out.sizer.explain(
        f"{id}.bottom.width",
        x1 - x0,
        f"between the sides, plus 2 × {out.text(depth)} less 2 × {out.text(short)}",
        "short of the groove bottoms",
        figure.reason,
    )
    return out.add(
        f"{id}.bottom",
        f"{parts.kind} bottom",
        stock,
        Box((x0, y0, z0), (x1, y1, z0 + stock.thickness)),
        (0, 1),
        group=parts.id,
        path=_path(parts),
    )


def _path(parts: DrawerParts) -> str:
    return parts.front.place.path


def _receive(
    out: SetOut,
    wall: Draft,
    axis: int,
    high: bool,
    panel: Draft,
    how: str,
    depth: float,
    z0: float,
    z1: float,
    id: str,
) -> None:
    along = 1 - axis
    face = wall.face(axis, high)
    inner = sorted((face, face - depth if high else face + depth))
    reach = (max(inner[0], panel.low[axis]), min(inner[1], panel.high[axis]))
    run = (max(wall.low[along], panel.low[along]), min(wall.high[along], panel.high[along]))
    if how == "groove":
        start, end = _stops(wall, along, panel, depth)
        wall.cuts.append(
            Channel(axis, high, along, z0, z1, depth, start, end, holds=panel.id, purpose="panel")
        )
        contacts = [
            plane(2, z0, {axis: reach, along: run}, True, glued=False),
            plane(2, z1, {axis: reach, along: run}, False, glued=False),
        ]
        summary = f"groove {out.text(z1 - z0)} wide, {out.text(depth)} deep, dry"
    else:
        wall.cuts.append(Step(axis, high, 2, False, z1 - wall.low[2], depth, holds=panel.id, purpose="panel"))
        contacts = [plane(2, z1, {axis: reach, along: run}, False, glued=panel.stock.kind == "sheet")]
        summary = f"rabbet {out.text(z1 - wall.low[2])} wide, {out.text(depth)} deep"
    out.joint(
        "panel",
        wall,
        panel,
        contacts,
        [unit(axis, high)],
        summary,
        glued=how != "groove" and panel.stock.kind == "sheet",
        floats=(axis,),
        place=panel.place,
    )


def _stops(wall: Draft, along: int, panel: Draft, depth: float) -> tuple[float | None, float | None]:
    """A groove in a one-piece front that butts the sides is stopped so that it does not show at its ends."""
    shows = (along, False) in wall.show
    if not shows or any(
        isinstance(c, (Step, Channel)) and c.purpose in ("joint", "tongue") for c in wall.cuts
    ):
        return None, None
    return panel.low[along], panel.high[along]


def _plantable(stock: Stock, box: Box) -> bool:
    return box.size(2) >= 4 * stock.thickness


def lift_walls(out: SetOut, parts: DrawerParts, stock: Stock, box: Box) -> None:
    """Stand the walls of the box on a planted bottom, before they are joined."""
    if not _plantable(stock, box):
        return
    for wall in [parts.left, parts.right, parts.back] + ([parts.box_front] if parts.box_front else []):
        wall.low[2] = box.low[2] + stock.thickness
        wall.high[2] = wall.low[2] + out.sizer.settled(wall.high[2] - wall.low[2], "down")


def _planted(out: SetOut, id: str, parts: DrawerParts, stock: Stock, layers: Layers, box: Box) -> None:
    t = stock.thickness
    if not _plantable(stock, box):
        out.find(
            "drawer.bottom-too-thick",
            f"the bottom of {parts.name} is too thick for its height",
            layers.path("bottom"),
            found=f"{out.text(t)} under a box {out.text(box.size(2))} high",
            expected="at most a quarter of the height",
            source="common practice",
            remedy=f"make the box {out.up(4 * t)} high or more, or use a thinner bottom",
        )
        return
    y0, y1 = parts.left.low[1], parts.left.high[1]
    front = parts.front
    if parts.box_front is None:
        y0 = front.high[1]
    length = out.sizer.settled(y1 - y0, "down")
    width = out.sizer.settled(box.size(0), "down")
    x0 = box.low[0] + (box.size(0) - width) / 2
    panel = out.add(
        f"{id}.bottom",
        f"{parts.kind} bottom",
        stock,
        Box((x0, y0, box.low[2]), (x0 + width, y0 + length, box.low[2] + t)),
        (0, 1),
        group=parts.id,
        path=_path(parts),
    )
    for wall in (parts.left, parts.right):
        make_joint(out, f"{id}.bottom.joint", SCREWED, layers.path("bottom"), "butt", panel, wall)
