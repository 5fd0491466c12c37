"""Keys for the way from the shop to the place: a door, a corner, a stair, a vehicle, the ceiling."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from boardwright.design.keys.base import Keys, LengthText, optional


class DoorOpening(Keys):
    """A door, clear between its stops and with its leaf wide open."""

    width: LengthText = Field(description="clear width")
    height: LengthText = Field(description="clear height")


class CorridorCorner(Keys):
    """A corridor that turns a right angle."""

    width: LengthText = Field(description="width of the corridor, clear between the walls")
    into: LengthText | None = optional("width of the corridor behind the corner", "as wide as before it")
    height: LengthText | None = optional(
        "clear height; what is long is then tipped up as far as it allows", "the height is not looked at"
    )


class StairTurn(Keys):
    """A stair with a landing on which it turns."""

    width: LengthText = Field(description="width of the flights, clear between wall and handrail")
    landing: LengthText | None = optional(
        "depth of the landing, in the direction in which one comes up", "as deep as the flights are wide"
    )
    turn: Literal["quarter", "half"] | None = optional(
        "`half`: the next flight runs back beside the first", "`quarter`"
    )
    well: LengthText | None = optional("between the two flights of a half turn", "0")
    headroom: LengthText | None = optional("clear height over the landing", "the height is not looked at")


class Vehicle(Keys):
    """What the piece is driven in."""

    length: LengthText = Field(description="clear length of the load space, its doors shut")
    width: LengthText = Field(description="clear width of the load space, between the wheel arches")
    height: LengthText = Field(description="clear height of the load space")
    opening: DoorOpening | None = optional("its opening", "as wide and as high as the load space")


class Delivery(Keys):
    """The way from the shop to the place."""

    door: DoorOpening | None = optional(
        "the narrowest door on the way",
        "a note is given only where no usual door takes it: {usual_door_width} x {usual_door_height}",
    )
    corner: CorridorCorner | None = optional("the tightest corner of a corridor", "none is looked at")
    stair: StairTurn | None = optional("the tightest turn of a stair", "none is looked at")
    vehicle: Vehicle | None = optional("the load space it is driven in", "none is looked at")
    ceiling: LengthText | None = optional("height of the room in which it is stood up", "it is not looked at")
