"""What shaping takes away."""

from __future__ import annotations

from boardwright.core.curves import Run, curve_line, curve_runs, edge_line, edge_runs
from boardwright.core.poses import Vec
from boardwright.piece.cuts import Bevel, Curve, Moulding, RaisedField, Side, Taper, VGroove
from boardwright.solids.primitives import OVER, Body, Ring, Sweep, inward, prism, span

FAR = 10.0
"""How far beyond the blank a slanting plane is carried [mm]."""


HAIR = 0.001
"""Half a circle or ellipse that touches its side in its middle is cut so much deeper: a solid cannot end in a line of
no width [mm]."""


def bevel(cut: Bevel, size: Vec) -> list[Body]:
    """All that lies outside the plane: its quadrilateral over the blank, carried outward."""
    axis = cut.side.axis
    u, v = (i for i in range(3) if i != axis)
    depths = []
    points = []
    for du, dv in ((0, 0), (1, 0), (1, 1), (0, 1)):
        pu = size[u] + FAR if du else -FAR
        pv = size[v] + FAR if dv else -FAR
        depth = cut.at + cut.over_u * pu + cut.over_v * pv
        depths.append(depth)
        p = [0.0, 0.0, 0.0]
        p[axis], p[u], p[v] = inward(size, cut.side, depth), pu, pv
        points.append((p[0], p[1], p[2]))
    if max(depths) <= 0:
        return []
    way = [0.0, 0.0, 0.0]
    way[axis] = (max(depths) + OVER) * (1.0 if cut.side.high else -1.0)
    return [Sweep(tuple(points), (way[0], way[1], way[2]))]


def taper(cut: Taper, size: Vec) -> list[Body]:
    """One wedge."""
    axis, third = cut.end.axis, 3 - cut.end.axis - cut.side.axis
    run = size[axis] - cut.start if cut.end.high else cut.start
    if run <= 1e-9 or cut.depth <= 1e-9:
        return []
    way = 1.0 if cut.end.high else -1.0
    slope = cut.depth / run
    tip = cut.start + way * (run + OVER)
    before = cut.start - way * OVER
    outline = [
        (before, inward(size, cut.side, -OVER)),
        (tip, inward(size, cut.side, -OVER)),
        (tip, inward(size, cut.side, cut.depth + OVER * slope)),
        (before, inward(size, cut.side, -OVER * slope)),
    ]
    return [prism((axis, cut.side.axis), outline, (-OVER, size[third] + OVER))]


def moulding(cut: Moulding, size: Vec) -> list[Body]:
    """The corner outside the profile, carried along the edge."""
    third = 3 - cut.side.axis - cut.edge.axis
    points = edge_line(cut.shape, cut.size) or cut.points
    runs = edge_runs(cut.shape)
    if cut.rim:
        return [_rim(points, runs, cut, size)]
    return [_edge(points, runs, cut.side, cut.edge, size, span(size, third, cut.start, cut.end))]


def _rim(points: tuple[tuple[float, float], ...], runs: tuple[Run, ...], cut: Moulding, size: Vec) -> Ring:
    """The same round a circle: outward of the line, turned round the middle of the side.

    It takes the rim below the line along, a hair deeper than the rim is sawn: a line that runs out level with the rim
    would end in no width.
    """
    axis = cut.side.axis
    radius, foot = size[cut.edge.axis] / 2 - 2 * HAIR, size[axis] + OVER
    line = [(points[0][0], -OVER), *points, (0.0, foot), (-OVER, foot), (-OVER, -OVER)]
    sign = -1.0 if cut.side.high else 1.0
    middle = [v / 2 for v in size]
    middle[axis] = inward(size, cut.side, 0.0)
    outline = tuple((radius - w, sign * d) for w, d in line)
    return Ring((middle[0], middle[1], middle[2]), axis, outline, _shifted(runs, 1))


def _edge(
    points: tuple[tuple[float, float], ...],
    runs: tuple[Run, ...],
    side: Side,
    edge: Side,
    size: Vec,
    reach: tuple[float, float],
) -> Sweep:
    """What lies between a corner and a line: (from the edge, from the side) [mm], from the side to the edge."""
    first, last = points[0], points[-1]
    line = [(first[0], -OVER), *points, (-OVER, last[1]), (-OVER, -OVER)]
    outline = [(inward(size, edge, w), inward(size, side, d)) for w, d in line]
    return prism((edge.axis, side.axis), outline, reach, _shifted(runs, 1))


def _shifted(runs: tuple[Run, ...], by: int) -> tuple[Run, ...]:
    return tuple((first + by, last + by, kind) for first, last, kind in runs)


def raised_field(cut: RaisedField, size: Vec) -> list[Body]:
    """The same profile along each edge; where two meet, what both take away is the mitre."""
    deep = size[cut.side.axis] - cut.tongue
    points: tuple[tuple[float, float], ...] = ((cut.width, cut.step), (cut.flat, deep))
    if cut.flat > 1e-9:
        points += ((0.0, deep),)
    out: list[Body] = []
    for edge in cut.edges:
        third = 3 - cut.side.axis - edge.axis
        out.append(_edge(points, (), cut.side, edge, size, (-OVER, size[third] + OVER)))
    return out


def curve(cut: Curve, size: Vec) -> list[Body]:
    """The outline between the side and the curve, carried through."""
    third = 3 - cut.side.axis - cut.along
    first, last = cut.points[0][0], cut.points[-1][0]
    start = first - OVER if first <= 1e-6 else first
    end = last + OVER if last >= size[cut.along] - 1e-6 else last
    line = [(start, -OVER)]
    if start < first:
        line.append((start, cut.points[0][1]))
    low = len(line)
    line += curve_line(cut.shape, cut.points)
    half = cut.shape == "ellipse" or (cut.shape == "arc" and cut.points[0][1] > (last - first) / 2 - HAIR)
    if half and cut.points[1][1] < HAIR:
        line = [line[0], *((x, d + HAIR) for x, d in line[1:])]
    if end > last:
        line.append((end, line[-1][1]))
    line.append((end, -OVER))
    outline = [(x, inward(size, cut.side, d)) for x, d in line]
    runs = _shifted(curve_runs(cut.shape, cut.points), low)
    return [prism((cut.along, cut.side.axis), outline, (-OVER, size[third] + OVER), runs)]


def v_groove(cut: VGroove, size: Vec) -> list[Body]:
    """One triangle, carried along."""
    third = 3 - cut.side.axis - cut.along
    half = cut.width / 2
    more = half * (1 + OVER / cut.depth)
    outline = [
        (inward(size, cut.side, -OVER), cut.at - more),
        (inward(size, cut.side, -OVER), cut.at + more),
        (inward(size, cut.side, cut.depth), cut.at),
    ]
    return [prism((cut.side.axis, third), outline, span(size, cut.along, cut.start, cut.end))]
