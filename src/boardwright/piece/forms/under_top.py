"""What all fixings of a top share: the aprons they stand at, where, and a screw up into the top."""

from __future__ import annotations

import math
from dataclasses import dataclass

from boardwright.core.poses import Vec
from boardwright.piece.drafts import Draft
from boardwright.piece.joints.fastening.screws import choose_screw, drive, no_screw
from boardwright.piece.setout import SetOut

FROM_LEG = 38.0
"""Nothing that holds the top stands nearer to a leg than this [mm]: 1 1/2 in, common practice; two at a corner would
meet, and dowels of the apron lie there."""
PATH = "table.top"


@dataclass(frozen=True, slots=True)
class Apron:
    """An apron that stands plumb.

    Attributes:
        side: of the table. draft: the part.
        axis: that its faces are square to. inward: True when its high side faces in.
    """

    side: str
    draft: Draft
    axis: int
    inward: bool

    @property
    def along(self) -> int:
        """The axis it runs along."""
        return 1 - self.axis

    @property
    def face(self) -> float:
        """Where its inner face lies [mm]."""
        return self.draft.face(self.axis, self.inward)

    def inside(self, near: float, far: float) -> tuple[float, float]:
        """A stretch of its axis, by how far inside its inner face it begins and ends [mm]; below 0 is in its wood."""
        sign = 1.0 if self.inward else -1.0
        a, b = self.face + sign * near, self.face + sign * far
        return (a, b) if a <= b else (b, a)

    def run(self, out: SetOut) -> tuple[float, float]:
        """From where to where things may stand at it [mm]."""
        seen = self.draft.seen()
        keep = out.sizer.settled(FROM_LEG, "up")
        return seen.low[self.along] + keep, seen.high[self.along] - keep


def spread(out: SetOut, run: tuple[float, float], size: float) -> list[float]:
    """Middles of things of a size, evenly along a run, the first and the last at its ends [mm]; none without room."""
    free = run[1] - run[0] - size
    if free < -1e-6:
        return []
    if free < 2 * size:
        return [run[0] + out.sizer.settled((run[1] - run[0]) / 2)]
    count = max(2, math.ceil(free / out.tables.figure("button_pitch").value) + 1)
    half = out.sizer.settled(size / 2)
    steps = [out.sizer.settled(free * i / (count - 1)) for i in range((count + 1) // 2)]
    left = [run[0] + half + s for s in steps]
    return left + [run[0] + run[1] - x for x in reversed(left[: count // 2])]


def screw_up(
    out: SetOut,
    part: Draft,
    top: Draft,
    at: Vec,
    gap: float,
    *,
    slot: float = 0.0,
    slot_axis: int = 0,
) -> str:
    """A screw from under a part up into the top; gives its id, or "" with a finding.

    Args:
        out: the bench.
        part: under the top.
        top: the top.
        at: where the screw's axis is [mm].
        gap: between part and top [mm].
        slot: length of a slot for it in the part [mm].
        slot_axis: along which axis the slot runs.
    """
    held = part.size(2) + gap
    edge = min(part.size(0), part.size(1)) / 2
    chosen = choose_screw(out, None, None, edge, held, top.size(2))
    if chosen is None:
        no_screw(out, part, top, PATH, held, top.size(2), edge)
        return ""
    head: Vec = (at[0], at[1], part.low[2])
    screw, length = chosen
    return drive(
        out, part, top, 2, True, head, screw, length, held, slot=slot, slot_axis=slot_axis, path=PATH
    )
