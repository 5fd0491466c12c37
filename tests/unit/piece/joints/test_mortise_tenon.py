"""Mortise and tenon: every kind, every way round, against volumes worked by hand and the proportions of the trade.

Proportions: tenon a third of the thickness, set to the nearest chisel; at a corner two thirds of the rail's width is
tenon and a third haunch, less a shoulder of 1/16 in (1.5 mm) at the lower edge (The Technique of Furniture Making,
section 'Mortise and tenon joints'); a blind mortise at most 7/8 of a stile (public-domain joinery text, 'Removing
haunching'); groove as wide as the tenon is thick (old handbook on panel frames); tenon two thirds of what it goes into,
mortise 1/16 in deeper, wedges 1:8 with kerfs 1/8 in short of the shoulder, drawbore 1/32 to 1/16 in: common practice.
"""

import pytest
from joint_bench import FEW, IN, STRAIGHT, TURNS, Laid, Turn, codes, set_out, text_of, tried, volume

from boardwright.piece.cuts import Hole, Mortise, Tenon
from boardwright.pipeline import check_text
from boardwright.plan.joints import joint_groups, plan_joints

GROOVE = "{{kind: groove, side: {side}, along: length, at: 1/4, width: 1/4, depth: 3/8}}"


def stile(groove: bool = False, stock: str = "cherry") -> Laid:
    cuts = (GROOVE.format(side="far_edge"),) if groove else ()
    return Laid("stile", stock, (0, 0, 0), (2.25, 20, 0.75), (1, 0), cuts)


def rail(low: float, high: float, grooves: tuple[str, ...] = (), stock: str = "cherry") -> Laid:
    cuts = tuple(GROOVE.format(side=side) for side in grooves)
    return Laid("rail", stock, (2.25, low, 0), (12.25, high, 0.75), (0, 1), cuts)


def joint(more: str = "") -> str:
    return f"first: stile, second: rail, kind: mortise_tenon{', ' + more if more else ''}"


BLANK = 20 * 2.25 * 0.75
"""The stile before it is cut [in3]."""
CASES: dict[str, tuple[list[Laid], str, float, float]] = {
    # a third of 3/4 is 1/4; 2/3 of 2 1/4 is 1 1/2; 1/16 off each edge: 2 1/8 wide; 1/16 deeper
    "blind": (
        [stile(), rail(8, 10.25)],
        "",
        BLANK - 0.25 * 2.125 * 1.5625,
        10 * 2.25 * 0.75 + 0.25 * 2.125 * 1.5,
    ),
    # a third of the width is haunch, 3/4; 2 1/4 - 3/4 - 1/16 = 1 7/16 wide; haunch a third of 1 1/2
    "haunched": (
        [stile(), rail(17.75, 20)],
        "",
        BLANK - 0.25 * (1.4375 * 1.5625 + 0.75 * 0.5),
        10 * 2.25 * 0.75 + 0.25 * (1.4375 * 1.5 + 0.75 * 0.5),
    ),
    "set in, no haunch": (
        [stile(), rail(0, 2.25)],
        "haunch: 0",
        BLANK - 0.25 * 1.4375 * 1.5625,
        10 * 2.25 * 0.75 + 0.25 * 1.4375 * 1.5,
    ),
    "through": (
        [stile(), rail(8, 10.25)],
        "through: true",
        BLANK - 0.25 * 2.125 * 2.25,
        10 * 2.25 * 0.75 + 0.25 * 2.125 * 2.25,
    ),
    # 6 - 2/16 = 5 7/8 in two tenons and a third of one between: 5 7/8 / (7/3) = 2.518, down to 2 1/2
    "one above the other": (
        [stile(), rail(8, 14)],
        "tenons: 2",
        BLANK - 2 * 0.25 * 2.5 * 1.5625,
        10 * 6 * 0.75 + 2 * 0.25 * 2.5 * 1.5,
    ),
    "given": (
        [stile(), rail(8, 10.25)],
        "length: 1, thickness: 3/8, shoulder: 1/4",
        BLANK - 0.375 * 1.75 * 1.0625,
        10 * 2.25 * 0.75 + 0.375 * 1.75,
    ),
    "stub": (
        [stile(True), rail(17.75, 20, ("edge",))],
        "length: 3/8",
        BLANK - 20 * 0.25 * 0.375,
        10.375 * 2.25 * 0.75 - 10.375 * 0.25 * 0.375 - 2 * 0.25 * 0.375 * 2.25,
    ),
    "haunch in the groove": (
        [stile(True), rail(17.75, 20, ("edge",))],
        "",
        # the mortise below the groove; the tenon loses the 3/8 that the rail's own groove takes
        BLANK - 20 * 0.25 * 0.375 - 0.25 * (2.25 - 0.75 - 0.375) * (1.5625 - 0.375),
        10 * (2.25 * 0.75 - 0.25 * 0.375) + 0.25 * ((2.25 - 0.75 - 0.375) * 1.5 + 0.75 * 0.375),
    ),
    "in sheets": (
        [stile(stock="ply"), rail(8, 10.25, stock="ply")],
        "",
        BLANK - 0.25 * 2.125 * 1.5625,
        10 * 2.25 * 0.75 + 0.25 * 2.125 * 1.5,
    ),
}


