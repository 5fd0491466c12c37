"""The README shows what really comes of its design; links and chores in the documentation exist."""

import re
from pathlib import Path

import pytest
from pages import ROOT, blocks, page
from typer.testing import CliRunner

from boardwright.cli.main import app

README = page("README.md")
PAGES = [*ROOT.glob("*.md"), *ROOT.glob("docs/**/*.md")]


def test_the_lists_in_the_readme_are_those_of_its_design(tmp_path: Path) -> None:
    [design] = blocks(README, "yaml")
    assert len(design.splitlines()) == 10
    file = tmp_path / "thread-chest.yaml"
    file.write_text(design, encoding="utf-8")
    for words in (["list", str(file)], ["explain", str(file), "drawer.1.box"]):
        shown = CliRunner().invoke(app, words)
        assert shown.exit_code == 0
        assert f"```\n{shown.output.rstrip()}\n```" in README
    assert CliRunner().invoke(app, ["check", str(file)]).exit_code == 0


def test_the_picture_is_there_and_small() -> None:
    [picture] = re.findall(r"!\[[^\]]+\]\(([^)]+)\)", README)
    data = (ROOT / picture).read_bytes()
    assert data.startswith(b"\x89PNG")
    assert len(data) < 150_000


@pytest.mark.parametrize("path", PAGES, ids=lambda p: p.name)
def test_links_lead_somewhere(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    heads = re.findall(r"^#+ (.*)$", text, re.MULTILINE)
    anchors = {re.sub(r"[^\w\- ]", "", h.lower()).replace(" ", "-") for h in heads}
    for link in re.findall(r"\]\(([^)\s]+)\)", text.replace("\n", " ")):
        target, _, anchor = link.partition("#")
        assert (path.parent / target).exists(), link
        assert target or anchor in anchors, link


def test_chores_are_those_of_the_makefile() -> None:
    chores = set(re.search(r"\.PHONY: (.*)", page("Makefile"))[1].split())  # type: ignore[index]
    named = set(re.findall(r"`make ([a-z]+)`", page("CONTRIBUTING.md") + README))
    assert named <= chores
    assert chores - named <= {"clean"}


def test_decisions_say_context_choice_and_cost() -> None:
    pages = sorted((ROOT / "docs/decisions").glob("*.md"))
    assert [int(p.name[:4]) for p in pages] == list(range(1, len(pages) + 1))
    for p in pages:
        heads = re.findall(r"^#+ (.*)$", p.read_text(encoding="utf-8"), re.MULTILINE)
        assert heads[0].startswith(f"{int(p.name[:4])}. ")
        assert heads[1:] == ["Context", "Choice", "Cost"]
