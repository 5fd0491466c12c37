"""Stub tongue: the end of a rail stands in the groove that the stile has for the panel anyway."""

from __future__ import annotations

from boardwright.piece.drafts import Channel, Draft, Step, meeting
from boardwright.piece.joints.faces import plane
from boardwright.piece.records import Contact
from boardwright.piece.setout import SetOut


def stub(
    out: SetOut, first: Draft, second: Draft, groove: tuple[float, float], depth: float, path: str
) -> None:
    """Let the second part into a groove that is already cut along the first.

    Args:
        out: the bench.
        first: the part with the groove.
        second: its end stands over the groove.
        groove: from where to where it lies on the axis of the second part's thickness [mm].
        depth: of the groove [mm].
        path: where the file asks for it.
    """
    meet = meeting(first, second)
    if meet is None:
        return
    across, along = second.thickness_axis, 3 - meet.axis - second.thickness_axis
    lo, hi = second.low[across], second.high[across]
    whole = (second.low[along], second.high[along])
    second.grow(meet.axis, not meet.high, depth)
    for high, amount in ((False, groove[0] - lo), (True, hi - groove[1])):
        if amount > 1e-6:
            second.shape_end(
                Step(across, high, meet.axis, not meet.high, depth, amount, holds=first.id, purpose="tongue")
            )
    face = first.face(meet.axis, meet.high)
    seat = face - depth if meet.high else face + depth
    lap = (min(face, seat), max(face, seat))
    run = _between_grooves(second, along, meet.axis)
    contacts: list[Contact] = [
        plane(across, groove[0], {meet.axis: lap, along: run}, True),
        plane(across, groove[1], {meet.axis: lap, along: run}, False),
        plane(meet.axis, seat, {across: groove, along: run}, meet.high),
    ]
    contacts += [
        plane(meet.axis, face, {across: side, along: whole}, meet.high, glued=False)
        for side in ((lo, groove[0]), (groove[1], hi))
        if side[1] - side[0] > 1e-6
    ]
    out.joint(
        "tongue",
        first,
        second,
        contacts,
        [meet.away],
        f"stub tongue {out.text(groove[1] - groove[0])} thick, {out.text(depth)} long, in the groove, glued",
        place=out.design.place(path),
    )


def _between_grooves(part: Draft, along: int, run: int) -> tuple[float, float]:
    """The width of a part less the grooves along its edges [mm]."""
    low, high = part.low[along], part.high[along]
    for cut in part.cuts:
        if isinstance(cut, Channel) and (cut.axis, cut.along) == (along, run):
            if cut.high:
                high = min(high, part.high[along] - cut.depth)
            else:
                low = max(low, part.low[along] + cut.depth)
    return low, high
