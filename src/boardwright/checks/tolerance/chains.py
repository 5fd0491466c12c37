"""Chains of sizes: which cuts, at which settings, make up the distance between two faces of a piece.

Faces of parts are linked where a cut sets their distance (a crosscut, a rip, the depth or place of a groove), and
where a joint brings them together. The chain between two faces is the way with the least error, as the tightest
of several ways holds the others.
"""

from __future__ import annotations

import heapq
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from math import inf

from boardwright.checks.context import Context
from boardwright.core.poses import Box, Vec
from boardwright.piece.records import Part

TRUE = 0.999
"""A part lies along an axis to this cosine."""
SAME = 0.02
"""Faces no farther apart than this are at the same place [mm]."""
ENDS = 50.0
"""A cut no farther from an end than this is measured from that end, others from either [mm]."""
DEPTH = (1, 0, 1)
"""Axis along which a crosscut that is out of square shows, for distances along each axis."""

Setting = tuple[str, object, float]
"""What one setting of a machine makes alike: its kind of cut, what it is for, and the size it is set to [mm]."""


@dataclass(frozen=True, slots=True)
class Link:
    """A size in a chain.

    Attributes:
        setting: at which it is cut; its first word is what the shop's precision is told for.
        size: the distance it makes along the chain, below 0 where the chain goes back [mm].
        rate: change of that distance for each per cent of moisture [1/%].
        across: extent of the part square to it, for a crosscut that may be out of square [mm].
    """

    setting: Setting
    size: float
    rate: float
    across: float = 0.0


Chain = tuple[Link, ...]


Edge = tuple[int, Setting | None, float, float, float]
"""A face that is linked to another: its number, then what makes a `Link`; no setting where the two touch."""


