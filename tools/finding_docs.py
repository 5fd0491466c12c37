"""Writes `docs/findings.md` from the pairs in `tests/errors`.

python tools/finding_docs.py
"""

from __future__ import annotations

import ast
import re
from pathlib import Path
from types import UnionType
from typing import get_args, get_origin

from pydantic import BaseModel

from boardwright.design.schema import DesignFile

ROOT = Path(__file__).resolve().parent.parent
PAIRS = ROOT / "tests" / "errors"
PAGE = ROOT / "docs" / "findings.md"
GROUPS = {
    "file": "The file",
    "size": "Sizes",
    "stock": "Stock",
    "place": "Where the piece will live",
    "piece": "The piece",
    "case": "Cases",
    "table": "Tables, benches, stools",
    "box": "Boxes",
    "space": "Spaces",
    "part": "Loose parts",
    "joint": "Joints",
    "drawer": "Drawers",
    "door": "Doors and lids",
    "frame": "Frames",
    "fastener": "Screws and dowels",
    "wood": "Movement of the wood",
    "strength": "Sag and strength",
    "stability": "Standing",
    "weight": "Weight",
    "passage": "The way to its place",
    "fit": "The dry fit",
    "tolerance": "Fits as the shop cuts them",
    "making": "Making",
    "assembly": "Putting it together",
    "tables": "Table files",
    "rack": "The rack",
}
GUARDS = {
    "stock.layout-invalid": "A layout is checked by code that knows nothing of how it was found. No "
    "design is known that makes this check fail; if it ever does, the layout is not to be used.",
    "wood.slot-short": "A slot is as long as what moves past its screw. Every construction makes them so; this check "
    "holds them against the movement once more.",
    "rack.busy": "Another program has been writing to the rack for as long as this one was ready to wait.",
    "rack.newer": "The rack was written by a newer Boardwright. It is left as it is.",
    "rack.no-driver": "A rack in PostgreSQL is named, and the package psycopg is not installed.",
}
"""Codes that no design, and no row of commands, should be able to give."""
INTRO = """# Findings

Everything that Boardwright can say about a design, with the smallest design that makes it say so. An error
will fail, a warning may fail, a note is worth knowing. Each finding gives its place as file, line and column,
what was found, what was expected, where that limit comes from, and what to do.

For a finding of the rack the commands that bring it about are shown instead of a design.

This page is written by `tools/finding_docs.py` from the pairs in `tests/errors`; a test compares them.
"""
_CODE = re.compile(rf"({'|'.join(GROUPS)})\.[a-z]+(-[a-z]+)*")


def codes_in_source() -> set[str]:
    """Every finding code that stands in the code: what a call gives as its first or second argument."""
    found: set[str] = set()
    for file in sorted((ROOT / "src" / "boardwright").rglob("*.py")):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call):
                found |= _given_to(node)
    return {code for code in found if not _is_key(code)}


def _given_to(call: ast.Call) -> set[str]:
    name = call.func.id if isinstance(call.func, ast.Name) else getattr(call.func, "attr", "")
    texts = [a.value for a in call.args[:2] if isinstance(a, ast.Constant) and isinstance(a.value, str)]
    if name == "problem":
        return {f"tables.{texts[0]}"} if texts else set()
    if name == "Finding":
        return set(texts[:1])
    return set() if name in ("add", "startswith") else {t for t in texts if _CODE.fullmatch(t)}


def _is_key(code: str) -> bool:
    """True for a path of the design file, such as `case.back`, which looks like a code."""
    top, _, name = code.partition(".")
    field = DesignFile.model_fields.get(top)
    models = (
        get_args(field.annotation) if field is not None and get_origin(field.annotation) is UnionType else ()
    )
    return any(isinstance(m, type) and issubclass(m, BaseModel) and name in m.model_fields for m in models)


def page_text() -> str:
    """The page."""
    parts = [INTRO]
    codes = sorted(p.stem for p in (*PAIRS.glob("*.yaml"), *PAIRS.glob("*.words")))
    for group, title in GROUPS.items():
        own = [c for c in codes if c.startswith(f"{group}.")]
        if own:
            parts += [f"## {title}", *(_entry(c) for c in own)]
        parts += [f"### {c}\n\n*error.* {why}" for c, why in GUARDS.items() if c.startswith(f"{group}.")]
    return "\n\n".join(p.strip() for p in parts) + "\n"


def _entry(code: str) -> str:
    if (PAIRS / f"{code}.words").exists():
        return _words_entry(code)
    meaning, _, design = (PAIRS / f"{code}.yaml").read_text(encoding="utf-8").partition("\n")
    text = (PAIRS / f"{code}.txt").read_text(encoding="utf-8")
    table = PAIRS / f"{code}.csv"
    rows = table.read_text(encoding="utf-8") if table.exists() else ""
    severity = text.split(" ", 1)[0]
    parts = [
        f"### {code}",
        f"*{severity}.* {meaning.removeprefix('# ')}",
        _fenced("yaml", meaning + "\n" + design),
    ]
    if rows:
        parts += [f"with `{code}.csv`", _fenced("", rows)]
    return "\n\n".join([*parts, _fenced("", text)])


def _words_entry(code: str) -> str:
    """A finding of the rack: the commands that bring it about."""
    meaning, _, words = (PAIRS / f"{code}.words").read_text(encoding="utf-8").partition("\n")
    text = (PAIRS / f"{code}.txt").read_text(encoding="utf-8")
    severity = text.split(" ", 1)[0]
    parts = [
        f"### {code}",
        f"*{severity}.* {meaning.removeprefix('# ')}",
        _fenced("", words),
        _fenced("", text),
    ]
    return "\n\n".join(parts)


def _fenced(language: str, text: str) -> str:
    return f"```{language}\n{text.rstrip()}\n```"


def main() -> None:
    """Write the page."""
    PAGE.write_text(page_text(), encoding="utf-8")


if __name__ == "__main__":
    main()
