"""Random designs over the whole vocabulary: no traceback, no two parts in one place, no wrong sum.

What must hold is geometry and arithmetic, not a number of ours: sizes add up, volumes agree in two kernels,
solids do not share room. `tools/random_designs.py` runs the same over thousands.
"""

import sys
from dataclasses import replace
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[2] / "tools"))

from boardwright.piece.cuts import Groove, Side
from boardwright.piece.records import Chain
from boardwright.pipeline import check_file
from design_dice import design
from random_designs import Tally, faults, try_design

EXAMPLE = Path(__file__).parents[2] / "examples/ribbon-chest.yaml"
SEEDS = range(1, 41)


@pytest.mark.parametrize("first", [SEEDS[i] for i in range(0, len(SEEDS), 10)])
def test_random_designs_hold(first: int) -> None:
    tally = Tally()
    for seed in range(first, first + 10):
        try_design(design(seed), f"design {seed}", tally, again=seed % 5 == 0)
    assert tally.designs == 10
    assert tally.pieces >= 8
    assert tally.lines == ()


def test_layouts_of_a_few_random_designs_hold() -> None:
    tally = Tally()
    for seed in (3, 7):
        try_design(design(seed), f"design {seed}", tally, again=False, stock=True)
    assert tally.layouts == []


def test_the_same_seed_gives_the_same_design_and_other_units_are_kept() -> None:
    assert design(12) == design(12)
    assert design(12) != design(13)
    assert design(12, "mm")["units"] == "mm"


def test_a_wrong_chain_and_a_cut_outside_are_seen() -> None:
    """The looking itself can fail: a piece made wrong by hand gives its lines."""
    piece = check_file(EXAMPLE).piece
    assert piece is not None
    assert list(faults(piece)) == []
    chain = Chain("short", (("side", 10.0), ("side", 10.0)), ("outside", 20.1))
    part = piece.parts[0]
    outside = Groove(Side.FACE, 0, part.size[1] - 1.0, 5.0, 2.0, 0.0, part.size[0])
    off = replace(part, size=(part.size[0] + 0.1, *part.size[1:]), cuts=(*part.cuts, outside))
    lines = list(faults(replace(piece, chains=(chain,), parts=(off, *piece.parts[1:]))))
    assert any("chain short" in line for line in lines)
    assert any("not on the step" in line for line in lines)
    assert any("outside the blank" in line for line in lines)
    assert any("same letter" in line for line in lines) or piece.parts[0].letter not in {
        p.letter for p in piece.parts[1:]
    }
