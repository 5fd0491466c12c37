"""What floats in a groove or rabbet: room left at the wettest time, and what is still held at the driest."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from boardwright.checks.movement.fits import SOURCE, STILL, Moving, Year, ways_out
from boardwright.core.findings import Finding, Severity
from boardwright.core.poses import AXES, Box, Vec, scaled
from boardwright.piece.cuts import Groove, Mortise, Rabbet
from boardwright.piece.records import Fastener, Joint, Part
from boardwright.solids.cells import cells, clashes
from boardwright.solids.taken import taken

HELD = 3.0
"""Least of a panel that stays in its groove in the driest time [mm]: 1/8 in, common practice."""
TIGHT, PRESSES = 0.01, 0.4
"""An edge nearer to the bottom than this lies on it by plan; it may press on it so far [mm]: 1/64 in, common
practice."""
BUTTON = "button"
"""A wooden button that holds a top to its apron: its tongue lies along its grain."""
COVERS = 0.6
"""Share of an edge that a groove must take up to be the one that it lies in."""


@dataclass(frozen=True, slots=True)
class Edge:
    """An edge of a part that stands in a groove of another.

    Attributes:
        panel, wall: ids. way: unit vector from the panel into the groove.
        at: the middle of the edge [mm]. bottom, mouth: the points of the groove before it [mm].
        room: from the edge to the bottom. held: from the mouth to the edge.
    """

    panel: str
    wall: str
    way: Vec
    at: Vec
    bottom: Vec
    mouth: Vec
    room: float
    held: float


def edges(year: Year) -> list[Edge]:
    """Every edge of solid wood that stands in a groove or rabbet and can move in it.

    Of a panel those across its grain; of a button its tongue, which the top carries to and fro.
    """
    c = year.c
    parts = c.piece.parts
    if not parts:
        return []
    fasteners = {f.id: f for f in c.piece.fasteners}
    fast = {frozenset((j.first, j.second)) for j in c.piece.joints if _fast(j, fasteners)}
    bounds = np.array([[p.box.low, p.box.high] for p in parts])
    out = []
    for i, k in clashes(bounds, bounds):
        panel, wall = parts[i], parts[k]
        if i == k or panel.group != wall.group or frozenset((panel.id, wall.id)) in fast:
            continue
        way = panel.pose.x if panel.name == BUTTON else panel.pose.y
        axis = next((a for a in range(3) if abs(way[a]) > 1 - 1e-6), None)
        if axis is None or panel.stock.kind != "wood":
            continue
        out += [e for sign in (-1.0, 1.0) if (e := _edge(panel, wall, axis, sign)) is not None]
    return out


def _fast(joint: Joint, fasteners: dict[str, Fastener]) -> bool:
    """True for a joint that holds its parts: by glue, or by screws or pegs none of which stands in a slot."""
    held = [f for id in joint.fasteners if (f := fasteners.get(id)) is not None and f.kind != "plug"]
    return joint.glued or (bool(held) and not any(f.slotted for f in held) and not joint.floats)


def _edge(panel: Part, wall: Part, axis: int, sign: float) -> Edge | None:
    end = panel.box.high[axis] if sign > 0 else panel.box.low[axis]
    other = panel.box.low[axis] if sign > 0 else panel.box.high[axis]
    low, high = wall.box.low[axis], wall.box.high[axis]
    if not low + 1e-6 < end < high - 1e-6 or low - 1e-6 < other < high + 1e-6:
        return None
    mouth = low if sign > 0 else high
    shared = _within(panel, wall.box)
    if shared is None:
        return None
    bottom = _bottom(wall, shared, axis, sign, end)
    if bottom is None:
        return None
    at = list(shared.middle())
    points = []
    for place in (end, bottom, mouth):
        at[axis] = place
        points.append((at[0], at[1], at[2]))
    return Edge(
        panel.id,
        wall.id,
        scaled(AXES[axis], sign),
        points[0],
        points[1],
        points[2],
        sign * (bottom - end),
        sign * (end - mouth),
    )


def _within(panel: Part, wall: Box) -> Box | None:
    """The room that what is left of a panel, such as its tongue, takes within the outline of another part."""
    boxes = cells(panel)
    low, high = np.maximum(boxes[:, 0], wall.low), np.minimum(boxes[:, 1], wall.high)
    inside = (high - low > 1e-6).all(axis=1)
    if not inside.any():
        return None
    (a, b, c), (d, e, f) = low[inside].min(axis=0).tolist(), high[inside].max(axis=0).tolist()
    return Box((a, b, c), (d, e, f))


def _bottom(wall: Part, shared: Box, axis: int, sign: float, end: float) -> float | None:
    """How far a groove goes before an edge that lies in it [mm]; None when it lies in none."""
    found: list[float] = []
    for cut in wall.cuts:
        if not isinstance(cut, (Groove, Rabbet, Mortise)) or getattr(cut, "purpose", "") == "tongue":
            continue
        for body in taken(cut, wall.size):
            if not isinstance(body, Box):
                continue
            box = _placed(body, wall)
            far = box.high[axis] if sign > 0 else box.low[axis]
            if sign * (far - end) < -1e-6 or not box.low[axis] - 1e-6 < end < box.high[axis] + 1e-6:
                continue
            if _covers(box, shared, axis):
                found.append(far)
    return min(found, key=lambda f: sign * f) if found else None


def _covers(box: Box, shared: Box, axis: int) -> bool:
    """Whether a groove takes up most of an edge's length, and lies in its thickness or takes up most of that."""
    share, others = 1.0, [i for i in range(3) if i != axis]
    long = max(others, key=shared.size)
    for i in others:
        both = min(box.high[i], shared.high[i]) - max(box.low[i], shared.low[i])
        whole = shared.size(i) if i == long else min(shared.size(i), box.size(i))
        share *= max(both, 0.0) / max(whole, 1e-9)
    return share > COVERS


