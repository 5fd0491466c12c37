"""The joints by name: who makes each, what it needs, and why one cannot be at some place."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from boardwright.piece.drafts import Crossing, Draft, Meeting
from boardwright.piece.joints import (
    breadboard,
    bridle,
    butt,
    dado,
    double_rabbet,
    dovetail,
    edge,
    finger,
    half_lap,
    mitre,
    mortise_tenon,
    rabbet,
    sliding_dovetail,
    tongue,
)
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.setout import SetOut


def _always(first: Draft, second: Draft, meet: Meeting) -> str:
    return ""


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of joint.

    Attributes:
        trade: what the trade calls it.
        needs: how two parts must stand for it, in words.
        make: cuts both parts, and keeps the joint.
        why_not: "" when it can be there, else what stands against it.
        cross: makes it where two parts pass through each other; None when it cannot.
        code: of the finding that refuses it.
    """

    trade: str
    needs: str
    make: Callable[[SetOut, Draft, Draft, Meeting, JointSettings], None]
    why_not: Callable[[Draft, Draft, Meeting], str] = _always
    cross: Callable[[SetOut, Draft, Draft, Crossing, JointSettings], None] | None = None
    code: str = "joint.cannot-be-there"


KINDS: dict[str, Kind] = {
    "butt": Kind("butt joint", "two faces that touch", butt.butt),
    "rabbet": Kind(
        "rabbet",
        "the second part flush with an end or edge of the first, or in from it by at most its own thickness",
        rabbet.rabbet,
        rabbet.why_not,
        code="joint.not-at-an-end",
    ),
    "double_rabbet": Kind(
        "double rabbet",
        "the second part flush with an end or edge of the first, or in from it by at most its own thickness",
        double_rabbet.double_rabbet,
        rabbet.why_not,
        code="joint.not-at-an-end",
    ),
    "dado": Kind("dado", "wood on both sides of it", dado.dado, dado.why_not, code="joint.no-wood-beyond"),
    "edge": Kind("edge joint", "two boards in one plane, edge to edge", edge.edge, edge.why_not),
    "tongue": Kind("tongue and groove", "the end or edge of one part on a face of the other", tongue.tongue),
    "mortise_tenon": Kind(
        "mortise and tenon",
        "the end of one part against the side of another, with wood round the mortise",
        mortise_tenon.mortise_tenon,
        mortise_tenon.why_not,
    ),
    "bridle": Kind(
        "bridle joint",
        "the end of one part against the edge of another, in one plane",
        bridle.bridle,
        bridle.why_not,
    ),
    "half_lap": Kind(
        "half lap",
        "the end of one part against the edge of another, or two parts drawn through each other",
        half_lap.half_lap,
        half_lap.why_not,
        half_lap.cross,
    ),
    "mitre": Kind(
        "mitre",
        "two parts that meet in a corner, in one plane or both on edge",
        mitre.mitre,
        mitre.why_not,
        mitre.cross,
    ),
    "breadboard": Kind(
        "breadboard end",
        "a board across the end of another, in one plane",
        breadboard.breadboard,
        breadboard.why_not,
    ),
    "finger": Kind(
        "finger joint",
        "the ends of two boards flush at a corner",
        finger.finger,
        finger.why_not,
    ),
    "dovetail": Kind(
        "dovetail joint",
        "the ends of two boards flush at a corner",
        dovetail.dovetail,
        dovetail.why_not,
    ),
    "half_blind": Kind(
        "half-blind dovetail joint",
        "the ends of two boards flush at a corner",
        dovetail.half_blind,
        dovetail.why_not,
    ),
    "sliding_dovetail": Kind(
        "sliding dovetail",
        "an end or edge on a face, with wood on both sides of it",
        sliding_dovetail.sliding_dovetail,
        sliding_dovetail.why_not,
    ),
}
