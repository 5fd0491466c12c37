"""Parts shorter than is crosscut with the part in the hand or on a sled."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.context import Context
from boardwright.checks.making.kinds import (
    MANUAL,
    against,
    blank,
    by_its_end,
    kinds,
    least_of,
    measured,
    named,
    shortest,
)
from boardwright.checks.margins import Margin
from boardwright.core.findings import Finding, Severity
from boardwright.piece.records import Part


def measure(c: Context) -> Iterator[Margin]:
    """Length of parts beside the shortest at the table saw, else at the mitre saw, whichever is shorter."""
    key, _ = shortest(c)
    where = "table saw, on a sled" if key == "saw_shortest_crosscut" else "mitre saw"

    def tell(parts: list[Part], sizes: list[float], limit: float) -> Finding:
        thin = any(p.stock.kind == "wood" and p.size[2] < c.shop.machines["planer_thinnest"] for p in parts)
        it = "each" if len(parts) > 1 else "it"
        return Finding(
            "making.short",
            Severity.NOTE,
            f"{named(c, parts)}: shorter than is crosscut at the {where}",
            parts[0].place,
            found=measured(c, parts[0]) + least_of(sizes, "shortest"),
            expected=f"{c.text(limit)} long or more; {MANUAL}",
            source=c.tables.figure(key).reason,
            remedy=f"saw {it} by hand from a longer blank, or crosscut {it} last, from a blank "
            f"{blank(c, sizes, limit, 'long')} that is clamped down"
            f"{'; plane that blank on a carrier board' if thin else ''}",
            parts=tuple(p.id for p in parts),
        )

    sized = [(p, p.size[0]) for p in kinds(c) if by_its_end(c, p)]
    return against(c, "making.short", "length at the saw", key, sized, tell)
