"""Exact sections through a part with square cuts: what is left in a window of a plane. Lengths in mm."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.poses import Box
from boardwright.drawings.records import Point
from boardwright.piece.records import Part
from boardwright.solids.taken import taken

Window = tuple[float, float, float, float]
"""Left, lower, right and upper edge [mm]."""


@dataclass(frozen=True, slots=True)
class Section:
    """What is left of a part in a plane.

    Attributes:
        cells: rectangles that are wood.
        outline: edges between wood and air; the window's own edges are left out, as the wood runs on there.
    """

    cells: tuple[Window, ...]
    outline: tuple[tuple[Point, Point], ...]


def section(part: Part, across: int, at: float, window: Window) -> Section:
    """The section of a part by a plane; round holes are left out.

    Args:
        part: in its own frame.
        across: axis that the plane is square to; the lower of the other two lies to the right, the other up.
        at: where the plane is along that axis [mm].
        window: what to show [mm], within the part's outline or a little wider.
    """
    a, b = (i for i in range(3) if i != across)
    gone = [
        (x.low[a], x.low[b], x.high[a], x.high[b])
        for c in part.cuts
        for x in taken(c, part.size)
        if isinstance(x, Box) and x.low[across] < at < x.high[across]
    ]
    us = _stops([0.0, part.size[a], *(v for g in gone for v in (g[0], g[2]))], window[0], window[2])
    vs = _stops([0.0, part.size[b], *(v for g in gone for v in (g[1], g[3]))], window[1], window[3])

    def wood(i: int, j: int) -> bool:
        if not (0 <= i < len(us) - 1 and 0 <= j < len(vs) - 1):
            return False
        u, v = (us[i] + us[i + 1]) / 2, (vs[j] + vs[j + 1]) / 2
        if not (0 < u < part.size[a] and 0 < v < part.size[b]):
            return False
        return not any(g[0] < u < g[2] and g[1] < v < g[3] for g in gone)

    cells = tuple(
        (us[i], vs[j], us[i + 1], vs[j + 1])
        for i in range(len(us) - 1)
        for j in range(len(vs) - 1)
        if wood(i, j)
    )
    edges: list[tuple[Point, Point]] = []
    for i, u in enumerate(us):
        if 0 < i < len(us) - 1 or u in (0.0, part.size[a]):
            runs = [j for j in range(len(vs) - 1) if wood(i - 1, j) != wood(i, j)]
            edges += [((u, vs[p]), (u, vs[q + 1])) for p, q in _joined(runs)]
    for j, v in enumerate(vs):
        if 0 < j < len(vs) - 1 or v in (0.0, part.size[b]):
            runs = [i for i in range(len(us) - 1) if wood(i, j - 1) != wood(i, j)]
            edges += [((us[p], v), (us[q + 1], v)) for p, q in _joined(runs)]
    return Section(cells, tuple(edges))


def _stops(values: list[float], low: float, high: float) -> list[float]:
    inside = sorted({round(v, 6) for v in values if low < v < high})
    return [low, *(v for v in inside if v - low > 1e-6 and high - v > 1e-6), high]


def _joined(numbers: list[int]) -> list[tuple[int, int]]:
    """Runs of neighbouring numbers: first and last of each."""
    out: list[tuple[int, int]] = []
    for n in numbers:
        if out and out[-1][1] == n - 1:
            out[-1] = (out[-1][0], n)
        else:
            out.append((n, n))
    return out
