"""Each moving fit as a line through the year: the same sums as in the checks, figured for any moisture."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from boardwright.checks.context import context
from boardwright.checks.movement import breadboards, drawers, grooves, lids, openings, slots
from boardwright.checks.movement.fits import Fits, Year, year_of
from boardwright.piece.records import Piece
from boardwright.solids.dry_fit import DryFit
from boardwright.tables.bundle import Tables

FITS: tuple[Fits, ...] = (drawers.fits, openings.fits, grooves.fits, slots.fits)
SHOWN = 0.1
"""What changes less than this over the year gets no line [mm]: about a sheet of paper, common practice."""


@dataclass(frozen=True, slots=True)
class Curve:
    """A fit through the year; all in [mm] and [mm/%].

    Attributes:
        code: of the finding beyond its limit.
        parts: ids of its parts, the one that moves first.
        motion: id of the drawer, door or lid; "" for none.
        now, slope, both: as in `Moving`.
        low, high: limits; None where there is none.
    """

    code: str
    parts: tuple[str, ...]
    motion: str
    now: float
    slope: float
    low: float | None
    high: float | None = None
    both: bool = False

    def at(self, change: float) -> float:
        """Its value when the moisture has changed [%] since the day of cutting [mm]."""
        by = self.slope * change
        return self.now - abs(by) if self.both else self.now + by

    def left(self, changes: Iterable[float]) -> float:
        """The least that is left to a limit at some changes of moisture [%] [mm]."""
        values = [self.at(c) for c in changes]
        below = min(values) - self.low if self.low is not None else float("inf")
        above = self.high - max(values) if self.high is not None else float("inf")
        return min(below, above)


def curves(piece: Piece, tables: Tables) -> list[Curve]:
    """Every fit of a piece that moves so far that it is seen.

    Args:
        piece: as cut.
        tables: those it was checked with.
    """
    year = year_of(context(piece, DryFit((), (), ()), tables))
    every = [c for each in (_fits, _breadboards, _lids) for c in each(year)]
    return [c for c in every if abs(c.slope) * year.swing >= SHOWN]


def _fits(year: Year) -> Iterator[Curve]:
    ids = {m.id for m in year.c.piece.motions}
    for m in (m for fits in FITS for m in fits(year)):
        parts = tuple(p for p in m.parts if p not in ids)
        motion = next((p for p in m.parts if p in ids), "")
        if m.code == "door.swells":
            motion = year.c.parts[parts[0]].group
        yield Curve(m.code, parts, motion, m.now, m.slope, m.least, both=m.both)


def _breadboards(year: Year) -> Iterator[Curve]:
    """How far the top stands out at each edge; negative where the end does."""
    for j, by in breadboards.grows(year.c):
        yield Curve(
            breadboards.CODE, (j.first, j.second), "", 0.0, by / 2, -breadboards.SEEN, breadboards.SEEN
        )


def _lids(year: Year) -> Iterator[Curve]:
    """How far the free edge hangs over.

    It stays in front of the case; one that hardly hangs over stays within half of what it may move of its middle.
    """
    m = year.moisture
    for f in lids.free_edges(year):
        curve = Curve(lids.MOVES, (f.edge.id,), f.motion.id, f.over, f.slope, 0.0)
        if f.over <= lids.STRIKE:
            middle = (curve.at(m.driest - m.now) + curve.at(m.wettest - m.now)) / 2
            curve = replace(curve, low=middle - f.most / 2, high=middle + f.most / 2)
        yield curve
