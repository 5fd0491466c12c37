"""Mitres: flat and on edge, plain, with a spline, keys or dowels; every way round.

A mitre between parts of equal width is cut at 45 degrees. Spline 1/8 to 1/4 in thick, 1/4 to 3/8 in into each part,
with its grain across the joint (common practice). Volumes of what is cut away are worked by hand: a mitre takes half of
the corner; the slot for a key is a right triangle whose height is its depth, so its area is the depth squared.
"""

import math

import pytest
from joint_bench import FEW, TURNS, Laid, Turn, codes, set_out, tried, volume

from boardwright.piece.cuts import BiscuitSlot, Hole
from boardwright.pipeline import check_text

STILE = Laid("stile", "cherry", (0, 0, 0), (2.25, 20, 0.75), (1, 0))
RAIL = Laid("rail", "cherry", (2.25, 17.75, 0), (12.25, 20, 0.75), (0, 1))
LOW = Laid("rail", "cherry", (2.25, 0, 0), (12.25, 2.25, 0.75), (0, 1))
WIDE = Laid("rail", "cherry", (2.25, 17, 0), (12.25, 20, 0.75), (0, 1))
OVER = Laid("rail", "cherry", (2.25, 19, 0), (12.25, 21.25, 0.75), (0, 1))
FULL = Laid("rail", "cherry", (0, 17.75, 0), (12.25, 20, 0.75), (0, 1))
SIDE = Laid("stile", "cherry", (0, 0, 0), (0.75, 8, 12), (2, 1))
TOP = Laid("rail", "cherry", (0.75, 0, 11.25), (14.75, 8, 12), (0, 1))
PLY_SIDE = Laid("stile", "ply", (0, 0, 0), (0.75, 8, 12), (2, 1))
PLY_TOP = Laid("rail", "ply", (0.75, 0, 11.25), (14.75, 8, 12), (0, 1))
LONG_A = Laid("stile", "cherry", (0, 0, 0), (0.75, 4, 20), (2, 1))
LONG_B = Laid("rail", "cherry", (0.75, 3.25, 0), (4, 4, 20), (2, 0))


def joint(more: str = "") -> str:
    return f"first: stile, second: rail, kind: mitre{', ' + more if more else ''}"


HALF = 2.25 * 2.25 / 2 * 0.75
EDGE = 0.75 * 0.75 / 2 * 8
CASES = {
    "flat": ([STILE, RAIL], "", 20 * 2.25 * 0.75 - HALF, 12.25 * 2.25 * 0.75 - HALF),
    "flat, other end": ([STILE, LOW], "", 20 * 2.25 * 0.75 - HALF, 12.25 * 2.25 * 0.75 - HALF),
    "flat, unlike": (
        [STILE, WIDE],
        "",
        20 * 2.25 * 0.75 - 2.25 * 3 / 2 * 0.75,
        12.25 * 3 * 0.75 - 2.25 * 3 / 2 * 0.75,
    ),
    "flat, drawn full": ([STILE, FULL], "", 20 * 2.25 * 0.75 - HALF, 12.25 * 2.25 * 0.75 - HALF),
    # the stile grows to the outer corner
    "flat, beyond the end": ([STILE, OVER], "", 21.25 * 2.25 * 0.75 - HALF, 12.25 * 2.25 * 0.75 - HALF),
    "on edge": ([SIDE, TOP], "", 12 * 8 * 0.75 - EDGE, 14.75 * 8 * 0.75 - EDGE),
    "on edge, sheets": ([PLY_SIDE, PLY_TOP], "", 12 * 8 * 0.75 - EDGE, 14.75 * 8 * 0.75 - EDGE),
    "along the grain": (
        [LONG_A, LONG_B],
        "",
        20 * 4 * 0.75 - 0.75 * 0.75 / 2 * 20,
        20 * 4 * 0.75 - 0.75 * 0.75 / 2 * 20,
    ),
    # groove 3/8 deep along the mitre, 1/8 wide: at its bottom it is as long as at the face, the diagonal, since both
    # its ends are cut by parallel faces
    "flat, spline": (
        [STILE, RAIL],
        "with: spline",
        20 * 2.25 * 0.75 - HALF - 2.25 * 2**0.5 * 0.375 * 0.125,
        12.25 * 2.25 * 0.75 - HALF - 2.25 * 2**0.5 * 0.375 * 0.125,
    ),
    "unlike, spline": (
        [STILE, WIDE],
        "with: spline, depth: 1/4",
        20 * 2.25 * 0.75 - 2.25 * 3 / 2 * 0.75 - math.hypot(2.25, 3) * 0.25 * 0.125,
        12.25 * 3 * 0.75 - 2.25 * 3 / 2 * 0.75 - math.hypot(2.25, 3) * 0.25 * 0.125,
    ),
    "on edge, spline": (
        [SIDE, TOP],
        "with: spline, depth: 1/4",
        12 * 8 * 0.75 - EDGE - 8 * 0.25 * 0.125,
        14.75 * 8 * 0.75 - EDGE - 8 * 0.25 * 0.125,
    ),
    # half of the triangle in each part
    "flat, key": (
        [STILE, RAIL],
        "with: keys, depth: 1",
        20 * 2.25 * 0.75 - HALF - 0.5 * 0.125,
        12.25 * 2.25 * 0.75 - HALF - 0.5 * 0.125,
    ),
    "on edge, keys": (
        [SIDE, TOP],
        "with: keys, depth: 1/2, count: 4, width: 3/16",
        12 * 8 * 0.75 - EDGE - 4 * 0.125 * 0.1875,
        14.75 * 8 * 0.75 - EDGE - 4 * 0.125 * 0.1875,
    ),
}


