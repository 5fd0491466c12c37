"""Pegs of a mortise and tenon: how many, where, and how far their holes in the tenon lie nearer to its shoulder."""

from __future__ import annotations

from boardwright.core.poses import Vec
from boardwright.piece.drafts import Draft
from boardwright.piece.joints.areas import Range
from boardwright.piece.joints.fastening.spots import spot
from boardwright.piece.joints.pegs import Hole, add_peg, peg_diameter
from boardwright.piece.joints.settings import JointSettings
from boardwright.piece.joints.tenon_sizes import Stand
from boardwright.piece.setout import SetOut

TWO_FROM = 63.5
"""A tenon so wide has two pegs [mm]: 2 1/2 in, common practice."""
TWO = ((0.25, 0.75), (0.5,), (0.2,), (0.8,))
ONE = ((0.5,), (0.25,), (0.75,))
"""Where pegs lie in a tenon, as shares of its width: the first that is clear of other pegs (common practice)."""
APART = 3.2
"""Wood between two pegs that cross in a leg [mm]: 1/8 in, common practice."""
LEAST_LENGTH = 2.5
"""Shortest tenon that takes a peg, in diameters of the peg: common practice."""
FROM_SHOULDER = 1.5
"""From the shoulder to the middle of a peg, in its diameters: common practice."""


def pegs(
    out: SetOut,
    first: Draft,
    second: Draft,
    how: Stand,
    want: JointSettings,
    wides: list[Range],
    thicks: list[Range],
    length: float,
) -> tuple[str, ...]:
    """Peg the tenons, when that is asked for; gives the ids of the pegs.

    Args:
        out: the bench.
        first: the part with the mortise.
        second: the part with the tenons.
        how: how they stand.
        want: the joint.
        wides: where the tenons lie along the grain of the first part [mm].
        thicks: where they lie on the axis of their thickness [mm].
        length: of the tenons [mm].
    """
    keys = want.keys
    if keys is None or not (keys.pinned or (keys.pinned is None and keys.drawbore is not None)):
        return ()
    settled = out.sizer.settled
    diameter = peg_diameter(out, first.size(how.thick))
    drawn = 0.0
    if keys.drawbore is not None:
        drawn = out.sizer.size(f"{want.name}.drawbore", [(f"{want.path}.drawbore", keys.drawbore)], 0.0)
        drawn = out.at_most(
            drawn, diameter / 3, "the offset of the drawbore", f"{want.path}.drawbore", diameter
        )
    deep = settled(min(FROM_SHOULDER * diameter, length / 2), "up")
    if length < LEAST_LENGTH * diameter - 1e-6 or min(b - a for a, b in wides) < 2 * diameter - 1e-6:
        out.find(
            "fastener.none-fits",
            f"no peg fits the tenon of the {second.name}",
            want.path,
            found=f"a tenon {out.about(min(b - a for a, b in wides))} wide and {out.about(length)} long",
            expected=f"at least {out.up(2 * diameter)} wide and {out.up(LEAST_LENGTH * diameter)} long for a peg "
            f"{out.sizer.printer.tool(diameter)} thick",
            source="common practice",
            remedy="make the tenon longer or wider, or leave the pegs out",
            parts=(first.id, second.id),
        )
        return ()
    face = first.face(how.axis, how.high)
    side = first.high[how.thick]
    ids = []
    for a, b in wides:
        for along in _places(out, first, how, (a, b), diameter):

            def at(by: float, along: float = along) -> Vec:
                return spot(how.axis, how.inward(face, by), how.thick, side, how.wide, along)

            hole = Hole(at(deep), at(deep - drawn), diameter)
            ids.append(add_peg(out, first, second, how.thick, hole, want.path))
    return tuple(ids)


def _places(out: SetOut, first: Draft, how: Stand, tenon: Range, diameter: float) -> list[float]:
    """Where the pegs of a tenon lie along the grain of the mortised part [mm]: clear of pegs that cross it already."""
    a, b = tenon
    settled = out.sizer.settled
    crossing = [
        f.at[how.wide]
        for f in out.fasteners
        if f.kind == "peg" and f.held == first.id and abs(f.direction[how.thick]) < 0.5
    ]
    two = b - a >= TWO_FROM - 1e-6
    tried = [[a + settled((b - a) * share) for share in shares] for shares in (TWO if two else ONE)]
    least = diameter + APART
    clear = (
        places
        for places in tried
        if all(abs(p - other) >= least - 1e-6 for p in places for other in crossing)
        and places[0] - a >= diameter - 1e-6
        and b - places[-1] >= diameter - 1e-6
    )
    return next(clear, tried[0])
