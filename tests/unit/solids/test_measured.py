"""Volume and centre without the solid."""

import math

import pytest

from boardwright.piece.cuts import Hole, Side
from boardwright.solids.frames import form
from boardwright.solids.measured import room_of
from boardwright.solids.mesh import SEGMENTS, shape


def hole(x: float, y: float, **more: object) -> Hole:
    return Hole(side=Side.FACE, at=(x, y), diameter=8.0, **more)  # type: ignore[arg-type]


def test_a_hole_through_a_board_takes_a_prism_of_as_many_sides_as_a_circle_has_facets():
    # area of a regular polygon in a circle of radius 4 mm: n / 2 r2 sin(2 pi / n)
    taken = SEGMENTS / 2 * 16 * math.sin(2 * math.pi / SEGMENTS) * 20
    found = room_of(form((100.0, 50.0, 20.0), (hole(25.0, 25.0, depth=20.0, through=True),)))
    assert found.volume == pytest.approx(100 * 50 * 20 - taken, abs=1e-3)
    # moments: the board's middle at 50, the hole's at 25
    assert found.centre[0] == pytest.approx((100e3 * 50 - taken * 25) / (100e3 - taken), abs=1e-6)
    assert found.centre[1:] == pytest.approx((25.0, 10.0), abs=1e-6)


@pytest.mark.parametrize("at", [(25.0, 25.0), (2.0, 25.0), (31.0, 25.0)])
def test_it_is_the_volume_of_the_solid_where_holes_meet_an_edge_or_each_other(at):
    cuts = (hole(*at, depth=12.0), hole(34.0, 25.0, depth=20.0, through=True))
    size = (100.0, 50.0, 20.0)
    assert room_of(form(size, cuts)).volume == pytest.approx(float(shape(size, cuts).volume()), abs=1e-3)
