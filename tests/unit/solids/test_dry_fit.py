"""The dry fit on pieces whose answer is plain: shared room, touching faces, what a drawer meets."""

from pathlib import Path

import pytest

from boardwright.core.poses import Box, Pose
from boardwright.piece.cuts import Groove, Rabbet, Side
from boardwright.piece.records import Contact, Hardware, Joint, Moisture, Motion, Part, Piece, Stock
from boardwright.pipeline import check_file
from boardwright.solids.dry_fit import TOUCH, dry_fit
from boardwright.solids.mesh import box_solid, part_solid, shared_volume

EXAMPLES = sorted((Path(__file__).parents[3] / "examples").glob("*.yaml"))

WOOD = Stock("wood", "wood", "cherry", "", 20.0, 25.0, False, 560.0)


def board(
    id: str, at: tuple[float, float, float], size: tuple[float, float, float], *cuts, group: str = "case"
) -> Part:  # type: ignore[no-untyped-def]
    return Part(id, id, WOOD, size, Pose(at), cuts, letter=id, group=group)


def piece(parts, joints=(), motions=(), hardware=()) -> Piece:  # type: ignore[no-untyped-def]
    return Piece(
        "test",
        "mm",
        0.5,
        Box((0, 0, 0), (1000, 1000, 1000)),
        Moisture(8, 6, 10),
        tuple(parts),
        tuple(joints),
        (),
        tuple(hardware),
        (),
        tuple(motions),
    )


def test_two_boards_that_share_room() -> None:
    # 300 x 200 x 20 boards, the second 30 mm into the end of the first
    fit = dry_fit(
        piece([board("a", (0, 0, 0), (300.0, 200.0, 20.0)), board("b", (270, 50, 5), (300.0, 200.0, 20.0))])
    )
    [overlap] = fit.overlaps
    # 30 long, 200 - 50 = 150 wide, 20 - 5 = 15 thick
    assert overlap.volume == pytest.approx(30 * 150 * 15)
    assert overlap.box.low == pytest.approx((270, 50, 5))
    assert overlap.box.high == pytest.approx((300, 200, 20))


def test_boards_that_only_touch_share_nothing() -> None:
    fit = dry_fit(
        piece([board("a", (0, 0, 0), (300.0, 200.0, 20.0)), board("b", (300, 0, 0), (300.0, 200.0, 20.0))])
    )
    assert fit.overlaps == ()


def test_boards_whose_boxes_overlap_need_not_share_room() -> None:
    # the second lies in a dado of the first
    dado = Groove(Side.FACE, 1, 100.0, 20.0, 8.0, 0.0, 200.0)
    upright = Part("b", "b", WOOD, (200.0, 200.0, 20.0), Pose((120, 0, 12), (0, 0, 1), (0, 1, 0), (-1, 0, 0)))
    assert dry_fit(piece([board("a", (0, 0, 0), (300.0, 200.0, 20.0), dado), upright])).overlaps == ()
    [overlap] = dry_fit(piece([board("a", (0, 0, 0), (300.0, 200.0, 20.0)), upright])).overlaps
    assert overlap.volume == pytest.approx(20 * 200 * 8)


def seat(width: float = 20.0, depth: float = 8.0, stop: float = 200.0) -> Piece:
    """An upright board 20 thick that should stand in a dado 20 wide and 8 deep, right across 200."""
    dado = Groove(Side.FACE, 1, 100.0, width, depth, 0.0, stop)
    first = board("a", (0, 0, 0), (300.0, 200.0, 20.0), dado)
    second = Part("b", "b", WOOD, (200.0, 200.0, 20.0), Pose((120, 0, 12), (0, 0, 1), (0, 1, 0), (-1, 0, 0)))
    contacts = (
        Contact(Box((100, 0, 12), (120, 200, 12)), 2, True),
        Contact(Box((100, 0, 12), (100, 200, 20)), 0, True),
        Contact(Box((120, 0, 12), (120, 200, 20)), 0, False),
    )
    return piece([first, second], [Joint("j", "dado", "a", "b", contacts, ((0.0, 0.0, 1.0),))])


def test_a_dado_touches_on_its_seat_and_both_cheeks() -> None:
    touches = dry_fit(seat()).touches
    # seat 20 x 200, cheeks 8 x 200
    assert [t.area for t in touches] == [4000, 1600, 1600]
    assert [t.touching for t in touches] == pytest.approx([4000, 1600, 1600], rel=1e-3)


def test_a_dado_that_is_too_wide_touches_on_one_cheek_only() -> None:
    touches = dry_fit(seat(width=22.0)).touches
    assert [t.touching for t in touches] == pytest.approx([4000, 1600, 0], abs=2)


def test_a_dado_that_is_too_deep_does_not_touch_on_its_seat() -> None:
    assert dry_fit(seat(depth=10.0)).touches[0].touching == pytest.approx(0)


def test_a_cut_through_the_seat_opens_part_of_it() -> None:
    fit = dry_fit(seat())
    hollow = Rabbet(Side.BACK, Side.EDGE, 50.0, 12.5, 0.0, 300.0)  # takes the seat away over 50 of 200
    part = seat().parts[0]
    cut = Part(part.id, part.name, part.stock, part.size, part.pose, (*part.cuts, hollow), letter="a")
    opened = dry_fit(piece([cut, seat().parts[1]], seat().joints))
    assert opened.touches[0].touching == pytest.approx(fit.touches[0].touching * 150 / 200, rel=1e-3)


