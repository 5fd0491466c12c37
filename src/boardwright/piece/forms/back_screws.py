"""Screws that hold a back in its rabbets."""

from __future__ import annotations

from collections.abc import Sequence

from boardwright.piece.drafts import Draft
from boardwright.piece.joints.fastening import choose_screw, drive, no_screw, spot
from boardwright.piece.setout import SetOut


def back_screws(
    out: SetOut,
    panel: Draft,
    part: Draft,
    axis: int,
    lap: tuple[float, float],
    spots: Sequence[float],
    edge: float,
) -> tuple[str, ...]:
    """Screws through a back into the part it is let into.

    Args:
        out: the bench.
        panel: the back, or a board of it.
        part: the part with the rabbet.
        axis: across the rabbet.
        lap: from where to where the two lap on that axis [mm].
        spots: where the screws stand along the rabbet [mm].
        edge: from the line of the screws to the edge of the wood [mm].
    """
    chosen = choose_screw(out, None, None, edge, panel.size(1), part.size(1) - panel.size(1))
    if chosen is None:
        no_screw(out, panel, part, "case.back", panel.size(1), part.size(1) - panel.size(1), edge)
        return ()
    screw, length = chosen
    middle = sum(lap) / 2
    line = panel.low[axis] + out.sizer.settled(middle - panel.low[axis])
    low = max(part.low[axis], panel.low[axis]) + screw.shank
    high = min(part.high[axis], panel.high[axis]) - screw.shank
    if not low <= line <= high:
        line = middle
    if not low <= line <= high:
        no_screw(out, panel, part, "case.back", panel.size(1), part.size(1) - panel.size(1), edge)
        return ()
    along = 2 - axis
    return tuple(
        drive(
            out,
            panel,
            part,
            1,
            False,
            spot(1, panel.high[1], axis, line, along, at),
            screw,
            length,
            panel.size(1),
            path="case.back",
        )
        for at in spots
    )
