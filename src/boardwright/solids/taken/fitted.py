"""What the cuts of fitted joints take away."""

from __future__ import annotations

import math

from boardwright.core.poses import Vec, add, cross, scaled
from boardwright.piece.cuts import (
    BiscuitSlot,
    DovetailSlot,
    DovetailTongue,
    Fingers,
    Mortise,
    Pins,
    Side,
    Tails,
    Tenon,
)
from boardwright.solids.primitives import OVER, Body, Sweep, box, into, inward, prism, span


def mortise(cut: Mortise, size: Vec) -> list[Body]:
    """One box."""
    third = 3 - cut.side.axis - cut.along
    depth = size[cut.side.axis] if cut.through else cut.depth
    ranges = {
        cut.side.axis: into(size, cut.side, depth),
        cut.along: span(size, cut.along, cut.start, cut.end),
        third: span(size, third, cut.at, cut.at + cut.width),
    }
    return [box(ranges)]


ARC_STEPS = 48
"""Straight pieces that the arc of a biscuit slot is drawn in."""


def biscuit_slot(cut: BiscuitSlot, size: Vec) -> list[Body]:
    """A part of the cutter's disc, as thick as the cutter."""
    axis = cut.side.axis
    others = [i for i in range(3) if i != axis]
    middle, straight, long = [0.0] * 3, [0.0] * 3, [0.0] * 3
    middle[axis] = inward(size, cut.side, cut.sunk)
    for i, v in zip(others, cut.at, strict=True):
        middle[i] = v
    straight[axis] = -1.0 if cut.side.high else 1.0
    long[cut.along] = 1.0
    way, along = (straight[0], straight[1], straight[2]), (long[0], long[1], long[2])
    if cut.lean:
        lean, turn = [0.0] * 3, math.radians(cut.lean)
        lean[cut.lean_along] = 1.0
        aside = (lean[0], lean[1], lean[2])
        if cut.lean_along == cut.along:
            along = add(scaled(aside, math.cos(turn)), scaled(way, -math.sin(turn)))
        way = add(scaled(way, math.cos(turn)), scaled(aside, math.sin(turn)))
    across = cross(way, along)
    start = add((middle[0], middle[1], middle[2]), scaled(across, -cut.width / 2))

    def at(u: float, down: float) -> Vec:
        return add(start, add(scaled(along, u), scaled(way, down)))

    half = math.acos((cut.radius - cut.depth) / cut.radius)
    arc = []
    for i in range(ARC_STEPS + 1):
        turn = half * (2 * i / ARC_STEPS - 1)
        arc.append(at(cut.radius * math.sin(turn), cut.depth - cut.radius * (1 - math.cos(turn))))
    reach = cut.radius * math.sin(half)
    points = (*arc, at(reach, -OVER), at(-reach, -OVER))
    return [Sweep(points, scaled(across, cut.width), ((0, ARC_STEPS, "arc"),))]


def tenon(cut: Tenon, size: Vec) -> list[Body]:
    """A slab on each cheek, and a box for each gap between the steps and over each short one."""
    axis, third = cut.end.axis, 3 - cut.end.axis - cut.wide
    out: list[Body] = []
    for high, amount in ((False, cut.low), (True, cut.high)):
        if amount > 1e-9:
            side = Side.of(third, high)
            ranges = {
                axis: into(size, cut.end, cut.length),
                third: into(size, side, amount),
                cut.wide: (-OVER, size[cut.wide] + OVER),
            }
            out.append(box(ranges))
    for a, b, standing in _profile(cut, size[cut.wide]):
        if cut.length - standing > 1e-9 and b - a > 1e-9:
            ranges = {
                axis: into(size, cut.end, cut.length - standing),
                third: (-OVER, size[third] + OVER),
                cut.wide: span(size, cut.wide, a, b),
            }
            out.append(box(ranges))
    return out


