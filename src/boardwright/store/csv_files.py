"""A rack as a CSV file, and back: every problem of a file at once, and nothing written unless all of it is."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence
from dataclasses import dataclass

from sqlalchemy import Connection

from boardwright.core.findings import Finding, Place, Severity, has_errors
from boardwright.core.length_text import Units
from boardwright.core.rack import Price, Rack, RackPiece, Supply
from boardwright.store.entries import COLUMNS, Entry, cells_of, read_entry
from boardwright.store.opening import Refused, Store
from boardwright.store.pieces import insert_pieces, name_in_use, read_pieces
from boardwright.store.supplies import put_price, put_supply, read_prices, read_supplies
from boardwright.tables.bundle import Tables
from boardwright.tables.split import Spot, UnclosedQuote, split


@dataclass(frozen=True, slots=True)
class Imported:
    """What came of an import: names of the pieces that are new; entries added, and those that were there."""

    names: tuple[str, ...] = ()
    added: int = 0
    same: int = 0


def export_csv(rack: Rack, units: Units) -> str:
    """The rack as CSV text, in a steady order.

    Args:
        rack: what is on it.
        units: to write lengths in; each has its unit beside it.
    """
    out = io.StringIO()
    writer = csv.DictWriter(out, COLUMNS, lineterminator="\n")
    writer.writeheader()
    entries: list[Entry] = [*rack.pieces, *rack.supplies, *rack.prices]
    for entry in entries:
        writer.writerow(cells_of(entry, units))
    return out.getvalue()


def import_csv(store: Store, text: str, file: str, tables: Tables) -> tuple[Imported, list[Finding]]:
    """Put the entries of a CSV file on the rack: all of them, or none.

    An entry that is on the rack already, name and all, is left as it is. A supply or a price replaces the one
    of its name or day.

    Args:
        store: the rack.
        text: of the file.
        file: its name, for places.
        tables: woods, sheets and thickness classes that are known.

    Returns:
        What was added; findings with line and column, errors first when nothing was.
    """
    entries, findings = read_csv(text, file, store.units, tables)
    if has_errors(findings):
        return Imported(), findings
    try:
        with store.writing() as connection:
            done = _put(store, connection, entries)
    except Refused as refused:
        return Imported(), [*refused.findings, *findings]
    return done, findings


def _put(store: Store, connection: Connection, entries: Sequence[tuple[Entry, Place]]) -> Imported:
    there = {p.name: (p, taken) for p, taken in read_pieces(connection, taken=True)}
    new: list[RackPiece] = []
    wrong: list[Finding] = []
    same = 0
    for entry, place in entries:
        if not isinstance(entry, RackPiece):
            continue
        if entry.name in there:
            if there[entry.name] == (entry, None):
                same += 1
            else:
                wrong.append(name_in_use(store.name, entry.name, place))
            continue
        new.append(entry)
    if wrong:
        raise Refused(*wrong)
    others = {*read_supplies(connection), *read_prices(connection)}
    added = 0
    for entry, _ in entries:
        if isinstance(entry, RackPiece):
            continue
        if entry in others:
            same += 1
        elif isinstance(entry, Supply):
            put_supply(connection, entry)
            added += 1
        else:
            put_price(connection, entry)
            added += 1
    named = insert_pieces(connection, [p for p in new if p.name] + [p for p in new if not p.name])
    return Imported(tuple(p.name for p in named), added + len(named), same)


def read_csv(
    text: str, file: str, units: Units, tables: Tables
) -> tuple[list[tuple[Entry, Place]], list[Finding]]:
    """The entries of a CSV file with their places, and everything that is wrong with it.

    Args:
        text: of the file.
        file: its name, for places.
        units: of bare numbers.
        tables: woods, sheets and thickness classes that are known.
    """
    try:
        lines = split(text)
    except UnclosedQuote as quote:
        place = Place(file, quote.line, quote.column)
        return [], [_bad_file("a quoted cell has no end", place, 'a " with no partner', "a closing quote")]
    if not lines:
        columns = ", ".join(COLUMNS)
        return [], [_bad_file("the file has no rows", Place(file, 1, 1), "nothing", f"a header: {columns}")]
    head, body = lines[0], lines[1:]
    findings = _head_findings(file, head)
    if findings:
        return [], findings
    entries: list[tuple[Entry, Place]] = []
    seen: dict[tuple[object, ...], int] = {}
    for row in body:
        found, more = _row(file, head, row, units, tables)
        findings += more
        for entry in found:
            place = Place(file, row[0].line, row[0].column, "name")
            key = _key(entry)
            if key is not None and key in seen:
                findings.append(_twice(key, place, seen[key]))
            elif key is not None:
                seen[key] = place.line
            entries.append((entry, place))
    return entries, findings


def _key(entry: Entry) -> tuple[object, ...] | None:
    """What must be in a file once only."""
    if isinstance(entry, RackPiece):
        return ("piece", entry.name) if entry.name else None
    if isinstance(entry, Price):
        return ("price", entry.item, entry.thickness, entry.unit, entry.day, entry.seller)
    return ("supply", entry.name)


def _row(
    file: str, head: Sequence[Spot], row: Sequence[Spot], units: Units, tables: Tables
) -> tuple[list[Entry], list[Finding]]:
    if len(row) > len(head):
        extra = row[len(head)]
        beyond = Place(file, extra.line, extra.column)
        return [], [_bad_file("the row has more cells than the header", beyond, extra.text, "as many")]
    cells = {h.text.lower(): spot.text for h, spot in zip(head, row, strict=False)}
    spots = {h.text.lower(): spot for h, spot in zip(head, row, strict=False)}

    def place(column: str) -> Place:
        spot = spots.get(column, row[0])
        return Place(file, spot.line, spot.column, column)

    return read_entry(cells, units, tables, place)


def _head_findings(file: str, head: Sequence[Spot]) -> list[Finding]:
    names = [h.text.lower() for h in head]
    found = []
    for n, spot in enumerate(head):
        place = Place(file, spot.line, spot.column)
        if names[n] not in COLUMNS:
            found.append(
                _bad_file(f"the column `{spot.text}` is not known", place, spot.text, ", ".join(COLUMNS))
            )
        elif names[n] in names[:n]:
            found.append(_bad_file(f"the column `{spot.text}` stands twice", place, spot.text, "once"))
    if "kind" not in names and not found:
        place = Place(file, head[0].line, head[0].column)
        found.append(_bad_file("there is no column `kind`", place, ", ".join(names), "a column `kind`"))
    return found


def _bad_file(message: str, place: Place, found: str, expected: str) -> Finding:
    return Finding(
        "rack.bad-file", Severity.ERROR, message, place, found, expected,
        remedy="correct the file: comma-separated, column names in the first line; nothing was written",
    )  # fmt: skip


def _twice(key: tuple[object, ...], place: Place, first: int) -> Finding:
    return Finding(
        "rack.twice", Severity.ERROR, f"the {key[0]} `{key[1]}` stands twice in the file", place,
        f"also in line {first}", "once", remedy="rename or delete one of them; nothing was written",
    )  # fmt: skip
