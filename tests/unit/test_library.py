"""The library from several threads at once: the same results, and nothing of the process is changed."""

import copy
import decimal
import locale
import os
import random
import warnings
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from boardwright import library

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.yaml"))


def test_four_threads_give_what_one_gives() -> None:
    loaded = [library.load(p) for p in EXAMPLES]
    jobs = [(design, units) for design in loaded for units in ("in", "mm")] * 2
    alone = [library.check(design, units) for design, units in jobs]
    with ThreadPoolExecutor(4) as pool:
        together = list(pool.map(lambda job: library.check(*job), jobs))
    assert together == alone


def test_plans_made_at_once_are_the_same() -> None:
    result = library.check(library.load(next(p for p in EXAMPLES if p.stem == "bolt-shelves")))
    with ThreadPoolExecutor(2) as pool:
        one, two = pool.map(lambda _: library.plan(result), range(2))
    assert one.plan is not None
    assert one.plan.model_dump_json() == two.plan.model_dump_json()
    assert one.findings == two.findings


def test_nothing_of_the_process_is_changed(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.chdir(tmp_path)
    random.seed(7)
    before = (
        os.getcwd(),
        dict(os.environ),
        random.getstate(),
        copy.copy(decimal.getcontext()).prec,
        locale.getlocale(),
        list(warnings.filters),
    )
    library.plan(library.check(library.load(EXAMPLES[0])))
    after = (
        os.getcwd(),
        dict(os.environ),
        random.getstate(),
        copy.copy(decimal.getcontext()).prec,
        locale.getlocale(),
        list(warnings.filters),
    )
    assert after == before
    assert list(tmp_path.iterdir()) == []  # no file is left


def test_a_file_that_cannot_be_read_gives_a_finding(tmp_path: Path) -> None:
    loaded = library.load(tmp_path / "none.yaml")
    assert [f.code for f in library.check(loaded).findings] == ["file.unreadable"]
    assert library.plan(library.check(loaded)).plan is None


def test_text_is_checked_as_it_stands() -> None:
    assert [f.code for f in library.check("").findings if f.severity == "error"]


def test_an_unknown_format_is_refused(tmp_path: Path) -> None:
    made = library.plan(library.check(library.load(EXAMPLES[0]))).plan
    assert made is not None
    with pytest.raises(ValueError, match="pptx"):
        library.publish(made, tmp_path, formats=["pptx"])
    files = library.publish(made, tmp_path / "out", formats=["json", "csv"])
    assert files
    assert all(f.is_file() for f in files)
