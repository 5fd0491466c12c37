"""Keys for cuts on a loose part, in the part's own frame: one mapping for each kind of cut."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from boardwright.design.keys.base import Keys, LengthText, optional

SideName = Literal["face", "back", "edge", "far_edge", "end", "far_end"]
EndName = Literal["edge", "far_edge", "end", "far_end"]
AxisName = Literal["length", "width", "thickness"]


class GrooveKeys(Keys):
    """A groove or dado."""

    kind: Literal["groove"] = Field(description="a groove, or a dado across the grain")
    side: SideName = Field(description="side it is cut into")
    along: AxisName = Field(description="which way it runs")
    at: LengthText = Field(description="from the reference edge, end or back to its near wall")
    width: LengthText = Field(description="wall to wall")
    depth: LengthText = Field(description="depth")
    start: LengthText | None = optional("where it starts", "the near end")
    stop: LengthText | None = optional("where it stops", "the far end")


class RabbetKeys(Keys):
    """A rabbet."""

    kind: Literal["rabbet"] = Field(description="a step along an edge or end")
    side: SideName = Field(description="side it is cut into")
    edge: SideName = Field(description="edge or end that its width is measured from")
    width: LengthText = Field(description="from that edge inward")
    depth: LengthText = Field(description="depth")
    start: LengthText | None = optional("where it starts", "the near end")
    stop: LengthText | None = optional("where it stops", "the far end")


class NotchKeys(Keys):
    """A corner taken out through the whole thickness."""

    kind: Literal["notch"] = Field(description="a corner taken out through the whole thickness")
    end: Literal["end", "far_end"] = Field(description="the end it is measured from")
    edge: Literal["edge", "far_edge"] = Field(description="the edge it is measured from")
    length: LengthText = Field(description="along the grain")
    width: LengthText = Field(description="across the grain")


class HoleKeys(Keys):
    """A drilled hole or a slot."""

    kind: Literal["hole"] = Field(description="a drilled hole, or a slot")
    side: SideName = Field(description="side it is drilled from")
    from_end: LengthText | None = optional(
        "centre from the reference end", "none; needed unless drilled in an end"
    )
    from_edge: LengthText | None = optional(
        "centre from the reference edge", "none; needed unless drilled in an edge"
    )
    from_back: LengthText | None = optional("centre from the back face", "none; needed in an edge or an end")
    diameter: LengthText = Field(description="diameter")
    depth: LengthText | None = optional("depth", "it goes through")
    countersink: LengthText | None = optional("diameter of the countersink", "no countersink")
    counterbore: LengthText | None = optional("diameter of a wider hole for a head or plug", "no counterbore")
    counterbore_depth: LengthText | None = optional("depth of that", "half of the part")
    slot: LengthText | None = optional("length of a slot, from centre to centre of its ends", "a round hole")
    slot_along: AxisName | None = optional("which way the slot runs", "`length`")
    lean: float | None = optional("degrees from square", "0", ge=-60, le=60)
    lean_along: AxisName | None = optional("which way it leans, towards the far end or edge", "`length`")


class MortiseKeys(Keys):
    """A mortise."""

    kind: Literal["mortise"] = Field(description="a pocket with four walls")
    side: SideName = Field(description="side it is cut into")
    along: AxisName = Field(description="which way its length runs")
    at: LengthText = Field(description="from the reference edge, end or back to its near cheek")
    width: LengthText = Field(description="from cheek to cheek")
    start: LengthText = Field(description="where it starts")
    stop: LengthText = Field(description="where it stops")
    depth: LengthText | None = optional("depth", "it goes through")


class TenonKeys(Keys):
    """A tenon at an end."""

    kind: Literal["tenon"] = Field(description="what is left of an end")
    end: EndName = Field(description="the end or edge it stands out of")
    length: LengthText = Field(description="from shoulder to tip")
    face: LengthText | None = optional("shoulder cut from the face", "0")
    back: LengthText | None = optional("shoulder cut from the back", "0")
    near: LengthText | None = optional(
        "shoulder at the reference edge (of an edge tenon: reference end)", "0"
    )
    far: LengthText | None = optional("shoulder at the far edge (far end)", "0")
    haunch: LengthText | None = optional("length of a haunch where `far` cuts a shoulder", "0: no haunch")


class SocketKeys(Keys):
    """Fingers, tails or pins at an end, by the sockets between them."""

    kind: Literal["fingers", "tails", "pins"] = Field(description="what is left between the sockets")
    end: EndName = Field(description="the end or edge they are cut into")
    depth: LengthText = Field(description="how deep the sockets are; of pins, how far in from the end")
    sockets: list[list[LengthText]] = Field(
        min_length=1,
        description="from and to of each socket, from the reference edge: of tails at their tip, of pins at the side "
        "they are entered from",
    )
    slope: float | None = optional(
        "tails, pins: run of the slope, 8 for 1 : 8", "8 (common practice)", gt=1, le=20
    )
    side: Literal["face", "back"] | None = optional("pins: side they are entered from", "`back`")
    lap: LengthText | None = optional("pins: wood left in front of half-blind ones", "0: they go through")


class DovetailSlotKeys(Keys):
    """The slot of a sliding dovetail."""

    kind: Literal["dovetail_slot"] = Field(description="a channel wider at its bottom")
    side: SideName = Field(description="side it is cut into")
    along: AxisName = Field(description="which way it runs")
    at: LengthText = Field(description="from the reference edge, end or back to its mouth")
    width: LengthText = Field(description="of its mouth")
    depth: LengthText = Field(description="depth")
    slope: float | None = optional("run of the slope, 8 for 1 : 8", "8 (common practice)", gt=1, le=20)
    start: LengthText | None = optional("where it starts", "the near end")
    stop: LengthText | None = optional("where it stops", "the far end")


class DovetailTongueKeys(Keys):
    """The tongue of a sliding dovetail."""

    kind: Literal["dovetail_tongue"] = Field(
        description="a tongue wider at its tip, along a whole end or edge"
    )
    end: EndName = Field(description="the end or edge it stands out of")
    length: LengthText = Field(description="from shoulder to tip")
    face: LengthText = Field(description="cut from the face, at the tip")
    back: LengthText = Field(description="cut from the back, at the tip")
    slope: float | None = optional("run of the slope, 8 for 1 : 8", "8 (common practice)", gt=1, le=20)


class BevelKeys(Keys):
    """An end or edge cut at an angle."""

    kind: Literal["bevel"] = Field(description="a whole side cut off by a plane")
    side: SideName = Field(description="side that is cut")
    over_length: float | None = optional(
        "degrees off square over the length; more than 0 takes most at the far end", "0", gt=-89, lt=89
    )
    over_width: float | None = optional(
        "degrees off square over the width; more than 0 takes most at the far edge", "0", gt=-89, lt=89
    )
    over_thickness: float | None = optional(
        "degrees off square through the thickness; more than 0 takes most at the face", "0", gt=-89, lt=89
    )
    inward: LengthText | None = optional("how far in the corner lies from which nothing is taken", "0")


class TaperKeys(Keys):
    """A taper."""

    kind: Literal["taper"] = Field(description="a wedge taken off a side, deepest at an end")
    side: SideName = Field(description="side it is taken off")
    end: SideName = Field(description="end at which it is deepest")
    start: LengthText = Field(description="where it begins, from the reference end")
    depth: LengthText = Field(description="taken off at the end")


class EdgeKeys(Keys):
    """A shaped edge."""

    kind: Literal["chamfer", "round_over", "cove", "ogee", "profile"] = Field(description="shape of the edge")
    side: SideName = Field(description="one of the two sides that meet there")
    edge: SideName = Field(description="the other")
    size: LengthText | None = optional(
        "leg of the chamfer, radius, or reach of the ogee", "none; all but `profile` need it"
    )
    points: list[list[LengthText]] | None = optional(
        "profile: points of the line that is left: from `edge`, then from `side`",
        "none; `profile` needs two or more",
    )
    start: LengthText | None = optional("where it starts", "the near end")
    stop: LengthText | None = optional("where it stops", "the far end")


class RaisedFieldKeys(Keys):
    """The bevels round a raised panel."""

    kind: Literal["raised_field"] = Field(description="bevels round a field that is left")
    side: Literal["face", "back"] = Field(description="side with the field")
    width: LengthText = Field(description="from the edge to the field")
    tongue: LengthText = Field(description="thickness left at the edge")
    flat: LengthText | None = optional("from the edge to where the slope begins", "0")
    step: LengthText | None = optional("height of the step at the field", "0")
    edges: list[EndName] | None = optional("sides that are bevelled", "all four", min_length=1)


class CurveKeys(Keys):
    """A curved side."""

    kind: Literal["curve"] = Field(description="wood between a side and a curve, taken away")
    side: EndName = Field(description="side it is taken from")
    shape: Literal["arc", "spline", "line"] | None = optional(
        "an arc through three points, a smooth curve through all, or straight lines", "`spline`"
    )
    points: list[list[LengthText]] = Field(
        min_length=2,
        description="points of the curve: place along the side from the reference end or edge, then depth from it",
    )


class VGrooveKeys(Keys):
    """A V groove."""

    kind: Literal["v_groove"] = Field(description="a channel of V section")
    side: SideName = Field(description="side it is cut into")
    along: AxisName = Field(description="which way it runs")
    at: LengthText = Field(description="from the reference edge, end or back to its middle")
    width: LengthText = Field(description="at the side")
    depth: LengthText = Field(description="to the point of the V")
    start: LengthText | None = optional("where it starts", "the near end")
    stop: LengthText | None = optional("where it stops", "the far end")


CutKeys = (
    GrooveKeys
    | RabbetKeys
    | NotchKeys
    | HoleKeys
    | MortiseKeys
    | TenonKeys
    | SocketKeys
    | DovetailSlotKeys
    | DovetailTongueKeys
    | BevelKeys
    | TaperKeys
    | EdgeKeys
    | RaisedFieldKeys
    | CurveKeys
    | VGrooveKeys
)
CutSpec = Annotated[CutKeys, Field(discriminator="kind")]
