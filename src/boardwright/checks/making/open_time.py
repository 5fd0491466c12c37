"""Glue-ups with more joints than the glue gives time for, and where to split them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin
from boardwright.core.findings import Finding, Severity
from boardwright.piece.records import Joint
from boardwright.solids.assembly import AssemblyStep, assembly_of
from boardwright.tables.records import Glue

LEAST_CLAMPS = 4
"""A glue-up takes at least so many clamps, and one for every two joints (common practice)."""

KEY = "key"
"""Name of a key let into a mitre."""


@dataclass(frozen=True, slots=True)
class GlueUp:
    """Steps that are glued one after the other, and how many joints each closes with glue."""

    steps: tuple[AssemblyStep, ...]
    joints: tuple[int, ...]


def minutes(c: Context, joints: int) -> float:
    """From the first joint spread to the last clamp [min]."""
    clamps = max(LEAST_CLAMPS, ceil(joints / 2))
    return joints * (c.shop.spread + c.shop.close) + clamps * c.shop.clamp


def gives(c: Context, glue: Glue) -> float | None:
    """What a glue gives [min]; None where its label says."""
    return glue.closed_time or glue.open_time


def stages(c: Context, joints: Sequence[int], limit: float) -> list[list[int]]:
    """Steps gathered into goes that each keep the time, as many in each as it takes; by their indices."""
    out: list[list[int]] = []
    for n in range(len(joints)):
        if out and minutes(c, sum(joints[k] for k in (*out[-1], n))) <= limit + 1e-9:
            out[-1].append(n)
        else:
            out.append([n])
    return out


def glue_ups(c: Context) -> list[GlueUp]:
    """What is glued in one go if nobody stops: the glued steps of the piece and of each of its subassemblies.

    Keys are let into corners that are dry, each by itself, so they do not count.
    """
    joints: dict[str, Joint] = {j.id: j for j in c.piece.joints}
    runs: dict[int, list[tuple[AssemblyStep, int]]] = {}
    for step in assembly_of(c.piece).order:
        glued = sum(joints[id].glued for id in step.joints)
        if glued and any(c.parts[id].name != KEY for id in step.adds):
            runs.setdefault(step.sub, []).append((step, glued))
    return [GlueUp(tuple(s for s, _ in run), tuple(n for _, n in run)) for run in runs.values()]


def measure(c: Context) -> Iterator[Margin]:
    """Each glue-up; a split where it takes too long."""
    if not c.shop.glue:
        known = ", ".join(f"`{k}`" for k in sorted(c.tables.glues))
        yield Margin(
            "making.unknown-glue",
            (),
            "glue of the shop",
            0,
            1,
            "count",
            True,
            tell=lambda: Finding(
                "making.unknown-glue",
                Severity.ERROR,
                f"no glue of the tables is named `{c.shop.glue_asked}`",
                c.shop.place,
                found=c.shop.glue_asked,
                expected=f"one of {known}",
                remedy="name one of these, or add a row in a file under `tables:`",
            ),
        )
        return
    glue = c.tables.glues[c.shop.glue]
    limit = c.shop.open if c.shop.open is not None else gives(c, glue)
    if limit is None:
        return
    for up in glue_ups(c):
        yield Margin(
            "making.open-time",
            tuple(dict.fromkeys(id for s in up.steps for id in s.adds)),
            "time of a glue-up",
            minutes(c, sum(up.joints)),
            limit,
            "min",
            tell=lambda up=up: _finding(c, up, glue, limit),  # type: ignore[misc]
        )


def _finding(c: Context, up: GlueUp, glue: Glue, limit: float) -> Finding:
    total = sum(up.joints)
    time = minutes(c, total)
    split = stages(c, up.joints, limit)
    late = [n for n in range(len(up.joints)) if minutes(c, up.joints[n]) > limit + 1e-9]
    first = c.parts[up.steps[0].onto[0]]
    clamps = max(LEAST_CLAMPS, ceil(total / 2))
    return Finding(
        "making.open-time",
        Severity.WARNING if late else Severity.NOTE,
        f"the glue-up of {c.label(first.id)} and what goes onto it takes longer than the glue gives",
        first.place,
        found=f"{total} joints × ({c.shop.spread:g} + {c.shop.close:g}) min, {clamps} clamps × {c.shop.clamp:g} min: "
        f"{time:.3g} min",
        expected=f"at most {limit:g} min with {glue.name}",
        source=f"{'`shop.glue_times`' if c.shop.open is not None else glue.source}; times of a dry run: "
        f"{c.tables.figure('glue_spread_time').reason}",
        remedy=_slower(c, time) if late else f"{_goes(c, up, split)}; or {_slower(c, time)}",
        parts=tuple(dict.fromkeys(id for s in up.steps for id in s.adds)),
    )


def _goes(c: Context, up: GlueUp, split: list[list[int]]) -> str:
    """The split, in words."""
    words = []
    for go in split:
        ids = [id for n in go for unit in up.steps[n].units for id in (unit[0],)]
        letters = list(dict.fromkeys(c.parts[id].letter for id in ids))
        words.append(f"{', '.join(letters)} ({sum(up.joints[n] for n in go)} joints)")
    return (
        f"glue it in {len(split)} goes, each dry before the next, the other parts put on dry to keep it square: "
        + ", then ".join(words)
    )


def _slower(c: Context, time: float) -> str:
    """Glues that give enough time."""
    enough = [g for g in c.tables.glues.values() if (gives(c, g) or 0) >= time]
    if not enough:
        return f"use a glue that gives {ceil(time)} min or more: an epoxy whose label says so"
    near = min(enough, key=lambda g: (gives(c, g), g.key))
    return f"use a glue that gives {ceil(time)} min or more, as {near.name} does ({gives(c, near):g} min)"
