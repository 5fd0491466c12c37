"""Fingers, dovetails and sliding dovetails: laid any way round, shut, whole, and free to come apart one way only."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from joint_bench import FEW, Laid, Turn, codes, fits, set_out, text_of, tried, volume

from boardwright.core.lengths import Printer
from boardwright.piece.cuts import DovetailSlot, Fingers, Pins, Tails
from boardwright.pipeline import check_text
from boardwright.solids import mesh
from boardwright.solids.dry_fit import dry_fit

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


EDGES = [(0.0, 6.0), (1.0, 6.0), (0.0, 5.0), (1.0, 5.0), (-0.125, 6.0), (0.0, 7.0), (-1.0, 7.0), (1.0, 7.0)]


@pytest.mark.parametrize("keys", CORNERS)
@pytest.mark.parametrize("edges", EDGES)
def test_edges_that_are_not_flush(keys: str, edges: tuple[float, float]) -> None:
    """At such an edge the first board goes past the second, or stops short of it: no wood is left in its way."""
    low, high = edges
    front = Laid("front", "cherry", (0, low, T), (T, high, 12), (2, 1))
    piece = set_out([corner()[0], front], joint(keys))
    tried(piece)
    # where they cross one of the two fills the corner, and where the first goes on it stays whole
    both = 20 * 6 * T + (12 - T) * (high - low) * T
    assert volume(piece, "side") + volume(piece, "front") == pytest.approx(both, rel=1e-6)


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
    side = shelf()[0]
    beside = [side, Laid("front", "cherry", (8, 1, T), (8 + T, 7, 12), (2, 1))]
    assert "joint.cannot-be-there" in codes(beside, joint("kind: sliding_dovetail"))


@pytest.mark.parametrize(
    ("low", "high", "keys", "start", "end", "ways"),
    [
        (0, 5, "", 0, 5, {-1.0}),  # in from the front, stopped at the rear
        (1, 6, "", 1, 6, {1.0}),  # in from the rear
        (1, 5, "", 1, 6, {1.0}),  # reaches neither edge: the slot runs on to the rear
        (0, 5, ", stopped: 1/2", 0.5, 6, {1.0}),  # stopped at the front, so it runs on to the rear
        (0, 6, ", stopped: 1/2", 0.5, 6, {1.0}),
    ],
)
def test_a_slot_is_open_at_one_edge_at_least(
    low: float, high: float, keys: str, start: float, end: float, ways: set[float]
) -> None:
    parts = [shelf()[0], Laid("front", "cherry", (8, low, T), (8 + T, high, 12), (2, 1))]
    piece = set_out(parts, joint("kind: sliding_dovetail" + keys))
    fits(piece)
    (slot,) = [c for c in piece.part("parts.side").cuts if isinstance(c, DovetailSlot)]
    across = sorted((round(slot.start / 25.4, 6), round(slot.end / 25.4, 6)))
    assert across in ([start, end], [6 - end, 6 - start])
    assert {w[1] for w in piece.joints[0].directions} == ways


def test_the_usual_slot_is_that_of_a_half_inch_cutter_of_14_degrees() -> None:
    """In 3/4 stock: 1/4 deep (a third), neck 3/8 (a half), so 3/8 + 2 x 1/4 x tan 14 = 0.4997 at the bottom."""
    piece = set_out(shelf(), joint("kind: sliding_dovetail"))
    (slot,) = [c for c in piece.part("parts.side").cuts if isinstance(c, DovetailSlot)]
    assert (slot.depth / 25.4, slot.width / 25.4) == pytest.approx((0.25, 0.375))
    bottom = 0.375 + 2 * 0.25 * math.tan(math.radians(14))
    assert bottom == pytest.approx(0.5, abs=0.001)
    assert slot.width + 2 * slot.depth * slot.slope == pytest.approx(bottom * 25.4, abs=0.02)


def test_a_slot_that_stops_too_far_in_is_refused() -> None:
    assert "joint.cannot-be-there" in codes(shelf(), joint("kind: sliding_dovetail, stopped: 4"))
    assert "joint.no-room" in codes(shelf(), joint("kind: sliding_dovetail, width: 11/16"))


@pytest.mark.parametrize(
    ("turn", "on"),
    [
        # the front stands upright, the side lies: the upright has the tails
        (((0, 1, 2), (1, 1, 1)), "front"),
        # the other way about
        (((2, 1, 0), (1, 1, 1)), "side"),
        # both lie; the front runs from front to back
        (((0, 2, 1), (1, 1, 1)), "front"),
        (((1, 2, 0), (1, 1, 1)), "side"),
    ],
)
def test_the_board_that_must_not_be_drawn_off_has_the_tails(turn: Turn, on: str) -> None:
    """Uprights of a case over what hangs on them; sides of a drawer over its front (common practice)."""
    piece = set_out(corner(), joint("kind: dovetail"), turn)
    with_tails = [p.name for p in piece.parts if any(isinstance(c, Tails) for c in p.cuts)]
    assert with_tails == [on]
    assert f"tails on the {on}, 1:8, glued" in piece.joints[0].summary


def test_slopes_by_the_wood() -> None:
    """1:8 in hardwood, 1:6 in softwood (common practice); 1:7 when asked for."""
    for wood, keys, slope in (
        ("wood: cherry_black", "", 8),
        ("wood: pine_sugar", "", 6),
        ("wood: pine_sugar", ', slope: "1:7"', 7),
        ("sheet: hardwood_plywood, measured: 3/4", "", 8),
    ):
        text = text_of(corner(), joint("kind: dovetail" + keys))
        piece = check_text(
            text.replace("{wood: cherry_black, thickness: 3/4}", f"{{{wood}, thickness: 3/4}}")
        ).piece
        assert piece is not None
        (tails,) = [c for c in piece.part("parts.front").cuts if isinstance(c, Tails)]
        assert 1 / tails.slope == pytest.approx(slope)


def test_half_blind_tails_stop_at_the_lap() -> None:
    """A front of 3/4: lap 3/16, tails 9/16 long (Furniture-making magazine anthology 2007, p. 84: lap 3/16 on 3/4)."""
    piece = set_out(corner(), joint("kind: half_blind"))
    (pins,) = [c for c in piece.part("parts.side").cuts if isinstance(c, Pins)]
    (tails,) = [c for c in piece.part("parts.front").cuts if isinstance(c, Tails)]
    assert (pins.depth / 25.4, tails.length / 25.4, pins.length / 25.4) == pytest.approx(
        (9 / 16, 9 / 16, 3 / 4)
    )
    assert piece.part("parts.front").size[0] / 25.4 == pytest.approx(12 - T + 9 / 16)


def grooved(at: str) -> list[Laid]:
    """A corner with a groove 1/4 wide along the inner face of the first board, so far from its edge."""
    cut = f"{{kind: groove, side: face, along: length, at: {at}, width: 1/4, depth: 1/4}}"
    side, front = corner()
    return [replace(side, cuts=(cut,)), front]


@pytest.mark.parametrize(
    ("keys", "at", "shown"),
    [
        ("kind: dovetail", "1/2", 0),  # the pin board's groove ends in a tail
        ("kind: half_blind", "1/2", 0),
        ("kind: dovetail", "1/4", 0),  # the half pin is made narrower
        ("kind: dovetail, half_pin: 3/8", "1/4", 1),  # it is asked for as wide as that
        ("kind: finger", "1/8", 0),  # the other board gets the outer fingers
        ("kind: finger, starts: first", "1/8", 1),
        ("kind: finger, pitch: 1/8", "1/2", 1),  # no finger is as wide as the groove
    ],
)
def test_grooves_that_run_out_are_hidden_or_said(keys: str, at: str, shown: int) -> None:
    found = check_text(text_of(grooved(at), joint(keys))).findings
    assert [f.code for f in found].count("joint.groove-shows") == shown


def test_fingers_of_the_second_board_at_both_edges() -> None:
    """6 in and fingers of 3/8: 15 whole ones of 16, 3/8 left, so 3/16 more for each outer finger."""
    piece = set_out(corner(), joint("kind: finger, starts: second, pitch: 3/8"))
    tried(piece)
    (own,) = [c for c in piece.part("parts.front").cuts if isinstance(c, Fingers)]
    (other,) = [c for c in piece.part("parts.side").cuts if isinstance(c, Fingers)]
    assert (len(own.sockets), len(other.sockets)) == (7, 8)
    ends = [round((b - a) / 25.4, 6) for a, b in other.sockets]
    assert ends == [0.5625, *[0.375] * 6, 0.5625]
    assert "joint.cannot-be-there" in codes(corner(6.0, 5.0), joint("kind: finger, starts: second"))


def test_a_cutter_of_which_an_odd_number_fills_the_width_comes_first() -> None:
    """3/4 stock: cutters from 3/8 to 3/4. 4 1/2 wide: 3/8 gives 12, 1/2 gives 9. 6: none odd, so 3/8, half of 3/4."""
    for width, pitch in ((4.5, 0.5), (6.0, 0.375), (5.625, 0.375), (5.25, 0.75)):
        piece = set_out(corner(width), joint("kind: finger"))
        assert f"fingers {Printer('in', 25.4 / 32).size(pitch * 25.4)} wide" in piece.joints[0].summary


def test_ends_between_two_steps_are_shortened_along_their_own_flanks() -> None:
    """Sheets of 17.7 on 0.5 mm: 250 + 2 x 17.7 comes down to 285; the tails stay where the pins are."""
    for keys in [*CORNERS, "kind: sliding_dovetail"]:
        at = 40 if "sliding" in keys else 0
        text = text_of(
            [
                Laid("left", "sheet", (0, 0, 0), (17.7, 100, 200), (2, 1)),
                Laid("right", "sheet", (267.7, 0, 0), (285.4, 100, 200), (2, 1)),
                Laid("shelf", "sheet", (17.7, 0, at), (267.7, 100, at + 17.7), (0, 1)),
            ],
            [f"first: {s}, second: shelf, {keys}" for s in ("left", "right")],
            units="mm",
        ).replace("stock:\n", "stock:\n  sheet: {sheet: birch_plywood, thickness: 18, measured: 17.7}\n", 1)
        text = text.replace("at: [17.7,", "at: [left.right,").replace("at: [267.7,", "at: [shelf.right,")
        result = check_text(text)
        assert result.piece is not None
        assert [f.text() for f in result.findings if f.severity == "error"] == []
        assert not dry_fit(result.piece).overlaps
        assert result.piece.part("parts.shelf").size[0] % 0.5 == pytest.approx(0.0)


def test_a_groove_for_a_bottom_falls_within_a_tail() -> None:
    """A groove 1/2 in up and 1/4 wide: it lies inside the root of a tail (common practice)."""
    cut = "{kind: groove, side: face, along: length, at: 1/2, width: 1/4, depth: 1/4}"
    side = Laid("side", "cherry", (0, 0, 0), (20, 6, T), (0, 1), (cut,))
    parts = [side, corner()[1]]
    piece = set_out(parts, joint("kind: dovetail"), allow=("fit.open-joint",))
    pins = next(c for c in piece.part("parts.side").cuts if type(c).__name__ == "Pins")
    roots = [(a / 25.4, b / 25.4) for a, b in pins.sockets]  # type: ignore[union-attr]
    assert any(a <= 0.5 and b >= 0.75 for a, b in roots), roots
