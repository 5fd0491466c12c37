"""Mouldings, raised fields, curves and V grooves in words."""

from __future__ import annotations

import math
from collections.abc import Sequence

from boardwright.core.curves import curve_line
from boardwright.core.poses import Vec
from boardwright.drawings.cut_words.terms import (
    EPS,
    FROM,
    SIDE_WORDS,
    Printer,
    Said,
    degrees_text,
    places,
    stops,
)
from boardwright.piece.cuts import Curve, Moulding, RaisedField, Side, VGroove


def moulding(cut: Moulding, size: Vec, p: Printer) -> Said:
    """A shaped edge by its tool: leg, radius or reach."""
    third = 3 - cut.side.axis - cut.edge.axis
    sizes = (p.size(cut.size), "45°") if cut.shape == "chamfer" else ()
    own = {
        "chamfer": "",
        "round-over": f"radius {p.size(cut.size)}",
        "cove": f"radius {p.size(cut.size)}",
        "ogee": f"{p.size(cut.size)} wide and deep, two arcs of radius {p.auxiliary(cut.size / 2)}",
    }.get(cut.shape, f"{len(cut.points)} points, see its section")
    stopped = stops(cut.start, cut.end, third, size[third], p)
    notes: tuple[str, ...] = ()
    if cut.points:
        each = "; ".join(f"{p.size(w)} × {p.size(d)}" for w, d in cut.points)
        notes = (f"From the {SIDE_WORDS[cut.edge]} × down from the {SIDE_WORDS[cut.side]}: {each}.",)
    return Said(
        "moulded edge" if cut.shape == "profile" else cut.shape,
        sizes,
        f"where the {SIDE_WORDS[cut.side]} and the rim meet, all round"
        if cut.rim
        else f"where the {SIDE_WORDS[cut.side]} and the {SIDE_WORDS[cut.edge]} meet",
        (own,) if own else (),
        (stopped,) if stopped else (),
        notes=notes,
    )


def field_angle(cut: RaisedField, thickness: float) -> float:
    """Angle of the bevel round a raised field to the face [degrees]: its rise over its run.

    Args:
        cut: the field.
        thickness: of the panel [mm].
    """
    return math.degrees(math.atan2(thickness - cut.tongue - cut.step, cut.width - cut.flat))


def raised_field(cut: RaisedField, size: Vec, p: Printer) -> Said:
    """A raised field: bevel, angle, tongue, step."""
    sizes = [f"bevels {p.size(cut.width)} wide at {degrees_text(field_angle(cut, size[cut.side.axis]))}"]
    flat = f" for {p.size(cut.flat)}" if cut.flat > EPS else " at the edge"
    sizes.append(f"tongue {p.size(cut.tongue)} thick{flat}")
    if cut.step > EPS:
        sizes.append(f"step {p.size(cut.step)} at the field")
    return Said("raised field", (), f"on the {SIDE_WORDS[cut.side]}", tuple(sizes), (edges_text(cut.edges),))


def edges_text(edges: Sequence[Side]) -> str:
    """Sides of a part that a cut runs along, in words."""
    if len(edges) == 4:
        return "on all four sides"
    return "along the " + " and the ".join(SIDE_WORDS[e] for e in edges)


def curve(cut: Curve, size: Vec, p: Printer) -> Said:
    """A curve by its points; the offsets stand on the drawing."""
    own = f"arc of radius {p.auxiliary(arc_radius(cut))}" if cut.shape == "arc" else ""
    if cut.shape == "spline":
        own = f"fair curve through {len(cut.points)} points"
    if cut.shape == "ellipse":
        own = half_ellipse_words(cut, p)
    if cut.shape == "line":
        own = f"straight through {len(cut.points)} points"
    deepest = max(d for _, d in curve_line(cut.shape, cut.points))
    each = "; ".join(f"{p.size(x)} × {p.size(d)}" for x, d in cut.points)
    return Said(
        "curve",
        (),
        f"on the {SIDE_WORDS[cut.side]}",
        (own, f"at most {p.auxiliary(deepest)} deep"),
        notes=(f"From {FROM[cut.along]} × in from the {SIDE_WORDS[cut.side]} it runs through {each}.",),
    )


def half_ellipse_words(cut: Curve, p: Printer) -> str:
    """Half an ellipse by its axes, and the two pins and the string that draw it."""
    (x0, d0), (_, d1), (x1, _) = cut.points
    a, b = (x1 - x0) / 2, abs(d1 - d0)
    pins, string = 2 * math.sqrt(abs(a * a - b * b)), 2 * (a + math.sqrt(abs(a * a - b * b)))
    if a < b:
        string = 2 * (b + pins / 2)
    return (
        f"half an ellipse with axes of {p.size(2 * a)} and {p.size(2 * b)}; two pins {p.auxiliary(pins)} apart on the "
        f"longer axis and a loop of string {p.auxiliary(string)} long draw it"
    )


def arc_radius(cut: Curve) -> float:
    """Radius of an arc through three points [mm]: product of the sides over four times the area of their triangle."""
    a, b, c = cut.points
    area = abs((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])) / 2
    return math.dist(a, b) * math.dist(b, c) * math.dist(c, a) / (4 * area)


def v_groove(cut: VGroove, size: Vec, p: Printer) -> Said:
    """A V groove by its middle."""
    third = 3 - cut.side.axis - cut.along
    unseen, seen = places([(third, f"middle {p.size(cut.at)} from {FROM[third]}")])
    stopped = stops(cut.start, cut.end, cut.along, size[cut.along], p)
    angle = 2 * math.degrees(math.atan2(cut.width / 2, cut.depth))
    return Said(
        "V groove",
        (f"{p.size(cut.width)} wide", f"{p.size(cut.depth)} deep"),
        f"in the {SIDE_WORDS[cut.side]}",
        (degrees_text(angle),),
        (*unseen, *((stopped,) if stopped else ())),
        seen,
    )
