"""A board with defects is first cut into clear pieces: crosscut or ripped beside each defect, as hands do it.

Which clear pieces are best is found exactly for the measure used: larger pieces are worth more than their area,
because longer and wider parts can be had from them.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from boardwright.stock.slicing import Box

LARGER = 1.2
"""Worth of a clear piece is its area to this power (own choice: two halves are worth 13 % less than the whole)."""
MANY = 6
"""Where a piece has more defects than this, it is only crosscut beside them."""


@dataclass(frozen=True, slots=True)
class Split:
    """A cut that parts a piece in two: of which piece, 0 crosscut or 1 rip, where the saw's cut begins."""

    piece: Box
    along: int
    position: int


@dataclass(frozen=True, slots=True)
class Clearing:
    """How a piece is cut clear: the cuts in order, and the clear pieces that are worth laying parts on."""

    splits: tuple[Split, ...] = ()
    pieces: tuple[Box, ...] = ()
    worth: float = 0.0


def clear_pieces(room: Box, defects: Sequence[Box], kerf: int, least: tuple[int, int]) -> Clearing:
    """Cut a piece clear of its defects.

    Args:
        room: the trimmed board (units).
        defects: rectangles on it (units).
        kerf: the saw's cut (units).
        least: length and width of the smallest part (units); a clear piece below that is worth nothing.

    Returns:
        The cuts and the clear pieces.
    """
    known: dict[Box, Clearing] = {}
    area = (room[2] - room[0]) * (room[3] - room[1])

    def best(box: Box) -> Clearing:
        found = known.get(box)
        if found is None:
            found = known[box] = _best(box)
        return found

    def _best(box: Box) -> Clearing:
        size = (box[2] - box[0], box[3] - box[1])
        if size[0] < least[0] or size[1] < least[1]:
            return Clearing()
        inside = [d for d in defects if overlap(d, box)]
        if not inside:
            return Clearing((), (box,), (size[0] * size[1] / area) ** LARGER)
        top = Clearing()
        for along, position in _places(box, inside, kerf):
            low, high = halves(box, along, position, kerf)
            one, two = best(low) if low else Clearing(), best(high) if high else Clearing()
            if one.worth + two.worth > top.worth + 1e-9:
                splits = (Split(box, along, position), *one.splits, *two.splits)
                top = Clearing(splits, one.pieces + two.pieces, one.worth + two.worth)
        return top

    return best(room)


def _places(box: Box, inside: Sequence[Box], kerf: int) -> list[tuple[int, int]]:
    """Cuts that just clear a defect: direction and where the saw's cut begins."""
    ways = (0,) if len(inside) > MANY else (0, 1)
    places: dict[tuple[int, int], None] = {}
    for along in ways:
        for d in sorted(inside):
            if d[along] > box[along]:
                places[along, d[along]] = None
            if d[along + 2] < box[along + 2]:
                places[along, max(d[along + 2] - kerf, box[along])] = None
    return list(places)


def halves(box: Box, along: int, position: int, kerf: int) -> tuple[Box | None, Box | None]:
    """What a cut leaves of a piece on either side; None where nothing is left."""
    low, high = list(box), list(box)
    low[along + 2] = min(position, box[along + 2])
    high[along] = max(position + kerf, box[along])
    first, second = ((h[0], h[1], h[2], h[3]) if h[along] < h[along + 2] else None for h in (low, high))
    return first, second


def overlap(a: Box, b: Box) -> bool:
    """Whether two rectangles share an area."""
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]
