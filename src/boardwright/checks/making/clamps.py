"""Glue-ups larger than the clamps, and with fewer clamps than press the joint."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from boardwright.checks.context import Context
from boardwright.checks.making.kinds import grade, kinds, named
from boardwright.checks.making.panels import rough_width, strip_width, strips
from boardwright.checks.margins import Margin
from boardwright.core.findings import Finding
from boardwright.core.poses import dot
from boardwright.formulas.gluing import (
    clamp_force,
    clamps_for_force,
    clamps_for_length,
    largest_clamp_spacing,
)
from boardwright.piece.records import Part
from boardwright.solids.assembly import AssemblyStep, assembly_of

POUND = 4.4482216152605


def measure(c: Context) -> Iterator[Margin]:
    """Panels, then every step that is pressed together."""
    longest = c.shop.clamps[0][0]
    panels = sorted((p for p in kinds(c, wood=True) if strips(c, p) > 1), key=lambda p: -rough_width(c, p))
    if panels:
        wide = [p for p in panels if rough_width(c, p) > longest + 1e-6]
        yield Margin(
            "making.long-for-clamps",
            (panels[0].id,),
            "widest panel in the clamps",
            rough_width(c, panels[0]),
            longest,
            "mm",
            tell=lambda: _panels(c, wide, longest),
        )
    yield from _count(c, panels)
    widest = max(_pressed(c), key=lambda s: s[0], default=None)
    if widest is not None:
        size, step = widest
        yield Margin(
            "making.long-for-clamps",
            step.adds,
            f"size of step {step.number} in the clamps",
            size,
            longest,
            "mm",
            tell=lambda: _step(c, step, size, longest),
        )


def _pressed(c: Context) -> Iterator[tuple[float, AssemblyStep]]:
    """Steps that are glued with nothing to pull them home, and their size along the way in which they close [mm]."""
    joints = {j.id: j for j in c.piece.joints}
    for step in assembly_of(c.piece).order:
        glued = [joints[id] for id in step.joints if joints[id].glued]
        if not glued or all(j.fasteners for j in glued):
            continue
        parts = [c.parts[id] for id in (*step.onto, *step.adds)]
        axis = max(range(3), key=lambda i: abs(step.direction[i]))
        if abs(dot(step.direction, step.direction) - step.direction[axis] ** 2) > 1e-6:
            continue
        yield max(p.box.high[axis] for p in parts) - min(p.box.low[axis] for p in parts), step


def _source(c: Context) -> str:
    return "`shop.clamps`" if "shop.clamps" in c.shop.given else c.tables.figure("clamp_longest").reason


def _panels(c: Context, panels: list[Part], longest: float) -> Finding:
    wide = rough_width(c, panels[0])
    return Finding(
        "making.long-for-clamps",
        grade(c, "shop.clamps"),
        f"{named(c, panels)}: wider in glue-up than the clamps take",
        panels[0].place,
        found=f"{c.text(wide)} with what is trimmed off after",
        expected=f"at most {c.text(longest)}",
        source=_source(c),
        remedy=f"glue up {_pieces(c, panels[0], longest)}, and join those with two clamps hooked end to end, or have "
        f"clamps that take {c.up(wide)}",
        parts=tuple(p.id for p in panels),
    )


def _pieces(c: Context, p: Part, longest: float) -> str:
    """A panel in as few pieces as the clamps take, each with its own waste."""
    waste = rough_width(c, p) - p.size[1]
    pieces = max(2, ceil(p.size[1] / (longest - waste) - 1e-6)) if waste < longest else 2
    return f"{pieces} pieces of it, {c.up(p.size[1] / pieces + waste)} wide each"


def _step(c: Context, step: AssemblyStep, size: float, longest: float) -> Finding:
    first = c.parts[step.adds[0]]
    return Finding(
        "making.long-for-clamps",
        grade(c, "shop.clamps"),
        f"the glue-up of {c.label(first.id)} is longer than the clamps take",
        first.place,
        found=f"{c.text(size)} along the way in which it closes",
        expected=f"at most {c.text(longest)}",
        source=_source(c),
        remedy=f"have clamps that take {c.up(size)}, hook two end to end, or pull the joints home with screws",
        parts=step.adds,
    )


def needed(c: Context, p: Part) -> tuple[int, int]:
    """Clamps that a panel takes: for the spread of their pressure, and for their force."""
    length = p.size[0] + c.tables.figure("panel_length_oversize").value
    outer = strip_width(c, p)
    pad = c.tables.figure("clamp_pad").value
    spacing = largest_clamp_spacing(pad, outer)
    pressure = c.tables.figure(
        "clamp_pressure_hardwood" if p.stock.hardwood else "clamp_pressure_softwood"
    ).value
    force = clamp_force(pressure, length, p.size[2])
    each = c.tables.figure("clamp_force_pipe").value * 9.80665
    return clamps_for_length(length, spacing, spacing / 2), clamps_for_force(force, each)


def _count(c: Context, panels: list[Part]) -> Iterator[Margin]:
    """Clamps for each panel that they reach over; the panel that wants most beside what there is."""
    asked = []
    for p in panels:
        have = sum(n for size, n in c.shop.clamps if size >= rough_width(c, p) - 1e-6)
        if have:
            asked.append((max(needed(c, p)), have, p))
    if not asked:
        return
    most, have, worst = max(asked, key=lambda a: a[0] / a[1])
    short = [p for n, there, p in asked if n > there]

    def tell() -> Finding:
        spread, force = needed(c, worst)
        goes = _goes(c, worst, have)
        return Finding(
            "making.few-clamps",
            grade(c, "shop.clamps"),
            f"{named(c, short)} {'take' if len(short) > 1 else 'takes'} more clamps in glue-up than there are",
            worst.place,
            found=f"{c.label(worst.id)}: {spread} clamps to spread the pressure, {force} for its force",
            expected=f"at most {have}, which take {c.text(rough_width(c, worst))}",
            source=f"{_source(c)}; pressure: {c.tables.figure('clamp_pressure_hardwood').reason}; it spreads "
            "45 degrees from each pad",
            remedy=f"have {most} clamps{goes}",
            parts=tuple(p.id for p in short),
        )

    yield Margin(
        "making.few-clamps",
        (worst.id,),
        "clamps for the panel that takes most",
        most,
        have,
        "count",
        tell=tell,
    )


def _goes(c: Context, p: Part, have: int) -> str:
    """Cauls, where fewer clamps then spread the pressure and the force is there."""
    spread, force = needed(c, p)
    return (
        f", or lay stiff cauls along its edges: {force} clamps give the force"
        if force <= have < spread
        else ""
    )
