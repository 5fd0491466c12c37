"""The corner of two boards that stand square to each other, end to end: where fingers and dovetails are laid out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from boardwright.core.findings import Severity
from boardwright.core.poses import Vec, add, cross, dot, scaled
from boardwright.formulas.dovetail_layout import hidden_in
from boardwright.piece.cuts import Fingers, Pins, Tails
from boardwright.piece.drafts import Channel, Draft, Meeting
from boardwright.piece.joints.faces import facet, unit
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.records import Contact
from boardwright.piece.setout import SetOut

EPS = 1e-6
Interlocked = Fingers | Tails | Pins
Spans = tuple[tuple[float, float], ...]
"""Places along the corner, from its low end: from, to [mm]."""


@dataclass(frozen=True, slots=True)
class CornerOfTwo:
    """A corner before the second part grows into it.

    Attributes:
        first, second: the two boards; the end of the second stands on the inner face of the first.
        axis: that the second runs along; across: that the first runs along; along: the corner.
        high: the second lies on the high side of the first. end_high: the corner lies at the high end of the first.
        face: the inner face of the first, on `axis` [mm].
        lo, hi: the faces of the second, on `across` [mm].
        run: from where to where both boards go along the corner [mm].
    """

    first: Draft
    second: Draft
    axis: int
    across: int
    along: int
    high: bool
    end_high: bool
    face: float
    lo: float
    hi: float
    run: tuple[float, float]

    @classmethod
    def of(cls, first: Draft, second: Draft, meet: Meeting) -> CornerOfTwo:
        """The corner where two boards meet."""
        lo, hi = second.low[meet.across], second.high[meet.across]
        return cls(
            first,
            second,
            meet.axis,
            meet.across,
            meet.along,
            meet.high,
            abs(first.high[meet.across] - hi) < abs(lo - first.low[meet.across]),
            first.face(meet.axis, meet.high),
            lo,
            hi,
            (meet.box.low[meet.along], meet.box.high[meet.along]),
        )

    @property
    def width(self) -> float:
        """Of the joint [mm]."""
        return self.run[1] - self.run[0]

    @property
    def flush(self) -> tuple[bool, bool]:
        """Whether the two boards lie flush with each other at the low and at the high end of the corner."""
        at = self.along
        return (
            abs(self.first.low[at] - self.second.low[at]) < EPS,
            abs(self.first.high[at] - self.second.high[at]) < EPS,
        )

    @property
    def inner(self) -> float:
        """The inner face of the second, on `across` [mm]."""
        return self.lo if self.end_high else self.hi

    @property
    def deep(self) -> float:
        """Thickness of the first [mm]."""
        return self.first.size(self.axis)

    @property
    def thick(self) -> float:
        """Thickness of the second [mm]."""
        return self.hi - self.lo

    def into(self, depth: float) -> float:
        """A place so deep in the first, from its inner face, on `axis` [mm]."""
        return self.face - depth if self.high else self.face + depth

    def point(self, depth: float, across: float, along: float) -> Vec:
        """A point: so deep in the first, on `across`, and from the low end of the corner [mm]."""
        v = [0.0, 0.0, 0.0]
        v[self.axis], v[self.across], v[self.along] = self.into(depth), across, self.run[0] + along
        return (v[0], v[1], v[2])

    def sockets(self, part: Draft, spans: Spans) -> Spans:
        """Sockets of a board, on the axes of the piece [mm]; one at the end of the corner takes the whole edge."""
        low, high = part.low[self.along], part.high[self.along]
        return tuple(
            (
                low if a < EPS else self.run[0] + a,
                high if b > self.width - EPS else self.run[0] + b,
            )
            for a, b in spans
        )

    def toward(self, corners: Sequence[Vec], axis: int, high: bool, glued: bool) -> Contact:
        """A contact face through corners; from there the second part lies roughly that way along an axis."""
        one, two = add(corners[1], scaled(corners[0], -1.0)), add(corners[2], scaled(corners[0], -1.0))
        ring = tuple(corners) if dot(cross(one, two), unit(axis, high)) > 0 else tuple(reversed(corners))
        return facet(ring, glued=glued)

    def grooves(self, part: Draft, want: JointSettings) -> Spans:
        """Grooves that run out at this end of a board, in its inner face: from, to along the corner [mm]."""
        if part is self.first:
            side, along, end = (self.axis, self.high), self.across, self.end_high
        else:
            side, along, end = (self.across, not self.end_high), self.axis, not self.high
        found = [
            (c.lo - self.run[0], c.hi - self.run[0])
            for c in part.cuts
            if isinstance(c, Channel)
            and (c.axis, c.high, c.along) == (*side, along)
            and _runs_out(c, part, end)
        ]
        return (*found, *((a - self.run[0], b - self.run[0]) for a, b in want.grooves))


def _runs_out(c: Channel, part: Draft, high: bool) -> bool:
    at = c.end if high else c.start
    return at is None or abs(at - part.face(c.along, high)) < EPS


def why_no_corner(first: Draft, second: Draft, meet: Meeting, what: str) -> str:
    """What stands against a joint of interlocking ends; "" for nothing.

    Args:
        first: the board whose inner face is met.
        second: the board whose end stands on it.
        meet: how they meet.
        what: what would be cut, e.g. `fingers`.
    """
    if first.thickness_axis != meet.axis or second.thickness_axis != meet.across:
        return f"the {first.name} and the {second.name} do not stand face to face with their widths along the corner"
    corner = CornerOfTwo.of(first, second, meet)
    edge = first.high[meet.across] - corner.hi if corner.end_high else corner.lo - first.low[meet.across]
    if abs(edge) > EPS:
        return f"the {second.name} is not flush with the end of the {first.name}: {what} need both ends at the corner"
    if not _end_is_free(first, second, meet):
        return f"the end of the {second.name} stands in another part already"
    for part in (first, second):
        if part.stock.kind == "wood" and part.length_axis == meet.along:
            return f"the corner lies along an edge of the {part.name}, and {what} are cut at ends"
    return ""


def _end_is_free(first: Draft, second: Draft, meet: Meeting) -> bool:
    """Whether the end of the second stands in nothing yet, or in boards beside the first by joints of this sort."""
    side = (meet.axis, not meet.high)
    grown = second.grown.get(side, 0.0)
    end = second.side(*side)
    beside = any(isinstance(c, Interlocked) and c.end is end and c.holds != first.id for c in second.cuts)
    return not grown or (beside and grown <= first.size(meet.axis) + EPS)


def cut_end(out: SetOut, corner: CornerOfTwo, part: Draft, cut: Fingers | Tails | Pins) -> None:
    """Cut the end of a board for one corner; boards that stand side by side at it leave each other their stretch.

    Args:
        out: the bench.
        corner: where this joint is.
        part: the board.
        cut: its sockets; the outermost may reach to the edges of the board.
    """
    for i, other in enumerate(part.cuts):
        if isinstance(other, Interlocked) and other.end is cut.end and other.holds in out.drafts:
            seen = out.drafts[other.holds].seen()
            part.cuts[i] = replace(other, sockets=_clear_of(other.sockets, corner.run))
            stretch = seen.low[corner.along], seen.high[corner.along]
            cut = replace(cut, sockets=_clear_of(cut.sockets, stretch))
    part.cuts.append(cut)


def _clear_of(sockets: Spans, stretch: tuple[float, float]) -> Spans:
    """Sockets that end where a stretch of the end begins [mm]."""
    low, high = stretch
    return tuple((a, min(b, low)) if a < low - EPS else (max(a, high), b) for a, b in sockets)


def grooves_that_show(
    out: SetOut, corner: CornerOfTwo, want: JointSettings, first_covers: Spans, second_covers: Spans
) -> None:
    """A note on each groove that is seen at the end of its board, once the joint is together.

    Args:
        out: the bench.
        corner: where they meet.
        want: the joint.
        first_covers: where the end of the first board is cut away, or covered.
        second_covers: the same of the second.
    """
    for part, covers in ((corner.first, first_covers), (corner.second, second_covers)):
        shown = [g for g in corner.grooves(part, want) if not hidden_in(covers, g, corner.width)]
        for a, b in shown:
            out.find(
                "joint.groove-shows",
                f"a groove of the {part.name} is seen at its end",
                want.path,
                severity=Severity.NOTE,
                found=f"{out.about(a)} to {out.about(b)} along the corner",
                expected="a place that the other board covers",
                source="common practice",
                remedy=f"stop the groove short of the end of the {part.name}, or plug it",
                parts=(part.id,),
            )
