"""The order of building on pieces whose answer is plain, and the order carried out with solids."""

import sys
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parents[3] / "tools"))
sys.path.insert(0, str(Path(__file__).parent))

from assembly_pieces import DOWN, FRONT, LEFT, X, Y, Z, faults, joint, order, part, piece

from boardwright.core.findings import Place
from boardwright.core.poses import Box, Pose
from boardwright.piece.cuts import Groove, Mortise, Rabbet, Side, Tenon
from boardwright.piece.records import Contact, Fastener, Motion, Piece
from boardwright.pipeline import check_file, check_text
from boardwright.solids.assembly import assembly_of
from design_dice import design, text

EXAMPLES = sorted((Path(__file__).parents[3] / "examples").glob("*.yaml"))
ALONG_RAIL = {"x": X, "y": Z, "z": FRONT}


def frame() -> Piece:
    """Two stiles and two rails, 20 thick, with stub tenons 10 long, and a panel 6 thick in grooves all round."""
    tenons = tuple(Tenon(end, 1, 10.0, 7.0, 7.0, ((5.0, 45.0, 10.0),)) for end in (Side.END, Side.FAR_END))

    def stile(id: str, x: float, inner: Side):  # type: ignore[no-untyped-def]
        cut = Groove(inner, 0, 7.0, 6.0, 10.0, 5.0, 395.0)
        return part(id, (0, 0, 0), (400.0, 40.0, 20.0), cut, pose=Pose((x, 0.0, 0.0), Z, X, Y))

    def rail(id: str, z: float, inner: Side):  # type: ignore[no-untyped-def]
        cut = Groove(inner, 0, 7.0, 6.0, 10.0, 0.0, 240.0)
        pose = Pose((30.0, 20.0, z), X, Z, FRONT)
        return part(id, (0, 0, 0), (240.0, 50.0, 20.0), *tenons, cut, pose=pose)

    panel = part("panel", (0, 0, 0), (240.0, 320.0, 6.0), pose=Pose((30.0, 13.0, 40.0), X, Z, FRONT))
    parts = [
        stile("left", 0.0, Side.FAR_EDGE),
        stile("right", 260.0, Side.EDGE),
        rail("foot", 0.0, Side.FAR_EDGE),
        rail("head", 350.0, Side.EDGE),
        panel,
    ]
    joints = [joint("left", r, X) for r in ("foot", "head")] + [
        joint("right", r, LEFT) for r in ("foot", "head")
    ]
    joints += [joint("left", "panel", X, glued=False), joint("right", "panel", LEFT, glued=False)]
    joints += [joint("foot", "panel", Z, glued=False), joint("head", "panel", DOWN, glued=False)]
    return piece(parts, joints)


def test_a_panel_goes_in_before_the_frame_is_closed() -> None:
    """A panel in grooves all round cannot go into a closed frame (common practice): the last stile closes it."""
    whole = frame()
    made = assembly_of(whole)
    assert made.trapped == ()
    steps = order(made)
    assert steps[-1] in (("left",), ("right",))
    assert made.order[-1].direction in (X, LEFT)
    assert not any("panel" in s for s in steps[-1:])
    assert faults(whole, made) == []
    # tenons and panel edge stand 10 deep in the stile
    assert made.order[-1].travel == pytest.approx(10.0)


def test_a_frame_and_panel_closed_beforehand_is_found_out() -> None:
    """The carrying out can fail: the panel put in last meets the frame."""
    whole = frame()
    made = assembly_of(whole)
    last, panel = made.order[-1], next(s for s in made.order if "panel" in s.adds)
    assert len(panel.adds) == 1
    wrong = [s for s in made.order if s not in (last, panel)]
    standing = set(last.onto) - {"panel"}
    wrong += [
        replace(last, onto=tuple(standing)),
        replace(panel, onto=tuple(standing | set(last.adds))),
    ]
    assert any("panel meets" in line for line in faults(whole, replace(made, order=tuple(wrong))))


