"""Legs: slender ones that buckle, a push at the foot that bends them, and the joints at their heads."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from boardwright.checks.amounts import mass_text, moment_text, stress_text
from boardwright.checks.burdens import burden, own_weight
from boardwright.checks.changes import EIGHTH, with_parts
from boardwright.checks.context import Context
from boardwright.checks.held import joints_by_part, lies, panels
from boardwright.checks.joint_capacity import Capacity, capacity
from boardwright.checks.loads import GRAVITY, pressure
from boardwright.checks.margins import CAUTION, Margin, Site
from boardwright.checks.remedies import Change, Trial, listed
from boardwright.checks.stiffness import BENDING_SHARE
from boardwright.checks.weights import hung
from boardwright.core.findings import Finding, Severity
from boardwright.formulas.joint_strength import buckling_load
from boardwright.piece.cuts import Taper, Tenon
from boardwright.piece.records import Joint, Part
from boardwright.solids.mesh import weigh

UPRIGHT = 0.9
WIDEST = 150.0
"""A post wider than this is a side, not a leg [mm]."""
SLENDER = 4.0
"""A leg is longer than this many times its width."""
FREE = 0.4
"""Share of its length from which a part that is held along it is no leg."""
SHORT = 1.6
"""Strength for minutes over that for years: Wood Handbook, duration of load, and NDS (from memory)."""
EULER_SAFETY = 3.0
"""Load that buckles over the load that is allowed: common practice."""
E_SHARE = 1 - 1.645 * 0.22
"""Fifth percentile of stiffness, of its mean: coefficient of variation 22 %, Wood Handbook FPL-GTR-190 table 5-6."""
UNEVEN = 2.0
"""Load on one leg over the even share: the floor and the load are never even (common practice)."""
MOST = 16
"""No more steps than this are tried."""


@dataclass(frozen=True, slots=True)
class Leg:
    """A leg and what holds it.

    Attributes:
        part: the leg. free: from the floor to the lowest part joined to it [mm].
        held: joints to parts that run along x, and along y.
    """

    part: Part
    free: float
    held: tuple[tuple[tuple[Joint, Part], ...], tuple[tuple[Joint, Part], ...]]


def legs(c: Context) -> list[Leg]:
    """The legs of a piece: slender upright parts on the floor that something level is joined to."""
    floor = c.piece.outside.low[2]
    moving = {m.id for m in c.piece.motions}
    posts = [
        p
        for p in c.piece.parts
        if p.box.low[2] < floor + 1
        and p.group not in moving
        and abs(p.pose.x[2]) > UPRIGHT
        and p.size[1] <= WIDEST
        and p.size[0] > SLENDER * p.size[1]
    ]
    if not posts or hung(c):
        return []
    by_part = joints_by_part(c)
    found = []
    for p in posts:
        held: tuple[list[tuple[Joint, Part]], list[tuple[Joint, Part]]] = ([], [])
        lows: list[float] = []
        if any(_along(j) > FREE * p.size[0] for j in by_part[p.id]):
            continue
        for j in by_part[p.id]:
            other = c.parts.get(j.second if j.first == p.id else j.first)
            if other is None or not j.contacts or other.box.low[2] < floor + 1:
                continue
            for axis in (0, 1):
                if abs(other.pose.x[axis]) > UPRIGHT and abs(other.pose.x[2]) < 0.3:
                    held[axis].append((j, other))
                    lows.append(other.box.low[2])
        if lows:
            found.append(Leg(p, min(lows) - floor, (tuple(held[0]), tuple(held[1]))))
    return found


def _along(j: Joint) -> float:
    """Height over which a joint holds [mm]."""
    return max((k.box.high[2] for k in j.contacts), default=0.0) - min(
        (k.box.low[2] for k in j.contacts), default=0.0
    )


def foot(part: Part) -> tuple[float, float]:
    """Width and thickness of a leg at its foot, less its tapers [mm]."""
    size = [part.size[1], part.size[2]]
    for k in part.cuts:
        if isinstance(k, Taper) and k.side.axis in (1, 2) and k.end.axis == 0:
            size[k.side.axis - 1] -= k.depth
    return max(size[0], 1.0), max(size[1], 1.0)


def on_legs(c: Context) -> float:
    """What all legs carry together: the piece, and what is on its panels [N]."""
    load = weigh(c.piece.parts).mass * GRAVITY
    borne = {p.part.id: b for p in panels(c) if (b := burden(c, p)) is not None}
    top = max(
        (p for p in c.piece.parts if lies(p)),
        key=lambda p: (p.box.high[2], p.size[0] * p.size[1]),
        default=None,
    )
    for part in c.piece.parts:
        area = part.size[0] * part.size[1]
        if part.id in borne:
            load += (borne[part.id].everyday - own_weight(part)) * area
        elif part is top:
            load += pressure(c.tables, c.loads.top, part.size[0], part.size[1], 0.0) * area
    return load


def measure(c: Context, _: Site) -> Iterator[Margin]:
    """Buckling of each kind of leg, bending by a push at its foot, and the joints at its head."""
    all_ = legs(c)
    if not all_:
        return
    seen: set[tuple[str, ...]] = set()
    push = c.tables.figure("leg_push").value * GRAVITY
    each = UNEVEN * on_legs(c) / len(all_)
    for leg in all_:
        kind = ("leg", leg.part.name, *(f"{v:.2f}" for v in leg.part.size), f"{leg.free:.1f}")
        if kind not in seen:
            seen.add(kind)
            yield from _slender(c, leg, each)
            yield from _bent(c, leg, push)
        for axis in (0, 1):
            if len(leg.held[axis]) != 1:
                continue
            joint, rail = leg.held[axis][0]
            key = ("joint", leg.part.name, rail.letter, joint.kind)
            what = capacity(c, joint, leg.part, rail)
            if key not in seen and what is not None:
                seen.add(key)
                yield _joint(c, leg, joint, rail, what, push)


def _slender(c: Context, leg: Leg, load: float) -> Iterator[Margin]:
    row = c.tables.species.get(leg.part.stock.table_key)
    if row is None or row.moe is None:
        return
    b, t = sorted(foot(leg.part))
    limit = buckling_load(row.moe * 1000 * E_SHARE, t * b**3 / 12, leg.free, 2.0) / EULER_SAFETY
    yield Margin(
        "strength.leg-slender",
        (leg.part.id,),
        "load on a leg that may buckle",
        load,
        limit,
        "N",
        tell=lambda: Finding(
            "strength.leg-slender",
            Severity.WARNING,
            f"{c.label(leg.part.id)} is so slender that it may buckle",
            leg.part.place,
            found=f"{mass_text(c, load / GRAVITY)} on one leg, twice its share, {c.text(leg.free)} free and "
            f"{c.text(b)} thin",
            expected=f"at most {mass_text(c, limit / GRAVITY)}: a third of the load that buckles it",
            source=f"Euler, foot free to sway; {row.source.split(';')[0]}; {CAUTION}",
            remedy=listed([_thicker(Trial(c, measure, "strength.leg-slender"))], "add stretchers"),
            parts=(leg.part.id,),
        ),
    )


def _bent(c: Context, leg: Leg, push: float) -> Iterator[Margin]:
    row = c.tables.species.get(leg.part.stock.table_key)
    if row is None or row.mor is None:
        return
    b, t = sorted(leg.part.size[1:])
    mean = row.mor
    stress, allowed = 6 * push * leg.free / (t * b**2), mean * BENDING_SHARE * SHORT
    yield Margin(
        "strength.leg",
        (leg.part.id,),
        "bending of a leg pushed at its foot",
        stress,
        allowed,
        "N/mm2",
        tell=lambda: Finding(
            "strength.leg",
            Severity.WARNING if stress > mean else Severity.NOTE,
            f"{c.label(leg.part.id)} may break when it is pushed or dragged",
            leg.part.place,
            found=f"{stress_text(c, stress)} by {mass_text(c, push / GRAVITY)} across its foot, "
            f"{c.text(leg.free)} under what holds it",
            expected=f"at most {stress_text(c, allowed)} for minutes; the mean strength is {stress_text(c, mean)}",
            source=f"{c.tables.figure('leg_push').reason}; fifth percentile over 2.1, times {SHORT:g} for minutes: "
            f"ASTM D245 (from memory); {CAUTION}",
            remedy=listed([_thicker(Trial(c, measure, "strength.leg"))], "add stretchers"),
            parts=(leg.part.id,),
        ),
    )


def _thicker(trial: Trial) -> str:
    """Thicker legs, all of them."""
    all_ = [leg.part for leg in legs(trial.c)]
    step = EIGHTH if trial.c.piece.units == "in" else 2.0

    def change(count: int) -> Change:
        more = count * step
        parts = [replace(p, size=(p.size[0], p.size[1] + more, p.size[2] + more)) for p in all_]
        thick = trial.c.up(min(parts[0].size[1:]))
        return Change(f"make the legs {thick} thick", lambda c: with_parts(c, *parts))

    return trial.least(change, MOST)


def _joint(c: Context, leg: Leg, joint: Joint, rail: Part, what: Capacity, push: float) -> Margin:
    moment = push * (leg.free + rail.box.size(2) / 2)
    limit = what.moment * what.share * SHORT
    return Margin(
        "strength.joint",
        (leg.part.id, rail.id),
        f"moment in a {joint.kind.replace('_', ' ')}, leg pushed at its foot",
        moment / 1000,
        limit / 1000,
        "N m",
        tell=lambda: Finding(
            "strength.joint",
            Severity.WARNING if moment > what.moment else Severity.NOTE,
            f"the joint of {c.label(leg.part.id)} and {c.label(rail.id)} may break when the leg is pushed or dragged",
            joint.place if joint.place.line else leg.part.place,
            found=f"{moment_text(c, moment)} by {mass_text(c, push / GRAVITY)} across the foot; {what.found(c)}",
            expected=f"at most {moment_text(c, limit)} for minutes; it breaks at about {moment_text(c, what.moment)}",
            source=f"{what.source}; {c.tables.figure('leg_push').reason}; {CAUTION}",
            remedy=listed(
                [*stronger(Trial(c, measure, "strength.joint"), leg.part, rail, what), "add stretchers"], ""
            ),
            parts=(leg.part.id, rail.id),
        ),
    )


def stronger(trial: Trial, leg: Part, rail: Part, what: Capacity) -> list[str]:
    """Longer tenons in a leg or stile, or wider rails; each is tried on all rails alike."""
    c = trial.c
    alike = [p for p in c.piece.parts if p.name == rail.name]
    step = EIGHTH if c.piece.units == "in" else 2.0
    found = [trial.least(lambda n: _wider(c, alike, rail, n * step), int(rail.size[1] / step))]
    if what.tenon is not None:
        room = int((min(leg.size[1:]) - what.tenon.length) / step)
        found.insert(0, trial.least(_longer(c, alike, what.tenon, step), room))
    return found


def _longer(c: Context, rails: list[Part], tenon: Tenon, step: float) -> Callable[[int], Change]:
    def change(count: int) -> Change:
        more = count * step

        def grown(k: Tenon) -> Tenon:
            steps = tuple((a, b, n + more if n >= k.length - 0.5 else n) for a, b, n in k.steps)
            return replace(k, length=k.length + more, steps=steps)

        parts = [
            replace(p, cuts=tuple(grown(k) if isinstance(k, Tenon) else k for k in p.cuts)) for p in rails
        ]
        return Change(f"make the tenons {c.up(tenon.length + more)} long", lambda c: with_parts(c, *parts))

    return change


def _wider(c: Context, rails: list[Part], rail: Part, more: float) -> Change:
    """Rails so much wider, and what stands of their tenons with them."""

    def grown(k: Tenon) -> Tenon:
        last = len(k.steps) - 1
        return replace(
            k, steps=tuple((a, b + more if i == last else b, n) for i, (a, b, n) in enumerate(k.steps))
        )

    parts = [
        replace(
            p,
            size=(p.size[0], p.size[1] + more, p.size[2]),
            cuts=tuple(grown(k) if isinstance(k, Tenon) else k for k in p.cuts),
        )
        for p in rails
    ]
    return Change(
        f"make {c.label(rail.id)} {c.up(rail.size[1] + more)} wide", lambda c: with_parts(c, *parts)
    )
