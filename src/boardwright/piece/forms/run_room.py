"""The room that a drawer's way of running leaves for its box, and how far it runs."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut
from boardwright.tables.records import Slide

LEAST_STRIP = 60.0
"""A bar, runner, guide or kicker is at least so long [mm]: room for two screws, common practice."""


@dataclass(frozen=True, slots=True)
class Room:
    """The room that the way of running leaves for the box.

    Attributes:
        kind: as `runs_on` of the design file.
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
    """How far the drawer travels [mm], and what it is reckoned to hold [kg]; 0 where that is not figured."""

    travel: float
    load: float = 0.0


def strip_stock(out: SetOut, least: float = 0.0) -> Stock:
    """Wood first, as thick as it takes: runners and bars are wooden (common practice: hard wood).

    Args:
        out: the bench.
        least: thickness that is wanted, where the file has such a wood [mm].
    """
    woods = [s for s in out.stocks.values() if s.kind == "wood"]
    woods = [s for s in woods if s.thickness >= least - 1e-6] or woods
    return (
        max(woods, key=lambda s: (s.specific_gravity, s.thickness))
        if woods
        else next(iter(out.stocks.values()))
    )
