"""Runners under the drawer sides, with kickers over them and guides beside them."""

from __future__ import annotations

from boardwright.core.poses import Box
from boardwright.piece.drafts import Draft
from boardwright.piece.forms.drawer_settings import Layers
from boardwright.piece.forms.region import Region, carries, rear_rail
from boardwright.piece.forms.run_room import LEAST_STRIP, Room, Run
from boardwright.piece.forms.strips import fix_strip, shrinking
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

APART = 4.0
"""Two runners of a narrow drawer do not nearly touch [mm]: 5/32 in, common practice."""

LEAST_KICKER = 6.0
"""A kicker lower than this is left out: the top over it is near enough to the drawer [mm]; 1/4 in, common practice."""


def runner_thickness(out: SetOut, id: str, layers: Layers, stock: Stock) -> float:
    """Height of a runner [mm]: by the rule, but no more than its stock; a sheet is as thick as it is."""
    figure = out.tables.figure("runner_thickness")
    given = layers.choices("runners.thickness")
    whole = stock.kind == "sheet" or figure.value >= stock.thickness
    return out.sizer.size(
        f"{id}.runners.thickness",
        given,
        stock.thickness if whole else figure.value,
        rule="height of a runner, at most the thickness of its stock",
        source=figure.reason,
        least=out.sizer.step,
        direction="down",
        settle_it=bool(given) or not whole,
    )


def needs_runner(region: Region) -> bool:
    """A whole board under the opening carries the drawer itself."""
    floor = region.walls.floor
    return floor is None or not carries(floor, region.inner_depth)


def runners(
    out: SetOut, id: str, region: Region, room: Room, box: Box, front_back: float, layers: Layers
) -> Run:
    """Put in the runners of one drawer, the guides beside it and the kickers over it."""
    sizer = out.sizer
    width = sizer.size(
        f"{id}.runners.width",
        layers.choices("runners.width"),
        out.tables.figure("runner_width").value,
        rule="width of a runner",
        source=out.tables.figure("runner_width").reason,
        least=10.0,
    )
    floor, ceiling = region.walls.floor, region.walls.ceiling
    rear = region.box.high[1]
    most = sizer.settled(region.fit[0] / 2, "down")
    if width > most:
        out.find(
            "drawer.runners-too-wide",
            f"the two runners of {id.replace('.', ' ')} do not fit beside each other",
            layers.path("runners.width"),
            found=f"2 × {out.about(width)} in an opening {out.about(region.fit[0])} wide",
            expected=f"at most {out.down(most)} each",
            remedy=f"make the runners {out.down(most)} wide or less, or the opening wider",
        )
        width = most
    if 0 < region.fit[0] - 2 * width < APART:
        width = sizer.settled((region.fit[0] - APART) / 2, "down")
    if needs_runner(region):
        top = box.low[2] if floor is None else region.box.low[2]
        thick = room.under if floor is None else min(room.under, floor.size(2))
        y0 = front_back + sizer.settled(2.0, "up") if floor is None else floor.high[1]
        if floor is None and sizer.settled(rear - y0, "down") < LEAST_STRIP:
            out.find(
                "drawer.no-room",
                f"there is no room for the runners of {id.replace('.', ' ')}",
                region.path,
                found=f"{out.about(rear - y0)} behind its front",
                expected=f"at least {out.up(LEAST_STRIP)}",
                source="common practice",
                remedy="make the case deeper",
            )
        _pair(
            out,
            f"{id}.runner",
            "runner",
            region,
            room.stock,
            width,
            (y0, _before(out, floor, rear)),
            (top - thick, top),
        )
    if room.guide > 0:
        top = box.low[2] + min(sizer.settled(25.4), box.size(2))
        _pair(
            out,
            f"{id}.guide",
            "guide",
            region,
            room.stock,
            room.guide,
            (front_back + sizer.settled(2.0, "up"), rear),
            (box.low[2], top),
        )
    over = min(ceiling.size(2), room.stock.thickness) if ceiling is not None else 0.0
    if ceiling is not None and not carries(ceiling, region.inner_depth):
        _pair(
            out,
            f"{id}.kicker",
            "kicker",
            region,
            room.stock,
            width,
            (ceiling.high[1], _before(out, ceiling, rear)),
            (region.box.high[2], region.box.high[2] + over),
        )
    length = box.size(1)
    travel = sizer.settled(length * 2 / 3, "down")
    sizer.explain(f"{id}.travel", travel, f"2/3 of {out.text(length)}", "the last third stays on the runners")
    return Run(travel)


def _before(out: SetOut, rail: Draft | None, rear: float) -> float:
    """Where a strip behind a front rail ends [mm]: at the rear rail, where there is one."""
    behind = rear_rail(out, rail)
    return behind.low[1] if behind is not None else rear


def _pair(
    out: SetOut,
    id: str,
    name: str,
    region: Region,
    stock: Stock,
    width: float,
    ys: tuple[float, float],
    zs: tuple[float, float],
) -> None:
    """A strip at each wall, no further up or down than to the top or bottom behind a face frame.

    Strips that another drawer has put at the same place are shared, a runner over a drawer is its kicker, and a gap
    between two rails that is shorter than `LEAST_STRIP` needs none. Beside solid walls they end where what stands
    behind them comes in the driest time.
    """
    zs = _within(out, zs)
    if zs[1] - zs[0] < LEAST_KICKER and name == "kicker":
        return
    run = ys[1] - ys[0]
    length = out.sizer.settled(run - shrinking(out, (region.walls.left, region.walls.right), run), "down")
    if length < LEAST_STRIP:
        return
    for wall, at_left in ((region.walls.left, True), (region.walls.right, False)):
        face = region.box.low[0] if at_left else region.box.high[0]
        x = sorted((face, face + (width if at_left else -width)))
        box = Box((x[0], ys[0], zs[0]), (x[1], ys[0] + length, zs[1]))
        if any(_taken(d, name, box) for d in out.drafts.values()):
            continue
        axes = (1, 2) if zs[1] - zs[0] > width else (1, 0)
        strip = out.add(f"{id}.{'left' if at_left else 'right'}", name, stock, box, axes, path=region.path)
        fix_strip(out, wall, strip, region.path, at_left=at_left)


def _within(out: SetOut, zs: tuple[float, float]) -> tuple[float, float]:
    """What the bottom and the top of the case, whole or of rails, leave of a height [mm]."""
    low, high = zs
    for end in ("", ".front"):
        bottom, top = out.drafts.get(f"case.bottom{end}"), out.drafts.get(f"case.top{end}")
        if bottom is not None and low < bottom.high[2] < high:
            low = bottom.high[2]
        if top is not None and low < top.low[2] < high:
            high = top.low[2]
    return low, high


def _taken(other: Draft, name: str, box: Box) -> bool:
    """Whether a strip is there already: the same one, or for a kicker a runner, a shelf or a web frame over it."""
    if name == "kicker" and other.name in ("web frame runner", "shelf"):
        shared = box.overlap(other.box)
        return shared is not None and min(shared.size(i) for i in range(3)) > 1e-6
    if other.name not in ("runner", "kicker", "guide", "ledger"):
        return False
    if name == "kicker" and other.name == "runner":
        shared = box.overlap(other.box)
        return shared is not None and min(shared.size(i) for i in range(3)) > 1e-6
    return all(
        abs(p - q) < 1e-6 for p, q in zip((*other.low, *other.high), (*box.low, *box.high), strict=True)
    )
