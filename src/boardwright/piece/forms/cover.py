"""A board over the top of a case: screws fast at the front, in slots at the rear, so that it moves backward."""

from __future__ import annotations

from boardwright.core.poses import Box, Vec
from boardwright.design.schema import Cover
from boardwright.piece.drafts import Draft
from boardwright.piece.joints.faces import plane
from boardwright.piece.joints.fastening.screws import choose_screw, drive, no_screw
from boardwright.piece.joints.fastening.spots import SPACING, places
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

PATH = "case.cover"
FROM_EDGE = 38.0
"""Rows of screws stand so far from the front and rear edge of a whole top [mm]: 1 1/2 in, common practice."""


def cover_stock(out: SetOut, keys: Cover | None, case_stock: Stock) -> Stock | None:
    """The stock of the cover; None when none is asked for."""
    if keys is None:
        return None
    return out.stock((f"{PATH}.stock", keys.stock)) if keys.stock else case_stock


def cover(
    out: SetOut,
    keys: Cover,
    stock: Stock,
    tops: list[Draft],
    sides: tuple[Draft, Draft],
    front: float,
    rear: float,
) -> None:
    """Lay the cover on a case and screw it down.

    Args:
        out: the bench.
        keys: what the file says.
        stock: of the cover.
        tops: the top, or its rails from front to rear.
        sides: left and right.
        front: of the case [mm].
        rear: of the case [mm].
    """
    if not tops:
        out.find(
            "case.cover-no-top",
            "the cover has nothing to be screwed to",
            PATH,
            found="no top under it",
            expected="a whole top, or two rails",
            remedy="use `top: {kind: rails}`",
        )
        return
    figure = out.tables.figure("cover_overhang")
    over = out.sizer.size(
        f"{PATH}.overhang",
        [(f"{PATH}.overhang", keys.overhang)],
        figure.value,
        rule="over the front and the sides",
        source=figure.reason,
    )
    z = tops[0].high[2]
    x0, x1 = sides[0].low[0], sides[1].high[0]
    wide, deep = out.sizer.settled(x1 - x0 + 2 * over, "down"), out.sizer.settled(rear - front + over, "down")
    board = out.add(
        "case.cover",
        "cover",
        stock,
        Box((x0 - over, rear - deep, z), (x0 - over + wide, rear, z + stock.thickness)),
        (0, 1),
        show=((2, True), (1, False), (0, False), (0, True)),
        path=PATH,
    )
    rows = [(t, t.low[1] + out.sizer.settled(t.size(1) / 2)) for t in tops]
    if len(tops) == 1:
        edge = out.sizer.settled(min(FROM_EDGE, tops[0].size(1) / 4))
        rows = [(tops[0], tops[0].low[1] + edge), (tops[0], tops[0].high[1] - edge)]
    m = out.moisture
    rate = stock.across if stock.kind == "wood" else 0.0
    swing = rate * max(m.wettest - m.now, m.now - m.driest, 0.0)
    ids: dict[str, list[str]] = {t.id: [] for t in tops}
    for top, y in rows:
        slot = out.sizer.settled(2 * swing * (y - rows[0][1]), "up")
        ids[top.id] += _row(out, top, board, y, slot)
    for top in tops:
        span = {0: (max(top.seen().low[0], x0), min(top.seen().high[0], x1)), 1: (top.low[1], top.high[1])}
        out.joint(
            "screwed",
            top,
            board,
            [plane(2, z, span, True, glued=False)],
            [(0.0, 0.0, 1.0)],
            f"{len(ids[top.id])} screws from below, {'in slots at the rear, ' if swing else ''}no glue",
            glued=False,
            floats=(1,) if swing else (),
            fasteners=tuple(ids[top.id]),
            place=out.design.place(PATH),
        )


def _row(out: SetOut, top: Draft, board: Draft, y: float, slot: float) -> list[str]:
    """Screws up through a top along a line from left to right."""
    edge = min(top.size(1) / 2, 20.0)
    held, room = top.size(2), board.size(2)
    chosen = choose_screw(out, None, None, edge, held, room)
    if chosen is None:
        no_screw(out, top, board, PATH, held, room, edge)
        return []
    seen = top.seen()
    made = []
    for x in places(out, (seen.low[0], seen.high[0]), None, SPACING):
        at: Vec = (x, y, top.low[2])
        made.append(drive(out, top, board, 2, True, at, *chosen, held, slot=slot, slot_axis=1, path=PATH))
    return made
