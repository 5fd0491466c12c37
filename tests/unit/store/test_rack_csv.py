"""CSV files of a rack: out and in again the same; every problem of a bad file at once; nothing lost."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest
from rack_pieces import board, boards, codes, names, wanted

from boardwright.core.findings import has_errors
from boardwright.core.rack import Defect, Price, RackPiece, Supply
from boardwright.store.csv_files import export_csv, import_csv, read_csv
from boardwright.store.opening import Store, open_rack, start_rack
from boardwright.store.pieces import add_pieces
from boardwright.store.supplies import read_rack, write_price, write_supply
from boardwright.store.takings import take
from boardwright.tables.load import default_tables

TABLES = default_tables()


def filled(store: Store) -> None:
    knots = (Defect(1016.0, 38.1, 152.4, 50.8, "knot"), Defect(0.0, 0.0, 3.3, 203.2, ""))
    add_pieces(
        store,
        [
            RackPiece(
                "", "board", "cherry_black", 25.4, 2438.4, 203.2, "4_4", 23.8125, 7.5, "FAS", knots,
                note='"wide", straight', picture="b1.jpg",
            ),
            RackPiece("", "sheet", "birch_plywood", 12.0, 1525.0, 1525.0, cut_from="bought"),
            board("odd one", 33.123456, 5),
        ],
    )  # fmt: skip
    write_supply(store, Supply("yellow PVA", "glue", 0.1 + 0.2, "kg"))
    write_supply(store, Supply("No. 8 × 1 1/4 screw", "hardware", 200))
    write_price(
        store, Price("cherry_black", 25.4, Decimal("6.10"), "board foot", "2026-03-05", "USD", "mill")
    )
    write_price(store, Price("yellow PVA", None, Decimal("9"), "piece", "2026-03-05"))


@pytest.mark.parametrize("units", ["in", "mm"])
def test_out_and_in_again_is_the_same(store: Store, units: str, tmp_path: Path) -> None:
    filled(store)
    rack, _ = read_rack(store)
    text = export_csv(rack, "in" if units == "in" else "mm")
    other_file = str(tmp_path / "other.db")
    start_rack(
        other_file, "mm" if units == "in" else "in"
    )  # each length says its unit, so this does not matter
    other, _ = open_rack(other_file)
    assert other is not None
    done, findings = import_csv(other, text, "rack.csv", TABLES)
    assert findings == []
    assert (done.added, done.same) == (7, 0)
    again, _ = read_rack(other)
    assert again == rack
    assert export_csv(again, "in" if units == "in" else "mm") == text


def test_in_again_into_the_same_rack_changes_nothing(store: Store) -> None:
    filled(store)
    before, _ = read_rack(store)
    done, findings = import_csv(store, export_csv(before, "in"), "rack.csv", TABLES)
    assert findings == []
    assert (done.added, done.same) == (0, 7)
    assert read_rack(store)[0] == before


def test_every_problem_is_told_with_its_line_and_nothing_is_written(store: Store) -> None:
    boards(store, 1)
    text = (
        "kind,name,material,thickness,length,width,moisture,defects,quantity,unit,amount,day\n"
        "board,,cherry_black,4/4,96,8,8,,,,,\n"
        "board,,cherry_black,4/5,long,8,8,,,,,\n"
        "\n"
        "board,,cherry_black,4/4,96,,130,,,,,\n"
        'board,,cherry_black,4/4,96,8,8,"6 x 2 at 95, 0 knot",,,,\n'
        "plank,,cherry_black,4/4,96,8,8,,,,,\n"
        "sheet,S9,birch_plywood,7 mm,60,60,,,2,,,\n"
        "price,,cherry_black,4/4,,,,,,stack,cheap,2026-02-30\n"
        "board,T1,cherry_black,4/4,96,8,8,,,,,\n"
        "board,T1,cherry_black,4/4,96,8,8,,,,,\n"
    )
    done, findings = import_csv(store, text, "rack.csv", TABLES)
    assert done.added == 0
    told = [(f.place.line, f.place.path, f.code) for f in findings]
    assert told == [
        (3, "thickness", "rack.bad-value"),
        (3, "length", "rack.bad-value"),
        (5, "width", "rack.missing-value"),
        (5, "moisture", "rack.bad-value"),
        (6, "defects", "rack.bad-value"),
        (7, "kind", "rack.bad-value"),
        (8, "thickness", "rack.bad-value"),
        (8, "name", "rack.bad-value"),
        (9, "unit", "rack.bad-value"),
        (9, "amount", "rack.bad-value"),
        (9, "day", "rack.bad-value"),
        (11, "name", "rack.twice"),
    ]
    assert all(f.place.column >= 1 for f in findings)
    assert names(store) == ["B1"]


def test_a_name_in_use_is_refused_with_its_line(store: Store) -> None:
    boards(store, 2)
    take(store, wanted(board("B2")), "noon")
    text = "kind,name,material,thickness,length,width\nboard,B1,cherry_black,4/4,50,8\nboard,B2,cherry_black,4/4,96,8\n"
    done, findings = import_csv(store, text, "rack.csv", TABLES)
    assert done.added == 0
    assert [(f.code, f.place.line) for f in findings] == [("rack.name-in-use", 2), ("rack.name-in-use", 3)]
    assert names(store) == ["B1"]


def test_pieces_alike_and_words_as_people_write_them(store: Store) -> None:
    text = (
        "Kind,Material,Thickness,Length,Width,Quantity,Note\n"
        "board,Black Cherry,1 in,2440 mm,7-1/2,3,\n"
        'sheet,birch plywood,1/4,5 ft,60",1,"two\nlines"\n'
        "board,tulip wood,4/4,96,8,1,\n"
    )
    done, findings = import_csv(store, text, "rack.csv", TABLES)
    assert codes(findings) == ["rack.unknown-material"]
    assert not has_errors(findings)
    assert done.names == ("B1", "B2", "B3", "S1", "B4")
    rack, _ = read_rack(store)
    first, sheet, own = rack.pieces[0], rack.pieces[-1], rack.pieces[3]
    assert (first.material, first.lumber, first.length, first.width) == ("cherry_black", "4_4", 2440.0, 190.5)
    assert (sheet.material, sheet.length, sheet.width, sheet.note) == (
        "birch_plywood",
        1524.0,
        1524.0,
        "two lines",
    )
    assert own.material == "tulip_wood"


@pytest.mark.parametrize(
    ("text", "line"),
    [
        ("", 1),
        ("\n\n", 1),
        ("wood;length\n", 1),
        ("kind,length,length\nboard,1,2\n", 1),
        ("material,length\ncherry_black,96\n", 1),
        ("kind,length\nboard,96,8\n", 2),
        ('kind,note\nboard,"open\n', 2),
    ],
)
def test_a_file_of_the_wrong_shape(text: str, line: int) -> None:
    entries, findings = read_csv(text, "rack.csv", "in", TABLES)
    assert entries == []
    assert set(codes(findings)) == {"rack.bad-file"}
    assert findings[0].place.line == line


def test_a_killed_half_of_an_import_is_nothing(store: Store) -> None:
    """What fails in the middle of the writing leaves the rack as it was."""
    boards(store, 1)
    entries = "".join(f"board,N{n},cherry_black,4/4,96,8\n" for n in range(50))
    text = f"kind,name,material,thickness,length,width\n{entries}"
    full = store.engine

    class Stops(Exception):
        pass

    from sqlalchemy import event

    seen = 0

    @event.listens_for(full, "before_cursor_execute")
    def stop(*_: object) -> None:
        nonlocal seen
        seen += 1
        if seen > 30:
            raise Stops

    with pytest.raises(Stops):
        import_csv(store, text, "rack.csv", TABLES)
    event.remove(full, "before_cursor_execute", stop)
    assert names(store) == ["B1"]
