"""Drawers under a top that reaches over them: how much of their inside comes out from under it."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin, Site
from boardwright.core.findings import Finding, Severity
from boardwright.formulas.reach import open_inside, travel_to_clear
from boardwright.piece.records import Motion, Part

OVER = 52.0
"""An edge that reaches no farther is not looked at [mm]: 2 in, the most that is usual (common practice)."""
USABLE = 0.75
"""Share of a drawer's inside that is to come out from under the edge: common practice."""


def measure(c: Context, _: Site) -> Iterator[Margin]:
    """Every drawer that an edge reaches over; alike drawers once."""
    seen: set[tuple[float, ...]] = set()
    for m in c.piece.motions:
        fronts = [c.parts[id] for id in (f"{m.id}.front", f"{m.id}.box_front") if id in c.parts]
        back = c.parts.get(f"{m.id}.back")
        if m.turn or m.travel <= 0 or not fronts or back is None:
            continue
        face = min(p.box.low[1] for p in fronts)
        start = max(p.box.high[1] for p in fronts)
        inside = back.box.low[1] - start
        over = _edge(c, m, face)
        if over is None or face - over.box.low[1] < OVER:
            continue
        reach = face - over.box.low[1]
        key = (round(m.travel, 3), round(reach, 3), round(inside, 3))
        if key not in seen:
            seen.add(key)
            yield _margin(c, m, over, reach, start - face, inside)


def _edge(c: Context, m: Motion, face: float) -> Part | None:
    """What lies over a drawer and reaches farthest before its face."""
    room = m.opening
    over = [
        p
        for p in c.piece.parts
        if p.group != m.id
        and p.box.low[2] > room.high[2] - 1
        and p.box.low[1] < face - 1
        and p.box.low[0] < room.high[0]
        and p.box.high[0] > room.low[0]
    ]
    return min(over, key=lambda p: (p.box.low[1], p.id), default=None)


def _margin(c: Context, m: Motion, over: Part, reach: float, front: float, inside: float) -> Margin:
    value = open_inside(m.travel, front, reach, inside)
    limit = USABLE * inside
    less = m.travel - front - limit
    return Margin(
        "drawer.under-overhang",
        (f"{m.id}.front", over.id),
        "inside of the drawer that comes out from under what reaches over it",
        value,
        limit,
        "mm",
        least=True,
        tell=lambda: Finding(
            "drawer.under-overhang",
            Severity.NOTE,
            f"{c.label(over.id)} reaches over {m.name} when it is open",
            m.place,
            found=f"{c.text(value)} of {c.text(inside)} inside come out from under it: a travel of "
            f"{c.text(m.travel)}, {c.text(front)} of front, {c.text(reach)} of overhang",
            expected=f"at least {c.text(limit)}: three quarters (common practice)",
            source="geometry",
            remedy=(f"let it reach {c.down(less)} over the fronts or less, or " if less > 0 else "")
            + f"use slides with more travel; {c.up(travel_to_clear(front, reach, inside))} clear it all",
            parts=(f"{m.id}.front", over.id),
        ),
    )
