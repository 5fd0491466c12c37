"""Keys for what the piece will carry, and who will lift it."""

from __future__ import annotations

from typing import Annotated, Any, Literal, get_args

from pydantic import PlainValidator

from boardwright.design.keys.base import Keys, optional

Use = Literal["books", "clothes", "tools", "china", "household", "nothing"]


def _load(value: Any) -> str | float:
    if isinstance(value, str) and value in get_args(Use):
        return value
    if isinstance(value, (int, float)) and not isinstance(value, bool) and 0 < value < 1e6:
        return float(value)
    raise ValueError(f"one of {', '.join(f'`{u}`' for u in get_args(Use))}, or a number over 0")


Load = Annotated[Use | float, PlainValidator(_load)]


class Loads(Keys):
    """Loads that strength, sag and tipping are figured with. A number is pounds, or kilograms in `mm` files."""

    shelves: Load | None = optional("what each shelf carries, or how much", "`books`: {books_per_length}")
    drawers: Load | None = optional(
        "what each drawer, tray or box holds, or how much", "`clothes`: {drawer_load_clothing}"
    )
    top: Load | None = optional("what the top carries, or how much", "`household`: {drawer_load_kitchen}")
    lifts: Literal["one person", "two persons"] | None = optional(
        "who will lift the piece", "`two persons`; more weight than that is only a note"
    )
