"""Side-hung wooden bars, screwed to the walls, in grooves of the drawer sides."""

from __future__ import annotations

from boardwright.core.poses import Box
from boardwright.piece.drafts import Channel, Draft, Step
from boardwright.piece.forms.drawer_settings import Layers
from boardwright.piece.forms.region import Region
from boardwright.piece.forms.run_room import Room, Run
from boardwright.piece.forms.strips import fix_strip
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.settings import LEAST_BETWEEN
from boardwright.piece.setout import SetOut

LEAST_BAR = 4.0
"""Least thickness of a bar [mm]: common practice, 5/32 in."""
LEAST_BAR_LENGTH = 60.0
"""Least length of a bar [mm]: common practice, 2 3/8 in."""
LEAST_HELD = 2.5
"""Least of a bar that stands in its groove [mm]: 3/32 in, common practice."""
END_PLAY = 3.0
"""From the bar to the round end that a router leaves in its groove [mm]: 1/8 in, common practice."""


def bars(
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
    """Put in the two bars of one drawer, and their grooves."""
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
    if back_in_the_way(out, id, left, deep, layers):
        return Run(0.0)
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
    inside = _cut_inside(id, side)
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


def _cut_inside(id: str, side: Draft) -> float:
    """Depth of the joint of the drawer back, which a groove for a bar crosses on the other face [mm]."""
    return max(
        (c.depth for c in side.cuts if isinstance(c, Channel | Step) and c.holds == f"{id}.back"), default=0.0
    )


def groove_room(id: str, side: Draft) -> float:
    """The deepest groove for a bar in a drawer side [mm]: half of it, and clear of the joint of the back."""
    return min(side.size(0) / 2, side.size(0) - _cut_inside(id, side) - LEAST_BETWEEN)


def back_in_the_way(out: SetOut, id: str, side: Draft, groove: float, layers: Layers) -> bool:
    """Whether the joint of a drawer back fills the rear end of a groove for a bar; a finding says so."""
    back = out.drafts[f"{id}.back"]
    left = back.low[0] - side.low[0]
    if left >= groove - 1e-6:
        return False
    out.find(
        "drawer.no-room-for-bars",
        f"the back of {id.replace('.', ' ')} stands in the way of its bars",
        layers.path("back.joint"),
        found=f"{out.about(max(left, 0.0))} of the sides outside the back, grooves {out.about(groove)} deep",
        expected=f"at least {out.up(groove)}: the grooves run out at the rear ends of the sides",
        remedy="join the back with a `dado`, or run the drawer on runners or slides",
        parts=(back.id, side.id),
    )
    return True
