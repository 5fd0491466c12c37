"""A guide under the middle of a drawer: a strip under its bottom runs in a grooved runner on what it stands on."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.poses import Box
from boardwright.piece.drafts import Channel, Draft
from boardwright.piece.forms.drawer_settings import Layers
from boardwright.piece.forms.region import WEB_FRAME, Region, rear_rail
from boardwright.piece.forms.run_room import LEAST_STRIP, strip_stock
from boardwright.piece.forms.strips import slot_for
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.fastening import choose_screw, drive, no_screw, spot
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

CLEAR = 1.5
"""Between strip and runner, runner and drawer, upright [mm]: 1/16 in, common practice."""
LEAST_WOOD = 3.0
"""Wood under the groove of the runner, and least of the strip in it [mm]: 1/8 in, common practice."""
LIP = 15.0
"""Wood of the runner on both sides of its groove, for its screws [mm]: 9/16 in, common practice."""
APART = 2.0
"""From strip and runner to the parts before and behind them [mm]: common practice."""
GLUED = 50.0
"""Length of the strip that is glued to a solid bottom, at the front [mm]: 2 in, common practice."""


@dataclass(frozen=True, slots=True)
class _Heights:
    """Of what lies between the floor and the drawer bottom [mm]: runner, its groove, strip."""

    runner: float
    groove: float
    strip: float


def centre_guide(out: SetOut, id: str, region: Region, layers: Layers) -> None:
    """Put in the strip and its runner; a drawer that has no room for them gets a finding."""
    floor, bottom = region.walls.floor, out.drafts.get(f"{id}.bottom")
    if floor is None or bottom is None:
        _nothing_under(out, id, region)
        return
    heights = _heights(out, bottom.low[2] - region.box.low[2])
    if heights is None:
        _no_room(out, id, layers, bottom.low[2] - region.box.low[2])
        return
    stock = layers.stock(out, "centre_guide.stock", strip_stock(out))
    settled = out.sizer.settled
    figure = out.tables.figure("runner_thickness")
    width = out.sizer.size(
        f"{id}.centre_guide.width",
        layers.choices("centre_guide.width"),
        figure.value,
        rule="width of the strip under the bottom",
        source=figure.reason,
        direction="down",
        least=8.0,
    )
    play = settled(out.tables.figure("drawer_side_total").value, "up")
    wide = out.sizer.size(
        f"{id}.centre_guide.runner_width",
        layers.choices("centre_guide.runner_width"),
        width + play + 2 * settled(LIP, "up"),
        rule="width of the runner: strip, its room, and wood for screws on both sides",
        least=width + play + 2 * settled(LIP / 2, "up"),
    )
    left, right = out.drafts[f"{id}.left"], out.drafts[f"{id}.right"]
    middle = left.low[0] + settled((right.high[0] - left.low[0]) / 2)
    inside = right.low[0] - left.high[0] - 2 * APART
    back = out.drafts[f"{id}.back"]
    inside = (
        min(inside, (right.low[0] - left.high[0]) / 2 - 2 * APART) if back.low[2] < bottom.low[2] else inside
    )
    if wide > inside + 1e-6:
        _too_narrow(out, id, layers, wide, inside)
        return
    front = out.drafts.get(f"{id}.box_front") or out.drafts[f"{id}.front"]
    start = front.high[1] + settled(APART, "up")
    _runner(out, id, region, stock, floor, middle, wide, width + play, heights, start)
    strip = _strip(out, id, region, stock, bottom, middle, width, heights, start)
    if strip is not None:
        _notch_back(out, id, region, middle, wide, heights)


def _heights(out: SetOut, room: float) -> _Heights | None:
    settled = out.sizer.settled
    runner = settled(room - CLEAR, "down")
    groove = settled(runner - LEAST_WOOD, "down")
    strip = settled(room - (runner - groove) - CLEAR, "down")
    held = strip - (room - runner)
    return _Heights(runner, groove, strip) if held >= LEAST_WOOD - 1e-6 else None


def _runner(
    out: SetOut,
    id: str,
    region: Region,
    stock: Stock,
    floor: Draft,
    middle: float,
    wide: float,
    channel: float,
    heights: _Heights,
    start: float,
) -> None:
    """The runner, on a whole board, or on a front and a rear rail as of a web frame."""
    z = region.box.low[2]
    length = out.sizer.settled(region.box.high[1] - start, "down")
    behind = out.drafts.get(f"{floor.id}.rear") if floor.name == WEB_FRAME else rear_rail(out, floor)
    carriers = [floor, behind] if behind is not None else [floor]
    whole = floor.size(1) >= region.inner_depth - 1.0
    if length < LEAST_STRIP or not (whole or behind is not None):
        _nothing_under(out, id, region)
        return
    box = Box((middle - wide / 2, start, z), (middle + wide / 2, start + length, z + heights.runner))
    runner = out.add(f"{id}.centre_runner", "centre runner", stock, box, (1, 0), path=region.path)
    lip = out.sizer.settled((wide - channel) / 2)
    runner.cuts.append(
        Channel(
            2, True, 1, box.low[0] + lip, box.low[0] + lip + channel, heights.groove,
            holds=f"{id}.centre_strip", purpose="running",
        )
    )  # fmt: skip
    for n, part in enumerate(carriers):
        _fix(out, region, part, runner, lip, fixed=n == 0)


def _fix(out: SetOut, region: Region, floor: Draft, runner: Draft, lip: float, *, fixed: bool) -> None:
    """Screws through the lips of the runner; in a solid board that moves along it only the first is fixed."""
    low, high = max(floor.low[1], runner.low[1]), min(floor.high[1], runner.high[1])
    run, settled = high - low, out.sizer.settled
    held, room = runner.size(2), floor.size(2)
    chosen = choose_screw(out, None, None, lip / 2, held, room)
    if chosen is None:
        no_screw(out, runner, floor, region.path, held, room, lip / 2)
        return
    crosses = floor.stock.kind == "wood" and floor.length_axis != runner.length_axis
    edge = min(settled(40.0), settled(run / 4))
    count = 2 if run < 450 else 3
    ids = []
    for i in range(count):
        x = runner.low[0] + settled(lip / 2) if i % 2 == 0 else runner.high[0] - settled(lip / 2)
        y = low + settled(edge + i * (run - 2 * edge) / (count - 1))
        slotted = crosses and not (fixed and i == 0)
        ids.append(
            drive(
                out,
                runner,
                floor,
                2,
                False,
                spot(2, runner.high[2], 0, x, 1, y),
                chosen[0],
                chosen[1],
                held,
                slot=slot_for(out, floor, 1, y - runner.low[1]) if slotted else 0.0,
                slot_axis=1,
                path=region.path,
            )
        )
    out.joint(
        "screwed",
        floor,
        runner,
        [plane(2, runner.low[2], {0: (runner.low[0], runner.high[0]), 1: (low, high)}, True, glued=False)],
        [unit(2, True)],
        f"{count} screws, {'the first fixed, the others in slots; no glue' if crosses else 'no glue'}",
        glued=False,
        floats=(1,) if crosses else (),
        fasteners=tuple(ids),
        place=out.design.place(region.path),
    )


def _strip(
    out: SetOut,
    id: str,
    region: Region,
    stock: Stock,
    bottom: Draft,
    middle: float,
    width: float,
    heights: _Heights,
    start: float,
) -> Draft | None:
    """The strip under the bottom: glued to a sheet over its whole length, to a solid bottom at the front only."""
    back = out.drafts[f"{id}.back"]
    end = bottom.high[1] if back.low[2] >= bottom.high[2] - 1e-6 else back.low[1] - APART
    length = out.sizer.settled(end - start, "down")
    if length < LEAST_STRIP:
        _nothing_under(out, id, region)
        return None
    z = bottom.low[2]
    box = Box((middle - width / 2, start, z - heights.strip), (middle + width / 2, start + length, z))
    strip = out.add(f"{id}.centre_strip", "centre guide", stock, box, (1, 0), group=id, path=region.path)
    across = (box.low[0], box.high[0])
    glued = length if bottom.stock.kind == "sheet" else min(out.sizer.settled(GLUED), length)
    faces = [plane(2, z, {0: across, 1: (start, start + glued)}, False)]
    if glued < length:
        faces.append(plane(2, z, {0: across, 1: (start + glued, start + length)}, False, glued=False))
    out.joint(
        "planted",
        bottom,
        strip,
        faces,
        [unit(2, False)],
        "glued" if glued == length else f"glued over {out.text(glued)} at the front, the rest dry",
        floats=() if glued == length else (1,),
        place=out.design.place(region.path),
    )
    return strip


def _notch_back(out: SetOut, id: str, region: Region, middle: float, wide: float, heights: _Heights) -> None:
    """Room for the runner in a back that reaches below the bottom."""
    back = out.drafts[f"{id}.back"]
    reach = region.box.low[2] + heights.runner + CLEAR - back.low[2]
    if reach <= 0:
        return
    half = wide / 2 + out.sizer.settled(APART, "up")
    depth = out.sizer.settled(reach, "up")
    back.cuts.append(
        Channel(
            2, False, 1, middle - half, middle + half, depth, holds=f"{id}.centre_runner", purpose="running"
        )
    )


def _nothing_under(out: SetOut, id: str, region: Region) -> None:
    out.find(
        "drawer.no-room-for-guide",
        f"nothing under {id.replace('.', ' ')} carries the runner of its centre guide",
        region.path,
        found="no board and no two rails under it, or too short a drawer",
        expected=f"a whole board, or a rail in front and behind, and {out.up(LEAST_STRIP)} of length",
        source="common practice",
        remedy="set `between: shelf`, use a full bottom in the case, or run the drawer on bars, runners or slides",
    )


def _no_room(out: SetOut, id: str, layers: Layers, room: float) -> None:
    need = out.sizer.settled(2 * CLEAR + 2 * LEAST_WOOD, "up")
    while _heights(out, need) is None:
        need += out.sizer.step
    out.find(
        "drawer.no-room-for-guide",
        f"there is no room under the bottom of {id.replace('.', ' ')} for a centre guide",
        layers.path("bottom.up"),
        found=f"{out.about(max(room, 0.0))} from what it stands on to its bottom",
        expected=f"at least {out.up(need)}: strip and runner lie in each other by {out.up(LEAST_WOOD)}",
        source="common practice",
        remedy=f"set the bottom in a groove {out.up(need)} up or more (`bottom.up`)",
    )


def _too_narrow(out: SetOut, id: str, layers: Layers, wide: float, inside: float) -> None:
    out.find(
        "drawer.no-room-for-guide",
        f"{id.replace('.', ' ')} is too narrow for the runner of its centre guide",
        layers.path("centre_guide"),
        found=f"{out.about(wide)} wide",
        expected=f"at most {out.down(inside)}, between the drawer sides",
        source="common practice",
        remedy="make strip and runner narrower (`width`, `runner_width`), the drawer wider, or run it on runners",
    )
