"""Whether the piece gets from the shop to its place: through doors, round corners, into a vehicle, onto its feet."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin, Site
from boardwright.checks.obstacles import Obstacle, obstacles
from boardwright.checks.units import Stage, stages
from boardwright.core.findings import Finding, Severity
from boardwright.core.poses import Vec

SIDES = ("wide", "deep", "high")
SMALLEST = 0.6
"""No smaller share of a size is advised."""
SHOWN = 2
"""Sizes that a remedy names."""
LOOSE_BASE = 203.2
"""No loose base higher than this is advised [mm]: 8 in."""


def measure(c: Context, site: Site) -> Iterator[Margin]:
    """The piece whole at each thing on its way; at a usual door in whatever state it passes best."""
    if not c.piece.parts:
        return
    ways = stages(c)
    for o in obstacles(c):
        stage = ways[0] if o.at is not None else _first(o, ways) or ways[0]
        need, there = _worst(o, stage)
        yield Margin(
            o.code,
            (),
            o.what,
            need,
            there,
            "mm",
            tell=lambda o=o, need=need, there=there: _finding(c, o, ways, need, there),  # type: ignore[misc]
        )


def _first(o: Obstacle, ways: tuple[Stage, ...]) -> Stage | None:
    """The least taken apart in which everything passes."""
    return next((s for s in ways if all(o.passes(u.size) for u in s.units)), None)


def _worst(o: Obstacle, stage: Stage) -> tuple[float, float]:
    figures = [o.needs(u.size) for u in stage.units]
    return max(figures, key=lambda f: f[0] - f[1])


def _finding(c: Context, o: Obstacle, ways: tuple[Stage, ...], need: float, there: float) -> Finding:
    size = ways[0].units[0].size
    sides = " × ".join(c.text(s) for s in size)
    stage = _first(o, ways)
    if stage is not None:
        message = f"the piece can {o.verb} only {stage.only}"
    else:
        message = f"the piece does not {o.verb}" + (f", not even {ways[-1].only}" if len(ways) > 1 else "")
    return Finding(
        o.code,
        Severity.NOTE if stage is not None or o.at is None else Severity.WARNING,
        message,
        c.piece.parts[0].place if o.at is None else o.at,
        found=f"{sides}; {o.found(need, there)}",
        expected=o.expected,
        source=o.source,
        remedy=stage.remedy if stage is not None else _remedy(c, o, size),
    )


def _remedy(c: Context, o: Obstacle, size: Vec) -> str:
    """Sizes that pass, each tried: those that change least; a loose base under what is only a little too tall."""
    tried = [(most / size[i], i, most) for i in range(3) if (most := _most(c, o, size, i)) > 0]
    found = [
        f"no more than {c.down(most)} {SIDES[i]}"
        for share, i, most in sorted(tried, reverse=True)[:SHOWN]
        if share >= SMALLEST
    ]
    if found:
        found[0] = f"make the whole {found[0]}"
    tall = next((most for _, i, most in tried if i == 2), 0.0)
    if o.code == "passage.ceiling" and 0 < size[2] - tall <= LOOSE_BASE:
        found.append(
            f"set it on a loose base {c.up(size[2] - tall)} high or more that is part of this height"
        )
    elif tall >= size[2] / 2:
        found.append(f"build it in two units, one on the other, neither over {c.down(tall)} high")
    if not found:
        return "build it in units that are screwed together at its place"
    return ", or ".join(found)


def _most(c: Context, o: Obstacle, size: Vec, axis: int) -> float:
    """The greatest size along one axis, on the step, with which a box passes [mm]; 0 where none does."""
    step = c.piece.step

    def passes(count: int) -> bool:
        changed = list(size)
        changed[axis] = count * step
        return o.passes((changed[0], changed[1], changed[2]))

    low, high = 0, ceil(size[axis] / step)
    if not passes(1):
        return 0.0
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (middle, high) if passes(middle) else (low, middle)
    return low * step


def nonsense(c: Context) -> Iterator[Finding]:
    """Sizes of the way that cannot be."""
    for place, mm in c.way.nonsense:
        yield Finding(
            "passage.size",
            Severity.ERROR,
            f"`{place.path}` is no size that something on the way can have",
            place,
            found=c.text(mm),
            expected="a size over 0",
            source="geometry",
            remedy="give the clear size",
        )
