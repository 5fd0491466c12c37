"""Cells that a table fills from others, once a row has been read."""

from __future__ import annotations

from typing import Any

from boardwright.tables.records import Figure, Sheet, Species

_USUAL_START = 30.0
"""Moisture at which shrinkage starts [%], Wood Handbook FPL-GTR-190 (2010), table 13-5 footnote."""

_TO_OWN_UNIT = {
    "in": ("mm", 25.4),
    "ft": ("mm", 304.8),
    "psf": ("N/mm2", 4.4482216152605 / 304.8**2),
    "psi": ("N/mm2", 4.4482216152605 / 25.4**2),
    "lb": ("kg", 0.45359237),
    "lb/ft": ("kg/m", 0.45359237 / 0.3048),
    "lb/ft3": ("kg/m3", 0.45359237 / 0.3048**3),
}


class MissingValue(ValueError):
    """A cell is empty, and nothing else in its row can stand for it."""

    def __init__(self, column: str, expected: str) -> None:
        super().__init__(column)
        self.column = column
        self.expected = expected


def _coefficient(shrinkage: float, start: float) -> float:
    """Change per 1 % of moisture from total shrinkage [%]; `formulas.movement` has the published equation."""
    return 1 / (start * 100 / shrinkage - start + 10)


def _species(values: dict[str, Any]) -> dict[str, Any]:
    values["shrink_start"] = values["shrink_start"] or _USUAL_START
    for way in ("radial", "tangential"):
        if values[way] is None:
            shrinkage = values[f"shrink_{way}"]
            if not shrinkage:
                raise MissingValue(
                    way, f"the change per 1 % of moisture, or shrink_{way} to work it out from"
                )
            values[way] = _coefficient(shrinkage, values["shrink_start"])
            values["coefficients"] = "derived"
    return values


def _sheet(values: dict[str, Any]) -> dict[str, Any]:
    nominal, actual = values["nominal"], values["actual"]
    plus, minus = values["tolerance_plus"], values["tolerance_minus"]
    low, high = values["actual_min"], values["actual_max"]
    if low is None:
        low = actual if minus is None else nominal - minus
    if high is None:
        high = actual if plus is None else nominal + plus
    values["actual_min"], values["actual_max"] = min(low, actual), max(high, actual)
    return values


def _figure(values: dict[str, Any]) -> dict[str, Any]:
    unit, factor = _TO_OWN_UNIT.get(values["unit"], (values["unit"], 1.0))
    values["unit"] = unit
    for name in ("value", "low", "high"):
        if values[name] is not None:
            values[name] *= factor
    return values


def complete(record: type, values: dict[str, Any]) -> dict[str, Any]:
    """The values of a row with its open cells filled and its figures in Boardwright's own units.

    Raises:
        MissingValue: a cell is needed and cannot be filled.
    """
    if record is Species:
        return _species(values)
    if record is Sheet:
        return _sheet(values)
    if record is Figure:
        return _figure(values)
    return values
