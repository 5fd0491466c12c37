"""What stands before a space: a door, a pair of doors, a fixed panel; what is inside starts behind it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from boardwright.core.poses import Box
from boardwright.design.schema import Drawer, Room, Tray
from boardwright.piece.forms.door import doors
from boardwright.piece.forms.door_way import way_out
from boardwright.piece.forms.face_frame import at_front
from boardwright.piece.forms.fillers import with_fillers
from boardwright.piece.forms.fixed_panel import fixed_panel
from boardwright.piece.forms.pulls import PROUD
from boardwright.piece.forms.region import Region
from boardwright.piece.setout import SetOut

SEEN = 2.4
"""A filler that does not reach the face frame stands at least so far behind it: a gap that is meant [mm]."""
FRONTS = ("door", "doors", "panel")


def front(out: SetOut, region: Region, room: Room) -> Region | None:
    """Put the front of a space in; gives the space behind it, or None, with a finding, when nothing gets out of it."""
    asked = [name for name in FRONTS if getattr(room, name) is not None]
    if len(asked) > 1:
        out.find(
            "space.two-contents",
            f"`{region.path}` has two fronts",
            region.path,
            found=" and ".join(asked),
            expected="one of " + ", ".join(FRONTS),
            remedy="part it into rows or columns first, and give each one front",
        )
        return region
    if not asked:
        return region
    path = f"{region.path}.{asked[0]}"
    sliding = _slides(room)
    if room.panel is not None:
        reach = fixed_panel(out, region, room.panel, path)
    else:
        keys = room.door or room.doors
        assert keys is not None
        opening = at_front(region)
        reach, ids = doors(out, opening, keys, path, sliding=sliding)
        if sliding:
            way = way_out(out, opening, ids, path, _bars(out, room))
            if way is None:
                return None
            reach += _proud(out, room)
            region = replace(region, way=way)
            if region.front is not None:
                region = with_fillers(out, _behind(out, region, reach + opening.box.low[1]))
        reach = out.sizer.settled(max(0.0, reach + opening.box.low[1] - region.box.low[1]), "up")
    low, high = region.box.low, region.box.high
    return replace(
        region,
        box=Box((low[0], low[1] + reach, low[2]), high),
        front=None,
        inner_depth=out.sizer.settled(region.inner_depth - reach, "down"),
        behind=True,
    )


def _behind(out: SetOut, region: Region, y: float) -> Region:
    """A space whose fillers start behind the doors before it, which reach back to `y` [mm]."""
    low, high = region.box.low, region.box.high
    back = max(y - low[1], 0.0)
    back = out.sizer.settled(max(back, SEEN), "up") if back > 1e-6 else 0.0
    return replace(region, box=Box((low[0], low[1] + back, low[2]), high))


def _proud(out: SetOut, room: Room) -> float:
    """How far pulls stand out of the fronts behind a door [mm]."""
    drawers = [*_drawers(room), out.design.file.drawers]
    pulled = any(d.pull is not None and d.pull.kind != "none" for d in drawers if d is not None)
    return PROUD if pulled else 0.0


def _bars(out: SetOut, room: Room) -> bool:
    """True when full-extension bars run in a space."""
    given = [d.runs_on for d in (*_drawers(room), out.design.file.drawers) if d is not None]
    return "full_extension_bars" in given


def _drawers(room: Room) -> Iterator[Drawer | Tray]:
    """What the file says of the drawers and trays in a space."""
    own: tuple[Drawer | Tray | None, ...] = (
        room.drawer,
        room.drawers.drawer if room.drawers else None,
        room.tray,
        room.trays.tray if room.trays else None,
    )
    yield from (d for d in own if d is not None)
    for inner in (*(room.rows or ()), *(room.columns or ())):
        yield from _drawers(inner)


def _slides(room: Room) -> bool:
    """True when drawers or trays run in a space."""
    own = room.drawer or room.drawers or room.tray or room.trays
    return own is not None or any(_slides(r) for r in (*(room.rows or ()), *(room.columns or ())))


def slides_only(room: Room) -> bool:
    """True when fillers serve all of a space: drawers or trays fill it, or run on rails that stand between them."""
    if room.rows is not None:
        return room.between in ("rail", "web_frame") or all(slides_only(r) for r in room.rows)
    return (room.drawer or room.drawers or room.tray or room.trays) is not None
