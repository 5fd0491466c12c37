"""Compound angles against the tables for sloping crown moulding, and against vectors.

The tables (mitre and bevel setting of a compound mitre saw, moulding that leans 38 or 45 degrees from the wall, by
corner) are common to saw manuals; the values are from memory. A hopper that slopes s out of plumb is the same cut:
its sides lie against the saw as the moulding does.
"""

import math

import numpy as np
import pytest

from boardwright.formulas.compound import (
    compound_butt_tilt,
    compound_mitre_gauge,
    compound_mitre_tilt,
    plane_gauge,
    plane_tilt,
)
from boardwright.piece.cuts import Bevel
from boardwright.piece.records import Part
from boardwright.pipeline import check_text

# Slope out of plumb, sides (corner = 180 - 360/n degrees), mitre, bevel: two decimals as printed.
CROWN = [(38, 4, 31.62, 33.86), (45, 4, 35.26, 30.00), (38, 8, 14.31, 17.55), (45, 8, 16.32, 15.70)]


@pytest.mark.parametrize(("slope", "sides", "mitre", "bevel"), CROWN)
def test_the_tables_for_crown_moulding(slope: float, sides: int, mitre: float, bevel: float) -> None:
    assert compound_mitre_gauge(slope, sides) == pytest.approx(mitre, abs=0.006)
    assert compound_mitre_tilt(slope, sides) == pytest.approx(bevel, abs=0.006)


@pytest.mark.parametrize("sides", range(3, 17))
def test_plumb_sides_are_a_plain_mitre_and_flat_ones_a_picture_frame(sides: int) -> None:
    """The two ends that every text gives: 180/n of tilt, and 180/n of gauge."""
    assert compound_mitre_gauge(0, sides) == pytest.approx(0)
    assert compound_mitre_tilt(0, sides) == pytest.approx(180 / sides)
    assert compound_mitre_gauge(89.999, sides) == pytest.approx(180 / sides, abs=0.01)
    assert compound_mitre_tilt(89.999, sides) == pytest.approx(0, abs=0.01)


def by_vectors(slope: float, sides: int) -> tuple[float, float, float]:
    """Gauge, mitre tilt, butt tilt, from the normals of two neighbours and nothing else [degrees]."""
    s, turn = math.radians(slope), 2 * math.pi / sides
    normals = [
        np.array([math.cos(a) * math.cos(s), math.sin(a) * math.cos(s), -math.sin(s)]) for a in (0.0, turn)
    ]
    corner = np.cross(*normals)
    corner /= np.linalg.norm(corner)
    up = np.array([math.sin(s), 0.0, math.cos(s)])
    gauge = math.acos(abs(float(corner @ up)))
    mitre = normals[0] - normals[1]
    tilt = math.asin(float(normals[0] @ mitre) / np.linalg.norm(mitre))
    return math.degrees(gauge), math.degrees(tilt), math.degrees(math.asin(float(normals[0] @ normals[1])))


@pytest.mark.parametrize("slope", [0.0, 5.0, 12.5, 30.0, 45.0, 60.0])
@pytest.mark.parametrize("sides", [3, 4, 5, 6, 8, 12, 16])
def test_vectors_say_the_same(slope: float, sides: int) -> None:
    gauge, mitre, butt = by_vectors(slope, sides)
    assert compound_mitre_gauge(slope, sides) == pytest.approx(gauge, abs=1e-6)
    assert compound_mitre_tilt(slope, sides) == pytest.approx(mitre, abs=1e-9)
    assert compound_butt_tilt(slope, sides) == pytest.approx(butt, abs=1e-9)


STOCK = """
boardwright: 1
title: Hopper
units: mm
stock:
  board: {wood: pine_sugar, thickness: 18}
  ply: {sheet: birch_plywood, thickness: 6, measured: 6}
"""


def ends(part: Part) -> list[Bevel]:
    return [c for c in part.cuts if isinstance(c, Bevel) and c.side.axis == 0]


@pytest.mark.parametrize(("slope", "sides"), [(15, 4), (30, 4), (8, 6), (20, 8), (45, 4), (0, 5)])
def test_the_ends_of_a_hopper_are_cut_at_these_angles(slope: float, sides: int) -> None:
    keys = f"width: 500, height: 150, sides: {sides}, slope: {slope}, bottom: {{set: none}}"
    result = check_text(STOCK + f"box: {{{keys}}}")
    assert result.piece is not None
    for part in result.piece.parts:
        assert len(ends(part)) == 2
        for end in ends(part):
            gauge, tilt = abs(plane_gauge(end.over_u)), abs(plane_tilt(end.over_u, end.over_v))
            assert gauge == pytest.approx(compound_mitre_gauge(slope, sides), abs=1e-6)
            assert tilt == pytest.approx(compound_mitre_tilt(slope, sides), abs=1e-6)


def test_a_butted_hopper_is_cut_at_the_butt_tilt() -> None:
    result = check_text(
        STOCK + "box: {width: 500, height: 150, slope: 25, corner: butt, bottom: {set: none}}"
    )
    assert result.piece is not None
    for part in result.piece.parts:
        for end in ends(part):
            tilt = abs(plane_tilt(end.over_u, end.over_v))
            assert tilt == pytest.approx(compound_butt_tilt(25, 4), abs=1e-6)
            assert abs(plane_gauge(end.over_u)) == pytest.approx(compound_mitre_gauge(25, 4), abs=1e-6)
