"""Cuts that the file gives a loose part, in the part's own frame; refused when they do not fit it."""

from __future__ import annotations

import math
from collections.abc import Callable
from itertools import pairwise
from typing import Any

from boardwright.core import curves
from boardwright.design.keys import cuts as keys_of
from boardwright.design.schema import CutKeys
from boardwright.piece.cuts import (
    Bevel,
    Curve,
    DovetailSlot,
    DovetailTongue,
    Fingers,
    Mortise,
    Moulding,
    Pins,
    RaisedField,
    Side,
    Tails,
    Taper,
    Tenon,
    VGroove,
)
from boardwright.piece.drafts import Bore, Channel, Corner, Draft, DraftCut, Step
from boardwright.piece.setout import SetOut

AXIS = {"length": 0, "width": 1, "thickness": 2}
_WORDS = ("length", "width", "thickness")
SLOPE = 8.0
"""Run of a dovetail's slope for a rise of 1 (common practice in hardwood)."""


class Refused(Exception):
    """A cut that does not fit its part; the text says what was found."""


class _Bench:
    """One cut being made: reads its lengths, and knows its part."""

    def __init__(self, out: SetOut, draft: Draft, keys: Any, path: str) -> None:
        self.out, self.draft, self.keys, self.path = out, draft, keys, path
        self.low = [draft.low[a] for a in draft.axes]
        self.size = [draft.size(a) for a in draft.axes]
        self.unread = False

    def length(self, name: str, default: float = 0.0) -> float:
        """A length of the cut, settled on the step [mm]."""
        return default if getattr(self.keys, name) is None else self.read(name)

    def read(self, name: str) -> float:
        value = self.out.sizer.read(f"{self.path}.{name}")
        if value is None:
            self.unread = True
            return 0.0
        return self.out.sizer.settled(value)

    def pairs(self, name: str, rows: list[list[Any]]) -> list[tuple[float, float]]:
        """Pairs of lengths [mm]."""
        if any(len(row) != 2 for row in rows):
            raise Refused(f"`{name}` with {', '.join(str(len(r)) for r in rows)} lengths, not pairs")
        return [(self.read(f"{name}[{i}][0]"), self.read(f"{name}[{i}][1]")) for i in range(len(rows))]

    def more_than_nothing(self, *names: str) -> None:
        for name in names:
            if getattr(self.keys, name) is not None and self.length(name) <= 0:
                raise Refused(f"a {name} of {self.out.text(self.length(name))}")

    def inside(self, axis: int, start: float, stop: float) -> None:
        """Refuses what does not lie within the part along one of its axes."""
        if not (-1e-6 <= start < stop <= self.size[axis] + 1e-6):
            text = self.out.text
            raise Refused(
                f"from {text(start)} to {text(stop)} on a {_WORDS[axis]} of {self.out.about(self.size[axis])}"
            )

    def no_deeper(self, side: Side, depth: float, *, through: bool = True) -> None:
        most = self.size[side.axis]
        if depth > most + 1e-6 or (not through and depth > most - 1e-6):
            raise Refused(f"{self.out.text(depth)} deep in {self.out.about(most)}")

    def run(self, axis: int) -> tuple[float, float]:
        """From where to where it runs, in the part's own frame [mm]."""
        start, stop = self.length("start"), self.length("stop", self.size[axis])
        if not 0 <= start < stop <= self.size[axis] + 1e-6:
            text = self.out.text
            raise Refused(f"from {text(start)} to {text(stop)} of {text(self.size[axis])}")
        return start, stop

    def across(self, one: Side | int, two: Side | int, what: str) -> int:
        """The third axis; refuses two that are the same."""
        a = one if isinstance(one, int) else one.axis
        b = two if isinstance(two, int) else two.axis
        if a == b:
            raise Refused(what)
        return 3 - a - b


