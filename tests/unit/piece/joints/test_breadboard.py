"""Breadboard ends: shut, free to move by what the Wood Handbook gives, glued at the middle only.

Tongue a third of the thickness, 3/8 in long; tenons 1 1/2 in long and 3 in wide, 8 to 10 in apart; glued over the
middle 4 to 6 in (common practice). Movement: Wood Handbook FPL-GTR-190 (2010), eq. 13-2; black cherry, table 13-5:
0.00248 tangential, 0.00126 radial, for each per cent.
"""

import pytest
from joint_bench import FEW, IN, TURNS, Laid, Turn, codes, set_out, tried, volume

from boardwright.piece.cuts import Hole, Mortise, Tenon

END = Laid("end", "cherry", (0, 0, 0), (3, 24, 0.75), (1, 0))
TOP = Laid("top", "cherry", (3, 0, 0), (33, 24, 0.75), (0, 1))
CHERRY = {"flat": 0.00248, "quarter": 0.00126, "rift": (0.00248 + 0.00126) / 2}


def joint(more: str = "") -> str:
    return f"first: end, second: top, kind: breadboard{', ' + more if more else ''}"


@pytest.mark.parametrize("turn", TURNS)
def test_it_closes_and_comes_apart_every_way_round(turn: Turn) -> None:
    piece = set_out([END, TOP], [joint("pinned: false")], turn)
    tried(piece)
    # tongue 24 x 3/8 and three tenons 3 x (1 1/2 - 3/8) beyond it, 1/4 thick
    assert volume(piece, "top") == pytest.approx(
        30 * 24 * 0.75 + 0.25 * (24 * 0.375 + 3 * 3 * 1.125), rel=1e-6
    )


@pytest.mark.parametrize("turn", FEW)
def test_the_outer_mortises_are_longer_by_the_movement(turn: Turn) -> None:
    piece = set_out([END, TOP], [joint("pinned: false")], turn)
    [cut] = [c for c in piece.part("parts.top").cuts if isinstance(c, Tenon)]
    tenons = sorted((a, b) for a, b, long in cut.steps if long == cut.length)
    mortises = sorted((c.start, c.end) for c in piece.part("parts.end").cuts if isinstance(c, Mortise))
    m = piece.moisture
    swing = max(m.wettest - m.now, m.now - m.driest)
    rate = CHERRY[piece.part("parts.top").stock.sawn]
    assert rate == pytest.approx(piece.part("parts.top").stock.across, rel=0.01)
    extra = [(d - c) - (b - a) for (a, b), (c, d) in zip(tenons, mortises, strict=True)]
    # outer tenons: 1 in from the edge, so 11 in from the middle of 24
    moves = 11 * IN * rate * swing
    assert extra[1] == pytest.approx(0)
    for e in (extra[0], extra[2]):
        assert moves <= e / 2 < moves + piece.step + 1e-6


@pytest.mark.parametrize("turn", FEW)
def test_pegs_are_slotted_in_the_outer_tenons(turn: Turn) -> None:
    piece = set_out([END, TOP], [joint()], turn)
    tried(piece, holes=True)
    slots = sorted(c.slot for c in piece.part("parts.top").cuts if isinstance(c, Hole))
    assert slots[0] == 0
    assert slots[1] == slots[2] > 0
    assert all(c.slot == 0 for c in piece.part("parts.end").cuts if isinstance(c, Hole))
    assert sorted(f.slotted for f in piece.fasteners) == [False, True, True]
    # across the grain of the top
    assert {c.slot_along for c in piece.part("parts.top").cuts if isinstance(c, Hole) and c.slot} == {1}


@pytest.mark.parametrize("turn", FEW)
def test_it_floats_across_the_top_and_is_glued_at_the_middle(turn: Turn) -> None:
    piece = set_out([END, TOP], [joint()], turn)
    [j] = piece.joints
    assert j.floats == (turn[0][1],)
    held = [c for c in j.contacts if c.glued]
    axis = turn[0][1]
    low, high = min(c.box.low[axis] for c in held), max(c.box.high[axis] for c in held)
    top = piece.part("parts.top").box
    assert (low + high) / 2 == pytest.approx((top.low[axis] + top.high[axis]) / 2, abs=piece.step)
    assert 4 <= (high - low) / IN <= 6


def test_a_wide_top_has_five_tenons_and_a_narrow_one_narrow_tenons() -> None:
    for width, count, most in ((24, 3, 3), (40, 5, 3), (9, 3, 1.5)):
        parts = [
            Laid("end", "cherry", (0, 0, 0), (3, width, 0.75), (1, 0)),
            Laid("top", "cherry", (3, 0, 0), (33, width, 0.75), (0, 1)),
        ]
        piece = set_out(parts, [joint("pinned: false")])
        tried(piece)
        mortises = [c for c in piece.part("parts.end").cuts if isinstance(c, Mortise)]
        assert len(mortises) == count
        assert min(c.end - c.start for c in mortises) / IN == pytest.approx(most)


@pytest.mark.parametrize("turn", FEW)
def test_a_sheet_does_not_move(turn: Turn) -> None:
    top = Laid("top", "ply", (3, 0, 0), (33, 24, 0.75), (0, 1))
    piece = set_out([END, top], [joint()], turn)
    tried(piece, holes=True)
    assert not any(f.slotted for f in piece.fasteners)
    assert "movement" not in piece.joints[0].summary


@pytest.mark.parametrize("turn", FEW)
def test_in_millimetres(turn: Turn) -> None:
    parts = [
        Laid("end", "cherry", (0, 0, 0), (80, 600, 20), (1, 0)),
        Laid("top", "cherry", (80, 0, 0), (900, 600, 20), (0, 1)),
    ]
    piece = set_out(parts, [joint("pinned: false")], turn, "mm")
    tried(piece)
    # a 6 mm chisel; 3/8, 1 1/2 and 3 in are 9.5, 38 and 76 on the step of 0.5, settled down
    assert volume(piece, "top") == pytest.approx(820 * 600 * 20 + 6 * (600 * 9.5 + 3 * 76 * 28.5), rel=1e-6)


def test_the_plan_says_what_it_is() -> None:
    piece = set_out([END, TOP], [joint()])
    said = piece.joints[0].summary
    assert said.startswith(
        "breadboard end, tongue 1/4 thick, 3/8 long, 3 tenons 3 wide, 1 1/2 long, outer mortises up to "
    )
    assert "3 pegs, the outer ones in slots" in said
    assert said.endswith("at the middle only")


@pytest.mark.parametrize(
    ("parts", "more", "code"),
    [
        ([END, TOP], "tenons: 2", "joint.cannot-be-there"),
        ([END, TOP], "length: 3", "joint.too-deep"),
        ([END, TOP], "width: 1/2", "fastener.none-fits"),
        ([END, Laid("top", "cherry", (3, 0, 0), (33, 26, 0.75), (0, 1))], "", "joint.cannot-be-there"),
        ([END, Laid("top", "cherry", (3, 0, 0), (33, 24, 0.75), (1, 0))], "", "joint.cannot-be-there"),
        ([END, TOP], "fasten: screws", "fastener.not-here"),
    ],
)
def test_refused(parts: list[Laid], more: str, code: str) -> None:
    assert code in codes(parts, [joint(more)])
