"""What is carried on its own: the piece whole, without what comes out of it, or taken apart at its screws."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from boardwright.checks.context import Context
from boardwright.core.poses import Vec
from boardwright.piece.records import Joint, Motion, Part

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
    """The piece whole, then without what opens and stands out, then taken apart; each only where it differs."""
    found = [Stage((_unit(c, c.piece.parts),))]
    moving = [(m, g) for m in c.piece.motions if (g := [p for p in c.piece.parts if p.group == m.id])]
    rest = [p for p in c.piece.parts if all(p.group != m.id for m, _ in moving)]
    if not rest:
        return tuple(found)
    inside, loose = _apart(c, rest, [g for _, g in moving])
    if loose:
        what = _kinds([m for m, _ in moving if any(b[0].group == m.id for b in loose)])
        units = (_unit(c, inside), *(_unit(c, g) for g in loose))
        found.append(Stage(units, f"without its {what}", f"take its {what} off first"))
    bodies = sorted(_bodies(c, rest), key=lambda b: _volume(_unit(c, b)), reverse=True)
    main, off = _apart(c, bodies[0], [*bodies[1:], *(g for _, g in moving)])
    own = {m.id for m, _ in moving}
    screwed = [b for b in off if b[0].group not in own]
    if screwed:
        out = [m for m, _ in moving if any(b[0].group == m.id for b in off)]
        names = [c.label(b[0].id) for b in screwed]
        if len(names) > SHOWN:
            names = [f"{len(names)} pieces at its screws"]
        also = [f"its {_kinds(out)}"] if out else []
        units = (_unit(c, main), *(_unit(c, b) for b in off))
        found.append(Stage(units, "taken apart", f"take {_listed([*also, *names])} off first"))
    return tuple(found)


def _kinds(motions: list[Motion]) -> str:
    """What moves, in words: `lid and trays`."""
    count = Counter(m.kind for m in motions)
    return _listed([kind if n == 1 else f"{kind}s" for kind, n in count.items()])


def _listed(words: list[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"


def _apart(c: Context, main: list[Part], others: list[list[Part]]) -> tuple[list[Part], list[list[Part]]]:
    """A body with all that lies within the box around it, and what stands out of that box."""
    low, high = _corners(c, main)
    kept, off = list(main), []
    for body in others:
        one, two = _corners(c, body)
        if all(one[i] >= low[i] - NOISE and two[i] <= high[i] + NOISE for i in range(3)):
            kept += body
        else:
            off.append(body)
    return kept, off


def _volume(u: Unit) -> float:
    return u.size[0] * u.size[1] * u.size[2]


def _unit(c: Context, parts: Sequence[Part]) -> Unit:
    low, high = _corners(c, parts)
    return Unit(tuple(p.id for p in parts), (high[0] - low[0], high[1] - low[1], high[2] - low[2]))


def _corners(c: Context, parts: Sequence[Part]) -> tuple[list[float], list[float]]:
    """The box around parts, and around what is screwed to them or moves with them [mm]."""
    ids = {p.id for p in parts}
    groups = {p.group for p in parts} - {p.group for p in c.piece.parts if p.id not in ids}
    boxes = [*(p.box for p in parts), *(h.box for h in c.piece.hardware if h.group in groups)]
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
