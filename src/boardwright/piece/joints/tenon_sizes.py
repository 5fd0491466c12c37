"""Proportions of a mortise and tenon: how it stands, and each of its sizes, as asked for or by the trade's rules."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.piece.cuts import Mortise
from boardwright.piece.drafts import Channel, Draft, Meeting
from boardwright.piece.joints import cutters
from boardwright.piece.joints.areas import EPS, Range, extent, mortise_room
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.setout import SetOut

WALL = 3.0
"""Wood left beside and behind a mortise [mm]: 1/8 in, common practice."""
BETWEEN = 1.5
"""Wood left between two mortises that come near each other inside a part [mm]: 1/16 in, common practice."""
LEAST = 6.0
"""Shortest and narrowest tenon [mm]: 1/4 in, common practice."""
LENGTH_SHARE = 2 / 3
"""Length of a blind tenon, of the part that it goes into: two thirds to three quarters, common practice."""
WIDEST = 114.3
"""A tenon wider than this is made as two [mm]: 4 1/2 in, common practice."""
FLAT = 1.5
"""A rail so many times as thick across the grain of the other part as it is wide along it has tenons side by side."""


@dataclass(frozen=True, slots=True)
class Stand:
    """How a tenon stands in the first part.

    Attributes:
        axis: it goes in along. high: of the side of the first part.
        wide: along the grain of the first part: the length of the mortise.
        thick: the axis left.
    """

    axis: int
    high: bool
    wide: int
    thick: int

    def inward(self, face: float, by: float) -> float:
        """A place so far into the first part from its face [mm]."""
        return face - by if self.high else face + by

    def depth(self, face: float, a: float, b: float) -> Range:
        """From where to where something lies that is `a` to `b` deep in the first part [mm]."""
        one, two = self.inward(face, a), self.inward(face, b)
        return min(one, two), max(one, two)


def stand(first: Draft, meet: Meeting) -> Stand:
    """The long way of a mortise lies along the grain of its part, where that is not the way the tenon goes in."""
    wide = first.length_axis if first.length_axis != meet.axis else meet.along
    return Stand(meet.axis, meet.high, wide, 3 - meet.axis - wide)


@dataclass(frozen=True, slots=True)
class Slot:
    """A groove that is already cut in the first part where the tenon goes in: its walls and depth [mm]."""

    low: float
    high: float
    depth: float

    @property
    def width(self) -> float:
        """Wall to wall [mm]."""
        return self.high - self.low


def groove_at(first: Draft, second: Draft, how: Stand) -> Slot | None:
    """The groove along the first part that the whole end of the second stands over."""
    lo, hi = extent(second, how.thick)
    a, b = extent(second, how.wide)
    for cut in first.cuts:
        if not isinstance(cut, Channel) or (cut.axis, cut.high, cut.along) != (how.axis, how.high, how.wide):
            continue
        start = first.low[how.wide] if cut.start is None else cut.start
        end = first.high[how.wide] if cut.end is None else cut.end
        if cut.lo >= lo - EPS and cut.hi <= hi + EPS and start <= a + EPS and end >= b - EPS:
            return Slot(cut.lo, cut.hi, cut.depth)
    return None


def count_of(second: Draft, how: Stand, want: JointSettings) -> tuple[int, int]:
    """How many tenons, and the axis on which they lie beside each other."""
    through, along = second.size(how.thick), second.size(how.wide)
    asked = want.keys.tenons if want.keys is not None else None
    axis = how.thick if through > FLAT * along else how.wide
    if asked is not None:
        return asked, axis
    return (2, axis) if axis == how.thick or along > WIDEST * 1.5 else (1, axis)


def thickness_of(
    out: SetOut, second: Draft, how: Stand, want: JointSettings, n: int, slot: Slot | None
) -> float:
    """From cheek to cheek of each tenon [mm]: as asked, as a groove is wide, or the chisel nearest to a third."""
    figure = out.tables.figure("tenon_thickness_share")
    whole = second.size(how.thick)
    share = figure.value if n == 1 else 1 / (2 * n + 1)
    default = cutters.nearest(out, whole * share, whole * 0.6)
    rule, source = f"tenon {share:.3g} of the thickness, to the nearest chisel or cutter", figure.reason
    total = f"{share:.3g} × {out.text(whole)}"
    if slot is not None:
        default, rule, total = slot.width, "tenon as thick as the groove is wide", out.text(slot.width)
        source = "common practice"
    thick = out.sizer.size(
        f"{want.name}.thickness",
        [(f"{want.path}.thickness", want.keys.thickness if want.keys else None)],
        default,
        rule=rule,
        source=source,
        total=total,
        settle_it=slot is None,
        least=out.sizer.step,
    )
    return (
        out.at_most(thick, whole * 0.6 / n, "the mortise", f"{want.path}.thickness", whole)
        if slot is None
        else thick
    )


@dataclass(frozen=True, slots=True)
class Reach:
    """How far a tenon goes in.

    Attributes:
        length: of the tenon. deeper: how much deeper the mortise is [mm].
        through: it goes right through.
        stub: it stands in a groove that is already there, and needs no mortise.
    """

    length: float
    deeper: float
    through: bool = False
    stub: bool = False


def reach_of(
    out: SetOut,
    first: Draft,
    second: Draft,
    how: Stand,
    want: JointSettings,
    holes: list[tuple[Range, Range]],
    slot: Slot | None,
) -> Reach | None:
    """Length of the tenon and of its mortise; None, with a finding, when there is no room for one.

    Args:
        out: the bench.
        first: the part with the mortise.
        second: the part with the tenon.
        how: how it stands.
        want: the joint.
        holes: the mortises to be cut, on the axes `wide` and `thick` [mm].
        slot: a groove that is already there.
    """
    whole = first.size(how.axis)
    deeper = max(out.sizer.settled(out.tables.figure("mortise_deeper").value), out.sizer.step)
    keys = want.keys
    others = _met(first, how, holes)
    room = min([d for d, _ in others], default=whole)
    if keys is not None and (keys.through or (keys.through is None and keys.wedges is not None)):
        if others:
            _meets(out, first, second, want, whole, room, f"{want.path}.through", others[0][1])
            return None
        out.sizer.explain(
            f"{want.name}.length", whole, out.text(whole), "a through tenon ends flush", "common practice"
        )
        return Reach(whole, 0.0, through=True)
    given = out.sizer.given([(f"{want.path}.length", keys.length if keys else None)])
    if slot is not None and given is not None and given[1] <= slot.depth + EPS:
        length = out.sizer.size(
            f"{want.name}.length", [(f"{want.path}.length", keys.length if keys else None)], 0.0
        )
        return Reach(length, 0.0, stub=True)
    most = whole - WALL - deeper
    free = room - BETWEEN - deeper if others else most
    default = min(whole * LENGTH_SHARE, free)
    rule = "tenon two thirds of the part it goes into"
    if not others and _opposite(out, first, second, how):
        default = min(default, (whole - BETWEEN) / 2 - deeper)
        rule = (
            "tenon half of the part it goes into, less what is left between it and that from the other side"
        )
    elif others and default < whole * LENGTH_SHARE - EPS:
        rule = "tenon as long as the mortise already there lets it be"
    length = out.sizer.size(
        f"{want.name}.length",
        [(f"{want.path}.length", keys.length if keys else None)],
        max(default, out.sizer.step),
        rule=rule,
        total=f"2/3 × {out.text(whole)}" if default > whole * LENGTH_SHARE - EPS else out.text(whole),
        direction="down",
        least=out.sizer.step,
    )
    if (others and length > free + EPS) or (others and length < LEAST - EPS):
        _meets(out, first, second, want, length, room - BETWEEN - deeper, f"{want.path}.length", others[0][1])
        return None
    if length > most + EPS:
        good = max(out.sizer.settled(most, "down"), out.sizer.step)
        out.find(
            "joint.too-deep",
            f"the tenon of the {second.name} leaves no wood behind its mortise",
            f"{want.path}.length",
            found=f"{out.about(length)} long, in a part {out.about(whole)} thick",
            expected=f"at most {out.down(good)}: the mortise is {out.text(deeper)} deeper, and {out.up(WALL)} is left",
            source="common practice",
            remedy=f"make it {out.down(good)}, or `through: true`",
            parts=(first.id, second.id),
        )
        length = good
    return Reach(length, deeper)


def _opposite(out: SetOut, first: Draft, second: Draft, how: Stand) -> bool:
    """True when the end of another part stands against the opposite side of the first, in line with the second."""
    far = first.face(how.axis, not how.high)
    for other in out.drafts.values():
        if other is first or other is second or other.tilt is not None or other.length_axis != how.axis:
            continue
        stands = other.seen()
        at = (stands.high if how.high else stands.low)[how.axis]
        if abs(at - far) < EPS and all(
            min(stands.high[i], second.high[i]) - max(stands.low[i], second.low[i]) > EPS
            for i in (how.wide, how.thick)
        ):
            return True
    return False


def _met(first: Draft, how: Stand, holes: list[tuple[Range, Range]]) -> list[tuple[float, str]]:
    """How deep a mortise may be before it meets one already there, nearest first, and what that holds."""
    found: list[tuple[float, str]] = []
    face = first.face(how.axis, how.high)
    for cut in first.cuts:
        if not isinstance(cut, Mortise):
            continue
        room = mortise_room(first, cut)
        for wide, thick in holes:
            over = all(
                min(r[1], room.high[i]) - max(r[0], room.low[i]) > EPS
                for r, i in ((wide, how.wide), (thick, how.thick))
            )
            if over:
                near = room.high[how.axis] if how.high else room.low[how.axis]
                found.append((abs(face - near), cut.holds))
    return sorted(found)


def _meets(
    out: SetOut,
    first: Draft,
    second: Draft,
    want: JointSettings,
    length: float,
    free: float,
    path: str,
    other: str,
) -> None:
    """A finding: two mortises would meet inside a part."""
    there = out.drafts[other].name if other in out.drafts else "another part"
    free = out.sizer.settled(max(free, 0.0), "down")
    out.find(
        "joint.mortises-meet",
        f"the mortises for the {second.name} and the {there} meet in the {first.name}",
        path,
        found=f"a tenon {out.about(length)} long",
        expected=f"at most {out.down(free)}: {out.up(BETWEEN)} of wood between the mortises"
        if free >= LEAST
        else "wood between the two",
        source="common practice",
        remedy=f"make it {out.down(free)} or shorter"
        if free >= LEAST
        else "make the other tenon shorter, or set the two at different heights",
        parts=(first.id, second.id),
    )
