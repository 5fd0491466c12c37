"""Screws that may split the wood or pull through it: edges, ends, spacing, pilots, heads; dowels with thin walls."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations
from math import hypot

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin, Site
from boardwright.core.findings import Finding, Severity
from boardwright.formulas.placing import end_distance_unloaded, spacing_across_grain, spacing_along_grain
from boardwright.formulas.screws import flat_head_height
from boardwright.piece.cuts import Hole
from boardwright.piece.records import Fastener, Part

EDGE_DIAMETERS = 2.5
EDGE_SOURCE = "2.5 shank diameters: NDS commentary on wood screws (from memory)"
PLACED = "EN 1995-1-1, screws in bored holes, as printed in a structural handbook of 2025"
SQUARE = 0.999
"""A fastener runs along an axis of a part when its direction does to this cosine."""
SLACK = 0.05
"""Distances less than this under their limit are kept [mm]."""
HEAD_SHARE = 0.5
"""Share of the wood under it that a countersunk head may take up: common practice."""
DENSE = 0.6
"""Specific gravity over which a thin pilot splits wood: NDS, lead holes."""
DENSE_PILOT = 0.9
ROUNDED = 25.4 / 64
"""Drills come in steps of this [mm]: 1/64 in."""


@dataclass(frozen=True, slots=True)
class Seen:
    """A fastener in the frame of a part: where it enters, its way, the axis it mostly runs along, and the others."""

    f: Fastener
    part: Part
    at: tuple[float, float, float]
    axis: int

    @property
    def beside(self) -> list[float]:
        """Distances to the two nearer sides it does not run towards, in the order of the part's axes [mm]."""
        return [min(self.at[k], self.part.size[k] - self.at[k]) for k in range(3) if k != self.axis]


def seen(c: Context, f: Fastener, id: str) -> Seen | None:
    """A fastener as a part sees it; None when there is no such part, or it leans."""
    part = c.parts.get(id)
    if part is None:
        return None
    way = part.pose.inverse_direction(f.direction)
    axis = max(range(3), key=lambda i: abs(way[i]))
    return Seen(f, part, part.pose.inverse_point(f.at), axis) if abs(way[axis]) > SQUARE else None


def screws(c: Context) -> list[Fastener]:
    """The screws of a piece."""
    return [f for f in c.piece.fasteners if f.kind == "screw"]


def worst(c: Context, margins: Iterator[Margin]) -> Iterator[Margin]:
    """Every margin that is not kept, and of those that are the nearest to its limit, for each kind of part."""
    kept: dict[tuple[str, ...], Margin] = {}
    for m in margins:
        key = (m.check, *(c.parts[id].letter for id in m.parts))
        if not m.kept:
            yield m
        elif key not in kept or (m.used or 0.0) > (kept[key].used or 0.0):
            kept[key] = m
    yield from kept.values()


def edges(c: Context, _: Site) -> Iterator[Margin]:
    """Screws too near an edge of either part."""
    yield from worst(c, _edges(c))


def _edges(c: Context) -> Iterator[Margin]:
    for f in screws(c):
        need = EDGE_DIAMETERS * f.diameter
        for id in (f.held, f.into):
            s = seen(c, f, id)
            if s is None:
                continue
            found = min(s.beside)
            yield Margin(
                "fastener.edge",
                (id,),
                "screw to edge",
                found,
                need - SLACK,
                "mm",
                least=True,
                tell=lambda f=f, id=id, found=found, need=need: Finding(  # type: ignore[misc]
                    "fastener.edge",
                    Severity.WARNING,
                    f"a screw is near the edge of {c.label(id)}",
                    f.place,
                    found=f"{f.name}, {c.text(found)} from the edge",
                    expected=f"at least {c.text(need)}",
                    source=EDGE_SOURCE,
                    remedy=_thinner(c, found) + "thicker stock",
                    parts=(id,),
                ),
            )


def _thinner(c: Context, edge: float) -> str:
    """The thickest screw that may stand so near an edge."""
    fitting = [s.gauge for s in c.tables.screws.values() if EDGE_DIAMETERS * s.shank <= edge + SLACK]
    return (
        f"use a No. {max(fitting)} screw or a thinner one (`screw: {max(fitting)}`), or "
        if fitting
        else "use "
    )


