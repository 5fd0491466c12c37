"""Parts turned in their places: which turn goes unnoticed follows from the symmetry of a plain shape."""

import sys
from dataclasses import replace
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent))

from assembly_pieces import DOWN, X, Y, Z, joint, part, piece

from boardwright.core.poses import Box, Pose
from boardwright.piece.cuts import Cut, Groove, Hole, Mortise, Rabbet, Side
from boardwright.piece.records import Contact, Fastener, Piece
from boardwright.solids.poses_tried import WrongPose, wrong_poses
from boardwright.solids.turns import BOTH, END_FOR_END, OVER, QUARTER, QUARTER_BOTH

SIZE = (200.0, 40.0, 20.0)


def tried(*cuts: Cut, size: tuple[float, float, float] = SIZE) -> tuple[WrongPose, ...]:
    """One board that stands free, so that it finds its place however it is turned."""
    return wrong_poses(piece([part("a", (0, 0, 0), size, *cuts)]))


MIDDLE = Groove(Side.FACE, 1, 95.0, 10.0, 5.0, 0.0, 40.0)
OFF_MIDDLE = Groove(Side.FACE, 1, 50.0, 10.0, 5.0, 0.0, 40.0)


@pytest.mark.parametrize(
    ("cuts", "turns"),
    [
        ((), ()),
        # a dado across the middle of the face: end for end it is the same
        ((MIDDLE,), (OVER, BOTH)),
        # off the middle: no turn leaves it
        ((OFF_MIDDLE,), (END_FOR_END, OVER, BOTH)),
        # off the middle on the face, its fellow on the back at the other end: turned over and end for end is the same
        ((OFF_MIDDLE, replace(OFF_MIDDLE, side=Side.BACK, at=140.0)), (END_FOR_END, OVER)),
        # off the middle on face and back alike: turned over is the same
        ((OFF_MIDDLE, replace(OFF_MIDDLE, side=Side.BACK)), (END_FOR_END, BOTH)),
    ],
)
def test_a_free_board_is_wrong_in_the_turns_that_change_it(
    cuts: tuple[Cut, ...], turns: tuple[str, ...]
) -> None:
    found = tried(*cuts)
    assert tuple(t for w in found for t in w.turns) == turns


def test_a_square_leg_has_quarter_turns_too() -> None:
    """A square section has the eight symmetries of a square prism; a mortise off the middle keeps none."""
    mortise = Mortise(Side.FACE, 0, 15.0, 10.0, 20.0, 20.0, 60.0)
    [wrong] = tried(mortise, size=(400.0, 40.0, 40.0))
    assert sorted(wrong.turns) == sorted(
        [END_FOR_END, OVER, BOTH, QUARTER, QUARTER, QUARTER_BOTH, QUARTER_BOTH]
    )
    # the middle of the length: end for end is the same, and so are four turns to each side
    [wrong] = tried(replace(mortise, start=180.0, end=220.0), size=(400.0, 40.0, 40.0))
    assert sorted(wrong.turns) == sorted([OVER, BOTH, QUARTER, QUARTER, QUARTER_BOTH, QUARTER_BOTH])


def shelf_in(at: float, *more: Cut) -> Piece:
    """A side 200 long with a dado 20 wide, and a shelf that sits in it."""
    dado = Groove(Side.FACE, 1, at, 20.0, 8.0, 0.0, 40.0)
    side = part("side", (0, 0, 0), SIZE, dado, *more)
    shelf = part("shelf", (0, 0, 0), (100.0, 40.0, 20.0), pose=Pose((at + 20.0, 0, 12.0), Z, Y, (-1.0, 0, 0)))
    seat = Contact(Box((at, 0, 12), (at + 20, 40, 12)), 2, True)
    return piece([side, shelf], [joint("side", "shelf", Z, contacts=(seat,))])


def test_a_neighbour_that_would_be_met_tells() -> None:
    """At 60 the dado would come to lie at 120: the shelf then stands on wood."""
    assert wrong_poses(shelf_in(60.0)) == ()


