"""Inset doors in the width and the height of their openings; a pair fills its opening together."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.context import Context
from boardwright.checks.tolerance.builds import gap
from boardwright.checks.tolerance.chains import Chain, Faces, Sides
from boardwright.checks.tolerance.drawers import bounds, moisture, room
from boardwright.checks.tolerance.fits import Fit
from boardwright.piece.records import Motion, Part


def fits(c: Context, sides: Sides) -> Iterator[Fit]:
    """Width and height of each opening with doors."""
    openings: dict[tuple[object, object], list[Motion]] = {}
    for m in c.piece.motions:
        if m.turn and m.kind == "door":
            openings.setdefault((m.opening.low, m.opening.high), []).append(m)
    for doors in openings.values():
        groups = [_frame(c, m) for m in doors]
        if any(not g or not _inset(g, m) for g, m in zip(groups, doors, strict=True)):
            continue
        ids = {m.id for m in doors}
        around = [p for p in c.piece.parts if p.group not in ids and bounds(sides.boxes[p.id], doors[0])]
        yield from _across(c, sides.along(0), doors, groups, around)
        for m, group in zip(doors, groups, strict=True):
            yield from _across(c, sides.along(2), [m], [group], around)


def _frame(c: Context, m: Motion) -> list[Part]:
    return [p for p in c.piece.parts if p.group == m.id and "key" not in p.name and "bead" not in p.name]


def _inset(group: list[Part], m: Motion) -> bool:
    return all(
        p.box.low[i] > m.opening.low[i] - 0.5 and p.box.high[i] < m.opening.high[i] + 0.5
        for p in group
        for i in (0, 2)
    )


def _across(
    c: Context, faces: Faces, doors: list[Motion], groups: list[list[Part]], around: list[Part]
) -> Iterator[Fit]:
    i = faces.axis
    opening = room(faces, doors[0], around)
    chains: list[Chain] = []
    size = 0.0
    for group in groups:
        low, high = min(p.box.low[i] for p in group), max(p.box.high[i] for p in group)
        chain = faces.chain(faces.at(low, False, group), faces.at(high, True, group))
        if chain is None:
            return
        chains.append(chain)
        size += high - low
    if opening is None:
        return
    gaps = len(doors) + 1
    name = " and ".join(m.name for m in doors)
    way = "width" if i == 0 else "height"
    yield Fit(
        "tolerance.door",
        tuple(p.id for g in groups for p in g if p.name != "panel"),
        f"{name} in the {way} of the opening",
        "doors in their openings",
        (gap(doors[0].opening.size(i) - size, opening, tuple(k for ch in chains for k in ch), moisture(c)),),
        doors[0].place,
        lambda more, total: f"leave {c.up(total / gaps)} at each gap (`gap`)",
    )
