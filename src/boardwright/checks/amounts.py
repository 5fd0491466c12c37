"""Masses, moments, stresses and moduli in the units of the plan."""

from __future__ import annotations

from boardwright.checks.context import Context
from boardwright.checks.loads import POUND

PSI = 4.4482216152605 / 25.4**2
FOOT_POUND = 4.4482216152605 * 304.8


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
