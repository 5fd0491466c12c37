"""How far a lying panel sags and how hard it is bent, on its real section and supports."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from boardwright.checks.context import Context
from boardwright.checks.held import Hold, Panel, Span
from boardwright.checks.stiffness import Stiffness, stiffness
from boardwright.formulas.beams import LOADINGS, deflection, second_moment
from boardwright.formulas.sections import neutral_axis, section_stiffness, shared_sag
from boardwright.piece.cuts import Groove, Rabbet
from boardwright.piece.records import Part

EVEN = LOADINGS["uniform"]
DEEP = 3.0
"""A support higher than its length over this does not bend."""


@dataclass(frozen=True, slots=True)
class Bent:
    """A panel under an even load.

    Attributes:
        span: the clear way that the limit is counted on [mm].
        first: sag when the load is put on [mm]. last: after ten years [mm].
        stress: the greatest beside what is allowed, and `allowed` [MPa]; None where no strength is published.
        shear: greatest, of a rectangle [MPa]. stiff: of its stock, along the way it mostly bends.
        rail: id of the support that bends more than the panel, or "".
    """

    span: float
    first: float
    last: float
    stress: float
    allowed: float | None
    shear: float
    stiff: Stiffness
    rail: str


@dataclass(frozen=True, slots=True)
class _Way:
    """One way a panel bends: sag of its strip [mm] and of what holds it [mm], and what the section is."""

    span: Span
    length: float
    strip: float
    rails: float
    rail: str
    rail_length: float
    stiff: Stiffness
    EI: float
    axis: float
    high: float


def bent(c: Context, panel: Panel, load: float) -> Bent | None:
    """A panel under an even load [N/mm2]; None where its stock has no modulus."""
    ways = [w for s in panel.spans if (w := _way(c, panel.part, s, load)) is not None]
    if not ways or len(ways) < len(panel.spans):
        return None
    sags = [w.strip + w.rails for w in ways]
    best = min(range(len(ways)), key=lambda i: sags[i])
    way = ways[best]
    first = shared_sag(sags[0], sags[1]) if len(ways) == 2 else sags[0]
    by_rail = way.rails > way.strip
    t = panel.part.size[2]
    loaded = [
        (w, load * w.length * w.span.width * (first / sag if sag > 0 else 1.0))
        for w, sag in zip(ways, sags, strict=True)
    ]
    hard = [(_stress(panel.part, w, W), w.stiff.bending) for w, W in loaded]
    stress, allowed = max(hard, key=lambda h: h[0] / h[1] if h[1] else 0.0)
    return Bent(
        way.rail_length if by_rail else way.length,
        first,
        first * (1 + way.stiff.creep),
        stress,
        allowed,
        max(0.75 * W / (w.span.width * t) for w, W in loaded),
        way.stiff,
        way.rail if by_rail else "",
    )


def _way(c: Context, part: Part, span: Span, load: float) -> _Way | None:
    along = abs(part.pose.x[span.axis]) > 0.7
    stiff = stiffness(c, part.stock, along, part.size[2])
    if stiff is None:
        return None
    length = span.length
    E, b, low, high = _section(part, span, stiff.E)
    EI = section_stiffness(E, b, low, high) + _strips(c, span)
    axis = neutral_axis(E, b, low, high)
    W = load * length * span.width
    strip = deflection(W, length, 1.0, EI, float("inf"), EVEN.kb, EVEN.ks)
    rails, rail, rail_length = _rails(c, part, span, W)
    return _Way(span, length, strip, rails, rail, rail_length, stiff, EI, axis, max(high))


Section = tuple[list[float], list[float], list[float], list[float]]


def _section(part: Part, span: Span, E: float) -> Section:
    """The rectangles of a section across the span: the panel where it is whole and where a channel runs along it."""
    t = part.size[2]
    lost = _channels(part, span)
    whole = max(0.0, span.width - sum(w for w, _, _ in lost))
    out: Section = ([E], [whole], [0.0], [t])
    for w, d, from_top in lost:
        if d < t:
            rectangle = (E, w, 0.0 if from_top else d, t - d if from_top else t)
            for rows, value in zip(out, rectangle, strict=True):
                rows.append(value)
    return out


def _strips(c: Context, span: Span) -> float:
    """Bending stiffness of the strips at its edges, each about its own middle [N mm2].

    They are not counted as one beam with the panel: one at the front edge alone lets the rear sag on.
    """
    total = 0.0
    for id in span.strips:
        strip = c.parts[id]
        own = stiffness(c, strip.stock, abs(strip.pose.x[span.axis]) > 0.7)
        if own is not None:
            total += own.E * second_moment(strip.box.size(1 - span.axis), strip.box.size(2))
    return total


def _along(part: Part, axis: int) -> int:
    """The part's own axis that lies along a piece axis."""
    own = (part.pose.x, part.pose.y)
    return 0 if abs(own[0][axis]) > abs(own[1][axis]) else 1