def ends(c: Context, _: Site) -> Iterator[Margin]:
    """Screws whose thread splits the end of solid wood; the shank runs free in the part under the head."""
    yield from worst(c, _ends(c))


def _ends(c: Context) -> Iterator[Margin]:
    for f in screws(c):
        s = seen(c, f, f.into)
        if s is None or s.part.stock.kind != "wood" or s.axis == 0:
            continue
        need = end_distance_unloaded(f.diameter, True)
        found = min(s.at[0], s.part.size[0] - s.at[0])
        yield Margin(
            "fastener.end",
            (f.into,),
            "screw to end",
            found,
            need - SLACK,
            "mm",
            least=True,
            tell=lambda f=f, found=found, need=need: Finding(  # type: ignore[misc]
                "fastener.end",
                Severity.WARNING if found < EDGE_DIAMETERS * f.diameter else Severity.NOTE,
                f"a screw may split the end of {c.label(f.into)}",
                f.place,
                found=f"{f.name}, {c.text(found)} from the end",
                expected=f"at least {c.text(need)}: 7 diameters",
                source=PLACED,
                remedy=f"move it {c.up(need - found)} along, or use fewer (`count`)" + _thinner_end(c, found),
                parts=(f.into,),
            ),
        )


def _thinner_end(c: Context, found: float) -> str:
    fitting = [
        s.gauge for s in c.tables.screws.values() if end_distance_unloaded(s.shank, True) <= found + SLACK
    ]
    return (
        f", or use a No. {max(fitting)} screw or a thinner one (`screw: {max(fitting)}`)" if fitting else ""
    )


def spacings(c: Context, _: Site) -> Iterator[Margin]:
    """Two screws in one line along the grain, so near that the wood splits from one to the other."""
    yield from worst(c, _spacings(c))


def _spacings(c: Context) -> Iterator[Margin]:
    by_part: dict[tuple[str, int], list[Seen]] = {}
    for f in screws(c):
        s = seen(c, f, f.into)
        if s is not None and s.part.stock.kind == "wood" and s.axis != 0:
            by_part.setdefault((f.into, s.axis), []).append(s)
    for (id, axis), row in by_part.items():
        across = 3 - axis
        reach = max(s.at[0] for s in row) - min(s.at[0] for s in row)
        for a, b in combinations(row, 2):
            d = max(a.f.diameter, b.f.diameter)
            along, beside = abs(a.at[0] - b.at[0]), abs(a.at[across] - b.at[across])
            near, wide = spacing_along_grain(d, 0, True), spacing_across_grain(d, 0, True)
            if beside >= wide or a.f.held != b.f.held:
                continue
            yield Margin(
                "fastener.spacing",
                (id,),
                "screw to screw along the grain",
                along,
                near - SLACK,
                "mm",
                least=True,
                tell=lambda a=a, id=id, along=along, beside=beside, near=near, most=int(reach / near) + 1: (
                    Finding(  # type: ignore[misc]
                        "fastener.spacing",
                        Severity.WARNING,
                        f"two screws so near each other may split {c.label(id)}",
                        a.f.place,
                        found=f"{a.f.name}, {c.text(hypot(along, beside))} apart",
                        expected=f"at least {c.text(near)} along the grain: 5 diameters",
                        source=PLACED,
                        remedy=f"use no more than {most} in the row (`count`), or thinner ones, or set every other one "
                        "off to the side",
                        parts=(id,),
                    )
                ),
            )


def heads(c: Context, _: Site) -> Iterator[Margin]:
    """Heads that go deep into a thin part, and pull through it."""
    yield from worst(c, _heads(c))


