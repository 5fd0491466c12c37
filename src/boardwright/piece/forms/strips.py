"""Long strips screwed to a wall: bars, runners, guides, kickers."""

from __future__ import annotations

from collections.abc import Iterable

from boardwright.piece.drafts import Draft, meeting
from boardwright.piece.joints.faces import plane
from boardwright.piece.joints.fastening import choose_screw, drive, no_screw, spot
from boardwright.piece.setout import SetOut

SLOT = 6.0
"""Least length of a slot that lets a wall move behind a strip, centre to centre [mm]: common practice, 1/4 in."""


STAGGER = 20.0
"""Screws from the two faces of a divider stand this far apart along it [mm]: 3/4 in, common practice."""


def _beside(wall: Draft, strip: Draft) -> float:
    """How much of a strip's height lies on the face of a wall [mm]; tongues and fingers are no face."""
    stands = wall.seen()
    return max(0.0, min(stands.high[2], strip.high[2]) - max(stands.low[2], strip.low[2]))


def _rate(wall: Draft, axis: int) -> float:
    """Change per 1 % of moisture of a wall along an axis of the piece [1/%]."""
    return wall.stock.rates[wall.index(axis)]


def slot_for(out: SetOut, wall: Draft, axis: int, away: float) -> float:
    """Length of a slot for a screw so far from the one that is fast [mm]: what a wall moves there, to either side."""
    m = out.moisture
    moves = 2 * _rate(wall, axis) * max(m.now - m.driest, m.wettest - m.now)
    return out.sizer.settled(max(SLOT, moves * away), "up")


def shrinking(out: SetOut, walls: Iterable[Draft | None], run: float) -> float:
    """How much shorter a run along the depth gets beside solid walls by the driest time [mm]."""
    rates = [_rate(w, 1) for w in walls if w is not None and w.stock.kind == "wood" and w.index(1) == 1]
    return run * max(rates, default=0.0) * max(out.moisture.now - out.moisture.driest, 0.0)


def fix_strip(out: SetOut, wall: Draft | None, strip: Draft, path: str, *, at_left: bool) -> None:
    """Screw a strip to a wall at its side or behind it.

    Where the wall is solid wood with its grain across the strip, only the first screw is fixed and the others stand
    in slots, so that the wall can move.

    Args:
        out: the bench.
        wall: the wall, or None (then nothing is done).
        strip: already on the bench against the wall.
        path: where the file asks for it.
        at_left: True when the wall is at its left; in a divider, which may carry strips on both faces, the screws
            from its left face stand `STAGGER` further along, so that two never meet.
    """
    if wall is None:
        return
    meet = meeting(wall, strip)
    beside = _beside(wall, strip) if meet else 0.0
    if meet is None or beside < strip.size(2) / 2:
        out.find(
            "drawer.strip-loose",
            f"the {strip.name} of the drawer in `{path}` has no wood beside it to be screwed to",
            path,
            found=f"{out.about(beside)} of the {wall.name} at its height",
            expected=f"at least half of its {out.about(strip.size(2))}",
            source="common practice",
            remedy="use a full top and bottom in the case, shelves instead of rails, "
            "or run the drawer on bars or slides",
            parts=(wall.id, strip.id),
        )
        return
    axis = meet.axis
    along = 1 - axis
    thickness = strip.size(axis)
    settled = out.sizer.settled
    up = settled(meet.box.size(2) / 2)
    to_edge = min(up, meet.box.size(2) - up)
    chosen = choose_screw(out, None, None, to_edge, thickness, wall.size(axis))
    if chosen is None:
        no_screw(out, strip, wall, path, thickness, wall.size(axis), to_edge)
        return
    screw, length = chosen
    crosses = wall.stock.kind == "wood" and wall.length_axis != strip.length_axis
    low, high = meet.box.low[along], meet.box.high[along]
    run = high - low
    edge = min(settled(max(12 * screw.shank, 40.0)), settled(run / 4))
    count = 2 if run < 450 else 3
    stagger = settled(STAGGER)
    shifted = not at_left and not wall.id.startswith(("case.side", "box."))
    pitch = (run - 2 * edge - stagger) / (count - 1)
    head = strip.face(axis, meet.high)
    middle = meet.box.low[2] + up
    ids = []
    for i in range(count):
        at = low + settled(edge + (stagger if shifted else 0.0) + i * pitch)
        ids.append(
            drive(
                out,
                strip,
                wall,
                axis,
                not meet.high,
                spot(axis, head, 2, middle, along, at),
                screw,
                length,
                thickness,
                slot=slot_for(out, wall, along, i * pitch) if crosses and i else 0.0,
                slot_axis=along,
                path=path,
            )
        )
    others = [i for i in range(3) if i != axis]
    out.joint(
        "screwed",
        wall,
        strip,
        [
            plane(
                axis,
                wall.face(axis, meet.high),
                {i: (meet.box.low[i], meet.box.high[i]) for i in others},
                meet.high,
                glued=False,
            )
        ],
        [meet.away],
        f"{count} screws, {'the first fixed, the others in slots; no glue' if crosses else 'no glue'}",
        glued=False,
        floats=(along,) if crosses else (),
        fasteners=tuple(ids),
        place=out.design.place(path),
    )
