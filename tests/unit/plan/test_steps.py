"""Steps in words, and their pictures, on pieces whose order is plain."""

from __future__ import annotations

import re

import pytest

from boardwright.core.lengths import Printer
from boardwright.drawings.layout_dims import outside, overlaps
from boardwright.drawings.records import Fill
from boardwright.pipeline import check_text
from boardwright.plan.pictures import step_drawing
from boardwright.plan.schema import BuildStep, PlanSubassembly
from boardwright.plan.steps import build_steps, way

HEAD = """
boardwright: 1
title: Piece
units: in
stock:
  oak: {wood: oak_red, thickness: 3/4}
  ply: {sheet: hardwood_plywood, thickness: 1/4, measured: 0.205}
"""
CASE = f"{HEAD}case: {{width: 24, height: 30, depth: 18, stock: oak, %s}}"
SHELF = CASE % "back: {set: groove, stock: ply}, inside: {shelves: {count: 2}}"
BUTT = "{joint: {kind: butt, fasten: screws}}"
SCREWED = CASE % f"back: {{set: none}}, top: {BUTT}, bottom: {BUTT}"
CHEST = (
    CASE % "inside: {drawers: {count: 2}}"
    + "\ndrawers: {runs_on: full_extension_bars, bars: {stock: oak}, rear_clearance: 4 1/4}"
)


def steps(text: str) -> tuple[list[BuildStep], list[PlanSubassembly], dict[str, str]]:
    piece = check_text(text).piece
    assert piece is not None
    letters = {p.id: p.letter for p in piece.parts}
    found, subs = build_steps(piece, Printer("in", piece.step), letters)
    return found, subs, letters


@pytest.mark.parametrize("text", [SHELF, SCREWED, CHEST])
def test_every_part_is_put_on_once(text: str) -> None:
    """Each step adds what does not stand yet, to what does; in the end everything stands."""
    found, subs, letters = steps(text)
    assert [s.number for s in found] == list(range(1, len(found) + 1))
    done: list[set[str]] = []
    for sub in [*[s.number for s in subs], 0]:
        own = [s for s in found if s.sub == sub]
        standing = set(own[0].onto)
        for s in own:
            assert set(s.onto) <= standing
            adds = {i for unit in s.units for i in unit}
            assert not adds & standing
            standing |= adds
        done.append(standing)
        copies = [set(c) for s in subs if s.number == sub for c in s.copies]
        assert not copies or standing == copies[0]
    assert done[-1] == set(letters)


def test_a_back_in_a_groove_goes_in_before_the_case_closes_and_stays_dry() -> None:
    found, _, letters = steps(SHELF)
    back = next(i for i in letters if i.endswith("back"))
    at = next(n for n, s in enumerate(found) if [back] in s.units)
    closing = [line for s in found[at + 1 :] for line in s.lines]
    assert any(re.search(rf"panel in groove with {letters[back]}, no glue", line) for line in closing)
    assert "Glue the faces that meet." in closing


def test_screws_are_counted_and_named() -> None:
    found, _, _ = steps(SCREWED)
    driven = [line for s in found for line in s.lines if line.startswith("Drive")]
    piece = check_text(SCREWED).piece
    assert piece is not None
    screws = [f for f in piece.fasteners if f.kind == "screw"]
    said = [re.match(r"Drive (one|\d+)", line) for line in driven]
    assert sum(1 if m[1] == "one" else int(m[1]) for m in said if m) == len(screws)
    assert all("flat-head wood screw" in line for line in driven)


def test_stop_screws_come_when_both_parts_are_there() -> None:
    """Two screws a bar, as slots and stops: eight in two drawers; what is alike is told once."""
    found, _, _ = steps(CHEST)
    piece = check_text(CHEST).piece
    assert piece is not None
    slotted = [f for f in piece.fasteners if f.slotted]
    assert len(slotted) == 8
    stops = [(s, line) for s in found for line in s.lines if "through the slot" in line]
    assert stops
    assert all("back a turn" in line for _, line in stops)
    told = sum(int(m[1]) for _, line in stops if (m := re.search(r"Drive (\d+) ×", line)))
    assert told == len(slotted)


@pytest.mark.parametrize(
    ("direction", "words"),
    [
        ((0.0, 0.0, -1.0), "down"),
        ((0.0, 1.0, 0.0), "in from the front, backward"),
        ((0.6, 0.0, -0.8), "aslant, to the right and down"),
        ((-0.0, -1.0, 1e-12), "in from behind, forward"),
    ],
)
def test_ways_in_words(direction: tuple[float, float, float], words: str) -> None:
    assert way(direction) == words


@pytest.mark.parametrize("text", [SHELF, CHEST])
def test_every_step_has_a_picture_that_can_be_read(text: str) -> None:
    piece = check_text(text).piece
    assert piece is not None
    found, _, letters = steps(text)
    for s in found:
        drawing = step_drawing(piece, s)
        assert drawing.id == s.drawing
        assert not overlaps(drawing)
        assert not outside(drawing)
        shown = {e.text for e in drawing.entities if hasattr(e, "text")}
        assert {letters[i] for unit in s.units for i in unit} & shown
        assert any(isinstance(e, Fill) and e.hue == "light wood" for e in drawing.entities)


def test_a_part_that_is_met_twice_is_named_once() -> None:
    """Two rails of a frame go into one stile: it is that stile, not two of them."""
    lid = CASE % "top: {kind: lid, lid: {made: frame, frame: {panel: {kind: flat, stock: ply}}}}"
    found, _, _ = steps(lid)
    two = next(s for s in found if s.title.startswith("2 × ") and "end of the lid" in s.title)
    move = next(line for line in two.lines if line.startswith("Move"))
    assert move.endswith(" with G.")
    assert "2 ×" not in move


def test_what_turns_is_hung_on_its_hinges() -> None:
    found, _, _ = steps(CASE % "inside: {doors: {stock: oak}}")
    hung = [line for s in found for line in s.lines if "hinge" in line]
    assert hung[0] == "Hang each on its hinges."
    assert re.match(r"Put on 4 × butt hinge", hung[1])


def test_a_wall_cleat_comes_after_the_case_and_belongs_to_the_wall() -> None:
    """The case is lowered over it: it is met last, from behind and upwards, with the case closed."""
    found, _, letters = steps(CASE % "back: {set: groove, stock: ply, inset: 3/4}, wall_cleat: {}")
    at = next(n for n, s in enumerate(found) if ["case.wall_cleat"] in s.units)
    assert {i for i in letters if i.startswith("case.side")} <= set(found[at].onto)
    assert "in from behind, forward, then up into place" in " ".join(found[at].lines)
    assert any("screw it there level" in line for line in found[at].lines)
