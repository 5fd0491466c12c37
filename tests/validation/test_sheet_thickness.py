"""Sheet thicknesses: PS 1-19 category table, EN 315 tolerances, producers' limits."""

import csv
from importlib.resources import files

import pytest

from boardwright.tables import load_tables
from boardwright.tables.cells import length

SHEETS = load_tables()[0].sheets
FILE = files("boardwright.tables") / "data" / "sheets.csv"
RAW = list(csv.DictReader(FILE.read_text().splitlines()))


@pytest.mark.parametrize(
    "row", [r for r in RAW if r["actual_min"] and r["actual_max"]], ids=lambda r: r["key"]
)
def test_actual_lies_in_its_range(row):
    assert length(row["actual_min"]) <= length(row["actual"]) <= length(row["actual_max"])


@pytest.mark.parametrize("sheet", SHEETS.values(), ids=lambda s: s.key)
def test_range_is_narrow(sheet):
    # The widest range printed here is that of PS 1 category 1-1/4: 1.188 to 1.313 in, 3.2 mm.
    assert sheet.actual_min <= sheet.actual <= sheet.actual_max
    assert sheet.actual_max - sheet.actual_min < 3.3


@pytest.mark.parametrize(
    ("category", "low", "label", "high"),
    [
        # PS 1-19 (page read): unsanded, touch-sanded and overlaid, inches at 9 % of moisture.
        ("1_4", 0.219, 0.225, 0.281),
        ("11_32", 0.313, 0.322, 0.375),
        ("3_8", 0.344, 0.354, 0.406),
        ("7_16", 0.406, 0.418, 0.469),
        ("15_32", 0.438, 0.451, 0.500),
        ("1_2", 0.469, 0.483, 0.531),
        ("19_32", 0.563, 0.578, 0.625),
        ("5_8", 0.594, 0.609, 0.656),
        ("23_32", 0.688, 0.703, 0.750),
        ("3_4", 0.719, 0.734, 0.781),
        ("13_16", 0.781, 0.788, 0.844),
        ("7_8", 0.831, 0.849, 0.919),
        ("1", 0.950, 0.970, 1.050),
        ("1_1_8", 1.069, 1.091, 1.181),
        ("1_1_4", 1.188, 1.213, 1.313),
    ],
)
def test_category_table(category, low, label, high):
    sheet = SHEETS[f"unsanded_plywood_{category}_in"]
    found = (sheet.actual_min / 25.4, sheet.actual / 25.4, sheet.actual_max / 25.4)
    assert found == pytest.approx((low, label, high), abs=1e-9)
    # Up to 13/16 in the table is 1/32 either way, printed to 0.001.
    if sheet.nominal <= 0.82 * 25.4:
        assert high - low == pytest.approx(1 / 16, abs=0.0015)


@pytest.mark.parametrize("nominal", [6.5, 9, 12, 15, 18, 21, 24, 27, 30])
def test_european_tolerance(nominal):
    # EN 315, sanded, as two producers print it, cut to 0.1 mm; + (0.2 + 0.03 t) / - (0.4 + 0.03 t) (from
    # memory). One printed figure, 0.5 under for 9 mm, is two tenths short of that: the print is kept, and
    # is the stricter.
    sheet = SHEETS[f"sanded_plywood_{str(nominal).replace('.', '_')}"]
    assert -0.01 < 0.2 + 0.03 * nominal - sheet.tolerance_plus < 0.1
    assert -0.01 < 0.4 + 0.03 * nominal - sheet.tolerance_minus < (0.18 if nominal == 9 else 0.1)


def test_producer_limits_are_inside_the_european_tolerance():
    # Two tables of independent producers: averages and limits, and tolerances on the nominal. The limits
    # printed for 9 mm reach 9.5, a tenth over nominal + 0.4; the producer's own figure is right for its
    # sheets.
    for sheet in SHEETS.values():
        if sheet.family == "birch_plywood" and not sheet.key.endswith("_in"):
            assert sheet.actual_min >= sheet.nominal - sheet.tolerance_minus - 0.11, sheet.key
            assert sheet.actual_max <= sheet.nominal + sheet.tolerance_plus + 0.11, sheet.key
