"""A list of published values, each with its own source and tolerance in data/check_values.csv."""

import csv
from pathlib import Path

import pytest

from boardwright.formulas import beams, density, lumber, moisture, movement, screws, strength
from boardwright.tables import load_tables

ROWS = list(csv.DictReader((Path(__file__).parent / "data" / "check_values.csv").open()))
NEWTONS_PER_POUND = 4.4482216152605
INCH = 25.4


def emc(F, RH):
    return moisture.equilibrium_moisture((F - 32) / 1.8, RH)


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
}


def test_every_row_is_computed():
    assert [r["id"] for r in ROWS] == list(COMPUTED)


@pytest.mark.parametrize("row", ROWS, ids=lambda r: r["id"])
def test_value(row):
    # 1e-9 for a tolerance of zero, where the arithmetic is exact.
    assert COMPUTED[row["id"]]() == pytest.approx(float(row["expected"]), abs=float(row["tolerance"]) + 1e-9)
