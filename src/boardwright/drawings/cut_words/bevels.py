"""Ends, edges and faces cut by a plane, in words: how the saw is set, and where the cut starts.

A plane that lies `m` farther in for each mm across the width and `k` for each mm through the thickness is cut with
the mitre gauge at atan(m) from square and the blade tilted atan(k / sqrt(1 + m2)): see `formulas.compound`.
"""

from __future__ import annotations

from dataclasses import dataclass

from boardwright.core.poses import Vec
from boardwright.drawings.cut_words.terms import EPS, FROM, SIDE_WORDS, Printer, Said, degrees_text
from boardwright.formulas.compound import plane_gauge, plane_tilt
from boardwright.piece.cuts import Bevel, Side, Taper


@dataclass(frozen=True, slots=True)
class SawSetting:
    """How a saw is set for a bevel: mitre gauge and blade, both from square [degrees]."""

    gauge: float
    blade: float


def saw_setting(cut: Bevel) -> SawSetting:
    """The mitre gauge and the blade that cut a bevel, the part lying on its face.

    For an end the gauge is set across the width. For an edge it stands for the angle of the line along the face to the
    other edge, and for a face, that along the length.
    """
    return SawSetting(plane_gauge(cut.over_u), plane_tilt(cut.over_u, cut.over_v))


def corners(cut: Bevel, size: Vec) -> dict[tuple[Side, Side], float]:
    """How far in from its side a bevel lies at the four edges of that side [mm]; nothing is cut where it is below 0."""
    u, v = (i for i in range(3) if i != cut.side.axis)
    return {
        (Side.of(u, hu), Side.of(v, hv)): cut.at + cut.over_u * size[u] * hu + cut.over_v * size[v] * hv
        for hu in (False, True)
        for hv in (False, True)
    }


def bevel(cut: Bevel, size: Vec, p: Printer) -> Said:
    """A bevel by the settings of the saw; then how far in it lies where it is deepest, and where nothing is cut."""
    saw = saw_setting(cut)
    square_gauge, square_blade = abs(saw.gauge) < 1e-4, abs(saw.blade) < 1e-4
    end = cut.side.axis == 0
    sizes: list[str]
    if square_gauge and square_blade:
        name, sizes = "square cut", []
    elif square_blade:
        name = "mitre" if end else "slant"
        sizes = [degrees_text(saw.gauge)]
    elif square_gauge:
        name, sizes = "bevel", [f"blade {degrees_text(saw.blade)}"]
    else:
        name = "compound mitre" if end else "bevelled slant"
        gauge = f"mitre gauge {degrees_text(saw.gauge)}" if end else f"line {degrees_text(saw.gauge)}"
        sizes = [gauge, f"blade {degrees_text(saw.blade)}"]
    side = f"at the {SIDE_WORDS[cut.side]}"
    return Said(name, (), side, tuple(sizes), _reach(cut, size, p), link="against")


def _reach(cut: Bevel, size: Vec, p: Printer) -> tuple[str, ...]:
    found = corners(cut, size)
    depths = sorted({round(max(0.0, d), 4) for d in found.values()})
    least, most = depths[0], depths[-1]
    side = SIDE_WORDS[cut.side]
    if most - least < EPS:
        return (f"{p.auxiliary(most)} off the {side}",)
    long = _shared([k for k, d in found.items() if abs(max(0.0, d) - least) < 1e-3])
    short = _shared([k for k, d in found.items() if abs(d - most) < 1e-3])
    start = f"{p.auxiliary(least)} off" if least > EPS else "long point"
    if cut.side.axis != 0 and least <= EPS:
        start = "nothing off"
    return (f"{start} at the {long}", f"{p.auxiliary(most)} off at the {short}")


def _shared(edges: list[tuple[Side, Side]]) -> str:
    """The sides that some edges have in common, in words."""
    common = [s for s in edges[0] if all(s in e for e in edges)]
    return " and ".join(SIDE_WORDS[s] for s in (common or edges[0]))


def taper(cut: Taper, size: Vec, p: Printer) -> Said:
    """A taper, by where it starts and what it takes off at the end."""
    axis = cut.end.axis
    run = size[axis] - cut.start if cut.end.high else cut.start
    return Said(
        "taper",
        (),
        f"on the {SIDE_WORDS[cut.side]}",
        (
            f"from 0 at {p.size(cut.start)} to {p.size(cut.depth)} at the {SIDE_WORDS[cut.end]}",
            degrees_text(plane_gauge(cut.depth / run)),
        ),
        seen=(f"measured from {FROM[axis]}",),
    )
