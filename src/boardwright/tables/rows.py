"""Rows of a table file, each with its table and its cells, before the cells are read."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.findings import Finding, Place, Severity
from boardwright.tables.forms import RECORDS, TABLE_OF, form_of
from boardwright.tables.split import Spot, UnclosedQuote, split

Cells = dict[str, str]
"""The cells of a row as written, by column; empty ones left out."""


@dataclass(frozen=True, slots=True)
class Row:
    """A row of a file before it is understood: its table, its cells and where each stands."""

    file: str
    table: str
    key: str
    cells: Cells
    start: Spot
    spots: dict[str, Spot]

    def place(self, column: str) -> Place:
        """Where the cell of a column stands, or the row when it has no such cell."""
        spot = self.spots.get(column, self.start)
        return Place(
            self.file, spot.line, spot.column, f"{self.table}.{self.key}.{column}" if self.key else column
        )


def problem(code: str, message: str, place: Place, found: str, expected: str, remedy: str) -> Finding:
    """An error in a table file."""
    return Finding(f"tables.{code}", Severity.ERROR, message, place, found, expected, "", remedy)


def _table_by_header(columns: list[str]) -> str | None:
    """The one table that has all these columns and whose required ones are all among them."""
    fitting = [
        name
        for name in RECORDS
        if set(columns) <= set(form_of(name).cells)
        and all(column in columns for column, cell in form_of(name).cells.items() if cell.required)
    ]
    return fitting[0] if len(fitting) == 1 else None


def rows_of(file: str, text: str) -> tuple[list[Row], list[Finding]]:
    """The rows of a file that can be told apart, and what is wrong with the file and the others."""
    try:
        lines = split(text)
    except UnclosedQuote as quote:
        place = Place(file, quote.line, quote.column)
        return [], [
            problem(
                "unclosed-quote",
                "A quoted cell has no end.",
                place,
                'a " with no partner',
                'a second " at the end of the cell',
                "close the quote, or double a quote that is meant",
            )
        ]
    if not lines:
        return [], [
            problem(
                "empty",
                "The file has no rows.",
                Place(file, 1, 1),
                "nothing",
                "a header and rows",
                "write the column names in the first line",
            )
        ]
    header, body = lines[0], lines[1:]
    columns = [spot.text for spot in header]
    found = [
        problem(
            "duplicate-column",
            f"The column {spot.text} stands twice.",
            Place(file, spot.line, spot.column),
            spot.text,
            "each column once",
            "delete one of the two",
        )
        for i, spot in enumerate(header)
        if spot.text and spot.text in columns[:i]
    ]
    if found:
        return [], found
    table = ""
    if columns[0] != "table":
        table = _table_by_header(columns) or ""
        if not table:
            place = Place(file, header[0].line, header[0].column)
            return [], [
                problem(
                    "unknown-table",
                    "The columns of this file fit no single table.",
                    place,
                    ", ".join(columns),
                    "the columns of one table, or a first column named table",
                    "add a first column `table` with one of " + ", ".join(sorted(TABLE_OF)),
                )
            ]
    else:
        found += _unknown_columns(file, header)
    rows = []
    for spots in body:
        row, problems = _row(file, table, columns, spots)
        found += problems
        if row is not None:
            rows.append(row)
    return rows, found


def _unknown_columns(file: str, header: list[Spot]) -> list[Finding]:
    known = {"table"}.union(*(form_of(name).cells for name in RECORDS))
    return [
        problem(
            "unknown-column",
            f"No table has a column {spot.text or 'without a name'}.",
            Place(file, spot.line, spot.column),
            spot.text,
            "a column of a table",
            "correct its name or delete it",
        )
        for spot in header
        if spot.text not in known
    ]


def _row(file: str, table: str, columns: list[str], spots: list[Spot]) -> tuple[Row | None, list[Finding]]:
    start = spots[0]
    extra = next((spot for spot in spots[len(columns) :] if spot.text), None)
    if extra is not None:
        return None, [
            problem(
                "extra-cell",
                "The row has more cells than the header.",
                Place(file, extra.line, extra.column),
                f"{len(spots)} cells",
                f"{len(columns)} cells",
                "put a cell that holds a comma in quotes",
            )
        ]
    at = dict(zip(columns, spots, strict=False))
    if not table:
        word = at["table"].text
        if word not in TABLE_OF:
            return None, [
                problem(
                    "unknown-table",
                    f"There is no table {word or 'without a name'}.",
                    Place(file, start.line, start.column, "table"),
                    word,
                    "one of " + ", ".join(sorted(TABLE_OF)),
                    "correct the name of the table",
                )
            ]
        table = TABLE_OF[word]
    own = form_of(table).cells
    cells = {name: spot.text for name, spot in at.items() if spot.text and name in own}
    row = Row(file, table, cells.get("key", ""), cells, start, at)
    foreign = [
        problem(
            "unknown-column",
            f"The table {table} has no column {name}.",
            row.place(name),
            spot.text,
            "a column of " + ", ".join(own),
            "leave the cell empty",
        )
        for name, spot in at.items()
        if spot.text
        and name != "table"
        and name not in own
        and any(name in form_of(t).cells for t in RECORDS)
    ]
    if not row.key:
        foreign.append(
            problem(
                "missing-value",
                "The row has no key.",
                row.place("key"),
                "an empty cell",
                "a name of its own for the row",
                "fill in the key",
            )
        )
    return (None, foreign) if foreign else (row, [])
