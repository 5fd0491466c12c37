"""All checks of a piece, in order."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from boardwright.checks import (
    assembly,
    carries,
    doors,
    drawers,
    extension_bars,
    fasteners,
    fit,
    wood,
    workshop,
)
from boardwright.checks.context import Context, context
from boardwright.checks.loads import Loads
from boardwright.checks.shop import Shop
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
    fasteners.edges,
    fasteners.end_grain,
    wood.cross_grain,
    wood.stock_gives,
    carries.check,
    workshop.check,
)


def run_checks(
    piece: Piece, fit_result: DryFit, tables: Tables, loads: Loads | None = None, shop: Shop | None = None
) -> list[Finding]:
    """Every finding of every check."""
    c = context(piece, fit_result, tables, loads, shop)
    return grouped(f for check in CHECKS for f in check(c))
