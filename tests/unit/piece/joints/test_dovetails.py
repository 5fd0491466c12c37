"""Fingers, dovetails and sliding dovetails: laid any way round, shut, whole, and free to come apart one way only."""

from __future__ import annotations

import pytest
from joint_bench import FEW, Laid, Turn, codes, fits, set_out, tried, volume

from boardwright.solids import mesh

T = 0.75
CORNERS = ["kind: finger", "kind: dovetail", "kind: dovetail, tails_on: first", "kind: half_blind"]


def corner(
    width: float = 6.0, second: float | None = None, stock: str = "cherry", low: bool = True
) -> list[Laid]:
    """A board along u and one along w that stands on its end, as drawn: at the low or high end of the first."""
    deep = width if second is None else second
    at = 0.0 if low else 20.0 - T
    return [
        Laid("side", stock, (0, 0, 0), (20, width, T), (0, 1)),
        Laid("front", stock, (at, 0, T), (at + T, deep, 12), (2, 1)),
    ]


def joint(keys: str) -> list[str]:
    return [f"first: side, second: front, {keys}"]


@pytest.mark.parametrize("turn", FEW)
@pytest.mark.parametrize("keys", CORNERS)
def test_a_corner_fits_whichever_way_it_lies(keys: str, turn: Turn) -> None:
    tried(set_out(corner(), joint(keys), turn))


@pytest.mark.parametrize("keys", CORNERS)
@pytest.mark.parametrize("stock", ["cherry", "ply", "thick"])
@pytest.mark.parametrize("low", [True, False])
def test_a_corner_in_every_stock(keys: str, stock: str, low: bool) -> None:
    if stock == "thick":
        parts = [
            Laid("side", "cherry", (0, 0, 0), (20, 6, T), (0, 1)),
            Laid("front", "thick", (0 if low else 18.5, 0, T), (1.5 if low else 20, 6, 12), (2, 1)),
        ]
        tried(set_out(parts, joint(keys)))
        return
    tried(set_out(corner(stock=stock, low=low), joint(keys)))


@pytest.mark.parametrize("keys", CORNERS[:2] + CORNERS[3:])
def test_a_narrower_second_part_leaves_the_rest_of_the_first(keys: str) -> None:
    tried(set_out(corner(6.0, 5.0), joint(keys)))


@pytest.mark.parametrize("keys", CORNERS)
@pytest.mark.parametrize("width", [40.0, 63.5, 97.0, 150.0, 311.5])
def test_widths_in_millimetres(keys: str, width: float) -> None:
    parts = [
        Laid("side", "cherry", (0, 0, 0), (400, width, 20), (0, 1)),
        Laid("front", "cherry", (0, 0, 20), (20, width, 300), (2, 1)),
    ]
    tried(set_out(parts, joint(keys), units="mm"))


def test_the_two_boards_of_a_corner_fill_it() -> None:
    """Whatever the layout: together they are the two boards and the block where they cross, and nothing twice."""
    for keys in CORNERS:
        piece = set_out(corner(), joint(keys))
        lap = 6 * T * T  # the corner block
        plain = 20 * 6 * T + (12 - T) * 6 * T
        assert volume(piece, "side") + volume(piece, "front") == pytest.approx(plain, rel=1e-6), (keys, lap)


def test_the_layout_of_a_chest_side_by_hand() -> None:
    """Case from practice, recomputed: 8 in wide, 3/4 thick, half pins 3/8, four pins 1/4, five tails, 1:8.

    Tails 1.250 at the tip, 1.0625 at the root; 5 x 1.250 + 4 x 0.25 + 2 x 0.375 = 8.
    """
    keys = 'kind: dovetail, tails: 5, pin: 1/4, half_pin: 3/8, slope: "1:8"'
    piece = set_out(corner(8.0), joint(keys))
    tails = next(c for c in piece.part("parts.front").cuts if type(c).__name__ == "Tails")
    sizes = [round((b - a) / 25.4, 4) for a, b in tails.sockets]  # type: ignore[union-attr]
    assert sizes == [0.375, 0.25, 0.25, 0.25, 0.25, 0.375]
    pins = next(c for c in piece.part("parts.side").cuts if type(c).__name__ == "Pins")
    assert {round((b - a) / 25.4, 4) for a, b in pins.sockets} == {1.0625}  # type: ignore[union-attr]


