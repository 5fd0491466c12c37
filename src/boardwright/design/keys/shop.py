"""Keys for what the shop has, and how exactly it works."""

from __future__ import annotations

from pydantic import Field

from boardwright.design.keys.base import Keys, LengthText, optional


class Precision(Keys):
    """How far sizes come out from what is set, plus or minus, nearly always (three standard deviations)."""

    thickness: LengthText | None = optional("planed thickness, within a batch", "{precision_thickness}")
    rip: LengthText | None = optional("width ripped to the fence", "{precision_rip}")
    crosscut: LengthText | None = optional("length cut against a stop", "{precision_crosscut}")
    groove_width: LengthText | None = optional(
        "width of a dado, groove or tongue", "{precision_groove_width}"
    )
    groove_depth: LengthText | None = optional(
        "depth of a dado, groove or rabbet", "{precision_groove_depth}"
    )
    groove_place: LengthText | None = optional(
        "place of a dado, groove or shoulder", "{precision_groove_place}"
    )
    square: LengthText | None = optional(
        "out of square of a crosscut, in each 12 in, or in each 300 mm in a plan in mm", "{precision_square}"
    )


class Machines(Keys):
    """Largest and smallest sizes at each machine. The machine's manual comes first: put its figures here."""

    jointer_width: LengthText | None = optional("widest board over the jointer", "{jointer_width}")
    planer_width: LengthText | None = optional("widest board through the planer", "{planer_width}")
    planer_thinnest: LengthText | None = optional(
        "thinnest board through it without a carrier board", "{planer_thinnest}"
    )
    saw_rip: LengthText | None = optional("widest rip at the fence of the table saw", "{saw_rip}")
    saw_depth: LengthText | None = optional("its depth of cut at 90 degrees", "{saw_depth}")
    saw_shortest_rip: LengthText | None = optional("shortest board ripped on it", "{saw_shortest_rip}")
    saw_shortest_crosscut: LengthText | None = optional(
        "shortest part crosscut on it, on a sled", "{saw_shortest_crosscut}"
    )
    saw_narrowest: LengthText | None = optional("narrowest rip on it without a push block", "{saw_narrowest}")
    mitre_saw_shortest: LengthText | None = optional("shortest part at the mitre saw", "{mitre_saw_shortest}")
    router_shortest: LengthText | None = optional(
        "shortest part at the router table that is not held in a jig", "{router_shortest}"
    )
    router_narrowest: LengthText | None = optional(
        "narrowest part there without a push block", "{router_narrowest}"
    )


class ClampEntry(Keys):
    """Clamps of one length."""

    length: LengthText = Field(description="widest that they take")
    count: int = optional("how many", "1", value=1, ge=1, le=500)


class GlueTimes(Keys):
    """Minutes, as a dry run of your own takes them."""

    spread: float | None = optional("to spread the glue of one joint", "{glue_spread_time}", gt=0, le=60)
    close: float | None = optional("to close one joint", "{glue_close_time}", gt=0, le=60)
    clamp: float | None = optional("to place one clamp and square up", "{glue_clamp_time}", ge=0, le=60)
    open: float | None = optional(
        "that the glue gives, from the first joint spread to the last clamp",
        "the closed time in the glue's row, or its open time",
        gt=0,
        le=1000,
    )
