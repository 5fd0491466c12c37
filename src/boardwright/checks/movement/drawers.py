"""Drawers and trays in their openings through the year: height, width, and the depth of the case behind them."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.drawers import sliding
from boardwright.checks.movement.fits import Moving, Year
from boardwright.core.findings import Finding, Severity
from boardwright.piece.records import Motion, Part

SOURCE = "change of width: Wood Handbook FPL-GTR-190 eq. 13-2; running room: common practice"
LEAST_RUNNING = 0.4
"""Least room over a drawer at the wettest time [mm]: 1/64 in, common practice."""


def fits(year: Year) -> Iterator[Moving]:
    """Room over each upright part, beside the box, and behind it."""
    for m in sliding(year.c):
        group = [p for p in year.c.piece.parts if p.group == m.id]
        yield from (_height(m, p) for p in group if _stands_in_opening(p, m))
        yield from _width(m, group)
        yield from _depth(year, m, group)


def _stands_in_opening(part: Part, m: Motion) -> bool:
    """True for an upright part inside the opening, not for an overlay front or a bottom."""
    upright = abs(part.pose.y[2]) > 0.9
    inside = part.box.high[1] > m.opening.low[1] + 1e-6 and part.box.low[0] >= m.opening.low[0] - 1e-6
    return upright and inside


def _height(m: Motion, part: Part) -> Moving:
    rate = part.stock.across if part.stock.kind == "wood" else part.stock.spread

    def tell(year: Year, fit: Moving, worst: float, when: float) -> Finding:
        c, now = year.c, year.moisture.now
        room = m.opening.high[2] - part.box.low[2] - LEAST_RUNNING
        most = room / (1 + rate * (when - now))
        key = "" if part.name == "drawer front" else " (`box_height`)"
        return Finding(
            "drawer.height",
            Severity.ERROR if worst < 0 else Severity.WARNING,
            f"{m.name}: the {part.name} {part.letter} "
            + ("jams" if worst < 0 else "hardly clears")
            + f" in its opening at {when:.3g} % moisture",
            m.place,
            found=f"{c.text(fit.now)} of room at {now:.3g} % moisture, {c.text(worst)} at {when:.3g} %",
            expected=f"at least {c.text(LEAST_RUNNING)} at {when:.3g} %",
            source=SOURCE,
            remedy=f"make it {c.up(part.size[1] - most)} lower{key}, or give the opening more height",
            parts=(part.id,),
        )

    gap = m.opening.high[2] - part.box.high[2]
    what = f"room over the {part.name} of {m.name}"
    return Moving(
        "drawer.height", (part.id, m.id), what, gap, -rate * part.size[1], LEAST_RUNNING, m.place, tell=tell
    )


def _width(m: Motion, parts: list[Part]) -> Iterator[Moving]:
    """The box against the width of its opening, with its sides swollen in thickness."""
    group = [p for p in parts if p.box.high[1] > m.opening.low[1] + 1e-6]
    if not group:
        return
    across = max(p.box.high[0] for p in group) - min(p.box.low[0] for p in group)
    rate = sum(p.size[2] * p.stock.rates[2] for p in group if p.name in ("drawer side", "tray side"))

    def tell(year: Year, fit: Moving, worst: float, when: float) -> Finding:
        c = year.c
        return Finding(
            "drawer.width",
            Severity.ERROR if worst < 0 else Severity.WARNING,
            f"{m.name} " + ("is too wide for" if worst < 0 else "hardly clears") + " its opening",
            m.place,
            found=f"opening {c.text(m.opening.size(0))}, drawer {c.text(across)} "
            f"and {c.text(fit.now - worst)} of swelling",
            expected=f"at least {c.text(LEAST_RUNNING)}, both sides together",
            source=SOURCE,
            remedy=f"leave {c.up(m.side_clearance + (LEAST_RUNNING - worst) / 2)} or more at each side "
            "(`side_clearance`), or widen the opening",
        )

    what = f"room beside {m.name}, both sides together"
    yield Moving(
        "drawer.width",
        (group[0].id, m.id),
        what,
        m.opening.size(0) - across,
        -rate,
        LEAST_RUNNING,
        m.place,
        tell=tell,
    )


def _depth(year: Year, m: Motion, group: list[Part]) -> Iterator[Moving]:
    """The back of the case comes nearer when solid sides shrink; along the grain the drawer does not."""
    sides = [p for p in year.c.piece.parts if p.name == "side" and p.stock.kind == "wood"]
    rate = max((p.size[1] * p.stock.across for p in sides), default=0.0)
    if not group:
        return

    def tell(year: Year, fit: Moving, worst: float, when: float) -> Finding:
        c = year.c
        return Finding(
            "drawer.depth",
            Severity.ERROR,
            f"{m.name} stands proud when the case shrinks",
            m.place,
            found=f"{c.text(m.rear_clearance)} behind the box; the case loses {c.text(fit.now - worst)} "
            f"at {when:.3g} %",
            expected="room behind the box at the driest time",
            source=SOURCE,
            remedy=f"leave at least {c.up(fit.now - worst)} behind the box (`rear_clearance`)",
        )

    what = f"room behind {m.name}"
    yield Moving("drawer.depth", (group[0].id, m.id), what, m.rear_clearance, rate, 0.0, m.place, tell=tell)
