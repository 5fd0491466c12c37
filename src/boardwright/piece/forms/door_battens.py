"""Battens across the back of a slab door: as many as are asked for, or as its height takes."""

from __future__ import annotations

import math

from boardwright.core.poses import Box
from boardwright.design.schema import Door, DoorPair
from boardwright.piece.drafts import Draft
from boardwright.piece.forms.frame_lay import DOOR, Span
from boardwright.piece.forms.region import Region
from boardwright.piece.forms.slab import FROM_EDGE, battens
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

LEAST_BATTENED = 152.4
"""A narrower door of solid wood needs no battens [mm]: 6 in, common practice."""
BATTEN_ROOM = 9.5
"""Room between the battens of an overlay door and the sides of its opening [mm]: 3/8 in, common practice."""
BATTENS_APART = 40.0
"""Between two battens of a door [mm]: 1 1/2 in, common practice."""


def door_battens(
    out: SetOut, region: Region, keys: Door | DoorPair, path: str, board: Draft, box: Box, stock: Stock
) -> list[Draft]:
    """Battens across the back of a slab, evenly, as many as are asked for or fit."""
    width = out.sizer.settled(out.tables.figure("door_batten_width").value)
    first = out.sizer.settled(box.size(2) / 6)
    span = box.size(2) - 2 * first - width
    most = (
        1 + math.floor(span / (width + BATTENS_APART)) if span > 0 else int(box.size(2) > width + FROM_EDGE)
    )
    usual = 2 if stock.kind == "wood" and box.size(0) >= LEAST_BATTENED else 0
    count = min(usual, most) if keys.battens is None else keys.battens
    if count > most:
        out.find(
            "door.battens-no-room",
            f"{count} battens have no room on a door of `{region.path}`",
            f"{path}.battens",
            found=f"a door {out.about(box.size(2))} high, battens {out.text(width)} wide",
            expected=f"{out.about(BATTENS_APART)} between two of them",
            source="common practice",
            remedy=f"use {most} of them" if most else "use none, or a frame",
        )
        count = most
    if not count:
        return []
    spots = [box.low[2] + first + out.sizer.settled(span * i / max(count - 1, 1)) for i in range(count)]
    if count == 1:
        spots = [box.low[2] + out.sizer.settled((box.size(2) - width) / 2)]
    inset, room = out.sizer.settled(FROM_EDGE), out.sizer.settled(BATTEN_ROOM)
    low = max(inset, out.sizer.settled(region.box.low[0] + room - box.low[0], "up"))
    high = max(inset, out.sizer.settled(box.high[0] - region.box.high[0] + room, "up"))
    across = Span(box.low[0] + low, box.high[0] - high)
    return battens(out, board, DOOR, spots, across, width, stock, "door batten", path)
