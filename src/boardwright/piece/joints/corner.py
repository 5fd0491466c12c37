"""The corner of two boards that stand square to each other, end to end: where fingers and dovetails are laid out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from boardwright.core.poses import Vec, add, cross, dot, scaled
from boardwright.piece.drafts import Channel, Draft, Meeting
from boardwright.piece.joints.faces import facet
from boardwright.piece.records import Contact
from boardwright.piece.setout import SetOut

EPS = 1e-6


@dataclass(frozen=True, slots=True)
class CornerOfTwo:
    """A corner before the second part grows into it.

    Attributes:
        first, second: the two boards; the end of the second stands on the inner face of the first.
        axis: that the second runs along; across: that the first runs along; along: the corner.
        high: the second lies on the high side of the first. end_high: the corner lies at the high end of the first.
        face: the inner face of the first, on `axis` [mm].
        lo, hi: the faces of the second, on `across` [mm].
        run: from where to where the corner goes, on `along` [mm].
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
        at_high = abs(first.high[meet.across] - hi) < abs(lo - first.low[meet.across])
        return cls(
            first,
            second,
            meet.axis,
            meet.across,
            meet.along,
            meet.high,
            at_high,
            first.face(meet.axis, meet.high),
            lo,
            hi,
            (second.low[meet.along], second.high[meet.along]),
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
        """A point: so deep in the first, and its places on the other two axes [mm]."""
        v = [0.0, 0.0, 0.0]
        v[self.axis], v[self.across], v[self.along] = self.into(depth), across, along
        return (v[0], v[1], v[2])

    def toward(self, corners: Sequence[Vec], way: Vec, *, glued: bool) -> Contact:
        """A contact face through corners, whose normal from the first part to the second goes roughly one way."""
        one, two = add(corners[1], scaled(corners[0], -1.0)), add(corners[2], scaled(corners[0], -1.0))
        ring = tuple(corners) if dot(cross(one, two), way) > 0 else tuple(reversed(corners))
        return facet(ring, glued=glued)

    def way(self, axis: int, high: bool) -> Vec:
        """A unit vector along an axis."""
        v = [0.0, 0.0, 0.0]
        v[axis] = 1.0 if high else -1.0
        return (v[0], v[1], v[2])

    def grooves(self) -> list[tuple[float, float]]:
        """Grooves along the inner faces of either board, from the low end of the corner: from, to [mm]."""
        out = []
        for part, axis, high in (
            (self.first, self.axis, self.high),
            (self.second, self.across, not self.end_high),
        ):
            for c in part.cuts:
                if isinstance(c, Channel) and (c.axis, c.high) == (axis, high) and c.along != self.along:
                    out.append((c.lo - self.run[0], c.hi - self.run[0]))
        return out


def why_no_corner(first: Draft, second: Draft, meet: Meeting, what: str) -> str:
    """What stands against a joint of interlocking ends; "" for nothing.

    Args:
        first: the board whose inner face is met.
        second: the board whose end stands on it.
        meet: how they meet.
        what: what would be cut, e.g. `fingers`.
    """
    corner = CornerOfTwo.of(first, second, meet)
    edge = first.high[meet.across] - corner.hi if corner.end_high else corner.lo - first.low[meet.across]
    if abs(edge) > EPS:
        return f"the {second.name} is not flush with the end of the {first.name}: {what} need both ends at the corner"
    if second.length_axis != meet.axis:
        return f"the {second.name} meets the {first.name} with an edge, and {what} are cut at ends"
    if first.stock.kind == "wood" and first.length_axis != meet.across:
        return f"the corner lies along an edge of the {first.name}, and {what} are cut at ends"
    if first.thickness_axis != meet.axis or second.thickness_axis != meet.across:
        return f"the {first.name} and the {second.name} do not stand face to face with their widths along the corner"
    if corner.run[0] < first.low[meet.along] - EPS or corner.run[1] > first.high[meet.along] + EPS:
        return f"the {second.name} is wider than the {first.name}"
    return ""


def tool_of(out: SetOut, path: str, given: object, usual: float, name: str, rule: str) -> float:
    """Width of the narrowest tool, given or usual [mm]."""
    found = out.sizer.read(path) if given is not None else None
    value = usual if found is None else found
    out.sizer.explain(name, value, "", "" if found else rule, path if found else "common practice", found is not None)
    return value
