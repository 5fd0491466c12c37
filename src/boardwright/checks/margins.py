"""How near to its limit each thing is: a check measures margins, and speaks of those beyond the limit."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field

from boardwright.checks.burdens import Burden, burden
from boardwright.checks.context import Context
from boardwright.checks.held import Panel, panels
from boardwright.checks.weights import Weighed, hung, weighed
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


@dataclass(frozen=True, slots=True)
class Site:
    """What these checks find out once: the panels that carry something, and the piece on the scales.

    Attributes:
        loaded: panels and what each carries.
        weighed: None for a piece that hangs on a wall, or has nothing on the floor.
    """

    loaded: tuple[tuple[Panel, Burden], ...]
    weighed: Weighed | None


def site_of(c: Context) -> Site:
    """Look at the piece as a whole."""
    loaded = tuple((p, b) for p in panels(c) if (b := burden(c, p)) is not None)
    return Site(loaded, None if hung(c) else weighed(c))


Measure = Callable[[Context, Site], Iterable[Margin]]
