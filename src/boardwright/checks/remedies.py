"""Remedies found by trying: a change is made, the one check is run again, the smallest change that passes is named."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin, Measure, site_of


@dataclass(frozen=True, slots=True)
class Change:
    """One thing that could be done to the piece.

    Attributes:
        words: what to do, with its number.
        make: gives the piece with it done.
    """

    words: str
    make: Callable[[Context], Context]


@dataclass(frozen=True, slots=True)
class Trial:
    """The check whose figure is beyond its limit, and the piece it was found in.

    Attributes:
        c: the piece. measure: the check. code: of its finding.
        part: id of the part it is run for alone; "" for one that looks at the whole piece.
        what: of the margin, where the check gives several of one code; "" for all.
    """

    c: Context
    measure: Measure
    code: str
    part: str = ""
    what: str = ""

    def margins(self, changed: Context) -> list[Margin]:
        """What the check says of a changed piece."""
        site = site_of(changed, self.part)
        return [
            m
            for m in self.measure(changed, site)
            if m.check == self.code
            and (not self.part or self.part in m.parts)
            and (not self.what or m.what == self.what)
        ]

    def keeps(self, change: Change) -> bool:
        """True when the check passes once the change is made."""
        return all(m.kept for m in self.margins(change.make(self.c)))

    def smallest(self, series: Iterable[Change]) -> str:
        """The first of a series, smallest first, with which the check passes; "" when none does."""
        return next((change.words for change in series if self.keeps(change)), "")

    def least(self, change: Callable[[int], Change], most: int) -> str:
        """The same for a change in whole steps 1 to `most`, of which more always helps."""
        if most < 1 or not self.keeps(change(most)):
            return ""
        low, high = 0, most
        while high - low > 1:
            middle = (low + high) // 2
            low, high = (low, middle) if self.keeps(change(middle)) else (middle, high)
        return change(high).words

    def greatest(self, change: Callable[[int], Change], most: int) -> str:
        """The same for whole steps `most` down to 1, of which fewer always help: as many as still pass."""
        if most < 1 or not self.keeps(change(1)):
            return ""
        low, high = 1, most + 1
        while high - low > 1:
            middle = (low + high) // 2
            low, high = (middle, high) if self.keeps(change(middle)) else (low, middle)
        return change(low).words


def listed(found: Iterable[str], otherwise: str) -> str:
    """The remedies that were found; `otherwise` when there is none."""
    words = [w for w in found if w]
    return ", or ".join(words) if words else otherwise
