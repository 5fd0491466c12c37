"""Masses, moments, stresses and moduli in the units of the plan."""

from __future__ import annotations

from boardwright.checks.context import Context
from boardwright.checks.loads import POUND

POUND_FORCE = 4.4482216152605
PSI = POUND_FORCE / 25.4**2
FOOT_POUND = POUND_FORCE * 304.8


def mass_text(c: Context, kg: float) -> str:
    """A mass [kg]."""
    return f"{kg / POUND:.0f} lb" if c.piece.units == "in" else f"{kg:.1f} kg".replace(".0 kg", " kg")


def mass_down(c: Context, kg: float) -> str:
    """A greatest mass [kg], in whole units."""
    return f"{int(kg / POUND)} lb" if c.piece.units == "in" else f"{int(kg)} kg"


def moment_text(c: Context, newton_mm: float) -> str:
    """A moment [N mm]."""
    return f"{newton_mm / FOOT_POUND:.1f} lb ft" if c.piece.units == "in" else f"{newton_mm / 1000:.1f} N m"


def stress_text(c: Context, mpa: float) -> str:
    """A stress [MPa]."""
    return f"{round(mpa / PSI, -1):.0f} psi" if c.piece.units == "in" else f"{mpa:.1f} N/mm2"


def modulus_text(c: Context, mpa: float) -> str:
    """A modulus of elasticity [MPa]."""
    return f"{mpa / PSI / 1e6:.2f} million psi" if c.piece.units == "in" else f"{mpa:.0f} N/mm2"


def told(units: str, value: float, unit: str) -> str:
    """A figure of a margin in the units of the plan.

    Args:
        units: `in` or `mm`.
        value: in its unit.
        unit: `mm`, `N`, `N m`, `kg`, `N/mm2`, `share` (printed in hundredths), or a word that is no
            unit of measure, printed as it is.
    """
    if units == "in" and unit in IN_INCHES:
        name, factor, places = IN_INCHES[unit]
        return f"{value / factor:.{places}f} {name}"
    if unit == "share":
        return f"{value * 100:.2g} %"
    places = {"mm": 2, "N/mm2": 2, "kg": 1, "N m": 1}.get(unit, 0 if unit == "N" else 2)
    return f"{value:.{places}f} {unit}".removesuffix(" -")


IN_INCHES = {
    "mm": ("in", 25.4, 3),
    "N": ("lb", POUND_FORCE, 0),
    "N m": ("lb ft", FOOT_POUND / 1000, 1),
    "kg": ("lb", POUND, 0),
    "N/mm2": ("psi", PSI, 0),
}
"""Units of margins in plans in inches: name, factor, decimal places."""
