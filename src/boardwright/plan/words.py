"""Cuts in the words of the shop, measured from the reference end, edge and face, as the drawings show them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from boardwright.core.lengths import Printer
from boardwright.drawings.fitted_words import fitted_words
from boardwright.piece.cuts import Cut, Groove, Hole, Notch, Rabbet, Side, holds
from boardwright.piece.records import Part

SIDE_WORDS = {
    Side.FACE: "face",
    Side.BACK: "other face",
    Side.EDGE: "reference edge",
    Side.FAR_EDGE: "other edge",
    Side.END: "reference end",
    Side.FAR_END: "other end",
}
FROM = {0: "the reference end", 1: "the reference edge", 2: "the other face"}


def work_lines(part: Part, printer: Printer, letters: Mapping[str, str]) -> list[str]:
    """What to do to a part, one line a cut; equal holes are counted together.

    Args:
        part: one part of the kind.
        printer: writes lengths.
        letters: part id → letter.
    """
    lines: list[str] = []
    holes: dict[tuple[object, ...], list[Hole]] = {}
    for cut in part.cuts:
        if isinstance(cut, Hole):
            key = (
                cut.marked_through,
                cut.side,
                cut.diameter,
                cut.depth,
                cut.countersink,
                cut.counterbore,
                cut.counterbore_depth,
                cut.lean,
                cut.lean_along,
                cut.slot,
                cut.through,
                cut.for_,
            )
            holes.setdefault(key, []).append(cut)
        else:
            lines.append(_line(cut, part, printer, letters))
    lines += [_holes(group, printer, letters) for group in holes.values()]
    return lines


def _holds(id: str, letters: Mapping[str, str]) -> str:
    if not id:
        return ""
    return f", for {letters[id]}" if id in letters else ""


def _line(cut: Cut, part: Part, p: Printer, letters: Mapping[str, str]) -> str:
    if isinstance(cut, Groove):
        return _groove(cut, part, p, letters)
    if isinstance(cut, Rabbet):
        third = 3 - cut.side.axis - cut.edge.axis
        word = "Tongue: rabbet" if cut.purpose == "tongue" else "Rabbet"
        return (
            f"{word} along the {SIDE_WORDS[cut.edge]}, in the {SIDE_WORDS[cut.side]}: {p.size(cut.width)} wide, "
            f"{p.size(cut.depth)} deep{_run(cut.start, cut.end, part.size[third], third, p)}"
            f"{_holds(cut.holds, letters)}."
        )
    if not isinstance(cut, Notch):
        assert not isinstance(cut, Hole)
        words = fitted_words(cut, part.size, p)
        return f"{words[0].upper()}{words[1:]}{_holds(holds(cut), letters)}."
    return (
        f"Notch at the {SIDE_WORDS[cut.end]} and the {SIDE_WORDS[cut.edge]}: {p.size(cut.length)} along the grain, "
        f"{p.size(cut.width)} across{_holds(cut.holds, letters)}."
    )


def _groove(cut: Groove, part: Part, p: Printer, letters: Mapping[str, str]) -> str:
    third = 3 - cut.side.axis - cut.along
    word = groove_word(cut)
    holds = _holds(cut.holds, letters)
    if cut.purpose == "running":
        holds = ", for the bar it runs on"
    return (
        f"{word} in the {SIDE_WORDS[cut.side]}: {p.size(cut.width)} wide, {p.size(cut.depth)} deep, "
        f"{p.size(cut.at)} from {FROM[third]}{_run(cut.start, cut.end, part.size[cut.along], cut.along, p)}{holds}."
    )


def groove_word(cut: Groove) -> str:
    """`Groove` along the grain, `Dado` across it, `Stopped` when it ends inside the part."""
    return "Groove" if cut.along == 0 or cut.side.axis == 0 else "Dado"


def _run(start: float, end: float, size: float, axis: int, p: Printer) -> str:
    if start <= 1e-6 and end >= size - 1e-6:
        return ""
    if start <= 1e-6:
        return f", stopped {p.size(end)} from {FROM[axis]}"
    if end >= size - 1e-6:
        return f", from {p.size(start)} off {FROM[axis]} to the far side"
    return f", stopped at both ends, {p.size(start)} to {p.size(end)} from {FROM[axis]}"


def _holes(group: Sequence[Hole], p: Printer, letters: Mapping[str, str]) -> str:
    h = group[0]
    axes = [i for i in range(3) if i != h.side.axis]
    count = f"{len(group)} holes" if len(group) > 1 else "Hole"
    if h.slot > 0:
        count = f"{len(group)} slots" if len(group) > 1 else "Slot"
    size = f"{p.tool(h.diameter)} diameter"
    if h.slot > 0:
        size += f", {p.size(h.slot)} long between centres"
    deep = "through" if h.through else f"{p.size(h.depth)} deep"
    sink = f", countersunk to {p.tool(h.countersink)}" if h.countersink > 0 else ""
    if h.counterbore > 0:
        sink += f", counterbored {p.tool(h.counterbore)} diameter, {p.size(h.counterbore_depth)} deep"
    if h.lean:
        toward = SIDE_WORDS[Side.of(h.lean_along, h.lean > 0)]
        sink += (
            f", leaning: at {90 - abs(h.lean):g}° to the {SIDE_WORDS[h.side]}, towards the {toward}, "
            "depths measured square to it"
        )
    if h.marked_through:
        mate = letters.get(h.marked_through, "its mate")
        return (
            f"{count} in the {SIDE_WORDS[h.side]}, {size}, {deep}, for {h.for_}; "
            f"marked in place through the holes of {mate}."
        )
    places = "; ".join(" × ".join(p.size(v) for v in hole.at) for hole in group)
    froms = " × ".join(FROM[a].removeprefix("the ") for a in axes)
    what = f", for {h.for_}" if h.for_ else ""
    return f"{count} in the {SIDE_WORDS[h.side]}, {size}, {deep}{sink}{what}; from {froms}: {places}."
