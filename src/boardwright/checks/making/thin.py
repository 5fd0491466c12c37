"""Parts thinner than the planer takes."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.context import Context
from boardwright.checks.making.kinds import MANUAL, against, kinds, named, small
from boardwright.checks.margins import Margin
from boardwright.core.findings import Finding, Severity
from boardwright.piece.records import Part


def measure(c: Context) -> Iterator[Margin]:
    """Thickness of solid parts beside the thinnest at the planer."""

    def tell(parts: list[Part], sizes: list[float], limit: float) -> Finding:
        return Finding(
            "making.thin",
            Severity.NOTE,
            f"{named(c, parts)}: thinner than the planer takes",
            parts[0].place,
            found=f"{c.text(sizes[0])} thick",
            expected=f"{c.text(limit)} or more; {MANUAL}",
            source=c.tables.figure("planer_thinnest").reason,
            remedy=f"plane it on a carrier board, or make it {c.up(limit)} thick",
            parts=tuple(p.id for p in parts),
        )

    sized = [(p, p.size[2]) for p in kinds(c, wood=True) if small(c, p) in ("", "making.thin")]
    return against(c, "making.thin", "thickness at the planer", "planer_thinnest", sized, tell)
