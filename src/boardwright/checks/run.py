"""All checks of a piece, in order."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from boardwright.checks import assembly, carries, doors, drawers, extension_bars, fasteners, fit, wood
from boardwright.checks.context import Context, context
from boardwright.checks.loads import Loads
from boardwright.checks.movement import run as movement
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
    doors.swing,
    *extension_bars.CHECKS,
    fasteners.tips,
    fasteners.meetings,
    fasteners.edges,
    fasteners.end_grain,
    movement.check,
    wood.stock_gives,
    carries.check,
)


def run_checks(piece: Piece, fit_result: DryFit, tables: Tables, loads: Loads | None = None) -> list[Finding]:
    """Every finding of every check."""
    c = context(piece, fit_result, tables, loads)
    return grouped(f for check in CHECKS for f in check(c))
