"""Comma-separated text (RFC 4180) into cells that know their line and column."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Spot:
    """A cell: its text without quotes and surrounding spaces, its line and column counted from 1."""

    text: str
    line: int
    column: int


class UnclosedQuote(ValueError):
    """A quoted cell has no end."""

    def __init__(self, line: int, column: int) -> None:
        super().__init__(f"line {line}, column {column}")
        self.line = line
        self.column = column


def split(text: str) -> list[list[Spot]]:
    """The rows of a file, empty ones left out.

    Raises:
        UnclosedQuote: a quote is opened and never closed.
    """
    text = text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
    rows: list[list[Spot]] = []
    row: list[Spot] = []
    at, line, line_start = 0, 1, 0
    while at < len(text):
        start, start_line, start_column = at, line, at - line_start + 1
        if text[at] == '"':
            end = _closing(text, at + 1)
            if end < 0:
                raise UnclosedQuote(start_line, start_column)
            inside = text[at + 1 : end]
            if "\n" in inside:
                line += inside.count("\n")
                line_start = at + 1 + inside.rindex("\n") + 1
            at = end + 1
            while at < len(text) and text[at] not in ",\n":
                at += 1
            cell = inside.replace('""', '"') + text[end + 1 : at]
        else:
            while at < len(text) and text[at] not in ",\n":
                at += 1
            cell = text[start:at]
        row.append(Spot(cell.strip(), start_line, start_column))
        if at < len(text) and text[at] == "," and (at + 1 == len(text) or text[at + 1] == "\n"):
            row.append(Spot("", line, at - line_start + 2))
            at += 1
        if at >= len(text) or text[at] == "\n":
            rows.append(row)
            row = []
            line, line_start = line + 1, at + 1
        at += 1
    return [r for r in rows if any(spot.text for spot in r)]


def _closing(text: str, at: int) -> int:
    """Where the quote that opened before `at` closes; -1 when nowhere."""
    while True:
        at = text.find('"', at)
        if at < 0 or text[at + 1 : at + 2] != '"':
            return at
        at += 2