def loose_cut(out: SetOut, draft: Draft, keys: CutKeys, path: str) -> None:
    """Put one cut on a loose part, or say why it cannot be there."""
    bench = _Bench(out, draft, keys, path)
    try:
        made = _MAKERS[type(keys)](bench, keys)
    except Refused as refused:
        size = bench.size
        out.find(
            "part.cut-outside",
            f"the {keys.kind.replace('_', ' ')} on the {draft.name} does not fit the part",
            path,
            found=str(refused),
            expected=f"inside {out.text(size[0])} × {out.text(size[1])} × {out.about(size[2])}",
            remedy="move it, or make it smaller",
        )
        return
    if not bench.unread:
        draft.cuts += made


def _groove(b: _Bench, k: keys_of.GrooveKeys) -> list[DraftCut]:
    side, along = Side(k.side), AXIS[k.along]
    third = b.across(side, along, f"a groove into the {side.value} cannot run along the {k.along}")
    b.more_than_nothing("width", "depth")
    at, width, depth = b.length("at"), b.length("width"), b.length("depth")
    b.inside(third, at, at + width)
    b.no_deeper(side, depth)
    start, stop = b.run(along)
    d = b.draft
    return [
        Channel(
            d.axes[side.axis],
            side.high,
            d.axes[along],
            b.low[third] + at,
            b.low[third] + at + width,
            depth,
            b.low[along] + start if k.start is not None else None,
            b.low[along] + stop if k.stop is not None else None,
        )
    ]


def _rabbet(b: _Bench, k: keys_of.RabbetKeys) -> list[DraftCut]:
    side, edge = Side(k.side), Side(k.edge)
    third = b.across(side, edge, f"{side.value} and {edge.value} do not meet")
    b.more_than_nothing("width", "depth")
    width, depth = b.length("width"), b.length("depth")
    if width >= b.size[edge.axis] or depth >= b.size[side.axis]:
        raise Refused(f"{b.out.text(width)} wide, {b.out.text(depth)} deep")
    start, stop = b.run(third)
    return [
        Step(
            b.draft.axes[side.axis],
            side.high,
            b.draft.axes[edge.axis],
            edge.high,
            width,
            depth,
            b.low[third] + start if k.start is not None else None,
            b.low[third] + stop if k.stop is not None else None,
        )
    ]


def _notch(b: _Bench, k: keys_of.NotchKeys) -> list[DraftCut]:
    b.more_than_nothing("length", "width")
    length, width = b.length("length"), b.length("width")
    if length >= b.size[0] or width >= b.size[1]:
        raise Refused(f"{b.out.text(length)} long, {b.out.text(width)} wide")
    axes = b.draft.axes
    return [Corner(axes[0], k.end == "far_end", length, axes[1], k.edge == "far_edge", width)]


def _hole(b: _Bench, k: keys_of.HoleKeys) -> list[DraftCut]:
    side = Side(k.side)
    names = ("from_end", "from_edge", "from_back")
    missing = [n for i, n in enumerate(names) if i != side.axis and getattr(k, n) is None]
    if missing:
        b.out.find(
            "part.cut-incomplete",
            f"the hole on the {b.draft.name} is not complete",
            b.path,
            found="no " + ", ".join(f"`{m}`" for m in missing),
            expected=" and ".join(f"`{n}`" for i, n in enumerate(names) if i != side.axis),
            remedy="add the missing keys",
        )
        return []
    b.more_than_nothing("diameter", "depth", "countersink", "counterbore", "slot")
    diameter = b.length("diameter")
    slot, slot_along = b.length("slot"), AXIS[k.slot_along or "length"]
    lean_along = AXIS[k.lean_along or "length"]
    if (slot and slot_along == side.axis) or (k.lean and lean_along == side.axis):
        raise Refused(f"a slot or a lean along the {_WORDS[side.axis]}, into which it is drilled")
    at = [0.0, 0.0, 0.0]
    for i, name in enumerate(names):
        if i == side.axis:
            continue
        place = b.length(name)
        reach = diameter / 2 + (slot / 2 if slot and slot_along == i else 0.0)
        if not (reach - 1e-6 <= place <= b.size[i] - reach + 1e-6):
            raise Refused(
                f"{b.out.text(diameter)} at {b.out.text(place)} on a {_WORDS[i]} of {b.out.about(b.size[i])}"
            )
        at[b.draft.axes[i]] = b.low[i] + place
    axis = b.draft.axes[side.axis]
    at[axis] = b.draft.face(axis, side.high)
    depth = b.length("depth", b.size[side.axis])
    b.no_deeper(side, depth)
    return [
        Bore(
            axis,
            side.high,
            (at[0], at[1], at[2]),
            diameter,
            depth,
            k.depth is None,
            b.length("countersink"),
            slot,
            b.draft.axes[slot_along] if slot else 0,
            counterbore=b.length("counterbore"),
            counterbore_depth=b.length("counterbore_depth", b.out.sizer.settled(b.size[side.axis] / 2)),
            lean=k.lean or 0.0,
            lean_axis=b.draft.axes[lean_along],
        )
    ]


