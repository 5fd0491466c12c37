"""Pastes the help of each command into `docs/commands.md`.

python tools/command_docs.py
"""

from __future__ import annotations

import re
from pathlib import Path

from typer.testing import CliRunner

from boardwright.cli.main import app

PAGE = Path(__file__).resolve().parent.parent / "docs" / "commands.md"
_BLOCK = re.compile(r"<!-- help: (\w+) -->\n.*?<!-- end -->", re.DOTALL)


def commands() -> list[str]:
    """The words that may follow `boardwright`."""
    return [str(c.name or c.callback.__name__) for c in app.registered_commands if c.callback]


def help_text(command: str) -> str:
    """What `boardwright COMMAND --help` prints."""
    words = [] if command == "boardwright" else [command]
    shown = CliRunner().invoke(app, [*words, "--help"], prog_name="boardwright", terminal_width=88)
    return "\n".join(line.rstrip() for line in shown.output.strip().splitlines())


def page_text(page: str) -> str:
    """The page with every help text pasted anew."""
    return _BLOCK.sub(lambda m: f"<!-- help: {m[1]} -->\n```\n{help_text(m[1])}\n```\n<!-- end -->", page)


def main() -> None:
    """Write the page."""
    PAGE.write_text(page_text(PAGE.read_text(encoding="utf-8")), encoding="utf-8")


if __name__ == "__main__":
    main()
