"""The rack's commands as they are used: what they say, how they end, two at once, and never a traceback."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from boardwright.cli.main import app

LID = """
boardwright: 1
title: Lid
units: in
stock: {cherry: {wood: cherry_black, thickness: 3/4}}
parts:
  lid: {stock: cherry, length: 30, width: 5, along: x, across: y, at: [0, 0, 0]}
"""


@pytest.fixture(autouse=True)
def _in_a_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.delenv("BOARDWRIGHT_RACK", raising=False)


def rack(*words: str) -> Result:
    return CliRunner().invoke(app, ["rack", *words])


def board(*words: str) -> Result:
    return rack("add", "board", "cherry_black", "4/4", "--length", "96", "--width", "8", *words)


def plan(*words: str) -> Result:
    Path("lid.yaml").write_text(LID, encoding="utf-8")
    return CliRunner().invoke(app, ["plan", "lid.yaml", "--files", "json", "--out", "lid", *words])


def test_a_board_from_the_yard_to_the_saw_and_back() -> None:
    assert rack("new").exit_code == 0
    assert board("--count", "2").stdout == "on the rack: B1, B2\n"
    assert plan("--rack", "rack.db").exit_code == 0
    assert "B1" in rack("list").stdout  # a plan takes nothing yet
    taken = rack("take", "lid/plan.json")
    assert taken.exit_code == 0
    assert "taken: B1" in taken.stdout
    listed = rack("list").stdout
    assert "B1-1" in listed
    assert "Lid, version 1" in listed
    assert rack("show", "B1").exit_code == 1  # it is taken, and that is said
    assert "rack.taken" in rack("show", "B1").stdout
    assert "back on the rack: B1" in rack("put-back", "1").stdout
    assert "B1-1" not in rack("list").stdout


def test_the_offcuts_are_those_of_the_plan() -> None:
    rack("new")
    board()
    plan("--rack", "rack.db")
    [layout] = json.loads(Path("lid/plan.json").read_text(encoding="utf-8"))["layouts"]
    assert layout["rack"]["name"] == "B1"
    rack("take", "lid/plan.json")
    exported = rack("export").stdout
    for offcut in layout["offcuts"]:
        assert f"board,{offcut['name']},cherry_black,4_4," in exported
    longest = max(o["length"] for o in layout["offcuts"])
    # 96 less 2 at each end, less 30 + 1, less the saw's 1/8
    assert longest == pytest.approx((96 - 4 - 31 - 1 / 8) * 25.4)


def test_without_a_rack_nothing_is_taken_and_offcuts_of_what_was_bought_are_kept() -> None:
    rack("new")
    assert plan().exit_code == 0
    said = rack("take", "lid/plan.json").stdout
    assert "taken: nothing; all of it is bought" in said
    assert "offcuts now on the rack: O1" in said


def test_units_and_the_variable(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("BOARDWRIGHT_RACK", "shop.db")
    assert rack("new", "--units", "mm").exit_code == 0
    assert rack("add", "board", "beech_european", "25", "--length", "2400", "--width", "180").exit_code == 0
    assert "length (mm)" in rack("list", "boards").stdout
    assert Path("shop.db").exists()


def test_a_plan_with_a_rack_that_is_not_there() -> None:
    result = plan("--rack", "none.db")
    assert result.exit_code == 1
    assert "rack.not-there" in result.stdout
    assert not Path("lid").exists()


def test_change_keeps_what_is_not_given() -> None:
    rack("new")
    board("--grade", "FAS", "--defect", "6 x 2 at 40, 1 1/2 knot")
    rack("change", "B1", "--moisture", "9", "--defect", "1 x 1 at 0, 0")
    shown = rack("show", "B1").stdout
    assert "FAS" in shown
    assert "9 %" in shown
    assert shown.count("defect") == 2
    rack("change", "B1", "--no-defects")
    assert "defect" not in rack("show", "B1").stdout


def test_remove_is_all_or_nothing() -> None:
    rack("new")
    board("--count", "3")
    assert rack("remove", "B1", "B7").exit_code == 1
    assert "B1" in rack("list").stdout
    assert rack("remove", "B1", "B2").exit_code == 0
    rack("add", "glue", "hide glue", "200")
    assert rack("remove", "hide glue").exit_code == 0
    listed = rack("list").stdout
    assert "hide glue" not in listed
    assert "B3" in listed


@pytest.mark.parametrize(
    "words",
    [
        ("add", "board", "cherry_black", "4/4", "--length", "96 x", "--width", "½½"),
        ("add", "board", "", "", "--length", "", "--width", ""),
        ("add", "board", "cherry_black", "4/4", "--length", "1e9", "--width", "-1", "--count", "x"),
        ("add", "board", "cherry_black", "4/4", "--length", "96", "--width", "8", "--count", "100000000"),
        ("add", "board", "cherry_black", "4/4", "--length", "96", "--width", "8", "--defect", "; , at x"),
        ("add", "board", "cherry_black", "4/4", "--length", "96", "--width", "8", "--moisture", "nan"),
        ("add", "sheet", "birch_plywood", "13 mm", "--length", "60", "--width", "60"),
        ("add", "glue", "", "-5"),
        ("add", "hardware", "hinge", "many"),
        ("price", "cherry_black", "seven", "--unit", "board foot"),
        ("price", "cherry_black", "7", "--unit", "stack", "--day", "yesterday"),
        ("price", "cherry_black", "NaN", "--unit", "piece"),
        ("show", "'; DROP TABLE pieces; --"),
        ("change", "nothing", "--length", "3"),
        ("remove", "nothing"),
        ("put-back", "99999999999999999999"),
        ("put-back", "0"),
        ("take", "bad.json"),
        ("import", "bad.json"),
        ("list", "--rack", "."),
        ("list", "--rack", ""),
        ("list", "--rack", "://"),
        ("export", "no/such/folder/file.csv"),
    ],
)
def test_bad_input_is_told_in_plain_words(words: tuple[str, ...]) -> None:
    rack("new")
    Path("bad.json").write_bytes(b'{"a": [1, "\xff\x00"')
    before = Path("rack.db").read_bytes()
    result = rack(*words)
    assert result.exit_code in (1, 2), result.output
    assert result.exception is None or isinstance(result.exception, SystemExit)
    assert "error" in result.output.lower()
    assert Path("rack.db").read_bytes() == before


def test_two_programs_take_the_same_board_once() -> None:
    rack("new")
    board()
    plan("--rack", "rack.db")
    first = Path("lid/plan.json").read_text(encoding="utf-8")
    Path("other.json").write_text(first.replace('"Lid"', '"Cover"'), encoding="utf-8")
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)}
    runs = [
        subprocess.Popen(
            [sys.executable, "-c", "from boardwright.cli import main; main()", "rack", "take", name],
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
            env=environment,
        )
        for name in ("lid/plan.json", "other.json")
    ]
    said = [run.communicate(timeout=60) for run in runs]
    assert sorted(run.returncode for run in runs) == [0, 1], said
    loser = next(out for run, (out, _) in zip(runs, said, strict=True) if run.returncode)
    assert "rack.taken" in loser
    assert rack("list", "taken").stdout.count("B1") >= 1


def test_the_list_for_programs() -> None:
    """8 ft are 2438.4 mm; the CSV of one group goes back on another rack as it is."""
    rack("new")
    board("--cut-from", "B7")
    rack("add", "sheet", "birch_plywood", "12 mm", "--length", "2440 mm", "--width", "1220 mm")
    rack("price", "cherry_black", "7.40", "--unit", "board foot", "--currency", "USD")
    found = json.loads(rack("list", "--format", "json").stdout)
    assert [(p["group"], p["length"]) for p in found["pieces"]] == [("offcuts", 2438.4), ("sheets", 2440.0)]
    assert found["prices"][0]["amount"] == "7.40"
    assert found["taken"] == []
    only = json.loads(rack("list", "sheets", "--format", "json").stdout)
    assert [p["kind"] for p in only["pieces"]] == ["sheet"]
    assert only["prices"] == []
    Path("sheets.csv").write_text(rack("list", "sheets", "--format", "csv").stdout, encoding="utf-8")
    rack("new", "--rack", "other.db")
    assert rack("import", "sheets.csv", "--rack", "other.db").exit_code == 0
    assert (
        json.loads(rack("list", "--format", "json", "--rack", "other.db").stdout)["pieces"] == only["pieces"]
    )
    assert rack("list", "taken", "--format", "csv").stdout == "number,at,plan,pieces,offcuts\n"
