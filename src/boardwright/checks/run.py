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
    passage,
    splitting,
    wood,
    workshop,
)
from boardwright.checks.context import Context, context
from boardwright.checks.loads import Loads
from boardwright.checks.looked import Looked, looked
from boardwright.checks.margins import Margin
from boardwright.checks.movement import run as movement
from boardwright.checks.movement.times import Then
from boardwright.checks.shop import Shop
from boardwright.checks.way import Way
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
    splitting.pilots,
    fasteners.end_grain,
    wood.stock_gives,
    passage.nonsense,
)


@dataclass(frozen=True, slots=True)
class Checked:
    """What the checks say.

    Attributes:
        findings: what is beyond its limit.
        passed: what was figured and keeps its limit.
        looked: checks without a figure that found nothing.
    """

    findings: tuple[Finding, ...]
    passed: tuple[Margin, ...]
    looked: tuple[Looked, ...] = ()


def run_checks(
    piece: Piece,
    fit_result: DryFit,
    tables: Tables,
    loads: Loads | None = None,
    shop: Shop | None = None,
    way: Way | None = None,
    then: Then | None = None,
) -> Checked:
    """Every finding of every check, and every margin that was kept.

    Args:
        piece: as cut.
        fit_result: its dry fit.
        tables: with the user's own rows.
        loads: what it carries.
        shop: what the shop's machines do.
        way: what it is carried through.
        then: a time up to which the wood moves; None for the whole year.
    """
    c = context(piece, fit_result, tables, loads, shop, way)
    moved, passed = movement.look(c, then)
    findings = [*(f for check in CHECKS for f in check(c)), *moved]
    for look in (carries.look, workshop.look):
        beyond, kept = look(c)
        findings += beyond
        passed += kept
    return Checked(tuple(grouped(findings)), tuple(passed), tuple(looked(c, findings)))
