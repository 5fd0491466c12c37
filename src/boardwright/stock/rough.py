"""Rough sizes from finished ones: what is cut for each kind of part before it is milled."""

from __future__ import annotations

from collections.abc import Sequence

from boardwright.core.lengths import INCH, Printer, settle
from boardwright.piece.records import Part
from boardwright.stock.choices import Allowances
from boardwright.stock.glue_ups import GlueUp, StripLimit, glue_up
from boardwright.stock.records import RoughPart
from boardwright.stock.wording import sold
from boardwright.tables.records import LumberClass

MACHINE_MINIMUM = {"in": 12 * INCH, "mm": 300.0}
"""Shortest piece that jointers and planers are usually fed [mm]: woodworking magazine, Nov. 2007, p. 55."""
_SAME = 1e-6


def by_letter(parts: Sequence[Part]) -> dict[str, list[Part]]:
    """Parts of each letter, in the order of the piece."""
    kinds: dict[str, list[Part]] = {}
    for part in parts:
        kinds.setdefault(part.letter, []).append(part)
    return kinds


def face(part: Part) -> tuple[float, float]:
    """Width and thickness of a wood part as it lies in a board [mm].

    The smaller of the two lies in the thickness when the part is thinner or thicker than its stock.
    """
    _, width, thickness = part.size
    if abs(thickness - part.stock.thickness) <= _SAME:
        return width, thickness
    return max(width, thickness), min(width, thickness)


def board_thickness(part: Part) -> float:
    """Planed thickness of the board that a wood part is cut from [mm]: its stock's, or more."""
    return max(part.stock.thickness, face(part)[1])


def sheet_part(kind: Sequence[Part], lot: str) -> RoughPart:
    """Parts cut from a sheet to their finished size."""
    one = kind[0]
    return RoughPart(
        one.letter, one.name, one.stock.id, tuple(p.id for p in kind), one.size, "", lot, None, "", "",
        "as the sheet is", 1, (one.size[0], one.size[1]),
    )  # fmt: skip


def wood_part(
    kind: Sequence[Part],
    lot: str,
    lumber: LumberClass | None,
    limit: StripLimit,
    allow: Allowances,
    printer: Printer,
) -> RoughPart:
    """Rough size of wood parts of one letter.

    Args:
        kind: the parts of the letter.
        lot: id of the lot they are cut from.
        lumber: thickness that is bought; None when no lumber is thick enough.
        limit: how wide one board may be.
        allow: allowances.
        printer: prints sizes of the plan.
    """
    one = kind[0]
    length = one.size[0]
    width, _ = face(one)
    glued = glue_up(width, limit, allow, printer)
    over = (allow.panel_length, allow.panel_width) if glued else (allow.length, allow.width)
    rough_length = settle(length + over[0], printer.step, "up")
    rough_width = settle(width + over[1], printer.step, "up")
    thick = lumber.rough if lumber else settle(board_thickness(one) + allow.planing, printer.step, "up")
    strip = glued or GlueUp(1, rough_width, "")
    s = printer.size
    return RoughPart(
        one.letter,
        one.name,
        one.stock.id,
        tuple(p.id for p in kind),
        one.size,
        lumber.name if lumber else sold(printer.units, thick),
        lot,
        (rough_length, rough_width, thick),
        f"{s(length)} + {s(over[0])} = {s(rough_length)}",
        f"{s(width)} + {s(over[1])} = {s(rough_width)}",
        _thickness_text(one, lumber, thick, printer),
        strip.strips,
        (rough_length, strip.width),
        strip.sum,
        _ripped(one, printer),
    )


def _thickness_text(part: Part, lumber: LumberClass | None, thick: float, printer: Printer) -> str:
    planed = printer.size(board_thickness(part))
    rough = sold(printer.units, thick)
    named = f"{lumber.name}, " if lumber and lumber.name not in (rough, rough.removesuffix(" in")) else ""
    return f"{named}{rough} rough, planed to {planed}"


def _ripped(part: Part, printer: Printer) -> str:
    thickness = face(part)[1]
    stock = part.stock.thickness
    if abs(part.size[2] - stock) <= _SAME:
        return ""
    s = printer.size
    if thickness > stock + _SAME:
        return f"from thicker lumber than its stock's {s(stock)}"
    planed = f", then planed to {s(thickness)}" if stock - thickness > _SAME else ""
    return f"ripped from {s(stock)} stock{planed}"
