"""A strip over the gap between two doors: on the front of one, which then opens first."""

from __future__ import annotations

from boardwright.core.poses import Box
from boardwright.design.schema import DoorPair, JointKeys
from boardwright.piece.drafts import Draft
from boardwright.piece.joints.faces import plane
from boardwright.piece.joints.make import make_joint
from boardwright.piece.records import Stock
from boardwright.piece.setout import SetOut

GLUED = JointKeys(kind="butt", fasten="none", glue=True)
OVERLAP = "overlap"
"""Kind of the joint where one door lies over another, which opens after it."""


def strip(
    out: SetOut, keys: DoorPair, path: str, left: Draft, right: Draft, one: Box, two: Box, stock: Stock
) -> float:
    """Glue a strip to the front of one door, over the edge of the other; gives how far it covers a door [mm]."""
    on = out.sizer.choose(f"{path}.strip", keys.strip, "none", "the gap stays open", f"{path}.strip")
    if on == "none":
        return 0.0
    wide, thick = out.tables.figure("door_strip_width"), out.tables.figure("door_strip_thickness")
    width = out.sizer.size(
        f"{path}.strip_width",
        [(f"{path}.strip_width", keys.strip_width)],
        wide.value,
        rule="usual strip",
        source=wide.reason,
        least=12.0,
    )
    depth = min(out.sizer.settled(thick.value), stock.thickness)
    out.sizer.explain(f"{path}.strip_thickness", depth, "", "usual strip", thick.reason)
    carrier, other = (left, right) if on == "left" else (right, left)
    lap = out.sizer.settled((width - (two.low[0] - one.high[0])) / 2)
    x0 = one.high[0] - lap
    y = one.low[1]
    part = out.add(
        f"{carrier.group}.strip",
        "door strip",
        stock,
        Box((x0, y - depth, one.low[2]), (x0 + width, y, one.high[2])),
        (2, 0),
        group=carrier.group,
        show=((1, False), (0, False), (0, True)),
        path=path,
    )
    make_joint(out, f"{path}.strip", GLUED, path, "butt", carrier, part)
    low, high = max(part.low[0], other.low[0]), min(part.high[0], other.high[0])
    out.joint(
        OVERLAP,
        other,
        part,
        [plane(1, y, {0: (low, high), 2: (one.low[2], one.high[2])}, False, glued=False)],
        [(0.0, -1.0, 0.0)],
        "lies over the other door, which opens after it",
        glued=False,
        place=part.place,
    )
    return max(one.high[0] - x0, x0 + width - two.low[0])
