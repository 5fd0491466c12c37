"""Mitres of frames: they open at the heel when the members shrink, at the toe when they swell."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import partial

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin
from boardwright.checks.movement.fits import Year
from boardwright.core.findings import Finding, Severity
from boardwright.core.poses import dot
from boardwright.formulas.movement import mitre_opening
from boardwright.piece.records import Joint, Part

CODE = "wood.mitre-opens"
LIMIT = 0.8
"""Widest gap at one end of a mitre that is not seen from where a person stands [mm]: 1/32 in, common practice."""


@dataclass(frozen=True, slots=True)
class Opening:
    """A mitre and how far it opens at the dry and at the wet end [mm]; `worst` says at which moisture [%]."""

    joint: Joint
    one: Part
    two: Part
    gap: float
    worst: float


def openings(c: Context, quarter: bool = False) -> list[Opening]:
    """Every flat mitre of two solid members, by the larger of its two gaps."""
    m = c.piece.moisture
    out = []
    for j in c.piece.joints:
        one, two = c.parts.get(j.first), c.parts.get(j.second)
        if j.kind != "mitre" or one is None or two is None or not _flat(one, two):
            continue
        width = min(one.size[1], two.size[1])
        gap, worst = 0.0, m.now
        for end in (m.driest, m.wettest):
            shares = [_share(p, end - m.now, quarter) for p in (one, two)]
            found = abs(mitre_opening(width, shares[0], shares[1]))
            if found > gap:
                gap, worst = found, end
        out.append(Opening(j, one, two, gap, worst))
    return out


def _flat(one: Part, two: Part) -> bool:
    """True where both members lie in one plane, as in a frame."""
    return abs(dot(one.pose.z, two.pose.z)) > 0.99 and abs(dot(one.pose.x, two.pose.x)) < 0.01


def _share(part: Part, change: float, quarter: bool) -> float:
    """Change of width, less that of length, as a share."""
    stock = (
        replace(part.stock, sawn="quarter", rings=None)
        if quarter and part.stock.kind == "wood"
        else part.stock
    )
    along, across, _ = stock.rates
    return (across - along) * change


def margins(year: Year) -> Iterator[Margin]:
    """How near each mitre is to the limit."""
    for o in openings(year.c):
        tell = partial(_finding, year.c, o)
        yield Margin(
            CODE, (o.one.id, o.two.id), f"gap in the mitre at {o.worst:.3g} %", o.gap, LIMIT, "mm", tell=tell
        )


def _finding(c: Context, o: Opening) -> Finding:
    width = min(o.one.size[1], o.two.size[1])
    dry = o.worst < c.piece.moisture.now
    better = next(b.gap for b in openings(c, quarter=True) if b.joint.id == o.joint.id)
    more = "use quartersawn boards, " if better <= LIMIT else ""
    return Finding(
        "wood.mitre-opens",
        Severity.WARNING,
        f"the mitre of {c.label(o.one.id)} and {c.label(o.two.id)} opens at its "
        + ("inner corner in the dry time" if dry else "outer corner in the damp time"),
        o.joint.place,
        found=f"{c.text(o.gap)} at {o.worst:.3g} % moisture; members {c.text(width)} wide, cut true at "
        f"{c.piece.moisture.now:.3g} %",
        expected=f"at most {c.text(LIMIT)}",
        source="each end turns by half its change of width (mechanics); limit: common practice",
        remedy=f"make the members {c.down(width * LIMIT / o.gap)} wide or less, {more}or join them with mortise "
        "and tenon",
        parts=(o.one.id, o.two.id),
    )
