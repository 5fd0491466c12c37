"""Stiffness, creep and allowed stress of a part's stock, along and across its grain."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.checks.context import Context
from boardwright.piece.records import Stock

BENDING_SHARE = (1 - 1.645 * 0.16) / 2.1
SHEAR_SHARE = (1 - 1.645 * 0.14) / 2.1
SHARE_SOURCE = "fifth percentile of the table over 2.1, for ten years of load: ASTM D245 (from memory)"
THREE_PLIES, FIVE_PLIES = 4.5, 7.0
"""Plywood up to these thicknesses [mm] has 3 and 5 plies."""


@dataclass(frozen=True, slots=True)
class Stiffness:
    """How a stock bends one way.

    Attributes:
        E: modulus of elasticity [MPa]. creep: sag added in ten years, of the first.
        bending, shear: allowed stress [MPa]; None where no figure is published in the tables.
        source: of the modulus.
    """

    E: float
    creep: float
    bending: float | None
    shear: float | None
    source: str


def stiffness(c: Context, stock: Stock, along: bool, thickness: float | None = None) -> Stiffness | None:
    """How a stock bends along its grain or across it; None where the tables have no modulus.

    Args:
        c: what the checks read.
        stock: of the part.
        along: True when the part bends along its grain.
        thickness: of the part, where it is another than the stock's [mm].
    """
    if stock.kind == "wood":
        return _wood(c, stock, along)
    row = c.tables.sheets.get(stock.table_key)
    if row is None or row.moe is None:
        return None
    kind = row.kind
    share = 1.0
    if kind == "plywood" and not along:
        t = thickness or stock.thickness
        plies = 3 if t <= THREE_PLIES else 5 if t <= FIVE_PLIES else 7
        share = c.tables.figure(f"plywood_across_{plies}_plies").value
    strength = c.tables.figures.get(f"bending_strength_{kind}")
    creep = c.tables.figures.get(f"creep_{kind}")
    if creep is None:
        return None
    allowed = strength.value * share * BENDING_SHARE if strength else None
    return Stiffness(row.moe * 1000 * share, creep.value, allowed, None, f"E: {row.name} of the sheet table")


def _wood(c: Context, stock: Stock, along: bool) -> Stiffness | None:
    row = c.tables.species.get(stock.table_key)
    if row is None or row.moe is None:
        return None
    stiff = 1.0 if along else c.tables.figure("wood_across_share").value
    strong = 1.0 if along else c.tables.figure("wood_across_strength_share").value
    return Stiffness(
        row.moe * 1000 * stiff,
        c.tables.figure("creep_solid_wood").value,
        row.mor * BENDING_SHARE * strong if row.mor else None,
        row.shear * SHEAR_SHARE if row.shear else None,
        f"E: {row.source.split(';')[0]}",
    )
