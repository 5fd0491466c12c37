"""Moisture of wood in heated rooms, against what the Wood Handbook recommends for them.

Wood Handbook, table 13-2 (from memory): interior use, average and range of individual pieces [%]: most of the US 8,
6 to 10; dry southwest 6, 4 to 9; damp warm coast 11, 8 to 13. Rooms are figured from outdoor moisture month by month
(table 13-1) with the air of ISO 13788, annex A: an independent way to the same figures. A mean of the year may differ
by 1.5 %, since the printed table joins many cities into three regions.
"""

import pytest

from boardwright.formulas.indoor_air import indoor_humidity, saturation_pressure
from boardwright.piece.surroundings import indoors
from boardwright.tables.load import default_tables

CITIES = default_tables().climate
MOST = (
    "boston_ma",
    "chicago_il",
    "denver_co",
    "des_moines_ia",
    "detroit_mi",
    "minneapolis_st_paul_mn",
    "new_york_ny",
)


@pytest.mark.parametrize(
    ("keys", "average"),
    [
        (MOST, 8.0),
        (("phoenix_az", "las_vegas_nv", "el_paso_tx", "albuquerque_nm"), 6.0),
        (("mobile_al", "new_orleans_la", "charleston_sc", "los_angeles_ca"), 11.0),
    ],
)
def test_mean_of_the_year_in_heated_rooms(keys, average):
    means = [sum(indoors(CITIES[k], cooled=False)) / 12 for k in keys]
    assert sum(means) / len(means) == pytest.approx(average, abs=0.75)
    assert all(m == pytest.approx(average, abs=1.5) for m in means)


@pytest.mark.parametrize("key", MOST)
def test_winter_is_the_dry_end(key):
    # table 13-2: 6 % is the low end of the range for most of the US
    months = indoors(CITIES[key], cooled=False)
    assert months.index(min(months)) in (0, 1)
    assert min(months) == pytest.approx(6.0, abs=1.0)


@pytest.mark.parametrize(("T", "pascal"), [(0, 611.2), (10, 1228), (20, 2339), (30, 4247), (-10, 260)])
def test_vapour_pressure_of_the_steam_tables(T, pascal):
    # steam tables (from memory), over ice below freezing
    assert saturation_pressure(T) == pytest.approx(pascal, rel=0.005)


def test_outdoor_air_that_is_only_heated():
    # psychrometric chart (from memory): air of 0 C and 80 % heated to 21 C is at about 20 %
    assert indoor_humidity(0, 80, 21, 0) == pytest.approx(20, abs=1)
