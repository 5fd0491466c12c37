"""Thin walls inside a box: from front to back, from left to right, lapped where they cross."""

from __future__ import annotations

from boardwright.core.poses import Box
from boardwright.design.schema import BoxDividers, JointKeys
from boardwright.piece.drafts import Draft
from boardwright.piece.forms.box_panel import Wall
from boardwright.piece.forms.lid_well import CLEAR, stay_of
from boardwright.piece.joints.faces import plane, unit
from boardwright.piece.joints.make import make_joint
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

SLID = JointKeys(kind="dado", glue=False)
"""Thin walls slide into their dados and stay dry (common practice)."""
LEAST_CELL = 15.0
"""Least room between two thin walls [mm]: common practice, 5/8 in."""
LEAST_HIGH = 10.0
"""Least height of a thin wall [mm]: common practice, 3/8 in."""


def dividers(
    out: SetOut, keys: BoxDividers, walls: list[Wall], floor: float, top: float, panel: Stock, taken: float
) -> float:
    """Set thin walls on the bottom of a box with four plumb sides; gives the height of their upper edges [mm].

    Args:
        out: the bench.
        keys: what is asked.
        walls: front, right, rear, left.
        floor: height of the bottom's upper side [mm].
        top: height of the upper edge of the walls [mm].
        panel: stock of the bottom.
        taken: by trays under the upper edge of the walls [mm].
    """
    front, right, rear, left = (w.draft for w in walls)
    stock = out.stock(("box.dividers.stock", keys.stock)) if keys.stock is not None else panel
    stay = stay_of(out) if keys.along else None
    taken += out.sizer.settled(CLEAR, "up") if taken else 0.0
    over = max(taken, top - stay.low[2] if stay is not None else 0.0)
    height = out.sizer.size(
        "box.dividers.height",
        [("box.dividers.height", keys.height)],
        min((top - floor) * 0.75, max(top - floor - over, LEAST_HIGH)),
        rule="three quarters of the room over the bottom, at most up to the trays"
        + (" and the stay of the lid" if stay is not None else ""),
        direction="down",
        least=LEAST_HIGH,
    )
    height = min(height, out.sizer.settled(top - floor, "down"))
    inside = Box((left.high[0], front.high[1], floor), (right.low[0], rear.low[1], floor + height))
    made: dict[int, list[Draft]] = {}
    for axis, count, ends in ((0, keys.across or 0, (front, rear)), (1, keys.along or 0, (left, right))):
        made[axis] = _row(out, axis, count, inside, stock, ends[0])
        for wall in made[axis]:
            for end in ends:
                make_joint(
                    out, "box.dividers.joint", keys.joint or SLID, "box.dividers.joint", "dado", end, wall
                )
    for one in made[0]:
        for two in made[1]:
            make_joint(out, "box.dividers.crossing", None, "box.dividers", "half_lap", one, two)
    bottom = out.drafts.get("box.bottom")
    for wall in made[0] + made[1]:
        if bottom is not None:
            _rests(out, bottom, wall, inside)
    return inside.high[2] if made[0] or made[1] else floor


def _row(out: SetOut, axis: int, count: int, inside: Box, stock: Stock, end: Draft) -> list[Draft]:
    """Walls square to an axis, evenly parted; their places on the part they end at lie on the step, from both ends."""
    t = stock.thickness
    clear = (inside.size(axis) - count * t) / (count + 1)
    if count and clear < LEAST_CELL:
        most = int((inside.size(axis) - LEAST_CELL) / (LEAST_CELL + t))
        out.find(
            "box.no-room",
            "the thin walls stand too close",
            "box.dividers",
            found=f"{count} in {out.about(inside.size(axis))}: {out.about(max(clear, 0.0))} between them",
            expected=f"at least {out.up(LEAST_CELL)}",
            source="common practice",
            remedy=f"have at most {max(most, 0)}, or a larger box",
        )
        return []
    made = []
    for i in range(count):
        k = min(i, count - 1 - i)
        near = out.sizer.settled(inside.low[axis] - end.low[axis] + clear * (k + 1) + t * k)
        at = end.low[axis] + near if 2 * i < count else end.high[axis] - near - t
        low, high = list(inside.low), list(inside.high)
        low[axis], high[axis] = at, at + t
        box = Box((low[0], low[1], low[2]), (high[0], high[1], high[2]))
        name = f"box.divider.{'across' if axis == 0 else 'along'}.{i + 1}"
        made.append(
            out.add(name, "divider", stock, box, (1 - axis, 2), show=((2, True),), path="box.dividers")
        )
    return made


def _rests(out: SetOut, bottom: Draft, wall: Draft, inside: Box) -> None:
    axis = wall.thickness_axis
    ranges = {
        axis: (wall.low[axis], wall.high[axis]),
        1 - axis: (inside.low[1 - axis], inside.high[1 - axis]),
    }
    out.joint(
        "planted",
        bottom,
        wall,
        [plane(2, inside.low[2], ranges, True, glued=False)],
        [unit(2, True)],
        "stands on it, dry",
        glued=False,
        place=wall.place,
    )