def shelf_between_sides() -> Piece:
    dado = {"along": 1, "at": 100.0, "width": 20.0, "depth": 8.0, "start": 0.0, "end": 200.0}
    left = part(
        "left", (0, 0, 0), (400.0, 200.0, 20.0), Groove(Side.BACK, **dado), pose=Pose((20, 0, 0), Z, Y, LEFT)
    )
    right = part(
        "right",
        (0, 0, 0),
        (400.0, 200.0, 20.0),
        Groove(Side.FACE, **dado),
        pose=Pose((340, 0, 0), Z, Y, LEFT),
    )
    shelf = part("shelf", (12, 0, 100), (316.0, 200.0, 20.0))
    cheek = Box((12, 0, 100), (20, 200, 100))
    far = Box((320, 0, 100), (328, 200, 100))
    joints = [
        joint("left", "shelf", X, FRONT, Y, contacts=(Contact(cheek, 2, True),)),
        joint("right", "shelf", LEFT, FRONT, Y, contacts=(Contact(far, 2, True),)),
    ]
    return piece([left, right, shelf], joints)


def test_a_glued_shelf_is_not_slid_along_its_dadoes() -> None:
    """It could slide in from the front at once, yet glue would be wiped off 200 mm long (common practice)."""
    whole = shelf_between_sides()
    made = assembly_of(whole)
    assert faults(whole, made) == []
    assert [s.direction[0] != 0 for s in made.order] == [True, True]
    assert [s.travel for s in made.order] == pytest.approx([8.0, 8.0])
    assert all(s.glued for s in made.order)
    dry = replace(whole, joints=tuple(replace(j, glued=False) for j in whole.joints))
    assert len(assembly_of(dry).order) == 2


def channel() -> Piece:
    """A block with a channel of T section, made of boxes, and a bar that fills it."""
    base = part(
        "base",
        (0, 0, 0),
        (100.0, 60.0, 30.0),
        Groove(Side.FACE, 0, 20.0, 20.0, 10.0, 0.0, 100.0),
        Groove(Side.END, 1, 10.0, 10.0, 100.0, 10.0, 50.0),
    )
    neck = (
        Rabbet(Side.FACE, Side.EDGE, 10.0, 10.0, 0.0, 100.0),
        Rabbet(Side.FACE, Side.FAR_EDGE, 10.0, 10.0, 0.0, 100.0),
    )
    bar = part("bar", (0, 10, 10), (100.0, 40.0, 20.0), *neck)
    return piece([base, bar], [joint("base", "bar", X, LEFT)])


def test_an_undercut_channel_lets_its_bar_slide_endways_only() -> None:
    whole = channel()
    [step] = assembly_of(whole).order
    assert step.direction in (X, LEFT)
    assert step.travel == pytest.approx(100.0)
    assert faults(whole, assembly_of(whole)) == []


def test_a_rod_with_thick_ends_is_trapped_in_a_closed_frame() -> None:
    """Two closed frames on one rod, and a block that stands by: the fewest that hold each other are two."""
    rod = part(
        "rod",
        (0, 0, 0),
        (200.0, 40.0, 40.0),
        *(
            Rabbet(s, e, 10.0, 10.0, 40.0, 160.0)
            for s in (Side.FACE, Side.BACK)
            for e in (Side.EDGE, Side.FAR_EDGE)
        ),
        Groove(Side.FACE, 0, 0.0, 40.0, 10.0, 40.0, 160.0),
        Groove(Side.BACK, 0, 0.0, 40.0, 10.0, 40.0, 160.0),
        Groove(Side.EDGE, 0, 0.0, 40.0, 10.0, 40.0, 160.0),
        Groove(Side.FAR_EDGE, 0, 0.0, 40.0, 10.0, 40.0, 160.0),
    )

    def ring(id: str, x: float):  # type: ignore[no-untyped-def]
        hole = Mortise(Side.END, 1, 30.0, 20.0, 20.0, 30.0, 50.0, through=True)
        return part(id, (x, -20, -20), (20.0, 80.0, 80.0), hole)

    block = part("block", (0, 0, 60), (30.0, 30.0, 30.0))
    whole = piece(
        [rod, ring("one", 50.0), ring("two", 110.0), block], [joint("one", "rod"), joint("two", "rod")]
    )
    made = assembly_of(whole)
    [trap] = made.trapped
    assert trap.parts == ("rod", "one")
    # nothing frees all three: the other frame stays on the rod whatever the first is
    assert {(a, b) for a, b, _ in trap.blockers} == {("rod", "one"), ("one", "rod")}
    assert all("up" in why and "left" in why for _, _, why in trap.blockers)
    assert [s.adds for s in made.order] == [("block",)]


