"""The workbook, read by another library: it holds what the CSV files hold, and is the same on every run."""

from __future__ import annotations

import csv
import io
from pathlib import Path

import openpyxl
from ribbon_shelf import make

from boardwright.publish.tables import buying_csv, cut_list_csv
from boardwright.publish.xlsx import write_xlsx


def test_the_workbook_holds_the_lists(tmp_path: Path) -> None:
    plan = make()
    write_xlsx(plan, tmp_path / "lists.xlsx")
    book = openpyxl.load_workbook(tmp_path / "lists.xlsx")
    for name, text in (("Buying list", buying_csv(plan)), ("Cut list", cut_list_csv(plan))):
        want = list(csv.reader(io.StringIO(text)))
        got = [
            ["" if c is None else f"{c:g}" if isinstance(c, int | float) else c for c in row]
            for row in book[name].iter_rows(values_only=True)
        ]
        assert [row[:3] for row in got] == [row[:3] for row in want]
        assert len(got[0]) == len(want[0])


def test_the_same_plan_gives_the_same_bytes(tmp_path: Path) -> None:
    plan = make()
    for name in ("a.xlsx", "b.xlsx"):
        write_xlsx(plan, tmp_path / name)
    assert (tmp_path / "a.xlsx").read_bytes() == (tmp_path / "b.xlsx").read_bytes()
