"""The examples are what a good maker would build: no error, no warning but those that are explained here."""

import pytest
from pages import ROOT

from boardwright.core.findings import Severity
from boardwright.pipeline import check_file

JUSTIFIED: dict[str, set[str]] = {}
"""Example, and codes of warnings that are meant to be there, each with its reason beside it."""


@pytest.mark.parametrize("file", sorted((ROOT / "examples").glob("*.yaml")), ids=lambda p: p.stem)
def test_no_warning_without_a_reason(file):
    found = {f.code: f.text() for f in check_file(file).findings if f.severity is not Severity.NOTE}
    assert set(found) == JUSTIFIED.get(file.stem, set()), list(found.values())
