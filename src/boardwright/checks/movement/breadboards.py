"""Breadboard ends: flush on one day of the year only."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin
from boardwright.checks.movement.fits import SOURCE, Year
from boardwright.checks.movement.lines import strain
from boardwright.core.findings import Finding, Severity
from boardwright.piece.records import Joint

CODE = "wood.breadboard-proud"
SEEN = 0.8
"""A step at each edge that is felt and seen [mm]: 1/32 in, common practice."""


def steps(c: Context) -> list[tuple[Joint, float, float]]:
    """Each breadboard end, and how much wider than it the top gets at the driest and at the wettest time.

    Both edges together, negative when it is narrower [mm].
    """
    m = c.piece.moisture
    return [(j, by * (m.driest - m.now), by * (m.wettest - m.now)) for j, by in grows(c)]


def grows(c: Context) -> list[tuple[Joint, float]]:
    """Each breadboard end, and how much more than it the top grows, both edges together [mm/%]."""
    out = []
    for j in c.piece.joints:
        end, top = c.parts.get(j.first), c.parts.get(j.second)
        if j.kind != "breadboard" or end is None or top is None:
            continue
        out.append((j, (strain(top, top.pose.y) - strain(end, top.pose.y)) * top.size[1]))
    return out


def margins(year: Year) -> Iterator[Margin]:
    """The larger step at one edge, of each end."""
    for j, dry, wet in steps(year.c):
        tell = partial(_finding, year.c, j, dry, wet)
        yield Margin(
            CODE, (j.first, j.second), "step at each edge", max(-dry, wet) / 2, SEEN, "mm", tell=tell
        )


def _finding(c: Context, j: Joint, dry: float, wet: float) -> Finding:
    m = c.piece.moisture
    stands = f"{c.text((wet - min(dry, 0.0)) / 2)} at each edge in the driest time"
    longer = (
        f": an end {c.up(wet)} longer is never passed by the top, and stands out {stands}" if wet > 0 else ""
    )
    return Finding(
        "wood.breadboard-proud",
        Severity.NOTE,
        f"{c.label(j.first)} is flush with {c.label(j.second)} only at {m.now:.3g} % moisture",
        j.place,
        found=f"at {m.driest:.3g} % the end stands out {c.text(max(-dry, 0.0) / 2)} at each edge; at "
        f"{m.wettest:.3g} % the top stands out {c.text(max(wet, 0.0) / 2)}",
        expected=f"at most {c.text(SEEN)} for what is not seen",
        source=f"{SOURCE}; limit: common practice",
        remedy=f"choose which season may show{longer}",
        parts=(j.first, j.second),
    )
