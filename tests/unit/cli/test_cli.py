"""The command line as it is used: exit codes, text and JSON, files, wrong use, a planted bug."""

import json
import re
import sys
from pathlib import Path

import pytest
from typer.testing import CliRunner, Result

from boardwright.cli import main as run_main
from boardwright.cli.main import app

SHELF = """
boardwright: 1
title: Shelf
units: in
stock: {{ply: {{sheet: hardwood_plywood, thickness: 3/4, measured: 3/4}}}}
case: {{width: {width}, height: 12, depth: 8, stock: ply, back: {{set: none}}}}
"""


def run(*words: str | Path) -> Result:
    return CliRunner().invoke(app, [str(w) for w in words])


@pytest.fixture
def good(tmp_path: Path) -> Path:
    file = tmp_path / "shelf.yaml"
    file.write_text(SHELF.format(width=24), encoding="utf-8")
    return file


@pytest.fixture
def bad(tmp_path: Path) -> Path:
    file = tmp_path / "narrow.yaml"
    file.write_text(SHELF.format(width="2 1/2"), encoding="utf-8")
    return file


def test_a_clean_design_ends_with_0(good: Path) -> None:
    result = run("check", good)
    assert result.exit_code == 0
    assert "no error" in result.stdout


def test_errors_end_with_1_and_stand_with_their_place(bad: Path) -> None:
    result = run("check", bad)
    assert result.exit_code == 1
    assert "error case.no-inside" in result.stdout
    assert re.search(r"narrow\.yaml:6:\d+", result.stdout)
    assert "remedy:" in result.stdout
    assert result.stdout.rstrip().endswith("1 error")


def test_json_tells_the_same_as_the_text(bad: Path) -> None:
    data = json.loads(run("check", bad, "--format", "json").stdout)
    [finding] = data["findings"]
    text = run("check", bad).stdout
    for key in ("code", "severity", "message", "found", "expected", "remedy"):
        assert finding[key] in text
    assert f"{finding['place']['line']}:{finding['place']['column']}" in text


def test_json_of_a_clean_design(good: Path) -> None:
    assert json.loads(run("check", good, "--format", "json").stdout) == {"findings": []}


def test_list_and_explain(good: Path) -> None:
    listed = run("list", good)
    assert listed.exit_code == 0
    # top and bottom are one kind: 24 - 1 1/2 + 2 x 3/8 = 23 1/4
    assert re.search(r"^B\s+top / bottom\s+2\s+23 1/4\s+8\s+3/4\s+ply", listed.stdout, re.M)
    explained = run("explain", good, "case.inside")
    assert explained.exit_code == 0
    lines = [line for line in explained.stdout.splitlines() if line.startswith("case.")]
    assert {line.split()[0] for line in lines} == {"case.inside.width", "case.inside.height"}
    assert any("22 1/2" in line for line in lines)  # 24 - 1 1/2


def test_other_units(good: Path) -> None:
    # 12 in = 304.8 mm, on the step of half a millimetre 305
    assert re.search(r"side\s+2\s+305", run("list", good, "--units", "mm").stdout)


@pytest.mark.parametrize("what", ["check", "list", "explain", "plan"])
def test_wrong_use_ends_with_2(what: str, tmp_path: Path) -> None:
    result = run(what, tmp_path / "none.yaml")
    assert result.exit_code == 2
    assert "none.yaml" in result.stderr
    assert "Traceback" not in result.output


def test_unknown_words_end_with_2(good: Path) -> None:
    assert run("check", good, "--units", "cubits").exit_code == 2
    assert run("carve", good).exit_code == 2
    assert run("new", "throne").exit_code == 2


@pytest.mark.parametrize("start", ["chest", "shelves", "cabinet"])
def test_new_starts_a_design_without_errors(start: str, tmp_path: Path) -> None:
    file = tmp_path / "mine.yaml"
    assert run("new", start, file).exit_code == 0
    assert run("check", file).exit_code == 0


def test_new_refuses_to_overwrite(good: Path) -> None:
    before = good.read_text(encoding="utf-8")
    result = run("new", "chest", good)
    assert result.exit_code == 2
    assert "nothing was written" in " ".join(result.stderr.replace("│", " ").split())
    assert good.read_text(encoding="utf-8") == before


def test_new_says_when_it_cannot_write(tmp_path: Path) -> None:
    result = run("new", "chest", tmp_path / "nowhere" / "mine.yaml")
    assert result.exit_code == 2
    assert "cannot be written" in " ".join(result.stderr.split())


def test_plan_writes_its_files(good: Path, tmp_path: Path) -> None:
    result = run("plan", good, "--out", tmp_path / "out")
    assert result.exit_code == 0, result.output
    names = {p.name for p in (tmp_path / "out").rglob("*") if p.is_file()}
    assert {"plan.pdf", "plan.json"} <= names
    assert any(n.endswith(".step") for n in names)
    assert any(n.endswith(".csv") for n in names)
    assert json.loads((tmp_path / "out/plan.json").read_text(encoding="utf-8"))["title"] == "Shelf"


def test_plan_of_a_design_without_a_piece_writes_nothing(bad: Path, tmp_path: Path) -> None:
    assert run("plan", bad, "--out", tmp_path / "out").exit_code == 1
    assert not (tmp_path / "out").exists()


def test_an_out_folder_that_cannot_be_made(good: Path, tmp_path: Path) -> None:
    (tmp_path / "taken").write_text("a file", encoding="utf-8")
    result = run("plan", good, "--out", tmp_path / "taken")
    assert result.exit_code == 2
    assert "cannot be written" in " ".join(result.stderr.split())


