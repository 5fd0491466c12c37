"""All checks of movement, and the margins of what passes them."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin
from boardwright.checks.movement import (
    breadboards,
    fast_screws,
    glue_lines,
    held_edges,
    housed,
    lids,
    mitres,
    mixed_woods,
    seasons,
    solid_on_sheet,
)
from boardwright.checks.movement.curves import FITS
from boardwright.checks.movement.fits import Year, margin, year_of
from boardwright.checks.movement.lines import Check, lines
from boardwright.checks.movement.lines import margins as of_lines
from boardwright.checks.movement.times import Then, until
from boardwright.core.findings import Finding

LINES: tuple[Check, ...] = (
    glue_lines.CHECK,
    solid_on_sheet.CHECK,
    fast_screws.CHECK,
    housed.CHECK,
    mixed_woods.CHECK,
)
OTHERS: tuple[Callable[[Year], Iterable[Margin]], ...] = (
    held_edges.margins,
    mitres.margins,
    breadboards.margins,
    lids.margins,
)


def look(c: Context, then: Then | None = None) -> tuple[list[Finding], list[Margin]]:
    """What the year does to the piece: what is beyond its limit, and what keeps it, with figure and limit.

    Args:
        c: the context.
        then: a time up to which the wood moves; None for the whole year.
    """
    if then is not None:
        c = replace(c, piece=replace(c.piece, moisture=until(c.piece.moisture, then.percent)))
    year = year_of(c)
    held = lines(year)
    margins = [margin(year, m) for fits in FITS for m in fits(year)]
    margins += [m for check in LINES for m in of_lines(year, held, check)]
    margins += [m for each in OTHERS for m in each(year)]
    found = [m.tell() for m in margins if not m.kept and m.tell is not None]
    found += seasons.check(year, {p for f in found for p in f.parts})
    return found, [replace(m, tell=None) for m in margins if m.kept]
