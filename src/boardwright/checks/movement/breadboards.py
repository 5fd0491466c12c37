"""Breadboard ends: flush on one day of the year only."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin
from boardwright.checks.movement.fits import SOURCE
from boardwright.checks.movement.lines import strain
from boardwright.core.findings import Finding, Severity
from boardwright.piece.records import Joint

CODE = "wood.breadboard-proud"
SEEN = 0.8
"""A step at each edge that is felt and seen [mm]: 1/32 in, common practice."""


def steps(c: Context) -> list[tuple[Joint, float, float, float]]:
    """Each breadboard end with the width of the top [mm].

    Then how much wider than the end the top gets at the driest and at the wettest time, both edges together; negative
    when it is narrower [mm].
    """
    m = c.piece.moisture
    out = []
    for j in c.piece.joints:
        end, top = c.parts.get(j.first), c.parts.get(j.second)
        if j.kind != "breadboard" or end is None or top is None:
            continue
        rate = strain(top, top.pose.y) - strain(end, top.pose.y)
        wide = top.size[1]
        out.append((j, wide, rate * wide * (m.driest - m.now), rate * wide * (m.wettest - m.now)))
    return out


def margins(c: Context) -> Iterator[Margin]:
    """The larger step at one edge, of each end."""
    for j, _, dry, wet in steps(c):
        yield Margin(CODE, (j.first, j.second), "step at each edge", max(-dry, wet) / 2, SEEN, "mm")


def check(c: Context) -> Iterator[Finding]:
    """Ends that stand out so far, or the top beyond them, that it is seen."""
    m = c.piece.moisture
    for j, _, dry, wet in steps(c):
        if max(-dry, wet) / 2 <= SEEN:
            continue
        yield Finding(
            CODE,
            Severity.NOTE,
            f"{c.label(j.first)} is flush with {c.label(j.second)} only at {m.now:.3g} % moisture",
            j.place,
            found=f"at {m.driest:.3g} % the end stands out {c.text(max(-dry, 0.0) / 2)} at each edge; at "
            f"{m.wettest:.3g} % the top stands out {c.text(max(wet, 0.0) / 2)}",
            expected=f"at most {c.text(SEEN)} for what is not seen",
            source=SOURCE,
            remedy="choose which season may show"
            + (
                f": an end {c.up(wet)} longer is never passed by the top, and stands out "
                f"{c.text((wet - min(dry, 0.0)) / 2)} at each edge in the driest time"
                if wet > 0
                else ""
            ),
            parts=(j.first, j.second),
        )
