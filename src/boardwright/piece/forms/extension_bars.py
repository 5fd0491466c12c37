"""Wooden full-extension bars: they float between case and drawer, and two screws in slots are their stops.

The rear slot of a bar slides past a screw in the case, the front slot past a screw in the drawer side: at full pull
both screws stand free, one behind the drawer, one before the case, so that they can be driven and backed off.
"""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.poses import Box
from boardwright.piece.cuts import VGroove
from boardwright.piece.drafts import Bore, Channel, Draft, Step
from boardwright.piece.forms.bar_section import KEYS, Section, Wall, section
from boardwright.piece.forms.bars import END_PLAY, LEAST_BAR_LENGTH, back_in_the_way
from boardwright.piece.forms.drawer_settings import Layers
from boardwright.piece.forms.region import Region
from boardwright.piece.forms.run_room import Room, Run
from boardwright.piece.forms.strips import STAGGER
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.fastening.screws import screw_name
from boardwright.piece.joints.settings import LEAST_BETWEEN
from boardwright.piece.records import Fastener
from boardwright.piece.setout import SetOut

WEB = 19.05
"""Wood between the two slots of a bar [mm]: 3/4 in, common practice."""
BLOCK = 12.7
"""Block in the open end of a slot [mm]: 1/2 in, common practice."""
LEAST_TRAVEL = 25.0
"""Least travel of each slot that makes such a bar worth its work [mm]: 1 in, common practice."""


@dataclass(frozen=True, slots=True)
class Lengths:
    """What both bars of a drawer have in common along y [mm].

    Attributes:
        mouth: front edge of the case. start: front end of the bars when shut. length: of the bars.
        front: where the drawer sides begin. rear: where they end. web, block: of wood between and at the ends of the
            slots. share: of a bar that stays in each groove. depth: travel at which the drawer clears the case.
    """

    mouth: float
    start: float
    length: float
    front: float
    rear: float
    web: float
    block: float
    share: float

    @property
    def depth(self) -> float:
        """From the front edge of the case to the rear end of the drawer [mm]."""
        return self.rear - self.mouth


@dataclass(frozen=True, slots=True)
class Bar:
    """One bar along y [mm]: its two cuts from its ends, where the screws stand when shut, and both travels."""

    front: float
    rear: float
    case_at: float
    drawer_at: float
    case_travel: float
    drawer_travel: float


def extension_bars(
    out: SetOut,
    id: str,
    region: Region,
    room: Room,
    left: Draft,
    right: Draft,
    box: Box,
    front_back: float,
    layers: Layers,
) -> Run:
    """Put in the two bars of one drawer; it does not travel when there is no room for them (a finding says so)."""
    walls = [Wall(w, _both_faces(w)) for w in (region.walls.left, region.walls.right) if w]
    if len(walls) < 2:
        _no_wall(out, id, region)
        return Run(0.0)
    behind = max(w.part.low[1] for w in walls) - region.box.low[1]
    if behind > LEAST_BETWEEN:
        _behind_legs(out, id, region, behind)
        return Run(0.0)
    beside = (region.box.size(0) - box.size(0)) / 2
    cross = section(out, id, left, walls, beside, box.size(2), region.box.size(1), layers)
    if cross is None or back_in_the_way(out, id, left, cross.groove, layers):
        return Run(0.0)
    lengths = _lengths(out, id, region, left, box, front_back, cross, layers)
    along = [
        _along(out, lengths, cross, _shift(out, w, at_left))
        for w, at_left in zip(walls, (True, False), strict=True)
    ]
    if lengths.length < LEAST_BAR_LENGTH or any(
        min(b.case_travel, b.drawer_travel) < LEAST_TRAVEL for b in along
    ):
        _too_short(out, id, lengths, cross, along, layers)
        return Run(0.0)
    top = box.low[2] + out.sizer.settled((box.size(2) + cross.height + cross.play) / 2)
    for side, wall, bar, at_left in zip((left, right), walls, along, (True, False), strict=True):
        _Setting(out, id, region, room, lengths, cross, bar, at_left, top).put(side, wall.part)
    return Run(_travel(out, id, lengths, cross, along), _load(out, id, box, left, layers))


def _both_faces(wall: Draft) -> bool:
    """Whether bars may hang on both faces of a wall: it is no side of the case, and no filler."""
    return not wall.id.startswith("case.side") and wall.name != "filler"


