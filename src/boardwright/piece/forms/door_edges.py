"""Where the edges of doors lie: inside an opening with gaps, or over the parts round it."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.design.schema import Door, DoorPair
from boardwright.piece.forms.region import Region
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

LEAST_GAP = 0.4
"""Least gap at each side of an inset door at the wettest time [mm]: 1/64 in, common practice."""


@dataclass(frozen=True, slots=True)
class Edges:
    """The outline that one door or a pair fills [mm].

    Attributes:
        left, right, low, high: its edges.
        meeting: gap between a pair; 0 for one door.
        gap: of an inset door to its opening.
        words: the sum, for `explain`.
        closes: how much less the gap at the edge that opens is at the wettest time.
    """

    left: float
    right: float
    low: float
    high: float
    meeting: float
    gap: float
    words: str
    closes: float = 0.0

    @property
    def free(self) -> float:
        """The gap at the edge that opens, at the wettest time [mm]."""
        return (self.meeting or self.gap) - self.closes


def edges(
    out: SetOut,
    region: Region,
    keys: Door | DoorPair,
    path: str,
    lap: str,
    stock: Stock,
    swells: float | None,
) -> Edges:
    """The outline of the doors of a space.

    Args:
        out: the bench.
        region: the space.
        keys: what the file says.
        path: where it stands.
        lap: `inset`, `overlay` or `half_overlay`.
        stock: of the doors.
        swells: how much wider the doors get together [mm]; None for solid slabs as wide as the opening.
    """
    if swells is None:
        rate = stock.across if stock.kind == "wood" else 0.0
        swells = region.box.size(0) * max(0.0, rate * (out.moisture.wettest - out.moisture.now))
    if lap == "inset":
        return _inset(out, region, keys, path, swells)
    figure = out.tables.figure("overlay_front_gap")
    gap = out.sizer.size(
        f"{path}.gap",
        [(f"{path}.gap", keys.gap)],
        figure.value,
        rule="gap between two overlay doors",
        source=figure.reason,
    )
    ends = []
    walls = region.walls
    for wall, axis, high, outer in (
        (walls.left, 0, False, region.outer[0]),
        (walls.right, 0, True, region.outer[1]),
        (walls.floor, 2, False, region.outer[2]),
        (walls.ceiling, 2, True, region.outer[3]),
    ):
        own = region.box.high[axis] if high else region.box.low[axis]
        thick = wall.size(axis) if wall is not None else 0.0
        reach = thick if outer and lap == "overlay" else thick / 2
        ends.append(own + (1 if high else -1) * (reach - gap / 2))
    over = "the parts" if lap == "overlay" else "half of the parts"
    words = f"over {over} round it, less half a gap of {out.text(gap)}"
    return Edges(
        ends[0],
        ends[1],
        ends[2],
        ends[3],
        _meeting(out, keys, path, "door_gap_pair", None, swells),
        gap,
        words,
    )


def _inset(out: SetOut, region: Region, keys: Door | DoorPair, path: str, swells: float) -> Edges:
    figure = out.tables.figure("door_gap_inset")
    needed = LEAST_GAP + (0.0 if isinstance(keys, DoorPair) else swells)
    gap = out.sizer.size(
        f"{path}.gap",
        [(f"{path}.gap", keys.gap)],
        max(figure.value, needed),
        rule="usual gap of an inset door"
        if figure.value >= needed
        else f"the door swells by {out.about(swells)}, and {out.about(LEAST_GAP)} stays open at the wettest time",
        source=figure.reason
        if figure.value >= needed
        else "change of width: Wood Handbook FPL-GTR-190 eq. 13-2",
        direction="up",
    )
    box = region.box
    words = f"less a gap of {out.text(gap)} at each side"
    meeting = _meeting(out, keys, path, None, gap, swells)
    return Edges(
        box.low[0] + gap, box.high[0] - gap, box.low[2] + gap, box.high[2] - gap, meeting, gap, words, swells
    )


def _meeting(
    out: SetOut, keys: Door | DoorPair, path: str, key: str | None, usual: float | None, swells: float
) -> float:
    """The gap between two doors [mm], which both swell into; 0 for one."""
    if not isinstance(keys, DoorPair):
        return 0.0
    figure = out.tables.figure(key) if key is not None else None
    plain = figure.value if figure is not None else usual or 0.0
    needed = LEAST_GAP + swells
    wide = needed > plain + 1e-6
    return out.sizer.size(
        f"{path}.meeting",
        [(f"{path}.meeting", keys.meeting)],
        max(plain, needed),
        rule=f"the doors swell by {out.about(swells)} in all; {out.about(LEAST_GAP)} stays open at the wettest time"
        if wide
        else "gap between the two doors",
        source="change of width: Wood Handbook FPL-GTR-190 eq. 13-2"
        if wide
        else figure.reason
        if figure is not None
        else "as the gaps beside them",
        direction="up",
    )
