"""A shelf or divider glued over its whole width in a dado or rabbet of a part whose grain runs the other way."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin
from boardwright.checks.movement import lines
from boardwright.core.findings import Finding

CODE = "wood.housed-across"


def check(c: Context) -> Iterator[Finding]:
    """Beyond the limit of a glue line."""
    yield from lines.findings(
        c,
        CODE,
        lines.LIMIT,
        "{one} and {two}: glued in a housing over a width in which they move differently",
        "glue only the front of the joint and leave the rest dry, or turn the grain of one",
    )


def margins(c: Context) -> Iterator[Margin]:
    """Every such line."""
    return lines.margins(c, CODE, lines.LIMIT)
