"""Lids: how far the free edge moves over the year, and how far a bare board cups."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial

from boardwright.checks.margins import Margin
from boardwright.checks.movement.fits import SOURCE, Year
from boardwright.core.findings import Finding, Severity
from boardwright.core.poses import cross, dot
from boardwright.formulas.movement import cup
from boardwright.piece.records import Motion, Part

MOVES, CUPS = "wood.lid-moves", "wood.lid-cups"
STRIKE = 3.2
"""Travel of a lid's free edge that a lock or catch still finds its strike in [mm]: 1/16 in to either side, 1/8 in all
told, common practice."""
FACES = 1.0
"""Difference of moisture between the two faces of a lid finished unlike, for weeks [%]: common practice."""
CUP = 1.6
"""Cup of a lid that still shuts well [mm]: 1/16 in, common practice."""


@dataclass(frozen=True, slots=True)
class Free:
    """The free edge of a lid.

    Attributes:
        motion: of the lid. edge: the part at the free edge.
        over: how far it hangs over, as cut; negative where it stands back [mm].
        slope: how much farther for each per cent of moisture [mm/%].
    """

    motion: Motion
    edge: Part
    over: float
    slope: float

    @property
    def most(self) -> float:
        """How far it may move over the year [mm].

        An edge that hangs over may move as far as it does: it never comes back behind the case.
        """
        return max(STRIKE, self.over)


def free_edges(year: Year) -> list[Free]:
    """The free edge of each lid."""
    out = []
    parts = year.c.piece.parts
    for motion in year.c.piece.motions:
        mine = [p for p in parts if p.group == motion.id]
        still = [p for p in parts if p.group == "case"]
        if motion.kind != "lid" or not mine or not still:
            continue
        away = _away(motion, mine)
        edge = max(mine, key=lambda p: (round(_reach(p, away), 3), p.id))
        at = edge.box.middle()
        end = tuple(
            edge.box.high[i] if away[i] > 0.5 else edge.box.low[i] if away[i] < -0.5 else at[i]
            for i in range(3)
        )
        spot = (end[0], end[1], end[2])
        under = min(still, key=lambda p: (sum((p.box.middle()[i] - spot[i]) ** 2 for i in range(3)), p.id))
        slope = year.slope(under.id, spot, edge.id, spot, away)
        over = _reach(edge, away) - max(_reach(p, away) for p in still)
        out.append(Free(motion, edge, over, slope))
    return out


def _framed(year: Year, motion: Motion) -> bool:
    return any(
        j.kind == "panel" and year.c.parts[j.second].group == motion.id
        for j in year.c.piece.joints
        if j.second in year.c.parts
    )


def _away(motion: Motion, mine: list[Part]) -> tuple[float, float, float]:
    """The unit vector from the hinge to the free edge, level."""
    way = cross(motion.direction, (0.0, 0.0, 1.0))
    middle = [sum(p.box.middle()[i] for p in mine) / len(mine) - motion.pivot[i] for i in range(3)]
    sign = 1.0 if dot((middle[0], middle[1], middle[2]), way) > 0 else -1.0
    return (sign * way[0], sign * way[1], sign * way[2])


def _reach(part: Part, way: tuple[float, float, float]) -> float:
    return max(dot(part.box.low, way), dot(part.box.high, way))


def boards(year: Year) -> list[tuple[Motion, Part, float]]:
    """Each lid of one bare board, and how far it cups when its faces differ in moisture [mm]."""
    c = year.c
    out = []
    for motion in c.piece.motions:
        mine = [p for p in c.piece.parts if p.group == motion.id]
        if motion.kind != "lid" or len(mine) != 1 or mine[0].stock.kind != "wood":
            continue
        board = mine[0]
        out.append((motion, board, cup(board.size[1], board.size[2], board.stock.across, FACES)))
    return out


def margins(year: Year) -> Iterator[Margin]:
    """What a lock, or a tight lid, would suffer from."""
    for free in free_edges(year):
        by = abs(free.slope) * year.swing
        tell = partial(_wanders, year, free.motion, free.edge, by)
        yield Margin(
            MOVES, (free.edge.id,), "movement of the lid's free edge", by, free.most, "mm", tell=tell
        )
    for motion, board, by in boards(year):
        tell = partial(_cups, year, motion, board, by)
        yield Margin(CUPS, (board.id,), "cup of the lid", by, CUP, "mm", tell=tell)


def _wanders(year: Year, motion: Motion, edge: Part, by: float) -> Finding:
    c, m = year.c, year.moisture
    return Finding(
        "wood.lid-moves",
        Severity.NOTE,
        f"the free edge of {motion.name}, {c.label(edge.id)}, moves {c.text(by)} over the year",
        motion.place,
        found=f"from {m.driest:.3g} to {m.wettest:.3g} % moisture; it is hung at its other edge",
        expected=f"at most {c.text(STRIKE)} of a lid that lies flush, or has a lock or catch",
        source=f"{SOURCE}; limit: common practice",
        remedy=f"let it hang over by {c.up(by)} or more; give the strike of a lock a slot"
        + ("" if _framed(year, motion) else "; in a framed lid only the widths of the members count"),
        parts=(edge.id,),
    )


def _cups(year: Year, motion: Motion, board: Part, by: float) -> Finding:
    c = year.c
    return Finding(
        "wood.lid-cups",
        Severity.NOTE,
        f"{motion.name}, a bare board {c.text(board.size[1])} wide, cups when its faces are not finished alike",
        motion.place,
        found=f"{c.text(by)} with {FACES:g} % more moisture in one face",
        expected=f"at most {c.text(CUP)}",
        source="bending of a strip by unlike swelling of its faces (mechanics); limit: common practice",
        remedy="finish both faces alike, and add battens in slots, breadboard ends or a frame; "
        f"{c.up(board.size[2] * by / CUP)} thick it would keep within the limit",
        parts=(board.id,),
    )
