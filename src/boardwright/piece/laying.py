"""Fitted and shaped cuts taken from the axes of a draft to the part's own frame, whichever way the part is laid."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Protocol

from boardwright.piece.cuts import (
    Bevel,
    BiscuitSlot,
    Curve,
    DovetailSlot,
    DovetailTongue,
    Fingers,
    Fitted,
    Mortise,
    Pins,
    RaisedField,
    Shaped,
    Side,
    Tails,
    Taper,
    Tenon,
    VGroove,
)


class View(Protocol):
    """One way to lay a part. Axes and sides that go in are the draft's; those that come out are the part's."""

    def turned_side(self, side: Side) -> Side:
        """The side."""

    def turned_axis(self, axis: int) -> int:
        """The axis."""

    def place(self, axis: int, value: float) -> float:
        """A place on an axis, from the part's low end [mm]."""

    def along(self, axis: int) -> int:
        """+1 when the part's axis runs as the draft's does, else -1."""

    def extent(self, axis: int) -> float:
        """Size of the blank along it [mm]."""


def laid(cut: Fitted | Shaped, view: View) -> Fitted | Shaped:
    """A cut of a draft in the part's own frame."""
    if isinstance(cut, Mortise | DovetailSlot | VGroove):
        return _channel(cut, view)
    if isinstance(cut, BiscuitSlot):
        return _biscuit(cut, view)
    if isinstance(cut, Tenon | DovetailTongue):
        return _tongue(cut, view)
    if isinstance(cut, Fingers | Tails | Pins):
        return _sockets(cut, view)
    if isinstance(cut, Bevel):
        return _bevel(cut, view)
    if isinstance(cut, Taper):
        tip = view.turned_side(cut.end)
        return Taper(view.turned_side(cut.side), tip, view.place(cut.end.axis, cut.start), cut.depth)
    if isinstance(cut, RaisedField):
        edges = tuple(sorted(view.turned_side(e) for e in cut.edges))
        return replace(cut, side=view.turned_side(cut.side), edges=edges)
    if isinstance(cut, Curve):
        points = [(view.place(cut.along, x), depth) for x, depth in cut.points]
        if view.along(cut.along) < 0:
            points.reverse()
        along = view.turned_axis(cut.along)
        return replace(cut, side=view.turned_side(cut.side), along=along, points=tuple(points))
    start, end = _span(view, 3 - cut.side.axis - cut.edge.axis, cut.start, cut.end)
    return replace(
        cut, side=view.turned_side(cut.side), edge=view.turned_side(cut.edge), start=start, end=end
    )


def _span(view: View, axis: int, a: float, b: float) -> tuple[float, float]:
    one, two = view.place(axis, a), view.place(axis, b)
    return (one, two) if one <= two else (two, one)


def _channel(cut: Mortise | DovetailSlot | VGroove, view: View) -> Mortise | DovetailSlot | VGroove:
    third = 3 - cut.side.axis - cut.along
    low = cut.at if isinstance(cut, VGroove) else min(_span(view, third, cut.at, cut.at + cut.width))
    at = view.place(third, low) if isinstance(cut, VGroove) else low
    start, end = _span(view, cut.along, cut.start, cut.end)
    return replace(
        cut,
        side=view.turned_side(cut.side),
        along=view.turned_axis(cut.along),
        at=at,
        start=start,
        end=end,
    )


def _biscuit(cut: BiscuitSlot, view: View) -> BiscuitSlot:
    axes = [axis for axis in range(3) if axis != cut.side.axis]
    where = sorted(
        (view.turned_axis(axis), view.place(axis, v)) for axis, v in zip(axes, cut.at, strict=True)
    )
    return replace(
        cut,
        side=view.turned_side(cut.side),
        along=view.turned_axis(cut.along),
        at=(where[0][1], where[1][1]),
        lean=cut.lean * view.along(cut.lean_along) if cut.lean else 0.0,
        lean_along=view.turned_axis(cut.lean_along) if cut.lean else 0,
    )


