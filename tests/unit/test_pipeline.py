"""The order of the stages: what comes out when the file is whole, half right, or cannot be read."""

from pathlib import Path

from boardwright.pipeline import check_file, check_text, make_plan, read

GOOD = """
boardwright: 1
title: Shelf
units: in
stock: {ply: {sheet: hardwood_plywood, thickness: 3/4, measured: 3/4}}
case: {width: 24, height: 12, depth: 8, stock: ply, back: {set: none}}
"""


def test_a_good_file_gives_a_piece_and_no_finding() -> None:
    result = check_text(GOOD)
    assert result.ok
    assert result.findings == ()
    assert result.piece is not None
    assert len(result.piece.parts) == 4


def test_a_file_of_the_wrong_shape_gives_no_design() -> None:
    result = check_text("- a\n- list\n")
    assert (result.design, result.piece, result.ok) == (None, None, False)
    assert [f.code for f in result.findings] == ["file.not-a-mapping"]


def test_all_problems_come_at_once() -> None:
    wrong = GOOD.replace("width: 24", "width: 24 furlongs").replace("depth: 8", "depth: 8 parsecs")
    assert sum(f.severity == "error" for f in check_text(wrong).findings) >= 2


def test_the_same_text_gives_the_same_result() -> None:
    assert check_text(GOOD) == check_text(GOOD)


def test_a_file_with_tables_of_its_own(tmp_path: Path) -> None:
    (tmp_path / "species.csv").write_text(
        "key,name,kind,radial,tangential,sg_12,source\nbog_oak,bog oak,hardwood,0.0015,0.0035,0.7,measured\n",
        encoding="utf-8",
    )
    text = GOOD.replace(
        "{sheet: hardwood_plywood, thickness: 3/4, measured: 3/4}", "{wood: bog_oak, thickness: 3/4}"
    )
    file = tmp_path / "shelf.yaml"
    file.write_text(text + "tables: [species.csv]\n", encoding="utf-8")
    read_text, tables, findings = read(file)
    assert (read_text, list(tables), findings) == (text + "tables: [species.csv]\n", ["species.csv"], [])
    result = check_file(file)
    assert "bog_oak" in result.tables.species, [f.text() for f in result.findings]
    # the built-in rows of others are not touched
    assert "bog_oak" not in check_text(GOOD).tables.species


def test_a_table_that_is_not_there_is_said_and_the_rest_still_checked(tmp_path: Path) -> None:
    file = tmp_path / "shelf.yaml"
    file.write_text(GOOD + "tables: [none.csv]\n", encoding="utf-8")
    result = check_file(file)
    assert [f.code for f in result.findings] == ["file.unreadable"]
    assert result.piece is not None


def test_a_file_that_is_not_there(tmp_path: Path) -> None:
    result = check_file(tmp_path / "none.yaml")
    assert [f.code for f in result.findings] == ["file.unreadable"]
    assert result.design is None


def test_no_plan_without_a_piece() -> None:
    made, findings = make_plan(check_text("boardwright: 1\n"))
    assert made is None
    assert findings


def test_progress_is_told_and_stop_is_asked() -> None:
    said: list[str] = []
    made, findings = make_plan(check_text(GOOD), said.append, lambda: True)
    assert made is not None
    assert said
    assert not [f for f in findings if f.severity == "error"]