def _placed(body: Box, part: Part) -> Box:
    one, two = part.pose.point(body.low), part.pose.point(body.high)
    low = [min(a, b) for a, b in zip(one, two, strict=True)]
    high = [max(a, b) for a, b in zip(one, two, strict=True)]
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def fits(year: Year) -> Iterator[Moving]:
    """Room before each edge, and what of it is held."""
    for e in edges(year):
        place = year.c.parts[e.panel].place
        closes = year.slope(e.panel, e.at, e.wall, e.bottom, e.way)
        leaves = year.slope(e.wall, e.mouth, e.panel, e.at, e.way)
        side = _side(e.way)
        full = e.room < TIGHT
        if abs(closes) * year.swing > STILL:
            yield Moving(
                "wood.panel-bottoms",
                (e.panel, e.wall),
                f"room {side}",
                e.room,
                closes,
                -PRESSES if full else 0.0,
                place,
                tell=_bottoms,
            )
        if abs(leaves) * year.swing > STILL:
            least = min(HELD, e.held / 2)
            yield Moving(
                "wood.panel-leaves",
                (e.panel, e.wall),
                f"held {side}",
                e.held,
                leaves,
                least,
                place,
                tell=_leaves,
            )


def _side(way: Vec) -> str:
    axis = max(range(3), key=lambda i: abs(way[i]))
    names = (("left", "right"), ("in front", "behind"), ("below", "above"))[axis]
    return names[way[axis] > 0]


def _bottoms(year: Year, m: Moving, worst: float, when: float) -> Finding:
    c, mo = year.c, year.moisture
    panel, wall = m.parts
    button = c.parts[panel].name == BUTTON
    return Finding(
        m.code,
        Severity.ERROR,
        f"{c.label(panel)} {'is pushed' if button else 'swells'} against the bottom of its groove in {c.label(wall)}",
        m.place,
        found=f"{c.text(m.now)} of room at {mo.now:.3g} % moisture, {c.text(worst)} at {when:.3g} %",
        expected=f"room left at {when:.3g} %",
        source=SOURCE,
        remedy=ways_out(
            year,
            fits,
            m,
            f"cut it {c.up(-worst)} {'shorter' if button else 'narrower at this edge'}, or the groove as much deeper",
        ),
        parts=m.parts,
    )


def _leaves(year: Year, m: Moving, worst: float, when: float) -> Finding:
    c, mo = year.c, year.moisture
    panel, wall = m.parts
    return Finding(
        m.code,
        Severity.ERROR if worst <= 0 else Severity.WARNING,
        f"{c.label(panel)} {'is drawn' if c.parts[panel].name == BUTTON else 'shrinks'} "
        + ("out of its groove in" if worst <= 0 else "until its groove hardly holds it in")
        + f" {c.label(wall)}",
        m.place,
        found=f"{c.text(m.now)} held at {mo.now:.3g} % moisture, {c.text(worst)} at {when:.3g} %",
        expected=f"at least {c.text(m.least)} at {when:.3g} %",
        source=f"{SOURCE}; least hold: common practice",
        remedy=ways_out(
            year, fits, m, f"let it reach {c.up(m.least - worst)} farther into a groove as much deeper"
        ),
        parts=m.parts,
    )
