"""Drawers and trays: what they hit on their way."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.context import Context
from boardwright.core.findings import Finding, Severity
from boardwright.piece.records import Motion


def sliding(c: Context) -> list[Motion]:
    """What slides, and does not turn on hinges."""
    return [m for m in c.piece.motions if not m.turn]


def travel(c: Context) -> Iterator[Finding]:
    """What a drawer hits when it is pulled."""
    motions = {m.id: m for m in sliding(c)}
    for h in c.fit.hits:
        m = motions.get(h.motion)
        if m is None:
            continue
        yield Finding(
            "drawer.hits",
            Severity.ERROR,
            f"{m.name} hits {c.label(h.obstacle)} when it is pulled",
            m.place,
            found=f"{c.label(h.part)} meets it {c.text(h.opening)} out",
            expected=f"a free travel of {c.text(m.travel)}",
            source="dry fit of the solids",
            remedy="move what stands in its way, or make the drawer smaller",
            parts=(h.part, h.obstacle),
        )
