"""Laws that formulas keep among themselves."""

import pytest

from boardwright.formulas import beams, density, lumber, moisture, movement


@pytest.mark.parametrize("S", [2.1, 4.8, 7.3, 9.9, 11.9])
def test_the_two_movement_formulas_are_one_line(S):
    # Wood Handbook FPL-GTR-190, table 13-5 footnote: coefficients are for the size at 10 % of moisture.
    C = movement.coefficient_from_shrinkage(S)
    assert movement.change_of_size(100, C, 10, 14) == pytest.approx(
        movement.change_of_size_by_shrinkage(100, S, 10, 14), rel=1e-12
    )


@pytest.mark.parametrize("T", [0.0, 21.1, 40.0])
@pytest.mark.parametrize("RH", [5.0, 33.0, 65.0, 95.0])
def test_humidity_is_the_inverse_of_moisture(T, RH):
    assert moisture.humidity_for(T, moisture.equilibrium_moisture(T, RH)) == pytest.approx(RH, abs=1e-9)


def test_no_air_is_damp_enough():
    assert moisture.humidity_for(21, 90) == pytest.approx(100)
    assert moisture.humidity_for(21, 0) == pytest.approx(0)


def test_density_by_either_way():
    # Equations 4-13 with 4-14, and 4-15 with 4-16, start from the same shrinkage: 26.5 G_b.
    for G_b in (0.35, 0.5, 0.65):
        ovendry = density.density(density.specific_gravity_estimated(G_b, 0), 0)
        for x in (0, 8, 12, 25):
            one = density.density(density.specific_gravity_estimated(G_b, x), x)
            assert density.density_from_ovendry(ovendry, x) == pytest.approx(one, rel=1e-9)


def test_trade_shelf_formula_is_the_beam_formula():
    # 5 W L^3 / (32 E b t^3) = 5/384 W L^3 / (E I) with I = b t^3 / 12.
    I_ = beams.second_moment(300, 18)
    beam = beams.deflection(20 * 9.81, 800, 2500, I_, float("inf"), 5 / 384, 1 / 8)
    assert beams.deflection_mdf_shelf(20, 800, 2500, 300, 18) == pytest.approx(beam, rel=1e-12)


def test_shear_share_of_a_solid_shelf():
    # E/G = 16, even load: shear over bending is 15.36 (h/L)^2, worked by hand from table 9-1:
    # (1/8 . 16 . 6/5 / (b h)) / (5/384 . 12 L^2 / (b h^3)) = 2.4 / 0.15625 (h/L)^2.
    E, b, h, L, W = 12000.0, 250.0, 20.0, 640.0, 300.0
    GA = E / 16 * 5 / 6 * b * h
    bending = beams.deflection(W, L, E, beams.second_moment(b, h), float("inf"), 5 / 384, 1 / 8)
    both = beams.deflection(W, L, E, beams.second_moment(b, h), GA, 5 / 384, 1 / 8)
    assert both / bending - 1 == pytest.approx(15.36 * (h / L) ** 2, rel=1e-9)


def test_halves_count_up_and_down_in_turn():
    # 6 in x 9 ft = 4 1/2, NHLA rule: 5 + 4 + 5 = 14; a board that is no half does not change the turn.
    assert lumber.tally([(1, 6, 9), (1, 8, 12), (1, 6, 9), (1, 6, 9)]) == 14 + 8


def test_thin_stock_counts_as_one_inch():
    assert lumber.board_feet(0.5, 6, 8) == lumber.board_feet(1, 6, 8) == 4
