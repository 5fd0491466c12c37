"""The examples of `docs/library.md` run, and what it says of threads holds."""

from concurrent.futures import ThreadPoolExecutor
from dataclasses import fields

import pytest
from pages import ROOT, blocks, page, rows

from boardwright import library
from boardwright.core.findings import Finding
from boardwright.piece.records import Part, Piece
from boardwright.pipeline import Result

PAGE = page("docs/library.md")


def test_the_examples_run(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(ROOT)
    names: dict[str, object] = {}
    examples = blocks(PAGE, "python")
    assert len(examples) >= 5
    for example in examples:
        exec(compile(example, "docs/library.md", "exec"), names)


def test_records_hold_what_the_page_says() -> None:
    table = {r[0].strip("`"): r[1] for r in rows(PAGE) if len(r) == 2}
    for record in (library.Loaded, library.Made, Result, Piece, Part, Finding):
        held = {f.name for f in fields(record)} | {"ok"}
        named = {word for i, word in enumerate(table[record.__name__].split("`")) if i % 2}
        assert named <= held, record.__name__


def test_threads_give_what_one_gives() -> None:
    designs = [library.load(p) for p in sorted((ROOT / "examples").glob("*.yaml"))]
    alone = [library.check(d) for d in designs]
    with ThreadPoolExecutor(4) as pool:
        together = list(pool.map(library.check, designs * 2))
    for one, other in zip(alone * 2, together, strict=True):
        assert one.piece == other.piece
        assert one.findings == other.findings
