"""The section of a cut that runs along a part: how wide and deep it is, and where, for its detail."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.poses import Vec
from boardwright.drawings.cut_words.shaped import field_angle
from boardwright.drawings.cut_words.terms import degrees_text, slope_text
from boardwright.piece.cuts import (
    Cut,
    DovetailSlot,
    Groove,
    Mortise,
    Moulding,
    Rabbet,
    RaisedField,
    Side,
    VGroove,
)

NEAR = 22.0
"""A reference edge this near to a cut is shown in its detail [mm]."""


@dataclass(frozen=True, slots=True)
class Profile:
    """A cut as its section shows it.

    Attributes:
        kind: what kind of section it is.
        side: that its depth is measured from.
        along: part axis that it runs along; the section is square to it.
        corner: the side at which it is open, or None for a channel with two walls.
        low, high: its width on the surface, on the third axis [mm].
        bottom: its width at the bottom [mm]; None when it is the same.
        depth: [mm]; through: True when it goes through.
        start, end: from where to where it runs [mm].
        place: what is measured from the low end of the third axis [mm]; None when nothing is.
        tongue: thickness that it leaves at the corner [mm]; 0 when that is not measured.
        flat: width of the even part at the corner [mm]; 0 for none.
        note: its angle in words, or "".
        fine: True when it may be drawn larger than it is.
    """

    kind: str
    side: Side
    along: int
    corner: Side | None
    low: float
    high: float
    bottom: tuple[float, float] | None
    depth: float
    through: bool
    start: float
    end: float
    place: float | None
    tongue: float = 0.0
    flat: float = 0.0
    note: str = ""
    fine: bool = False

    @property
    def wide(self) -> int:
        """The part axis across it."""
        return 3 - self.side.axis - self.along

    @property
    def key(self) -> tuple[object, ...]:
        """What tells one section from another: a channel near its reference edge shows where it is.

        Corners at opposite sides have one section, mirrored.
        """
        sizes = (round(self.high - self.low, 4), round(self.depth, 4), self.note, self.tongue)
        near = round(self.place, 4) if self.place is not None and self.place <= NEAR else -1.0
        corner = self.corner.axis if self.corner is not None else -1
        return (self.kind, self.side, self.along, corner, sizes, near)


def profile_of(cut: Cut, size: Vec) -> Profile | None:
    """The section of a cut; None for one that has none along the part.

    Args:
        cut: in the part's own frame.
        size: of the part [mm].
    """
    if isinstance(cut, Groove | Mortise):
        deep = size[cut.side.axis] if isinstance(cut, Mortise) and cut.through else cut.depth
        kind = "mortise" if isinstance(cut, Mortise) else "channel"
        return Profile(
            kind, cut.side, cut.along, None, cut.at, cut.at + cut.width, None, deep,
            deep >= size[cut.side.axis] - 1e-6, cut.start, cut.end, cut.at,
        )  # fmt: skip
    if isinstance(cut, DovetailSlot):
        low, high, more = cut.at, cut.at + cut.width, cut.depth * cut.slope
        return Profile(
            "dovetail", cut.side, cut.along, None, low, high, (low - more, high + more), cut.depth, False,
            cut.start, cut.end, cut.at, note=slope_text(cut.slope), fine=True,
        )  # fmt: skip
    if isinstance(cut, VGroove):
        half = cut.width / 2
        return Profile(
            "v", cut.side, cut.along, None, cut.at - half, cut.at + half, None, cut.depth, False,
            cut.start, cut.end, cut.at, fine=True,
        )  # fmt: skip
    return _at_a_corner(cut, size)


def _at_a_corner(cut: Cut, size: Vec) -> Profile | None:
    if isinstance(cut, Rabbet):
        low, high = _from(cut.edge, cut.width, size)
        along = 3 - cut.side.axis - cut.edge.axis
        return Profile(
            "rabbet", cut.side, along, cut.edge, low, high, None, cut.depth, False, cut.start, cut.end, None
        )
    if isinstance(cut, Moulding) and cut.side.axis != 2 and cut.edge.axis != 2:
        return None
    if isinstance(cut, Moulding):
        wide = max((w for w, _ in cut.points), default=cut.size)
        deep = max((d for _, d in cut.points), default=cut.size)
        low, high = _from(cut.edge, wide, size)
        along = 3 - cut.side.axis - cut.edge.axis
        note = {"chamfer": "45°", "profile": ""}.get(cut.shape, cut.shape)
        return Profile(
            f"moulding {cut.shape}", cut.side, along, cut.edge, low, high, None, deep, False, cut.start, cut.end,
            None, note=note, fine=True,
        )  # fmt: skip
    if isinstance(cut, RaisedField):
        edge = cut.edges[0]
        low, high = _from(edge, cut.width, size)
        along = 3 - cut.side.axis - edge.axis
        thick = size[cut.side.axis]
        return Profile(
            "field", cut.side, along, edge, low, high, None, thick - cut.tongue, False, 0.0, size[along], None,
            cut.tongue, cut.flat, degrees_text(field_angle(cut, thick)),
        )  # fmt: skip
    return None


def _from(edge: Side, width: float, size: Vec) -> tuple[float, float]:
    """From where to where a width lies that is measured from an edge [mm]."""
    whole = size[edge.axis]
    return (whole - width, whole) if edge.high else (0.0, width)
