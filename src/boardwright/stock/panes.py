"""What is bought cut to size: panes of glass, for which there is nothing to lay out."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from boardwright.stock.lots import LotRequest
from boardwright.stock.records import Lot, Tally
from boardwright.stock.wording import counted


def cut_to_size(request: LotRequest) -> bool:
    """Whether a lot is glass that neither the file nor the rack says is there."""
    return "glass" in request.stock.table_key and not request.on_hand and not request.rack


def panes(request: LotRequest, tally: Callable[[Sequence[tuple[float, float]]], Tally]) -> Lot:
    """The lot as it is ordered: each pane at its size.

    Args:
        request: the lot.
        tally: what sheets of given length and width come to.
    """
    sizes = [r.strip for r in request.parts for _ in range(r.count + r.spare)]
    return Lot(
        request.id, request.stock.id, request.stock.kind, request.title, (), request.kerf, (), 0, 0.0, True, True,
        tally(sizes), False, "", f"{counted(len(sizes), 'pane')}, bought cut to size", sold=request.kind, to_size=True,
    )  # fmt: skip
