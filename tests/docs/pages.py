"""Reading the pages of the documentation."""

import re
from itertools import pairwise
from pathlib import Path

ROOT = Path(__file__).parents[2]


def page(name: str) -> str:
    return (ROOT / name).read_text(encoding="utf-8")


def blocks(text: str, language: str) -> list[str]:
    """The code blocks of a language."""
    return re.findall(rf"^```{language}\n(.*?)^```", text, re.DOTALL | re.MULTILINE)


def rows(text: str) -> list[list[str]]:
    """The cells of every row of every table, heads and rules left out."""
    lines = text.splitlines()
    found = []
    for before, line in pairwise(lines):
        if line.startswith("|") and before.startswith("|") and not line.startswith("|---"):
            found.append([cell.strip() for cell in line.strip("|").split("|")])
    return found
