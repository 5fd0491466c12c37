"""Writes `docs/plan.schema.json` and `docs/plan-format.md` from the records of the code.

python tools/plan_format.py
"""

from __future__ import annotations

import inspect
import json
import sys
from dataclasses import MISSING, fields
from pathlib import Path
from typing import Any

from pydantic import BaseModel

from boardwright.drawings import records as drawings
from boardwright.piece import cuts
from boardwright.piece.codec import KINDS
from boardwright.plan import schema

DOCS = Path(__file__).resolve().parent.parent / "docs"
INTRO = """# plan.json

`plan.json` holds everything that any output prints. This page and `plan.schema.json` (JSON Schema, draft
2020-12) are written by `tools/plan_format.py` from the records in the code; a test compares them.

Lengths are millimetres. A size stands there twice: `mm`, the settled size, and `text`, what is printed in the
plan's units. Keys that are not listed are refused.
"""


def schema_text() -> str:
    """The JSON Schema of a plan, as a file."""
    document = {"$schema": "https://json-schema.org/draft/2020-12/schema", **schema.Plan.model_json_schema()}
    return json.dumps(document, indent=1, ensure_ascii=False) + "\n"


def page_text() -> str:
    """The readable page."""
    parts = [INTRO, _record(schema.Plan)]
    parts += [_record(r) for r in _models() if r is not schema.Plan]
    parts.append("## Cuts\n\n" + inspect.cleandoc(cuts.__doc__ or "").split("\n\n", 1)[1])
    parts.append("Every cut is an object with its `kind` and the keys below.")
    parts += [
        _fields(f"### {kind}", cls, "`for_` is written `for`." if kind == "hole" else "")
        for kind, cls in KINDS.items()
    ]
    parts.append("## Entities of drawings\n\n" + inspect.cleandoc(drawings.__doc__ or ""))
    entities = (drawings.Line, drawings.Circle, drawings.Fill, drawings.Text, drawings.Dimension)
    parts += [_fields(f"### {cls.__name__.lower()}", cls) for cls in entities]
    return "\n\n".join(p.strip() for p in parts) + "\n"


def _models() -> list[type[schema.Record]]:
    found = [m for _, m in inspect.getmembers(schema, inspect.isclass) if issubclass(m, schema.Record)]
    lines = {m: inspect.getsourcelines(m)[1] for m in found if m is not schema.Record}
    return sorted(lines, key=lambda m: lines[m])


def _record(model: type[BaseModel]) -> str:
    notes = _notes(model)
    rows = [
        (
            name,
            _type(model.__annotations__[name]),
            "" if f.is_required() else _default(f.get_default(call_default_factory=True)),
            notes.get(name, ""),
        )
        for name, f in model.model_fields.items()
    ]
    return f"## {model.__name__}\n\n{inspect.cleandoc(model.__doc__ or '')}\n\n{_table(rows)}"


def _fields(head: str, cls: type[Any], note: str = "") -> str:
    rows = [
        (f.name.rstrip("_"), _type(f.type), "" if f.default is MISSING else _default(f.default), "")
        for f in fields(cls)
    ]
    words = inspect.cleandoc(cls.__doc__ or "").replace("Attributes:\n", "").replace("\n    ", "\n- ")
    words = words.replace("\n-     ", "\n  ")
    return "\n\n".join(p for p in (head, words, note, _table(rows)) if p)


def _notes(model: type[BaseModel]) -> dict[str, str]:
    """The strings that stand under fields in the source."""
    notes, name = {}, ""
    for line in inspect.getsource(model).splitlines()[1:]:
        text = line.strip()
        if text.startswith('"""') and name:
            notes[name] = text.strip('"')
        name = text.split(":")[0] if ":" in text and not text.startswith('"""') else ""
    return notes


def _type(annotation: Any) -> str:
    text = annotation if isinstance(annotation, str) else inspect.formatannotation(annotation)
    return "`" + text.replace("|", "or") + "`"


def _default(value: Any) -> str:
    return f"`{json.dumps(value)}`"


def _table(rows: list[tuple[str, str, str, str]]) -> str:
    lines = ["| key | type | when left out | |", "|---|---|---|---|"]
    for key, *rest in rows:
        lines.append(" ".join(["|", f"`{key}`", "|", *(f"{cell} |" if cell else "|" for cell in rest)]))
    return "\n".join(lines)


def main() -> int:
    """Writes both files."""
    (DOCS / "plan.schema.json").write_text(schema_text(), encoding="utf-8")
    (DOCS / "plan-format.md").write_text(page_text(), encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
