"""A user's own rows: they add, they override, and what is wrong is said, all of it."""

import pytest

from boardwright.tables import load_tables
from boardwright.tables.split import UnclosedQuote, split


def codes(found):
    return [(f.code, f.place.line, f.place.column) for f in found]


def test_the_package_has_no_findings_and_is_read_once():
    tables, found = load_tables()
    assert found == []
    assert load_tables()[0] is tables


def test_one_table_by_its_header():
    text = "key,diameter,length\n7x35,7 mm,35 mm\n"
    tables, found = load_tables([("pins.csv", text)])
    assert found == []
    assert tables.dowels["7x35"].length == 35
    assert tables.dowels["7x35"].source == "pins.csv"
    assert tables.dowels["7x35"].provenance == "the user's own figure"
    assert "7x35" not in load_tables()[0].dowels


def test_several_tables_in_one_file():
    text = (
        "table,key,actual,value,unit,note\n"
        "sheets,birch_plywood_18,17.9 mm,,,last batch\n"
        "clearances,door_gap_inset,,1.2,mm,\n"
    )
    tables, found = load_tables([("own.csv", text)])
    assert found == []
    assert tables.sheets["birch_plywood_18"].actual == 17.9
    assert tables.sheets["birch_plywood_18"].density == load_tables()[0].sheets["birch_plywood_18"].density
    gap = tables.figure("door_gap_inset")
    assert (gap.value, gap.unit, gap.low) == (1.2, "mm", None)


def test_a_new_figure_does_not_keep_the_old_range():
    tables, found = load_tables([("a.csv", "table,key,value\nfigures,dado_depth_share,3/8\n")])
    assert found == []
    figure = tables.figure("dado_depth_share")
    assert (figure.value, figure.low, figure.high) == (0.375, None, None)


def test_a_measured_sheet_outside_its_range_widens_it():
    tables, _ = load_tables([("a.csv", "table,key,actual\nsheets,birch_plywood_18,18.4\n")])
    sheet = tables.sheets["birch_plywood_18"]
    assert (sheet.actual_min, sheet.actual, sheet.actual_max) == (17.1, 18.4, 18.4)


def test_coefficients_from_shrinkage_are_flagged():
    text = "table,key,name,kind,shrink_radial,shrink_tangential\nspecies,pear,Pear,hardwood,4.6,9.9\n"
    tables, found = load_tables([("a.csv", text)])
    assert found == []
    # Wood Handbook table 13-5: a tangential shrinkage of 9.9 % (sugar maple) goes with .00353.
    assert round(tables.species["pear"].tangential, 5) == 0.00353
    assert tables.species["pear"].coefficients == "derived"


def test_a_wood_without_any_movement_is_refused():
    _, found = load_tables([("a.csv", "table,key,name,kind,radial\nspecies,pear,Pear,hardwood,0.002\n")])
    assert codes(found) == [("tables.missing-value", 2, 1)]
    assert "shrink_tangential" in found[0].expected


def test_all_bad_rows_are_found_and_the_good_one_stays():
    text = (
        "table,key,diameter,length,colour\n"
        "dowels,7x35,7 mm,35 mm,\n"
        'dowels,8x35,"8, mm",-35 mm,\n'
        "pegs,9x35,9 mm,35 mm,\n"
        "dowels,,9 mm,35 mm,\n"
        "dowels,7x35,7 mm,35 mm,\n"
        "dowels,5x20,5 mm,,\n"
        "dowels,5x25,5 mm,25 mm,,,red\n"
        "dowels,0x25,0 mm,25 mm,\n"
    )
    tables, found = load_tables([("pins.csv", text)])
    assert codes(found) == [
        ("tables.unknown-column", 1, 27),
        ("tables.bad-value", 3, 13),
        ("tables.bad-value", 3, 21),
        ("tables.unknown-table", 4, 1),
        ("tables.missing-value", 5, 8),
        ("tables.duplicate-key", 6, 8),
        ("tables.missing-value", 7, 18),
        ("tables.extra-cell", 8, 26),
        ("tables.bad-value", 9, 13),
    ]
    assert all(f.place.file == "pins.csv" and f.expected and f.remedy for f in found)
    assert tables.dowels["7x35"].diameter == 7
    assert set(tables.dowels) == {*load_tables()[0].dowels, "7x35"}


def test_a_column_of_another_table_is_refused():
    text = "table,key,density,length\nsheets,mdf_18,700,30 mm\n"
    tables, found = load_tables([("a.csv", text)])
    assert codes(found) == [("tables.unknown-column", 2, 19)]
    assert tables.sheets["mdf_18"] == load_tables()[0].sheets["mdf_18"]


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "tables.empty"),
        ("\n\n", "tables.empty"),
        ("a,b\n1,2\n", "tables.unknown-table"),
        ("key,key\n1,2\n", "tables.duplicate-column"),
        ('key,diameter,length\n"7x35,7,35\n', "tables.unclosed-quote"),
    ],
)
def test_a_file_that_is_no_table(text, code):
    tables, found = load_tables([("a.csv", text)])
    assert [f.code for f in found] == [code]
    assert tables.dowels == load_tables()[0].dowels


def test_a_bad_file_does_not_harm_the_next():
    good = ("b.csv", "key,diameter,length\n7x35,7 mm,35 mm\n")
    tables, found = load_tables([("a.csv", "x\n1\n"), good])
    assert [f.place.file for f in found] == ["a.csv"]
    assert "7x35" in tables.dowels


@pytest.mark.parametrize("bad", ["nan", "inf", "-1", "1/0", "1e3", "three", "3/4 yd", "1 1", "１８"])
def test_what_is_not_a_length(bad):
    _, found = load_tables([("a.csv", f"key,diameter,length\n7x35,7 mm,{bad}\n")])
    assert codes(found) == [("tables.bad-value", 2, 11)]


def test_split_knows_quotes_lines_and_columns():
    # RFC 4180: quotes are doubled inside quotes, a quoted cell may hold commas and line ends.
    rows = split('\ufeffa,b\r\n"x ""y"", z",\r\n\r\n"one\ntwo",3\n')
    assert [[(s.text, s.line, s.column) for s in row] for row in rows] == [
        [("a", 1, 1), ("b", 1, 3)],
        [('x "y", z', 2, 1), ("", 2, 14)],
        [("one\ntwo", 4, 1), ("3", 5, 6)],
    ]
    with pytest.raises(UnclosedQuote):
        split('a\n"b')


def test_split_agrees_with_the_standard_library():
    import csv

    text = 'a,b,c\n1,"2,3",4\n"say ""hi""",,\n,x,\n'
    assert [[s.text for s in row] for row in split(text)] == list(csv.reader(text.splitlines()))