def _shift(out: SetOut, wall: Wall, at_left: bool) -> float:
    """How far the web of a bar stands off its middle, so that screws from both faces of a divider never meet [mm]."""
    return (out.sizer.settled(STAGGER / 2) * (1 if at_left else -1)) if wall.both else 0.0


def _lengths(
    out: SetOut,
    id: str,
    region: Region,
    side: Draft,
    box: Box,
    front_back: float,
    cross: Section,
    layers: Layers,
) -> Lengths:
    sizer = out.sizer
    end = sizer.settled((cross.height + cross.play) / 2 + END_PLAY, "up")
    start = front_back + sizer.settled(_front_joint(side, front_back) - front_back + end, "up")
    length = sizer.size(
        f"{id}.{KEYS}.length",
        layers.choices(f"{KEYS}.length"),
        region.box.high[1] - end - start,
        rule="from behind the joint of the front to the back of the case, less the round ends of the grooves",
        direction="down",
        least=LEAST_BAR_LENGTH,
    )
    web = sizer.size(
        f"{id}.{KEYS}.web", layers.choices(f"{KEYS}.web"), WEB, rule="wood between the slots", least=6.0
    )
    block = sizer.size(
        f"{id}.{KEYS}.block",
        layers.choices(f"{KEYS}.block"),
        BLOCK,
        rule="block in the open end of a slot",
        least=6.0,
    )
    shares = layers.values(f"{KEYS}.overlap")
    share = float(shares[0][1]) if shares else out.tables.figure("bar_overlap_share").value
    length = min(length, sizer.settled(region.box.high[1] - end - start, "down"))
    return Lengths(region.box.low[1], start, length, side.low[1], box.high[1], web, block, share)


def _front_joint(side: Draft, front_back: float) -> float:
    """Where the wood of a drawer side is whole behind the joint of its front [mm]."""
    half = (side.low[1] + side.high[1]) / 2
    ends = [front_back]
    for cut in side.cuts:
        if isinstance(cut, Channel) and (cut.axis, cut.along) == (0, 2) and cut.hi < half:
            ends.append(cut.hi + LEAST_BETWEEN)
        elif isinstance(cut, Step) and (cut.axis, cut.edge_axis, cut.edge_high) == (0, 1, False):
            ends.append(side.low[1] + cut.width + LEAST_BETWEEN)
    return max(ends)


def _along(out: SetOut, s: Lengths, cross: Section, shift: float) -> Bar:
    """The slots of one bar: as long as the bar, the grooves and the drawer's depth let them be."""
    settled = out.sizer.settled
    shank = cross.screw.shank
    free = (s.length - s.web) / 2 - s.block - shank
    case = min(free + shift, s.length * (1 - s.share) + s.start - s.mouth)
    drawer = min(free - shift, s.rear - s.start - s.share * s.length)
    over = case + drawer - s.depth - 4 * out.sizer.step
    if over > 0:
        case, drawer = case - over / 2, drawer - over / 2
    front = settled(s.block + shank + drawer, "down")
    rear = settled(s.block + shank + case, "down")
    case_at = s.mouth + settled(s.start - s.mouth + s.length - rear + shank / 2, "up")
    drawer_at = s.front + settled(s.start - s.front + front - shank / 2, "down")
    return Bar(
        front,
        rear,
        case_at,
        drawer_at,
        s.start + s.length - s.block - shank / 2 - case_at,
        drawer_at - s.start - s.block - shank / 2,
    )


