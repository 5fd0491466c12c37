"""The data of the package: sourced, whole, and found again by the ways in."""

import csv
from dataclasses import fields
from importlib.resources import files

import pytest

import boardwright.tables
from boardwright.formulas.movement import coefficient_from_shrinkage
from boardwright.tables import Tables, load_tables
from boardwright.tables.complete import complete
from boardwright.tables.forms import FILES
from boardwright.tables.records import Species

TABLES = load_tables()[0]
EVERY = [(f.name, row) for f in fields(Tables) for row in getattr(TABLES, f.name).values()]


@pytest.mark.parametrize(("table", "row"), EVERY, ids=lambda x: getattr(x, "key", x))
def test_every_row_says_where_it_comes_from(table, row):
    assert row.source
    assert any(
        word in row.provenance for word in ("read", "memory", "common practice", "computed", "derived")
    )
    assert "session" not in row.source + row.provenance + getattr(row, "note", "")


def test_every_key_stands_once():
    for names in FILES.values():
        keys = []
        for name in names:
            text = (files("boardwright.tables") / "data" / f"{name}.csv").read_text(encoding="utf-8")
            keys += [row["key"] for row in csv.DictReader(text.splitlines())]
        assert len(keys) == len(set(keys))


def test_every_figure_is_listed_in_the_documentation():
    words = boardwright.tables.__doc__.replace(",", " ").replace(".", " ").split()
    assert set(TABLES.figures) <= set(words)


def test_figures_lie_in_their_ranges():
    for figure in TABLES.figures.values():
        assert figure.low is None or figure.low <= figure.value, figure.key
        assert figure.high is None or figure.value <= figure.high, figure.key


def test_figures_are_in_internal_units():
    assert TABLES.figure("panel_gap").value == pytest.approx(3.175)
    assert TABLES.figure("panel_gap").unit == "mm"
    # 50 psf is 2.394 kPa, 200 lb is 90.7 kg (Architectural Woodwork Standards, p. 253).
    assert TABLES.figure("shelf_load_books").value == pytest.approx(2.394e-3, abs=1e-6)
    assert TABLES.figure("shelf_load_largest").value == pytest.approx(90.7, abs=0.05)


def test_reasons_are_honest():
    assert TABLES.figure("dado_setback").reason == "common practice"
    assert TABLES.figure("creep_mdf").reason.endswith("(from memory)")


def test_an_unknown_figure():
    with pytest.raises(KeyError):
        TABLES.figure("no_such_figure")


@pytest.mark.parametrize(
    ("family", "nominal", "actual"),
    [
        # Producer data sheet: the 18 mm birch sheet averages 17.7; it is the one sold as 3/4 in.
        ("birch_plywood", 18, 17.7),
        ("birch_plywood", 19.05, 17.7),
        ("birch_plywood", 6.35, 6.4),
        ("hardwood_plywood", 19.05, 18),
        ("hardwood_plywood", 6.35, 5),
        ("mdf", 19.05, 19.05),
        ("mdf", 19, 19.05),
        ("mdf", 18, 18),
        ("hardboard", 3.175, 3.2),
        ("hardboard", 6.35, 6.4),
    ],
)
def test_sheet_by_family_and_nominal(family, nominal, actual):
    assert TABLES.sheet(family, nominal).actual == pytest.approx(actual)


def test_no_such_sheet():
    assert TABLES.sheet("mdf", 40) is None
    assert TABLES.sheet("felt", 18) is None
    assert TABLES.nominals("hardboard") == [3.2, 6.4]
    assert TABLES.nominals("felt") == []
    assert TABLES.families() == sorted(TABLES.families())


def test_nominals_of_a_family_are_told_apart():
    for family in TABLES.families():
        nominals = TABLES.nominals(family)
        assert len(nominals) == len([s for s in TABLES.sheets.values() if s.family == family])


def test_a_users_own_sheet_goes_first():
    header = "key,family,name,kind,nominal,actual,density,sizes,has_grain"
    tables, found = load_tables([("a.csv", f"{header}\nmine,mdf,x,mdf,18,17.6,700,8 x 4 ft,no\n")])
    assert found == []
    assert tables.sheet("mdf", 18).key == "mine"
    assert tables.sheets["mine"].sizes == (pytest.approx((2438.4, 1219.2)),)


@pytest.mark.parametrize(
    ("finished", "system", "name"),
    [
        # Finished thickness to plan for: 3/4 from 4/4, 1 from 5/4, 1 3/4 from 8/4 (common practice).
        (0.75 * 25.4, "in", "4/4"),
        (13 / 16 * 25.4, "in", "5/4"),
        (1.75 * 25.4, "in", "8/4"),
        (0.25 * 25.4, "in", "1/2"),
        (22, "mm", "27 mm"),
        (27, "mm", "32 mm"),
    ],
)
def test_lumber_for_a_finished_thickness(finished, system, name):
    assert TABLES.class_for(finished, system).name == name


def test_no_lumber_is_thick_enough():
    assert TABLES.class_for(200, "in") is None


def test_lumber_thins_as_it_is_surfaced():
    for lumber in TABLES.lumber.values():
        steps = [s for s in (lumber.planned, lumber.s2s, lumber.s1s, lumber.rough) if s is not None]
        assert steps == sorted(steps), lumber.key
        assert lumber.planned < lumber.rough


def test_thicker_lumber_finishes_thicker():
    # Inches only: the metric rows mix two practices, sawn less 5 mm and continental figures for short parts.
    rows = sorted((c for c in TABLES.lumber.values() if c.system == "in"), key=lambda c: c.rough)
    assert len(rows) == 11
    assert [c.planned for c in rows] == sorted(c.planned for c in rows)


def test_derived_coefficients_are_the_published_formula():
    for shrinkage, start in ((7.8, 30.0), (5.0, 22.0), (11.9, 30.0)):
        values = {f.name: None for f in fields(Species)}
        values |= {"shrink_radial": shrinkage, "shrink_tangential": shrinkage, "shrink_start": start}
        filled = complete(Species, values)
        assert filled["radial"] == coefficient_from_shrinkage(shrinkage, start)


def test_woods_move_more_along_the_rings():
    for species in TABLES.species.values():
        assert 0.0005 < species.radial < species.tangential < 0.0045, species.key


def test_moisture_ranges_and_climates():
    for row in TABLES.moisture.values():
        assert row.low <= row.average <= row.high
    for city in TABLES.climate.values():
        assert len(city.months) == 12
        assert (min(city.months), max(city.months)) == (city.low, city.high)


def test_slides_leave_room():
    for slide in TABLES.slides.values():
        # Slide maker's note: thickness + 0.2 to 0.5 mm each side.
        assert slide.side_space_min - slide.thickness == pytest.approx(0.2)
        assert slide.side_space_max - slide.thickness == pytest.approx(0.5)


def test_screws_and_standard_boards():
    assert TABLES.screw(8).key == "8"
    assert TABLES.screw(11) is None
    assert {(b.width, b.length) for b in TABLES.standard_boards("mm")} >= {(150, 2400), (200, 3000)}
    # Chart of NHLA grades: the smallest FAS board is 6 in x 8 ft.
    assert min(b.width for b in TABLES.standard_boards("in")) == pytest.approx(152.4)
    assert min(b.length for b in TABLES.standard_boards("in")) == pytest.approx(2438.4)
