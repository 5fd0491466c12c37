"""Grooves, dadoes, rabbets, notches and holes in words."""

from __future__ import annotations

from boardwright.core.poses import Vec
from boardwright.drawings.cut_words.terms import FROM, SIDE_WORDS, Printer, Said, places, stops
from boardwright.piece.cuts import Groove, Hole, Notch, Rabbet, Side


def groove(cut: Groove, size: Vec, p: Printer) -> Said:
    """A groove along the grain, a dado across it, a slot across an edge."""
    third = 3 - cut.side.axis - cut.along
    name = "dado" if cut.along == 1 and cut.side.axis == 2 else "groove"
    if (cut.along == 2 and cut.side.axis == 1) or (cut.side.axis == 0 and cut.depth > 2 * cut.width):
        name = "slot"
    unseen, seen = places([(third, f"{p.size(cut.at)} from {FROM[third]}")])
    unseen += _some(stops(cut.start, cut.end, cut.along, size[cut.along], p))
    if cut.purpose == "running":
        unseen += ("for the bar it runs on",)
    return Said(
        name,
        (f"{p.size(cut.width)} wide", f"{p.size(cut.depth)} deep"),
        f"in the {SIDE_WORDS[cut.side]}",
        unseen=unseen,
        seen=seen,
    )


def rabbet(cut: Rabbet, size: Vec, p: Printer) -> Said:
    """A rabbet; what it leaves may be a tongue."""
    third = 3 - cut.side.axis - cut.edge.axis
    name = {"tongue": "rabbet that leaves a tongue", "hinge": "gain for a hinge"}.get(cut.purpose, "rabbet")
    return Said(
        name,
        (f"{p.size(cut.width)} wide", f"{p.size(cut.depth)} deep"),
        f"along the {SIDE_WORDS[cut.edge]}, cut into the {SIDE_WORDS[cut.side]}",
        unseen=_some(stops(cut.start, cut.end, third, size[third], p)),
    )


def notch(cut: Notch, size: Vec, p: Printer) -> Said:
    """A corner cut out."""
    return Said(
        "notch",
        (f"{p.size(cut.length)} long", f"{p.size(cut.width)} wide"),
        f"at the {SIDE_WORDS[cut.end]} and {SIDE_WORDS[cut.edge]}",
    )


def hole(cut: Hole, size: Vec, p: Printer, mate: str = "its mate") -> Said:
    """A hole or a slot; `mate` is the letter of the part through which it is marked."""
    own = f"Ø {p.tool(cut.diameter)}"
    if cut.slot > 0:
        way = ("along the grain", "across the grain", "through the thickness")[cut.slot_along]
        own += f" × {p.size(cut.slot)} between centres, {way},"
    own += " through" if cut.through else f" × {p.size(cut.depth)} deep"
    more: list[str] = []
    if cut.countersink > 0:
        more.append(f"countersunk Ø {p.tool(cut.countersink)} at {cut.countersink_angle:g}°")
    if cut.counterbore > 0:
        more.append(f"counterbored Ø {p.tool(cut.counterbore)} × {p.size(cut.counterbore_depth)} deep")
    if cut.lean:
        toward = SIDE_WORDS[Side.of(cut.lean_along, cut.lean > 0)]
        more.append(f"{90 - abs(cut.lean):g}° to the {SIDE_WORDS[cut.side]}, towards the {toward}")
    if cut.side.axis != 2 and not cut.marked_through:
        more.append(f"{p.size(cut.at[1])} from {FROM[2]}")
    if cut.for_:
        more.append(f"for {cut.for_}")
    if cut.marked_through:
        more[-1:] = (
            [f"{more[-1]}; marked in place through {mate}"] if more else [f"marked in place through {mate}"]
        )
    return Said(
        "slot" if cut.slot > 0 else "", (own,), f"from the {SIDE_WORDS[cut.side]}", unseen=tuple(more)
    )


def holes_work(cuts: list[Hole], size: Vec, p: Printer, mate: str = "its mate") -> str:
    """Equal holes as one line of the work list, with all their places."""
    first = cuts[0]
    said = hole(first, size, p, mate)
    what = "slot" if first.slot > 0 else "hole"
    head = f"{len(cuts)} {what}s" if len(cuts) > 1 else what.capitalize()
    text = f"{head} drilled {said.side}: {', '.join((*said.sizes, *said.unseen))}".replace(",,", ",")
    if first.marked_through:
        return f"{text}."
    axes = [i for i in range(3) if i != first.side.axis]
    kept = axes if first.side.axis == 2 else axes[:1]
    froms = " × ".join(FROM[a] for a in kept)
    each = "; ".join(" × ".join(p.size(v) for v in c.at[: len(kept)]) for c in cuts)
    return f"{text}; from {froms}: {each}."


def _some(text: str) -> tuple[str, ...]:
    return (text,) if text else ()
