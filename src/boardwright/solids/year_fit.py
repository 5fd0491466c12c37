"""Dry fit of the piece at the driest and the wettest time: what meets that did not meet when it was built."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from boardwright.core.poses import AXES, dot
from boardwright.piece.records import Joint, Part, Piece
from boardwright.solids.cells import cells
from boardwright.solids.dry_fit import DryFit, Overlap, overlaps
from boardwright.solids.seasons import Movement, movement, stretched
from boardwright.solids.travel import hits

GIVES = 0.1
"""Wood gives so far at each of its faces before anything binds [mm]: common practice."""
PRESSES = 0.25
"""Two parts of one assembly press on each other by so much more before it is worth a word [mm]: common practice."""


@dataclass(frozen=True, slots=True)
class Season:
    """The dry fit at one end of the year.

    Attributes:
        name: `driest` or `wettest`, or of a month.
        percent: moisture of the wood [%].
        fit: what meets there, beyond what meets on the day of cutting; its touches are empty.
    """

    name: str
    percent: float
    fit: DryFit


def year_fit(piece: Piece, first: DryFit) -> tuple[Season, ...]:
    """The dry fit at both ends of the year.

    Args:
        piece: as cut.
        first: its dry fit on the day of cutting.
    """
    m, moves = piece.moisture, movement(piece)
    ends = (("driest", m.driest), ("wettest", m.wettest))
    return tuple(season(moves, first, name, percent) for name, percent in ends if abs(percent - m.now) > 1e-9)


def season(moves: Movement, first: DryFit, name: str, percent: float) -> Season:
    """The dry fit at one moisture.

    Args:
        moves: how the piece moves.
        first: its dry fit on the day of cutting.
        name: what this time is called.
        percent: moisture of the wood [%].
    """
    piece, then = moves.piece, moves.at(percent)
    then = replace(then, hardware=(), parts=tuple(_given(p) for p in then.parts))
    rooms = {p.id: cells(p) for p in then.parts}
    held = {frozenset((j.first, j.second)) for j in piece.joints if _holds(j)}
    met = {frozenset((o.first, o.second)) for o in first.overlaps} | held
    hit = {(h.motion, h.obstacle) for h in first.hits} | {(h.motion, h.part) for h in first.hits}
    groups = {p.id: p.group for p in piece.parts}
    planned = _planned(piece.joints)
    found = tuple(o for o in overlaps(then, rooms, met) if _binds(o, groups, planned))
    shut = {frozenset((o.first, o.second)) for o in found} | met
    ways = tuple(
        h
        for h in hits(then, rooms)
        if (h.motion, h.obstacle) not in hit and frozenset((h.part, h.obstacle)) not in shut
    )
    return Season(name, percent, DryFit(found, (), ways))


def _planned(joints: Sequence[Joint]) -> set[tuple[frozenset[str], int]]:
    """Pairs of parts and the piece axes along which they touch by plan."""
    return {
        (frozenset((j.first, j.second)), axis)
        for j in joints
        for c in j.contacts
        if c.gap < 1e-9
        for axis in range(3)
        if abs(dot(AXES[axis], c.normal)) > 0.5
    }


def _binds(o: Overlap, groups: dict[str, str], planned: set[tuple[frozenset[str], int]]) -> bool:
    """True for what meets across a gap: faces that touch by plan only press."""
    axis = min(range(3), key=lambda i: o.box.size(i))
    if (frozenset((o.first, o.second)), axis) in planned:
        return False
    return groups[o.first] != groups[o.second] or o.box.size(axis) > PRESSES


def _holds(joint: Joint) -> bool:
    """True when a joint holds its parts in every direction: they press on each other, and the glue takes it."""
    return joint.glued or not joint.floats


def _given(part: Part) -> Part:
    """A part less what it gives at each face."""
    lengths = [
        size * (axis[0] ** 2 + axis[1] ** 2 + axis[2] ** 2) ** 0.5
        for size, axis in zip(part.size, (part.pose.x, part.pose.y, part.pose.z), strict=True)
    ]
    by = [max(1 - 2 * GIVES / s, 0.5) for s in lengths]
    return stretched(part, (by[0], by[1], by[2]))
