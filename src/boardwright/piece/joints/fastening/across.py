"""What stands across a joint with an end in each part: biscuits and loose tenons."""

from __future__ import annotations

from boardwright.core.poses import Vec, add, scaled
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
    """Keep a flat fastener that stands across a joint on the axes of the piece; gives its id.

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
    return put_leaning(
        out,
        kind,
        name,
        (first, second),
        at,
        unit(meet.axis, meet.high),
        unit(meet.along, True),
        size,
        in_first,
        path,
    )


def put_leaning(
    out: SetOut,
    kind: str,
    name: str,
    parts: tuple[Draft, Draft],
    at: Vec,
    way: Vec,
    along: Vec,
    size: tuple[float, float, float],
    in_first: float,
    path: str,
) -> str:
    """As `put_across`, across a face that lies anyhow.

    Args:
        out: the bench.
        kind: as there.
        name: as there.
        parts: that it starts and ends in.
        at: its middle, on the face where the two meet [mm].
        way: unit vector from the first part to the second.
        along: unit vector along the joint.
        size: as there.
        in_first: as there.
        path: as there.
    """
    across, wide, thick = size
    id = f"{kind.replace(' ', '_')}.{len(out.fasteners) + 1}"
    out.fasteners.append(
        Fastener(
            id,
            kind,
            name,
            kind,
            add(at, scaled(way, -in_first)),
            way,
            across,
            thick,
            thick,
            parts[0].id,
            parts[1].id,
            False,
            out.design.place(path),
            scaled(along, wide),
        )
    )
    return id
