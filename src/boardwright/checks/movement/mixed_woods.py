"""Two woods joined along a width: both move across the grain, but not alike."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin
from boardwright.checks.movement import lines
from boardwright.core.findings import Finding

CODE = "wood.mixed-woods"


def check(c: Context) -> Iterator[Finding]:
    """Beyond the limit of a glue line."""
    yield from lines.findings(
        c,
        CODE,
        lines.LIMIT,
        "{one} and {two} both move across the grain, but not alike",
        "glue only the front and leave the rest dry, make the hidden part as much shorter at the back, "
        "or use woods that move alike",
    )


def margins(c: Context) -> Iterator[Margin]:
    """Every such line."""
    return lines.margins(c, CODE, lines.LIMIT)
