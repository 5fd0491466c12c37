"""Mitres round a frame: what every cut is out by adds up in the last corner."""

from __future__ import annotations

from collections.abc import Iterator
from math import degrees, hypot

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin
from boardwright.checks.tolerance.builds import SIGMAS
from boardwright.checks.tolerance.fits import severity, share_text
from boardwright.core.findings import Finding
from boardwright.formulas.tolerances import mitre_error, mitre_gap, share_below
from boardwright.piece.records import Joint

FAILS_AT = 76.2
"""Length of the mitre that the opening which fails is told for [mm]: 3 in."""


def rings(c: Context) -> list[tuple[Joint, ...]]:
    """Corners that follow one another all round: a frame, or a box."""
    mitres = [j for j in c.piece.joints if j.kind == "mitre" and j.contacts]
    out: list[tuple[Joint, ...]] = []
    left = dict(enumerate(mitres))
    while left:
        n, first = next(iter(left.items()))
        parts, ring = {first.first, first.second}, [left.pop(n)]
        grown = True
        while grown:
            grown = False
            for k, j in list(left.items()):
                if parts & {j.first, j.second}:
                    parts |= {j.first, j.second}
                    ring.append(left.pop(k))
                    grown = True
        if len(ring) == len(parts) > 2:
            out.append(tuple(ring))
    return out


def length_of(j: Joint) -> float:
    """Length of a mitre, from its inner corner to its outer [mm]."""
    face = max(j.contacts, key=lambda k: k.area)
    still = min(range(3), key=lambda i: abs(face.normal[i]))
    sizes = []
    for i in range(3):
        if i != still:
            sizes.append(max(k.box.high[i] for k in j.contacts) - min(k.box.low[i] for k in j.contacts))
    return hypot(*sizes)


def measure(c: Context) -> Iterator[Margin]:
    """Each kind of ring once."""
    seen: set[tuple[str, ...]] = set()
    out = degrees(c.shop.precision["square"])
    fails = c.tables.figure("mitre_open")
    for ring in rings(c):
        letters = tuple(sorted({c.parts[id].letter for j in ring for id in (j.first, j.second)}))
        if letters in seen:
            continue
        seen.add(letters)
        longest = max(ring, key=length_of)
        length, cuts = length_of(longest), 2 * len(ring)
        limit = fails.value * length / FAILS_AT
        share = 2 * share_below(-limit, 0.0, mitre_gap(length, cuts, out) / SIGMAS)
        yield Margin(
            "tolerance.mitre",
            tuple(id for j in ring for id in (j.first, j.second)),
            "share of builds in which the last mitre of a ring stands open",
            share,
            c.tables.figure("share_that_fails").value,
            "share",
            tell=lambda j=longest, s=share, n=cuts, x=length, y=limit: _finding(c, j, s, n, x, y),  # type: ignore[misc]
        )


def _finding(c: Context, j: Joint, share: float, cuts: int, length: float, limit: float) -> Finding:
    out = degrees(c.shop.precision["square"])
    need = mitre_error(limit, length, cuts) * SIGMAS / 2.576
    return Finding(
        "tolerance.mitre",
        severity(share),
        f"the last mitre of {c.label(j.first)} and {c.label(j.second)} stands open in {share_text(share)}",
        j.place,
        found=f"{cuts} cuts, each ±{out:.3f}° and all the same way: {c.text(mitre_gap(length, cuts, out))} open over "
        f"{c.text(length)}",
        expected=f"at most {c.text(limit)}, in 99 of 100 builds",
        source=f"{c.tables.figure('mitre_open').reason}; all cuts at one setting",
        remedy=f"set the saw to ±{need:.3f}° or better (`shop.precision.square`), or glue up two halves and trim their "
        "meeting lines straight",
        parts=(j.first, j.second),
    )
