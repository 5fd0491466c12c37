"""Runs the examples of `docs/rack.md` and pastes what they print.

python tools/rack_docs.py
"""

from __future__ import annotations

import os
import re
import shlex
import tempfile
from pathlib import Path

from typer.testing import CliRunner

from boardwright.cli.main import app

PAGE = Path(__file__).resolve().parent.parent / "docs" / "rack.md"
_BLOCK = re.compile(
    r"(?:^`(?P<name>[\w.-]+)`:\n\n)?^```(?P<kind>yaml|text|console)\n(?P<text>.*?)^```",
    re.DOTALL | re.MULTILINE,
)
_TIME = re.compile(r"\d{4}-\d\d-\d\dT[\d:]+\+00:00")


def page_text(page: str) -> str:
    """The page with what its commands print pasted anew; they are run in a folder of their own."""
    before = Path.cwd()
    kept = os.environ.pop("BOARDWRIGHT_RACK", None)
    with tempfile.TemporaryDirectory() as folder:
        os.chdir(folder)
        try:
            return _BLOCK.sub(_block, page)
        finally:
            os.chdir(before)
            if kept is not None:
                os.environ["BOARDWRIGHT_RACK"] = kept


def _block(found: re.Match[str]) -> str:
    if found["kind"] != "console":
        Path(found["name"]).write_text(found["text"], encoding="utf-8")
        return found[0]
    out = []
    for line in found["text"].splitlines():
        if line.startswith("$ "):
            out.append(line)
            out += _said(line.removeprefix("$ ")).splitlines()
    return "\n".join(["```console", *out, "```"])


def _said(line: str) -> str:
    program, *words = shlex.split(line)
    assert program == "boardwright"
    result = CliRunner().invoke(app, words, terminal_width=100)
    assert result.exit_code in (0, 1), f"{line}: {result.output}"
    return _TIME.sub("2026-03-05T12:00:00+00:00", result.output.rstrip())


def main() -> None:
    """Write the page."""
    PAGE.write_text(page_text(PAGE.read_text(encoding="utf-8")), encoding="utf-8")


if __name__ == "__main__":
    main()
