"""Parts while they are being set out: boxes and cuts in piece coordinates, free to grow.

A form places parts between the faces that are seen; joints then let them grow into each other. Cuts are kept in
absolute piece coordinates [mm], so growth never shifts them; `finish` turns them into the part's own frame.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from boardwright.core.findings import Place
from boardwright.core.poses import Box, Vec
from boardwright.piece.records import Stock

EPS = 1e-6


@dataclass(frozen=True, slots=True)
class Channel:
    """A groove or dado: into the side (`axis`, `high`), running along `along`, from `lo` to `hi` on the third axis."""

    axis: int
    high: bool
    along: int
    lo: float
    hi: float
    depth: float
    start: float | None = None
    end: float | None = None
    holds: str = ""
    purpose: str = "joint"


@dataclass(frozen=True, slots=True)
class Step:
    """A rabbet: `depth` into the side (`axis`, `high`), `width` in from the side (`edge_axis`, `edge_high`)."""

    axis: int
    high: bool
    edge_axis: int
    edge_high: bool
    width: float
    depth: float
    start: float | None = None
    end: float | None = None
    holds: str = ""
    purpose: str = "joint"


@dataclass(frozen=True, slots=True)
class Corner:
    """A notch: two sides and how far in from each."""

    a_axis: int
    a_high: bool
    a_size: float
    b_axis: int
    b_high: bool
    b_size: float
    holds: str = ""


@dataclass(frozen=True, slots=True)
class Bore:
    """A hole or slot, drilled from the side (`axis`, `high`) at a point of it."""

    axis: int
    high: bool
    at: Vec
    diameter: float
    depth: float
    through: bool = False
    countersink: float = 0.0
    slot: float = 0.0
    slot_axis: int = 0
    purpose: str = "hardware"
    for_: str = ""


DraftCut = Channel | Step | Corner | Bore


@dataclass(slots=True)
class Draft:
    """A part being set out."""

    id: str
    name: str
    stock: Stock
    low: list[float]
    high: list[float]
    length_axis: int
    width_axis: int
    group: str = "case"
    show: set[tuple[int, bool]] = field(default_factory=set)
    cuts: list[DraftCut] = field(default_factory=list)
    place: Place = field(default_factory=Place)

    @property
    def thickness_axis(self) -> int:
        """The piece axis of its thickness."""
        return 3 - self.length_axis - self.width_axis

    def size(self, axis: int) -> float:
        """Extent along a piece axis [mm]."""
        return self.high[axis] - self.low[axis]

    @property
    def box(self) -> Box:
        """Its blank [mm]."""
        return Box((self.low[0], self.low[1], self.low[2]), (self.high[0], self.high[1], self.high[2]))

    def face(self, axis: int, high: bool) -> float:
        """Where one of its sides lies on its axis [mm]."""
        return self.high[axis] if high else self.low[axis]

    def grow(self, axis: int, high: bool, by: float) -> None:
        """Make it longer at one side [mm]."""
        if high:
            self.high[axis] += by
        else:
            self.low[axis] -= by


@dataclass(frozen=True, slots=True)
class Meeting:
    """How a second part stands against a first: at the side (`axis`, `high`) of the first, sharing `box`.

    `across` is the axis of the second part's thickness at the joint, `along` the one left.
    """

    axis: int
    high: bool
    box: Box
    across: int
    along: int

    @property
    def away(self) -> Vec:
        """Direction in which the second part leaves the first."""
        v = [0.0, 0.0, 0.0]
        v[self.axis] = 1.0 if self.high else -1.0
        return (v[0], v[1], v[2])


def meeting(first: Draft, second: Draft) -> Meeting | None:
    """How the second part stands against the first, or None when they do not touch face to face."""
    for axis in range(3):
        for high in (True, False):
            if abs(first.face(axis, high) - second.face(axis, not high)) > 1e-4:
                continue
            shared = first.box.overlap(second.box)
            if shared is None:
                continue
            others = [i for i in range(3) if i != axis]
            if any(shared.size(i) < 1e-3 for i in others):
                continue
            across = second.thickness_axis
            if across == axis:
                across = min(others, key=lambda i: (second.size(i), i))
            return Meeting(axis, high, shared, across, 3 - axis - across)
    return None
