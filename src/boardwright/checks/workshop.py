"""Checks of making and moving the piece: fits as the shop cuts them, and the margins of what passes."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace

from boardwright.checks.context import Context
from boardwright.checks.making import clamps, narrow, open_time, router, short, thin, wide
from boardwright.checks.margins import Margin
from boardwright.checks.tolerance import mitres, shop_fits
from boardwright.core.findings import Finding

MEASURES: tuple[Callable[[Context], Iterable[Margin]], ...] = (
    shop_fits.measure,
    mitres.measure,
    thin.measure,
    short.measure,
    narrow.measure,
    router.measure,
    wide.measure,
    clamps.measure,
    open_time.measure,
)


def look(c: Context) -> tuple[list[Finding], list[Margin]]:
    """What is beyond its limit, and what keeps it, with figure and limit; in the order of the checks."""
    margins = [m for measure in MEASURES for m in measure(c)]
    findings = [m.tell() for m in margins if not m.kept and m.tell is not None]
    return findings, [replace(m, tell=None) for m in margins if m.kept]


def check(c: Context) -> list[Finding]:
    """What is beyond its limit."""
    return look(c)[0]
