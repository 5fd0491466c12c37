"""Full-extension bars: free bodies, moment lines, integrals and small frames solved apart from the formulas."""

import numpy as np
import pytest

from boardwright.formulas import beams
from boardwright.formulas import extension_bars as bars


def element(EI: float, L: float) -> np.ndarray:
    """Stiffness of a beam element, deflection and slope at both ends (cubic shapes; any text on frames)."""
    return (
        EI
        / L**3
        * np.array(
            [
                [12, 6 * L, -12, 6 * L],
                [6 * L, 4 * L**2, -6 * L, 2 * L**2],
                [-12, -6 * L, 12, -6 * L],
                [6 * L, 2 * L**2, -6 * L, 4 * L**2],
            ]
        )
    )


def solved(EI: float, lengths: list[float], loads: dict[int, float], fixed: dict[int, float]) -> np.ndarray:
    """Deflections and slopes of a row of beam elements; `loads` and `fixed` by number of the freedom."""
    n = 2 * len(lengths) + 2
    K, f, u = np.zeros((n, n)), np.zeros(n), np.zeros(n)
    for i, L in enumerate(lengths):
        K[2 * i : 2 * i + 4, 2 * i : 2 * i + 4] += element(EI, L)
    for i, value in loads.items():
        f[i] = value
    free = [i for i in range(n) if i not in fixed]
    for i, value in fixed.items():
        u[i] = value
    u[free] = np.linalg.solve(
        K[np.ix_(free, free)], f[free] - K[np.ix_(free, list(fixed))] @ list(fixed.values())
    )
    return u


@pytest.mark.parametrize(("a", "E"), [(180.0, 220.0), (40.0, 300.0), (250.0, 130.0)])
def test_the_forces_of_the_case_hold_the_bar_still(a: float, E: float) -> None:
    """Free body: down P at `a` before the mouth, up at the mouth, down at the tail: no force, no moment left."""
    P = 60.0
    mouth, tail = bars.mouth_force(P, a, E), bars.tail_force(P, a, E)
    assert mouth - tail == pytest.approx(P)
    for about in (-a, 0.0, E / 3):  # moments about any point; x grows into the case
        assert -P * (-a - about) + mouth * (0 - about) - tail * (E - about) == pytest.approx(
            0, abs=1e-9 * P * E
        )


@pytest.mark.parametrize(
    ("x", "E", "out"), [(35.0, 158.0, 159.0), (-60.0, 200.0, 230.0), (20.0, 210.0, 180.0)]
)
def test_the_greatest_moment_is_that_of_the_moment_line(x: float, E: float, out: float) -> None:
    """Point loads along the bar, from its front end: the drawer's two forces, the case's two; the line is sampled."""
    P, inside = 50.0, 240.0
    front = bars.front_force(P, x, E)
    rear = P - front  # down on the bar where the drawer's groove ends
    a = x + out
    loads = [
        (0.0, front),
        (E, rear),
        (out, -bars.mouth_force(P, a, inside)),
        (out + inside, bars.tail_force(P, a, inside)),
    ]
    assert sum(force for _, force in loads) == pytest.approx(0)
    marks = [*np.linspace(0, out + inside, 4001).tolist(), E, out]
    line = [sum(force * (s - at) for at, force in loads if at < s) for s in marks]
    assert bars.greatest_moment(P, x, E, out) == pytest.approx(max(line), rel=2e-3)


@pytest.mark.parametrize(
    ("t", "h", "w", "W", "D"), [(15, 15, 4, 9, 4.5), (12.7, 19, 3.2, 9.5, 4.8), (9, 14, 4, 14, 5)]
)
def test_the_section_is_the_integral_over_its_height(
    t: float, h: float, w: float, W: float, D: float
) -> None:
    z = (np.arange(200000) + 0.5) / 200000 * h - h / 2
    wide = np.where(abs(z) < w / 2, 0.0, t - D * np.clip(1 - 2 * abs(z) / W, 0, None))
    assert bars.slotted_second_moment(t, h, w, W, D) == pytest.approx(
        (wide * z**2).sum() * h / 200000, rel=1e-5
    )
    # without a slot and a V it is the rectangle of `beams`
    assert bars.slotted_second_moment(t, h, 0, W, 0) == pytest.approx(beams.second_moment(t, h))


