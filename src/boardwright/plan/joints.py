"""Joints of the plan: one line for each kind of joint between two letters."""

from __future__ import annotations

from collections.abc import Mapping

from boardwright.piece.records import Piece
from boardwright.plan.schema import PlanJoint


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
        PlanJoint(kind=kind, first=first, second=second, count=counts[(first, second, kind, summary, glued)],
                  summary=summary, glued=glued)
        for first, second, kind, summary, glued in keys
    ]
