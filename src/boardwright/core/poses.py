"""Frames: where a part's own axes lie in the piece.

Piece axes: x left to right, y front to back, z up. A part's own axes: x along the grain (length),
y across it (width), z through it (thickness). All lengths in millimetres.
"""

from __future__ import annotations

from dataclasses import dataclass

Vec = tuple[float, float, float]
AXES: tuple[Vec, Vec, Vec] = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))


def add(a: Vec, b: Vec) -> Vec:
    """Sum of two vectors [mm]."""
    return (a[0] + b[0], a[1] + b[1], a[2] + b[2])


def rounded(v: Vec, digits: int) -> Vec:
    """A vector without the noise of its last digits."""
    return (round(v[0], digits) + 0.0, round(v[1], digits) + 0.0, round(v[2], digits) + 0.0)


def scaled(a: Vec, k: float) -> Vec:
    """A vector times a number."""
    return (a[0] * k, a[1] * k, a[2] * k)


def dot(a: Vec, b: Vec) -> float:
    """Scalar product."""
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def cross(a: Vec, b: Vec) -> Vec:
    """Vector product."""
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def square_to(way: Vec) -> tuple[Vec, Vec]:
    """Two unit vectors that make a right-handed frame with a third: it is along an axis, they are too.

    Args:
        way: a unit vector.
    """
    least = min(range(3), key=lambda i: (abs(way[i]), i))
    x = cross(AXES[least], way)
    size = dot(x, x) ** 0.5
    x = scaled(x, 1 / size)
    return x, cross(way, x)


@dataclass(frozen=True, slots=True)
class Pose:
    """Rigid placement of a part: its origin and its three axes, in piece coordinates.

    Attributes:
        origin: the part's own (0, 0, 0) corner in the piece [mm].
        x, y, z: unit vectors of the part's axes in the piece; right-handed.
    """

    origin: Vec = (0.0, 0.0, 0.0)
    x: Vec = AXES[0]
    y: Vec = AXES[1]
    z: Vec = AXES[2]

    def point(self, p: Vec) -> Vec:
        """A point of the part, in piece coordinates [mm]."""
        return add(self.origin, self.direction(p))

    def direction(self, d: Vec) -> Vec:
        """A direction of the part, in piece coordinates."""
        return (
            self.x[0] * d[0] + self.y[0] * d[1] + self.z[0] * d[2],
            self.x[1] * d[0] + self.y[1] * d[1] + self.z[1] * d[2],
            self.x[2] * d[0] + self.y[2] * d[1] + self.z[2] * d[2],
        )

    def inverse_point(self, p: Vec) -> Vec:
        """A point of the piece, in the part's own coordinates [mm]."""
        return self.inverse_direction((p[0] - self.origin[0], p[1] - self.origin[1], p[2] - self.origin[2]))

    def inverse_direction(self, d: Vec) -> Vec:
        """A direction of the piece, in the part's own axes."""
        return (dot(d, self.x), dot(d, self.y), dot(d, self.z))

    def then(self, outer: Pose) -> Pose:
        """This pose seen through another: first this one, then `outer`."""
        return Pose(
            outer.point(self.origin),
            outer.direction(self.x),
            outer.direction(self.y),
            outer.direction(self.z),
        )

    def moved(self, by: Vec) -> Pose:
        """The same pose shifted by a vector of the piece [mm]."""
        return Pose(add(self.origin, by), self.x, self.y, self.z)

    def rows(self) -> list[list[float]]:
        """The 3 x 4 matrix, row by row: rotation, then origin [mm]."""
        return [[self.x[i], self.y[i], self.z[i], self.origin[i]] for i in range(3)]


@dataclass(frozen=True, slots=True)
class Box:
    """An axis-aligned box: its lowest and highest corner [mm]."""

    low: Vec
    high: Vec

    def size(self, axis: int) -> float:
        """Extent along an axis, 0 to 2 [mm]."""
        return self.high[axis] - self.low[axis]

    def middle(self) -> Vec:
        """The centre [mm]."""
        return scaled(add(self.low, self.high), 0.5)

    def overlap(self, other: Box) -> Box | None:
        """The box that two boxes share, or None; a shared face gives a box of no thickness."""
        low = tuple(max(a, b) for a, b in zip(self.low, other.low, strict=True))
        high = tuple(min(a, b) for a, b in zip(self.high, other.high, strict=True))
        if any(h < lo - 1e-6 for lo, h in zip(low, high, strict=True)):
            return None
        return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))

    def grown(self, by: float) -> Box:
        """The box made larger on every side [mm]."""
        return Box(
            (self.low[0] - by, self.low[1] - by, self.low[2] - by),
            (self.high[0] + by, self.high[1] + by, self.high[2] + by),
        )

    def moved(self, by: Vec) -> Box:
        """The box shifted by a vector [mm]."""
        return Box(add(self.low, by), add(self.high, by))