def test_fingers_that_do_not_come_out_even_say_which_widths_would() -> None:
    """Case from practice, recomputed: 4 in and a cutter of 3/8: 3.375 (9) or 4.125 (11) end alike."""
    from joint_bench import text_of

    from boardwright.pipeline import check_text

    found = check_text(text_of(corner(4.0), joint("kind: finger, pitch: 3/8"))).findings
    (note,) = [f for f in found if f.code == "joint.fingers-uneven"]
    assert "3 3/8 in or 4 1/8 in" in note.expected


@pytest.mark.parametrize(
    ("keys", "width", "code"),
    [
        ("kind: finger, pitch: 3/8", 1.0, "joint.no-room"),
        ("kind: dovetail", 0.75, "joint.no-room"),
        ("kind: dovetail, tails: 9", 3.0, "joint.no-room"),
        ("kind: half_blind, lap: 1", 6.0, "joint.too-deep"),
    ],
)
def test_what_does_not_fit_is_refused(keys: str, width: float, code: str) -> None:
    assert code in codes(corner(width), joint(keys))


@pytest.mark.parametrize("keys", ["kind: finger", "kind: dovetail", "kind: half_blind"])
def test_a_board_in_the_middle_takes_no_corner(keys: str) -> None:
    parts = [
        Laid("side", "cherry", (0, 0, 0), (20, 6, T), (0, 1)),
        Laid("front", "cherry", (8, 0, T), (8 + T, 6, 12), (2, 1)),
    ]
    assert "joint.cannot-be-there" in codes(parts, joint(keys))


def shelf(at: float = 8.0, depth: float = 6.0) -> list[Laid]:
    """A shelf that stands on a side, in from its ends."""
    return [
        Laid("side", "cherry", (0, 0, 0), (20, 6, T), (0, 1)),
        Laid("front", "cherry", (at, 0, T), (at + T, depth, 12), (2, 1)),
    ]


@pytest.mark.parametrize("turn", FEW)
@pytest.mark.parametrize(
    "keys", ["kind: sliding_dovetail", "kind: sliding_dovetail, stopped: 1/2, depth: 3/8"]
)
def test_a_sliding_dovetail_fits_and_slides(keys: str, turn: Turn) -> None:
    piece = set_out(shelf(), joint(keys), turn)
    fits(piece)
    (made,) = piece.joints
    solids = {p.id: mesh.part_solid(p) for p in piece.parts}
    first, second = solids[made.first], solids[made.second]
    ways = [tuple(s if i == k else 0.0 for i in range(3)) for k in range(3) for s in (1.0, -1.0)]
    free = {
        way
        for way in ways
        if all((second.translate([v * by for v in way]) ^ first).volume() < 0.05 for by in (0.5, 4.0, 40.0))
    }
    assert free == set(made.directions)
    assert len(free) == (1 if "stopped" in keys else 2)


def test_a_sliding_dovetail_takes_its_closed_form() -> None:
    """Slot at 1:6, 1/4 deep, 3/8 at its neck: 6 x (3/8 x 1/4 + 1/16 x 1/6) in3."""
    piece = set_out(shelf(), joint('kind: sliding_dovetail, depth: 1/4, width: 3/8, slope: "1:6"'))
    slot = 6 * (3 / 8 / 4 + 1 / 16 / 6)
    assert volume(piece, "side") == pytest.approx(20 * 6 * T - slot, rel=1e-6)
    assert volume(piece, "front") == pytest.approx((12 - T) * 6 * T + slot, rel=1e-6)


def test_a_sliding_dovetail_needs_wood_beyond_it() -> None:
    assert "joint.cannot-be-there" in codes(shelf(0.0), joint("kind: sliding_dovetail"))


def test_a_groove_for_a_bottom_falls_within_a_tail() -> None:
    """A groove 1/2 in up and 1/4 wide: it lies inside the root of a tail (common practice)."""
    cut = "{kind: groove, side: face, along: length, at: 1/2, width: 1/4, depth: 1/4}"
    side = Laid("side", "cherry", (0, 0, 0), (20, 6, T), (0, 1), (cut,))
    parts = [side, corner()[1]]
    piece = set_out(parts, joint("kind: dovetail"), allow=("fit.open-joint",))
    pins = next(c for c in piece.part("parts.side").cuts if type(c).__name__ == "Pins")
    roots = [(a / 25.4, b / 25.4) for a, b in pins.sockets]  # type: ignore[union-attr]
    assert any(a <= 0.5 and b >= 0.75 for a, b in roots), roots
