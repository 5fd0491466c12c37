"""Mortises, tenons, biscuit slots and finger joints in words."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from boardwright.core.poses import Vec
from boardwright.drawings.cut_words.terms import (
    EPS,
    FROM,
    SIDE_WORDS,
    Printer,
    Said,
    between,
    places,
    spans_text,
)
from boardwright.piece.cuts import BiscuitSlot, Fingers, Mortise, Side, Tenon


def mortise(cut: Mortise, size: Vec, p: Printer) -> Said:
    """A mortise: its length from the reference end or edge, its near cheek from the back face."""
    third = 3 - cut.side.axis - cut.along
    low, high = cut.start <= EPS, cut.end >= size[cut.along] - EPS
    where = f"{p.size(cut.start)} to {p.size(cut.end)} from {FROM[cut.along]}"
    if low or high:
        where += f", open at the {SIDE_WORDS[Side.of(cut.along, high)]}"
    unseen, seen = places([(cut.along, where), (third, f"near cheek {p.size(cut.at)} from {FROM[third]}")])
    sizes = (f"{p.size(cut.width)} wide", f"{p.size(cut.end - cut.start)} long")
    side = f"in the {SIDE_WORDS[cut.side]}"
    if cut.through:
        return Said("mortise", sizes, side, ("through",), unseen, seen)
    return Said("mortise", (*sizes, f"{p.size(cut.depth)} deep"), side, (), unseen, seen)


def biscuit_slot(cut: BiscuitSlot, size: Vec, p: Printer) -> Said:
    """A slot for a biscuit, by its middle."""
    axes = [i for i in range(3) if i != cut.side.axis]
    said = [(a, f"middle {p.size(v)} from {FROM[a]}") for a, v in zip(axes, cut.at, strict=True)]
    unseen, seen = places(said)
    if cut.lean:
        unseen, seen = (*(words for _, words in said), "marked on both parts together"), ()
    return Said(
        f"slot for a {cut.for_ or 'biscuit'}",
        (f"{p.size(cut.depth)} deep",),
        f"square into the mitred face of the {SIDE_WORDS[cut.side]}"
        if cut.lean
        else f"in the {SIDE_WORDS[cut.side]}",
        unseen=unseen,
        seen=seen,
    )


def biscuit_slots_work(cuts: list[BiscuitSlot], size: Vec, p: Printer, held: Iterable[str]) -> str:
    """Equal slots for biscuits as one line of the work list, with all their middles."""
    first = cuts[0]
    words = biscuit_slot(first, size, p)
    if len(cuts) == 1:
        return words.work(held)
    axes = [i for i in range(3) if i != first.side.axis]
    kept = [n for n, axis in enumerate(axes) if axis != 2]
    froms = " × ".join(FROM[axes[n]] for n in kept)
    each = "; ".join(" × ".join(p.size(c.at[n]) for n in kept) for c in cuts)
    name = words.name.removeprefix("slot for a ")
    many = replace(words, name=f"{len(cuts)} slots for {name}s", seen=(f"middles from {froms}: {each}",))
    return many.work(held)


def tenon(cut: Tenon, size: Vec, p: Printer) -> Said:
    """A tenon with its shoulders; a haunch or a stub beside it."""
    third = 3 - cut.end.axis - cut.wide
    full = [(a, b) for a, b, long in cut.steps if long >= cut.length - EPS]
    short = [(a, b, long) for a, b, long in cut.steps if long < cut.length - EPS]
    thick = f"{p.auxiliary(size[third] - cut.low - cut.high)} thick"
    wide = " and ".join(dict.fromkeys(f"{p.size(b - a)} wide" for a, b in full))
    sizes = (thick, wide, f"{p.size(cut.length)} long")
    shoulder = size[cut.end.axis] - cut.length if cut.end.high else cut.length
    said = [
        (third, _shoulders(cut, third, p)),
        (cut.end.axis, f"shoulder {p.size(shoulder)} from {FROM[cut.end.axis]}"),
        (cut.wide, f"{spans_text(full, p)} from {FROM[cut.wide]}"),
    ]
    for long in dict.fromkeys(long for _, _, long in short):
        spans = sorted((a, b) for a, b, other in short if other == long)
        what = "haunch" if len(spans) == 1 else "tongue"
        said.append((2, f"{what} {p.size(long)} long, {spans_text(spans, p)} from {FROM[cut.wide]}"))
    unseen, seen = places(said)
    name = "tenon" if len(full) < 2 else f"{len(full)} tenons"
    where = "at" if cut.end.axis == 0 else "along"
    side = f"{where} the {SIDE_WORDS[cut.end]}"
    return Said(name, tuple(w for w in sizes if w), side, unseen=unseen, seen=seen, link="into")


def _shoulders(cut: Tenon, third: int, p: Printer) -> str:
    low, high = SIDE_WORDS[Side.of(third, False)], SIDE_WORDS[Side.of(third, True)]
    if cut.low <= EPS and cut.high <= EPS:
        return f"no shoulder on the {low} and the {high}"
    if cut.low <= EPS or cut.high <= EPS:
        bare, cut_back, amount = (low, high, cut.high) if cut.low <= EPS else (high, low, cut.low)
        return f"shoulder {p.auxiliary(amount)} on the {cut_back}, flush with the {bare}"
    if abs(cut.low - cut.high) < EPS:
        return (
            f"shoulders {p.auxiliary(cut.low)} on both faces"
            if third == 2
            else (f"shoulders {p.auxiliary(cut.low)} on both edges")
        )
    return f"shoulders {p.auxiliary(cut.low)} on the {low} and {p.auxiliary(cut.high)} on the {high}"


def fingers(cut: Fingers, size: Vec, p: Printer) -> Said:
    """Sockets of a finger joint."""
    widths = {round(b - a, 4) for a, b in cut.sockets}
    sizes = [f"{p.size(cut.length)} deep"]
    if len(widths) == 1:
        sizes.insert(0, f"{p.size(cut.sockets[0][1] - cut.sockets[0][0])} wide")
    n = len(cut.sockets)
    return Said(
        "socket for a finger" if n == 1 else f"{n} sockets for fingers",
        tuple(sizes),
        f"at the {SIDE_WORDS[cut.end]}",
        seen=(
            f"sockets from {FROM[cut.wide]}: {spans_text(sorted(cut.sockets), p)}",
            f"fingers that stand: {spans_text(between(cut.sockets, size[cut.wide]), p)}",
        ),
    )