def test_a_file_that_is_no_text(tmp_path: Path) -> None:
    file = tmp_path / "photo.yaml"
    file.write_bytes(b"\xff\xd8\xff\xe0\x00\x10JFIF")
    result = run("check", file)
    assert result.exit_code == 1
    assert "file.unreadable" in result.stdout


def test_a_bug_prints_one_line_and_where_its_log_is(
    good: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def broken(*_: object) -> None:
        raise ZeroDivisionError("planted")

    monkeypatch.setattr("boardwright.pipeline.set_out", broken)
    monkeypatch.setattr(sys, "argv", ["boardwright", "check", str(good)])
    with pytest.raises(SystemExit) as stopped:
        run_main()
    assert stopped.value.code == 70
    printed = capsys.readouterr()
    [line] = printed.err.strip().splitlines()
    assert "Traceback" not in printed.out + printed.err
    match = re.search(r"The log is (\S+\.log);", line)
    assert match
    log = Path(match.group(1))
    assert "planted" in log.read_text(encoding="utf-8")
    log.unlink()


def test_no_words_show_the_help() -> None:
    result = run()
    assert "check" in result.output
    assert "plan" in result.output


def test_all_lists_what_keeps_its_limit(good: Path) -> None:
    text = run("check", good, "--all")
    assert text.exit_code == 0
    # the top: 15 lb a square foot and its own 600 kg/m3 on a span of 22 1/2 in, 3/4 in thick, E 1.8 million psi
    w = 15 * 4.4482216 / 304.8**2 + 600e-9 * 19.05 * 9.81
    sag = 1.8 * 5 * w * (22.5 * 25.4) ** 4 / (384 * 12400 * 19.05**3 / 12) / 25.4
    assert re.search(rf"^strength\.sag\s+top.*{sag:.3f} in\s+at most 0\.059 in\s+\d+%$", text.stdout, re.M)
    assert "not a test, not certification" in text.stdout
    data = json.loads(run("check", good, "--all", "--format", "json").stdout)
    [margin] = [m for m in data["passed"] if m["check"] == "strength.sag"]
    assert margin["value"] == pytest.approx(sag * 25.4, rel=1e-3)
    assert margin["limit"] == pytest.approx(22.5 * 25.4 / 384, rel=1e-3)
    assert margin["unit"] == "mm"
    assert "licensed practice govern" in data["caution"]


WOOD = """
boardwright: 1
title: Board
units: in
sizes: {long: 38}
stock: {oak: {wood: oak_white, thickness: 3/4}}
parts: {board: {stock: oak, length: long, width: 5, along: x, across: y, at: [0, 0, 0]}}
"""


def test_a_piece_is_taken_to_one_time_of_the_year(tmp_path: Path) -> None:
    """White oak, flatsawn: 0.00365 for each 1 % (Wood Handbook FPL-GTR-190, table 13-5)."""
    file = tmp_path / "board.yaml"
    file.write_text(WOOD + "wood_moisture: {now: 8, driest: 6, wettest: 12}\n", encoding="utf-8")
    text = run("check", file, "--when", "wettest")
    assert text.exit_code == 0
    assert "At the wettest time the wood is at 12 %, cut at 8 %" in text.stdout
    assert re.search(rf"^A\s+board\s+5 in\s+{5 * 0.00365 * 4:.3f} in\s", text.stdout, re.M)
    data = json.loads(run("check", file, "--when", "driest", "--format", "json").stdout)["when"]
    assert (data["time"], data["moisture"], data["cut_at"]) == ("driest", 6, 8)
    assert data["sizes"]["A"][1] == pytest.approx(5 * 25.4 * (1 - 0.00365 * 2), abs=1e-3)
    # without a city the wettest month is August
    assert "In August the wood is at 12 %" in run("check", file, "--when", "august").stdout
    assert run("check", file, "--when", "someday").exit_code == 2


def test_rough_sizes_are_explained_as_sums(tmp_path: Path, good: Path) -> None:
    file = tmp_path / "board.yaml"
    file.write_text(WOOD, encoding="utf-8")
    result = run("explain", file, "rough.A")
    assert result.exit_code == 0
    assert "38 + 1 = 39" in result.stdout
    assert "5 + 1/4 = 5 1/4" in result.stdout
    assert "3/4 + 1/8 = 7/8; bought 1 in" in result.stdout
    assert "no wood part has the letter Q" in run("explain", file, "rough.Q").stdout
    assert "no part is of wood" in run("explain", good, "rough").stdout


def test_what_a_little_would_save_is_shown_or_the_range_refused(tmp_path: Path) -> None:
    file = tmp_path / "board.yaml"
    file.write_text(WOOD, encoding="utf-8")
    result = run("save", file, "--between", "sizes.long=36..39")
    assert result.exit_code == 0
    assert "no size of `sizes.long` in this range saves" in result.stdout
    refused = run("save", file, "--between", "sizes.wide=36..39")
    assert refused.exit_code == 2
    assert "such as sizes.long" in " ".join(refused.output.split())


@pytest.mark.parametrize(
    ("what", "row"),
    [
        ("woods", r"^walnut_black +Walnut, black +Juglans nigra$"),
        ("sheets", r"^birch_plywood .*0\.472"),
        ("glues", r"^pva_yellow "),
        ("finishes", r"^oil "),
        ("regions", r"^interior_most .* 6 to 10 %$"),
        ("cities", r"^Chicago, IL +US$"),
    ],
)
def test_the_words_of_the_tables_are_listed(what: str, row: str) -> None:
    """12 mm of a sheet is 0.472 in; the other words are the rows of the tables."""
    result = run("words", what)
    assert result.exit_code == 0
    assert re.search(row, result.stdout, re.MULTILINE)
