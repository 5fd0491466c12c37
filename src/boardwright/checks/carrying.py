"""Who can lift the piece, and what is lifted while it is built: weights beside the published lifting equation."""

from __future__ import annotations

from collections.abc import Iterator

from boardwright.checks.amounts import mass_text
from boardwright.checks.burdens import own_weight
from boardwright.checks.context import Context
from boardwright.checks.loads import GRAVITY
from boardwright.checks.margins import Margin, Site
from boardwright.core.findings import Finding, Place, Severity
from boardwright.core.poses import Box
from boardwright.formulas.lifting import recommended_weight
from boardwright.solids.assembly import assembly_of
from boardwright.solids.mesh import weigh

KNUCKLE = 762.0
"""It is taken hold of at half its height, or so high [mm] where it is higher: 30 in."""
LIFT = 254.0
"""It is lifted so far [mm]: 10 in."""
FAIR = 0.95
"""Multiplier of a fair grip (from memory)."""
ARM = 254.0
"""Hands so far from the ankles [mm], and half of the depth farther where one person lifts: 10 in (from memory)."""
EQUATION = "NIOSH 94-110 (rev. 2021), held at half its height, at most 30 in, lifted 10 in, fair grip"


def most(c: Context, persons: int, box: Box | None = None) -> float:
    """What one or two persons should lift of something of a size [kg].

    Args:
        c: the piece.
        persons: who lift.
        box: around what is lifted, as it stands in the piece; the whole piece without it.
    """
    o = box or c.piece.outside
    hands = min(KNUCKLE, o.size(2) / 2)
    if persons == 1:
        return recommended_weight(ARM + min(o.size(0), o.size(1)) / 2, hands, LIFT, coupling=FAIR)
    each = recommended_weight(ARM, hands, LIFT, coupling=FAIR)
    return 2 * each * c.tables.figure("lift_two_persons_share").value


def measure(c: Context, site: Site) -> Iterator[Margin]:
    """Weight of the piece without what comes out of it by hand."""
    out = {m.id for m in c.piece.motions if not m.turn}
    rest = weigh(p for p in c.piece.parts if p.group not in out).mass
    limit = most(c, c.loads.persons)
    yield Margin(
        "weight.lift",
        (),
        f"weight for {'one person' if c.loads.persons == 1 else 'two persons'}",
        rest,
        limit,
        "kg",
        tell=lambda: _finding(c, site, rest, limit, bool(out)),
    )


def _finding(c: Context, site: Site, rest: float, limit: float, drawers: bool) -> Finding:
    who = "one person" if c.loads.persons == 1 else "two persons"
    whole = weigh(c.piece.parts).mass
    sub = _heaviest(c)
    pieces = [
        f"{mass_text(c, rest)}"
        + (f" without its drawers or trays, {mass_text(c, whole)} with them" if drawers else "")
    ]
    if sub > 0:
        pieces.append(f"the heaviest subassembly {mass_text(c, sub)}")
    load = filling(site)
    if load > 0:
        pieces.append(f"filled about {mass_text(c, whole + load)}")
    two = most(c, 2)
    advice = (
        ["let two persons lift it"]
        if c.loads.persons == 1 and rest <= two
        else ["move it on a hand truck or with lifting straps"]
    )
    if drawers:
        advice.append("take its drawers or trays out first")
    return Finding(
        "weight.lift",
        Severity.WARNING if "lifts" in c.loads.given else Severity.NOTE,
        f"the piece weighs {mass_text(c, rest)}, more than the lifting equation gives {who}",
        _place(c),
        found=", ".join(pieces),
        expected=f"at most {mass_text(c, limit)} for {who}",
        source=EQUATION
        + (
            ""
            if c.loads.persons == 1
            else f"; together two thirds of the sum: {c.tables.figure('lift_two_persons_share').reason}"
        ),
        remedy=", and ".join(advice),
    )


def filling(site: Site) -> float:
    """What all that holds something holds [kg]."""
    return sum(
        (b.everyday - own_weight(p.part)) * p.part.size[0] * p.part.size[1] / GRAVITY for p, b in site.loaded
    )


def _heaviest(c: Context) -> float:
    """Mass of the heaviest subassembly [kg]; 0 where there is none."""
    subs = assembly_of(c.piece).subs
    return max((weigh(c.parts[id] for id in s.copies[0]).mass for s in subs), default=0.0)


def _place(c: Context) -> Place:
    return c.piece.parts[0].place
