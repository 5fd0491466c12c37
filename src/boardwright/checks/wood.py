"""Solid wood that is not free to move, and stock that does not give a part."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from boardwright.checks.context import Context
from boardwright.core.findings import Finding, Severity
from boardwright.core.poses import AXES, Vec, add, dot, scaled
from boardwright.piece.records import Joint, Part

LIMIT = 1.0
"""Difference in movement that a glue line takes [mm]: what a cross-grain joint about 90 mm (3 1/2 in) wide
makes over a change of 4 % in wood that moves 0.27 % for each per cent; wider ones fail in time (common
practice)."""
ACROSS = 0.0005
"""A part that moves more than this for each per cent of moisture moves across its grain [1/%]; two such parts move
together, near enough, and are no cross-grain joint."""
SOURCE = "movement: Wood Handbook FPL-GTR-190 eq. 13-2; limit of a cross-grain glue line: common practice"


def _strain(part: Part, way: Vec) -> float:
    """Change per 1 % of moisture along a direction of the piece [1/%]."""
    rates = (part.stock.lengthwise, part.stock.across, part.stock.through)
    own = (part.pose.x, part.pose.y, part.pose.z)
    return sum(rate * dot(axis, way) ** 2 for axis, rate in zip(own, rates, strict=True))


Reach = tuple[Vec, float]
"""A direction, and how far a joint holds along it [mm]."""


def _fixed(c: Context, joint: Joint) -> list[Reach]:
    """Reaches over which a joint holds both parts: glue faces, and rows of screws without slots."""
    out: list[Reach] = []
    for k in joint.contacts:
        if not (k.glued and joint.glued):
            continue
        if k.corners:
            edges = [add(b, scaled(a, -1.0)) for a, b in pairwise((*k.corners, k.corners[0]))]
            out += [(scaled(e, 1 / dot(e, e) ** 0.5), dot(e, e) ** 0.5) for e in edges if dot(e, e) > 1e-6]
        else:
            out += [(AXES[i], k.box.size(i)) for i in range(3)]
    screws = [f for f in c.piece.fasteners if f.id in joint.fasteners and f.kind == "screw" and not f.slotted]
    if len(screws) > 1:
        out += [(AXES[i], max(f.at[i] for f in screws) - min(f.at[i] for f in screws)) for i in range(3)]
    return out


def cross_grain(c: Context) -> Iterator[Finding]:
    """Two parts held together over a length in which they move differently."""
    m = c.piece.moisture
    swing = m.wettest - m.driest
    for joint in c.piece.joints:
        one, two = c.parts.get(joint.first), c.parts.get(joint.second)
        if one is None or two is None or "wood" not in (one.stock.kind, two.stock.kind):
            continue
        worst, width = 0.0, 0.0
        for way, span in _fixed(c, joint):
            rates = (_strain(one, way), _strain(two, way))
            if min(rates) > ACROSS:
                continue
            move = abs(rates[0] - rates[1]) * swing * span
            if move > worst:
                worst, width = move, span
        if worst <= LIMIT:
            continue
        yield Finding(
            "wood.cross-grain",
            Severity.ERROR if worst > 2 * LIMIT else Severity.WARNING,
            f"{c.label(one.id)} and {c.label(two.id)} are held together across the grain",
            joint.place,
            found=f"{c.text(width)} held; they part by {c.text(worst)} "
            f"between {m.driest:g} % and {m.wettest:g} % moisture",
            expected=f"at most {c.text(LIMIT)}",
            source=SOURCE,
            remedy=f"hold them over {c.down(width * LIMIT / worst)} or less, "
            "let one of them float (a groove without glue, or screws in slots), turn its grain, "
            "or use a sheet",
            parts=(one.id, two.id),
        )


def stock_gives(c: Context) -> Iterator[Finding]:
    """Parts thicker than their stock, larger than their sheet, or of a thickness no lumber on sale gives."""
    seen: set[tuple[str, str]] = set()
    for part in c.piece.parts:
        stock = part.stock
        thin = min(part.size)
        if thin > stock.thickness + 1e-6 or (
            stock.kind == "sheet" and abs(part.size[2] - stock.thickness) > 1e-6
        ):
            if ("thick", part.letter) in seen:
                continue
            seen.add(("thick", part.letter))
            yield Finding(
                "stock.thickness-not-given",
                Severity.ERROR,
                f"no part of `{stock.id}` can be as thick as {c.label(part.id)}",
                part.place,
                found=f"{c.text(thin)} of stock {c.text(stock.thickness)} thick",
                expected=f"at most {c.text(stock.thickness)}",
                remedy=f"name a stock {c.up(thin)} thick, or make the part {c.down(stock.thickness)} thick "
                "or less",
                parts=(part.id,),
            )
        elif stock.sheet_size is not None:
            yield from _sheet(c, part, seen)
        elif ("class", stock.id) not in seen and _no_class(c, part):
            seen.add(("class", stock.id))
            most = max(
                (k.planned for k in c.tables.lumber.values() if k.system == c.piece.units), default=0.0
            )
            yield Finding(
                "stock.no-lumber",
                Severity.ERROR,
                f"no lumber on sale planes to the thickness of `{stock.id}`",
                part.place,
                found=c.text(stock.thickness),
                expected=f"at most {c.text(most)}",
                source="lumber table",
                remedy=f"use stock {c.down(most)} thick or less, or glue it up from layers",
                parts=(part.id,),
            )


def _no_class(c: Context, part: Part) -> bool:
    return c.tables.class_for(part.stock.thickness, c.piece.units) is None


def _sheet(c: Context, part: Part, seen: set[tuple[str, str]]) -> Iterator[Finding]:
    assert part.stock.sheet_size is not None
    length, width = part.stock.sheet_size
    fits = part.size[0] <= length and part.size[1] <= width
    turned = part.size[1] <= length and part.size[0] <= width and not part.stock.grain
    if fits or turned or ("sheet", part.letter) in seen:
        return
    seen.add(("sheet", part.letter))
    yield Finding(
        "stock.larger-than-sheet",
        Severity.ERROR,
        f"{c.label(part.id)} is larger than its sheet",
        part.place,
        found=f"{c.printer.size(part.size[0])} × {c.printer.text(part.size[1])}",
        expected=f"at most {c.printer.size(length)} × {c.printer.text(width)}",
        source=part.stock.source,
        remedy="use a larger sheet (`sheet_length`, `sheet_width`), or a smaller part",
        parts=(part.id,),
    )
