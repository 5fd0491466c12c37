"""manifold3d against hand arithmetic and against OCCT: volumes, weights, centres of gravity, cells."""

import math
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from boardwright.core.poses import Pose
from boardwright.piece.cuts import Groove, Hole, Notch, Rabbet, Side
from boardwright.piece.records import Part, Piece, Stock
from boardwright.pipeline import check_file
from boardwright.solids import exact
from boardwright.solids.cells import cells
from boardwright.solids.mesh import SEGMENTS, centroid, meshes, volume, weigh
from boardwright.solids.travel import is_boxes

EXAMPLES = sorted((Path(__file__).parents[3] / "examples").glob("*.yaml"))
CHERRY = Stock("cherry", "wood", "black cherry", "", 19.0, 25.0, False, 560.0)
FACETED = SEGMENTS / (2 * math.pi) * math.sin(2 * math.pi / SEGMENTS)
"""Area of a regular polygon over the area of its circle: n/(2 pi) sin(2 pi/n), 0.99715 for 48."""


def part(*cuts, size=(600.0, 300.0, 20.0), pose=None, stock=CHERRY):  # type: ignore[no-untyped-def]
    return Part("p", "part", stock, size, pose or Pose(), cuts)


@cache
def piece(path: Path) -> Piece:
    found = check_file(path).piece
    assert found is not None
    return found


BLANK = 600.0 * 300 * 20


@pytest.mark.parametrize(
    ("cut", "gone"),
    [
        (Groove(Side.FACE, 1, 100.0, 18.0, 6.0, 0.0, 300.0), 18 * 6 * 300),  # dado right across
        (Groove(Side.FACE, 1, 100.0, 18.0, 6.0, 12.0, 300.0), 18 * 6 * 288),  # stopped 12 short
        (Groove(Side.EDGE, 0, 7.0, 6.0, 10.0, 0.0, 600.0), 6 * 10 * 600),  # groove in the edge
        (Groove(Side.END, 1, 7.0, 6.0, 10.0, 0.0, 300.0), 6 * 10 * 300),  # slot in the end
        (Rabbet(Side.FACE, Side.FAR_END, 9.0, 6.0, 0.0, 300.0), 9 * 6 * 300),
        (Rabbet(Side.BACK, Side.EDGE, 9.0, 6.0, 100.0, 500.0), 9 * 6 * 400),
        (Notch(Side.FAR_END, Side.FAR_EDGE, 20.0, 40.0), 20 * 40 * 20),
        (Hole(Side.FACE, (300.0, 150.0), 8.0, 10.0), FACETED * math.pi * 4**2 * 10),
        (Hole(Side.EDGE, (300.0, 10.0), 8.0, 25.0), FACETED * math.pi * 4**2 * 25),
        (Hole(Side.FAR_END, (150.0, 10.0), 8.0, 25.0), FACETED * math.pi * 4**2 * 25),
        # slot: a box of 12 x 5 and two half cylinders
        (
            Hole(Side.FACE, (300.0, 150.0), 5.0, 20.0, True, slot=12.0),
            FACETED * math.pi * 2.5**2 * 20 + 12 * 5 * 20,
        ),
        # countersink of 10 at 90 degrees in a hole of 4: frustum 3 high, radii 5 and 2
        (
            Hole(Side.FACE, (300.0, 150.0), 4.0, 20.0, True, 10.0, 90.0),
            FACETED * (math.pi * 2**2 * 17 + math.pi * 3 / 3 * (25 + 10 + 4)),
        ),
    ],
)
def test_what_a_cut_takes_away(cut, gone) -> None:  # type: ignore[no-untyped-def]
    assert BLANK - volume(part(cut)) == pytest.approx(gone, rel=1e-6)


