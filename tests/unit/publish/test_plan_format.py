"""The pages on the plan's format say what the code says."""

import runpy
from pathlib import Path

ROOT = Path(__file__).parents[3]
TOOL = runpy.run_path(str(ROOT / "tools/plan_format.py"))
AGAIN = "run python tools/plan_format.py"


def test_the_schema_is_that_of_the_code() -> None:
    assert (ROOT / "docs/plan.schema.json").read_text(encoding="utf-8") == TOOL["schema_text"](), AGAIN


def test_the_page_is_that_of_the_code() -> None:
    assert (ROOT / "docs/plan-format.md").read_text(encoding="utf-8") == TOOL["page_text"](), AGAIN
