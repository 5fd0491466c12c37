"""The room right under a lid, for trays that are lifted out of it: less its rail, its stay, and what hangs under it."""

from __future__ import annotations

from dataclasses import replace

from boardwright.core.poses import Box
from boardwright.design.schema import Room
from boardwright.piece.forms.region import Region
from boardwright.piece.forms.trays import tray_layers
from boardwright.piece.setout import SetOut

CLEAR = 3.0
"""Between a tray and what hangs under a lid, or a stay [mm]: 1/8 in, common practice."""

STAY = "lid.1.stay"
"""Name of the stay of a lid."""
IN_BOX = {
    "divider": ("box.dividers", "thin walls stand"),
    "ledger": ("box.trays", "ledgers of the trays stand"),
    "box bottom": ("box.bottom", "bottom lies"),
}
"""What may stand in its way in a box: the path and the words of a finding."""


def lifts_out(out: SetOut, room: Room, path: str) -> bool:
    """Whether the trays of a room are lifted out.

    Args:
        out: the bench.
        room: the space, which holds a tray or trays.
        path: its path in the file.
    """
    if room.trays is not None:
        layers = tray_layers(out, f"{path}.trays.tray", room.trays.tray)
    else:
        layers = tray_layers(out, f"{path}.tray", room.tray)
    lifted, way = layers.values("lift_out"), layers.values("slides.way")
    return bool(lifted and lifted[0][1]) and not (way and way[0][1] == "sideways")


def well(out: SetOut, region: Region) -> Region:
    """The room of trays under a lid: up out of it, before the rail that takes the hinges, beside the stay."""
    settled = out.sizer.settled
    box, rail = region.box, out.drafts.get("case.lid.rail")
    rear = min(box.high[1], rail.low[1]) if rail is not None else box.high[1]
    hung = [
        d.low[2]
        for d in out.drafts.values()
        if d.group == "lid.1" and d.low[2] < box.high[2] - 1e-6 and d.high[1] > box.low[1]
    ]
    top = min([box.high[2], *(z - settled(CLEAR, "up") for z in hung)])
    walls = replace(region.walls, front=out.drafts.get(f"{region.name}.panel"), back=rail)
    return replace(
        region,
        box=Box(box.low, (box.high[0], rear, top)),
        walls=walls,
        fit=(region.fit[0], min(region.fit[1], top - box.low[2])),
        beside=beside_stay(out, Box(box.low, (box.high[0], rear, top))),
    )


def beside_stay(out: SetOut, box: Box) -> float:
    """Room that the stay of a lid takes beside trays in a room under it [mm]."""
    stay = stay_of(out)
    if stay is None or stay.low[1] >= box.high[1] or stay.high[1] <= box.low[1]:
        return 0.0
    return out.sizer.settled(max(stay.high[0] - box.low[0], 0.0) + CLEAR, "up")


def stay_of(out: SetOut) -> Box | None:
    """The room of the stay of a lid; None without one."""
    return next((h.box for h in out.hardware if h.id == STAY), None)


def clear_stay(out: SetOut, floor: float) -> None:
    """A finding when thin walls or ledgers in a box stand where the stay of its lid is; the stay is left out then.

    Args:
        out: the bench.
        floor: height of the bottom's upper side [mm].
    """
    stay = stay_of(out)
    if stay is None:
        return
    for part in out.drafts.values():
        shared = part.box.overlap(stay) if part.name in IN_BOX else None
        if shared is None or min(shared.size(i) for i in range(3)) <= 1e-6:
            continue
        most = stay.low[2] - floor
        path, what = IN_BOX[part.name]
        lower = f"make them {out.down(most)} high or less, or " if part.name == "divider" and most > 0 else ""
        out.find(
            "box.no-room",
            f"the {what} where the stay of the lid is",
            path,
            found=f"up to {out.about(part.high[2] - floor)} over the bottom, the stay {out.about(most)}",
            expected="room for the stay inside the left side",
            source="common practice",
            remedy=f"{lower}leave out `stay`",
            parts=(part.id,),
        )
        out.hardware[:] = [h for h in out.hardware if h.id != STAY]
        return