def test_lands_are_beams_held_at_both_ends() -> None:
    """A land solved as a beam of ten elements: one end held, the other held from turning and pushed by V/2."""
    V, S, t, c, E = 45.0, 160.0, 11.0, 5.5, 12000.0
    inertia = beams.second_moment(t, c)
    u = solved(E * inertia, [S / 10] * 10, {20: V / 2}, {0: 0.0, 1: 0.0, 21: 0.0})
    moment = abs((element(E * inertia, S / 10) @ u[:4])[1])
    assert bars.land_stress(V, S, t, c) == pytest.approx(beams.bending_stress(moment, t, c), rel=1e-9)
    # held to the play of its groove, the same land pushed that far
    play = 0.8
    u = solved(E * inertia, [S / 10] * 10, {}, {0: 0.0, 1: 0.0, 20: play, 21: 0.0})
    moment = abs((element(E * inertia, S / 10) @ u[:4])[1])
    assert bars.land_stress_held(E, play, S, c) == pytest.approx(beams.bending_stress(moment, t, c), rel=1e-9)


def test_the_overhang_is_the_cantilever_of_the_handbook() -> None:
    P, a, E, inertia = 50.0, 190.0, 12000.0, 4000.0
    kb = beams.LOADINGS["end point, cantilever"].kb
    end = beams.deflection(P, a, E, inertia, float("inf"), kb, 0)
    assert bars.overhang_tilt(P, a, E, inertia) * a == pytest.approx(end)


@pytest.mark.parametrize("curvature", [0.0, 2e-5, 1.1e-4, 1.6e-4, 4e-4, 9e-4])
def test_the_tilt_is_that_of_a_beam_that_may_not_leave_its_groove(curvature: float) -> None:
    """A beam turned at its mouth in a groove with play 1: it bears behind at the first of many places at which it
    does not go through the upper wall; solved by elements, place by place.
    """
    E, play, n, EI = 200.0, 1.0, 200, 5e7
    found = None
    for bears in range(n, 0, -1):
        u = solved(EI, [E / n] * bears, {1: curvature * EI}, {0: 0.0, 2 * bears: play})
        if u[0::2].max() <= play + 1e-9:
            found = u[1]
            break
    assert found is not None
    assert bars.tilt_in_groove(play, E, curvature) == pytest.approx(found, rel=0.01)


@pytest.mark.parametrize(("a", "E"), [(200.0, 200.0), (0.0, 150.0), (60.0, 240.0)])
def test_the_pressure_holds_the_load(a: float, E: float) -> None:
    """The straight line of pressure with this greatest value sums up to the load and its moment."""
    P, b = 70.0, 6.0
    most = bars.wall_pressure(P, a, E, b)
    least = 2 * P / (b * E) - most  # the mean is P / (b E)
    s = (np.arange(100000) + 0.5) / 100000 * E
    pressure = most + (least - most) * s / E
    assert (pressure * b).sum() * E / 100000 == pytest.approx(P)
    assert (pressure * b * s).sum() * E / 100000 == pytest.approx(-P * a, rel=1e-4, abs=1e-2)


def test_recess_and_head_are_inverse() -> None:
    for head, turn in ((5.7, 1.15), (7.1, 1.41)):
        W = bars.recess_width(head, turn)
        assert bars.sunk_head(W, head) == pytest.approx(turn)
        assert bars.recess_depth(W) == pytest.approx(W / 2)  # a V of 90 degrees


def test_a_drawer_let_out_step_by_step_stops_at_the_full_travel() -> None:
    """Bar and drawer are moved by turns until both screws meet the ends of their slots."""
    rng = np.random.default_rng(7)
    L, block, web, D = 420.0, 12.0, 20.0, 2.84
    front = rear = (L - web) / 2  # cuts from both ends
    case_at, drawer_at = L - rear + D / 2, front - D / 2  # along the bar, when shut
    bar = drawer = 0.0
    for step in rng.uniform(0, 9, 2000):
        # the bar may go on until the case's screw meets the rear block, the drawer until its own meets the front one
        if rng.random() < 0.5:
            bar, drawer = _moved(bar, drawer, step, 0.0, L, block, D, case_at, drawer_at)
        else:
            bar, drawer = _moved(bar, drawer, 0.0, step, L, block, D, case_at, drawer_at)
    assert drawer == pytest.approx(bars.full_travel(front - block, rear - block, D), abs=1e-9)


def _moved(
    bar: float,
    drawer: float,
    push: float,
    pull: float,
    L: float,
    block: float,
    D: float,
    case_at: float,
    own: float,
) -> tuple[float, float]:
    """Bar pushed out (it takes the drawer along), or the drawer pulled off the bar; screws stop both [mm]."""
    push = min(push, L - block - D / 2 - (case_at + bar))
    bar, drawer = bar + push, drawer + push
    pull = min(pull, own - (drawer - bar) - (block + D / 2))
    return bar, drawer + pull
