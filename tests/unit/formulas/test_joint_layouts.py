"""Layouts of fingers and dovetails: sums worked by hand, and laws that hold for every width.

Proportions: an odd number of fingers, each half to all of the thickness; tails 3/4 to 1 1/2 in and 2 to 3 times a pin;
no pin and no root of a tail narrower than the tool; slopes 1:6 and 1:8 (common practice; the pair 1:6 and 1:8 in a
furniture-making magazine anthology of 2007, p. 84).
"""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from boardwright.core.steps import steps_in
from boardwright.formulas.dovetail_layout import dovetail_layout, hidden_in, least_width
from boardwright.formulas.finger_layout import finger_layout

IN = 25.4


def test_fingers_that_come_out_even() -> None:
    """4 1/8 in of 3/8 fingers: 11 of them."""
    layout = finger_layout(4.125 * IN, 0.375 * IN, IN / 32)
    assert [round(m / IN, 6) for m in layout.marks] == [0.375 * i for i in range(12)]
    assert (len(layout.outer), len(layout.inner)) == (6, 5)
    assert layout.left == pytest.approx(0.0, abs=1e-9)


def test_fingers_with_something_left() -> None:
    """7 7/8 in of 1/2 fingers: 15, and 3/8 left, 3/16 for each outer finger; even at 7 1/2 and 8 1/2."""
    layout = finger_layout(7.875 * IN, 0.5 * IN, IN / 32)
    widths = [round((b - a) / IN, 6) for a, b in pairwise(layout.marks)]
    assert widths == [0.6875, *[0.5] * 13, 0.6875]
    assert [round(w / IN, 6) for w in layout.exact] == [7.5, 8.5]


def test_dovetails_of_a_drawer_side() -> None:
    """A side 6 in high and 1/2 thick, tails 9/16 long at 1:8, half pins 1/4, pins 3/16, four tails.

    6 - 2/4 - 3 x 3/16 = 4 15/16; a quarter of it is 1 15/64, so 1 7/32 on the step of 1/32, and 1/16 is left over:
    1/32 more for each half pin. At the root each tail is 9/16 / 8 = 9/128 narrower on each side.
    """
    layout = dovetail_layout(6 * IN, 9 / 16 * IN, 1 / 8, 3 / 16 * IN, IN / 4, IN / 8, IN / 32, tails=4)
    pins = [round((b - a) / IN, 6) for a, b in layout.pins]
    assert pins == [9 / 32, 3 / 16, 3 / 16, 3 / 16, 9 / 32]
    assert {round((b - a) / IN, 6) for a, b in layout.tails} == {1.21875}
    assert {round((b - a) / IN, 6) for a, b in layout.roots} == {1.21875 - 9 / 64}
    assert {round((b - a) / IN, 6) for a, b in layout.pin_roots[1:-1]} == {3 / 16 + 9 / 64}


def test_a_graduated_row() -> None:
    """Weights fall from 1.6 to 1; four tails in 4 15/16: 1.6, 1.4, 1.2, 1.0 of 5.2 in all, down to 1/32."""
    layout = dovetail_layout(
        6 * IN, 9 / 16 * IN, 1 / 8, 3 / 16 * IN, IN / 4, IN / 8, IN / 32, tails=4, graduated=True
    )
    sizes = [round((b - a) / IN * 32) for a, b in layout.tails]
    assert sizes == [int(158 * w / 5.2) for w in (1.6, 1.4, 1.2, 1.0)]


def test_a_groove_that_needs_a_narrower_half_pin() -> None:
    """Groove 1/4 to 1/2 up, tails 3/4 long at 1:8: root 3/32. A half pin of 1/4 would end at 11/32; 5/32 at 1/4."""
    sizes = (4 * IN, 0.75 * IN, 1 / 8, IN / 4, IN / 4, IN / 8, IN / 32)
    groove = [(IN / 4, IN / 2)]
    plain = dovetail_layout(*sizes)
    assert not hidden_in(plain.roots, groove[0], plain.width)
    moved = dovetail_layout(*sizes, hide=groove, least_half=IN / 8)
    assert hidden_in(moved.roots, groove[0], moved.width)
    assert moved.pins[0][1] / IN <= 5 / 32
    firm = dovetail_layout(*sizes, hide=groove)
    assert firm.pins[0][1] >= IN / 4 - 1e-9


