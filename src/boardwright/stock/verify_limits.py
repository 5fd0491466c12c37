"""The check of what is asked beyond parts and stages: defects, limits of the cuts, sequences, order of stocks."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import inf

from boardwright.stock.instance import Instance, Rectangle, StockSize
from boardwright.stock.slicing import Box
from boardwright.stock.solution import Bin, CutLine, Placed
from boardwright.stock.units import to_units


def box_of(r: Rectangle) -> Box:
    """A rectangle in whole units."""
    return to_units(r.x0), to_units(r.y0), to_units(r.x1), to_units(r.y1)


def part_box(p: Placed) -> Box:
    """The place of a part in whole units."""
    x, y = to_units(p.x), to_units(p.y)
    return x, y, x + to_units(p.length), y + to_units(p.width)


def meet(p: Box, q: Box) -> bool:
    """Whether two boxes, or a box and a line, have inner points in common."""
    return p[0] < q[2] and q[0] < p[2] and p[1] < q[3] and q[1] < p[3]


def limit_faults(instance: Instance, stock: StockSize, cut_from: Bin) -> Iterator[str]:
    """Faults of one stock.

    Args:
        instance: the question.
        stock: what is cut.
        cut_from: the layout on it.

    Yields:
        One sentence a fault.
    """
    defects = [box_of(d) for d in stock.defects]
    for part in cut_from.placed:
        if any(meet(part_box(part), d) for d in defects):
            yield f"{part.item_id} copy {part.copy} lies on a defect"
    limits, kerf = instance.limits, to_units(instance.kerf)
    for number, cut in enumerate(cut_from.cuts, 1):
        along, low, line = _slit(cut, kerf)
        if cut.stage > 0 and not limits.through_defects and any(meet(line, d) for d in defects):
            yield f"cut {number} goes through a defect"
        if cut.trimming or cut.stage not in (1, 2):
            continue
        extent = low[along + 2] - low[along]
        least = limits.least_section if cut.stage == 1 else limits.least_strip
        if extent < to_units(least):
            yield f"cut {number} is nearer than {least:g} mm to the one before"
        if cut.stage == 1 and limits.most_section < inf and extent > to_units(limits.most_section):
            yield f"cut {number} is more than {limits.most_section:g} mm from the one before"
    if limits.most_section < inf:
        yield from _last_section(instance, stock, cut_from)
    thinnest = to_units(limits.least_waste)
    for r in map(box_of, cut_from.leftovers):
        if min(r[2] - r[0], r[3] - r[1]) < thinnest:
            yield f"a leftover is thinner than {limits.least_waste:g} mm"


def _slit(cut: CutLine, kerf: int) -> tuple[int, Box, Box]:
    """Direction of a cut, the lower half of its piece, and what the saw takes away."""
    along, piece, position = (0 if cut.axis == "crosscut" else 1), box_of(cut.piece), to_units(cut.position)
    low, line = list(piece), list(piece)
    low[along + 2] = line[along] = position
    line[along + 2] = position + kerf
    return along, (low[0], low[1], low[2], low[3]), (line[0], line[1], line[2], line[3])


def _last_section(instance: Instance, stock: StockSize, cut_from: Bin) -> Iterator[str]:
    """What lies beyond the last cut of the first stage is a section, too, when a part lies there."""
    first = [c for c in cut_from.cuts if c.stage == 1 and not c.trimming]
    along = 0 if instance.first_cut == "crosscut" else 1
    if first:
        along = 0 if first[0].axis == "crosscut" else 1
    elif instance.first_cut == "any":
        return
    size = (stock.length - stock.trim_length, stock.width - stock.trim_width)[along]
    begin = max((to_units(c.position) + to_units(instance.kerf) for c in first), default=0)
    begin = max(begin, to_units((stock.trim_length, stock.trim_width)[along]))
    held = any(part_box(p)[along + 2] > begin for p in cut_from.placed)
    if held and to_units(size) - begin > to_units(instance.limits.most_section):
        yield f"the last section is longer than {instance.limits.most_section:g} mm"


def order_faults(instance: Instance, bins: Sequence[Bin]) -> Iterator[str]:
    """Faults of the order in which parts come off and stocks are used."""
    if instance.in_order:
        pile = [s.id for s in instance.stocks for _ in range(len(bins) if s.count is None else s.count)]
        if [b.stock_id for b in bins] != pile[: len(bins)]:
            yield "the stocks are not used in order"
    place = {name: (s, n) for s, names in enumerate(instance.sequences) for n, name in enumerate(names)}
    reached: dict[int, tuple[int, str]] = {}
    for cut_from in bins if instance.sequences else ():
        for part in _coming_off(cut_from, to_units(instance.kerf)):
            if part.item_id not in place:
                continue
            sequence, n = place[part.item_id]
            before = reached.get(sequence)
            if before and before[0] > n:
                yield f"{part.item_id} copy {part.copy} comes off after {before[1]}"
            else:
                reached[sequence] = (n, part.item_id)


def _coming_off(cut_from: Bin, kerf: int) -> list[Placed]:
    """Parts in the order in which they come off, when the lower half of each cut is cut up first."""
    halves: dict[Box, tuple[Box, Box]] = {}
    for cut in cut_from.cuts:
        along, low, line = _slit(cut, kerf)
        high = list(box_of(cut.piece))
        high[along] = line[along + 2]
        halves[box_of(cut.piece)] = (low, (high[0], high[1], high[2], high[3]))
    rank: dict[Box, int] = {}
    wholes = {box_of(c.piece) for c in cut_from.cuts} - {h for pair in halves.values() for h in pair}
    pending = sorted(wholes, reverse=True)
    while pending:
        piece = pending.pop()
        rank[piece] = len(rank)
        pending += reversed(halves.get(piece, ()))
    return sorted(cut_from.placed, key=lambda p: rank.get(part_box(p), -1))
