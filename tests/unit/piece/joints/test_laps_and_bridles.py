"""Half laps and bridle joints: at a corner, along the way, crossing, on edge; every way round.

Half of each part is cut away at a half lap; the tenon of a bridle joint is a third of the thickness (common practice).
"""

import pytest
from joint_bench import FEW, TURNS, Laid, Turn, codes, set_out, tried, volume

STILE = Laid("stile", "cherry", (0, 0, 0), (2.25, 20, 0.75), (1, 0))
LEAN = Laid("stile", "ply", (0, 0, 0), (2.25, 20, 0.75), (1, 0))


def rail(low: float, high: float, stock: str = "cherry") -> Laid:
    return Laid("rail", stock, (2.25, low, 0), (12.25, high, 0.75), (0, 1))


def joint(kind: str, more: str = "") -> str:
    return f"first: stile, second: rail, kind: {kind}{', ' + more if more else ''}"


BLANK, RAIL = 20 * 2.25 * 0.75, 12.25 * 2.25 * 0.75
SHARED = 2.25 * 2.25 * 0.75
CASES = {
    "lap at a corner": ([STILE, rail(17.75, 20)], joint("half_lap"), BLANK - SHARED / 2, RAIL - SHARED / 2),
    "lap at the other": ([STILE, rail(0, 2.25)], joint("half_lap"), BLANK - SHARED / 2, RAIL - SHARED / 2),
    "lap along the way": ([STILE, rail(8, 10.25)], joint("half_lap"), BLANK - SHARED / 2, RAIL - SHARED / 2),
    "lap of given depth": (
        [STILE, rail(8, 10.25)],
        joint("half_lap", "depth: 1/4"),
        BLANK - SHARED / 3,
        RAIL - 2 * SHARED / 3,
    ),
    "lap in a sheet": (
        [LEAN, rail(8, 10.25, "ply")],
        joint("half_lap"),
        BLANK - SHARED / 2,
        RAIL - SHARED / 2,
    ),
    "bridle at a corner": (
        [STILE, rail(17.75, 20)],
        joint("bridle"),
        BLANK - SHARED / 3,
        RAIL - 2 * SHARED / 3,
    ),
    "bridle at the other": (
        [STILE, rail(0, 2.25)],
        joint("bridle"),
        BLANK - SHARED / 3,
        RAIL - 2 * SHARED / 3,
    ),
    "bridle over a part": (
        [STILE, rail(8, 10.25)],
        joint("bridle"),
        BLANK - 2 * SHARED / 3,
        RAIL - SHARED / 3,
    ),
    "bridle of given thickness": (
        [STILE, rail(8, 10.25)],
        joint("bridle", "thickness: 3/8"),
        BLANK - SHARED / 2,
        RAIL - SHARED / 2,
    ),
    "bridle in a sheet": (
        [LEAN, rail(17.75, 20, "ply")],
        joint("bridle"),
        BLANK - SHARED / 3,
        RAIL - 2 * SHARED / 3,
    ),
    "crossing": (
        [STILE, Laid("rail", "cherry", (-5, 8, 0), (7.25, 10.25, 0.75), (0, 1))],
        joint("half_lap"),
        BLANK - SHARED / 2,
        RAIL - SHARED / 2,
    ),
    "corner drawn through": (
        [STILE, Laid("rail", "cherry", (0, 17.75, 0), (12.25, 20, 0.75), (0, 1))],
        joint("half_lap"),
        BLANK - SHARED / 2,
        RAIL - SHARED / 2,
    ),
    # two strips on edge, 6 and 4 high on one bench: each gives half of the 4, the high one at its lower edge
    "on edge": (
        [
            Laid("stile", "cherry", (0, 0, 0), (0.75, 20, 6), (1, 2)),
            Laid("rail", "cherry", (-5, 8, 0), (7, 8.75, 4), (0, 2)),
        ],
        joint("half_lap"),
        20 * 6 * 0.75 - 0.75 * 0.75 * 2,
        12 * 4 * 0.75 - 0.75 * 0.75 * 2,
    ),
    "sheets on edge": (
        [
            Laid("stile", "ply", (0, 0, 0), (0.75, 20, 4), (1, 2)),
            Laid("rail", "ply", (-5, 8, 0), (7, 8.75, 4), (0, 2)),
        ],
        joint("half_lap", "glue: false"),
        20 * 4 * 0.75 - 0.75 * 0.75 * 2,
        12 * 4 * 0.75 - 0.75 * 0.75 * 2,
    ),
}


@pytest.mark.parametrize("turn", FEW)
@pytest.mark.parametrize("name", CASES)
def test_each_closes_and_comes_apart_every_way_round(name: str, turn: Turn) -> None:
    parts, spec, first, second = CASES[name]
    piece = set_out(parts, [spec], turn)
    tried(piece)
    assert volume(piece, "stile") == pytest.approx(first, rel=1e-6)
    assert volume(piece, "rail") == pytest.approx(second, rel=1e-6)


