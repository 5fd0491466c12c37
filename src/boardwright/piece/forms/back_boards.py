"""A back of several boards, ship-lapped or tongued, each free to swell and shrink.

The boards lie dry in a rabbet all round, side by side with a gap at each joint that the wettest time does not close;
each is screwed in the middle of its width, at its ends only, so that it moves both ways from there.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

from boardwright.core.poses import Box
from boardwright.design.schema import Back
from boardwright.piece.drafts import Channel, Draft, Step
from boardwright.piece.forms.back_screws import back_screws
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

BOARDED = ("shiplap", "tongued")
WIDTH = 101.6
"""Widest board of a back, when none is given [mm]: 4 in, common practice."""
THINNEST = {"shiplap": 6.0, "tongued": 9.0}
"""Thinnest board that is lapped or tongued [mm]: 1/4 and 3/8 in, common practice."""
PLAY = 0.4
"""Room at a joint and at the ends beside that for movement [mm]: 1/64 in, common practice."""
LEAST_LAP = 3.0
"""What still laps in the driest time [mm]: 1/8 in, common practice."""

Around = list[tuple[Draft, int, bool]]


@dataclass(frozen=True, slots=True)
class Layout:
    """The boards and how they lap.

    Attributes:
        set: `shiplap` or `tongued`.
        along, across: piece axes of the boards' length and width.
        lap: width of the rabbets, or length of the tongues [mm].
        gap: at each joint on the day they are cut [mm].
        front: shiplap: thickness of the tongue in front; tongued: from the front to the groove [mm].
        tongue: tongued: thickness of the tongue [mm].
        need: what the rabbet at the outer boards must be deep [mm].
    """

    set: str
    along: int
    across: int
    lap: float
    gap: float
    front: float
    tongue: float
    need: float


def set_boards(
    out: SetOut,
    keys: Back | None,
    how: str,
    stock: Stock,
    around: Around,
    room: Box,
    depth: float,
) -> None:
    """Put the boards in.

    Args:
        out: the bench.
        keys: what the file says of the back.
        how: `shiplap` or `tongued`.
        stock: of the boards.
        around: the parts round the back, with the axis and the side of each that faces in.
        room: from rabbet to rabbet, as thick as the back [mm].
        depth: how far the rabbets go into the parts [mm].
    """
    if stock.thickness < THINNEST[how] - 0.1:
        _too_thin(out, how, stock)
        return
    upright = sum(1 for _, axis, _ in around if axis == 2) == 2
    along, across = (2, 0) if upright else (0, 2)
    plan, widths = _lay(out, keys, how, stock, around, room, (along, across))
    if plan.need > depth + 1e-6:
        _too_shallow(out, depth, plan.need, max(widths))
    boards = _boards(out, stock, around, room, plan, widths)
    for one, two in pairwise(boards):
        _joint(out, plan, one, two)
    for part, axis, high in around:
        holds = boards[-1] if (axis, high) == (across, False) else boards[0]
        part.cuts.append(Step(axis, high, 1, True, stock.thickness, depth, holds=holds.id, purpose="panel"))
        at_ends = axis == along
        for board in boards if at_ends else [holds]:
            _lodge(out, keys, board, part, axis, high, depth, screwed=at_ends)


def _lay(
    out: SetOut,
    keys: Back | None,
    how: str,
    stock: Stock,
    around: Around,
    room: Box,
    axes: tuple[int, int],
) -> tuple[Layout, list[float]]:
    """How the boards lap, and the width of each [mm]; the last takes what is left over."""
    settled, across = out.sizer.settled, axes[1]
    most = out.sizer.size(
        "case.back.board_width",
        [("case.back.board_width", keys.board_width if keys else None)],
        WIDTH,
        rule="boards of a back are at most so wide",
        least=25.4,
    )
    rate = stock.across if stock.kind == "wood" else 0.0
    swell = max(0.0, rate * (out.moisture.wettest - out.moisture.now)) * most
    shrink = max(0.0, rate * (out.moisture.now - out.moisture.driest)) * most
    gap = settled(PLAY + swell, "up")
    lap = settled(max(out.tables.figure("tongue_length").value, gap + shrink + LEAST_LAP), "up")
    play = settled(PLAY + swell / 2, "up")
    t = stock.thickness
    tongue = max(settled(t * out.tables.figure("tongue_thickness_share").value), out.sizer.step)
    front = settled(t / 2) if how == "shiplap" else settled((t - tongue) / 2)
    walls = sum(1 for _, axis, _ in around if axis == across)
    whole = settled(room.size(across) - walls * play, "down")
    step = lap - gap
    count = max(1, math.ceil((whole - step) / (most - step) - 1e-9))
    width = settled((whole + (count - 1) * step) / count, "down")
    widths = [width] * (count - 1)
    widths.append(settled(whole + (count - 1) * step - sum(widths), "down"))
    out.sizer.explain(
        "case.back.gap",
        gap,
        f"{out.text(most)} × {rate:.5f} × {out.moisture.wettest - out.moisture.now:.3g} % and "
        f"{out.about(PLAY)}",
        "a gap at each joint that the wettest time does not close",
        "change of width: Wood Handbook FPL-GTR-190 eq. 13-2",
    )
    need = play + shrink / 2 + LEAST_LAP
    return Layout(how, *axes, lap, gap, front, tongue, need), widths


def _boards(
    out: SetOut, stock: Stock, around: Around, room: Box, plan: Layout, widths: list[float]
) -> list[Draft]:
    settled, along, across = out.sizer.settled, plan.along, plan.across
    whole = sum(widths) - (len(widths) - 1) * (plan.lap - plan.gap)
    free = room.size(across) - whole
    low_wall = any((axis, high) == (across, True) for _, axis, high in around)
    high_wall = any((axis, high) == (across, False) for _, axis, high in around)
    at = room.low[across] + (settled(free / 2) if low_wall and high_wall else free if low_wall else 0.0)
    ends = settled(PLAY, "up")
    boards = []
    for n, width in enumerate(widths, 1):
        low, high = list(room.low), list(room.high)
        low[across], high[across] = at, at + width
        low[along] += ends
        high[along] = low[along] + settled(high[along] - low[along] - ends, "down")
        boards.append(
            out.add(
                f"case.back.{n}",
                "back board",
                stock,
                Box((low[0], low[1], low[2]), (high[0], high[1], high[2])),
                (along, across),
                path="case.back",
            )
        )
        at += width - plan.lap + plan.gap
    return boards


def _joint(out: SetOut, plan: Layout, one: Draft, two: Draft) -> None:
    """Lap two boards, or tongue the second into the first."""
    across, along = plan.across, plan.along
    middle = one.low[1] + plan.front
    run = (one.low[along], one.high[along])
    lapped = (two.low[across], one.high[across])
    if plan.set == "shiplap":
        one.cuts.append(Step(1, True, across, True, plan.lap, one.high[1] - middle, holds=two.id))
        two.cuts.append(Step(1, False, across, False, plan.lap, plan.front, holds=one.id))
        contacts = [plane(1, middle, {across: lapped, along: run}, True, glued=False)]
        directions = [(0.0, 1.0, 0.0), unit(across, True)]
        what = f"ship-lapped {out.text(plan.lap)}"
    else:
        far = middle + plan.tongue
        one.cuts.append(Channel(across, True, along, middle, far, plan.lap, holds=two.id))
        for high, amount in ((False, plan.front), (True, two.high[1] - far)):
            two.cuts.append(Step(1, high, across, False, plan.lap, amount, holds=one.id, purpose="tongue"))
        contacts = [
            plane(1, middle, {across: lapped, along: run}, True, glued=False),
            plane(1, far, {across: lapped, along: run}, False, glued=False),
        ]
        directions = [unit(across, True)]
        what = f"tongue {out.text(plan.tongue)} thick, {out.text(plan.lap)} long"
    out.joint(
        plan.set,
        one,
        two,
        contacts,
        directions,
        f"{what}, {out.text(plan.gap)} of room, dry",
        glued=False,
        floats=(across,),
        place=two.place,
    )


def _lodge(
    out: SetOut,
    keys: Back | None,
    board: Draft,
    part: Draft,
    axis: int,
    high: bool,
    depth: float,
    *,
    screwed: bool,
) -> None:
    """One board in the rabbet of one part; screwed in the middle of its width where it ends there."""
    face, other = part.face(axis, high), 2 - axis
    inner = sorted((face, face - depth if high else face + depth))
    lap = (max(inner[0], board.low[axis]), min(inner[1], board.high[axis]))
    run = (max(part.low[other], board.low[other]), min(part.high[other], board.high[other]))
    ids: tuple[str, ...] = ()
    if screwed and (keys is None or keys.fasten != "none"):
        middle = board.low[other] + out.sizer.settled(board.size(other) / 2)
        ids = back_screws(out, board, part, axis, lap, [middle], (lap[1] - lap[0]) / 2)
    held = f", {len(ids)} screw in the middle" if ids else ""
    out.joint(
        "panel",
        part,
        board,
        [plane(1, board.low[1], _bare(board, axis, {axis: lap, other: run}), True, glued=False)],
        [(0.0, 1.0, 0.0)],
        f"back board in a rabbet {out.text(board.size(1))} wide, {out.text(depth)} deep{held}, dry",
        glued=False,
        floats=(board.width_axis,),
        fasteners=ids,
        place=board.place,
    )


def _bare(board: Draft, axis: int, ranges: dict[int, tuple[float, float]]) -> dict[int, tuple[float, float]]:
    """A face without what the rabbets and tongues at the front of the board's own edges take from it."""
    across = board.width_axis
    low, high = ranges[across]
    for cut in board.cuts:
        if isinstance(cut, Step) and (cut.axis, cut.high) == (1, False) and cut.edge_axis == across:
            if cut.edge_high:
                high = min(high, board.high[across] - cut.width)
            else:
                low = max(low, board.low[across] + cut.width)
    return ranges | {across: (low, high)}


def _too_thin(out: SetOut, how: str, stock: Stock) -> None:
    out.find(
        "case.back-boards-thin",
        f"the boards of the back are too thin to be {'lapped' if how == 'shiplap' else 'tongued'}",
        "case.back",
        found=f"{out.about(stock.thickness)} thick",
        expected=f"at least {out.up(THINNEST[how])}",
        source="common practice",
        remedy=f"name a stock of {out.up(THINNEST[how])} or more (`back.stock`), or use `set: rabbet`",
    )


def _too_shallow(out: SetOut, depth: float, need: float, widest: float) -> None:
    out.find(
        "wood.panel-groove-too-shallow",
        "the outer boards of the back shrink out of their rabbets",
        "case.back",
        found=f"rabbets {out.about(depth)} deep, boards {out.about(widest)} wide",
        expected=f"{out.up(need)}, so that {out.up(LEAST_LAP)} still laps in the driest time",
        source="change of width: Wood Handbook FPL-GTR-190 eq. 13-2",
        remedy=f"make the rabbets {out.up(need)} deep (`back.depth`), or the boards narrower (`back.board_width`)",
    )
