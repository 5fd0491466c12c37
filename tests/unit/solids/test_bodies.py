"""Parts as convex bodies: they fill the part, and say the same as the solids."""

from pathlib import Path

import numpy as np
import pytest
from manifold3d import Manifold

from boardwright.library import check, load
from boardwright.piece.cuts import Hole
from boardwright.solids.bodies import Bodies, bodies_of
from boardwright.solids.frames import form_of, undrilled
from boardwright.solids.mesh import part_solid, shape

EXAMPLES = Path(__file__).parents[3] / "examples"
MITRED = ["lace-cabinet", "pattern-chest", "thread-table"]


@pytest.mark.parametrize("name", MITRED)
def test_the_bodies_fill_the_part(name):
    piece = check(load(EXAMPLES / f"{name}.yaml")).piece
    assert piece is not None
    for part in {p.letter: p for p in piece.parts}.values():
        form = undrilled(form_of(part))
        found = bodies_of(form)
        ends = np.cumsum(found.counts)[:-1]
        hulls = [Manifold.hull_points(p) for p in np.split(found.points, ends)]
        whole = shape(form.size, form.cuts)
        if all(found.whole):
            assert sum(h.volume() for h in hulls) == pytest.approx(whole.volume(), rel=1e-5), part.id
        else:
            assert sum(h.volume() for h in hulls) >= whole.volume() * (1 - 1e-5), part.id


@pytest.mark.parametrize("name", MITRED)
def test_two_boards_that_are_pushed_together_share_room_when_the_bodies_say_so(name):
    # each part is pushed 2 mm along each axis and intersected with every other: what the solids meet, the bodies meet
    piece = check(load(EXAMPLES / f"{name}.yaml")).piece
    assert piece is not None
    parts = [p for p in piece.parts if not any(isinstance(c, Hole) for c in p.cuts)]
    solids = [part_solid(p) for p in parts]
    bodies = Bodies.of(parts)
    asked = ~np.eye(len(parts), dtype=bool)
    for axis in range(3):
        way = [0.0, 0.0, 0.0]
        way[axis] = 2.0
        met = np.array(
            [[float((one.translate(way) ^ two).volume()) > 0.05 for two in solids] for one in solids]
        )
        sure, unknown = bodies.meet(asked, tuple(v / 2 for v in way))
        assert not (met & asked & ~sure & ~unknown).any()
