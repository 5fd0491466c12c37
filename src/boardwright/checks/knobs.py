"""Knobs and pulls: a screw that reaches them through all the wood, and the wood under its head."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import pi

from boardwright.checks.amounts import mass_text, stress_text
from boardwright.checks.context import Context
from boardwright.checks.extension_bars import BEARING_SHARE
from boardwright.checks.loads import GRAVITY
from boardwright.checks.margins import CAUTION, Margin, Site
from boardwright.checks.remedies import listed
from boardwright.core.findings import Finding, Place, Severity
from boardwright.core.lengths import INCH
from boardwright.piece.cuts import Hole
from boardwright.piece.records import Part

LENGTHS_IN = tuple(n / 8 * INCH for n in (6, 7, 8, 9, 10, 12, 14, 16, 18, 20))
LENGTHS_MM = (16.0, 20.0, 22.0, 25.0, 28.0, 30.0, 35.0, 40.0, 45.0, 50.0, 60.0)
"""Machine screws of knobs on sale, No. 8 and M4 (common practice)."""
GRIP = INCH / 4
"""Least thread in the knob [mm]: one and a half diameters, common practice."""
HEAD = 9.5
"""Head of a No. 8 truss-head machine screw [mm]: ASME B18.6.3 (from memory)."""
WASHERS = (12.7, 15.875, 19.05, 25.4)
"""Washers that are tried under a head [mm]: common practice."""
SMALL_AREA = 1.75
"""Bearing strength of half an inch beside wood that is not pressed: NDS bearing area factor (from memory)."""


@dataclass(frozen=True, slots=True)
class Knob:
    """A knob or a pull as it is screwed on.

    Attributes:
        kind: `knob` or `pull`. group: what it opens. place: where the file asked for it.
        inner: the part under the heads. outer: the part that it stands on.
        thick: wood between head and knob [mm]. hole: the widest of its holes [mm]. screws: how many.
    """

    kind: str
    group: str
    place: Place
    inner: Part
    outer: Part
    thick: float
    hole: float
    screws: int


def knobs(c: Context) -> list[Knob]:
    """Every knob and pull."""
    found = []
    for h in c.piece.hardware:
        kind = "knob" if h.name == "knob" else "pull" if h.name.startswith("pull ") else ""
        if not kind:
            continue
        held: list[tuple[Part, list[Hole]]] = []
        for p in c.piece.parts:
            if p.group != h.group:
                continue
            own = [
                k
                for k in p.cuts
                if isinstance(k, Hole)
                and k.for_ == kind
                and all(h.box.low[a] - 1 < _at(p, k)[a] < h.box.high[a] + 1 for a in (0, 2))
            ]
            if own:
                held.append((p, own))
        if not held:
            continue
        held.sort(key=lambda x: x[0].box.low[1])
        found.append(
            Knob(
                kind,
                h.group,
                h.place,
                held[-1][0],
                held[0][0],
                sum(p.size[own[0].side.axis] for p, own in held),
                max(k.diameter for _, own in held for k in own),
                len(held[0][1]),
            )
        )
    return found


def _at(part: Part, hole: Hole) -> tuple[float, float, float]:
    """Where a hole starts, in the piece [mm]."""
    at = [0.0, 0.0, 0.0]
    one, two = (a for a in range(3) if a != hole.side.axis)
    at[one], at[two] = hole.at
    at[hole.side.axis] = part.size[hole.side.axis] if hole.side.high else 0.0
    return part.pose.point((at[0], at[1], at[2]))


def measure(c: Context, _: Site) -> Iterator[Margin]:
    """Each kind of knob once: its screw's way through the wood, and the wood under the head."""
    seen: set[tuple[str, str, float]] = set()
    for k in knobs(c):
        key = (k.kind, k.inner.letter, round(k.thick, 3))
        if key not in seen:
            seen.add(key)
            yield _length(c, k)
            yield from _pulled(c, k)


def _length(c: Context, k: Knob) -> Margin:
    """The shortest screw on sale with enough thread in the knob, or the longest there is."""
    on_sale = LENGTHS_IN if c.piece.units == "in" else LENGTHS_MM
    screw = next((x for x in on_sale if x >= k.thick + GRIP - 1e-6), on_sale[-1])
    return Margin(
        "fastener.knob-screw",
        tuple(dict.fromkeys((k.outer.id, k.inner.id))),
        f"thread of a machine screw {c.text(screw)} long in the {k.kind}",
        screw - k.thick,
        GRIP,
        "mm",
        least=True,
        tell=lambda: Finding(
            "fastener.knob-screw",
            Severity.WARNING,
            f"the screw of the {k.kind} on {c.label(k.outer.id)} does not reach it",
            k.place,
            found=f"{c.text(k.thick)} of wood; the longest machine screw for it is {c.text(screw)}",
            expected=f"{c.up(GRIP)} of thread in the {k.kind}",
            source="lengths on sale, grip of 1 1/2 diameters: common practice",
            remedy=f"counterbore for the head, {c.up(k.thick + GRIP - screw)} deep, in {c.label(k.inner.id)}, "
            "or use thinner stock",
            parts=tuple(dict.fromkeys((k.outer.id, k.inner.id))),
        ),
    )


def bearing(k: Knob, head: float, pull: float) -> float:
    """Pressure of a head on the wood round its hole [MPa]; infinite when the hole is as wide."""
    area = k.screws * pi / 4 * (head**2 - k.hole**2)
    return pull / area if area > 0 else float("inf")


def _pulled(c: Context, k: Knob) -> Iterator[Margin]:
    row = c.tables.species.get(k.inner.stock.table_key)
    if row is None or row.comp_perp is None:
        return
    test = c.tables.figure("drawer_test_pull")
    pull = test.value * GRAVITY
    mean = row.comp_perp * SMALL_AREA
    limit = mean * BEARING_SHARE
    value = bearing(k, HEAD, pull)
    washer = next((w for w in WASHERS if bearing(k, w, pull) <= limit), 0.0)
    yield Margin(
        "strength.knob",
        (k.inner.id,),
        f"pressure under the head, {k.kind} pulled",
        value,
        limit,
        "N/mm2",
        tell=lambda: Finding(
            "strength.knob",
            Severity.WARNING if value > mean else Severity.NOTE,
            f"the head of the screw of the {k.kind} may be pulled into {c.label(k.inner.id)}",
            k.place,
            found=(
                f"a hole {c.text(k.hole)} wide under a head of {c.text(HEAD)}"
                if value == float("inf")
                else f"{stress_text(c, value)} by {mass_text(c, test.value)}"
            ),
            expected=f"at most {stress_text(c, limit)}; the mean strength is {stress_text(c, mean)}",
            source=f"{test.reason}; strength across the grain over 1.67, x {SMALL_AREA:g} for a small area (from "
            f"memory); {CAUTION}",
            remedy=listed(
                [
                    f"put a washer {c.up(washer)} wide under the head" if washer else "",
                    f"drill the hole {c.text(c.tables.figure('knob_hole').value)} wide (`hole`)"
                    if k.hole > c.tables.figure("knob_hole").value + 1e-6
                    else "",
                ],
                "use a harder wood",
            ),
            parts=(k.inner.id,),
        ),
    )