def buttons() -> Piece:
    """Two rails with grooves that face each other 200 mm apart, a top over them, a button in each groove."""
    parts = [
        part("front", (0, 0, 0), (300.0, 20.0, 60.0), Groove(Side.FAR_EDGE, 0, 40.0, 10.0, 8.0, 0.0, 300.0)),
        part("rear", (0, 220, 0), (300.0, 20.0, 60.0), Groove(Side.EDGE, 0, 40.0, 10.0, 8.0, 0.0, 300.0)),
        part("end", (-20, 0, 0), (20.0, 240.0, 60.0)),
        part("top", (-20, 0, 60), (400.0, 240.0, 20.0)),
    ]
    step = {"width": 8.0, "depth": 10.0, "start": 0.0, "end": 30.0}
    one = Rabbet(Side.FACE, Side.EDGE, **step)
    two = Rabbet(Side.FACE, Side.FAR_EDGE, **step)
    joints = [joint("end", "front", X), joint("end", "rear", X)]
    screws = []
    for n, x in enumerate((50.0, 200.0)):
        for rail, y, tongue, way, at in (("front", 12.0, one, Y, 35.0), ("rear", 190.0, two, FRONT, 205.0)):
            id = f"{rail}.{n}"
            parts.append(part(id, (x, y, 40), (30.0, 38.0, 20.0), tongue, name="button"))
            under = Contact(Box((x, y, 60), (x + 30, y + 38, 60)), 2, False, glued=False)
            joints.append(joint(rail, id, way, glued=False))
            joints.append(joint("top", id, DOWN, glued=False, contacts=(under,)))
            screws.append(
                Fastener(f"s.{id}", "screw", "screw", "", (x + 15, at, 40.0), Z, 35.0, 4.0, 8.0, id, "top")
            )
    return piece(parts, joints, screws)


def test_buttons_go_round_a_corner_into_their_grooves() -> None:
    """Common practice: the top goes on, then each button is brought up from below, slid into its groove, screwed.

    Slid straight on, each would have to come through the rail across.
    """
    whole = buttons()
    made = assembly_of(whole)
    assert faults(whole, made) == []
    late = {s.adds: s for s in made.order[-2:]}
    assert set(late) == {("front.0", "front.1"), ("rear.0", "rear.1")}
    assert late["front.0", "front.1"].direction == FRONT
    assert late["rear.0", "rear.1"].direction == Y
    for step in late.values():
        assert step.approach == Z
        # the tongue stands 8 mm deep in the groove
        assert 8.0 < step.travel < 9.0
        assert step.fasteners == tuple(f"s.{id}" for id in step.adds)
        assert step.stubby == step.unreached == ()


def pinned(a: str, b: str, at: tuple[float, float, float], way: tuple[float, float, float]) -> Fastener:
    return Fastener(f"{a}{b}", "dowel", "dowel", "", at, way, 30.0, 8.0, 8.0, a, b)


def ring_of_three() -> Piece:
    """Three blocks that touch; dowels hold each two to one axis, another for each two."""
    parts = [
        part("a", (0, 0, 0), (50.0, 50.0, 50.0)),
        part("b", (50, 0, 0), (50.0, 50.0, 50.0)),
        part("c", (0, 50, 0), (100.0, 50.0, 50.0)),
    ]
    joints = [joint("a", "b", X), joint("b", "c", Y), joint("c", "a", Z)]
    fasteners = [
        pinned("a", "b", (35, 25, 25), X),
        pinned("b", "c", (75, 35, 25), Y),
        pinned("c", "a", (25, 60, 10), Z),
    ]
    return piece(parts, joints, fasteners)


