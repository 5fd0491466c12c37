"""Full-extension bars at full pull: how far out, what stays in the grooves, bending, bearing, droop, and their way."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from boardwright.checks.context import Context
from boardwright.core.findings import Finding, Severity
from boardwright.formulas.extension_bars import (
    droop as sinking,
)
from boardwright.formulas.extension_bars import (
    engaged_in_case,
    engaged_in_drawer,
    front_force,
    greatest_moment,
    land_stress,
    land_stress_held,
    overhang_tilt,
    slotted_second_moment,
    tail_force,
    tilt_in_groove,
    wall_pressure,
)
from boardwright.piece.cuts import Groove, VGroove
from boardwright.piece.records import Fastener, Motion, Part
from boardwright.solids.cells import cells
from boardwright.solids.travel import hits
from boardwright.tables.records import Species

GRAVITY = 9.81
BENDING_SHARE = (1 - 1.645 * 0.16) / 2.1
"""Allowed bending stress, of the mean strength: the fifth percentile at a spread of 16 %, over 2.1."""
BENDING_SOURCE = "fifth percentile of the species table over 2.1: ASTM D245 (from memory)"
BEARING_SHARE = 1 / 1.67
BEARING_SOURCE = "compression across the grain of the species table over 1.67: ASTM D245 (from memory)"
DROOP_RATIO = 50.0
"""Travel over the droop that is taken for slack: common practice."""
OVERLAP = 1 / 3
"""Least share of a bar in each groove at full pull: common practice."""


@dataclass(frozen=True, slots=True)
class Pulled:
    """One bar of a drawer at full pull, measured from its parts [mm], [N], [MPa].

    Attributes:
        bar, side: the parts. load: on this bar. mouth: front edge of the case. start: of the bar when shut.
        case_travel, drawer_travel: of the bar out of the case, of the drawer off the bar.
        in_case, in_drawer: length left in each groove. out: length before the case.
        centre: from the bar's front end forward to the load. front_slot, rear_slot: clear lengths.
        case_wide, drawer_wide: breadth of bar on the walls of each groove. play: of the grooves, in height.
        depth: from the front edge of the case to the rear of the drawer when shut.
    """

    bar: Part
    side: Part
    load: float
    mouth: float
    start: float
    case_travel: float
    drawer_travel: float
    in_case: float
    in_drawer: float
    out: float
    centre: float
    front_slot: float
    rear_slot: float
    case_wide: float
    drawer_wide: float
    play: float
    depth: float

    @property
    def travel(self) -> float:
        """Of the drawer out of the case [mm]."""
        return self.case_travel + self.drawer_travel


def _groove(part: Part, bar: Part) -> Groove | None:
    return next((k for k in part.cuts if isinstance(k, Groove) and k.holds == bar.id), None)


def pulled(c: Context, m: Motion) -> list[Pulled]:
    """Both bars of a drawer at full pull; none when the drawer does not run on such bars."""
    if m.runs_on != "full_extension_bars" or m.travel <= 0:
        return []
    found = (_pulled(c, m, name) for name in ("left", "right"))
    return [p for p in found if p is not None]


def _pulled(c: Context, m: Motion, name: str) -> Pulled | None:
    bar, side = c.parts.get(f"{m.id}.bar.{name}"), c.parts.get(f"{m.id}.{name}")
    if bar is None or side is None:
        return None
    screws = {f.into == side.id: f for f in c.piece.fasteners if f.held == bar.id}
    blocks = [c.parts.get(f"{bar.id}.{end}") for end in ("front", "rear")]
    if len(screws) < 2 or blocks[0] is None or blocks[1] is None:
        return None
    wall = c.parts.get(screws[False].into)
    grooves = [_groove(part, bar) for part in (side, wall) if part is not None]
    if wall is None or len(grooves) < 2 or grooves[0] is None:
        return None
    mouth, start, end = m.opening.low[1], bar.box.low[1], bar.box.high[1]
    case_travel, drawer_travel = _travels(screws[False], screws[True], bar, (blocks[0], blocks[1]))
    travel = case_travel + drawer_travel
    mass, middle = _mass(c, m, side)
    slots = sorted(_slots(bar))
    shared = [bar.box.overlap(part.box) for part in (wall, side)]
    return Pulled(
        bar,
        side,
        mass * GRAVITY / 2,
        mouth,
        start,
        case_travel,
        drawer_travel,
        engaged_in_case(end - start, start - mouth, case_travel),
        min(end - start, engaged_in_drawer(side.box.high[1], start, drawer_travel)),
        case_travel - (start - mouth),
        travel - case_travel - (middle - start),
        slots[0][1] - slots[0][0] - blocks[0].size[0],
        slots[-1][1] - slots[-1][0] - blocks[1].size[0],
        shared[0].size(0) if shared[0] else 0.0,
        shared[1].size(0) if shared[1] else 0.0,
        grooves[0].width - bar.box.size(2),
        side.box.high[1] - mouth,
    )


def _travels(
    in_case: Fastener, in_drawer: Fastener, bar: Part, blocks: tuple[Part, Part]
) -> tuple[float, float]:
    """How far the bar comes out of the case, and the drawer off the bar, until a screw meets a block [mm]."""
    r = in_case.diameter / 2
    return (
        blocks[1].box.low[1] - r - in_case.at[1],
        in_drawer.at[1] - r - blocks[0].box.high[1],
    )


def _slots(bar: Part) -> list[tuple[float, float]]:
    """From where to where the slots run [mm], in the piece."""
    way, origin = bar.pose.x[1], bar.pose.origin[1]
    cuts = [k for k in bar.cuts if isinstance(k, Groove) and k.purpose == "slot"]
    return [tuple(sorted((origin + way * k.start, origin + way * k.end))) for k in cuts]  # type: ignore[misc]


def _mass(c: Context, m: Motion, side: Part) -> tuple[float, float]:
    """Mass of a drawer with its load [kg], and where its middle lies when shut [mm]; parts count as their blanks."""
    total, moment = m.load, m.load * (side.box.low[1] + side.box.high[1]) / 2
    for part in c.piece.parts:
        if part.group == m.id:
            mass = part.size[0] * part.size[1] * part.size[2] * part.stock.density / 1e9
            total += mass
            moment += mass * (part.box.low[1] + part.box.high[1]) / 2
    return total, moment / total if total else 0.0


def _recess(bar: Part) -> VGroove | None:
    return next((k for k in bar.cuts if isinstance(k, VGroove)), None)


def _wood(c: Context, part: Part) -> Species | None:
    return c.tables.species.get(part.stock.table_key) if part.stock.kind == "wood" else None


@dataclass(frozen=True, slots=True)
class _Cross:
    """A bar across its slot [mm]: second moment of area [mm4], height, height and least thickness of its lands."""

    inertia: float
    height: float
    land: float
    thick: float


def _cross(bar: Part, height: float | None = None) -> _Cross | None:
    """Its section, as it is or at another height [mm]."""
    slot = next((k for k in bar.cuts if isinstance(k, Groove) and k.purpose == "slot"), None)
    v = _recess(bar)
    if slot is None or v is None:
        return None
    t, h = slot.depth, height or bar.box.size(2)
    inertia = slotted_second_moment(t, h, slot.width, v.width, v.depth)
    thick = t - v.depth * max(0.0, 1 - slot.width / v.width)
    return _Cross(inertia, h, (h - slot.width) / 2, thick)


TALLEST = 60.0
"""No bar higher than this is advised [mm]: 2 3/8 in, common practice."""


def _higher(
    c: Context, p: Pulled, figure: Callable[[Pulled, _Cross, float], float], stiffness: float, most: float
) -> str:
    """Advice to make the bars higher: the least height at which a figure comes to its limit, where one does."""
    step = 2 * c.piece.step
    height = p.bar.box.size(2) + step
    while height <= TALLEST:
        x = _cross(p.bar, height)
        if x is not None and figure(p, x, stiffness) <= most:
            return f"make the bars {c.up(height)} high or more (`height`)"
        height += step
    return "make the bars thicker (`groove`, `case_groove`)"


def _worst(c: Context) -> Iterator[tuple[Motion, Pulled]]:
    """Of each drawer the bar that comes out of the case farther."""
    for m in c.piece.motions:
        both = pulled(c, m)
        if both:
            yield m, max(both, key=lambda p: (p.out, p.load))


def stress(p: Pulled, x: _Cross, stiffness: float) -> float:
    """Greatest stress in a bar at full pull: of the whole bar, and of the lands of the slot that bend most [MPa].

    Args:
        p: the bar.
        x: its section.
        stiffness: modulus of elasticity of its wood [MPa].
    """
    moment = greatest_moment(p.load, p.centre, p.in_drawer, p.out)
    front = front_force(p.load, p.centre, p.in_drawer)
    tail = tail_force(p.load, p.centre + p.out, p.in_case)
    lands = max(
        min(land_stress(abs(shear), slot, x.thick, x.land), land_stress_held(stiffness, p.play, slot, x.land))
        for shear, slot in ((front, p.front_slot), (tail, p.rear_slot))
    )
    return moment * x.height / 2 / x.inertia + lands


def bending(c: Context) -> Iterator[Finding]:
    """The stress in the bars against what their wood is allowed."""
    for m, p in _worst(c):
        wood, x = _wood(c, p.bar), _cross(p.bar)
        if wood is None or wood.mor is None or wood.moe is None or x is None:
            continue
        found, limit = stress(p, x, wood.moe * 1000), wood.mor * BENDING_SHARE
        if found <= limit:
            continue
        yield Finding(
            "drawer.bar-bending",
            Severity.ERROR if found > wood.mor / 2 else Severity.WARNING,
            f"the bars of {m.name} bend too hard at full pull",
            m.place,
            found=f"{found:.0f} N/mm2 under {p.load / GRAVITY:.1f} kg on each bar",
            expected=f"at most {limit:.0f} N/mm2 in {p.bar.stock.name}",
            source=BENDING_SOURCE,
            remedy=_higher(c, p, stress, wood.moe * 1000, limit)
            + ", leave more of them in the grooves (`overlap`), or load the drawer less (`load`)",
            parts=(p.bar.id,),
        )


def bearing(c: Context) -> Iterator[Finding]:
    """The pressure on the walls of the grooves against what the wood bears across the grain."""
    for m, p in _worst(c):
        woods = [w for w in (_wood(c, p.bar), _wood(c, p.side)) if w is not None and w.comp_perp is not None]
        if not woods or min(p.case_wide, p.drawer_wide) <= 0:
            continue
        limit = min(w.comp_perp or 0.0 for w in woods) * BEARING_SHARE
        found = max(
            wall_pressure(p.load, max(p.centre + p.out, 0.0), p.in_case, p.case_wide),
            wall_pressure(p.load, max(p.centre, -p.in_drawer / 2), p.in_drawer, p.drawer_wide),
        )
        if found <= limit:
            continue
        yield Finding(
            "drawer.bar-bearing",
            Severity.WARNING,
            f"the bars of {m.name} press too hard on the walls of their grooves at full pull",
            m.place,
            found=f"{found:.1f} N/mm2 under {p.load / GRAVITY:.1f} kg on each bar",
            expected=f"at most {limit:.1f} N/mm2",
            source=BEARING_SOURCE,
            remedy="make the grooves deeper (`groove`, `case_groove`), the travel less (`overlap`), "
            "or the load less (`load`)",
            parts=(p.bar.id,),
        )


def droop_of(p: Pulled, x: _Cross | None, stiffness: float) -> float:
    """How far the front of a drawer hangs down at full pull: by play, and by what the bar gives [mm].

    Args:
        p: the bar.
        x: its section, or None for play alone.
        stiffness: modulus of elasticity of its wood [MPa]; 0 for play alone.
    """
    curvature = further = 0.0
    if x is not None and stiffness > 0:
        curvature = greatest_moment(p.load, p.centre, p.in_drawer, p.out) / (stiffness * x.inertia)
        front = front_force(p.load, p.centre, p.in_drawer)
        further = overhang_tilt(max(front, 0.0), max(p.out, 0.0), stiffness, x.inertia)
    tilt = tilt_in_groove(p.play, p.in_case, max(curvature, 0.0)) + further
    return sinking(tilt, p.travel, p.play / p.in_drawer, p.drawer_travel + p.start - p.mouth)


def droop(c: Context) -> Iterator[Finding]:
    """How far the front hangs down at full pull."""
    for m, p in _worst(c):
        wood = _wood(c, p.bar)
        stiffness = (wood.moe or 0.0) * 1000 if wood is not None else 0.0
        found, limit = droop_of(p, _cross(p.bar), stiffness), p.travel / DROOP_RATIO
        if found <= limit:
            continue
        yield Finding(
            "drawer.bar-droop",
            Severity.WARNING,
            f"{m.name} droops at full pull",
            m.place,
            found=f"{c.text(found)} at its front, {c.text(p.play)} of play in its grooves",
            expected=f"at most {c.text(limit)}: 1 in {DROOP_RATIO:.0f} of its travel",
            source="geometry of the play and bending of the bar; limit: common practice",
            remedy=_higher(c, p, droop_of, stiffness, limit)
            + ", leave more of them in the grooves (`overlap`), or load it less (`load`)",
            parts=(p.bar.id,),
        )


def engagement(c: Context) -> Iterator[Finding]:
    """How much of the bars stays in each groove at full pull."""
    for m, p in _worst(c):
        length = p.bar.box.size(1)
        least, where = min((p.in_case, "case"), (p.in_drawer, "drawer"))
        if least >= length * OVERLAP - 2 * c.piece.step:
            continue
        yield Finding(
            "drawer.bar-engagement",
            Severity.NOTE,
            f"less than a third of the bars of {m.name} stays in the {where}",
            m.place,
            found=f"{c.text(least)} of bars {c.text(length)} long",
            expected=f"{c.text(length * OVERLAP)}",
            source="common practice",
            remedy="none needed when it is meant; else leave out `overlap`",
            parts=(p.bar.id,),
        )


def fully_out(c: Context) -> Iterator[Finding]:
    """Whether drawers on full-extension bars clear the front of the case; those that fall short alike are one."""
    alike: dict[tuple[float, ...], tuple[float, float, list[Motion]]] = {}
    for m in c.piece.motions:
        both = pulled(c, m)
        short = max((p.depth - m.travel for p in both), default=0.0)
        if short > 1e-6:
            key = (m.travel, short, both[0].depth, m.rear_clearance)
            alike.setdefault(tuple(round(v, 3) for v in key), (short, both[0].depth, []))[2].append(m)
    for short, depth, motions in alike.values():
        names = [m.name for m in motions]
        verb, whole = ("does", "its") if len(names) == 1 else ("do", "their")
        behind = c.up(motions[0].rear_clearance + short)
        listed = names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
        yield Finding(
            "drawer.not-fully-out",
            Severity.NOTE,
            f"{listed} {verb} not come out over {whole} whole depth",
            motions[0].place,
            found=f"a travel of {c.text(motions[0].travel)}; {c.text(short)} of the drawer stays in the case",
            expected=f"{c.text(depth)}, to the rear of the drawer",
            source="slots of the bars less the screws: kinematics",
            remedy=f"none needed; to clear the front fully leave {behind} or more behind the box "
            "(`rear_clearance`), and the bars run on behind it",
        )


def way(c: Context) -> Iterator[Finding]:
    """What the bars meet on their own way: out of the case past its open doors, and along the drawer."""
    doors = tuple(m for m in c.piece.motions if m.turn)
    for m in c.piece.motions:
        both = pulled(c, m)
        if not both:
            continue
        own = f"{m.id}.bars"
        rooms = {p.id: cells(p) for p in c.piece.parts}
        for mates, direction, far in (
            ([p for p in c.piece.parts if p.group != m.id], m.direction, max(p.case_travel for p in both)),
            (
                [p for p in c.piece.parts if p.group in (m.id, own)],
                (-m.direction[0], -m.direction[1], -m.direction[2]),
                max(p.drawer_travel for p in both),
            ),
        ):
            motion = replace(m, id=own, direction=direction, travel=far)
            alone = replace(c.piece, parts=tuple(mates), hardware=(), motions=(motion, *doors))
            for h in (h for h in hits(alone, rooms) if h.motion == own):
                yield Finding(
                    "drawer.hits",
                    Severity.ERROR,
                    f"a bar of {m.name} hits {c.label(h.obstacle)} when the drawer is pulled",
                    m.place,
                    found=f"{c.label(h.part)} meets it {c.text(h.opening)} on its way",
                    expected=f"a free way of {c.text(far)}",
                    source="dry fit of the solids",
                    remedy="move what stands in its way, or run the drawer on something else",
                    parts=(h.part, h.obstacle),
                )


CHECKS = (way, fully_out, engagement, bending, bearing, droop)
"""Every check of this file, in order."""
