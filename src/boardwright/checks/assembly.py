"""Pieces that cannot be put together, screws that no driver comes at, parts that go in wrong."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from boardwright.checks.context import Context
from boardwright.core.findings import Finding, Severity
from boardwright.piece.records import Fastener
from boardwright.solids.assembly import AssemblyStep, Trap, assembly_of
from boardwright.solids.driver_reach import DRIVER, STUBBY, reaches
from boardwright.solids.poses_tried import wrong_poses

SHOWN = 4
"""Blocked pairs that a finding names."""


def trapped(c: Context) -> Iterator[Finding]:
    """Parts that hold each other, so that no order puts them together."""
    for trap in assembly_of(c.piece).trapped:
        joints = {j.id: j for j in c.piece.joints}
        freeing = [joints[id] for id in trap.joints]
        inside = [j for j in c.piece.joints if j.first in trap.parts and j.second in trap.parts]
        if freeing:
            pairs = " or ".join(f"{c.label(j.first)} and {c.label(j.second)}" for j in freeing[:2])
            remedy = f"join {pairs} so that they come apart in another direction, e.g. butted and screwed"
        else:
            remedy = "join two or more pairs of them so that they come apart in other directions"
        yield Finding(
            "assembly.trapped",
            Severity.ERROR,
            f"{_listed([c.label(id) for id in trap.parts])} cannot be put together in any order",
            next((j.place for j in [*freeing, *inside]), c.parts[trap.parts[0]].place),
            found=_blocked(c, trap),
            expected="one part, or several together, that come away in some direction",
            source="taking the solids apart",
            remedy=remedy,
            parts=trap.parts,
        )


def _blocked(c: Context, trap: Trap) -> str:
    lines = [f"{c.label(two)} stops {c.label(one)} ({why})" for one, two, why in trap.blockers]
    more = f" and {len(lines) - SHOWN} more" if len(lines) > SHOWN else ""
    return "; ".join(lines[:SHOWN]) + more


def _listed(names: Sequence[str], last: str = "and") -> str:
    seen = list(dict.fromkeys(names))
    return seen[0] if len(seen) == 1 else f"{', '.join(seen[:-1])} {last} {seen[-1]}"


def drivers(c: Context) -> Iterator[Finding]:
    """Screws that no driver comes at, or only a short one, when they must be driven."""
    by_id = {f.id: f for f in c.piece.fasteners}
    for step in assembly_of(c.piece).order:
        for ids, far in ((step.unreached, STUBBY), (step.stubby, DRIVER)):
            rows: dict[tuple[str, str], list[Fastener]] = {}
            for id in ids:
                rows.setdefault((by_id[id].held, by_id[id].into), []).append(by_id[id])
            for screws in rows.values():
                yield _no_room(c, step, screws, far)


def _no_room(c: Context, step: AssemblyStep, screws: list[Fastener], far: float) -> Finding:
    short = far == DRIVER
    first = screws[0]
    standing = set(step.onto) | set(step.adds)
    [reach] = reaches(c.piece.parts, [first])
    bits = reach.driver if short else reach.stubby
    way = [p.id for i, p in enumerate(c.piece.parts) if bits >> i & 1 and p.id in standing]
    what = "a screw" if len(screws) == 1 else f"{len(screws)} screws"
    driver = "only a stubby driver" if short else "no driver"
    return Finding(
        "assembly.driver",
        Severity.NOTE if short else Severity.WARNING,
        f"{driver} comes at {what} through {c.label(first.held)} into {c.label(first.into)}",
        first.place,
        found=f"{_listed([c.label(id) for id in way])} within {c.up(far)} behind the head",
        expected=f"{c.up(far)} clear"
        + ("" if short else f" for a stubby driver, {c.up(DRIVER)} for another"),
        source="common practice",
        remedy="use a stubby or right-angle driver"
        if short
        else "drive it from the other side, move it, or fasten the two in another way",
        parts=(first.held, first.into, *way),
    )


def wrong_ways(c: Context) -> Iterator[Finding]:
    """Parts that can be put in wrong, with the marks that prevent it; a part alone goes in nowhere."""
    wrong = wrong_poses(c.piece) if len(c.piece.parts) > 1 else ()
    if not wrong:
        return
    labels = [c.label(w.parts[0]) for w in wrong]
    alone = len(wrong) == 1
    how = [f"{_listed(w.turns, 'or')}" + ("" if w.matters else ", and nothing depends on it") for w in wrong]
    marks: dict[str, list[str]] = {}
    for w, label in zip(wrong, labels, strict=True):
        marks.setdefault(w.mark, []).append(label)
    yield Finding(
        "assembly.wrong-way",
        Severity.NOTE,
        f"{labels[0]} can also be put in {how[0]}"
        if alone
        else f"{_listed(labels)} can also be put in wrong",
        c.parts[wrong[0].parts[0]].place,
        found=_elsewhere(wrong[0].differs)
        if alone
        else "; ".join(f"{label} {words}" for label, words in zip(labels, how, strict=True)),
        expected="a part that goes in one way only, or a mark on it",
        source="trying the solids in their places",
        remedy=wrong[0].mark if alone else "; ".join(f"{mark} ({_listed(on)})" for mark, on in marks.items()),
        parts=tuple(id for w in wrong for id in w.parts),
    )


def _elsewhere(differs: str) -> str:
    if differs == "its shape":
        return "put in so, its shape is not the right one"
    many = ", " in differs or differs.startswith("holes")
    return f"put in so, {differs} {'come' if many else 'comes'} to lie elsewhere"
