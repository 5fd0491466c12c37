"""The boxes round a part that stands askew hold all of it."""

import itertools
import math

import pytest

from boardwright.core.poses import Pose
from boardwright.piece.records import Part, Stock
from boardwright.solids.cells import cells

STOCK = Stock("oak", "wood", "white oak", "oak_white", 40.0, 40.0, False, 700.0)


@pytest.mark.parametrize("turn", [0.0, 30.0, 45.0, 90.0])
@pytest.mark.parametrize("tip", [0.0, 20.0, 60.0])
def test_the_box_of_a_turned_part_reaches_its_corners(turn: float, tip: float) -> None:
    c, s = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    d, t = math.cos(math.radians(tip)), math.sin(math.radians(tip))
    pose = Pose((5.0, 6.0, 7.0), (c * d, s * d, -t), (-s, c, 0.0), (c * t, s * t, d))
    part = Part("leg", "leg", STOCK, (500.0, 60.0, 40.0), pose)
    corners = [pose.point((x, y, z)) for x, y, z in itertools.product((0, 500), (0, 60), (0, 40))]
    box = cells(part)[0]
    for axis in range(3):
        assert box[0][axis] == pytest.approx(min(p[axis] for p in corners))
        assert box[1][axis] == pytest.approx(max(p[axis] for p in corners))
