"""docs/checks.md: every check has its facts, a design that fires it and a twin that does not; it is up to date."""

import runpy

import pytest
from pages import ROOT, page

TOOL = runpy.run_path(str(ROOT / "tools/check_docs.py"))


def test_every_check_has_its_facts_and_no_fact_is_left_over():
    assert TOOL["codes"]() <= set(TOOL["FACTS"])
    assert all((ROOT / f"tests/errors/{code}.yaml").exists() for code in TOOL["FACTS"])


@pytest.mark.parametrize("code", sorted(TOOL["FACTS"]))
def test_every_check_has_a_twin_and_full_facts(code):
    assert code in TOOL["twins"]()
    facts = TOOL["FACTS"][code]
    assert facts.asks.endswith("?")
    assert facts.figured
    assert facts.source


def test_the_page_is_up_to_date():
    assert page("docs/checks.md") == TOOL["page_text"](), "run python tools/check_docs.py"