def test_crossing_cuts_are_counted_once() -> None:
    # two dados 10 wide and 5 deep that cross: 10 x 10 x 5 is taken once
    a = Groove(Side.FACE, 1, 100.0, 10.0, 5.0, 0.0, 300.0)
    b = Groove(Side.FACE, 0, 100.0, 10.0, 5.0, 0.0, 600.0)
    assert BLANK - volume(part(a, b)) == pytest.approx(10 * 5 * 300 + 10 * 5 * 600 - 10 * 10 * 5, rel=1e-9)


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: p.stem)
def test_every_part_of_the_examples_has_one_volume_in_both_kernels(path: Path) -> None:
    for one in {p.letter: p for p in piece(path).parts}.values():
        by_mesh, by_occt = volume(one), exact.volume(exact.part_shape(one))
        if not any(isinstance(c, Hole) for c in one.cuts):
            assert by_mesh == pytest.approx(by_occt, rel=1e-6)
            continue
        # what is drilled is smaller by the facets, at most by 1 - 0.99715 of all of it
        solid = volume(
            Part(
                one.id,
                one.name,
                one.stock,
                one.size,
                one.pose,
                tuple(c for c in one.cuts if not isinstance(c, Hole)),
            )
        )
        drilled = solid - by_occt
        assert -1e-3 <= by_mesh - by_occt <= (1 - FACETED) * drilled * 1.001 + 1e-3


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: p.stem)
def test_cells_make_up_every_part_without_its_holes(path: Path) -> None:
    for one in piece(path).parts:
        plain = Part(
            one.id,
            one.name,
            one.stock,
            one.size,
            one.pose,
            tuple(c for c in one.cuts if not isinstance(c, Hole)),
        )
        if not is_boxes(one):
            continue
        boxes = cells(one)
        assert float((boxes[:, 1] - boxes[:, 0]).prod(axis=1).sum()) == pytest.approx(volume(plain), rel=1e-9)
        assert boxes[:, 0].min(axis=0) == pytest.approx(np.array(one.box.low), abs=1e-6)


def test_weight_of_a_board() -> None:
    # 0.6 x 0.3 x 0.02 m = 0.0036 m3 of 560 kg/m3 = 2.016 kg, in its middle
    weight = weigh([part()])
    assert weight.mass == pytest.approx(2.016)
    assert weight.centre == pytest.approx((300.0, 150.0, 10.0))


def test_centre_of_gravity_of_a_board_with_a_corner_taken_out() -> None:
    # notch 300 x 150 through: 3/4 of the board is left; moment about the end:
    # (600*300*300 - 300*150*150) / (600*300 - 300*150) = 350 along; (600*300*150 - 300*150*75) / 135000 = 175
    # across
    notched = part(Notch(Side.END, Side.EDGE, 300.0, 150.0))
    assert centroid(notched) == pytest.approx((350.0, 175.0, 10.0))


def test_centre_of_gravity_of_two_boards_of_different_woods() -> None:
    # 2.016 kg at x = 300 and 600 kg/m3 on the other, 2.16 kg at x = 1300: (604.8 + 2808) / 4.176 = 817.24
    heavy = Stock("maple", "wood", "sugar maple", "", 19.0, 25.0, False, 600.0)
    weight = weigh([part(), part(pose=Pose((1000.0, 0.0, 0.0)), stock=heavy)])
    assert weight.mass == pytest.approx(4.176)
    assert weight.centre[0] == pytest.approx(817.241, abs=1e-3)


def test_a_turned_part_keeps_its_weight_and_turns_its_centre() -> None:
    # stood on end: length up, width to the left, thickness to the front
    stood = Pose((100.0, 50.0, 0.0), (0.0, 0.0, 1.0), (-1.0, 0.0, 0.0), (0.0, -1.0, 0.0))
    assert centroid(part(pose=stood)) == pytest.approx((100 - 150, 50 - 10, 300.0))
    points, corners = meshes(part(pose=stood))
    assert points.min(axis=0) == pytest.approx((-200.0, 30.0, 0.0))
    assert len(corners) == 12


def test_nothing_weighs_nothing() -> None:
    assert weigh([]).mass == 0.0
