"""Parts with every fitted and shaped cut, made by hand, for the drawing tests. Lengths in inches or mm."""

import math

from boardwright.core.lengths import INCH
from boardwright.core.poses import Pose
from boardwright.piece.cuts import (
    Bevel,
    BiscuitSlot,
    Curve,
    DovetailSlot,
    DovetailTongue,
    Fingers,
    Groove,
    Hole,
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
from boardwright.piece.records import Part, Stock

WOOD = Stock("wood", "wood", "cherry", "", 19.0, 25.0, False, 560.0, sawn="flat")
LETTERS = {"leg": "A", "rail": "B", "side": "C", "front": "D", "top": "E"}
E, FE, F, B, X, FX = Side.EDGE, Side.FAR_EDGE, Side.FACE, Side.BACK, Side.END, Side.FAR_END


def part(name, size, *cuts, unit=1.0):
    length, width, thick = (v * unit for v in size)
    return Part(name, name, WOOD, (length, width, thick), Pose(), cuts, name[0].upper())


def tail_sockets(n, width, pin):
    """Sockets of n tails over a width, at the tip, with half a pin of the same size at each edge."""
    pitch = (width - pin) / n
    return tuple((i * pitch, i * pitch + pin) for i in range(n + 1))


def samples(u):
    """The parts at a unit [mm]: an inch, or 25 mm for a metric plan."""
    steps = ((0.25 * u, 3.25 * u, 1.25 * u), (3.25 * u, 4 * u, 0.375 * u))
    rail = {
        "wide": 1,
        "length": 1.25 * u,
        "low": 0.1875 * u,
        "high": 0.1875 * u,
        "steps": steps,
        "holds": "leg",
    }
    boxed = tuple((i * u, (i + 0.5) * u) for i in range(4))
    pins = tuple((0.3125 * u + 1.9375 * i * u, 1.9375 * (i + 1) * u) for i in range(4))
    cutter = math.tan(math.radians(14))
    tongue = (1, 0.375 * u, 0.03125 * u, 0.03125 * u, cutter, "side")
    lean = math.radians(30)
    hopper = (0, math.sin(lean), math.cos(lean), "side")
    wave = tuple((x * u, d * u) for x, d in ((0, 0.5), (9, 1.75), (18, 0.75), (27, 1.75), (36, 0.5)))
    screw = {"through": True, "counterbore": 0.375 * u, "counterbore_depth": 0.25 * u}
    profile = tuple(
        (w * u, d * u) for w, d in ((0.75, 0), (0.75, 0.125), (0.5, 0.125), (0.25, 0.375), (0, 0.5))
    )
    two = ((0, 0.75 * u, 0.75 * u), (1.75 * u, 2.5 * u, 0.75 * u))
    many = tuple((i * 0.5 * u, (i * 0.5 + 0.25) * u) for i in range(30))
    return [
        part("leg", (28.5, 1.75, 1.75),
             Mortise(E, 0, 0.6875 * u, 0.375 * u, 1.25 * u, 0.5 * u, 4 * u, holds="rail"),
             Mortise(B, 0, 0.6875 * u, 0.375 * u, 1.25 * u, 0.5 * u, 4 * u, holds="rail"),
             Taper(E, FX, 6 * u, 0.625 * u), Taper(B, FX, 6 * u, 0.625 * u), unit=u),
        part("rail", (26, 4, 0.75), Tenon(X, **rail), Tenon(FX, **rail),
             Groove(F, 0, 0.375 * u, 0.25 * u, 0.25 * u, 0, 26 * u), unit=u),
        part("stile", (30, 2.5, 0.875),
             Groove(E, 0, 0.3125 * u, 0.25 * u, 0.375 * u, 0, 30 * u),
             Mortise(E, 0, 0.3125 * u, 0.25 * u, 1.5 * u, 0.5 * u, 2.25 * u, holds="rail"),
             Mortise(E, 0, 0.3125 * u, 0.25 * u, 1.5 * u, 27.25 * u, 29.5 * u, holds="rail"), unit=u),
        part("through", (20, 6, 1.5),
             Mortise(F, 1, 9 * u, 0.5 * u, 1.5 * u, 1 * u, 2.5 * u, True, "rail"),
             Mortise(F, 1, 9 * u, 0.5 * u, 1.5 * u, 3.5 * u, 5 * u, True, "rail"), unit=u),
        part("finger", (12, 4, 0.5), *(Fingers(end, 1, 0.5 * u, boxed, "side") for end in (X, FX)), unit=u),
        part("tails", (18, 8, 0.5),
             *(Tails(end, 1, 0.75 * u, tail_sockets(4, 8 * u, 0.25 * u), 1 / 8, "front") for end in (X, FX)), unit=u),
        part("pins", (16, 8, 0.75),
             *(Pins(end, 1, 0.5 * u, B, 0.5 * u, pins, 1 / 8, "side") for end in (X, FX)), unit=u),
        part("slot side", (30, 11, 0.75),
             *(DovetailSlot(F, 1, x * u, 0.5 * u, 0.375 * u, cutter, 0, 10 * u, "front") for x in (8, 20)), unit=u),
        part("shelf", (24, 10, 0.75), DovetailTongue(X, *tongue), DovetailTongue(FX, *tongue), unit=u),
        part("mitred", (16, 2.25, 0.75), Bevel(X, 0, 1.0, 0.0, "side"), Bevel(FX, 0, 1.0, 0.0, "side"),
             Moulding(F, E, "ogee", 0.375 * u, (), 0, 16 * u), unit=u),
        part("bevelled", (16, 4, 0.75), Bevel(X, 0, 0.0, 1.0, "side"), Bevel(FX, 0, 0.0, 1.0, "side"), unit=u),
        part("hopper", (16, 5, 0.5), Bevel(X, *hopper), Bevel(FX, *hopper),
             Bevel(E, 0, 0.0, math.tan(lean)), unit=u),
        part("field panel", (18, 12, 0.625),
             RaisedField(F, 1.5 * u, 0.375 * u, 0.25 * u, 0.0625 * u, (X, FX, E, FE)), unit=u),
        part("top", (48, 22, 0.75),
             *(Moulding(B, s, "chamfer", 0.375 * u, (), 0, (22, 48)[s.axis == 1] * u) for s in (X, FX, E, FE)),
             Moulding(F, E, "round-over", 0.125 * u, (), 0, 48 * u), unit=u),
        part("apron", (30, 4, 0.75), Curve(E, 0, "arc", ((2 * u, 0), (15 * u, 1.5 * u), (28 * u, 0))), unit=u),
        part("wavy", (36, 5, 0.75), Curve(E, 0, "spline", wave), unit=u),
        part("bracket", (10, 6, 0.75), Curve(FE, 0, "line", ((3 * u, 0), (4 * u, 2 * u), (10 * u, 4 * u))), unit=u),
        part("cleat", (20, 3, 0.75), VGroove(F, 0, 1.5 * u, 0.375 * u, 0.1875 * u, 0, 20 * u),
             Bevel(FE, 0, 0.0, 1.0),
             *(Hole(F, (x * u, 0.5 * u), 0.1875 * u, 0.75 * u, **screw) for x in (3, 17)), unit=u),
        part("biscuits", (24, 6, 0.75),
             *(BiscuitSlot(E, 0, (x * u, 0.375 * u), 0.15625 * u, 0.5 * u, 2 * u, "No. 20 biscuit", "top")
               for x in (3, 9, 15, 21)), unit=u),
        part("bar", (26, 2.5, 0.75), Tenon(X, 1, 0.75 * u, 0.25 * u, 0.25 * u, two, "leg"),
             Hole(E, (4 * u, 0.375 * u), 0.25 * u, 1.5 * u, lean=15.0, lean_along=0), unit=u),
        part("moulded", (30, 3, 0.875), Moulding(F, E, "profile", 0.75 * u, profile, 0, 30 * u),
             Moulding(F, FE, "cove", 0.5 * u, (), 2 * u, 28 * u), unit=u),
        part("drawer side", (20, 5, 0.5), Groove(F, 0, 0.375 * u, 0.25 * u, 0.25 * u, 0, 20 * u),
             Groove(B, 0, 2 * u, 0.75 * u, 0.25 * u, 0, 18 * u), unit=u),
        part("chest end", (30, 18, 0.875),
             Tails(X, 1, 0.875 * u, tail_sockets(8, 18 * u, 0.5 * u), 1 / 8, "front"), unit=u),
        part("many fingers", (10, 15, 0.5), Fingers(X, 1, 0.5 * u, many, "front"), unit=u),
    ]  # fmt: skip


IN_INCHES, IN_METRIC = samples(INCH), samples(25.0)
