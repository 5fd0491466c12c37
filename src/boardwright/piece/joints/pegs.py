"""Pegs through a mortise and its tenon: square across the cheeks, straight, drawbored, or in a slotted tenon."""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.poses import Vec
from boardwright.piece.drafts import Bore, Draft
from boardwright.piece.joints import cutters
from boardwright.piece.joints.faces import unit
from boardwright.piece.records import Fastener
from boardwright.piece.setout import SetOut


@dataclass(frozen=True, slots=True)
class Hole:
    """A peg hole.

    Attributes:
        at: where it is drilled in the part with the mortise, on its face [mm].
        in_tenon: where it is drilled in the tenon [mm].
        diameter: [mm].
        slot: how long the hole in the tenon is between the centres of its ends [mm]; 0 for round.
    """

    at: Vec
    in_tenon: Vec
    diameter: float
    slot: float = 0.0


def peg_diameter(out: SetOut, thick: float) -> float:
    """A third of the mortised part, as a bit is sold, within the usual range [mm].

    Args:
        out: the bench.
        thick: of the mortised part, along the peg [mm].
    """
    figure = out.tables.figure("drawbore_peg")
    low, high = figure.low or figure.value, figure.high or figure.value
    return cutters.nearest(out, min(max(thick / 3, low), high))


def add_peg(
    out: SetOut, first: Draft, second: Draft, axis: int, hole: Hole, path: str, slot_axis: int = 0
) -> str:
    """Bore both parts for a peg that goes right through the first, and keep the peg; gives its id.

    Args:
        out: the bench.
        first: the part with the mortise.
        second: the part with the tenon.
        axis: the peg lies along.
        hole: where.
        path: where the file asks for it.
        slot_axis: the hole in the tenon is a slot along this one.
    """
    length = first.size(axis)
    name = f"{out.text(hole.diameter)} x {out.sizer.printer.text(length)} peg"
    first.cuts.append(
        Bore(axis, True, hole.at, hole.diameter, length, through=True, purpose="dowel", for_=name)
    )
    second.cuts.append(
        Bore(
            axis,
            True,
            hole.in_tenon,
            hole.diameter,
            second.size(axis),
            through=True,
            slot=hole.slot,
            slot_axis=slot_axis,
            purpose="dowel",
            for_=name,
        )
    )
    head = list(hole.at)
    head[axis] = first.high[axis]
    id = f"peg.{len(out.fasteners) + 1}"
    out.fasteners.append(
        Fastener(
            id,
            "peg",
            name,
            "peg",
            (head[0], head[1], head[2]),
            unit(axis, False),
            length,
            hole.diameter,
            hole.diameter,
            first.id,
            second.id,
            hole.slot > 0,
            out.design.place(path),
        )
    )
    return id
