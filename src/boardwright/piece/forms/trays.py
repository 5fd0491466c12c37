"""Trays: run out like drawers, lifted off two ledgers, or slid sideways along them."""

from __future__ import annotations

from dataclasses import dataclass, replace

from boardwright.core.poses import Box
from boardwright.design.schema import Tray, TrayStack
from boardwright.piece.drafts import Draft
from boardwright.piece.forms.drawer import (
    DrawerParts,
    add_motion,
    box_of,
    next_number,
    swelling,
)
from boardwright.piece.forms.drawer_settings import Layers
from boardwright.piece.forms.fillers import with_fillers
from boardwright.piece.forms.region import Region
from boardwright.piece.forms.run_room import LEAST_STRIP, Room, strip_stock
from boardwright.piece.forms.running import run_room, set_running
from boardwright.piece.forms.split import Between, Item, split
from boardwright.piece.forms.strips import fix_strip
from boardwright.piece.forms.tray_box import TrayStocks, cut_grips, put_tray, tray_stocks
from boardwright.piece.records import Motion, Space, Stock
from boardwright.piece.setout import SetOut

LEAST_SLIDE = 25.0
"""Least way that a sideways tray has [mm]: 1 in, common practice."""


def tray(out: SetOut, region: Region, layers: Layers, above: int = 0) -> None:
    """Set out one tray in a region.

    Args:
        out: the bench.
        region: its room.
        layers: what the file says.
        above: how many trays lie over it in a box; their ledgers stand in its way when it is lifted out.
    """
    region = with_fillers(out, region)
    id = f"tray.{next_number(out, 'tray')}"
    lifted = layers.values("lift_out")
    sideways = layers.choose(out, id, "slides.way", "out", "a tray runs out to the front") == "sideways"
    if sideways or (lifted and lifted[0][1]):
        _on_ledgers(out, id, region, layers, sideways, above)
    else:
        _run_out(out, id, region, layers)


def tray_layers(out: SetOut, path: str, keys: Tray | None) -> Layers:
    """What the file says of a tray, nearest first."""
    return Layers([(path, keys), ("drawers", out.design.file.drawers)])


def heights_agree(out: SetOut, path: str, stack: TrayStack) -> bool:
    """Whether a stack gives as many heights as it has trays; a finding says when not."""
    if stack.heights is None or len(stack.heights) == stack.count:
        return True
    out.find(
        "space.heights-count",
        f"`{path}` has {stack.count} trays and {len(stack.heights)} heights",
        f"{path}.heights",
        found=str(len(stack.heights)),
        expected=str(stack.count),
        remedy="give one height for each tray, from top to bottom",
    )
    return False


def box_trays(out: SetOut, region: Region, stack: TrayStack) -> None:
    """Trays in a box: rooms of given heights from its rim down, else rooms that part its whole inside.

    Its walls close it all round, so that they are lifted out unless they slide sideways.
    """
    path = region.path
    if not heights_agree(out, path, stack):
        return
    given = [out.sizer.read(f"{path}.heights[{i}]") for i in range(len(stack.heights or ()))]
    heights = [h for h in given if h is not None]
    if len(heights) < len(given):
        return
    if heights and sum(heights) <= region.box.size(2) + 1e-6:
        low = (region.box.low[0], region.box.low[1], region.box.high[2] - sum(heights))
        region = replace(region, box=Box(low, region.box.high), fit=(region.fit[0], sum(heights)))
    layers = tray_layers(out, f"{path}.tray", stack.tray)
    way = layers.values("slides.way")
    if not layers.values("lift_out") and not (way and way[0][1] == "sideways"):
        lifted = (stack.tray or Tray()).model_copy(update={"lift_out": True})
        stack = stack.model_copy(update={"tray": lifted})
    stack_of_trays(out, region, stack, Between("none", None, None, path))


def stack_of_trays(out: SetOut, region: Region, stack: TrayStack, between: Between) -> None:
    """Trays one over the other, top to bottom; the region's path is that of the stack."""
    path = region.path
    items = [
        Item(
            path,
            f"{region.name}.tray{i + 1}",
            (f"{path}.heights[{i}]", stack.heights[i]) if stack.heights else None,
            1.0,
        )
        for i in range(stack.count - 1, -1, -1)
    ]
    for above, sub in enumerate(reversed(split(out, region, 2, items, between))):
        out.spaces.append(Space(sub.name, sub.box, "tray", out.design.place(path)))
        tray(out, sub, tray_layers(out, f"{path}.tray", stack.tray), above)


