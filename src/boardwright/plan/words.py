"""What to do to a part, in the words of the shop: the same words as on its drawing."""

from __future__ import annotations

from collections.abc import Mapping

from boardwright.core.lengths import Printer
from boardwright.drawings.cut_words import words_for_work
from boardwright.drawings.part_features import alike
from boardwright.drawings.part_positions import positions
from boardwright.piece.cuts import BiscuitSlot, Cut, Hole
from boardwright.piece.records import Part


def work_lines(part: Part, printer: Printer, letters: Mapping[str, str]) -> list[str]:
    """What to do to a part, one line a cut; equal holes and slots for biscuits are counted together and come last.

    Args:
        part: one part of the kind.
        printer: writes lengths.
        letters: part id → letter.
    """
    cuts: list[list[Cut]] = [[c] for c in part.cuts if not isinstance(c, Hole | BiscuitSlot)]
    holes = alike(tuple(c for c in part.cuts if isinstance(c, Hole | BiscuitSlot)), part.size)
    lines = [words_for_work(same, part.size, printer, letters, part.cuts) for same in (*cuts, *holes)]
    between = [f"Between shoulders: {printer.size(b - a)}." for a, b in positions(part).shoulders]
    return [*between, *lines]
