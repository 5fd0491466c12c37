"""Every situation from practice has its test: by its number, in data/practice.csv or beside the test."""

import csv
import re
from pathlib import Path

import pytest

HERE = Path(__file__).parent
NUMBERS = """
1 2 3 4 7 8 10 11 13 14 15 16 17 19 21 22 23 25 26 27 29 31 32 33 34 35 36 37 38 40 41 42 43 45 46 47 48 50 51 52 53 55
57 58 59 61 62 63 64 65 66 67 68 69 70 72 74 75 76 77 78 79 80 81 83 84 85 86 87 89
"""
SITUATIONS = [f"C{int(n):02}" for n in NUMBERS.split()]
ELSEWHERE = {
    "C19": "tests/validation/test_glue_up_cases.py: 14 joints",
    "C57": "tests/validation/test_shop_tolerance_cases.py: six boxes",
}
"""Tests beside which no number stands: file, and words of the test."""


def named() -> set[str]:
    """Every number that stands beside a test, or in the table."""
    with (HERE / "data" / "practice.csv").open(encoding="utf-8") as file:
        found = {row["case"] for row in csv.DictReader(file)}
    for test in HERE.glob("test_*.py"):
        found |= set(re.findall(r"^ *# (C\d\d)\.", test.read_text(encoding="utf-8"), re.MULTILINE))
    return found


@pytest.mark.parametrize("situation", SITUATIONS)
def test_situation_has_its_test(situation: str) -> None:
    if situation not in ELSEWHERE:
        assert situation in named()
        return
    file, words = ELSEWHERE[situation].split(": ")
    assert words in (HERE.parents[1] / file).read_text(encoding="utf-8")


def test_there_are_seventy() -> None:
    assert len(SITUATIONS) == len(set(SITUATIONS)) == 70
    assert named() <= set(SITUATIONS)
