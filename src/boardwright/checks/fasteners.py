"""Screws, dowels and the like: tips that break through, two that meet, screws in end grain."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import numpy as np

from boardwright.checks.context import Context
from boardwright.core.findings import Finding, Severity
from boardwright.piece.cuts import Mortise
from boardwright.piece.records import Fastener, Part
from boardwright.solids.cells import cells

APART = 2.0
"""Wood left between two fasteners [mm]: common practice."""
BEYOND = 1.5
"""Wood left beyond a tip [mm], below which a warning is given: half of the 1/8 in of common practice."""

GRIP = 3.0
"""Least grip of a screw, in shank diameters: common practice."""


def _inside(point: Any, boxes: Any) -> bool:
    return bool(((boxes[:, 0] <= point + 1e-6) & (boxes[:, 1] >= point - 1e-6)).all(axis=1).any())


def tips(c: Context) -> Iterator[Finding]:
    """A tip that comes out of the wood, or into a groove."""
    cell: dict[tuple[str, bool], Any] = {}
    both = [_other_end(f) for f in c.piece.fasteners if f.kind in TWO_ENDED]
    for f in (*c.piece.fasteners, *both):
        into = c.parts.get(f.into)
        if into is None or f.kind == "peg":
            continue
        if _grip(f, into) <= 0:
            yield _too_short(c, f, into)
            continue
        key = (f.into, f.kind == "loose tenon")
        if key not in cell:
            cell[key] = cells(_filled(into) if key[1] else into)
        boxes = cell[key]
        tip = np.array(f.tip)
        beyond = tip + np.array(f.direction) * BEYOND
        if _inside(beyond, boxes):
            continue
        out = not _inside(tip, boxes)
        room = _room(f, into)
        yield Finding(
            "fastener.breaks-through",
            Severity.ERROR if out else Severity.WARNING,
            f"the {f.kind} from {c.label(f.held)} "
            + ("comes out of" if out else "nearly comes out of")
            + f" {c.label(f.into)}",
            f.place,
            found=f"{f.name}: {c.text(f.length)} long, wood for {c.text(room)}",
            expected=f"at least {c.text(BEYOND)} of wood beyond the tip",
            source="common practice",
            remedy=_shorter(c, f, room - 2 * BEYOND),
            parts=(f.held, f.into),
        )


TWO_ENDED = ("dowel", "biscuit", "loose tenon")
"""Fasteners that end in both parts."""


def _filled(part: Part) -> Part:
    """A part without its mortises: a loose tenon ends short of the bottom of its own."""
    return replace(part, cuts=tuple(k for k in part.cuts if not isinstance(k, Mortise)))


def _other_end(f: Fastener) -> Fastener:
    """A fastener seen from its other end."""
    way = (-f.direction[0], -f.direction[1], -f.direction[2])
    return replace(f, at=f.tip, direction=way, held=f.into, into=f.held)


def _grip(f: Fastener, into: Part) -> float:
    """How far the tip stands beyond the near side of the receiving part [mm]; negative before it."""
    axis = max(range(3), key=lambda i: abs(f.direction[i]))
    ahead = f.direction[axis] > 0
    return f.tip[axis] - into.box.low[axis] if ahead else into.box.high[axis] - f.tip[axis]


def _too_short(c: Context, f: Fastener, into: Part) -> Finding:
    way = f.length - _grip(f, into)
    least = c.up(way + GRIP * f.diameter)
    return Finding(
        "fastener.too-short",
        Severity.ERROR,
        f"the {f.kind} from {c.label(f.held)} does not reach {c.label(f.into)}",
        f.place,
        found=f.name,
        expected=f"{c.text(way)} on the way to it and a grip of {GRIP:g} diameters",
        source="common practice",
        remedy=f"use one of {least} or longer",
        parts=(f.held, f.into),
    )


def _shorter(c: Context, f: Fastener, most: float) -> str:
    """The longest on sale that stays inside."""
    screw = next((s for s in c.tables.screws.values() if f.table_key == f"screw_{s.gauge}"), None)
    lengths = [x for x in screw.lengths if x <= most + 1e-6] if screw else [most] if most > 0 else []
    shorter = f"use one of {c.text(max(lengths))} or shorter" if lengths else "make the stock thicker"
    return f"{shorter}, or move it to where the wood is whole"


def _room(f: Fastener, into: Part) -> float:
    """From the head to the far side of the receiving part, along the fastener [mm]."""
    axis = max(range(3), key=lambda i: abs(f.direction[i]))
    far = into.box.high[axis] if f.direction[axis] > 0 else into.box.low[axis]
    return abs(far - f.at[axis]) / abs(f.direction[axis])


def meetings(c: Context) -> Iterator[Finding]:
    """Two fasteners in one place, also from both faces of a divider; a plug lies over its own screw."""
    all_ = [f for f in c.piece.fasteners if f.kind != "plug"]
    if len(all_) < 2:
        return
    start = np.array([f.at for f in all_])
    end = np.array([f.tip for f in all_])
    flat = np.array([f.wide for f in all_]) / 2
    low, high = np.minimum(start, end) - flat, np.maximum(start, end) + flat
    radius = np.array([f.diameter / 2 for f in all_])
    limit = radius[:, None] + radius[None, :] + APART
    gap = np.maximum(low[:, None] - high[None, :], low[None, :] - high[:, None]).clip(min=0.0)
    near = np.sqrt((gap**2).sum(axis=2)) < limit
    for i, j in np.argwhere(np.triu(near, 1)):
        one, two = all_[i], all_[j]
        if not {one.held, one.into} & {two.held, two.into}:
            continue
        distance = float(np.sqrt((gap[i, j] ** 2).sum()))
        if any(max(abs(v) for v in f.direction) < 1 - 1e-6 for f in (one, two)):
            distance = _apart(one, two)
            if distance >= limit[i, j]:
                continue
        yield Finding(
            "fastener.meet",
            Severity.ERROR,
            (f"two {one.kind}s" if one.kind == two.kind else f"a {one.kind} and a {two.kind}")
            + f" meet in {c.label(one.into if one.into in (two.into, two.held) else one.held)}",
            two.place,
            found=f"{c.text(distance)} between their axes",
            expected=f"at least {c.text(float(limit[i, j]))}: half of each diameter "
            f"and {c.text(APART)} of wood",
            source="common practice",
            remedy="move one along, or use shorter ones",
            parts=tuple(dict.fromkeys((one.held, one.into, two.held, two.into))),
        )


def _apart(one: Fastener, two: Fastener) -> float:
    """How near the axes of two fasteners come to each other, of which one leans [mm]."""
    points = np.array(one.at) + np.linspace(0.0, one.length, 201)[:, None] * np.array(one.direction)
    along = ((points - np.array(two.at)) @ np.array(two.direction)).clip(0.0, two.length)
    feet = np.array(two.at) + along[:, None] * np.array(two.direction)
    return float(np.sqrt(((points - feet) ** 2).sum(axis=1)).min())


def end_grain(c: Context) -> Iterator[Finding]:
    """Screws driven along the grain of solid wood."""
    for f in c.piece.fasteners:
        part = c.parts.get(f.into)
        if f.kind not in ("screw", "pocket screw") or part is None or part.stock.kind != "wood":
            continue
        along = abs(sum(a * b for a, b in zip(f.direction, part.pose.x, strict=True)))
        if along > 0.9:
            yield Finding(
                "fastener.end-grain",
                Severity.WARNING,
                f"screws go into the end grain of {c.label(f.into)}",
                f.place,
                found=f.name,
                expected="side grain, or dowels",
                source="end grain holds 60 % of side grain (builders' handbook); "
                "NDS allows it no withdrawal load (from memory)",
                remedy="use dowels (`fasten: dowels`), or a rabbet or dado with glue",
                parts=(f.into,),
            )
