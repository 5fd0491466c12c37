"""What hangs: a case on its wall cleat, a door on its hinges; the screws of both."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from boardwright.checks.amounts import mass_text
from boardwright.checks.burdens import burden, own_weight
from boardwright.checks.changes import load_of
from boardwright.checks.context import Context
from boardwright.checks.held import panels
from boardwright.checks.loads import GRAVITY, POUND
from boardwright.checks.margins import CAUTION, Margin, Site
from boardwright.checks.remedies import Trial, listed
from boardwright.checks.screws_hold import SAFETY
from boardwright.core.findings import Finding, Severity
from boardwright.formulas.screws import screw_lateral_softwood, screw_withdrawal_allowable
from boardwright.piece.records import Hardware, Motion, Part
from boardwright.solids.mesh import weigh

WALL_GAUGE = 10
STUD_GRAVITY = 0.42
"""Specific gravity of the wall's studs: spruce, pine, fir (National Design Specification, from memory)."""
IN_STUD = 38.1
"""Thread in a stud [mm]: 1 1/2 in, common practice."""
TWO = 2
"""Screws in each stud."""
THREAD = 2 / 3
"""Share of a screw that is thread: National Design Specification."""
SHORT = 1.6
"""Strength for minutes over that for years: NDS (from memory)."""
SCREW_SAFETY = 15700 / 2850
"""Mean load that pulls a screw out over the load that is allowed: Wood Handbook and National Design Specification."""
MOST_LOAD = 300
"""No heavier load is tried on a shelf [lb]."""


@dataclass(frozen=True, slots=True)
class Hung:
    """A case on the wall.

    Attributes:
        cleat: on the wall. load: of the case and all that is in it [N]. ahead: of the wall, its middle [mm].
        arm: from the lower edge of the case, which leans on the wall, to the cleat [mm].
    """

    cleat: Part
    load: float
    ahead: float
    arm: float


def hung_case(c: Context) -> Hung | None:
    """The case that hangs on a wall; None when none does."""
    cleat = next((p for p in c.piece.parts if p.name == "wall cleat"), None)
    if cleat is None:
        return None
    wall = cleat.box.high[1]
    whole = weigh(p for p in c.piece.parts if p.id != cleat.id)
    load, moment = whole.mass * GRAVITY, whole.mass * GRAVITY * (wall - whole.centre[1])
    for panel in panels(c):
        b = burden(c, panel)
        if b is not None:
            part = panel.part
            more = (b.everyday - own_weight(part)) * part.size[0] * part.size[1]
            load += more
            moment += more * (wall - part.box.middle()[1])
    low = min(p.box.low[2] for p in c.piece.parts if p.id != cleat.id)
    return Hung(cleat, load, moment / load, cleat.box.middle()[2] - low)


def measure(c: Context, _: Site) -> Iterator[Margin]:
    """Screws of a wall cleat, and of hinges."""
    hung = hung_case(c)
    if hung is not None:
        yield _cleat(c, hung)
    yield from _hinges(c)


def _cleat(c: Context, hung: Hung) -> Margin:
    """How many screws into studs the case asks for, and how many studs are sure to be behind its cleat."""
    screw = c.tables.screw(WALL_GAUGE)
    shank = screw.shank if screw is not None else 4.83
    across = screw_lateral_softwood(STUD_GRAVITY, shank) / SAFETY
    out = screw_withdrawal_allowable(STUD_GRAVITY, shank, IN_STUD)
    pull = hung.load * hung.ahead / hung.arm
    need = hung.load / across + pull / out
    studs = c.tables.figure("stud_spacing")
    there = TWO * max(1, int(hung.cleat.size[0] / studs.value))
    return Margin(
        "strength.cleat",
        (hung.cleat.id,),
        f"No. {WALL_GAUGE} screws that the wall cleat asks for, {TWO} in each stud",
        need,
        there,
        "screws",
        tell=lambda: Finding(
            "strength.cleat",
            Severity.WARNING,
            "the wall cleat carries more than its screws into the studs are allowed",
            hung.cleat.place,
            found=f"{mass_text(c, hung.load / GRAVITY)} with all that is in it, its middle {c.text(hung.ahead)} from "
            f"the wall: {need:.1f} No. {WALL_GAUGE} screws, {c.text(IN_STUD)} in softwood studs",
            expected=f"at most {there}: {TWO} in each stud that is sure to be behind it, studs "
            f"{c.text(studs.value)} apart",
            source="across and out added: Wood Handbook FPL-GTR-282 eq. 8-13 over 1.6, National Design Specification "
            f"2850 G^2 D; studs: {studs.reason}; {CAUTION}; the wall itself is not looked at",
            remedy=_lighter(c),
            parts=(hung.cleat.id,),
        ),
    )


