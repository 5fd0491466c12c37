"""Beams, columns and frames against a general finite-element library for plane structures (anaStruct)."""

from itertools import pairwise

import pytest
from anastruct import SystemElements

from boardwright.checks.door_frames import end_moment
from boardwright.checks.racking import greatest_corner
from boardwright.formulas.beams import LOADINGS, deflection
from boardwright.formulas.joint_strength import buckling_load

STIFF = 1e12
"""Axial stiffness with which lengthening does not count [N]."""
RIGID = 1e9
"""The same where the bending stiffness is 1."""


def sag(ss, parts, nodes):
    """Greatest deflection across the beam [mm]."""
    ss.solve()
    return max(abs(ss.get_node_displacements(n)["uy"]) for n in nodes)


def beam(span, EI, ends, load, parts=40):
    ss = SystemElements(EA=STIFF, EI=EI)
    for i in range(parts):
        ss.add_element([[i * span / parts, 0], [(i + 1) * span / parts, 0]])
    last = parts + 1
    if ends == "simple":
        ss.add_support_hinged(1)
        ss.add_support_roll(last)
    elif ends == "clamped":
        ss.add_support_fixed([1, last])
    else:
        ss.add_support_fixed(1)
    load(ss, parts, last)
    return sag(ss, parts, range(1, last + 1))


def evenly(W, span):
    return lambda ss, parts, last: [ss.q_load(q=-W / span, element_id=i + 1) for i in range(parts)]


def at(W, *places):
    return lambda ss, parts, last: [ss.point_load(1 + round(p * parts), Fy=-W / len(places)) for p in places]


CASES = [
    ("uniform", "simple", lambda W, L: evenly(W, L)),
    ("uniform, clamped", "clamped", lambda W, L: evenly(W, L)),
    ("uniform, cantilever", "free", lambda W, L: evenly(W, L)),
    ("midspan point", "simple", lambda W, L: at(W, 0.5)),
    ("midspan point, clamped", "clamped", lambda W, L: at(W, 0.5)),
    ("quarter points", "simple", lambda W, L: at(W, 0.25, 0.75)),
    ("end point, cantilever", "free", lambda W, L: at(W, 1.0)),
]


@pytest.mark.parametrize(("name", "ends", "load"), CASES, ids=[c[0] for c in CASES])
def test_beams(name, ends, load):
    # a shelf of 900 x 300 x 19 mm, E 12400, 360 N; the constants of Wood Handbook table 9-1, bending alone
    W, L, EI = 360.0, 900.0, 12400 * 300 * 19**3 / 12
    ours = deflection(W, L, 1.0, EI, float("inf"), LOADINGS[name].kb, LOADINGS[name].ks)
    assert beam(L, EI, ends, load(W, L)) == pytest.approx(ours, rel=2e-4)


def corners(heights, width, beam_EI, push):
    """Moments at the corners of a case: two sides hinged on the floor, levels at these heights, pushed at the top."""
    ss = SystemElements(EA=RIGID, EI=1.0)
    places = [0.0, *heights]
    for x in (0.0, width):
        for a, b in pairwise(places):
            ss.add_element([[x, a], [x, b]], EA=RIGID, EI=1.0)
    levels = [ss.add_element([[0.0, z], [width, z]], EA=RIGID, EI=beam_EI) for z in heights]
    for x in (0.0, width):
        ss.add_support_hinged(ss.find_node_id([x, 0.0]))
    ss.point_load(ss.find_node_id([0.0, heights[-1]]), Fx=push)
    ss.solve()
    found = []
    for id in levels:
        moment = ss.get_element_results(element_id=id, verbose=True)["M"]
        found += [abs(moment[0]), abs(moment[-1])]
    return found


@pytest.mark.parametrize(
    "heights", [(0.05, 1.5), (0.05, 0.5, 1.0, 1.5), (0.06, 0.3, 0.6), (0.05, 0.4, 0.8, 1.2, 1.6)]
)
@pytest.mark.parametrize("width", [0.5, 1.0])
def test_corners_of_an_open_case_share_the_push(heights, width):
    # Sides and levels of one stiffness. All corner moments together are push times height; the worst is no more than
    # ours, and ours no more than a third over it.
    push = 222.0
    found = corners(heights, width, 1.0, push)
    whole = push * heights[-1]
    assert sum(found) == pytest.approx(whole, rel=1e-6)
    ours = greatest_corner(whole, len(heights))
    assert max(found) <= ours <= 4 / 3 * max(found)


@pytest.mark.parametrize("heights", [(0.06, 0.06), (0.06, 0.085)])
@pytest.mark.parametrize("size", [(0.4, 0.6), (0.5, 1.2), (0.35, 0.35)])
def test_joints_of_a_door_frame_share_the_load(heights, size):
    # Two stiles of 57 mm and two rails, hung at two places of one stile, a load down the other: the rails' end moments
    # together are load times distance; the greatest is no more than ours, and ours no more than a third over it.
    wide, high = size
    P, thick = 150.0, 0.019
    ss = SystemElements(EA=RIGID, EI=1.0)
    ends = [0.0, 0.1 * high, 0.9 * high, high]
    stile = thick * 0.057**3 / 12
    for a, b in pairwise(ends):
        ss.add_element([[0.0, a], [0.0, b]], EA=RIGID, EI=1e10 * stile)
    ss.add_element([[wide, 0.0], [wide, high]], EA=RIGID, EI=1e10 * stile)
    own = [thick * h**3 / 12 for h in heights]
    rails = [
        ss.add_element([[0.0, z], [wide, z]], EA=RIGID, EI=1e10 * second)
        for z, second in zip((0.0, high), own, strict=True)
    ]
    ss.add_support_hinged(ss.find_node_id([0.0, 0.1 * high]))
    ss.add_support_roll(ss.find_node_id([0.0, 0.9 * high]), direction=1)
    ss.point_load(ss.find_node_id([wide, high]), Fy=-P)
    ss.solve()
    found = []
    for id in rails:
        moments = ss.get_element_results(element_id=id, verbose=True)["M"]
        found.append((abs(moments[0]), abs(moments[-1])))
    assert sum(a + b for a, b in found) == pytest.approx(P * wide, rel=0.02)
    worst = max(max(ends) for ends in found)
    assert worst <= end_moment(P, wide, 2) <= 4 / 3 * worst


def test_column_by_second_order_sway():
    # A cantilever with P on it and a small push sways 1/(1 - P/Pcr) times as far; Pcr read from the library's
    # geometrically non-linear solution at a tenth of the load.
    E_I, L, F = 1.5e8, 700.0, 1.0
    critical = buckling_load(1.0, E_I, L, 2.0)
    P = critical / 10
    ss = SystemElements(EA=STIFF, EI=E_I)
    for i in range(10):
        ss.add_element([[0, i * L / 10], [0, (i + 1) * L / 10]])
    ss.add_support_fixed(1)
    ss.point_load(11, Fx=F, Fy=-P)
    ss.solve(geometrical_non_linear=True)
    sway = abs(ss.get_node_displacements(11)["ux"])
    first = F * L**3 / (3 * E_I)
    assert sway / first == pytest.approx(1 / (1 - P / critical), rel=0.02)