@pytest.mark.parametrize("turn", FEW)
@pytest.mark.parametrize("name", CASES)
def test_every_kind_closes_and_comes_apart_every_way_round(name: str, turn: Turn) -> None:
    parts, more, first, second = CASES[name]
    piece = set_out(parts, [joint(more)], turn)
    tried(piece)
    assert volume(piece, "stile") == pytest.approx(first, rel=1e-6)
    assert volume(piece, "rail") == pytest.approx(second, rel=1e-6)


@pytest.mark.parametrize("turn", TURNS)
def test_a_haunched_one_in_every_hand(turn: Turn) -> None:
    parts, more, first, _ = CASES["haunched"]
    piece = set_out(parts, [joint(more)], turn)
    tried(piece)
    assert volume(piece, "stile") == pytest.approx(first, rel=1e-6)


@pytest.mark.parametrize("turn", FEW)
def test_in_millimetres(turn: Turn) -> None:
    parts = [
        Laid("stile", "cherry", (0, 0, 0), (60, 500, 20), (1, 0)),
        Laid("rail", "cherry", (60, 440, 0), (300, 500, 20), (0, 1)),
    ]
    piece = set_out(parts, [joint()], turn, "mm")
    tried(piece)
    # 20 / 3 = 6.67: a 6 mm chisel; 2/3 of 60 = 40 long; set in 20; 1/16 in is 1.5, up to 2.0 on the step of 0.5
    # at the lower edge, and 1.5 to the nearest for the depth
    wide = 60 - 20 - 2.0
    assert volume(piece, "rail") == pytest.approx(240 * 60 * 20 + 6 * (wide * 40 + 20 * 13.5), rel=1e-6)
    assert volume(piece, "stile") == pytest.approx(500 * 60 * 20 - 6 * (wide * 41.5 + 20 * 13.5), rel=1e-6)


@pytest.mark.parametrize("turn", FEW)
def test_a_rail_that_lies_flat_has_two_side_by_side(turn: Turn) -> None:
    leg = Laid("stile", "leg", (0, 0, 0), (1.75, 1.75, 28), (2, 0))
    flat = Laid("rail", "cherry", (1.75, 0, 20), (21.75, 1.5, 20.75), (0, 1))
    piece = set_out([leg, flat], [joint()], turn)
    tried(piece)
    mortises = [c for c in piece.part("parts.stile").cuts if isinstance(c, Mortise)]
    # long way along the grain of the leg: 3/4 - 2/16; 1 1/2 / 5 = 0.3, nearest cutter 5/16; 2/3 of 1 3/4 = 1.167,
    # down to 1 5/32
    assert [m.along for m in mortises] == [0, 0]
    assert {round((m.end - m.start) / IN, 6) for m in mortises} == {0.625}
    assert {round(m.width / IN, 6) for m in mortises} == {0.3125}
    assert volume(piece, "rail") == pytest.approx(20 * 1.5 * 0.75 + 2 * 0.3125 * 0.625 * 1.15625, rel=1e-6)


