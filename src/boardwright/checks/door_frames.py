"""Frames of doors: the joints of their rails under the door's weight and a published test weight hung on it."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from boardwright.checks.amounts import mass_text, moment_text
from boardwright.checks.changes import EIGHTH
from boardwright.checks.context import Context
from boardwright.checks.held import joints_by_part
from boardwright.checks.joint_capacity import JOINT_SHARE, Capacity, capacity
from boardwright.checks.legs import SHORT, stronger
from boardwright.checks.loads import GRAVITY
from boardwright.checks.margins import CAUTION, Margin, Site
from boardwright.checks.remedies import Trial, listed
from boardwright.core.findings import Finding, Severity
from boardwright.formulas.joint_strength import tenon_moment
from boardwright.piece.records import Joint, Motion, Part
from boardwright.solids.mesh import weigh

UPRIGHT = 0.9
UNEVEN = 1.2
"""Greatest moment of a joint over the mean, one rail up to 1.4 times as wide as the other: finite elements."""
LEAST_TENON = 19.05
"""No shorter tenon is advised [mm]: 3/4 in, common practice."""
DEEPEST = 0.75
"""Share of a stile's width that a tenon may take up: common practice."""
TENON_WIDTH = 0.5
"""Share of a corner rail that is tenon, less the groove: Handwork in Wood, ch. VII."""


def end_moment(shear: float, between: float, rails: int) -> float:
    """Greatest moment at an end of the rails that hold a free stile [N mm].

    Args:
        shear: load on the free stile [N].
        between: middle of one stile to that of the other [mm].
        rails: how many [-].
    """
    return shear * between / (2 * rails) * UNEVEN


def measure(c: Context, _: Site) -> Iterator[Margin]:
    """The weakest joint of rail and stile of each door that has a frame; alike doors once."""
    seen: set[tuple[float, float]] = set()
    by_part = joints_by_part(c)
    for m in c.piece.motions:
        if m.kind != "door" or abs(m.direction[2]) < UPRIGHT:
            continue
        group = [p for p in c.piece.parts if p.group == m.id]
        stiles = sorted((p for p in group if p.name == "stile"), key=lambda p: p.box.low[0])
        rails = [p for p in group if p.name.endswith("rail") and abs(p.pose.y[2]) > UPRIGHT]
        if len(stiles) != 2 or len(rails) < 2 or not all(p.stock.kind == "wood" for p in rails):
            continue
        if any(j.glued for p in group if p.name == "panel" for j in by_part[p.id]):
            continue  # a panel that is glued in braces it
        found: list[Margin] = []
        for rail in rails:
            for joint in by_part[rail.id]:
                stile = next((s for s in stiles if s.id in (joint.first, joint.second)), None)
                what = capacity(c, joint, stile, rail) if stile is not None else None
                if stile is not None and what is not None:
                    found.append(_joint(c, m, (stiles[0], stiles[1]), rails, rail, stile, joint, what))
        worst = max(found, key=lambda k: k.value / k.limit, default=None)
        if worst is not None and (key := (round(worst.value, 3), round(worst.limit, 3))) not in seen:
            seen.add(key)
            yield worst


def _joint(
    c: Context,
    m: Motion,
    stiles: tuple[Part, Part],
    rails: list[Part],
    rail: Part,
    stile: Part,
    joint: Joint,
    what: Capacity,
) -> Margin:
    test, at = c.tables.figure("door_test_weight"), c.tables.figure("door_test_arm")
    mass = weigh(p for p in c.piece.parts if p.group == m.id).mass
    wide = stiles[1].box.high[0] - stiles[0].box.low[0]
    shear = GRAVITY * (mass / 2 + test.value * min(at.value, wide) / wide)
    between = stiles[1].box.middle()[0] - stiles[0].box.middle()[0]
    moment = end_moment(shear, between, len(rails))
    limit = what.moment * what.share * SHORT
    return Margin(
        "strength.door-frame",
        (stile.id, rail.id),
        f"moment in a {joint.kind.replace('_', ' ')} of the door's frame",
        moment / 1000,
        limit / 1000,
        "N m",
        tell=lambda: Finding(
            "strength.door-frame",
            Severity.WARNING if moment > what.moment else Severity.NOTE,
            f"the joint of {c.label(rail.id)} and {c.label(stile.id)} may break when something hangs on the open door",
            joint.place if joint.place.line else m.place,
            found=f"{moment_text(c, moment)} by a door of {mass_text(c, mass)} and {mass_text(c, test.value)} hung on "
            f"it; {what.found(c)}",
            expected=f"at most {moment_text(c, limit)} for minutes; it breaks at about {moment_text(c, what.moment)}",
            source=f"{what.source}; {test.reason}; the panel, which helps, is not counted; {CAUTION}",
            remedy=listed(
                [
                    *stronger(Trial(c, measure, "strength.door-frame"), stile, rail, what),
                    "" if what.tenon is not None else _tenons(c, stile, rail, moment),
                ],
                "make the rails wider",
            ),
            parts=(stile.id, rail.id),
        ),
    )


def _tenons(c: Context, stile: Part, rail: Part, moment: float) -> str:
    """The shortest tenons that take a moment; "" when none does that the stile has room for."""
    row = c.tables.species.get(stile.stock.table_key)
    if row is None or row.shear is None:
        return ""
    step = EIGHTH if c.piece.units == "in" else 2.0
    for n in range(ceil(LEAST_TENON / step - 1e-6), int(stile.size[1] * DEEPEST / step) + 1):
        broken = tenon_moment(rail.size[1], TENON_WIDTH * rail.size[1], n * step, row.shear)
        if broken * JOINT_SHARE * SHORT >= moment:
            size = c.printer.size(n * step)
            return f"use tenons {c.text(n * step)} long (`joint: {{kind: mortise_tenon, length: {size}}}`)"
    return ""
