"""Every fit of a piece, built by the thousand at once."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin
from boardwright.checks.tolerance import doors, drawers, joints, panels, shelves
from boardwright.checks.tolerance.chains import Sides
from boardwright.checks.tolerance.fits import Fit, margins

FITS: tuple[Callable[[Context, Sides], Iterable[Fit]], ...] = (
    drawers.fits,
    doors.fits,
    shelves.fits,
    panels.fits,
    joints.fits,
)


def all_fits(c: Context) -> list[Fit]:
    """What fits into what; what is alike once, with its count."""
    sides = Sides(c)
    kinds: dict[tuple[object, ...], Fit] = {}
    for fit in (fit for find in FITS for fit in find(c, sides)):
        letters = tuple(c.parts[id].letter for id in fit.parts)
        key = (fit.check, re.sub(r"\d+", "", fit.name), letters, *(round(g.size, 3) for g in fit.gaps))
        kinds[key] = replace(kinds[key], alike=kinds[key].alike + 1) if key in kinds else fit
    return list(kinds.values())


def measure(c: Context) -> Iterator[Margin]:
    """Shares of builds that bind or rattle: of each kind of fit the worst."""
    kinds: dict[tuple[str, str], list[Fit]] = {}
    for fit in all_fits(c):
        kinds.setdefault((fit.check, fit.of), []).append(fit)
    for fits in kinds.values():
        yield from margins(c, fits)
