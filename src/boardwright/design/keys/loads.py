"""Keys for what the piece will carry, and who will lift it."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from boardwright.design.keys.base import Keys, optional

Use = Literal["books", "clothes", "tools", "china", "household", "nothing"]
Mass = Annotated[float, Field(gt=0)]


class Loads(Keys):
    """Loads that strength, sag and tipping are figured with. A number is pounds, or kilograms in `mm` files."""

    shelves: Use | Mass | None = optional("what each shelf carries, or how much", "`books`: {books_per_length}")
    drawers: Use | Mass | None = optional(
        "what each drawer, tray or box holds, or how much", "`clothes`: {drawer_load_clothing}"
    )
    top: Use | Mass | None = optional(
        "what the top carries, or how much", "`household`: {drawer_load_kitchen}"
    )
    lifts: Literal["one person", "two persons"] | None = optional(
        "who will lift the piece", "`two persons`; more weight than that is only a note"
    )
