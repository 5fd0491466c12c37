"""Every finding of the rack has the commands that bring it about and its exact text, as on docs/findings.md."""

import re
import runpy
import shlex
from pathlib import Path

import pytest
from typer.testing import CliRunner

from boardwright.cli.main import app

HERE = Path(__file__).parent
TOOL = runpy.run_path(str(HERE.parent.parent / "tools/finding_docs.py"))
CODES = sorted(c for c in TOOL["codes_in_source"]() - set(TOOL["GUARDS"]) if c.startswith("rack."))


def _said(words: str) -> str:
    """What the last command prints. `NAME:` and indented lines after it are a file that is there."""
    said = ""
    for block in re.split(r"\n(?=\S)", words.strip()):
        head, _, rest = block.partition("\n")
        if rest:
            text = re.sub(r"^    ", "", rest, flags=re.MULTILINE)
            Path(head.rstrip(":")).write_text(text.rstrip() + "\n", encoding="utf-8")
        else:
            program, *arguments = shlex.split(head)
            assert program == "boardwright"
            result = CliRunner().invoke(app, arguments)
            assert result.exit_code in (0, 1), result.output
            said = result.output
    return said


@pytest.mark.parametrize("code", CODES)
def test_the_commands_give_the_text(
    code: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, request: pytest.FixtureRequest
) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.delenv("BOARDWRIGHT_RACK", raising=False)
    meaning, _, words = (HERE / f"{code}.words").read_text(encoding="utf-8").partition("\n")
    assert meaning.startswith("# ")
    own = [b for b in _said(words).split("\n\n") if re.match(rf"(error|warning|note) {re.escape(code)}:", b)]
    assert own, "the commands do not give their finding"
    text = re.sub(r"\d{4}-\d\d-\d\dT[\d:]+\+00:00", "2026-03-05T12:00:00+00:00", "\n\n".join(own)) + "\n"
    golden = HERE / f"{code}.txt"
    if request.config.getoption("--update"):
        golden.write_text(text, encoding="utf-8")
    assert text == golden.read_text(encoding="utf-8"), "run make golden, and read what changed"


def test_every_code_of_the_rack_has_a_pair_and_every_pair_a_code() -> None:
    assert sorted(p.stem for p in HERE.glob("*.words")) == CODES
    assert sorted(p.stem for p in HERE.glob("rack.*.txt")) == CODES
