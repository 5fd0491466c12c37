"""How near to its limit each thing is: a check measures margins, and speaks of those beyond the limit."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field

from boardwright.checks.context import Context
from boardwright.core.findings import Finding

CAUTION = "computed from published averages, not a test"
"""Stands with every source of strength and tipping."""


@dataclass(frozen=True, slots=True)
class Margin:
    """One figure beside its limit.

    Attributes:
        check: code of the finding it gives beyond the limit.
        parts: ids of the parts it speaks of.
        what: what is figured, e.g. `sag after ten years`.
        value: found. limit: the most, or the least with `least`. unit: of both.
        least: True when the limit is a least value.
        tell: makes the finding; its remedies are tried only then.
    """

    check: str
    parts: tuple[str, ...]
    what: str
    value: float
    limit: float
    unit: str
    least: bool = False
    tell: Callable[[], Finding] | None = field(default=None, compare=False, repr=False)

    @property
    def kept(self) -> bool:
        """True within the limit."""
        return self.value >= self.limit - 1e-9 if self.least else self.value <= self.limit + 1e-9


Measure = Callable[[Context], Iterable[Margin]]


def beyond(measure: Measure) -> Callable[[Context], Iterator[Finding]]:
    """A check that speaks of the margins of a measure that are beyond their limits."""

    def check(c: Context) -> Iterator[Finding]:
        for margin in measure(c):
            if not margin.kept and margin.tell is not None:
                yield margin.tell()

    return check
