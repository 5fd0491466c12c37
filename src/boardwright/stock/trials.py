"""Test pieces for set-ups: from what is left of the boards where that does, else laid out with the parts."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from boardwright.core.findings import Finding
from boardwright.core.lengths import Printer
from boardwright.piece.records import Part
from boardwright.stock.choices import Allowances
from boardwright.stock.lots import LotRequest
from boardwright.stock.records import BoardLayout, Lot, RoughPart
from boardwright.stock.rough import has_joints, lumber_for, test_piece
from boardwright.tables.bundle import Tables


def lay_out_with_trials(
    request: LotRequest,
    kinds: dict[str, list[Part]],
    tables: Tables,
    allow: Allowances,
    printer: Printer,
    lay: Callable[[LotRequest], tuple[Lot, list[Finding]]],
) -> tuple[Lot, list[Finding], tuple[RoughPart, ...]]:
    """A lot laid out, with pieces for trying set-ups where its parts have joints.

    Args:
        request: what is to be laid out.
        kinds: parts by letter.
        tables: lumber.
        allow: how many test pieces.
        printer: prints sizes of the plan.
        lay: lays a lot out.

    Returns:
        The lot, findings, and the test pieces; their `blank` says which leftover they come from.
    """
    lot, findings = lay(request)
    kind = next((k[0] for p in request.parts if (k := kinds[p.letter]) and any(map(has_joints, k))), None)
    if request.stock.kind != "wood" or kind is None or not allow.test_pieces or not lot.layouts:
        return lot, findings, ()
    trial = test_piece(
        request.id, kind, lumber_for(kind, tables, allow, printer), allow.test_pieces, allow, printer
    )
    found = _from_leftovers(lot.layouts, trial)
    if found is not None:
        return lot, findings, (replace(trial, blank=found),)
    again, more = lay(replace(request, parts=(*request.parts, trial)))
    if len([f for f in more if f.code == "stock.does-not-fit"]) > len(
        [f for f in findings if f.code == "stock.does-not-fit"]
    ):
        return lot, findings, ()
    return again, more, (trial,)


def _from_leftovers(layouts: tuple[BoardLayout, ...], trial: RoughPart) -> str | None:
    """Which leftovers give all test pieces; None when they do not. A leftover gives one."""
    length, width = trial.strip
    fits = [
        f"{left.name} of {board.title.split(': ')[0]}"
        for board in layouts
        for left in board.leftovers
        if left.name and left.length >= length - 1e-6 and left.width >= width - 1e-6
    ]
    if len(fits) < trial.count:
        return None
    return "from " + ", ".join(fits[-trial.count :])
