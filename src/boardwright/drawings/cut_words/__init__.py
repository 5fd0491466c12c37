"""Cuts in the words of the shop: one wording for the key of a drawing and for the work list.

Everything is measured from the reference end, the reference edge and the back face, angles as a saw is set.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from typing import Any

from boardwright.core.poses import Vec
from boardwright.drawings.cut_words import bevels, dovetails, fitted, plain, shaped, slots
from boardwright.drawings.cut_words.terms import SIDE_WORDS, PlanPrinter, Printer, Said
from boardwright.piece.cuts import (
    Bevel,
    BiscuitSlot,
    Curve,
    Cut,
    DovetailSlot,
    DovetailTongue,
    Fingers,
    Groove,
    Hole,
    Mortise,
    Moulding,
    Notch,
    Pins,
    Rabbet,
    RaisedField,
    Side,
    Tails,
    Taper,
    Tenon,
    VGroove,
    holds,
)

__all__ = ["SIDE_WORDS", "PlanPrinter", "Printer", "Said", "said", "words_for_key", "words_for_work"]

_SAYS: dict[type[Cut], Callable[[Any, Vec, Printer], Said]] = {
    Groove: plain.groove,
    Rabbet: plain.rabbet,
    Notch: plain.notch,
    Hole: plain.hole,
    Mortise: fitted.mortise,
    BiscuitSlot: fitted.biscuit_slot,
    Tenon: fitted.tenon,
    Fingers: fitted.fingers,
    Tails: dovetails.tails,
    Pins: dovetails.pins,
    DovetailSlot: dovetails.slot,
    DovetailTongue: dovetails.tongue,
    Bevel: bevels.bevel,
    Taper: bevels.taper,
    Moulding: shaped.moulding,
    RaisedField: shaped.raised_field,
    Curve: shaped.curve,
    VGroove: shaped.v_groove,
}


def said(cut: Cut, size: Vec, p: Printer, letters: Mapping[str, str], others: Iterable[Cut] = ()) -> Said:
    """A cut in pieces of a sentence.

    Args:
        cut: in the part's own frame.
        size: of the part [mm].
        p: writes lengths.
        letters: part id → letter.
        others: all cuts of the part: a slot in a mitre is told by the mitre.
    """
    if isinstance(cut, Moulding) and (slot := slots.slot_said(cut, others, size, p)) is not None:
        return slot
    if isinstance(cut, Hole):
        return plain.hole(cut, size, p, letters.get(cut.marked_through, "its mate"))
    return _SAYS[type(cut)](cut, size, p)


def words_for_key(
    cuts: list[Cut], size: Vec, p: Printer, letters: Mapping[str, str], others: Iterable[Cut] = ()
) -> str:
    """Equal cuts as one line of a drawing's key; what the views measure is left out.

    Args:
        cuts: of one kind, at different places.
        size: of the part [mm].
        p: writes lengths.
        letters: part id → letter.
        others: all cuts of the part.
    """
    words = said(cuts[0], size, p, letters, others)
    held = [letters[holds(c)] for c in cuts if holds(c) in letters]
    ends = dict.fromkeys(end for c in cuts if isinstance(end := getattr(c, "end", None), Side))
    if len(ends) == 2:
        return words.key(1, held).replace(f"the {SIDE_WORDS[next(iter(ends))]}", "each end", 1)
    moulded = [c for c in cuts if isinstance(c, Moulding)]
    if len(moulded) > 1:
        edges = shaped.edges_text([c.edge for c in moulded])
        return replace(words, side=f"of the {SIDE_WORDS[moulded[0].side]}, {edges}").key(1, held)
    return words.key(len(cuts), held)


def words_for_work(
    cuts: list[Cut], size: Vec, p: Printer, letters: Mapping[str, str], others: Iterable[Cut] = ()
) -> str:
    """One line of the work list: a cut with all its places, or equal holes together.

    Args:
        cuts: one cut, or holes or slots for biscuits of one kind.
        size: of the part [mm].
        p: writes lengths.
        letters: part id → letter.
        others: all cuts of the part.
    """
    bored = [c for c in cuts if isinstance(c, Hole)]
    if bored:
        return plain.holes_work(bored, size, p, letters.get(bored[0].marked_through, "its mate"))
    held = [letters[holds(c)] for c in cuts if holds(c) in letters]
    slotted = [c for c in cuts if isinstance(c, BiscuitSlot)]
    if slotted:
        return fitted.biscuit_slots_work(slotted, size, p, held)
    return said(cuts[0], size, p, letters, others).work(held)
