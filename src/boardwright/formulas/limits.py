"""Limits of the formulas as data. Outside them a formula still answers; `breaches` says what was outside."""

from __future__ import annotations

import sys
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, slots=True)
class Limit:
    """The range of an argument that a formula was published for.

    Attributes:
        low, high: lowest and highest value, both allowed; None where there is no bound.
        unit: unit of both.
    """

    low: float | None
    high: float | None
    unit: str

    def __str__(self) -> str:
        unit = "" if self.unit == "-" else f" {self.unit}"
        if self.low is None:
            return f"at most {self.high:g}{unit}"
        if self.high is None:
            return f"at least {self.low:g}{unit}"
        return f"{self.low:g} to {self.high:g}{unit}"


Limits = Mapping[str, Mapping[str, Limit]]
"""Limits of a module's formulas: function name, argument name, limit. Each module has one, named `LIMITS`."""


def breaches(function: Callable[..., Any], **arguments: float) -> list[str]:
    """What is outside the published limits of a formula, in the order of its limits.

    Args:
        function: the formula.
        **arguments: the values it was or will be called with, by name, in its own units.

    Returns:
        One sentence for each argument outside its limits; none when all are inside.
    """
    limits: Limits = getattr(sys.modules[function.__module__], "LIMITS", {})
    found = []
    for name, limit in limits.get(function.__name__, {}).items():
        value = arguments.get(name)
        if value is None:
            continue
        if (limit.low is not None and value < limit.low) or (limit.high is not None and value > limit.high):
            unit = "" if limit.unit == "-" else f" {limit.unit}"
            found.append(f"{name} is {value:g}{unit}; the formula holds for {limit}")
    return found
