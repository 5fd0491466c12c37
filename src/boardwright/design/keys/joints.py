"""Keys for how two parts are joined."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field

from boardwright.design.keys.base import Keys, LengthText, optional


class JointKeys(Keys):
    """How two parts are joined. A plain word, such as `dado`, stands for `{kind: dado}`."""

    kind: Literal["butt", "rabbet", "dado", "tongue"] = Field(description="kind of joint")
    depth: LengthText | None = optional(
        "depth of the dado, rabbet or tongue",
        "rabbet: {rabbet_depth_share} of the thickness it is cut in; dado and tongue: "
        "{dado_depth_share} of it; the dado of a drawer back: 1/4 of the side (common practice); "
        "where a part between two spaces may be cut from both faces, at most half of what {dado_web} "
        "between them leaves; settled down",
    )
    width: LengthText | None = optional(
        "tongue: its thickness", "{tongue_thickness_share} of the thickness of the part that goes in"
    )
    length: LengthText | None = optional(
        "loose tenon: depth of its mortise in each part", "{loose_tenon_depth}; less where a part is thin"
    )
    thickness: LengthText | None = optional(
        "loose tenon: its thickness", "{loose_tenon_share} of the thickness of the thinner part"
    )
    stopped: LengthText | None = optional(
        "dado: how far it stops short of the front edge", "0: it runs through to the front"
    )
    fasten: (
        Literal["screws", "plugged_screws", "dowels", "biscuits", "pocket_screws", "loose_tenons", "none"] | None
    ) = optional(
        "what holds it beside the glue",
        "butt: `dowels` into solid wood, `screws` into a sheet; every other kind: `none` (common practice)",
    )
    count: int | None = optional(
        "how many screws, dowels, biscuits or loose tenons",
        "by length: the outer ones 38 mm (1 1/2 in) from the ends, or a quarter of a short joint, and"
        " at most 200 mm (8 in) between screws or loose tenons, 96 mm (3 3/4 in) between dowels (common "
        "practice); biscuits {biscuit_first} from the ends and at most {biscuit_spacing} apart; pocket screws "
        "{pocket_edge} from the ends and at most {pocket_spacing} apart; one loose tenon in a joint up to 5 in "
        "(127 mm) long",
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
    biscuit: Literal[0, 10, 20] | None = optional(
        "biscuits: their number",
        "the largest that fits; stock of {biscuit_20_least} or less takes no No. 20",
    )
    glue: bool | None = optional("glued or not", "`true`")


def _joint(value: Any) -> Any:
    return {"kind": value} if isinstance(value, str) else value


JointSpec = Annotated[JointKeys, BeforeValidator(_joint)]
