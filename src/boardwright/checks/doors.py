"""Doors and lids: what they hit while they turn."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.context import Context
from boardwright.core.findings import Finding, Severity

OVERLAP = "overlap"
"""Kind of the joint where one door lies over another, which opens after it."""


def swing(c: Context) -> Iterator[Finding]:
    """What a door or lid hits when it is opened, all else shut; a door under the strip of another waits for it."""
    turning = {m.id: m for m in c.piece.motions if m.turn}
    waits = {(j.first, j.second) for j in c.piece.joints if j.kind == OVERLAP}
    groups = {(c.parts[a].group, b) for a, b in waits if a in c.parts}
    for h in c.fit.hits:
        m = turning.get(h.motion)
        if m is None or (m.id, h.obstacle) in groups:
            continue
        yield Finding(
            "door.hits",
            Severity.ERROR,
            f"{m.name} hits {c.label(h.obstacle)} when it is opened",
            m.place,
            found=f"{c.label(h.part)} meets it at {h.opening:.0f} degrees",
            expected=f"free to {m.turn:g} degrees",
            source="dry fit of the solids",
            remedy="open it less (`opens`), give it more room at the side that it meets, or move what stands there",
            parts=(h.part, h.obstacle),
        )
