"""From a pattern to a stock with parts, cuts in order, and leftovers."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from boardwright.stock.instance import Axis, Instance, Rectangle
from boardwright.stock.patterns import Pattern, Section, Strip
from boardwright.stock.placed import Spot
from boardwright.stock.scaled import Shape
from boardwright.stock.slicing import Box
from boardwright.stock.solution import Bin, CutLine, Placed
from boardwright.stock.units import to_mm, to_units

_Node = tuple[Section, ...] | Section | Strip | Shape


@dataclass(slots=True)
class Saw:
    """Cuts pieces up and notes what happens."""

    instance: Instance
    first: int
    kerf: int
    cuts: list[CutLine] = field(default_factory=list)
    parts: list[tuple[Shape, int, int]] = field(default_factory=list)
    leftovers: list[Box] = field(default_factory=list)

    def size(self, shape: Shape | Spot) -> tuple[int, int]:
        """Length along the stock and width across it, without kerf (units)."""
        item = self.instance.items[shape.item]
        length, width = to_units(item.length), to_units(item.width)
        return (width, length) if shape.turned else (length, width)

    def extent(self, node: _Node, side: int, along: int) -> int:
        """Extent of a node whose children are stacked in direction `along` (units)."""
        if isinstance(node, Shape):
            return self.size(node)[side]
        sizes = [self.extent(child, side, 1 - along) for child in node]
        return sum(sizes) + self.kerf * (len(sizes) - 1) if side == along else max(sizes)

    def cut(self, piece: Box, along: int, position: int, stage: int, trimming: bool) -> Box:
        """Cut a piece at a position; what is beyond it comes back (it may be empty)."""
        axis: Axis = "crosscut" if along == 0 else "rip"
        self.cuts.append(CutLine(axis, to_mm(position), rectangle(piece), stage, trimming))
        rest = list(piece)
        rest[along] = position + self.kerf
        return rest[0], rest[1], rest[2], rest[3]

    def keep(self, rest: Box) -> None:
        """Note a leftover, if there is anything of it."""
        if rest[0] < rest[2] and rest[1] < rest[3]:
            self.leftovers.append(rest)

    def divide(self, node: _Node, piece: Box, along: int, stage: int) -> None:
        """Cut a piece into the children of a node, then those."""
        alone = _alone(node)
        if alone is not None:
            self.free(alone, piece, stage)
            return
        for child in node if not isinstance(node, Shape) else ():
            end = piece[along] + self.extent(child, along, 1 - along)
            own = list(piece)
            own[along + 2] = end
            if end < piece[along + 2]:
                piece = self.cut(piece, along, end, stage, trimming=False)
            else:
                piece = (0, 0, 0, 0)
            self.divide(child, (own[0], own[1], own[2], own[3]), 1 - along, stage + 1)
        self.keep(piece)

    def free(self, shape: Shape, piece: Box, stage: int) -> None:
        """Trim a part out of a piece that holds nothing else."""
        size = self.size(shape)
        for side in (0, 1):
            end = piece[side] + size[side]
            if end < piece[side + 2]:
                self.keep(self.cut(piece, side, end, stage, trimming=True))
                own = list(piece)
                own[side + 2] = end
                piece = (own[0], own[1], own[2], own[3])
        self.parts.append((shape, piece[0], piece[1]))


def _alone(node: _Node) -> Shape | None:
    """The part, when a node is one part or a strip of one."""
    if isinstance(node, Shape):
        return node
    return node[0] if len(node) == 1 and isinstance(node[0], Shape) else None


def rectangle(box: Box) -> Rectangle:
    """A box in millimetres."""
    return Rectangle(to_mm(box[0]), to_mm(box[1]), to_mm(box[2]), to_mm(box[3]))


def trimmed(saw: Saw, full: Box, trims: Sequence[int]) -> Box:
    """Trim a stock: what is left of it."""
    piece = full
    for side, trim in ((1, trims[1]), (0, trims[0])):
        if trim == 0:
            continue
        rest = saw.cut(piece, side, piece[side] + trim - saw.kerf, 0, trimming=True)
        waste = list(piece)
        waste[side + 2] = piece[side] + trim - saw.kerf
        saw.keep((waste[0], waste[1], waste[2], waste[3]))
        end = rest[side + 2] - trim
        saw.keep(saw.cut(rest, side, end, 0, trimming=True))
        own = list(rest)
        own[side + 2] = end
        piece = (own[0], own[1], own[2], own[3])
    return piece


def emit(instance: Instance, first: Axis, what: Pattern, stock: int, copies: list[int]) -> Bin:
    """A stock as it will be cut.

    Args:
        instance: the question.
        first: direction of the first cut.
        what: the pattern.
        stock: number of the stock.
        copies: copies of each item that were given out before; counted on.

    Returns:
        The stock with parts, cuts (stage by stage) and leftovers.
    """
    size = instance.stocks[stock]
    along = 1 if first == "rip" else 0
    saw = Saw(instance, along, to_units(instance.kerf))
    full = (0, 0, to_units(size.length), to_units(size.width))
    piece = trimmed(saw, full, (to_units(size.trim_length), to_units(size.trim_width)))
    saw.divide(what.sections, piece, along, 1)
    placed = []
    for shape, x, y in saw.parts:
        copies[shape.item] += 1
        length, width = saw.size(shape)
        name = instance.items[shape.item].id
        placed.append(
            Placed(name, copies[shape.item], to_mm(x), to_mm(y), to_mm(length), to_mm(width), shape.turned)
        )
    cuts = sorted(saw.cuts, key=lambda c: c.stage)
    left = sorted(saw.leftovers, key=lambda r: (-(r[2] - r[0]) * (r[3] - r[1]), r))
    return Bin(size.id, tuple(placed), tuple(cuts), tuple(rectangle(r) for r in left))
