"""Solid wood glued or screwed fast to a sheet, which hardly moves."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin
from boardwright.checks.movement import lines
from boardwright.core.findings import Finding

CODE = "wood.solid-on-sheet"


def check(c: Context) -> Iterator[Finding]:
    """Beyond the limit of a glue line."""
    yield from lines.findings(
        c,
        CODE,
        lines.LIMIT,
        "{one} and {two}: solid wood is held to a sheet across its grain",
        "make both of the sheet, or screw the solid part in slots",
    )


def margins(c: Context) -> Iterator[Margin]:
    """Every such line."""
    return lines.margins(c, CODE, lines.LIMIT)
