"""What a drawer runs on: the room it leaves for the box, and its parts."""

from __future__ import annotations

from boardwright.core.poses import Box
from boardwright.piece.drafts import Draft
from boardwright.piece.forms.bars import bars
from boardwright.piece.forms.centre_guide import centre_guide
from boardwright.piece.forms.drawer_settings import Layers
from boardwright.piece.forms.extension_bars import extension_bars
from boardwright.piece.forms.region import Region
from boardwright.piece.forms.run_room import Room, Run, strip_stock
from boardwright.piece.forms.runners import needs_runner, runner_thickness, runners
from boardwright.piece.forms.slides import slide_room, slides
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut


def run_room(
    out: SetOut,
    id: str,
    region: Region,
    layers: Layers,
    kind: str,
    side_stock: Stock,
    front_back: float,
    least_side: float,
) -> Room | None:
    """The room for the box, or None when there is none (a finding says so).

    Args:
        out: the bench.
        id: the drawer's id.
        region: the opening.
        layers: what the file says of the drawer, nearest first.
        kind: what it runs on.
        side_stock: what its sides are made of.
        front_back: y of the back of the front [mm].
        least_side: the box may not come nearer to the opening than the ends of a one-piece front [mm].
    """
    if kind == "slides":
        return slide_room(out, id, region, layers, front_back, least_side, side_stock)
    sizer = out.sizer
    hung = kind in ("bars", "full_extension_bars")
    figure = out.tables.figure("bar_width_total" if hung else "drawer_side_total")
    side = sizer.size(
        f"{id}.side_clearance",
        layers.choices("side_clearance"),
        max(figure.value / 2, least_side),
        rule="room beside the box, each side",
        source=figure.reason,
        direction="up",
    )
    side = max(side, least_side)
    behind = out.tables.figure("drawer_depth_behind")
    rear = sizer.size(
        f"{id}.rear_clearance",
        layers.choices("rear_clearance"),
        behind.value,
        rule="room behind the box",
        source=behind.reason,
        direction="up",
    )
    length = sizer.settled(region.box.high[1] - front_back - rear, "down")
    if hung:
        grooved = 2 * out.tables.figure("bar_groove_depth").value if kind == "full_extension_bars" else 0.0
        stock = layers.stock(out, f"{kind}.stock", strip_stock(out, sizer.settled(grooved + side, "up")))
        below = sizer.settled(out.tables.figure("drawer_height_plywood").value, "up")
        return Room(kind, side, figure.reason, max(below, least_side), 0.0, length, stock)
    stock = layers.stock(out, "runners.stock", strip_stock(out))
    thick = runner_thickness(out, id, layers, stock)
    guide = sizer.size(
        f"{id}.runners.guide",
        layers.choices("runners.guide"),
        0.0,
        rule="the walls of the opening guide the drawer",
    )
    under = thick if needs_runner(region) and region.walls.floor is None else 0.0
    return Room(kind, side + guide, figure.reason, max(under, 0.0), 0.0, length, stock, None, guide, thick)


def set_running(
    out: SetOut,
    id: str,
    region: Region,
    room: Room,
    left: Draft,
    right: Draft,
    box: Box,
    front_back: float,
    layers: Layers,
) -> Run:
    """Put in what one drawer runs on; where that has no room a finding says so, and the drawer does not travel."""
    if room.kind == "full_extension_bars":
        return extension_bars(out, id, region, room, left, right, box, front_back, layers)
    if room.kind == "bars":
        return bars(out, id, region, room, left, right, box, front_back, layers)
    if room.kind in ("runners", "centre_guide"):
        run = runners(out, id, region, room, box, front_back, layers)
        if room.kind == "centre_guide":
            centre_guide(out, id, region, layers)
        return run
    return slides(out, id, region, room, box, front_back)
