"""Cuts that shape a part: bevelled ends and edges, tapers, moulded edges, raised fields, curves, V grooves."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.piece.cuts.sides import Side


@dataclass(frozen=True, slots=True)
class Bevel:
    """A whole side cut off by a plane: mitres, bevelled edges, the compound ends of a splayed part.

    Over the two axes other than the side's, u (lower) and v (higher), the plane lies `at + over_u u + over_v v`
    in from the side; where that is below 0 nothing is cut.

    Attributes:
        side: the side that is cut.
        at: from the side to the plane at u = v = 0 [mm]. In a draft: where the plane lies on the side's axis.
        over_u, over_v: how much farther in the plane lies for each mm along u and v (tangents). In a draft: how
            much higher it lies on the side's axis.
        holds: id of the part that meets it there, or "".
    """

    side: Side
    at: float
    over_u: float
    over_v: float
    holds: str = ""


@dataclass(frozen=True, slots=True)
class Taper:
    """A wedge taken off a side, growing towards an end.

    Attributes:
        side: the side it is taken off.
        end: the end at which it is deepest, square to `side`.
        start: where it begins, from the low end of the axis of `end` [mm].
        depth: taken off at `end` [mm].
    """

    side: Side
    end: Side
    start: float
    depth: float


@dataclass(frozen=True, slots=True)
class Moulding:
    """An edge worked to a shape along its length.

    Attributes:
        side, edge: the two sides that meet at the edge.
        shape: `chamfer`, `round-over`, `cove`, `ogee` or `profile`.
        size: leg of the chamfer, radius, or the largest reach of the profile [mm].
        points: of a profile the line that is left, from `side` to `edge`: distance from `edge`, depth from `side`
            [mm]; empty for the other shapes. The wood between it and the corner is taken away.
        start, end: from where to where along the third axis [mm].
        rim: True when it runs all round a circle: the part is sawn round, as wide as it is long, and `edge` names the
            side on which its section is shown.
    """

    side: Side
    edge: Side
    shape: str
    size: float
    points: tuple[tuple[float, float], ...]
    start: float
    end: float
    rim: bool = False


@dataclass(frozen=True, slots=True)
class RaisedField:
    """The bevels round a raised panel: what is left in the middle is the field.

    From the edge inward: `flat` of even thickness `tongue`, then a slope up to `width` from the edge, where a
    step of `step` leads up to the field.

    Attributes:
        side: the side with the field.
        width: from the edge to the field [mm].
        flat: from the edge to where the slope begins [mm].
        tongue: thickness left at the edge [mm].
        step: height of the step at the field [mm].
        edges: the sides round it that are bevelled.
    """

    side: Side
    width: float
    flat: float
    tongue: float
    step: float
    edges: tuple[Side, ...]


@dataclass(frozen=True, slots=True)
class Curve:
    """Wood between a side and a curve, taken away through the whole third axis.

    Attributes:
        side: the side it is taken from.
        along: part axis the curve runs along.
        shape: `arc`, `ellipse` (half of one), `spline` or `line`.
        points: that the curve runs through: place along `along` from its low end, and depth from `side` [mm]; three
            of an arc, and of half an ellipse. The first and the last lie at the side or at the ends of the part.
    """

    side: Side
    along: int
    shape: str
    points: tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class VGroove:
    """A channel of V section, as for the heads of screws that slide past.

    Attributes:
        side: the side it is cut into.
        along: part axis it runs along.
        at: from the low end of the third axis to its middle [mm].
        width: at the side [mm].
        depth: to the point of the V [mm].
        start, end: from where to where it runs [mm].
    """

    side: Side
    along: int
    at: float
    width: float
    depth: float
    start: float
    end: float
