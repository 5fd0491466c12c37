"""Joints of the plan: by pairs of letters, and grouped by how they are made."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from boardwright.piece.records import Piece
from boardwright.plan.schema import JointGroup, PlanJoint

NAMES = {
    "mortise_tenon": "mortise and tenon",
    "bridle": "bridle joint",
    "half_lap": "half lap",
    "finger": "finger joint",
    "dovetail": "through dovetails",
    "half_blind": "half-blind dovetails",
    "sliding_dovetail": "sliding dovetail",
    "breadboard": "breadboard end",
    "key": "key in a mitre",
    "hung": "drawer on bar",
    "cleat": "bevelled cleat",
    "lock": "drawer lock",
    "screwed": "strip, screwed",
    "tongue": "tongue and dado",
    "butt": "butt joint",
    "block": "block in a slot",
    "edge": "edge joint",
    "double_rabbet": "double rabbet",
    "shiplap": "boards, ship-lapped",
    "tongued": "boards, tongued",
}
"""What a kind is called where its own name would not be understood. A `panel` is told by its summary."""
ON = {
    "hung": "on",
    "cleat": "on",
    "screwed": "on",
    "planted": "on",
    "butt": "to",
    "edge": "to",
    "shiplap": "to",
    "mitre": "to",
    "half_lap": "over",
    "breadboard": "and",
}
"""How the second part of a kind meets the first; else it goes `into` it."""


def plan_joints(piece: Piece, letters: Mapping[str, str]) -> list[PlanJoint]:
    """Joints counted by letters and summary, in the order of the first letter."""
    counts: dict[tuple[str, str, str, str, bool], int] = {}
    for j in piece.joints:
        if j.first in letters and j.second in letters:
            key = (letters[j.first], letters[j.second], j.kind, j.summary, j.glued)
            counts[key] = counts.get(key, 0) + 1
    order = {letter: i for i, letter in enumerate(dict.fromkeys(letters.values()))}
    keys = sorted(counts, key=lambda k: (order[k[0]], order[k[1]], k[2], k[3]))
    return [
        PlanJoint(
            kind=kind,
            first=first,
            second=second,
            count=counts[(first, second, kind, summary, glued)],
            summary=summary,
            glued=glued,
        )
        for first, second, kind, summary, glued in keys
    ]


def joint_groups(joints: Sequence[PlanJoint]) -> list[JointGroup]:
    """Joints that are made alike, in the order in which they first come.

    Args:
        joints: from `plan_joints`.
    """
    groups: dict[tuple[str, str, bool], list[PlanJoint]] = {}
    for j in joints:
        groups.setdefault((j.kind, j.summary, j.glued), []).append(j)
    return [
        JointGroup(
            name=joint_name(kind, summary),
            how=_how(summary, kind),
            glued=glued,
            count=sum(j.count for j in same),
            pairs=_pairs(kind, same),
        )
        for (kind, summary, glued), same in groups.items()
    ]


def joint_name(kind: str, summary: str) -> str:
    """What a joint is called, e.g. `panel in groove`."""
    if kind == "panel":
        return f"panel in {'rabbet' if 'rabbet' in summary else 'groove'}"
    return NAMES.get(kind, kind)


def _how(summary: str, kind: str) -> str:
    """The summary without what stands in the other columns: the glue, and the kind at its head."""
    text = re.sub(r"[,;] (glued|dry|no glue)$", "", summary)
    head = f"{kind} joint, " if kind in ("butt", "edge") else f"{NAMES.get(kind, kind)}, "
    head = head if text.startswith(head) else f"{kind} "
    return text.removeprefix(head)


def _pairs(kind: str, same: Sequence[PlanJoint]) -> str:
    found: dict[str, list[str]] = {}
    for j in same:
        found.setdefault(j.second, []).append(j.first)
    word = ON.get(kind, "into")
    return "; ".join(f"{second} {word} {', '.join(firsts)}" for second, firsts in found.items())