class Faces:
    """Faces of a piece along one axis, and what links them."""

    def __init__(self, c: Context, axis: int, boxes: Mapping[str, Box], rates: Mapping[str, Vec]) -> None:
        """Link the faces of a piece.

        Args:
            c: the piece.
            axis: along which distances are told.
            boxes: of the parts, by id.
            rates: of the stocks, by id: change along each axis of a part for each per cent of moisture [1/%].
        """
        self._c, self.axis, self.boxes = c, axis, boxes
        self._nodes: dict[tuple[str, float], int] = {}
        self._edges: list[list[Edge]] = []
        self._local = {p.id: k for p in c.piece.parts if (k := _lies(p, axis)) is not None}
        self._rates = {id: rates[c.parts[id].stock.id][k] for id, k in self._local.items()}
        self._wholes = {id: self._whole(c.parts[id]) for id in self._local}
        for p in c.piece.parts:
            if p.id in self._local:
                self._blank(p)
        self._joints()

    def _node(self, id: str, at: float) -> int:
        key = (id, round(at, 2))
        n = self._nodes.setdefault(key, len(self._edges))
        if n == len(self._edges):
            self._edges.append([])
        return n

    def _touch(self, one: str, two: str, at: float, there: float) -> None:
        """Two faces that lie at the same place."""
        a, b = self._node(one, at), self._node(two, there)
        self._edges[a].append((b, None, 0.0, 0.0, 0.0))
        self._edges[b].append((a, None, 0.0, 0.0, 0.0))

    def _link(self, id: str, low: float, high: float, setting: Setting, across: float = 0.0) -> None:
        """Two faces of a part, and the setting that makes their distance."""
        a, b = self._node(id, low), self._node(id, high)
        rate, size = self._rates[id], high - low
        self._edges[a].append((b, setting, size, rate, across))
        self._edges[b].append((a, setting, -size, rate, across))

    def _blank(self, p: Part) -> None:
        box, whole = self.boxes[p.id], self._wholes[p.id]
        low, high = box.low[self.axis], box.high[self.axis]
        self._link(p.id, low, high, whole.setting, whole.across)

    def whole(self, p: Part) -> Link | None:
        """The size of a part along the axis; None where it lies aslant."""
        return self._wholes.get(p.id)

    def _whole(self, p: Part) -> Link:
        local = self._local[p.id]
        size = self.boxes[p.id].size(self.axis)
        word, of = (("crosscut", ""), ("rip", ""), ("thickness", p.id))[local]
        across = self.boxes[p.id].size(DEPTH[self.axis]) if local == 0 else 0.0
        return Link((word, of, round(size, 2)), size, self._rates[p.id], across)

    def _joints(self) -> None:
        for j in self._c.piece.joints:
            if self.axis in j.floats:
                continue
            one, two = self._c.parts.get(j.first), self._c.parts.get(j.second)
            if one is None or two is None or one.group != two.group:
                continue
            walls: dict[str, dict[bool, list[float]]] = {j.first: {}, j.second: {}}
            faces = dict.fromkeys(
                (k.box.low[self.axis], k.from_first)
                for k in j.contacts
                if k.axis == self.axis and not k.corners and k.gap <= 1e-6
            )
            for at, from_first in faces:
                self._touch(j.first, j.second, at, at)
                for id, air_above in ((j.first, from_first), (j.second, not from_first)):
                    self._cut(id, at, air_above, j.kind)
                    walls[id].setdefault(air_above, []).append(at)
            for id, sides in walls.items():
                for low in sides.get(True, ()):
                    for high in sides.get(False, ()):
                        if id == j.first and low < high and id in self._local:
                            self._link(id, low, high, ("groove_width", "", round(high - low, 2)))

    def _cut(self, id: str, at: float, air_above: bool, kind: str) -> None:
        """Link a face that was cut into a part to the faces that it is measured from."""
        local = self._local.get(id)
        if local is None:
            return
        box = self.boxes[id]
        low, high = box.low[self.axis], box.high[self.axis]
        if at < low + SAME or at > high - SAME:
            if low - SAME < at < high + SAME:
                self._touch(id, id, at, low if at < low + SAME else high)
            return
        if local == 2:
            face = high if air_above else low
            self._link(id, at, face, ("groove_depth", kind, round(abs(face - at), 2)))
            return
        near = min(at - low, high - at)
        for face in (low, high):
            if near < ENDS and abs(face - at) > near + SAME:
                continue
            self._link(id, at, face, ("groove_place", kind, round(abs(face - at), 2)))

    def chain(self, starts: Iterable[tuple[str, float]], ends: Iterable[tuple[str, float]]) -> Chain | None:
        """The way with the least error from one of some faces to one of others; None when nothing links them."""
        goal = {self._nodes[k] for id, at in ends if (k := (id, round(at, 2))) in self._nodes}
        first = sorted({self._nodes[k] for id, at in starts if (k := (id, round(at, 2))) in self._nodes})
        best = dict.fromkeys(first, 0.0)
        came: dict[int, tuple[int, Edge]] = {}
        queue = [(0.0, n) for n in first]
        precision = self._c.shop.precision
        while queue:
            error, n = heapq.heappop(queue)
            if n in goal:
                return _way(n, came)
            if error > best[n]:
                continue
            for edge in self._edges[n]:
                setting = edge[1]
                more = error + (1e-12 if setting is None else precision[setting[0]] ** 2 + 1e-9)
                if more < best.get(edge[0], inf):
                    best[edge[0]] = more
                    came[edge[0]] = (n, edge)
                    heapq.heappush(queue, (more, edge[0]))
        return None

    def groove(self, depth: float) -> Link:
        """The depth of a groove as a link of its own."""
        return Link(("groove_depth", "panel", round(depth, 2)), depth, 0.0)

    def at(self, where: float, high: bool, parts: Sequence[Part]) -> list[tuple[str, float]]:
        """Faces of parts that lie at a place: their high sides, or their low ones."""
        found = []
        for p in parts:
            at = (self.boxes[p.id].high if high else self.boxes[p.id].low)[self.axis]
            if abs(at - where) < SAME:
                found.append((p.id, at))
        return found


def _way(n: int, came: Mapping[int, tuple[int, Edge]]) -> Chain:
    """The links that lead to a face."""
    out = []
    while n in came:
        n, (_, setting, size, rate, across) = came[n]
        if setting is not None:
            out.append(Link(setting, size, rate, across))
    return tuple(reversed(out))


class Sides:
    """The faces of a piece along each axis, linked when they are first asked for."""

    def __init__(self, c: Context) -> None:
        """Measure all parts once."""
        self._c = c
        self.boxes = {p.id: p.box for p in c.piece.parts}
        stocks = {p.stock.id: p.stock for p in c.piece.parts}
        self._rates = {id: stock.rates for id, stock in stocks.items()}
        self._faces: dict[int, Faces] = {}

    def along(self, axis: int) -> Faces:
        """The faces along a piece axis."""
        if axis not in self._faces:
            self._faces[axis] = Faces(self._c, axis, self.boxes, self._rates)
        return self._faces[axis]


def _lies(p: Part, axis: int) -> int | None:
    """Which of a part's own axes lies along a piece axis; None when none does."""
    pose = p.pose
    if abs(pose.x[axis]) > TRUE:
        return 0
    if abs(pose.y[axis]) > TRUE:
        return 1
    return 2 if abs(pose.z[axis]) > TRUE else None
