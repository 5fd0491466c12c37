"""Keys for doors, one or a pair, and how they are hung."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator

from boardwright.design.keys.base import Keys, LengthText, optional
from boardwright.design.keys.frames import Frame
from boardwright.design.keys.joints import JointSpec


class Hinges(Keys):
    """Hinges of a door or lid. A plain word, such as `cup`, stands for `{kind: cup}`."""

    kind: Literal["butt", "continuous", "cup"] | None = optional(
        "butt hinges let into both parts, one along the whole edge, or cup hinges",
        "inset doors and lids: `butt`; overlay doors: `cup` (common practice)",
    )
    count: int | None = optional(
        "how many",
        "butt: two under {butt_hinge_two_under}, three up to twice {hinge_one_more}, and one more for each further "
        "one; cup: by height, two to {cup_hinge_height_2}, and by weight, two to {cup_hinge_weight_2}, the larger",
        ge=2,
        le=12,
    )
    length: LengthText | None = optional(
        "butt: length of a hinge",
        "by the height of the door: {butt_hinge_length_12} to 12 in, {butt_hinge_length_24} to 24 in, "
        "{butt_hinge_length_36} to 36 in, else {butt_hinge_length_48}",
    )
    leaf: LengthText | None = optional(
        "width of a leaf, from the middle of the pin",
        "butt: {butt_hinge_leaf}; continuous: {continuous_hinge_leaf}; less where the wood is thin",
    )
    screw: int | None = optional(
        "butt, continuous: number (gauge) of its screws",
        "No. 4 for hinges to 1 1/2 in, No. 5 to 2 in, else No. 6 (common practice)",
        ge=2,
        le=12,
    )
    screw_length: LengthText | None = optional(
        "butt, continuous: length of its screws, as they come with it",
        "3/4, 5/8 or 1/2 in, the longest that leaves 1/8 in of wood (common practice)",
    )
    plate: LengthText | None = optional(
        "butt, continuous: thickness of a leaf at its screw holes, where it was measured", "not looked at"
    )
    edge: LengthText | None = optional("cup: from the edge of the door to the bore", "{cup_hinge_edge}")


def _hinges(value: Any) -> Any:
    return {"kind": value} if isinstance(value, str) else value


HingeSpec = Annotated[Hinges, BeforeValidator(_hinges)]


class Knob(Keys):
    """A knob, screwed through the door."""

    up: LengthText | None = optional("its height over the lower edge of the door", "half of the door")
    hole: LengthText | None = optional("diameter of its hole", "{knob_hole}")


class DoorKeys(Keys):
    """What one door and a pair of doors have in common."""

    made: Literal["slab", "frame"] | None = optional(
        "one board or sheet, or a frame with panels",
        "`frame` when `frame` is given, else `slab` (common practice)",
    )
    set: Literal["inset", "overlay", "half_overlay"] | None = optional(
        "inside its opening, over the case, or over half of the parts round it", "`inset` (common practice)"
    )
    stock: str | None = optional("stock", "`case.stock`")
    gap: LengthText | None = optional(
        "inset: between the door and its opening, each side; overlay: between two doors that meet",
        "inset: {door_gap_inset}, or what the door swells; overlay: {overlay_front_gap}; settled up",
    )
    battens: int | None = optional(
        "slab of solid wood: battens screwed across its back, in slots",
        "2; none for a sheet, or under 6 in (152.4 mm) wide (common practice)",
        ge=0,
        le=6,
    )
    frame: Frame | None = optional("the frame", "as each of its keys says")
    hinges: HingeSpec | None = optional("the hinges", "as each of its keys says")
    opens: float | None = optional("how far it opens, in degrees", "90 (common practice)", ge=30, le=170)
    knob: Knob | None = optional("a knob", "`{}`: one, as each of its keys says")
    catch: Literal["magnetic", "none"] | None = optional(
        "what holds it shut",
        "`magnetic`; `none` with cup hinges, and where drawers or trays run behind it (common practice)",
    )


class Door(DoorKeys):
    """A door in front of a space."""

    hinged: Literal["left", "right"] | None = optional("the side with the hinges", "`left`")


class DoorPair(DoorKeys):
    """Two doors in front of a space, hinged at the left and at the right."""

    meeting: LengthText | None = optional(
        "gap between the two", "inset: as `gap`; overlay: {door_gap_pair}; settled up"
    )
    strip: Literal["none", "left", "right"] | None = optional(
        "a strip over that gap, on the front of the left or the right door, which opens first", "`none`"
    )
    strip_width: LengthText | None = optional("width of the strip", "{door_strip_width}")


class FixedPanel(Keys):
    """A board fixed before a space, as before the well under a lid. The word `fixed` stands for `{}`."""

    stock: str | None = optional("stock", "`case.stock`")
    joint: JointSpec | None = optional("how it meets the parts at its ends", "`tongue` (common practice)")


def _fixed(value: Any) -> Any:
    return {} if value == "fixed" else value


FixedSpec = Annotated[FixedPanel, BeforeValidator(_fixed)]
