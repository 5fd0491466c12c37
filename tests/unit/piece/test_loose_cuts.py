"""Every kind of cut that a file can give a loose part: set out, laid in its own frame, its volume in closed form."""

from __future__ import annotations

import math

import pytest

from boardwright.core.findings import Severity
from boardwright.pipeline import Result, check_text
from boardwright.solids import exact, mesh

L, W, T = 400.0, 120.0, 20.0
TAN = {a: math.tan(math.radians(a)) for a in (10, 15, 30, 45)}

CUTS: dict[str, tuple[str, float]] = {
    "groove": ("kind: groove, side: face, along: length, at: 30, width: 6, depth: 5, start: 50", 6 * 5 * 350),
    "rabbet": ("kind: rabbet, side: back, edge: far_edge, width: 10, depth: 8, stop: 300", 10 * 8 * 300),
    "notch": ("kind: notch, end: far_end, edge: edge, length: 30, width: 20", 30 * 20 * T),
    "hole in an end": (
        "kind: hole, side: far_end, from_edge: 40, from_back: 10, diameter: 8, depth: 30",
        math.pi * 16 * 30,
    ),
    "slot": (
        "kind: hole, side: face, from_end: 100, from_edge: 60, diameter: 8, slot: 40, slot_along: width",
        T * (math.pi * 16 + 8 * 40),
    ),
    "plugged": (
        "kind: hole, side: face, from_end: 100, from_edge: 60, diameter: 4, counterbore: 10, counterbore_depth: 6",
        math.pi * (4 * 14 + 25 * 6),
    ),
    "leaning": (
        "kind: hole, side: face, from_end: 100, from_edge: 60, diameter: 9, lean: 15, lean_along: width",
        math.pi * 4.5**2 * T / math.cos(math.radians(15)),
    ),
    "mortise": (
        "kind: mortise, side: edge, along: length, at: 7, width: 6, start: 50, stop: 90, depth: 30",
        7200,
    ),
    "tenon": (
        "kind: tenon, end: end, length: 30, face: 6, back: 7, near: 15, far: 20, haunch: 8",
        30 * (T * W - 7 * 85) - 7 * 20 * 8,
    ),
    "edge tenon": (
        "kind: tenon, end: far_edge, length: 10, face: 7, back: 7, near: 20",
        10 * (T * L - 6 * 380),
    ),
    "fingers": ("kind: fingers, end: far_end, depth: 18, sockets: [[0, 12], [24, 36]]", 18 * 24 * T),
    "tails": (
        "kind: tails, end: end, depth: 16, sockets: [[40, 46]], slope: 8",
        T * (16 * 6 + 16 * 16 / 8),
    ),
    "pins": (
        "kind: pins, end: end, depth: 12, sockets: [[8, 34]], slope: 6, side: face, lap: 6",
        12 * (26 * 14 + 14 * 14 / 6),
    ),
    "dovetail slot": (
        "kind: dovetail_slot, side: face, along: width, at: 200, width: 10, depth: 8, slope: 6",
        120 * (80 + 64 / 6),
    ),
    "dovetail tongue": (
        "kind: dovetail_tongue, end: far_end, length: 8, face: 4, back: 4, slope: 6",
        120 * 2 * (32 + 64 / 12),
    ),
    "mitre": ("kind: bevel, side: end, over_width: 45", T * W * W / 2),
    "mitre the other way": ("kind: bevel, side: far_end, over_width: -30", T * W * W * TAN[30] / 2),
    "compound": (
        "kind: bevel, side: end, over_width: 15, over_thickness: -10, inward: 5",
        W * T * (5 + TAN[15] * W / 2 + TAN[10] * T / 2),
    ),
    "bevelled edge": ("kind: bevel, side: far_edge, over_thickness: 10", L * T * T * TAN[10] / 2),
    "taper": ("kind: taper, side: far_edge, end: end, start: 300, depth: 30", T * 300 * 30 / 2),
    "chamfer": ("kind: chamfer, side: face, edge: end, size: 5", W * 12.5),
    "round-over": ("kind: round_over, side: back, edge: edge, size: 10", L * (100 - math.pi * 25)),
    "cove": ("kind: cove, side: face, edge: far_edge, size: 8, start: 100", 300 * math.pi * 16),
    "ogee": ("kind: ogee, side: face, edge: far_edge, size: 8", L * 32),
    "profile": (
        "kind: profile, side: face, edge: edge, points: [[9, 0], [9, 3], [0, 6]]",
        L * (9 * 3 + 9 * 3 / 2),
    ),
    "raised field": (
        "kind: raised_field, side: face, width: 40, flat: 8, tongue: 6, step: 2, edges: [end, far_end]",
        2 * W * (8 * 14 + 32 * 8),
    ),
    "arc": (
        "kind: curve, side: edge, shape: arc, points: [[140, 0], [200, 20], [260, 0]]",
        T * (100**2 * math.asin(0.6) - 60 * 80),
    ),
    "spline": ("kind: curve, side: end, points: [[20, 0], [60, 30], [100, 0]]", T * 2 * 30 * 40 * 5 / 8),
    "line": ("kind: curve, side: far_edge, shape: line, points: [[0, 30], [200, 0]]", T * 3000),
    "V groove": (
        "kind: v_groove, side: back, along: length, at: 60, width: 9, depth: 4.5, start: 30, stop: 370",
        6885,
    ),
}
PLACED = {
    "lying": "along: x, across: y",
    "upright": "along: z, across: y",
    "across": "along: y, across: z",
}


