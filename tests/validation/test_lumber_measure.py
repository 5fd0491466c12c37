"""Board feet and surface measure: NHLA rules as quoted by the association, importers and sawmills."""

import pytest

from boardwright.formulas.lumber import board_feet, piece_tally, surface_measure


@pytest.mark.parametrize(
    ("T", "W", "L", "printed"),
    [(3, 8, 10, 20), (1, 9, 8, 6), (1.5, 9, 8, 9), (1, 8, 8, 5.33), (2, 8, 6, 8), (1, 12, 10, 10)],
)
def test_board_feet(T, W, L, printed):
    # Sawmill pages; 96 in is 8 ft, 72 in is 6 ft; printed to 0.01.
    assert board_feet(T, W, L) == pytest.approx(printed, abs=0.005)


@pytest.mark.parametrize(
    ("W", "L", "printed"),
    [
        (6.5, 8, 4),  # importer's page with the association guide's examples: 4-1/3
        (8, 12, 8),  # the same
        (10, 13, 11),  # the same: 10-10/12
        (6 + 7 / 16, 10 + 9 / 12, 5),  # lumber company's grading example: whole feet only, 5.36
    ],
)
def test_surface_measure(W, L, printed):
    assert surface_measure(W, L) == printed


def test_piece_tally():
    assert piece_tally(2, 6.25, 8) == 8  # association's page on measurement: surface measure 4 times 2 in


def test_a_board_foot_in_metric():
    # 144 cubic inches are 0.00235974 m3, by the definition of the inch; printed to six figures.
    assert board_feet(1, 12, 1) * 144 * 0.0254**3 == pytest.approx(0.00235974, abs=5e-9)
