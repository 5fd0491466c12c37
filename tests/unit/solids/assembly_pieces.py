"""Pieces made by hand whose order of building is plain, and an independent builder that moves the solids."""

from __future__ import annotations

from boardwright.core.poses import Box, Pose, Vec
from boardwright.piece.cuts import Cut
from boardwright.piece.records import Contact, Fastener, Joint, Moisture, Motion, Part, Piece, Stock
from boardwright.solids.assembly import Assembly, AssemblyStep
from boardwright.solids.mesh import part_solid

WOOD = Stock("wood", "wood", "cherry", "", 20.0, 25.0, False, 560.0)
X, Y, Z = (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)
LEFT, FRONT, DOWN = (-1.0, 0.0, 0.0), (0.0, -1.0, 0.0), (0.0, 0.0, -1.0)


def part(
    id: str,
    at: Vec,
    size: Vec,
    *cuts: Cut,
    name: str = "",
    letter: str = "",
    group: str = "case",
    pose: Pose | None = None,
    mirror_of: str = "",
) -> Part:
    """A part whose own axes are those of the piece, unless a pose is given."""
    return Part(
        id, name or id, WOOD, size, pose or Pose(at), cuts, letter or id, group=group, mirror_of=mirror_of
    )


def joint(
    first: str, second: str, *directions: Vec, glued: bool = True, contacts: tuple[Contact, ...] = ()
) -> Joint:
    return Joint(f"{first}-{second}", "joint", first, second, contacts, directions, glued)


def piece(
    parts: list[Part],
    joints: list[Joint] | None = None,
    fasteners: list[Fastener] | None = None,
    motions: list[Motion] | None = None,
) -> Piece:
    return Piece(
        "test",
        "mm",
        0.5,
        Box((0, 0, 0), (1000, 1000, 1000)),
        Moisture(8, 6, 10),
        tuple(parts),
        tuple(joints or ()),
        tuple(fasteners or ()),
        motions=tuple(motions or ()),
    )


def order(assembly: Assembly) -> list[tuple[str, ...]]:
    """What each step puts on."""
    return [step.adds for step in assembly.order]


def faults(whole: Piece, assembly: Assembly, least: float = 0.5) -> list[str]:
    """What goes wrong when the steps are done with solids; knows nothing of how the order was found.

    Every unit is moved along its way among what stands there, in steps of at most 9 mm: less than two boards are
    thick together. Room that two parts share in the finished piece is no fault of the order.
    """
    solids = {p.id: part_solid(p) for p in whole.parts}
    out: list[str] = []
    built: dict[int, set[str]] = {}
    copies = {c[0]: s for s in assembly.subs for c in s.copies}
    done = {frozenset(c) for s in assembly.subs for c in s.copies}
    for step in assembly.order:
        standing = built.setdefault(step.sub, set(step.onto))
        if standing != set(step.onto):
            out.append(f"step {step.number}: stands {sorted(standing)}, said {sorted(step.onto)}")
        for unit in step.units:
            if len(unit) > 1 and frozenset(unit) not in done:
                out.append(f"step {step.number}: {unit} was never put together")
            out += _met(step, unit, sorted(standing), solids, least)
            standing |= set(unit)
    for sub in assembly.subs:
        if built.get(sub.number) != set(sub.copies[0]):
            out.append(
                f"subassembly {sub.number}: {sorted(built.get(sub.number, ()))} is not {sub.copies[0]}"
            )
    if built.get(0, {p.id for p in whole.parts if len(whole.parts) == 1}) != set(solids):
        out.append("not every part is in the piece")
    assert len(copies) == sum(len(s.copies) for s in assembly.subs)
    return out


def _met(step: AssemblyStep, unit: tuple[str, ...], standing: list[str], solids, least: float) -> list[str]:  # type: ignore[no-untyped-def]
    out = []
    for one in unit:
        for two in standing:
            a, b = solids[one], solids[two]
            rest = (a ^ b).volume()
            last = step.travel if step.approach != step.direction else None
            at = _first(a, b, step.direction, rest + least, last)
            if at is None and last is not None:
                drawn = a.translate([-v * last for v in step.direction])
                at = _first(drawn, b, step.approach, rest + least)
            if at is not None:
                out.append(f"step {step.number}: {one} meets {two} {at:.1f} before its place")
    return out


def _first(a, b, direction: Vec, most: float, last: float | None = None) -> float | None:  # type: ignore[no-untyped-def]
    """How far before its place a body shares more than so much with another; None when it never does."""
    low, high = a.bounding_box(), b.bounding_box()
    # the box of a body that is swept along the way decides first
    away = [-v for v in direction]
    far = min(
        ((high[k + 3] - low[k]) if away[k] > 0 else (low[k + 3] - high[k])) / abs(away[k])
        for k in range(3)
        if abs(away[k]) > 0.01
    )
    far = far if last is None else min(far, last)
    swept = [low[k] + min(0.0, away[k] * far) for k in range(3)]
    swept += [low[k + 3] + max(0.0, away[k] * far) for k in range(3)]
    if any(swept[k] > high[k + 3] - 1e-6 or high[k] > swept[k + 3] - 1e-6 for k in range(3)):
        return None
    t = 0.0
    while t < far:
        t = min(far, t + (0.7 if t < 3 else 2.3 if t < 10 else 9.0))
        if (a.translate([v * t for v in away]) ^ b).volume() > most:
            return t
    return None
