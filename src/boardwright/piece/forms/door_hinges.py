"""How one door hangs: its hinges, and the pin round which it turns."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from boardwright.core.poses import Box, Vec
from boardwright.design.schema import Door, DoorPair
from boardwright.piece.drafts import Draft
from boardwright.piece.forms.cup_hinges import cup_hinges
from boardwright.piece.forms.hinge_line import HingeLine, ends_alike
from boardwright.piece.forms.hinges import hang, pin_out
from boardwright.piece.forms.region import Region
from boardwright.piece.setout import SetOut


@dataclass(frozen=True, slots=True)
class Leaf:
    """One door while it is set out.

    Attributes:
        id, name: of it. left: hinged at the left.
        box: its outside [mm].
        parts: all of it. hinge, lock: the upright parts at its two edges.
        rails: inner edges of its rails [mm]; None for a slab.
    """

    id: str
    name: str
    left: bool
    box: Box
    parts: list[Draft]
    hinge: Draft
    lock: Draft
    rails: tuple[float, float] | None


def hinge_pin(
    out: SetOut, region: Region, keys: Door | DoorPair, path: str, leaf: Leaf, lap: str, kind: str
) -> Vec:
    """Put the hinges of a door in; gives a point of its pin [mm], that of a plain edge where they have no room.

    Args:
        out: the bench.
        region: the space before which it hangs.
        keys: what the file says.
        path: where it stands.
        leaf: the door.
        lap: `inset`, `overlay` or `half_overlay`.
        kind: of hinges.
    """
    hinges, where = keys.hinges, f"{path}.hinges"
    post = region.walls.left if leaf.left else region.walls.right
    box, front = leaf.box, region.box.low[1]
    edge = box.low[0] if leaf.left else box.high[0]
    plain: Vec = (edge, box.low[1], box.low[2])
    if post is None:
        return plain
    if kind == "cup":
        cup_hinges(out, leaf.id, hinges, where, leaf.parts, leaf.hinge, post, leaf.left, front, lap, leaf.id)
        return plain
    line = _line(out, leaf, post, edge, front, lap)
    if lap != "inset" and not _reaches_out(out, post, edge, leaf, lap, path, kind):
        return plain
    hang(out, leaf.id, kind, hinges, where, line, leaf.id, leaf.rails)
    return line.pivot()


def _line(out: SetOut, leaf: Leaf, post: Draft, edge: float, front: float, lap: str) -> HingeLine:
    """Where the leaves of butt hinges lie: between the edge of an inset door and its post, or on the post's edge."""
    box, reach = leaf.box, pin_out(out)
    also = ends_alike(leaf.parts, leaf.hinge, ((0, not leaf.left), (1, lap != "inset")))
    if lap == "inset":
        face = post.face(0, leaf.left)
        return HingeLine(
            leaf.hinge, (post,), 2, 0, leaf.left, (face + edge) / 2, abs(edge - face), -1,
            box.low[1] - reach, box.low[2], box.size(2), also,
        )  # fmt: skip
    outward = -1 if leaf.left else 1
    return HingeLine(
        leaf.hinge, (post,), 2, 1, False, (front + box.high[1]) / 2, front - box.high[1], outward,
        edge + outward * reach, box.low[2], box.size(2), also, tuple(_let_in(out, post, box)),
    )  # fmt: skip


def _let_in(out: SetOut, post: Draft, door: Box) -> Iterator[Draft]:
    """Parts that end in or over the front edge of a post beside a door: the leaves lie over them too."""
    for part in out.drafts.values():
        if part is post or part.tilt is not None or part.group != post.group:
            continue
        if abs(part.low[1] - post.low[1]) > 1e-6 or part.box.overlap(post.box) is None:
            continue
        wide = min(part.high[0], post.high[0]) - max(part.low[0], post.low[0])
        high = min(part.high[2], door.high[2]) - max(part.low[2], door.low[2])
        if wide > 1e-6 and high > 1e-6:
            yield part


def _reaches_out(out: SetOut, post: Draft, edge: float, leaf: Leaf, lap: str, path: str, kind: str) -> bool:
    """A leaf on the front edge of a part must come out at its side: a butt hinge there takes a full overlay."""
    outer = post.low[0] if leaf.left else post.high[0]
    beyond = (edge - outer) if leaf.left else (outer - edge)
    if lap == "overlay" and beyond < out.tables.figure("overlay_front_gap").value + 1e-6:
        return True
    out.find(
        "door.hinge-no-room",
        f"{kind} hinges have no room at the edge of {leaf.name}",
        f"{path}.hinges",
        found=f"the {post.name} reaches {out.about(beyond)} beyond the edge of the door",
        expected="an inset door, or one that covers the outer part to its side",
        source="common practice",
        remedy="use `kind: cup`, or `set: inset`",
    )
    return False
