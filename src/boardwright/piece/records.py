"""The piece: every part, joint, fastener, space and moving thing, every size known.

Lengths are millimetres, masses kilograms, angles degrees, moisture per cent. `Part.pose` takes the part's own
frame (see `cuts`) to the piece (x left to right, y front to back, z up).
"""

from __future__ import annotations

from dataclasses import dataclass, field
from itertools import pairwise

from boardwright.core.findings import Place
from boardwright.core.poses import AXES, Box, Pose, Vec, add, cross, dot, scaled
from boardwright.formulas.movement import coefficient_at_angle
from boardwright.piece.cuts import Cut


@dataclass(frozen=True, slots=True)
class Stock:
    """A wood or a sheet that parts are made of, with the numbers of its table row.

    Attributes:
        id: the name it has in the design file.
        kind: `wood` or `sheet`.
        name: what people call it, e.g. `black cherry`, `birch plywood`.
        table_key: key of its row in the species or sheet table.
        thickness: actual thickness of parts made of it [mm]: planed for wood, as measured for a sheet.
        nominal: the thickness it is sold as [mm].
        measured: True when the thickness was given as measured.
        density: at `moisture` for wood [kg/m3].
        radial, tangential: change of size per 1 % of moisture across the grain [1/%]; 0 for sheets.
        lengthwise: the same along the grain; small.
        sawn: `flat`, `quarter`, `rift` or `mixed` for wood; `` for a sheet.
        sheet_size: length and width as sold [mm]; None for wood.
        grain: True when the faces have a grain direction that layouts must respect.
        source: source of the row.
        rings: angle between the growth rings and the face, where it is given [degrees].
        spread: of a sheet: change of its length and width per 1 % of moisture of wood in the same air [1/%].
    """

    id: str
    kind: str
    name: str
    table_key: str
    thickness: float
    nominal: float
    measured: bool
    density: float
    radial: float = 0.0
    tangential: float = 0.0
    lengthwise: float = 0.0
    sawn: str = ""
    sheet_size: tuple[float, float] | None = None
    grain: bool = True
    specific_gravity: float = 0.5
    hardwood: bool = True
    source: str = ""
    rings: float | None = None
    spread: float = 0.0

    @property
    def rates(self) -> Vec:
        """Change per 1 % of moisture with the grain, across it and through the thickness [1/%]."""
        if self.kind == "sheet":
            return (self.spread, self.spread, 0.0)
        return (self.lengthwise, self.across, self.through)

    @property
    def angle(self) -> float:
        """Angle between the growth rings and the face, as given or by how the board was sawn [degrees]."""
        if self.rings is not None:
            return self.rings
        return {"rift": 45.0, "quarter": 90.0}.get(self.sawn, 0.0)

    @property
    def across(self) -> float:
        """Change of width per 1 % of moisture, by how the board was sawn [1/%]."""
        return coefficient_at_angle(self.tangential, self.radial, self.angle)

    @property
    def through(self) -> float:
        """Change of thickness per 1 % of moisture; of mixed boards the larger figure [1/%]."""
        angle = 90.0 if self.sawn == "mixed" and self.rings is None else 90.0 - self.angle
        return coefficient_at_angle(self.tangential, self.radial, angle)


@dataclass(frozen=True, slots=True)
class Part:
    """One part of the piece.

    Attributes:
        id: unique, dotted, from where it stands in the design, e.g. `case.side.left`.
        name: what it is called on the plan, e.g. `side`, `drawer front`.
        letter: shared by identical parts; mirrored parts have different letters.
        stock: what it is made of.
        size: length (with the grain), width, thickness [mm].
        pose: where it is.
        cuts: in its own frame.
        group: id of the moving group or assembly it belongs to, e.g. `case`, `drawer.3`.
        show: sides that are seen when the piece stands finished, from `cuts.Side` values.
        mirror_of: letter of the kind of part it is the mirror of, or "".
        place: where the file asked for it.
    """

    id: str
    name: str
    stock: Stock
    size: tuple[float, float, float]
    pose: Pose
    cuts: tuple[Cut, ...] = ()
    letter: str = ""
    group: str = "case"
    show: tuple[str, ...] = ()
    mirror_of: str = ""
    place: Place = field(default_factory=Place)

    @property
    def box(self) -> Box:
        """The part's blank as a box in the piece [mm] (its bounding box when it is turned)."""
        low, high = list(self.pose.origin), list(self.pose.origin)
        for axis, size in zip((self.pose.x, self.pose.y, self.pose.z), self.size, strict=True):
            for i in range(3):
                reach = axis[i] * size
                if reach < 0:
                    low[i] += reach
                else:
                    high[i] += reach
        return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _twice_area(corners: tuple[Vec, ...]) -> Vec:
    total: Vec = (0.0, 0.0, 0.0)
    for a, b in pairwise(corners[1:]):
        one, two = add(a, scaled(corners[0], -1.0)), add(b, scaled(corners[0], -1.0))
        total = add(total, cross(one, two))
    return total