LEG = [
    Laid("leg", "leg", (0, 0, 0), (1.75, 1.75, 28), (2, 0)),
    Laid("front", "cherry", (1.75, 0.25, 24), (30, 1, 28), (0, 2)),
    Laid("side", "cherry", (0.25, 1.75, 24), (1, 20, 28), (1, 2)),
]
TWO = ["first: leg, second: front, kind: mortise_tenon", "first: leg, second: side, kind: mortise_tenon"]


@pytest.mark.parametrize("turn", FEW)
def test_two_tenons_that_would_meet_in_a_leg(turn: Turn) -> None:
    piece = set_out(LEG, TWO, turn)
    tried(piece)
    tenons = {
        name: next(c for c in piece.part(f"parts.{name}").cuts if isinstance(c, Tenon))
        for name in ("front", "side")
    }
    # the front's mortise lies 1/2 to 3/4 from the outer face, 1 in from the inner: 1 less 1/16 to leave (up to the
    # millimetre and a half) less 1/16 deeper
    assert tenons["front"].length / IN == pytest.approx(1.15625)
    assert 0.84 < tenons["side"].length / IN <= 1 - 1 / 16 - 1.5 / IN


@pytest.mark.parametrize("turn", FEW)
def test_two_from_opposite_sides_share_the_wood(turn: Turn) -> None:
    other = Laid("other", "cherry", (-10, 8, 0), (0, 10.25, 0.75), (0, 1))
    joints = [joint(), "first: stile, second: other, kind: mortise_tenon"]
    piece = set_out([stile(), rail(8, 10.25), other], joints, turn)
    tried(piece)
    lengths = {round(c.length / IN, 6) for p in piece.parts for c in p.cuts if isinstance(c, Tenon)}
    # half of 2 1/4 less half of the 1.5 mm between, less 1/16 deeper: 1.033, down to 1 1/32
    assert lengths == {1.03125}


def test_a_given_length_that_meets_another_mortise_is_refused() -> None:
    assert codes(LEG, [TWO[0], TWO[1] + ", length: 1 1/8"]) == ["joint.mortises-meet"]
    assert codes(LEG, [TWO[0], TWO[1] + ", through: true"]) == ["joint.mortises-meet"]
    assert codes(LEG, [TWO[0], TWO[1] + ", length: 7/8"]) == []


@pytest.mark.parametrize("turn", FEW)
def test_drawbored_pegs_draw_the_shoulder_shut(turn: Turn) -> None:
    piece = set_out([stile(), rail(8, 11)], [joint("drawbore: 1/32")], turn)
    tried(piece, holes=True)
    # 3 - 2/16 wide: two pegs; a third of 3/4 is 1/4
    assert [f.kind for f in piece.fasteners] == ["peg", "peg"]
    centres = {}
    for name in ("stile", "rail"):
        part = piece.part(f"parts.{name}")
        holes = [c for c in part.cuts if isinstance(c, Hole)]
        assert all(h.through and h.diameter / IN == pytest.approx(0.25) for h in holes)
        points = []
        for h in holes:
            others = [i for i in range(3) if i != h.side.axis]
            p = [0.0, 0.0, 0.0]
            for i, v in zip(others, h.at, strict=True):
                p[i] = v
            points.append(part.pose.point((p[0], p[1], p[2])))
        centres[name] = sorted(points)
    away = piece.joints[0].directions[0]
    for one, two in zip(centres["stile"], centres["rail"], strict=True):
        toward = sum((b - a) * w for a, b, w in zip(one, two, away, strict=True))
        assert toward / IN == pytest.approx(1 / 32)  # nearer to the shoulder


