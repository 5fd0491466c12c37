"""The room right under a lid, for trays that are lifted out of it: less its rail, its stay, and what hangs under it."""

from __future__ import annotations

from dataclasses import replace

from boardwright.core.poses import Box
from boardwright.design.schema import Room
from boardwright.piece.forms.region import Region
from boardwright.piece.forms.trays import tray_layers
from boardwright.piece.setout import SetOut

CLEAR = 3.0
"""Between a tray and what hangs under a lid, or a stay [mm]: 1/8 in, common practice."""


def lifts_out(out: SetOut, room: Room, path: str) -> bool:
    """Whether the trays of a room are lifted out.

    Args:
        out: the bench.
        room: the space, which holds a tray or trays.
        path: its path in the file.
    """
    if room.trays is not None:
        layers = tray_layers(out, f"{path}.trays.tray", room.trays.tray)
    else:
        layers = tray_layers(out, f"{path}.tray", room.tray)
    lifted, way = layers.values("lift_out"), layers.values("slides.way")
    return bool(lifted and lifted[0][1]) and not (way and way[0][1] == "sideways")


def well(out: SetOut, region: Region) -> Region:
    """The room of trays under a lid: up out of it, before the rail that takes the hinges, beside the stay."""
    settled = out.sizer.settled
    box, rail = region.box, out.drafts.get("case.lid.rail")
    rear = min(box.high[1], rail.low[1]) if rail is not None else box.high[1]
    hung = [
        d.low[2]
        for d in out.drafts.values()
        if d.group == "lid.1" and d.low[2] < box.high[2] - 1e-6 and d.high[1] > box.low[1]
    ]
    top = min([box.high[2], *(z - settled(CLEAR, "up") for z in hung)])
    stay = next((h.box for h in out.hardware if h.id == "lid.1.stay"), None)
    beside = 0.0
    if stay is not None and stay.low[1] < rear and stay.high[1] > box.low[1]:
        beside = settled(max(stay.high[0] - box.low[0], 0.0) + CLEAR, "up")
    walls = replace(region.walls, front=out.drafts.get(f"{region.name}.panel"), back=rail)
    return replace(
        region,
        box=Box(box.low, (box.high[0], rear, top)),
        walls=walls,
        fit=(region.fit[0], min(region.fit[1], top - box.low[2])),
        beside=beside,
    )