def _mortise(b: _Bench, k: keys_of.MortiseKeys) -> list[DraftCut]:
    side, along = Side(k.side), AXIS[k.along]
    third = b.across(side, along, f"a mortise into the {side.value} cannot run along the {k.along}")
    b.more_than_nothing("width", "depth")
    at, width = b.length("at"), b.length("width")
    start, stop, depth = b.length("start"), b.length("stop"), b.length("depth", b.size[side.axis])
    b.inside(third, at, at + width)
    b.inside(along, start, stop)
    b.no_deeper(side, depth)
    low = b.low
    return [
        Mortise(
            side, along, low[third] + at, width, depth, low[along] + start, low[along] + stop, k.depth is None
        )
    ]


def _wide(end: Side) -> int:
    """The axis across which a joint at an end or edge is laid out."""
    return 1 if end.axis == 0 else 0


def _tenon(b: _Bench, k: keys_of.TenonKeys) -> list[DraftCut]:
    end = Side(k.end)
    wide = _wide(end)
    b.more_than_nothing("length", "face", "back", "near", "far", "haunch")
    length, near, far = b.length("length"), b.length("near"), b.length("far")
    face, back, haunch = b.length("face"), b.length("back"), b.length("haunch")
    b.no_deeper(end, length, through=False)
    b.inside(2, back, b.size[2] - face)
    b.inside(wide, near, b.size[wide] - far)
    if haunch and (not far or haunch >= length):
        raise Refused(
            f"a haunch {b.out.text(haunch)} long; it needs a shoulder `far` and is shorter than the tenon"
        )
    low = b.low[wide]
    steps = [(low + near, low + b.size[wide] - far, length)]
    if haunch:
        steps.append((low + b.size[wide] - far, low + b.size[wide], haunch))
    return [Tenon(end, wide, length, back, face, tuple(steps))]


def _sockets(b: _Bench, k: keys_of.SocketKeys) -> list[DraftCut]:
    end = Side(k.end)
    wide = _wide(end)
    b.more_than_nothing("depth", "lap")
    depth = b.length("depth")
    b.no_deeper(end, depth, through=False)
    rows = sorted(b.pairs("sockets", k.sockets))
    at = 0.0
    for start, stop in rows:
        b.inside(wide, start, stop)
        if start < at - 1e-6:
            raise Refused(f"a socket from {b.out.text(start)} that begins before the one before it ends")
        at = stop
    sockets = tuple((b.low[wide] + start, b.low[wide] + stop) for start, stop in rows)
    slope = 1 / (k.slope or SLOPE)
    if k.kind == "fingers":
        return [Fingers(end, wide, depth, sockets)]
    if k.kind == "tails":
        return [Tails(end, wide, depth, sockets, slope)]
    lap = b.length("lap")
    b.no_deeper(Side.FACE, lap, through=False)
    return [Pins(end, wide, depth, Side(k.side or "back"), b.size[2] - lap, sockets, slope)]


