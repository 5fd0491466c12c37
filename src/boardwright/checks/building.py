"""What is lifted or turned over at once while the piece is built: parts and subassemblies, in its order."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from boardwright.checks.amounts import mass_text
from boardwright.checks.carrying import EQUATION, most
from boardwright.checks.context import Context
from boardwright.checks.margins import Margin, Site
from boardwright.core.findings import Finding, Severity
from boardwright.core.poses import Box
from boardwright.piece.records import Part, Piece
from boardwright.solids.assembly import assembly_of
from boardwright.solids.mesh import volume

EDGE = 0.5
"""Share of its weight that is lifted when something is turned over one edge: its middle lies half way (mechanics)."""
UPWARD = 0.9
"""What is put on upward goes in from below: what stands is laid over first."""


@dataclass(frozen=True, slots=True)
class Handled:
    """Something handled at once.

    Attributes:
        parts: ids. mass: of all of it [kg]. turned: True when it is laid over, and only one edge is lifted.
        box: around it, as it stands in the piece [mm].
    """

    parts: tuple[str, ...]
    mass: float
    turned: bool
    box: Box

    @property
    def lifted(self) -> float:
        """What the hands bear [kg]."""
        return self.mass * (EDGE if self.turned else 1.0)


def masses(piece: Piece) -> dict[str, float]:
    """Mass of every part by its id [kg]."""
    return {p.id: volume(p) * 1e-9 * p.stock.density for p in piece.parts}


def handled(piece: Piece, mass: dict[str, float]) -> list[Handled]:
    """Everything that is lifted or laid over at once, in the order of building; parts and subassemblies.

    Args:
        piece: the piece.
        mass: of each part by its id [kg].
    """
    by_id = {p.id: p for p in piece.parts}

    def one(ids: tuple[str, ...], turned: bool) -> Handled:
        return Handled(ids, sum(mass[i] for i in ids), turned, _around([by_id[i] for i in ids]))

    found = []
    for step in assembly_of(piece).order:
        if step.direction[2] > UPWARD and len(step.onto) > 1:
            found.append(one(step.onto, True))
        if len(step.onto) == 1:
            found.append(one(step.onto, False))
        found += [one(unit, False) for unit in step.units]
    return found or [one((p.id,), False) for p in piece.parts]


def _around(parts: list[Part]) -> Box:
    boxes = [p.box for p in parts]
    low = [min(b.low[i] for b in boxes) for i in range(3)]
    high = [max(b.high[i] for b in boxes) for i in range(3)]
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def measure(c: Context, site: Site) -> Iterator[Margin]:
    """What comes nearest to the limit of the lifting equation while the piece is built."""
    if len(c.piece.parts) < 2:
        return
    mass = masses(c.piece)
    heavy = sum(mass.values()) > most(c, c.loads.persons)
    all_ = [
        (h, most(c, c.loads.persons, h.box))
        for h in handled(c.piece, mass)
        if not (h.turned and heavy)  # `weight.lift` says it
    ]
    h, limit = max(all_, key=lambda pair: pair[0].lifted / pair[1] if pair[1] > 0 else float("inf"))
    who = "one person" if c.loads.persons == 1 else "two persons"
    yield Margin(
        "weight.build",
        h.parts if len(h.parts) == 1 else (),
        f"{'turned over' if h.turned else 'lifted'} at once in building, {who}",
        h.lifted,
        limit,
        "kg",
        tell=lambda: _finding(c, h, limit, who),
    )


def _finding(c: Context, h: Handled, limit: float, who: str) -> Finding:
    name = what(c, h)
    mass = masses(c.piece)
    one = c.parts[max(h.parts, key=lambda id: mass[id])]
    both = most(c, 2, h.box)
    remedies = []
    if c.loads.persons == 1 and h.lifted <= both:
        remedies.append("let two persons do it")
    if not remedies:
        remedies.append("let more persons do it, or use a hoist or a lifting table")
    if len(h.parts) > 1 and not h.turned:
        remedies.append(f"put it together where it stays; its heaviest part is {mass_text(c, mass[one.id])}")
    half = f", half of it on the edge that is lifted: {mass_text(c, h.lifted)}" if h.turned else ""
    return Finding(
        "weight.build",
        Severity.WARNING if "lifts" in c.loads.given else Severity.NOTE,
        f"in building, {name} {'is turned over' if h.turned else 'is lifted'} at once, "
        f"more than the lifting equation gives {who}",
        one.place,
        found=f"{mass_text(c, h.mass)}{half}",
        expected=f"at most {mass_text(c, limit)} for {who}",
        source=EQUATION,
        remedy=", or ".join(remedies),
        parts=h.parts if len(h.parts) == 1 else (),
    )


def what(c: Context, h: Handled) -> str:
    """Something handled, in words: its heaviest part and how many more."""
    mass = masses(c.piece)
    first = c.label(max(h.parts, key=lambda id: mass[id]))
    more = len(h.parts) - 1
    motion = next((m.name for m in c.piece.motions if {c.parts[i].group for i in h.parts} == {m.id}), "")
    if motion and more:
        return motion
    return first + (f" with {more} part{'s' if more > 1 else ''} on it" if more else "")