def test_the_plan_says_what_it_is() -> None:
    said = {
        "": "mortise and tenon, 1/4 thick, 1 1/2 long, glued",
        "through: true, wedges: 2": "mortise and tenon, 1/4 thick, 2 1/4 long, through, 2 wedges 1:8 in kerfs that "
        "stop 1/8 short of the shoulder, mortise flared 1/16 at each end of its far side, glued",
        "wedges: 1, glue: false": "mortise and tenon, 1/4 thick, 2 1/4 long, through, 1 wedge 1:8 in kerfs that stop "
        "1/8 short of the shoulder, mortise flared 1/16 at each end of its far side, dry",
        "drawbore: 1/32": "mortise and tenon, 1/4 thick, 1 1/2 long, 1 peg, drawbored 1/32, glued",
        "pinned: true": "mortise and tenon, 1/4 thick, 1 1/2 long, 1 peg, glued",
    }
    for more, summary in said.items():
        piece = set_out([stile(), rail(8, 10.25)], [joint(more)])
        assert piece.joints[0].summary == summary
    piece = set_out([stile(), rail(17.75, 20)], [joint()])
    assert piece.joints[0].summary == "mortise and tenon, 1/4 thick, 1 1/2 long, haunched, glued"
    [group] = joint_groups(plan_joints(piece, {p.id: p.letter for p in piece.parts}))
    assert (group.name, group.how) == ("mortise and tenon", "1/4 thick, 1 1/2 long, haunched")


@pytest.mark.parametrize(
    ("thickness", "chisel"),
    [("1/2", 3 / 16), ("3/4", 1 / 4), ("7/8", 5 / 16), ("1", 5 / 16), ("1 1/4", 7 / 16), ("1 1/2", 1 / 2)],
)
def test_the_tenon_is_the_chisel_nearest_to_a_third(thickness: str, chisel: float) -> None:
    """A third of each by hand: 0.167, 0.25, 0.292, 0.333, 0.417, 0.5 in; of two equally near the wider."""
    text = text_of([stile(), rail(8, 10.25)], [joint()])
    text = text.replace(
        "cherry: {wood: cherry_black, thickness: 3/4}",
        f"cherry: {{wood: cherry_black, thickness: {thickness}}}",
    )
    piece = check_text(text).piece
    assert piece is not None
    [mortise] = [c for c in piece.part("parts.stile").cuts if isinstance(c, Mortise)]
    assert mortise.width / IN == pytest.approx(chisel)
    assert mortise.depth <= 7 / 8 * 2.25 * IN  # at most 7/8 of the stile


LYING = Laid("stile", "cherry", (0, 0, 0), (20, 2.25, 0.75), (0, 1))
ON_ITS_END = Laid("rail", "cherry", (20, 0, 0), (30, 2.25, 0.75), (0, 1))


@pytest.mark.parametrize(
    ("parts", "more", "code"),
    [
        ([stile(), rail(8, 10.25)], "length: 2 1/4", "joint.too-deep"),
        ([stile(), rail(8, 10.25)], "thickness: 11/16", "joint.too-deep"),
        ([stile(), rail(8, 10.25)], "haunch: 1/2", "joint.cannot-be-there"),
        ([stile(), rail(8, 10.25)], "tenons: 12, thickness: 1/4, shoulder: 3/4", "joint.cannot-be-there"),
        ([stile(), rail(8, 10.25)], "pinned: true, length: 1/2", "fastener.none-fits"),
        ([stile(), rail(8, 10.25)], "fasten: screws", "fastener.not-here"),
        ([stile(), rail(8, 10.25)], "wedges: 2, through: false", "joint.cannot-be-there"),
        # the end of the stile is end grain
        ([LYING, ON_ITS_END], "", "joint.cannot-be-there"),
        # the rail's edge: a tenon across the grain
        ([stile(), Laid("rail", "cherry", (2.25, 4, 0), (12.25, 16, 0.75), (1, 0))], "", "joint.cannot-be-there"),
        # beyond the end of the stile
        ([stile(), rail(19, 21.25)], "", "joint.cannot-be-there"),
    ],
)  # fmt: skip
def test_refused(parts: list[Laid], more: str, code: str) -> None:
    assert code in codes(parts, [joint(more)])


def test_no_wedges_in_a_blind_one() -> None:
    piece = set_out([stile(), rail(8, 10.25)], [joint("wedges: 2")], STRAIGHT)
    [mortise] = [c for c in piece.part("parts.stile").cuts if isinstance(c, Mortise)]
    assert mortise.through  # wedges ask for a through tenon