@pytest.mark.parametrize("turn", FEW)
@pytest.mark.parametrize("name", CASES)
def test_each_closes_and_comes_apart_every_way_round(name: str, turn: Turn) -> None:
    parts, more, first, second = CASES[name]
    piece = set_out(parts, [joint(more)], turn)
    tried(piece)
    assert volume(piece, "stile") == pytest.approx(first, rel=1e-6)
    assert volume(piece, "rail") == pytest.approx(second, rel=1e-6)


@pytest.mark.parametrize("name", ["flat, spline", "flat, key", "on edge, spline", "on edge, keys"])
@pytest.mark.parametrize("turn", TURNS)
def test_in_every_hand(name: str, turn: Turn) -> None:
    parts, more, first, _ = CASES[name]
    piece = set_out(parts, [joint(more)], turn)
    tried(piece)
    assert volume(piece, "stile") == pytest.approx(first, rel=1e-6)


@pytest.mark.parametrize("turn", FEW)
@pytest.mark.parametrize("more", ["", "with: spline", "with: keys"])
def test_in_millimetres(more: str, turn: Turn) -> None:
    parts = [
        Laid("stile", "cherry", (0, 0, 0), (60, 500, 20), (1, 0)),
        Laid("rail", "cherry", (60, 440, 0), (300, 500, 20), (0, 1)),
    ]
    piece = set_out(parts, [joint(more)], turn, "mm")
    tried(piece)
    if not more:
        assert volume(piece, "rail") == pytest.approx(300 * 60 * 20 - 60 * 60 / 2 * 20, rel=1e-6)


@pytest.mark.parametrize("turn", FEW)
@pytest.mark.parametrize("parts", [[STILE, RAIL], [SIDE, TOP]], ids=["flat", "on edge"])
def test_dowels_stand_square_to_the_mitre(parts: list[Laid], turn: Turn) -> None:
    piece = set_out(parts, [joint("with: dowels")], turn)
    tried(piece, holes=True)
    assert piece.fasteners
    for f in piece.fasteners:
        normal = piece.joints[0].directions[0]
        assert sum(a * b for a, b in zip(f.direction, normal, strict=True)) == pytest.approx(1)
    leans = [c.lean for p in piece.parts for c in p.cuts if isinstance(c, Hole)]
    assert len(leans) == 2 * len(piece.fasteners)
    assert {round(abs(v), 6) for v in leans} == {45.0}
    # the middle of a dowel lies on the mitre: as far from the outer face of the one as of the other
    box = [p.box for p in piece.parts]
    for f in piece.fasteners:
        mid = [a + d * f.length / 2 for a, d in zip(f.at, f.direction, strict=True)]
        axes = [i for i in range(3) if abs(f.direction[i]) > 0.1]
        ends = []
        for i in axes:
            low, high = min(b.low[i] for b in box), max(b.high[i] for b in box)
            ends.append(min(mid[i] - low, high - mid[i]))
        assert ends[0] == pytest.approx(ends[1])


SQUARE_UP = [
    Laid("stile", "cherry", (0, 0, 0), (4, 20, 0.75), (1, 0)),
    Laid("rail", "cherry", (4, 16, 0), (16, 20, 0.75), (0, 1)),
]


@pytest.mark.parametrize("turn", TURNS)
@pytest.mark.parametrize(
    ("parts", "count"),
    [(SQUARE_UP, 1), ([STILE, WIDE], 1), ([SIDE, TOP], 2)],
    ids=["flat", "unlike", "on edge"],
)
def test_biscuits_go_square_into_the_mitre(parts: list[Laid], count: int, turn: Turn) -> None:
    """A slot takes a segment of the cutter, R2 acos((R - d) / R) - (R - d) sqrt(2 R d - d2), by its width."""
    plain = set_out(parts, [joint()], turn)
    piece = set_out(parts, [joint("with: biscuits")], turn)
    tried(piece, holes=True)
    assert [f.kind for f in piece.fasteners] == ["biscuit"] * count
    normal = piece.joints[0].directions[0]
    for f in piece.fasteners:
        assert sum(a * b for a, b in zip(f.direction, normal, strict=True)) == pytest.approx(1)
    for name in ("stile", "rail"):
        slots = [c for c in next(p for p in piece.parts if p.name == name).cuts if isinstance(c, BiscuitSlot)]
        assert len(slots) == count
        taken = 0.0
        for c in slots:
            r, d = c.radius, c.depth
            segment = r * r * math.acos((r - d) / r) - (r - d) * math.sqrt(2 * r * d - d * d)
            taken += segment * c.width / 25.4**3
        assert volume(plain, name) - volume(piece, name) == pytest.approx(taken, rel=2e-3)