@dataclass(frozen=True, slots=True)
class _Setting:
    """Everything that one bar is put in with; `top` is the height of its upper edge [mm]."""

    out: SetOut
    id: str
    region: Region
    room: Room
    lengths: Lengths
    cross: Section
    bar: Bar
    at_left: bool
    top: float

    def put(self, side: Draft, wall: Draft) -> None:
        """The bar with its blocks, both grooves, both screws and both joints."""
        s, c, out = self.lengths, self.cross, self.out
        bottom = self.top - c.height
        self._grooves(side, wall)
        face = self.region.box.low[0] if self.at_left else self.region.box.high[0]
        outer = side.face(0, not self.at_left)
        play = (abs(outer - face) + c.case_groove + c.groove - c.thickness) / 2
        near = face - self._way * (c.case_groove - play)
        x = sorted((near, near + self._way * c.thickness))
        box = Box((x[0], s.start, bottom), (x[1], s.start + s.length, self.top))
        name = f"{self.id}.bar.{'left' if self.at_left else 'right'}"
        bar = out.add(
            name, "bar", self.room.stock, box, (1, 2), group=f"{self.id}.bars", path=self.region.path
        )
        middle = self._slots(bar)
        in_case = self._screw(
            bar, wall, middle, self.bar.case_at, c.case_groove, c.case_screw, into_case=True
        )
        in_drawer = self._screw(
            bar, side, middle, self.bar.drawer_at, c.groove, c.drawer_screw, into_case=False
        )
        for part, at, high, screw, reach in (
            (wall, bottom, True, in_case, sorted((near, face))),
            (side, self.top, False, in_drawer, sorted((outer, near + self._way * c.thickness))),
        ):
            run = (s.start, min(s.start + s.length, part.high[1]))
            depth = c.case_groove if part is wall else c.groove
            out.joint(
                "hung",
                part,
                bar,
                [plane(2, at, {0: (reach[0], reach[1]), 1: run}, high, glued=False)],
                [unit(1, part is side)],
                f"groove {out.text(c.height + c.play)} wide, {out.text(depth)} deep, a running fit; "
                "its screw is a stop",
                glued=False,
                floats=(1,),
                fasteners=(screw,),
                place=out.design.place(self.region.path),
            )

    @property
    def _way(self) -> float:
        """Sign of x from the wall to the drawer."""
        return 1.0 if self.at_left else -1.0

    def _grooves(self, side: Draft, wall: Draft) -> None:
        s, c = self.lengths, self.cross
        end = self.out.sizer.settled((c.height + c.play) / 2 + END_PLAY, "up")
        name = f"{self.id}.bar.{'left' if self.at_left else 'right'}"
        bottom = self.top - c.height
        stop = s.mouth + self.out.sizer.settled(s.start + s.length + end - s.mouth, "down")
        wall.cuts.append(
            Channel(
                0,
                self.at_left,
                1,
                bottom,
                self.top + c.play,
                c.case_groove,
                None,
                stop,
                holds=name,
                purpose="running",
            )
        )
        side.cuts.append(
            Channel(
                0,
                not self.at_left,
                1,
                bottom - c.play,
                self.top,
                c.groove,
                s.start - end,
                None,
                holds=name,
                purpose="running",
            )
        )

    def _slots(self, bar: Draft) -> float:
        """Both slots with their recesses and blocks; gives the height of their middle [mm]."""
        s, c = self.lengths, self.cross
        low = bar.low[2] + self.out.sizer.settled((c.height - c.slot) / 2)
        middle = low + c.slot / 2
        beyond = self.out.sizer.settled(c.recess / 2, "up")
        y0, y1 = bar.low[1], bar.high[1]
        for start, end, front in ((y0, y0 + self.bar.front, True), (y1 - self.bar.rear, y1, False)):
            bar.cuts.append(Channel(0, True, 1, low, low + c.slot, c.thickness, start, end, purpose="slot"))
            inward = front is not self.at_left
            run = (start, end + beyond) if front else (start - beyond, end)
            bar.cuts.append(
                VGroove(bar.side(0, inward), bar.index(1), middle, c.recess, c.recess / 2, run[0], run[1])
            )
            self._block(bar, low, start if front else end - s.block, inward, "front" if front else "rear")
        return middle

    def _block(self, bar: Draft, low: float, y: float, recess_high: bool, name: str) -> None:
        """The block in the open end of a slot; the recess takes the rest of the slot there."""
        s, c, out = self.lengths, self.cross, self.out
        wide = out.sizer.settled(c.thickness - c.recess / 2, "down")
        x = bar.low[0] if recess_high else bar.high[0] - wide
        box = Box((x, y, low), (x + wide, y + s.block, low + c.slot))
        block = out.add(
            f"{bar.id}.{name}", "bar block", bar.stock, box, (1, 0), group=bar.group, path=self.region.path
        )
        across = {0: (x, x + wide), 1: (y, y + s.block)}
        out.joint(
            "block",
            bar,
            block,
            [plane(2, low, across, True), plane(2, low + c.slot, across, False)],
            [unit(1, name == "rear")],
            f"block {out.text(s.block)} long in the end of the slot, glued",
            place=out.design.place(self.region.path),
        )

    def _screw(
        self, bar: Draft, part: Draft, z: float, y: float, groove: float, length: float, *, into_case: bool
    ) -> str:
        """A screw through a slot, its head in the recess, backed off a turn; its pilot takes it driven home."""
        c, out = self.cross, self.out
        forward = self.at_left is not into_case
        way = 1.0 if forward else -1.0
        head = bar.face(0, not forward) + way * c.sunk
        name = screw_name(out, c.screw, length)
        pilot = c.screw.pilot_hard if part.stock.hardwood else c.screw.pilot_soft
        face = part.face(0, not forward)
        deep = groove + out.sizer.settled(c.home(length), "up")
        part.cuts.append(
            Bore(0, not forward, (face, y, z), pilot, deep, purpose="pilot", for_=name, mate=bar.id)
        )
        id = f"screw.{len(out.fasteners) + 1}"
        out.fasteners.append(
            Fastener(
                id,
                "screw",
                name,
                f"screw_{c.screw.gauge}",
                (head, y, z),
                unit(0, forward),
                length,
                c.screw.shank,
                c.screw.head,
                bar.id,
                part.id,
                True,
                out.design.place(self.region.path),
            )
        )
        return id