def test_a_ring_of_three_is_trapped_though_any_two_come_apart() -> None:
    whole = ring_of_three()
    [trap] = assembly_of(whole).trapped
    assert trap.parts == ("a", "b", "c")
    assert set(trap.joints) == {"a-b", "b-c", "c-a"}
    for gone in "abc":
        left = [p for p in whole.parts if p.id != gone]
        pins = [f for f in whole.fasteners if gone not in (f.held, f.into)]
        pair = [j for j in whole.joints if gone not in (j.first, j.second)]
        made = assembly_of(piece(left, pair, pins))
        assert made.trapped == ()
        [step] = made.order
        [pin] = pins
        assert [abs(v) for v in step.direction] == [abs(v) for v in pin.direction]
        assert step.fasteners == (pin.id,)


def wall(gap: float, apart: bool = True) -> Piece:
    """A block screwed to the inside of a left wall, `gap` before a right wall; on a base, or all of one board."""
    screw = Fastener("s", "screw", "screw", "", (40.0, 50.0, 70.0), LEFT, 35.0, 4.0, 8.0, "block", "left")
    block = part("block", (20, 20, 50), (20.0, 60.0, 40.0))
    size = 40.0 + gap
    if apart:
        parts = [
            part("left", (0, 0, 20), (20.0, 100.0, 100.0)),
            block,
            part("right", (size, 0, 20), (20.0, 100.0, 100.0)),
            part("base", (0, 0, 0), (size + 20.0, 100.0, 20.0)),
        ]
        joints = [joint("base", "left", Z), joint("base", "right", Z), joint("left", "block", X, glued=False)]
        return piece(parts, joints, [screw])
    trough = part(
        "left",
        (0, 0, 20),
        (size + 20.0, 100.0, 100.0),
        Groove(Side.FACE, 1, 20.0, gap + 20.0, 100.0 - 20.0, 0.0, 100.0),
    )
    return piece([trough, block], [joint("left", "block", X, glued=False)], [screw])


def test_a_screw_is_driven_while_a_driver_comes_at_it() -> None:
    """40 mm before the other wall: the block goes on first. 200 mm before it: there is no hurry."""
    closing = next(s for s in assembly_of(wall(40.0)).order if s.fasteners == ("s",))
    assert "right" not in closing.onto
    assert closing.unreached == ()
    late = next(s for s in assembly_of(wall(200.0)).order if s.fasteners == ("s",))
    assert "right" in late.onto
    assert late.stubby == late.unreached == ()


@pytest.mark.parametrize(
    ("gap", "stubby", "unreached"), [(40.0, (), ("s",)), (100.0, ("s",), ()), (160.0, (), ())]
)
def test_a_screw_that_no_driver_comes_at_is_told(
    gap: float, stubby: tuple[str, ...], unreached: tuple[str, ...]
) -> None:
    """In a trough of one board there is no other order: 60 mm are needed at least, 150 mm for a driver."""
    made = assembly_of(wall(gap, apart=False))
    assert made.trapped == ()
    [step] = made.order
    assert (step.stubby, step.unreached) == (stubby, unreached)


