"""Names and sizes as a yard writes them."""

from __future__ import annotations

import re

from boardwright.core.lengths import INCH, Printer, Units
from boardwright.core.steps import steps_in

_TABLE_NAME = re.compile(r"([^,(]+), ([^(]+?)( \(.*\))?")
_FINEST_SOLD = INCH / 64


def plain_name(name: str) -> str:
    """A wood's name in the order of speech: `Cherry, black` is `black cherry`."""
    found = _TABLE_NAME.fullmatch(name)
    if found is None:
        return name
    head, tail, more = found.groups()
    return f"{tail} {head if '-' in head else head.lower()}{more or ''}"


def sold(units: Units, *sizes: float) -> str:
    """A size as sold, in the plan's units where it is round there: `1/4 in`, `6.5 mm`, `48 × 96 in`.

    Args:
        units: of the plan.
        sizes: [mm]; all are printed in one unit.
    """
    inches = units == "in" and all(steps_in(s, _FINEST_SOLD) is not None for s in sizes)
    printer = Printer("in", _FINEST_SOLD) if inches else Printer("mm", 0.1)
    return f"{' × '.join(printer.size(s) for s in sizes)} {printer.units}"


def counted(n: int, one: str, many: str = "") -> str:
    """A count with its noun: `1 board`, `3 boards`."""
    return f"{n} {one if n == 1 else many or one + 's'}"


def percent(share: float) -> str:
    """A share as a whole per cent."""
    return f"{round(100 * share)} %"