STEPS = st.sampled_from([IN / 16, IN / 32, IN / 64, 0.5, 1.0])


@settings(max_examples=300, deadline=None)
@given(step=STEPS, width=st.integers(30, 1200), pitch=st.integers(3, 25))
def test_fingers_close(step: float, width: int, pitch: int) -> None:
    whole, one = width * step, pitch * step
    if whole < 3 * one:
        with pytest.raises(ValueError):
            finger_layout(whole, one, step)
        return
    layout = finger_layout(whole, one, step)
    ends = sorted((*layout.outer, *layout.inner))
    assert ends[0][0] == 0.0
    assert ends[-1][1] == whole
    assert all(abs(a[1] - b[0]) < 1e-9 for a, b in pairwise(ends))
    assert all(steps_in(m, step) is not None for m in layout.marks)
    widths = [b - a for a, b in ends]
    assert all(abs(w - one) < 1e-6 for w in widths[1:-1])
    assert len(widths) % 2 == 1
    assert all(one - 1e-6 <= w < 2 * one + step for w in (widths[0], widths[-1]))
    assert abs(widths[0] - widths[-1]) <= step + 1e-6
    below, above = layout.exact
    assert below <= whole + 1e-6 < above


@settings(max_examples=300, deadline=None)
@given(
    step=STEPS,
    width=st.integers(20, 2000),
    thick=st.floats(6.0, 40.0),
    slope=st.sampled_from([1 / 5, 1 / 6, 1 / 7, 1 / 8]),
    tool=st.floats(1.5, 10.0),
    half=st.floats(2.0, 12.0),
    tails=st.one_of(st.none(), st.integers(1, 12)),
    graduated=st.booleans(),
    ends=st.tuples(st.booleans(), st.booleans()),
    at=st.one_of(st.none(), st.floats(0.0, 40.0)),
)
def test_dovetails_close(
    step: float,
    width: int,
    thick: float,
    slope: float,
    tool: float,
    half: float,
    tails: int | None,
    graduated: bool,
    ends: tuple[bool, bool],
    at: float | None,
) -> None:
    whole, pin = width * step, max(0.35 * thick, tool)
    hide = [] if at is None else [(at, at + 6.0)]
    few = tails or (1 if any(ends) else 2)
    least = least_width(thick, slope, pin, half, tool, few, ends)
    try:
        layout = dovetail_layout(
            whole, thick, slope, pin, half, tool, step, tails, graduated, ends, hide, tool if hide else None
        )
    except ValueError:
        # only where it is narrow: settling takes at most a step from each tail, pin and half pin, and the narrowest
        # of a graduated row is 1 of a mean of 1.3
        allowance = (2 * few + 3) * step + few * 0.3 * (tool + 2 * thick * slope) * graduated
        assert (few < 2 and not any(ends)) or whole <= least + allowance + 1e-9
        return
    assert whole >= least_width(thick, slope, pin, min(half, tool), tool, few, ends) - 1e-6
    assert tails is None or len(layout.tails) == tails
    ordered = sorted((*layout.tails, *layout.pins))
    assert ordered[0][0] == 0.0
    assert ordered[-1][1] == pytest.approx(whole, abs=1e-9)
    assert all(abs(a[1] - b[0]) < 1e-9 for a, b in pairwise(ordered))
    assert all(steps_in(v, step) is not None for tail in layout.tails for v in tail)
    assert all(b - a >= tool - 1e-6 for a, b in layout.pins)
    assert all(b - a >= tool - 1e-6 for a, b in layout.roots)
    assert (layout.pins[0][0] == 0.0) == ends[0]
    assert (layout.pins[-1][1] == pytest.approx(whole, abs=1e-9)) == ends[1]
    if tails is None and not graduated and whole > 200:
        assert all(10.0 <= b - a <= 60.0 or b - a <= 4 * pin for a, b in layout.tails)
    for (a, b), (ra, rb) in zip(layout.tails, layout.roots, strict=True):
        narrower = (a > 0) + (b < layout.width)
        assert (b - a) - (rb - ra) == pytest.approx(narrower * thick * slope)
