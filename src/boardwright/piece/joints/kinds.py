"""The joints by name: who makes each, what it needs, and why one cannot be at some place."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from boardwright.piece.drafts import Crossing, Draft, Meeting
from boardwright.piece.joints import butt, dado, rabbet, tongue
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
    "dado": Kind("dado", "wood on both sides of it", dado.dado, dado.why_not, code="joint.no-wood-beyond"),
    "tongue": Kind("tongue and groove", "the end or edge of one part on a face of the other", tongue.tongue),
}
