"""Design file → `Design`: schema, units, lengths and references, every problem at its line and column."""

from __future__ import annotations

import difflib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, get_args, get_origin

from pydantic import BaseModel, ValidationError
from pydantic.fields import FieldInfo

from boardwright.core.arithmetic import ArithmeticProblem, parse
from boardwright.core.findings import Finding, Place, Severity
from boardwright.core.lengths import LengthError, Units, read_length, read_step
from boardwright.design.schema import DesignFile, Length
from boardwright.design.source import Source, join, read_source

FORMAT_VERSION = 1
DEFAULT_STEP = {"in": "1/32", "mm": "0.5"}


@dataclass(frozen=True, slots=True)
class Design:
    """A design file that has the right shape.

    Attributes:
        file: the strict model.
        source: text and places.
        step: finest step that is printed [mm].
        lengths: path → text of every length in the file.
        units: units the plan is printed in; bare numbers in the file are in `file.units`.
    """

    file: DesignFile
    source: Source
    step: float
    lengths: Mapping[str, str | int | float]
    units: str

    def place(self, path: str) -> Place:
        """Where a path stands in the file."""
        return self.source.place(path)


def load_text(
    text: str, name: str = "design", units: str | None = None
) -> tuple[Design | None, list[Finding]]:
    """Read a design from text.

    Args:
        text: the file's text.
        name: file name for places.
        units: `in` or `mm` to print in other units than the file's; None keeps the file's.

    Returns:
        The design, or None when its shape is wrong; and every finding.
    """
    source, findings = read_source(text, name)
    if source is None:
        return None, findings
    version = source.data.get("boardwright")
    if isinstance(version, int) and not isinstance(version, bool) and version > FORMAT_VERSION:
        return None, [
            Finding(
                "file.newer-format",
                Severity.ERROR,
                f"the file is in format {version}, this program reads up to {FORMAT_VERSION}",
                source.place("boardwright"),
                found=str(version),
                expected=f"boardwright: {FORMAT_VERSION}",
                remedy="update Boardwright, or lower the number if the file uses nothing newer",
            )
        ]
    try:
        file = DesignFile.model_validate(source.data)
    except ValidationError as e:
        return None, [_schema_finding(err, source) for err in e.errors(include_url=False)]
    lengths = dict(_lengths(file, ""))
    for path, raw in lengths.items():
        why = unreadable(raw, file.units)
        if why:
            findings.append(length_finding(source, path, raw, why))
    step, more = _step(file, source, units or file.units)
    findings += more
    return Design(file, source, step, lengths, units or file.units), findings


def _step(file: DesignFile, source: Source, units: str) -> tuple[float, list[Finding]]:
    raw = file.work_to if file.work_to is not None and units == file.units else DEFAULT_STEP[units]
    try:
        return read_step(raw, "mm" if units == "mm" else "in"), []
    except LengthError as problem:
        fallback = read_step(DEFAULT_STEP[units], "mm" if units == "mm" else "in")
        return fallback, [
            Finding(
                "size.step",
                Severity.ERROR,
                "the finest step to print is not usable",
                source.place("work_to"),
                found=str(raw),
                expected=_steps(problem, "mm" if units == "mm" else "in"),
                remedy=f"for example `work_to: {DEFAULT_STEP[units]}`",
            )
        ]


def _steps(problem: LengthError, units: Units) -> str:
    """The steps that are usable, also when what is written is no length at all."""
    if problem.instead.startswith("one of"):
        return problem.instead
    try:
        read_step(7, units)
    except LengthError as refused:
        return refused.instead
    return ""


def _lengths(model: BaseModel, path: str) -> Iterator[tuple[str, str | int | float]]:
    for name in type(model).model_fields:
        yield from _lengths_in(getattr(model, name), join(path, name))


def _lengths_in(value: Any, path: str) -> Iterator[tuple[str, str | int | float]]:
    if isinstance(value, Length):
        yield path, value.raw
    elif isinstance(value, BaseModel):
        yield from _lengths(value, path)
    elif isinstance(value, dict):
        for key, item in value.items():
            yield from _lengths_in(item, join(path, key))
    elif isinstance(value, list):
        for i, item in enumerate(value):
            yield from _lengths_in(item, join(path, i))


def unreadable(raw: str | int | float, units: Units) -> str:
    """Why a length cannot be read as it stands in the file, and what to write; "" when it can."""
    try:
        if isinstance(raw, str):
            parse(raw, units)
        else:
            read_length(raw, units)
    except ArithmeticProblem as problem:
        return f"at {problem}"
    except LengthError as problem:
        return f"that {problem.why}"
    return ""