@dataclass(frozen=True, slots=True)
class Contact:
    """A face where two parts should touch.

    Attributes:
        box: the face, as a box of no thickness, in the piece [mm].
        axis: the axis it is square to, 0 to 2.
        from_first: True when the second part lies on the high side of it.
        glued: True when it is a glue face.
        gap: planned gap between the two parts there [mm]; 0 for contact.
        why: reason for the gap.
        corners: of a face that is square to no axis, or no rectangle: its outline [mm], in one plane; seen from the
            second part it runs counter-clockwise. `box` is then the box around it, `axis` the axis nearest to
            square.
    """

    box: Box
    axis: int
    from_first: bool
    glued: bool = True
    gap: float = 0.0
    why: str = ""
    corners: tuple[Vec, ...] = ()

    @property
    def normal(self) -> Vec:
        """Unit vector square to the face, from the first part to the second."""
        if not self.corners:
            return scaled(AXES[self.axis], 1.0 if self.from_first else -1.0)
        n = _twice_area(self.corners)
        return scaled(n, 1 / dot(n, n) ** 0.5)

    @property
    def area(self) -> float:
        """Area of the face [mm2]."""
        if self.corners:
            n = _twice_area(self.corners)
            return float(dot(n, n) ** 0.5) / 2
        one, two = (self.box.size(i) for i in range(3) if i != self.axis)
        return one * two


@dataclass(frozen=True, slots=True)
class Joint:
    """Where two parts meet and how they are held.

    Attributes:
        id: unique.
        kind: `butt`, `rabbet`, `dado`, `groove`, `tongue`, `planted`, `hung` …
        first: part that receives (the one with the dado, groove or rabbet).
        second: part that goes in.
        contacts: faces that should touch, or keep a planned gap.
        directions: unit vectors along which the second part can be drawn away from the first.
        glued: True when glue is used.
        floats: directions (piece axes 0 to 2) in which the second part is free to move in the first.
        fasteners: ids of the fasteners in it.
        summary: one line for people: `1/4 deep dado, glued`.
        place: where the file asked for it.
    """

    id: str
    kind: str
    first: str
    second: str
    contacts: tuple[Contact, ...] = ()
    directions: tuple[Vec, ...] = ()
    glued: bool = True
    floats: tuple[int, ...] = ()
    fasteners: tuple[str, ...] = ()
    summary: str = ""
    place: Place = field(default_factory=Place)


@dataclass(frozen=True, slots=True)
class Fastener:
    """A screw, a dowel, a biscuit, a loose tenon, or the plug over a screw's head.

    Attributes:
        id: unique.
        kind: `screw`, `pocket screw`, `dowel`, `biscuit`, `loose tenon` or `plug`.
        name: as bought, e.g. `No. 8 x 1 1/4 flat-head wood screw`.
        table_key: row in the fastener table.
        at: where its head (or first end) is, in the piece [mm].
        direction: unit vector from head to tip.
        length, diameter, head: [mm]; the diameter of what is flat is its thickness.
        held: id of the part under the head; holds: id of the part that takes the thread.
        slotted: True when the held part may move past it.
        wide: how far, and which way, a flat one reaches on from one edge to the other [mm]; `at` lies in the middle.
    """

    id: str
    kind: str
    name: str
    table_key: str
    at: Vec
    direction: Vec
    length: float
    diameter: float
    head: float
    held: str
    into: str
    slotted: bool = False
    place: Place = field(default_factory=Place)
    wide: Vec = (0.0, 0.0, 0.0)

    @property
    def tip(self) -> Vec:
        """Where it ends, in the piece [mm]."""
        a, d = self.at, self.direction
        return (a[0] + d[0] * self.length, a[1] + d[1] * self.length, a[2] + d[2] * self.length)


