"""What the piece carries, as the design file says or as is usual."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.design.load import Design
from boardwright.tables.bundle import Tables

POUND = 0.45359237
GRAVITY = 9.81
Use = str | float
"""A word of the design file, or a load [kg]."""


@dataclass(frozen=True, slots=True)
class Loads:
    """What each shelf, drawer and top carries: a word, or kilograms.

    Attributes:
        given: names of the keys that the file gives.
        persons: who lift the piece.
    """

    shelves: Use = "books"
    drawers: Use = "clothes"
    top: Use = "household"
    persons: int = 2
    given: tuple[str, ...] = ()


def loads_of(design: Design) -> Loads:
    """The loads of a design file, its numbers in kilograms."""
    keys = design.file.loads
    if keys is None:
        return Loads()
    unit = POUND if design.file.units == "in" else 1.0

    def use(given: Use | None, usual: str) -> Use:
        if given is None:
            return usual
        return given if isinstance(given, str) else given * unit

    names = ("shelves", "drawers", "top", "lifts")
    return Loads(
        use(keys.shelves, "books"),
        use(keys.drawers, "clothes"),
        use(keys.top, "household"),
        1 if keys.lifts == "one person" else 2,
        tuple(n for n in names if getattr(keys, n) is not None),
    )


def pressure(tables: Tables, use: Use, length: float, depth: float, height: float) -> float:
    """Even load on a surface [N/mm2].

    Args:
        tables: for the figures.
        use: what it carries.
        length: of the surface; books and china stand in rows along it [mm].
        depth: of the surface [mm].
        height: clear room over it [mm].
    """
    if not isinstance(use, str):
        return use * GRAVITY / (length * depth)
    if use == "nothing":
        return 0.0
    if use in ("books", "china"):
        row = tables.figure("books_row_depth").value
        per_metre = tables.figure(f"{use}_per_length").value
        return per_metre / 1000 * GRAVITY / min(depth, row)
    if use == "clothes":
        return tables.figure("drawer_load_clothing").value * 1e-9 * GRAVITY * height
    return tables.figure("drawer_load_tools" if use == "tools" else "drawer_load_kitchen").value


def said(tables: Tables, use: Use, inches: bool) -> str:
    """The assumption in words, with its figure."""
    if not isinstance(use, str):
        return f"{use / POUND:.0f} lb on it" if inches else f"{use:.0f} kg on it"
    if use == "nothing":
        return "its own weight alone"
    key, over, unit, factor = {
        "books": ("books_per_length", "lb a foot", "kg a metre", POUND / 0.3048),
        "china": ("china_per_length", "lb a foot", "kg a metre", POUND / 0.3048),
        "clothes": ("drawer_load_clothing", "lb a cubic foot", "kg a cubic metre", POUND / 0.3048**3),
        "tools": ("drawer_load_tools", "lb a square foot", "kg a square metre", POUND * GRAVITY / 304.8**2),
        "household": (
            "drawer_load_kitchen",
            "lb a square foot",
            "kg a square metre",
            POUND * GRAVITY / 304.8**2,
        ),
    }[use]
    value = tables.figure(key).value
    if inches:
        number = value / factor
        return f"{use}, {number:.1f}".removesuffix(".0") + f" {over}"
    if use in ("tools", "household"):
        value *= 1e6 / GRAVITY
    return f"{use}, {value:.0f} {unit}"


def source(tables: Tables, use: Use) -> str:
    """Where the load comes from."""
    if not isinstance(use, str):
        return "load as given"
    key = {
        "books": "books_per_length",
        "china": "china_per_length",
        "clothes": "drawer_load_clothing",
        "tools": "drawer_load_tools",
        "household": "drawer_load_kitchen",
    }.get(use)
    return f"load: {tables.figure(key).reason}" if key else "no load"