MEASURED = """
boardwright: 1
title: Sheets as measured
units: in
work_to: 1/32
stock:
  ply: {{sheet: hardwood_plywood, thickness: 3/4, measured: 0.703}}
  strip: {{sheet: hardwood_plywood, thickness: 1/4, measured: 0.2}}
parts:
  left: {{stock: ply, length: 20, width: 6, along: z, across: y, at: [0, 0, 0]}}
  right: {{stock: ply, length: 20, width: 6, along: z, across: y, at: [30, 0, 0]}}
  top: {{stock: ply, width: 6, along: x, across: y,
        place: {{x: {{between: [left.right, right.left]}}, y: {{at: 0}}, z: {{at: 20 - stock.ply}}}}}}
joints:
  - {{first: left, second: top, {joint}}}
  - {{first: right, second: top, {joint}}}
"""


@pytest.mark.parametrize("more", ["", ", with: spline", ", with: keys"])
def test_a_length_between_two_steps_keeps_its_outer_corners(more: str) -> None:
    """The room between the sides is no whole number of steps; the mitres close all the same."""
    result = check_text(MEASURED.format(joint=f"kind: mitre{more}"))
    assert [f.text() for f in result.findings if f.severity == "error"] == []
    assert result.piece is not None
    tried(result.piece)
    loose = [p for p in result.piece.parts if p.name in ("spline", "key")]
    assert bool(loose) == bool(more)
    assert {p.stock.id for p in loose} <= {"strip"}
    blank = result.piece.part("parts.top").size[0]
    assert blank / result.piece.step == pytest.approx(round(blank / result.piece.step))


def test_no_stock_is_thin_enough_for_a_spline() -> None:
    text = MEASURED.format(joint="kind: mitre, with: spline")
    text = text.replace("  strip: {sheet: hardwood_plywood, thickness: 1/4, measured: 0.2}\n", "")
    assert [f.code for f in check_text(text).findings if f.severity == "error"] == ["fastener.none-fits"] * 2


def test_the_spline_has_its_grain_across_the_joint() -> None:
    for parts, across in (([STILE, RAIL], (1, 1, 0)), ([SIDE, TOP], (1, 0, 1))):
        piece = set_out(parts, [joint("with: spline")])
        spline = next(p for p in piece.parts if p.name == "spline")
        grain = spline.pose.x
        assert [abs(v) > 0.5 for v in grain] == [bool(v) for v in across]


def test_the_plan_says_what_it_is() -> None:
    for name, summary in {
        "flat": "flat mitre, glued",
        "on edge": "mitre on edge, glued",
        "flat, unlike": "flat mitre, 53.13° off square on the stile and 36.87° on the rail, glued",
        "flat, spline": "flat mitre, spline 1/8 thick, 3/8 into each, glued",
        "on edge, keys": "mitre on edge, 4 keys 3/16 thick, 1/2 deep, glued",
    }.items():
        joints = set_out(CASES[name][0], [joint(CASES[name][1])]).joints
        assert joints[-1].summary == summary
    # the angles are those of the triangle 2 1/4 : 3
    assert math.degrees(math.atan2(3, 2.25)) == pytest.approx(53.13, abs=0.005)


@pytest.mark.parametrize(
    ("parts", "more", "code"),
    [
        (
            [STILE, Laid("rail", "cherry", (2.25, 8, 0), (12.25, 10.25, 0.75), (0, 1))],
            "",
            "joint.cannot-be-there",
        ),
        ([STILE, Laid("rail", "cherry", (-5, 8, 0), (7, 10.25, 0.75), (0, 1))], "", "joint.cannot-be-there"),
        ([STILE, RAIL], "with: biscuits, count: 2", "fastener.none-fits"),
        ([STILE, RAIL], "fasten: screws", "fastener.not-here"),
        ([STILE, RAIL], "with: keys, depth: 4", "joint.too-deep"),
        ([SIDE, TOP], "with: spline, depth: 3/4", "joint.too-deep"),
        # one on edge, one flat
        (
            [SIDE, Laid("rail", "cherry", (0.75, 0, 4), (14.75, 0.75, 12), (0, 2))],
            "",
            "joint.cannot-be-there",
        ),
    ],
)
def test_refused(parts: list[Laid], more: str, code: str) -> None:
    assert code in codes(parts, [joint(more)])
