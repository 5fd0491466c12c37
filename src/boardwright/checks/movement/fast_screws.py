"""Tops, covers and cleats screwed fast: more than one screw without a slot across the grain."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin
from boardwright.checks.movement import lines
from boardwright.core.findings import Finding

CODE = "wood.screwed-fast"


def check(c: Context) -> Iterator[Finding]:
    """Beyond the limit of a line that is held."""
    yield from lines.findings(
        c,
        CODE,
        lines.LIMIT,
        "{one} and {two} are screwed fast across the grain",
        "keep one screw fast and give the others slots, use buttons or clips, or turn the grain",
    )


def margins(c: Context) -> Iterator[Margin]:
    """Every such line."""
    return lines.margins(c, CODE, lines.LIMIT)