def _lighter(c: Context) -> str:
    trial = Trial(c, measure, "strength.cleat")
    unit = POUND if c.piece.units == "in" else 1.0
    most = int(MOST_LOAD * POUND / unit)
    found = [trial.greatest(load_of(c, "shelves", "each shelf"), most)]
    return listed(
        [*found, "let a second cleat or a rail take screws at the lower edge, or use lag screws"],
        "carry less",
    )


def _hinges(c: Context) -> Iterator[Margin]:
    for m in c.piece.motions:
        own = [h for h in c.piece.hardware if h.id.startswith(f"{m.id}.hinge.") and h.screws]
        if m.kind == "door" and own and abs(m.direction[2]) > 0.9:
            yield from _hung_on(c, m, own)


def _hung_on(c: Context, m: Motion, own: list[Hardware]) -> Iterator[Margin]:
    """The upper hinge of a door: its weight and the published test weight at their arms, over the hinges' distance."""
    group = [p for p in c.piece.parts if p.group == m.id]
    door = weigh(group)
    arm = ((door.centre[0] - m.pivot[0]) ** 2 + (door.centre[1] - m.pivot[1]) ** 2) ** 0.5
    screw = next((s for s in c.tables.screws.values() if s.key == own[0].screw_key), None)
    if not group or screw is None:
        return
    heights = [h.box.middle()[2] for h in own]
    apart = max(heights) - min(heights) if len(own) > 1 else own[0].box.size(2) / 2
    test, at = c.tables.figure("door_test_weight"), c.tables.figure("door_test_arm")
    pull = GRAVITY * (door.mass * arm + test.value * min(at.value, 2 * arm)) / apart
    high = max(p.box.size(2) for p in group)
    tall = [p for p in group if p.box.size(2) > high / 2]
    stile = min(tall, key=lambda p: (abs(p.box.middle()[0] - m.pivot[0]), p.id))
    if stile.stock.kind != "wood":
        return
    thread = THREAD * own[0].screw_length
    each = screw_withdrawal_allowable(stile.stock.specific_gravity, screw.shank, thread) * SHORT
    limit = each * own[0].screws
    yield Margin(
        "strength.hinges",
        (stile.id,),
        "pull on the upper hinge's screws",
        pull,
        limit,
        "N",
        tell=lambda: Finding(
            "strength.hinges",
            Severity.WARNING if pull > limit * SCREW_SAFETY / SHORT else Severity.NOTE,
            f"the screws of the upper hinge of {m.name} may be pulled out",
            m.place,
            found=f"{mass_text(c, pull / GRAVITY)} by a door of {mass_text(c, door.mass)} and "
            f"{mass_text(c, test.value)} hung on it, hinges {c.text(apart)} apart; {own[0].screws} screws "
            f"{c.text(own[0].screw_length)} long",
            expected=f"at most {mass_text(c, limit / GRAVITY)} for minutes",
            source=f"National Design Specification 2850 G^2 D, two thirds of a screw are thread; {test.reason}; "
            f"{CAUTION}",
            remedy=_better(c, stile, pull, own[0].screws, screw.shank),
            parts=(stile.id,),
        ),
    )


def _better(c: Context, stile: Part, pull: float, count: int, shank: float) -> str:
    """Screws that hold it, of those that hinges come with."""
    for gauge in (5, 6, 7, 8, 9, 10):
        screw = c.tables.screw(gauge)
        if screw is None or screw.shank < shank:
            continue
        for length in (x for x in screw.lengths if 15 < x < 32):
            held = screw_withdrawal_allowable(stile.stock.specific_gravity, screw.shank, THREAD * length)
            if held * SHORT * count >= pull:
                return (
                    f"use No. {gauge} screws {c.text(length)} long (`screw: {gauge}`, `screw_length`), "
                    "or hinges farther apart, or a third hinge"
                )
    return "use longer hinges with more screws, farther apart, or a third hinge"
