"""Parts by kind, and how what is too small or too large for a machine is said."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from boardwright.checks.context import Context
from boardwright.checks.margins import Margin
from boardwright.core.findings import Finding, Severity
from boardwright.piece.records import Part

MANUAL = "the machine's manual comes first"
LISTED = 4
"""So many kinds of parts are named, and the rest counted."""


def kinds(c: Context, wood: bool = False) -> list[Part]:
    """One part of each letter, of wood alone or of all that is sawn; glass is bought cut."""
    seen: dict[str, Part] = {}
    for p in c.piece.parts:
        if (not wood or p.stock.kind == "wood") and "glass" not in p.stock.table_key:
            seen.setdefault(p.letter, p)
    return list(seen.values())


def named(c: Context, parts: Iterable[Part]) -> str:
    """Parts in words, e.g. `bar N, key P and 2 others`."""
    labels = [c.label(p.id) for p in parts]
    if len(labels) > LISTED:
        labels = [*labels[: LISTED - 1], f"{len(labels) - LISTED + 1} others"]
    return labels[0] if len(labels) == 1 else ", ".join(labels[:-1]) + " and " + labels[-1]


def small(c: Context, p: Part) -> str:
    """Code of the check that speaks of a part too small for the machines: it is told once, not of each side."""
    for code, size, limit in (
        ("making.short", p.size[0], shortest(c)[1] if by_its_end(c, p) else 0.0),
        ("making.thin", p.size[2], c.shop.machines["planer_thinnest"] if p.stock.kind == "wood" else 0.0),
        ("making.narrow", p.size[1], c.shop.machines["saw_narrowest"]),
    ):
        if size < limit - 1e-6:
            return code
    return ""


def by_its_end(c: Context, p: Part) -> bool:
    """True for a part that is crosscut with its edge to the fence of a sled; a wide one runs along the rip fence."""
    return p.size[1] < c.shop.machines["saw_shortest_rip"]


def shortest(c: Context) -> tuple[str, float]:
    """The saw that crosscuts the shortest parts: its key, and how short they may be [mm]."""
    key = min(("saw_shortest_crosscut", "mitre_saw_shortest"), key=lambda k: c.shop.machines[k])
    return key, c.shop.machines[key]


def measured(c: Context, p: Part) -> str:
    """A small part's three sizes."""
    return f"{c.text(p.size[0])} long, {c.text(p.size[1])} wide, {c.text(p.size[2])} thick"


def blank(c: Context, sizes: list[float], more: float, way: str) -> str:
    """The blank for small parts, e.g. `8 in or more long`: a part is so much shorter than its own blank.

    Args:
        c: the piece.
        sizes: of the parts, the smallest first [mm].
        more: that a blank has over its part [mm].
        way: `long` or `wide`.
    """
    if abs(sizes[-1] - sizes[0]) < 1e-6:
        return f"{c.up(more + sizes[0])} or more {way}"
    return f"{c.up(more)} or more {'longer' if way == 'long' else 'wider'} than itself"


def least_of(sizes: list[float], word: str) -> str:
    """What stands behind the first of several sizes that are not alike, e.g. `, the narrowest`."""
    return f", the {word}" if abs(sizes[-1] - sizes[0]) > 1e-6 else ""


def grade(c: Context, *paths: str) -> Severity:
    """A limit that the file gives may fail; one that is assumed is worth knowing."""
    return Severity.WARNING if any(p in c.shop.given for p in paths) else Severity.NOTE


def against(
    c: Context,
    check: str,
    what: str,
    key: str,
    sized: Iterable[tuple[Part, float]],
    tell: Callable[[list[Part], list[float], float], Finding],
    least: bool = True,
) -> Iterator[Margin]:
    """Sizes of parts beside what a machine takes: the nearest to its limit, and one finding for all beyond it.

    Args:
        c: the piece.
        check: code.
        what: what is figured.
        key: of the shop's machines.
        sized: parts and their size there [mm].
        tell: makes the finding from the parts beyond, their sizes and the limit.
        least: the limit is the smallest that the machine takes, else the largest.
    """
    limit = c.shop.machines[key]
    ordered = sorted(sized, key=lambda s: s[1] if least else -s[1])
    if not ordered:
        return
    beyond = [(p, v) for p, v in ordered if (v < limit - 1e-6 if least else v > limit + 1e-6)]
    parts, values = [p for p, _ in beyond], [v for _, v in beyond]
    yield Margin(
        check,
        tuple(p.id for p in parts) or (ordered[0][0].id,),
        what,
        ordered[0][1],
        limit,
        "mm",
        least,
        tell=lambda: tell(parts, values, limit),
    )
