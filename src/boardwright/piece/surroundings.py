"""Moisture of the wood: on the day it is cut, and through the year where the piece will live."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, pi

from boardwright.core.findings import Finding, Severity
from boardwright.core.nearest import nearest
from boardwright.design.load import Design
from boardwright.design.schema import Air, Surroundings, WoodMoisture
from boardwright.formulas.indoor_air import indoor_humidity
from boardwright.formulas.moisture import equilibrium_moisture, humidity_for
from boardwright.piece.records import Moisture, Reason
from boardwright.tables.bundle import Tables
from boardwright.tables.records import Climate

DEFAULT_REGION = "interior_most"
WETTEST = 8
"""Month in which wood indoors is wettest: August, common practice."""
USUAL_AIR = {"in": 70.0, "mm": 21.0}
"""Temperature of air that is given without one [degrees F or C]."""
HEATED_TO = 21.0
"""Rooms are heated to this [degrees C]: 70 F, common practice."""
COOLED_TO, COOLED_DRY = 25.0, 60.0
"""Rooms are cooled to this [degrees C], and to no more than this humidity [%]: common practice."""
FROM_AIR = "Wood Handbook FPL-GTR-282 (2021) eq. 4-5"
INDOORS = "indoor air by ISO 13788 (2012) annex A (from memory), moisture by " + FROM_AIR


@dataclass(frozen=True, slots=True)
class _Year:
    """A year before the file's own numbers: usual day of cutting, ends, months from January [%], where from."""

    now: float
    low: float
    high: float
    months: tuple[float, ...]
    source: str


def read_moisture(design: Design, tables: Tables) -> tuple[Moisture, list[Finding], list[Reason]]:
    """Moisture at cutting and over the year: given in numbers or as air, of a city, or of a region.

    Args:
        design: as loaded.
        tables: regions and cities.

    Returns:
        The moisture, findings, and a line of `explain` for each of its three figures.
    """
    findings = _twice(design)
    place = design.file.place or Surroundings()
    year = _city(design, tables, place, findings) if place.city is not None else None
    year = year or _region(design, tables, place, findings)
    given, air = design.file.wood_moisture or WoodMoisture(), place.air
    words: dict[str, tuple[str, str, bool]] = {}

    def settled(
        key: str, number: float | None, read: Air | None, air_key: str, usual: float, rule: str
    ) -> float:
        if number is not None:
            words[key] = ("", f"wood_moisture.{key}", True)
            return number
        if read is not None:
            words[key] = (_air_words(read, design.units), FROM_AIR, False)
            return _of_air(read, design.units)
        words[key] = (rule, year.source, False)
        return usual

    now = settled("now", given.now, air.today if air else None, "today", year.now, "usual moisture")
    driest = settled(
        "driest",
        given.driest,
        air.driest if air else None,
        "driest",
        min(year.low, now),
        "lowest of the year",
    )
    wettest = settled(
        "wettest",
        given.wettest,
        air.wettest if air else None,
        "wettest",
        max(year.high, now),
        "highest of the year",
    )
    if not driest <= wettest:
        findings.append(_order(design, driest, wettest))
        driest, wettest = wettest, driest
    source = year.source if all(not g and s == year.source for _, s, g in words.values()) else _mixed(design)
    moisture = Moisture(now, driest, wettest, source, _between(year, driest, wettest))
    values = {"now": now, "driest": driest, "wettest": wettest}
    reasons = [
        Reason(f"wood_moisture.{key}", 0.0, "", rule, where, is_given, f"{values[key]:.3g} %")
        for key, (rule, where, is_given) in words.items()
    ]
    return moisture, findings, reasons


def _between(year: _Year, driest: float, wettest: float) -> tuple[float, ...]:
    """The months of a year, stretched to its ends [%]."""
    low, high = min(year.months), max(year.months)
    if high - low < 1e-9:
        return (driest,) * 12
    return tuple(driest + (wettest - driest) * (m - low) / (high - low) for m in year.months)


def _mixed(design: Design) -> str:
    keys = [k for k in ("wood_moisture", "place") if getattr(design.file, k) is not None]
    return " and ".join(keys) + " in the file"


def _region(design: Design, tables: Tables, place: Surroundings, findings: list[Finding]) -> _Year:
    region = design.file.region or DEFAULT_REGION
    if region not in tables.moisture:
        findings.append(
            Finding(
                "place.unknown-region",
                Severity.ERROR,
                f"`{region}` is no region of the moisture table",
                design.place("region"),
                found=region,
                expected="one of " + ", ".join(tables.moisture),
                remedy="use one of these, or give `wood_moisture:` in numbers",
            )
        )
        region = DEFAULT_REGION
    row = tables.moisture[region]
    wave = tuple(cos(2 * pi * (m - (place.wettest_month or WETTEST)) / 12) for m in range(1, 13))
    return _Year(row.average, row.low, row.high, wave, f"{row.source}, {row.region} ({row.provenance})")


