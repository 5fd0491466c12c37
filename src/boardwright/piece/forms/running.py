"""What a drawer runs on: side-hung bars, runners with kickers and guides, or bought slides."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.poses import Box
from boardwright.piece.drafts import Channel, Draft, Step
from boardwright.piece.forms.drawer_settings import Layers
from boardwright.piece.forms.region import Region, rear_rail
from boardwright.piece.forms.strips import fix_strip
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.settings import LEAST_BETWEEN
from boardwright.piece.records import Hardware, Stock
from boardwright.piece.setout import SetOut
from boardwright.tables.records import Slide

LEAST_BAR = 4.0
"""Least thickness of a bar [mm]: common practice, 5/32 in."""
LEAST_BAR_LENGTH = 60.0
"""Least length of a bar [mm]: common practice, 2 3/8 in."""


LEAST_STRIP = 60.0
"""A bar, runner, guide or kicker is at least so long [mm]: room for two screws, common practice."""


@dataclass(frozen=True, slots=True)
class Room:
    """The room that the way of running leaves for the box.

    Attributes:
        kind: `bars`, `runners` or `slides`.
        side: clearance at each side, guides included [mm]. side_source: where it comes from.
        below, above: taken at the bottom and top of the opening [mm].
        length: of the box, from the back of the front [mm].
        stock: of the wooden parts. slide: the bought slide.
        guide: thickness of guide strips [mm]. under: thickness of runners that stand in the opening [mm].
    """

    kind: str
    side: float
    side_source: str
    below: float
    above: float
    length: float
    stock: Stock
    slide: Slide | None = None
    guide: float = 0.0
    under: float = 0.0


@dataclass(frozen=True, slots=True)
class Run:
    """How far the drawer travels [mm]."""

    travel: float


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
        return _slide_room(out, id, region, layers, front_back, least_side, side_stock)
    sizer = out.sizer
    figure = out.tables.figure("bar_width_total" if kind == "bars" else "drawer_side_total")
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
    if kind == "bars":
        stock = layers.stock(out, "bars.stock", _strip_stock(out))
        below = sizer.settled(out.tables.figure("drawer_height_plywood").value, "up")
        return Room("bars", side, figure.reason, max(below, least_side), 0.0, length, stock)
    stock = layers.stock(out, "runners.stock", _strip_stock(out))
    thick = _runner_thickness(out, id, layers, stock)
    guide = sizer.size(
        f"{id}.runners.guide",
        layers.choices("runners.guide"),
        0.0,
        rule="the walls of the opening guide the drawer",
    )
    under = thick if _needs_runner(region) and region.walls.floor is None else 0.0
    return Room(
        "runners", side + guide, figure.reason, max(under, 0.0), 0.0, length, stock, None, guide, thick
    )


def _runner_thickness(out: SetOut, id: str, layers: Layers, stock: Stock) -> float:
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


def _strip_stock(out: SetOut) -> Stock:
    """Wood first: runners and bars are wooden (common practice: hard wood)."""
    woods = [s for s in out.stocks.values() if s.kind == "wood"]
    return (
        max(woods, key=lambda s: (s.specific_gravity, s.thickness))
        if woods
        else next(iter(out.stocks.values()))
    )


def _needs_runner(region: Region) -> bool:
    """A whole board under the opening carries the drawer itself."""
    floor = region.walls.floor
    return floor is None or floor.size(1) < region.inner_depth - 1.0


def _slide_room(
    out: SetOut, id: str, region: Region, layers: Layers, front_back: float, least_side: float, stock: Stock
) -> Room | None:
    sizer = out.sizer
    deep = region.box.high[1] - front_back
    slide = _choose_slide(out, id, layers, deep)
    if slide is None:
        _no_slide(out, region, layers, deep)
        return None
    side = sizer.size(
        f"{id}.side_clearance",
        [*layers.choices("slides.side"), *layers.choices("side_clearance")],
        max(slide.side_space_min, least_side),
        rule=f"room beside the box for a {slide.name}, each side",
        source=slide.source,
        least=max(slide.thickness, least_side),
        settle_it=False,
    )
    below = sizer.settled(out.tables.figure("drawer_height_plywood").value, "up")
    return Room(
        "slides", side, slide.source, max(below, least_side), 0.0, sizer.settled(slide.length), stock, slide
    )


def _no_slide(out: SetOut, region: Region, layers: Layers, deep: float) -> None:
    """A finding: the slide that is asked for, or the shortest of all, is too long for the opening, or not on sale."""
    slides = _own_slides(out)
    asked = [
        s for _, key in layers.values("slides.kind") for s in out.tables.slides.values() if s.key == str(key)
    ][:1]
    length = out.sizer.given(layers.choices("slides.length"))
    if not asked and length is not None:
        asked = [s for s in slides if abs(s.length - length[1]) < 1.0]
        if not asked:
            out.find(
                "drawer.unknown-slide",
                f"no slide of the tables is {out.about(length[1])} long",
                length[0],
                found=out.about(length[1]),
                expected="one of " + ", ".join(out.about(x) for x in sorted({s.length for s in slides})),
                remedy="use one of these, or add a row in a file under `tables:`",
            )
            return
    least = min(asked or slides, key=lambda s: s.length)
    need = least.length + least.rear_clearance
    out.find(
        "drawer.no-slide",
        f"no bought slide fits the depth of `{region.path}`"
        if not asked
        else f"the slide is too long for `{region.path}`",
        layers.path("slides"),
        found=f"{out.about(deep)} behind the front",
        expected=f"at least {out.up(need)}: slide {out.about(least.length)}, "
        f"{out.about(least.rear_clearance)} behind it",
        source=least.source,
        remedy=f"make the case {out.up(need - deep)} deeper, or run the drawer on bars or runners",
    )


def _own_slides(out: SetOut) -> list[Slide]:
    """Slides of the plan's unit system: those of whole 50 mm in millimetres, the others in inches."""
    slides = list(out.tables.slides.values())
    metric = out.design.units == "mm"
    return [s for s in slides if (abs(s.length / 50 - round(s.length / 50)) < 1e-6) == metric] or slides


