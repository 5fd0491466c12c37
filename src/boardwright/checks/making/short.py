"""Parts shorter than is crosscut with the part in the hand or on a sled."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.context import Context
from boardwright.checks.making.kinds import MANUAL, against, kinds, named
from boardwright.checks.margins import Margin
from boardwright.core.findings import Finding, Severity
from boardwright.piece.records import Part


def measure(c: Context) -> Iterator[Margin]:
    """Length of parts beside the shortest at the table saw, else at the mitre saw, whichever is shorter."""
    key = min(("saw_shortest_crosscut", "mitre_saw_shortest"), key=lambda k: c.shop.machines[k])
    where = "table saw, on a sled" if key == "saw_shortest_crosscut" else "mitre saw"

    def tell(parts: list[Part], sizes: list[float], limit: float) -> Finding:
        return Finding(
            "making.short",
            Severity.NOTE,
            f"{named(c, parts)}: shorter than is crosscut at the {where}",
            parts[0].place,
            found=f"{c.text(sizes[0])} long",
            expected=f"{c.text(limit)} or more; {MANUAL}",
            source=c.tables.figure(key).reason,
            remedy=f"saw it by hand from a longer blank, or crosscut it last, from a blank {c.up(limit + sizes[0])} or "
            "more long that is clamped down",
            parts=tuple(p.id for p in parts),
        )

    sized = [(p, p.size[0]) for p in kinds(c)]
    return against(c, "making.short", "length at the saw", key, sized, tell)
