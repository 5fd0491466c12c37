"""Shelves on pins: rows of holes in both walls, four pins a shelf."""

from __future__ import annotations

import math
from dataclasses import dataclass

from boardwright.core.poses import Box, Vec
from boardwright.design.schema import Shelves
from boardwright.piece.drafts import Bore, Draft
from boardwright.piece.forms.drawer import swelling
from boardwright.piece.forms.region import Region
from boardwright.piece.joints.faces import plane
from boardwright.piece.records import Hardware, Stock
from boardwright.piece.setout import SetOut

LEFT = 3.0
"""Wood left between two holes from both faces of a divider, or behind one [mm]: 1/8 in, common practice."""
REACH = 8.0
"""How far a pin stands out under the shelf [mm]."""
LEAST_DEPTH = 6.0
"""A pin in a shallower hole does not hold [mm]: 1/4 in, common practice."""


@dataclass(frozen=True, slots=True)
class Rows:
    """The rows of holes [mm].

    Attributes:
        pin: diameter. pitch: from hole to hole. heights: of all holes. setback: from the front and rear of a shelf.
        clearance: at each end of a shelf.
    """

    pin: float
    pitch: float
    heights: list[float]
    setback: float
    clearance: float


def pin_shelves(out: SetOut, region: Region, keys: Shelves, stock: Stock, path: str) -> None:
    """Drill the walls of a space, and lay shelves on pins."""
    left, right = region.walls.left, region.walls.right
    rows = _rows(out, region, keys, path)
    if left is None or right is None or rows is None:
        return
    box = region.box
    free = box.size(1) - out.sizer.settled(2 * rows.clearance)
    depth = out.sizer.settled(free / (1 + swelling(out, stock)), "down")
    ys = (box.low[1] + rows.setback, box.low[1] + depth - rows.setback)
    usual = out.tables.figure("shelf_pin_depth").value
    rooms = [
        (w.size(0) - LEFT) / (1 if outer else 2)
        for w, outer in zip((left, right), region.outer[:2], strict=True)
    ]
    hole = min(usual, *rooms)
    if ys[1] - ys[0] < rows.pin or hole < LEAST_DEPTH - 1e-6:
        out.find(
            "space.pins-no-room",
            f"the shelves of `{region.path}` have no room for their pins",
            path,
            found=f"shelves {out.about(depth)} deep, rows {out.text(rows.setback)} from front and rear; holes "
            f"{out.about(hole)} deep",
            expected=f"two rows, and holes at least {out.up(LEAST_DEPTH)} deep",
            source="common practice",
            remedy="use a smaller `setback`, thicker walls, or `kind: fixed`",
        )
        return
    for wall, high in ((left, True), (right, False)):
        for y in ys:
            for z in rows.heights:
                at: Vec = (wall.face(0, high), y, z)
                wall.cuts.append(Bore(0, high, at, rows.pin, hole, purpose="hardware", for_="shelf pin"))
    for i, z in enumerate(_chosen(rows.heights, keys.count, box.low[2], box.high[2])):
        _shelf(out, region, stock, rows, f"{region.name}.shelf.{i + 1}", z, depth, ys, path)


def _rows(out: SetOut, region: Region, keys: Shelves, path: str) -> Rows | None:
    inches = out.design.units == "in"
    names = (
        ("shelf_pin_diameter_in", "shelf_pin_pitch_in")
        if inches
        else ("system_hole_diameter", "system_hole_pitch")
    )

    def size(key: str, figure_name: str, rule: str, settle_it: bool = True) -> float:
        figure = out.tables.figure(figure_name)
        return out.sizer.size(
            f"{region.name}.pins.{key}",
            [(f"{path}.{key}", getattr(keys, key))],
            figure.value,
            rule=rule,
            source=figure.reason,
            settle_it=settle_it,
        )

    pin = size("pin", names[0], "hole of a shelf pin", settle_it=False)
    pitch = size("pitch", names[1], "from hole to hole")
    first = size("first", "shelf_pin_end", "from the floor to the first hole")
    last = size("last", "shelf_pin_end", "from the last hole to the ceiling")
    setback = size("setback", "system_hole_setback", "from the front and rear of a shelf")
    clearance = size("clearance", "shelf_pin_clearance", "shorter than the space, each end")
    low, high = region.box.low[2] + first, region.box.high[2] - last
    datum = region.walls.left.low[2] if region.walls.left is not None else 0.0
    low = datum + out.sizer.settled(low - datum, "up")
    n = math.floor((high - low) / pitch + 1e-6) + 1 if pitch > 0 else 0
    if n < keys.count:
        out.find(
            "space.pins-too-few",
            f"`{region.path}` has fewer holes than shelves",
            path,
            found=f"{max(n, 0)} holes {out.text(pitch)} apart in a height of {out.about(region.box.size(2))}",
            expected=f"at least {keys.count}",
            remedy=f"use {max(n, 0)} shelves or fewer, a smaller `pitch`, or a smaller `first` and `last`",
        )
        return None
    return Rows(pin, pitch, [low + i * pitch for i in range(n)], setback, clearance)


def _chosen(heights: list[float], count: int, low: float, high: float) -> list[float]:
    """The holes at which shelves part the space most evenly, each used once."""
    out: list[float] = []
    for i in range(count):
        wish = low + (high - low) * (i + 1) / (count + 1)
        free = [z for z in heights if z not in out]
        out.append(min(free, key=lambda z: (abs(z - wish), z)))
    return sorted(out)


def _shelf(
    out: SetOut,
    region: Region,
    stock: Stock,
    rows: Rows,
    id: str,
    z: float,
    depth: float,
    ys: tuple[float, float],
    path: str,
) -> None:
    """One shelf and its four pins."""
    box, gap = region.box, rows.clearance
    width = out.sizer.settled(box.size(0) - 2 * gap, "down")
    x0 = box.low[0] + (box.size(0) - width) / 2
    bottom = z + rows.pin / 2
    shelf = out.add(
        id,
        "loose shelf",
        stock,
        Box((x0, box.low[1], bottom), (x0 + width, box.low[1] + depth, bottom + stock.thickness)),
        (0, 1),
        show=((1, False), (2, True), (2, False)),
        path=path,
    )
    for wall, high in ((region.walls.left, True), (region.walls.right, False)):
        if wall is not None:
            _rest(out, wall, shelf, high, z, rows.pin, ys, id)


def _rest(
    out: SetOut,
    wall: Draft,
    shelf: Draft,
    high: bool,
    z: float,
    pin: float,
    ys: tuple[float, float],
    id: str,
) -> None:
    face = wall.face(0, high)
    gap = abs((shelf.low[0] if high else shelf.high[0]) - face)
    r = pin / 2
    for k, y in enumerate(ys):
        reach = (face, face + gap + REACH) if high else (face - gap - REACH, face)
        room = Box((reach[0], y - r, z - r), (reach[1], y + r, z + r))
        side = "left" if high else "right"
        out.hardware.append(
            Hardware(
                f"{id}.pin.{side}.{k + 1}",
                f"shelf pin {out.about(pin)}",
                "shelf_pin",
                room,
                "case",
                place=shelf.place,
            )
        )
    span = {1: (shelf.low[1], shelf.high[1]), 2: (shelf.low[2], shelf.high[2])}
    out.joint(
        "rests",
        wall,
        shelf,
        [plane(0, face, span, high, glued=False, gap=gap, why="so that the shelf can be moved")],
        [(0.0, -1.0, 0.0), (0.0, 0.0, 1.0)],
        f"on two pins, {out.text(gap)} of room",
        glued=False,
        floats=(0, 1),
        place=shelf.place,
    )
