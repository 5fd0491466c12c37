"""What is left of the face where two parts meet, beside what is cut into either of them there."""

from __future__ import annotations

from itertools import pairwise

from boardwright.core.poses import Box
from boardwright.piece.cuts import Mortise
from boardwright.piece.drafts import Channel, Draft, Step
from boardwright.piece.joints.faces import plane
from boardwright.piece.records import Contact

Range = tuple[float, float]
Rect = tuple[Range, Range]
"""A rectangle: from, to on one axis and on another [mm]."""
EPS = 1e-6


def common(one: Range, two: Range) -> Range:
    """What two ranges share; its end lies before its start when they share nothing [mm]."""
    return max(one[0], two[0]), min(one[1], two[1])


def extent(draft: Draft, axis: int) -> Range:
    """From where to where a part reaches along an axis [mm]."""
    return draft.low[axis], draft.high[axis]


def left_over(whole: Rect, holes: list[Rect]) -> list[Rect]:
    """A rectangle less others, as rectangles: strips across its first axis, and what is left of each [mm]."""
    marks = sorted({*whole[0], *(v for h in holes for v in h[0] if whole[0][0] < v < whole[0][1])})
    out: list[Rect] = []
    for a, b in pairwise(marks):
        at = whole[1][0]
        over = sorted(h[1] for h in holes if h[0][0] < b - EPS and h[0][1] > a + EPS)
        for lo, hi in [*over, (whole[1][1], whole[1][1])]:
            if lo > at + EPS:
                out.append(((a, b), (at, min(lo, whole[1][1]))))
            at = max(at, hi)
    return _joined([r for r in out if r[0][1] - r[0][0] > EPS and r[1][1] - r[1][0] > EPS])


def _joined(strips: list[Rect]) -> list[Rect]:
    """Strips that lie against each other and are equally wide, as one."""
    out: list[Rect] = []
    for strip in strips:
        for i, other in enumerate(out):
            if abs(other[0][1] - strip[0][0]) < EPS and other[1] == strip[1]:
                out[i] = ((other[0][0], strip[0][1]), strip[1])
                break
        else:
            out.append(strip)
    return out


def mouths(draft: Draft, axis: int, high: bool, u: int, v: int) -> list[Rect]:
    """What channels, steps and mortises open of a side, on its two axes [mm]."""
    out: list[Rect] = []
    for cut in draft.cuts:
        ranges: dict[int, Range] = {}
        if isinstance(cut, Channel) and (cut.axis, cut.high) == (axis, high):
            ranges = {3 - axis - cut.along: (cut.lo, cut.hi), cut.along: _run(draft, cut, cut.along)}
        elif isinstance(cut, Mortise) and cut.side is draft.side(axis, high):
            box = mortise_room(draft, cut)
            ranges = {u: (box.low[u], box.high[u]), v: (box.low[v], box.high[v])}
        elif isinstance(cut, Step) and axis in (cut.axis, cut.edge_axis):
            seen, edge = (cut.axis, cut.high), (cut.edge_axis, cut.edge_high)
            if (axis, high) not in (seen, edge):
                continue
            (other, at_high), amount = (edge, cut.width) if (axis, high) == seen else (seen, cut.depth)
            face = draft.face(other, at_high)
            third = 3 - cut.axis - cut.edge_axis
            deep = (face - amount, face) if at_high else (face, face + amount)
            ranges = {other: deep, third: _run(draft, cut, third)}
        if ranges:
            out.append((ranges[u], ranges[v]))
    return out


def _run(draft: Draft, cut: Channel | Step, axis: int) -> Range:
    return (
        draft.low[axis] if cut.start is None else cut.start,
        draft.high[axis] if cut.end is None else cut.end,
    )


def run_out(draft: Draft, axis: int, high: bool, u: int, v: int) -> list[Rect]:
    """What grooves and rabbets that run out at a side take of it, on its two axes [mm]."""
    out: list[Rect] = []
    end = draft.face(axis, high)
    for cut in draft.cuts:
        if isinstance(cut, Channel) and cut.along == axis:
            face = draft.face(cut.axis, cut.high)
            deep = (face - cut.depth, face) if cut.high else (face, face + cut.depth)
            ranges = {cut.axis: deep, 3 - cut.axis - cut.along: (cut.lo, cut.hi)}
        elif isinstance(cut, Step) and 3 - cut.axis - cut.edge_axis == axis:
            ranges = {}
            for on, at_high, amount in (
                (cut.axis, cut.high, cut.depth),
                (cut.edge_axis, cut.edge_high, cut.width),
            ):
                face = draft.face(on, at_high)
                ranges[on] = (face - amount, face) if at_high else (face, face + amount)
        else:
            continue
        if cut.start is not None and not high and cut.start > end + EPS:
            continue
        if cut.end is not None and high and cut.end < end - EPS:
            continue
        out.append((ranges[u], ranges[v]))
    return out


def mortise_room(draft: Draft, cut: Mortise) -> Box:
    """The room of a mortise of a draft, in the draft's own frame [mm]."""
    axis, along = draft.axes[cut.side.axis], draft.axes[cut.along]
    third = 3 - axis - along
    low, high = [0.0] * 3, [0.0] * 3
    face = draft.face(axis, cut.side.high)
    depth = draft.size(axis) if cut.through else cut.depth
    low[axis], high[axis] = (face - depth, face) if cut.side.high else (face, face + depth)
    low[along], high[along] = cut.start, cut.end
    low[third], high[third] = cut.at, cut.at + cut.width
    return Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def faces_left(
    first: Draft,
    second: Draft,
    axis: int,
    high: bool,
    u: int,
    v: int,
    *,
    glued: bool,
    taken: list[Rect] | None = None,
) -> list[Contact]:
    """Contacts where the end of a second part touches a side of a first, beside what is cut into either.

    Args:
        first: the part with the face, with all its cuts.
        second: the part whose end lies there.
        axis: of the side of the first part.
        high: True for the side at its high end.
        u: one of the other two axes.
        v: the other of them.
        glued: a glue face or not.
        taken: further rectangles on u and v that do not touch.
    """
    whole = (common(extent(first, u), extent(second, u)), common(extent(first, v), extent(second, v)))
    holes = [*mouths(first, axis, high, u, v), *run_out(second, axis, not high, u, v), *(taken or [])]
    return [
        plane(axis, first.face(axis, high), {u: a, v: b}, high, glued=glued)
        for a, b in left_over(whole, holes)
    ]
