"""Doors in front of a space: one or a pair, inside the opening or over the case."""

from __future__ import annotations

import math

from boardwright.core.poses import Box, Vec
from boardwright.design.schema import Door, DoorPair
from boardwright.piece.cuts import Bevel
from boardwright.piece.drafts import Bore
from boardwright.piece.forms.door_battens import door_battens
from boardwright.piece.forms.door_edges import Edges, edges
from boardwright.piece.forms.door_hinges import Leaf, hinge_pin
from boardwright.piece.forms.door_strip import strip
from boardwright.piece.forms.drawer import swelling
from boardwright.piece.forms.frame import Names, frame
from boardwright.piece.forms.frame_lay import DOOR
from boardwright.piece.forms.region import Region
from boardwright.piece.forms.slab import slab
from boardwright.piece.records import Hardware, Motion, Stock
from boardwright.piece.setout import SetOut

LEAST_DOOR = 60.0
"""Least width and height of a door [mm]."""
LEAF_IN = 3.0
"""How deep leaves of hinges are let into the front edges of a case at most [mm]: 1/8 in, common practice."""
LEAST_CAUGHT = 100.0
"""A narrower door has no room for a catch at its edge [mm]."""
SWING = 0.3
"""Least room of a door's edge past what it swings by [mm]: common practice."""
KNOB_ROOM = 3.0
"""Room between a knob and the strip beside it [mm]: 1/8 in, common practice."""
STEEPEST = 6.0
"""A leading edge is bevelled by at most this [degrees]: common practice."""


def doors(
    out: SetOut, region: Region, keys: Door | DoorPair, path: str, sliding: bool
) -> tuple[float, list[str]]:
    """Put one door or a pair before a space; gives how far they reach into it from its front [mm], and their ids.

    Args:
        out: the bench.
        region: the space.
        keys: what the file says.
        path: where it stands.
        sliding: something is pulled out past the open doors.
    """
    stock = out.stock((f"{path}.stock", keys.stock), ("case.stock", _case_stock(out)))
    lap = out.sizer.choose(
        f"{path}.set", keys.set, "inset", "doors stand inside their openings", f"{path}.set"
    )
    framed = _framed(out, keys, path)
    used = [int(d.group[5:]) for d in out.drafts.values() if d.group.startswith("door.")]
    numbers = [max(used, default=0) + 1 + i for i in range(1 + isinstance(keys, DoorPair))]
    swells = _swell(out, keys, path, stock, len(numbers)) if framed else None
    around = edges(out, region, keys, path, lap, stock, swells)
    leaves = []
    for number, box in zip(numbers, _boxes(out, region, around, keys, path, stock, lap), strict=False):
        left = (number == numbers[0]) if len(numbers) == 2 else getattr(keys, "hinged", None) != "right"
        leaf = _leaf(out, region, keys, path, f"door.{number}", left, box, stock, framed)
        if leaf is not None:
            leaves.append(leaf)
    if len(leaves) < len(numbers):
        return (_behind(out, stock.thickness) if lap == "inset" else 0.0), []
    kinds = [_hang(out, region, around, keys, path, leaf, lap, sliding) for leaf in leaves]
    over = 0.0
    if isinstance(keys, DoorPair):
        over = strip(out, keys, path, leaves[0].lock, leaves[1].lock, leaves[0].box, leaves[1].box, stock)
    for leaf in leaves:
        _knob(out, keys, path, leaf, over)
    back = max(p.high[1] for leaf in leaves for p in leaf.parts)
    reach = 0.0 if back <= region.box.low[1] + 1e-6 else _behind(out, back - region.box.low[1])
    if lap != "inset" and "cup" not in kinds:
        reach = max(reach, out.tables.figure("door_behind").value + LEAF_IN)
    return reach, [leaf.id for leaf in leaves]


def _behind(out: SetOut, deep: float) -> float:
    """Where things may stand behind a door so deep [mm]."""
    return deep + out.sizer.settled(out.tables.figure("door_behind").value, "up")


def _case_stock(out: SetOut) -> str | None:
    return out.design.file.case.stock if out.design.file.case else None


def _framed(out: SetOut, keys: Door | DoorPair, path: str) -> bool:
    usual = "frame" if keys.frame is not None else "slab"
    return (
        out.sizer.choose(f"{path}.made", keys.made, usual, "a frame when one is described", f"{path}.made")
        == "frame"
    )


def _swell(out: SetOut, keys: Door | DoorPair, path: str, stock: Stock, count: int) -> float:
    """How much wider framed doors get together: by the width of their stiles [mm]."""
    frame_keys = keys.frame
    given = out.sizer.given(
        [(f"{path}.frame.stile_width", frame_keys.stile_width if frame_keys is not None else None)]
    )
    width = given[1] if given is not None else out.tables.figure("door_stile_width").value
    return 2 * width * count * swelling(out, stock)


