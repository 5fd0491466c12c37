"""A case hung on a wall by two bevelled cleats behind its back."""

from __future__ import annotations

import math

from boardwright.core.poses import Box
from boardwright.design.schema import JointKeys, WallCleat
from boardwright.piece.cuts import Bevel
from boardwright.piece.drafts import Draft
from boardwright.piece.joints.faces import facet
from boardwright.piece.joints.make import make_joint
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

PATH = "case.wall_cleat"
WALL_NAME = "wall cleat"
GLUED = JointKeys(kind="butt", fasten="none", glue=True)


def cleat_stock(out: SetOut, keys: WallCleat | None, case_stock: Stock) -> Stock | None:
    """The stock of the cleats; None when none are asked for."""
    if keys is None:
        return None
    return out.stock((f"{PATH}.stock", keys.stock)) if keys.stock else case_stock


def wall_cleat(
    out: SetOut,
    keys: WallCleat,
    stock: Stock,
    left: Draft,
    right: Draft,
    top: Draft | None,
    ceiling: float,
    room: float,
    floor: float,
) -> None:
    """Put the two cleats behind the back.

    Args:
        out: the bench.
        keys: what the file says.
        stock: of the cleats.
        left: the left side.
        right: the right side.
        top: the top over them, None without one.
        ceiling: its underside [mm].
        room: clear depth behind the back [mm].
        floor: the upper side of the bottom [mm].
    """
    figure, play_figure, angle_figure = (
        out.tables.figure(k) for k in ("wall_cleat_width", "wall_cleat_play", "wall_cleat_angle")
    )
    width = out.sizer.size(
        f"{PATH}.width",
        [(f"{PATH}.width", keys.width)],
        figure.value,
        rule="usual width",
        source=figure.reason,
        least=30.0,
    )
    play = out.sizer.size(
        f"{PATH}.play",
        [(f"{PATH}.play", keys.play)],
        play_figure.value,
        rule="shorter at each end",
        source=play_figure.reason,
    )
    angle = keys.angle if keys.angle is not None else angle_figure.value
    out.sizer.choose(
        f"{PATH}.angle",
        f"{angle:g} degrees" if keys.angle is not None else None,
        f"{angle:g} degrees",
        "the usual bevel",
        f"{PATH}.angle",
        angle_figure.reason,
    )
    t = stock.thickness
    drop = t * math.tan(math.radians(angle))
    if top is None or room < t - 1e-6 or ceiling - floor < 2 * width or drop > width / 2:
        out.find(
            "case.cleat-no-room",
            "the wall cleats have no room behind the back",
            PATH,
            found=f"{out.about(max(room, 0.0))} behind the back, {out.about(ceiling - floor)} under "
            + ("the top" if top is not None else "no top"),
            expected=f"{out.up(t)} behind the back, and a whole top with {out.up(2 * width)} under it",
            source="common practice",
            remedy=f"use `back: {{set: groove, inset: {out.up(t)}}}` and a whole top, or wider cleats",
        )
        return
    rear = left.high[1]
    high = ceiling - width + drop
    slope = -math.tan(math.radians(angle))
    x = (left.high[0], right.low[0])
    own = _add(
        out, "case.hanging_cleat", "hanging cleat", stock, x, (rear - t, rear), (ceiling - width, ceiling)
    )
    wall_x = (x[0] + play, x[1] - play)
    wall = _add(out, "case.wall_cleat", WALL_NAME, stock, wall_x, (rear - t, rear), (high - width, high))
    for part, up in ((own, False), (wall, True)):
        part.cuts.append(Bevel(part.side(2, up), high - slope * (rear - t), 0.0, slope))
    make_joint(out, f"{PATH}.joint", GLUED, PATH, "butt", top, own)
    corners = (
        (wall_x[0], rear - t, high),
        (wall_x[1], rear - t, high),
        (wall_x[1], rear, high - drop),
        (wall_x[0], rear, high - drop),
    )
    out.joint(
        "cleat",
        wall,
        own,
        [facet(corners, glued=False)],
        [(0.0, 0.0, 1.0)],
        f"hangs on the wall cleat, bevelled {angle:g} degrees",
        glued=False,
        floats=(0,),
        place=out.design.place(PATH),
    )


def _add(
    out: SetOut,
    id: str,
    name: str,
    stock: Stock,
    x: tuple[float, float],
    y: tuple[float, float],
    z: tuple[float, float],
) -> Draft:
    box = Box((x[0], y[0], z[0]), (x[1], y[1], z[1]))
    return out.add(id, name, stock, box, (0, 2), path=PATH)
