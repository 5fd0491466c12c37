"""Solid backs, bottoms and panels held at both edges, in a frame that does not move with them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin
from boardwright.checks.movement.fits import SOURCE, Year
from boardwright.checks.movement.lines import LIMIT, severity, strain
from boardwright.core.findings import Finding
from boardwright.core.poses import dot
from boardwright.piece.records import Joint, Part

CODE = "wood.held-all-round"
APART = 0.6
"""Two holds lie at opposite edges when they are so much of the width apart."""


@dataclass(frozen=True, slots=True)
class Held:
    """A part held at two places across its grain.

    Attributes:
        part: the part. between: the two that hold it.
        span: from hold to hold [mm].
        rate: of the part less that of what joins the two holders [1/%].
        joint: one of the two joints.
    """

    part: Part
    between: tuple[str, str]
    span: float
    rate: float
    joint: Joint


def held(c: Context) -> list[Held]:
    """Every part of solid wood that is held fast at both edges by a frame."""
    near: dict[str, set[str]] = {}
    mine: dict[str, list[tuple[str, Joint]]] = {}
    for j in c.piece.joints:
        if j.first not in c.parts or j.second not in c.parts:
            continue
        if _fast(c, j):
            near.setdefault(j.first, set()).add(j.second)
            near.setdefault(j.second, set()).add(j.first)
            mine.setdefault(j.first, []).append((j.second, j))
            mine.setdefault(j.second, []).append((j.first, j))
    out = []
    for part in c.piece.parts:
        if part.stock.kind == "wood" and len(mine.get(part.id, ())) > 1:
            found = _widest(c, part, mine[part.id], near)
            if found is not None:
                out.append(found)
    return out


def _fast(c: Context, joint: Joint) -> bool:
    if joint.glued:
        return any(k.glued for k in joint.contacts)
    screws = [f for f in c.piece.fasteners if f.id in joint.fasteners and f.kind == "screw"]
    return bool(screws) and not any(f.slotted for f in screws)


def _widest(
    c: Context, part: Part, joints: list[tuple[str, Joint]], near: dict[str, set[str]]
) -> Held | None:
    """The two holds that are farthest apart across the grain and joined by something else."""
    spots = []
    for other, j in joints:
        contacts = [k for k in j.contacts if k.glued or not j.glued]
        if contacts and all(_narrow(part, k.box.low, k.box.high) for k in contacts):
            at = sum(dot(k.box.middle(), part.pose.y) for k in contacts) / len(contacts)
            spots.append((at, other, j))
    best: Held | None = None
    for a, one, j in spots:
        for b, two, _ in spots:
            if one == two or b - a < APART * part.size[1]:
                continue
            for tie in sorted((near.get(one, set()) & near.get(two, set())) - {part.id}):
                rate = strain(part, part.pose.y) - strain(c.parts[tie], part.pose.y)
                if best is None or abs(rate) * (b - a) > abs(best.rate) * best.span:
                    best = Held(part, (one, two), b - a, rate, j)
    return best


def _narrow(part: Part, low: tuple[float, ...], high: tuple[float, ...]) -> bool:
    """True for a hold along an edge: narrow across the grain."""
    across = sum(abs(part.pose.y[i]) * (high[i] - low[i]) for i in range(3))
    return across < part.size[1] / 4


def margins(year: Year) -> Iterator[Margin]:
    """How near each is to the limit."""
    for h in held(year.c):
        by = abs(h.rate) * year.swing * h.span
        tell = partial(_finding, year.c, h, by)
        parts = (h.part.id, *h.between)
        yield Margin(CODE, parts, "movement between two held edges", by, LIMIT, "mm", tell=tell)


def _finding(c: Context, h: Held, by: float) -> Finding:
    m = c.piece.moisture
    one, two = h.between
    return Finding(
        "wood.held-all-round",
        severity(by / LIMIT),
        f"{c.label(h.part.id)} is held at both edges, by {c.label(one)} and {c.label(two)}, and cannot move",
        h.joint.place,
        found=f"{c.text(h.span)} from hold to hold; it moves {c.text(by)} between {m.driest:.3g} % and "
        f"{m.wettest:.3g} % moisture",
        expected=f"at most {c.text(LIMIT)}",
        source=f"{SOURCE}; limit: common practice",
        remedy=f"hold it at one edge or at its middle only and let it float in grooves with {c.up(by)} of room, "
        f"use boards of {c.down(h.span * LIMIT / by)} or less with gaps between them, or a sheet",
        parts=(h.part.id, one, two),
    )