def _boxes(
    out: SetOut, region: Region, around: Edges, keys: Door | DoorPair, path: str, stock: Stock, lap: str
) -> list[Box]:
    """The outside of each door [mm]; none, with a finding, when there is no room."""
    settled, t = out.sizer.settled, stock.thickness
    front = region.box.low[1]
    bumper = settled(out.tables.figure("door_bumper").value, "up")
    y = (front, front + t) if lap == "inset" else (front - bumper - t, front - bumper)
    height = settled(around.high - around.low, "down")
    whole = around.right - around.left
    pair = isinstance(keys, DoorPair)
    width = settled((whole - around.meeting) / 2 if pair else whole, "down")
    if width < LEAST_DOOR or height < LEAST_DOOR:
        short = ((LEAST_DOOR - width) * (2 if pair else 1), LEAST_DOOR - height)
        more = [
            f"{out.up(s + out.sizer.step)} {w}"
            for s, w in zip(short, ("wider", "higher"), strict=True)
            if s > 0
        ]
        out.find(
            "door.no-room",
            f"there is no room for a door in `{region.path}`",
            path,
            found=f"{out.about(width)} wide, {out.about(height)} high",
            expected=f"at least {out.up(LEAST_DOOR)} each way",
            remedy=f"make the opening {' and '.join(more)}",
        )
        return []
    out.sizer.explain(f"{path}.width", width, f"opening {out.text(region.box.size(0))}, {around.words}")
    out.sizer.explain(f"{path}.height", height, f"opening {out.text(region.box.size(2))}, {around.words}")
    z = (around.low, around.low + height)
    if not pair:
        x = around.left + (whole - width) / 2
        return [Box((x, y[0], z[0]), (x + width, y[1], z[1]))]
    return [
        Box((around.left, y[0], z[0]), (around.left + width, y[1], z[1])),
        Box((around.right - width, y[0], z[0]), (around.right, y[1], z[1])),
    ]


def _leaf(
    out: SetOut,
    region: Region,
    keys: Door | DoorPair,
    path: str,
    id: str,
    left: bool,
    box: Box,
    stock: Stock,
    framed: bool,
) -> Leaf | None:
    """The parts of one door."""
    name = id.replace(".", " ")
    if framed:
        own = out.stock(
            (f"{path}.frame.stock", keys.frame.stock if keys.frame else None), (f"{path}.stock", stock.id)
        )
        made = frame(
            out,
            id,
            box,
            DOOR,
            keys.frame,
            f"{path}.frame" if keys.frame else path,
            stock=own,
            group=id,
            names=Names(),
        )
        if made is None:
            return None
        one, two = made.stiles if left else made.stiles[::-1]
        parts = [d for d in out.drafts.values() if d.group == id]
        return Leaf(id, name, left, box, parts, one, two, (made.rails[0].high[2], made.rails[1].low[2]))
    board = slab(out, f"{id}.slab", "door", box, DOOR, stock, id, path)
    parts = [board, *door_battens(out, region, keys, path, board, box, stock)]
    return Leaf(id, name, left, box, parts, board, board, None)


def _hang(
    out: SetOut,
    region: Region,
    around: Edges,
    keys: Door | DoorPair,
    path: str,
    leaf: Leaf,
    lap: str,
    sliding: bool,
) -> str:
    """Hinges and motion of one door; gives the kind of its hinges."""
    kind = out.sizer.choose(
        f"{leaf.id}.hinges.kind",
        keys.hinges.kind if keys.hinges else None,
        "butt" if lap == "inset" else "cup",
        "butt hinges for inset doors, cup hinges for overlay doors",
        f"{path}.hinges.kind",
    )
    pivot = hinge_pin(out, region, keys, path, leaf, lap, kind)
    opens = keys.opens or 90.0
    if lap == "inset":
        _leading_edge(out, path, leaf, pivot, around)
    out.motions.append(
        Motion(
            leaf.id,
            "door",
            leaf.name,
            (0.0, 0.0, -1.0) if leaf.left else (0.0, 0.0, 1.0),
            0.0,
            f"{kind} hinges",
            region.box,
            0.0,
            0.0,
            0.0,
            out.design.place(path),
            opens,
            pivot,
        )
    )
    _catch(out, region, keys, path, leaf, kind, sliding)
    return kind


