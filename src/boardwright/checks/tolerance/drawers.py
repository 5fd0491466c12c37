"""Drawers and trays in the width and the height of their openings."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.context import Context
from boardwright.checks.drawers import sliding
from boardwright.checks.tolerance.builds import Gap, gap
from boardwright.checks.tolerance.chains import Chain, Faces, Link, Sides
from boardwright.checks.tolerance.fits import FITTED, Fit
from boardwright.core.poses import Box
from boardwright.piece.records import Motion, Part

WIDTH = {"runners": "drawer_side_total", "centre_guide": "drawer_side_total", "bars": "bar_width_total"}
"""Figure of the usual play in width, both sides together, by what a drawer runs on."""
HUNG = ("bars", "slides", "full_extension_bars")
"""What holds a drawer off the floor of its opening."""
LAST = "cut its front and back last, to the room as measured between the slides"


def fits(c: Context, sides: Sides) -> Iterator[Fit]:
    """Width and height of each."""
    for m in sliding(c):
        behind = m.opening.low[1] + 1e-6
        group = [p for p in c.piece.parts if p.group == m.id and sides.boxes[p.id].high[1] > behind]
        around = [p for p in c.piece.parts if p.group != m.id and bounds(sides.boxes[p.id], m)]
        if group:
            yield from _width(c, sides.along(0), m, group, around)
            yield from _height(c, sides.along(2), m, group, around)


def bounds(box: Box, m: Motion) -> bool:
    """True for a part that is a side of an opening, and not for one that is inside it or far from it."""
    wide = 0
    for low, high, start, end in zip(box.low, box.high, m.opening.low, m.opening.high, strict=True):
        shared = min(high, end) - max(low, start)
        if shared < -1e-6:
            return False
        wide += shared > 1
    return wide >= 2


def room(faces: Faces, m: Motion, around: list[Part]) -> Chain | None:
    """Chain from one side of an opening to the other."""
    i = faces.axis
    return faces.chain(faces.at(m.opening.low[i], True, around), faces.at(m.opening.high[i], False, around))


def moisture(c: Context) -> tuple[float, float, float]:
    """Now, wettest, driest [%]."""
    return c.piece.moisture.now, c.piece.moisture.wettest, c.piece.moisture.driest


def _width(c: Context, faces: Faces, m: Motion, group: list[Part], around: list[Part]) -> Iterator[Fit]:
    opening = room(faces, m, around)
    if opening is None:
        return
    bound = 0.0
    slide = _slide(c, m)
    box = [p for p in group if p.name != "drawer front"] if slide else group
    if not box:
        return
    low, high = min(p.box.low[0] for p in box), max(p.box.high[0] for p in box)
    gaps: dict[Chain, Gap] = {}
    for start in faces.at(low, False, box):
        chain = faces.chain([start], faces.at(high, True, box))
        if chain is not None:
            gaps.setdefault(chain, gap(m.opening.size(0) - (high - low), opening, chain, moisture(c)))
    if not gaps:
        return
    loose = None
    if slide:
        bound, loose = slide
    elif m.kind == "tray":
        loose = _rattle(c, "tray_side_total")
    elif m.runs_on in WIDTH:
        loose = _rattle(c, WIDTH[m.runs_on])
    yield Fit(
        "tolerance.drawer",
        tuple(p.id for p in box if p.box.low[0] < low + 0.02 or p.box.high[0] > high - 0.02),
        f"{m.name} in the width of its opening",
        f"{m.kind}s in their openings",
        tuple(gaps.values()),
        m.place,
        lambda more, total: f"leave {c.up(total / 2)} at each side (`side_clearance`)",
        bound,
        loose,
        by_hand=LAST if slide else FITTED,
    )


def _rattle(c: Context, key: str) -> float:
    return c.tables.figure(key).value * c.tables.figure("rattle_ratio").value


def _slide(c: Context, m: Motion) -> tuple[float, float] | None:
    """Least and most room that the slides of a drawer take, both sides together [mm]."""
    if m.runs_on != "slides":
        return None
    row = next(
        (c.tables.slides[h.table_key] for h in c.piece.hardware if h.table_key in c.tables.slides), None
    )
    return (2 * row.thickness, 2 * row.thickness + c.tables.figure("slide_room_more").value) if row else None


def _height(c: Context, faces: Faces, m: Motion, group: list[Part], around: list[Part]) -> Iterator[Fit]:
    """Over each upright part; what is hung stands where a bar or slide and its groove were laid out."""
    opening = room(faces, m, around)
    if opening is None:
        return
    hung: Chain = ()
    if m.runs_on in HUNG:
        hung = tuple(Link(("groove_place", f"{m.id} {k}", 0.0), 1e-9, 0.0) for k in ("case", "drawer"))
    gaps: dict[tuple[Link, float], Gap] = {}
    parts: list[str] = []
    for p in group:
        upright = abs(p.pose.y[2]) > 0.9 and p.box.low[0] >= m.opening.low[0] - 1e-6
        own = faces.whole(p) if upright else None
        if own is None:
            continue
        parts.append(p.id)
        size = m.opening.high[2] - p.box.high[2]
        gaps.setdefault((own, round(size, 3)), gap(size, opening, (own, *hung), moisture(c)))
    if gaps:
        yield Fit(
            "tolerance.drawer",
            tuple(parts),
            f"{m.name} in the height of its opening",
            f"{m.kind}s in their openings",
            tuple(gaps.values()),
            m.place,
            lambda more, total: f"make it {c.up(more)} lower, or its opening as much higher",
        )
