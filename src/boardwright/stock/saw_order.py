"""The order of the saw's cuts as hands make them: like settings after each other, and what each setting is."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from boardwright.stock.instance import Rectangle
from boardwright.stock.records import BoardLayout, PlacedPiece
from boardwright.stock.solution import Bin, CutLine, Placed
from boardwright.stock.units import to_units

SAME = 0.01
"""Two places nearer than this are one [mm]."""


@dataclass(frozen=True, slots=True)
class Sawing:
    """Cuts that follow each other at one setting of fence or stop.

    Attributes:
        first, last: their numbers, from 1; cuts that trim the stock to its sound wood have none.
        axis: `rip` or `crosscut`.
        setting: from the fence or stop to the saw's near side: the size of what is cut to size [mm].
        pieces: what is cut, once for each size: length and width of the piece in hand [mm].
        gives: labels of the pieces that are done with these cuts.
    """

    first: int
    last: int
    axis: str
    setting: float
    pieces: tuple[tuple[float, float], ...]
    gives: tuple[str, ...]

    @property
    def times(self) -> int:
        """How many cuts."""
        return self.last - self.first + 1


def by_setting(cuts: Sequence[CutLine], placed: Sequence[Rectangle], kerf: float) -> tuple[CutLine, ...]:
    """The same cuts in an order that needs fewer settings: earlier stages first, like settings together.

    Args:
        cuts: in an order in which they can be made.
        placed: where the parts lie.
        kerf: width of the saw's cut [mm].
    """
    made = [c for c in cuts if c.stage == 0]
    waiting = [c for c in cuts if c.stage > 0]
    born = {_corner(h) for c in cuts for h in _halves(c, kerf)}
    there = {_corner(h) for c in made for h in _halves(c, kerf)}
    there |= {_corner(c.piece) for c in waiting} - born
    setting = {c: _setting(c, placed, kerf) for c in cuts}
    while waiting:
        ready = [c for c in waiting if _corner(c.piece) in there]
        if not ready:
            return tuple(cuts)
        last = setting[made[-1]] if made else None
        cut = next((c for c in ready if setting[c] == last), None)
        if cut is None:
            stage = min(c.stage for c in ready)
            now = [c for c in ready if c.stage == stage]
            cut = max(now, key=lambda c: (setting[c][1], -now.index(c)))
        waiting.remove(cut)
        made.append(cut)
        there |= {_corner(h) for h in _halves(cut, kerf)}
    return tuple(made)


def in_order(cut_from: Bin, kerf: float) -> Bin:
    """A stock with its cuts in the order of their settings; `kerf` is the width of the saw's cut [mm]."""
    rooms = [_room(p) for p in cut_from.placed]
    return replace(cut_from, cuts=by_setting(cut_from.cuts, rooms, kerf))


def sawings(board: BoardLayout, kerf: float) -> list[Sawing]:
    """The numbered cuts of a board, those of one setting that follow each other as one.

    Args:
        board: a layout.
        kerf: width of the saw's cut [mm].
    """
    out: list[Sawing] = []
    rooms = [_room(p) for p in board.placed]
    for number, cut in enumerate((c for c in board.cuts if c.stage > 0), 1):
        axis, setting = _setting(cut, rooms, kerf)
        piece = (round(cut.piece.x1 - cut.piece.x0, 3), round(cut.piece.y1 - cut.piece.y0, 3))
        gives = tuple(p.label for p in board.placed if any(_is(h, _room(p)) for h in _halves(cut, kerf)))
        if out and (out[-1].axis, out[-1].setting) == (axis, setting):
            last = out[-1]
            pieces = last.pieces if piece in last.pieces else (*last.pieces, piece)
            out[-1] = Sawing(last.first, number, axis, setting, pieces, (*last.gives, *gives))
        else:
            out.append(Sawing(number, number, axis, setting, (piece,), gives))
    return out


def _setting(cut: CutLine, placed: Sequence[Rectangle], kerf: float) -> tuple[str, float]:
    """Which saw, and the size of the side that is kept; of two, the near one."""
    k = 0 if cut.axis == "crosscut" else 1
    low, high = (cut.piece.x0, cut.piece.x1) if k == 0 else (cut.piece.y0, cut.piece.y1)
    near = cut.position - low
    halves = _halves(cut, kerf)
    if not any(_holds(halves[0], p) for p in placed) and high - cut.position - kerf > SAME:
        near = high - cut.position - kerf
    return cut.axis, round(near, 3)


def _halves(cut: CutLine, kerf: float) -> tuple[Rectangle, Rectangle]:
    p, a, b = cut.piece, cut.position, cut.position + kerf
    if cut.axis == "crosscut":
        return Rectangle(p.x0, p.y0, a, p.y1), Rectangle(min(b, p.x1), p.y0, p.x1, p.y1)
    return Rectangle(p.x0, p.y0, p.x1, a), Rectangle(p.x0, min(b, p.y1), p.x1, p.y1)


def _room(p: Placed | PlacedPiece) -> Rectangle:
    return Rectangle(p.x, p.y, p.x + p.length, p.y + p.width)


def _corner(r: Rectangle) -> tuple[int, ...]:
    """Where a rectangle lies, in whole units, so that equal places are equal."""
    return tuple(to_units(v) for v in (r.x0, r.y0, r.x1, r.y1))


def _is(one: Rectangle, two: Rectangle) -> bool:
    return _corner(one) == _corner(two)


def _holds(one: Rectangle, two: Rectangle) -> bool:
    return (
        one.x0 < two.x1 - SAME
        and two.x0 < one.x1 - SAME
        and one.y0 < two.y1 - SAME
        and two.y0 < one.y1 - SAME
    )
