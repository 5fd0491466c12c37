"""Details of shaped ends: tenons and tongues in section; fingers, tails and pins with every place from the edge."""

from __future__ import annotations

from collections.abc import Callable
from typing import Literal

from boardwright.drawings.cut_words import Printer
from boardwright.drawings.cut_words.terms import equal_pitch, slope_text
from boardwright.drawings.layout_dims import Ask, Edge, stacked
from boardwright.drawings.part_details import OFFSET, Block, clearest, cut_away, framed, label
from boardwright.drawings.part_features import Feature
from boardwright.drawings.records import Point
from boardwright.drawings.running_dims import room, running
from boardwright.drawings.scales import scales
from boardwright.drawings.section import Window
from boardwright.piece.cuts import DovetailTongue, Fingers, Pins, Side, Tails, Tenon
from boardwright.piece.records import Part

BEYOND = 6.0
"""Wood shown beyond a shoulder [mm on paper]."""
LONGEST, THICKEST = 40.0, 26.0
"""The largest tenon and the largest thickness before the next smaller scale is taken [mm on paper]."""
WIDEST = 150.0
"""The widest end before the next smaller scale is taken [mm on paper]."""
MOST_WIDE = 164.0
"""Room for the texts of running dimensions [mm on paper]."""


def ends(part: Part, found: list[Feature], printer: Printer) -> list[Block]:
    """One detail for each shaped end, under its number."""
    out = []
    for f in found:
        cut = f.cuts[0]
        if isinstance(cut, Tenon | DovetailTongue):
            out.append(_standing(part, cut, f.number, printer))
        elif isinstance(cut, Fingers | Tails | Pins):
            out.append(_row(part, cut, f.number, printer))
    return out


def _standing(part: Part, cut: Tenon | DovetailTongue, number: int, printer: Printer) -> Block:
    """A tenon or a tongue cut through along it: length, thickness, shoulders."""
    axis, third = cut.end.axis, 3 - cut.end.axis - cut.wide
    whole, thick = part.size[axis], part.size[third]
    tries = (0.5, *scales(printer.units))
    s = next((t for t in tries if cut.length / t <= LONGEST and thick / t <= THICKEST), tries[-1])
    reach = min(whole, cut.length + BEYOND * s)
    near, far = (whole - reach, whole) if cut.end.high else (0.0, reach)
    level = axis < third
    window = (near, 0.0, far, thick) if level else (0.0, near, thick, far)

    def flat(p: Point) -> Point:
        return ((p[0] - window[0]) / s, (p[1] - window[1]) / s)

    def spot(e: float, t: float) -> Point:
        return flat((e, t) if level else (t, e))

    tip = whole if cut.end.high else 0.0
    shoulder = whole - cut.length if cut.end.high else cut.length
    along: Edge = "above" if level else "right"
    at_tip: Edge = "right" if level else "above"
    at_neck: Edge = "left" if level else "below"
    if not cut.end.high:
        at_tip, at_neck = at_neck, at_tip
    clear: Literal["before", "after"] = "before" if cut.end.high else "after"
    low, high = cut.low, thick - cut.high
    asks = [
        Ask(spot(shoulder, thick), spot(tip, thick), printer.size(cut.length), along, clear),
        Ask(spot(tip, low), spot(tip, high), printer.auxiliary(high - low), at_tip, "after"),
    ]
    if low > 1e-6:
        asks.append(Ask(spot(tip, 0.0), spot(tip, low), printer.auxiliary(low), at_tip))
    note = ""
    if isinstance(cut, DovetailTongue):
        more = cut.length * cut.slope
        a, b = low + more, high - more
        asks.append(Ask(spot(shoulder, a), spot(shoulder, b), printer.auxiliary(b - a), at_neck))
        note = slope_text(cut.slope)
    full = [(0.0, part.size[cut.wide])]
    if isinstance(cut, Tenon):
        full = [(p, q) for p, q, long in cut.steps if long >= cut.length - 1e-6] or full
    at = clearest(part, cut.wide, *full[0])
    entities = cut_away(part, cut.wide, at, window, flat)
    a0, b0 = flat((window[0], window[1])), flat((window[2], window[3]))
    entities += stacked(asks, (a0[0], a0[1], b0[0], b0[1]), OFFSET, 6.0)
    return framed(entities, [number], label(s, note))


def _row(part: Part, cut: Fingers | Tails | Pins, number: int, printer: Printer) -> Block:
    """An end with its sockets, the reference edge to the left, all places over it."""
    third = 3 - cut.end.axis - cut.wide
    whole = part.size[cut.wide]
    tries = scales(printer.units)
    s = next((t for t in tries if whole / t <= WIDEST), tries[-1])
    if isinstance(cut, Pins):
        across, up, side, deep, shown = cut.end.axis, third, cut.side, cut.depth, part.size[third]
        middle = cut.length / 2
        at = part.size[across] - middle if cut.end.high else middle
    else:
        across, up, side, deep = third, cut.end.axis, cut.end, cut.length
        shown = min(part.size[up], cut.length + BEYOND * s)
        at = part.size[third] / 2
    flat, window = _turned(part, cut.wide, up, side, shown, s)
    entities = cut_away(part, across, at, window, flat)
    top = shown / s
    places = _places(cut, whole)
    said = [(v / s, printer.auxiliary(v)) for v in places]
    middle_x = whole / s / 2
    half = max(whole / s, room(len(said))) / 2
    entities += running(said, top, middle_x - half, middle_x + half)
    right = whole / s
    asks = [Ask((right, top - deep / s), (right, top), printer.size(deep), "right")]
    if isinstance(cut, Pins) and shown - deep > 1e-6:
        asks.append(
            Ask((right, 0.0), (right, top - deep / s), printer.auxiliary(shown - deep), "right", "after")
        )
    entities += stacked(asks, (0.0, 0.0, right, top), OFFSET, 6.0)
    note = "" if isinstance(cut, Fingers) else slope_text(cut.slope)
    if isinstance(cut, Fingers) and len(places) < len(cut.sockets):
        note = f"sockets every {printer.size(equal_pitch(cut.sockets))}"
    return framed(entities, [number], label(s, note))


def _turned(
    part: Part, wide: int, up: int, side: Side, shown: float, s: float
) -> tuple[Callable[[Point], Point], Window]:
    """From a section to the paper with `wide` to the right and `side` on top, and the window that is shown."""
    whole = part.size[up]
    near, far = (whole - shown, whole) if side.high else (0.0, shown)
    window = (0.0, near, part.size[wide], far) if wide < up else (near, 0.0, far, part.size[wide])

    def flat(p: Point) -> Point:
        w, u = p if wide < up else (p[1], p[0])
        return (w / s, (u - near) / s if side.high else (far - u) / s)

    return flat, window


def _places(cut: Fingers | Tails | Pins, whole: float) -> list[float]:
    """Both edges of every socket, from the reference edge; of too many the first and the last."""
    found = sorted({round(v, 6) for span in cut.sockets for v in span if 1e-6 < v < whole - 1e-6})
    if room(len(found)) > MOST_WIDE:
        found = [*found[:6], found[-1]]
    return [0.0, *found]
