"""Doors in their openings: the gap at each edge, and between two doors, at the wettest time."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.movement.fits import SOURCE, STILL, Moving, Year, ways_out
from boardwright.core.findings import Finding, Severity
from boardwright.core.poses import AXES, Box, Vec, scaled
from boardwright.piece.records import Motion, Part

LEAST = 0.4
"""Least gap at each edge of an inset door at the wettest time [mm]: 1/64 in, common practice."""
GAP = 8.0
"""What stands no farther from an edge than this is what the door is fitted to [mm]."""


def fits(year: Year) -> Iterator[Moving]:
    """The gap at each edge of each door; that of a pair once."""
    told: set[frozenset[str]] = set()
    for motion in year.c.piece.motions:
        if motion.kind != "door":
            continue
        mine = [p for p in year.c.piece.parts if p.group == motion.id]
        others = [p for p in year.c.piece.parts if p.group != motion.id]
        for axis in (0, 2):
            for sign in (-1.0, 1.0):
                m = _gap(year, motion, mine, others, axis, sign)
                if m is not None and frozenset(m.parts) not in told:
                    told.add(frozenset(m.parts))
                    yield m


def _gap(
    year: Year, motion: Motion, mine: list[Part], others: list[Part], axis: int, sign: float
) -> Moving | None:
    """The least gap beyond one edge; None where nothing stands there, or nothing moves."""
    best: Moving | None = None
    for part in mine:
        for other in others:
            facing = _facing(part.box, other.box, axis, sign)
            if facing is None:
                continue
            gap, at, there = facing
            slope = year.slope(part.id, at, other.id, there, scaled(AXES[axis], sign))
            if abs(slope) * year.swing < STILL:
                continue
            m = Moving(
                "door.swells", (part.id, other.id), f"gap of {motion.name}", gap, slope, min(LEAST, gap),
                motion.place, tell=_binds,
            )  # fmt: skip
            if best is None or m.worst(year.moisture) < best.worst(year.moisture):
                best = m
    return best


def _facing(box: Box, other: Box, axis: int, sign: float) -> tuple[float, Vec, Vec] | None:
    """The gap between two boxes that face each other along an axis, and the points it lies between [mm]."""
    end = box.high[axis] if sign > 0 else box.low[axis]
    face = other.low[axis] if sign > 0 else other.high[axis]
    gap = sign * (face - end)
    if not 1e-6 < gap < GAP:
        return None
    at, there = [0.0, 0.0, 0.0], [0.0, 0.0, 0.0]
    for i in range(3):
        low, high = max(box.low[i], other.low[i]), min(box.high[i], other.high[i])
        if i != axis and high - low < 1.0:
            return None
        at[i] = there[i] = (low + high) / 2
    at[axis], there[axis] = end, face
    return gap, (at[0], at[1], at[2]), (there[0], there[1], there[2])


def _binds(year: Year, m: Moving, worst: float, when: float) -> Finding:
    c, mo = year.c, year.moisture
    return Finding(
        m.code,
        Severity.ERROR if worst < 0 else Severity.WARNING,
        f"{m.what.removeprefix('gap of ')}: {c.label(m.parts[0])} "
        + ("jams against" if worst < 0 else "hardly clears")
        + f" {c.label(m.parts[1])} at {when:.3g} % moisture",
        m.place,
        found=f"a gap of {c.text(m.now)} at {mo.now:.3g} %, {c.text(worst)} at {when:.3g} %",
        expected=f"at least {c.text(m.least)} at {when:.3g} %",
        source=f"{SOURCE}; the hinged edge stays where it is; least gap: common practice",
        remedy=ways_out(year, fits, m, f"leave a gap of {c.up(m.now + m.least - worst)} there"),
        parts=m.parts,
    )
