"""Parts that collide, joints that do not close, gaps that nobody planned, cuts that meet through a part."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from boardwright.checks.context import Context
from boardwright.core.findings import Finding, Severity
from boardwright.piece.cuts import Groove, Rabbet
from boardwright.piece.records import Joint, Part
from boardwright.solids.dry_fit import NEAR, Touch

CLOSED = 0.5
"""Share of a planned contact face that must touch."""
MANY = 6
"""From so many faces on a joint is judged as a whole."""
LEAST_WEB = 3.0
"""Wood left between cuts from two sides [mm]: 1/8 in, common practice."""


def collisions(c: Context) -> Iterator[Finding]:
    """Two parts in one place."""
    for o in c.fit.overlaps:
        size = " × ".join(c.text(o.box.size(i)) for i in range(3))
        place = c.parts[o.second].place if o.second in c.parts else c.parts[o.first].place
        yield Finding(
            "fit.collision",
            Severity.ERROR,
            f"{c.label(o.first)} and {c.label(o.second)} are in the same place",
            place,
            found=f"{size} shared",
            expected="no shared room",
            source="dry fit of the solids",
            remedy="move or shorten one of them, or join them with a dado or rabbet",
            parts=(o.first, o.second),
        )


def open_joints(c: Context) -> Iterator[Finding]:
    """A joint whose faces should touch and do not.

    Where ends interlock, as fingers and dovetails do, no single face holds the joint: it is judged as a whole.
    """

    def least(area: float) -> float:
        return CLOSED * area * (1 - 1e-3)  # what the cuts leave is known to a thousandth

    by_joint: dict[str, list[Touch]] = {}
    for t in c.fit.touches:
        by_joint.setdefault(t.joint, []).append(t)
    for j in c.piece.joints:
        touches = by_joint.get(j.id, [])
        if len(touches) >= MANY:
            area, touching = sum(t.area for t in touches), sum(t.touching for t in touches)
            wrong = [(area, touching)] if touching < least(area) else []
        else:
            wrong = [(t.area, t.touching) for t in touches if t.area >= 1.0 and t.touching < least(t.area)]
        for area, touching in wrong:
            yield _open(c, j, touching / area)


def _open(c: Context, j: Joint, share: float) -> Finding:
    return Finding(
        "fit.open-joint",
        Severity.ERROR,
        f"the {j.kind.replace('_', ' ')} joint of {c.label(j.first)} and {c.label(j.second)} does not close",
        j.place,
        found=f"{100 * share:.0f} % of the face touches",
        expected=f"at least {100 * CLOSED:.0f} %",
        source="dry fit of the solids",
        remedy="look for a cut that takes the face away, and move it",
        parts=(j.first, j.second),
    )


def unplanned_gaps(c: Context) -> Iterator[Finding]:
    """Two parts of one assembly that nearly touch, with no joint and no clearance between them.

    A part that nothing holds fast, such as a panel that floats in grooves, has its room from its own joints.
    """
    fast = {i for j in c.piece.joints if j.glued or not j.floats for i in (j.first, j.second)}
    held = {i for j in c.piece.joints for i in (j.first, j.second)}
    free = held - fast
    mates: dict[str, set[str]] = {}
    for k in c.piece.joints:
        mates.setdefault(k.first, set()).add(k.second)
        mates.setdefault(k.second, set()).add(k.first)
    joined = {frozenset((j.first, j.second)) for j in c.piece.joints}
    parts = c.piece.parts
    if len(parts) < 2:
        return
    low = np.array([p.box.low for p in parts])
    high = np.array([p.box.high for p in parts])
    apart = np.maximum(low[:, None] - high[None, :], low[None, :] - high[:, None])
    for i, j in np.argwhere(
        np.triu((apart.max(axis=2) > c.piece.step * 1.01) & (apart.max(axis=2) < NEAR), 1)
    ):
        one, two = parts[i], parts[j]
        if one.group != two.group or frozenset((one.id, two.id)) in joined or free & {one.id, two.id}:
            continue
        gaps = apart[i, j]
        axis = int(gaps.argmax())
        if any(_within(c, one, two, axis, id) for id in mates.get(one.id, set()) & mates.get(two.id, set())):
            continue
        if any(float(gaps[axis]) <= _swells(c, part, axis) for part in (one, two)):
            continue
        others = [-float(gaps[k]) for k in range(3) if k != axis]
        if min(others) < 5.0:
            continue
        yield Finding(
            "fit.unplanned-gap",
            Severity.WARNING,
            f"{c.label(one.id)} and {c.label(two.id)} nearly touch",
            two.place,
            found=f"a gap of {c.text(float(gaps[axis]))}",
            expected="contact, or a clearance that is meant",
            source="dry fit of the solids",
            remedy=f"close it by changing a size, or leave {c.up(NEAR)} or more",
            parts=(one.id, two.id),
        )


def _swells(c: Context, part: Part, axis: int) -> float:
    """Room that a solid part is left to swell across its grain, settled up; 0 along it and for a sheet [mm]."""
    if part.stock.kind != "wood" or abs(part.pose.y[axis]) < 0.99:
        return 0.0
    m = c.piece.moisture
    grows = part.size[1] * part.stock.across * max(m.wettest - m.now, 0.0)
    return grows + c.piece.step * 1.01 if grows > 0 else 0.0


def _within(c: Context, one: Part, two: Part, axis: int, id: str) -> bool:
    """Whether the room between two parts is wood of a third that both stand in, as of a leg between two tenons."""
    if id not in c.parts:
        return False
    room, box = one.box, c.parts[id].box
    low, high = max(room.low[axis], two.box.low[axis]), min(room.high[axis], two.box.high[axis])
    return all(
        box.low[k] - 1e-6 <= (high if k == axis else max(room.low[k], two.box.low[k]))
        and (low if k == axis else min(room.high[k], two.box.high[k])) <= box.high[k] + 1e-6
        for k in range(3)
    )


def thin_webs(c: Context) -> Iterator[Finding]:
    """Cuts from opposite sides that nearly meet."""
    for letter_part in _one_of_each(c):
        cuts = [k for k in letter_part.cuts if isinstance(k, (Groove, Rabbet))]
        for n, a in enumerate(cuts):
            for b in cuts[n + 1 :]:
                left = _web(letter_part, a, b)
                if left is None or left >= LEAST_WEB - 1e-6:
                    continue
                yield Finding(
                    "joint.thin-web",
                    Severity.ERROR if left < 1.0 else Severity.WARNING,
                    f"two cuts from opposite sides of {c.label(letter_part.id)} leave too little wood",
                    letter_part.place,
                    found=f"{c.text(max(left, 0.0))} of {c.text(letter_part.size[a.side.axis])}",
                    expected=f"at least {c.text(LEAST_WEB)}",
                    source="common practice",
                    remedy=f"make one of them {c.up(LEAST_WEB - left)} shallower, or move it along",
                    parts=(letter_part.id,),
                )


def grooves_and_rabbets(c: Context) -> int:
    """How many pairs of cuts `thin_webs` compares."""
    counts = (sum(isinstance(k, (Groove, Rabbet)) for k in p.cuts) for p in _one_of_each(c))
    return sum(n * (n - 1) // 2 for n in counts)


def _one_of_each(c: Context) -> list[Part]:
    seen: dict[str, Part] = {}
    for p in c.piece.parts:
        seen.setdefault(p.letter, p)
    return list(seen.values())


def _range(part: Part, cut: Groove | Rabbet) -> dict[int, tuple[float, float]]:
    """What a channel or step takes on each axis of the part [mm]."""
    out: dict[int, tuple[float, float]] = {}
    size = part.size[cut.side.axis]
    out[cut.side.axis] = (size - cut.depth, size) if cut.side.high else (0.0, cut.depth)
    if isinstance(cut, Groove):
        third = 3 - cut.side.axis - cut.along
        out[cut.along] = (cut.start, cut.end)
        out[third] = (cut.at, cut.at + cut.width)
        return out
    edge = part.size[cut.edge.axis]
    out[cut.edge.axis] = (edge - cut.width, edge) if cut.edge.high else (0.0, cut.width)
    out[3 - cut.side.axis - cut.edge.axis] = (cut.start, cut.end)
    return out


def _web(part: Part, a: Groove | Rabbet, b: Groove | Rabbet) -> float | None:
    """Wood left between two cuts from opposite sides where they cross; None when they do not."""
    if a.side.axis != b.side.axis or a.side is b.side:
        return None
    one, two = _range(part, a), _range(part, b)
    for axis in range(3):
        if axis == a.side.axis:
            continue
        if min(one[axis][1], two[axis][1]) - max(one[axis][0], two[axis][0]) < 1e-6:
            return None
    tongue = "tongue" in (a.purpose, b.purpose)
    left = part.size[a.side.axis] - a.depth - b.depth
    return None if tongue else left