def drawers() -> Piece:
    parts = []
    motions = []
    for n in (1, 2, 3):
        z = 100.0 * n
        wide = 300.0 if n < 3 else 280.0
        ids = {k: f"d{n}.{k}" for k in ("front", "left", "right")}
        letters = {k: k if n < 3 else f"{k}3" for k in ids}
        group = f"drawer.{n}"
        parts += [
            part(
                ids["front"],
                (20, 0, z),
                (wide, 20.0, 80.0),
                name="front",
                letter=letters["front"],
                group=group,
            ),
            part(
                ids["left"],
                (20, 20, z),
                (20.0, 300.0, 80.0),
                name="side",
                letter=letters["left"],
                group=group,
            ),
            part(
                ids["right"],
                (wide, 20, z),
                (20.0, 300.0, 80.0),
                name="side",
                letter=letters["right"],
                group=group,
            ),
        ]
        room = Box((20, 0, z), (320, 320, z + 80))
        motions.append(Motion(group, "drawer", f"drawer {n}", FRONT, 250.0, "slides", room, 0, 0, 0))
    joints = [joint(f"d{n}.front", f"d{n}.{k}", Y) for n in (1, 2, 3) for k in ("left", "right")]
    parts += [part("wall", (0, 0, 0), (20.0, 340.0, 400.0)), part("back", (20, 320, 0), (300.0, 20.0, 400.0))]
    joints.append(joint("wall", "back", X))
    return piece(parts, joints, motions=motions)


def test_drawers_are_built_once_and_go_in_whole_at_the_end() -> None:
    whole = drawers()
    made = assembly_of(whole)
    assert faults(whole, made) == []
    last = made.order[-1]
    assert len(last.units) == 3
    assert last.direction == Y
    [sub] = made.subs
    assert sub.name in ("drawer 1", "drawer 2", "drawer 3")
    assert [len(c) for c in sub.copies] == [3, 3, 3]
    assert all(len({id.split(".")[1] for id in same}) == 1 for same in zip(*sub.copies, strict=True))
    inner = [s for s in made.order if s.sub == sub.number]
    assert {s.count for s in inner} == {3}
    # both sides go onto the front alike: one step
    assert [len(s.units) for s in inner] == [2]
    assert next(s.adds for s in made.order if s.sub == 0) in (("back",), ("wall",))


def test_pieces_of_one_part_of_none_and_of_parts_that_never_touch() -> None:
    assert assembly_of(piece([])).order == ()
    assert assembly_of(piece([part("a", (0, 0, 0), (10.0, 10.0, 10.0))])).order == ()
    apart = piece([part(n, (100.0 * i, 0, 0), (10.0, 10.0, 10.0), name="block") for i, n in enumerate("abc")])
    made = assembly_of(apart)
    assert made.trapped == ()
    assert faults(apart, made) == []


def test_the_same_piece_is_searched_once_and_comes_out_the_same() -> None:
    whole = frame()
    moved = replace(whole, parts=tuple(replace(p, place=Place("f", 9, 1, "x")) for p in whole.parts))
    assert assembly_of(whole) is assembly_of(moved)
    turned = replace(whole, name="b", outside=Box((0, 0, 0), (999, 999, 999)))
    assert assembly_of(turned) == assembly_of(whole)


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: p.stem)
def test_the_examples_can_be_built_in_the_order_found(path: Path) -> None:
    whole = check_file(path).piece
    assert whole is not None
    made = assembly_of(whole)
    assert made.trapped == ()
    assert faults(whole, made) == []
    assert [s.number for s in made.order] == list(range(1, len(made.order) + 1))
    joints = sorted(id for s in made.order for id in s.joints)
    further = [set(copy) for s in made.subs for copy in s.copies[1:]]
    # every joint closes in some step; those inside a further copy with those of the first
    assert joints == sorted(j.id for j in whole.joints if not any({j.first, j.second} <= c for c in further))


@pytest.mark.parametrize("first", range(1, 31, 10))
def test_random_designs_can_be_built_in_the_order_found(first: int) -> None:
    for seed in range(first, first + 10):
        whole = check_text(text(design(seed)), f"design {seed}").piece
        if whole is not None:
            made = assembly_of(whole)
            assert made.trapped == (), seed
            assert faults(whole, made) == [], seed


def test_nothing_stands_on_what_is_put_on_later() -> None:
    whole = check_file(EXAMPLES[0]).piece
    assert whole is not None
    own = [s for s in assembly_of(whole).order if s.sub == 0]
    for before, after in pairwise(own):
        assert set(after.onto) == set(before.onto) | set(before.adds)
