"""The rough list: what is cut for each kind of part before it is milled, each size with its sum."""

from __future__ import annotations

from boardwright.plan.schema import RoughLine
from boardwright.stock.records import RoughPart, StockResult
from boardwright.stock.wording import counted


def rough_lines(stock: StockResult) -> list[RoughLine]:
    """The rough list: wood parts by letter, then test pieces."""
    titles = {lot.id: lot.title for lot in stock.lots}
    return [
        RoughLine(
            letter="" if r.letter == "test" else r.letter,
            name=r.name,
            count=r.count,
            lumber=titles.get(r.lot, r.lumber),
            length=r.length_sum,
            width=r.width_sum,
            thickness=r.thickness_sum,
            strips=strip_words(r),
            note=note(r),
        )
        for r in (*stock.rough, *stock.trials)
        if r.rough is not None
    ]


def strip_words(rough: RoughPart) -> str:
    """How the width of strips came about; "" when it is one board."""
    if rough.leaves > 1:
        return f"{rough.leaves} leaves: {rough.strip_sum}"
    if rough.panels:
        return f"strips: {rough.strip_sum}" + (
            "; " + "; ".join(rough.joints) if len(set(rough.joints)) > 1 else ""
        )
    return f"{rough.strips} strips: {rough.strip_sum}" if rough.strips > 1 else ""


def note(rough: RoughPart) -> str:
    """What else is to be known of it."""
    spare = counted(rough.spare, "spare piece") if rough.spare else ""
    return "; ".join(s for s in (rough.ripped_from, rough.blank, spare) if s)
