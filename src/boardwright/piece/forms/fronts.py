"""What stands before a space: a door, a pair of doors, a fixed panel; what is inside starts behind it."""

from __future__ import annotations

from dataclasses import replace

from boardwright.core.poses import Box
from boardwright.design.schema import Room
from boardwright.piece.forms.door import doors
from boardwright.piece.forms.face_frame import at_front, with_fillers
from boardwright.piece.forms.fixed_panel import fixed_panel
from boardwright.piece.forms.region import Region
from boardwright.piece.setout import SetOut

FRONTS = ("door", "doors", "panel")


def front(out: SetOut, region: Region, room: Room) -> Region:
    """Put the front of a space in; gives the space behind it."""
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
    if room.panel is not None:
        reach = fixed_panel(out, region, room.panel, path)
    else:
        keys = room.door or room.doors
        assert keys is not None
        opening, sliding = at_front(region), _slides(room)
        reach = doors(out, opening, keys, path, sliding=sliding)
        if sliding:
            region = with_fillers(out, region)
        reach = out.sizer.settled(max(0.0, reach + opening.box.low[1] - region.box.low[1]), "up")
    low, high = region.box.low, region.box.high
    return replace(
        region,
        box=Box((low[0], low[1] + reach, low[2]), high),
        front=None,
        inner_depth=out.sizer.settled(region.inner_depth - reach, "down"),
    )


def _slides(room: Room) -> bool:
    """True when drawers or trays run in a space."""
    own = room.drawer or room.drawers or room.tray or room.trays
    return own is not None or any(_slides(r) for r in (*(room.rows or ()), *(room.columns or ())))
