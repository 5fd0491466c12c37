"""Where the joints of a panel lie: strips put in an order that keeps them off grooves, holes and mortises."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice, permutations

from boardwright.piece.cuts import Groove, Hole, Mortise
from boardwright.piece.records import Part

MOST_ORDERS = 720
"""Orders of the strips that are tried."""
OFFSETS = (0.5, 0.0, 1.0, 0.25, 0.75)
"""Shares of what the panel is too wide that are trimmed off its first edge."""
FACES = ("face", "back")
ENDS = ("end", "far_end")


@dataclass(frozen=True, slots=True)
class Joints:
    """Strips of a panel in order.

    Attributes:
        widths: as they are cut, from the reference edge [mm].
        at: the joints, from the reference edge of the finished part [mm].
        clear: least distance from a joint to a line that it is kept off [mm]; below 0 when it lies on one; None when
            there are no lines.
    """

    widths: tuple[float, ...]
    at: tuple[float, ...]
    clear: float | None


def lines(part: Part) -> list[tuple[float, float]]:
    """What joints are kept off: from where to where across the part [mm]."""
    return sorted(_lines(part))


def _lines(part: Part) -> Iterator[tuple[float, float]]:
    for cut in part.cuts:
        if isinstance(cut, Groove) and cut.along == 0 and str(cut.side) in FACES:
            yield cut.at, cut.at + cut.width
        elif isinstance(cut, Hole) and str(cut.side) in (*FACES, *ENDS):
            across = cut.at[1] if str(cut.side) in FACES else cut.at[0]
            reach = (cut.diameter + (cut.slot if cut.slot_along == 1 else 0.0)) / 2
            yield across - reach, across + reach
        elif isinstance(cut, Mortise) and str(cut.side) in FACES:
            yield (cut.start, cut.end) if cut.along == 1 else (cut.at, cut.at + cut.width)


def joints(part: Part, width: float, widths: Sequence[float], joint: float, wanted: float) -> Joints:
    """An order of the strips whose joints keep off grooves, holes and mortises.

    Args:
        part: with its cuts.
        width: of the finished part [mm].
        widths: of its strips as they are cut [mm].
        joint: taken off each edge of a strip [mm].
        wanted: distance that is enough [mm].

    Returns:
        The first order that keeps the distance, else the one that comes nearest to it.
    """
    forbidden = lines(part)
    best: Joints | None = None
    for order in dict.fromkeys(islice(permutations(widths), MOST_ORDERS)):
        net = [w - 2 * joint for w in order]
        over = sum(net) - width
        for share in OFFSETS:
            at, edge = [], -over * share
            for w in net[:-1]:
                edge += w
                at.append(edge)
            clear = min((max(low - x, x - high) for x in at for low, high in forbidden), default=None)
            found = Joints(tuple(order), tuple(at), clear)
            if clear is None or clear >= wanted:
                return found
            if best is None or best.clear is None or clear > best.clear:
                best = found
    assert best is not None
    return best