def _dovetail_slot(b: _Bench, k: keys_of.DovetailSlotKeys) -> list[DraftCut]:
    side, along = Side(k.side), AXIS[k.along]
    third = b.across(side, along, f"a slot into the {side.value} cannot run along the {k.along}")
    b.more_than_nothing("width", "depth")
    at, width, depth = b.length("at"), b.length("width"), b.length("depth")
    slope = 1 / (k.slope or SLOPE)
    b.no_deeper(side, depth, through=False)
    b.inside(third, at - depth * slope, at + width + depth * slope)
    start, stop = b.run(along)
    low = b.low
    return [
        DovetailSlot(side, along, low[third] + at, width, depth, slope, low[along] + start, low[along] + stop)
    ]


def _dovetail_tongue(b: _Bench, k: keys_of.DovetailTongueKeys) -> list[DraftCut]:
    end = Side(k.end)
    b.more_than_nothing("length")
    length, face, back = b.length("length"), b.length("face"), b.length("back")
    slope = 1 / (k.slope or SLOPE)
    b.no_deeper(end, length, through=False)
    b.inside(2, back + length * slope, b.size[2] - face - length * slope)
    return [DovetailTongue(end, _wide(end), length, back, face, slope)]


def _bevel(b: _Bench, k: keys_of.BevelKeys) -> list[DraftCut]:
    side = Side(k.side)
    angles = (k.over_length or 0.0, k.over_width or 0.0, k.over_thickness or 0.0)
    if angles[side.axis]:
        raise Refused(
            f"an angle over the {_WORDS[side.axis]}, which the {side.value.replace('_', ' ')} is square to"
        )
    u, v = (i for i in range(3) if i != side.axis)
    slopes = {i: math.tan(math.radians(angles[i])) for i in (u, v)}
    taken = b.length("inward") - sum(min(0.0, s * b.size[i]) for i, s in slopes.items())
    most = max(taken + s * b.size[u] * (s > 0) for s in slopes.values())
    if most > b.size[side.axis]:
        raise Refused(f"{b.out.about(most)} off a {_WORDS[side.axis]} of {b.out.about(b.size[side.axis])}")
    sign = -1.0 if side.high else 1.0
    face = b.low[side.axis] + (b.size[side.axis] if side.high else 0.0)
    at = face + sign * taken - sum(sign * s * b.low[i] for i, s in slopes.items())
    return [Bevel(side, at, sign * slopes[u], sign * slopes[v])]


def _taper(b: _Bench, k: keys_of.TaperKeys) -> list[DraftCut]:
    side, end = Side(k.side), Side(k.end)
    b.across(side, end, f"{side.value} and {end.value} do not meet")
    b.more_than_nothing("depth")
    start, depth = b.length("start"), b.length("depth")
    b.inside(end.axis, *((start, b.size[end.axis]) if end.high else (0.0, start)))
    b.no_deeper(side, depth, through=False)
    return [Taper(side, end, b.low[end.axis] + start, depth)]


def _edge(b: _Bench, k: keys_of.EdgeKeys) -> list[DraftCut]:
    side, edge = Side(k.side), Side(k.edge)
    third = b.across(side, edge, f"{side.value} and {edge.value} do not meet")
    start, stop = b.run(third)
    run = (b.low[third] + start, b.low[third] + stop)
    if k.kind == "profile":
        points = tuple(b.pairs("points", k.points or []))
        if len(points) < 2:
            raise Refused(f"a profile of {len(points)} points")
        word, size, line = "profile", max(max(p) for p in points), points
    else:
        if k.size is None:
            raise Refused(f"a {k.kind.replace('_', '-')} without `size`")
        b.more_than_nothing("size")
        size = b.length("size")
        word, points = k.kind.replace("_", "-"), ()
        line = curves.edge_line(word, size)
    widest, deepest = max(p[0] for p in line), max(p[1] for p in line)
    if min(min(p) for p in line) < -1e-6 or widest >= b.size[edge.axis] or deepest > b.size[side.axis] + 1e-6:
        raise Refused(f"{b.out.about(widest)} from the edge, {b.out.about(deepest)} deep")
    return [Moulding(side, edge, word, size, points, *run)]


