"""Where two mitred parts meet: the corner, its plane, and slots along that plane as profiles of both parts."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.poses import Vec
from boardwright.piece.cuts import Moulding
from boardwright.piece.drafts import Draft
from boardwright.piece.joints.areas import Range
from boardwright.piece.joints.sloping import Plane

Point = tuple[float, float]
"""A place on the two axes of the corner: `axis`, `run` [mm]."""


@dataclass(frozen=True, slots=True)
class MitreCorner:
    """The corner of two mitred parts.

    Attributes:
        axis: that the second part runs along; run: that the first runs along; square: the axis square to both.
        axis_high, run_high: at which ends of those the outer corner lies.
        inner, outer: the two corners, on `axis` and `run` [mm].
        span: from where to where the parts meet on the axis `square` [mm].
    """

    axis: int
    run: int
    square: int
    axis_high: bool
    run_high: bool
    inner: Point
    outer: Point
    span: Range

    @property
    def sides(self) -> tuple[float, float]:
        """How wide the first and the second part are at the corner [mm]."""
        return abs(self.outer[0] - self.inner[0]), abs(self.outer[1] - self.inner[1])

    @property
    def length(self) -> float:
        """From the inner to the outer corner [mm]."""
        a, b = self.sides
        return float((a * a + b * b) ** 0.5)

    @property
    def way(self) -> Point:
        """Unit vector from the inner to the outer corner."""
        return ((self.outer[0] - self.inner[0]) / self.length, (self.outer[1] - self.inner[1]) / self.length)

    @property
    def normal(self) -> Point:
        """Unit vector square to the mitre, from the first part to the second."""
        da, dr = self.way
        x = -abs(dr) if da > 0 else abs(dr)
        return (x, -x * da / dr)

    @property
    def plane(self) -> Plane:
        """The plane of the mitre; its normal points into the second part."""
        return Plane.through(self.point(self.outer, 0.0), self.vector(self.normal))

    def point(self, p: Point, at: float) -> Vec:
        """A place of the corner, so far up the axis square to it, in the piece [mm]."""
        v = [0.0, 0.0, 0.0]
        v[self.axis], v[self.run], v[self.square] = p[0], p[1], at
        return (v[0], v[1], v[2])

    def vector(self, p: Point) -> Vec:
        """A direction in the plane of the corner, in the piece."""
        return self.point(p, 0.0)

    def along(self, t: float, off: float = 0.0) -> Point:
        """The place `t` from the inner corner along the mitre and `off` to the side of the second part [mm]."""
        (wa, wr), (na, nr) = self.way, self.normal
        return (self.inner[0] + t * wa + off * na, self.inner[1] + t * wr + off * nr)

    def room(self, p: Point) -> float:
        """Wood square to the mitre at a place of it, the lesser of both parts [mm]."""
        return min(abs(self.outer[i] - p[i]) / abs(self.normal[i]) for i in (0, 1))

    def slot(self, part: Draft, second: bool, line: list[Point], span: Range) -> None:
        """Take out of a part what lies between a line and the corner of its blank that the mitre cuts off.

        Args:
            part: the part.
            second: True for the second part.
            line: places from the end of the blank to its inner side [mm].
            span: from where to where on the axis square to the corner [mm].
        """
        on, across = (self.axis, self.run) if second else (self.run, self.axis)
        at_high, inner_high = (
            (self.axis_high, not self.run_high) if second else (self.run_high, not self.axis_high)
        )
        o, c = (0, 1) if second else (1, 0)
        points = tuple((abs(p[c] - self.inner[c]), abs(part.face(on, at_high) - p[o])) for p in line)
        side, edge = part.side(on, at_high), part.side(across, inner_high)
        reach = max(max(p) for p in points)
        part.cuts.append(Moulding(side, edge, "profile", reach, points, span[0], span[1]))
