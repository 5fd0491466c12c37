"""Holes for the knobs and pulls of a drawer, through its front and the front of its box."""

from __future__ import annotations

from boardwright.core.poses import Box
from boardwright.piece.drafts import Bore, Draft
from boardwright.piece.forms.drawer_settings import Layers
from boardwright.piece.records import Hardware
from boardwright.piece.setout import SetOut

LEAST_EDGE = 12.0
"""From a hole for a knob to the edge of the front [mm]: 1/2 in, common practice."""
PROUD = 25.4
"""How far a knob or pull stands before the front [mm]."""


def pulls(out: SetOut, id: str, front: Draft, inner: Draft | None, layers: Layers) -> None:
    """Drill the front of a drawer, when its keys name a pull.

    Args:
        out: the bench.
        id: of the drawer.
        front: its front.
        inner: the front of its box behind an applied front.
        layers: what the file says.
    """
    if not layers.values("pull"):
        return
    path = layers.path("pull")
    kind = layers.choose(out, id, "pull.kind", "knob", "a knob needs one hole")
    if kind == "none":
        return
    spread = _size(out, id, layers, "spread", "pull_spread", "between the screws") if kind == "pull" else 0.0
    hole = _size(out, id, layers, "hole", "knob_hole", "hole for a screw", settle_it=False)
    up = out.sizer.size(
        f"{id}.pull.up", layers.choices("pull.up"), front.size(2) / 2, rule="half-way up the front"
    )
    from_wide = out.tables.figure("pull_two_from")
    count = int(
        layers.choose(
            out,
            id,
            "pull.count",
            "2" if front.size(0) >= from_wide.value - 1e-6 else "1",
            f"two on fronts from {out.about(from_wide.value)} wide",
        )
    )
    half = spread / 2 + LEAST_EDGE
    share = front.size(0) / (2 * count)
    if share < half or not LEAST_EDGE <= up <= front.size(2) - LEAST_EDGE:
        out.find(
            "drawer.pull-no-room",
            f"the {kind} has no room on the front of {id.replace('.', ' ')}",
            path,
            found=f"a front {out.about(front.size(0))} wide and {out.about(front.size(2))} high; {count} with "
            f"{out.about(spread)} between screws, {out.about(up)} up",
            expected=f"{out.up(LEAST_EDGE)} from every hole to an edge",
            source="common practice",
            remedy="use a knob, a smaller `spread`, or another `up`",
        )
        return
    z = front.low[2] + up
    for i in range(count):
        middle = front.low[0] + out.sizer.settled(share * (2 * i + 1))
        if count == 2 and i == 1:
            middle = front.high[0] - out.sizer.settled(share)
        for x in (middle,) if not spread else (middle - spread / 2, middle + spread / 2):
            for part in (front, inner):
                if part is not None:
                    _bore(part, x, z, hole, kind)
        r = out.tables.figure("knob_diameter").value / 2
        reach = max(r, spread / 2 + LEAST_EDGE / 2)
        room = Box(
            (middle - reach, front.low[1] - PROUD, z - r / 2), (middle + reach, front.low[1], z + r / 2)
        )
        name = f"pull {out.about(spread)} between screws" if spread else "knob"
        out.hardware.append(Hardware(f"{id}.pull.{i + 1}", name, "", room, id, place=out.design.place(path)))


def _size(
    out: SetOut, id: str, layers: Layers, key: str, figure_name: str, rule: str, settle_it: bool = True
) -> float:
    figure = out.tables.figure(figure_name)
    return out.sizer.size(
        f"{id}.pull.{key}",
        layers.choices(f"pull.{key}"),
        figure.value,
        rule=rule,
        source=figure.reason,
        settle_it=settle_it,
    )


def _bore(part: Draft, x: float, z: float, hole: float, kind: str) -> None:
    part.cuts.append(
        Bore(1, False, (x, part.low[1], z), hole, part.size(1), True, purpose="hardware", for_=kind)
    )
