"""What is carried on its own: the piece whole, without what comes out of it, or taken apart at its screws."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from boardwright.checks.context import Context
from boardwright.core.poses import Vec
from boardwright.piece.records import Joint, Part

LIFTED_OUT = ("hung", "rests", "cleat")
"""Kinds of dry joints that come apart without a tool."""
SCREWS = ("screw", "pocket screw")
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
    found = [Stage((_unit(c, c.piece.parts, True),))]
    moving = {m.id: m for m in c.piece.motions}
    rest = [p for p in c.piece.parts if p.group not in moving]
    out = [_unit(c, group, True) for id in moving if (group := [p for p in c.piece.parts if p.group == id])]
    if out and rest:
        kinds = list(dict.fromkeys(f"{m.kind}{'' if m.kind.endswith('s') else 's'}" for m in moving.values()))
        what = " and ".join([", ".join(kinds[:-1]), kinds[-1]] if len(kinds) > 1 else kinds)
        stage = Stage((_unit(c, rest, True), *out), f"without its {what}", f"take its {what} off first")
        found.append(stage)
    bodies = sorted((_unit(c, body, False) for body in _bodies(c, rest)), key=_volume, reverse=True)
    if len(bodies) > 1:
        off = [c.label(u.parts[0]) for u in bodies[1:]]
        names = ", ".join(off) if len(off) <= SHOWN else f"what is screwed on, {len(off)} pieces"
        also = f"take its {what} off and " if out and rest else ""
        found.append(Stage((*bodies, *out), "taken apart", f"{also}unscrew {names} first"))
    return tuple(found)


def _volume(u: Unit) -> float:
    return u.size[0] * u.size[1] * u.size[2]


def _unit(c: Context, parts: Iterable[Part], bought: bool) -> Unit:
    parts = list(parts)
    groups = {p.group for p in parts}
    boxes = [p.box for p in parts]
    if bought:
        boxes += [h.box for h in c.piece.hardware if h.group in groups]
    size = [max(b.high[i] for b in boxes) - min(b.low[i] for b in boxes) for i in range(3)]
    return Unit(tuple(p.id for p in parts), (size[0], size[1], size[2]))


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
