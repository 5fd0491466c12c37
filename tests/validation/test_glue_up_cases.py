"""Glue-ups against situations from practice, each with its answer recomputed from first principles there."""

import pytest

from boardwright.checks.context import context
from boardwright.checks.making.open_time import minutes, stages
from boardwright.core.poses import Box
from boardwright.formulas.gluing import (
    clamp_force,
    clamps_for_force,
    clamps_for_length,
    largest_clamp_spacing,
)
from boardwright.piece.records import Moisture, Piece
from boardwright.solids.dry_fit import DryFit
from boardwright.tables.load import default_tables

POUND = 4.4482216152605
PSI = POUND / 25.4**2
EMPTY = Piece("", "in", 25.4 / 64, Box((0.0, 0.0, 0.0), (1.0, 1.0, 1.0)), Moisture(8, 6, 10))


def test_chest_with_yellow_glue():
    # Magazine weblog and shop video notes: 14 joints at 0.6 min to spread and 0.4 min to close, 6 min for 8 clamps:
    # 20 min (1 min) against 10; half of it, 7 joints with 4 clamps, 10 min, fits: all seven cross parts into one side,
    # then the other side.
    c = context(EMPTY, DryFit((), (), ()), default_tables())
    glue = c.tables.glues["pva_yellow"]
    assert glue.closed_time == 10
    assert minutes(c, 14) == pytest.approx(20, abs=1)
    assert minutes(c, 7) == pytest.approx(10)
    assert minutes(c, 8) > 10
    split = stages(c, [1] * 7 + [7], 10)
    assert split == [[0, 1, 2, 3, 4, 5, 6], [7]]


def test_clamps_for_a_panel():
    # Magazine and club articles: five boards of 4 in, 60 in long, 3/4 in thick, 150 psi, clamps of 900 lb: 8 clamps for
    # the spread, 5 with cauls of 2 in; 6750 lb, 844 lb each with 8, 1350 with 5 (5 %); 8 clamps govern.
    spread = largest_clamp_spacing(0, 4)
    assert clamps_for_length(60, spread, spread / 2) == 8
    with_cauls = largest_clamp_spacing(0, 4 + 2)
    assert clamps_for_length(60, with_cauls, with_cauls / 2) == 5
    force = clamp_force(150 * PSI, 60 * 25.4, 0.75 * 25.4) / POUND
    assert force == pytest.approx(6750, rel=0.05)
    assert force / 8 == pytest.approx(844, rel=0.05)
    assert force / 5 == pytest.approx(1350, rel=0.05)
    assert max(clamps_for_length(60, with_cauls, with_cauls / 2), clamps_for_force(force, 900)) == 8
