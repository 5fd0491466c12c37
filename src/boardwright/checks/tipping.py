"""Whether the piece stands with everything open: empty, filled, and as the clothing-storage rule loads it."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.amounts import mass_text, moment_text
from boardwright.checks.changes import ballast, feet_forward
from boardwright.checks.context import Context
from boardwright.checks.loads import GRAVITY, source
from boardwright.checks.margins import CAUTION, Margin, Site
from boardwright.checks.remedies import Trial, listed
from boardwright.checks.weights import Mass, Weighed, opened
from boardwright.core.findings import Finding, Severity
from boardwright.formulas.tipping import lean, righting

RULE = "16 CFR 1261 (ASTM F2057-23)"
NEWTON_METRES = 1000.0
HEAVIEST = 50
"""No more than so many pounds or kilograms are advised at its back."""
ANCHOR = "anchor it to the wall at two studs"
LOW = 450.0
"""A piece lower than this falls under no stability test [mm]: BIFMA X5.9-2019, test house bulletin."""


def moment(w: Weighed, full: bool, open_: frozenset[str], angle: float = 0.0, floor: float = 0.0) -> float:
    """Righting moment about the front feet [N mm].

    Args:
        w: the piece on the scales.
        full: True with what drawers hold.
        open_: ids of what is open.
        angle: by which the piece leans forward [rad].
        floor: height of the floor [mm].
    """
    total = _right(w, w.still, angle, floor)
    for m in w.moving:
        for mass in (m.own, m.filling) if full else (m.own,):
            at = opened(m.motion, mass.at) if m.motion.id in open_ else mass.at
            total += _right(w, Mass(mass.mass, at), angle, floor)
    return total


def _right(w: Weighed, mass: Mass, angle: float, floor: float) -> float:
    return righting(mass.mass * GRAVITY, mass.at[1] - w.foot, mass.at[2] - floor, angle)


def measure(c: Context, site: Site) -> Iterator[Margin]:
    """Righting moment with everything open, empty and filled; and the clothing-storage rule."""
    w = site.weighed
    if w is None or not any(m.motion.turn or m.motion.travel for m in w.moving):
        return
    floor = c.piece.outside.low[2]
    everything = frozenset(m.motion.id for m in w.moving)
    for full in (False, True):
        value = moment(w, full, everything, floor=floor)
        yield Margin(
            "stability.tips",
            (),
            "righting moment, all open, " + ("filled" if full else "empty"),
            value / NEWTON_METRES,
            0.0,
            "N m",
            least=True,
            tell=lambda full=full, value=value: _tips(c, w, full, value),  # type: ignore[misc]
        )
        if value < 0:
            return


def _tips(c: Context, w: Weighed, full: bool, value: float) -> Finding:
    filled = f", each drawer filled ({source(c.tables, c.loads.drawers)})" if full else ", empty"
    floor = c.piece.outside.low[2]
    one = how_many(w, full, floor) == 0
    high = c.piece.outside.size(2)
    tall = high >= (LOW if one else c.tables.figure("clothing_rule_height").value)
    return Finding(
        "stability.tips",
        Severity.WARNING if tall else Severity.NOTE,
        "the piece tips forward when "
        + ("one drawer or door is open" if one else "everything is open")
        + (" and filled" if full else ""),
        c.piece.motions[0].place,
        found=f"{moment_text(c, -value)} that tip it about its front feet{filled}",
        expected="more that holds it back than tips it",
        source=f"moments of the weights about the front feet: mechanics; {CAUTION}",
        remedy=_remedies(c, w, floor),
        parts=tuple(p.id for p in c.piece.parts if p.group == w.moving[0].motion.id)[:1],
    )


def _remedies(c: Context, w: Weighed, floor: float) -> str:
    """What keeps it standing; each is tried."""
    trial = Trial(c, measure, "stability.tips")
    count = min(how_many(w, full, floor) for full in (False, True))
    found = [
        ANCHOR,
        _forward(trial, w),
        f"let no more than {count} of {len(w.moving)} open at a time" if 0 < count < len(w.moving) else "",
        trial.least(ballast(c, w.rear), HEAVIEST),
    ]
    return listed(found, "")


def _forward(trial: Trial, w: Weighed) -> str:
    """How far the front feet must come forward: no more than the piece is deep."""
    return trial.least(feet_forward(trial.c, w.foot), int((w.rear - w.foot) / trial.c.piece.step))


def how_many(w: Weighed, full: bool, floor: float, extra: float = 0.0, angle: float = 0.0) -> int:
    """How many things can stand open at a time, those that tip most first, before the moment is gone [N mm].

    Args:
        w: the piece on the scales.
        full: with what drawers hold.
        floor: its height [mm].
        extra: moment that must be left over [N mm].
        angle: by which the piece leans forward [rad].
    """
    shut = moment(w, full, frozenset(), angle, floor)
    cost = sorted(
        ((shut - moment(w, full, frozenset({m.motion.id}), angle, floor), m.motion.id) for m in w.moving),
        reverse=True,
    )
    count = 0
    for i in range(1, len(cost) + 1):
        if moment(w, full, frozenset(id for _, id in cost[:i]), angle, floor) < extra:
            break
        count = i
    return count


def anchored(c: Context, site: Site) -> Iterator[Finding]:
    """A tall piece that stands free: anchor it."""
    w = site.weighed
    tall = c.tables.figure("anchor_height")
    height = c.piece.outside.size(2)
    if w is None or not c.piece.spaces or height <= tall.value or _tipping(c, site):
        return
    yield Finding(
        "stability.anchor",
        Severity.NOTE,
        f"the piece stands {c.text(height)} high: anchor it to the wall",
        c.piece.spaces[0].place,
        found=f"{c.text(height)} high on feet {c.text(w.rear - w.foot)} from front to rear, {mass_text(c, w.mass)}",
        expected=f"two anchors into the wall's frame on a piece over {c.text(tall.value)}",
        source=f"{tall.reason}; local codes govern",
        remedy=f"put two anchors into studs, each for {'50 to 60 lb' if c.piece.units == 'in' else '23 to 27 kg'} "
        "(common practice)",
    )


def _tipping(c: Context, site: Site) -> bool:
    """True where another finding says that it tips, and to anchor it."""
    return any(not m.kept for figured in (measure, rule_margins) for m in figured(c, site))


def rule_margins(c: Context, site: Site) -> Iterator[Margin]:
    """The tests of the US rule for clothing storage that can be figured, when the piece is in its scope."""
    w = site.weighed
    drawers = [m for m in w.moving if m.motion.kind == "drawer" and m.motion.travel > 0] if w else []
    t = c.tables
    if w is None or not drawers or c.loads.drawers != "clothes":
        return
    volume = sum(m.volume for m in drawers)
    if (
        c.piece.outside.size(2) < t.figure("clothing_rule_height").value
        or w.mass < t.figure("clothing_rule_mass").value
        or volume < LEAST_VOLUME
    ):
        return
    floor = c.piece.outside.low[2]
    angle = lean(t.figure("clothing_rule_block").value, max(1.0, w.rear - w.foot))
    everything = frozenset(m.motion.id for m in w.moving)
    weight = t.figure("clothing_rule_weight").value * GRAVITY

    def pressed(m_front: float, z: float) -> float:
        return righting(weight, m_front - w.foot, z - floor, angle)

    worst = min(
        (pressed(m.front + m.motion.direction[1] * m.motion.travel, m.motion.opening.high[2]), m.motion.id)
        for m in drawers
    )
    held = moment(w, True, everything, angle, floor)
    hand = min(max(m.motion.opening.high[2] for m in drawers) - floor, t.figure("clothing_rule_hand").value)
    pull = t.figure("clothing_rule_pull").value * GRAVITY * hand
    values = (
        ("filled, all open, 60 lb on one drawer, on carpet", held + worst[0], -worst[0]),
        ("filled, all open, pulled forward with 10 lb at the highest hand hold", held - pull, pull),
    )

    def count() -> int:
        return min(how_many(w, True, floor, extra, angle) for _, _, extra in values)

    for what, value, _ in values:
        yield Margin(
            "stability.clothing-rule",
            (),
            f"righting moment, {what}",
            value / NEWTON_METRES,
            0.0,
            "N m",
            least=True,
            tell=lambda what=what, value=value: _rule(c, w, what, value, count()),  # type: ignore[misc]
        )
        if value < 0:
            return


LEAST_VOLUME = 3.2 * 304.8**3
"""Enclosed volume from which the rule applies [mm3]: 3.2 cubic feet, ASTM F2057-23 cl. 1.1."""


def _rule(c: Context, w: Weighed, what: str, value: float, count: int) -> Finding:
    asked = "drawers" in c.loads.given
    trial = Trial(c, rule_margins, "stability.clothing-rule")
    found = [
        ANCHOR,
        _forward(trial, w),
        f"let no more than {count} of {len(w.moving)} open at a time (an interlock)" if count else "",
    ]
    return Finding(
        "stability.clothing-rule",
        Severity.WARNING if asked else Severity.NOTE,
        "as clothing storage for bedrooms the piece falls under the US tip-over rule, and by figures it tips "
        "in one of its tests",
        c.piece.motions[0].place,
        found=f"{moment_text(c, -value)} that tip it: {what}",
        expected="more that holds it back than tips it",
        source=f"scope and loads: {RULE}, parts of the tests from memory; {CAUTION}, no certification",
        remedy=listed(found, "") + "; have it tested before it is sold",
    )
