"""Biscuits, loose tenons, dowels and pocket screws in the checks: near twins, worked by hand beside each test."""

import pytest

from boardwright.pipeline import check_text

SHELVES = """
boardwright: 1
title: Two shelves on one upright
units: in
stock:
  cherry: {{wood: cherry_black, thickness: 3/4}}
parts:
  upright:
    stock: cherry
    length: 12
    width: 10
    along: z
    across: y
    at: [0, 0, 0]
    cuts: [{cut}]
  right: {{stock: cherry, length: 20, width: 10, along: x, across: y, at: [3/4, 0, 5]}}
  left: {{stock: cherry, length: 20, width: 10, along: x, across: y, at: [-20, 0, {left}]}}
joints:
  - {{first: upright, second: right, kind: butt, {joint}}}
  - {{first: upright, second: left, kind: butt, {joint}}}
"""


def found(joint: str, left: str = "2", cut: str = "") -> set[str]:
    result = check_text(SHELVES.format(joint=joint, left=left, cut=cut))
    assert result.piece is not None
    return {f.code for f in result.findings if f.code.startswith("fastener.")}


@pytest.mark.parametrize("fasten", ["biscuits", "loose_tenons", "dowels"])
def test_two_from_both_faces_of_an_upright_meet(fasten: str) -> None:
    # each stands 15/32 (biscuit, half of 23 mm), 19/32 (tenon) or 1/2 (dowel) in an upright of 3/4
    assert found(f"fasten: {fasten}", left="5") == {"fastener.meet"}
    assert not found(f"fasten: {fasten}", left="2")


def test_biscuits_that_share_no_length_do_not_meet() -> None:
    # both in the middle of 10 in and 10 mm apart in height: 4 mm thick each, so 6 mm of wood, over the 2 mm
    assert not found("fasten: biscuits, count: 1", left="5 + 13/32")
    # 5 mm apart: 1 mm of wood
    assert found("fasten: biscuits, count: 1", left="5 + 3/16") == {"fastener.meet"}


@pytest.mark.parametrize("fasten", ["biscuits", "dowels"])
def test_one_that_reaches_into_a_groove_of_the_part_it_starts_in(fasten: str) -> None:
    # a groove 1/2 deep from the other face leaves 1/4 over a biscuit that stands 15/32 in, a dowel 1/2 in
    groove = "{kind: groove, side: SIDE, along: width, at: 5 1/4, width: 1/4, depth: 1/2}"
    sides = [found(f"fasten: {fasten}", cut=groove.replace("SIDE", s)) for s in ("face", "back")]
    assert "fastener.breaks-through" in sides[0] | sides[1]
    shallow = groove.replace("depth: 1/2", "depth: 1/8")
    assert not any(found(f"fasten: {fasten}", cut=shallow.replace("SIDE", s)) for s in ("face", "back"))


def test_a_pocket_screw_too_long_comes_out() -> None:
    # 11/16 of the shelf under the head along the screw; 2 - 11/16 = 1 5/16 of it in an upright of 3/4
    assert found("fasten: pocket_screws, screw_length: 2") >= {"fastener.breaks-through"}
    assert not found("fasten: pocket_screws, screw_length: 1 1/4")


def test_pocket_screws_into_end_grain_are_told() -> None:
    text = """
boardwright: 1
title: Post
units: in
stock:
  cherry: {wood: cherry_black, thickness: 3/4}
parts:
  post: {stock: cherry, length: 12, width: 6, along: z, across: y, at: [0, 0, 0]}
  top: {stock: cherry, length: 12, width: 6, along: LONG, across: y, at: [0, 0, 12]}
joints:
  - {first: post, second: top, kind: butt, fasten: pocket_screws}
"""
    codes = {f.code for f in check_text(text.replace("LONG", "z")).findings}
    assert "fastener.end-grain" in codes
