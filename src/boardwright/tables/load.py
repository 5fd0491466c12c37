"""Reads the tables of the package and those of a user. A bad row gives its findings and harms no other."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from importlib.resources import files
from typing import Any

from boardwright.core.findings import Finding, ordered
from boardwright.tables.bundle import Tables
from boardwright.tables.complete import MissingValue, complete
from boardwright.tables.forms import FILES, RECORDS, Form, form_of
from boardwright.tables.rows import Cells, Row, problem, rows_of

_OWN_TO_OLD_VALUE = {"figures": ("value", "unit"), "sheets": ("nominal",)}
"""Columns that, when a user changes them, make the old range meaningless."""
_RANGE = ("low", "high", "actual_min", "actual_max", "tolerance_plus", "tolerance_minus")


def _build(form: Form, row: Row, cells: Cells) -> tuple[Any, list[Finding]]:
    """The record of a row, or None and what is wrong with it."""
    values: dict[str, Any] = {}
    found = []
    for name, cell in form.cells.items():
        text = cells.get(name, "")
        if not text and not cell.required:
            values[name] = cell.blank
            continue
        try:
            if not text:
                raise MissingValue(name, cell.expected)
            values[name] = cell.read(text)
        except MissingValue as missing:
            found.append(_missing(row, missing))
        except (ValueError, KeyError):
            found.append(
                problem(
                    "bad-value",
                    f"{name} of {row.key} is not understood.",
                    row.place(name),
                    text,
                    cell.expected,
                    f"write {cell.expected}",
                )
            )
    if found:
        return None, found
    try:
        return form.record(**complete(form.record, values)), []
    except MissingValue as missing:
        return None, [_missing(row, missing)]


def _missing(row: Row, missing: MissingValue) -> Finding:
    return problem(
        "missing-value",
        f"{missing.column} of {row.key} is empty.",
        row.place(missing.column),
        "an empty cell",
        missing.expected,
        f"fill in {missing.column}",
    )


@cache
def _package_rows() -> tuple[tuple[str, str, str], ...]:
    """Table, file name and text of each file of the package."""
    data = files("boardwright.tables") / "data"
    return tuple(
        (table, f"{name}.csv", (data / f"{name}.csv").read_text(encoding="utf-8"))
        for table, names in FILES.items()
        for name in names
    )


def _kept(old: Cells, row: Row) -> Cells:
    """What stays of the row that a row changes: not the range of a figure that it gives anew."""
    if any(column in row.cells for column in _OWN_TO_OLD_VALUE.get(row.table, ())):
        return {column: text for column, text in old.items() if column not in _RANGE}
    return old


def _add(
    raw: dict[str, dict[str, Cells]], built: dict[str, dict[str, Any]], rows: list[Row]
) -> list[Finding]:
    """Adds the rows of one file, each over the row of the same key; what is wrong comes back."""
    found = []
    seen: set[tuple[str, str]] = set()
    for row in rows:
        if (row.table, row.key) in seen:
            found.append(
                problem(
                    "duplicate-key",
                    f"The key {row.key} stands twice in the table {row.table}.",
                    row.place("key"),
                    row.key,
                    "each key once in a file",
                    "rename or delete one of them",
                )
            )
            continue
        seen.add((row.table, row.key))
        cells = {**_kept(raw[row.table].get(row.key, {}), row), **row.cells}
        record, problems = _build(form_of(row.table), row, cells)
        found += problems
        if not problems:
            raw[row.table][row.key] = cells
            built[row.table][row.key] = record
    return found


@cache
def _packaged() -> tuple[dict[str, dict[str, Cells]], dict[str, dict[str, Any]]]:
    raw: dict[str, dict[str, Cells]] = {name: {} for name in RECORDS}
    built: dict[str, dict[str, Any]] = {name: {} for name in RECORDS}
    for _, name, text in _package_rows():
        rows, found = rows_of(name, text)
        found += _add(raw, built, rows)
        if found:
            raise RuntimeError(found[0].text())
    return raw, built


@cache
def default_tables() -> Tables:
    """The tables of the package, read once."""
    return Tables(**_packaged()[1])


def load_tables(extra: Sequence[tuple[str, str]] = ()) -> tuple[Tables, list[Finding]]:
    """The tables of the package with a user's own rows added.

    A row adds a key, or changes the row that has the key already: its empty cells keep what stood there. A
    file holds one table, known by its header, or several when its first column is `table`.

    Args:
        extra: file name and text of each of the user's files, in order; later ones win.

    Returns:
        The tables, and a finding for every row, cell or header that is not understood.
    """
    if not extra:
        return default_tables(), []
    raw, built = ({name: dict(rows) for name, rows in part.items()} for part in _packaged())
    found: list[Finding] = []
    for file, text in extra:
        rows, problems = rows_of(file, text)
        found += problems
        for row in rows:
            if "source" not in row.cells:
                row.cells["source"] = file
            if "provenance" not in row.cells:
                row.cells["provenance"] = "the user's own figure"
        found += _add(raw, built, rows)
    return Tables(**built), ordered(found)