def part_with(cut: str, how: str = "lying") -> Result:
    return check_text(
        f"""
boardwright: 1
title: Cut
units: mm
work_to: 0.1
stock: {{oak: {{wood: maple_sugar, thickness: 20}}}}
parts:
  one: {{stock: oak, length: 400, width: 120, {PLACED[how]}, at: [30, -50, 200], cuts: [{{{cut}}}]}}
"""
    )


@pytest.mark.parametrize("how", PLACED)
@pytest.mark.parametrize("name", CUTS)
def test_what_a_cut_takes_away(name: str, how: str) -> None:
    cut, taken = CUTS[name]
    result = part_with(cut, how)
    assert not result.findings, [f.text() for f in result.findings]
    assert result.piece is not None
    (part,) = result.piece.parts
    left = L * W * T - taken
    curved = any(
        w in cut for w in ("hole", "round_over", "cove", "ogee", "arc", "spline", "side: end, points")
    )
    assert mesh.volume(part) == pytest.approx(left, abs=0.01 * taken if curved else 1e-3)
    assert exact.volume(exact.part_shape(part)) == pytest.approx(left, abs=2e-4 * taken + 1e-3)


OUTSIDE = [
    "kind: mortise, side: face, along: thickness, at: 1, width: 2, start: 1, stop: 2",
    "kind: mortise, side: edge, along: length, at: 7, width: 6, start: 380, stop: 420, depth: 30",
    "kind: mortise, side: edge, along: length, at: 7, width: 6, start: 50, stop: 90, depth: 130",
    "kind: tenon, end: end, length: 400",
    "kind: tenon, end: end, length: 30, face: 10, back: 10",
    "kind: tenon, end: end, length: 30, far: 20, haunch: 30",
    "kind: tenon, end: end, length: 30, haunch: 10",
    "kind: fingers, end: end, depth: 18, sockets: [[0, 12], [10, 36]]",
    "kind: fingers, end: end, depth: 18, sockets: [[0, 12, 20]]",
    "kind: fingers, end: end, depth: 0, sockets: [[0, 12]]",
    "kind: pins, end: end, depth: 12, sockets: [[8, 34]], lap: 20",
    "kind: dovetail_slot, side: face, along: width, at: 0, width: 10, depth: 8",
    "kind: dovetail_tongue, end: end, length: 8, face: 9, back: 9",
    "kind: bevel, side: end, over_length: 10",
    "kind: bevel, side: far_edge, over_length: 30",
    "kind: taper, side: edge, end: edge, start: 10, depth: 5",
    "kind: taper, side: edge, end: end, start: 410, depth: 5",
    "kind: taper, side: face, end: end, start: 100, depth: 20",
    "kind: chamfer, side: face, edge: back, size: 5",
    "kind: chamfer, side: face, edge: edge",
    "kind: chamfer, side: face, edge: edge, size: 21",
    "kind: profile, side: face, edge: edge, points: [[9, 0]]",
    "kind: raised_field, side: face, width: 60, tongue: 6",
    "kind: raised_field, side: face, width: 40, tongue: 6, step: 14",
    "kind: curve, side: edge, shape: arc, points: [[140, 0], [200, 0], [260, 0]]",
    "kind: curve, side: edge, shape: arc, points: [[140, 0], [260, 0]]",
    "kind: curve, side: edge, points: [[140, 0], [140, 10], [260, 0]]",
    "kind: curve, side: edge, points: [[140, 0], [200, 120], [260, 0]]",
    "kind: v_groove, side: back, along: length, at: 2, width: 9, depth: 4.5",
    "kind: hole, side: face, from_end: 10, from_edge: 60, diameter: 8, slot: 40",
    "kind: hole, side: face, from_end: 100, from_edge: 60, diameter: 8, slot: 40, slot_along: thickness",
]


@pytest.mark.parametrize("cut", OUTSIDE)
def test_a_cut_that_does_not_fit_is_refused(cut: str) -> None:
    result = part_with(cut)
    assert [f.code for f in result.findings if f.severity is Severity.ERROR] == ["part.cut-outside"]


def test_a_key_of_another_kind_of_cut_is_told() -> None:
    result = part_with(
        "kind: mortise, side: edge, along: length, at: 7, width: 6, start: 50, stop: 90, dept: 30"
    )
    (finding,) = result.findings
    assert finding.code == "file.unknown-key"
    assert "`depth`" in finding.remedy


def test_a_kind_that_there_is_not_is_told_with_those_there_are() -> None:
    result = part_with("kind: mortice, side: edge")
    (finding,) = result.findings
    assert finding.code == "file.wrong-value"
    assert "'mortise'" in finding.expected


def test_missing_keys_of_a_cut_are_told_one_by_one() -> None:
    result = part_with("kind: groove, side: face, along: length, width: 6")
    assert {f.code for f in result.findings} == {"file.missing-key"}
    assert sorted(f.expected.split("`")[1].rsplit(".", 1)[1][:2] for f in result.findings) == ["at", "de"]
