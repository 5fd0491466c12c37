"""Chains of sizes: which cuts, at which settings, make up the distance between two faces of a piece.

Faces of parts are linked where a cut sets their distance (a crosscut, a rip, the depth or place of a groove), and
where a joint brings them together. The chain between two faces is the way with the least error, as the tightest
of several ways holds the others.
"""

from __future__ import annotations

import heapq
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from boardwright.checks.context import Context
from boardwright.core.poses import Box
from boardwright.piece.records import Part

TRUE = 0.999
"""A part lies along an axis to this cosine."""
SAME = 0.02
"""Faces no farther apart than this are at the same place [mm]."""
ENDS = 50.0
"""A cut no farther from an end than this is measured from that end, others from either [mm]."""

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


class Faces:
    """Faces of a piece along one axis, and what links them."""

    def __init__(self, c: Context, axis: int, depth: int, boxes: Mapping[str, Box]) -> None:
        """Link the faces of a piece.

        Args:
            c: the piece.
            axis: along which distances are told.
            depth: piece axis along which a crosscut that is out of square shows.
            boxes: of the parts, by id.
        """
        self._c, self.axis, self._depth, self._boxes = c, axis, depth, boxes
        self._nodes: dict[tuple[str, float], int] = {}
        self._links: list[list[tuple[int, Link | None]]] = []
        self._local = {p.id: k for p in c.piece.parts if (k := _lies(p, axis)) is not None}
        for p in c.piece.parts:
            if p.id in self._local:
                self._blank(p)
        self._joints()

    def _node(self, id: str, at: float) -> int:
        key = (id, round(at, 2))
        if key not in self._nodes:
            self._nodes[key] = len(self._links)
            self._links.append([])
        return self._nodes[key]

    def _link(
        self, a: tuple[str, float], b: tuple[str, float], setting: Setting | None, across: float = 0.0
    ) -> None:
        one, two = self._node(*a), self._node(*b)
        if setting is None:
            self._links[one].append((two, None))
            self._links[two].append((one, None))
            return
        rate = self._rate(a[0])
        size = b[1] - a[1]
        self._links[one].append((two, Link(setting, size, rate, across)))
        self._links[two].append((one, Link(setting, -size, rate, across)))

    def _rate(self, id: str) -> float:
        stock = self._c.parts[id].stock
        return (stock.lengthwise, stock.across, stock.through)[self._local[id]]

    def _blank(self, p: Part) -> None:
        box = self._boxes[p.id]
        whole = self.whole(p)
        assert whole is not None
        low, high = box.low[self.axis], box.high[self.axis]
        self._link((p.id, low), (p.id, high), whole.setting, whole.across)

    def whole(self, p: Part) -> Link | None:
        """The size of a part along the axis; None where it lies aslant."""
        local = self._local.get(p.id)
        if local is None:
            return None
        size = self._boxes[p.id].size(self.axis)
        word, of = (("crosscut", ""), ("rip", ""), ("thickness", p.id))[local]
        across = self._boxes[p.id].size(self._depth) if local == 0 else 0.0
        return Link((word, of, round(size, 2)), size, self._rate(p.id), across)

    def _joints(self) -> None:
        for j in self._c.piece.joints:
            if self.axis in j.floats:
                continue
            one, two = self._c.parts.get(j.first), self._c.parts.get(j.second)
            if one is None or two is None or one.group != two.group:
                continue
            walls: dict[str, dict[bool, list[float]]] = {j.first: {}, j.second: {}}
            for k in j.contacts:
                if k.axis != self.axis or k.corners or k.gap > 1e-6:
                    continue
                at = k.box.low[self.axis]
                self._link((j.first, at), (j.second, at), None)
                for id, air_above in ((j.first, k.from_first), (j.second, not k.from_first)):
                    self._cut(id, at, air_above, j.kind)
                    walls[id].setdefault(air_above, []).append(at)
            for id, sides in walls.items():
                for low in sides.get(True, ()):
                    for high in sides.get(False, ()):
                        if id == j.first and low < high and id in self._local:
                            self._link((id, low), (id, high), ("groove_width", "", round(high - low, 2)))

    def _cut(self, id: str, at: float, air_above: bool, kind: str) -> None:
        """Link a face that was cut into a part to the faces that it is measured from."""
        local = self._local.get(id)
        if local is None:
            return
        box = self._boxes[id]
        low, high = box.low[self.axis], box.high[self.axis]
        if at < low + SAME or at > high - SAME:
            if low - SAME < at < high + SAME:
                self._link((id, at), (id, low if at < low + SAME else high), None)
            return
        if local == 2:
            face = high if air_above else low
            self._link((id, at), (id, face), ("groove_depth", kind, round(abs(face - at), 2)))
            return
        near = min(at - low, high - at)
        for face in (low, high):
            if near < ENDS and abs(face - at) > near + SAME:
                continue
            self._link((id, at), (id, face), ("groove_place", kind, round(abs(face - at), 2)))

    def chain(self, starts: Iterable[tuple[str, float]], ends: Iterable[tuple[str, float]]) -> Chain | None:
        """The way with the least error from one of some faces to one of others; None when nothing links them."""
        goal = {self._nodes[k] for id, at in ends if (k := (id, round(at, 2))) in self._nodes}
        first = sorted({self._nodes[k] for id, at in starts if (k := (id, round(at, 2))) in self._nodes})
        best = dict.fromkeys(first, 0.0)
        came: dict[int, tuple[int, Link | None]] = {}
        queue = [(0.0, n) for n in first]
        while queue:
            error, n = heapq.heappop(queue)
            if n in goal:
                return self._way(n, came)
            if error > best[n]:
                continue
            for other, link in self._links[n]:
                more = error + (self._c.shop.precision[link.setting[0]] ** 2 + 1e-9 if link else 1e-12)
                if more < best.get(other, float("inf")):
                    best[other] = more
                    came[other] = (n, link)
                    heapq.heappush(queue, (more, other))
        return None

    def _way(self, n: int, came: dict[int, tuple[int, Link | None]]) -> Chain:
        out = []
        while n in came:
            n, link = came[n]
            if link is not None:
                out.append(link)
        return tuple(reversed(out))

    def groove(self, depth: float) -> Link:
        """The depth of a groove as a link of its own."""
        return Link(("groove_depth", "panel", round(depth, 2)), depth, 0.0)

    def at(self, where: float, high: bool, parts: Sequence[Part]) -> list[tuple[str, float]]:
        """Faces of parts that lie at a place: their high sides, or their low ones."""
        found = []
        for p in parts:
            at = (self._boxes[p.id].high if high else self._boxes[p.id].low)[self.axis]
            if abs(at - where) < SAME:
                found.append((p.id, at))
        return found


def _lies(p: Part, axis: int) -> int | None:
    """Which of a part's own axes lies along a piece axis; None when none does."""
    return next((i for i, a in enumerate((p.pose.x, p.pose.y, p.pose.z)) if abs(a[axis]) > TRUE), None)
