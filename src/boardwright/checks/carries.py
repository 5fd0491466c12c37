"""Checks of strength, standing and weight, and the margins of what passes them."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks import carrying, panel_strength, screws_hold, shelf_sag, tipping
from boardwright.checks.context import Context
from boardwright.checks.margins import Margin, Measure, site_of
from boardwright.checks.movement import run as movement
from boardwright.core.findings import Finding

MEASURES: tuple[Measure, ...] = (
    shelf_sag.measure,
    panel_strength.measure,
    screws_hold.measure,
    tipping.measure,
    tipping.rule_margins,
    carrying.measure,
)


def check(c: Context) -> Iterator[Finding]:
    """What is beyond its limit."""
    site = site_of(c)
    for measure in MEASURES:
        for margin in measure(c, site):
            if not margin.kept and margin.tell is not None:
                yield margin.tell()
    yield from tipping.anchored(c, site)


def passed(c: Context) -> list[Margin]:
    """What keeps its limit, with figure and limit, in the order of the checks; the year comes last."""
    site = site_of(c)
    carried = [m for measure in MEASURES for m in measure(c, site) if m.kept]
    return carried + [m for m in movement.margins(c) if m.kept]
