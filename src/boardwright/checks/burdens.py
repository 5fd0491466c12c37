"""What each lying panel carries: a shelf, the bottom of something that holds, or a top."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from boardwright.checks.context import Context
from boardwright.checks.held import Panel
from boardwright.checks.loads import GRAVITY, Use, pressure
from boardwright.piece.records import Part

RISES = 20.0
"""What stands so high over a panel on all four sides makes it a bottom [mm]."""
ROOM = 50.0
"""Nothing is put where less room is than this [mm]."""
UNDER = 30.0
"""A drawer over a panel starts within this [mm]; the panel then carries nothing."""
Role = Literal["shelf", "bottom", "top"]


@dataclass(frozen=True, slots=True)
class Burden:
    """The load of a panel.

    Attributes:
        role: what the panel is.
        use: what it carries, as the design file says or as is usual.
        everyday: even load for sag, its own weight included [N/mm2].
        greatest: even load for stress [N/mm2]: for shelves at least the published design load.
    """

    role: Role
    use: Use
    everyday: float
    greatest: float


def own_weight(part: Part) -> float:
    """What a lying panel weighs, on its area [N/mm2]."""
    return part.stock.density * 1e-9 * part.size[2] * GRAVITY


def burden(c: Context, panel: Panel) -> Burden | None:
    """What a panel carries; None when nothing is put on it."""
    part = panel.part
    motion = next((m for m in c.piece.motions if m.id == part.group), None)
    if motion is not None and motion.turn:
        return None
    if motion is not None or _walled(c, panel):
        role: Role = "bottom"
        use = c.loads.drawers
        if motion is not None and motion.load > 0 and "drawers" not in c.loads.given:
            use = motion.load
    elif panel.clear == float("inf"):
        role, use = "top", c.loads.top
    elif panel.clear < ROOM or _under_a_drawer(c, part):
        return None
    else:
        role, use = "shelf", c.loads.shelves
    box = part.box
    length, depth = max(box.size(0), box.size(1)), min(box.size(0), box.size(1))
    height = min(panel.clear, _rise(c, panel)) if role == "bottom" else panel.clear
    own = own_weight(part)
    load = pressure(c.tables, use, length, depth, height if height != float("inf") else 0.0)
    return Burden(role, use, load + own, max(load, _design(c, role, use, length * depth)) + own)


def _design(c: Context, role: Role, use: Use, area: float) -> float:
    """The published design load of a shelf [N/mm2], no more than the published most on one shelf."""
    if role != "shelf" or not isinstance(use, str) or use == "nothing":
        return 0.0
    load = c.tables.figure("shelf_load_books" if use == "books" else "shelf_load_other").value
    return min(load, c.tables.figure("shelf_load_largest").value * GRAVITY / area)


def _walls(c: Context, panel: Panel) -> list[Part]:
    return [c.parts[id] for s in panel.spans for h in s.between for id in h.parts]


def _walled(c: Context, panel: Panel) -> bool:
    """True when a panel is held on all four sides by what stands up over it."""
    return len(panel.spans) == 2 and all(
        w.box.high[2] > panel.part.box.high[2] + RISES for w in _walls(c, panel)
    )


def _rise(c: Context, panel: Panel) -> float:
    """How high the walls of a bottom stand over it [mm]."""
    top = panel.part.box.high[2]
    return max((w.box.high[2] - top for w in _walls(c, panel)), default=float("inf"))


def _under_a_drawer(c: Context, part: Part) -> bool:
    box = part.box
    x, y = (box.low[0] + box.high[0]) / 2, (box.low[1] + box.high[1]) / 2
    return any(
        not m.turn
        and -UNDER < m.opening.low[2] - box.high[2] < UNDER
        and m.opening.low[0] < box.high[0] - 1
        and m.opening.high[0] > box.low[0] + 1
        and m.opening.low[1] < y < m.opening.high[1]
        and (m.opening.low[0] < x < m.opening.high[0] or m.opening.size(0) < box.size(0))
        for m in c.piece.motions
    )
