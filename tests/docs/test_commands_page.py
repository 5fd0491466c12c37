"""`docs/commands.md` shows the help as it is, for every command."""

import re
import runpy

from pages import ROOT, page

TOOL = runpy.run_path(str(ROOT / "tools/command_docs.py"))
PAGE = page("docs/commands.md")


def test_the_page_is_up_to_date() -> None:
    assert TOOL["page_text"](PAGE) == PAGE, "run python tools/command_docs.py"


def test_every_command_has_its_heading_and_help() -> None:
    commands = {"boardwright", *TOOL["commands"]()}
    assert set(re.findall(r"<!-- help: ([\w -]+?) -->", PAGE)) == commands
    assert commands <= set(re.findall(r"^##+ ([\w -]+)$", PAGE, re.MULTILINE))
