"""What all keys of the design file are made of: lengths as written, and keys that may be left out."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, PlainValidator


@dataclass(frozen=True, slots=True)
class Length:
    """A length as written in the file: text or number."""

    raw: str | int | float


def _length(value: Any) -> Length:
    if isinstance(value, Length):
        return value
    if isinstance(value, bool) or not isinstance(value, (str, int, float)):
        raise ValueError("a length is expected, such as `3/4`, `19 mm` or `case.width / 2`")
    return Length(value)


LengthText = Annotated[Length, PlainValidator(_length)]


def _file_name(value: str) -> str:
    if not value.strip() or "\0" in value:
        raise ValueError("the name of a file")
    return value


FileName = Annotated[str, AfterValidator(_file_name)]


class Keys(BaseModel):
    """Base of every mapping in the file."""

    model_config = ConfigDict(extra="forbid", frozen=True, arbitrary_types_allowed=True)


def optional(meaning: str, left_out: str, *, value: Any = None, **limits: Any) -> Any:
    """A key that may be left out.

    Args:
        meaning: what it says.
        left_out: what is taken without it, and where that comes from; `{key}` stands for a figure of the
            tables, `{key.high}` for the upper end of its range, `{moisture:key}` for a row of moisture.
        value: what the record holds without it.
        limits: as pydantic takes them, e.g. `ge`, `min_length`.
    """
    return Field(value, description=meaning, json_schema_extra={"left_out": left_out}, **limits)
