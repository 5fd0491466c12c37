"""What holds a joint beside its glue: one file a fastening."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence

from boardwright.piece.drafts import Draft, Meeting
from boardwright.piece.joints.fastening.biscuits import biscuits
from boardwright.piece.joints.fastening.dowels import choose_dowel, dowels
from boardwright.piece.joints.fastening.loose_tenons import loose_tenons
from boardwright.piece.joints.fastening.plugs import plugged_screws
from boardwright.piece.joints.fastening.pocket_screws import pocket_screws
from boardwright.piece.joints.fastening.screws import choose_screw, drive, no_screw, screws
from boardwright.piece.joints.fastening.spots import LEFT_BEYOND_TIP, SPACING, places, spot
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.setout import SetOut

__all__ = [
    "LEFT_BEYOND_TIP",
    "SPACING",
    "biscuits",
    "choose_dowel",
    "choose_screw",
    "dowels",
    "drive",
    "fasten",
    "held_words",
    "loose_tenons",
    "no_screw",
    "not_here",
    "places",
    "plugged_screws",
    "pocket_screws",
    "screws",
    "spot",
]

Run = tuple[float, float]
THROUGH: dict[str, Callable[[SetOut, Draft, Draft, Meeting, JointSettings, float, Run], tuple[str, ...]]] = {
    "screws": screws,
    "plugged_screws": plugged_screws,
}
"""Driven through the first part into the second, wherever that is seated in it."""
ACROSS: dict[str, Callable[[SetOut, Draft, Draft, Meeting, JointSettings, Run], tuple[str, ...]]] = {
    "dowels": dowels,
    "biscuits": biscuits,
    "pocket_screws": pocket_screws,
    "loose_tenons": loose_tenons,
}
"""Set across a flat face where the two meet, and nowhere else."""


def fasten(
    out: SetOut,
    first: Draft,
    second: Draft,
    meet: Meeting,
    want: JointSettings,
    seat: float,
    run: Run,
) -> tuple[str, ...]:
    """Fasten a joint as it is asked for; nothing when it asks for nothing.

    Args:
        out: the bench.
        first: the part that receives; screws are driven through it.
        second: the part that goes in.
        meet: how the two stand.
        want: the joint.
        seat: where the end of the second part lies on the joint's axis [mm].
        run: from where to where the joint runs [mm].

    Returns:
        Ids of the fasteners.
    """
    if want.fasten in THROUGH:
        return THROUGH[want.fasten](out, first, second, meet, want, seat, run)
    if want.fasten not in ACROSS:
        return ()
    if abs(seat - first.face(meet.axis, meet.high)) > 1e-6:
        not_here(out, first, second, want, "`fasten: screws`, `fasten: plugged_screws` or ")
        return ()
    return ACROSS[want.fasten](out, first, second, meet, want, run)


def not_here(out: SetOut, first: Draft, second: Draft, want: JointSettings, could: str = "") -> None:
    """A finding when a joint whose parts are let into each other asks for a fastening that it cannot have.

    Args:
        out: the bench.
        first: the part that receives.
        second: the part that goes in.
        want: the joint.
        could: the fastenings that it can have, each followed by `or`.
    """
    if want.fasten == "none":
        return
    out.find(
        "fastener.not-here",
        f"{want.fasten.replace('_', ' ')} do not hold a {want.kind.replace('_', ' ')}",
        f"{want.path}.fasten",
        found=f"the end of the {second.name} is let into the {first.name}",
        expected=f"two flat faces, as of a {'`butt` or `edge`' if 'screw' not in want.fasten else '`butt`'} joint",
        source="common practice",
        remedy=f"use {could}`fasten: none`, or `kind: butt`",
        parts=(first.id, second.id),
    )


PLURAL = {
    "screw": "screws",
    "dowel": "dowels",
    "biscuit": "biscuits",
    "pocket screw": "pocket screws",
    "loose tenon": "loose tenons",
}


def held_words(out: SetOut, ids: Sequence[str]) -> str:
    """What holds a joint, counted: `4 screws under plugs`; "" for nothing."""
    kinds = Counter(f.kind for f in out.fasteners if f.id in set(ids))
    plugs = kinds.pop("plug", 0)
    words = [f"{n} {kind if n == 1 else PLURAL[kind]}" for kind, n in kinds.items()]
    return ", ".join(words) + (" under plugs" if plugs else "")
