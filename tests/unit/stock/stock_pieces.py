"""Small designs for the tests of the stock stage."""

from __future__ import annotations

from pathlib import Path

from boardwright.core.arithmetic import Resolver
from boardwright.pipeline import check_text
from boardwright.stock.records import Result, ShopChoices
from boardwright.stock.run import run_stock, shop_choices

RACK = """
  boards:
    - {stock: cherry, length: 96, width: 8, count: 6}
"""

RANDOM_RACK = """
  boards:
    - {stock: cherry, length: 44, width: 5 3/8}
    - {stock: cherry, length: 47, width: 5 1/4}
    - {stock: cherry, length: 96, width: 6 1/8}
    - {stock: cherry, length: 46, width: 4 1/8}
    - {stock: cherry, length: 92, width: 5 7/8}
"""

CHERRY_PANELS = """
boardwright: 1
title: Panels
units: in
stock:
  cherry: {wood: cherry_black, thickness: 3/4}
parts:
  panel: {stock: cherry, length: LENGTH, width: WIDTH, along: x, across: y, at: [0, 0, 0]}
shop:
  kerf: 1/8
"""

MDF_SHELVES = """
boardwright: 1
title: Shelf boards
units: in
stock:
  board: {sheet: mdf, thickness: 3/4}
parts:
  low: {stock: board, length: 40, width: 30, along: x, across: y, at: [0, 0, 0]}
  middle: {stock: board, length: 40, width: 30, along: x, across: y, at: [0, 0, 20]}
  high: {stock: board, length: 40, width: 30, along: x, across: y, at: [0, 0, 40]}
"""

GLASS_SHELVES = """
boardwright: 1
title: Glass shelves
units: in
stock:
  pane: {sheet: glass, thickness: 1/8}
parts:
  low: {stock: pane, length: 30, width: 12, along: x, across: y, at: [0, 0, 0]}
  high: {stock: pane, length: 30, width: 12, along: x, across: y, at: [0, 0, 20]}
shop:
  prices: {pane: {price: 12.50, per: piece}}
"""

BEECH_CASE = """
boardwright: 1
title: Nightstand
units: mm
stock:
  beech: {wood: beech_european, thickness: 20}
  ply: {sheet: birch_plywood, thickness: 6.5}
case:
  width: 450
  height: 600
  depth: 380
  stock: beech
  back: {set: rabbet, stock: ply}
  inside:
    drawers: {count: 2}
drawers:
  front: {stock: beech}
  sides: {stock: beech}
  bottom: {stock: ply}
  runs_on: slides
"""


def panel(length: str, width: str, shop: str = "") -> str:
    """One cherry part of a size, and lines to add under `shop:`."""
    return CHERRY_PANELS.replace("LENGTH", length).replace("WIDTH", width) + shop.strip("\n")


def stocked(text: str) -> Result:
    """The stock stage on a design's text."""
    read = check_text(text)
    assert read.design is not None, [f.text() for f in read.findings]
    assert read.piece is not None, [f.text() for f in read.findings]
    choices = shop_choices(read.design, Resolver(read.design.lengths, read.design.file.units).value)
    return run_stock(read.piece, read.tables, choices)


def stocked_file(path: str) -> Result:
    """The stock stage on a design file that has no `shop:`."""
    read = check_text(Path(path).read_text(encoding="utf-8"))
    assert read.piece is not None
    return run_stock(read.piece, read.tables, ShopChoices())
