"""Screws and nails: Wood Handbook FPL-GTR-282 (2021), chapter 8, and published screw charts."""

import pytest

from boardwright.formulas.placing import edge_distance_unloaded, end_distance_unloaded
from boardwright.formulas.screws import (
    nail_withdrawal_ultimate,
    pilot_diameter,
    screw_withdrawal_allowable,
    screw_withdrawal_ultimate,
    shank_diameter,
)
from boardwright.tables import load_tables

SCREWS = load_tables()[0].screws.values()
POUND = 4.4482216152605
SIXTY_FOURTH = 25.4 / 64


@pytest.mark.parametrize(("N", "printed"), [(4, 2.84), (8, 4.17), (10, 4.83), (14, 6.15), (24, 9.45)])
def test_shanks_of_table_8_9(N, printed):
    assert shank_diameter(N) == pytest.approx(printed, abs=0.006)  # printed to 0.01 mm


@pytest.mark.parametrize("screw", SCREWS, ids=lambda s: s.key)
def test_table_follows_the_shank_rule(screw):
    # ASME B18.6.1 values are 0.060 + 0.013 N in to the printed 0.001.
    assert screw.shank == pytest.approx(shank_diameter(screw.gauge), abs=0.0005 * 25.4)


@pytest.mark.parametrize("screw", SCREWS, ids=lambda s: s.key)
def test_shape_of_a_screw(screw):
    assert screw.root < screw.shank < screw.head
    assert screw.clearance_drill >= screw.shank - 1e-9
    assert screw.pilot_soft <= screw.pilot_hard < screw.root
    assert screw.head / screw.shank == pytest.approx(2, abs=0.11)  # handbook: head is twice the shank


# Printed charts (70 and 90 % of root, SEC. page) for these two round 8.52 and 9.50 sixty-fourths down; the
# nearest drill is one up. The chart is kept: the smaller hole holds more, and both are inside the rule's
# range.
ROUNDED_DOWN = {(12, "pilot_hard"), (14, "pilot_hard")}


@pytest.mark.parametrize("screw", SCREWS, ids=lambda s: s.key)
@pytest.mark.parametrize(("column", "share"), [("pilot_soft", 0.7), ("pilot_hard", 0.9)])
def test_pilots_are_the_nearest_drill(screw, column, share):
    drill = getattr(screw, column) / SIXTY_FOURTH
    assert drill == pytest.approx(round(drill), abs=1e-6)
    exact = pilot_diameter(screw.root, share) / SIXTY_FOURTH
    nearest = abs(drill - exact) <= 0.5
    assert nearest != ((screw.gauge, column) in ROUNDED_DOWN)
    assert abs(drill - exact) < 0.53


@pytest.mark.parametrize("gauge", [6, 8])
def test_clearance_rule(gauge):
    # Furniture-making handbook: (gauge + 3)/64 in; the chart prints 9/64 and 11/64 in.
    screw = next(s for s in SCREWS if s.gauge == gauge)
    assert screw.clearance_drill / SIXTY_FOURTH == pytest.approx(gauge + 3)


@pytest.mark.parametrize(
    ("G", "printed"),
    [(0.63, 279), (0.47, 134), (0.62, 268), (0.55, 199), (0.64, 291), (0.60, 247), (0.68, 338), (0.72, 390)],
)
def test_six_penny_nails(G, printed):
    # Reader service quoting the handbook, 6d common, 0.113 in, lb per inch; whole numbers, .62 is 268.5.
    assert nail_withdrawal_ultimate(G, 0.113 * 25.4, 25.4) / POUND == pytest.approx(printed, abs=0.6)


def test_allowable_withdrawal():
    # Engineering reference site: 109 lb per inch for No. 10, G 0.45; 2850 G^2 D is 109.65, cut off there.
    assert 109 <= screw_withdrawal_allowable(0.45, 0.190 * 25.4, 25.4) / POUND < 110


def test_allowable_is_ultimate_over_five_and_a_half():
    # 15,700 / 2,850 = 5.509.
    ratio = screw_withdrawal_ultimate(0.5, 4.83, 25) / screw_withdrawal_allowable(0.5, 4.83, 25)
    assert ratio == pytest.approx(15700 / 2850, rel=1e-3)  # 108.25 is 15,700 in SI to four figures


def test_four_millimetre_screw():
    # Structural handbook of 2025: with a bored hole, 3 d from an unloaded edge, 7 d from an unloaded end.
    assert edge_distance_unloaded(4, True) == 12
    assert end_distance_unloaded(4, True) == 28
