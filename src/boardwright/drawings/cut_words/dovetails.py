"""Dovetails and sliding dovetails in words: where tails and pins are laid out, and their slope."""

from __future__ import annotations

from boardwright.core.poses import Vec
from boardwright.drawings.cut_words.terms import (
    EPS,
    FROM,
    SIDE_WORDS,
    Printer,
    Said,
    between,
    places,
    slope_text,
    spans_text,
    stops,
)
from boardwright.piece.cuts import DovetailSlot, DovetailTongue, Pins, Side, Tails


def tails(cut: Tails, size: Vec, p: Printer) -> Said:
    """Tails: laid out at their tips, where they are widest."""
    whole = size[cut.wide]
    standing = between(cut.sockets, whole)
    return Said(
        f"{len(standing)} tails" if len(standing) != 1 else "tail",
        (f"{p.size(cut.length)} long",),
        f"at the {SIDE_WORDS[cut.end]}",
        (f"slope {slope_text(cut.slope)}",),
        (),
        (f"at the tip they stand from {spans_text(standing, p)} from {FROM[cut.wide]}",),
        "for the pins of",
        (f"Base line {p.size(cut.length)} from the {SIDE_WORDS[cut.end]}.",),
    )


def pins(cut: Pins, size: Vec, p: Printer) -> Said:
    """Pins: laid out on the side that the tails go in from, where the pins are widest."""
    whole = size[cut.wide]
    standing = between(cut.sockets, whole)
    lap = size[cut.side.axis] - cut.depth
    unseen: tuple[str, ...] = ()
    name = "pins"
    if lap > EPS:
        name = "half-blind pins"
        unseen = (f"{p.size(cut.depth)} deep, a lap of {p.auxiliary(lap)} stays",)
    return Said(
        f"{len(standing)} {name}",
        (f"{p.size(cut.length)} long",),
        f"at the {SIDE_WORDS[cut.end]}, sockets cut into the {SIDE_WORDS[cut.side]}",
        (f"slope {slope_text(cut.slope)}",),
        unseen,
        (
            f"on the {SIDE_WORDS[cut.side]} the pins stand from {spans_text(standing, p)} from {FROM[cut.wide]}",
        ),
        "for the tails of",
        (f"Base line {p.size(cut.length)} from the {SIDE_WORDS[cut.end]}.",),
    )


def slot(cut: DovetailSlot, size: Vec, p: Printer) -> Said:
    """The slot of a sliding dovetail: narrow at its mouth."""
    third = 3 - cut.side.axis - cut.along
    bottom = cut.width + 2 * cut.depth * cut.slope
    unseen, seen = places(
        [(third, f"mouth {p.size(cut.at)} to {p.size(cut.at + cut.width)} from {FROM[third]}")]
    )
    stopped = stops(cut.start, cut.end, cut.along, size[cut.along], p)
    return Said(
        "dovetail slot",
        (
            f"{p.auxiliary(cut.width)} wide at the mouth",
            f"{p.auxiliary(bottom)} at the bottom",
            f"{p.size(cut.depth)} deep",
        ),
        f"in the {SIDE_WORDS[cut.side]}",
        (f"slope {slope_text(cut.slope)}",),
        (*unseen, *((stopped,) if stopped else ())),
        seen,
    )


def tongue(cut: DovetailTongue, size: Vec, p: Printer) -> Said:
    """The tongue of a sliding dovetail: wide at its tip."""
    third = 3 - cut.end.axis - cut.wide
    tip = size[third] - cut.low - cut.high
    neck = tip - 2 * cut.length * cut.slope
    shoulder = size[cut.end.axis] - cut.length if cut.end.high else cut.length
    said = [(cut.end.axis, f"shoulder {p.size(shoulder)} from {FROM[cut.end.axis]}")]
    if abs(cut.low - cut.high) > EPS:
        near = SIDE_WORDS[Side.of(third, False)]
        said.append((third, f"its tip {p.auxiliary(cut.low)} off the {near}"))
    unseen, seen = places(said)
    return Said(
        "dovetail tongue",
        (
            f"{p.auxiliary(tip)} thick at the tip",
            f"{p.auxiliary(neck)} at the shoulder",
            f"{p.size(cut.length)} long",
        ),
        f"{'at' if cut.end.axis == 0 else 'along'} the {SIDE_WORDS[cut.end]}",
        (f"slope {slope_text(cut.slope)}",),
        unseen,
        seen,
        "into",
    )
