"""Boards and parts wider or thicker than the jointer, the planer and the table saw take."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from math import ceil

from boardwright.checks.context import Context
from boardwright.checks.making.kinds import MANUAL, against, grade, kinds, least_of, named
from boardwright.checks.making.panels import strip_width
from boardwright.checks.margins import Margin
from boardwright.core.findings import Finding
from boardwright.piece.records import Part


def jointer(c: Context) -> Iterator[Margin]:
    """Boards and strips over the jointer."""
    return _largest(
        c,
        "making.wide-for-jointer",
        "jointer_width",
        "width at the jointer",
        [(p, min(p.size[1], strip_width(c, p))) for p in kinds(c, wood=True)],
        "are wider than the jointer",
        lambda p, limit: (
            f"glue it up of strips {c.down(limit)} wide or less (`shop.strip_max`), or flatten one face by hand"
        ),
    )


def planer(c: Context) -> Iterator[Margin]:
    """Solid parts through the planer."""

    def remedy(p: Part, limit: float) -> str:
        parts = ceil(p.size[1] / limit)
        return (
            f"plane {parts} pieces of its width, {c.up(p.size[1] / parts)} each, before the last glue-up, or flatten "
            "it by hand"
        )

    return _largest(
        c,
        "making.wide-for-planer",
        "planer_width",
        "width at the planer",
        [(p, p.size[1]) for p in kinds(c, wood=True)],
        "are wider than the planer",
        remedy,
    )


def rip(c: Context) -> Iterator[Margin]:
    """Widths at the fence of the table saw."""
    return _largest(
        c,
        "making.wide-for-saw",
        "saw_rip",
        "width at the fence",
        [(p, p.size[1]) for p in kinds(c)],
        "are wider than the table saw rips",
        lambda p, limit: "saw it along a straight guide, or let the waste run against the fence",
    )


def depth(c: Context) -> Iterator[Margin]:
    """Thicknesses at the table saw."""
    return _largest(
        c,
        "making.thick-for-saw",
        "saw_depth",
        "thickness at the saw",
        [(p, p.size[2]) for p in kinds(c)],
        "are thicker than the table saw cuts",
        lambda p, limit: f"saw it from two faces, up to {c.up(p.size[2] / 2)} from each, or at the band saw",
    )


def measure(c: Context) -> Iterator[Margin]:
    """All of them."""
    for check in (jointer, planer, rip, depth):
        yield from check(c)


def _largest(
    c: Context,
    check: str,
    key: str,
    what: str,
    sized: list[tuple[Part, float]],
    says: str,
    remedy: Callable[[Part, float], str],
) -> Iterator[Margin]:
    def tell(parts: list[Part], sizes: list[float], limit: float) -> Finding:
        return Finding(
            check,
            grade(c, f"shop.machines.{key}"),
            f"{named(c, parts)} {says if len(parts) > 1 else says.replace('are ', 'is ', 1)}",
            parts[0].place,
            found=c.text(sizes[0]) + least_of(sizes[::-1], "thickest" if key == "saw_depth" else "widest"),
            expected=f"at most {c.text(limit)}; {MANUAL}",
            source=f"`shop.machines.{key}`"
            if f"shop.machines.{key}" in c.shop.given
            else c.tables.figure(key).reason,
            remedy=remedy(parts[0], limit),
            parts=tuple(p.id for p in parts),
        )

    return against(c, check, what, key, sized, tell, least=False)