def _channels(part: Part, span: Span) -> list[tuple[float, float, bool]]:
    """Channels that run along the span: width, depth [mm], and whether they are cut from the top."""
    a = _along(part, span.axis)
    up = part.pose.z[2] > 0
    found = []
    for k in part.cuts:
        if not isinstance(k, (Groove, Rabbet)) or k.side.axis != 2:
            continue
        runs = k.along if isinstance(k, Groove) else 1 - k.edge.axis
        if runs == a and k.end - k.start > span.length / 2:
            found.append((k.width, k.depth, k.side.high == up))
    return found


def _stress(part: Part, way: _Way, W: float) -> float:
    """Greatest bending stress [MPa], at mid-span or where a channel crosses."""
    far = max(way.axis, way.high - way.axis)
    worst = W * way.length / 8 * far * way.stiff.E / way.EI
    a, b = _along(part, way.span.axis), 1 - _along(part, way.span.axis)
    t = part.size[2]
    start = way.span.between[0].high
    for k in part.cuts:
        if not isinstance(k, Groove) or k.side.axis != 2 or k.along != b or k.depth >= t:
            continue
        own = (part.pose.x, part.pose.y)[a]
        x = part.pose.origin[way.span.axis] + own[way.span.axis] * (k.at + k.width / 2) - start
        if not 0 < x < way.length:
            continue
        moment = W * x / 2 * (1 - x / way.length)
        cut = min(k.end - k.start, way.span.width)
        modulus = ((way.span.width - cut) * t**2 + cut * (t - k.depth) ** 2) / 6
        worst = max(worst, moment / modulus if modulus > 0 else 0.0)
    return worst


def _rails(c: Context, part: Part, span: Span, W: float) -> tuple[float, str, float]:
    """Mean sag of the two supports under half of the load each [mm], which of them bends most, and its length [mm]."""
    found = [_rail(c, part, h, 1 - span.axis, W / 2) for h in span.between]
    most = max(found, key=lambda f: f[0])
    return sum(f[0] for f in found) / 2, most[1], most[2]


def _rail(c: Context, part: Part, hold: Hold, axis: int, W: float) -> tuple[float, str, float]:
    """Sag of a support that stands free between its ends [mm]; 0 for one that does not bend."""
    EI, length = 0.0, 0.0
    for id in hold.parts:
        rail = c.parts[id]
        free, partners = _free_way(c, rail, part, axis)
        for one in (rail, *partners):
            stiff = _rail_stiffness(c, one, axis, free)
            if stiff is None:
                return 0.0, "", 0.0
            EI += stiff
        length = max(length, free)
    if EI <= 0:
        return 0.0, "", 0.0
    return deflection(W, length, 1.0, EI, float("inf"), EVEN.kb, EVEN.ks), hold.parts[0], length


def _rail_stiffness(c: Context, rail: Part, axis: int, free: float) -> float | None:
    """Bending stiffness of a support [N mm2]; None for one that does not bend, or of which nothing is known."""
    deep = rail.box.size(2)
    moving = any(m.id == rail.group for m in c.piece.motions)
    if moving or rail.box.low[2] < c.piece.outside.low[2] + 1 or deep > free / DEEP:
        return None
    own = stiffness(c, rail.stock, True)
    if own is None or abs(rail.pose.x[axis]) < 0.99:
        return None
    return own.E * second_moment(rail.box.size(1 - axis), deep)


def _free_way(c: Context, rail: Part, panel: Part, axis: int) -> tuple[float, list[Part]]:
    """The longest way a support goes without being held itself [mm], and what it is joined to along its length."""
    length = rail.box.size(axis)
    held: list[float] = []
    partners: list[Part] = []
    for j in c.piece.joints:
        if rail.id not in (j.first, j.second) or panel.id in (j.first, j.second) or not j.contacts:
            continue
        other = c.parts.get(j.second if j.first == rail.id else j.first)
        low = min(k.box.low[axis] for k in j.contacts)
        high = max(k.box.high[axis] for k in j.contacts)
        if other is not None and high - low > length / 2:
            partners.append(other)
        elif other is not None:
            held.append((low + high) / 2)
    held.sort()
    free = max((b - a for a, b in pairwise(held)), default=length)
    return free, partners