def _heads(c: Context) -> Iterator[Margin]:
    by_key = {f"screw_{s.gauge}": s for s in c.tables.screws.values()}
    for f in screws(c):
        screw, s = by_key.get(f.table_key), seen(c, f, f.held)
        if screw is None or s is None:
            continue
        way = s.part.pose.inverse_direction(f.direction)[s.axis]
        under = s.part.size[s.axis] - s.at[s.axis] if way > 0 else s.at[s.axis]
        deep = flat_head_height(screw.head, screw.shank, screw.countersink)
        yield Margin(
            "fastener.head",
            (f.held,),
            "screw head in the wood under it",
            deep,
            under * HEAD_SHARE,
            "mm",
            tell=lambda f=f, under=under, deep=deep: Finding(  # type: ignore[misc]
                "fastener.head",
                Severity.ERROR if deep >= under else Severity.WARNING,
                f"the head of a screw goes {'through' if deep >= under else 'too deep into'} {c.label(f.held)}",
                f.place,
                found=f"{f.name}: its head is {c.text(deep)} high, the wood under it {c.text(under)}",
                expected=f"a head at most {HEAD_SHARE:.0%} of the wood under it",
                source="common practice",
                remedy=_flatter(c, under) + "use round heads with washers, or thicker stock",
                parts=(f.held,),
            ),
        )


def _flatter(c: Context, under: float) -> str:
    fitting = [
        s.gauge
        for s in c.tables.screws.values()
        if flat_head_height(s.head, s.shank, s.countersink) <= under * HEAD_SHARE + 1e-9
    ]
    return (
        f"use a No. {max(fitting)} screw or a thinner one (`screw: {max(fitting)}`), or " if fitting else ""
    )


def pilots(c: Context) -> Iterator[Finding]:
    """Pilots so thin that dense wood splits, or so wide that the thread holds nothing."""
    by_key = {f"screw_{s.gauge}": s for s in c.tables.screws.values()}
    for f in screws(c):
        screw, into = by_key.get(f.table_key), c.parts.get(f.into)
        if screw is None or into is None:
            continue
        drills = [
            k.diameter for k in into.cuts if isinstance(k, Hole) and k.purpose == "pilot" and k.for_ == f.name
        ]
        if not drills:
            continue
        drill = drills[0]
        dense = into.stock.kind == "wood" and into.stock.specific_gravity > DENSE
        least = DENSE_PILOT * screw.root - ROUNDED if dense else 0.0
        if least <= drill <= screw.root:
            continue
        thin = drill < least
        yield Finding(
            "fastener.pilot",
            Severity.WARNING,
            f"the pilot of a screw is so {'thin that it splits' if thin else 'wide that the screw hardly holds in'} "
            f"{c.label(f.into)}",
            f.place,
            found=f"{f.name} in a hole of {c.text(drill)}; root of its thread {c.text(screw.root)}",
            expected="90 % of the root in wood over 0.6 specific gravity, to the nearest drill"
            if thin
            else "no wider than the root of the thread",
            source="National Design Specification, lead holes of wood screws",
            remedy=f"drill about {c.printer.tool((DENSE_PILOT if dense else 0.7) * screw.root)} {c.printer.units}",
            parts=(f.into,),
        )


def walls(c: Context, _: Site) -> Iterator[Margin]:
    """Dowels that leave thin walls of wood beside them."""
    yield from worst(c, _walls(c))


def _walls(c: Context) -> Iterator[Margin]:
    share = c.tables.figure("dowel_edge_share")
    for f in c.piece.fasteners:
        if f.kind != "dowel":
            continue
        for id in (f.held, f.into):
            s = seen(c, f, id)
            if s is None:
                continue
            found, least = min(s.beside) - f.diameter / 2, share.value * f.diameter / 2
            yield Margin(
                "fastener.dowel-wall",
                (id,),
                "wood beside a dowel",
                found,
                least - SLACK,
                "mm",
                least=True,
                tell=lambda f=f, id=id, found=found, least=least: Finding(  # type: ignore[misc]
                    "fastener.dowel-wall",
                    Severity.WARNING,
                    f"a dowel leaves little wood beside it in {c.label(id)}",
                    f.place,
                    found=f"{f.name}, {c.text(max(found, 0.0))} of wood beside it",
                    expected=f"at least {c.text(least)}: half of its diameter",
                    source=share.reason,
                    remedy="use thicker stock, screws, or a joint let into the wood",
                    parts=(id,),
                ),
            )


MEASURES = (edges, ends, spacings, heads, walls)