def length_finding(source: Source, path: str, raw: object, why: str) -> Finding:
    """A length at a path that cannot be read, and why."""
    return Finding(
        "size.unreadable",
        Severity.ERROR,
        f"`{_short(raw)}` cannot be read as a length",
        source.place(path),
        found=why,
        expected="a length such as `3/4`, `1 3/8`, `2 ft 6 in`, `19 mm`, or a sum such as "
        "`case.width / 2 - 1/4`",
        remedy="write the length in one of these ways",
    )


def _walk(data: Any, loc: tuple[str | int, ...]) -> tuple[str, Any]:
    """The part of a location that exists in the file, and what stands there."""
    path = ""
    for key in loc:
        if isinstance(data, dict) and key not in data and data.get("kind") == key:
            continue
        known = isinstance(key, int) and key < len(data) if isinstance(data, list) else False
        if not known and not (isinstance(data, dict) and key in data):
            break
        data = data[key]
        path = join(path, key)
    return path, data


def _strip(annotation: Any) -> Any:
    """The model inside `X | None`, `list[X]`, `dict[str, X]` and annotations."""
    while annotation is not None and not (isinstance(annotation, type) and get_origin(annotation) is None):
        args = [a for a in get_args(annotation) if a is not type(None)]
        if not args:
            return None
        told_apart = [a for a in args if isinstance(a, FieldInfo) and a.discriminator]
        if told_apart:
            return _Choice(_by_kind(get_args(args[0]), str(told_apart[0].discriminator)))
        origin = get_origin(annotation)
        annotation = args[1] if origin is dict else args[0]
        if origin in (list, dict):
            return _Container(_strip(annotation))
    return annotation


@dataclass(frozen=True)
class _Container:
    item: Any


@dataclass(frozen=True)
class _Choice:
    """Mappings that are told apart by a word in them."""

    by_word: dict[str, Any]


def _by_kind(models: tuple[Any, ...], key: str) -> dict[str, Any]:
    return {word: m for m in models for word in get_args(m.model_fields[key].annotation)}


def _schema_finding(err: Any, source: Source) -> Finding:
    loc = tuple(err["loc"])
    path, found = _walk(source.data, loc)
    if err["type"] == "extra_forbidden":
        return _unknown_key(loc, source)
    if err["type"] == "missing":
        key = loc[-1]
        return Finding(
            "file.missing-key",
            Severity.ERROR,
            f"`{key}` is missing" + (f" in `{path}`" if path else ""),
            source.place(path),
            expected=f"`{join(path, key)}: …`",
            remedy="add the key; docs/design-file.md says what it means",
        )
    message = str(err["msg"]).removeprefix("Value error, ").removeprefix("Input should be ")
    return Finding(
        "file.wrong-value",
        Severity.ERROR,
        f"`{path or source.name}` has a value that cannot be used",
        source.place(path),
        found=_short(found),
        expected=message[:1].lower() + message[1:],
        remedy="see docs/design-file.md for what this key takes",
    )


def _short(value: Any) -> str:
    if isinstance(value, dict):
        return "a mapping with " + ", ".join(list(map(str, value))[:5]) if value else "an empty mapping"
    if isinstance(value, list):
        return f"a list of {len(value)}"
    return "nothing" if value is None else str(value)[:80]


def _unknown_key(loc: tuple[str | int, ...], source: Source) -> Finding:
    key = str(loc[-1])
    known = _keys_at(loc[:-1])
    near = difflib.get_close_matches(key.lower().replace("-", "_"), known, 1, 0.6)
    path, _ = _walk(source.data, loc)
    return Finding(
        "file.unknown-key",
        Severity.ERROR,
        f"`{key}` is no key that is known here",
        source.place(path),
        found=key,
        expected="one of " + ", ".join(sorted(known)) if known else "no such key",
        remedy=f"did you mean `{near[0]}`?" if near else "remove it, or see docs/design-file.md",
    )


def _keys_at(loc: tuple[str | int, ...]) -> list[str]:
    model: Any = DesignFile
    for key in loc:
        if isinstance(model, _Choice):
            model = model.by_word.get(str(key))
        elif isinstance(model, _Container):
            model = model.item
        elif isinstance(model, type) and issubclass(model, BaseModel) and key in model.model_fields:
            model = _strip(model.model_fields[str(key)].annotation)
        else:
            return []
    if not (isinstance(model, type) and issubclass(model, BaseModel)):
        return []
    return [f.alias or name for name, f in model.model_fields.items()]
