"""Writes the tables of keys in `docs/design-file.md` from the schema and the tables of the package.

python tools/design_docs.py
"""

from __future__ import annotations

import csv
import re
from importlib.resources import files
from pathlib import Path
from typing import Any, Literal, get_args, get_origin

from annotated_types import Ge, Gt, Le, MaxLen, MinLen
from pydantic import BaseModel
from pydantic.fields import FieldInfo

from boardwright.design import schema
from boardwright.tables import default_tables

PAGE = Path(__file__).resolve().parent.parent / "docs" / "design-file.md"
HEAD = "| key | takes | meaning | when left out |\n|---|---|---|---|"
_BLOCK = re.compile(r"<!-- keys: (\w+) -->\n.*?<!-- end -->", re.DOTALL)
_FIGURE = re.compile(r"\{(moisture:)?(\w+)(\.high)?\}")
_PLAIN: dict[Any, str] = {
    str: "text", int: "whole number", float: "number", bool: "`true` or `false`", schema.Length: "length",
}  # fmt: skip


def models() -> dict[str, type[schema.Keys]]:
    """Every mapping of the file, by name, in the order of the schema."""
    found = [m for m in vars(schema).values() if isinstance(m, type) and issubclass(m, schema.Keys)]
    return {m.__name__: m for m in found if m is not schema.Keys}


def own_fields(model: type[BaseModel]) -> dict[str, FieldInfo]:
    """The keys that a mapping does not take over from another."""
    return {name: f for name, f in model.model_fields.items() if name in model.__annotations__}


def left_out(field: FieldInfo) -> str:
    """What is taken when a key is left out; "" when none is said."""
    extra = field.json_schema_extra
    return str(extra.get("left_out", "")) if isinstance(extra, dict) else ""


def page_text(page: str) -> str:
    """The page with every table of keys written anew."""
    places = _places(page)

    def block(m: re.Match[str]) -> str:
        rows = [_row(f.alias or name, f, places) for name, f in own_fields(models()[m[1]]).items()]
        return "\n".join([f"<!-- keys: {m[1]} -->", HEAD, *rows, "<!-- end -->"])

    return _BLOCK.sub(block, page)


def _places(page: str) -> dict[str, str]:
    """The heading over the table of each mapping, as a link."""
    found, link = {}, ""
    for line in page.splitlines():
        if heading := re.match(r"#+ (.*)", line):
            slug = re.sub(r"[^\w\- ]", "", heading[1].lower()).replace(" ", "-")
            link = f"[{heading[1]}](#{slug})"
        elif table := re.match(r"<!-- keys: (\w+) -->", line):
            found[table[1]] = link
    return found


def _row(name: str, field: FieldInfo, places: dict[str, str]) -> str:
    takes = _takes(field.annotation, places) + _limits(field)
    default = "must be given" if field.is_required() else _filled(left_out(field))
    return f"| `{name}` | {takes} | {field.description} | {default} |"


def _takes(annotation: Any, places: dict[str, str]) -> str:
    origin, args = get_origin(annotation), [a for a in get_args(annotation) if a is not type(None)]
    if origin is Literal:
        return ", ".join(f"`{a}`" for a in args)
    if origin is list:
        item = _takes(args[0], places)
        return f"list of {item}s" if item == "length" else f"list of {item}"
    if origin is dict:
        return f"names, each with {_takes(args[1], places)}"
    if hasattr(annotation, "__metadata__"):
        return _takes(annotation.__origin__, places)
    if args:
        return " or ".join(dict.fromkeys(_takes(a, places) for a in args))
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return places[annotation.__name__]
    return _PLAIN[annotation]


def _limits(field: FieldInfo) -> str:
    words: dict[type[Any], str] = {Ge: "at least {ge:g}", Gt: "over {gt:g}", Le: "at most {le:g}"}
    said = [words[type(m)].format(**vars_of(m)) for m in field.metadata if type(m) in words]
    least = next((m.min_length for m in field.metadata if isinstance(m, MinLen)), 0)
    most = next((m.max_length for m in field.metadata if isinstance(m, MaxLen)), None)
    if most is not None and most == least:
        said.append(f"{most} of them")
    elif least:
        said.append("not empty")
    return "".join(f", {s}" for s in said)


def vars_of(limit: Any) -> dict[str, Any]:
    """The numbers of a limit."""
    return {name: getattr(limit, name) for name in ("ge", "gt", "le") if hasattr(limit, name)}


def _filled(text: str) -> str:
    return _FIGURE.sub(lambda m: _moisture(m[2]) if m[1] else _figure(m[2], bool(m[3])), text)


def _moisture(key: str) -> str:
    row = default_tables().moisture[key]
    return f"{row.average:g} %, from {row.low:g} to {row.high:g} % ({row.source}, {row.provenance})"


def _figure(key: str, high: bool) -> str:
    """A figure of the tables as its row writes it, with the key of the row and its source."""
    cells = _cells()[key]
    text, unit = cells["high" if high else "value"], cells["unit"]
    figure = default_tables().figure(key)
    mm = figure.high if high else figure.value
    if unit == "in" and mm is not None:
        text = f"{text} in ({round(mm, 2):g} mm)"
    elif unit != "share":
        text = f"{text} {unit}"
    return f"{text} (`{key}`: {figure.reason})"


def _cells() -> dict[str, dict[str, str]]:
    data = files("boardwright.tables") / "data"
    rows: dict[str, dict[str, str]] = {}
    for name in ("allowances", "clearances", "proportions", "loads", "shop"):
        text = (data / f"{name}.csv").read_text(encoding="utf-8")
        rows |= {r["key"]: r for r in csv.DictReader(text.splitlines())}
    return rows


def main() -> None:
    """Write the page."""
    PAGE.write_text(page_text(PAGE.read_text(encoding="utf-8")), encoding="utf-8")


if __name__ == "__main__":
    main()
