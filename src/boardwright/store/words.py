"""Cells as people write them, read and written: the same for the command line and for CSV files.

What is written reads back as exactly what it was: sizes are whole nanometres.
"""

from __future__ import annotations

import math
import re
from datetime import date
from decimal import Decimal, InvalidOperation

from boardwright.core.length_text import LengthError, Units
from boardwright.core.lengths import INCH, Printer, read_length
from boardwright.core.rack import Defect
from boardwright.core.steps import steps_in

_FINEST = INCH / 64
_DEFECT = re.compile(
    r"(?P<length>.+?)\s*[x×]\s*(?P<width>.+?)\s+at\s+(?P<x>.+?)\s*,\s*"
    r"(?P<y>\d*\.?\d[\d ./-]*(?:\"|\s*(?:mm|cm|m|in|ft)\b)?)\s*(?P<what>[^\d;,]?[^;,]*)"
)
DEFECT_FORM = (
    "length x width at distance from the left end, from the near edge, e.g. `6 x 2 at 40, 1 1/2 knot`"
)
MOST = 100_000.0
"""Longest piece and distance [mm]; more is a slip."""


class NotUnderstood(Exception):
    """A cell that cannot be read; the text says what it should be."""


def length(text: str, units: Units, zero: bool = False) -> float:
    """A length [mm], to the nanometre.

    Args:
        text: as people write it.
        units: of a bare number.
        zero: whether nothing is allowed.

    Raises:
        NotUnderstood: it is no length, or not over zero, or longer than any board.
    """
    try:
        mm = round(read_length(text, units), 6)
    except LengthError as error:
        raise NotUnderstood(f"a length such as 3/4 in or 19 mm ({error.why})") from None
    if mm < 0 or (mm == 0 and not zero) or mm > MOST:
        raise NotUnderstood(f"a length {'of 0 or more' if zero else 'over 0'}, up to {MOST / 1000:g} m")
    return mm


def written(mm: float, units: Units) -> str:
    """A length that reads back as itself, with its unit: `7 1/2 in`, `190.5 mm`."""
    if units == "in" and steps_in(mm, _FINEST) is not None:
        text = Printer("in", _FINEST).text(mm)
        if round(read_length(text, "in"), 6) == mm:
            return text
    return f"{mm:.6f}".rstrip("0").rstrip(".") + " mm"


def number(text: str, least: float, most: float) -> float:
    """A decimal number between two limits.

    Raises:
        NotUnderstood: it is none.
    """
    try:
        value = float(text)
    except ValueError:
        value = math.nan
    if not (least <= value <= most) or "_" in text:
        raise NotUnderstood(f"a number from {least:g} to {most:g}")
    return value


def written_number(value: float) -> str:
    """A number that reads back as itself."""
    return f"{value:.0f}" if value == round(value) and abs(value) < 1e15 else repr(value)


def amount(text: str) -> Decimal:
    """An amount of money, kept as it was written.

    Raises:
        NotUnderstood: it is none.
    """
    try:
        value = Decimal(text)
    except InvalidOperation:
        value = Decimal("NaN")
    if not value.is_finite() or not 0 <= value < 1_000_000_000 or not re.fullmatch(r"\d+(\.\d+)?", text):
        raise NotUnderstood("an amount of 0 or more, such as 6.15")
    return value


def day(text: str) -> str:
    """A day as year-month-day.

    Raises:
        NotUnderstood: it is none.
    """
    if not re.fullmatch(r"\d{4}-\d\d-\d\d", text, re.ASCII):
        raise NotUnderstood("a day as year-month-day, such as 2026-03-05")
    try:
        return date.fromisoformat(text).isoformat()
    except ValueError:
        raise NotUnderstood("a day of the calendar, as year-month-day") from None


def one_of(text: str, words: tuple[str, ...]) -> str:
    """One of some words, in any case.

    Raises:
        NotUnderstood: it is none of them.
    """
    if text.lower() not in words:
        raise NotUnderstood("one of " + ", ".join(words))
    return text.lower()


def defects(text: str, units: Units) -> tuple[Defect, ...]:
    """Defects, separated by semicolons.

    Raises:
        NotUnderstood: one of them is not of the form `DEFECT_FORM`.
    """
    return tuple(_defect(one.strip(), units) for one in text.split(";") if one.strip())


def _defect(text: str, units: Units) -> Defect:
    found = _DEFECT.fullmatch(text)
    if found is None:
        raise NotUnderstood(DEFECT_FORM)
    x, y = (length(found[name], units, zero=True) for name in ("x", "y"))
    return Defect(x, y, length(found["length"], units), length(found["width"], units), plain(found["what"]))


def written_defects(marks: tuple[Defect, ...], units: Units) -> str:
    """Defects that read back as themselves."""

    def one(d: Defect) -> str:
        size = f"{written(d.length, units)} x {written(d.width, units)}"
        return f"{size} at {written(d.x, units)}, {written(d.y, units)} {d.what}".rstrip()

    return "; ".join(one(d) for d in marks)


def plain(text: str) -> str:
    """Words with single spaces, no line breaks."""
    return " ".join(text.split())
