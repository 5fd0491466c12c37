"""Glue across the grain: two solid parts glued over a length in which they move differently."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin
from boardwright.checks.movement import lines
from boardwright.core.findings import Finding

CODE = "wood.cross-grain"


def check(c: Context) -> Iterator[Finding]:
    """Beyond the limit of a glue line."""
    yield from lines.findings(
        c,
        CODE,
        lines.LIMIT,
        "{one} and {two} are held together across the grain",
        "let one of them float (a groove without glue, or screws in slots), turn its grain, or use a sheet",
    )


def margins(c: Context) -> Iterator[Margin]:
    """Every such line."""
    return lines.margins(c, CODE, lines.LIMIT)