def _run_out(out: SetOut, id: str, region: Region, layers: Layers) -> None:
    stocks = tray_stocks(out, id, layers)
    kind = layers.choose(out, id, "runs_on", "bars", "wooden trays hang on bars")
    front = region.box.low[1]
    room = run_room(out, id, region, layers, kind, stocks.sides, front, 0.0)
    if room is None:
        return
    found = _parts(out, id, region, layers, room, stocks, front, low_front=True)
    if found is None:
        return
    parts, box = found
    run = set_running(out, id, region, room, parts.left, parts.right, box, front, layers)
    add_motion(out, parts, region, room, box, run)
    cut_grips(out, id, layers, [parts.front], _bottom_top(out, id))


def _parts(
    out: SetOut,
    id: str,
    region: Region,
    layers: Layers,
    room: Room,
    stocks: TrayStocks,
    front: float,
    *,
    low_front: bool,
) -> tuple[DrawerParts, Box] | None:
    """The parts of a tray, and the room they take together [mm]."""
    grow = max(swelling(out, stocks.sides), swelling(out, stocks.back))
    box = box_of(out, id, region, layers, room, stocks.sides, front, 0.0, True, grow)
    if box is None:
        return None
    name = f"tray {next_number(out, 'tray')}"
    return put_tray(out, id, name, box, stocks, layers, region.path, low_front=low_front), box


def _bottom_top(out: SetOut, id: str) -> float:
    bottom = out.drafts.get(f"{id}.bottom")
    return bottom.high[2] if bottom is not None else 0.0


@dataclass(frozen=True, slots=True)
class _Bed:
    """What a tray on ledgers lies on: the walls, the axis from one to the other, size of the ledgers [mm]."""

    walls: tuple[Draft, Draft]
    axis: int
    wide: float
    high: float
    stock: Stock


def _on_ledgers(out: SetOut, id: str, region: Region, layers: Layers, sideways: bool, above: int) -> None:
    """A tray that rests on a strip at each of two walls.

    In a box a tray that is lifted out is narrower by the ledgers over it, and its own stand out farther; so it is
    under a lid with a stay.
    """
    bed = _bed(out, id, region, layers, sideways)
    if bed is None:
        return
    stocks = tray_stocks(out, id, layers)
    figure = out.tables.figure("tray_side_total")
    side = out.sizer.size(
        f"{id}.side_clearance",
        layers.choices("side_clearance"),
        figure.value / 2,
        rule="room around a tray that is lifted or slid by hand, each side",
        source=figure.reason,
        direction="up",
    )
    boxed = region.walls.front is not None and region.walls.back is not None
    inset = (bed.wide * above if boxed and not sideways else 0.0) + region.beside
    bed = replace(bed, wide=bed.wide + inset)
    behind = side + _shrink(out, region)
    before = side if boxed else 0.0
    length = out.sizer.settled(region.box.size(1) - before - behind, "down")
    front = region.box.low[1] + before
    room = Room("ledgers", side + inset, figure.reason, bed.high, 0.0, length, bed.stock)
    space = _sideways_room(out, id, region, layers, side) if sideways else region
    if space is None:
        return
    low_front = bool(layers.values("front_height"))
    found = _parts(out, id, space, layers, room, stocks, front, low_front=low_front)
    if found is None:
        return
    parts, box = found
    _ledgers(out, id, region, bed)
    _ledger_motion(out, parts, box, region, side, sideways, boxed, above)
    ends = [parts.left, parts.right] if not sideways or bed.axis == 1 else [parts.front, parts.back]
    cut_grips(out, id, layers, ends, _bottom_top(out, id))


