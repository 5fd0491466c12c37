"""What is carried on its own: the piece whole, without what comes out of it, or taken apart at its screws."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from boardwright.checks.context import Context
from boardwright.core.poses import Box, Vec
from boardwright.piece.records import Joint, Part

LIFTED_OUT = ("hung", "rests", "cleat")
"""Kinds of dry joints that come apart without a tool."""
SCREWS = ("screw", "pocket screw")
NOISE = 1e-3
SHOWN = 3
"""Units that are named."""


@dataclass(frozen=True, slots=True)
class Unit:
    """Something carried on its own: its parts, and the size of the box around it, as it stands [mm]."""

    parts: tuple[str, ...]
    size: Vec


@dataclass(frozen=True, slots=True)
class Stage:
    """How far the piece is taken apart.

    Attributes:
        units: what is carried, the largest first.
        only: how it passes, after "passes only"; "" for the whole piece.
        remedy: what to do first.
    """

    units: tuple[Unit, ...]
    only: str = ""
    remedy: str = ""


def stages(c: Context) -> tuple[Stage, ...]:
    """The piece whole, then emptied of what opens, then taken apart; each only where it differs."""
    what = ""
    found = [Stage((_unit(c, c.piece.parts, True),))]
    moving = {m.id: m for m in c.piece.motions}
    rest = [p for p in c.piece.parts if p.group not in moving]
    out = [_unit(c, group, True) for id in moving if (group := [p for p in c.piece.parts if p.group == id])]
    if out and rest:
        kinds = list(dict.fromkeys(f"{m.kind}{'' if m.kind.endswith('s') else 's'}" for m in moving.values()))
        what = " and ".join([", ".join(kinds[:-1]), kinds[-1]] if len(kinds) > 1 else kinds)
        stage = Stage((_unit(c, rest, True), *out), f"without its {what}", f"take its {what} off first")
        found.append(stage)
    main, *off = _bodies_apart(c, rest)
    if off:
        names = (
            ", ".join(c.label(b[0].id) for b in off)
            if len(off) <= SHOWN
            else f"{len(off)} pieces at its screws"
        )
        also = f"its {what} and " if out else ""
        units = (_unit(c, main, False), *(_unit(c, b, False) for b in off), *out)
        found.append(Stage(units, "taken apart", f"take {also}{names} off first"))
    return tuple(found)


def _bodies_apart(c: Context, parts: list[Part]) -> list[list[Part]]:
    """The largest body, with all that lies within the box around it; then each that stands out of that box."""
    bodies = sorted(_bodies(c, parts), key=lambda b: _volume(_unit(c, b, False)), reverse=True)
    if not bodies:
        return [[]]
    main, off = list(bodies[0]), []
    low, high = _corners(main)
    for body in bodies[1:]:
        one, two = _corners(body)
        if all(one[i] >= low[i] - NOISE and two[i] <= high[i] + NOISE for i in range(3)):
            main += body
        else:
            off.append(body)
    return [main, *off]


def _volume(u: Unit) -> float:
    return u.size[0] * u.size[1] * u.size[2]


def _unit(c: Context, parts: Iterable[Part], bought: bool) -> Unit:
    parts = list(parts)
    groups = {p.group for p in parts}
    hung = [h.box for h in c.piece.hardware if h.group in groups] if bought else []
    low, high = _corners(parts, hung)
    return Unit(tuple(p.id for p in parts), (high[0] - low[0], high[1] - low[1], high[2] - low[2]))


def _corners(parts: list[Part], more: Sequence[Box] = ()) -> tuple[list[float], list[float]]:
    """The box around parts and boxes [mm]."""
    boxes = [*(p.box for p in parts), *more]
    return [min(b.low[i] for b in boxes) for i in range(3)], [max(b.high[i] for b in boxes) for i in range(3)]


def _bodies(c: Context, parts: list[Part]) -> list[list[Part]]:
    """Parts that stay together once every dry joint that is screwed or only hangs is undone."""
    by_id = {f.id: f.kind for f in c.piece.fasteners}
    body = {p.id: p.id for p in parts}

    def root(id: str) -> str:
        while body[id] != id:
            id = body[id]
        return id

    for j in c.piece.joints:
        if j.first in body and j.second in body and not _comes_apart(j, by_id):
            body[root(j.second)] = root(j.first)
    found: dict[str, list[Part]] = {}
    for p in parts:
        found.setdefault(root(p.id), []).append(p)
    return list(found.values())


def _comes_apart(j: Joint, kinds: dict[str, str]) -> bool:
    held = {kinds.get(id, "") for id in j.fasteners}
    return not j.glued and (j.kind in LIFTED_OUT if not held else held <= set(SCREWS))