@dataclass(frozen=True, slots=True)
class Hardware:
    """Something bought that takes room: a box in the piece, standing with a part or moving with a group.

    Attributes:
        screw_key: row of the screws that hold it, or "". screw_length: of these [mm]. screws: how many in each leaf.
    """

    id: str
    name: str
    table_key: str
    box: Box
    group: str
    count_as: float = 1.0
    mass: float = 0.0
    place: Place = field(default_factory=Place)
    screw_key: str = ""
    screw_length: float = 0.0
    screws: int = 0


@dataclass(frozen=True, slots=True)
class Space:
    """A leaf or node of the inside: its clear room before anything is put in it.

    Attributes:
        path: path in the design file.
        box: its room in the piece [mm].
        holds: `drawer`, `shelves`, `open`, `rows`, `columns`.
    """

    path: str
    box: Box
    holds: str
    place: Place = field(default_factory=Place)


@dataclass(frozen=True, slots=True)
class Motion:
    """A group of parts that moves: a drawer or tray and its travel, a door or lid and its turn.

    Attributes:
        id: the group id its parts carry, e.g. `drawer.3`.
        kind: `drawer`, `tray`, `door` or `lid`.
        name: e.g. `drawer 3`.
        direction: unit vector of opening; of what turns, the hinge axis, round which it opens counter-clockwise.
        travel: how far it opens in use [mm]; 0 for what turns.
        runs_on: `bars`, `runners`, `slides` …, or the hinge.
        opening: the room it has, in the piece [mm].
        side_clearance: planned, each side [mm]. height_clearance: planned at the moisture it is made at [mm].
        rear_clearance: planned behind it [mm].
        turn: how far it opens [degrees]; 0 for what slides.
        pivot: a point of the hinge axis [mm].
        load: what it is reckoned to hold, where its strength is figured [kg].
    """

    id: str
    kind: str
    name: str
    direction: Vec
    travel: float
    runs_on: str
    opening: Box
    side_clearance: float
    height_clearance: float
    rear_clearance: float
    place: Place = field(default_factory=Place)
    turn: float = 0.0
    pivot: Vec = (0.0, 0.0, 0.0)
    load: float = 0.0


@dataclass(frozen=True, slots=True)
class Reason:
    """Why a size is what it is: one line of `explain`.

    Attributes:
        path: what it is, e.g. `case.bottom.length`.
        value: settled [mm].
        sum: how it came about, in the units of the plan.
        rule: the rule, or "" when the file gives it.
        source: source of the rule (`common practice` included), or the place in the file.
        given: True when the file gives it.
        word: the choice made, where it is no size, e.g. `dado`; else "".
    """

    path: str
    value: float
    sum: str
    rule: str = ""
    source: str = ""
    given: bool = False
    word: str = ""


@dataclass(frozen=True, slots=True)
class Moisture:
    """Moisture content of the wood [%]: on the day the parts are cut, and through the year where it will live.

    Attributes:
        now: on the day the parts are cut.
        driest, wettest: the ends of the year.
        source: where they come from.
        months: from January; empty where only the ends are known.
    """

    now: float
    driest: float
    wettest: float
    source: str = ""
    months: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Chain:
    """A row of sizes that must add up: members and whole.

    Attributes:
        name: e.g. `height inside the case`.
        members: label, value [mm]; negative when it is taken off.
        whole: label, value [mm].
    """

    name: str
    members: tuple[tuple[str, float], ...]
    whole: tuple[str, float]


@dataclass(frozen=True, slots=True)
class Piece:
    """Everything that is to be built, every size known."""

    name: str
    units: str
    step: float
    outside: Box
    moisture: Moisture
    parts: tuple[Part, ...] = ()
    joints: tuple[Joint, ...] = ()
    fasteners: tuple[Fastener, ...] = ()
    hardware: tuple[Hardware, ...] = ()
    spaces: tuple[Space, ...] = ()
    motions: tuple[Motion, ...] = ()
    reasons: tuple[Reason, ...] = ()
    chains: tuple[Chain, ...] = ()

    def part(self, id: str) -> Part:
        """The part of that id.

        Raises:
            KeyError: no such part.
        """
        for p in self.parts:
            if p.id == id:
                return p
        raise KeyError(id)
