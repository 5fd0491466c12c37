"""What channels, steps, notches and holes take away."""

from __future__ import annotations

import math

from boardwright.core.poses import Vec, add, scaled
from boardwright.piece.cuts import Groove, Hole, Notch, Rabbet
from boardwright.solids.primitives import OVER, Body, Round, Sweep, box, into, span


def groove(cut: Groove, size: Vec) -> list[Body]:
    """One box."""
    third = 3 - cut.side.axis - cut.along
    ranges = {
        cut.side.axis: into(size, cut.side, cut.depth),
        cut.along: span(size, cut.along, cut.start, cut.end),
        third: span(size, third, cut.at, cut.at + cut.width),
    }
    return [box(ranges)]


def rabbet(cut: Rabbet, size: Vec) -> list[Body]:
    """One box."""
    third = 3 - cut.side.axis - cut.edge.axis
    ranges = {
        cut.side.axis: into(size, cut.side, cut.depth),
        cut.edge.axis: into(size, cut.edge, cut.width),
        third: span(size, third, cut.start, cut.end),
    }
    return [box(ranges)]


def notch(cut: Notch, size: Vec) -> list[Body]:
    """One box."""
    ranges = {
        0: into(size, cut.end, cut.length),
        1: into(size, cut.edge, cut.width),
        2: (-OVER, size[2] + OVER),
    }
    return [box(ranges)]


def hole(cut: Hole, size: Vec) -> list[Body]:
    """A round; with a countersink a cone, with a counterbore a wider round; a slot has a box between two."""
    axis = cut.side.axis
    a, b = (i for i in range(3) if i != axis)
    sign = -1.0 if cut.side.high else 1.0
    surface = size[axis] if cut.side.high else 0.0
    r = cut.diameter / 2
    lean = math.tan(math.radians(cut.lean))
    stretch = math.hypot(1.0, lean)
    deep = size[axis] + OVER if cut.through else cut.depth

    def point(along: float, ca: float, cb: float) -> Vec:
        v = [0.0, 0.0, 0.0]
        v[axis], v[a], v[b] = along, ca, cb
        return (v[0], v[1], v[2])

    way = [0.0, 0.0, 0.0]
    way[axis] = sign / stretch
    if cut.lean:
        way[cut.lean_along] = lean / stretch
    ahead = (way[0], way[1], way[2])

    def round_(centre: tuple[float, float], back: float, length: float, r0: float, r1: float) -> Round:
        start = add(point(surface, *centre), scaled(ahead, -back))
        return Round(start, ahead, length + back, r0, r1)

    centres = [cut.at]
    out: list[Body] = []
    if cut.slot > 0:
        shift = cut.slot / 2
        da, db = (shift, 0.0) if cut.slot_along == a else (0.0, shift)
        centres = [(cut.at[0] - da, cut.at[1] - db), (cut.at[0] + da, cut.at[1] + db)]
        ranges = {
            axis: into(size, cut.side, deep),
            a: (cut.at[0] - (da or r), cut.at[0] + (da or r)),
            b: (cut.at[1] - (db or r), cut.at[1] + (db or r)),
        }
        out.append(box(ranges))
    along = deep * stretch + (r * lean if cut.through else 0.0)
    for centre in centres:
        out.append(round_(centre, OVER * stretch + r * abs(lean), along, r, r))
        if cut.countersink > cut.diameter:
            top = cut.countersink / 2
            slope = math.tan(math.radians(cut.countersink_angle / 2))
            out.append(round_(centre, 0.0, (top - r) / slope, top, r))
        if cut.counterbore > cut.diameter:
            wide = cut.counterbore / 2
            out.append(
                round_(centre, OVER * stretch + wide * abs(lean), cut.counterbore_depth * stretch, wide, wide)
            )
    if cut.slot > 0 and cut.countersink > cut.diameter:
        out.append(_slot_sink(cut, point(surface, *cut.at), sign))
    return out


def _slot_sink(cut: Hole, mouth: Vec, sign: float) -> Sweep:
    """The straight part of a countersunk slot: a bar of trapezoid section."""
    axis, across = cut.side.axis, 3 - cut.side.axis - cut.slot_along
    deep = (cut.countersink - cut.diameter) / 2 / math.tan(math.radians(cut.countersink_angle / 2))
    outline = []
    for down, wide in (
        (0.0, -cut.countersink / 2),
        (0.0, cut.countersink / 2),
        (deep, cut.diameter / 2),
        (deep, -cut.diameter / 2),
    ):
        v = list(mouth)
        v[cut.slot_along] -= cut.slot / 2
        v[axis] += sign * down
        v[across] += wide
        outline.append((v[0], v[1], v[2]))
    way = [0.0, 0.0, 0.0]
    way[cut.slot_along] = cut.slot
    return Sweep(tuple(outline), (way[0], way[1], way[2]))
