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
STANDING = (
    "Strength and standing are computed from published averages: not a test, not certification. Anchor tall pieces. "
    "Local codes and licensed practice govern where people can be hurt."
)
"""Stands once in every result that speaks of strength, tipping or weight."""
GROUPS = ("strength.", "stability.", "weight.")


def caution(codes: Iterable[str]) -> str:
    """The standing caution, where one of these codes calls for it; else nothing."""
    return STANDING if any(code.startswith(GROUPS) for code in codes) else ""


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

    @property
    def used(self) -> float | None:
        """Share of the limit that is used up; None where the limit is 0."""
        if self.limit == 0 or (self.least and self.value <= 0):
            return None
        return self.limit / self.value if self.least else self.value / self.limit

    def as_dict(self) -> dict[str, object]:
        """The margin as plain data."""
        return {
            "check": self.check,
            "parts": list(self.parts),
            "what": self.what,
            "value": round(self.value, 4),
            "limit": round(self.limit, 4),
            "unit": self.unit,
            "least": self.least,
        }


@dataclass(frozen=True, slots=True)
class Site:
    """What these checks find out once: the panels that carry something, and the piece on the scales.

    Attributes:
        loaded: panels and what each carries.
        weighed: None for a piece that hangs on a wall, or has nothing on the floor.
    """

    loaded: tuple[tuple[Panel, Burden], ...]
    weighed: Weighed | None


def site_of(c: Context, only: str | None = None) -> Site:
    """Look at the piece as a whole; at one part alone, or with "" at nothing but its weight."""
    loaded = tuple((p, b) for p in (panels(c, only) if only != "" else ()) if (b := burden(c, p)) is not None)
    return Site(loaded, None if only or hung(c) else weighed(c))


Measure = Callable[[Context, Site], Iterable[Margin]]
