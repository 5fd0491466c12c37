"""Directional blocking graphs against what is known of them, a graph library, and solids moved in steps.

R. H. Wilson and J.-C. Latombe, "Geometric reasoning about mechanical assembly", Artificial Intelligence 71 (1994),
371-396, from memory: an arrow from i to j when i, moved along d, meets j; the graph of -d has every arrow turned
round; some parts can be moved together along d from the others exactly when the graph is not strongly connected.
Strong components are those of scipy.sparse.csgraph.
"""

import itertools
import random
import sys
from pathlib import Path

import numpy as np
import pytest
from scipy.sparse.csgraph import connected_components

sys.path.insert(0, str(Path(__file__).parents[1] / "unit" / "solids"))

from assembly_pieces import FRONT, X, Y, Z, joint, part, piece

from boardwright.core.poses import Pose, Vec
from boardwright.piece.cuts import Pins, Side, Tails
from boardwright.piece.records import Piece
from boardwright.pipeline import check_file
from boardwright.solids.assembly import assembly_of
from boardwright.solids.bench import bench, bits
from boardwright.solids.blocking import Blocking, blocking
from boardwright.solids.mesh import part_solid
from boardwright.solids.taking_apart import come_apart

EXAMPLE = Path(__file__).parents[2] / "examples" / "bolt-shelves.yaml"


def arrows(block: Blocking, d: Vec) -> set[tuple[int, int]]:
    row = block.rows[block.directions.index(d)]
    return {(i, j) for i, met in enumerate(row) for j in bits(met)}


def test_the_example_of_three_blocks() -> None:
    """Three blocks in a row, a step between the first two: worked by hand.

    Seen from the front, b stands on a ledge of a; c lies to the right of both.
    """
    blocks = [
        part("a", (0, 0, 0), (40.0, 10.0, 10.0)),
        part("b", (0, 0, 10), (20.0, 10.0, 10.0)),
        part("c", (40, 0, 0), (10.0, 10.0, 20.0)),
    ]
    block = blocking(blocks)
    assert arrows(block, Z) == {(0, 1)}
    assert arrows(block, X) == {(0, 2), (1, 2)}
    assert arrows(block, FRONT) == set()


def test_the_graph_of_the_other_way_has_every_arrow_turned_round() -> None:
    whole = check_file(EXAMPLE).piece
    assert whole is not None
    block = blocking(whole.parts, whole.joints)
    for d in block.directions:
        back = (-d[0] + 0.0, -d[1] + 0.0, -d[2] + 0.0)
        assert arrows(block, d) == {(j, i) for i, j in arrows(block, back)}


def test_arrows_agree_with_solids_moved_in_steps() -> None:
    whole = check_file(EXAMPLE).piece
    assert whole is not None
    block = blocking(whole.parts)
    solids = [part_solid(p) for p in whole.parts]
    for d in (X, Y, Z):
        found = arrows(block, d)
        for i, j in itertools.permutations(range(len(solids)), 2):
            assert ((i, j) in found) is _meets(solids[i], solids[j], d), (
                whole.parts[i].id,
                whole.parts[j].id,
                d,
            )


def _meets(one, two, d: Vec) -> bool:  # type: ignore[no-untyped-def]
    high, low = two.bounding_box(), one.bounding_box()
    far = sum((high[k + 3] - low[k]) * d[k] for k in range(3))
    # no part is thinner than 5 mm: nothing slips between two places 4 mm apart
    return any((one.translate([t * v for v in d]) ^ two).volume() > 0.05 for t in np.arange(0.5, far, 4.0))


def test_parts_come_apart_exactly_when_a_graph_is_not_strongly_connected() -> None:
    whole = check_file(EXAMPLE).piece
    assert whole is not None
    b = bench(whole)
    dice = random.Random(5)
    seen = set()
    for _ in range(60):
        members = sorted(dice.sample(range(len(whole.parts)), dice.randint(2, 5)))
        free = False
        for row in b.block.rows:
            graph = np.array([[row[i] >> j & 1 for j in members] for i in members])
            free |= connected_components(graph, directed=True, connection="strong")[0] > 1
        assert come_apart(b, sum(1 << i for i in members)) is free
        seen.add(free)
    assert True in seen


def dovetailed() -> Piece:
    """A corner with through dovetails: tails on the board along x, pins on the board along y."""
    tails = Tails(Side.FAR_END, 1, 16.0, ((0.0, 5.0), (25.0, 35.0), (55.0, 60.0)), 1 / 8)
    # the tails are 2 mm narrower on each side at their shoulder, where the pin board is entered from inside
    pins = Pins(Side.END, 1, 12.0, Side.BACK, 16.0, ((7.0, 23.0), (37.0, 53.0)), 1 / 8)
    tail_board = part("tails", (0, 0, 0), (200.0, 60.0, 12.0), tails, pose=Pose((0, 12, 0), X, Z, FRONT))
    pin_board = part("pins", (0, 0, 0), (150.0, 60.0, 16.0), pins, pose=Pose((184, 0, 0), Y, Z, X))
    return piece([tail_board, pin_board], [joint("pins", "tails", FRONT)])


def test_dovetails_let_go_in_one_direction_only() -> None:
    """A through dovetail cannot be pulled apart along the tail board (common practice); its boxes cannot tell."""
    whole = dovetailed()
    assert (part_solid(whole.parts[0]) ^ part_solid(whole.parts[1])).volume() < 0.01
    block = blocking(whole.parts)
    free = [d for d, row in zip(block.directions, block.rows, strict=True) if row[0] == 0]
    assert free == [FRONT]
    [step] = assembly_of(whole).order
    assert (step.adds, step.direction) in ((("tails",), Y), (("pins",), FRONT))


@pytest.mark.parametrize("angle", [30.0, 45.0])
def test_a_wedge_leaves_along_its_own_slope(angle: float) -> None:
    """Two blocks that touch on a slope, boards askew: along the slope they slide, across it they press."""
    c, s = float(np.cos(np.radians(angle))), float(np.sin(np.radians(angle)))
    along, across = (c, 0.0, s), (-s, 0.0, c)
    one = part("one", (0, 0, 0), (100.0, 40.0, 10.0), pose=Pose((0, 0, 0), along, Y, across))
    top = (across[0] * 10, 0.0, across[2] * 10)
    two = part("two", (0, 0, 0), (100.0, 40.0, 10.0), pose=Pose(top, along, Y, across))
    block = blocking([one, two], [joint("one", "two", along, across)])
    on = {tuple(round(v, 6) for v in d): row for d, row in zip(block.directions, block.rows, strict=True)}
    slid = tuple(round(v, 6) for v in along)
    pressed = tuple(round(-v, 6) + 0.0 for v in across)
    assert on[slid] == (0, 0)
    assert on[pressed] == (0, 1)
