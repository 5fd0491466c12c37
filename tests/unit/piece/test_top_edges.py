"""The upper edge of a table top worked to a shape all round: volumes against closed forms, both kernels."""

from __future__ import annotations

import math

import pytest

from boardwright.piece.records import Part
from boardwright.pipeline import Result, check_text
from boardwright.solids import exact
from boardwright.solids.mesh import volume

TABLE = """
boardwright: 1
title: Side table
units: mm
work_to: 0.5
stock: {{ash: {{wood: ash_white, thickness: {thick}}}, leg: {{wood: ash_white, thickness: 45}}}}
table: {{width: {width}, depth: {depth}, height: 600, top: {{fixed: none, {top}}}}}
"""


def table(top: str, width: float = 800, depth: float = 500, thick: float = 20) -> Result:
    return check_text(TABLE.format(top=top, width=width, depth=depth, thick=thick))


def the_top(result: Result) -> Part:
    assert result.piece is not None, [f.text() for f in result.findings]
    assert [f.text() for f in result.findings if f.severity == "error"] == []
    return result.piece.part("table.top")


def section(kind: str, s: float) -> tuple[float, float]:
    """Area of a section and the integral of the square of its width over its depth.

    Width w at depth d. Chamfer: w = s - d. Round-over: w = s - sqrt(s^2 - (s - d)^2). Cove: w = sqrt(s^2 - d^2).
    Ogee of two arcs of r = s/2: first w = r + sqrt(r^2 - d^2), then, d counted from its lower end, r - sqrt(r^2 - d^2).
    """
    r = s / 2
    return {
        "chamfer": (s**2 / 2, s**3 / 3),
        "round_over": (s**2 * (1 - math.pi / 4), s**3 * (5 / 3 - math.pi / 2)),
        "cove": (math.pi * s**2 / 4, 2 * s**3 / 3),
        "ogee": (2 * r**2, 10 * r**3 / 3),
    }[kind]


KINDS = ["chamfer", "round_over", "cove", "ogee"]


@pytest.mark.parametrize("size", [4.0, 10.0])
@pytest.mark.parametrize("kind", KINDS)
def test_a_straight_top_loses_four_edges_mitred_at_its_corners(kind: str, size: float) -> None:
    """Along each side the area of the section; where two meet, w by w of each layer is taken once, not twice."""
    top = the_top(table(f"edge: {{kind: {kind}, size: {size}}}"))
    area, square = section(kind, size)
    taken = 2 * (800 + 500) * area - 4 * square
    whole = 800 * 500 * 20
    grooves = whole - exact.volume(exact.part_shape(top))
    assert grooves == pytest.approx(taken, rel=1e-6)
    assert whole - volume(top) == pytest.approx(taken, rel=2e-3)


@pytest.mark.parametrize("size", [4.0, 10.0])
@pytest.mark.parametrize("kind", KINDS)
def test_a_circle_loses_a_ring(kind: str, size: float) -> None:
    """Each layer is a circle of R - w: pi (2 R A - Q) less than the disc."""
    top = the_top(table(f"shape: round, edge: {{kind: {kind}, size: {size}}}", 600, 600))
    area, square = section(kind, size)
    radius = 300 - 0.002  # the rim is worked a hair inside the circle
    taken = math.pi * (2 * radius * area - square)
    disc = math.pi * radius**2 * 20
    assert disc - exact.volume(exact.part_shape(top)) == pytest.approx(taken, rel=1e-5)
    plain = the_top(table("shape: round", 600, 600))
    hair = math.pi * 300**2 * 20 - disc
    assert volume(plain) - volume(top) == pytest.approx(taken + hair, rel=3e-3)


@pytest.mark.parametrize(
    ("kind", "size"), [("chamfer", 5.0), ("round_over", 5.0), ("cove", 10.0), ("ogee", 10.0)]
)
def test_a_size_left_out_goes_by_the_thickness(kind: str, size: float) -> None:
    cut = next(c for c in the_top(table(f"edge: {{kind: {kind}}}")).cuts if type(c).__name__ == "Moulding")
    assert cut.size == size


def test_a_shape_deeper_than_the_top_is_refused() -> None:
    found = [f for f in table("edge: {kind: cove, size: 24}").findings if f.severity == "error"]
    assert [f.code for f in found] == ["table.no-room"]
    assert "20 mm or less" in found[0].remedy


def test_the_rim_of_an_ellipse_is_refused() -> None:
    found = [f for f in table("shape: round, edge: {kind: cove}", 900, 600).findings if f.severity == "error"]
    assert [f.code for f in found] == ["table.no-room"]
