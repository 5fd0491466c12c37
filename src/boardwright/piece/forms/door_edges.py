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
    """

    left: float
    right: float
    low: float
    high: float
    meeting: float
    gap: float
    words: str

    def free(self, left: bool) -> float:
        """The gap at the edge that opens [mm]."""
        return self.meeting or self.gap


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
    if lap == "inset":
        if swells is None:
            swells = region.box.size(0) * max(0.0, stock.across * (out.moisture.wettest - out.moisture.now))
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
        ends[0], ends[1], ends[2], ends[3], _meeting(out, keys, path, "door_gap_pair", None), gap, words
    )


def _inset(out: SetOut, region: Region, keys: Door | DoorPair, path: str, swells: float) -> Edges:
    figure = out.tables.figure("door_gap_inset")
    count = 3 if isinstance(keys, DoorPair) else 2
    needed = LEAST_GAP + swells / count
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
    if gap < needed - 1e-6:
        out.find(
            "door.gap-too-small",
            "the door jams in its opening at the wettest time",
            f"{path}.gap",
            found=f"gaps of {out.about(gap)}; the door swells by {out.about(swells)}",
            expected=f"at least {out.up(needed)}: {out.about(LEAST_GAP)} left at each side",
            source="change of width: Wood Handbook FPL-GTR-190 eq. 13-2",
            remedy=f"set `gap` to {out.up(needed)} or more, use quartersawn stock, or a frame with a panel",
        )
    box = region.box
    words = f"less a gap of {out.text(gap)} at each side"
    meeting = _meeting(out, keys, path, None, gap)
    return Edges(
        box.low[0] + gap, box.high[0] - gap, box.low[2] + gap, box.high[2] - gap, meeting, gap, words
    )


def _meeting(out: SetOut, keys: Door | DoorPair, path: str, key: str | None, usual: float | None) -> float:
    """The gap between two doors [mm]; 0 for one."""
    if not isinstance(keys, DoorPair):
        return 0.0
    figure = out.tables.figure(key) if key is not None else None
    return out.sizer.size(
        f"{path}.meeting",
        [(f"{path}.meeting", keys.meeting)],
        figure.value if figure is not None else usual or 0.0,
        rule="gap between the two doors",
        source=figure.reason if figure is not None else "as the gaps beside them",
        direction="up",
    )