def _tongue(cut: Tenon | DovetailTongue, view: View) -> Tenon | DovetailTongue:
    third = 3 - cut.end.axis - cut.wide
    low, high = (cut.low, cut.high) if view.along(third) > 0 else (cut.high, cut.low)
    end, wide = view.turned_side(cut.end), view.turned_axis(cut.wide)
    if isinstance(cut, DovetailTongue):
        return replace(cut, end=end, wide=wide, low=low, high=high)
    steps = tuple(sorted((*_span(view, cut.wide, a, b), length) for a, b, length in cut.steps))
    return replace(cut, end=end, wide=wide, low=low, high=high, steps=steps)


def _sockets(cut: Fingers | Tails | Pins, view: View) -> Fingers | Tails | Pins:
    sockets = tuple(sorted(_span(view, cut.wide, a, b) for a, b in cut.sockets))
    end, wide = view.turned_side(cut.end), view.turned_axis(cut.wide)
    if isinstance(cut, Pins):
        return replace(cut, end=end, wide=wide, sockets=sockets, side=view.turned_side(cut.side))
    return replace(cut, end=end, wide=wide, sockets=sockets)


def _bevel(cut: Bevel, view: View) -> Bevel:
    """The plane, from its place on the draft's axis to how far it lies in from the side."""
    u, v = (i for i in range(3) if i != cut.side.axis)
    slopes = {}
    at = cut.at
    for axis, slope in ((u, cut.over_u), (v, cut.over_v)):
        origin = -view.place(axis, 0.0) * view.along(axis)
        at += slope * origin
        slopes[view.turned_axis(axis)] = slope * view.along(axis)
    side = view.turned_side(cut.side)
    place, inward = view.place(cut.side.axis, at), view.along(cut.side.axis)
    if side.high:
        place, inward = view.extent(cut.side.axis) - place, -inward
    one, two = sorted(slopes)
    return Bevel(side, place, slopes[one] * inward, slopes[two] * inward, cut.holds)


def nearer(
    cut: Fitted | Shaped, side: Side, by: float, extents: Sequence[tuple[float, float]]
) -> Fitted | Shaped:
    """A cut of a draft whose side has come nearer by less than a step: what is measured from it gets less.

    Flanks that slope stay where they are: at the new tip, tails are narrower and sockets wider.

    Args:
        cut: on the axes of the draft.
        side: that has come nearer.
        by: how much [mm].
        extents: low and high of the draft on its length, width and thickness [mm].
    """
    if isinstance(cut, Tenon) and cut.end is side:
        steps = tuple((a, b, length - by) for a, b, length in cut.steps)
        return replace(cut, length=cut.length - by, steps=steps)
    if isinstance(cut, Tails) and cut.end is side:
        low, high = extents[cut.wide]
        more = by * cut.slope
        sockets = tuple(
            (a if a < low + 1e-6 else a - more, b if b > high - 1e-6 else b + more) for a, b in cut.sockets
        )
        return replace(cut, length=cut.length - by, sockets=sockets)
    if isinstance(cut, DovetailTongue) and cut.end is side:
        more = by * cut.slope
        return replace(cut, length=cut.length - by, low=cut.low + more, high=cut.high + more)
    if isinstance(cut, Fingers | Pins) and cut.end is side:
        cut = replace(cut, length=cut.length - by)
    deep = isinstance(cut, Pins | DovetailSlot | BiscuitSlot) or (
        isinstance(cut, Mortise) and not cut.through
    )
    if isinstance(cut, BiscuitSlot) and cut.lean:
        return replace(cut, sunk=cut.sunk - by) if cut.side is side else cut
    if deep and isinstance(cut, Pins | DovetailSlot | BiscuitSlot | Mortise) and cut.side is side:
        return replace(cut, depth=cut.depth - by)
    return cut
