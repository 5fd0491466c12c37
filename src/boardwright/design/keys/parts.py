"""Keys for loose parts, where they stand, and their joints."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field

from boardwright.design.keys.base import Keys, LengthText, optional
from boardwright.design.keys.cuts import CutSpec
from boardwright.design.keys.joints import JointKeys
from boardwright.design.keys.stock import Sawn


class PlaceKeys(Keys):
    """Where a part stands along one axis. A plain length stands for `{at: …}`."""

    at: LengthText | None = optional("where its low side lies", "none; one of these five keys is needed")
    against: str | None = optional(
        "a side of another part that it touches, such as `shelf.top`: PART.left, .right, .front, .rear, .under, .top",
        "none",
    )
    flush: str | None = optional(
        "a side of another part that its own side of that name lies level with", "none"
    )
    between: list[str] | None = optional(
        "two sides that it stands between; its length or width, when left out, is the room between them",
        "none",
        min_length=2,
        max_length=2,
    )
    centred_on: str | None = optional("a part, whose middle is its middle", "none")
    off: LengthText | None = optional(
        "away from the side it is set against, inward from one it is flush with, towards the high end from a middle",
        "0",
    )


def _place(value: Any) -> Any:
    return value if isinstance(value, dict | PlaceKeys) else {"at": value}


PlaceSpec = Annotated[PlaceKeys, BeforeValidator(_place)]


class Places(Keys):
    """Where a part stands, axis by axis."""

    x: PlaceSpec = Field(description="left to right")
    y: PlaceSpec = Field(description="front to back")
    z: PlaceSpec = Field(description="upward")


class LoosePart(Keys):
    """A part that no form covers."""

    stock: str = Field(description="stock")
    length: LengthText | None = optional("with the grain", "the room that `between` leaves along it")
    width: LengthText | None = optional("across the grain", "the room that `between` leaves along it")
    along: Literal["x", "y", "z"] = Field(description="piece axis of its length: x right, y back, z up")
    across: Literal["x", "y", "z"] = Field(description="piece axis of its width")
    at: list[LengthText] | None = optional(
        "its lowest corner: x, y, z", "none; `place` is given instead", min_length=3, max_length=3
    )
    place: Places | None = optional("where it stands, axis by axis", "none; `at` is given instead")
    sawn: Sawn | None = optional("how the boards of this part were sawn", "as its stock says")
    rings: float | None = optional(
        "angle between the growth rings and the face of this part [degrees]", "as its stock says", ge=0, le=90
    )
    name: str | None = optional("what the plan calls it", "its key, with spaces for `_`")
    cuts: list[CutSpec] | None = optional("its own cuts", "no cuts of its own; joints add theirs")


class LooseJoint(JointKeys):
    """A joint of two named parts."""

    first: str = Field(
        description="part that receives: gets the dado or rabbet, or lies under the screw head"
    )
    second: str = Field(description="part that goes in")
