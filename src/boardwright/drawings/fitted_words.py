"""Fitted and shaped cuts in words, measured from the reference end, edge and face."""

from __future__ import annotations

import math
from typing import Protocol

from boardwright.core.poses import Vec
from boardwright.formulas.compound import plane_gauge, plane_tilt
from boardwright.piece.cuts import (
    Bevel,
    BiscuitSlot,
    Curve,
    DovetailSlot,
    DovetailTongue,
    Fingers,
    Fitted,
    Mortise,
    Moulding,
    Pins,
    RaisedField,
    Shaped,
    Side,
    Tails,
    Taper,
    Tenon,
)

SIDE_WORDS = {
    Side.FACE: "face",
    Side.BACK: "back face",
    Side.EDGE: "reference edge",
    Side.FAR_EDGE: "far edge",
    Side.END: "reference end",
    Side.FAR_END: "far end",
}
FROM = {0: "the reference end", 1: "the reference edge", 2: "the back face"}


class Sizes(Protocol):
    """Writes lengths (see `core.lengths.Printer`)."""

    def size(self, mm: float) -> str:
        """A length [mm] without its unit."""


def fitted_words(cut: Fitted | Shaped, size: Vec, p: Sizes) -> str:
    """One line on a cut, without a number and without what it holds.

    Args:
        cut: in the part's own frame.
        size: of the part [mm].
        p: writes lengths.
    """
    if isinstance(cut, Mortise):
        third = 3 - cut.side.axis - cut.along
        deep = "through" if cut.through else f"{p.size(cut.depth)} deep"
        return (
            f"mortise {p.size(cut.width)} × {p.size(cut.end - cut.start)}, {deep}, in the {SIDE_WORDS[cut.side]}: "
            f"{p.size(cut.start)} to {p.size(cut.end)} from {FROM[cut.along]}, "
            f"{p.size(cut.at)} from {FROM[third]}"
        )
    if isinstance(cut, BiscuitSlot):
        third = 3 - cut.side.axis - cut.along
        where = dict(zip([i for i in range(3) if i != cut.side.axis], cut.at, strict=True))
        return (
            f"slot for a {cut.for_ or 'biscuit'}, {p.size(cut.depth)} deep, in the {SIDE_WORDS[cut.side]}: "
            f"its middle {p.size(where[cut.along])} from {FROM[cut.along]}, "
            f"{p.size(where[third])} from {FROM[third]}"
        )
    if isinstance(cut, Tenon):
        return _tenon(cut, size, p)
    if isinstance(cut, Fingers | Tails | Pins):
        return _sockets(cut, p)
    if isinstance(cut, DovetailSlot):
        third = 3 - cut.side.axis - cut.along
        return (
            f"dovetail slot {p.size(cut.width)} wide at its mouth, {p.size(cut.depth)} deep, "
            f"sides 1 : {1 / cut.slope:.3g}, in the {SIDE_WORDS[cut.side]}, {p.size(cut.at)} from {FROM[third]}"
        )
    if isinstance(cut, DovetailTongue):
        return f"dovetail tongue {p.size(cut.length)} long, sides 1 : {1 / cut.slope:.3g}, at the {SIDE_WORDS[cut.end]}"
    return _shaped(cut, p)


def _tenon(cut: Tenon, size: Vec, p: Sizes) -> str:
    third = 3 - cut.end.axis - cut.wide
    thick = size[third] - cut.low - cut.high
    full = [(a, b) for a, b, long in cut.steps if long >= cut.length - 1e-6]
    short = [(a, b, long) for a, b, long in cut.steps if long < cut.length - 1e-6]
    what = "tenon" if len(full) < 2 else f"{len(full)} tenons"
    wide = "; ".join(f"{p.size(a)} to {p.size(b)}" for a, b in full)
    text = f"{what} {p.size(thick)} thick, {p.size(cut.length)} long at the {SIDE_WORDS[cut.end]}"
    text += f", {wide} from {FROM[cut.wide]}"
    if cut.low > 1e-6:
        text += f", {p.size(cut.low)} off {FROM[third]}"
    for a, b, long in short:
        text += f", haunch {p.size(long)} long from {p.size(a)} to {p.size(b)}"
    return text


def _sockets(cut: Fingers | Tails | Pins, p: Sizes) -> str:
    places = "; ".join(f"{p.size(a)} to {p.size(b)}" for a, b in cut.sockets)
    where = f"at the {SIDE_WORDS[cut.end]}, {p.size(cut.length)} deep"
    if isinstance(cut, Fingers):
        return f"fingers: sockets {where}, from {FROM[cut.wide]}: {places}"
    name = "tails" if isinstance(cut, Tails) else "pins"
    seen = "at the tip" if isinstance(cut, Tails) else f"at the {SIDE_WORDS[cut.side]}"
    deep = f", {p.size(cut.depth)} into the {SIDE_WORDS[cut.side]}" if isinstance(cut, Pins) else ""
    return f"{name}: sockets {where}{deep}, sides 1 : {1 / cut.slope:.3g}; {seen}, from {FROM[cut.wide]}: {places}"


def _shaped(cut: Shaped, p: Sizes) -> str:
    if isinstance(cut, Bevel):
        angles = [math.degrees(math.atan(v)) for v in (cut.over_u, cut.over_v)]
        u, v = (i for i in range(3) if i != cut.side.axis)
        words = [
            f"{abs(a):.4g}° over the {('length', 'width', 'thickness')[axis]}"
            for a, axis in zip(angles, (u, v), strict=True)
            if abs(a) > 1e-6
        ]
        saw = ""
        if len(words) == 2 and cut.side.axis != 2:
            gauge, tilt = abs(plane_gauge(cut.over_u)), abs(plane_tilt(cut.over_u, cut.over_v))
            saw = f" (saw: gauge {gauge:.4g}°, blade {tilt:.4g}° from square)"
        return f"{SIDE_WORDS[cut.side]} cut at {' and '.join(words)}{saw}"
    if isinstance(cut, Taper):
        return (
            f"taper on the {SIDE_WORDS[cut.side]}: {p.size(cut.depth)} at the {SIDE_WORDS[cut.end]}, "
            f"running out {p.size(cut.start)} from {FROM[cut.end.axis]}"
        )
    if isinstance(cut, Moulding):
        return f"{cut.shape} {p.size(cut.size)} where the {SIDE_WORDS[cut.side]} and the {SIDE_WORDS[cut.edge]} meet"
    if isinstance(cut, RaisedField):
        return (
            f"raised field on the {SIDE_WORDS[cut.side]}: bevels {p.size(cut.width)} wide, "
            f"tongue {p.size(cut.tongue)} thick"
        )
    if isinstance(cut, Curve):
        deepest = max(d for _, d in cut.points)
        return f"curve ({cut.shape}) on the {SIDE_WORDS[cut.side]}, at most {p.size(deepest)} deep"
    return f"V groove {p.size(cut.width)} wide, {p.size(cut.depth)} deep in the {SIDE_WORDS[cut.side]}"
