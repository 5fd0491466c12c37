"""Loose shelves between sides: they go in, and do not fall between."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.context import Context
from boardwright.checks.tolerance.builds import gap
from boardwright.checks.tolerance.chains import Sides
from boardwright.checks.tolerance.drawers import moisture
from boardwright.checks.tolerance.fits import Fit
from boardwright.piece.records import Part

NEAR = 12.0
"""A side stands no farther from the end of a loose shelf than this [mm]."""


def fits(c: Context, sides: Sides) -> Iterator[Fit]:
    """Each kind of loose shelf once."""
    seen: set[str] = set()
    for shelf in c.piece.parts:
        if shelf.name != "loose shelf" or shelf.letter in seen:
            continue
        seen.add(shelf.letter)
        f = sides.along(0)
        low, high = _walls(c, shelf, False), _walls(c, shelf, True)
        if not low or not high:
            continue
        left, right = max(p.box.high[0] for p in low), min(p.box.low[0] for p in high)
        room = f.chain(f.at(left, True, low), f.at(right, False, high))
        own = f.whole(shelf)
        if room is None or own is None:
            continue
        yield Fit(
            "tolerance.shelf",
            (shelf.id,),
            f"{c.label(shelf.id)} between its sides",
            "length of loose shelves",
            (gap(right - left - shelf.box.size(0), room, (own,), moisture(c)),),
            shelf.place,
            lambda more, total: f"leave {c.up(total / 2)} at each end (`clearance`)",
            rattles_over=2
            * c.tables.figure("shelf_pin_clearance").value
            * c.tables.figure("rattle_ratio").value,
            rattles="lies too loose",
        )


def _walls(c: Context, shelf: Part, high: bool) -> list[Part]:
    """Parts that stand beside an end of a shelf."""
    out = []
    for p in c.piece.parts:
        away = p.box.low[0] - shelf.box.high[0] if high else shelf.box.low[0] - p.box.high[0]
        beside = all(
            min(p.box.high[i], shelf.box.high[i]) - max(p.box.low[i], shelf.box.low[i])
            > 0.6 * shelf.box.size(i)
            for i in (1, 2)
        )
        if 0 <= away < NEAR and beside:
            out.append(p)
    return out