def _city(design: Design, tables: Tables, place: Surroundings, findings: list[Finding]) -> _Year | None:
    asked = str(place.city)
    row = next((c for c in tables.climate.values() if asked.lower() in (c.key.lower(), c.city.lower())), None)
    if row is None:
        names = [c.city for c in tables.climate.values()]
        near = nearest(asked, names)
        findings.append(
            Finding(
                "place.unknown-city",
                Severity.ERROR,
                f"`{asked}` is no city of the climate table",
                design.place("place.city"),
                found=asked,
                expected="one of " + "; ".join(near or names),
                remedy=f"did you mean `{near[0]}`?"
                if near
                else "give `region`, `place.air` or `wood_moisture`",
            )
        )
        return None
    rooms = place.rooms or "heated"
    months = row.months if rooms == "unheated" else indoors(row, cooled=rooms == "cooled")
    where = f"{row.city}, {rooms} rooms: outdoor moisture of wood by {row.source} ({row.provenance})"
    source = where if rooms == "unheated" else f"{where}; {INDOORS}"
    return _Year(
        round(sum(months) / 12, 1), round(min(months), 1), round(max(months), 1), tuple(months), source
    )


def indoors(row: Climate, *, cooled: bool) -> tuple[float, ...]:
    """Moisture that wood settles at in heated rooms, month by month [%].

    Args:
        row: the city: moisture of wood outdoors, mean temperatures of January and July.
        cooled: True for rooms that are also cooled in summer.

    Returns:
        Moisture of the twelve months from January [%].
    """
    out = []
    cold, warm = ((t - 32) / 1.8 for t in (row.january, row.july))
    for month, outdoor in enumerate(row.months):
        T = (cold + warm) / 2 - (warm - cold) / 2 * cos(2 * pi * month / 12)
        inside = max(HEATED_TO, min(T, COOLED_TO) if cooled else T)
        humidity = indoor_humidity(T, humidity_for(T, outdoor), inside)
        if cooled:
            humidity = min(humidity, COOLED_DRY)
        out.append(equilibrium_moisture(inside, humidity))
    return tuple(out)


def _celsius(air: Air, units: str) -> float:
    T = USUAL_AIR[units] if air.temperature is None else air.temperature
    return (T - 32) / 1.8 if units == "in" else T


def _of_air(air: Air, units: str) -> float:
    return round(equilibrium_moisture(_celsius(air, units), air.humidity), 1)


def _air_words(air: Air, units: str) -> str:
    T = USUAL_AIR[units] if air.temperature is None else air.temperature
    return f"air of {air.humidity:g} % at {T:g} {'F' if units == 'in' else 'C'}"


def _twice(design: Design) -> list[Finding]:
    """Keys that say the same thing twice."""
    file, place = design.file, design.file.place
    if place is None:
        return []
    numbers, air = file.wood_moisture, place.air
    pairs = [("region", file.region, "place.city", place.city)]
    for key, air_key in (("now", "today"), ("driest", "driest"), ("wettest", "wettest")):
        number = getattr(numbers, key) if numbers else None
        read = getattr(air, air_key) if air else None
        pairs.append((f"wood_moisture.{key}", number, f"place.air.{air_key}", read))
    return [
        Finding(
            "place.given-twice",
            Severity.ERROR,
            f"`{one}` and `{two}` say the same thing twice",
            design.place(two),
            found="both",
            expected="one of them",
            remedy=f"delete one; `{one if one != 'region' else two}` is used meanwhile",
        )
        for one, first, two, second in pairs
        if first is not None and second is not None
    ]


def _order(design: Design, driest: float, wettest: float) -> Finding:
    given = design.file.wood_moisture
    both = given is not None and given.driest is not None and given.wettest is not None
    low = given is not None and given.driest is not None
    high = given is not None and given.wettest is not None
    path = "wood_moisture.driest" if low else "wood_moisture.wettest" if high else "place.air"
    return Finding(
        "place.moisture-order",
        Severity.ERROR,
        "the driest moisture is above the wettest",
        design.place(path),
        found=f"driest {driest:g} %, wettest {wettest:g} %",
        expected="the driest below the wettest",
        remedy="exchange the two" if both else "give both `driest:` and `wettest:`, the lower as `driest:`",
    )
