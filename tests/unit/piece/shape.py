"""What tests of forms and joints read: findings about how a piece fits, not how it is used."""

from __future__ import annotations

from collections.abc import Iterable

from boardwright.core.findings import Finding

IN_USE = ("strength.", "stability.", "weight.", "year.", "making.", "shop.", "passage.", "tolerance.")
"""Groups of findings about what a piece carries, how it stands, moves and is made: they have tests of their own."""


def misfits(findings: Iterable[Finding]) -> list[str]:
    """Findings, notes aside, about the shape of a piece."""
    return [f.text() for f in findings if f.severity != "note" and not f.code.startswith(IN_USE)]
