"""Screws and dowels near edges, ends and each other: limits worked by hand, and the near twin on the other side."""

import pytest

from boardwright.core.findings import Severity
from boardwright.pipeline import check_text

RAIL = """
boardwright: 1
title: Rail
units: mm
work_to: 0.5
stock:
  oak: {{wood: oak_white, thickness: 19}}
  thin: {{wood: oak_white, thickness: {thin}}}
  ply: {{sheet: birch_plywood, thickness: 18, measured: 18}}
parts:
  rail: {{stock: {rail}, length: 800, width: 100, along: x, across: y, at: [0, 0, 0]}}
  cleat: {{stock: {cleat}, length: {length}, width: 60, along: x, across: y, at: [{at}, 20, 19]}}
joints:
  - {{first: cleat, second: rail, kind: butt, fasten: screws, screw: 8, screw_length: 30, count: {count}}}
"""


def codes(code, thin=10, rail="oak", cleat="oak", length=200, at=100, count=2):
    text = RAIL.format(thin=thin, rail=rail, cleat=cleat, length=length, at=at, count=count)
    return [f for f in check_text(text).findings if f.code == code]


@pytest.mark.parametrize(("length", "severity"), [(120, None), (100, Severity.NOTE), (40, Severity.WARNING)])
def test_ends(length, severity):
    # No. 8: 0.164 in = 4.166 mm; 7 d = 29.2 mm, 2.5 d = 10.4; the first screw stands a quarter from the cleat's end
    found = codes("fastener.end", length=length, at=0)
    assert {f.severity for f in found} == ({severity} if severity else set())
    assert not codes("fastener.end", length=length, at=0, rail="ply")


@pytest.mark.parametrize(("count", "fires"), [(6, False), (7, True)])
def test_spacing(count, fires):
    # 200 - 2 x 38 = 124 mm: 6 screws stand 24.8 mm apart, 7 20.7; 5 d = 20.83
    assert bool(codes("fastener.spacing", count=count)) is fires


@pytest.mark.parametrize(("thin", "severity"), [(5, None), (4.5, Severity.WARNING), (2, Severity.ERROR)])
def test_heads(thin, severity):
    # head of No. 8: (8.433 - 4.166)/2/tan 41 = 2.454 mm; half of the wood under it takes it from 4.91 mm
    found = codes("fastener.head", thin=thin, cleat="thin")
    assert [f.severity for f in found] == ([severity] if severity else [])