def _profile(cut: Tenon, width: float) -> list[tuple[float, float, float]]:
    """From, to and what stands there, across the whole width [mm]."""
    out: list[tuple[float, float, float]] = []
    at = 0.0
    for a, b, standing in sorted(cut.steps):
        out += [(at, a, 0.0), (a, b, standing)]
        at = b
    return [*out, (at, width, 0.0)]


def fingers(cut: Fingers, size: Vec) -> list[Body]:
    """One box a socket."""
    axis, third = cut.end.axis, 3 - cut.end.axis - cut.wide
    return [
        box(
            {
                axis: into(size, cut.end, cut.length),
                third: (-OVER, size[third] + OVER),
                cut.wide: span(size, cut.wide, a, b),
            }
        )
        for a, b in cut.sockets
    ]


def _flared(a: float, b: float, whole: float, slope: float, depth: float) -> tuple[float, float]:
    """A socket so deep down: wider by the slope on each side, and beyond the part where it takes its edge [mm]."""
    return (
        a - OVER if a <= 1e-6 else a - slope * depth,
        b + OVER if b >= whole - 1e-6 else b + slope * depth,
    )


def tails(cut: Tails, size: Vec) -> list[Body]:
    """One trapezoid a socket, carried through."""
    axis, third = cut.end.axis, 3 - cut.end.axis - cut.wide
    out: list[Body] = []
    for a, b in cut.sockets:
        top = _flared(a, b, size[cut.wide], cut.slope, -OVER)
        bottom = _flared(a, b, size[cut.wide], cut.slope, cut.length)
        tip, base = inward(size, cut.end, -OVER), inward(size, cut.end, cut.length)
        outline = [(tip, top[0]), (tip, top[1]), (base, bottom[1]), (base, bottom[0])]
        out.append(prism((axis, cut.wide), outline, (-OVER, size[third] + OVER)))
    return out


def pins(cut: Pins, size: Vec) -> list[Body]:
    """One trapezoid a socket, seen from the end, carried in from it."""
    third = cut.side.axis
    through = cut.depth >= size[third] - 1e-6
    depth = size[third] + OVER if through else cut.depth
    out: list[Body] = []
    for a, b in cut.sockets:
        mouth = _flared(a, b, size[cut.wide], cut.slope, -OVER)
        bottom = _flared(a, b, size[cut.wide], cut.slope, depth)
        near, far = inward(size, cut.side, -OVER), inward(size, cut.side, depth)
        outline = [(near, mouth[0]), (near, mouth[1]), (far, bottom[1]), (far, bottom[0])]
        out.append(prism((third, cut.wide), outline, into(size, cut.end, cut.length)))
    return out


def dovetail_slot(cut: DovetailSlot, size: Vec) -> list[Body]:
    """One trapezoid, wide at its bottom, carried along."""
    third = 3 - cut.side.axis - cut.along
    a, b = cut.at, cut.at + cut.width
    near, far = inward(size, cut.side, -OVER), inward(size, cut.side, cut.depth)
    more, grown = OVER * cut.slope, cut.depth * cut.slope
    outline = [(near, a + more), (near, b - more), (far, b + grown), (far, a - grown)]
    return [prism((cut.side.axis, third), outline, span(size, cut.along, cut.start, cut.end))]


def dovetail_tongue(cut: DovetailTongue, size: Vec) -> list[Body]:
    """A wedge from each cheek, deepest at the shoulder."""
    axis, third = cut.end.axis, 3 - cut.end.axis - cut.wide
    tip, shoulder = inward(size, cut.end, -OVER), inward(size, cut.end, cut.length)
    reach = (-OVER, size[cut.wide] + OVER)
    out: list[Body] = []
    for high, amount in ((False, cut.low), (True, cut.high)):
        side = Side.of(third, high)
        outside = inward(size, side, -OVER)
        at_tip = inward(size, side, amount - OVER * cut.slope)
        at_neck = inward(size, side, amount + cut.length * cut.slope)
        outline = [(tip, outside), (tip, at_tip), (shoulder, at_neck), (shoulder, outside)]
        out.append(prism((axis, third), outline, reach))
    return out
