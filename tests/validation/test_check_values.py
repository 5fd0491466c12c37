"""A list of published values, each with its own source and tolerance in data/check_values.csv."""

import csv
import math
from pathlib import Path

import pytest

from boardwright.formulas import (
    beams,
    compound,
    density,
    gluing,
    joint_strength,
    lifting,
    lumber,
    moisture,
    movement,
    placing,
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


SPECIES = load_tables()[0].species
CELLS = [
    (float(r["temperature_F"]), float(r["RH_pct"]), float(r["EMC_pct"]))
    for r in csv.DictReader((Path(__file__).parent / "data" / "emc.csv").open())
]


def agreeing():
    """Coefficients of the species table, taken as printed, that follow from its shrinkage to the last place."""
    ways = [
        (getattr(s, way), movement.coefficient_from_shrinkage(getattr(s, f"shrink_{way}"), s.shrink_start))
        for s in SPECIES.values()
        for way in ("radial", "tangential")
        if s.coefficients == "printed"
        or (s.key, way) in {("padauk_african", "tangential"), ("purpleheart", "tangential")}
    ]
    return sum(abs(printed - computed) < 1.05e-5 for printed, computed in ways)


def sheet(key):
    """Mass [kg] of a sheet of 1220 x 2440 mm, on its nominal thickness."""
    row = load_tables()[0].sheets[key]
    return 1.22 * 2.44 * row.nominal / 1000 * row.density


def nail(G):
    return screws.nail_withdrawal_ultimate(G, 0.113 * INCH, INCH) / NEWTONS_PER_POUND


def shelf(moe, t, psf):
    """Longest shelf [in]: million psi, in, psf."""
    return beams.longest_shelf(moe * 1e6 * PSI, t * INCH, psf * PSI / 144, 144) / INCH


def with_shear():
    """Share of shear [%] in the sag of an evenly loaded beam ten times as long as high, E 16 times G."""
    inertia = beams.second_moment(1, 1)
    whole = beams.deflection(1, 10, 16, inertia, 5 / 6, EVEN.kb, EVEN.ks)
    bent = beams.deflection(1, 10, 16, inertia, float("inf"), EVEN.kb, EVEN.ks)
    return 100 * (whole / bent - 1)


def chest_of_36(opened):
    """Moment [lb in] of the chest of 100 lb with five drawers of 26.5 lb, so many of them 12 in out."""
    return (
        tipping.righting(100, 9, 24)
        + opened * tipping.righting(26.5, -3, 24)
        + (5 - opened) * tipping.righting(26.5, 9, 24)
    )


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
    "ct_red_oak": lambda: SPECIES["oak_red_northern"].tangential,
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
    "emc_50": lambda: emc(70, 50),
    "emc_30": lambda: emc(70, 30),
    "emc_worst": lambda: max(abs(emc(F, RH) - printed) for F, RH, printed in CELLS),
    "rh_for_8": lambda: moisture.humidity_for(21.1, 8),
    "move_mesquite": lambda: movement.change_of_size(5, 0.00129, 6, 9),
    "beech_quarter": lambda: movement.change_of_size(38, SPECIES["beech_european"].radial, 6, 9),
    "beech_flat": lambda: movement.change_of_size(38, SPECIES["beech_european"].tangential, 6, 9),
    "list_ash": lambda: 64 * movement.change_of_size(12, SPECIES["ash_white"].tangential, 5, 10),
    "list_walnut": lambda: 64 * movement.change_of_size(12, SPECIES["walnut_black"].tangential, 5, 10),
    "ct_maple": lambda: movement.coefficient_from_shrinkage(9.9),
    "ct_basswood": lambda: movement.coefficient_from_shrinkage(9.3),
    "ct_agree": agreeing,
    "density_060": lambda: density.density(0.60, 12),
    "density_040": lambda: density.density(0.40, 100),
    "gravity_ash": lambda: density.specific_gravity_estimated(0.55, 12),
    "wettest_030": lambda: density.greatest_moisture(0.30),
    "wettest_090": lambda: density.greatest_moisture(0.90),
    "sheet_birch_18": lambda: sheet("birch_plywood_18"),
    "sheet_birch_12": lambda: sheet("birch_plywood_12"),
    "fir_20": lambda: strength.property_by_rate(12400, 3.7, 12, 20),
    "screw_ultimate": lambda: screws.screw_withdrawal_ultimate(0.45, 0.190 * INCH, INCH) / NEWTONS_PER_POUND,
    "nail_47": lambda: nail(0.47),
    "nail_62": lambda: nail(0.62),
    "nail_55": lambda: nail(0.55),
    "nail_64": lambda: nail(0.64),
    "nail_60": lambda: nail(0.60),
    "nail_72": lambda: nail(0.72),
    "shank_4": lambda: screws.shank_diameter(4),
    "shank_8": lambda: screws.shank_diameter(8),
    "shank_14": lambda: screws.shank_diameter(14),
    "shank_24": lambda: screws.shank_diameter(24),
    "across_hard_low": lambda: screws.screw_lateral_hardwood(0.40, INCH) / NEWTONS_PER_POUND,
    "across_hard_mid": lambda: screws.screw_lateral_hardwood(0.52, INCH) / NEWTONS_PER_POUND,
    "across_hard_high": lambda: screws.screw_lateral_hardwood(0.65, INCH) / NEWTONS_PER_POUND,
    "across_soft_mid": lambda: screws.screw_lateral_softwood(0.45, INCH) / NEWTONS_PER_POUND,
    "across_soft_high": lambda: screws.screw_lateral_softwood(0.50, INCH) / NEWTONS_PER_POUND,
    "across_8": lambda: screws.screw_lateral_softwood(0.42, 4.17),
    "nail_hard_low": lambda: joint_strength.nail_lateral_hardwood(0.40, INCH) / NEWTONS_PER_POUND,
    "nail_soft_high": lambda: joint_strength.nail_lateral_softwood(0.50, INCH) / NEWTONS_PER_POUND,
    "edge_4mm": lambda: placing.edge_distance_unloaded(4, True),
    "end_4mm": lambda: placing.end_distance_unloaded(4, True),
    "mdf_600": lambda: beams.deflection_mdf_shelf(20, 600, 2500, 300, 18),
    "mdf_1000": lambda: beams.deflection_mdf_shelf(20, 1000, 2500, 300, 18),
    "ply_Z": lambda: 1 / beams.bending_stress(1, 1000, 17.1) / 1e3,
    "aws_fir_40": lambda: shelf(0.95, 0.75, 40),
    "aws_fir_50": lambda: shelf(0.95, 0.75, 50),
    "aws_fir_1_40": lambda: shelf(0.95, 1, 40),
    "aws_fir_1_50": lambda: shelf(0.95, 1, 50),
    "aws_ply_40": lambda: shelf(1.8, 0.75, 40),
    "aws_ply_34_50": lambda: shelf(1.8, 0.75, 50),
    "aws_ply_1_40": lambda: shelf(1.8, 1, 40),
    "aws_oak_50": lambda: shelf(1.82, 0.75, 50),
    "aws_oak_1_40": lambda: shelf(1.82, 1, 40),
    "aws_oak_1_50": lambda: shelf(1.82, 1, 50),
    "shear_share": with_shear,
    "tip_child_502": lambda: chest_of_36(5) + tipping.righting(60, -12, 30),
    "tip_one_1054": lambda: chest_of_36(1) + tipping.righting(60, -12, 30),
    "lift_best": lambda: lifting.recommended_weight(10 * INCH, 30 * INCH, 10 * INCH) / 0.45359237,
    "clamp_edge": lambda: gluing.clamp_force(150 * PSI, 25 * INCH, INCH) / NEWTONS_PER_POUND,
    "clamp_area": lambda: gluing.clamp_force(225 * PSI, 540 * INCH, INCH) / NEWTONS_PER_POUND,
    "clamps_420": lambda: gluing.clamps_for_force(3750, 420),
    "clamps_1350": lambda: gluing.clamps_for_force(345600, 1350),
    "bf_9": lambda: lumber.board_feet(1, 9, 8),
    "bf_54": lambda: lumber.board_feet(1, 8, 8),
    "crown_38": lambda: compound.compound_mitre_gauge(38, 4),
    "crown_38_tilt": lambda: compound.compound_mitre_tilt(38, 4),
    "column": lambda: 1 / (1 - 0.1 * joint_strength.buckling_load(1, 1, 1, 2.0) / (math.pi**2 / 4)),
}


def test_every_row_is_computed():
    assert [r["id"] for r in ROWS] == list(COMPUTED)


@pytest.mark.parametrize("row", ROWS, ids=lambda r: r["id"])
def test_value(row):
    # 1e-9 for a tolerance of zero, where the arithmetic is exact.
    assert COMPUTED[row["id"]]() == pytest.approx(float(row["expected"]), abs=float(row["tolerance"]) + 1e-9)
