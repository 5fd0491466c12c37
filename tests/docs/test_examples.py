"""Every whole design in the documentation is understood, fits and holds."""

import re

import pytest
from pages import ROOT, blocks, page

from boardwright.core.findings import Severity
from boardwright.pipeline import check_text

PAGES = ["README.md", "CONTRIBUTING.md", *(f"docs/{p.name}" for p in sorted((ROOT / "docs").glob("*.md")))]


def tables_of(whole: str) -> dict[str, str]:
    """The table files that a page shows, by name."""
    names = re.findall(r"^With `([\w-]+\.csv)`", whole, re.MULTILINE)
    return dict(zip(names, blocks(whole, "csv"), strict=True))


EXAMPLES = [
    (name, text, tables_of(page(name)))
    for name in PAGES
    if name not in ("docs/findings.md", "docs/checks.md")
    for text in blocks(page(name), "yaml")
    if "boardwright: 1" in text
]


def test_there_are_examples_in_both_units() -> None:
    assert {u for _, t, _ in EXAMPLES for u in re.findall(r"^units: (\w+)", t, re.MULTILINE)} == {"in", "mm"}


@pytest.mark.parametrize(("name", "text", "tables"), EXAMPLES)
def test_the_example_checks(name: str, text: str, tables: dict[str, str]) -> None:
    result = check_text(text, name, tables=tables)
    assert [f.text() for f in result.findings if f.severity is not Severity.NOTE] == []
    assert result.piece is not None


def test_own_rows_change_the_default() -> None:
    text, tables = next((t, c) for _, t, c in EXAMPLES if "own-rows.csv" in t)
    piece = check_text(text, tables=tables).piece
    assert piece is not None
    gap = next(r for r in piece.reasons if r.path == "drawer.1.front.gap")
    assert gap.value == pytest.approx(25.4 * 3 / 32)
    assert "own choice" in gap.source
