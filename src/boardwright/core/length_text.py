"""One written length: what it says, in which unit, and where it ends in the text.

The trade's writing is kept: `1-3/8` without spaces is one and three eighths, `2'-6"` without spaces is two
feet six inches (common practice). A hyphen with a space on both sides is a minus sign and ends the length.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

Units = Literal["in", "mm"]
Form = Literal["decimal", "fraction", "mixed"]

_GLYPHS = {
    "½": (1, 2), "⅓": (1, 3), "⅔": (2, 3), "¼": (1, 4), "¾": (3, 4), "⅕": (1, 5), "⅖": (2, 5), "⅗": (3, 5),
    "⅘": (4, 5), "⅙": (1, 6), "⅚": (5, 6), "⅐": (1, 7), "⅛": (1, 8), "⅜": (3, 8), "⅝": (5, 8), "⅞": (7, 8),
    "⅑": (1, 9), "⅒": (1, 10),
}  # fmt: skip
GLYPHS = "".join(_GLYPHS)
"""The single characters that are fractions."""

_SAME = str.maketrans(
    {
        **dict.fromkeys("−‐‑–—", "-"),
        **dict.fromkeys("′’‘", "'"),
        **dict.fromkeys("″”“", '"'),
        **dict.fromkeys("⁄∕", "/"),
        "×": "*",
    }
)
_NUMBER = re.compile(
    rf"""
    (?P<whole>[0-9]+)(?P<join>[ ]*-[ ]*|[ ]+|(?=[{GLYPHS}]))
        (?:(?P<top>[0-9]+)/(?P<bottom>[0-9]+)(?!\.?[0-9])|(?P<glyph>[{GLYPHS}]))
    | (?P<over>[0-9]+)/(?P<under>[0-9]+)(?!\.?[0-9])
    | (?P<alone>[{GLYPHS}])
    | (?P<decimal>[0-9]+\.[0-9]+|\.[0-9]+|[0-9]+)
    """,
    re.VERBOSE,
)
_UNIT = re.compile(
    r"""[ ]*(?:
      (?P<mm>mm|millimet(?:er|re)s?) | (?P<cm>cm|centimet(?:er|re)s?) | (?P<m>met(?:er|re)s?|m)
    | (?P<in>inches|inch|in\.(?![0-9])|in|"|'') | (?P<ft>feet|foot|ft\.(?![0-9])|ft|')
    )(?![A-Za-z_])""",
    re.VERBOSE | re.IGNORECASE | re.ASCII,
)
_INCHES_AFTER = re.compile(rf"(?P<gap>[ ]*-[ ]*|[ ]*)(?=[0-9{GLYPHS}]|\.[0-9])")
_SCALE = {"mm": Fraction(1), "cm": Fraction(10), "m": Fraction(1000), "in": Fraction(1), "ft": Fraction(12)}
_MOST_DIGITS = 12


class LengthError(ValueError):
    """A text that is refused as a length.

    Attributes:
        found: the text as it was written.
        why: why it is refused.
        instead: what to write instead.
    """

    def __init__(self, found: str, why: str, instead: str) -> None:
        self.found = found if len(found) <= 60 else found[:57] + "..."
        self.why = why
        self.instead = instead
        super().__init__(f"found '{self.found}': {why}; write {instead}")


@dataclass(frozen=True, slots=True)
class WrittenLength:
    """One number as it stands in a text, with its unit if it has one.

    Attributes:
        value: in inches for `in`, in millimetres for `mm`, a bare number for "".
        unit: `in` (feet too), `mm` (cm and m too), or "".
        form: how the number is written.
        text: the same, written evenly.
        end: index in the text where it ends.
    """

    value: Fraction
    unit: Literal["in", "mm", ""]
    form: Form
    text: str
    end: int


def clean(text: str) -> str:
    """Typographic quotes, dashes and spaces made plain; every character keeps its column."""
    return "".join(" " if c.isspace() else c for c in text).translate(_SAME)


def scan(text: str, at: int = 0) -> WrittenLength | None:
    """The written length that starts at an index of a cleaned text, or None when no number starts there.

    Raises:
        LengthError: a number starts there, but it cannot be trusted.
    """
    number = _number(text, at)
    if number is None:
        return None
    unit = _UNIT.match(text, number.end)
    if unit is None:
        return number
    name = str(unit.lastgroup)
    if name == "ft":
        after = _INCHES_AFTER.match(text, unit.end())
        if after and not _is_minus(after["gap"]):
            return _feet_and_inches(text, at, number, after)
    metric = name in ("mm", "cm", "m")
    if metric and number.form != "decimal":
        raise LengthError(
            text[at : unit.end()].strip(),
            f"fractions are read as inches in the shop, {name} are written as decimals",
            f"{_short(number.value)} {name}, or {number.text} in",
        )
    value = number.value * _SCALE[name]
    return WrittenLength(value, "mm" if metric else "in", number.form, f"{number.text} {name}", unit.end())


def starts_number(text: str, at: int) -> bool:
    """True when a number starts at an index of a cleaned text."""
    return _NUMBER.match(text, at) is not None


def _number(text: str, at: int) -> WrittenLength | None:
    """The bare number that starts at an index."""
    m = _NUMBER.match(text, at)
    if m is None:
        return None
    found = m.group()
    if any(len(run) > _MOST_DIGITS for run in re.findall("[0-9]+", found)):
        raise LengthError(found, f"a size has no more than {_MOST_DIGITS} digits", "a shorter number")
    if m["decimal"]:
        shown = "0" + found if found.startswith(".") else found
        return WrittenLength(Fraction(found), "", "decimal", shown, m.end())
    if m["over"] or m["alone"]:
        top, bottom = _GLYPHS[m["alone"]] if m["alone"] else (int(m["over"]), int(m["under"]))
        _check_bottom(found, bottom)
        return WrittenLength(Fraction(top, bottom), "", "fraction", f"{top}/{bottom}", m.end())
    whole, join = int(m["whole"]), m["join"]
    top, bottom = _GLYPHS[m["glyph"]] if m["glyph"] else (int(m["top"]), int(m["bottom"]))
    if "-" in join and join != "-":
        if _is_minus(join):
            return WrittenLength(Fraction(whole), "", "decimal", m["whole"], m.end("whole"))
        raise LengthError(
            found,
            "a hyphen with a space on one side only is either a mixed number or a subtraction",
            f"{whole}-{top}/{bottom} for the one, {whole} - {top}/{bottom} for the other",
        )
    _check_bottom(found, bottom)
    if top >= bottom:
        mixed = whole + Fraction(top, bottom)
        minus = f", or {whole} - {top}/{bottom} with spaces to subtract" if "-" in join else ""
        raise LengthError(
            found,
            "an improper fraction after a whole number looks like a slip",
            f"{_short(mixed)} if so meant{minus}",
        )
    return WrittenLength(whole + Fraction(top, bottom), "", "mixed", f"{whole} {top}/{bottom}", m.end())


def _feet_and_inches(text: str, at: int, feet: WrittenLength, after: re.Match[str]) -> WrittenLength:
    """Feet that have been read, and the inches that follow them."""
    inches = _number(text, after.end())
    if inches is None:  # the pattern of `after` saw a digit, so this cannot be
        raise LengthError(text[at:], "feet without readable inches", "2 ft 6 in")
    unit = _UNIT.match(text, inches.end)
    end = unit.end() if unit else inches.end
    found = text[at:end].strip()
    if "-" in after["gap"] and after["gap"] != "-":
        raise LengthError(
            found,
            "a hyphen with a space on one side only either joins feet and inches or subtracts",
            f"{feet.text}'-{inches.text}\" for the one, {feet.text} ft - {inches.text} in for the other",
        )
    if unit is not None and unit.lastgroup != "in":
        raise LengthError(found, "only inches follow feet", "one unit, or a sum such as 2 ft + 19 mm")
    if feet.value.denominator != 1 or feet.form != "decimal" or "." in feet.text:
        raise LengthError(found, "feet are whole when inches follow", "2 ft 6 in, or 2.5 ft alone")
    total = feet.value * 12 + inches.value
    if inches.value >= 12:
        more, rest = divmod(total, 12)
        raise LengthError(
            found, "inches after feet are less than 12", f"{more} ft {_short(rest)} in, or {_short(total)} in"
        )
    return WrittenLength(total, "in", inches.form, f"{feet.text} ft {inches.text} in", end)


def _is_minus(gap: str) -> bool:
    """True for a hyphen with a space on both sides."""
    return "-" in gap and gap.startswith(" ") and gap.endswith(" ")


def _check_bottom(found: str, bottom: int) -> None:
    if bottom == 0:
        raise LengthError(found, "a fraction over zero has no value", "a fraction such as 1/2")


def _short(value: Fraction) -> str:
    """A number as a short decimal; a fraction when the decimal does not end soon."""
    text = f"{float(value):.6f}".rstrip("0").rstrip(".")
    return text if Fraction(text) == value else f"about {text}"
