"""Offsets of curves: how far in the curve lies at even stations along the part, for laying it out."""

from __future__ import annotations

from itertools import pairwise

from boardwright.core.curves import curve_line
from boardwright.drawings.cut_words import SIDE_WORDS, PlanPrinter
from boardwright.drawings.cut_words.terms import FROM
from boardwright.drawings.fonts import text_width
from boardwright.drawings.layout_dims import SIZE
from boardwright.drawings.part_details import Block, framed
from boardwright.drawings.part_features import Feature
from boardwright.drawings.records import Entity, Line, Text
from boardwright.piece.cuts import Curve

MOST = 10
"""Stations between the ends of a curve."""
APART = {
    "in": (6.35, 12.7, 25.4, 50.8, 76.2, 101.6, 152.4, 304.8),
    "mm": (5.0, 10.0, 20.0, 25.0, 50.0, 100.0, 200.0),
}
"""Distances of stations to choose from [mm]."""
ROW = 4.6
CELL = 2.4
"""Clear space between two columns [mm]."""


def offsets(cut: Curve, printer: PlanPrinter) -> list[tuple[float, float]]:
    """Stations along the part and how far in the curve lies there [mm]: its given points and even steps.

    A depth is rounded to the step of the plan.

    Args:
        cut: the curve.
        printer: knows units and step.
    """
    line = curve_line(cut.shape, cut.points)
    first, last = line[0][0], line[-1][0]
    given = {round(x, 6) for x, _ in cut.points} if cut.shape not in ("arc", "ellipse") else {first, last}
    apart = next((a for a in APART[printer.units] if (last - first) / a <= MOST), APART[printer.units][-1])
    stations = set(given)
    if cut.shape != "line":
        n = int(first // apart) + 1
        while n * apart < last - 1e-6:
            if all(abs(n * apart - g) > apart / 4 for g in given):
                stations.add(round(n * apart, 6))
            n += 1
    return [(x, round(_depth(line, x) / printer.step) * printer.step) for x in sorted(stations)]


def _depth(line: tuple[tuple[float, float], ...], x: float) -> float:
    for (x0, d0), (x1, d1) in pairwise(line):
        if x0 - 1e-9 <= x <= x1 + 1e-9:
            return d0 + (d1 - d0) * (x - x0) / (x1 - x0) if x1 > x0 else d1
    return line[-1][1]


def tables(found: list[Feature], printer: PlanPrinter) -> list[Block]:
    """A table of offsets for each curve, under its number."""
    out = []
    for f in found:
        cut = f.cuts[0]
        if isinstance(cut, Curve):
            out.append(_table(cut, f.number, printer))
    return out


def _table(cut: Curve, number: int, printer: PlanPrinter) -> Block:
    heads = (f"from {FROM[cut.along]}", f"in from the {SIDE_WORDS[cut.side]}")
    cells = [(printer.size(x), printer.size(d)) for x, d in offsets(cut, printer)]
    left = max(text_width(h, SIZE) for h in heads) + CELL
    entities: list[Entity] = [
        Text((0.0, ROW), heads[0], SIZE, "left"),
        Text((0.0, 0.0), heads[1], SIZE, "left"),
    ]
    x = left
    for column in cells:
        wide = max(text_width(c, SIZE) for c in column) + CELL
        for row, said in enumerate(column):
            entities.append(Text((x + wide / 2, ROW * (1 - row)), said, SIZE))
        x += wide
    entities.append(Line(((0.0, ROW - 1.2), (x, ROW - 1.2)), "thin"))
    return framed(entities, [number], "offsets")
