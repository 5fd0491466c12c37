"""Which tables there are, and which columns each has."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Any, get_type_hints

from boardwright.tables.cells import Cell
from boardwright.tables.records import (
    BoardSize,
    Climate,
    Dowel,
    Figure,
    Finish,
    Glue,
    Grade,
    LumberClass,
    MoistureRange,
    Screw,
    Sheet,
    Slide,
    Species,
)

RECORDS: dict[str, type[Any]] = {
    "species": Species,
    "sheets": Sheet,
    "screws": Screw,
    "dowels": Dowel,
    "glues": Glue,
    "slides": Slide,
    "lumber": LumberClass,
    "boards": BoardSize,
    "grades": Grade,
    "finishes": Finish,
    "moisture": MoistureRange,
    "climate": Climate,
    "figures": Figure,
}
"""Record of each table, by the table's name."""

FILES: dict[str, tuple[str, ...]] = {
    **{name: (name,) for name in RECORDS if name != "figures"},
    "figures": ("allowances", "clearances", "proportions", "loads", "shop"),
}
"""Files of the package that make up each table."""

TABLE_OF: dict[str, str] = {word: table for table, files in FILES.items() for word in (table, *files)}
"""The table that a word in a `table` column means: its own name or the name of one of its files."""


@dataclass(frozen=True, slots=True)
class Form:
    """The columns of a table: how each is read, and which record a row becomes."""

    table: str
    record: type[Any]
    cells: dict[str, Cell]


@cache
def form_of(table: str) -> Form:
    """The columns of the table of this name."""
    record = RECORDS[table]
    hints = get_type_hints(record, include_extras=True)
    return Form(table, record, {name: hint.__metadata__[0] for name, hint in hints.items()})
