"""What a case stands on, and what covers it."""

from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shape import misfits

from bench import IN, codes, holes, inches, piece_of
from boardwright.piece.cuts import Bevel, Curve
from boardwright.pipeline import check_text

CASE = """
boardwright: 1
title: Chest
units: in
work_to: 1/32
stock:
  cherry: {wood: cherry_black, thickness: 3/4}
  post: {wood: cherry_black, thickness: 1 3/4}
  ply: {sheet: hardwood_plywood, thickness: 1/4, measured: 0.2}
  board: {sheet: hardwood_plywood, thickness: 3/4, measured: 0.72}
case:
  width: %s
  height: %s
  depth: %s
  stock: %s
  through: %s
  %s
  inside: {shelves: {count: 1}}
"""
BASES = (
    "base: {}",
    "base: {corner: mitre, setback: 0}",
    "base: {kind: bracket_feet}",
    "base: {kind: legs}",
    "base: {kind: legs, setback: 1}",
    "cover: {}",
    "cover: {overhang: 1}\n  top: {kind: rails}",
)


def case(
    keys: str, width: str = "36", depth: str = "18", stock: str = "cherry", through: str = "sides"
) -> str:
    return CASE % (width, "30", depth, stock, through, keys)


@pytest.mark.parametrize(
    ("keys", "stock", "through"), list(product(BASES, ("cherry", "board"), ("sides", "top_and_bottom")))
)
def test_every_base_and_cover_fits(keys: str, stock: str, through: str) -> None:
    result = check_text(case(keys, stock=stock, through=through))
    assert misfits(result.findings) == []
    assert result.piece is not None
    assert inches(result.piece.outside.size(2))[0] == pytest.approx(30, abs=1 / 32)
    assert min(p.box.low[2] for p in result.piece.parts) == pytest.approx(0, abs=1e-6)


@settings(max_examples=15, deadline=None)
@given(width=st.integers(10, 60), depth=st.integers(8, 26), keys=st.sampled_from(BASES))
def test_bases_of_any_size(width: int, depth: int, keys: str) -> None:
    found = set(codes(case(keys, str(width), str(depth))))
    assert found <= {"case.feet-no-room", "case.base-no-room"}


def test_a_plinth_leaves_room_for_the_toes() -> None:
    """3 to 4 in high, 2 to 3 in behind the front (common practice)."""
    front = piece_of(case("base: {}")).part("case.base.front").box
    assert inches(front.low[1], front.size(2)) == [2, 3.5]


def test_bracket_feet_are_mitred_and_sawn_out() -> None:
    """Feet 4 to 7 in long, 3 to 6 in high (common practice)."""
    piece = piece_of(case("base: {kind: bracket_feet}"))
    front = piece.part("case.base.front")
    assert len([c for c in front.cuts if isinstance(c, Bevel)]) == 2
    [arch] = [c for c in front.cuts if isinstance(c, Curve)]
    assert inches(arch.points[0][0], front.size[0] - arch.points[-1][0]) == [5, 5]
    assert sum(p.name == "glue block" for p in piece.parts) == 2


def test_screws_of_a_base_stand_in_slots_where_the_bottom_moves() -> None:
    """Cherry, flatsawn, 0.00248 for each 1 % (Wood Handbook FPL-GTR-190 table 13-5), 2 % to either side."""
    piece = piece_of(case("base: {}"))
    strip = piece.part("case.base.strip.left")
    slots = sorted(h.slot for h in holes(strip) if h.purpose == "clearance")
    assert slots[0] == 0
    run = max(h.at[0] for h in holes(strip)) - min(h.at[0] for h in holes(strip))
    assert slots[-1] >= 2 * 0.00248 * 2 * run / 2 - 1e-6


def test_a_cover_is_fast_at_the_front_and_moves_at_the_rear() -> None:
    piece = piece_of(case("cover: {}"))
    top, cover = piece.part("case.top"), piece.part("case.cover").box
    assert inches(-cover.low[0], cover.high[0] - 36 * IN, -cover.low[1], cover.high[1] - 18 * IN) == [
        0.75,
        0.75,
        0.75,
        0,
    ]
    drilled = [h for h in holes(top) if h.purpose == "clearance"]
    assert {bool(h.slot) for h in drilled} == {True, False}


def test_a_base_needs_a_bottom_and_a_cover_a_top() -> None:
    assert codes(case("base: {}\n  bottom: {kind: none}")) == ["case.base-no-room"]
    assert codes(case("cover: {}\n  top: {kind: none}")) == ["case.cover-no-top"]
    assert codes(case("base: {kind: bracket_feet}", width="12")) == ["case.feet-no-room"]
