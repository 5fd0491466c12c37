"""A list of published values, each with its own source and tolerance in data/check_values.csv."""

import csv
from pathlib import Path

import pytest

from boardwright.formulas import (
    beams,
    density,
    joint_strength,
    lifting,
    lumber,
    moisture,
    movement,
    screws,
    strength,
    tipping,
)
from boardwright.tables import load_tables

ROWS = list(csv.DictReader((Path(__file__).parent / "data" / "check_values.csv").open()))
NEWTONS_PER_POUND = 4.4482216152605
INCH = 25.4


def emc(F, RH):
    return moisture.equilibrium_moisture((F - 32) / 1.8, RH)


PSI = NEWTONS_PER_POUND / INCH**2
EVEN = beams.LOADINGS["uniform"]


def sag(load, span, depth, t):
    """Sag [in] of plywood of 1.2 million psi: load [lb], sizes [in]."""
    inertia = beams.second_moment(depth * INCH, t * INCH)
    E = 1.2e6 * PSI
    return (
        beams.deflection(load * NEWTONS_PER_POUND, span * INCH, E, inertia, float("inf"), EVEN.kb, EVEN.ks)
        / INCH
    )


def span(creep):
    """Longest span [in], 11 x 3/4 in, 20 lb a foot, 0.02 in a foot: sag over span grows as its cube."""
    return 24 * (0.04 / beams.long_term(sag(40, 24, 11, 0.75), creep)) ** (1 / 3)


def chest(opened):
    """Moment [lb in] of the chest of 80 lb with five drawers of 19 lb, so many of them open, a child on one."""
    angle = tipping.lean(0.43, 18)
    out, shut = tipping.righting(19, -3, 22, angle), tipping.righting(19, 9, 22, angle)
    child = tipping.righting(60, -12, 36, angle)
    return tipping.righting(80, 9, 24, angle) + opened * out + (5 - opened) * shut + child


COMPUTED = {
    "emc_70F_40": lambda: emc(70, 40),
    "emc_70F_65": lambda: emc(70, 65),
    "emc_70F_80": lambda: emc(70, 80),
    "emc_30F_50": lambda: emc(30, 50),
    "emc_150F_95": lambda: emc(150, 95),
    "move_white_fir": lambda: 9.15 + movement.change_of_size(9.15, 0.00245, 8, 11),
    "move_white_fir_mm": lambda: 232 + movement.change_of_size(232, 0.00245, 8, 11),
    "ct_white_ash": lambda: movement.coefficient_from_shrinkage(7.8),
    "cr_yellow_birch": lambda: movement.coefficient_from_shrinkage(7.3),
    "ct_redcedar_w": lambda: movement.coefficient_from_shrinkage(5.0, 22),
    "ct_red_oak": lambda: load_tables()[0].species["oak_red_northern"].tangential,
    "mor_white_ash_8": lambda: strength.property_at_moisture(103000, 66000, 8, 24),
    "density_ash": lambda: density.density(0.605, 12),
    "screw_allow": lambda: screws.screw_withdrawal_allowable(0.45, 0.190 * INCH, INCH) / NEWTONS_PER_POUND,
    "screw_ult_si": lambda: screws.screw_withdrawal_ultimate(0.50, 4.83, 25),
    "nail_maple": lambda: screws.nail_withdrawal_ultimate(0.63, 0.113 * INCH, INCH) / NEWTONS_PER_POUND,
    "nail_white_oak": lambda: screws.nail_withdrawal_ultimate(0.68, 0.113 * INCH, INCH) / NEWTONS_PER_POUND,
    "shank_10": lambda: screws.shank_diameter(10),
    "grain_angle_45": lambda: strength.strength_at_angle(30, 4, 45),
    "size_effect": lambda: beams.size_effect(10000, 254, 216 * INCH, 1 / 3),
    "mdf_shelf": lambda: beams.deflection_mdf_shelf(20, 800, 2500, 300, 18),
    "ply_I": lambda: beams.second_moment(1000, 17.1) / 1e3,
    "bf": lambda: lumber.board_feet(3, 8, 10),
    "anc": lambda: strength.property_by_rate(1, 3.7, 12, 20),
    "shelf_48": lambda: sag(80, 48, 12, 0.75),
    "shelf_span_first": lambda: span(0.0),
    "shelf_span_late": lambda: span(0.5),
    "shelf_thinner": lambda: sag(40, 24, 11, 0.5) / sag(40, 24, 11, 0.75),
    "aws_oak": lambda: beams.longest_shelf(1.82e6 * PSI, 19.05, 40 * PSI / 144, 144) / INCH,
    "aws_ply_50": lambda: beams.longest_shelf(1.8e6 * PSI, 25.4, 50 * PSI / 144, 144) / INCH,
    "tip_child": lambda: chest(5),
    "tip_one": lambda: chest(1),
    "tip_empty": lambda: tipping.righting(100, 9, 24) + 5 * tipping.righting(26.5, -3, 24),
    "lean_block": lambda: tipping.lean(0.43, 18) * 57.29578,
    "lift_niosh": lambda: lifting.recommended_weight(15 * INCH, 30 * INCH, 30 * INCH) / 0.45359237,
    "head_8": lambda: screws.flat_head_height(0.332, 0.164, 82),
    "nail_lateral": lambda: joint_strength.nail_lateral_hardwood(0.65, INCH) / NEWTONS_PER_POUND,
}


def test_every_row_is_computed():
    assert [r["id"] for r in ROWS] == list(COMPUTED)


@pytest.mark.parametrize("row", ROWS, ids=lambda r: r["id"])
def test_value(row):
    # 1e-9 for a tolerance of zero, where the arithmetic is exact.
    assert COMPUTED[row["id"]]() == pytest.approx(float(row["expected"]), abs=float(row["tolerance"]) + 1e-9)