def _bed(out: SetOut, id: str, region: Region, layers: Layers, sideways: bool) -> _Bed | None:
    walls = region.walls
    pair = (walls.front, walls.back) if sideways else (walls.left, walls.right)
    if pair[0] is None or pair[1] is None:
        out.find(
            "drawer.no-ledgers",
            f"there are no two walls for the ledgers of {id.replace('.', ' ')}",
            region.path,
            found="no wall in front" if sideways else "an open side",
            expected="walls in front and behind" if sideways else "walls at the left and the right",
            remedy="set `lift_out: true` instead of `slides: sideways`, or put the tray in a `box`"
            if sideways
            else "put a divider there",
        )
        return None
    figure = out.tables.figure("runner_thickness")
    stock = layers.stock(out, "ledgers.stock", strip_stock(out, figure.value if region.beside else 0.0))
    wide = out.sizer.size(
        f"{id}.ledgers.width",
        layers.choices("ledgers.width"),
        figure.value / 2,
        rule="how far a ledger stands out from the wall",
        source=figure.reason,
        direction="down",
        least=5.0,
    )
    high = out.sizer.size(
        f"{id}.ledgers.height",
        layers.choices("ledgers.height"),
        min(figure.value, stock.thickness),
        rule="height of a ledger, at most the thickness of its stock",
        source=figure.reason,
        direction="down",
        least=10.0,
    )
    return _Bed((pair[0], pair[1]), 1 if sideways else 0, wide, high, stock)


def _shrink(out: SetOut, region: Region) -> float:
    """How much nearer the back of a space comes when walls whose grain is upright dry [mm]."""
    walls = [w for w in (region.walls.left, region.walls.right) if w is not None and w.length_axis == 2]
    rates = [w.stock.across for w in walls if w.stock.kind == "wood"]
    return max(rates, default=0.0) * max(0.0, out.moisture.now - out.moisture.driest) * region.box.size(1)


def _sideways_room(out: SetOut, id: str, region: Region, layers: Layers, side: float) -> Region | None:
    """The part of a space that a sideways tray fills when it stands at the left."""
    whole = region.box.size(0)
    long = out.sizer.size(
        f"{id}.length",
        layers.choices("length"),
        whole / 2,
        rule="half of the room that it slides in",
        direction="down",
        least=LEAST_SLIDE,
    )
    way = whole - long - 2 * side
    if way < LEAST_SLIDE:
        out.find(
            "drawer.no-ledgers",
            f"{id.replace('.', ' ')} has no way to slide",
            layers.path("length"),
            found=f"{out.about(long)} long in a room of {out.about(whole)}",
            expected=f"at most {out.down(whole - 2 * side - LEAST_SLIDE)}",
            source="common practice",
            remedy=f"make it {out.down(whole - 2 * side - LEAST_SLIDE)} long or less",
        )
        return None
    low, high = region.box.low, region.box.high
    box = Box(low, (low[0] + long + 2 * side, high[1], high[2]))
    return replace(region, box=box, fit=(long + 2 * side, region.fit[1]))


def _ledgers(out: SetOut, id: str, region: Region, bed: _Bed) -> None:
    """A strip at each of the two walls, screwed to it."""
    along = 1 - bed.axis
    low, high = list(region.box.low), list(region.box.high)
    length = out.sizer.settled(high[along] - low[along], "down")
    if length < LEAST_STRIP:
        return
    for wall, name, first in zip(bed.walls, _NAMES[bed.axis], (True, False), strict=True):
        a, b = list(low), list(high)
        b[along] = a[along] + length
        b[2] = a[2] + bed.high
        if first:
            b[bed.axis] = a[bed.axis] + bed.wide
        else:
            a[bed.axis] = b[bed.axis] - bed.wide
        strip = out.add(
            f"{id}.ledger.{name}",
            "ledger",
            bed.stock,
            Box((a[0], a[1], a[2]), (b[0], b[1], b[2])),
            (along, 2),
            path=region.path,
        )
        fix_strip(out, wall, strip, region.path, at_left=first)


_NAMES = (("left", "right"), ("front", "back"))


def _ledger_motion(
    out: SetOut,
    parts: DrawerParts,
    box: Box,
    region: Region,
    side: float,
    sideways: bool,
    boxed: bool,
    above: int,
) -> None:
    """How it is moved: along the ledgers, up out of a box when no tray is over it, or out to the front of a case."""
    if sideways:
        direction, travel = (1.0, 0.0, 0.0), region.box.size(0) - box.size(0) - 2 * side
    elif boxed:
        direction, travel = (0.0, 0.0, 1.0), region.box.high[2] - (box.high[2] if above else box.low[2])
    else:
        direction, travel = (0.0, -1.0, 0.0), box.high[1] - region.box.low[1]
    out.motions.append(
        Motion(
            parts.id,
            "tray",
            parts.name,
            direction,
            out.sizer.settled(travel, "down"),
            "ledgers",
            region.box,
            (region.box.size(0) - box.size(0)) / 2 if not sideways else side,
            region.box.high[2] - box.high[2],
            region.box.high[1] - box.high[1],
            out.design.place(region.path),
        )
    )
