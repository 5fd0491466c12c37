"""How one cell of a table is read.

Lengths are written as people write them, `18 mm`, `3/4 in`, `1 1/4 in`, and read as millimetres; a bare
number is millimetres. Lists are separated by semicolons; a unit after the last item counts for the items that
have none.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Annotated

MM_PER_INCH = 25.4
_LENGTH_UNITS = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": MM_PER_INCH, "ft": 12 * MM_PER_INCH}
_NUMBER = re.compile(r"(?:(\d+)[ -])?(\d+)/(\d+)|\d+(?:\.\d+)?|\.\d+", re.ASCII)
_WITH_UNIT = re.compile(r"(.*?)\s*(mm|cm|m|in|ft)?")


@dataclass(frozen=True, slots=True)
class Cell:
    """How to read a cell.

    Attributes:
        read: gives the value; raises ValueError when the text is not of this form.
        expected: what the cell must hold, for a finding.
        required: whether it may be empty. blank: the value of an empty cell.
    """

    read: Callable[[str], object]
    expected: str
    required: bool = True
    blank: object = None


def number(text: str) -> float:
    """A number of zero or more: decimal, fraction or mixed.

    Raises:
        ValueError: it is none of these.
    """
    found = _NUMBER.fullmatch(text.strip())
    if found is None:
        raise ValueError(text)
    whole, top, bottom = found.groups()
    if top is None:
        return float(found.group())
    if int(bottom) == 0:
        raise ValueError(text)
    return int(whole or 0) + int(top) / int(bottom)


def _positive(read: Callable[[str], float]) -> Callable[[str], float]:
    def above_zero(text: str) -> float:
        value = read(text)
        if value <= 0:
            raise ValueError(text)
        return value

    return above_zero


def _split_unit(text: str) -> tuple[str, str]:
    found = _WITH_UNIT.fullmatch(text.strip())
    if found is None:
        raise ValueError(text)
    return found.group(1), found.group(2) or ""


def length(text: str, unit: str = "mm") -> float:
    """A length [mm].

    Args:
        text: a number, with its unit or without.
        unit: the unit of a bare number [name].

    Raises:
        ValueError: it is not a length.
    """
    value, own = _split_unit(text)
    return number(value) * _LENGTH_UNITS[own or unit]


def _lengths(text: str) -> tuple[float, ...]:
    last = _split_unit(text)[1] or "mm"
    return tuple(length(item, last) for item in text.split(";"))


def _sizes(text: str) -> tuple[tuple[float, float], ...]:
    sizes = []
    for item in text.split(";"):
        value, unit = _split_unit(item)
        long, wide = value.split("x")
        sizes.append((length(long, unit or "mm"), length(wide, unit or "mm")))
    return tuple(sizes)


def _numbers(text: str) -> tuple[float, ...]:
    return tuple(number(item) for item in text.split(";"))


def _whole(text: str) -> int:
    if not text.strip().isascii() or not text.strip().isdigit():
        raise ValueError(text)
    return int(text)


def _yes_no(text: str) -> bool:
    return {"yes": True, "no": False}[text.strip().lower()]


def choice(*words: str, blank: str | None = None) -> Cell:
    """A cell that holds one of these words; it may be empty when there is a word for that."""

    def read(text: str) -> str:
        if text not in words:
            raise ValueError(text)
        return text

    return Cell(read, "one of " + ", ".join(words), required=blank is None, blank=blank)


_A_LENGTH = "a length such as 18 mm or 3/4 in"
_A_NUMBER = "a number such as 0.63 or 1/3"

Text = Annotated[str, Cell(str, "some text")]
Note = Annotated[str, Cell(str, "some text", required=False, blank="")]
Number = Annotated[float, Cell(number, _A_NUMBER)]
Positive = Annotated[float, Cell(_positive(number), f"{_A_NUMBER}, over zero")]
MaybeNumber = Annotated[float | None, Cell(number, _A_NUMBER, required=False)]
FilledNumber = Annotated[float, Cell(number, _A_NUMBER, required=False)]
"""May be empty in the file; the table fills it from other columns."""
Length = Annotated[float, Cell(_positive(length), f"{_A_LENGTH}, over zero")]
MaybeLength = Annotated[float | None, Cell(length, _A_LENGTH, required=False)]
FilledLength = Annotated[float, Cell(length, _A_LENGTH, required=False)]
"""May be empty in the file; the table fills it from other columns."""
Lengths = Annotated[tuple[float, ...], Cell(_lengths, "lengths such as 1/2; 3/4; 1 in")]
Sizes = Annotated[
    tuple[tuple[float, float], ...], Cell(_sizes, "sizes, length x width, such as 96 x 48 in; 2440 x 1220 mm")
]
Numbers = Annotated[tuple[float, ...], Cell(_numbers, "numbers such as 9.4; 8.4; 7.9")]
Whole = Annotated[int, Cell(_whole, "a whole number")]
YesNo = Annotated[bool, Cell(_yes_no, "yes or no")]
