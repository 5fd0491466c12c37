"""The question of panels from boards: strips of free width, pieces of fixed size, boards of random width and length."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor, gcd

import numpy as np
from numpy.typing import NDArray

from boardwright.stock.instance import StockSize

FINEST = 1000
"""Most lengths that are told apart; above it they go up to the next step of a grid."""


@dataclass(frozen=True, slots=True)
class Wanted:
    """What is wanted: a piece of fixed size, or a panel of strips.

    Attributes:
        id: name, unique.
        length: of the piece, or of every strip [mm].
        width: of the piece; of a panel: what its strips must come to when they are jointed [mm].
        count: how many.
        panel: glued up of strips.
    """

    id: str
    length: float
    width: float
    count: int
    panel: bool = False


@dataclass(frozen=True, slots=True)
class PanelQuestion:
    """Panels and pieces from boards.

    Attributes:
        wanted: pieces and panels.
        boards: that can be had.
        kerf: of the saw [mm].
        least, most: width of a strip as it is cut [mm].
        joint: what jointing takes off a strip, both edges together [mm].
        step: widths are whole steps [mm].
        keep: least length of what is left of a board, whole across, that goes back on the rack and is not paid for
            [mm]; None when boards are paid for whole.
    """

    wanted: tuple[Wanted, ...]
    boards: tuple[StockSize, ...]
    kerf: float
    least: float
    most: float
    joint: float
    step: float
    keep: float | None = None

    def paid(self, board: int, used: float) -> float:
        """What is paid for a board.

        Args:
            board: which board.
            used: what is cut off it, of the length that is left when its ends are trimmed [mm].
        """
        return paid(self.boards[board], used, self.kerf, self.keep)


def paid(board: StockSize, used: float, kerf: float, keep: float | None) -> float:
    """What is paid for a board.

    Args:
        board: the board.
        used: what is cut off it, of the length that is left when its ends are trimmed [mm].
        kerf: of the saw [mm].
        keep: as in `PanelQuestion` [mm].
    """
    left = board.length - 2 * board.trim_length - used - kerf
    if keep is None or left < keep:
        return board.cost
    return board.cost * (1 - (left + board.trim_length) / board.length)


@dataclass(frozen=True, slots=True)
class Grid:
    """The question in whole steps.

    `kind` is true for panels. `claims` are widths with a saw cut on it. `need` is the demand: copies, or steps of
    width, of each kind; then the fewest strips that all panels of each kind can be made of. `lengths` are all lengths
    that pieces end to end can have. `before` and `between` say which length is left.
    """

    kind: NDArray[np.bool_]
    claims: NDArray[np.int64]
    need: NDArray[np.int64]
    each: NDArray[np.int64]
    least: NDArray[np.int64]
    most: NDArray[np.int64]
    cut: int
    kerf: int
    lengths: NDArray[np.int64]
    before: NDArray[np.int64]
    between: NDArray[np.int64]
    rooms: tuple[tuple[int, int], ...]
    """Index of the greatest length within each board, and its width, a saw cut on it; (-1, 0) when it takes nothing."""
    narrowest: int
    exact: bool
    unit: int
    """Steps in one step of `lengths`."""


def grid(question: PanelQuestion, kindly: bool = False) -> Grid:
    """The question in whole steps.

    Args:
        question: the question.
        kindly: sizes are rounded in favour of what is wanted, for a bound; else against it.
    """
    g = question.step

    def low(mm: float) -> int:
        return floor(mm / g + 1e-6)

    def high(mm: float) -> int:
        return ceil(mm / g - 1e-6)

    need, room = (low, high) if kindly else (high, low)
    kerf = need(question.kerf)
    kind = np.array([w.panel for w in question.wanted])
    claims = np.array([need(w.width) + kerf for w in question.wanted], np.int64)
    each = np.array([need(w.width) if w.panel else 1 for w in question.wanted], np.int64)
    counts = np.array([w.count for w in question.wanted], np.int64)
    free = [(b.length - 2 * b.trim_length, b.width - 2 * b.trim_width) for b in question.boards]
    sizes = [need(w.length) + kerf for w in question.wanted]
    caps = [room(length) + kerf for length, _ in free]
    lengths, exact, unit = _lengths(sizes, max(caps, default=0))
    sizes = [(s // unit if kindly else -(-s // unit)) for s in sizes]
    caps = [(-(-c // unit) if kindly else c // unit) for c in caps]
    found = np.searchsorted(lengths, lengths[:, None] - np.array(sizes)[None, :], "right") - 1
    between = np.searchsorted(lengths, lengths[:, None] - lengths[None, :], "right") - 1
    rooms = [
        (int(np.searchsorted(lengths, cap, "right")) - 1, room(width) + kerf)
        for cap, (_, width) in zip(caps, free, strict=True)
    ]
    least = np.full(len(sizes), need(question.least) + kerf, np.int64)
    most = np.full(len(sizes), room(question.most) + kerf, np.int64)
    claimed = [*claims[~kind].tolist(), *least[kind].tolist()]
    cut = kerf + need(question.joint)
    strips = np.where(kind, -(-each // np.maximum(1, most - cut)), 0)
    demand = np.concatenate([each * counts, strips * counts])
    return Grid(
        kind, claims, demand, each, least, most, cut, kerf, lengths,
        found.astype(np.int64), between.astype(np.int64), tuple(rooms), max(1, min(claimed, default=1)), exact, unit,
    )  # fmt: skip


def _lengths(sizes: list[int], longest: int) -> tuple[NDArray[np.int64], bool, int]:
    """Lengths that pieces end to end can have, from 0; whether they are all of them; the step they are counted in."""
    common = gcd(*sizes) or 1
    if longest // common <= FINEST:
        return np.arange(longest // common + 1, dtype=np.int64), True, common
    kinds = sorted({s for s in sizes if 0 < s <= longest})
    sums = {0}
    front = {0}
    while front and len(sums) <= FINEST:
        front = {x + s for x in front for s in kinds if x + s <= longest} - sums
        sums |= front
    if len(sums) <= FINEST:
        return np.array(sorted(sums), np.int64), True, 1
    unit = -(-longest // FINEST)
    return np.arange(longest // unit + 2, dtype=np.int64), False, unit