def _travel(out: SetOut, id: str, s: Lengths, cross: Section, along: list[Bar]) -> float:
    """How far the drawer comes out, explained [mm]."""
    bar = min(along, key=lambda b: b.case_travel + b.drawer_travel)
    travel = out.sizer.settled(bar.case_travel + bar.drawer_travel, "down")
    slots = [x - s.block for x in (bar.front, bar.rear)]
    out.sizer.explain(
        f"{id}.travel",
        travel,
        f"slots {out.text(slots[0])} + {out.text(slots[1])} less 2 × {out.about(cross.screw.shank)}, settled down",
        "each slot lets the drawer out by its length less the screw",
        f"{s.share:.3g} of the bar at least stays in each groove: "
        + out.tables.figure("bar_overlap_share").reason,
    )
    short = s.depth - travel
    out.sizer.choose(
        f"{id}.opens",
        None,
        "clears the front fully" if short <= 1e-6 else f"{out.up(short)} of its depth stay in the case",
        f"travel against the {out.about(s.depth)} from the front edge of the case to the rear of the drawer",
    )
    return travel


_POUND = 0.45359237


def _load(out: SetOut, id: str, box: Box, side: Draft, layers: Layers) -> float:
    """What the drawer is reckoned to hold [kg]."""
    given = layers.values(f"{KEYS}.load")
    inches = out.design.units == "in"
    unit_name, factor = ("lb", _POUND) if inches else ("kg", 1.0)
    inner = (box.size(0) - 2 * side.size(0)) * box.size(1) * box.size(2) / 1e9
    figure = out.tables.figure("drawer_load_clothing")
    usual = inner * figure.value
    load = float(given[0][1]) * factor if given else usual
    out.sizer.choose(
        f"{id}.load",
        f"{load / factor:.1f} {unit_name}" if given else None,
        f"{usual / factor:.1f} {unit_name}",
        "what the drawer is reckoned to hold: its inside filled with clothing",
        layers.path(f"{KEYS}.load"),
        figure.reason,
    )
    return load


def _behind_legs(out: SetOut, id: str, region: Region, behind: float) -> None:
    out.find(
        "drawer.no-room-for-bars",
        f"the bars of {id.replace('.', ' ')} cannot come out: something stands before the walls that they run in",
        region.path,
        found=f"walls that begin {out.about(behind)} behind the opening",
        expected="walls that begin at the opening",
        source="common practice",
        remedy="run the drawer on bars, runners or slides",
    )


def _no_wall(out: SetOut, id: str, region: Region) -> None:
    out.find(
        "drawer.no-room-for-bars",
        f"the bars of {id.replace('.', ' ')} have no wall to run in",
        region.path,
        found="an open side",
        expected="a side or a divider at both sides of the drawer",
        remedy="put a divider there, or run the drawer on slides",
    )


def _too_short(out: SetOut, id: str, s: Lengths, cross: Section, along: list[Bar], layers: Layers) -> None:
    least = min(min(b.case_travel, b.drawer_travel) for b in along)
    need = s.web + 2 * (s.block + cross.screw.shank + LEAST_TRAVEL)
    short = max(need - s.length, LEAST_TRAVEL - least, out.sizer.step)
    out.find(
        "drawer.no-room-for-bars",
        f"the bars of {id.replace('.', ' ')} are too short for their slots",
        layers.path(KEYS),
        found=f"bars {out.about(max(s.length, 0.0))} long: a slot lets them run {out.about(max(least, 0.0))}",
        expected=f"at least {out.up(LEAST_TRAVEL)} by each slot, {s.share:.3g} of the bar left in each groove",
        source="common practice",
        remedy=f"make the case {out.up(2 * short)} deeper, `web` or `block` shorter, or run the drawer on slides",
    )
