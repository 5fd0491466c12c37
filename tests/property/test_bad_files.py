"""Spoilt design files give findings, never an exception, and the same findings every time."""

import random
from pathlib import Path

import pytest

from boardwright.core.findings import Finding
from boardwright.pipeline import check_text

ROOT = Path(__file__).parents[2]
EXAMPLES = sorted((ROOT / "examples").glob("*.yaml"))
SMALL = sorted((ROOT / "tests/errors").glob("*.yaml"))
NONSENSE = (
    "-1", "0", "1e9", "1e-9", "1e400", ".inf", ".nan", "''", "[]", "{}", "null", "true", '"1/0"', "a",
    "x" * 5000, "-3/4", "2026-01-01", "1_000", "0x1F", "{a: 1}",
    "[1, 2]", "!!python/name:os.system", "&a", "*a", "|",
    '"\\0"', "case.width", "-case.depth * 9", "stock.nothing", "'1' + '2'", "(((", "1/3 mm", "½",
    "999999999999", "12:30", "0.03125", "1/64", "300", "grain", "rails",
)  # fmt: skip
MARKS = (
    "\t", "\0", "\ufeff", "\r", "\x85", "\u2028", "  ", "-", ":", "#", "'", '"', "{", "]", "\\", "\U0001f600",
    "\ud800",
)  # fmt: skip
RUNS_PER_EXAMPLE = 60


def _spoil(text: str, dice: random.Random) -> str:
    lines = text.split("\n")
    for _ in range(dice.choice((1, 1, 1, 2, 4))):
        i = dice.randrange(len(lines))
        line = lines[i]
        match dice.randrange(8):
            case 0:
                del lines[i : i + dice.choice((1, 1, 3, 10))]
                lines = lines or [""]
            case 1:
                lines[i] = " " * dice.randrange(1, 5) + line
            case 2:
                lines[i] = line[dice.randrange(1, 4) :]
            case 3 | 4 | 5:
                lines[i] = _new_value(line, dice)
            case 6:
                lines.insert(dice.randrange(len(lines) + 1), line)
            case 7:
                at = dice.randrange(len(line) + 1)
                lines[i] = line[:at] + dice.choice(MARKS) + line[at:]
    return dice.choice(("\n", "\n", "\n", "\r\n")).join(lines)


def _new_value(line: str, dice: random.Random) -> str:
    """The line with one of its values replaced by nonsense."""
    starts = [i + 2 for i in range(len(line) - 1) if line[i : i + 2] == ": "]
    if not starts:
        return line + " " + dice.choice(NONSENSE)
    start = dice.choice(starts)
    ends = [e for e in (line.find(c, start) for c in ",}") if e >= 0]
    return line[:start] + dice.choice(NONSENSE) + line[min(ends, default=len(line)) :]


def _findings(text: str) -> tuple[Finding, ...]:
    return check_text(text, "spoilt.yaml").findings


def _judge(spoilt: str) -> None:
    first = _findings(spoilt)
    assert all(f.place.line >= 1 and f.place.column >= 1 for f in first), (spoilt, first)
    assert first == _findings(spoilt)


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: p.stem)
def test_spoilt_examples_give_findings_with_places(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    dice = random.Random(path.stem)
    for _ in range(RUNS_PER_EXAMPLE):
        _judge(_spoil(text, dice))


def test_spoilt_small_designs_give_findings_with_places() -> None:
    dice = random.Random(len(NONSENSE))
    for path in SMALL:
        for _ in range(3):
            _judge(_spoil(path.read_text(encoding="utf-8"), dice))


@pytest.mark.parametrize(
    "text", ["", "\0", "\ufeff", "\t", "-", "[", "a", "1", "null", "? ", "{", "%", "a: [", "\x85"]
)
def test_what_is_no_design_gives_one_finding(text: str) -> None:
    findings = _findings(text)
    assert [f.code.split(".")[0] for f in findings] == ["file"] * len(findings) != []
    assert all(f.place.line >= 1 for f in findings)


def test_a_byte_order_mark_and_windows_line_ends_change_nothing() -> None:
    text = EXAMPLES[0].read_text(encoding="utf-8")
    plain = _findings(text)
    assert _findings(text.replace("\n", "\r\n")) == plain
    assert _findings("\ufeff" + text) == plain
