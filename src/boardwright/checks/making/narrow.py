"""Parts narrower than is ripped at the fence without a push block."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.context import Context
from boardwright.checks.making.kinds import MANUAL, against, blank, kinds, least_of, named, small
from boardwright.checks.margins import Margin
from boardwright.core.findings import Finding, Severity
from boardwright.piece.records import Part


def measure(c: Context) -> Iterator[Margin]:
    """Width of parts beside the narrowest rip."""

    def tell(parts: list[Part], sizes: list[float], limit: float) -> Finding:
        return Finding(
            "making.narrow",
            Severity.NOTE,
            f"{named(c, parts)}: narrower than is ripped at the fence without a push block",
            parts[0].place,
            found=f"{c.text(sizes[0])} wide{least_of(sizes, 'narrowest')}",
            expected=f"{c.text(limit)} or more; {MANUAL}",
            source=c.tables.figure("saw_narrowest").reason,
            remedy=f"rip {'each' if len(parts) > 1 else 'it'} off a board {blank(c, sizes, limit, 'wide')} "
            "with a push block, or at the band saw",
            parts=tuple(p.id for p in parts),
        )

    sized = [(p, p.size[1]) for p in kinds(c) if small(c, p) in ("", "making.narrow")]
    return against(c, "making.narrow", "width at the fence", "saw_narrowest", sized, tell)
