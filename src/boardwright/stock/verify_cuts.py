"""The check of the printed cuts: they are made one by one, and must leave the parts and the leftovers."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence

from boardwright.stock.instance import Instance
from boardwright.stock.slicing import Box
from boardwright.stock.solution import CutLine
from boardwright.stock.units import to_units


def cut_faults(
    instance: Instance, full: Box, parts: Sequence[Box], cuts: Sequence[CutLine], leftovers: Sequence[Box]
) -> Iterator[str]:
    """Faults of the cuts of one stock.

    Args:
        instance: the question, for kerf, stages and first cut.
        full: the untrimmed stock (units).
        parts: the parts (units).
        cuts: the cuts in order.
        leftovers: what is said to be left (units).

    Yields:
        One sentence a fault.
    """
    kerf = to_units(instance.kerf)
    pieces: dict[Box, int] = {full: 0}
    first_axes = {_axis_of_stage_one(c) for c in cuts if c.stage > 0 and not c.trimming}
    if len(first_axes) > 1:
        yield "the stages do not turn from rip to crosscut and back"
    if instance.first_cut != "any" and first_axes - {instance.first_cut}:
        yield f"the first cut is not a {instance.first_cut}"
    for number, cut in enumerate(cuts, 1):
        piece = (
            to_units(cut.piece.x0),
            to_units(cut.piece.y0),
            to_units(cut.piece.x1),
            to_units(cut.piece.y1),
        )
        if piece not in pieces:
            yield f"cut {number} is of a piece that is not there at that time"
            return
        fault = _stage_fault(instance, cut, piece, pieces[piece], parts)
        if fault:
            yield f"cut {number} {fault}"
        halves = _halves(piece, 0 if cut.axis == "crosscut" else 1, to_units(cut.position), kerf)
        if not halves or halves == [piece]:
            yield f"cut {number} misses its piece"
            return
        del pieces[piece]
        pieces.update(dict.fromkeys(halves, cut.stage))
    left = Counter(pieces.keys())
    left.subtract(Counter(parts))
    if any(n < 0 for n in left.values()):
        yield "the cuts do not leave every part"
    elif Counter({box: n for box, n in left.items() if n > 0}) != Counter(leftovers):
        yield "the cuts do not leave the leftovers that are listed"


def _axis_of_stage_one(cut: CutLine) -> str:
    other = "crosscut" if cut.axis == "rip" else "rip"
    return cut.axis if cut.stage % 2 == 1 else other


def _stage_fault(instance: Instance, cut: CutLine, piece: Box, made_in: int, parts: Sequence[Box]) -> str:
    if cut.stage < made_in:
        return "is of an earlier stage than its piece"
    if cut.stage == 0 and not cut.trimming:
        return "is of no stage and does not trim the stock"
    if cut.stage > 0 and cut.trimming:
        held = [
            p for p in parts if p[0] < piece[2] and p[2] > piece[0] and p[1] < piece[3] and p[3] > piece[1]
        ]
        return "is said to trim one part, but its piece holds more" if len(held) > 1 else ""
    if instance.stages is not None and cut.stage > instance.stages:
        return f"is of stage {cut.stage}; {instance.stages} are allowed"
    return ""


def _halves(piece: Box, along: int, position: int, kerf: int) -> list[Box]:
    low, high = list(piece), list(piece)
    low[along + 2] = min(position, piece[along + 2])
    high[along] = max(position + kerf, piece[along])
    halves = [half for half in (low, high) if half[along] < half[along + 2]]
    return [(h[0], h[1], h[2], h[3]) for h in halves]