@pytest.mark.parametrize("name", ["lap at a corner", "bridle at a corner", "bridle over a part"])
@pytest.mark.parametrize("turn", TURNS)
def test_in_every_hand(name: str, turn: Turn) -> None:
    parts, spec, first, _ = CASES[name]
    piece = set_out(parts, [spec], turn)
    tried(piece)
    assert volume(piece, "stile") == pytest.approx(first, rel=1e-6)


@pytest.mark.parametrize("turn", FEW)
@pytest.mark.parametrize(("kind", "left", "kept"), [("half_lap", 1 / 2, 1 / 2), ("bridle", 6 / 20, 14 / 20)])
def test_in_millimetres(kind: str, left: float, kept: float, turn: Turn) -> None:
    """A third of 20 mm is 6.67: a 6 mm chisel."""
    parts = [
        Laid("stile", "cherry", (0, 0, 0), (60, 500, 20), (1, 0)),
        Laid("rail", "cherry", (60, 440, 0), (300, 500, 20), (0, 1)),
    ]
    piece = set_out(parts, [joint(kind)], turn, "mm")
    tried(piece)
    shared = 60 * 60 * 20
    assert volume(piece, "stile") == pytest.approx(500 * 60 * 20 - shared * left, rel=1e-6)
    assert volume(piece, "rail") == pytest.approx(300 * 60 * 20 - shared * kept, rel=1e-6)


@pytest.mark.parametrize("turn", FEW)
def test_a_thinner_part_laps_over_half_of_what_both_share(turn: Turn) -> None:
    # 3/4 over 1 1/2, flush at one face: the bed lies at half of 3/4
    parts = [
        Laid("stile", "thick", (0, 0, 0), (2.25, 20, 1.5), (1, 0)),
        Laid("rail", "cherry", (2.25, 8, 0.75), (12.25, 10.25, 1.5), (0, 1)),
    ]
    piece = set_out(parts, [joint("half_lap")], turn)
    tried(piece)
    assert volume(piece, "rail") == pytest.approx(12.25 * 2.25 * 0.75 - 2.25 * 2.25 * 0.375, rel=1e-6)
    assert volume(piece, "stile") == pytest.approx(20 * 2.25 * 1.5 - 2.25 * 2.25 * 0.375, rel=1e-6)


def test_the_plan_says_what_it_is() -> None:
    for name, summary in {
        "lap at a corner": "half lap, corner, 3/8 deep and 3/8 deep, glued",
        "lap along the way": "half lap, tee, 3/8 deep and 3/8 deep, glued",
        "crossing": "half lap, crossing, 3/8 deep and 3/8 deep, glued",
        "on edge": "half lap on edge, slots 2 deep and 2 deep, glued",
        "bridle at a corner": "corner bridle, tenon 1/4 thick, 2 1/4 long, glued",
        "bridle over a part": "tee bridle, tenon 1/4 thick, 2 1/4 long, glued",
    }.items():
        assert set_out(CASES[name][0], [CASES[name][1]]).joints[0].summary == summary


UPRIGHT = Laid("rail", "cherry", (2.25, 4, 0), (4.5, 16, 0.75), (1, 0))
INSIDE = Laid("rail", "cherry", (1, 8, 0), (12.25, 10.25, 0.75), (0, 1))


@pytest.mark.parametrize(
    ("parts", "spec", "code"),
    [
        ([STILE, rail(8, 10.25)], joint("half_lap", "depth: 23/32"), "joint.too-deep"),
        ([STILE, rail(19, 21.25)], joint("half_lap"), "joint.cannot-be-there"),
        ([STILE, rail(19, 21.25)], joint("bridle"), "joint.cannot-be-there"),
        ([STILE, rail(8, 10.25)], joint("bridle", "thickness: 5/8"), "joint.too-deep"),
        # the edge of the second, not its end
        ([STILE, UPRIGHT], joint("half_lap"), "joint.cannot-be-there"),
        ([STILE, UPRIGHT], joint("bridle"), "joint.cannot-be-there"),
        # ends inside the first
        ([STILE, INSIDE], joint("half_lap"), "joint.cannot-be-there"),
        # a thin fork over a thick part
        (
            [Laid("stile", "thick", (0, 0, 0), (2.25, 20, 1.5), (1, 0)), rail(8, 10.25)],
            joint("bridle"),
            "joint.cannot-be-there",
        ),
        ([STILE, rail(8, 10.25)], joint("half_lap", "fasten: dowels"), "fastener.not-here"),
    ],
)  # fmt: skip
def test_refused(parts: list[Laid], spec: str, code: str) -> None:
    assert code in codes(parts, [spec])