def test_a_cut_that_nothing_meets_does_not_tell() -> None:
    """The dado in the middle takes the shelf either way; a rabbet at one end then lies at the other."""
    rabbet = Rabbet(Side.FACE, Side.END, 10.0, 5.0, 0.0, 40.0)
    [wrong] = wrong_poses(shelf_in(90.0, rabbet))
    assert (wrong.letter, wrong.turns, wrong.differs, wrong.matters) == (
        "side",
        (END_FOR_END,),
        "rabbet",
        True,
    )
    # ends and edges move: the front edge is one of them
    assert wrong.mark == "write `front` on its front edge"


def test_a_face_that_no_longer_touches_tells() -> None:
    """Over a hollow on the other side the neighbour has nothing to sit on."""
    hollow = Groove(Side.BACK, 1, 40.0, 120.0, 5.0, 0.0, 40.0)
    rail = part("rail", (60, 0, 20), (80.0, 40.0, 20.0))
    seat = Contact(Box((60, 0, 20), (140, 40, 20)), 2, True)
    whole = piece([part("a", (0, 0, 0), SIZE, hollow), rail], [joint("a", "rail", Z, contacts=(seat,))])
    # turned over, the hollow lies under the rail; end for end is the same
    assert wrong_poses(whole) == ()
    [wrong] = wrong_poses(replace(whole, joints=()))
    assert wrong.turns == (OVER, BOTH)
    assert wrong.mark == "write `up` on its upper face"


def screwed(*at: float, marked: str = "") -> Piece:
    """A rail with pilot holes in its face for screws that come from above."""
    holes = [
        Hole(Side.FACE, (x, 20.0), 3.0, 10.0, purpose="pilot", for_="screw", marked_through=marked)
        for x in at
    ]
    cover = part("cover", (0, 0, 20), (200.0, 40.0, 10.0))
    screws = [
        Fastener(f"s{x}", "screw", "screw", "", (x, 20.0, 30.0), DOWN, 20.0, 4.0, 8.0, "cover", "rail")
        for x in at
    ]
    return piece([part("rail", (0, 0, 0), SIZE, *holes), cover], [joint("rail", "cover", Z)], screws)


def test_holes_that_do_not_meet_their_screws_tell() -> None:
    """Holes at 40 and 150 would come to lie at 50 and 160; at 40 and 160 they lie as before."""
    assert wrong_poses(screwed(40.0, 150.0)) == ()
    assert wrong_poses(screwed(40.0, 160.0)) == ()
    # nobody sees 0.4 mm; the screws find their holes and nothing is wrong
    assert wrong_poses(screwed(40.0, 160.4)) == ()


def test_holes_that_are_marked_in_place_are_not_there_yet() -> None:
    assert wrong_poses(screwed(40.0, 150.0, marked="cover")) == ()


def test_holes_that_nothing_goes_in_matter_less() -> None:
    [wrong] = tried(Hole(Side.FACE, (50.0, 20.0), 5.0, 8.0, purpose="pilot", for_="screw"))
    assert (wrong.differs, wrong.matters) == ("holes for screw", False)
    [wrong] = tried(Hole(Side.FACE, (50.0, 20.0), 5.0, 8.0, purpose="hardware"))
    assert wrong.matters is True


def test_a_mirror_twin_goes_in_the_other_place() -> None:
    """A stopped rabbet at one corner: the mirrored board is not the same board turned."""
    step = Rabbet(Side.FACE, Side.EDGE, 10.0, 5.0, 0.0, 60.0)
    left = part("left", (0, 0, 0), SIZE, step, letter="A", mirror_of="B")
    right = part("right", (0, 100, 0), SIZE, replace(step, edge=Side.FAR_EDGE), letter="B", mirror_of="A")
    found = wrong_poses(piece([left, right]))
    assert [w.letter for w in found] == ["A", "B"]
    assert found[0].turns[-1] == "with its mirror twin B in its place"
    # a stop beside the left one at its cut corner: nothing is the same there, and nothing fits but the right one
    stop = part("stop", (0, 0, 15), (60.0, 10.0, 5.0), pose=Pose((0, 0, 15), X, Y, Z))
    low = part("low", (0, 0, -20), (200.0, 40.0, 20.0))
    assert [w.letter for w in wrong_poses(piece([left, right, stop, low]))] == ["B"]
