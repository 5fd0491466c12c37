"""Pastes the help of each command into `docs/commands.md`.

python tools/command_docs.py
"""

from __future__ import annotations

import re
from pathlib import Path

import typer
from typer.testing import CliRunner

from boardwright.cli.main import app

PAGE = Path(__file__).resolve().parent.parent / "docs" / "commands.md"
_BLOCK = re.compile(r"<!-- help: ([\w -]+?) -->\n.*?<!-- end -->", re.DOTALL)


def commands(of: typer.Typer = app, before: str = "") -> list[str]:
    """The words that may follow `boardwright`: `plan`, `rack`, `rack add`, `rack add board`."""
    found = [f"{before}{c.name or c.callback.__name__}" for c in of.registered_commands if c.callback]
    for group in of.registered_groups:
        name = f"{before}{group.name}"
        assert group.typer_instance is not None
        found += [name, *commands(group.typer_instance, f"{name} ")]
    return found


def help_text(command: str) -> str:
    """What `boardwright COMMAND --help` prints."""
    words = [] if command == "boardwright" else command.split()
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
