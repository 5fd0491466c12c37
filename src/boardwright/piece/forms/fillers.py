"""Fillers: boards on the walls of a space that bring them out to where drawers and trays may run."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from boardwright.core.poses import Box
from boardwright.design.schema import JointKeys
from boardwright.piece.drafts import Channel, Corner, Draft
from boardwright.piece.forms.face_frame import at_front
from boardwright.piece.forms.region import Region, Way
from boardwright.piece.forms.run_room import strip_stock
from boardwright.piece.forms.slab import hold_free
from boardwright.piece.joints.make import make_joint
from boardwright.piece.setout import SetOut

GLUED = JointKeys(kind="butt", fasten="none", glue=True)
PLATE_HALF = 32.0
"""A notch in a filler reaches so far over and under the middle of the plate of a cup hinge [mm]: the 32 mm system,
one pitch each way (common practice)."""
LEFT = 12.0
"""A shorter end beside such a notch is cut away with it [mm]: 1/2 in, common practice."""


def with_fillers(out: SetOut, region: Region) -> Region:
    """The space of a drawer or tray: fillers bring its walls out to the opening of a face frame, or clear of a door.

    What a drawer runs on is screwed to them: beside a rail that has nothing behind it they reach half-way.
    """
    front = region.front
    if front is None:
        return _beside_doors(out, region)
    box, walls = region.box, region.walls
    low, high = box.low[2], box.high[2]
    if walls.floor is None and front.walls.floor is not None:
        low = _half_way(out, front.walls.floor)
    if walls.ceiling is None and front.walls.ceiling is not None:
        high = _half_way(out, front.walls.ceiling)
    edges = (front.box.low[0], front.box.high[0])
    way = region.way
    if way is not None:
        edges = (max(edges[0], way.low), min(edges[1], way.high))
    made = [_filler(out, region, edges[i], bool(i), (low, high), way) for i in (0, 1)]
    opening = at_front(region)
    flush = walls.floor is not None and abs(box.low[2] - front.box.low[2]) < 1e-6
    inner, top = opening.box.low, opening.box.high
    return replace(
        opening,
        box=Box((edges[0], inner[1], inner[2]), (edges[1], top[1], top[2])),
        inner_depth=region.inner_depth if flush else opening.inner_depth,
        fit=(edges[1] - edges[0], opening.fit[1]),
        walls=replace(
            opening.walls, left=made[0], right=made[1], floor=walls.floor if flush else opening.walls.floor
        ),
        way=None,
    )


def _beside_doors(out: SetOut, region: Region) -> Region:
    """The part of a space that can come out past its open doors, between fillers."""
    way, box = region.way, region.box
    if way is None:
        return region
    edges = tuple(
        face + (1 if i == 0 else -1) * out.sizer.settled(max(by, way.least), "up") if by > 1e-6 else face
        for i, (face, by) in enumerate(
            ((box.low[0], way.low - box.low[0]), (box.high[0], box.high[0] - way.high))
        )
    )
    made = [_filler(out, region, edges[i], bool(i), (box.low[2], box.high[2]), way) for i in (0, 1)]
    narrower = region.box.size(0) - (edges[1] - edges[0])
    return replace(
        region,
        box=Box((edges[0], box.low[1], box.low[2]), (edges[1], box.high[1], box.high[2])),
        walls=replace(region.walls, left=made[0], right=made[1]),
        fit=(region.fit[0] - narrower, region.fit[1]),
        way=None,
    )


def _filler(
    out: SetOut, region: Region, edge: float, side: bool, z: tuple[float, float], way: Way | None
) -> Draft | None:
    """Boards on one wall, out to an edge; the wall itself where it stands there already."""
    box = region.box
    wall = region.walls.right if side else region.walls.left
    face = box.high[0] if side else box.low[0]
    if wall is None or abs(face - edge) < 1e-6:
        return wall
    stock = strip_stock(out)
    # beside a sheet, which keeps its depth, solid wood swells towards the back
    still = wall.stock.kind != "wood" and stock.kind == "wood"
    swells = stock.across * max(out.moisture.wettest - out.moisture.now, 0.0) if still else 0.0
    depth = out.sizer.settled(box.size(1) / (1 + swells), "down")
    layers = math.ceil(abs(face - edge) / stock.thickness - 1e-6)
    for i in range(layers):
        a, b = (face + (edge - face) * k / layers for k in (i, i + 1))
        filler = out.add(
            f"{region.name}.filler.{2 if side else 1}.{i + 1}",
            "filler",
            stock,
            Box((min(a, b), box.low[1], z[0]), (max(a, b), box.low[1] + depth, z[1])),
            (2, 1),
            path=region.path,
        )
        if wall.stock.kind == "wood":
            make_joint(out, f"{region.name}.filler", GLUED, region.path, "butt", wall, filler)
        else:
            at = out.sizer.settled((z[1] - z[0]) * (2 if side else 1) / 3)
            hold_free(out, wall, filler, 0, side, 1, at, region.path, from_low=True)
        _round_plates(out, filler, side, way)
        wall = filler
    return wall


def _round_plates(out: SetOut, filler: Draft, side: bool, way: Way | None) -> None:
    """Notches in the front edge of a filler, round the plates of cup hinges on its wall."""
    if way is None or not way.plates[side]:
        return
    deep = out.sizer.settled(way.plates_to - filler.low[1], "up")
    bottom, top = filler.low[2], filler.high[2]
    for z in way.plates[side]:
        low = max(bottom + out.sizer.settled(z - PLATE_HALF - bottom, "down"), bottom)
        high = min(bottom + out.sizer.settled(z + PLATE_HALF - bottom, "up"), top)
        if deep <= 1e-6 or high - low <= 1e-6:
            continue
        if low > bottom + LEFT and high < top - LEFT:
            filler.cuts.append(Channel(1, False, 0, low, high, deep, purpose="hinge plate"))
        elif low <= bottom + LEFT:
            filler.cuts.append(Corner(1, False, deep, 2, False, high - bottom))
        else:
            filler.cuts.append(Corner(1, False, deep, 2, True, top - low))


def plates_clear(out: SetOut, region: Region, spans: Sequence[tuple[float, float]], path: str) -> None:
    """A finding where what parts drawers ends in the notch that a filler has for the plate of a cup hinge.

    Args:
        out: the bench.
        region: between the fillers.
        spans: from where to where each of the parts lies in height [mm].
        path: where the file asks for them.
    """
    for wall in (region.walls.left, region.walls.right):
        notches = _notches(wall) if wall is not None and wall.name == "filler" else []
        met = [s for s in spans if any(min(s[1], high) - max(s[0], low) > 1e-6 for low, high in notches)]
        if wall is not None and met:
            out.find(
                "door.plate-in-the-way",
                f"what parts the drawers in `{region.path}` ends where the plate of a cup hinge is",
                path,
                found=f"a part {out.about(met[0][0] - wall.low[2])} up on the {wall.name}, in a notch for a plate",
                expected="wood of the filler at its whole end",
                source="common practice",
                remedy="use butt hinges (`hinges: butt`), `between: none`, or openings of other heights",
                parts=(wall.id,),
            )


def _notches(filler: Draft) -> list[tuple[float, float]]:
    """From where to where the notches of a filler lie in height [mm]."""
    found = [(c.lo, c.hi) for c in filler.cuts if isinstance(c, Channel) and c.purpose == "hinge plate"]
    for c in filler.cuts:
        if isinstance(c, Corner):
            end = filler.face(2, c.b_high)
            found.append((end - c.b_size, end) if c.b_high else (end, end + c.b_size))
    return found


def _half_way(out: SetOut, rail: Draft) -> float:
    """The middle of the height of a rail [mm]."""
    return rail.low[2] + out.sizer.settled(rail.size(2) / 2)