def _choose_slide(out: SetOut, id: str, layers: Layers, deep: float) -> Slide | None:
    kinds = layers.values("slides.kind")
    if kinds:
        path, key = kinds[0]
        if str(key) in out.tables.slides:
            row = out.tables.slides[str(key)]
            return row if row.length + row.rear_clearance <= deep + 1e-6 else None
        out.find(
            "drawer.unknown-slide",
            f"`{key}` is no slide of the tables",
            path,
            found=str(key),
            expected="one of " + ", ".join(s.key for s in _own_slides(out)),
            remedy="use one of these, or add a row in a file under `tables:`",
        )
    given = out.sizer.given(layers.choices("slides.length"))
    fitting = [s for s in _own_slides(out) if s.length + s.rear_clearance <= deep + 1e-6]
    if given is not None:
        fitting = [s for s in fitting if abs(s.length - given[1]) < 1.0]
    best = max(fitting, key=lambda s: s.length, default=None)
    if best is not None:
        out.sizer.explain(
            f"{id}.slide.length",
            best.length,
            "longest that the depth takes",
            "length of a bought slide",
            best.source,
        )
    return best


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
    """Put in the bars, runners or slides of one drawer."""
    if room.kind == "bars":
        return _bars(out, id, region, room, left, right, box, front_back, layers)
    if room.kind == "runners":
        return _runners(out, id, region, room, box, front_back, layers)
    return _slides(out, id, region, room, box, front_back)


LEAST_HELD = 2.5
"""Least of a bar that stands in its groove [mm]: 3/32 in, common practice."""
END_PLAY = 3.0
"""From the bar to the round end that a router leaves in its groove [mm]: 1/8 in, common practice."""


