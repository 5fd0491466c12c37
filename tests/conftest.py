"""The option that writes golden texts anew; the examples' plans, made once for all tests that read them."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from boardwright.library import Result
    from boardwright.plan.schema import Plan

EXAMPLES = sorted((Path(__file__).parent.parent / "examples").glob("*.yaml"))


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--update", action="store_true", help="write the golden texts anew")


@cache
def _made(path: Path, units: str) -> tuple[Result, Plan]:
    from boardwright.library import check, load, plan

    result = check(load(path), "mm" if units == "mm" else "in")
    made = plan(result).plan
    assert made is not None
    return result, made


@pytest.fixture(scope="session")
def example() -> Callable[[str, str], tuple[Result, Plan]]:
    """An example by name, checked and planned in either unit."""
    paths = {p.stem: p for p in EXAMPLES}
    return lambda name, units: _made(paths[name], units)
