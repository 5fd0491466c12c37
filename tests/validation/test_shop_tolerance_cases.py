"""Errors that add up, against situations from practice and published figures.

Situations from practice: trade blogs, forums, question pages and magazine articles, each with its answer recomputed
from first principles there; the tolerance stands beside the answer.
"""

import pytest
from scipy.stats import norm

from boardwright.checks.shop import Shop
from boardwright.checks.tolerance.builds import gap
from boardwright.checks.tolerance.chains import Link
from boardwright.formulas.tolerances import (
    mitre_error,
    mitre_gap,
    room_for_share,
    root_sum_square,
    share_below,
    taper_reach,
    worst_case,
)

IN = 25.4
STILL = (8.0, 8.0, 8.0)


def exact(**plus_or_minus: float) -> Shop:
    return Shop({"square": 0.0, **plus_or_minus})


def test_four_stiles_of_a_pair_of_doors():
    # Trade forum digest: opening 40 in, three gaps of 5/64 in; rails with 1/2 in stubs at both ends, 12.125 in as
    # rounded; stiles 4 3/8 in, each 1/64 too wide off one setting: pair 1/16 in too wide, 27 % of the gaps (1/64 in).
    stile, rail = 4.375 * IN, 12.125 * IN
    door = (
        Link(("rip", "", 111.12), stile, 0.0),
        Link(("crosscut", "", 307.98), rail - IN, 0.0),
        Link(("rip", "", 111.12), stile, 0.0),
    )
    opening = (Link(("fixed", "", 1016.0), 40 * IN, 0.0),)
    g = gap(40 * IN - 2 * (2 * stile + rail - IN), opening, door * 2, STILL)
    shop = exact(rip=IN / 64, crosscut=0.0, fixed=0.0)
    assert g.worst(shop) == pytest.approx(IN / 16, abs=IN / 640)
    assert g.worst(shop) / (15 / 64 * IN) == pytest.approx(0.27, abs=0.005)
    # 2 x 0.0078 in: the rounding of the rails leaves the pair so much narrower (1/64 in)
    assert g.size - 15 / 64 * IN == pytest.approx(0.0156 * IN, abs=IN / 640)


def test_one_error_over_six_boxes():
    # Trade magazine article: 1/2 in over six boxes side by side is 0.083 in each, two sides and a joint, about 1/24 for
    # each side panel; half of a box of 23.6042 in with 3/4 in scribe strips (1/32 in).
    each = 0.5 / 6
    assert worst_case([each * IN] * 6) == pytest.approx(0.5 * IN)
    assert each / 2 == pytest.approx(1 / 24, abs=1 / 320)
    boxes = gap(143.125 * IN - 6 * 23.6042 * IN, (), (Link(("rip", "", 1.0), 23.6042 * IN, 0.0),) * 6, STILL)
    assert boxes.size == pytest.approx(1.5 * IN, abs=IN / 320)
    assert boxes.worst(exact(rip=each * IN)) == pytest.approx(0.5 * IN)


def test_drawer_between_slides():
    # Cabinetmaker's blog: opening as built 20 15/16 in, two slides 1 in, sides together 0.945 in: what stands between
    # them at most 18.9925 in; cut from the drawing at 19 in the box is 0.0075 in over (+0, -1/16 in on the box).
    sides = Link(("thickness", "pair", 24.0), 0.945 * IN, 0.0)
    for length, room in ((18.9925, 0.0), (19.0, -0.0075), (18.9688, 0.0237)):
        front = Link(("crosscut", "", 1.0), length * IN, 0.0)
        g = gap((20.9375 - 1.0 - 0.945 - length) * IN, (), (sides, front), STILL)
        assert g.size == pytest.approx(room * IN, abs=0.0005 * IN)
        assert (g.size < -1e-6) is (length == 19.0)


def test_drawer_in_an_opening_that_tapers():
    # Magazine articles on fitting drawers: 20.000 in at the front, 19.940 at the back, 18 deep; 19.969 wide goes in
    # 9.3 in (0.3 in); 17 1/2 in long with 1/64 in to spare: 19.926 in (0.005 in).
    assert taper_reach(20, 19.94, 18, 19.969) == pytest.approx(9.3, abs=0.3)
    at_its_end = 20 - 0.06 * 17.5 / 18
    assert taper_reach(20, 19.94, 18, at_its_end) == pytest.approx(17.5)
    assert at_its_end - 1 / 64 == pytest.approx(19.926, abs=0.005)


def test_mitres_round_an_octagon():
    # Tool-setting article: 8 parts, 2 in joints, 0.25 degrees each cut: 0.140 in (0.005 in); 1/64 in: 0.028 degrees;
    # four sides of 3 in: 0.037 degrees (0.002 degrees).
    assert mitre_gap(2, 16, 0.25) == pytest.approx(0.140, abs=0.005)
    assert mitre_error(1 / 64, 2, 16) == pytest.approx(0.028, abs=0.002)
    assert mitre_error(1 / 64, 3, 8) == pytest.approx(0.037, abs=0.002)


def test_panel_in_real_dados():
    # Shop tip page: 36 in outside, sides of 23/32 in, dados 1/4 in deep: the bottom is 35 1/16 in; cut 35 in the case
    # comes out 1/16 in narrow (1/64 in).
    side = Link(("thickness", "side", 18.26), 23 / 32 * IN, 0.0)
    dado = Link(("groove_depth", "", 6.35), -0.25 * IN, 0.0)
    bottom = Link(("crosscut", "", 1.0), 35.0625 * IN, 0.0)
    outside = sum(k.size for k in (side, dado, bottom, dado, side))
    assert outside == pytest.approx(36 * IN, abs=IN / 640)
    # a dado that is 1/64 deeper makes the case narrower by twice as much
    g = gap(0.0, (side, dado, bottom, dado, side), (), STILL)
    assert dict(g.errors)[dado.setting] == -2


@pytest.mark.parametrize(
    ("z", "area"), [(0.5, 0.19146), (1.0, 0.34134), (1.96, 0.475), (2.58, 0.49506), (3.0, 0.49865)]
)
def test_shares_of_the_normal_distribution(z, area):
    # NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.1: area from 0 to z, five places.
    assert 0.5 - share_below(-z, 0, 1) == pytest.approx(area, abs=1e-5)
    assert share_below(-z, 0, 1) == pytest.approx(norm.sf(z), rel=1e-9)
    assert room_for_share(share_below(-z, 0, 1), 2.5) == pytest.approx(2.5 * z, rel=1e-6)


def test_end_gauge():
    # JCGM 100:2008, H.1: 25, 9.7, 2.9 and 16.6 nm: 32 nm (figures from memory).
    assert root_sum_square([25, 9.7, 2.9, 16.6]) == pytest.approx(32, abs=0.5)


def test_random_errors_grow_with_the_root_of_their_count():
    # Common practice for a chain of n alike cuts: the square root of n times one.
    assert root_sum_square([0.4] * 9) == pytest.approx(3 * 0.4)
