"""Parts while they are being set out: boxes and cuts in piece coordinates, free to grow.

A form places parts between the faces that are seen; joints then let them grow into each other. Cuts are kept in
absolute piece coordinates [mm], so growth never shifts them; `finish` turns them into the part's own frame.
"""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from boardwright.core.findings import Place
from boardwright.core.poses import Box, Pose, Vec
from boardwright.piece.cuts import Fitted, Shaped, Side
from boardwright.piece.laying import nearer
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
    """A hole or slot, drilled from the side (`axis`, `high`) at a point of it.

    `mate` is the part through whose hole it can be marked in place, `marked` says that it always is.
    """

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
    mate: str = ""
    marked: bool = False
    counterbore: float = 0.0
    counterbore_depth: float = 0.0
    lean: float = 0.0
    lean_axis: int = 0


DraftCut = Channel | Step | Corner | Bore | Fitted | Shaped
"""Fitted and shaped cuts stand in a draft as they are, with places on the draft's axes [mm] and its sides."""


@dataclass(slots=True)
class Draft:
    """A part being set out.

    Its box lies square in a frame of its own; `tilt` takes that frame to the piece, None when they are the same.
    """

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
    grown: dict[tuple[int, bool], float] = field(default_factory=dict)
    tilt: Pose | None = None

    @property
    def axes(self) -> tuple[int, int, int]:
        """Its axes of length, width and thickness."""
        return (self.length_axis, self.width_axis, self.thickness_axis)

    def index(self, axis: int) -> int:
        """Which axis of the part follows an axis: 0 length, 1 width, 2 thickness."""
        return self.axes.index(axis)

    def side(self, axis: int, high: bool) -> Side:
        """The side of the part at the low or high end of an axis, as fitted and shaped cuts of the draft name it."""
        return Side.of(self.index(axis), high)

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

    def seen(self) -> Box:
        """The blank without what has grown into other parts: what stands between them [mm]."""
        low = [self.low[i] + self.grown.get((i, False), 0.0) for i in range(3)]
        high = [self.high[i] - self.grown.get((i, True), 0.0) for i in range(3)]
        return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))

    def grow(self, axis: int, high: bool, by: float) -> None:
        """Make one side reach `by` beyond the face that is seen [mm].

        Two joints at one side, as of a divider under a front and a rear rail, grow it once.
        """
        more = by - self.grown.get((axis, high), 0.0)
        if more <= 0:
            return
        self.grown[axis, high] = by
        if high:
            self.high[axis] += more
        else:
            self.low[axis] -= more

    def shape_end(self, cut: Step | Corner) -> None:
        """Cut a tongue or a stopped end, once: it serves every part that this end stands in."""
        made = [replace(c, holds="") for c in self.cuts if isinstance(c, Step | Corner)]
        if replace(cut, holds="") not in made:
            self.cuts.append(cut)

    def shorten(self, axis: int, by: float) -> None:
        """Take less than a step off the high side; what is cut there stays where it is in the piece [mm]."""
        self.high[axis] -= by
        side = self.side(axis, True)
        extents = [(self.low[a], self.high[a]) for a in self.axes]
        self.cuts[:] = [
            nearer(c, side, by, extents)
            if isinstance(c, Fitted | Shaped)
            else _nearer(c, axis, by, self.high[axis])
            for c in self.cuts
        ]


def _nearer(c: DraftCut, axis: int, by: float, end: float) -> DraftCut:
    """A cut whose sizes from the high side of an axis are `by` less, since that side has come nearer."""
    if not isinstance(c, Channel | Step | Corner | Bore):
        return c
    if isinstance(c, Corner):
        at_a, at_b = (c.a_axis, c.a_high) == (axis, True), (c.b_axis, c.b_high) == (axis, True)
        return replace(c, a_size=c.a_size - by * at_a, b_size=c.b_size - by * at_b)
    if (c.axis, c.high) == (axis, True) and not (isinstance(c, Bore) and c.through):
        c = replace(c, depth=c.depth - by)
    if isinstance(c, Step) and (c.edge_axis, c.edge_high) == (axis, True):
        c = replace(c, width=c.width - by)
    if isinstance(c, Channel | Step) and c.end is not None and axis not in (c.axis, _edge(c)):
        c = replace(c, end=min(c.end, end))
    return c


def _edge(c: Channel | Step) -> int:
    """The axis of its width."""
    return c.edge_axis if isinstance(c, Step) else 3 - c.axis - c.along


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
    stands = second.seen()
    for axis in range(3):
        for high in (True, False):
            if abs(first.face(axis, high) - (stands.low if high else stands.high)[axis]) > 1e-4:
                continue
            shared = first.box.overlap(stands)
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


@dataclass(frozen=True, slots=True)
class Crossing:
    """Two parts that pass through each other: the room they share, and the axis across both lengths.

    `axis` is the one along which each part lies whole beside the other: from the crossing, one of them is drawn
    off towards its high end, the other towards its low end.
    """

    box: Box
    axis: int


def crossing(first: Draft, second: Draft) -> Crossing | None:
    """The room that two parts share, or None when they share none or lie along each other."""
    shared = first.box.overlap(second.box)
    if shared is None or min(shared.size(i) for i in range(3)) < 1e-3:
        return None
    if first.length_axis == second.length_axis:
        return None
    return Crossing(shared, 3 - first.length_axis - second.length_axis)
