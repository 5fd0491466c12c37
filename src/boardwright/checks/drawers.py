"""Drawers: their travel, and their clearances at both ends of the year."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.context import Context
from boardwright.core.findings import Finding, Severity
from boardwright.formulas.movement import change_of_size
from boardwright.piece.records import Motion, Part

SOURCE = "change of width: Wood Handbook FPL-GTR-190 eq. 13-2; running room: common practice"
LEAST_RUNNING = 0.4
"""Least room over a drawer at the wettest time [mm]: 1/64 in, common practice."""


def sliding(c: Context) -> list[Motion]:
    """What slides, and does not turn on hinges."""
    return [m for m in c.piece.motions if not m.turn]


def travel(c: Context) -> Iterator[Finding]:
    """What a drawer hits when it is pulled."""
    motions = {m.id: m for m in sliding(c)}
    for h in c.fit.hits:
        m = motions.get(h.motion)
        if m is None:
            continue
        yield Finding(
            "drawer.hits",
            Severity.ERROR,
            f"{m.name} hits {c.label(h.obstacle)} when it is pulled",
            m.place,
            found=f"{c.label(h.part)} meets it {c.text(h.opening)} out",
            expected=f"a free travel of {c.text(m.travel)}",
            source="dry fit of the solids",
            remedy="move what stands in its way, or make the drawer smaller",
            parts=(h.part, h.obstacle),
        )


def _swollen(part: Part, moisture: float, now: float) -> float:
    """Height of an upright part at another moisture [mm]; its width is upright."""
    size = part.size[1]
    return size + change_of_size(size, part.stock.across, now, moisture)


def height(c: Context) -> Iterator[Finding]:
    """Fronts and sides against the height of their opening at the wettest time."""
    wet, now = c.piece.moisture.wettest, c.piece.moisture.now
    for m in sliding(c):
        for part in (p for p in c.piece.parts if p.group == m.id):
            if not _stands_in_opening(part, m):
                continue
            gap_now = m.opening.high[2] - part.box.high[2]
            gap_wet = gap_now - (_swollen(part, wet, now) - part.size[1])
            if gap_wet >= LEAST_RUNNING:
                continue
            room = m.opening.high[2] - part.box.low[2] - LEAST_RUNNING
            most = room / (1 + part.stock.across * (wet - now))
            key = "" if part.name == "drawer front" else " (`box_height`)"
            yield Finding(
                "drawer.height",
                Severity.ERROR if gap_wet < 0 else Severity.WARNING,
                f"{m.name}: the {part.name} {part.letter} "
                + ("jams" if gap_wet < 0 else "hardly clears")
                + " in its opening at the wettest time",
                m.place,
                found=f"{c.text(gap_now)} of room at {now:g} % moisture, {c.text(gap_wet)} at {wet:g} %",
                expected=f"at least {c.text(LEAST_RUNNING)} at {wet:g} %",
                source=SOURCE,
                remedy=f"make it {c.up(part.size[1] - most)} lower{key}, or give the opening more height",
                parts=(part.id,),
            )


def _stands_in_opening(part: Part, m: Motion) -> bool:
    """True for an upright part inside the opening, not for an overlay front or a bottom."""
    upright = abs(part.pose.y[2]) > 0.9
    inside = part.box.high[1] > m.opening.low[1] + 1e-6 and part.box.low[0] >= m.opening.low[0] - 1e-6
    return upright and inside


def width(c: Context) -> Iterator[Finding]:
    """The box against the width of its opening, with its sides swollen in thickness."""
    wet, now = c.piece.moisture.wettest, c.piece.moisture.now
    for m in sliding(c):
        group = [p for p in c.piece.parts if p.group == m.id and p.box.high[1] > m.opening.low[1] + 1e-6]
        if not group:
            continue
        across = max(p.box.high[0] for p in group) - min(p.box.low[0] for p in group)
        grow = sum(
            change_of_size(p.size[2], p.stock.through, now, wet)
            for p in group
            if p.name in ("drawer side", "tray side")
        )
        gap = m.opening.size(0) - across - grow
        if gap < LEAST_RUNNING:
            yield Finding(
                "drawer.width",
                Severity.ERROR if gap < 0 else Severity.WARNING,
                f"{m.name} " + ("is too wide for" if gap < 0 else "hardly clears") + " its opening",
                m.place,
                found=f"opening {c.text(m.opening.size(0))}, drawer {c.text(across)} "
                f"and {c.text(grow)} of swelling",
                expected=f"at least {c.text(LEAST_RUNNING)}, both sides together",
                source=SOURCE,
                remedy=f"leave {c.up(m.side_clearance + (LEAST_RUNNING - gap) / 2)} or more at each side "
                "(`side_clearance`), or widen the opening",
            )


def depth(c: Context) -> Iterator[Finding]:
    """The back of the case comes nearer when solid sides shrink; along the grain the drawer does not."""
    dry, now = c.piece.moisture.driest, c.piece.moisture.now
    sides = [p for p in c.piece.parts if p.name == "side" and p.stock.kind == "wood"]
    shrink = max((-change_of_size(p.size[1], p.stock.across, now, dry) for p in sides), default=0.0)
    for m in sliding(c):
        left = m.rear_clearance - shrink
        if left < 0:
            yield Finding(
                "drawer.depth",
                Severity.ERROR,
                f"{m.name} stands proud when the case shrinks",
                m.place,
                found=f"{c.text(m.rear_clearance)} behind the box; the case loses {c.text(shrink)} "
                f"at {dry:g} %",
                expected="room behind the box at the driest time",
                source=SOURCE,
                remedy=f"leave at least {c.up(shrink)} behind the box (`rear_clearance`)",
            )