def _leading_edge(out: SetOut, path: str, leaf: Leaf, pivot: Vec, around: Edges) -> None:
    """Bevel the edge that opens, when its back would not pass what it shuts against; not where the door jams."""
    box, gap = leaf.box, around.free
    if gap <= 0:
        return
    across = abs((box.high[0] if leaf.left else box.low[0]) - pivot[0])
    deep = box.high[1] - pivot[1]
    if math.hypot(across, deep) <= across + gap - SWING:
        return
    figure = out.tables.figure("door_leading_bevel")
    needed = across - math.sqrt(max((across + gap - SWING) ** 2 - deep**2, 0.0))
    angle = max(figure.value, math.degrees(math.atan2(needed, box.size(1))))
    angle = math.ceil(angle * 2 - 1e-9) / 2
    if angle > STEEPEST:
        out.find(
            "door.edge-binds",
            f"the edge of {leaf.name} does not pass what it shuts against",
            path,
            found=f"a door {out.about(box.size(0))} wide and {out.about(box.size(1))} thick, a gap of {out.about(gap)}",
            expected=f"a gap of {out.up(math.hypot(across, deep) - across + SWING)}, or a bevel of at most "
            f"{STEEPEST:g} degrees",
            remedy="make the door thinner or wider, or give it a larger `gap`",
        )
        return
    out.sizer.choose(
        f"{leaf.id}.leading_edge",
        None,
        f"bevelled {angle:g} degrees",
        "the back of the edge must pass as the door opens",
        source=figure.reason,
    )
    slope = math.tan(math.radians(angle))
    high = leaf.left
    edge, y0 = leaf.lock.face(0, high), leaf.lock.low[1]
    sign = -1.0 if high else 1.0
    side = leaf.lock.side(0, high)
    over = [0.0, 0.0, 0.0]
    over[leaf.lock.index(1)] = sign * slope
    u, v = (over[i] for i in range(3) if i != side.axis)
    leaf.lock.cuts.append(Bevel(side, edge - sign * slope * y0, u, v))


def _knob(out: SetOut, keys: Door | DoorPair, path: str, leaf: Leaf, over: float) -> None:
    """A hole through the lock stile, and the knob; `over` is what a strip covers of the stile [mm]."""
    knob, tables = keys.knob, out.tables
    up = out.sizer.size(
        f"{leaf.id}.knob.up",
        [(f"{path}.knob.up", knob.up if knob else None)],
        leaf.box.size(2) / 2,
        rule="half-way up the door",
    )
    hole = out.sizer.size(
        f"{leaf.id}.knob.hole",
        [(f"{path}.knob.hole", knob.hole if knob else None)],
        tables.figure("knob_hole").value,
        rule="hole for the screw of a knob",
        source=tables.figure("knob_hole").reason,
        settle_it=False,
    )
    lock, box = leaf.lock, leaf.box
    stile = (
        lock.size(0)
        if lock is not leaf.hinge
        else min(tables.figure("door_stile_width").value, box.size(0) / 3)
    )
    r = tables.figure("knob_diameter").value / 2
    in_from = out.sizer.settled(max(stile / 2, over + r + KNOB_ROOM if over else 0.0))
    x = box.high[0] - in_from if leaf.left else box.low[0] + in_from
    z = box.low[2] + min(up, box.size(2) - in_from)
    lock.cuts.append(
        Bore(1, False, (x, lock.low[1], z), hole, lock.size(1), True, purpose="hardware", for_="knob")
    )
    room = Box((x - r, box.low[1] - 25.4, z - r), (x + r, box.low[1], z + r))
    out.hardware.append(Hardware(f"{leaf.id}.knob", "knob", "", room, leaf.id, place=out.design.place(path)))


def _catch(
    out: SetOut, region: Region, keys: Door | DoorPair, path: str, leaf: Leaf, kind: str, sliding: bool
) -> None:
    """A magnetic catch under the ceiling of the space, behind the edge that opens."""
    usual = "none" if kind == "cup" or sliding else "magnetic"
    rule = "cup hinges hold a door shut, others do not"
    if sliding:
        rule = "drawers or trays pass where it would stand"
    how = out.sizer.choose(f"{leaf.id}.catch", keys.catch, usual, rule, f"{path}.catch")
    top = region.walls.ceiling
    if how == "none" or top is None or leaf.box.size(0) < LEAST_CAUGHT:
        return
    near = leaf.box.high[0] - 70.0 if leaf.left else leaf.box.low[0] + 22.0
    y = max(leaf.box.high[1], region.box.low[1])
    ceiling = min(top.low[2], region.box.high[2])
    box = Box((near, y + 1.0, ceiling - 14.0), (near + 48.0, y + 15.0, ceiling))
    out.hardware.append(
        Hardware(f"{leaf.id}.catch", "magnetic catch", "", box, "case", place=out.design.place(path))
    )
