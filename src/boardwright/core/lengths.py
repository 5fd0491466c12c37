"""Lengths: read as people write them, printed as the shop reads them, settled on the step of the plan.

Inside everything is millimetres. An inch is 25.4 mm exactly (international inch).
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from fractions import Fraction

from boardwright.core.length_text import LengthError, Units, WrittenLength, clean, scan, starts_number
from boardwright.core.steps import on_grid, settle, share_out, steps_in

__all__ = ["INCH", "LengthError", "Printer", "Units", "read_length", "read_step", "settle", "share_out"]

INCH = 25.4
"""One inch [mm]."""
_LONGEST = 1e9
_INCH_STEPS = (2, 4, 8, 16, 32, 64)
_MM_STEPS = (0.1, 0.2, 0.5, 1.0)
_OUTSIDE_STEP = INCH / 16


def in_mm(number: WrittenLength, units: Units) -> float:
    """A written length [mm]; a bare number is in `units`.

    Raises:
        LengthError: a bare fraction where the units are millimetres.
    """
    unit = number.unit or units
    if unit == "mm" and number.form != "decimal":
        value = f"{float(number.value):.6f}".rstrip("0").rstrip(".")
        raise LengthError(
            number.text,
            "the file is in mm, and fractions are read as inches in the shop",
            f"{number.text} in for inches, or the decimal {value} for mm",
        )
    return float(number.value) * (INCH if unit == "in" else 1.0)


def read_length(text: str | int | float, units: Units) -> float:
    """A length as people type it.

    `3/4`, `1 3/8`, `1-3/8"` (no spaces: one and three eighths, as the trade writes it), `2' 6"`, `2 ft 6 in`,
    `19 mm`, `1.9 cm`, `.75`, `1¾`; a sign may lead.

    Args:
        text: the text, or a bare number in `units`.
        units: what a bare number means, `in` or `mm`.

    Returns:
        The length [mm].

    Raises:
        LengthError: it is no length, or can be read in two ways.
    """
    if not isinstance(text, str):
        return _read_number(text, units)
    plain = clean(text)
    body = plain.strip()
    if not body:
        raise LengthError(text, "nothing is written here", "a length such as 3/4 in or 19 mm")
    sign = -1.0 if body[0] == "-" else 1.0
    if body[0] in "+-":
        body = body[1:].lstrip()
    if "," in body:
        decimal = body.count(",") == 1 and "." not in body
        point = f"{body.replace(',', '.')} with a point, or " if decimal else ""
        raise LengthError(
            text.strip(),
            "a comma may be a decimal sign or a separator",
            f"{point}{body.replace(',', '')} with no separator",
        )
    number = scan(body)
    if number is None:
        raise LengthError(text.strip(), "no number starts here", "a length such as 3/4 in or 19 mm")
    rest = body[number.end :].strip()
    if rest:
        raise _refused(text.strip(), number, rest)
    return _checked(sign * in_mm(number, units), text)


def _read_number(value: int | float, units: Units) -> float:
    """A number that is no text: in `units`."""
    if isinstance(value, bool):
        raise LengthError(str(value), "yes or no is no length", "a length such as 3/4 in or 19 mm")
    if not isinstance(value, int | float):
        raise LengthError(str(value), "this is neither text nor a number", "a length such as 3/4 in or 19 mm")
    if abs(value) > _LONGEST or not math.isfinite(value):
        raise LengthError(f"{value:.0f}" if isinstance(value, float) else "a whole number",
                          "it is too large to be a size", "a length such as 3/4 in or 19 mm")  # fmt: skip
    return float(value) * (INCH if units == "in" else 1.0)


def _checked(mm: float, text: str) -> float:
    if abs(mm) > _LONGEST:
        raise LengthError(text.strip(), "it is too large to be a size", "a length such as 3/4 in or 19 mm")
    return mm


def _refused(text: str, number: WrittenLength, rest: str) -> LengthError:
    """Why a length with something after it is refused."""
    alone = "the length alone, such as 1-3/8 or 1 3/8"
    if rest[0] == "/" and "." in number.text and not number.unit:
        why, instead = "a decimal over a whole number is no fraction", "a fraction such as 3/16, or a decimal"
    elif rest[0] == ".":
        why, instead = "there is a point too many", "a number such as 0.75"
    elif starts_number(rest, 0) and number.unit:
        why, instead = "a second number follows the length", "one unit, or a sum such as 1 m + 20 mm"
    elif starts_number(rest, 0):
        why, instead = "two numbers stand side by side", "one number; a mixed number is written 1 3/8"
    elif rest[0] in "+-*/÷()":
        why, instead = "this is arithmetic, not one length", alone
    elif not number.unit and (word := re.match(r"\w+", rest)):
        why, instead = f"'{word.group()}' is not a unit of length known here", "in, ft, mm, cm or m"
    else:
        why, instead = f"'{rest[:20]}' after the length cannot be read", alone
    return LengthError(text, why, instead)


def read_step(text: str | int | float, units: Units) -> float:
    """The finest step that a plan prints, `work_to` in the design file.

    Args:
        text: as for `read_length`.
        units: units of the file.

    Returns:
        The step [mm].

    Raises:
        LengthError: not one of the steps of those units.
    """
    mm = read_length(text, units)
    steps = [INCH / n for n in _INCH_STEPS] if units == "in" else list(_MM_STEPS)
    for step in steps:
        if abs(mm - step) < 1e-9:
            return step
    listed = ", ".join(f"1/{n}" for n in _INCH_STEPS) if units == "in" else "0.1, 0.2, 0.5, 1"
    why = f"a file in {units} is worked to a step that its rules and tapes show"
    raise LengthError(str(text), why, f"one of {listed} {units}")


@dataclass(frozen=True, slots=True)
class Printer:
    """Prints lengths in one unit, to one step.

    A length on the step prints on it. One that is not (a measured sheet, or a sum with one) prints as the
    decimal it is, to 6 places in inches and 3 in millimetres: it is never rounded to the step.

    Attributes:
        units: `in` or `mm`.
        step: the finest step [mm]; in inches a power of two of an inch.
    """

    units: Units
    step: float

    def __post_init__(self) -> None:
        parts = round(INCH / self.step) if self.step > 0 else 0
        if self.step <= 0 or (
            self.units == "in" and (parts < 1 or parts & (parts - 1) or abs(parts * self.step - INCH) > 1e-9)
        ):
            raise ValueError("step must be positive, and a power of two of an inch when the units are inches")

    def on_step(self, mm: float) -> bool:
        """True when a length [mm] is a whole number of steps, within the noise of the arithmetic."""
        return steps_in(mm, self.step) is not None

    def size(self, mm: float) -> str:
        """A length [mm] without its unit: `34 19/32`, `914.5`, `0.703`."""
        count = steps_in(mm, self.step)
        if self.units == "mm":
            return _decimal(mm if count is None else on_grid(count, self.step), 3)
        if count is None:
            return _decimal(mm / INCH, 6)
        return _mixed(Fraction(count, round(INCH / self.step)))

    def text(self, mm: float) -> str:
        """A length [mm] with its unit: `34 19/32 in`."""
        return f"{self.size(mm)} {self.units}"

    def auxiliary(self, mm: float) -> str:
        """A length [mm] without its unit; in parentheses when it is not on the step.

        In parentheses it is rounded to 0.001 in or 0.1 mm: it is for information, and nothing is cut to it. The
        exact sum stands where sums are printed (`size`).

        Source:
            ISO 129-1, auxiliary dimension in parentheses (from memory).
        """
        if self.on_step(mm):
            return self.size(mm)
        return f"({mm / INCH:.3f})" if self.units == "in" else f"({mm:.1f})"

    def both(self, mm: float) -> str:
        """An outside size [mm] for prose in both units: `36 in (914 mm)`, the second to 1 mm or 1/16 in."""
        if self.units == "in":
            other = f"{round(settle(mm, 1.0))} mm"
        else:
            other = Printer("in", _OUTSIDE_STEP).text(settle(mm, _OUTSIDE_STEP))
        return f"{self.text(mm)} ({other})"

    def tool(self, mm: float) -> str:
        """The diameter of a drill or a screw head: 64ths of an inch, or tenths of a millimetre.

        These are tools as sold, not sizes that are settled on the step of the plan.
        """
        if self.units == "in":
            return Printer("in", INCH / 64).size(settle(mm, INCH / 64))
        return _decimal(settle(mm, 0.1), 1)


def _decimal(value: float, places: int) -> str:
    text = f"{value:.{places}f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def _mixed(value: Fraction) -> str:
    whole, rest = divmod(abs(value), 1)
    sign = "-" if value < 0 else ""
    if not rest:
        return f"{sign}{whole}"
    return f"{sign}{whole} {rest}" if whole else f"{sign}{rest}"
