"""What stands across a joint with an end in each part: biscuits and loose tenons."""

from __future__ import annotations

from boardwright.core.poses import Vec
from boardwright.piece.drafts import Draft, Meeting
from boardwright.piece.joints.faces import unit
from boardwright.piece.records import Fastener
from boardwright.piece.setout import SetOut


def put_across(
    out: SetOut,
    kind: str,
    name: str,
    first: Draft,
    second: Draft,
    meet: Meeting,
    at: Vec,
    size: tuple[float, float, float],
    in_first: float,
    path: str,
) -> str:
    """Keep a flat fastener that stands across a joint; gives its id.

    Args:
        out: the bench.
        kind: `biscuit` or `loose tenon`.
        name: as bought.
        first: the part it starts in.
        second: the part it ends in.
        meet: how the two stand.
        at: its middle, on the face where the two meet [mm].
        size: across the joint, along it, and its thickness [mm].
        in_first: how much of it stands in the first part [mm].
        path: where the file asks for it.
    """
    across, wide, thick = size
    start, reach = list(at), [0.0, 0.0, 0.0]
    start[meet.axis] -= in_first if meet.high else -in_first
    reach[meet.along] = wide
    id = f"{kind.replace(' ', '_')}.{len(out.fasteners) + 1}"
    out.fasteners.append(
        Fastener(
            id,
            kind,
            name,
            kind,
            (start[0], start[1], start[2]),
            unit(meet.axis, meet.high),
            across,
            thick,
            thick,
            first.id,
            second.id,
            False,
            out.design.place(path),
            (reach[0], reach[1], reach[2]),
        )
    )
    return id
