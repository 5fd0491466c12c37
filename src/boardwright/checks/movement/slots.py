"""Slots for screws and pegs: whether they are as long as what they hold moves."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.movement.fits import SOURCE, STILL, Moving, Year, quartersawn, tried
from boardwright.core.findings import Finding, Severity
from boardwright.core.poses import Vec, dot
from boardwright.piece.cuts import Hole
from boardwright.piece.records import Fastener, Part

NEAR = 1.0
"""A hole belongs to a fastener whose axis passes so near its middle [mm]."""


def slot_of(f: Fastener, part: Part) -> tuple[float, Vec] | None:
    """The slot in which a fastener passes a part: from its middle to an end [mm], and the direction it runs along."""
    axes = (part.pose.x, part.pose.y, part.pose.z)
    for cut in part.cuts:
        if not isinstance(cut, Hole) or not cut.slot:
            continue
        at = [0.0, 0.0, 0.0]
        for i, v in zip([i for i in range(3) if i != cut.side.axis], cut.at, strict=True):
            at[i] = v
        middle = part.pose.point((at[0], at[1], at[2]))
        gap: Vec = (f.at[0] - middle[0], f.at[1] - middle[1], f.at[2] - middle[2])
        along = dot(gap, f.direction)
        if dot(gap, gap) - along**2 < NEAR**2:
            return cut.slot / 2, axes[cut.slot_along]
    return None


def fits(year: Year) -> Iterator[Moving]:
    """Room of each slotted fastener to either end of its slot; of a row the one with the least."""
    c = year.c
    worst: dict[tuple[str, str], Moving] = {}
    for f in c.piece.fasteners:
        if not f.slotted or f.held not in c.parts or f.into not in c.parts:
            continue
        for slotted, other in ((f.held, f.into), (f.into, f.held)):
            found = slot_of(f, c.parts[slotted])
            if found is None:
                continue
            room, way = found
            slope = year.slope(slotted, f.at, other, f.at, way)
            if abs(slope) * year.swing < STILL:
                continue
            m = Moving(
                "wood.slot-short", (slotted, other), f"room of a {f.kind} in its slot", room, slope, 0.0, f.place,
                both=True, tell=_short,
            )  # fmt: skip
            if m.parts not in worst or m.worst(year.moisture) < worst[m.parts].worst(year.moisture):
                worst[m.parts] = m
    yield from worst.values()


def _short(year: Year, m: Moving, worst: float, when: float) -> Finding:
    c, mo = year.c, year.moisture
    slotted, other = m.parts
    needed = 2 * (m.now - worst)
    out = [f"make the slots {c.up(needed)} long from centre to centre, with the screw in the middle"]
    flat = [id for id in m.parts if c.parts[id].stock.kind == "wood" and c.parts[id].stock.angle < 60]
    if flat and tried(year, fits, m, quartersawn(flat)):
        out.append(f"use quartersawn boards for {' and '.join(c.label(i) for i in flat)}")
    return Finding(
        m.code,
        Severity.ERROR if worst < -1.0 else Severity.WARNING,
        f"{c.label(other)} moves farther than the slots in {c.label(slotted)} let it",
        m.place,
        found=f"slots {c.text(2 * m.now)} long from centre to centre; it moves {c.text(m.now - worst)} to one side "
        f"from {mo.now:.3g} to {when:.3g} % moisture",
        expected=f"at least {c.text(needed)}",
        source=SOURCE,
        remedy=", or ".join(out),
        parts=m.parts,
    )
