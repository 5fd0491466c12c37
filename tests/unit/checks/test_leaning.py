"""Carpet and leaning back: moments by hand."""

import math

import pytest

from boardwright.checks.context import context
from boardwright.checks.leaning import measure
from boardwright.checks.margins import site_of
from boardwright.pipeline import check_text
from boardwright.solids.dry_fit import DryFit

STAND = """
boardwright: 1
title: Stand
units: mm
stock:
  oak: {{wood: oak_white, thickness: 20}}
parts:
  foot: {{stock: oak, length: 300, width: 130, along: x, across: y, at: [0, 0, 0]}}
  back: {{stock: oak, length: 1000, width: 300, along: z, across: x, at: [0, {y}, 20]}}
"""


@pytest.mark.parametrize("y", [40, 100, 129])
def test_moment_about_the_rear_feet(y):
    result = check_text(STAND.format(y=y))
    assert result.piece is not None
    c = context(result.piece, DryFit((), (), ()), result.tables)
    [margin] = [m for m in measure(c, site_of(c)) if m.check == "stability.backward"]
    density = c.piece.parts[0].stock.density * 1e-9
    a = math.atan(0.43 * 25.4 / 130)
    foot, back = 300 * 130 * 20 * density * 9.81, 300 * 1000 * 20 * density * 9.81

    def arm(behind, height):
        return behind * math.cos(a) - height * math.sin(a)

    by_hand = foot * arm(130 - 65, 10) + back * arm(130 - y - 10, 520)
    assert margin.value == pytest.approx(by_hand / 1000, rel=1e-6)
    assert margin.kept is (by_hand >= 0)
