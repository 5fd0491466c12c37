"""Lines of the buying list for small things: screws, dowels and the like, hardware, glue."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from math import ceil, floor

from boardwright.formulas.gluing import glue_mass
from boardwright.piece.records import Joint, Piece
from boardwright.stock.records import BuyLine, RoughPart
from boardwright.stock.wording import counted
from boardwright.tables.bundle import Tables

SPARE = 0.10
"""Fasteners bought over what is used (common practice)."""
ROUND_TO = 5
"""Fasteners are counted up to the next whole five (common practice)."""
MUCH_GLUE = 100.0
"""From here glue is rounded outwards to 10 g, below to 1 g [g]."""
OUNCE, FOOT = 28.349523, 304.8
"""An ounce by weight [g], to a millionth; a foot [mm]."""
KINDS = ("screw", "pocket screw", "plug", "dowel", "biscuit", "loose tenon", "peg")


def fasteners(piece: Piece) -> list[BuyLine]:
    """Fasteners by kind and name, some to spare."""
    count = Counter((KINDS.index(f.kind), f.name) for f in piece.fasteners)
    lines = []
    for (_, name), used in sorted(count.items()):
        buy = ceil(round(used * (1 + SPARE), 6) / ROUND_TO) * ROUND_TO
        detail = f"{used} are used"
        lines.append(
            BuyLine(
                "fasteners",
                name,
                str(buy),
                detail,
                f"{round(100 * SPARE)} % to spare, up to the next {ROUND_TO} (common practice)",
            )
        )
    return lines


def hardware(piece: Piece, tables: Tables) -> list[BuyLine]:
    """Hardware by name; slides in pairs."""
    count: dict[tuple[str, str], float] = {}
    for h in piece.hardware:
        count[h.name, h.table_key] = count.get((h.name, h.table_key), 0.0) + h.count_as
    lines = []
    for (name, key), n in sorted(count.items()):
        whole = ceil(n - 1e-6)
        if key in tables.slides:
            pairs = ceil(whole / 2)
            detail = "screw places: the sheet that comes with it"
            lines.append(BuyLine("hardware", name, counted(pairs, "pair"), detail, tables.slides[key].source))
        else:
            lines.append(BuyLine("hardware", name, str(whole)))
    return lines


def glue_lines(area: float, tables: Tables, units: str) -> list[BuyLine]:
    """Glue for an area, one side counted [mm2]; by weight in the units of the plan, `in` or `mm`."""
    glue = tables.glues["pva_yellow"]
    if area <= 0 or glue.spread_min is None or glue.spread_max is None:
        return []
    least, most = glue_mass(area, glue.spread_min), glue_mass(area, glue.spread_max)
    step = 10 if least >= MUCH_GLUE else 1
    low, high = floor(least / step) * step, ceil(most / step) * step
    detail = f"{area / 1e6:.2f} m² of joints and glue-ups"
    if units == "in":
        ounces = f"{floor(2 * low / OUNCE) / 2:g} to {ceil(2 * high / OUNCE) / 2:g} oz"
        detail = f"{ounces}; {area / FOOT**2:.1f} ft² of joints and glue-ups"
    spread = f"one face spread at {glue.spread_min:g} to {glue.spread_max:g} g/m²"
    source = f"{spread}: {glue.source} ({glue.provenance})"
    return [BuyLine("glue", glue.name, f"{low} to {high} g", detail, source)]


def glued_area(joints: Sequence[Joint], rough: Sequence[RoughPart]) -> float:
    """Faces that are glued, one side counted [mm2].

    Args:
        joints: of the piece; a contact with a planned gap is not glued.
        rough: rough sizes; edges between strips count at their rough thickness.
    """
    area = 0.0
    for contact in (c for j in joints if j.glued for c in j.contacts):
        if contact.glued and contact.gap <= 0:
            area += contact.area
    for part in rough:
        if part.rough is not None:
            lines = sum(len(own) - 1 for own in part.panels[: part.count])
            lines = lines if part.panels else part.count * (part.strips * part.leaves - 1)
            area += lines * part.strip[0] * part.rough[2]
    return area
