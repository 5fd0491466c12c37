"""Keys for how two parts are joined."""

from __future__ import annotations

import re
from typing import Annotated, Any, Literal

from pydantic import AfterValidator, BeforeValidator, Field

from boardwright.design.keys.base import Keys, LengthText, optional


def _slope(value: str) -> str:
    found = re.fullmatch(r"\s*1\s*:\s*(\d+(?:\.\d+)?)\s*", value)
    if not found or not 2 <= float(found[1]) <= 20:
        raise ValueError("a slope such as `1:8`, from 1:2 to 1:20")
    return f"1:{found[1]}"


class JointKeys(Keys):
    """How two parts are joined. A plain word, such as `dado`, stands for `{kind: dado}`."""

    kind: Literal[
        "butt",
        "rabbet",
        "dado",
        "tongue",
        "double_rabbet",
        "edge",
        "mortise_tenon",
        "bridle",
        "half_lap",
        "mitre",
        "breadboard",
        "finger",
        "dovetail",
        "half_blind",
        "sliding_dovetail",
    ] = Field(description="kind of joint")
    depth: LengthText | None = optional(
        "depth of the dado, rabbet, tongue, groove or dovetail slot; half lap: into the first part; mitre: of the "
        "groove for a spline, or of the slot for a key from the outer corner; breadboard end: length of its tongue",
        "rabbet and double rabbet: {rabbet_depth_share} of the thickness it is cut in; dado and tongue: "
        "{dado_depth_share} of it; the dado of a drawer back: 1/4 of the side (common practice); "
        "where a part between two spaces may be cut from both faces, at most half of what {dado_web} "
        "between them leaves; the groove of a tongued or splined edge: {tongue_length}; half lap: half of what the "
        "parts share; spline of a mitre: {spline_depth}; key: 0.6 of the way to the inner corner, at most 1 in (common "
        "practice); breadboard end: {breadboard_tongue_length}; sliding dovetail: {sliding_dovetail_share} of the "
        "thickness; settled down",
    )
    width: LengthText | None = optional(
        "tongue: its thickness; double rabbet: what is left of the end; spline or key: its thickness; breadboard end: "
        "width of its tenons; sliding dovetail: thickness of its tongue at the neck",
        "tongue: {tongue_thickness_share} of the thickness of the part that goes in; double rabbet: half of it; "
        "spline of an edge: of the sheet nearest to a third of the thickness, else a third; spline or key of a mitre: "
        "{spline_thickness}; breadboard end: {breadboard_tenon_width}; sliding dovetail: half of the thickness (common "
        "practice)",
    )
    length: LengthText | None = optional(
        "tenon: from its shoulder to its tip; one no longer than a groove is deep that is already there stands in the "
        "groove, without a mortise; loose tenon: depth of its mortise in each part",
        "tenon: 2/3 of the part it goes into (common practice), less where another mortise is met; breadboard end: "
        "{breadboard_tenon_length}, at most 2/3 of its width; loose tenon: {loose_tenon_depth}; less where a part is "
        "thin",
    )
    thickness: LengthText | None = optional(
        "tenon, also of a bridle joint, and loose tenon: thickness, from cheek to cheek",
        "tenon: {tenon_thickness_share} of the thickness of its part, to the nearest chisel or cutter; as thick as a "
        "groove is wide that is already there; loose tenon: {loose_tenon_share} of the thickness of the thinner part",
    )
    stopped: LengthText | None = optional(
        "dado, sliding dovetail: how far it stops short of the front edge; spline in an edge: how far it stops short "
        "of both ends",
        "0: it runs through",
    )
    fasten: (
        Literal["screws", "plugged_screws", "dowels", "biscuits", "pocket_screws", "loose_tenons", "none"]
        | None
    ) = optional(
        "what holds it beside the glue",
        "butt: `dowels` into solid wood, `screws` into a sheet; every other kind: `none` (common practice)",
    )
    count: int | None = optional(
        "how many screws, dowels, biscuits, loose tenons or keys",
        "by length: the outer ones 38 mm (1 1/2 in) from the ends, or a quarter of a short joint, and"
        " at most 200 mm (8 in) between screws or loose tenons, 96 mm (3 3/4 in) between dowels (common "
        "practice); biscuits {biscuit_first} from the ends and at most {biscuit_spacing} apart; pocket screws "
        "{pocket_edge} from the ends and at most {pocket_spacing} apart; one loose tenon in a joint up to 5 in "
        "(127 mm) long; one key in a frame corner, and one for each 3 in (76 mm) of the corner of a case (common "
        "practice)",
        ge=1,
        le=40,
    )
    screw: int | None = optional(
        "screw number (gauge)",
        "the thickest up to No. 8 whose axis keeps 2.5 shank diameters to the edge (NDS commentary, "
        "from memory) and that holds without breaking through",
        ge=2,
        le=16,
    )
    screw_length: LengthText | None = optional(
        "length of the screw",
        "the shortest on sale that is twice the part under the head and grips three shank diameters, "
        "with 3 mm (1/8 in) of wood beyond its tip (common practice); pocket screws: "
        "1, 1 1/4, 1 1/2 or 2 1/2 in for parts of 1/2, 3/4, 1 or 1 1/2 in, and shorter where the tip would "
        "come through (common practice)",
    )
    shoulders: Literal["one", "two"] | None = optional(
        "tongue: shoulders on one side or on both", "`one` at an end of the part that receives, else `two`"
    )
    with_: Literal["none", "spline", "keys", "tongue", "biscuits", "dowels"] | None = optional(
        "edge and mitre: what joins the two beside the glue; `keys` in a mitre only",
        "`none` (common practice)",
        alias="with",
    )
    shoulder: LengthText | None = optional(
        "tenon: shoulder at each of its edges",
        "{tenon_bottom_shoulder}, or as deep as a groove in that edge; at a corner, on the side of the end, "
        "{haunch_share} of the width of its part in any case",
    )
    haunch: LengthText | None = optional(
        "tenon at a corner: length of its haunch; 0 for none",
        "as deep as the groove that it fills, else 1/3 of the length of the tenon (common practice)",
    )
    through: bool | None = optional(
        "tenon: right through, flush with the far side", "`true` with `wedges`, else `false`"
    )
    tenons: int | None = optional(
        "how many tenons, beside each other along the longer side of the end",
        "1; 2 in a wide end, or in a rail that lies flat (common practice); breadboard end: an odd number, "
        "{breadboard_tenon_pitch} apart",
        ge=1,
        le=12,
    )
    wedges: int | None = optional("through tenon: how many wedges", "none", ge=1, le=6)
    pinned: bool | None = optional(
        "tenon: held by pegs", "`true` with `drawbore` and in a breadboard end, else `false`"
    )
    drawbore: LengthText | None = optional(
        "tenon: how much nearer to the shoulder the peg hole in the tenon lies",
        "0: in line; {drawbore_offset} is usual",
    )
    pitch: LengthText | None = optional(
        "finger: width of a finger, which is that of the cutter",
        "`cutter`; else the narrowest common cutter, from half to all of the thinner board, of which an odd number "
        "fill the width; else the one nearest to {finger_width_share} of the thinner board",
    )
    starts: Literal["first", "second"] | None = optional(
        "finger: which part has the fingers at both edges",
        "`first`, unless the other way hides a groove (common practice)",
    )
    cutter: LengthText | None = optional(
        "finger, dovetails: width of the cutter, or of the narrowest tool",
        "finger: as `pitch`; dovetails: {dovetail_pin_hand}, a narrow chisel",
    )
    slope: Annotated[str, AfterValidator(_slope)] | None = optional(
        "dovetails: slope, such as `1:7`",
        "dovetail and half_blind: 1:8 in hardwood and sheets, 1:6 in softwood; sliding dovetail: 1:4, as a cutter of "
        "14 degrees cuts it (common practice)",
    )
    tails: int | None = optional(
        "dovetails: how many tails",
        "tails near to 2 3/4 times a pin, 3/4 to 1 1/2 in (19 to 38 mm) wide (common practice)",
        ge=1,
        le=60,
    )
    pin: LengthText | None = optional(
        "dovetails: width of a pin at its narrow side", "0.35 of the tail board's thickness (common practice)"
    )
    half_pin: LengthText | None = optional(
        "dovetails: width of the half pins at both edges, at their narrow side; they take what is left over",
        "{dovetail_half_pin}, or half of the tail board's thickness where that is less; narrower where that brings a "
        "groove into a tail",
    )
    lap: LengthText | None = optional(
        "half_blind: wood left in front of the tails",
        "a quarter of the thickness, as {dovetail_lap} in a front of 3/4 in; at least 1/8 in (3 mm); settled up",
    )
    spacing: Literal["equal", "graduated"] | None = optional(
        "dovetails: tails of one width, or growing narrower towards the top, the rear or the right", "`equal`"
    )
    tails_on: Literal["first", "second"] | None = optional(
        "dovetail: which part has the tails",
        "the upright part, else the one from front to back: what pulls downwards or to the front cannot open the joint "
        "(common practice)",
    )
    biscuit: Literal[0, 10, 20] | None = optional(
        "biscuits: their number",
        "the largest that fits; stock of {biscuit_20_least} or less takes no No. 20",
    )
    glue: bool | None = optional("glued or not", "`true`")


def _joint(value: Any) -> Any:
    return {"kind": value} if isinstance(value, str) else value


JointSpec = Annotated[JointKeys, BeforeValidator(_joint)]
