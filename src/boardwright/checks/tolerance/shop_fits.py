"""Every fit of a piece, built by the thousand at once."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin
from boardwright.checks.tolerance import doors, drawers, joints, panels, shelves
from boardwright.checks.tolerance.builds import builds
from boardwright.checks.tolerance.chains import Faces
from boardwright.checks.tolerance.fits import Fit, margins

FITS: tuple[Callable[[Context, Mapping[int, Faces]], Iterable[Fit]], ...] = (
    drawers.fits,
    doors.fits,
    shelves.fits,
    panels.fits,
    joints.fits,
)
DEPTH = (1, 0, 1)
"""Axis along which a crosscut that is out of square shows, for distances along each axis."""


def all_fits(c: Context) -> list[Fit]:
    """What fits into what."""
    boxes = {p.id: p.box for p in c.piece.parts}
    faces = {axis: Faces(c, axis, DEPTH[axis], boxes) for axis in range(3)}
    kinds: dict[tuple[object, ...], Fit] = {}
    for fit in (fit for find in FITS for fit in find(c, faces)):
        letters = tuple(c.parts[id].letter for id in fit.parts)
        key = (fit.check, re.sub(r"\d+", "", fit.name), letters, *(round(g.size, 3) for g in fit.gaps))
        kinds[key] = replace(kinds[key], alike=kinds[key].alike + 1) if key in kinds else fit
    return list(kinds.values())


def measure(c: Context) -> Iterator[Margin]:
    """Shares of builds that bind or rattle."""
    fits = all_fits(c)
    run = builds(c.shop, (g for fit in fits for g in fit.gaps))
    for fit in fits:
        yield from margins(c, fit, run)
