"""Times of the year by name, and the wood's moisture then."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum

from boardwright.piece.records import Moisture


class Time(StrEnum):
    """A time of the year."""

    driest = "driest"
    wettest = "wettest"
    january = "january"
    february = "february"
    march = "march"
    april = "april"
    may = "may"
    june = "june"
    july = "july"
    august = "august"
    september = "september"
    october = "october"
    november = "november"
    december = "december"


MONTHS = tuple(Time)[2:]


@dataclass(frozen=True, slots=True)
class Then:
    """A time of the year, and the moisture of the wood [%] at it."""

    time: Time
    percent: float

    @property
    def words(self) -> str:
        """When it is: `in July`, `at the driest time`."""
        name = self.time.value
        return f"in {name.capitalize()}" if self.time in MONTHS else f"at the {name} time"


def then_of(moisture: Moisture, time: Time) -> Then:
    """Look a time up in the year of a piece."""
    if time is Time.driest:
        return Then(time, moisture.driest)
    if time is Time.wettest:
        return Then(time, moisture.wettest)
    return Then(time, moisture.months[MONTHS.index(time)])


def until(moisture: Moisture, percent: float) -> Moisture:
    """A year that goes from the day of cutting to one moisture [%] and no farther."""
    return replace(moisture, driest=min(moisture.now, percent), wettest=max(moisture.now, percent))