def _bars(
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
    sizer, tables = out.sizer, out.tables
    play = sizer.settled(tables.figure("bar_height_clearance").value, "up")
    high = sizer.size(
        f"{id}.bars.height",
        layers.choices("bars.height"),
        (tables.figure("bar_groove_height").high or tables.figure("bar_groove_height").value) - play,
        rule="height of a bar: groove less its play; high enough for the edge distance of a No. 4 screw",
        source=tables.figure("bar_groove_height").reason,
        least=5.0,
    )
    groove_high = high + play
    deep = _bar_groove(out, id, left, layers)
    beside = (region.box.size(0) - box.size(0)) / 2
    thick = sizer.settled(beside + deep - tables.figure("bar_depth_clearance").value, "down")
    start = front_back + sizer.settled(25.4)
    length = sizer.settled(box.high[1] - start, "down")
    held = thick - beside
    if (
        groove_high > box.size(2) - 4 * play + 1e-6
        or thick < LEAST_BAR
        or held < LEAST_HELD - 1e-6
        or length < LEAST_BAR_LENGTH
    ):
        out.find(
            "drawer.no-room-for-bars",
            f"the bars of {left.group.replace('.', ' ')} have no room",
            region.path,
            found=f"sides {out.about(box.size(2))} high, bar {out.about(max(thick, 0.0))} thick, "
            f"{out.about(max(held, 0.0))} of it in the groove, {out.about(max(length, 0.0))} long",
            expected=f"sides at least {out.up(groove_high + 4 * play)} high, a bar at least {out.up(LEAST_BAR)} thick, "
            f"{out.up(LEAST_HELD)} of it in the groove, and {out.up(LEAST_BAR_LENGTH)} long",
            source="common practice",
            remedy="make the opening higher or deeper, the drawer sides thicker or the bars lower, "
            "or run the drawer on runners or slides",
        )
        return Run(sizer.settled(max(length, 0.0) * 2 / 3, "down"))
    z1 = box.low[2] + sizer.settled((box.size(2) + groove_high) / 2)
    groove_start = start - sizer.settled(groove_high / 2 + END_PLAY, "up")
    for side, wall, at_left in ((left, region.walls.left, True), (right, region.walls.right, False)):
        outer = side.face(0, not at_left)
        side.cuts.append(
            Channel(
                0,
                not at_left,
                1,
                z1 - groove_high,
                z1,
                deep,
                groove_start,
                None,
                holds=f"{id}.bar",
                purpose="running",
            )
        )
        face = region.box.low[0] if at_left else region.box.high[0]
        x = sorted((face, face + (thick if at_left else -thick)))
        bar = out.add(
            f"{id}.bar.{'left' if at_left else 'right'}",
            "bar",
            room.stock,
            Box((x[0], start, z1 - high), (x[1], start + length, z1)),
            (1, 2),
            path=region.path,
        )
        fix_strip(out, wall, bar, region.path, at_left=at_left)
        reach = sorted((outer, x[1] if at_left else x[0]))
        out.joint(
            "hung",
            side,
            bar,
            [plane(2, z1, {0: (reach[0], reach[1]), 1: (start, start + length)}, False, glued=False)],
            [unit(1, True)],
            f"runs on a bar in a groove {out.text(groove_high)} wide, {out.text(deep)} deep",
            glued=False,
            floats=(1,),
            place=out.design.place(region.path),
        )
    share = tables.figure("bar_overlap_share")
    travel = sizer.settled(length * (1 - share.value), "down")
    sizer.explain(
        f"{id}.travel",
        travel,
        f"{out.text(length)} less {share.value:.3g} of it that stays on the bar",
        "overlap of bar and groove when open",
        share.reason,
    )
    return Run(travel)


def _bar_groove(out: SetOut, id: str, side: Draft, layers: Layers) -> float:
    """Depth of the groove for a bar [mm]; it crosses the joint of the drawer back, cut from the other face."""
    figure = out.tables.figure("bar_groove_depth")
    inside = max(
        (c.depth for c in side.cuts if isinstance(c, Channel | Step) and c.holds == f"{id}.back"), default=0.0
    )
    most = side.size(0) - inside - LEAST_BETWEEN
    deep = out.sizer.size(
        f"{id}.bars.groove",
        layers.choices("bars.groove"),
        max(min(figure.value, side.size(0) / 2, most), out.sizer.step),
        rule="depth of the groove for a bar, at most half of the side, clear of the joint of the back",
        source=figure.reason,
        direction="down",
        least=out.sizer.step,
    )
    if deep <= most + 1e-6:
        return deep
    good = max(out.sizer.settled(most, "down"), out.sizer.step)
    out.find(
        "drawer.groove-too-deep",
        f"the groove for the bar meets the joint of the back of {id.replace('.', ' ')}",
        layers.path("bars.groove"),
        found=f"{out.about(deep)} from outside and {out.about(inside)} from inside, "
        f"in sides {out.about(side.size(0))} thick",
        expected="1/8 in (3 mm) of wood between them",
        source="common practice",
        remedy=f"make the groove at most {out.down(good)} deep, or use thicker drawer sides",
    )
    return good


def _runners(
    out: SetOut, id: str, region: Region, room: Room, box: Box, front_back: float, layers: Layers
) -> Run:
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
    if _needs_runner(region):
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
    if (
        ceiling is not None
        and ceiling.size(1) < region.inner_depth - 1.0
        and ceiling.id.startswith("case.top")
    ):
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
    """A strip at each wall.

    Strips that another drawer has put at the same place are shared, and a gap between two rails that is shorter
    than `LEAST_STRIP` needs none.
    """
    length = out.sizer.settled(ys[1] - ys[0], "down")
    if length < LEAST_STRIP:
        return
    for wall, at_left in ((region.walls.left, True), (region.walls.right, False)):
        face = region.box.low[0] if at_left else region.box.high[0]
        x = sorted((face, face + (width if at_left else -width)))
        box = Box((x[0], ys[0], zs[0]), (x[1], ys[0] + length, zs[1]))
        if any(_same(d.box, box) for d in out.drafts.values()):
            continue
        axes = (1, 2) if zs[1] - zs[0] > width else (1, 0)
        strip = out.add(f"{id}.{'left' if at_left else 'right'}", name, stock, box, axes, path=region.path)
        fix_strip(out, wall, strip, region.path, at_left=at_left)


def _same(a: Box, b: Box) -> bool:
    return all(abs(p - q) < 1e-6 for p, q in zip((*a.low, *a.high), (*b.low, *b.high), strict=True))


def _slides(out: SetOut, id: str, region: Region, room: Room, box: Box, front_back: float) -> Run:
    slide = room.slide
    assert slide is not None
    half = slide.thickness / 2
    if slide.height > box.size(2) + 1e-6:
        out.find(
            "drawer.slide-too-high",
            f"the slide is higher than the sides of {id.replace('.', ' ')}",
            region.path,
            found=f"sides {out.about(box.size(2))}, slide {out.about(slide.height)} high",
            expected="sides at least as high as the slide",
            source=slide.source,
            remedy=f"make the sides {out.up(slide.height)} high or more (`box_height`, or a higher opening)",
        )
    z0 = box.low[2] + out.sizer.settled(max(box.size(2) - slide.height, 0.0) / 2)
    z1 = z0 + min(slide.height, box.size(2))
    ys = (front_back, front_back + slide.length)
    for face, at_left, side in (
        (region.box.low[0], True, box.low[0]),
        (region.box.high[0], False, box.high[0]),
    ):
        toward = 1.0 if at_left else -1.0
        case = sorted((face, face + toward * half))
        drawer = sorted((side, side - toward * half))
        name = "left" if at_left else "right"
        place = out.design.place(region.path)
        out.hardware.append(
            Hardware(
                f"{id}.slide.{name}",
                slide.name,
                slide.key,
                Box((case[0], ys[0], z0), (case[1], ys[1], z1)),
                "case",
                0.5,
                0.0,
                place,
            )
        )
        out.hardware.append(
            Hardware(
                f"{id}.slide.{name}.moving",
                slide.name,
                slide.key,
                Box((drawer[0], ys[0], z0), (drawer[1], ys[1], z1)),
                id,
                0.5,
                0.0,
                place,
            )
        )
    travel = slide.length if slide.extension == "full" else slide.length * 0.75
    out.sizer.explain(
        f"{id}.travel", travel, f"{slide.extension} extension", "travel of a bought slide", slide.source
    )
    return Run(travel)
