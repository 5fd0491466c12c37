"""A box: four sides or more, plumb or sloping, a bottom, thin walls inside, a lid sawn from the whole."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.poses import Box
from boardwright.design.schema import BoxKeys
from boardwright.piece.drafts import Draft
from boardwright.piece.forms.box_dividers import dividers
from boardwright.piece.forms.box_lid import set_lid
from boardwright.piece.forms.box_panel import (
    LEAST_OVER,
    Wall,
    bottom,
    bottom_stock,
    lid_stock,
    lid_top,
    panel_groove,
)
from boardwright.piece.forms.hopper import hopper
from boardwright.piece.forms.lid_well import beside_stay, clear_stay
from boardwright.piece.forms.region import Region, Walls
from boardwright.piece.forms.trays import box_trays
from boardwright.piece.joints.make import make_joint
from boardwright.piece.joints.sloping import Plane, side_plane
from boardwright.piece.records import Chain, Stock
from boardwright.piece.setout import SetOut

LEAST = 40.0
LARGEST = 3000.0
LEAST_INSIDE = 20.0
LEAST_LOW = 12.0
"""Least height of what a lid is sawn from [mm]: 1/2 in, common practice."""


@dataclass(frozen=True, slots=True)
class Sizes:
    """Outside of a box [mm]."""

    width: float
    depth: float
    height: float


def box(out: SetOut, keys: BoxKeys) -> Box | None:
    """Set out a box; gives its outside, or None when its sizes make no box."""
    sizes = _outside(out, keys)
    stock = out.stock(("box.stock", keys.stock))
    if sizes is None:
        return None
    n = keys.sides or 4
    if n != 4 or keys.slope or keys.slope_ends:
        return hopper(out, keys, sizes.width, sizes.depth, sizes.height, stock)
    return _square(out, keys, sizes, stock)


def _outside(out: SetOut, keys: BoxKeys) -> Sizes | None:
    found: list[float] = []
    for name in ("width", "depth", "height"):
        if name == "depth" and keys.depth is None:
            found.append(found[0] if found else 0.0)
            continue
        path = f"box.{name}"
        value = out.sizer.read(path)
        if value is None:
            continue
        if not LEAST <= value <= LARGEST:
            out.find(
                "box.size",
                f"the {name} of the box is out of range",
                path,
                found=out.about(value),
                expected=f"{out.up(LEAST)} to {out.down(LARGEST)}",
                remedy="check the number and its unit",
            )
            continue
        found.append(out.sizer.size(path, [(path, getattr(keys, name))], value))
    return Sizes(*found) if len(found) == 3 else None


def no_room(out: SetOut, path: str, message: str, found: str, expected: str, remedy: str) -> None:
    """A finding: these sizes make no box."""
    out.find("box.no-room", message, path, found=found, expected=expected, remedy=remedy)


def _square(out: SetOut, keys: BoxKeys, sizes: Sizes, stock: Stock) -> Box | None:
    settled = out.sizer.settled
    t = stock.thickness
    mitred = keys.corner is not None and keys.corner.kind == "mitre"
    inside = sizes.width - 2 * t
    deep = sizes.depth - 2 * t if mitred else settled(sizes.depth - 2 * t, "down")
    if min(inside, deep) < LEAST_INSIDE:
        no_room(
            out,
            "box",
            "the box has no inside",
            f"{out.about(inside)} wide and {out.about(deep)} deep inside",
            f"at least {out.up(LEAST_INSIDE)} each way",
            f"make it at least {out.up(2 * t + LEAST_INSIDE)} wide and deep, or its sides thinner",
        )
        return None
    width, depth = sizes.width, deep + 2 * t
    out.sizer.explain("box.inside.width", inside, f"{out.text(width)} less 2 × {out.text(t)}")
    out.sizer.explain(
        "box.inside.depth",
        deep,
        f"{out.text(sizes.depth)} less 2 × {out.text(t)}",
        "" if mitred else "settled down",
    )
    out.chains.append(
        Chain("width of the box", (("side", t), ("inside", inside), ("side", t)), ("outside width", width))
    )
    panel = bottom_stock(out, keys)
    how = out.sizer.choose(
        "box.bottom.set",
        keys.bottom.set if keys.bottom else None,
        "groove",
        "the bottom sits in a groove and stays dry",
        "box.bottom.set",
    )
    z0 = panel.thickness if how == "planted" else 0.0
    top = z0 + settled(sizes.height - z0, "down")
    parts = _levels(out, keys, z0, top)
    if parts is None:
        return None
    outer = Box((0.0, 0.0, 0.0), (width, depth, parts[-1][1]))
    walls = _walls(out, keys, stock, width, depth, parts[0], "")
    floor = bottom(out, keys, walls, how, panel, z0, parts[0][1])
    if len(parts) == 2 and keys.lid is not None:
        group = "lid.1" if keys.lid.hinges is not None else "case"
        upper = _walls(out, keys, stock, width, depth, parts[1], "lid.", group)
        lid_top(out, keys, upper, parts[1][1], group)
        set_lid(out, keys.lid, walls, upper)
    over, rim = floor, parts[0][1]
    if keys.dividers is not None and floor is not None:
        over = dividers(out, keys.dividers, walls, floor, rim, panel, _tray_heights(out, keys))
    if keys.trays is not None and floor is not None and _trays_over(out, keys, over or floor, floor, rim):
        front, right, rear, left = (w.draft for w in walls)
        room = Box((t, t, floor), (t + inside, t + deep, parts[0][1]))
        around = Walls(left, right, front=front, back=rear)
        fit = (inside, parts[0][1] - floor)
        beside = beside_stay(out, room)
        box_trays(out, Region(room, around, "box.trays", "box.inside", deep, fit, beside=beside), keys.trays)
    clear_stay(out, floor or 0.0)
    return outer


def _tray_heights(out: SetOut, keys: BoxKeys) -> float:
    """What trays of given heights take under the rim of a box [mm]; 0 without them."""
    given = keys.trays.heights if keys.trays is not None else None
    return sum(out.sizer.read(f"box.trays.heights[{i}]") or 0.0 for i in range(len(given or ())))


def _trays_over(out: SetOut, keys: BoxKeys, over: float, floor: float, rim: float) -> bool:
    """Whether the trays of a box lie over the thin walls in it; a finding when not."""
    low = rim - (_tray_heights(out, keys) or rim - floor)
    if low >= over - 1e-6 or over <= floor + 1e-6:
        return True
    no_room(
        out,
        "box.trays",
        "the trays stand where the thin walls are",
        f"trays down to {out.about(low - floor)} over the bottom, walls {out.about(over - floor)} high",
        "trays that lie over the walls",
        "give the trays `heights`, and the walls a smaller `height`",
    )
    return False


def _levels(out: SetOut, keys: BoxKeys, z0: float, z1: float) -> list[tuple[float, float]] | None:
    """From where to where the walls reach [mm]: once, or those of the box and of its lid, which has come down on it."""
    if keys.lid is None:
        return [(z0, z1)]
    shop = out.design.file.shop
    kerf = out.sizer.given([("shop.kerf", shop.kerf if shop else None)])
    figure = out.tables.figure("kerf_table_saw")
    cut = out.sizer.settled(kerf[1] if kerf else figure.value, "up")
    at = out.sizer.size("box.lid.at", [("box.lid.at", keys.lid.at)], (z0 + z1) / 2)
    out.sizer.explain("box.lid.kerf", cut, "width of the saw cut", "lost between lid and box", figure.reason)
    least = 2 * out.sizer.settled(LEAST_OVER, "up") + lid_stock(out, keys).thickness
    if at - z0 < LEAST_LOW or z1 - at - cut < least - 1e-6:
        no_room(
            out,
            "box.lid.at",
            "the saw cut leaves no lid, or no box under it",
            f"{out.about(at - z0)} below and {out.about(z1 - at - cut)} above a kerf of {out.about(cut)}",
            f"at least {out.up(LEAST_LOW)} below; above it the top, and {out.up(LEAST_OVER)} over and under its groove",
            f"saw it between {out.up(z0 + LEAST_LOW)} and {out.down(z1 - cut - least)}",
        )
        return None
    return [(z0, at), (at, z1 - cut)]


def _walls(
    out: SetOut,
    keys: BoxKeys,
    stock: Stock,
    width: float,
    depth: float,
    zs: tuple[float, float],
    part: str,
    group: str = "case",
) -> list[Wall]:
    """Front, right, rear, left; the front and the rear cover the ends of the others."""
    t = stock.thickness
    word = "lid" if part else "box"
    places = {
        "front": (Box((0.0, 0.0, zs[0]), (width, t, zs[1])), (0, 2), 1, False),
        "right": (Box((width - t, t, zs[0]), (width, depth - t, zs[1])), (1, 2), 0, True),
        "rear": (Box((0.0, depth - t, zs[0]), (width, depth, zs[1])), (0, 2), 1, True),
        "left": (Box((0.0, t, zs[0]), (t, depth - t, zs[1])), (1, 2), 0, False),
    }
    walls = []
    for name, (room, axes, axis, high) in places.items():
        called = {"front": f"{word} front", "rear": f"{word} back"}.get(name, f"{word} side")
        draft = out.add(
            f"box.{part}{name}",
            called,
            stock,
            room,
            axes,
            show=((axis, high), (2, True)),
            path="box",
            group=group,
        )
        walls.append(Wall(draft, axis, not high, _outward(draft, axis, high), _inner(draft, axis, not high)))
    grooved = keys.lid is not None if part else keys.bottom is None or keys.bottom.set in (None, "groove")
    taken = panel_groove(out, keys, t) if grooved else 0.0
    for i in (0, 2):
        for k in (1, 3):
            first, second = walls[i].draft, walls[k].draft
            make_joint(
                out, f"box.{part}corner", keys.corner, "box.corner", "rabbet", first, second, taken=taken
            )
    return walls


def _outward(draft: Draft, axis: int, high: bool) -> Plane:
    return side_plane(draft, axis, high)


def _inner(draft: Draft, axis: int, high: bool) -> Plane:
    face = side_plane(draft, axis, high)
    x, y, z = face.normal
    return Plane((-x, -y, -z), -face.at)
