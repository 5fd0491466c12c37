"""Checks with a figure and a limit: strength, standing, weight, fasteners; and the margins of what passes them."""

from __future__ import annotations

from dataclasses import replace

from boardwright.checks import (
    building,
    carrying,
    door_frames,
    dowels_hold,
    hanging,
    knobs,
    leaning,
    legs,
    overhang,
    panel_strength,
    passage,
    racking,
    screws_hold,
    shelf_sag,
    splitting,
    tipping,
)
from boardwright.checks.context import Context
from boardwright.checks.margins import Margin, Measure, site_of
from boardwright.core.findings import Finding

MEASURES: tuple[Measure, ...] = (
    shelf_sag.measure,
    panel_strength.measure,
    screws_hold.measure,
    dowels_hold.measure,
    tipping.measure,
    tipping.rule_margins,
    leaning.measure,
    carrying.measure,
    building.measure,
    passage.measure,
    legs.measure,
    hanging.measure,
    door_frames.measure,
    racking.measure,
    knobs.measure,
    overhang.measure,
    *splitting.MEASURES,
)


def look(c: Context) -> tuple[list[Finding], list[Margin]]:
    """What is beyond its limit, and what keeps it, with figure and limit; in the order of the checks."""
    site = site_of(c)
    margins = [m for measure in MEASURES for m in measure(c, site)]
    findings = [m.tell() for m in margins if not m.kept and m.tell is not None]
    return [*findings, *tipping.anchored(c, site)], [replace(m, tell=None) for m in margins if m.kept]


def check(c: Context) -> list[Finding]:
    """What is beyond its limit."""
    return look(c)[0]


def passed(c: Context) -> list[Margin]:
    """What keeps its limit."""
    return look(c)[1]
