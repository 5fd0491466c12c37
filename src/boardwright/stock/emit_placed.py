"""From places on a stock to parts, cuts in order, and leftovers."""

from __future__ import annotations

from boardwright.stock.emit import Saw, rectangle, trimmed
from boardwright.stock.instance import Instance
from boardwright.stock.placed import PlacedStock, PlacedStrip, Spot
from boardwright.stock.slicing import Box
from boardwright.stock.solution import Bin, Placed
from boardwright.stock.units import to_mm, to_units


def emit_placed(instance: Instance, what: PlacedStock, copies: list[int]) -> Bin:
    """A stock as it will be cut.

    Args:
        instance: the question.
        what: sections, strips and places.
        copies: copies of each item that were given out before; counted on.

    Returns:
        The stock with parts, cuts (stage by stage) and leftovers.
    """
    size = instance.stocks[what.stock]
    along = 1 if what.first == "rip" else 0
    kerf = to_units(instance.kerf)
    saw = Saw(instance, along, kerf)
    full = (0, 0, to_units(size.length), to_units(size.width))
    piece = trimmed(saw, full, (to_units(size.trim_length), to_units(size.trim_width)))
    start = piece[:2]
    for section in what.sections:
        own, piece = _part(saw, piece, along, start[along] + section.end, 1)
        for strip in section.strips:
            row, own = _part(saw, own, 1 - along, start[1 - along] + strip.top, 2)
            _strip(saw, row, strip, start, instance.stages == 2)
        saw.keep(own)
    saw.keep(piece)
    spots = [s for section in what.sections for strip in section.strips for s in strip.spots]
    placed = []
    for spot in spots:
        copies[spot.item] += 1
        x, y = _corner(spot, start, along)
        length, width = saw.size(spot)
        name = instance.items[spot.item].id
        at = (to_mm(x), to_mm(y), to_mm(length), to_mm(width))
        placed.append(Placed(name, copies[spot.item], *at, spot.turned))
    cuts = sorted(saw.cuts, key=lambda c: c.stage)
    left = sorted(saw.leftovers, key=lambda r: (-(r[2] - r[0]) * (r[3] - r[1]), r))
    return Bin(size.id, tuple(placed), tuple(cuts), tuple(rectangle(r) for r in left))


def _corner(spot: Spot, start: tuple[int, ...], along: int) -> tuple[int, int]:
    at = (spot.at_a, spot.at_b) if along == 0 else (spot.at_b, spot.at_a)
    return start[0] + at[0], start[1] + at[1]


def _part(saw: Saw, piece: Box, along: int, end: int, stage: int, trimming: bool = False) -> tuple[Box, Box]:
    """Cut a piece so that its lower half, with the kerf on it, ends at `end`: both halves."""
    if end - saw.kerf >= piece[along + 2]:
        return piece, (0, 0, 0, 0)
    own = list(piece)
    own[along + 2] = end - saw.kerf
    rest = saw.cut(piece, along, end - saw.kerf, stage, trimming)
    return (own[0], own[1], own[2], own[3]), rest


def _strip(saw: Saw, row: Box, strip: PlacedStrip, start: tuple[int, ...], trims: bool) -> None:
    """Cut a strip into its parts and free them; in two stages the one part is trimmed out of it."""
    along = saw.first
    for spot in strip.spots:
        at = _corner(spot, start, along)
        size = (spot.a, spot.b) if along == 0 else (spot.b, spot.a)
        if at[along] > row[along]:
            waste, row = _part(saw, row, along, at[along], 3, trims)
            saw.keep(waste)
        own, row = _part(saw, row, along, at[along] + size[along], 3, trims)
        other = 1 - along
        if at[other] > own[other]:
            waste, own = _part(saw, own, other, at[other], 4, True)
            saw.keep(waste)
        _, rest = _part(saw, own, other, at[other] + size[other], 4, True)
        saw.keep(rest)
    saw.keep(row)
