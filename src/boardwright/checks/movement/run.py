"""All checks of movement, and the margins of what passes them."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin
from boardwright.checks.movement import (
    breadboards,
    drawers,
    fast_screws,
    glue_lines,
    grooves,
    held_edges,
    housed,
    lids,
    mitres,
    mixed_woods,
    openings,
    seasons,
    slots,
    solid_on_sheet,
)
from boardwright.checks.movement.fits import STILL, Fits, Moving, Year, beyond, margin, year_of
from boardwright.core.findings import Finding

FITS: tuple[Fits, ...] = (drawers.fits, openings.fits, grooves.fits, slots.fits)
HELD: tuple[Callable[[Context], Iterable[Finding]], ...] = (
    glue_lines.check,
    solid_on_sheet.check,
    fast_screws.check,
    housed.check,
    mixed_woods.check,
    held_edges.check,
    mitres.check,
    breadboards.check,
)
MARGINS: tuple[Callable[[Context], Iterable[Margin]], ...] = (
    glue_lines.margins,
    solid_on_sheet.margins,
    fast_screws.margins,
    housed.margins,
    mixed_woods.margins,
    held_edges.margins,
    mitres.margins,
    breadboards.margins,
)


def check(c: Context) -> Iterator[Finding]:
    """What the year does to the piece."""
    year = year_of(c)
    found = [f for fits in FITS for f in beyond(year, fits)]
    found += [f for each in HELD for f in each(c)]
    found += lids.check(year)
    yield from found
    yield from seasons.check(c, {p for f in found for p in f.parts})


def moving(year: Year) -> list[Moving]:
    """Every fit that the year changes, in the order of the checks."""
    return [m for fits in FITS for m in fits(year) if abs(m.slope) * year.swing > STILL]


def margins(c: Context) -> list[Margin]:
    """Every figure of movement beside its limit, kept or not."""
    year = year_of(c)
    out = [margin(year, m) for fits in FITS for m in fits(year)]
    out += [m for each in MARGINS for m in each(c)]
    return [*out, *lids.margins(year)]
