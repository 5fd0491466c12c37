"""All checks of a piece, in order."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from boardwright.checks import (
    assembly,
    carries,
    doors,
    drawers,
    extension_bars,
    fasteners,
    fit,
    splitting,
    wood,
)
from boardwright.checks.context import Context, context
from boardwright.checks.loads import Loads
from boardwright.checks.margins import Margin
from boardwright.core.findings import Finding, grouped
from boardwright.piece.records import Piece
from boardwright.solids.dry_fit import DryFit
from boardwright.tables.bundle import Tables

CHECKS: tuple[Callable[[Context], Iterable[Finding]], ...] = (
    fit.collisions,
    fit.open_joints,
    fit.unplanned_gaps,
    fit.thin_webs,
    assembly.trapped,
    assembly.drivers,
    assembly.wrong_ways,
    drawers.travel,
    drawers.height,
    drawers.width,
    drawers.depth,
    doors.swing,
    *extension_bars.CHECKS,
    fasteners.tips,
    fasteners.meetings,
    splitting.pilots,
    fasteners.end_grain,
    wood.cross_grain,
    wood.stock_gives,
)


@dataclass(frozen=True, slots=True)
class Checked:
    """What the checks say.

    Attributes:
        findings: what is beyond its limit.
        passed: what was figured and keeps its limit.
    """

    findings: tuple[Finding, ...]
    passed: tuple[Margin, ...]


def run_checks(piece: Piece, fit_result: DryFit, tables: Tables, loads: Loads | None = None) -> Checked:
    """Every finding of every check, and every margin that was kept."""
    c = context(piece, fit_result, tables, loads)
    beyond, kept = carries.look(c)
    return Checked(tuple(grouped([*(f for check in CHECKS for f in check(c)), *beyond])), tuple(kept))
