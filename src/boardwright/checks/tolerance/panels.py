"""Panels between the bottoms of their grooves: at the wettest time they push nothing, at the driest none slips out."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.context import Context
from boardwright.checks.tolerance.builds import gap
from boardwright.checks.tolerance.chains import Chain, Faces, Sides
from boardwright.checks.tolerance.drawers import moisture
from boardwright.checks.tolerance.fits import Fit
from boardwright.core.findings import Severity
from boardwright.core.poses import Box
from boardwright.piece.cuts import Groove
from boardwright.piece.records import Part

Wall = tuple[Part, float, float]
"""A part with a groove for a panel; where the bottom lies and where the side that it is cut into [mm]."""


def fits(c: Context, sides: Sides) -> Iterator[Fit]:
    """Each kind of panel, along each axis on which it lies in two grooves."""
    seen: set[tuple[str, int]] = set()
    held: dict[str, list[tuple[Part, Groove]]] = {}
    for p in c.piece.parts:
        for cut in p.cuts:
            if isinstance(cut, Groove) and cut.holds and cut.purpose == "panel":
                held.setdefault(cut.holds, []).append((p, cut))
    for id, grooves in held.items():
        panel = c.parts.get(id)
        if panel is None:
            continue
        for axis in range(3):
            if (panel.letter, axis) not in seen:
                seen.add((panel.letter, axis))
                walls = [w for p, g in grooves if (w := _wall(p, sides.boxes[p.id], g, axis)) is not None]
                yield from _fit(c, sides.along(axis), panel, walls)


def _wall(p: Part, box: Box, g: Groove, axis: int) -> Wall | None:
    own = (p.pose.x, p.pose.y, p.pose.z)[g.side.axis]
    if abs(own[axis]) < 0.999:
        return None
    faces_up = (own[axis] > 0) == g.side.high
    side = box.high[axis] if faces_up else box.low[axis]
    return p, side - g.depth if faces_up else side + g.depth, side


def _fit(c: Context, faces: Faces, panel: Part, walls: list[Wall]) -> Iterator[Fit]:
    axis, middle = faces.axis, panel.box.middle()[faces.axis]
    low, high = [w for w in walls if w[2] < middle], [w for w in walls if w[2] > middle]
    own = faces.whole(panel)
    if not low or not high or own is None:
        return
    left, right = max(low, key=lambda w: w[1]), min(high, key=lambda w: w[1])
    between = faces.chain([(left[0].id, left[2])], [(right[0].id, right[2])])
    if between is None:
        return
    depths: Chain = tuple(faces.groove(abs(w[2] - w[1])) for w in (left, right))
    size = panel.box.size(axis)
    room = gap(right[1] - left[1] - size, (*between, *depths), (own,), moisture(c))
    yield Fit(
        "tolerance.panel",
        (panel.id, left[0].id, right[0].id),
        f"{c.label(panel.id)} between {c.label(left[0].id)} and {c.label(right[0].id)}",
        "panels in grooves",
        (room,),
        panel.place,
        lambda more, total: f"make it {c.up(more)} smaller" if more >= 0 else f"make it {c.up(-more)} larger",
        binds="pushes them apart",
        rattles_over=min(abs(left[2] - left[1]), abs(right[2] - right[1])),
        season="dry",
        rattles="slips out of a groove",
        loose=Severity.WARNING,
    )
