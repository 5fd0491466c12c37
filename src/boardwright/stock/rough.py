"""Rough sizes from finished ones: what is cut for each kind of part before it is milled."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from boardwright.core.lengths import INCH, Printer, settle
from boardwright.piece.cuts import Fitted, Groove, Rabbet
from boardwright.piece.records import Part
from boardwright.stock.choices import Allowances
from boardwright.stock.glue_ups import GlueUp, StripLimit, glue_up
from boardwright.stock.records import RoughPart
from boardwright.stock.wording import sold
from boardwright.tables.bundle import Tables
from boardwright.tables.records import LumberClass

LONG = 72 * INCH
"""From this length on more is planed off [mm]: the thickness planned for holds to about 6 ft (common practice)."""
TEST_SIZE = {"in": (12 * INCH, 3 * INCH), "mm": (300.0, 75.0)}
"""Finished length and width of a test piece [mm]: the 12 in and 3 in rule (woodworking magazine, Nov. 2007, p. 55)."""
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


def before_resawing(part: Part, allow: Allowances) -> Part:
    """The board that two leaves of a part are resawn from, as if it were the part."""
    width, thickness = face(part)
    thick = 2 * thickness + allow.resaw_kerf + 2 * allow.resaw_face
    return replace(part, size=(part.size[0], width / 2, thick), stock=replace(part.stock, thickness=thick))


def lumber_for(part: Part, tables: Tables, allow: Allowances, printer: Printer) -> LumberClass | None:
    """The thinnest lumber that gives a wood part its thickness; None when none does.

    It is planned to give it (table of lumber), and thick enough for what is planed off. Where the file says what is
    planed off, that alone counts.
    """
    planed = board_thickness(part)
    off = allow.planing_long if part.size[0] > LONG + _SAME else allow.planing
    enough = [
        c
        for c in tables.lumber.values()
        if c.system == printer.units
        and c.rough >= planed + off - _SAME
        and (allow.face_given or c.planned >= planed - _SAME)
    ]
    return min(enough, key=lambda c: (c.rough, c.key), default=None)


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
    longer: float = 0.0,
    wider: float = 0.0,
    leaves: int = 1,
) -> RoughPart:
    """Rough size of wood parts of one letter.

    Args:
        kind: the parts of the letter.
        lot: id of the lot they are cut from.
        lumber: thickness that is bought; None when no lumber is thick enough.
        limit: how wide one board may be.
        allow: allowances.
        printer: prints sizes of the plan.
        longer: what the part gets over in length, to be trimmed later [mm].
        wider: the same in width [mm].
        leaves: leaves that it is made of; with 2 each piece is resawn.
    """
    one = kind[0]
    board = before_resawing(one, allow) if leaves > 1 else one
    s = printer.size
    length, width = one.size[0], face(one)[0]
    glued = None if leaves > 1 else glue_up(width + wider, limit, allow, printer)
    panel = glued is not None or leaves > 1
    over = (allow.panel_length, allow.panel_width) if panel else (allow.length, allow.width)
    over_all = (over[0], longer, 2 * allow.snipe)
    rough_length, length_sum = _summed(length, over_all, printer)
    rough_width, width_sum = _summed(width, (over[1], wider), printer)
    thick = lumber.rough if lumber else settle(board_thickness(board) + allow.planing, printer.step, "up")
    strip = glued or GlueUp(1, rough_width, "")
    if leaves > 1:
        wide = settle(rough_width / 2 + 2 * allow.edge_joint, printer.step, "up")
        strip = GlueUp(1, wide, f"{s(rough_width)} / 2 + 2 × {s(allow.edge_joint)} = {s(wide)}")
    planed = _planed(board, lumber, glued is not None, allow)
    return RoughPart(
        one.letter,
        one.name,
        one.stock.id,
        tuple(p.id for p in kind),
        one.size,
        lumber.name if lumber else sold(printer.units, thick),
        lot,
        (rough_length, rough_width, thick),
        length_sum,
        width_sum,
        _thickness_text(board, lumber, thick, planed, leaves, printer),
        strip.strips,
        (rough_length, strip.width),
        strip.sum,
        _ripped(one, printer) if leaves == 1 else "",
        _thickness_sum(board, thick, leaves, allow, printer),
        planed,
        leaves,
    )


def test_piece(lot: str, kind: Part, lumber: LumberClass | None, count: int, allow: Allowances, printer: Printer
) -> RoughPart:  # fmt: skip
    """Pieces for trying set-ups, as thick as a part with joints.

    Args:
        lot: id of the lot they are cut from.
        kind: the part.
        lumber: thickness that is bought.
        count: how many.
        allow: allowances.
        printer: prints sizes of the plan.
    """
    length, width = (settle(x, printer.step, "up") for x in TEST_SIZE[printer.units])
    part = replace(kind, letter="test", name="test piece", size=(length, width, board_thickness(kind)))
    some = [replace(part, id=f"{lot}.test.{n}") for n in range(1, count + 1)]
    return wood_part(some, lot, lumber, StripLimit(width * 2, width * 2, ""), allow, printer)


def has_joints(part: Part) -> bool:
    """Whether a part has cuts whose set-up is tried on waste first."""
    return any(isinstance(c, Groove | Rabbet | Fitted) for c in part.cuts)


def _summed(finished: float, over: Sequence[float], printer: Printer) -> tuple[float, str]:
    """A rough size and its sum."""
    total = settle(finished + sum(over), printer.step, "up")
    terms = [printer.size(finished), *(printer.size(x) for x in over if x > _SAME)]
    return total, f"{' + '.join(terms)} = {printer.size(total)}"


def _planed(part: Part, lumber: LumberClass | None, glued: bool, allow: Allowances) -> float:
    """Thickness that the pieces of a part are planed to [mm]; strips keep some, where the lumber has it."""
    planed = board_thickness(part)
    most = lumber.rough - allow.planing if lumber else planed
    return max(planed, min(planed + allow.flatten, most)) if glued else planed


def _thickness_sum(part: Part, thick: float, leaves: int, allow: Allowances, printer: Printer) -> str:
    s = printer.size
    off = allow.planing_long if part.size[0] > LONG + _SAME else allow.planing
    planed = board_thickness(part)
    if leaves > 1:
        leaf = (planed - allow.resaw_kerf - 2 * allow.resaw_face) / 2
        start = f"2 × {s(leaf)} + {s(allow.resaw_kerf)} + 2 × {s(allow.resaw_face)}"
    else:
        start = s(planed)
    return f"{start} + {s(off)} = {s(planed + off)}; bought {sold(printer.units, thick)}"


def _thickness_text(
    part: Part, lumber: LumberClass | None, thick: float, planed: float, leaves: int, printer: Printer
) -> str:
    rough = sold(printer.units, thick)
    named = f"{lumber.name}, " if lumber and lumber.name not in (rough, rough.removesuffix(" in")) else ""
    text = f"{named}{rough} rough, planed to {printer.size(planed)}"
    if leaves > 1:
        return f"{text}, resawn into two leaves"
    if planed > board_thickness(part) + _SAME:
        text += f", the panel flattened to {printer.size(board_thickness(part))}"
    return text


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
