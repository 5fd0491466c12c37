"""Every finding has its smallest design and its exact text; the same pairs make docs/findings.md."""

import runpy
from pathlib import Path

import pytest

from boardwright.core.findings import Finding
from boardwright.pipeline import check_file, make_plan

HERE = Path(__file__).parent
ROOT = HERE.parent.parent
TOOL = runpy.run_path(str(ROOT / "tools/finding_docs.py"))
CODES = sorted(c for c in TOOL["codes_in_source"]() - set(TOOL["GUARDS"]) if not c.startswith("rack."))
OF_THE_CUT_LIST = {"stock.does-not-fit", "stock.glue-up-stages", "stock.short-parts", "stock.joint-on-line"}
"""They speak of rough pieces, not of a key of the file, and name the parts instead of a place."""


def _findings(code: str) -> list[Finding]:
    """The findings of a code: of the check, else of laying out the stock."""
    result = check_file(f"{code}.yaml")
    found = result.findings if any(f.code == code for f in result.findings) else make_plan(result)[1]
    return [f for f in found if f.code == code]


@pytest.mark.parametrize("code", CODES)
def test_the_design_gives_the_text(
    code: str, monkeypatch: pytest.MonkeyPatch, request: pytest.FixtureRequest
) -> None:
    monkeypatch.chdir(HERE)
    own = _findings(code)
    assert own, "the design does not give its finding"
    assert all(f.place.line >= 1 and f.place.column >= 1 for f in own) or code in OF_THE_CUT_LIST
    text = "\n".join(f.text() for f in own) + "\n"
    golden = HERE / f"{code}.txt"
    if request.config.getoption("--update"):
        golden.write_text(text, encoding="utf-8")
    assert text == golden.read_text(encoding="utf-8"), "run make golden, and read what changed"


def test_every_code_has_a_pair_and_every_pair_a_code() -> None:
    assert sorted(p.stem for p in HERE.glob("*.yaml")) == CODES
    assert sorted(p.stem for p in HERE.glob("*.txt") if not p.stem.startswith("rack.")) == CODES


def test_the_page_is_up_to_date(request: pytest.FixtureRequest) -> None:
    if request.config.getoption("--update"):
        pytest.skip("make docs writes the page")
    page = (ROOT / "docs/findings.md").read_text(encoding="utf-8")
    assert page == TOOL["page_text"](), "run python tools/finding_docs.py"
