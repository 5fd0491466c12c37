"""What open doors leave of the way out of the space behind them."""

from __future__ import annotations

import math
from collections.abc import Sequence

from boardwright.piece.drafts import Draft
from boardwright.piece.forms.region import Region, Way
from boardwright.piece.records import Motion
from boardwright.piece.setout import SetOut

Doors = Sequence[tuple[Motion, list[Draft]]]
"""Doors with their parts."""
CLEAR = 3.0
"""Room between an open door and what is pulled past it [mm]: 1/8 in, common practice."""
BARS = 9.5
"""How deep full-extension bars may stand in their walls, and come out of them [mm]: 3/8 in, common practice."""
LEAST_FILLER = 12.7
"""A thinner filler holds no screw [mm]: 1/2 in, common practice."""
LEAST_FOR_BARS = 19.05
"""A thinner filler takes no full-extension bar with its screw [mm]: 3/4 in, common practice."""
LEAST_WAY = 80.0
"""A narrower way lets no drawer or tray pass [mm]: 3 in, common practice."""
MOST = 64.0
"""Thicker fillers are not made up: the doors must open farther [mm]: 2 1/2 in, common practice."""
WIDEST = 170
"""Doors open at most so far [degrees]."""
PLATE_END = 56.0
"""How far from the front of what carries it the plate of a cup hinge ends [mm]: 2 1/4 in, common practice."""


def way_out(out: SetOut, region: Region, ids: Sequence[str], path: str, bars: bool) -> Way | None:
    """The way past some open doors, or None, with a finding, when nothing can pass them.

    Args:
        out: the bench.
        region: the opening that they stand before.
        ids: of the doors.
        path: where the file asks for them.
        bars: full-extension bars come out with what runs behind them.
    """
    clear = CLEAR + (BARS if bars else 0.0)
    doors = [(m, [d for d in out.drafts.values() if d.group == m.id]) for m in out.motions if m.id in ids]
    low, high = region.box.low[0], region.box.high[0]
    edges = _edges(doors, (low, high), clear)
    if not _passes(edges, (low, high)) and high - low >= LEAST_WAY:
        _refuse(out, region, doors, edges, clear, path)
        return None
    for i, (edge, wall) in enumerate(zip(edges, (low, high), strict=True)):
        if abs(edge - wall) > 1e-6:
            side = "right" if i else "left"
            out.sizer.explain(
                f"{region.name}.clear.{side}",
                abs(edge - wall),
                f"the open door stands {out.about(abs(edge - wall) - clear)} before it, and {out.about(clear)}",
                f"what is pulled out stays so far off the {side} of the opening",
                "common practice",
            )
    hung = [h for h in out.hardware if h.table_key == "cup_hinge" and h.group in ids]
    left = {m.id: m.direction[2] < 0 for m, _ in doors}
    plates = [
        tuple((h.box.low[2] + h.box.high[2]) / 2 for h in hung if left[h.group] is s) for s in (True, False)
    ]
    return Way(
        edges[0],
        edges[1],
        LEAST_FOR_BARS if bars else LEAST_FILLER,
        (plates[0], plates[1]),
        _front(doors, region) + PLATE_END,
    )


def _front(doors: Doors, region: Region) -> float:
    """Where the plates of cup hinges are measured from [mm]: behind an inset door, or the front of the case."""
    backs = [max(d.high[1] for d in parts if d.id.endswith((".slab", ".stile.1"))) for _, parts in doors]
    return max([region.box.low[1], *backs])


def _edges(
    doors: Doors, walls: tuple[float, float], clear: float, turn: float | None = None
) -> tuple[float, float]:
    """Between what the doors leave free, opened as they are or by so much [degrees] [mm]."""
    low, high = walls
    for m, parts in doors:
        xs = [x for part in parts for x in _turned(m, part, m.turn if turn is None else turn)]
        if m.direction[2] < 0:
            low = max(low, max(xs) + clear)
        else:
            high = min(high, min(xs) - clear)
    return low, high


def _turned(m: Motion, part: Draft, turn: float) -> list[float]:
    """Where the corners of a part of a door lie on x when it is open [mm]."""
    angle = math.radians(turn) * m.direction[2]
    cos, sin = math.cos(angle), math.sin(angle)
    return [
        m.pivot[0] + cos * (x - m.pivot[0]) - sin * (y - m.pivot[1])
        for x in (part.low[0], part.high[0])
        for y in (part.low[1], part.high[1])
    ]


def _refuse(
    out: SetOut,
    region: Region,
    doors: Doors,
    edges: tuple[float, float],
    clear: float,
    path: str,
) -> None:
    walls = (region.box.low[0], region.box.high[0])
    good = next((t for t in range(90, WIDEST + 1, 5) if _passes(_edges(doors, walls, clear, t), walls)), None)
    it = "it" if len(doors) == 1 else "them"
    out.find(
        "door.in-the-way",
        f"what runs behind {' and '.join(m.name for m, _ in doors)} cannot come out past {it}",
        path,
        found=f"{out.about(max(edges[1] - edges[0], 0.0))} free of an opening {out.about(walls[1] - walls[0])} wide, "
        f"opened to {doors[0][0].turn:g} degrees",
        expected=f"at least {out.up(LEAST_WAY)}, {out.about(clear)} clear of the open doors, fillers at most "
        f"{out.down(MOST)} thick",
        source="common practice",
        remedy=f"let {it} open to {good} degrees (`opens`)"
        if good
        else f"make the opening {out.up(LEAST_WAY + MOST * len(doors) - (walls[1] - walls[0]))} wider",
    )


def _passes(edges: tuple[float, float], walls: tuple[float, float]) -> bool:
    """Whether a drawer gets through between two edges, behind fillers that can be made."""
    thick = max(edges[0] - walls[0], walls[1] - edges[1])
    return edges[1] - edges[0] >= LEAST_WAY and thick <= MOST + 1e-6
