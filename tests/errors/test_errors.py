"""Every finding has its smallest design and its exact text; the same pairs make docs/findings.md."""

import runpy
from pathlib import Path

import pytest

from boardwright.pipeline import check_file

HERE = Path(__file__).parent
ROOT = HERE.parent.parent
TOOL = runpy.run_path(str(ROOT / "tools/finding_docs.py"))
CODES = sorted(TOOL["codes_in_source"]())


def test_every_code_has_a_pair_and_every_pair_a_code() -> None:
    assert sorted(p.stem for p in HERE.glob("*.yaml")) == CODES
    assert sorted(p.stem for p in HERE.glob("*.txt")) == CODES


@pytest.mark.parametrize("code", CODES)
def test_the_design_gives_the_text(code: str, monkeypatch: pytest.MonkeyPatch, request: pytest.FixtureRequest) -> None:
    monkeypatch.chdir(HERE)
    own = [f for f in check_file(f"{code}.yaml").findings if f.code == code]
    assert own, "the design does not give its finding"
    assert all(f.place.line >= 1 and f.place.column >= 1 for f in own)
    text = "\n".join(f.text() for f in own) + "\n"
    golden = HERE / f"{code}.txt"
    if request.config.getoption("--update"):
        golden.write_text(text, encoding="utf-8")
    assert text == golden.read_text(encoding="utf-8"), "run make golden, and read what changed"


def test_the_page_is_up_to_date() -> None:
    page = (ROOT / "docs/findings.md").read_text(encoding="utf-8")
    assert page == TOOL["page_text"](), "run python tools/finding_docs.py"
