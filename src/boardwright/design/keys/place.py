"""Keys for where the piece will live, and the air on the day its parts are cut."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from boardwright.design.keys.base import Keys, optional


class Air(Keys):
    """Air that wood has settled in."""

    humidity: float = Field(description="relative humidity [%]", ge=5, le=95)
    temperature: float | None = optional(
        "in degrees Fahrenheit, or Celsius in a plan in mm", "70 F, or 21 C", ge=-1, le=150
    )


class YearOfAir(Keys):
    """Air indoors through the year, as a hygrometer shows it."""

    today: Air | None = optional(
        "where the boards lie, on the day the parts are cut",
        "none; `wood_moisture.now` or the usual moisture",
    )
    driest: Air | None = optional(
        "at the driest time where the piece will live", "as the city or the region says"
    )
    wettest: Air | None = optional(
        "at the wettest time where the piece will live", "as the city or the region says"
    )


class Surroundings(Keys):
    """Where the piece will live."""

    city: str | None = optional(
        "row of the climate table, by its key or its name such as `Denver, CO`", "none; `region` says it"
    )
    rooms: Literal["heated", "cooled", "unheated"] | None = optional(
        "of a city: `heated` in winter; `cooled`: heated in winter and cooled in summer; `unheated`: outdoor air "
        "under a roof",
        "`heated`",
    )
    air: YearOfAir | None = optional("your own readings", "as the city or the region says")
    wettest_month: int | None = optional(
        "month in which the wood is wettest, 1 to 12, where no city says it; it is driest half a year later",
        "8 (common practice: heated houses in the north)",
        ge=1,
        le=12,
    )