def _raised_field(b: _Bench, k: keys_of.RaisedFieldKeys) -> list[DraftCut]:
    side = Side(k.side)
    b.more_than_nothing("width", "tongue")
    width, tongue = b.length("width"), b.length("tongue")
    flat, step = b.length("flat"), b.length("step")
    edges = tuple(Side(e) for e in (k.edges or ("edge", "far_edge", "end", "far_end")))
    if flat >= width or tongue + step > b.size[2] - 1e-6:
        raise Refused(
            f"flat {b.out.text(flat)} of a width of {b.out.text(width)}, tongue {b.out.text(tongue)} and step "
            f"{b.out.text(step)} of a thickness of {b.out.about(b.size[2])}"
        )
    for e in edges:
        if 2 * width >= b.size[e.axis]:
            raise Refused(
                f"bevels {b.out.text(width)} wide on a {_WORDS[e.axis]} of {b.out.about(b.size[e.axis])}"
            )
    return [RaisedField(side, width, flat, tongue, step, edges)]


def _curve(b: _Bench, k: keys_of.CurveKeys) -> list[DraftCut]:
    side = Side(k.side)
    along = _wide(side)
    shape = k.shape or "spline"
    points = tuple(b.pairs("points", k.points))
    if any(q[0] <= p[0] for p, q in pairwise(points)):
        raise Refused("points that do not follow each other along the side")
    b.inside(along, points[0][0], points[-1][0])
    if shape == "arc" and len(points) != 3:
        raise Refused(f"an arc through {len(points)} points; it takes three")
    try:
        line = curves.curve_line(shape, points)
    except ValueError as why:
        raise Refused(str(why)) from why
    deepest = max(d for _, d in line)
    if deepest >= b.size[side.axis] or deepest <= 0:
        raise Refused(f"a curve {b.out.about(deepest)} deep in {b.out.about(b.size[side.axis])}")
    return [Curve(side, along, shape, tuple((b.low[along] + x, d) for x, d in points))]


def _v_groove(b: _Bench, k: keys_of.VGrooveKeys) -> list[DraftCut]:
    side, along = Side(k.side), AXIS[k.along]
    third = b.across(side, along, f"a groove into the {side.value} cannot run along the {k.along}")
    b.more_than_nothing("width", "depth")
    at, width, depth = b.length("at"), b.length("width"), b.length("depth")
    b.inside(third, at - width / 2, at + width / 2)
    b.no_deeper(side, depth, through=False)
    start, stop = b.run(along)
    low = b.low
    return [VGroove(side, along, low[third] + at, width, depth, low[along] + start, low[along] + stop)]


_MAKERS: dict[type, Callable[[_Bench, Any], list[DraftCut]]] = {
    keys_of.GrooveKeys: _groove,
    keys_of.RabbetKeys: _rabbet,
    keys_of.NotchKeys: _notch,
    keys_of.HoleKeys: _hole,
    keys_of.MortiseKeys: _mortise,
    keys_of.TenonKeys: _tenon,
    keys_of.SocketKeys: _sockets,
    keys_of.DovetailSlotKeys: _dovetail_slot,
    keys_of.DovetailTongueKeys: _dovetail_tongue,
    keys_of.BevelKeys: _bevel,
    keys_of.TaperKeys: _taper,
    keys_of.EdgeKeys: _edge,
    keys_of.RaisedFieldKeys: _raised_field,
    keys_of.CurveKeys: _curve,
    keys_of.VGrooveKeys: _v_groove,
}