def test_a_planned_gap_is_not_measured() -> None:
    whole = seat()
    joint = whole.joints[0]
    gap = Contact(joint.contacts[0].box, 2, True, False, 0.5, "room to move")
    other = Joint("j", "dado", "a", "b", (gap,), joint.directions)
    assert dry_fit(piece(whole.parts, [other])).touches == ()


def drawer(stop_at: float | None, *, travel: float = 300.0) -> Piece:
    """A block that slides out to the front, with or without something in front of it."""
    parts = [
        board("box", (0, 0, 0), (100.0, 400.0, 50.0), group="drawer.1"),
        board("wall", (100, 0, 0), (20.0, 400.0, 50.0)),
    ]
    if stop_at is not None:
        parts.append(board("stop", (40, -stop_at - 10, 20), (20.0, 10.0, 10.0)))
    room = Box((0, 0, 0), (100, 400, 50))
    return piece(
        parts,
        motions=[
            Motion("drawer.1", "drawer", "drawer 1", (0.0, -1.0, 0.0), travel, "runners", room, 0, 0, 0)
        ],
    )


def test_a_free_drawer_hits_nothing() -> None:
    assert dry_fit(drawer(None)).hits == ()


def test_a_blocked_drawer_hits_at_the_right_opening() -> None:
    # the block stands 120 in front of the drawer
    [hit] = dry_fit(drawer(120.0)).hits
    assert (hit.motion, hit.part, hit.obstacle) == ("drawer.1", "box", "stop")
    assert hit.opening == pytest.approx(120.0)


def test_what_stands_beyond_the_travel_is_not_hit() -> None:
    assert dry_fit(drawer(301.0)).hits == ()
    assert len(dry_fit(drawer(299.0)).hits) == 1


def test_a_thin_obstacle_is_not_jumped_over() -> None:
    """The whole way is tested, not some points of it: a pin of 2 mm in a travel of 300."""
    whole = drawer(None)
    pin = board("pin", (50, -151, 10), (2.0, 2.0, 2.0))
    [hit] = dry_fit(piece([*whole.parts, pin], motions=whole.motions)).hits
    assert hit.opening == pytest.approx(149.0)


def test_bought_things_take_room() -> None:
    slide = Hardware("drawer.1.slide.left", "slide", "", Box((80, 0, 10), (93, 350, 55)), "case")
    fit = dry_fit(piece(drawer(None).parts, hardware=[slide]))
    [overlap] = fit.overlaps
    # 13 x 350 of it lie in the box, 10 to 50 high
    assert (overlap.first, overlap.second) == ("drawer.1.slide.left", "box")
    assert overlap.volume == pytest.approx(13 * 350 * 40)


def test_moving_hardware_hits_and_standing_hardware_is_hit() -> None:
    whole = drawer(None)
    standing = Hardware("knob", "knob", "", Box((40, -60, 20), (60, -50, 30)), "case")
    [hit] = dry_fit(piece(whole.parts, motions=whole.motions, hardware=[standing])).hits
    assert (hit.obstacle, hit.opening) == ("knob", pytest.approx(50.0))
    bump = board("stop", (40, -60, 55), (20.0, 10.0, 10.0))
    moving = Hardware("handle", "handle", "", Box((30, 100, 50), (70, 110, 70)), "drawer.1")
    hits = dry_fit(piece([*whole.parts, bump], motions=whole.motions, hardware=[moving])).hits
    assert [(h.part, h.obstacle) for h in hits] == [("handle", "stop")]
    # the handle stands at 100, its front 150 behind the back of the bump
    assert hits[0].opening == pytest.approx(150.0)


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: p.stem)
def test_boxes_and_solids_find_the_same_in_the_examples(path: Path) -> None:
    """What boxes tell quickly, the solids confirm: no pair shares room, and faces touch as far as said."""
    whole = check_file(path).piece
    assert whole is not None
    fit = dry_fit(whole)
    solids = {p.id: part_solid(p) for p in whole.parts}
    joints = {j.id: j for j in whole.joints}
    assert fit.touches
    for touch in fit.touches:
        joint, axis = joints[touch.joint], touch.contact.axis
        if touch.contact.corners:
            continue
        low, high = list(touch.contact.box.low), list(touch.contact.box.high)
        low[axis], high[axis] = low[axis] - TOUCH, high[axis] + TOUCH
        window = box_solid(Box((low[0], low[1], low[2]), (high[0], high[1], high[2])))
        push = [0.0, 0.0, 0.0]
        push[axis] = -TOUCH if touch.contact.from_first else TOUCH
        pressed = solids[joint.second] ^ window
        pressed.num_tri()  # worked out before it is pushed, as faces lie in each other
        pressed = pressed.translate(push)
        takes = solids[joint.first] ^ window
        takes.num_tri()
        area = shared_volume(pressed, takes) / TOUCH
        # holes at the face may count for their squares, never for less than they are
        assert 0.95 * area - 1 <= touch.touching <= 1.001 * area + 1, touch.joint
    ids = [p.id for p in whole.parts]
    found = {(o.first, o.second) for o in fit.overlaps}
    for n, one in enumerate(ids):
        for two in ids[n + 1 :]:
            if whole.part(one).box.overlap(whole.part(two).box) is not None:
                assert (shared_volume(solids[one], solids[two]) > 1e-3) is ((one, two) in found)
